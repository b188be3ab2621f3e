"""Whether one hinge width would do for the whole job, asked for, and taken with one click."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from configurator.order.uniform import offered_width
from configurator.rules.wording import counted, plain
from configurator.ui.look import GRID, sized
from configurator.ui.order.desk import Offer

EXPLAINED = (
    "Fewer kinds of hinge mean fewer mistakes on site; some hinges are then wider than they need be, cost "
    "more and leave less clear width."
)
ALL_ONE = "Every hinge height of this job already comes in one width."


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
        self.buttons: list[QPushButton] = []
        self.rows: list[QWidget] = []
        self.ask = QPushButton("Would one width do?")
        self.ask.clicked.connect(self.asked)
        self.words = QLabel(EXPLAINED)
        self.words.setWordWrap(True)
        sized(self.words, -1)
        head = QHBoxLayout()
        head.setSpacing(2 * GRID)
        head.addWidget(self.ask)
        head.addWidget(self.words, 1)
        self._offers = QWidget()
        self._column = QVBoxLayout(self._offers)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setAlignment(Qt.AlignmentFlag.AlignTop)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setFrameShape(QScrollArea.Shape.NoFrame)
        area.setWidget(self._offers)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        column.addLayout(head)
        column.addWidget(area, 1)

    def show_offers(self, offers: Sequence[Offer] | None) -> None:
        """Show the answer; None while nobody has asked."""
        self.buttons = []
        for row in self.rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.rows = [self._row(offer) for offer in offers or ()]
        self.words.setText(ALL_ONE if offers == () else EXPLAINED)
        for row in self.rows:
            self._column.addWidget(row)

    def _row(self, offer: Offer) -> QWidget:
        row = QWidget()
        words = QLabel("\n".join(filter(None, (offer.finding.finding.message, offer.cost))))
        words.setWordWrap(True)
        words.setTextFormat(Qt.TextFormat.PlainText)
        words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        sized(words, -1)
        line = QHBoxLayout(row)
        line.setContentsMargins(0, GRID, 0, GRID)
        line.setSpacing(2 * GRID)
        line.addWidget(words, 1)
        if offer.openings:
            self._add_buttons(line, offer)
        return row

    def _add_buttons(self, line: QHBoxLayout, offer: Offer) -> None:
        which = QPushButton("Which openings")
        which.clicked.connect(lambda: self.marks_asked.emit(offer.finding))
        take = QPushButton(taken_title(offer))
        take.setToolTip("Set this hinge width by hand on those openings; undo takes it back")
        take.clicked.connect(lambda: self.taken.emit(offer))
        for button in (which, take):
            line.addWidget(button, alignment=Qt.AlignmentFlag.AlignTop)
        self.buttons.append(take)


def taken_title(offer: Offer) -> str:
    """Say what taking an offer does: `Make 3 openings 4-1/2 wide`."""
    width = offered_width(offer.finding)
    assert width is not None
    return f"Make {counted(len(offer.finding.marks), 'mark', 'marks')} {plain(width)} wide"
