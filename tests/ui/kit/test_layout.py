"""How views are put together and filled: what keeps the window alive in long use."""

import ast
from pathlib import Path

import pytest
import shiboken6
from PySide6.QtCore import QMetaObject, QObject, Qt
from PySide6.QtWidgets import (
    QApplication,
    QGridLayout,
    QLabel,
    QLayout,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from configurator.ui.kit.layout import BARE, GROW, Pool, across, add, down, fill, put_in_order, reading_order
from configurator.ui.window.pages import PAGES

UI = Path(__file__).resolve().parents[3] / "configurator" / "ui"
OF_LAYOUT_ITEMS = {
    "itemAt", "itemAtPosition", "takeAt", "takeRow", "QLayoutItem", "QSpacerItem", "QWidgetItem",
}  # fmt: skip
FREED = {"sheets/printing.py": 2, "window/beside.py": 1, "window/window.py": 1}
"""Where a widget is let go, and how often: a dialog that was closed, and the room that the
work area takes once."""


def names_in(path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Attribute):
            yield node.attr
        elif isinstance(node, ast.Name):
            yield node.id
        elif isinstance(node, ast.alias):
            yield node.name


def loose_objects():
    """The Python objects for what Qt made and may free without telling."""
    every = (one for one in shiboken6.getAllValidWrappers() if not isinstance(one, QObject | QMetaObject))
    return [one for one in every if not shiboken6.createdByPython(one) and not shiboken6.ownedByPython(one)]


@pytest.mark.parametrize("path", sorted(UI.rglob("*.py")), ids=lambda path: str(path.relative_to(UI)))
def test_no_layout_item_is_asked_for_and_no_view_is_torn_down(path):
    names = list(names_in(path))
    assert not OF_LAYOUT_ITEMS & set(names)
    assert names.count("deleteLater") == FREED.get(str(path.relative_to(UI)), 0)


def test_a_filled_layout_is_what_makes_loose_objects(qtbot):
    """The trap itself: should Qt's binding mend it, the rules above may go."""
    before = len(loose_objects())
    widget, inner = QWidget(), QVBoxLayout()
    qtbot.addWidget(widget)
    inner.addWidget(QLabel())
    QVBoxLayout(widget).addLayout(inner)
    assert len(loose_objects()) == before + 1


def test_the_whole_window_makes_no_loose_object(window):
    before = len(loose_objects())
    session, work = window.session, window.work
    for section in work.form.sections.values():
        section.open()
    for place in range(work.under.count()):
        work.under.setCurrentIndex(place)
    for path, value in (
        ("obstructions", [{"kind": "column", "diameter": 12, "start": 6, "offset": 0}]),
        ("obstructions", None),
        ("wall.layers", [{"name": "board", "thickness": 0.5}]),
        ("wall.layers", None),
        ("leaves", "pair"),
        ("compare", [4.0, 4.5, 5.0, 6.0]),
        ("compare", [4.5]),
    ):
        session.edit(path, value)
    window.ask("it", "Shall it be so?", [("Yes", lambda: None)])
    window.ask("it", "")
    window.beside.show_word("hand")
    window.beside.show_help()
    for name in PAGES:
        window.turn_to(name)
    for dialog in (window.beside.words, window.beside.help):
        dialog.close()
    assert len(loose_objects()) == before


def test_rows_and_columns_stand_as_they_are_written(qtbot):
    widget, first, second, third = QWidget(), QLabel("a"), QLabel("b"), QLabel("c")
    qtbot.addWidget(widget)
    grid = QGridLayout()
    layout = fill(
        widget, down(across(first, GROW, (second, 2)), grid, 7, (third, 1), spacing=3, margins=BARE)
    )
    grid.addWidget(QLabel("d"), 0, 0)
    widget.resize(300, 200)
    widget.show()
    assert layout.spacing() == 3
    assert layout.contentsMargins().isNull()
    assert first.y() == second.y() == 0
    assert first.x() < second.x()
    assert third.y() > grid.geometry().bottom() + 7
    assert [layout.stretch(place) for place in range(layout.count())] == [0, 0, 0, 1]


def test_a_filled_layout_is_not_added(qtbot):
    widget, inner = QWidget(), QVBoxLayout()
    qtbot.addWidget(widget)
    filled = QWidget()
    qtbot.addWidget(filled)
    filled.setLayout(inner)
    inner.addWidget(QLabel())
    with pytest.raises(AssertionError, match="filled only once"):
        fill(widget, down(inner))


@pytest.fixture
def pooled(qtbot):
    """A pool of buttons in a widget with a line below, all on the screen."""
    widget, line = QWidget(), QLineEdit()
    qtbot.addWidget(widget)
    buttons = QVBoxLayout()
    fill(widget, down(buttons, line))

    def made(place):
        button = QPushButton(f"made as number {place}")
        buttons.addWidget(button)
        return button

    widget.show()
    return widget, Pool(made), line


def test_a_pool_makes_no_more_than_it_must_and_frees_none(pooled):
    widget, pool, _ = pooled
    three = list(pool.take(3))
    assert [one.isVisible() for one in three] == [True, True, True]
    assert pool.take(1) == three[:1] == pool.on_show
    assert [one.isVisible() for one in three] == [True, False, False]
    assert pool.take(3) == three
    assert len(widget.findChildren(QPushButton)) == 3
    assert pool.take(0) == []


def test_the_keyboard_leaves_what_stands_for_something_else(qtbot, pooled):
    widget, pool, line = pooled
    first, _ = pool.take(2)
    widget.activateWindow()
    first.setFocus()
    qtbot.waitUntil(first.hasFocus)
    pool.take(2)
    assert line.hasFocus()


def test_tab_goes_as_it_is_read(qtbot):
    widget, (first, second, third) = QWidget(), (QLineEdit(text) for text in "abc")
    qtbot.addWidget(widget)
    words = QLabel("no stop")
    layout = fill(widget, down(words, first, across(second, third)))
    assert list(reading_order(widget)) == [first, second, third]
    late = QLineEdit("last in the order of making, first to be read")
    layout.insertWidget(0, late)
    widget.parts = lambda: [late, words, first, second, third]
    put_in_order(widget)
    widget.show()
    widget.activateWindow()
    late.setFocus()
    qtbot.waitUntil(late.hasFocus)
    for stop in (first, second, third):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is stop


def test_what_never_takes_the_keyboard_by_tab_is_passed_by(qtbot):
    widget, clicked = QWidget(), QPushButton()
    qtbot.addWidget(widget)
    clicked.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
    proxied = QLineEdit()
    proxied.setFocusProxy(clicked)
    add(fill(widget, across()), clicked, proxied)
    assert list(reading_order(widget)) == []
    assert isinstance(widget.layout(), QLayout)
