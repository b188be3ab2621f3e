"""What stands over an order: fields for the user's own words, each kept in the job as it is left."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QLineEdit, QWidget

from configurator.model import Job, OrderFacts
from configurator.sentences import capitalized
from configurator.ui.kit.look import GRID

COLUMNS = (
    ("supplier", "ship_to", "number"),
    ("date", "required", "revision", "prepared_by"),
    ("notes", "internal_notes", "margin"),
)
"""The fields, column by column; the price list is chosen in the row on top."""
HINTS = {
    "supplier": "who it goes to",
    "required": "when it must be there",
    "notes": "printed under the lines",
    "internal_notes": "for the office only, not on what goes out",
    "margin": "per cent of a quoted price, as 25",
}


def order_title(name: str) -> str:
    """Return what a field of the order's head is called."""
    return str(OrderFacts.model_fields[name].title)


class HeadPanel(QWidget):
    """The head of the order.

    Signals:
        edited: the field of that name was left with another text in it.
    """

    edited = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        self.fields: dict[str, QLineEdit] = {}
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, 2 * GRID, 2 * GRID, GRID)
        line.setSpacing(4 * GRID)
        for names in COLUMNS:
            form = QFormLayout()
            line.addLayout(form, 1)
            for name in names:
                form.addRow(capitalized(order_title(name)), self._field(name))

    def show_job(self, job: Job) -> None:
        """Show what a job says; a field that is being typed in keeps its text."""
        for name, entry in self.fields.items():
            text = _text(job.order, name)
            if entry.text() != text and not (entry.hasFocus() and entry.isModified()):
                entry.setText(text)

    def _field(self, name: str) -> QLineEdit:
        entry = self.fields[name] = QLineEdit()
        entry.setPlaceholderText(HINTS.get(name, ""))
        entry.setAccessibleName(order_title(name))
        entry.editingFinished.connect(lambda: self._left(name))
        return entry

    def _left(self, name: str) -> None:
        entry = self.fields[name]
        if entry.isModified():
            entry.setModified(False)
            self.edited.emit(name, entry.text())


def _text(facts: OrderFacts, name: str) -> str:
    value = getattr(facts, name)
    return f"{value:g}" if isinstance(value, float) else value or ""
