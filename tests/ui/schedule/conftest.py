import pytest

from configurator.ui.schedule.answers import Answers
from configurator.ui.schedule.arranging import Wanted
from configurator.ui.schedule.columns import COLUMNS, PLACES
from configurator.ui.schedule.model import ScheduleModel


@pytest.fixture
def schedule(session):
    """The model over the demo job, nothing of it worked out yet."""
    model = ScheduleModel(session, Answers())
    session.changed.connect(lambda _: model.show_job())
    model.arrange(Wanted())
    return model


@pytest.fixture
def page(bare_window):
    """The schedule, on show in a window without a work area, with what is in view worked out."""
    bare_window.turn_to("schedule")
    return bare_window.pages.made["schedule"]


@pytest.fixture
def in_window(window):
    """The schedule over the work, turned to as the user does."""
    window.commands.actions_by_name["schedule"].trigger()
    return window.pages.made["schedule"]


@pytest.fixture
def cell():
    """A question: what the cell of a mark's row says under a column."""

    def text(model, mark, key):
        row = next(row for row in range(model.rowCount()) if model.index(row, 0).data().startswith(mark))
        assert COLUMNS[PLACES[key]].key == key
        return model.index(row, PLACES[key]).data()

    return text
