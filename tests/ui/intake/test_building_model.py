"""A building model on the import page, and the plan of its storeys."""

import sys
import time
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QFileDialog

from configurator.building.library import MISSING
from configurator.building.reading import read_model
from configurator.long_work import Cancelled
from configurator.ui.intake import work
from configurator.ui.intake.page import ImportPage
from tests.building.conftest import terminal  # noqa: F401 - the fixture
from tests.ui.intake.test_import_page import choose


@pytest.fixture(scope="module")
def model(terminal):  # noqa: F811
    return read_model(terminal)


@pytest.fixture
def page(qtbot, session):
    page = ImportPage(session)
    qtbot.addWidget(page)
    page.resize(1200, 700)
    page.show()
    return page


@pytest.fixture
def shown(qtbot, page, model, terminal, monkeypatch):  # noqa: F811
    """The page with the model read; its own process has a test of its own."""
    monkeypatch.setattr(work, "read_apart", lambda path, progress: model)
    page.read(terminal)
    qtbot.waitUntil(lambda: not page.work.running)
    return page


def answer(page):
    for question, said in (
        ("overall size", "opening"),
        ("outside", "push"),
        ("no hinged door", "leave out"),
        ("no opening", "leave out"),
    ):
        choose(page.asked[question].answers, said)


def test_a_model_is_shown_asked_about_and_taken(shown, session):
    assert shown.words.text().startswith("terminal.ifc: 4 doors; 0 good, 4 with a fault")
    assert not shown.asked["overall size"].isHidden()
    answer(shown)
    assert "2 good (1 new, 1 changed), 2 left out" in shown.words.text()
    before = len(session.job.openings)
    shown.take.every.click()
    assert len(session.job.openings) == before + 1  # 112A is a mark of the job already
    taken = next(one for one in session.job.openings if one.mark == "112A")
    assert [one.element.split(" (")[0] for one in taken.obstructions if one.element] == ["Chair rail"]
    assert shown.storeys.isVisibleTo(shown)


def test_a_hand_that_is_not_known_can_be_typed(shown):
    answer(shown)
    choose(shown.asked["outside"].answers, "open")
    column = [" ".join(title.split()) for title in shown.work.table.titles()].index("Hand")
    shown.work.correct(4, column, "RHR")
    pair = next(row.opening for row in shown.work.compared.good if row.opening.mark == "115")
    assert pair.hand == "RHR"


def test_another_hand_refuses_what_was_found_for_the_model_s_own(shown):
    answer(shown)
    titles = [" ".join(title.split()) for title in shown.work.table.titles()]
    shown.work.correct(1, titles.index("Hand"), "RH")
    reasons = {fault.heading: fault.reason for fault in shown.work.compared.faults()}
    assert reasons["Found along the wall"] == (
        "found for a door that is LH or RHR, and the hand is RH: blank it"
    )
    for title in ("Found along the wall", "Wall layers", "Frame proud of wall (mm)"):
        shown.work.correct(1, titles.index(title), "")
    assert not shown.work.compared.bad


def test_what_was_found_is_not_taken_where_its_column_is_not_read(shown):
    answer(shown)
    column = [" ".join(title.split()) for title in shown.work.table.titles()].index("Found along the wall")
    shown.work.use_field(column, None)
    assert all(not row.opening.obstructions or row.before for row in shown.work.compared.good)
    changed = next(row for row in shown.work.compared.good if row.opening.mark == "112A")
    assert not any(change.path == "obstructions" for change in changed.changes)


def test_reading_can_be_stopped_and_nothing_stays(qtbot, page, terminal, monkeypatch):  # noqa: F811
    def slow(path, progress):
        while True:
            progress(1, 10)
            time.sleep(0.005)

    monkeypatch.setattr(work, "read_apart", slow)
    page.read(terminal)
    assert page.work.running
    qtbot.waitUntil(lambda: "1 of 10" in page.progress.words.text())
    page.progress.cancel.click()
    assert not page.work.running
    assert (page.work.table, page.work.refusal) == (None, "")
    assert page.choose.isEnabled()


