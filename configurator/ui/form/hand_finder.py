"""Which hand is it? Four pictures, seen from where you unlock; the one picked is the opening's hand."""

from functools import partial

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QDialog, QGridLayout, QLabel, QSizePolicy, QToolButton, QWidget

from configurator.drawing.pictures.hand_pictures import (
    NAMES,
    hand_picture,
    looks_from_inside,
    said_from_inside,
    seen_from_outside,
)
from configurator.ui.kit.layout import down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.pictures import pixmap_of
from configurator.ui.state.session import Session

ASK = "Stand outside, on the side you unlock the door from. Which of these do you see?"
_PAIR = " Of a pair it is the hand of the active leaf, which opens first."
_PICTURE = QSize(52 * GRID, 50 * GRID)


class HandFinder(QDialog):
    """Not modal; what is picked is one edit, so that undo takes it back."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self._drawn: tuple[bool, float] | None = None
        self.setWindowTitle("Which hand?")
        self.setModal(False)
        self.ask = QLabel()
        self.ask.setWordWrap(True)
        self.inside = QLabel()
        self.inside.setWordWrap(True)
        self.inside.setMinimumHeight(13 * GRID)
        self.inside.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.inside.setAccessibleName("what the same door is called from inside")
        self.cards = {hand: self._card(hand) for hand in NAMES}
        self._put_together()
        session.changed.connect(self.show_state)
        self.show_state("open")

    def show_state(self, by: str) -> None:
        """Show which hand holds, and draw the pictures anew for another theme."""
        if by == "swing" or (by != "open" and not self.isVisible()):
            return
        hand = self.session.value("hand")
        self.ask.setText(ASK + (_PAIR if self.session.value("leaves") == "pair" else ""))
        for name, card in self.cards.items():
            card.setChecked(name == hand)
            card.setText(_words(name, name == hand))
            card.setEnabled(self.session.opening is not None)
        self.inside.setText(said_from_inside(hand) if hand else "No hand is given yet. Pick what you see.")
        self._draw()

    def pick(self, hand: str) -> None:
        """Take a hand for the opening's."""
        self.session.edit("hand", hand)
        self.show_state("edit")

    def _draw(self) -> None:
        wanted = (self.session.dark, self.devicePixelRatioF())
        if wanted == self._drawn:
            return
        self._drawn = wanted
        for hand, card in self.cards.items():
            picture = pixmap_of(partial(hand_picture, hand), _PICTURE, wanted[1], wanted[0])
            card.setIcon(QIcon(picture))

    def _card(self, hand: str) -> QToolButton:
        card = QToolButton()
        card.setCheckable(True)
        card.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        card.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        card.setIconSize(_PICTURE)
        card.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        card.setText(_words(hand, picked=False))
        card.setAccessibleName(f"{hand}, {NAMES[hand]}")
        card.setAccessibleDescription(f"{seen_from_outside(hand)}; {_inside(hand)}")
        card.clicked.connect(lambda _=False: self.pick(hand))
        return card

    def _put_together(self) -> None:
        sized(self.ask, 1)
        cards = QGridLayout()
        cards.setSpacing(2 * GRID)
        margins = (4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        fill(self, down(self.ask, cards, self.inside, spacing=3 * GRID, margins=margins))
        for place, card in enumerate(self.cards.values()):
            cards.addWidget(card, place // 2, place % 2)


def _words(hand: str, picked: bool) -> str:
    """Return what stands under a picture; the hand that holds is ticked, not only shaded."""
    tick = "✔ " if picked else ""
    return f"{tick}{hand}, {NAMES[hand]}\n{seen_from_outside(hand)}\n{_inside(hand)}"


def _inside(hand: str) -> str:
    return f"from inside it looks like {looks_from_inside(hand)}"
