"""The page that takes a door schedule or a building model into the job: chosen, corrected, taken."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QPalette
from PySide6.QtWidgets import QFileDialog, QInputDialog, QLabel, QPushButton, QSplitter, QWidget

from configurator.export.document import write_document
from configurator.intake.columns import not_read
from configurator.intake.comparing import Compared
from configurator.intake.fields import needs_unit
from configurator.intake.refused import QUESTIONS, CellFault
from configurator.intake.saying import counted, display_of, nothing_words, summary
from configurator.sentences import as_sentence
from configurator.ui.intake.controls import Asked, Questions, TakeRow
from configurator.ui.intake.lists import ImportLists
from configurator.ui.intake.preview import Preview, PreviewTable
from configurator.ui.intake.work import ImportWork
from configurator.ui.kit.layout import GROW, LeadsOn, StillCombo, across, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.kit.runner import ProgressLine
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.ui.intake.storey_plan import StoreyPlanWindow

INVITATION = (
    "Take an architect's door schedule into this job: a CSV file, or an XLSX workbook. Its columns are "
    "matched by their headings and can be corrected; nothing is taken until you say so. A building model "
    "(IFC) gives its doors the same way, with their walls and what stands along them."
)
CORRECT = "Double-click a cell to put it right here; the file stays as it is."
COMMAS = {"decimal": "decimal commas, as 914,4", "thousands": "marks between thousands, as 1,010"}
REPORTS = "Workbook (*.xlsx);;Document (*.pdf);;Table (*.csv)"
FILES = "Door schedules (*.csv *.xlsx *.tsv *.txt);;Building models (*.ifc);;All files (*)"
MODELS = "Building models (*.ifc);;All files (*)"


class ImportPage(LeadsOn, QWidget):
    """Everything about one schedule; the job is only changed by the two buttons that take it.

    Signals:
        left: there is nothing more to do here.
        said: what was done, for the window's line.
        waiting: rows stayed behind, for the window to lead back to; empty once none does.
    """

    left = Signal()
    said = Signal(str)
    waiting = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.work = ImportWork(session)
        self.words, self.invitation, self.refusal = _wrapped(), _wrapped(INVITATION), _wrapped()
        self.choose, self.sheets = QPushButton("Choose a schedule…"), StillCombo()
        self.model = QPushButton("Choose a building model…")
        self.storeys = QPushButton("Plan of the storeys…")
        self.plan: StoreyPlanWindow | None = None
        self.progress = ProgressLine(self.work.pieces, self.work.beside, stop="Stop")
        self.asked = {
            question: Asked(question, {"ask": "choose…", **asked.answers})
            for question, asked in QUESTIONS.items()
        }
        self.commas = Asked("what commas in numbers are", COMMAS)
        self.questions = Questions((*self.asked.values(), self.commas))
        self.keep, self.save = QPushButton("Keep all columns"), QPushButton("Save a report…")
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
        self.take.remove.setChecked(False)
        self.work.read(path)
        self._show()

    # --- What it shows ---

    def _show(self) -> None:
        work = self.work
        running, there = work.running, work.table is not None
        self.invitation.setVisible(not there and not running)
        self.refusal.setText(work.refusal)
        self.refusal.setVisible(bool(work.refusal))
        tinted(self.refusal, "error", self.session.dark)
        self.choose.setText("Choose another…" if there else "Choose a schedule…")
        self.choose.setEnabled(not running)
        self.model.setVisible(not there)
        self.model.setEnabled(not running)
        self.storeys.setVisible(work.model is not None and not running)
        if self.plan is not None:
            self.plan.show_state()
        self.split.setVisible(there)
        self._show_sheets()
        self._show_questions()
        self._show_rows()
        self._show_buttons()

    def _show_sheets(self) -> None:
        table = self.work.table
        names = list(self.work.sheets)
        if [self.sheets.itemText(n) for n in range(self.sheets.count())] != names:
            self.sheets.clear()
            self.sheets.addItems(names)
        self.sheets.setCurrentIndex(
            names.index(table.name) if table is not None and table.name in names else -1
        )
        self.sheets.setVisible(len(names) > 1)

    def _show_questions(self) -> None:
        reading, compared, dark = self.work.reading, self.work.compared, self.session.dark
        for question, asked in QUESTIONS.items():
            waiting = compared.asked(question) if compared is not None else 0
            said = f"{counted(waiting, asked.one, asked.many)}. " if waiting else ""
            answer = reading.answer(question) if reading is not None else "ask"
            self.asked[question].show_answer(answer, said + asked.words, waiting, dark)
        columns = reading.columns if reading is not None else ()
        commas = next((each.commas for each in columns if each.commas and needs_unit(each.field)), "")
        self.commas.show_answer(commas or "ask", "Commas in numbers are", 0, dark)
        self.questions.fit()

    def _show_rows(self) -> None:
        work, session = self.work, self.session
        own = display_of(work.reading) if work.reading is not None else session.display
        display = own if own.metric else session.display  # a schedule in millimetres is spoken of in them
        with self.view.staying():
            self.preview.show_schedule(work.table, work.reading, work.compared, display, session.dark)
            self.view.header.show_reading(work.reading)
            headings = work.table.headings if work.table is not None else None
            if headings is not self._wide_for:  # the same ones after a cell was corrected
                self._wide_for = headings
                self.view.share_width()
        self._show_words()
        if work.table is not None and work.compared is not None:
            state_of = {opening.mark: opening.settled or opening.status for opening in session.job.openings}
            assert work.reading is not None
            self.lists.show_found(work.table, work.reading, work.compared, state_of, display)

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
            nothing = f" {as_sentence(nothing_words(table.source))}" if same else ""
            mend = f" {CORRECT}" if compared.bad else ""
            self.words.setText(f"{of_workbook}{summary(table, compared)}.{nothing}{mend}")
        self.words.setPalette(QPalette())
        if lacking:
            tinted(self.words, "error", self.session.dark)

    def _show_buttons(self) -> None:
        work = self.work
        chosen = work.reading is not None and not work.reading.lacks()
        ready = chosen and not work.running
        self.take.source = work.table.source if work.table is not None else "schedule"
        self.take.show_compared(work.compared if ready else None)
        name, known = work.table.job_name if work.table is not None else "", self.session.job.job.name
        self.take.offer_name(name if name != known else "", bool(known))
        self.save.setVisible(ready and work.compared is not None)
        unread = (
            work.table is not None and work.reading is not None and bool(not_read(work.table, work.reading))
        )
        self.keep.setVisible(ready and unread)

    # --- What it does ---

    def ask_for_model(self) -> None:
        """Ask for a building model and read it; where the library is missing, say how to get it."""
        if not self.work.running and not self.work.lacks_library():
            self._ask_for_file("Choose a building model", MODELS)

    def _ask_for_file(self, title: str = "Choose a door schedule", files: str = FILES) -> None:
        folder = self.work.path or self.session.path
        start = str(folder.parent if folder else Path.home())
        name, _ = QFileDialog.getOpenFileName(self, title, start, files)
        if name:
            self.read(Path(name))

    def show_plan(self) -> None:
        """Show the storeys of the model, each door with its swing and how it stands."""
        from configurator.ui.intake.storey_plan import StoreyPlanWindow

        if self.plan is None:
            self.plan = StoreyPlanWindow(self.session, self.work, self)
            self.plan.row_asked.connect(lambda line: self.view.look_at(line, None))
        self.plan.show_state()
        self.plan.show()
        self.plan.raise_()

    def _use_sheet(self, place: int) -> None:
        if self.work.path is not None:
            self.work.read(self.work.path, self.sheets.itemText(place))
            self._show()

    def _take(self) -> None:
        compared, path = self.work.compared, self.work.path
        if compared is None or path is None or self.work.running:
            return
        changed = (*compared.of_kind("new"), *compared.of_kind("changed"))
        try:
            openings, facts = self.work.taken(self.take.removes, self.take.names)
            mark = changed[0].opening.mark if changed else self.session.mark
            self.session.take_openings(openings, f"import {path.name}", mark, facts=facts)
        except RefusedError as error:
            self.work.refusal = error.about("")
            self._show()
            return
        # By now the job is compared anew, and nothing differs; `compared` still knows what was taken.
        if not any(row.before is not None and row.before.settled for row in changed):
            said = self._done(compared, path.name)
            self.said.emit(said)  # else the window says what was changed that had been settled
        if compared.bad:
            rows = counted(len(compared.bad), "row")
            self.waiting.emit(f"{rows} of {path.name} stayed behind: not in the job yet.")
            self.work.follow_job()
            self.left.emit()
        else:
            self._leave()

    def _done(self, compared: Compared, name: str) -> str:
        new, changed = len(compared.of_kind("new")), len(compared.of_kind("changed"))
        removed = f", {len(compared.gone):,} removed" if self.take.removes and compared.gone else ""
        return f"Taken from {name}: {new:,} new, {changed:,} changed{removed}. Undo takes it back."

    def _leave(self) -> None:
        self.waiting.emit("")
        self.work.stop()
        self._show()
        self.left.emit()

    def _mend_alike(self, alike: Sequence[CellFault]) -> None:
        """Ask how cells that read the same should read, and read them all so."""
        first, table = alike[0], self.work.table
        if table is None or first.place is None:
            return
        old = next(row.cell(first.place) for row in table.rows if row.line == first.line)
        ask = f"{first.reason}\n\nRead every “{' '.join(old.split())}” under {first.heading} as:"
        new, given = QInputDialog.getText(self, "Put right in all rows", ask, text=" ".join(old.split()))
        if given and new != old:
            self.work.correct_alike(first.place, old, new)

    def _save_report(self) -> None:
        path = self.work.path
        start = str(path.with_name(f"{path.stem}-as-read.xlsx")) if path is not None else ""
        name, _ = QFileDialog.getSaveFileName(
            self, "Save what was read, asked and taken for what", start, REPORTS
        )
        if not name:
            return
        try:
            write_document(self.work.report(), Path(name))
        except (OSError, ValueError) as error:
            self.said.emit(as_sentence(f"the report was not written: {error}"))
        else:
            self.said.emit(f"The report is in {Path(name).name}.")

    # --- How it is put together ---

    def _put_together(self) -> None:
        self.sheets.setAccessibleName("sheet of the workbook")
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.setChildrenCollapsible(False)
        self.split.addWidget(self.view)
        self.split.addWidget(self.lists)
        self.split.setStretchFactor(0, 2)
        self.split.setStretchFactor(1, 1)
        buttons = (self.storeys, self.keep, self.save)
        chosen = across(self.choose, self.model, self.sheets, (self.words, 1), *buttons, spacing=2 * GRID)
        asked = (self.refusal, self.questions)
        parts = (self.invitation, chosen, self.progress, *asked, (self.split, 1), GROW, self.take)
        fill(self, down(*parts, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, 2 * GRID)))

    def _connect(self) -> None:
        self.choose.clicked.connect(lambda _: self._ask_for_file())
        self.model.clicked.connect(lambda _: self.ask_for_model())
        self.storeys.clicked.connect(lambda _: self.show_plan())
        self.sheets.activated.connect(self._use_sheet)
        self.progress.cancelled.connect(self.work.stop)
        self.work.changed.connect(self._show)
        self.view.header.field_chosen.connect(lambda place, field: self.work.use_field(place, field or None))
        self.view.header.unit_chosen.connect(self.work.use_unit)
        for question, asked in self.asked.items():
            asked.answered.connect(partial(self.work.use_answer, question))
        self.commas.answered.connect(self.work.use_commas)
        self.keep.clicked.connect(lambda _: self.work.keep_others())
        self.save.clicked.connect(lambda _: self._save_report())
        self.lists.mend_asked.connect(self._mend_alike)
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
