"""Under the preview: what is wrong, what changes, what was assumed, and what is not in the schedule."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QTabWidget

from configurator.intake.columns import Reading
from configurator.intake.comparing import Compared
from configurator.intake.refused import CellFault
from configurator.intake.saying import all_told, fault_words, not_read_words, notes_told, value_words
from configurator.intake.table import ScheduleTable
from configurator.ui.kit.table import FittedTable
from configurator.units import Display

MOST_ROWS = 400
"""Rows of a list; of more it says how many there are, for nobody reads thousands of faults one by one."""
_TITLES = ("Faults", "Changes", "Assumed", "Not read", "Not in the schedule", "Rows and notes")
Rows = list[tuple[Sequence[str], str]]


class ImportLists(QTabWidget):
    """A list a tab, each with how many it has; empty ones cannot be chosen.

    Signals:
        fault_chosen: a fault is to be looked at in the preview; its line and its column's place, or None.
        mend_asked: cells that are alike are to be put right together; the argument is their faults.
    """

    fault_chosen = Signal(int, object)
    mend_asked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.setDocumentMode(True)
        self.setAccessibleName("what was found in the schedule")
        self.faults, self.changes = FittedTable("faults of the schedule"), FittedTable("what changes")
        self.told, self.gone = (
            FittedTable("what was assumed"),
            FittedTable("openings that the schedule lacks"),
        )
        self.not_read, self.passed_over = FittedTable("columns not read"), FittedTable("rows and notes")
        self._titles = _TITLES
        self._faults: tuple[tuple[CellFault, ...], ...] = ()
        self.lists = (self.faults, self.changes, self.told, self.not_read, self.gone, self.passed_over)
        for title, each in zip(self._titles, self.lists, strict=True):
            self.addTab(each, title)
        self.faults.chosen.connect(lambda _: self._choose(self.faults.currentRow()))
        self.faults.opened.connect(lambda _: self._mend(self.faults.currentRow()))

    def show_found(
        self,
        table: ScheduleTable,
        reading: Reading,
        compared: Compared,
        state_of: Mapping[str, str],
        display: Display,
    ) -> None:
        """Show what was found; where nothing is wrong, what changes comes first."""
        self._faults = compared.like_faults()
        told, unread = all_told(table, reading, compared), not_read_words(table, reading)
        filled: tuple[tuple[Sequence[str], Rows], ...] = (
            (
                ("Doors" if reading.names_doors else "Lines", "Column", "Why"),
                [_fault(alike) for alike in self._faults],
            ),
            (("Mark", "Field", "In the job", f"In the {table.source}"), _changes(compared, display)),
            (("What was assumed",), [((sentence,), sentence) for sentence in told]),
            (("Columns that are not read",), [((words,), words) for words in unread]),
            (("Mark", "Status"), [((mark, state_of[mark]), "") for mark in compared.gone]),
            (("Line", "What stands there"), _beside(table, compared)),
        )
        self._titles = (*_TITLES[:4], f"Not in the {table.source}", *_TITLES[5:])
        counts = [len(rows) for _, rows in filled]
        counts[0] = sum(map(len, self._faults))
        for place, (heads, rows) in enumerate(filled):
            self._fill(place, heads, rows, counts[place])
        self.setCurrentIndex(next((place for place, (_, rows) in enumerate(filled) if rows), 0))

    def _fill(self, place: int, heads: Sequence[str], rows: Rows, count: int) -> None:
        shown = rows[:MOST_ROWS]
        if len(rows) > MOST_ROWS:
            words = f"and {len(rows) - MOST_ROWS:,} more"
            shown.append(((*([""] * (len(heads) - 1)), words), words))
        each = self.lists[place]
        each.blockSignals(True)
        each.fill(heads, shown)
        each.setCurrentCell(-1, -1)
        each.blockSignals(False)
        self.setTabText(place, f"{self._titles[place]} {count:,}" if rows else self._titles[place])
        self.setTabEnabled(place, bool(rows))

    def _choose(self, row: int) -> None:
        if 0 <= row < min(len(self._faults), MOST_ROWS):
            fault = self._faults[row][0]
            self.fault_chosen.emit(fault.line, fault.place)

    def _mend(self, row: int) -> None:
        if 0 <= row < min(len(self._faults), MOST_ROWS) and self._faults[row][0].place is not None:
            self.mend_asked.emit(self._faults[row])


def _fault(alike: Sequence[CellFault]) -> tuple[Sequence[str], str]:
    first = alike[0]
    lines = str(first.row) if len(alike) == 1 else f"{first.row} and {len(alike) - 1:,} more"
    mend = "" if first.place is None else "\nDouble-click to put it right in all rows that read so."
    return (lines, " ".join(first.heading.split()), first.reason), fault_words(alike) + mend


def _beside(table: ScheduleTable, compared: Compared) -> Rows:
    """Return what is no opening: rows left out and passed over, and what stands above and under the table."""
    rows = [(row.line, f"{row.mark}: left out, {row.left_out}") for row in compared.left_out]
    rows += [(over.row.line, over.why) for over in table.passed_over]
    rows += notes_told(table, compared)
    return [((str(line), why), why) for line, why in sorted(rows)]


def _changes(compared: Compared, display: Display) -> Rows:
    rows: Rows = []
    for new in compared.of_kind("new"):
        size = new.opening.size
        words = display.opening(size.width, size.height)
        rows.append(((new.opening.mark, "a new opening", "", words), new.opening.location or ""))
    for changed in compared.of_kind("changed"):
        for change in changed.changes:
            old, new_value = (value_words(change.path, v, display) for v in (change.old, change.new))
            rows.append(((changed.opening.mark, change.title, old, new_value), f"line {changed.line}"))
    return rows
