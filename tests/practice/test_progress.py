import json
import os

import pytest

from configurator.practice.course import TEMPLATES, course, of_topic
from configurator.practice.progress import (
    Progress,
    Tally,
    clear_progress,
    file_of,
    load_progress,
    people,
    practice_folder,
    save_progress,
)

pytestmark = pytest.mark.usefixtures("own_state_folder")
FIRST, SECOND = course()[:2]


def test_nothing_is_known_of_a_new_person():
    assert load_progress("Wren") == Progress("Wren")
    assert people() == ()


def test_answers_are_counted_and_a_wrong_one_ends_the_row():
    progress = Progress("Wren")
    for right in (True, True, False, True):
        progress = progress.with_answer(FIRST, right)
    assert progress.of(FIRST) == Tally(right=3, wrong=1, in_a_row=1)
    assert progress.of(SECOND) == Tally()


def test_progress_comes_back_from_its_file_each_person_apart():
    save_progress(Progress("Wren").with_answer(FIRST, True))
    save_progress(Progress("Ash").with_answer(FIRST, False))
    assert load_progress("Wren").of(FIRST) == Tally(1, 0, 1)
    assert load_progress("Ash").of(FIRST) == Tally(0, 1, 0)
    os.utime(file_of("Wren"), (2e9, 2e9))
    assert people() == ("Wren", "Ash")


def test_clearing_forgets_one_person_and_not_another():
    for name in ("Wren", "Ash"):
        save_progress(Progress(name).with_answer(FIRST, True))
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
    save_progress(Progress("Wren").with_answer(FIRST, True))
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
        asked.append(progress.next_template(""))
        progress = progress.with_answer(asked[-1], True)
    assert tuple(asked) == course()
    assert progress.known("") == len(TEMPLATES)


def test_what_went_wrong_comes_again_before_what_went_right():
    progress = Progress("Wren")
    for template in course():
        progress = progress.with_answer(template, template is not SECOND)
    assert progress.next_template("") is SECOND
    assert progress.next_template("", after=SECOND) is course()[2]
    assert progress.known("") == len(TEMPLATES) - 1


def test_a_topic_is_practised_by_itself():
    progress = Progress("Wren")
    for template in of_topic("hands"):
        assert progress.next_template("hands") is template
        progress = progress.with_answer(template, True)
    assert progress.known("hands") == len(of_topic("hands"))
    assert progress.known("sizes") == 0
