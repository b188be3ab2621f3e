"""Whether one hinge width would do for the whole job, asked for, and taken with one click."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QPushButton, QScrollArea, QWidget

from configurator.order.uniform import offered_width
from configurator.rules.wording import counted, plain
from configurator.ui.kit.layout import BARE, Pool, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.order.desk import Offer

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
