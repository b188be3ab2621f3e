"""The schedule as a page of the window: what to show above the table, and below it what to do with rows."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import chain

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QLabel, QMenu, QPushButton, QWidget

from configurator.intake.saying import counted
from configurator.model import Job
from configurator.ui.kit.layout import BARE, GROW, Box, LeadsOn, across, down, fill, put_in_order
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.message_line import TextPanel
from configurator.ui.kit.runner import Pieces, ProgressLine
from configurator.ui.schedule.actions import ScheduleActions
from configurator.ui.schedule.answers import Answers
from configurator.ui.schedule.arranging import Wanted
from configurator.ui.schedule.columns import COLUMNS, HIDDEN
from configurator.ui.schedule.find_row import ChangeRow, FindRow
from configurator.ui.schedule.model import ScheduleModel
from configurator.ui.schedule.table import ScheduleTable
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session

ALL_AT_ONCE = 1000
"""Openings up to which all of a job are worked out without being asked for."""
NO_OPENINGS = (
    "This job has no openings yet. Add one, or copy rows of a spreadsheet, with their heads or in the order "
    "of these columns, and paste them here."
)
FOUND_NONE = "No opening is like that. Empty the line above, or ask for any status and findings."


class SchedulePage(LeadsOn, QWidget):
    """The table and all that belongs to it.

    Signals:
        left: the opening on show is to be worked on.
        work_wanted: whether the work on the opening is to stand under the schedule.
    """

    left = Signal()
    work_wanted = Signal(bool)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.answers = Answers()
        self.schedule = ScheduleModel(session, self.answers)
        self.table = ScheduleTable(self.schedule)
        self.finder, self.change = FindRow(), ChangeRow()
        self.panel = TextPanel()
        self.behind, self.working = Pieces(self, first=0.0), Pieces(self)
        self.trying = Pieces(self, precious=True)
        self.working_line, self.trying_line = ProgressLine(self.working), ProgressLine(self.trying)
        self.words, self.searched = QLabel(), QLabel()
        self.work_out = QPushButton("Work out all")
        self._arranging = self._stopped = False
        self._preferences: Preferences | None = None
        self._said_of: Job | None = None
        self.buttons: dict[str, QPushButton] = {}
        self.actions_of = ScheduleActions(self)
        self._put_together()
        self._connect()
        self.first_stop = self.table

    # --- What it shows ---

    def show_state(self, by: str) -> None:
        """Bring the schedule in line with the session; `by` says what happened there."""
        if by in ("swing", "save", "file"):
            return
        if self._said_of is not None and self._said_of is not self.session.job:
            self._said_of = None
            self.panel.hide()  # what it speaks of is over
        if by == "select":
            self._show_current()
            return
        self.answers.use_facts(self.session.job.job)
        self.answers.forget_others(self.session.job.openings)
        if by in ("theme", "display"):
            self._show_otherwise()
        elif by == "open" or self.schedule.show_job():
            self.arrange()
        self._show_current()
        self.show_counts()
        self._ask_for_answers()

    def arrange(self) -> None:
        """Show what is wanted; what must be worked out for it first is, and it can be stopped."""
        head = self.table.horizontalHeader()
        section = head.sortIndicatorSection()
        column = section if 0 <= section < self.schedule.columnCount() else None
        wanted = self.finder.wanted(column, head.sortIndicatorOrder() == Qt.SortOrder.DescendingOrder)
        unknown = self.unknown() if wanted.needs_answers or wanted.words.strip() else []
        self.working.cancel()
        self._stopped = self._stopped and bool(wanted.words.strip())
        if not unknown or not wanted.needs_answers:
            self._show_arranged(wanted)
            if unknown and not self._stopped:
                self._work_out(unknown)  # what is found so far is on show meanwhile
                self._say_what_was_searched()
            return
        if self.schedule.openings is not self.session.job.openings:
            # The job must never be other than what is on show: rows are removed and changed by their places.
            self._show_arranged(replace(wanted, findings="", column=None))
        self._work_out(unknown)

    def unknown(self) -> list[int]:
        """Return the places in the job of openings that are not worked out yet."""
        known = self.answers.known
        return [place for place, each in enumerate(self.session.job.openings) if known(each) is None]

    def say(self, heading: str, lines: Sequence[str] = (), wrong: bool = False) -> None:
        """Say under the table what was done, or line by line why it was not."""
        self._said_of = self.session.job
        colour = "error" if wrong else "quiet"
        self.panel.show_text(heading, "\n".join(lines), "what was refused", colour, self.session.dark)

    def choose_marks(self, marks: Sequence[str]) -> None:
        """Choose the rows of those marks, the first of them as the current one."""
        wanted = set(marks)
        places = (n for n, opening in enumerate(self.schedule.openings) if opening.mark in wanted)
        rows = sorted({row for place in places if (row := self.schedule.row_of(place)) is not None})
        self.table.choose(rows, rows[0] if rows else None)

    def chosen_places(self) -> list[int]:
        """Return the places in the job of the openings in all chosen rows, in the order of the job."""
        return sorted(place for row in self.table.chosen_rows() for place in self.schedule.rows[row])

    def show_counts(self) -> None:
        """Say how many openings are on show and chosen, and what could not be searched."""
        if self._arranging:
            return
        shown, every = sum(map(len, self.schedule.rows)), len(self.schedule.openings)
        chosen = len(self.chosen_places())
        words = counted(every, "opening") if shown == every else f"{shown:,} of {counted(every, 'opening')}"
        if self.schedule.wanted.grouped:
            words += f" in {len(self.schedule.rows):,} rows"
        self.finder.count.setText(words + (f", {chosen:,} chosen" if chosen > 1 else ""))
        self.change.show_chosen(chosen)
        for name in ("duplicate", "remove", "copy"):
            self.buttons[name].setEnabled(chosen > 0)
        self.buttons["paste"].setEnabled(not self.schedule.wanted.grouped)
        self.words.setText(FOUND_NONE if every else NO_OPENINGS)
        self.words.setVisible(not shown)
        self._say_what_was_searched()

    def _say_what_was_searched(self) -> None:
        unknown = len(self.unknown()) if self.schedule.wanted.words.strip() else 0
        self.searched.setText(
            f"Hinges, angles and findings of {unknown:,} openings are not worked out yet, nor looked through."
        )
        self.searched.setVisible(unknown > 0)
        self.work_out.setVisible(unknown > 0 and not self.working.running)

    def _show_arranged(self, wanted: Wanted) -> None:
        marks = [self.schedule.openings[place].mark for place in self.chosen_places()]
        scrolled = self.table.verticalScrollBar().value()
        self._arranging = True
        self.schedule.arrange(wanted)
        self.choose_marks(marks)
        self.table.verticalScrollBar().setValue(scrolled)
        self._show_current()
        self._arranging = False
        self.show_counts()
        self._ask_for_answers()

    def _show_otherwise(self) -> None:
        """Show lengths in other units, or everything in other colours."""
        self.schedule.tell_all()
        self.panel.use_dark(self.session.dark)

    def _show_current(self) -> None:
        """Make the row of the opening on show the current one."""
        row = self.table.currentIndex().row()
        mark = self.session.mark
        if row >= 0 and any(opening.mark == mark for opening in self.schedule.members(row)):
            return
        self.choose_marks([mark])

    def _go_to(self, current: QModelIndex, _: QModelIndex) -> None:
        if current.isValid():
            members = self.schedule.members(current.row())
            if all(opening.mark != self.session.mark for opening in members):
                self.session.select(members[0].mark)

    # --- What is worked out ---

    def _ask_for_answers(self) -> None:
        """Work out what is in view behind everything else, and then the rest of a job of usual size."""
        rows = [row for row in self.table.rows_in_view() if self.schedule.answer(row) is None]
        more = range(self.schedule.rowCount()) if len(self.schedule.openings) <= ALL_AT_ONCE else ()
        self.behind.start(chain(self._answering(rows), self.schedule.prepare(), self._answering(more)))

    def _answering(self, rows: Sequence[int]) -> Iterator[int]:
        for done, row in enumerate(rows, 1):
            if row < self.schedule.rowCount() and self.schedule.answer(row) is None:
                for opening in self.schedule.members(row):
                    self.answers.work_out(opening)
                self.schedule.tell_answered([row])
            yield done

    def _working_out(self, places: Sequence[int]) -> Iterator[int]:
        openings = self.session.job.openings
        yield from self.answers.work_out_all([openings[place] for place in places])

    def _work_out(self, places: Sequence[int]) -> None:
        """Work out openings in front of the user, who may stop it, and then show what is wanted."""
        self._stopped = False
        self.working.start(self._working_out(places), self.arrange, "Working out openings", len(places))

    def _show_wanted(self) -> None:
        """Show in head and line above what the table shows, after something else was stopped."""
        self._stopped = True
        wanted = self.schedule.wanted
        self.finder.blockSignals(True)
        self.finder.show_wanted(wanted)
        self.finder.blockSignals(False)
        self._say_what_was_searched()
        head = self.table.horizontalHeader()
        head.blockSignals(True)
        order = Qt.SortOrder.DescendingOrder if wanted.descending else Qt.SortOrder.AscendingOrder
        head.setSortIndicator(-1 if wanted.column is None else wanted.column, order)
        head.blockSignals(False)

    # --- How it is put together ---

    def _put_together(self) -> None:
        for label in (self.words, self.searched):
            label.setWordWrap(True)
            label.setMargin(GRID)
            label.hide()
        sized(self.searched, -1)
        self.work_out.hide()
        note = across((self.searched, 1), self.work_out, margins=(2 * GRID, 0, 2 * GRID, 0))
        below = (self.working_line, self.trying_line, self.panel, self._bottom())
        parts = (self.finder, note, self.words, (self.table, 1), *below)
        fill(self, down(*parts, spacing=0, margins=BARE))
        put_in_order(self)
        self._offer_columns()

    def remember_in(self, preferences: Preferences) -> None:
        """Show the columns that the user chose last, and keep the choice."""
        self._preferences = preferences
        hidden = preferences.hidden_columns("schedule")
        self.table.hide_columns(HIDDEN if hidden is None else hidden)
        self._offer_columns()

    def _offer_columns(self) -> None:
        menu = QMenu(self.finder.columns)
        for column in COLUMNS:
            if column.key != "mark":
                action = menu.addAction(column.title)
                action.setCheckable(True)
                action.setChecked(column.key not in self.table.hidden)
                action.toggled.connect(partial(self._show_column, column.key))
        self.finder.columns.setMenu(menu)

    def _show_column(self, key: str, shown: bool) -> None:
        hidden = self.table.hidden - {key} if shown else self.table.hidden | {key}
        self.table.hide_columns(hidden)
        if self._preferences is not None:
            self._preferences.hide_columns("schedule", hidden)

    def _bottom(self) -> Box:
        for name, title, tip, run in self.actions_of.offered():
            button = self.buttons[name] = QPushButton(title)
            button.setToolTip(tip)
            button.clicked.connect(lambda _=False, run=run: run())
        below = self.buttons["work"] = QPushButton("Picture below")
        below.setToolTip("Show the form and the picture of the current opening under the schedule")
        below.setCheckable(True)
        below.toggled.connect(self.work_wanted)
        for button in self.buttons.values():  # in a narrow window no wider than its words
            button.setMinimumWidth(button.fontMetrics().horizontalAdvance(button.text()) + 4 * GRID)
        parts = (self.change, (GROW, 1), *self.buttons.values())
        return across(*parts, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, GRID))

    def _connect(self) -> None:
        table, act = self.table, self.actions_of
        self.finder.changed.connect(self.arrange)
        self.finder.words.finished.connect(table.setFocus)
        table.horizontalHeader().sortIndicatorChanged.connect(lambda *_: self.arrange())
        table.opened.connect(self.left)
        table.moved.connect(self._ask_for_answers)
        table.selectionModel().currentRowChanged.connect(self._go_to)
        table.selectionModel().selectionChanged.connect(lambda *_: self.show_counts())
        for asked, run in ((table.copy_asked, act.copy), (table.paste_asked, act.paste)):
            asked.connect(run)
        table.remove_asked.connect(act.remove)
        self.change.asked.connect(act.set_on_chosen)
        self.schedule.refused.connect(lambda line: self.say("Not taken.", [line], wrong=True))
        self.working_line.cancelled.connect(self._show_wanted)
        self.trying_line.cancelled.connect(lambda: self.say("Stopped. Nothing was changed."))
        self.work_out.clicked.connect(lambda: self._work_out(self.unknown()))
        seek = QShortcut(QKeySequence(QKeySequence.StandardKey.Find), self)
        seek.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        seek.activated.connect(self._seek)

    def _seek(self) -> None:
        self.finder.words.setFocus()
        self.finder.words.selectAll()
