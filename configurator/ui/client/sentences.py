"""What is said of a door, as large as it is read; where the screen is small for that, it scrolls."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QScroller, QSizePolicy

from configurator.ui.kit.look import GRID

_LEAST_LINES = 2


class Sentences(QScrollArea):
    """Sentences one under the other. It takes no more room than they need, and gives way to the picture."""

    def __init__(self) -> None:
        super().__init__()
        self.label = QLabel()
        self.label.setWordWrap(True)
        self.label.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.label.setContentsMargins(2 * GRID, 0, 2 * GRID, 2 * GRID)
        self.setWidget(self.label)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName("what this door does")
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        QScroller.grabGesture(self.viewport(), QScroller.ScrollerGestureType.TouchGesture)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Maximum)

    def say(self, words: str) -> None:
        """Show sentences, a line each."""
        self.label.setText(words)
        self.setAccessibleDescription(words)
        self.setVisible(bool(words))
        self.updateGeometry()

    def text(self) -> str:
        """Return what is said."""
        return self.label.text()

    # --- Qt's own names ---

    def sizeHint(self) -> QSize:
        """Ask for the height that the sentences need in the width there is."""
        return QSize(super().sizeHint().width(), self.label.heightForWidth(max(self.width(), 1)))

    def minimumSizeHint(self) -> QSize:
        """Keep two lines of them in sight."""
        return QSize(40 * GRID, _LEAST_LINES * self.label.fontMetrics().height() + 2 * GRID)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Ask anew when the width has changed: lines break elsewhere then."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()
