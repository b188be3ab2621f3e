import pytest

from configurator.drawing.pages.papers import paper_named
from configurator.ui.sheets.laid_out import SheetChoice
from configurator.units import Display
from tests.drawing.cases import demo
from tests.ui.conftest import preferences, session, window  # noqa: F401 - fixtures of the whole window


@pytest.fixture
def choice():
    """A fitted plan on Letter in inches."""
    return SheetChoice("plan", paper_named("Letter"), None, Display())


@pytest.fixture
def sheet(choice, session):  # noqa: F811
    """The plan sheet of 112A."""
    return choice.page(demo("112A"), session.job.job)


@pytest.fixture
def page(window):  # noqa: F811
    """The sheets in their window, on show."""
    window.commands.actions_by_name["sheets"].trigger()
    found = window.pages.made["sheets"]
    found.lay_out()
    return found
