import json
import os
from dataclasses import replace
from datetime import date, timedelta

import pytest

from configurator.practice.course import BY_KEY, TEMPLATES, course, of_topic
from configurator.practice.progress import (
    Day,
    Progress,
    Tally,
    clear_progress,
    file_of,
    load_progress,
    people,
    practice_folder,
    save_progress,
    strength,
)

pytestmark = pytest.mark.usefixtures("own_state_folder")
FIRST, SECOND = course()[:2]
DAY = date(2026, 11, 25)


def later(days):
    return DAY + timedelta(days=days)


def test_nothing_is_known_of_a_new_person():
    assert load_progress("Wren") == Progress("Wren")
    assert people() == ()


def test_answers_are_counted_and_a_wrong_one_ends_the_row():
    progress = Progress("Wren")
    for right in (True, True, False, True):
        progress = progress.with_answer(FIRST, right, DAY)
    assert progress.of(FIRST) == Tally(3, 1, 1, 1, later(1).isoformat())
    assert progress.of(SECOND) == Tally()


def test_progress_comes_back_from_its_file_each_person_apart():
    save_progress(Progress("Wren").with_answer(FIRST, True, DAY))
    save_progress(Progress("Ash").with_answer(FIRST, False, DAY))
    assert load_progress("Wren").of(FIRST) == Tally(1, 0, 1, 1, later(1).isoformat())
    assert load_progress("Ash").of(FIRST) == Tally(0, 1, 0, 0, DAY.isoformat())
    os.utime(file_of("Wren"), (2e9, 2e9))
    assert people() == ("Wren", "Ash")


def test_clearing_forgets_one_person_and_not_another():
    for name in ("Wren", "Ash"):
        save_progress(Progress(name).with_answer(FIRST, True, DAY))
    clear_progress("Wren")
    clear_progress("Wren")
    assert load_progress("Wren") == Progress("Wren")
    assert people() == ("Ash",)


@pytest.mark.parametrize("name", ["../../etc/x", "", "a/b", "C:\\x", "…", "x" * 400, "\udc80"])
def test_whatever_the_name_the_file_lies_in_the_folder(name):
    assert file_of(name).parent == practice_folder()
    assert len(file_of(name).name) < 100


def test_names_that_read_alike_have_files_of_their_own():
    assert file_of("A B") != file_of("a-b")


@pytest.mark.parametrize("text", ["", "{", "[]", '{"opening_practice": 2}', "\xff", "[" * 5000])
def test_a_file_that_cannot_be_read_counts_as_none(text):
    file_of("Wren").parent.mkdir(parents=True)
    file_of("Wren").write_bytes(text.encode("latin-1"))
    assert load_progress("Wren") == Progress("Wren")
    assert people() == ()


def test_counts_that_make_no_sense_are_left_out():
    save_progress(Progress("Wren").with_answer(FIRST, True, DAY))
    path = file_of("Wren")
    data = json.loads(path.read_text())
    data["templates"] = {FIRST.key: {"right": -4, "wrong": True, "in_a_row": 1e99}, "gone": {}, SECOND.key: 3}
    path.write_text(json.dumps(data))
    assert load_progress("Wren").tallies == {FIRST.key: Tally()}


def test_a_folder_that_cannot_be_written_is_said(monkeypatch, own_state_folder):
    monkeypatch.setenv("XDG_STATE_HOME", str(own_state_folder / "no.file"))
    (own_state_folder / "no.file").write_text("in the way")
    with pytest.raises(OSError, match=r"."):
        save_progress(Progress("Wren"))


def test_the_course_goes_from_easy_to_hard_and_through_every_template():
    levels = [template.level for template in course()]
    assert levels == sorted(levels)
    assert set(course()) == set(TEMPLATES)
    progress, asked = Progress("Wren"), []
    for _ in TEMPLATES:
        asked.append(progress.next_template("", DAY))
        progress = progress.with_answer(asked[-1], True, DAY)
    assert tuple(asked) == course()
    assert progress.known("") == 0, "one right answer makes nothing known"


def test_what_went_wrong_comes_again_before_what_went_right():
    progress = Progress("Wren")
    for template in course():
        progress = progress.with_answer(template, template is not SECOND, DAY)
    assert progress.next_template("", DAY) is SECOND
    assert progress.next_template("", DAY, recent=[SECOND.key]) is not SECOND
    assert progress.weak() == (SECOND,)


def test_a_topic_is_practised_by_itself():
    progress = Progress("Wren")
    for template in of_topic("hands"):
        assert progress.next_template("hands", DAY) is template
        progress = progress.with_answer(template, True, DAY, mixed=False)
    assert progress.known("hands") == 0
    for template in of_topic("hands"):
        progress = progress.with_answer(template, True, later(1), mixed=False)
    assert progress.known("hands") == len(of_topic("hands"))
    assert progress.known("sizes") == 0