def test_the_process_that_reads_is_ended_when_the_work_stops(terminal, monkeypatch):  # noqa: F811
    from configurator.building import apart

    started = []
    popen = apart.subprocess.Popen

    def kept(*words, **how):
        started.append(popen(*words, **how))
        return started[-1]

    monkeypatch.setattr(apart.subprocess, "Popen", kept)

    def stop(done, total):
        raise Cancelled

    with pytest.raises(Cancelled):
        apart.read_apart(terminal, stop)
    assert started[0].poll() is not None


def test_a_file_that_is_no_model_is_one_sentence(qtbot, page, tmp_path):
    path = tmp_path / "doors.ifc"
    path.write_text("Doors of Kestrel Point")
    page.read(path)
    qtbot.waitUntil(lambda: not page.work.running)
    assert page.refusal.text() == "doors.ifc is no IFC file: it does not begin with ISO-10303-21."
    assert page.work.table is None


def test_without_the_library_the_page_says_how_to_get_it(page, monkeypatch):
    monkeypatch.setitem(sys.modules, "ifcopenshell", None)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: pytest.fail("nothing is to be asked"))
    page.model.click()
    assert page.refusal.isVisibleTo(page)
    assert MISSING[1:] in page.refusal.text()


def test_the_file_menu_leads_to_a_model(window, terminal, model, monkeypatch, qtbot):  # noqa: F811
    monkeypatch.setattr(work, "read_apart", lambda path, progress: model)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(terminal), ""))
    window.commands.actions_by_name["model"].trigger()
    page = window.pages.made["import"]
    qtbot.waitUntil(lambda: not page.work.running)
    assert window.pages.on_show == "import"
    assert page.work.refusal == ""
    assert page.work.table.source == "model"


# --- The plan of the storeys


@pytest.fixture
def plan(qtbot, shown):
    answer(shown)
    shown.take.every.click()
    shown.storeys.click()
    qtbot.addWidget(shown.plan)
    qtbot.waitUntil(lambda: not shown.plan.working.running)
    return shown.plan


def door(plan, tag):
    return next(one.global_id for one in plan._work.model.doors if one.tag == tag)


def place(plan, key):
    x, y = plan.canvas.sheet.doors[key]
    return QPoint(round(x / 0.75), round(plan.canvas.height() - y / 0.75))


def test_the_plan_has_every_door_with_how_it_stands(plan):
    assert [plan.storeys.itemText(n) for n in range(plan.storeys.count())] == ["Level 1"]
    named = plan._named()
    assert named[door(plan, "113")] == ("113", "")
    assert named[door(plan, "112A")][0] == "112A"
    assert named[door(plan, "112A")][1] in ("fine", "warns", "fails")
    assert set(plan.canvas.sheet.doors) == {one.global_id for one in plan._work.model.doors}


def test_a_click_goes_to_the_opening_and_the_pointer_says_how_it_stands(qtbot, plan, session):
    session.select("101A")
    qtbot.mouseClick(plan.canvas, Qt.MouseButton.LeftButton, pos=place(plan, door(plan, "112A")))
    assert session.mark == "112A"
    plan.canvas.pointed.emit(door(plan, "113"))
    assert plan.words.text() == "113: not in the job, or not worked out yet."


def test_the_wheel_makes_it_larger_where_the_pointer_is(plan):
    key = door(plan, "112A")
    before = place(plan, key)
    at = QPointF(before)
    for _ in range(3):
        none, still = Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase
        buttons, up = Qt.MouseButton.NoButton, QPoint(0, 120)
        turned = QWheelEvent(at, plan.canvas.mapToGlobal(at), QPoint(), up, buttons, none, still, False)
        QApplication.sendEvent(plan.canvas, turned)
    after, other = place(plan, key), place(plan, door(plan, "115"))
    assert (after - before).manhattanLength() <= 2
    assert other.x() > plan.canvas.width()


@pytest.mark.parametrize("ending", ["pdf", "svg"])
def test_it_is_written_as_a_page(plan, tmp_path, ending):
    path = tmp_path / f"level.{ending}"
    plan.write(path)
    assert path.stat().st_size > 1000
    assert plan.words.text() == f"Written to level.{ending}."
    plan.write(Path(tmp_path / "none" / "level.pdf"))
    assert "was not written" in plan.words.text()
