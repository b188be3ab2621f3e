"""The page that takes a door schedule into the job: choose a file, correct how it is read, take it."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QPalette
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QSplitter,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from configurator.intake.saying import NOTHING, SETTLED, counted, summary
from configurator.ui.edits import RefusedError
from configurator.ui.intake.asking import ORDERS, PAIRS, Asked
from configurator.ui.intake.choosers import ChooserHeader
from configurator.ui.intake.lists import ImportLists
from configurator.ui.intake.preview import OUTCOME, Preview
from configurator.ui.intake.work import ImportWork
from configurator.ui.look import GRID, sized, tabular, tinted
from configurator.ui.session import Session

INVITATION = (
    "Take an architect's door schedule into this job: a CSV file, or an XLSX workbook. Its columns are "
    "matched by their headings and can be corrected; nothing is taken until you say so."
)
FILES = "Door schedules (*.csv *.xlsx *.tsv *.txt);;All files (*)"
_NARROWEST, _WIDEST = 34 * GRID, 60 * GRID
_OUTCOME_WIDTH = 84 * GRID
_ROWS_MEASURED = 40


class ImportPage(QWidget):
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
        self.progress, self.doing, self.stop = QProgressBar(), QLabel(), QPushButton("Stop")
        self.order = Asked("size order", "which figure of a size comes first", ORDERS)
        self.pair = Asked("pair width", "what the width of a narrow pair is of", PAIRS)
        self.preview, self.view, self.lists = Preview(), QTableView(), ImportLists()
        self.header = ChooserHeader(self.view)
        self.remove = QCheckBox()
        self.take_good, self.take_all = QPushButton(), QPushButton()
        self.cancel = QPushButton("Cancel")
        self.setAcceptDrops(True)
        self._put_together()
        self._connect()
        self.setFocusProxy(self.choose)
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
        self.remove.setChecked(untouched)
        self.work.read(path)
        self._show()

    # --- What it shows ---

    def _show(self) -> None:
        work = self.work
        running, there = work.running, work.table is not None
        self.doing.setText(f"{work.doing}…")
        for widget in (self.doing, self.progress, self.stop):
            widget.setVisible(running)
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
        top = self.view.verticalScrollBar().value()
        self.preview.show_schedule(work.table, work.reading, work.compared, session.display, session.dark)
        self.header.show_reading(work.reading)
        if work.table is None or work.reading is None:
            self.words.setText("")
            return
        self._share_width()
        self.view.verticalScrollBar().setValue(top)
        lacking = work.reading.lacks()
        if lacking:
            self.words.setText(f"{lacking[:1].upper()}{lacking[1:]}: choose it over its column.")
        elif work.compared is not None:
            self.words.setText(f"{summary(work.table, work.compared)}.")
        self.words.setPalette(QPalette())
        if lacking:
            tinted(self.words, "error", session.dark)
        if work.compared is not None:
            status_of = {opening.mark: opening.status for opening in session.job.openings}
            self.lists.show_found(work.table, work.compared, work.told(), status_of, session.display)

    def _share_width(self) -> None:
        """Give each column the room of its first texts, within what its choosers need and a screen has."""
        metrics = self.view.fontMetrics()
        rows = range(min(self.preview.rowCount(), _ROWS_MEASURED))
        self.view.setColumnWidth(OUTCOME, _OUTCOME_WIDTH)
        for column in range(1, self.preview.columnCount()):
            texts = [str(self.preview.headerData(column, Qt.Orientation.Horizontal) or "")]
            texts += [str(self.preview.index(row, column).data() or "") for row in rows]
            wanted = max(metrics.horizontalAdvance(text) for text in texts) + 4 * GRID
            self.view.setColumnWidth(column, min(max(wanted, _NARROWEST), _WIDEST))

    def _show_buttons(self) -> None:
        compared, reading = self.work.compared, self.work.reading
        ready = compared is not None and reading is not None and not reading.lacks() and not self.work.running
        good, bad = (len(compared.good), len(compared.bad)) if compared is not None else (0, 0)
        gone = len(compared.gone) if compared is not None else 0
        self.take_good.setText(f"Take {counted(good, 'good opening')}")
        self.take_all.setText(f"Take all {good + bad:,}")
        self.take_good.setVisible(ready and bad > 0)
        self.take_all.setVisible(ready)
        self.remove.setText(f"Also remove {counted(gone, 'opening')} that the schedule does not have")
        self.remove.setVisible(ready and gone > 0)
        new = compared is not None and any(row.kind != "same" for row in compared.good)
        anything = new or (gone > 0 and self.remove.isChecked())
        self.take_good.setEnabled(anything)
        self.take_all.setEnabled(anything and not bad)
        nothing = f"{NOTHING[:1].upper()}{NOTHING[1:]}."
        self.take_all.setToolTip(
            f"{counted(bad, 'row')} cannot be taken" if bad else "" if anything else nothing
        )
        if ready and not anything and not bad:
            self.words.setText(f"{self.words.text()} {nothing}")

    def _show_progress(self, rows: int) -> None:
        self.doing.setText(f"{self.work.doing}: {counted(rows, 'row')}")

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
        if compared is None or path is None:
            return
        changed = (*compared.of_kind("new"), *compared.of_kind("changed"))
        try:
            openings = self.work.taken(self.remove.isChecked())
            mark = changed[0].opening.mark if changed else self.session.mark
            self.session.take_openings(openings, f"import {path.name}", mark)
        except RefusedError as error:
            self.work.refusal = error.about("")
            self._show()
            return
        if not any(row.before is not None and row.before.status in SETTLED for row in changed):
            self.said.emit(self._done())  # else the window says what was changed that had been settled
        self._leave()

    def _done(self) -> str:
        compared = self.work.compared
        assert compared is not None
        assert self.work.path is not None
        new, changed = len(compared.of_kind("new")), len(compared.of_kind("changed"))
        removed = f", {len(compared.gone):,} removed" if self.remove.isChecked() and compared.gone else ""
        name = self.work.path.name
        return f"Taken from {name}: {new:,} new, {changed:,} changed{removed}. Undo takes it back."

    def _leave(self) -> None:
        self.work.stop()
        self._show()
        self.left.emit()

    def _look_at(self, line: int, place: int | None) -> None:
        row = self.preview.row_of(line)
        index = self.preview.index(row, OUTCOME if place is None else place + 1)
        self.view.setCurrentIndex(index)
        self.view.scrollTo(index, QTableView.ScrollHint.PositionAtCenter)

    def _reach(self, section: int) -> None:
        top = self.view.rowAt(0)
        self.view.scrollTo(self.preview.index(max(top, 0), section))

    # --- How it is put together ---

    def _put_together(self) -> None:
        self.progress.setRange(0, 0)
        self.progress.setTextVisible(False)
        self.progress.setAccessibleName("progress")
        self.sheets.setAccessibleName("sheet of the workbook")
        self._set_up_view()
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.setChildrenCollapsible(False)
        self.split.addWidget(self.view)
        self.split.addWidget(self.lists)
        self.split.setStretchFactor(0, 2)
        self.split.setStretchFactor(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, GRID, 2 * GRID, 2 * GRID)
        column.setSpacing(GRID)
        column.addWidget(self.invitation)
        column.addLayout(_row(self.choose, self.sheets, self.words))
        column.addLayout(_row(self.doing, self.progress, self.stop))
        for widget in (self.refusal, self.order, self.pair):
            column.addWidget(widget)
        column.addWidget(self.split, 1)
        column.addStretch(0)
        column.addLayout(self._buttons())

    def _set_up_view(self) -> None:
        self.view.setModel(self.preview)
        self.view.setHorizontalHeader(self.header)
        self.view.setAccessibleName("rows of the schedule")
        self.view.setWordWrap(False)
        self.view.setTabKeyNavigation(False)
        self.view.setHorizontalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
        sized(self.view, -1)
        self.view.setFont(tabular(self.view.font()))
        self.header.setFont(self.view.font())
        self.view.verticalHeader().setFont(self.view.font())
        self.view.verticalHeader().setDefaultSectionSize(6 * GRID)
        self.view.verticalHeader().setToolTip("line of the file")

    def _buttons(self) -> QHBoxLayout:
        line = QHBoxLayout()
        line.setSpacing(2 * GRID)
        line.addWidget(self.remove)
        line.addStretch(1)
        for button in (self.take_good, self.take_all, self.cancel):
            line.addWidget(button)
        return line

    def _connect(self) -> None:
        self.choose.clicked.connect(self._ask_for_file)
        self.sheets.activated.connect(self._use_sheet)
        self.stop.clicked.connect(self.work.stop)
        self.work.changed.connect(self._show)
        self.work.progressed.connect(self._show_progress)
        self.header.field_chosen.connect(lambda place, field: self.work.use_field(place, field or None))
        self.header.unit_chosen.connect(self.work.use_unit)
        self.header.reached.connect(self._reach)
        self.order.answered.connect(self.work.use_order)
        self.pair.answered.connect(self.work.use_pair)
        self.lists.fault_chosen.connect(self._look_at)
        self.remove.toggled.connect(lambda _: self._show_buttons())
        self.take_good.clicked.connect(self._take)
        self.take_all.clicked.connect(self._take)
        self.cancel.clicked.connect(self._leave)

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


def _row(*widgets: QWidget) -> QHBoxLayout:
    """Return widgets side by side, the last one as wide as there is room."""
    line = QHBoxLayout()
    line.setSpacing(2 * GRID)
    for widget in widgets:
        line.addWidget(widget, int(widget is widgets[-1]))
    return line
