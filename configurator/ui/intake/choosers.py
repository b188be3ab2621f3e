"""The head of the preview: over each column its heading, what is taken from it, and its numbers' unit."""

from functools import partial
from itertools import pairwise
from typing import Any

from PySide6.QtCore import QEvent, QObject, QRect, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QHeaderView, QTableView

from configurator.intake.columns import Reading
from configurator.intake.fields import FIELDS, UNITS, needs_unit
from configurator.ui.kit.layout import Pool, QuietCombo
from configurator.ui.kit.look import GRID, sized

NOT_READ = "(not read)"
UNIT_WORDS = {"in": "inches", "ft-in": "feet", "mm": "mm"}


class ChooserHeader(QHeaderView):
    """Choosers stand in the sections and move with them.

    Signals:
        field_chosen: a column's place and the name of its field, empty for none.
        unit_chosen: a column's place and the unit of its bare numbers.
        reached: the keyboard came to the chooser of that section.
    """

    field_chosen = Signal(int, str)
    unit_chosen = Signal(int, str)
    reached = Signal(int)

    def __init__(self, table: QTableView) -> None:
        super().__init__(Qt.Orientation.Horizontal, table)
        self._choices = _choices()
        self._fields, self._units = Pool(self._field_chooser), Pool(self._unit_chooser)
        self.setSectionsClickable(False)
        self.setHighlightSections(False)
        self.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.sectionResized.connect(self._place)
        self.geometriesChanged.connect(self._place)
        table.horizontalScrollBar().valueChanged.connect(self._place)

    def show_reading(self, reading: Reading | None) -> None:
        """Show what is taken from every column."""
        columns = reading.columns if reading is not None else ()
        if len(self.fields) != len(columns):
            self._offer(len(columns))
        for column, field, unit in zip(columns, self.fields, self.units, strict=True):
            heading = " ".join(column.heading.split()) or f"column {column.place + 1}"
            field.setAccessibleName(f"what is taken from {heading}")
            field.setCurrentIndex(field.findData(column.field or ""))
            field.setToolTip(field.currentText())
            unit.setAccessibleName(f"unit of bare numbers in {heading}")
            unit.setCurrentIndex(unit.findData(column.unit))
            unit.setVisible(needs_unit(column.field))
        self._place()

    @property
    def fields(self) -> list[QuietCombo]:
        """The chooser of each column's field."""
        return self._fields.on_show

    @property
    def units(self) -> list[QuietCombo]:
        """The chooser of each column's unit, hidden where it needs none."""
        return self._units.on_show

    def sizeHint(self) -> QSize:
        """Ask for the room of a heading and two choosers."""
        line = self.fontMetrics().lineSpacing()
        combo = self.fields[0].sizeHint().height() if self.fields else line
        return QSize(super().sizeHint().width(), line + 2 * combo + 3 * GRID)

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Write the heading over its choosers, cut where it is long."""
        model = self.model()
        text = str(model.headerData(section, Qt.Orientation.Horizontal) or "") if model is not None else ""
        room = rect.adjusted(GRID, GRID // 2, -GRID, 0)
        painter.setPen(self.palette().windowText().color())
        cut = self.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop), cut)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Bring the chooser that the keyboard reaches into view."""
        if event.type() == QEvent.Type.FocusIn:
            for section, pair in enumerate(zip(self.fields, self.units, strict=True), 1):
                if watched in pair:
                    self.reached.emit(section)
        return super().eventFilter(watched, event)

    def _offer(self, count: int) -> None:
        stops = zip(self._fields.take(count), self._units.take(count), strict=True)
        for before, after in pairwise([combo for both in stops for combo in both]):
            self.setTabOrder(before, after)

    def _field_chooser(self, place: int) -> QuietCombo:
        combo = self._combo()
        combo.setModel(self._choices)
        combo.view().setMinimumWidth(combo.fontMetrics().averageCharWidth() * 34)
        combo.activated.connect(partial(self._choose, self.field_chosen, combo, place))
        return combo

    def _unit_chooser(self, place: int) -> QuietCombo:
        combo = self._combo()
        for name in UNITS:
            combo.addItem(UNIT_WORDS[name], name)
        combo.activated.connect(partial(self._choose, self.unit_chosen, combo, place))
        return combo

    def _combo(self) -> QuietCombo:
        combo = QuietCombo()
        combo.setParent(self.viewport())
        combo.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        sized(combo, -1)
        combo.installEventFilter(self)
        return combo

    def _choose(self, chosen: Any, combo: QuietCombo, place: int, _: int) -> None:
        chosen.emit(place, combo.currentData())

    def _place(self, *_: object) -> None:
        """Put the choosers where their sections are."""
        top = self.fontMetrics().lineSpacing() + GRID
        for section, (field, unit) in enumerate(zip(self.fields, self.units, strict=True), 1):
            if section >= self.count():
                return
            left, width = self.sectionViewportPosition(section) + 2, self.sectionSize(section) - 4
            height = field.sizeHint().height()
            field.setGeometry(left, top, width, height)
            unit.setGeometry(left, top + height + 2, width, height)


def _choices() -> QStandardItemModel:
    """Return every field by its title; one list for all columns."""
    model = QStandardItemModel()
    for name, title in (("", NOT_READ), *((field.name, field.title) for field in FIELDS.values())):
        item = QStandardItem(title)
        item.setData(name, Qt.ItemDataRole.UserRole)
        model.appendRow(item)
    return model
