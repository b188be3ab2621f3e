"""Orders that went out: freezing one, the list of them, and what changed since the chosen one."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QLabel, QLineEdit, QPushButton, QScrollArea, QSplitter, QWidget

from configurator.model import Job, Revision
from configurator.order.revisions import Changes
from configurator.order.uniform import offered_width
from configurator.rules.wording import counted, plain
from configurator.ui.kit.layout import BARE, GROW, Pool, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.table import RowsTable
from configurator.ui.order.desk import Offer
from configurator.ui.order.rows import (
    LINE_CHANGES,
    OPENING_CHANGES,
    REVISIONS,
    line_change_rows,
    opening_change_rows,
    revision_rows,
)

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
        self.mark_them.setToolTip("Notes every opening that a line serves as ordered; its status stays")
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


EXPLAINED = (
    "Fewer kinds of hinge mean fewer mistakes on site; some hinges are then wider than they need be, cost "
    "more and leave less clear width."
)
ALL_ONE = "Every hinge height of this job already comes in one width."


class OfferRow(QWidget):
    """What one offer comes to, and its buttons where it changes anything."""

    def __init__(self, panel: "UniformPanel") -> None:
        super().__init__()
        self.offer: Offer | None = None
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        sized(self.words, -1)
        self.which, self.take = QPushButton("Which openings"), QPushButton()
        self.which.clicked.connect(lambda: self.offer and panel.marks_asked.emit(self.offer.finding))
        self.take.setToolTip("Set this hinge width by hand on those openings; undo takes it back")
        self.take.clicked.connect(lambda: panel.taken.emit(self.offer))
        buttons = ((button, 0, Qt.AlignmentFlag.AlignTop) for button in (self.which, self.take))
        fill(self, across((self.words, 1), *buttons, spacing=2 * GRID, margins=(0, GRID, 0, GRID)))

    def show_offer(self, offer: Offer) -> None:
        """Show another offer."""
        self.offer = offer
        self.words.setText("\n".join(filter(None, (offer.finding.finding.message, offer.cost))))
        for button in (self.which, self.take):
            button.setVisible(bool(offer.openings))
        if offer.openings:
            self.take.setText(taken_title(offer))


class UniformPanel(QWidget):
    """Asks, then shows every offer with its button.

    Signals:
        asked: the question is to be answered; it may take a while.
        taken: an offer is to be taken.
        marks_asked: which openings an offer changes, as the finding that names them.
    """

    asked = Signal()
    taken = Signal(object)
    marks_asked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.ask = QPushButton("Would one width do?")
        self.ask.clicked.connect(self.asked)
        self.words = QLabel(EXPLAINED)
        self.words.setWordWrap(True)
        sized(self.words, -1)
        offers, area = QWidget(), QScrollArea()
        self._column = fill(offers, down(margins=BARE))
        self._column.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._pool = Pool(self._row)
        area.setWidgetResizable(True)
        area.setFrameShape(QScrollArea.Shape.NoFrame)
        area.setWidget(offers)
        head = across(self.ask, (self.words, 1), spacing=2 * GRID)
        fill(self, down(head, (area, 1), margins=(2 * GRID, GRID, 2 * GRID, GRID)))

    def show_offers(self, offers: Sequence[Offer] | None) -> None:
        """Show the answer; None while nobody has asked."""
        self.words.setText(ALL_ONE if offers == () else EXPLAINED)
        for shown, offer in zip(self._pool.take(len(offers or ())), offers or (), strict=True):
            shown.show_offer(offer)

    @property
    def rows(self) -> list[OfferRow]:
        """The offers on show."""
        return self._pool.on_show

    @property
    def buttons(self) -> list[QPushButton]:
        """The buttons that take an offer."""
        return [one.take for one in self.rows if one.offer is not None and one.offer.openings]

    def _row(self, _: int) -> OfferRow:
        made = OfferRow(self)
        self._column.addWidget(made)
        return made


def taken_title(offer: Offer) -> str:
    """Say what taking an offer does: `Make 3 openings 4-1/2 wide`."""
    width = offered_width(offer.finding)
    assert width is not None
    return f"Make {counted(len(offer.finding.marks), 'mark', 'marks')} {plain(width)} wide"
