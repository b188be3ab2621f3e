"""The comparison table: measured facts down, hinge open widths across, the difference in words."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QAbstractItemView

from configurator.sentences import capitalized
from configurator.ui.kit.table import FittedTable
from configurator.ui.kit.table_model import Head, Index, Row
from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.wording.comparison import Comparison
    from configurator.wording.comparison import Row as Compared

WORK_TIP = "Double click or Enter: where this number comes from"


class ComparisonTable(FittedTable):
    """Shows the rows that the drawing worked out; a leaf of several has a heading line of its own.

    The key of a row is the leaf and the name in the results of the number that it is about.

    Signals:
        work_wanted: the work behind a number is asked for; leaf, name in the results, and the place of the
            hinge open width, -1 for the difference.
    """

    work_wanted = Signal(str, str, int)

    def __init__(self, session: Session) -> None:
        super().__init__("comparison of hinge open widths")
        self.session = session
        self.setAlternatingRowColors(True)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.entered_row.connect(self._ask_for_work)

    def show_state(self) -> None:
        """Show the comparison of the opening on show; empty while it cannot be studied."""
        from configurator.wording.comparison import comparisons

        study = self.session.study
        tables = comparisons(study, self.session.display) if study is not None else ()
        if not tables:
            self.show_rows((), ())
            return
        titles = ("Measured", *tables[0].heads, _difference_of(tables[0]))
        rows = [row for table in tables for row in self._rows(table, headed=len(tables) > 1)]
        self.show_rows(rows, [Head(title) for title in titles])

    def asked_about(self) -> str:
        """Return the name of the number that the keyboard is on, for F1."""
        key = self.current()
        return key[1] if key is not None else ""

    def _rows(self, table: "Comparison", headed: bool) -> list[Row]:
        heading = Row((f"{table.leaf} leaf".capitalize(),), tip="", heading=True)
        return [
            *([heading] if headed else []),
            *(self._row(row, table.leaf) for row in table.rows),
            *map(self._told, table.told),
        ]

    def _told(self, row: "Compared") -> Row:
        """Return a row of words, which no work stands behind."""
        name = row.plain if self.session.plain_words else row.trade
        return Row((capitalized(name), *row.values, ""), tip="")

    def _row(self, row: "Compared", leaf: str) -> Row:
        name, other = (row.plain, row.trade) if self.session.plain_words else (row.trade, row.plain)
        tip = f"{capitalized(other)}: measured {row.measured}\n{WORK_TIP}"
        return Row((capitalized(name), *row.values, row.difference), (leaf, row.key), tip)

    def _ask_for_work(self, index: Index) -> None:
        number, column, last = self._key(index), index.column(), self.columnCount() - 1
        if number is not None:
            is_difference = 1 < column == last and last > 2
            self.work_wanted.emit(*number, -1 if is_difference else max(column - 1, 0))


def _difference_of(table: "Comparison") -> str:
    """Head the difference by the widths it lies between."""
    widths = table.widths
    if table.other_ways:
        return capitalized(table.between) or "Difference"
    return "Difference" if len(widths) < 2 else f"{widths[0].removesuffix(' in')} to {widths[-1]}"
