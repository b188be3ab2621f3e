"""The file a window works on: taken, saved, and never written over what somebody else wrote."""

import gc
import os
import subprocess
import sys
from pathlib import Path

import pytest

from configurator.model import Job
from configurator.project_file import ProjectFileError, dump, load, save
from configurator.project_file.held import ChangedOnDiskError, HeldFile, open_held, save_held
from configurator.project_file.lock import LockedError, holder_of
from tests.project_file.test_lock import dead_owner, left_by


def job(name: str) -> Job:
    return Job.model_validate({"job": {"name": name}, "openings": []})


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "plan.json"
    save(job("a"), path)
    return path


def test_the_first_may_save_the_second_is_told_who_has_it(path):
    mine, first = open_held(path)
    theirs, second = open_held(path)
    assert first == second == job("a")
    assert mine.why_not == ""
    assert theirs.why_not.startswith("plan.json is open by ")
    mine.save(job("b"))
    with pytest.raises(ProjectFileError, match=r"plan.json was not saved: plan.json is open by"):
        theirs.save(job("c"))
    assert load(path) == job("b")


def test_let_go_it_is_free_for_the_next(path):
    mine, _ = open_held(path)
    mine.release()
    assert holder_of(path) is None
    assert open_held(path)[0].why_not == ""


def test_a_file_forgotten_lets_go_by_itself(path):
    open_held(path)
    gc.collect()
    assert holder_of(path) is None


HOLD = """
import sys
from pathlib import Path
from configurator.project_file.held import open_held
file, _ = open_held(Path(sys.argv[1]))
print(repr(file.why_not))
"""


def test_a_program_that_ends_in_order_lets_go(path):
    root = Path(__file__).resolve().parents[2]
    command = [sys.executable, "-c", HOLD, str(path)]
    done = subprocess.run(command, cwd=root, capture_output=True, text=True, check=True)
    assert done.stdout == "''\n"
    assert [each.name for each in path.parent.iterdir()] == ["plan.json"]


def test_a_refused_file_is_not_kept_locked(path):
    path.write_text("{}")
    with pytest.raises(ProjectFileError):
        open_held(path)
    assert [each.name for each in path.parent.iterdir()] == ["plan.json"]


def test_a_missing_file_gets_no_lock(path):
    path.unlink()
    with pytest.raises(ProjectFileError, match="is not there"):
        open_held(path)
    assert list(path.parent.iterdir()) == []


def test_opening_another_lets_the_first_go_and_a_refused_one_does_not(path, tmp_path):
    other, bad = tmp_path / "other.json", tmp_path / "bad.json"
    save(job("o"), other)
    bad.write_text("{}")
    mine, _ = open_held(path)
    with pytest.raises(ProjectFileError):
        open_held(bad, mine)
    assert holder_of(path) is not None
    _kept, _ = open_held(other, mine)
    assert holder_of(path) is None


def test_the_file_already_held_is_read_anew(path):
    mine, _ = open_held(path)
    save(job("theirs"), path)
    again, read = open_held(path, mine)
    assert again is mine
    assert read == job("theirs")
    assert mine.news() == ""


@pytest.mark.parametrize("same_moment", [False, True])
def test_what_somebody_else_wrote_is_never_written_over_unasked(path, same_moment):
    mine, _ = open_held(path)
    before = path.stat()
    path.write_bytes(dump(job("z")))  # as long as the old one
    if same_moment:
        os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))
    with pytest.raises(ChangedOnDiskError, match="was changed on disk by another program"):
        mine.save(job("b"))
    assert load(path) == job("z")
    mine.save(job("b"), over_theirs=True)
    assert load(path) == job("b")
    mine.save(job("c"))
    assert load(path) == job("c")


def test_a_change_in_the_last_moment_of_a_save_is_noticed_too(path, monkeypatch):
    mine, _ = open_held(path)
    fsync = os.fsync

    def slow_disk(handle):
        path.write_bytes(dump(job("theirs")))
        fsync(handle)

    monkeypatch.setattr(os, "fsync", slow_disk)
    with pytest.raises(ChangedOnDiskError):
        mine.save(job("mine"))
    assert load(path) == job("theirs")


def test_news_of_a_file_on_disk(path):
    mine, _ = open_held(path)
    assert mine.news() == ""
    os.utime(path)
    assert mine.news() == ""  # only touched
    save(job("theirs"), path)
    assert mine.news() == "changed"
    save(job("a"), path)
    assert mine.news() == ""  # as it was
    path.unlink()
    assert mine.news() == "gone"
    mine.save(job("b"))
    assert mine.news() == ""


def test_our_own_saves_are_no_news(path):
    mine, _ = open_held(path)
    for name in "bcd":
        mine.save(job(name))
        assert mine.news() == ""


