import pytest

from configurator.model import Opening
from configurator.ui.schedule.answers import Answer, Answers
from configurator.ui.schedule.arranging import Arranger, Wanted, terms
from configurator.ui.schedule.columns import COLUMNS, PLACES
from configurator.units import Display

FOUND = {"10A": (1, 0, 0), "2A": (0, 2, 1), "2B": (0, 0, 0), "101": (1, 0, 0)}
ANGLES = {"10A": 90.0, "2A": None, "2B": 180.0, "101": 90.0}


def answer(opening, _):
    errors, warnings, notes = FOUND[opening.mark]
    angle = ANGLES[opening.mark]
    return Answer(f"3 x {opening.mark}", "", angle, errors, warnings, notes, "leaf on the rail")


OPENINGS = tuple(
    Opening.model_validate(data)
    for data in (
        {"mark": "10A", "size": "3070", "hand": "RHR", "location": "galley", "order_state": "ordered"},
        {"mark": "2A", "size": "2868", "hand": "LH", "location": "Hall", "quantity": 12},
        {"mark": "2B", "size": "3068", "quantity": 2},
        {"mark": "101", "size": "3070", "hand": "RHR", "order_state": "ordered", "questions": "Why?"},
    )
)


@pytest.fixture
def arranger():
    answers = Answers(answer)
    for opening in OPENINGS:
        answers.work_out(opening)
    return Arranger(answers)


def marks(arranger, **wanted):
    rows = arranger.arranged(OPENINGS, Wanted(**wanted))
    return [" ".join(OPENINGS[place].mark for place in row) for row in rows]


def test_the_order_of_the_job_is_kept_unless_another_is_asked_for(arranger):
    assert marks(arranger) == ["10A", "2A", "2B", "101"]


@pytest.mark.parametrize(
    ("key", "order"),
    [
        ("mark", ["2A", "2B", "10A", "101"]),
        ("location", ["2B", "101", "10A", "2A"]),
        ("quantity", ["10A", "101", "2B", "2A"]),
        ("hand", ["2A", "10A", "101", "2B"]),
        ("size", ["2A", "2B", "10A", "101"]),
        ("order_state", ["2A", "2B", "10A", "101"]),
        ("angle", ["10A", "101", "2B", "2A"]),
        ("findings", ["10A", "101", "2A", "2B"]),
        ("questions", ["101", "10A", "2A", "2B"]),
    ],
)
def test_each_column_has_its_order(arranger, key, order):
    assert marks(arranger, column=PLACES[key]) == order
    assert sorted(marks(arranger, column=PLACES[key], descending=True)) == sorted(order)


def test_every_column_can_be_sorted_both_ways(arranger):
    for place in range(len(COLUMNS)):
        up, down = (marks(arranger, column=place, descending=way) for way in (False, True))
        assert sorted(up) == sorted(down) == sorted(["10A", "2A", "2B", "101"])


@pytest.mark.parametrize(
    ("wanted", "found"),
    [
        ({"words": "GALLEY"}, ["10A"]),
        ({"words": "galley rhr"}, ["10A"]),
        ({"words": "3'-0\""}, ["10A", "2B", "101"]),
        ({"words": "leaf on the rail 2a"}, ["2A"]),
        ({"words": "nowhere"}, []),
        ({"status": "ordered"}, ["10A", "101"]),
        ({"status": "approved"}, []),
        ({"findings": "error"}, ["10A", "101"]),
        ({"findings": "any"}, ["10A", "2A", "101"]),
        ({"findings": "any", "status": "ordered", "words": "why"}, ["101"]),
    ],
)
def test_words_status_and_findings_are_found_together(arranger, wanted, found):
    assert marks(arranger, **wanted) == found


def test_lengths_are_found_as_they_are_shown(arranger):
    assert marks(arranger, words="914") == []
    arranger.show_in(Display(metric=True))
    assert marks(arranger, words="914") == ["10A", "2B", "101"]


def test_like_ones_share_a_row(arranger):
    assert marks(arranger, grouped="like") == ["10A 101", "2A", "2B"]
    assert marks(arranger, grouped="like", column=PLACES["quantity"]) == ["10A 101", "2B", "2A"]
    assert marks(arranger, grouped="like", words="galley") == ["10A"]


def test_answers_are_needed_only_where_they_come_into_it():
    assert Wanted(findings="any").needs_answers
    assert Wanted(column=PLACES["angle"]).needs_answers
    assert not Wanted(words="x", status="ordered", column=PLACES["size"], grouped="like").needs_answers


def test_what_was_prepared_is_not_prepared_again(arranger):
    assert len(list(arranger.prepare(OPENINGS))) == 4
    assert list(arranger.prepare(OPENINGS)) == []


@pytest.mark.parametrize(
    ("typed", "text", "there"),
    [
        ("5 x 4-1/2", "3 x 5 x 4-1/2", True),
        ("5x4-1/2", "3 x 5 x 4-1/2 each leaf", True),
        ("5 x 4-1/2", "5 x 4-1/2 x 4", False),
        ("5 x 4-1/2", "3 x 4-1/2 x 4", False),
        ("5 x 4-1/2", "2'-5 x 4-1/2", False),
        ("4 x 4", "3 x 4-1/2 x 4", False),
        ("4-1/2 x 4", "3 x 4-1/2 x 4", True),
        ("4-1/2 x 4", "3 x 4-1/2 x 4-1/2", False),
        ("3 x 4-1/2 x 4", "3 x 4-1/2 x 4", True),
        ("3 x 4-1/2 x 4", "13 x 4-1/2 x 4", False),
        ("3'-0\" X 7'-0\"", "3'-0\" x 7'-0\"", True),
        ("12a hall", "112a\nhall", True),
        ("12a hall", "112a\nstore", False),
    ],
)
def test_a_size_is_found_as_a_whole_and_words_wherever_they_stand(typed, text, there):
    assert all(term.search(text) for term in terms(typed)) is there
