"""What is asked about the file, in the real window: who has it, who changed it, what a crash left."""

import pytest
from PySide6.QtWidgets import QFileDialog, QMessageBox

from configurator.project_file import load, save
from configurator.project_file.held import open_held
from configurator.project_file.lock import holder_of
from configurator.project_file.recovery import left_behind, recovery_folder
from configurator.ui.app import open_window
from configurator.ui.state.edits import new_job
from configurator.ui.state.session import Session
from configurator.ui.window.window import Window
from tests.project_file.test_lock import dead_owner, left_by
from tests.project_file.test_recovery import left_by_a_crash


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "plan.json"
    save(named("as it was"), path)
    return path


@pytest.fixture
def window(qtbot, session, preferences):
    """The window with its commands and openings, looking after its file; the work area is not needed here."""
    window = Window(session, preferences)
    window.show()
    window.files.begin()
    yield window
    session.history.mark_saved()  # so that closing asks nobody
    window.close()
    window.deleteLater()


@pytest.fixture
def opened(window, path):
    """The window with the file in it, and nothing asked."""
    assert window.files.read(path)
    return window


def named(location):
    job = new_job()
    return job.model_copy(update={"openings": (job.openings[0].model_copy(update={"location": location}),)})


def question(window, about):
    return window.line.questions[about].words.text()


def answer(window, about, title):
    window.line.questions[about].buttons[title].click()


def save_enabled(window):
    return window.commands.actions_by_name["save"].isEnabled()


# --- Who has it ---


def test_a_free_file_asks_nothing(opened, path):
    assert opened.line is None or not opened.line.questions
    assert "read-only" not in opened.windowTitle()
    assert save_enabled(opened)
    assert holder_of(path) is not None


def test_a_file_that_another_has_opens_read_only_and_says_who(window, path):
    theirs, _ = open_held(path)
    window.files.read(path)
    assert question(window, "lock").startswith("plan.json is open by ")
    assert "read-only" in question(window, "lock")
    assert "plan.json (read-only)" in window.windowTitle().replace("[*]", "")
    assert not save_enabled(window)
    assert window.commands.actions_by_name["save_as"].isEnabled()
    assert "plan.json is open by" in window.commands.actions_by_name["save"].toolTip()
    theirs.release()


def test_what_is_changed_read_only_can_be_saved_under_another_name(window, path, tmp_path, monkeypatch):
    theirs, _ = open_held(path)
    window.files.read(path)
    window.session.edit("location", "mine")
    other = tmp_path / "other.json"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(other), ""))
    answer(window, "lock", "Save as…")
    assert load(other).openings[0].location == "mine"
    assert load(path).openings[0].location == "as it was"
    assert window.line.questions == {}
    assert save_enabled(window)
    assert "read-only" not in window.windowTitle()
    theirs.release()


def test_saving_over_the_file_that_another_has_is_refused(window, path, monkeypatch):
    theirs, _ = open_held(path)
    window.files.read(path)
    window.session.edit("location", "mine")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    assert not window.files.save()
    assert "plan.json was not saved: plan.json is open by" in window.line.text()
    assert load(path).openings[0].location == "as it was"
    theirs.release()


def test_when_the_other_has_gone_the_file_is_offered(window, path):
    theirs, _ = open_held(path)
    window.files.read(path)
    theirs.release()
    window.files._keeping.look()
    assert question(window, "lock").startswith("plan.json is free again")
    answer(window, "lock", "Take it for editing")
    assert window.line.questions == {}
    assert save_enabled(window)
    assert "read-only" not in window.windowTitle()


def test_a_stale_lock_is_taken_over_on_the_users_word(window, path):
    left_by(path, dead_owner())
    window.files.read(path)
    assert question(window, "lock").startswith("plan.json is still marked as open by ann on ")
    assert "has ended" in question(window, "lock")
    assert not save_enabled(window)
    answer(window, "lock", "Take it over")
    assert save_enabled(window)
    window.session.edit("location", "mine")
    assert window.files.save()
    assert load(path).openings[0].location == "mine"


def test_when_the_other_was_killed_its_lock_is_offered(window, path):
    theirs, _ = open_held(path)
    window.files.read(path)
    left_by(path, dead_owner())
    window.files._keeping.look()
    window.line.questions["lock"].put_away.emit()
    window.files._keeping.look()
    assert window.line.questions == {}  # told once
    window.files.questions.about_lock()
    answer(window, "lock", "Take it over")
    assert save_enabled(window)
    theirs.release()


def test_a_lock_that_was_lost_is_said_and_nothing_is_saved(opened, path):
    opened.session.edit("location", "mine")
    left_by(path, dead_owner())
    opened.files._keeping.look()
    assert question(opened, "lock").startswith("plan.json was taken over by ann on ")
    assert not save_enabled(opened)
    assert opened.session.history.unsaved


