"""The openings of the job: pick one, add one, copy it, remove it."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QStyledItemDelegate, QToolButton, QWidget

from configurator.ui.kit.layout import BARE, across, down, fill
from configurator.ui.kit.look import GRID, LIST_WIDTH
from configurator.ui.state.session import Session


class _RowHeight(QStyledItemDelegate):
    """Rows of one height on the grid."""

    def sizeHint(self, *_: object) -> QSize:
        """Return the height of a row; its width is the list's."""
        return QSize(0, 6 * GRID)


class OpeningsList(QWidget):
    """A narrow list of marks; the tooltip says where each opening is."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.list = QListWidget()
        self.list.setAccessibleName("openings of the job")
        # One height for all, asked once: a list of thousands stands in a third of the time.
        self.list.setItemDelegate(_RowHeight(self.list))
        self.list.setUniformItemSizes(True)
        self.list.setFrameShape(QListWidget.Shape.NoFrame)
        self.list.currentRowChanged.connect(self._pick)
        self._shown: list[tuple[str, str | None]] = []
        self.add = _button("+", "Add a typical opening", "add an opening")
        self.copy = _button("Copy", "Add an opening like this one", "copy the opening")
        self.remove = _button("−", "Remove this opening", "remove the opening")
        self.add.clicked.connect(lambda: session.add_opening())
        self.copy.clicked.connect(lambda: session.add_opening(session.opening))
        self.remove.clicked.connect(session.remove_opening)
        buttons = across(self.add, self.copy, self.remove, spacing=0, margins=(GRID, 0, 0, GRID))
        fill(self, down(self.list, buttons, margins=BARE))
        self.setMinimumWidth(LIST_WIDTH)

    def show_state(self) -> None:
        """Show the marks, and which opening is on show."""
        wanted = [(opening.mark, opening.location) for opening in self.session.job.openings]
        self.list.blockSignals(True)
        if len(wanted) != len(self._shown):
            self._fill(wanted)
        elif wanted != self._shown:
            self._write_what_differs(wanted)
        self._shown = wanted
        marks = [mark for mark, _ in wanted]
        self.list.setCurrentRow(marks.index(self.session.mark) if self.session.mark in marks else -1)
        self.list.blockSignals(False)
        there = self.session.opening is not None
        self.copy.setEnabled(there)
        self.remove.setEnabled(there)

    def _fill(self, wanted: list[tuple[str, str | None]]) -> None:
        self.list.clear()
        self.list.addItems([mark for mark, _ in wanted])
        for row, (mark, location) in enumerate(wanted):
            _tell(self.list.item(row), mark, location)

    def _write_what_differs(self, wanted: list[tuple[str, str | None]]) -> None:
        """Write anew only where something else is wanted: thousands of items are slow to make."""
        for row, (was, now) in enumerate(zip(self._shown, wanted, strict=True)):
            if was != now:
                _write(self.list.item(row), *now)

    def _pick(self, row: int) -> None:
        if 0 <= row < len(self._shown):
            self.session.select(self._shown[row][0])


def _write(item: QListWidgetItem, mark: str, location: str | None) -> None:
    item.setText(mark)
    _tell(item, mark, location)


def _tell(item: QListWidgetItem, mark: str, location: str | None) -> None:
    item.setToolTip(f"{mark}: {location}" if location else mark)


def _button(text: str, tip: str, name: str) -> QToolButton:
    button = QToolButton()
    button.setText(text)
    button.setToolTip(tip)
    button.setAccessibleName(name)
    button.setAutoRaise(True)
    return button
