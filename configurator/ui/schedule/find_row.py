"""What of the schedule is shown: words to find in any column, a status, findings, like openings together."""

from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QStackedWidget,
    QToolButton,
    QWidget,
)

from configurator.model import paths
from configurator.model.paths import words_of
from configurator.sentences import capitalized
from configurator.ui.kit.layout import YieldingCombo
from configurator.ui.kit.look import GRID
from configurator.ui.schedule.arranging import GROUPS, Wanted
from configurator.ui.schedule.columns import status_text

FINDINGS = (("with or without findings", ""), ("with findings", "any"), ("with errors", "error"))


class FindLine(QLineEdit):
    """Words to find; Escape empties it, and Down or Enter goes on to the table.

    Signals:
        finished: the user has found it.
    """

    finished = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go on to the table, or empty the line."""
        if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.finished.emit()
        elif event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
            self.textEdited.emit("")
        else:
            super().keyPressEvent(event)


class FindRow(QWidget):
    """The line above the table.

    Signals:
        changed: something else is wanted.
    """

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.words = FindLine()
        self.words.setPlaceholderText("Find in any column")
        self.words.setAccessibleName("find openings")
        self.words.setClearButtonEnabled(True)
        self.words.setMinimumWidth(40 * GRID)
        self.status, self.findings = YieldingCombo(), YieldingCombo()
        self.status.setAccessibleName("show openings of status")
        self.status.addItem("any status", "")
        for status in (*words_of("status"), *words_of("order_state")):
            self.status.addItem(status_text(status), status)
        self.findings.setAccessibleName("show openings by findings")
        for text, which in FINDINGS:
            self.findings.addItem(text, which)
        self.grouped = YieldingCombo()
        self.grouped.setAccessibleName("which openings share a row")
        self.grouped.setToolTip("Like ones are alike in all but mark, place, quantity and what is noted")
        for key, (text, _) in GROUPS.items():
            self.grouped.addItem(text, key)
        self.columns = QToolButton()
        self.columns.setText("Columns")
        self.columns.setToolTip("Choose which columns are shown; the program remembers it")
        self.columns.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.count = QLabel()
        self.count.setAccessibleName("how many openings")
        self._place()
        self.words.textEdited.connect(lambda _: self.changed.emit())
        self.status.activated.connect(lambda _: self.changed.emit())
        self.findings.activated.connect(lambda _: self.changed.emit())
        self.grouped.activated.connect(lambda _: self.changed.emit())

    def wanted(self, column: int | None, descending: bool) -> Wanted:
        """Return what is asked for, in the order that the table's head gives."""
        return Wanted(
            self.words.text(),
            self.status.currentData(),
            self.findings.currentData(),
            column,
            descending,
            self.grouped.currentData(),
        )

    def show_wanted(self, wanted: Wanted) -> None:
        """Show what the table shows, as after something was not carried out."""
        if self.words.text() != wanted.words:
            self.words.setText(wanted.words)
        self.status.setCurrentIndex(self.status.findData(wanted.status))
        self.findings.setCurrentIndex(self.findings.findData(wanted.findings))
        self.grouped.setCurrentIndex(self.grouped.findData(wanted.grouped))

    def _place(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words, 1)
        for widget in (self.status, self.findings, self.grouped, self.columns):
            line.addWidget(widget)
        line.addSpacing(2 * GRID)
        line.addWidget(self.count)


FIELDS = (
    "status", "order_state", "quantity", "hand", "leaves", "size", "location", "level", "hardware_set",
    "fire_minutes", "glass", "hung_on", "door.construction",
    "door.thickness", "door.undercut", "frame.kind", "frame.jamb_depth", "wall.thickness",
    "wall.frame_proud", "use.wanted_angle", "use.stop_angle", "use.exposure", "use.locked",
    "use.fire_rated", "use.closer", "use.accessible", "use.traffic", "use.lock_finish_bhma", "hinge.height",
    "hinge.width", "hinge.count", "hinge.weight", "hinge.bearing", "hinge.base_metal", "hinge.finish_bhma",
    "hinge.pin", "details.head", "details.jamb", "details.sill", "questions", "remarks", "notes",
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
        self.field, self.word, self.text = YieldingCombo(), YieldingCombo(), QLineEdit()
        self.field.setAccessibleName("field to set")
        self.word.setAccessibleName("value to set")
        self.text.setAccessibleName("value to set")
        self.text.setPlaceholderText(_NOT_GIVEN)
        for path in FIELDS:
            name = paths.trade_name(path)
            self.field.addItem(capitalized(name), path)
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
