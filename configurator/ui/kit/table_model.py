"""What a table shows: heads, rows, and the one model that tells Qt of them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QFont, QIcon

from configurator.ui.kit.look import colour

Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
MIDDLE = Qt.AlignmentFlag.AlignVCenter


@dataclass(frozen=True, slots=True)
class Head:
    """One column: its title, its width on the grid (0 where it goes by its words), whether it has numbers."""

    title: str
    width: int = 0
    number: bool = False
    tip: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its words, what it is about (`key`), and the tint of its first word.

    `tip` is the tooltip of all its cells; None leaves each cell its own words. A `heading` stands in bold
    over the rows that follow it.
    """

    words: tuple[str, ...]
    key: Any = None
    tip: str | None = None
    tint: str = ""
    heading: bool = False


class TableModel(QAbstractTableModel):
    """Heads and rows; what a cell says in each of Qt's roles is told by the method named for it."""

    def __init__(self, heads: Sequence[Any] = ()) -> None:
        super().__init__()
        self.heads: Sequence[Any] = heads
        self.rows: Sequence[Any] = ()
        self.bold = QFont()

    def rowCount(self, parent: Index = NOWHERE) -> int:
        """Return how many rows there are."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = NOWHERE) -> int:
        """Return how many columns there are."""
        return 0 if parent.isValid() else len(self.heads)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's title, what its tooltip says, and where both stand."""
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(self.heads):
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self.heads[section].title
        if role == Qt.ItemDataRole.ToolTipRole:
            return self.heads[section].tip or None
        return self.side(section) if role == Qt.ItemDataRole.TextAlignmentRole else None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell says in a role; every cell on show is asked for all of them."""
        teller = _TELLERS.get(role)
        row, place = index.row(), index.column()
        if teller is None or not 0 <= row < len(self.rows) or place >= len(self.heads):
            return None
        return getattr(self, teller)(row, place)

    # --- What a cell says ---

    def text(self, row: int, place: int) -> str:
        """Return what a cell reads."""
        raise NotImplementedError

    def exact(self, _row: int, _place: int) -> str | None:
        """Return what a cell holds without rounding, where it can be edited."""
        return None

    def tip(self, row: int, place: int) -> str | None:
        """Return what a cell's tooltip says."""
        return self.text(row, place)

    def tint(self, _row: int, _place: int) -> str:
        """Return the colour of a cell by its use; empty for that of all text."""
        return ""

    def is_dark(self) -> bool:
        """Return whether tints are seen on a dark ground."""
        return False

    def side(self, place: int) -> Qt.AlignmentFlag:
        """Return where words stand in a column: numbers at its right."""
        right = self.heads[place].number
        return (Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft) | MIDDLE

    def is_bold(self, _row: int, _place: int) -> bool:
        """Return whether a cell stands in bold."""
        return False

    def icon(self, _row: int, _place: int) -> QIcon | None:
        """Return the picture before a cell's words."""
        return None

    def spoken(self, _row: int, _place: int) -> str | None:
        """Return what a screen reader says of a cell; None for its words."""
        return None

    def described(self, _row: int, _place: int) -> str | None:
        """Return what a screen reader adds."""
        return None

    def _colour(self, row: int, place: int) -> QColor | None:
        tint = self.tint(row, place)
        return QColor(colour(tint, self.is_dark())) if tint else None

    def _side(self, _row: int, place: int) -> Qt.AlignmentFlag:
        return self.side(place)

    def _font(self, row: int, place: int) -> QFont | None:
        return self.bold if self.is_bold(row, place) else None


_TELLERS = {
    int(Qt.ItemDataRole.DisplayRole): "text",
    int(Qt.ItemDataRole.EditRole): "exact",
    int(Qt.ItemDataRole.ToolTipRole): "tip",
    int(Qt.ItemDataRole.ForegroundRole): "_colour",
    int(Qt.ItemDataRole.TextAlignmentRole): "_side",
    int(Qt.ItemDataRole.FontRole): "_font",
    int(Qt.ItemDataRole.DecorationRole): "icon",
    int(Qt.ItemDataRole.AccessibleTextRole): "spoken",
    int(Qt.ItemDataRole.AccessibleDescriptionRole): "described",
}


class RowsModel(TableModel):
    """Rows of words as they are given; rows and columns come and go at the end, the others change in place.

    So what is current stays so: a keyboard that stands on a row still stands there after an edit elsewhere.
    """

    dark = False

    def show(self, rows: Sequence[Row], heads: Sequence[Head] | None = None) -> None:
        """Show other rows, under other heads if those are given."""
        if heads is not None:
            self._show_heads(tuple(heads))
        before, after = self.rows, tuple(rows)
        was, now = len(before), len(after)
        if now > was:
            self.beginInsertRows(NOWHERE, was, now - 1)
            self.rows = after
            self.endInsertRows()
        elif now < was:
            self.beginRemoveRows(NOWHERE, now, was - 1)
            self.rows = after
            self.endRemoveRows()
        else:
            self.rows = after
        changed = [n for n, (old, new) in enumerate(zip(before, after, strict=False)) if old != new]
        if changed:
            self._tell(changed[0], changed[-1])

    def use_dark(self, dark: bool) -> None:
        """Show tints on a dark ground, or on a light one."""
        if dark != self.dark:
            self.dark = dark
            self._tell(0, len(self.rows) - 1)

    def text(self, row: int, place: int) -> str:
        """Return a cell's words."""
        words: tuple[str, ...] = self.rows[row].words
        return words[place] if place < len(words) else ""  # while heads are told of before their rows

    def tip(self, row: int, place: int) -> str | None:
        """Return the row's tooltip, or the cell's words."""
        tip: str | None = self.rows[row].tip
        return self.text(row, place) if tip is None else tip

    def tint(self, row: int, place: int) -> str:
        """Return the tint of a row's first word."""
        return str(self.rows[row].tint) if place == 0 else ""

    def is_dark(self) -> bool:
        """Return whether it was told so."""
        return self.dark

    def is_bold(self, row: int, _place: int) -> bool:
        """Return whether it is a heading's cell."""
        return bool(self.rows[row].heading)

    def _show_heads(self, heads: tuple[Head, ...]) -> None:
        was, now = len(self.heads), len(heads)
        if now > was:
            self.beginInsertColumns(NOWHERE, was, now - 1)
            self.heads = heads
            self.endInsertColumns()
        elif now < was:
            self.beginRemoveColumns(NOWHERE, now, was - 1)
            self.heads = heads
            self.endRemoveColumns()
        elif heads != self.heads:
            self.heads = heads
        if heads:
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, now - 1)

    def _tell(self, first: int, last: int) -> None:
        if last >= first and self.heads:
            self.dataChanged.emit(self.index(first, 0), self.index(last, len(self.heads) - 1))
