"""What of the schedule is shown: words to find in any column, a status, findings, like openings together."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QCheckBox, QComboBox, QHBoxLayout, QLabel, QLineEdit, QWidget

from configurator.model.words import VOCABULARY
from configurator.ui.kit.look import GRID
from configurator.ui.schedule.arranging import Wanted
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
        self.status, self.findings = QComboBox(), QComboBox()
        self.status.setAccessibleName("show openings of status")
        self.status.addItem("any status", "")
        for status in VOCABULARY["status"]:
            self.status.addItem(status_text(status), status)
        self.findings.setAccessibleName("show openings by findings")
        for text, which in FINDINGS:
            self.findings.addItem(text, which)
        self.grouped = QCheckBox("Like ones together")
        self.grouped.setToolTip("One row for openings alike in all but mark, location, quantity and notes")
        self.count = QLabel()
        self.count.setAccessibleName("how many openings")
        self._place()
        self.words.textEdited.connect(lambda _: self.changed.emit())
        self.status.activated.connect(lambda _: self.changed.emit())
        self.findings.activated.connect(lambda _: self.changed.emit())
        self.grouped.clicked.connect(lambda _: self.changed.emit())

    def wanted(self, column: int | None, descending: bool) -> Wanted:
        """Return what is asked for, in the order that the table's head gives."""
        return Wanted(
            self.words.text(),
            self.status.currentData(),
            self.findings.currentData(),
            column,
            descending,
            self.grouped.isChecked(),
        )

    def show_wanted(self, wanted: Wanted) -> None:
        """Show what the table shows, as after something was not carried out."""
        if self.words.text() != wanted.words:
            self.words.setText(wanted.words)
        self.status.setCurrentIndex(self.status.findData(wanted.status))
        self.findings.setCurrentIndex(self.findings.findData(wanted.findings))
        self.grouped.setChecked(wanted.grouped)

    def _place(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words, 1)
        for widget in (self.status, self.findings, self.grouped):
            line.addWidget(widget)
        line.addSpacing(2 * GRID)
        line.addWidget(self.count)
