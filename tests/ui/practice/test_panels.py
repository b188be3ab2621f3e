import pytest

from configurator.practice.course import TOPICS
from configurator.practice.progress import load_progress
from configurator.practice.sets import SetAsked, problem_set
from configurator.practice.small_job import mark_job
from configurator.project_file import load
from configurator.ui.practice.people import CLASS, JOB
from configurator.ui.practice.small_job import job_file


def choose(page, key):
    page.who.topics.choose(key)
    rows = [row.key for row in page.who.topics.model().rows]
    page.who.topics.setCurrentCell(rows.index(key), 0)


@pytest.fixture
def job(page):
    choose(page, f"{JOB}2")
    return page.job


def point(job, cells):
    for row, place in cells:
        job.order.clicked.emit(job.model.index(row, place))


def test_a_small_job_shows_its_schedule_and_its_order(page, job):
    assert page.room.currentWidget() is job
    assert job.heading.text() == "Small job, level 2: 2 slips"
    assert [job.schedule.text(row, 0) for row in range(4)] == ["101", "102", "103", "104"]
    assert job.order.rowCount() == len(job.one.order)
    assert page.who.topics.text(page.who.topics.currentRow(), 0) == "Small job, level 2"


def test_it_is_marked_and_passed(page, job):
    wrong = sorted(mark_job(job.one, ()).missed)
    job.check.click()
    assert job.verdict.text().startswith("▲ Click the cells")
    point(job, wrong[:1])
    assert job.order.text(*wrong[0]).startswith("● ")
    job.check.click()
    assert job.verdict.text() == "✖ 1 of 2 slips found. Look again."
    assert job.order.text(*wrong[0]).startswith("✔ ")
    assert "should read" in job.why.text()
    assert load_progress("trainee").jobs == {}
    point(job, wrong[1:])
    job.check.click()
    assert job.verdict.text() == "✔ All 2 slips found, and nothing else pointed at."
    assert set(load_progress("trainee").jobs) == {"2"}
    assert page.who.topics.text(page.who.topics.currentRow(), 1) == "✔ done"


def test_a_cell_that_is_right_is_told_and_can_be_taken_back(job):
    wrong = mark_job(job.one, ()).missed
    fine = next((0, place) for place in range(1, 6) if (0, place) not in wrong)
    point(job, [fine])
    job.check.click()
    assert job.order.text(*fine).startswith("✖ ")
    point(job, [fine])
    assert job.order.text(*fine) == job.one.order[0][fine[1]]


def test_what_is_wrong_is_shown_without_passing(job):
    job.tell.click()
    assert job.why.text().count("should read") == 2
    assert load_progress("trainee").jobs == {}
    before = job.one
    job.other.click()
    assert job.one is not before
    assert not job.why.isVisible()


def test_the_job_is_opened_in_the_programs_own_pages_and_practice_goes_on_with_it(window, in_window):
    page, before = in_window, window.session.path
    choose(page, f"{JOB}2")
    one = page.job.one
    page.job.open.click()
    assert window.session.path == job_file(2) != before
    assert window.session.job.openings == one.job.openings
    assert load(job_file(2)).openings == one.job.openings
    assert "The small job is open." in window.line.text()
    window.turn_to("order")
    lines = window.pages.made["order"]
    assert lines.isVisible()
    window.turn_to("practice")
    assert page.job.isVisible()
    assert page.job.one is one


def test_a_set_for_a_class_is_listed_and_written(page, tmp_path, monkeypatch):
    choose(page, CLASS)
    teacher = page.teacher
    teacher.number.setValue(12)
    teacher.level.setCurrentIndex(1)
    asked = SetAsked(12, 1)
    assert teacher.asked() == asked
    numbers = [str(number) for number, _ in problem_set(asked)]
    assert [teacher.list.text(row, 1) for row in range(10)] == numbers
    path = tmp_path / "set"
    monkeypatch.setattr(
        "configurator.ui.practice.teacher.QFileDialog.getSaveFileName", lambda *_: (str(path), "")
    )
    teacher.write.click()
    assert path.with_name("set.pdf").read_bytes().startswith(b"%PDF")


def test_a_set_that_cannot_be_is_said(page):
    choose(page, CLASS)
    teacher = page.teacher
    teacher.level.setCurrentIndex(5)
    teacher.topic.setCurrentIndex(1 + TOPICS.index("hands"))
    assert teacher.fault.text() == "Topic hands has no problems of level 5."
    assert not teacher.write.isEnabled()
    assert teacher.list.rowCount() == 0


def test_progress_is_printed(bare_window, page, tmp_path, monkeypatch):
    path = tmp_path / "wren.pdf"
    monkeypatch.setattr(
        "configurator.ui.practice.teacher.QFileDialog.getSaveFileName", lambda *_: (str(path), "")
    )
    assert not page.who.print_it.isEnabled()
    page.answer("99999")
    page.who.print_it.click()
    assert path.read_bytes().startswith(b"%PDF")
    assert "The progress of trainee is written to wren.pdf." in bare_window.line.text()


def test_a_topic_leads_back_to_the_problems(page):
    choose(page, CLASS)
    choose(page, "hands")
    assert page.room.currentWidget() is page.split
    assert page.exercise.posed.template.topic == "hands"
