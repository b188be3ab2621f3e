"""The sheets as a page of the window: any sheet of any opening as it will be printed, and where it goes."""

from PySide6.QtCore import QStringListModel, Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QLabel,
    QListView,
    QPushButton,
    QSplitter,
    QWidget,
)

from configurator.study import Study
from configurator.ui.kit.layout import BARE, GROW, Box, LeadsOn, across, down, fill
from configurator.ui.kit.look import FORM_WIDTH, GRID, LIST_WIDTH, tinted
from configurator.ui.kit.runner import ProgressLine
from configurator.ui.schedule.panels import TextPanel
from configurator.ui.sheets.actions import SheetActions
from configurator.ui.sheets.choosers import Choosers
from configurator.ui.sheets.laid_out import SheetChoice
from configurator.ui.sheets.preview import SheetPreview
from configurator.ui.state.session import Session

NO_OPENINGS = "This job has no openings yet. Add one with + at the left of the work."
TRY_ANOTHER = "Take the fitted scale, a smaller one, or a larger paper."
_IDLE = ("swing", "theme", "save", "file")


class SheetsPage(LeadsOn, QWidget):
    """The openings, the sheet of the one on show, and what to do with it or with those of all.

    Signals:
        left: the opening on show is to be worked on.
        said: a sentence for the window's line.
    """

    left = Signal()
    said = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.marks = QStringListModel()
        self.openings = QListView()
        self.choosers = Choosers(session.display)
        self.refusal = QLabel()
        self.preview = SheetPreview()
        self.panel = TextPanel()
        self.which = QComboBox()
        self.buttons: dict[str, QPushButton] = {}
        self.actions_of = SheetActions(self)
        self.progress = ProgressLine(self.actions_of.writing, self.actions_of.printing)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(0)
        self._put_together()
        self._connect()
        self.first_stop = self.openings

    # --- What it shows ---

    def show_state(self, by: str) -> None:
        """Bring the page in line with the session, at the next idle moment: ten changes give one sheet."""
        if by in _IDLE:
            return
        self.choosers.show_units(self.session.display)
        self._show_openings()
        self._soon.start()

    def choice(self) -> SheetChoice:
        """Return which sheet is chosen, and how."""
        return self.choosers.choice(self.session.display)

    def lay_out(self) -> None:
        """Lay the sheet of the opening on show out anew, or say why it cannot be."""
        self._soon.stop()
        study, refusal = self.session.study, ""
        if study is None:
            self.preview.show_words(self.session.trouble or NO_OPENINGS)
        else:
            self.choosers.show_widths(_widths_of(study))
            try:
                self.preview.show_page(self.choice().page(study, self.session.job.job))
            except ValueError as error:
                refusal = f"{str(error)[:1].upper()}{str(error)[1:]}."
                self.preview.show_words(TRY_ANOTHER if self.choice().scale else "")
        self.refusal.setText(refusal)
        self.refusal.setVisible(bool(refusal))
        tinted(self.refusal, "error", self.session.dark)
        self.show_what_can_be_done()

    def _show_openings(self) -> None:
        marks = [opening.mark for opening in self.session.job.openings]
        chosen = self.openings.selectionModel()
        chosen.blockSignals(True)
        if marks != self.marks.stringList():
            self.marks.setStringList(marks)
            self.which.setItemText(1, f"all {len(marks):,} openings" if len(marks) != 1 else "all openings")
        if self.session.mark in marks:
            self.openings.setCurrentIndex(self.marks.index(marks.index(self.session.mark)))
        chosen.blockSignals(False)
        self.openings.viewport().update()

    def show_what_can_be_done(self) -> None:
        """Offer what can be done with the chosen sheets, and nothing while something is being done."""
        there = self.preview.page is not None if self.of_one else bool(self.session.job.openings)
        for button in self.buttons.values():
            button.setEnabled(there and not self.actions_of.busy)
        self.which.setEnabled(not self.actions_of.busy)
        self.choosers.allow(self.actions_of.busy)

    @property
    def of_one(self) -> bool:
        """Whether the sheet of the opening on show is meant, not those of all openings."""
        return self.which.currentIndex() == 0

    # --- How it is put together ---

    def _put_together(self) -> None:
        self.openings.setModel(self.marks)
        self.openings.setUniformItemSizes(True)
        self.openings.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.openings.setFrameShape(QListView.Shape.NoFrame)
        self.openings.setAccessibleName("openings of the job")
        self.openings.setMinimumWidth(LIST_WIDTH)
        self.refusal.setMargin(2 * GRID)
        self.refusal.setWordWrap(True)
        self.refusal.hide()
        right = QWidget()
        below = (self.progress, self.panel, self._bottom())
        parts = (self.choosers, self.refusal, (self.preview, 1), *below)
        fill(right, down(*parts, spacing=0, margins=BARE))
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.addWidget(self.openings)
        split.addWidget(right)
        split.setStretchFactor(1, 1)
        split.setSizes([LIST_WIDTH, 4 * FORM_WIDTH])
        fill(self, down(split, margins=BARE))

    def _bottom(self) -> Box:
        self.which.addItems(["this opening", "all openings"])
        self.which.setAccessibleName("which openings")
        self.which.setToolTip("Whose sheets are exported and printed")
        for name, title, tip, run in self.actions_of.offered():
            button = self.buttons[name] = QPushButton(title)
            button.setToolTip(tip)
            button.clicked.connect(lambda _=False, run=run: run())
        parts = ((GROW, 1), self.which, *self.buttons.values())
        return across(*parts, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, GRID))

    def _connect(self) -> None:
        self._soon.timeout.connect(self.lay_out)
        self.openings.selectionModel().currentChanged.connect(lambda index: self._pick(index.row()))
        self.openings.doubleClicked.connect(lambda _: self.left.emit())
        self.choosers.changed.connect(self.lay_out)
        self.choosers.zoom_asked.connect(self.preview.step)
        self.choosers.whole_asked.connect(self.preview.show_whole)
        self.preview.zoomed.connect(
            lambda: self.choosers.show_zoom(self.preview.zoom if self.preview.page else None)
        )
        self.which.activated.connect(lambda _: self.show_what_can_be_done())

    def _pick(self, row: int) -> None:
        if 0 <= row < len(self.session.job.openings):
            self.session.select(self.session.job.openings[row].mark)


def _widths_of(study: Study) -> tuple[float, ...]:
    return tuple(sorted({one.hinge_width for one in study.candidates}))
