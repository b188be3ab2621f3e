import pytest

from configurator.drawing.pages.page import paper_named
from configurator.ui.sheets.preview import SheetChoice
from configurator.units import Display
from tests.drawing.cases import demo


@pytest.fixture
def choice():
    """A fitted plan on Letter in inches."""
    return SheetChoice("plan", paper_named("Letter"), None, Display())


@pytest.fixture
def sheet(choice, session):
    """The plan sheet of 112A."""
    return choice.page(demo("112A"), session.job.job)


@pytest.fixture
def page(bare_window):
    """The sheets, on show in a window without a work area."""
    bare_window.turn_to("sheets")
    found = bare_window.pages.made["sheets"]
    found.lay_out()
    return found
