import pytest

from tests.ui.conftest import _nothing_left_behind, preferences, session, window  # noqa: F401


@pytest.fixture
def page(window):  # noqa: F811
    """Practice in its window, on show."""
    window.commands.actions_by_name["practice"].trigger()
    return window.pages.made["practice"]
