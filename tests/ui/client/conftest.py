import pytest

from configurator.drawing.base.primitives import Text
from configurator.ui.client.page import ClientPage


@pytest.fixture
def window(fresh_window):
    return fresh_window


@pytest.fixture
def page(qtbot, session):
    """The client's view of 112A by itself, following its session."""
    page = ClientPage(session)
    qtbot.addWidget(page)
    session.changed.connect(page.show_state)
    page.resize(1200, 760)
    page.show_state("open")
    page.show()
    return page


@pytest.fixture
def in_window(window):
    """The client's view in its window, on show."""
    window.commands.actions_by_name["client"].trigger()
    return window.pages.made["client"]


def lettered(page):
    """All that the page's picture letters with the doors where they stand, as one text."""
    canvas = page.canvas
    groups = (*canvas._sheet.still, *canvas.turning_groups(), *canvas._sheet.notes)
    return " ".join(item.text for group in groups for item in group.primitives if isinstance(item, Text))
