import pytest

from configurator.model import Opening
from configurator.ui.kit.kinds import NotReadError
from configurator.ui.schedule.answers import Answer, Answers
from configurator.ui.schedule.changing import Change, Trial, counted, duplicates, typed
from configurator.units import Display


def opening(mark, **more):
    return Opening.model_validate({"mark": mark, "size": "3070", "hand": "RH", **more})


OPENINGS = (opening("101"), opening("102", order_state="ordered"), opening("103"))


def answer(opening, _):
    fault = "the leaf has no height" if opening.size.height < 10 else ""
    return Answer("", "", None, 0, 0, 0, "", fault)


def tried(*changes, openings=OPENINGS):
    trial = Trial(openings, [Change(*change) for change in changes], Answers(answer))
    for _ in trial.steps():
        pass
    return trial


def test_all_are_changed_and_the_others_stay_the_same_records():
    trial = tried((0, {"hand": "LH"}, "101"), (2, {"hand": "LH", "quantity": 4}, "103"))
    assert trial.refusals == []
    assert [each.hand for each in trial.openings] == ["LH", "RH", "LH"]
    assert trial.openings[2].quantity == 4
    assert trial.openings[1] is OPENINGS[1]


def test_what_is_so_already_is_no_change():
    assert tried((0, {"hand": "RH"}, "101")).changed == []


def test_each_refusal_is_named_by_its_mark_and_field():
    trial = tried((0, {"quantity": 0}, "101"), (1, {"hand": "LH"}, "102"), (2, {"hand": "up"}, "103"))
    assert trial.refusals == [
        "101: quantity must be at least 1 and at most 100000; 0 was given",
        "103: hand is one of 'LH', 'RH', 'LHR' or 'RHR'; up was given",
    ]


def test_what_cannot_be_studied_is_refused_with_the_reason():
    trial = tried((0, {"size": {"width": 36, "height": 5}}, "101"))
    assert trial.refusals == ["101: The leaf has no height"]


def test_what_could_not_be_studied_before_may_stay_so():
    low = opening("101", size={"width": 36, "height": 5})
    assert tried((0, {"quantity": 2}, "101"), openings=(low,)).refusals == []
    assert tried((0, {"hand": "LH"}, "101"), openings=(low,)).refusals == []
    assert tried((None, {"mark": "7", "size": {"width": 36, "height": 5}}, "row 1")).refusals


def test_a_new_opening_comes_last_and_needs_a_mark_and_a_size():
    trial = tried((None, {"mark": "7", "size": {"width": 36, "height": 84}, "location": None}, "row 1"))
    assert [each.mark for each in trial.openings] == ["101", "102", "103", "7"]
    assert trial.openings[3].hand is None
    assert tried((None, {"mark": "7"}, "row 1")).refusals == [
        "row 1, opening size: this key is missing and must be given"
    ]


def test_marks_stay_unique_whichever_way_they_come_to_be_the_same():
    twice = "it stands twice; each opening has its own"
    assert tried((0, {"mark": "103"}, "101")).refusals == [f"103, mark: {twice}"]
    both = tried((0, {"mark": "9"}, "101"), (1, {"mark": "9"}, "102"))
    assert both.refusals == [f"9, mark: {twice}"] * 2
    swapped = tried((0, {"mark": "103"}, "101"), (2, {"mark": "101"}, "103"))
    assert swapped.refusals == []


@pytest.mark.parametrize(
    ("path", "text", "value"),
    [
        ("hand", "lhr", "LHR"),
        ("status", "● approved", "approved"),
        ("order_state", "◪ ordered", "ordered"),
        ("status", "Field", "field verified"),
        ("frame.kind", "wood", "wood with casing"),
        ("hung_on", "", None),
        ("quantity", " 12 ", 12),
        ("use.fire_rated", "Yes", True),
        ("use.fire_rated", "no", False),
        ("use.wanted_angle", "90°", 90.0),
        ("hinge.width", "4 1/2", 4.5),
        ("size", "3068", {"width": 36.0, "height": 80.0}),
        ("location", " Galley ", "Galley"),
        ("location", " ", None),
        ("hand", "up", "up"),
        ("frame.kind", "w", "w"),
    ],
)
def test_text_is_read_as_its_field_takes_it(path, text, value):
    assert typed(path, text, Display()) == value


@pytest.mark.parametrize(
    ("path", "text", "said"),
    [
        ("quantity", "two", "not a whole number"),
        ("use.fire_rated", "perhaps", "Yes or no is wanted"),
        ("size", "wide", "Write width and then height"),
        ("hinge.width", "wide", "not a length"),
    ],
)
def test_text_that_cannot_be_read_says_why(path, text, said):
    with pytest.raises(NotReadError, match=said):
        typed(path, text, Display())


def test_copies_stand_after_their_like_under_the_next_marks_and_are_only_assumed():
    result, marks = duplicates(OPENINGS, [0, 1])
    assert [each.mark for each in result] == ["101", "104", "102", "105", "103"]
    assert marks == ["104", "105"]
    assert result[3].status == "assumed"
    assert result[3].hand == "RH"


def test_one_is_named_by_its_mark_and_many_are_counted():
    assert counted(["112A"]) == "112A"
    assert counted(["1"] * 1234) == "1,234 openings"