def test_saving_as_a_file_left_behind_asks_first(opened, tmp_path):
    other = tmp_path / "other.json"
    save(named("old"), other)
    left_by(other, dead_owner())
    assert not opened.files.write(other)
    assert load(other).openings[0].location == "old"
    answer(opened, "saving", "Take it over and save")
    assert load(other).openings[0].location == "as it was"
    assert opened.session.path == other


def test_a_question_about_a_save_goes_with_the_next_save(opened, tmp_path):
    left_by(tmp_path / "other.json", dead_owner())
    assert not opened.files.write(tmp_path / "other.json")
    assert "saving" in opened.line.questions
    assert opened.files.write(tmp_path / "third.json")
    assert opened.line.questions == {}


def test_closing_lets_the_file_go(opened, path):
    assert opened.close()
    assert holder_of(path) is None


def test_a_new_job_lets_the_file_go_and_is_not_read_only(window, path):
    theirs, _ = open_held(path)
    window.files.read(path)
    window.files.new()
    assert window.line.questions == {}
    assert "read-only" not in window.windowTitle()
    theirs.release()


# --- Who changed it ---


def test_a_change_on_disk_is_noticed_and_not_written_over(opened, path):
    opened.session.edit("location", "mine")
    save(named("theirs"), path)
    assert not opened.files.save()
    assert "changed on disk by another program" in question(opened, "change")
    assert load(path).openings[0].location == "theirs"
    assert opened.session.history.unsaved


def test_a_change_on_disk_is_noticed_by_looking(opened, path):
    save(named("theirs"), path)
    opened.files._keeping.look()
    assert "changed on disk by another program" in question(opened, "change")
    save(named("as it was"), path)
    opened.files._keeping.look()
    assert opened.line.questions == {}


def test_theirs_can_be_replaced_on_the_users_word(opened, path):
    opened.session.edit("location", "mine")
    save(named("theirs"), path)
    opened.files.save()
    answer(opened, "change", "Replace theirs")
    assert load(path).openings[0].location == "mine"
    assert opened.line.questions == {}
    assert not opened.session.history.unsaved


def test_mine_can_be_saved_elsewhere(opened, path, tmp_path, monkeypatch):
    opened.session.edit("location", "mine")
    save(named("theirs"), path)
    opened.files.save()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "mine.json"), ""))
    answer(opened, "change", "Save mine as…")
    assert load(tmp_path / "mine.json").openings[0].location == "mine"
    assert load(path).openings[0].location == "theirs"
    assert opened.line.questions == {}


def test_theirs_can_be_loaded_and_mine_comes_back(opened, path):
    opened.session.edit("location", "mine")
    save(named("theirs"), path)
    opened.files.save()
    answer(opened, "change", "Load theirs")
    assert opened.session.opening.location == "theirs"
    assert not opened.session.history.unsaved
    (left,) = left_behind()
    assert question(opened, left.place.name).startswith("Your own changes to plan.json of ")
    answer(opened, left.place.name, "Recover")
    assert opened.session.opening.location == "mine"
    assert opened.session.history.undo_name == "recover unsaved work"
    assert left_behind() == ()


def test_loading_theirs_without_changes_sets_nothing_aside(opened, path):
    save(named("theirs"), path)
    opened.files._keeping.look()
    answer(opened, "change", "Load theirs")
    assert opened.session.opening.location == "theirs"
    assert left_behind() == ()
    assert opened.line.questions == {}


def test_theirs_that_cannot_be_read_leaves_mine(opened, path):
    opened.session.edit("location", "mine")
    path.write_text("{}")
    opened.files.save()
    answer(opened, "change", "Load theirs")
    assert "was not opened" in opened.line.text()
    assert opened.session.opening.location == "mine"
    assert opened.session.history.unsaved
    assert "change" in opened.line.questions
    assert left_behind() == ()


def test_a_file_that_was_moved_is_said_and_written_anew(opened, path):
    path.unlink()
    opened.files._keeping.look()
    assert "moved or deleted" in question(opened, "change")
    assert opened.files.save()
    assert load(path).openings[0].location == "as it was"
    assert opened.line.questions == {}


def test_read_only_the_other_s_save_can_be_loaded(window, path):
    theirs, _ = open_held(path)
    window.files.read(path)
    theirs.save(named("theirs"))
    window.files._keeping.look()
    assert list(window.line.questions["change"].buttons) == ["Load theirs"]
    answer(window, "change", "Load theirs")
    assert window.session.opening.location == "theirs"
    assert "plan.json is open by" in question(window, "lock")
    theirs.release()


# --- What a crash left behind ---


