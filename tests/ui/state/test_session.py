from dataclasses import dataclass

import pytest

from configurator import project_file
from configurator.model import Job, Opening
from configurator.project_file import ProjectFileError
from configurator.rules.filling.usual import FilledOpening, fill
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session
from configurator.units import Display


@dataclass
class Studied:
    """As much of a study as the session looks at: the filled opening, which says what must be given."""

    filled: FilledOpening


class Studier:
    """Fills an opening in, and counts how often it was asked."""

    def __init__(self) -> None:
        self.marks: list[str] = []

    def __call__(self, opening: Opening, facts: object) -> Studied:
        self.marks.append(opening.mark)
        return Studied(fill(opening))


@pytest.fixture
def studier() -> Studier:
    return Studier()


@pytest.fixture
def session(qapp, studier) -> Session:
    openings = [{"mark": mark, "size": "3070"} for mark in ("101", "112A", "205")]
    return Session(Job.model_validate({"openings": openings}), studier=studier)


@pytest.fixture
def said(session) -> list[str]:
    """What the session told its views, in order."""
    heard: list[str] = []
    session.changed.connect(heard.append)
    session.refused.connect(lambda path, _: heard.append(f"refused {path}"))
    return heard


def test_it_begins_with_the_first_opening_saved_and_nothing_to_undo(session):
    assert session.mark == "101"
    assert not session.history.unsaved
    assert session.history.undo_name is None


def test_one_edit_is_one_new_record_one_step_one_study_and_one_signal(session, studier, said):
    before = session.opening
    studier.marks.clear()
    assert session.edit("door.thickness", "2-1/4")
    assert session.opening.door.thickness == 2.25
    assert before.door.thickness is None
    assert session.history.undo_name == "change door thickness of 101"
    assert session.study.filled.thickness == 2.25
    assert studier.marks == ["101"]
    assert said == ["edit"]


def test_a_refused_value_leaves_no_trace_and_says_why(session, said):
    before = session.job
    assert not session.edit("door.thickness", -1)
    assert session.job is before
    assert session.history.undo_name is None
    assert said == ["refused door.thickness"]
    assert session.refusals["door.thickness"].sentence.startswith("Door thickness must be more than 0")


def test_the_same_value_again_is_no_step(session):
    session.edit("door.thickness", 2)
    session.edit("door.latch_gap", 0.125)
    session.edit("door.latch_gap", 0.125)
    session.undo()
    assert session.value("door.latch_gap") is None


def test_none_gives_a_field_back_to_the_program(session):
    session.edit("door.thickness", 2)
    session.edit("door.thickness", None)
    assert session.value("door.thickness") is None
    assert "door" not in session.opening.model_fields_set


def test_a_butted_frame_waits_until_its_place_in_the_wall_is_given(session, said):
    assert not session.edit("frame.kind", "welded steel, butted")
    assert "frame proud" in session.refusals["frame.kind"].sentence.lower()
    assert session.value("frame.kind") != "welded steel, butted"
    assert session.edit("wall.frame_proud", 0)
    assert session.value("frame.kind") == "welded steel, butted"
    assert session.value("wall.frame_proud") == 0
    assert session.refusals == {}
    assert said == ["refused frame.kind", "edit"]


def test_a_butted_frame_and_its_place_are_undone_together(session):
    session.edit("frame.kind", "welded steel, butted")
    session.edit("wall.frame_proud", 0)
    session.undo()
    assert session.value("frame.kind") != "welded steel, butted"
    assert session.value("wall.frame_proud") is None


def test_a_waiting_value_does_not_keep_other_edits_out(session):
    session.edit("frame.kind", "welded steel, butted")
    assert session.edit("door.thickness", 2)
    assert session.value("door.thickness") == 2
    assert "frame.kind" in session.refusals


def test_of_two_waiting_values_the_one_that_can_be_is_taken(session):
    session.edit("door.undercut", -1)
    session.edit("frame.kind", "welded steel, butted")
    assert session.edit("wall.frame_proud", 0)
    assert session.value("frame.kind") == "welded steel, butted"
    assert list(session.refusals) == ["door.undercut"]


