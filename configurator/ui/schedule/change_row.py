"""One field of all chosen openings set at once: which field, what value, and the button that does it."""

from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLineEdit, QPushButton, QStackedWidget, QWidget

from configurator.ui.kit.look import GRID
from configurator.ui.state import paths

FIELDS = (
    "status", "quantity", "hand", "leaves", "size", "location", "hung_on", "door.construction",
    "door.thickness", "door.undercut", "frame.kind", "frame.jamb_depth", "wall.thickness",
    "wall.frame_proud", "use.wanted_angle", "use.stop_angle", "use.exposure", "use.locked",
    "use.fire_rated", "use.closer", "use.accessible", "use.traffic", "use.lock_finish_bhma", "hinge.height",
    "hinge.width", "hinge.count", "hinge.weight", "hinge.bearing", "hinge.base_metal", "hinge.finish_bhma",
    "hinge.pin", "questions", "notes",
)  # fmt: skip
"""What may be set on many openings at once."""
_NOT_GIVEN = "not given"


class ChangeRow(QWidget):
    """Sets a field on what is chosen; an empty value leaves it to the program again.

    Signals:
        asked: the field's path and the typed text are to be set.
    """

    asked = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        self.field, self.word, self.text = QComboBox(), QComboBox(), QLineEdit()
        self.field.setAccessibleName("field to set")
        self.word.setAccessibleName("value to set")
        self.text.setAccessibleName("value to set")
        self.text.setPlaceholderText(_NOT_GIVEN)
        for path in FIELDS:
            name = paths.trade_name(path)
            self.field.addItem(name[:1].upper() + name[1:], path)
        self.values = QStackedWidget()
        self.values.addWidget(self.word)
        self.values.addWidget(self.text)
        self.values.setFixedWidth(42 * GRID)
        self.button = QPushButton()
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(GRID)
        for widget in (self.field, self.values, self.button):
            line.addWidget(widget)
        self.field.activated.connect(self._offer)
        self.button.clicked.connect(self._ask)
        self.text.returnPressed.connect(self._ask)
        self._offer()
        self.show_chosen(0)

    @property
    def path(self) -> str:
        """The field that would be set."""
        return str(self.field.currentData())

    def choose(self, path: str) -> None:
        """Offer the values of a field."""
        self.field.setCurrentIndex(self.field.findData(path))
        self._offer()

    def show_chosen(self, count: int) -> None:
        """Say on how many openings it would be set."""
        self.button.setText("Set on 1 opening" if count == 1 else f"Set on {count:,} openings")
        self.button.setEnabled(count > 0)
        self.button.setToolTip("" if count else "Choose rows of the table first")

    def _offer(self, _: Any = None) -> None:
        words = paths.words_of(self.path) or (("yes", "no") if paths.holds(self.path, bool) else ())
        self.text.clear()
        self.text.setToolTip(paths.help_of(self.path))
        self.word.clear()
        self.word.addItems(list(words))
        if not self._is_needed():
            self.word.addItem(_NOT_GIVEN)
        self.values.setCurrentWidget(self.word if words else self.text)

    def _is_needed(self) -> bool:
        """Say whether the field always holds one of its words, so that there is no leaving it out."""
        info = paths.field_at(self.path)
        return info.is_required() or info.default is not None

    def _ask(self) -> None:
        if not self.button.isEnabled():
            return
        text = self.text.text()
        if self.values.currentWidget() is self.word:
            text = self.word.currentText()
        self.asked.emit(self.path, "" if text == _NOT_GIVEN else text)
