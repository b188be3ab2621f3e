"""Finishes to look up, by look, US code, BHMA number or metal, and to take for the opening on show."""

from functools import lru_cache
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap, QShowEvent
from PySide6.QtWidgets import (
    QHeaderView,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

from configurator.sentences import capitalized
from configurator.ui.kit.layout import QuietCombo, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.table import QuietTable
from configurator.ui.kit.table_model import Head, Row, RowsModel
from configurator.ui.state.session import Session

if TYPE_CHECKING:  # loaded on use: the window is painted before the tables are read
    from configurator.wording.finish_rows import FinishLine

HEADS = ("Idea of colour", "Look", "US code", "BHMA number", "Metal", "On other metals", "Source")


class FinishPanel(QWidget):
    """A line to type in, a choice of metal, and the finishes they find; every one with its source."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.search, self.metal = QLineEdit(), QuietCombo()
        self.table = _table(FinishModel())
        self.same, self.idea = _words("the same look on other metals"), _words("what a swatch is worth")
        self.use = QPushButton("Use this finish")
        self._found: tuple[FinishLine, ...] | None = None
        self._own: tuple[str, ...] = ()
        self._build()
        self.search.textChanged.connect(lambda _: self._look_up())
        self.metal.activated.connect(lambda _: self._look_up())
        self.table.chosen.connect(lambda _: self._show_selected())
        self.use.clicked.connect(self.use_selected)

    def show_state(self) -> None:
        """Bring the button in line with the opening on show; the finishes are made on first sight."""
        if not self.isVisible():
            return
        if self._found is None:
            self._begin()
        self._follow_hinge()
        self._show_selected()

    def _follow_hinge(self) -> None:
        """Select the hinge's own finish when that is another than before."""
        study = self.session.study
        leaves = study.specification.leaves if study is not None else ()
        parts = leaves[0].parts if leaves else {}
        own = tuple(parts[key].value for key in ("finish_bhma", "base_metal") if key in parts)
        if own == self._own:
            return
        self._own = own
        for place, line in enumerate(self._found or ()):
            if (line.row.bhma, line.row.metal) == own:
                self.table.setCurrentCell(place, 1)
                return

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what happened while another tab was on show."""
        super().showEvent(event)
        self.show_state()

    def selected(self) -> "FinishLine | None":
        """Return the finish that is selected."""
        found, place = self._found or (), self.table.currentRow()
        return found[place] if 0 <= place < len(found) else None

    def use_selected(self) -> None:
        """Take the selected finish, and the metal it is on, for the opening on show: one step, by hand."""
        line = self.selected()
        if line is not None and not line.why_not:
            self.session.edit_many({f"hinge.{key}": value for key, value in line.changes.items()})

    def _begin(self) -> None:
        from configurator.wording.finish_rows import METALS, ONLY_AN_IDEA

        self.metal.addItem("any metal", None)
        for metal in METALS:
            self.metal.addItem(metal, metal)
        self.idea.setText(ONLY_AN_IDEA)
        self._look_up()

    def _look_up(self) -> None:
        from configurator.wording.finish_rows import look_up

        self._found = look_up(self.search.text(), self.metal.currentData())
        self.table.show_rows([_row(line) for line in self._found])
        if self._found:
            self.table.setCurrentCell(0, 1)
        self._show_selected()

    def _show_selected(self) -> None:
        from configurator.wording.finish_rows import same_look_words

        for label in (self.same, self.idea):
            tinted(label, "quiet", self.session.dark)
        line = self.selected()
        if line is None:
            self.same.setText(
                "No finish is found by that. Type a look, as satin chrome, or a code, as 26D or 652."
            )
            self.use.setText("Use this finish")
            self.use.setEnabled(False)
            return
        self.same.setText(
            same_look_words(line.row) + (f" As for this one: {line.why_not}." if line.why_not else "")
        )
        self.use.setText(f"Use this finish: {line.row.bhma} on {line.row.metal}")
        self.use.setEnabled(not line.why_not and self.session.opening is not None)

    def _build(self) -> None:
        self.search.setPlaceholderText("look, US code or BHMA number")
        self.search.setAccessibleName("look a finish up by its look, US code or BHMA number")
        self.search.setClearButtonEnabled(True)
        self.metal.setAccessibleName("metal of the finish")
        self.use.setToolTip("Take this finish and its metal for the opening on show, by hand")
        above = across((self.search, 1), self.metal, self.use, spacing=2 * GRID)
        parts = (above, (self.table, 1), self.same, self.idea)
        fill(self, down(*parts, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, GRID)))


class FinishModel(RowsModel):
    """Finishes; their first column is an idea of their colour, whose words are in its tooltip."""

    def icon(self, row: int, place: int) -> QIcon | None:
        """Return the swatch of a finish."""
        finish = self.rows[row].key.row
        return _swatch(finish.swatch, finish.alike) if place == 0 else None

    def tip(self, row: int, place: int) -> str | None:
        """Return what a swatch is worth, or the words of another cell."""
        if place:
            return self.text(row, place)
        from configurator.wording.finish_rows import ONLY_AN_IDEA

        return f"{ONLY_AN_IDEA} {capitalized(self.rows[row].key.match)}."

    def spoken(self, row: int, place: int) -> str | None:
        """Return what a screen reader says of a swatch."""
        return None if place else f"swatch of {self.rows[row].key.row.look}, only an idea"


def _row(line: "FinishLine") -> Row:
    words = ("", line.row.look, line.us, line.row.bhma, line.row.metal, line.match, line.source)
    return Row(words, line)


def _table(model: FinishModel) -> QuietTable:
    """Return the empty table of finishes."""
    found = QuietTable("finishes", [Head(title) for title in HEADS], model=model)
    header = found.horizontalHeader()
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setStretchLastSection(True)
    return found


@lru_cache
def _swatch(colour: str, alike: bool) -> QIcon:
    """Return a patch of the colour, split by a slant where it is not the same on every metal."""
    patch = QPixmap(8 * GRID, 4 * GRID)
    patch.fill(QColor(colour))
    if not alike:
        painter = QPainter(patch)
        painter.setPen(QColor("#ffffff"))
        painter.drawLine(0, patch.height(), patch.width(), 0)
        painter.end()
    icon = QIcon(patch)
    icon.addPixmap(patch, QIcon.Mode.Selected)  # else the selection would tint it
    return icon


def _words(name: str) -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setAccessibleName(name)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    sized(label, -1)
    return label
