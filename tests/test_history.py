import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.history import LONGEST, History
from configurator.model import Job
from tests.sweeps import examples


def job(name: str) -> Job:
    return Job.model_validate({"job": {"name": name}})


def test_a_fresh_history_is_saved_and_has_nothing_to_undo() -> None:
    history = History(job("a"))
    assert not history.unsaved
    assert history.undo_name is None
    assert history.redo_name is None
    assert history.undo() is None
    assert history.redo() is None


def test_a_job_that_was_never_on_disk_is_unsaved() -> None:
    assert History(job("a"), saved=False).unsaved


def test_undo_and_redo_name_what_they_do() -> None:
    history = History(job("a"))
    history.push(job("b"), "change job name")
    assert history.undo_name == "change job name"
    assert history.undo() == "change job name"
    assert history.job == job("a")
    assert history.redo_name == "change job name"
    assert history.redo() == "change job name"
    assert history.job == job("b")


def test_the_same_state_again_is_no_step() -> None:
    history = History(job("a"))
    history.push(job("a"), "change nothing")
    assert history.undo_name is None
    assert not history.unsaved


def test_edits_in_a_row_of_one_field_are_one_step() -> None:
    history = History(job("a"))
    history.push(job("b"), "change job name", "job.name")
    history.push(job("c"), "change job name", "job.name")
    history.undo()
    assert history.job == job("a")


def test_edits_of_different_fields_are_two_steps() -> None:
    history = History(job("a"))
    history.push(job("b"), "one", "job.name")
    history.push(job("c"), "two", "job.number")
    history.undo()
    assert history.job == job("b")


def test_changes_without_a_field_never_join() -> None:
    history = History(job("a"))
    history.push(job("b"), "add an opening")
    history.push(job("c"), "add an opening")
    history.undo()
    assert history.job == job("b")


def test_an_edit_never_joins_across_a_save() -> None:
    history = History(job("a"))
    history.push(job("b"), "one", "job.name")
    history.mark_saved()
    history.push(job("c"), "two", "job.name")
    assert history.unsaved
    history.undo()
    assert history.job == job("b")
    assert not history.unsaved


def test_an_edit_never_joins_after_an_undo() -> None:
    history = History(job("a"))
    history.push(job("b"), "one", "job.name")
    history.push(job("c"), "two", "job.number")
    history.undo()
    history.push(job("d"), "three", "job.name")
    history.undo()
    assert history.job == job("b")


def test_typing_back_to_the_start_of_a_step_removes_it() -> None:
    history = History(job("a"))
    history.push(job("b"), "one", "job.name")
    history.push(job("a"), "one", "job.name")
    assert history.undo_name is None
    assert not history.unsaved


def test_unsaved_follows_undo_and_redo() -> None:
    history = History(job("a"))
    history.push(job("b"), "one")
    assert history.unsaved
    history.mark_saved()
    assert not history.unsaved
    history.undo()
    assert history.unsaved
    history.redo()
    assert not history.unsaved


def test_a_saved_state_that_was_undone_and_overwritten_is_gone() -> None:
    history = History(job("a"))
    history.push(job("b"), "one")
    history.mark_saved()
    history.undo()
    history.push(job("c"), "two")
    assert history.unsaved
    history.undo()
    assert history.unsaved


@pytest.mark.parametrize(
    ("steps", "kept"), [(LONGEST - 2, LONGEST - 2), (LONGEST - 1, LONGEST - 1), (LONGEST, LONGEST - 1)]
)
def test_the_oldest_steps_are_dropped(steps: int, kept: int) -> None:
    history = History(job("start"))
    for number in range(steps):
        history.push(job(str(number)), "step")
    undone = 0
    while history.undo():
        undone += 1
    assert undone == kept
    assert history.unsaved == (steps > kept)


EDIT = st.tuples(st.sampled_from("abcd"), st.sampled_from(["job.name", "job.number", None]))
ACTION = st.one_of(EDIT, st.sampled_from(["undo", "redo", "save"]))


@examples(75)
@given(st.lists(ACTION, max_size=25))
def test_undo_to_the_start_gives_the_first_state_and_redo_the_last(actions: list[object]) -> None:
    history = History(job("start"))
    on_disk = job("start")
    for action in actions:
        if action == "undo":
            history.undo()
        elif action == "redo":
            history.redo()
        elif action == "save":
            history.mark_saved()
            on_disk = history.job
        else:
            name, field = action  # type: ignore[misc]
            history.push(job(name), "edit", field)
        assert history.unsaved or history.job == on_disk
    while history.redo():
        pass
    last = history.job
    while history.undo():
        pass
    assert history.job == job("start")
    while history.redo():
        pass
    assert history.job == last