def test_news_for_the_one_who_reads_only(path):
    theirs, _ = open_held(path)
    mine, _ = open_held(path)
    assert mine.news() == ""
    theirs.save(job("b"))
    assert mine.news() == "changed"
    theirs.release()
    assert mine.news() == "lock free"
    mine.take_over()
    assert mine.why_not == ""
    with pytest.raises(ChangedOnDiskError):
        mine.save(job("c"))


def test_the_one_who_reads_only_is_told_when_the_other_was_killed(path):
    theirs, _ = open_held(path)
    mine, _ = open_held(path)
    assert mine.news() == ""
    left_by(path, dead_owner())
    assert mine.news() == "lock stale"
    assert mine.why_not.startswith("plan.json is still marked as open by ann on ")
    theirs.release()


def test_a_stale_lock_is_taken_over_only_when_asked_and_the_other_notices(path):
    left_by(path, dead_owner())
    mine, _ = open_held(path)
    assert mine.why_not.startswith("plan.json is still marked as open by ann on ")
    with pytest.raises(ProjectFileError, match="was not saved"):
        mine.save(job("b"))
    mine.take_over()
    assert mine.why_not == ""
    mine.save(job("b"))
    left_by(path, dead_owner())
    assert mine.news() == "lock lost"
    assert mine.why_not.startswith("plan.json was taken over by ann on ")
    with pytest.raises(ProjectFileError, match="taken over by ann"):
        mine.save(job("c"))
    assert load(path) == job("b")


def test_a_save_notices_by_itself_that_the_lock_is_lost(path):
    mine, _ = open_held(path)
    left_by(path, dead_owner())
    with pytest.raises(ProjectFileError, match="taken over by ann"):
        mine.save(job("c"))
    assert load(path) == job("a")


def test_a_lock_that_lives_is_not_taken_over(path):
    _theirs, _ = open_held(path)
    mine, _ = open_held(path)
    mine.take_over()
    assert mine.why_not.startswith("plan.json is open by ")


def test_saving_as_takes_the_new_file_and_lets_the_old_one_go(path, tmp_path):
    mine, _ = open_held(path)
    new = tmp_path / "new.json"
    now = save_held(job("b"), new, mine)
    assert (holder_of(path), load(new), load(path)) == (None, job("b"), job("a"))
    assert open_held(new)[0].why_not.startswith("new.json is open by ")
    assert save_held(job("c"), new, now) is now


def test_saving_as_what_another_has_is_refused_and_keeps_what_is_held(path, tmp_path):
    other = tmp_path / "other.json"
    save(job("o"), other)
    _theirs, _ = open_held(other)
    mine, _ = open_held(path)
    with pytest.raises(LockedError, match=r"other.json is open by"):
        save_held(job("b"), other, mine)
    assert load(other) == job("o")
    assert mine.news() == ""
    assert holder_of(path) is not None


def test_saving_as_one_left_behind_needs_a_word(path):
    left_by(path, dead_owner())
    with pytest.raises(LockedError) as caught:
        save_held(job("b"), path, None)
    assert caught.value.holder.stale()
    save_held(job("b"), path, None, over_stale_lock=True)
    assert load(path) == job("b")


def test_a_save_that_fails_leaves_no_lock_on_the_new_name(path, tmp_path, monkeypatch):
    def full(_handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(ProjectFileError, match="no space left"):
        save_held(job("b"), tmp_path / "new.json", None)
    assert [each.name for each in tmp_path.iterdir()] == ["plan.json"]


def test_where_no_lock_can_be_put_it_is_read_only(path, monkeypatch):
    def nowhere(*_args, **_names):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("configurator.project_file.lock.tempfile.mkstemp", nowhere)
    mine, read = open_held(path)
    assert read == job("a")
    assert mine.why_not == "the folder of plan.json cannot be written: permission denied"
    assert mine.news() == ""


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_a_write_protected_file_is_read_only(path):
    path.chmod(0o444)
    mine, _ = open_held(path)
    assert mine.why_not == "plan.json is write-protected"
    assert holder_of(path) is None


def test_work_based_on_another_state_counts_as_changed_on_disk(path):
    mine, _ = open_held(path)
    mine.base_on(mine.digest)
    assert mine.news() == ""
    mine.base_on("of another")
    assert mine.news() == "changed"
    with pytest.raises(ChangedOnDiskError):
        mine.save(job("b"))


def test_a_new_file_is_held_before_it_is_written(tmp_path):
    file = HeldFile(tmp_path / "new.json")
    file.lock()
    assert holder_of(tmp_path / "new.json") is not None
    assert file.digest == ""
