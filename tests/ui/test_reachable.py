"""Whatever can be used with the mouse is reached with Tab and has a name: every view, walked with real keys.

Left out are the inner parts of Qt's own widgets, what carries a key of its own (the commands), and the small
word in a field's line, for emptying the field and F1 do the same.
"""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSlider,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QScrollBar,
    QTabBar,
    QTextBrowser,
    QTextEdit,
    QToolBar,
    QWidget,
)

from configurator.ui.kit.runner import Work
from configurator.ui.window.pages import PAGES
from configurator.ui.window.work import LATER

USED = (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSlider,
    QAbstractSpinBox,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QTabBar,
    QTextEdit,
)
WHOLE = (QAbstractSpinBox, QComboBox, QLineEdit, QTabBar, QToolBar, QAbstractItemView)
"""What has inner widgets of its own, which need not be reached one by one."""
MOST = 1500
LINKS = 100
"""Tab goes through the links of a text first, so many at the most."""


def _is_inner(widget: QWidget) -> bool:
    parent = widget.parentWidget()
    while parent is not None:
        if isinstance(parent, WHOLE):
            return True
        parent = parent.parentWidget()
    return isinstance(widget, (QScrollBar, QHeaderView))


def used_widgets(root: QWidget) -> Iterator[QWidget]:
    """Yield what can be used inside a widget as it is on show."""
    for widget in root.findChildren(QWidget):
        used = isinstance(widget, USED) and widget.isVisibleTo(root) and widget.isEnabled()
        if used and not _is_inner(widget):
            yield widget


def name_of(widget: QWidget) -> str:
    """Return what a screen reader can say of a widget: its name, its own words, or those of its label."""
    if widget.accessibleName():
        return widget.accessibleName()
    if isinstance(widget, QAbstractButton):
        return widget.text()
    if isinstance(widget, QTabBar):
        return " ".join(widget.tabText(place) for place in range(widget.count()))
    labels = widget.window().findChildren(QLabel)
    return next((label.text() for label in labels if label.buddy() is widget), "")


def tabbed_to(root: QWidget, qtbot) -> set[QWidget]:
    """Press Tab from the first widget on until it has the keyboard again; return all that had it.

    Fails where Tab does not lead on.
    """
    window = root.window()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    first = next(w for w in used_widgets(root) if w.focusPolicy() & Qt.FocusPolicy.TabFocus)
    first.setFocus(Qt.FocusReason.TabFocusReason)
    seen: list[QWidget] = []
    for _ in range(MOST):
        now = QApplication.focusWidget()
        assert now is not None
        if seen and now is seen[0]:
            return set(seen)
        assert now not in seen, f"Tab comes back to {_told(now)} and never to where it began"
        seen.append(now)
        for _ in range(LINKS if isinstance(now, QTextBrowser | QLabel) else 1):
            if QApplication.focusWidget() is now:
                QTest.keyClick(now, Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is not now, f"Tab does not leave {_told(now)}"
    raise AssertionError("Tab never comes back to where it began")


def _told(widget: QWidget) -> str:
    return f"{type(widget).__name__} “{name_of(widget)}”"


def _is_reached_by_arrows(widget: QWidget, seen: set[QWidget]) -> bool:
    """Whether it is one of a group of which one is chosen: Tab stops at the group, arrows go within it."""
    group = widget.group() if isinstance(widget, QAbstractButton) else None
    return group is not None and group.exclusive() and any(button in seen for button in group.buttons())


def check(root: QWidget, qtbot) -> None:
    """Fail for what cannot be reached or has no name."""
    there = set(used_widgets(root))
    assert there
    nameless = [type(widget).__name__ for widget in there if not name_of(widget).strip()]
    assert not nameless
    seen = tabbed_to(root, qtbot)
    missed = [_told(widget) for widget in there - seen if not _is_reached_by_arrows(widget, seen)]
    assert not missed


@pytest.fixture
def opened(window):
    """The window with every section of the form open."""
    for section in window.work.form.sections.values():
        section.open()
    return window


def test_the_work_with_every_section_open(opened, qtbot):
    check(opened.centralWidget(), qtbot)


def test_the_work_on_a_pair_and_on_a_door_that_has_everything(opened, qtbot, session):
    session.edit_many({"leaves": "pair", "size": {"width": 72, "height": 84}})
    session.edit("door_stop", {"kind": "wall bumper", "projection": 1})
    session.edit("wall.layers", [{"name": "gypsum board", "thickness": 4.875}])
    check(opened.centralWidget(), qtbot)


@pytest.mark.parametrize("title", ["Compare widths", *(title for title, _, _ in LATER)])
def test_every_tab_under_the_picture(window, qtbot, title):
    under = window.work.under
    under.setCurrentIndex(next(n for n in range(under.count()) if under.tabText(n) == title))
    QApplication.processEvents()
    check(under, qtbot)


@pytest.mark.parametrize("name", PAGES)
def test_every_page_about_the_whole_job(window, qtbot, name):
    window.turn_to(name)
    page = window.pages.made[name]
    qtbot.waitUntil(lambda: not any(work.running for work in page.findChildren(Work)))
    check(page, qtbot)


def test_words_hands_and_help(window, qtbot):
    window.beside.show_word("")
    check(window.beside.words, qtbot)
    window.beside.words.close()
    field = window.work.form.field("hand")
    field.by_picture.click()
    check(field.finder, qtbot)
    field.finder.close()
    window.beside.show_help()
    check(window.beside.help, qtbot)
    window.beside.help.close()


def test_every_command_has_a_key_and_words(window):
    for name, action in window.commands.actions_by_name.items():
        assert not action.shortcut().isEmpty(), name
        assert action.text(), name
        assert action.toolTip(), name
    keys = [action.shortcut().toString() for action in window.commands.actions_by_name.values()]
    assert len(keys) == len(set(keys))


def test_a_widget_that_tab_passes_by_is_seen(qtbot):
    """The walk itself: a button without a name and one that Tab does not stop at."""
    from PySide6.QtWidgets import QPushButton, QVBoxLayout

    root = QWidget()
    qtbot.addWidget(root)
    column = QVBoxLayout(root)
    buttons = [QPushButton("one"), QPushButton("two"), QPushButton("three")]
    for button in buttons:
        column.addWidget(button)
    root.show()
    check(root, qtbot)
    buttons[1].setFocusPolicy(Qt.FocusPolicy.ClickFocus)
    with pytest.raises(AssertionError):
        check(root, qtbot)
    buttons[1].setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    buttons[2].setText("")
    with pytest.raises(AssertionError):
        check(root, qtbot)
