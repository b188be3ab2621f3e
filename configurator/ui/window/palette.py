"""One line that finds every command, opening and field by its words, and goes there."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QDialog, QLineEdit, QWidget

from configurator.model import paths
from configurator.sentences import capitalized
from configurator.ui.form.form import SECTIONS
from configurator.ui.kit.layout import down, fill
from configurator.ui.kit.look import GRID
from configurator.ui.kit.table import FittedTable
from configurator.ui.kit.table_model import Head, Row
from configurator.ui.state.session import Session
from configurator.ui.window.command_bar import CommandBar

MOST = 40
"""Rows shown; whoever wants others types another word."""
_MOVES = (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_PageUp, Qt.Key.Key_PageDown)
_HEADS = (Head("Found"), Head("Where"), Head("Key"))


@dataclass(frozen=True, slots=True)
class Place:
    """Something that can be gone to: what it is called, where it stands, its key, and other words for it."""

    title: str
    where: str
    keys: str
    other: str
    go: Callable[[], object]

    def rank(self, words: list[str]) -> int | None:
        """Return how well it fits the words, 0 best; None where one of them is not in it."""
        title, every = self.title.casefold(), f"{self.title} {self.where} {self.other}".casefold()
        if not all(word in every for word in words):
            return None
        starts = [part.startswith(word) for word in words for part in title.split() if word in part]
        return 0 if title.startswith(" ".join(words)) else 1 if any(starts) else 2


class Palette(QDialog):
    """Type words, go with the arrow keys, Enter goes there, Esc goes back."""

    def __init__(self, owner: QWidget, places: Callable[[], Iterable[Place]]) -> None:
        super().__init__(owner)
        self._places = places
        self._found: list[Place] = []
        self._every: list[Place] = []
        self.table = FittedTable("what was found", _HEADS)
        self.setWindowTitle("Find anything")
        self.words = QLineEdit()
        self.words.setPlaceholderText("A command, an opening, or a field")
        self.words.setAccessibleName("words to find")
        self.words.textChanged.connect(self._show_found)
        self.words.returnPressed.connect(lambda: self.go(self.table.currentRow()))
        self.table.select_rows()
        self.table.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.table.opened.connect(self.go)
        fill(self, down(self.words, self.table, spacing=GRID, margins=(2 * GRID,) * 4))
        self.resize(140 * GRID, 90 * GRID)

    def ask(self) -> None:
        """Show the line, empty, and everything that can be done now."""
        self._every = list(self._places())
        self.words.clear()
        self._show_found("")
        self.show()
        self.words.setFocus()
        self.activateWindow()

    def titles(self) -> list[str]:
        """Return what was found, the best first."""
        return [place.title for place in self._found]

    def go(self, row: int) -> None:
        """Go to what stands in a row."""
        if 0 <= row < len(self._found):
            self.accept()
            self._found[row].go()

    def _show_found(self, typed: str) -> None:
        words = typed.casefold().split()
        ranked = [(rank, place) for place in self._every if (rank := place.rank(words)) is not None]
        self._found = [place for _, place in sorted(ranked, key=lambda each: each[0])][:MOST]
        shown = [Row((one.title, one.where, one.keys), row) for row, one in enumerate(self._found)]
        self.table.show_rows(shown)
        self.table.setCurrentCell(0, 0)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go up and down what was found while words are typed."""
        if event.key() in _MOVES:
            page = 8 if event.key() in _MOVES[2:] else 1
            step = -page if event.key() in _MOVES[::2] else page
            row = min(max(self.table.currentRow() + step, 0), self.table.rowCount() - 1)
            self.table.setCurrentCell(row, 0)
        else:
            super().keyPressEvent(event)


def places_of(
    commands: CommandBar, session: Session, turn_to: Callable[[str], None], go_to_field: Callable[[str], None]
) -> Iterator[Place]:
    """Yield everything that can be gone to: commands that can be given now, openings, fields."""

    def show(mark: str) -> None:
        turn_to("")
        session.select(mark)

    yield from _commands(commands)
    for opening in session.job.openings:
        where = f"Opening, {opening.location}" if opening.location else "Opening"
        yield Place(opening.mark, where, "", "", partial(show, opening.mark))
    for section, fields in SECTIONS.items() if session.opening is not None else ():
        for path in fields:
            title, other = capitalized(paths.trade_name(path)), f"{paths.plain_name(path)} {path}"
            yield Place(title, f"Field, {section}", "", other, partial(go_to_field, path))


def _commands(commands: CommandBar) -> Iterator[Place]:
    ours = set(commands.actions_by_name.values())
    for title, menu in commands.menus.items():
        for action in menu.actions():
            if action in ours and action.isEnabled():
                keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
                tip = action.toolTip().removesuffix(f" ({keys})")
                yield Place(action.text(), f"{title}: {tip}", keys, "", action.trigger)
