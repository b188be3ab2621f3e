"""Preferences in one dialog: each holds at once, is kept where it says, and is taken back."""

import pytest
from PySide6.QtCore import QPoint, QPointF, QSettings, Qt
from PySide6.QtGui import QImage, QWheelEvent
from PySide6.QtWidgets import QAbstractSlider, QAbstractSpinBox, QApplication, QComboBox, QLabel, QScrollBar

from configurator.model import Shop
from configurator.ui.state.preferences import APPEARANCES, KEEP_AFTER, Preferences
from configurator.units import Display


@pytest.fixture
def dialog(bare_window):
    bare_window.commands.actions_by_name["preferences"].trigger()
    yield bare_window.beside.preferences
    bare_window.session.use_dark(False)


def choose(combo, place):
    combo.setCurrentIndex(place)
    combo.activated.emit(place)


def test_each_choice_holds_at_once_and_is_kept(dialog, bare_window, preferences):
    session = bare_window.session
    choose(dialog.lengths, 3)
    choose(dialog.appearance, 1)
    choose(dialog.words, 1)
    assert (session.display.metric, session.dark, session.plain_words) == (True, True, True)
    assert (preferences.display.metric, preferences.appearance, preferences.plain_words) == (
        True,
        "dark",
        True,
    )
    assert bare_window.units.currentText() == "millimetres"
    dialog._reset.click()
    assert (session.display, session.dark, session.plain_words) == (Display(), False, False)
    assert (preferences.display, preferences.appearance) == (Display(), "light")
    assert dialog.lengths.currentText() == "inches to 1/32"


def test_the_hinge_policy_is_one_of_the_job_and_undone_with_it(dialog, session):
    choose(dialog.policy.editor, dialog.policy.editor.findData("square hinges"))
    assert session.job.job.width_policy == "square hinges"
    session.undo()
    assert session.job.job.width_policy is None
    assert dialog.policy.editor.currentData() is None


def test_the_name_and_logo_for_pages_hold_at_once_and_are_kept(dialog, bare_window, preferences, tmp_path):
    picture, other = tmp_path / "shop.png", tmp_path / "words.png"
    QImage(40, 20, QImage.Format.Format_RGB32).save(str(picture))
    other.write_text("no picture")
    dialog.shop_name.setText("Kestrel Point Doors ")
    dialog.shop_name.editingFinished.emit()
    dialog.logo.chosen.emit(picture)
    shop = Shop("Kestrel Point Doors", picture)
    assert bare_window.session.shop == preferences.shop == shop
    assert dialog.logo.name.text() == "shop.png"
    dialog.logo.chosen.emit(other)
    assert dialog.trouble.text() == (
        "words.png is no picture that a page can take: a logo is a PNG or JPEG file."
    )
    assert preferences.shop == shop
    picture.unlink()
    assert preferences.shop == Shop("Kestrel Point Doors")
    assert preferences.problems() == (f"The logo {picture} is not there. Pages go out without a logo.",)
    dialog._reset.click()
    assert bare_window.session.shop == preferences.shop == Shop()
    assert preferences.problems() == ()


def test_when_unsaved_work_is_kept_is_chosen_and_falls_back(dialog, bare_window, preferences):
    choose(dialog.keep_after, KEEP_AFTER.index(30))
    assert preferences.keep_after == 30
    preferences._settings.setValue("keep_after", "soon")
    assert preferences.keep_after == 4
    assert preferences.problems() == ("“soon” s is no time to keep work after; 4 s holds.",)


def test_it_says_where_each_is_kept_and_fits_a_small_screen(dialog):
    said = [label.text() for label in dialog.findChildren(QLabel)]
    assert said.count("kept on this computer") == 6
    assert said.count("kept in the job") == 1
    assert dialog.sizeHint().width() < 960
    assert dialog.sizeHint().height() < 700


