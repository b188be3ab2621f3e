"""One list of commands: each is in a menu, has a key, and is found by its words."""

import re

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMessageBox

from configurator.resource_files import resource_path
from configurator.ui.kit import look
from configurator.ui.window.command_bar import TABS
from configurator.ui.window.environment import versions
from configurator.ui.window.help import KEYS, help_pages
from configurator.ui.window.pages import PAGES


@pytest.fixture
def window(fresh_window):
    return fresh_window


def found_by(window, words):
    window.beside.find_anything()
    palette = window.beside.palette
    palette.words.setText(words)
    return palette


def test_every_command_is_in_a_menu_has_a_key_and_is_found_by_its_words(read_window):
    commands = read_window.commands
    in_menus = [action for menu in commands.menus.values() for action in menu.actions()]
    keys = []
    for name, action in commands.actions_by_name.items():
        assert in_menus.count(action) == 1, name
        assert not action.shortcut().isEmpty(), name
        keys.append(action.shortcut().toString())
        if action.isEnabled():
            assert action.text() in found_by(read_window, action.text()).titles(), name
    assert len(keys) == len(set(keys))
    read_window.beside.palette.reject()


def test_a_command_is_given_by_its_menu_its_key_and_the_palette(qtbot, window):
    dark = window.commands.actions_by_name["dark"]
    dark.trigger()
    assert window.session.dark
    qtbot.keyClick(window, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert not window.session.dark
    palette = found_by(window, "slate")
    assert palette.titles()[0] == "Dark"
    qtbot.keyClick(palette.words, Qt.Key.Key_Return)
    assert window.session.dark
    assert not palette.isVisible()
    dark.trigger()


def test_the_palette_goes_to_openings_and_fields(qtbot, window):
    palette = found_by(window, "linen")
    assert palette.titles() == ["205A"]
    qtbot.keyClick(palette.words, Qt.Key.Key_Return)
    assert window.session.mark == "205A"
    window.turn_to("schedule")
    palette = found_by(window, "door thick")
    assert palette.titles()[0] == "Door thickness"
    qtbot.keyClick(palette.words, Qt.Key.Key_Return)
    assert window.work.isVisible()
    assert window.focusWidget() is window.work.form.field("door.thickness").editor


def test_what_is_found_is_chosen_with_the_arrow_keys_while_words_are_typed(qtbot, read_window):
    palette = found_by(read_window, "opening")
    assert palette.table.currentRow() == 0
    qtbot.keyClick(palette.words, Qt.Key.Key_Down)
    qtbot.keyClick(palette.words, Qt.Key.Key_Down)
    qtbot.keyClick(palette.words, Qt.Key.Key_Up)
    assert palette.table.currentRow() == 1
    palette.words.setText("no such words as these")
    assert palette.titles() == []
    qtbot.keyClick(palette.words, Qt.Key.Key_Return)
    assert palette.isVisible()
    palette.reject()


def test_tabs_show_the_pages_and_the_one_on_show_is_marked(window):
    tabs = window.tabs
    places = {page: place for place, page in enumerate(TABS)}
    assert set(TABS) == {"", *PAGES}
    assert tabs.currentIndex() == places[""]
    tabs.setCurrentIndex(places["order"])
    assert window.pages.on_show == "order"
    assert window.commands.actions_by_name["order"].isChecked()
    assert not window.commands.actions_by_name["work"].isChecked()
    window.commands.actions_by_name["import"].trigger()
    assert tabs.currentIndex() == places["import"]
    assert tabs.isTabVisible(places["import"])
    window.commands.actions_by_name["work"].trigger()
    assert tabs.currentIndex() == places[""]
    assert not tabs.isTabVisible(places["import"])
    assert window.commands.actions_by_name["work"].isChecked()


@pytest.mark.parametrize("name", ["schedule", "order", "sheets", "client"])
def test_escape_and_alt_left_lead_back(qtbot, window, name):
    window.turn_to("practice")
    window.turn_to(name)
    angle = window.session.angle
    qtbot.keyClick(window.pages.made[name], Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert window.pages.on_show == "practice"
    assert window.session.angle == angle
    window.turn_to(name)
    qtbot.keyClick(window.pages.made[name], Qt.Key.Key_Escape)
    assert window.pages.on_show == ""
    qtbot.keyClick(window.work.form, Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert window.session.angle == angle - 1


def test_f10_and_alt_open_the_menus(qtbot, window):
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window, Qt.Key.Key_F10)
    assert window.menuBar().activeAction() is not None
    assert window.menuBar().activeAction().text() == "&File"
    QTest.keyClick(window.menuBar(), Qt.Key.Key_Escape)
    QTest.keyClick(window, Qt.Key.Key_V, Qt.KeyboardModifier.AltModifier)
    menu = window.commands.menus["View"]
    qtbot.waitUntil(menu.isVisible)
    menu.close()


def test_keys_stand_beside_the_commands(read_window):
    assert read_window.commands.actions_by_name["save"].shortcut() == QKeySequence("Ctrl+S")
    menu = read_window.commands.menus["File"]
    assert read_window.commands.actions_by_name["save"] in menu.actions()
    assert menu.toolTipsVisible()


def test_files_opened_lately_are_below_open(window):
    assert window.files.read(resource_path("demo_openings", "kestrel_point.json"))
    actions = window.commands.menus["File"].actions()
    below = actions[actions.index(window.commands.actions_by_name["open"]) + 1].menu()
    below.aboutToShow.emit()
    assert [action.text() for action in below.actions()] == ["kestrel_point.json"]


def test_icons_are_drawn_in_the_ink_of_the_window(window):
    for dark in (True, False):
        window.session.use_dark(dark)
        for name, command in window.commands.every.items():
            if command.icon:
                picture = window.commands.actions_by_name[name].icon().pixmap(20, 20).toImage()
                inks = {
                    picture.pixelColor(x, y).lightness() > 128
                    for x in range(picture.width())
                    for y in range(picture.height())
                    if picture.pixelColor(x, y).alpha() > 200
                }
                assert inks == {dark}, name


def test_an_icon_is_sharp_on_every_screen(qapp):
    icon = look.icon("find", "#000000")
    assert {size.width() for size in icon.availableSizes()} == {20, 40, 60}


def test_the_versions_are_shown_and_copied(window, monkeypatch):
    shown = []

    def copied(box):
        shown.append(box.informativeText())
        next(button for button in box.buttons() if button.text() == "Copy").click()

    monkeypatch.setattr(QMessageBox, "exec", copied)
    window.commands.actions_by_name["about"].trigger()
    assert "PySide6" in shown[0]
    assert QApplication.clipboard().text() == versions()


def test_commands_about_an_opening_need_one(bare_window, session):
    names = ("copy", "remove", "up", "down", "next", "before")
    actions = [bare_window.commands.actions_by_name[name] for name in names]
    assert all(action.isEnabled() for action in actions)
    session.take_openings((), "remove all", "")
    assert not any(action.isEnabled() for action in actions)


def test_help_opens_where_the_user_is_and_is_searched(qtbot, read_window):
    beside, window = read_window.beside, read_window
    window.turn_to("schedule")
    beside.show_help()
    assert beside.help.page.toPlainText().startswith("The schedule")
    window.turn_to("")
    window.work.picture.canvas.setFocus()
    window.commands.actions_by_name["help"].trigger()
    assert beside.help.page.toPlainText().startswith("The picture")
    beside.help.search_line.setText("Corners measure")
    shown = [row for row in range(beside.help.index.count()) if not beside.help.index.item(row).isHidden()]
    assert [beside.help.pages[row].title for row in shown] == ["The picture"]
    assert beside.help.page.textCursor().selectedText() == "Corners"
    beside.help.search_line.setText("no such word at all")
    assert "Try fewer letters" in beside.help.page.toPlainText()
    beside.help.ask(KEYS.lower())
    keys = beside.help.page.toPlainText()
    assert all(place.keys in keys for place in window._places() if place.keys)
    beside.help.close()


def test_every_page_of_the_help_has_its_pictures_and_every_page_of_the_window_its_help():
    for page in help_pages():
        for picture in re.findall(r"\]\((.+?)\)", page.text):
            assert resource_path("help", picture).stat().st_size < 200_000
    places = {place for page in help_pages() for place in page.places}
    assert set(PAGES) <= places


def test_keys_named_in_the_help_are_those_of_the_commands(read_window):
    known = {place.keys for place in read_window._places() if place.keys}
    own = {"Ctrl+F", "Ctrl+V", "Ctrl+C", "Ctrl+,", "F11", "F2", "F10", "Alt+Right", "Alt+Left"}
    text = " ".join(page.text for page in help_pages())
    named = set(re.findall(r"\b(?:(?:Ctrl|Shift|Alt)\+)+(?:[A-Z]\b|\d|F\d+|,)|\bF\d+\b", text))
    assert named - own <= known
