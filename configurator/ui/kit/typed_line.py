"""A line to type into, with a small word or sign at its end; undo is the window's while nothing is typed."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QToolButton

from configurator.ui.kit.look import sized

ASSUMED = "assumed"
"""The word beside a value that nobody gave."""


class TypedLine(QLineEdit):
    """A line edit that leaves undo to the window unless something is being typed, and says when Esc is hit.

    Signals:
        given_up: the user wants back what held before.
        asked_why: the user wants the reason for what is shown.
    """

    given_up = Signal()
    asked_why = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.being_typed = False
        self.textEdited.connect(self._begin_typing)
        self.tag = QToolButton(self)
        self.tag.setAutoRaise(True)
        self.tag.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.tag.setCursor(Qt.CursorShape.PointingHandCursor)
        sized(self.tag, -1)
        self.tag.hide()

    def _begin_typing(self) -> None:
        self.being_typed = True

    def show_tag(self, text: str, help_text: str) -> None:
        """Show a small word or sign at the right end of the line; an empty one hides it."""
        if text != self.tag.text() or text == "":
            self.tag.setText(text)
            self.tag.setVisible(bool(text))
            self.setTextMargins(0, 0, self.tag.sizeHint().width() if text else 0, 0)
        self.tag.setToolTip(help_text)
        self._place_tag()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the tag at the right end."""
        super().resizeEvent(event)
        self._place_tag()

    def event(self, event: QEvent) -> bool:
        """Leave undo to the window while nothing is being typed; take F1 from it while there is a reason."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            if event.key() == Qt.Key.Key_F1 and self.tag.text() == ASSUMED:
                event.accept()
                return True
            if not self.being_typed and _undoes(event):
                event.ignore()
                return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Esc for giving up and F1 for asking why."""
        if event.key() == Qt.Key.Key_Escape:
            self.given_up.emit()
        elif event.key() == Qt.Key.Key_F1:
            self.asked_why.emit()
        else:
            super().keyPressEvent(event)

    def _place_tag(self) -> None:
        size = self.tag.sizeHint()
        height = min(size.height(), self.height() - 2)
        self.tag.setGeometry(
            self.width() - size.width() - 2, (self.height() - height) // 2, size.width(), height
        )


def _undoes(event: QKeyEvent) -> bool:
    return event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo)


def finish_typing() -> None:
    """Take what is being typed in a line as it is."""
    line = QApplication.focusWidget()
    if isinstance(line, TypedLine) and line.being_typed:
        line.editingFinished.emit()