def test_a_bad_stored_value_falls_back_and_is_told(dialog, tmp_path):
    settings = QSettings(str(tmp_path / "bad.ini"), QSettings.Format.IniFormat)
    settings.setValue("precision", "fine")
    settings.setValue("appearance", "pink")
    preferences = Preferences(settings)
    assert (preferences.display, preferences.appearance, preferences.dark) == (Display(), "light", False)
    assert [problem.split("“")[1].split("”")[0] for problem in preferences.problems()] == ["fine", "pink"]
    dialog.preferences = preferences
    dialog.show_state()
    assert dialog.trouble.text().count("holds.") == 2
    preferences.reset()
    assert preferences.problems() == ()


def test_what_programs_before_kept_still_holds(tmp_path):
    settings = QSettings(str(tmp_path / "old.ini"), QSettings.Format.IniFormat)
    settings.setValue("dark", "true")
    assert Preferences(settings).appearance == "dark"
    preferences = Preferences(settings)
    preferences.appearance = "system"
    assert Preferences(settings).appearance == "system"
    assert Preferences(settings).dark is False  # the system of a test is not dark
    assert set(APPEARANCES) == {"light", "dark", "system"}


@pytest.mark.parametrize("name", ["", "schedule", "order", "sheets", "practice", "import"])
def test_the_wheel_changes_nothing_that_is_not_being_edited(read_window, name):
    read_window.turn_to(name)
    none, button = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.NoButton
    combos = [one for one in read_window.findChildren(QComboBox) if one.count() > 1]
    numbers = [
        one for kind in (QAbstractSpinBox, QAbstractSlider) for one in read_window.findChildren(kind)
        if not isinstance(one, QScrollBar)
    ]  # fmt: skip
    assert combos
    assert numbers
    read_window.openings.list.setFocus()
    for one in (*combos, *numbers):
        if one.window() is not read_window or one.hasFocus():
            continue
        value = one.currentIndex if isinstance(one, QComboBox) else one.value
        before, at = value(), QPointF(one.rect().center())
        for turn in (-120, 120):
            where, begun = QPointF(one.mapToGlobal(at)), Qt.ScrollPhase.NoScrollPhase
            event = QWheelEvent(at, where, QPoint(), QPoint(0, turn), button, none, begun, False)
            QApplication.sendEvent(one, event)
            assert value() == before, one.accessibleName()
    read_window.turn_to("")


def test_new_openings_begin_as_the_shop_has_them(qtbot, dialog, bare_window, preferences):
    page, session = dialog.new_openings, bare_window.session
    assert page.fields["tolerances.gaps"].editor.placeholderText() == "3/64 in"
    rule = page.fields["hinge_locations.rule"]
    choose(rule.editor, rule.editor.findData("7 and 11"))
    for path, typed in (("tolerances.gaps", "1/16"), ("compare", "4, 4-1/2, 5 in")):
        page.fields[path].editor.setFocus()
        page.fields[path].editor.selectAll()
        qtbot.keyClicks(page.fields[path].editor, typed)
        page.fields[path].editor.editingFinished.emit()
    wanted = {"compare": [4.0, 4.5, 5.0], "hinge_locations.rule": "7 and 11", "tolerances.gaps": 0.0625}
    assert preferences.starts == session.starts == wanted
    session.add_opening()
    begun = session.opening
    assert (begun.compare, begun.hinge_locations.rule, begun.tolerances.gaps) == (
        (4.0, 4.5, 5.0),
        "7 and 11",
        0.0625,
    )
    page.to_all.click()
    assert {one.tolerances.gaps for one in session.job.openings} == {0.0625}
    session.undo()
    assert {one.tolerances.gaps for one in session.job.openings} == {0.0625, None}
    dialog._reset.click()
    assert preferences.starts == session.starts == {}
    assert page.fields["compare"].editor.text() == "4, 4-1/2 in"


def test_what_cannot_be_begun_with_is_refused_or_left_out_and_told(qtbot, dialog, preferences):
    margin = dialog.new_openings.fields["use.clear_width_margin"]
    margin.editor.setFocus()
    qtbot.keyClicks(margin.editor, "900")
    margin.editor.editingFinished.emit()
    assert "at most" in margin.note.text()
    assert preferences.starts == {}
    preferences._settings.setValue("starts", '{"tolerances.gaps": -4}')
    assert preferences.starts == {}
    (told,) = preferences.problems()
    assert told.startswith(
        "What is stored for new openings is left out: Door gap tolerance must be at least 0"
    )
