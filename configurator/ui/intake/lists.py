"""Under the preview: what is wrong, what changes, what was assumed, and what is not in the schedule."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QTabWidget

from configurator.intake.comparing import Compared
from configurator.intake.rows import CellFault
from configurator.intake.saying import value_words
from configurator.intake.table import ScheduleTable
from configurator.ui.kit.table import FittedTable
from configurator.units import Display

MOST_ROWS = 400
"""Rows of a list; of more it says how many there are, for nobody reads thousands of faults one by one."""
Rows = list[tuple[Sequence[str], str]]


class ImportLists(QTabWidget):
    """A list a tab, each with how many it has; empty ones cannot be chosen.

    Signals:
        fault_chosen: a fault is to be looked at in the preview; its line and its column's place, or None.
    """

    fault_chosen = Signal(int, object)

    def __init__(self) -> None:
        super().__init__()
        self.setDocumentMode(True)
        self.setAccessibleName("what was found in the schedule")
        self.faults, self.changes = FittedTable("faults of the schedule"), FittedTable("what changes")
        self.told, self.gone = (
            FittedTable("what was assumed"),
            FittedTable("openings that the schedule lacks"),
        )
        self.passed_over = FittedTable("rows passed over")
        self._titles = ("Faults", "Changes", "Assumed", "Not in the schedule", "Passed over")
        self._faults: tuple[CellFault, ...] = ()
        self.lists = (self.faults, self.changes, self.told, self.gone, self.passed_over)
        for title, each in zip(self._titles, self.lists, strict=True):
            self.addTab(each, title)
        self.faults.chosen.connect(lambda _: self._choose(self.faults.currentRow()))

    def show_found(
        self,
        table: ScheduleTable,
        compared: Compared,
        told: Sequence[str],
        status_of: Mapping[str, str],
        display: Display,
    ) -> None:
        """Show what was found; where nothing is wrong, what changes comes first."""
        self._faults = compared.faults()
        filled: tuple[tuple[Sequence[str], Rows], ...] = (
            (("Line", "Column", "Why"), [_fault(fault) for fault in self._faults]),
            (("Mark", "Field", "In the job", "In the schedule"), _changes(compared, display)),
            (("What was assumed",), [((sentence,), sentence) for sentence in told]),
            (("Mark", "Status"), [((mark, status_of[mark]), "") for mark in compared.gone]),
            (("Line", "Why"), [((str(line), why), why) for line, why in table.passed_over]),
        )
        for place, (heads, rows) in enumerate(filled):
            self._fill(place, heads, rows)
        self.setCurrentIndex(next((place for place, (_, rows) in enumerate(filled) if rows), 0))

    def _fill(self, place: int, heads: Sequence[str], rows: Rows) -> None:
        shown = rows[:MOST_ROWS]
        if len(rows) > MOST_ROWS:
            words = f"and {len(rows) - MOST_ROWS:,} more"
            shown.append(((*([""] * (len(heads) - 1)), words), words))
        each = self.lists[place]
        each.blockSignals(True)
        each.fill(heads, shown)
        each.setCurrentCell(-1, -1)
        each.blockSignals(False)
        self.setTabText(place, f"{self._titles[place]} {len(rows):,}" if rows else self._titles[place])
        self.setTabEnabled(place, bool(rows))

    def _choose(self, row: int) -> None:
        if 0 <= row < min(len(self._faults), MOST_ROWS):
            fault = self._faults[row]
            self.fault_chosen.emit(fault.line, fault.place)


def _fault(fault: CellFault) -> tuple[Sequence[str], str]:
    return (str(fault.line), " ".join(fault.heading.split()), fault.reason), str(fault)


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
