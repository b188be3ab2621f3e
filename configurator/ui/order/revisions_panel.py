"""Orders that went out: freezing one, the list of them, and what changed since the chosen one."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QLabel,
    QLineEdit,
    QPushButton,
    QSplitter,
    QWidget,
)

from configurator.model import Job, Revision
from configurator.order.revisions import Changes
from configurator.ui.kit.layout import BARE, GROW, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.order.rows import (
    LINE_CHANGES,
    OPENING_CHANGES,
    REVISIONS,
    line_change_rows,
    opening_change_rows,
    revision_rows,
)
from configurator.ui.order.rows_table import RowsTable

NONE_YET = (
    "No order of this job is kept yet. Freeze it when it goes out; afterwards this shows what must be "
    "ordered or returned."
)


class RevisionsPanel(QWidget):
    """Frozen orders of the job on show.

    Signals:
        frozen: the order is to be kept, with a note; the second argument says whether to mark its openings.
        chosen: another revision, or none, is to be compared with.
    """

    frozen = Signal(str, bool)
    chosen = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.note, self.mark_them = QLineEdit(), QCheckBox("Mark its openings ordered")
        self.freeze, self.words = QPushButton("Freeze this order"), QLabel(NONE_YET)
        self.list = RowsTable("orders that went out", REVISIONS)
        self.lines = RowsTable("lines to order and to return", LINE_CHANGES)
        self.openings = RowsTable("openings that changed", OPENING_CHANGES)
        self._put_together()
        self.freeze.clicked.connect(self._ask)
        self.note.returnPressed.connect(self._ask)
        self.list.chosen.connect(lambda _: self.chosen.emit())

    def revision(self, job: Job) -> Revision | None:
        """Return the chosen revision of the job."""
        number = self.list.current()
        return next((one for one in job.revisions if one.number == number), None)

    def show_job(self, job: Job) -> None:
        """Show the job's revisions; the last one is chosen unless another is."""
        self.list.blockSignals(True)
        self.list.show_rows(revision_rows(job))
        if self.list.current() is None and job.revisions:
            self.list.choose(job.revisions[-1].number)
        self.list.blockSignals(False)
        self.changed.setVisible(bool(job.revisions))

    def show_changes(self, changes: Changes | None, sentence: str, dark: bool, wrong: bool = False) -> None:
        """Show what changed, under a sentence that says so."""
        self.words.setText(sentence or NONE_YET)
        tinted(self.words, "error" if wrong else "note", dark)
        self.lines.show_rows([] if changes is None else line_change_rows(changes))
        self.openings.show_rows([] if changes is None else opening_change_rows(changes))

    def _ask(self) -> None:
        self.frozen.emit(self.note.text(), self.mark_them.isChecked())

    def _put_together(self) -> None:
        self.note.setPlaceholderText("note, such as: first order")
        self.note.setAccessibleName("note on the revision")
        self.note.setFixedWidth(60 * GRID)
        self.freeze.setToolTip("Keep this order in the job, to see later what has changed since it went out")
        self.mark_them.setToolTip("Sets the status of every opening that a line serves to ordered")
        self.words.setWordWrap(True)
        sized(self.words, -1)
        asked = (self.note, self.mark_them, self.freeze, (self.words, 1))
        head = across(*asked, spacing=2 * GRID, margins=(2 * GRID, GRID, 2 * GRID, 0))
        self.changed = QSplitter(Qt.Orientation.Horizontal)
        for table in (self.list, self.lines, self.openings):
            self.changed.addWidget(table)
        self.changed.setChildrenCollapsible(False)
        self.changed.setSizes([80 * GRID, 110 * GRID, 120 * GRID])
        fill(self, down(head, (self.changed, 1), GROW, spacing=GRID, margins=BARE))
