"""A column that scrolls down only, and is as wide as what stands in it needs."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QScroller, QWidget


class Side(QScrollArea):
    """Follows the width of its contents, whatever type they are set in."""

    def __init__(self, contents: QWidget) -> None:
        super().__init__()
        self.setWidget(contents)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        QScroller.grabGesture(self.viewport(), QScroller.ScrollerGestureType.TouchGesture)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take the width that the contents ask for whenever that may have changed."""
        contents = self.widget()
        if event.type() == QEvent.Type.LayoutRequest and contents is not None and watched is contents:
            bar = self.verticalScrollBar().sizeHint().width()
            self.setFixedWidth(contents.minimumSizeHint().width() + bar)
        return bool(super().eventFilter(watched, event))
