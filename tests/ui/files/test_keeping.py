"""Unsaved work is kept a few seconds after an edit, and forgotten when it is saved or given up."""

import os

import pytest

from configurator.project_file import parse, save
from configurator.project_file.lock import holder_of
from configurator.project_file.recovery import recovery_folder
from configurator.ui.files import keeping as module
from configurator.ui.files.keeping import Keeping
from configurator.ui.state.session import Session


class Told(list):
    """What was told, in order."""


@pytest.fixture
def session(qapp, tmp_path):
    session = Session(studier=lambda *_: None)
    save(session.job, tmp_path / "plan.json")
    session.open(tmp_path / "plan.json")
    return session


@pytest.fixture
def news():
    return Told()


@pytest.fixture
def trouble():
    return Told()


@pytest.fixture
def keeping(session, news, trouble, monkeypatch):
    monkeypatch.setattr(module, "KEPT_AFTER", 0.02)
    keeping = Keeping(session, news.append, trouble.append)
    yield keeping
    keeping.close()


def kept():
    """The locations in the jobs that are kept just now."""
    folder = recovery_folder()
    files = list(folder.glob("*.recovery")) if folder.exists() else []
    return [parse(file.read_bytes().partition(b"\n")[2]).openings[0].location for file in files]


def until_all_is_kept(qtbot):
    """Wait until an edit made now, in another window, is kept: whatever was to be kept before it has been."""
    other = Session(studier=lambda *_: None)
    last = Keeping(other, lambda _: None, lambda _: None)
    other.edit("location", "the last edit")
    qtbot.waitUntil(lambda: "the last edit" in kept())
    last.close()


def test_an_edit_is_kept_soon(qtbot, session, keeping):
    assert kept() == []
    session.edit("location", "Galley")
    qtbot.waitUntil(lambda: kept() == ["Galley"])
    session.edit("location", "Bridge")
    qtbot.waitUntil(lambda: kept() == ["Bridge"])


def test_edits_without_a_pause_are_kept_all_the_same(qtbot, session, keeping, monkeypatch):
    keeping._soon.setInterval(200)
    number = 0

    def another():
        nonlocal number
        number += 1
        session.edit("location", f"edit {number}")
        return kept() != []

    qtbot.waitUntil(another)


def test_it_does_not_last_longer_than_the_bar_allows():
    assert module.KEPT_AFTER <= 5


@pytest.mark.parametrize("way", ["save", "undo", "start_new"])
def test_what_is_saved_or_given_up_is_forgotten(qtbot, session, keeping, way):
    session.edit("location", "Galley")
    qtbot.waitUntil(lambda: kept() == ["Galley"])
    getattr(session, way)()
    assert kept() == []
    until_all_is_kept(qtbot)
    assert kept() == []


def test_looking_about_keeps_nothing(qtbot, session, keeping):
    session.swing(30)
    session.use_dark(True)
    until_all_is_kept(qtbot)
    assert kept() == []


def test_a_job_that_was_never_saved_is_kept(qtbot, session, keeping):
    session.start_new()
    session.add_opening()
    session.edit("location", "Galley")
    qtbot.waitUntil(lambda: kept() == ["Galley"])


def test_closing_in_order_forgets_and_lets_the_file_go(qtbot, session, news, trouble, tmp_path):
    keeping = Keeping(session, news.append, trouble.append)
    session.edit("location", "Galley")
    assert keeping.keep_now()
    assert kept() == ["Galley"]
    keeping.close()
    assert kept() == []
    assert holder_of(tmp_path / "plan.json") is None


def test_two_windows_keep_their_own(qtbot, session, keeping, tmp_path):
    other = Session(studier=lambda *_: None)
    second = Keeping(other, lambda _: None, lambda _: None)
    session.edit("location", "Galley")
    other.edit("location", "Bridge")
    qtbot.waitUntil(lambda: sorted(kept()) == ["Bridge", "Galley"])
    second.close()
    assert kept() == ["Galley"]


def test_what_cannot_be_kept_is_told_once(qtbot, session, keeping, trouble, own_state_folder):
    (own_state_folder / "opening-configurator").write_bytes(b"in the way")
    session.edit("location", "Galley")
    assert not keeping.keep_now()
    keeping.look()
    keeping.look()
    (sentence,) = trouble
    assert sentence.startswith("Unsaved work is not kept against a crash just now: ")


def test_whatever_stops_the_keeping_is_told_and_it_is_tried_again(
    qtbot, session, keeping, trouble, monkeypatch, caplog
):
    write, failures = keeping.recovery.write, [KeyError("pin"), KeyError("pin"), OSError(28, "No space left")]

    def written(*given):
        if failures:
            raise failures.pop(0)
        write(*given)

    monkeypatch.setattr(keeping.recovery, "write", written)
    session.edit("location", "Galley")
    qtbot.waitUntil(lambda: kept() == ["Galley"])
    start = "Unsaved work is not kept against a crash just now: "
    assert trouble == [
        f"{start}something went wrong in the program (KeyError: 'pin').",
        f"{start}No space left.",
    ]
    assert "KeyError" in caplog.text


def test_news_is_told_once(session, keeping, news, tmp_path):
    path = tmp_path / "plan.json"
    keeping.look()
    assert news == []
    save(session.job.model_copy(update={"openings": ()}), path)
    for _ in range(3):
        keeping.look()
    assert news == ["changed"]
    path.unlink()
    keeping.look()
    assert news == ["changed", "gone"]


def test_a_sign_of_life_is_given_at_every_look(session, keeping, tmp_path):
    lock = tmp_path / ".plan.json.lock"
    os.utime(lock, (1, 1))
    keeping.look()
    assert lock.stat().st_mtime > 1
