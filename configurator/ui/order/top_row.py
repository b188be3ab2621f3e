"""Above the order: the spare allowance, the price list, and what can be written."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QMenu, QPushButton, QToolButton, QWidget

from configurator.ui.kit.look import GRID, sized, tinted


class TopRow(QWidget):
    """What an order is made with.

    Signals:
        spare_typed: another allowance was typed.
        prices_asked: a price list is to be chosen; prices_dropped: there are to be none.
        written: the document of that kind is wanted.
    """

    spare_typed = Signal(str)
    prices_asked = Signal()
    prices_dropped = Signal()
    written = Signal(str)

    def __init__(self, kinds: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.spare, self.refusal, self.price_name = QLineEdit(), QLabel(), QLabel()
        self.prices, self.cross, self.write = QPushButton("Price list…"), QToolButton(), QPushButton("Write…")
        self.menu = QMenu(self)
        self.entries = {kind: self.menu.addAction(title) for kind, title in kinds}
        self._dress()
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(2 * GRID)
        name = QLabel("Spare hinges a line")
        name.setBuddy(self.spare)
        for widget in (name, self.spare, self.refusal, self.prices, self.price_name, self.cross):
            line.addWidget(widget)
        line.addStretch(1)
        line.addWidget(self.write)
        self._connect()

    def show_refusal(self, sentence: str, dark: bool) -> None:
        """Say beside the field why the allowance cannot be; an empty sentence takes it away."""
        self.refusal.setText(sentence)
        self.refusal.setVisible(bool(sentence))
        tinted(self.refusal, "error", dark)

    def show_prices(self, name: str) -> None:
        """Show which price list is used; none for an empty name."""
        short = name if len(name) <= 40 else f"{name[:18]}…{name[-18:]}"
        self.price_name.setText(short)
        self.price_name.setToolTip(name)
        self.price_name.setVisible(bool(name))
        self.cross.setVisible(bool(name))

    def _dress(self) -> None:
        self.spare.setPlaceholderText("none; 5% or 2")
        self.spare.setFixedWidth(27 * GRID)
        self.spare.setToolTip(
            "Hinges over those the openings take: per cent of each line, or a number a line"
        )
        self.spare.setAccessibleName("spare hinges a line")
        self.prices.setToolTip(
            "Your own prices: a CSV with the column price, and any columns that tell hinges apart, such as "
            "size, type, base_metal, finish_bhma; also unit (each or pair) and currency"
        )
        self.price_name.setTextFormat(Qt.TextFormat.PlainText)
        self.cross.setText("×")
        self.cross.setAutoRaise(True)
        self.cross.setAccessibleName("do without prices")
        self.write.setMenu(self.menu)
        self.write.setToolTip("Write the order, schedules, a submittal or a field sheet to a file")
        sized(self.refusal, -1)
        self.refusal.setWordWrap(True)
        self.refusal.setMinimumWidth(80 * GRID)
        self.refusal.setTextFormat(Qt.TextFormat.PlainText)
        self.refusal.hide()
        self.show_prices("")

    def _connect(self) -> None:
        self.spare.textEdited.connect(self.spare_typed)
        self.prices.clicked.connect(self.prices_asked)
        self.cross.clicked.connect(self.prices_dropped)
        for kind, action in self.entries.items():
            action.triggered.connect(lambda _=False, kind=kind: self.written.emit(kind))
