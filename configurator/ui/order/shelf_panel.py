"""A hinge that is on the shelf: where it will do for the one ordered, opening by opening, and why not."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QLineEdit, QPushButton, QWidget

from configurator.order.substitute import Instead, Substitution
from configurator.rules.wording import counted
from configurator.ui.kit.layout import BARE, GROW, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.table import RowsTable
from configurator.ui.kit.table_model import Head, Row

EXPLAINED = "Two sizes, height x width: the one you have, and the one of the order it is to stand in for."
HEADS = (Head("Mark", 18), Head("Hinges", 14, number=True), Head("Will do", 14), Head("Why not", 160))


class ShelfPanel(QWidget):
    """Asks which size is there, and shows where it will do.

    Signals:
        asked: the job is to be tried with the first size in the place of the second.
        taken: it is to be taken where it will do.
    """

    asked = Signal(str, str)
    taken = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.has, self.wanted = QLineEdit(), QLineEdit()
        self.ask, self.take = QPushButton("Will it do?"), QPushButton("Take it where it does")
        self.words = QLabel(EXPLAINED)
        self.marks = RowsTable("where the hinge on the shelf will do", HEADS, wrapped=True)
        self._dress()
        asked = (
            QLabel("Have"),
            self.has,
            QLabel("on the shelf, not"),
            self.wanted,
            self.ask,
            self.take,
            GROW,
        )
        head = across(*asked, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, 0))
        said = across((self.words, 1), margins=(2 * GRID, 0, 2 * GRID, 0))
        fill(self, down(head, said, (self.marks, 1), spacing=GRID, margins=BARE))
        self.show_found(None)

    def show_found(self, found: Substitution | None) -> None:
        """Show where it will do; None while nobody has asked."""
        rows = [] if found is None else [_row(one) for one in found.marks]
        self.marks.show_rows(rows)
        self.words.setText(EXPLAINED if found is None else found.words())
        doing = 0 if found is None else len(found.doing)
        self.take.setEnabled(doing > 0)
        self.take.setText(
            f"Take it at {counted(doing, 'mark', 'marks')}" if doing else "Take it where it does"
        )

    def propose(self, size: str) -> None:
        """Propose the size of the chosen line as the one wanted, unless one is typed."""
        if not self.wanted.isModified():
            self.wanted.setText(size)

    def _dress(self) -> None:
        for entry, name in ((self.has, "size on the shelf"), (self.wanted, "size of the order")):
            entry.setFixedWidth(30 * GRID)
            entry.setPlaceholderText("4-1/2 x 4-1/2")
            entry.setAccessibleName(name)
            entry.returnPressed.connect(self._ask)
        self.words.setWordWrap(True)
        sized(self.words, -1)
        self.take.setToolTip("Set this hinge size by hand on those openings; undo takes it back")
        self.ask.clicked.connect(self._ask)
        self.take.clicked.connect(self.taken)

    def _ask(self) -> None:
        self.asked.emit(self.has.text(), self.wanted.text())


def _row(one: Instead) -> Row:
    does = "yes" if one.does else "no"
    return Row((one.mark, f"{one.hinges:,}", does, one.why), one.mark, one.why, "" if one.does else "warning")
