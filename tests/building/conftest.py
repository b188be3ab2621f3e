"""What the tests of building models share: a terminal of a few doors, and the way from a file to openings."""

import pytest

from configurator.building.reading import read_model
from configurator.building.schedule import model_table
from configurator.intake.columns import reading_of
from configurator.intake.comparing import compared_steps
from configurator.intake.rows import rows_steps
from configurator.long_work import run
from configurator.model import Job
from tests.building.author import Author, turned

LAYERS = [("gypsum", 0.625), ("stud", 3.625), ("tile", 0.5)]
ANSWERS = {"overall size": "opening", "outside": "push"}


def compared(model, answers=ANSWERS, job=None):
    """Set a model that was read against a job."""
    table = model_table(model)
    reading = reading_of(table)
    for question, answer in answers.items():
        reading = reading.with_answer(question, answer)
    return run(compared_steps(run(rows_steps(table, reading)), reading, job or Job()))


def openings(model, answers=ANSWERS):
    """Return by mark the openings that come of a model."""
    found = compared(model, answers)
    assert not found.bad, [str(fault) for fault in found.faults()]
    return {row.opening.mark: row.opening for row in found.good}


@pytest.fixture
def read(tmp_path):
    """Read what an author has written."""

    def of(author):
        return read_model(author.write(tmp_path / "model.ifc"))

    return of


@pytest.fixture(scope="session")
def terminal(tmp_path_factory):
    """A wall of 4-3/4 in with four doors: 112A meets a rail, 113 slides, 114 stands free, 115 is a pair."""
    author = Author("IFC4", "MILLIMETRE")
    wall = author.wall(turned(0, 0), 900, LAYERS)
    common = {
        "Pset_DoorCommon": {"FireRating": "90", "IsExternal": False, "SelfClosing": True, "FireExit": True}
    }
    author.door(wall, turned(100, 0), 36, 84, tag="112A", frame=(-0.25, 5.25), leaf=(3.5, 5.25), psets=common)
    author.thing("IfcRailing", "Chair rail", [author.box(20, 97, 4.75, 6.5, 32, 36)])
    author.door(wall, turned(300, 0), 36, 84, "SLIDING_TO_LEFT", tag="113")
    author.door(None, turned(500, 300), 36, 84, tag="114")
    author.door(wall, turned(700, 0), 72, 84, "DOUBLE_DOOR_SINGLE_SWING", tag="115", frame=(0.0, 5.0),
                leaf=(3.25, 5.0))  # fmt: skip
    author.thing("IfcSpace", "100", [author.box(0, 900, -80, 0, 0, 100)], LongName="Corridor")
    author.thing("IfcSpace", "101", [author.box(0, 300, 4.75, 100, 0, 100)], LongName="Ticket office")
    return author.write(tmp_path_factory.mktemp("model") / "terminal.ifc")
