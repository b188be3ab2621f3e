"""Unsaved work against a crash: kept, found again by the next program, taken by one window only."""

import json
import os
import time
from dataclasses import asdict, replace

import pytest

from configurator.model import Job
from configurator.project_file import ProjectFileError, save
from configurator.project_file.lock import clock
from configurator.project_file.owner import this_program
from configurator.project_file.recovery import RecoveryFile, left_behind, recovery_folder
from tests.project_file.test_lock import dead_owner


def named(name: str) -> Job:
    return Job.model_validate({"job": {"name": name}, "openings": []})


def left_by_a_crash(
    name="unsaved", path=None, when=None, owner=None, job=None, based_on="digest"
) -> RecoveryFile:
    """Write a recovery file as a program would that has ended since."""
    file = RecoveryFile()
    file.write(job or named(name), path, based_on)
    head, _, body = file.place.read_bytes().partition(b"\n")
    changed = {"owner": asdict(owner or dead_owner()), "when": when or time.time()}
    file.place.write_bytes(json.dumps(json.loads(head) | changed).encode() + b"\n" + body)
    return file


def test_work_of_a_running_program_is_not_offered():
    file = RecoveryFile()
    file.write(named("a"), None, "")
    assert file.place.is_file()
    assert left_behind() == ()
    file.remove()
    assert list(recovery_folder().iterdir()) == []


def test_work_of_a_program_that_ended_is_found_whole(tmp_path):
    path = tmp_path / "plan.json"
    left_by_a_crash(path=path)
    (left,) = left_behind()
    assert (left.job(), left.path, left.based_on) == (named("unsaved"), path.resolve(), "digest")
    assert (
        left.words()
        == f"The program ended without saving plan.json; its work of {clock(left.when)} was kept."
    )


def test_work_that_was_never_saved_is_found_too():
    left_by_a_crash()
    (left,) = left_behind()
    assert left.path is None
    assert left.words().startswith("The program ended without saving a job that was never saved (unsaved); ")


def test_it_says_when_the_file_was_saved_later_than_the_work(tmp_path):
    path = tmp_path / "plan.json"
    save(named("later"), path)
    left_by_a_crash(path=path, when=time.time() - 100)
    (left,) = left_behind()
    assert left.words().endswith(f"The file itself was saved after that, at {clock(path.stat().st_mtime)}.")


def test_work_set_aside_is_found_while_its_program_runs(tmp_path):
    RecoveryFile().write(named("mine"), tmp_path / "plan.json", "", set_aside=True)
    (left,) = left_behind()
    assert left.job() == named("mine")
    assert left.words() == f"Your own changes to plan.json of {clock(left.when)} were set aside."


def test_the_latest_comes_first():
    for name, age in (("old", 50), ("new", 10), ("middle", 20)):
        left_by_a_crash(name, when=time.time() - age)
    assert [left.job().job.name for left in left_behind()] == ["new", "middle", "old"]


def test_work_on_another_machine_is_left_to_it():
    left_by_a_crash(owner=replace(this_program(), host="elsewhere"))
    assert left_behind() == ()


def test_one_window_takes_it_and_it_is_still_there_until_discarded():
    left_by_a_crash()
    (left,) = left_behind()
    mine = left.claim()
    assert mine is not None
    assert left.claim() is None
    assert mine.job() == named("unsaved")
    (again,) = left_behind()
    assert again.place == mine.place
    mine.forget()
    assert left_behind() == ()
    assert list(recovery_folder().iterdir()) == []


def test_discarded_work_is_kept_aside_for_thirty_days_and_can_be_brought_back():
    left_by_a_crash()
    (left,) = left_behind()
    left.discard()
    assert left_behind() == ()
    left.bring_back()
    assert left_behind()[0].job() == named("unsaved")
    left.discard()
    (aside,) = recovery_folder().iterdir()
    day = 86_400
    os.utime(aside, (time.time() - 29 * day,) * 2)
    assert left_behind() == ()
    assert aside.exists()
    os.utime(aside, (time.time() - 31 * day,) * 2)
    assert left_behind() == ()
    assert not aside.exists()
    with pytest.raises(OSError, match="No such file"):
        left.bring_back()


def test_two_jobs_that_were_never_saved_are_told_apart():
    rows = [{"mark": mark, "size": "3070"} for mark in ("101", "102")]
    for when, (name, openings) in enumerate((("Pier 4", rows[:1]), ("Pier 5", rows), ("", rows[1:]))):
        left_by_a_crash(
            job=Job.model_validate({"job": {"name": name}, "openings": openings}), when=9.0 - when
        )
    said = [left.words().partition("(")[2].partition(")")[0] for left in left_behind()]
    assert said == ["Pier 4, opening 101", "Pier 5, 2 openings from 101", "opening 102"]


def test_each_window_keeps_its_own_and_each_writing_replaces_the_last():
    one, other = RecoveryFile(), RecoveryFile()
    for name in ("a", "b"):
        one.write(named(name), None, "")
        other.write(named(name + name), None, "")
    assert len(list(recovery_folder().iterdir())) == 2
    one.remove()
    assert [each.name for each in recovery_folder().iterdir()] == [other.place.name]


@pytest.mark.parametrize(
    "text", [b"", b"{", b"[]\n", b"null\n{}", b"x" * 99_999, b'{"path": 3, "when": 1}\n']
)
def test_what_is_no_recovery_file_is_passed_over(text):
    recovery_folder().mkdir(parents=True)
    (recovery_folder() / "odd.recovery").write_bytes(text)
    assert left_behind() == ()


def test_work_that_cannot_be_read_is_refused_and_stays():
    file = left_by_a_crash()
    file.place.write_bytes(file.place.read_bytes()[:-4])
    (left,) = left_behind()
    with pytest.raises(ProjectFileError):
        left.job()
    assert file.place.is_file()


def test_folder_and_file_are_the_users_alone():
    file = RecoveryFile()
    file.write(named("a"), None, "")
    assert recovery_folder().stat().st_mode & 0o077 == 0
    assert file.place.stat().st_mode & 0o777 == 0o600


def test_without_a_folder_there_is_nothing():
    assert left_behind() == ()


def test_where_it_cannot_be_kept_it_says_so(own_state_folder):
    (own_state_folder / "opening-configurator").write_bytes(b"in the way")
    with pytest.raises(OSError, match=r"exists|directory"):
        RecoveryFile().write(named("a"), None, "")


def test_copies_that_were_cut_off_are_swept():
    recovery_folder().mkdir(parents=True)
    part = recovery_folder() / ".x.recovery.abc.part"
    part.write_bytes(b"half")
    os.utime(part, (1, 1))
    left_behind()
    assert not part.exists()