def offered(window):
    window.files.questions.offer_left_behind()
    (left,) = left_behind()
    return left.place.name


def test_unsaved_work_is_recovered_into_its_file(window, path):
    left_by(path, dead_owner())
    left_by_a_crash(path=path, job=named("mine"), based_on=open_held(path)[0].digest)
    about = offered(window)
    assert question(window, about).startswith("The program ended without saving plan.json; ")
    answer(window, about, "Recover")
    assert window.session.path == path
    assert window.session.opening.location == "mine"
    assert window.session.history.unsaved
    assert "read-only" not in window.windowTitle()
    assert window.line.questions == {}
    assert window.files.save()
    assert load(path).openings[0].location == "mine"
    window.session.undo()
    assert window.session.opening.location == "as it was"
    window.session.history.mark_saved()


def test_recovered_work_is_kept_until_it_is_saved(window, path):
    left_by_a_crash(path=path, job=named("mine"))
    answer(window, offered(window), "Recover")
    assert left_behind() == ()
    assert len(list(recovery_folder().glob("*.recovery"))) == 1
    assert window.files.write(path, over_theirs=True)
    assert list(recovery_folder().iterdir()) == []


def test_recovered_work_never_replaces_a_later_state_unasked(window, path):
    left_by_a_crash(path=path, job=named("mine"), based_on="of an older state")
    answer(window, offered(window), "Recover")
    assert not window.files.save()
    assert "changed on disk" in question(window, "change")
    assert load(path).openings[0].location == "as it was"


def test_work_that_was_never_saved_is_recovered_as_a_new_job(window):
    left_by_a_crash(job=named("mine"))
    answer(window, offered(window), "Recover")
    assert window.session.path is None
    assert window.session.opening.location == "mine"
    assert window.session.history.unsaved
    assert "not saved yet" in window.windowTitle()


def test_discarded_work_is_gone(window):
    left_by_a_crash(job=named("mine"))
    answer(window, offered(window), "Discard")
    assert left_behind() == ()
    assert list(window.line.questions) == ["discarded"]


def test_discarding_is_taken_back(window):
    left_by_a_crash(job=named("mine"))
    about = offered(window)
    answer(window, about, "Discard")
    assert "30 days" in question(window, "discarded")
    answer(window, "discarded", "Bring it back")
    (again,) = window.line.questions
    answer(window, again, "Recover")
    assert window.session.opening.location == "mine"


def test_discarded_work_is_found_again_after_another_start(window):
    window.files.questions.offer_discarded()
    assert "No discarded work is kept" in window.line.text()
    left_by_a_crash(job=named("mine"))
    answer(window, offered(window), "Discard")
    window.line.questions["discarded"].put_away.emit()
    window.commands.actions_by_name["discarded"].trigger()
    (about,) = window.line.questions
    assert question(window, about).startswith("Discarded: ")
    answer(window, about, "Bring it back")
    answer(window, about, "Recover")
    assert window.session.opening.location == "mine"


def test_work_put_away_is_offered_again(window):
    left_by_a_crash(job=named("mine"))
    about = offered(window)
    window.line.questions[about].put_away.emit()
    assert window.line.questions == {}
    assert offered(window) == about


def test_recovering_asks_about_unsaved_work_first(window, monkeypatch):
    left_by_a_crash(job=named("mine"))
    window.session.edit("location", "here")
    monkeypatch.setattr(QMessageBox, "question", lambda *_: QMessageBox.StandardButton.Cancel)
    about = offered(window)
    answer(window, about, "Recover")
    assert window.session.opening.location == "here"
    assert about in window.line.questions


def test_work_that_is_broken_is_said_and_stays(window):
    file = left_by_a_crash(job=named("mine"))
    file.place.write_bytes(file.place.read_bytes()[:-9])
    job = window.session.job
    answer(window, offered(window), "Recover")
    assert window.line.text().startswith("It was not recovered: ")
    assert window.session.job is job
    assert len(left_behind()) == 1


def test_work_that_another_window_took_is_said(window):
    left_by_a_crash(job=named("mine"))
    about = offered(window)
    left_behind()[0].claim()
    answer(window, about, "Recover")
    assert "Another window" in window.line.text()


def test_a_program_that_starts_offers_by_itself_what_a_crash_left(qtbot, preferences):
    left_by_a_crash(job=named("mine"))
    window = open_window(Session(), preferences)
    window.show()
    qtbot.waitUntil(lambda: window.line is not None and bool(window.line.questions))
    (row,) = window.line.questions.values()
    assert row.words.text().startswith("The program ended without saving a job that was never saved (")
    assert row.isVisible()
    assert not window.line.words.isVisible()
    window.close()
    window.deleteLater()
