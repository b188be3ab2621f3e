"""The order line of the opening on show: to read, to select, and to copy."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from configurator.ui.kit.layout import across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.state.session import Session


class OrderBar(QWidget):
    """The lines to order, one a leaf, with what to heed first, and buttons at their end."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.lines, self.cautions = _selectable("order line"), _selectable("to heed before ordering")
        self.copy = QPushButton("Copy")
        self.copy.setToolTip("Copy the order line, ready to be pasted into an order")
        self.copy.setAccessibleName("copy the order line")
        self.copy.clicked.connect(self.copy_lines)
        words = down(self.cautions, self.lines, spacing=2)
        self._buttons = QVBoxLayout()
        self._buttons.setSpacing(GRID)
        self._buttons.setAlignment(Qt.AlignmentFlag.AlignTop)
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        fill(self, across((words, 1), self._buttons, spacing=2 * GRID, margins=margins))
        self.add(self.copy)

    def add(self, button: QPushButton) -> None:
        """Put another button under Copy."""
        self._buttons.addWidget(button)

    def show_state(self) -> None:
        """Show the lines of the opening on show; empty where nothing can be ordered."""
        from configurator.drawing.hinge_order_line import order_cautions, order_lines, order_text

        study = self.session.study
        if study is None:
            return
        self.lines.setText("\n".join(line.text for line in order_lines(study)))
        cautions = "  ".join(f"▲ {sentence}" for sentence in order_cautions(study))
        self.cautions.setText(cautions)
        self.cautions.setVisible(bool(cautions))
        tinted(self.cautions, "warning", self.session.dark)
        self.copy.setEnabled(bool(order_text(study)))

    def copy_lines(self) -> None:
        """Put the lines that can be ordered on the clipboard."""
        from configurator.drawing.hinge_order_line import order_text

        study = self.session.study
        if study is not None:
            QGuiApplication.clipboard().setText(order_text(study))


def _selectable(name: str) -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setAccessibleName(name)
    keys_and_mouse = (
        Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
    )
    label.setTextInteractionFlags(keys_and_mouse)
    sized(label, -1)
    return label
