"""The small job at the end of a level: its schedule, the order to be checked, and how the check went."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QLabel, QPushButton, QWidget

from configurator.practice.exercise import Exercise
from configurator.practice.progress import practice_folder
from configurator.practice.small_job import (
    ORDER_HEADS,
    SCHEDULE_HEADS,
    Cell,
    Cells,
    Outcome,
    SmallJob,
    mark_job,
    small_job,
)
from configurator.project_file import ProjectFileError, save
from configurator.ui.kit.layout import GROW, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.table import Table
from configurator.ui.kit.table_model import Head, Row, RowsModel

_TASK = (
    "Somebody wrote this order from this schedule, and slipped. Steel hinges in satin chrome, the hand told "
    "from outside, two hinges to a pair. Click every cell of the order that is wrong, then check."
)


class OrderModel(RowsModel):
    """The order as it was written; cells pointed at, found and mistaken have each a sign and a colour."""

    def __init__(self, heads: Sequence[Head]) -> None:
        super().__init__(heads)
        self.chosen: set[Cell] = set()
        self.outcome: Outcome | None = None

    def text(self, row: int, place: int) -> str:
        """Return a cell after its sign."""
        return self._sign((row, place)) + super().text(row, place)

    def tint(self, row: int, place: int) -> str:
        """Return the colour of a cell that was pointed at or missed."""
        sign = self._sign((row, place))
        return "note" if sign == "✔ " else "error" if sign else ""

    def is_bold(self, row: int, place: int) -> bool:
        """Say whether a cell was pointed at."""
        return bool(self._sign((row, place)))

    def tip(self, row: int, place: int) -> str | None:
        """Return what is wrong with a cell, once that is told."""
        if self.outcome is not None and (row, place) in self.outcome.found:
            return self.outcome.why[row, place]
        return super().tip(row, place)

    def point_at(self, cell: Cell) -> None:
        """Point at a cell, or no longer."""
        self.chosen ^= {cell}
        self.outcome = None
        self.refresh()

    def refresh(self) -> None:
        """Show every cell anew."""
        self._tell(0, len(self.rows) - 1)

    def _sign(self, cell: Cell) -> str:
        if self.outcome is None:
            return "● " if cell in self.chosen else ""
        if cell in self.outcome.found:
            return "✔ "
        return "✖ " if cell in self.outcome.mistaken else ""


class SmallJobPanel(QWidget):
    """Two tables and what is said of them.

    Signals:
        passed: every slip was found; the progress has it.
        file_wanted: the job is to be opened in the program; the argument is its file.
        said: a sentence for the window's line.
    """

    passed = Signal()
    file_wanted = Signal(object)
    said = Signal(str)

    def __init__(self, exercise: Exercise) -> None:
        super().__init__()
        self.exercise = exercise
        self.one: SmallJob
        self.heading, self.task, self.verdict = QLabel(), QLabel(_TASK), QLabel()
        self.why = QLabel()
        self.model = OrderModel(_heads(ORDER_HEADS))
        self.schedule = Table("schedule of the small job", RowsModel(_heads(SCHEDULE_HEADS)))
        self.order = Table("order to be checked", self.model)
        self.check, self.tell = QPushButton("&Check"), QPushButton("&Show what is wrong")
        self.open, self.other = QPushButton("&Open in the program"), QPushButton("A&nother job")
        self._put_together()
        self._connect()

    def begin(self, level: int, seed: int) -> None:
        """Show the small job of a level and a seed."""
        self.one = small_job(level, seed)
        self.heading.setText(f"Small job, level {level}: {self.one.slips} slips")
        _show(self.schedule, self.one.schedule)
        self.model.chosen, self.model.outcome = set(), None
        _show(self.order, self.one.order)
        self._say("", "note")

    def show_state(self, dark: bool) -> None:
        """Follow the theme."""
        self.model.dark = dark
        self.model.refresh()
        self._dark = dark
        self._say(self.verdict.text(), self._colour)

    def point_at(self, index: QModelIndex) -> None:
        """Point at a cell of the order, or no longer."""
        self.model.point_at((index.row(), index.column()))
        self._say("", "note")

    def mark(self) -> None:
        """Compare what was pointed at with the program's own order."""
        if not self.model.chosen:
            self._say("▲ Click the cells of the order that are wrong first.", "warning")
            return
        outcome = mark_job(self.one, self.model.chosen)
        self.model.outcome = outcome
        self.model.refresh()
        found = tuple(outcome.why[cell] for cell in sorted(outcome.found))
        self._say(
            f"{'✔' if outcome.is_passed else '✖'} {outcome.words}",
            "note" if outcome.is_passed else "error",
            found,
        )
        if outcome.is_passed:
            exercise = self.exercise
            exercise.take_progress(exercise.progress.with_job(self.one.level, exercise.today))
            self.passed.emit()

    def show_wrong(self) -> None:
        """Tell every slip; the job is not passed by that."""
        outcome = mark_job(self.one, ())
        self.model.chosen = set(outcome.missed)
        self.model.outcome = mark_job(self.one, outcome.missed)
        self.model.refresh()
        self._say("● These are wrong.", "note", tuple(outcome.why[cell] for cell in sorted(outcome.missed)))

    def open_job(self) -> None:
        """Write the job into the folder of practice, and ask for it to be opened."""
        path = job_file(self.one.level)
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            save(self.one.job, path)
        except (OSError, ProjectFileError) as error:
            self.said.emit(f"The small job could not be written: {error}")
            return
        self.file_wanted.emit(path)

    # --- How it is put together ---

    _dark, _colour = False, "note"

    def _say(self, words: str, colour: str, why: tuple[str, ...] = ()) -> None:
        self._colour = colour
        self.verdict.setText(words)
        self.verdict.setVisible(bool(words))
        tinted(self.verdict, colour, self._dark)
        if why or not words:
            self.why.setText("\n".join(why))
        self.why.setVisible(bool(self.why.text()))

    def _put_together(self) -> None:
        for label in (self.task, self.verdict, self.why):
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setWordWrap(True)
        sized(self.heading, 1)
        sized(self.verdict, 0, bold=True)
        for table in (self.schedule, self.order):
            table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
            table.horizontalHeader().setStretchLastSection(True)
        self.schedule.select_rows()
        self.order.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.why.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        buttons = across(self.check, self.tell, self.open, self.other, (GROW, 1), spacing=GRID)
        parts = (
            self.heading,
            self.task,
            QLabel("The schedule"),
            self.schedule,
            QLabel("The order"),
            self.order,
        )
        margins = (6 * GRID, 4 * GRID, 6 * GRID, 4 * GRID)
        fill(
            self, down(*parts, buttons, self.verdict, self.why, (GROW, 1), spacing=2 * GRID, margins=margins)
        )

    def _connect(self) -> None:
        self.order.clicked.connect(self.point_at)
        self.order.entered_row.connect(self._enter)
        self.check.clicked.connect(self.mark)
        self.tell.clicked.connect(self.show_wrong)
        self.open.clicked.connect(self.open_job)
        self.other.clicked.connect(lambda: self.begin(self.one.level, self.exercise.draw_number()))

    def _enter(self, index: QModelIndex) -> None:
        """Enter points at a cell as a click does; a double click is two clicks already."""
        if self.order.hasFocus() and not self.order.underMouse():
            self.point_at(index)


def job_file(level: int) -> Path:
    """Return the file that the small job of a level is written to."""
    return practice_folder() / f"small job, level {level}.json"


def _heads(titles: Sequence[str]) -> tuple[Head, ...]:
    return tuple(Head(title) for title in titles)


def _show(table: Table, rows: tuple[Cells, ...]) -> None:
    """Show rows, the table as high as they are."""
    model = table.model()
    assert isinstance(model, RowsModel)
    model.show([Row(cells, number) for number, cells in enumerate(rows)])
    high = table.horizontalHeader().sizeHint().height() + 6 * GRID * len(rows)
    table.setFixedHeight(high + 3 * GRID)