def test_what_cannot_be_read_is_not_tried_again(session):
    session.refuse("door.thickness", "thick", "“thick” is not a length.")
    assert session.edit("door.undercut", 0.5)
    assert list(session.refusals) == ["door.thickness"]


def test_a_refused_value_can_be_withdrawn(session, said):
    session.edit("door.thickness", -1)
    session.withdraw("door.thickness")
    assert session.refusals == {}
    assert said == ["refused door.thickness", "edit"]


def test_several_changes_are_made_as_one_step(session):
    assert session.edit_many({"size.width": 42, "size.height": 96})
    session.undo()
    assert (session.opening.size.width, session.opening.size.height) == (36, 84)


def test_only_the_opening_that_changed_is_studied_again(session, studier):
    assert session.study
    session.select("112A")
    assert session.study
    studier.marks.clear()
    session.edit("door.thickness", 2)
    session.select("101")
    assert session.study
    assert studier.marks == ["112A"]


def test_the_jobs_facts_are_edited_and_undone_alike(session):
    assert session.edit("job.client", "Harbor District")
    assert session.value("job.client") == "Harbor District"
    session.undo()
    assert session.value("job.client") is None
    assert not session.edit("job.client", "\x00")
    assert "job.client" in session.refusals


def test_selecting_forgets_what_was_refused(session, said):
    session.edit("door.thickness", -1)
    session.select("205")
    assert session.refusals == {}
    assert session.opening.mark == "205"
    assert said[-1] == "select"


def test_undo_brings_back_an_opening_and_a_mark(session):
    session.select("112A")
    session.edit("mark", "112B")
    assert session.mark == "112B"
    session.undo()
    assert session.mark == "112A"
    assert [opening.mark for opening in session.job.openings] == ["101", "112A", "205"]


def test_undo_and_redo_show_the_opening_that_they_change(session):
    session.select("112A")
    session.edit("door.thickness", 2)
    session.select("205")
    session.undo()
    assert session.mark == "112A"
    session.select("101")
    session.redo()
    assert session.mark == "112A"
    assert session.opening.door.thickness == 2


def test_a_mark_that_stands_twice_is_refused(session):
    assert not session.edit("mark", "205")
    assert "stands twice" in session.refusals["mark"].sentence


def test_openings_are_added_copied_and_removed(session):
    session.add_opening()
    assert session.mark == "102"
    session.add_opening(like=session.opening)
    assert session.mark == "103"
    session.remove_opening()
    assert session.mark == "102"
    assert [opening.mark for opening in session.job.openings] == ["101", "112A", "205", "102"]


def test_the_last_opening_can_be_removed_and_comes_back(session):
    for _ in range(3):
        session.remove_opening()
    assert session.opening is None
    assert session.study is None
    assert session.value("door.thickness") is None
    session.undo()
    assert session.opening is not None


def test_saving_and_opening(session, tmp_path):
    path = tmp_path / "job.json"
    session.edit("door.thickness", 2)
    assert session.history.unsaved
    session.save(path)
    assert not session.history.unsaved
    assert project_file.load(path) == session.job
    session.start_new()
    assert session.path is None
    session.open(path)
    assert session.path == path
    assert session.opening.door.thickness == 2
    assert not session.history.unsaved


def test_a_file_that_cannot_be_read_changes_nothing(session, tmp_path):
    path = tmp_path / "broken.json"
    path.write_text('{"format": "opening-pro')
    session.edit("door.thickness", 2)
    before = session.job
    with pytest.raises(ProjectFileError):
        session.open(path)
    assert session.job is before
    assert session.path is None
    assert session.history.unsaved


def test_a_job_without_a_name_needs_one_to_be_saved(session):
    with pytest.raises(ValueError, match="file name"):
        session.save()


