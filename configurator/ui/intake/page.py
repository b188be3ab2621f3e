"""The page that takes a door schedule into the job: choose a file, correct how it is read, take it."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QPalette
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSplitter,
    QWidget,
)

from configurator.intake.comparing import Compared
from configurator.intake.refused import Question
from configurator.intake.saying import NOTHING, counted, summary
from configurator.sentences import as_sentence
from configurator.ui.intake.lists import ImportLists
from configurator.ui.intake.preview import Preview, PreviewTable
from configurator.ui.intake.work import ImportWork
from configurator.ui.kit.layout import GROW, LeadsOn, across, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.kit.runner import ProgressLine
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session

INVITATION = (
    "Take an architect's door schedule into this job: a CSV file, or an XLSX workbook. Its columns are "
    "matched by their headings and can be corrected; nothing is taken until you say so."
)
CORRECT = "Double-click a cell to put it right here; the file stays as it is."
FILES = "Door schedules (*.csv *.xlsx *.tsv *.txt);;All files (*)"


class ImportPage(LeadsOn, QWidget):
    """Everything about one schedule; the job is only changed by the two buttons that take it.

    Signals:
        left: there is nothing more to do here.
        said: what was done, for the window's line.
    """

    left = Signal()
    said = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.work = ImportWork(session)
        self.words, self.invitation, self.refusal = _wrapped(), _wrapped(INVITATION), _wrapped()
        self.choose, self.sheets = QPushButton("Choose a schedule…"), QComboBox()
        self.progress = ProgressLine(self.work.pieces, stop="Stop")
        self.order = Asked("size order", "which figure of a size comes first", ORDERS)
        self.pair = Asked("pair width", "what the width of a narrow pair is of", PAIRS)
        self.preview, self.lists, self.take = Preview(), ImportLists(), TakeRow()
        self.view = PreviewTable(self.preview)
        self._wide_for: tuple[tuple[str, str], ...] | None = None
        self.setAcceptDrops(True)
        self._put_together()
        self._connect()
        self.first_stop = self.choose
        self._show()

    def show_state(self, by: str) -> None:
        """Bring the page in line with the session; `by` says what happened there."""
        if by in ("edit", "undo", "open"):
            self.work.follow_job()
        if by in ("open", "display", "theme", "edit", "undo"):
            self._show()

    def read(self, path: Path) -> None:
        """Read a schedule and show it."""
        # The opening that every new job begins with is nobody's: a schedule takes its place.
        untouched = self.session.path is None and self.session.history.undo_name is None
        self.take.remove.setChecked(untouched)
        self.work.read(path)
        self._show()

    # --- What it shows ---

    def _show(self) -> None:
        work = self.work
        running, there = work.pieces.running, work.table is not None
        self.invitation.setVisible(not there and not running)
        self.refusal.setText(work.refusal)
        self.refusal.setVisible(bool(work.refusal))
        tinted(self.refusal, "error", self.session.dark)
        self.choose.setText("Choose another…" if there else "Choose a schedule…")
        self.choose.setEnabled(not running)
        self.split.setVisible(there)
        self._show_sheets()
        self._show_questions()
        self._show_rows()
        self._show_buttons()

    def _show_sheets(self) -> None:
        table = self.work.table
        names = list(table.sheets) if table is not None else []
        if [self.sheets.itemText(n) for n in range(self.sheets.count())] != names:
            self.sheets.clear()
            self.sheets.addItems(names)
        if table is not None:
            self.sheets.setCurrentText(table.name)
        self.sheets.setVisible(len(names) > 1)

    def _show_questions(self) -> None:
        reading, compared, dark = self.work.reading, self.work.compared, self.session.dark
        waiting = compared.asked("size order") if compared is not None else 0
        said = f"{counted(waiting, 'opening')} would be wider than high. " if waiting else ""
        in_cells = reading is not None and any(column.field == "size" for column in reading.columns)
        said += "The first figure of every size is" if in_cells else "What stands under width is"
        self.order.show_answer(reading.order if reading else "ask", said, waiting, dark)
        waiting = compared.asked("pair width") if compared is not None else 0
        said = f"{counted(waiting, 'pair')} would be narrow. " if waiting else ""
        said += "The width of a narrow pair is that"
        self.pair.show_answer(reading.pair if reading else "ask", said, waiting, dark)

    def _show_rows(self) -> None:
        work, session = self.work, self.session
        with self.view.staying():
            self.preview.show_schedule(work.table, work.reading, work.compared, session.display, session.dark)
            self.view.header.show_reading(work.reading)
            headings = work.table.headings if work.table is not None else None
            if headings is not self._wide_for:  # the same ones after a cell was corrected
                self._wide_for = headings
                self.view.share_width()
        self._show_words()
        if work.table is not None and work.compared is not None:
            status_of = {opening.mark: opening.status for opening in session.job.openings}
            self.lists.show_found(work.table, work.compared, work.told(), status_of, session.display)

    def _show_words(self) -> None:
        """Say what was found, or what has to be chosen before anything can be."""
        table, reading, compared = self.work.table, self.work.reading, self.work.compared
        lacking = reading.lacks() if reading is not None else ""
        if lacking:
            self.words.setText(as_sentence(f"{lacking}: choose it over its column"))
        elif table is None:
            self.words.setText("")
        elif compared is not None:
            same = not compared.bad and all(row.kind == "same" for row in compared.good)
            file = self.work.path.name if self.work.path is not None else ""
            of_workbook = f"{file}, " if file != table.name else ""
            nothing = f" {as_sentence(NOTHING)}" if same else ""
            mend = f" {CORRECT}" if compared.bad else ""
            self.words.setText(f"{of_workbook}{summary(table, compared)}.{nothing}{mend}")
        self.words.setPalette(QPalette())
        if lacking:
            tinted(self.words, "error", self.session.dark)

    def _show_buttons(self) -> None:
        work = self.work
        chosen = work.reading is not None and not work.reading.lacks()
        self.take.show_compared(work.compared if chosen and not work.pieces.running else None)

    # --- What it does ---

    def _ask_for_file(self) -> None:
        folder = self.work.path or self.session.path
        start = str(folder.parent if folder else Path.home())
        name, _ = QFileDialog.getOpenFileName(self, "Choose a door schedule", start, FILES)
        if name:
            self.read(Path(name))

    def _use_sheet(self, place: int) -> None:
        if self.work.path is not None:
            self.work.read(self.work.path, self.sheets.itemText(place))
            self._show()

    def _take(self) -> None:
        compared, path = self.work.compared, self.work.path
        if compared is None or path is None or self.work.pieces.running:
            return
        changed = (*compared.of_kind("new"), *compared.of_kind("changed"))
        try:
            openings = self.work.taken(self.take.removes)
            mark = changed[0].opening.mark if changed else self.session.mark
            self.session.take_openings(openings, f"import {path.name}", mark)
        except RefusedError as error:
            self.work.refusal = error.about("")
            self._show()
            return
        # By now the job is compared anew, and nothing differs; `compared` still knows what was taken.
        if not any(row.before is not None and row.before.settled for row in changed):
            said = self._done(compared, path.name)
            self.said.emit(said)  # else the window says what was changed that had been settled
        self._leave()

    def _done(self, compared: Compared, name: str) -> str:
        new, changed = len(compared.of_kind("new")), len(compared.of_kind("changed"))
        removed = f", {len(compared.gone):,} removed" if self.take.removes and compared.gone else ""
        return f"Taken from {name}: {new:,} new, {changed:,} changed{removed}. Undo takes it back."

    def _leave(self) -> None:
        self.work.stop()
        self._show()
        self.left.emit()

    # --- How it is put together ---

    def _put_together(self) -> None:
        self.sheets.setAccessibleName("sheet of the workbook")
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.setChildrenCollapsible(False)
        self.split.addWidget(self.view)
        self.split.addWidget(self.lists)
        self.split.setStretchFactor(0, 2)
        self.split.setStretchFactor(1, 1)
        chosen = across(self.choose, self.sheets, (self.words, 1), spacing=2 * GRID)
        asked = (self.refusal, self.order, self.pair)
        parts = (self.invitation, chosen, self.progress, *asked, (self.split, 1), GROW, self.take)
        fill(self, down(*parts, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, 2 * GRID)))

    def _connect(self) -> None:
        self.choose.clicked.connect(self._ask_for_file)
        self.sheets.activated.connect(self._use_sheet)
        self.progress.cancelled.connect(self.work.stop)
        self.work.changed.connect(self._show)
        self.view.header.field_chosen.connect(lambda place, field: self.work.use_field(place, field or None))
        self.view.header.unit_chosen.connect(self.work.use_unit)
        self.order.answered.connect(self.work.use_order)
        self.pair.answered.connect(self.work.use_pair)
        # Queued: the editor of the cell is put away before the rows under it are read again.
        self.preview.corrected.connect(self.work.correct, Qt.ConnectionType.QueuedConnection)
        self.lists.fault_chosen.connect(self.view.look_at)
        self.take.taken.connect(self._take)
        self.take.cancelled.connect(self._leave)

    # --- Qt's own ---

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let a file be dropped here."""
        if event.mimeData().hasUrls() and event.mimeData().urls()[0].isLocalFile():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Read the file that was dropped."""
        self.read(Path(event.mimeData().urls()[0].toLocalFile()))


def _wrapped(text: str = "") -> QLabel:
    label = QLabel(text)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    return label


class TakeRow(QWidget):
    """While one row is bad only the good ones can be taken, and by a button that says so.

    Signals:
        taken: what is good is to be taken.
        cancelled: nothing is.
    """

    taken = Signal()
    cancelled = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.remove = QCheckBox()
        self.good, self.every, self.cancel = QPushButton(), QPushButton(), QPushButton("Cancel")
        self._compared: Compared | None = None
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        line.addWidget(self.remove)
        line.addStretch(1)
        for button in (self.good, self.every, self.cancel):
            line.addWidget(button)
        self.remove.toggled.connect(lambda _: self.show_compared(self._compared))
        self.good.clicked.connect(self.taken)
        self.every.clicked.connect(self.taken)
        self.cancel.clicked.connect(self.cancelled)

    @property
    def removes(self) -> bool:
        """Whether openings that the schedule does not have are to go."""
        return self.remove.isChecked()

    def show_compared(self, compared: Compared | None) -> None:
        """Show what can be taken; None while nothing can."""
        self._compared = compared
        good, bad = (len(compared.good), len(compared.bad)) if compared is not None else (0, 0)
        gone = len(compared.gone) if compared is not None else 0
        anything = self.anything()
        self.good.setText(f"Take {counted(good, 'good opening')}")
        self.every.setText(f"Take all {good + bad:,}")
        self.remove.setText(f"Also remove {counted(gone, 'opening')} that the schedule does not have")
        self.good.setVisible(bad > 0)
        self.every.setVisible(compared is not None)
        self.remove.setVisible(gone > 0)
        self.good.setEnabled(anything)
        self.every.setEnabled(anything and not bad)
        why_not = f"{counted(bad, 'row')} cannot be taken" if bad else "" if anything else NOTHING
        self.every.setToolTip(why_not)

    def anything(self) -> bool:
        """Say whether taking it would change the job."""
        if self._compared is None:
            return False
        going = self.removes and bool(self._compared.gone)
        return going or any(row.kind != "same" for row in self._compared.good)


ORDERS = (("ask", "choose…"), ("width", "the width, as written"), ("height", "the height, so swap them"))
PAIRS = (("ask", "choose…"), ("opening", "of the opening"), ("leaf", "of each leaf"))


class Asked(QWidget):
    """One question with its answers; hidden while no row waits for it and nothing was answered.

    Signals:
        answered: the name of the answer.
    """

    answered = Signal(str)

    def __init__(self, question: Question, name: str, answers: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.question = question
        self.words, self.answers = QLabel(), QComboBox()
        self.answers.setAccessibleName(name)
        self.words.setBuddy(self.answers)
        for value, title in answers:
            self.answers.addItem(title, value)
        self.answers.activated.connect(lambda _: self.answered.emit(self.answers.currentData()))
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words)
        line.addWidget(self.answers)
        line.addStretch(1)
        self.hide()

    def show_answer(self, answer: str, words: str, waiting: int, dark: bool) -> None:
        """Show what holds, and how many rows wait for an answer."""
        self.answers.setCurrentIndex(self.answers.findData(answer))
        self.words.setText(words)
        tinted(self.words, "error" if waiting else "quiet", dark)
        self.setVisible(bool(waiting) or answer != "ask")
