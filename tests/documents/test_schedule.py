"""The door schedule: one row a mark, its hinges and swing, and what is said of it."""

import pytest

from configurator.documents.schedule import (
    NO_QUESTIONS,
    questions_text,
    schedule_rows,
    schedule_table,
    with_questions,
)
from configurator.model import Job
from configurator.order.book import tally_job
from tests.openings import RAIL
from tests.order.cases import data, job_of


def row(**changes):
    (found,) = schedule_rows(tally_job(job_of(data("1", **changes))))
    return found


def test_a_row_says_what_the_opening_is():
    found = row(location="Crew mess", quantity=2, notes="ask about the rail", questions="Who paints it?")
    assert (found.mark, found.location, found.quantity, found.status) == ("1", "Crew mess", 2, "assumed")
    assert (found.hand, found.leaves, found.size) == ("LH", "single", "3'-0\" x 7'-0\"")
    assert (found.width, found.height, found.notes) == (36, 84, "ask about the rail")
    assert found.questions == "Who paints it?"
    assert (found.thickness, found.door, found.frame, found.fire) == (
        1.75,
        None,
        "knocked-down drywall",
        None,
    )
    assert row(use={"fire_rated": True}).fire is True


def test_a_row_says_how_it_hangs_and_opens():
    found = row(compare=[4], obstructions=[RAIL], use={"wanted_angle": 180}, hinge={"width": 4})
    assert found.hinge == "3 x 4-1/2 x 4"
    assert (found.angle, found.stopped_by) == ("171.7°", "chair rail")
    assert found.angles == (pytest.approx(171.788, abs=1e-3),)
    assert (found.errors, found.warnings, found.notes_of_program) == (0, 1, 3)
    assert found.findings == "1 warning: width by hand; 3 notes"


def test_two_leaves_alike_are_said_once_and_others_one_by_one():
    both = row(leaves="pair", size={"width": 72, "height": 84})
    assert both.hinge == "3 x 4-1/2 x 4 each leaf"
    wide = row(leaves="pair", size={"width": 72, "height": 84}, active_width=42)
    assert wide.hinge == "active 3 x 5 x 4-1/2; inactive 3 x 4-1/2 x 4"


def test_an_opening_hung_otherwise_and_one_not_worked_out_say_so():
    assert row(hung_on="pivots").hinge == "pivots"
    low = row(size={"width": 36, "height": 5}, door={"undercut": 12})
    assert (low.hinge, low.angle, low.errors) == ("not worked out", "", 1)
    assert low.findings == "error: A leaf from 12 to 4-7/8 in above the floor has no height."


def test_an_opening_on_no_butts_says_how_far_it_opens_on_the_side_on_which_that_is_less():
    """A double-acting spring hinge opens flat to the pull side, and to the jamb's end on the other."""
    spring = [{"hung_on": "double-acting spring hinge"}]
    found = row(hung_on="spring hinges", compare=spring)
    assert (found.hinge, found.stopped_by) == ("spring hinges", "frame")
    assert 90 < found.angles[0] < 180
    assert row(hung_on="continuous hinge").angles == (180,)


def test_a_size_that_no_hinge_has_is_said():
    assert row(hinge={"height": 11}).hinge == "none to be had"


def test_the_table_has_every_column_and_paper_those_it_has_room_for():
    tallies = tally_job(job_of(data("1"), data("2")))
    table = schedule_table(tallies)
    assert [row[0] for row in table.rows] == ["1", "2"]
    assert all(len(row) == len(table.columns) for row in table.rows)
    on_paper = [column.key for column in schedule_table(tallies, on_paper=True).columns]
    assert on_paper == [
        "mark", "location", "quantity", "status", "hand", "leaves", "size", "frame", "hinge", "angle",
        "stopped_by", "findings",
    ]  # fmt: skip


def test_what_a_door_cannot_be_read_again_without_is_in_the_data():
    """A butted frame has no usual place in the wall, and a door on pivots takes no hinges."""
    said = row(wall={"frame_proud": 0.5}, hung_on="pivots")
    assert (said.frame_proud, said.hung_on) == (0.5, "pivots")
    assert row(wall={"frame_proud": None}).frame_proud is None


# --- Questions to the architect ---


def asking(*openings, **facts):
    rows = [{"size": "3070", **opening} for opening in openings]
    return Job.model_validate({"job": facts, "openings": rows})


def test_each_question_stands_under_its_mark_and_location():
    asked = asking(
        {"mark": "101", "location": "Hall", "questions": "Which lock?\nWho supplies it?"},
        {"mark": "102"},
        {"mark": "103", "questions": " Rated? "},
        name="Kestrel Point Ferry Terminal",
        number="26-118",
    )
    assert questions_text(asked) == (
        "Questions to the architect: Kestrel Point Ferry Terminal, 26-118\n\n"
        "101, Hall\n  Which lock?\n  Who supplies it?\n\n"
        "103\n  Rated?"
    )


def test_a_job_without_a_name_and_a_job_without_questions():
    assert questions_text(asking({"mark": "1", "questions": "?"})) == "Questions to the architect\n\n1\n  ?"
    assert questions_text(asking({"mark": "1", "questions": " \n"})) == NO_QUESTIONS
    assert with_questions(asking()) == ()


def test_what_an_architect_scheduled_is_passed_on():
    said = {
        "level": "2", "hardware_set": "07", "fire_minutes": 90, "glass": "G-1",
        "details": {"head": "4/A8.1", "sill": "9/A8.1"}, "remarks": "card reader",
    }  # fmt: skip
    kept = {"Keynote": "8.14", "Phase": "1"}
    table = schedule_table(tally_job(job_of(data("1", **said, other_columns=kept), data("2"))))
    first, second = (dict(zip([c.key for c in table.columns], cells, strict=True)) for cells in table.rows)
    assert {key: first[key] for key in ("level", "hardware_set", "fire", "fire_minutes", "glass")} == {
        "level": "2", "hardware_set": "07", "fire": True, "fire_minutes": 90, "glass": "G-1",
    }  # fmt: skip
    assert (first["head"], first["jamb"], first["sill"]) == ("4/A8.1", None, "9/A8.1")
    assert (first["remarks"], first["Keynote"], first["Phase"]) == ("card reader", "8.14", "1")
    assert second["Keynote"] is None