def test_an_opening_that_cannot_be_studied_says_why(qapp):
    door = {"mark": "1", "size": "3070", "door": {"thickness": 3}}
    session = Session(Job.model_validate({"openings": [door]}), studier=thin_doors_only)
    assert session.study is None
    assert session.trouble == "The rabbet is shallower than the door"
    assert session.edit("door.thickness", 1.75)
    assert session.study is not None
    assert session.trouble == ""


def test_an_edit_that_cannot_be_studied_is_refused(qapp):
    session = Session(
        Job.model_validate({"openings": [{"mark": "1", "size": "3070"}]}), studier=thin_doors_only
    )
    before = session.study
    assert not session.edit("door.thickness", 3)
    assert session.refusals["door.thickness"].sentence == "The rabbet is shallower than the door"
    assert session.study is before


def thin_doors_only(opening: Opening, facts: object) -> Studied:
    filled = fill(opening)
    if filled.thickness > 2:
        raise ValueError("the rabbet is shallower than the door")
    return Studied(filled)


@pytest.mark.parametrize(("asked", "stands"), [(-1, 0), (0, 0), (90, 90), (180, 180), (181, 180)])
def test_the_swing_goes_from_closed_to_flat(session, asked, stands):
    session.swing(asked)
    assert session.angle == stands


def test_how_it_is_shown_is_no_change_of_the_job(session, said):
    session.swing(90)
    session.show_in(Display(64, metric=True))
    session.use_dark(True)
    session.use_plain_words(True)
    assert not session.history.unsaved
    assert said == ["swing", "display", "theme", "display"]


def test_the_opening_on_show_is_found_wherever_it_comes_to_stand(session):
    for mark in ("205", "101", "112A"):
        session.select(mark)
        assert session.opening.mark == mark
    session.take_openings(session.job.openings[::-1], "turn round", "101")
    assert session.opening is session.job.openings[2]
    session.take_openings(session.job.openings[:1], "remove 2 openings", "205")
    assert session.opening is session.job.openings[0]
    session.undo()
    assert session.opening.mark == session.mark == "112A"


def test_many_openings_are_taken_as_one_named_step_or_not_at_all(session):
    job = session.job
    changed = tuple(each.model_copy(update={"quantity": 2}) for each in job.openings)
    session.take_openings(changed, "change quantity of 3 openings", "112A")
    assert [each.quantity for each in session.job.openings] == [2, 2, 2]
    assert session.history.undo_name == "change quantity of 3 openings"
    session.undo()
    assert session.job == job
    with pytest.raises(RefusedError, match="stands twice"):
        session.take_openings((*job.openings, job.openings[0]), "add 101", "101")
    assert session.job == job


def test_a_change_to_what_was_ordered_is_noted_once(session):
    said = []
    session.noted.connect(said.append)
    session.edit("quantity", 2)
    session.edit("order_state", "ordered")
    assert said == []
    session.edit("quantity", 3)
    session.edit("hand", "LH")
    session.edit("notes", "seen")
    assert len(said) == 1
    assert said[0].startswith("101 is marked ordered;")


def test_a_copy_of_what_was_ordered_is_not_ordered(session):
    session.edit("order_state", "ordered")
    session.add_opening(session.opening)
    assert (session.mark, session.opening.order_state) == ("102", "not ordered")


def test_refused_values_wait_for_their_opening(session):
    session.select("112A")
    assert not session.edit("door.thickness", 40)
    session.select("101")
    assert session.refusals == {}
    assert not session.edit("door.undercut", -1)
    session.select("112A")
    assert list(session.refusals) == ["door.thickness"]
    session.edit("mark", "112Z")
    session.select("101")
    assert list(session.refusals) == ["door.undercut"]
    session.select("112Z")
    assert list(session.refusals) == ["door.thickness"]
    session.start_new()
    assert session.refusals == {}


def test_a_refusal_is_in_the_unit_on_show(session):
    session.select("112A")
    session.show_in(Display(metric=True))
    session.edit("door.thickness", 900 / 25.4)
    assert session.refusals["door.thickness"].sentence == (
        "Door thickness must be more than 0.0 mm and at most 152.4 mm; 900.0 mm was given"
    )