def test_a_topic_is_known_only_after_success_among_others():
    progress = Progress("Wren")
    for day in (0, 1):
        for template in of_topic("hands"):
            progress = progress.with_answer(template, True, later(day), mixed=False)
    assert not progress.is_known("hands")
    assert strength(progress, "hands") == "begun"
    for template in of_topic("hands"):
        progress = progress.with_answer(template, True, later(4), mixed=True)
    assert progress.is_known("hands")
    assert strength(progress, "hands") == "known"
    missed = progress.with_answer(of_topic("hands")[0], False, later(5))
    assert not missed.is_known("hands")
    assert strength(missed, "hands") == "weak"


@pytest.mark.parametrize(("in_a_row", "days"), [(1, 1), (2, 3), (3, 7), (4, 16), (5, 35), (6, 35)])
def test_what_went_right_comes_back_after_ever_more_days(in_a_row, days):
    tally, day = Tally(), DAY
    for _ in range(in_a_row):
        assert tally.due <= day.isoformat()
        tally = tally.with_answer(True, day)
        before, day = day, date.fromisoformat(tally.due)
    assert tally.in_a_row == in_a_row
    assert (day - before).days == days
    assert not tally.is_due(day - timedelta(days=1))
    assert tally.is_due(day)


def test_what_went_wrong_comes_back_the_same_day_once_and_then_the_next():
    once = Tally().with_answer(False, DAY)
    assert once.is_due(DAY)
    twice = once.with_answer(False, DAY)
    assert not twice.is_due(DAY)
    assert twice.is_due(later(1))
    assert twice.with_answer(False, later(1)).is_due(later(2))


def test_twice_right_on_one_day_is_one_step():
    tally = Tally().with_answer(True, DAY).with_answer(True, DAY)
    assert (tally.right, tally.in_a_row, tally.is_known) == (2, 1, False)
    assert tally.with_answer(True, later(1)).is_known


def test_the_set_of_a_day_brings_back_what_is_due_and_then_what_is_new():
    progress = Progress("Wren")
    for template in course()[:12]:
        progress = progress.with_answer(template, template is not SECOND, DAY)
    tomorrow = progress.on(later(1))
    assert len(tomorrow.day.keys) == 10
    assert SECOND.key in tomorrow.day.keys
    assert sum(progress.of(template).was_asked for template in map(BY_KEY.get, tomorrow.day.keys)) == 7
    assert tomorrow.on(later(1)) is tomorrow
    first = tomorrow.next_of_day()
    done = tomorrow.with_answer(first, True, later(1))
    assert done.next_of_day() is not first
    assert done.day.right == 1
    assert set(tomorrow.on(later(2)).day.keys) != set()


def test_days_in_a_row_end_with_a_day_left_out():
    progress = Progress("Wren")
    for day in (0, 2, 3, 4):
        progress = progress.with_answer(FIRST, True, later(day))
    assert progress.days_in_a_row(later(4)) == 3
    assert progress.days_in_a_row(later(5)) == 3, "today is not over yet"
    assert progress.days_in_a_row(later(6)) == 0
    assert progress.days[later(4).isoformat()] == (1, 1)


def test_everything_comes_back_from_its_file():
    progress = Progress("Wren").on(DAY).with_answer(FIRST, True, DAY).with_job(1, DAY)
    save_progress(progress)
    assert load_progress("Wren") == progress


def test_a_file_of_an_earlier_version_still_opens():
    tallies = {
        FIRST.key: {"right": 4, "wrong": 1, "in_a_row": 3},
        SECOND.key: {"right": 0, "wrong": 2, "in_a_row": 0},
    }
    file_of("Wren").parent.mkdir(parents=True)
    file_of("Wren").write_text(json.dumps({"opening_practice": 1, "person": "Wren", "templates": tallies}))
    progress = load_progress("Wren")
    assert progress.of(FIRST) == Tally(4, 1, 3)
    assert progress.of(FIRST).is_known
    assert progress.of(SECOND).is_due(DAY)
    assert (progress.day, progress.days, progress.jobs) == (Day(), {}, {})
    assert progress.next_template("", DAY) is SECOND


@pytest.mark.parametrize(
    "more",
    [
        {"day": 3, "days": [], "jobs": "x"},
        {
            "day": {"date": "never", "set": [4, "gone"], "done": {"gone": 1}},
            "days": {"x": [1, 2]},
            "jobs": {"9": "x"},
        },
        {"days": {DAY.isoformat(): [-1, "x"]}, "jobs": {"1": 4}},
    ],
)
def test_days_and_jobs_that_make_no_sense_are_left_out(more):
    save_progress(Progress("Wren"))
    data = json.loads(file_of("Wren").read_text())
    file_of("Wren").write_text(json.dumps({**data, **more}))
    found = load_progress("Wren")
    assert replace(found, day=Day()) == Progress("Wren")
    assert found.next_of_day() is None
