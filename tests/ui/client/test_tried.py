"""A typical door is tried through the real widgets: the job changes when it is kept, and not before."""

import pytest
from PySide6.QtCore import Qt

from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from configurator.ui.client.starts import STARTS
from configurator.ui.client.tried import ASKED, WAITS


def hinges(job):
    return take_off(tally_job(job)).hinges


def press(page, name):
    page.questions.starts.buttons[name].click()


def test_no_tile_and_no_answer_to_it_changes_the_job(qtbot, page, session):
    before, count = session.job, hinges(session.job)
    for name in STARTS:
        press(page, name)
        assert page.shown is not session
        assert page.tried_bar.isVisible()
        if name != "Closet at home":
            continue
        page.questions.walls.buttons["Block or brick"].click()
        page.questions.things.buttons["Chair rail"].click()
        page.questions.sizes[0].more.click()
        for stepper in page.questions.measures:
            stepper.more.click()
            stepper.measured.click()
        page.questions.undo.click()
        page.controls.slider.setValue(300)
        page.player.toggle()
        page.player.toggle()
    assert session.job is before
    assert hinges(session.job) == count
    assert not session.history.unsaved
    assert session.history.undo_name is None


def test_kept_it_is_in_the_job_as_one_step(page, session):
    before = session.job
    press(page, "Closet at home")
    page.questions.sizes[0].more.click()
    page.tried_bar.keep.click()
    assert len(session.job.openings) == len(before.openings) + 1
    assert session.opening.size.width == 34
    assert session.opening.frame.kind == "wood with casing"
    assert page.shown is session
    assert not page.tried_bar.isVisible()
    session.undo()
    assert session.job == before


def test_put_away_nothing_is_left_of_it(page, session):
    before = session.job
    press(page, "Pair of doors")
    page.tried_bar.drop.click()
    assert session.job is before
    assert page.shown is session
    assert page.heading.text().startswith("Door 112A")


def test_on_leaving_it_is_asked_whether_to_keep_it(qtbot, window, in_window, session):
    before = session.job
    press(in_window, "Office door")
    qtbot.keyClick(in_window, Qt.Key.Key_Escape)
    assert in_window.isVisible()
    assert in_window.tried_bar.words.text() == ASKED
    in_window.tried_bar.drop.click()
    assert not in_window.isVisible()
    assert session.job is before


def test_kept_on_leaving_it_is_what_the_work_shows(window, in_window, session):
    press(in_window, "Office door")
    in_window.controls.buttons["back"].click()
    in_window.tried_bar.keep.click()
    assert not in_window.isVisible()
    assert session.opening.door.construction == "wood, solid core"


def test_left_by_another_way_the_window_leads_back_to_it(window, in_window, session):
    waiting = []
    in_window.waiting.connect(waiting.append)
    press(in_window, "Office door")
    window.commands.actions_by_name["schedule"].trigger()
    assert waiting[-1] == WAITS
    window.commands.actions_by_name["client"].trigger()
    assert waiting[-1] == ""
    assert in_window.shown is not session
    in_window.tried_bar.drop.click()


def test_undo_and_redo_go_to_the_door_that_is_tried(qtbot, window, in_window, session):
    session.edit("size.width", 40)
    press(in_window, "Office door")
    in_window.questions.sizes[0].more.click()
    tried = in_window.shown
    assert tried.opening.size.width == 38
    qtbot.keyClick(in_window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert tried.opening.size.width == 36
    assert session.opening.size.width == 40
    in_window.tried_bar.drop.click()
    qtbot.keyClick(in_window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert session.opening.size.width == 36


def test_another_job_does_not_get_the_door_that_was_tried(page, session):
    said = []
    page.said.connect(said.append)
    press(page, "Office door")
    session.start_new()
    assert page.shown is session
    assert any("not kept" in sentence for sentence in said)


@pytest.mark.parametrize("dark", [False, True])
def test_what_is_tried_is_shown_as_the_job_is(page, session, dark):
    press(page, "Office door")
    session.use_dark(dark)
    assert page.shown.dark == dark
    assert page.canvas._dark == dark
