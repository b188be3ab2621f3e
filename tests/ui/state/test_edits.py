import pytest

from configurator.model import Job, Opening
from configurator.ui.state import edits
from configurator.ui.state.edits import RefusedError

OPENING = Opening.model_validate({"mark": "112A", "size": "3070", "door": {"thickness": 1.75}})


def test_an_edit_gives_a_new_record_and_leaves_the_old():
    after = edits.edited(OPENING, {"door.thickness": 2.25})
    assert after.door.thickness == 2.25
    assert OPENING.door.thickness == 1.75


def test_a_value_given_back_is_left_out_again():
    after = edits.edited(OPENING, {"door.thickness": None})
    assert after.model_dump(exclude_unset=True) == {"mark": "112A", "size": {"width": 36, "height": 84}}


def test_of_several_changes_all_are_made_or_none():
    with pytest.raises(RefusedError) as refused:
        edits.edited(OPENING, {"door.thickness": 2.0, "door.undercut": -1.0})
    assert refused.value.about("door.undercut").startswith("Undercut must be at least 0")
    assert OPENING.door.thickness == 1.75


def test_a_refusal_speaks_beside_the_field_that_was_touched():
    with pytest.raises(RefusedError) as refused:
        edits.edited(OPENING, {"door.thickness": 0})
    assert refused.value.about("door.thickness") == (
        "Door thickness must be more than 0 and at most 6 in; 0 was given"
    )


def test_a_fault_elsewhere_is_still_said():
    rail = {"kind": "chair rail", "projection": 1.0, "bottom": 32}
    with pytest.raises(RefusedError) as refused:
        edits.edited(OPENING, {"obstructions": [{**rail, "top": 30}]})
    assert "top must be higher than bottom" in refused.value.about("obstructions").lower()


def test_marks_stay_unique():
    job = edits.with_openings(Job(), (edits.typical_opening("1"), edits.typical_opening("2")))
    with pytest.raises(RefusedError, match="stands twice"):
        edits.replaced(job, "2", edits.edited(job.openings[1], {"mark": "1"}))


def test_replacing_one_opening_keeps_the_others_as_they_are():
    job = edits.with_openings(Job(), (edits.typical_opening("1"), edits.typical_opening("2")))
    after = edits.replaced(job, "2", edits.edited(job.openings[1], {"door.thickness": 2.0}))
    assert after.openings[0] is job.openings[0]
    assert after.openings[1].door.thickness == 2.0


@pytest.mark.parametrize(
    ("taken", "wish", "mark"),
    [([], "101", "101"), (["101", "102"], "101", "103"), (["112A"], "112A", "112B")],
)
def test_a_fresh_mark_is_the_next_that_is_free(taken, wish, mark):
    job = edits.with_openings(Job(), tuple(edits.typical_opening(each) for each in taken))
    assert edits.fresh_mark(job, wish) == mark


def test_an_edit_is_named_as_undo_shows_it():
    assert edits.name_of({"door.thickness": 2}, "112A") == "change door thickness of 112A"
    several = {"size.width": 36, "size.height": 84}
    assert edits.name_of(several, "112A") == "change opening width and more of 112A"


def test_the_jobs_facts_are_edited_alike():
    facts = edits.edited_facts(Job().job, {"job.client": "Harbor District"})
    assert facts.client == "Harbor District"
    with pytest.raises(RefusedError):
        edits.edited_facts(facts, {"job.client": "\x00"})
