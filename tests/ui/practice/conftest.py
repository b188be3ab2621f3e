import pytest


@pytest.fixture
def window(fresh_window):
    return fresh_window


@pytest.fixture
def page(bare_window):
    """Practice, on show in a window without a work area."""
    bare_window.turn_to("practice")
    return bare_window.pages.made["practice"]


@pytest.fixture
def in_window(window):
    """Practice over the work, turned to as the user does."""
    window.commands.actions_by_name["practice"].trigger()
    return window.pages.made["practice"]
