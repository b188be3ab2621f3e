"""The hinge of the opening on show, part by part, each one overridable; and the order line it makes."""

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QScrollArea,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from configurator.rules.wording import leaf_named
from configurator.sentences import capitalized
from configurator.ui.kit.layout import across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.table import QuietTable
from configurator.ui.kit.table_model import Head, Index, Row, RowsModel
from configurator.ui.state.session import Session

if TYPE_CHECKING:  # loaded on use: the window is painted before the first study
    from configurator.ui.hinge.hinge_part import PartDetail
    from configurator.wording.hinge_parts import LeafParts, PartRow

REFUSED = "⚠ not taken"


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the list: the leaf it is about, and its row; None for a heading."""

    leaf: int
    name: str
    row: "PartRow | None"


class HingePanel(QWidget):
    """Shows the specification while it is on show itself; the part that is selected shows why."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.list = _list(PartsModel())
        self.details = QStackedWidget()
        self.order = OrderBar(session)
        self.reset_all = QPushButton("Reset all")
        self.empty = QLabel()
        self._lines: list[Line] = []
        self._pages: dict[tuple[str, ...], tuple[PartDetail, QScrollArea]] = {}
        self._build()
        self.list.chosen.connect(lambda _: self._show_detail())
        session.refused.connect(lambda *_: self._show_refusals())

    # --- What it shows ---

    def show_state(self) -> None:
        """Bring every row, the selected part and the order line in line with the session."""
        if not self.isVisible():
            return
        from configurator.wording.hinge_parts import hinge_parts

        study = self.session.study
        leaves = hinge_parts(study, self.session.display) if study is not None else ()
        self.body.setVisible(bool(leaves))
        self.empty.setVisible(not leaves)
        self.empty.setText("" if leaves else self._silence())
        self._fill(leaves)
        self._show_detail()
        self.order.show_state()
        self.list.scrollTo(self.list.currentIndex())
        self.reset_all.setEnabled(bool(self._by_hand()))

    def select(self, key: str) -> None:
        """Select the row that a part's key stands in."""
        for place, line in enumerate(self._lines):
            if line.row is not None and key in line.row.part.keys:
                self.list.setCurrentCell(place, 0)
                return

    def detail(self) -> "PartDetail | None":
        """Return what is shown of the selected part."""
        row = self._selected()
        return self._pages[row.part.keys][0] if row is not None else None

    def take_all_back(self) -> None:
        """Leave every part to the rules again, as one step."""
        if given := self._by_hand():
            self.session.edit_many({f"hinge.{key}": None for key in given})

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what happened while another tab was on show."""
        super().showEvent(event)
        self.show_state()

    def _silence(self) -> str:
        if self.session.opening is None:
            return "The hinge stands here once there is an opening."
        study = self.session.study
        said = study.specification.findings if study is not None else ()
        return said[0].said(self.session.display) if said else self.session.trouble

    def _by_hand(self) -> tuple[str, ...]:
        from configurator.wording.hinge_parts import given_by_hand

        opening = self.session.opening
        return given_by_hand(opening) if opening is not None else ()

    def _fill(self, leaves: "tuple[LeafParts, ...]") -> None:
        before = self._lines[self.list.currentRow()] if self._selected() is not None else None
        self._lines = [
            line
            for place, leaf in enumerate(leaves)
            for line in (
                *([Line(place, leaf_named(leaf.leaf), None)] if len(leaves) > 1 else []),
                *(Line(place, leaf_named(leaf.leaf), row) for row in leaf.rows),
            )
        ]
        self.list.blockSignals(True)
        self._show_lines()
        if self._lines:
            self.list.setCurrentCell(self._place_of(before), 0)
        self.list.blockSignals(False)

    def _place_of(self, before: Line | None) -> int:
        """Return where the part stands now that was selected before, on its leaf if that is still there."""
        rows = [(place, line) for place, line in enumerate(self._lines) if line.row is not None]
        if before is None or before.row is None:
            return rows[0][0]
        same = [(place, line) for place, line in rows if line.row and line.row.part == before.row.part]
        on_leaf = [(place, line) for place, line in same if line.leaf == before.leaf]
        return (on_leaf or same or rows)[0][0]

    def _show_lines(self) -> None:
        self.list.show_rows([self._row(line) for line in self._lines])

    def _row(self, line: Line) -> Row:
        row = line.row
        if row is None:
            return Row((line.name.capitalize(), "", ""), heading=True)
        name = row.part.plain if self.session.plain_words else row.part.trade
        return Row((capitalized(name), row.value, self._mark(row)))

    def _mark(self, row: "PartRow") -> str:
        refused = any(f"hinge.{key}" in self.session.refusals for key in row.part.keys)
        return REFUSED if refused else row.asked_by

    # --- The selected part ---

    def asked_about(self) -> str:
        """Return the field of the part that is selected, for F1."""
        row = self._selected()
        return "" if row is None else f"hinge.{row.part.keys[0]}"

    def _selected(self) -> "PartRow | None":
        place = self.list.currentRow()
        return self._lines[place].row if 0 <= place < len(self._lines) else None

    def _show_detail(self) -> None:
        row, study = self._selected(), self.session.study
        if row is None or study is None:
            return
        from configurator.study.widths.hinge_trials import trials

        detail, page = self._page(row)
        others = tuple(other for key in row.part.keys for other in trials(study, key))
        leaf = self._lines[self.list.currentRow()].name
        detail.show_state(row, leaf, self._chosen(), others)
        self.details.setCurrentWidget(page)
        self._order_keys(detail)

    def _order_keys(self, detail: "PartDetail") -> None:
        """Let Tab go from the list to the part that is selected, and from there to the order line."""
        stops = [self.list, *detail.stops(), self.order.lines, self.order.copy, self.reset_all]
        for before, after in pairwise(stops):
            QWidget.setTabOrder(before, after)

    def _page(self, row: "PartRow") -> "tuple[PartDetail, QScrollArea]":
        from configurator.ui.hinge.hinge_part import PartDetail

        if row.part.keys not in self._pages:
            detail = PartDetail(self.session, row.part)
            page = QScrollArea()
            page.setWidget(detail)
            page.setWidgetResizable(True)
            page.setFrameShape(QFrame.Shape.NoFrame)
            page.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
            page.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            self.details.addWidget(page)
            self._pages[row.part.keys] = (detail, page)
        return self._pages[row.part.keys]

    def _chosen(self) -> dict[str, Any]:
        study = self.session.study
        if study is None or not study.specification.leaves:
            return {}
        spec = study.specification
        leaf = spec.leaves[self._lines[self.list.currentRow()].leaf]
        # Screws are typed for the whole opening, whichever leaf is looked at.
        parts = {**leaf.parts, "screws": spec.whole["screws"]}
        return {key: part.value for key, part in parts.items()}

    def _show_refusals(self) -> None:
        if not self.isVisible() or not self._lines:
            return
        self._show_lines()
        detail = self.detail()
        if detail is not None:
            detail.show_fields(self._chosen())

    # --- How it is put together ---

    def _build(self) -> None:
        self.empty.setWordWrap(True)
        self.empty.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.empty.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        self.reset_all.setToolTip("Leave every part of this hinge to the rules again")
        self.reset_all.setAccessibleName("reset every part of the hinge")
        self.reset_all.clicked.connect(self.take_all_back)
        self.order.add(self.reset_all)
        sides = QSplitter(Qt.Orientation.Horizontal)
        sides.setChildrenCollapsible(False)
        sides.addWidget(self.list)
        sides.addWidget(self.details)
        sides.setSizes([410, 450])
        self.body = QWidget()
        column = QVBoxLayout(self.body)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(sides, 1)
        column.addWidget(self.order)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.body)
        whole.addWidget(self.empty)


class PartsModel(RowsModel):
    """Parts of the hinge, and headings that cannot be chosen; who asked for a part stands in bold."""

    def is_bold(self, row: int, place: int) -> bool:
        """Return whether it is a heading's cell, or says who asked."""
        return super().is_bold(row, place) or place == 2

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Return what can be done with a cell."""
        heading = index.isValid() and self.rows[index.row()].heading
        return Qt.ItemFlag.ItemIsEnabled if heading else super().flags(index)


def _list(model: PartsModel) -> QuietTable:
    """Return the empty list of parts: name, value, who asked for it."""
    found = QuietTable("parts of the hinge", [Head("")] * 3, model=model)
    header = found.horizontalHeader()
    header.hide()
    header.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
    header.setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
    header.setSectionResizeMode(2, QHeaderView.ResizeMode.ResizeToContents)
    return found


class OrderBar(QWidget):
    """The lines to order, one a leaf, with what to heed first, and buttons at their end."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.lines, self.cautions = _selectable("order line"), _selectable("to heed before ordering")
        self.copy = QPushButton("Copy")
        self.copy.setToolTip("Copy the order line, ready to be pasted into an order")
        self.copy.setAccessibleName("copy the order line")
        self.copy.clicked.connect(self.copy_lines)
        words = down(self.cautions, self.lines, spacing=2)
        self._buttons = QVBoxLayout()
        self._buttons.setSpacing(GRID)
        self._buttons.setAlignment(Qt.AlignmentFlag.AlignTop)
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        fill(self, across((words, 1), self._buttons, spacing=2 * GRID, margins=margins))
        self.add(self.copy)

    def add(self, button: QPushButton) -> None:
        """Put another button under Copy."""
        self._buttons.addWidget(button)

    def show_state(self) -> None:
        """Show the lines of the opening on show; empty where nothing can be ordered."""
        from configurator.wording.hinge_order_line import order_cautions, order_lines, order_text

        study = self.session.study
        if study is None:
            return
        self.lines.setText("\n".join(line.text for line in order_lines(study)))
        cautions = "  ".join(f"▲ {sentence}" for sentence in order_cautions(study))
        self.cautions.setText(cautions)
        self.cautions.setVisible(bool(cautions))
        tinted(self.cautions, "warning", self.session.dark)
        self.copy.setEnabled(bool(order_text(study)))

    def copy_lines(self) -> None:
        """Put the lines that can be ordered on the clipboard."""
        from configurator.wording.hinge_order_line import order_text

        study = self.session.study
        if study is not None:
            QGuiApplication.clipboard().setText(order_text(study))


def _selectable(name: str) -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setAccessibleName(name)
    keys_and_mouse = (
        Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
    )
    label.setTextInteractionFlags(keys_and_mouse)
    sized(label, -1)
    return label
