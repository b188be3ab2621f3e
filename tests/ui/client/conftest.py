import pytest

from configurator.ui.client.page import ClientPage
from tests.ui.conftest import _nothing_left_behind, preferences, session, window  # noqa: F401


@pytest.fixture
def page(qtbot, session):  # noqa: F811
    """The client's view of 112A by itself, following its session."""
    page = ClientPage(session)
    qtbot.addWidget(page)
    session.changed.connect(page.show_state)
    page.resize(1200, 760)
    page.show_state("open")
    page.show()
    return page


@pytest.fixture
def in_window(window):  # noqa: F811
    """The client's view in its window, on show."""
    window.commands.actions_by_name["client"].trigger()
    return window.pages.made["client"]
