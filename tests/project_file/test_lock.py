"""The lock beside a project file: one program at a time, told apart from one left behind."""

import json
import os
import stat
import subprocess
import sys
import time
from dataclasses import asdict, replace
from threading import Thread

import pytest

from configurator.project_file.lock import (
    QUIET_TOO_LONG,
    Holder,
    Lock,
    LockedError,
    clock,
    holder_of,
    lock_place,
)
from configurator.project_file.owner import this_program


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "plan.json"
    path.write_bytes(b"{}")
    return path


def names(path):
    return sorted(each.name for each in path.parent.iterdir())


def dead_owner():
    process = subprocess.Popen([sys.executable, "-c", ""])
    process.wait()
    return replace(this_program(), user="ann", host=this_program().host, pid=process.pid)


def left_by(path, owner, since=None) -> Holder:
    data = {"token": "t", "since": since or time.time(), "owner": asdict(owner)}
    lock_place(path).write_text(json.dumps(data))
    holder = holder_of(path)
    assert holder is not None
    return holder


def test_it_stands_beside_the_file_and_is_gone_when_released(path):
    lock = Lock(path)
    assert lock.take() is None
    assert names(path) == [".plan.json.lock", "plan.json"]
    assert stat.S_IMODE(lock_place(path).stat().st_mode) == 0o644
    lock.release()
    assert names(path) == ["plan.json"]
    assert holder_of(path) is None


def test_the_second_is_told_who_has_it_since_when(path):
    Lock(path).take()
    holder = Lock(path).take()
    assert holder is not None
    assert not holder.stale()
    assert holder.owner == this_program()
    assert abs(holder.since - time.time()) < 60
    assert names(path) == [".plan.json.lock", "plan.json"]
    here = this_program()
    said = f"plan.json is open by {here.user} on {here.host} since {clock(holder.since)}"
    assert str(LockedError(path, holder)) == said


def test_links_to_one_file_share_its_lock(path):
    link = path.with_name("link.json")
    link.symlink_to(path)
    assert Lock(path).take() is None
    assert Lock(link).take() is not None


def test_a_killed_program_leaves_a_stale_lock_that_is_not_taken_unasked(path):
    old = left_by(path, dead_owner())
    assert old.stale()
    assert str(LockedError(path, old)).startswith("plan.json is still marked as open by ann on ")
    assert Lock(path).take() == old
    lock = Lock(path)
    assert lock.replace(old) is None
    assert lock.keep()
    assert names(path) == [".plan.json.lock", "plan.json"]


def test_a_lock_that_lives_is_never_replaced(path):
    Lock(path).take()
    living = holder_of(path)
    assert Lock(path).replace(living) is not None


def test_of_two_who_take_over_one_stale_lock_one_has_it(path):
    old = left_by(path, dead_owner())
    first, second = Lock(path), Lock(path)
    assert first.replace(old) is None
    other = second.replace(old)
    assert other is not None
    assert other.token != old.token
    assert first.keep()
    assert not second.keep()


def test_one_taken_over_is_noticed_and_not_released_from_under_the_other(path):
    slept = Lock(path)
    slept.take()
    left_by(path, dead_owner())
    assert not slept.keep()
    slept.release()
    assert holder_of(path) is not None


def test_one_that_was_deleted_is_put_back(path):
    lock = Lock(path)
    lock.take()
    lock_place(path).unlink()
    assert lock.keep()
    assert Lock(path).take() is not None


@pytest.mark.parametrize(("quiet", "stale"), [(QUIET_TOO_LONG - 60, False), (QUIET_TOO_LONG + 60, True)])
def test_one_from_elsewhere_is_stale_after_ten_quiet_minutes(path, quiet, stale):
    left_by(path, replace(this_program(), host="elsewhere"))
    then = time.time() - quiet
    os.utime(lock_place(path), (then, then))
    holder = holder_of(path)
    assert holder is not None
    assert holder.stale() is stale


def test_a_sign_of_life_is_given(path):
    lock = Lock(path)
    lock.take()
    os.utime(lock_place(path), (1, 1))
    assert lock.keep()
    assert time.time() - lock_place(path).stat().st_mtime < 60


NO_LOCKS = ["", "{", "[]", "null", '{"token": 1}', "x" * 9999, '{"token": "", "since": "x", "owner": 1}']


@pytest.mark.parametrize("text", NO_LOCKS)
def test_a_lock_that_cannot_be_read_is_somebodys(path, text):
    lock_place(path).write_text(text)
    holder = Lock(path).take()
    assert holder is not None
    assert holder.words().startswith("somebody since ")
    assert not holder.stale()
    os.utime(lock_place(path), (1, 1))
    holder = Lock(path).take()
    assert holder is not None
    assert holder.stale()


def test_where_there_are_no_hard_links_it_works_too(path, monkeypatch):
    def no_links(*_):
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(os, "link", no_links)
    lock = Lock(path)
    assert lock.take() is None
    assert lock.keep()
    assert Lock(path).take() is not None
    assert names(path) == [".plan.json.lock", "plan.json"]


def test_where_nothing_can_be_written_it_says_so(tmp_path):
    with pytest.raises(OSError, match="No such file"):
        Lock(tmp_path / "nowhere" / "plan.json").take()


def test_of_many_at_once_one_has_it(path):
    got = []
    threads = [Thread(target=lambda: got.append(Lock(path).take())) for _ in range(12)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert got.count(None) == 1
    assert names(path) == [".plan.json.lock", "plan.json"]


def test_what_a_cut_off_save_left_is_swept_when_the_file_is_taken(path):
    old = path.with_name(".plan.json.abcdef.part")
    old.write_bytes(b"half")
    os.utime(old, (1, 1))
    Lock(path).take()
    assert not old.exists()


def test_the_clock_names_the_day_unless_it_is_today():
    noon = time.mktime((2026, 3, 4, 12, 5, 0, 0, 0, -1))
    assert clock(noon) == "2026-03-04 12:05"
    now = time.time()
    assert clock(now) == time.strftime("%H:%M", time.localtime(now))
    assert clock(float("inf")) == "an unknown time"


@pytest.mark.parametrize("name", ["x" * 236, "x" * 240, "x" * 241, "x" * 255, "日" * 85])
def test_a_file_with_a_long_name_can_be_locked(tmp_path, name):
    path = tmp_path / name
    path.write_bytes(b"{}")
    lock, second = Lock(path), Lock(path)
    assert lock.take() is None
    assert second.take() is not None
    lock.release()
    assert second.take() is None


def test_files_whose_long_names_begin_alike_have_locks_of_their_own(tmp_path):
    one, other = tmp_path / ("x" * 245 + "1"), tmp_path / ("x" * 245 + "2")
    assert lock_place(one) != lock_place(other)


@pytest.mark.parametrize("kind", ["pipe", "link to nowhere", "link to itself"])
def test_what_no_program_of_ours_put_in_the_place_of_a_lock_may_be_taken_over(path, kind):
    place = lock_place(path)
    if kind == "pipe":
        os.mkfifo(place)
    else:
        place.symlink_to("nowhere" if kind == "link to nowhere" else place.name)
    lock = Lock(path)
    holder = lock.take()
    assert holder is not None
    assert holder.stale()
    assert lock.replace(holder) is None
    assert lock.keep()
    lock.release()
    assert names(path) == ["plan.json"]


def test_a_full_disk_leaves_nothing_of_a_lock(path, monkeypatch):
    def full(self):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Lock, "_bytes", full)
    with pytest.raises(OSError, match="No space"):
        Lock(path).take()
    assert names(path) == ["plan.json"]
