"""How the order page looks: the lines with their marks, and below them what else there is to say."""

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QMenu,
    QPushButton,
    QSplitter,
    QTabWidget,
    QToolButton,
    QWidget,
)

from configurator.order.order_findings import OrderFinding
from configurator.order.studied import NotOrdered
from configurator.rules.wording import counted as counted_words
from configurator.ui.kit.layout import BARE, GROW, Box, LeadsOn, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.message_line import SentenceRow, TextPanel
from configurator.ui.kit.runner import Beside, Pieces, ProgressLine
from configurator.ui.kit.table import RowsTable
from configurator.ui.kit.table_model import Row
from configurator.ui.order import rows
from configurator.ui.order.desk import Counted
from configurator.ui.order.head_panel import HeadPanel
from configurator.ui.order.revisions_panel import RevisionsPanel, UniformPanel
from configurator.ui.order.shelf_panel import ShelfPanel
from configurator.ui.order.writing import KINDS

NO_MARKS = "Choose a line to see the openings it serves"
NO_OPENINGS = "This job has no openings yet, so there is nothing to order."


class OrderView(LeadsOn, QWidget):
    """The widgets of the order page, and what they show of a count."""

    def __init__(self) -> None:
        super().__init__()
        self.top = TopRow(KINDS)
        self.sums, self.warned, self.cost = QLabel(), QLabel(), QLabel()
        self.marks_of = QLabel(NO_MARKS)
        self.work_out = QPushButton("Work out all")
        self.lines = RowsTable("order lines", rows.line_heads(None), wrapped=True)
        self.marks = RowsTable("marks of the chosen line", rows.MARKS)
        self.cautions = RowsTable("to heed before ordering", rows.CAUTIONS, wrapped=True)
        self.left_out = RowsTable("not ordered, and why", rows.LEFT_OUT, wrapped=True)
        self.uniform, self.revisions = UniformPanel(), RevisionsPanel()
        self.head, self.shelf = HeadPanel(), ShelfPanel()
        self.tabs = QTabWidget()
        self.counting, self.beside = Pieces(self), Beside(self)
        self.progress, self.beside_line = ProgressLine(self.counting), ProgressLine(self.beside)
        self.release, self.hold = QPushButton("Order it all the same"), QPushButton("Hold its order again")
        self.question = SentenceRow()
        self.panel = TextPanel()
        self._put_together()

    # --- What it shows ---

    def show_order(self, counted: Counted | None, dark: bool) -> None:
        """Show an order; nothing of it while there is no count."""
        priced = counted.priced if counted is not None else None
        order = counted.order if counted is not None else None
        lines = rows.line_rows(order.lines, priced) if order is not None else []
        self.lines.show_rows(lines, rows.line_heads(priced))
        if lines and self.lines.current() is None:
            self.lines.choose(lines[0].key)
        self.lines.setColumnHidden(rows.SPARE, order is None or not order.reconciliation.spare)
        self.cautions.shown.use_dark(dark)
        self._show_tab(
            self.cautions, "To heed", rows.caution_rows(order.findings) if order is not None else []
        )
        left = rows.left_out_rows(order.not_ordered) if order is not None else []
        self._show_tab(self.left_out, "Not ordered", left)
        # While openings are still worked out these say so when they are asked: a click must not be lost.
        self.revisions.freeze.setEnabled(order is None or bool(lines))
        self.show_buttons()
        self.show_marks_of(counted, self.lines.current())

    def show_buttons(self) -> None:
        """Let what is chosen be released or held where it can be."""
        left, said = self.left_out.current(), self.cautions.current()
        self.release.setEnabled(left is not None and left.why == "held")
        self.hold.setEnabled(said is not None and bool(said.accepted))

    def show_sums(self, counted: Counted, dark: bool) -> None:
        """Show the proof that the order is whole, and what it costs."""
        self.sums.setText(counted.sums() if counted.tallies else NO_OPENINGS)
        tinted(self.sums, "note" if counted.order.reconciliation.agrees else "error", dark)
        self.warned.setText(counted.warned())
        tinted(self.warned, "error" if counted.order.has_errors else "warning", dark)
        self.warned.setVisible(bool(self.warned.text()))
        self.cost.setText(counted.cost())
        tinted(self.cost, "error" if counted.price_trouble else "note", dark)
        self.cost.setVisible(bool(self.cost.text()))
        self.work_out.hide()

    def show_missing(self, missing: int, openings: int, waiting: bool, dark: bool) -> None:
        """Say that nothing is counted yet; `waiting` is whether the user must ask for it."""
        missed = f"{missing:,} of {openings:,} openings are not worked out yet" if waiting else ""
        self.sums.setText(f"{missed or 'The openings are being worked out'}; an order counts all of them.")
        tinted(self.sums, "note", dark)
        self.warned.hide()
        self.cost.hide()
        self.work_out.setVisible(waiting)

    def show_marks_of(self, counted: Counted | None, number: object) -> None:
        """Show the marks of an order line."""
        lines = counted.order.lines if counted is not None else ()
        line = next((one for one in lines if one.number == number), None)
        if line is None:
            self.show_marks(NO_MARKS, [])
        else:
            self.shelf.propose(line.hinge.size)
            count = counted_words(len(line.by_mark), "mark", "marks")
            self.show_marks(f"{count} of line {line.number}", rows.mark_rows(line.by_mark))

    def show_marks_of_finding(self, one: OrderFinding | None) -> None:
        """Show the marks that a finding is about."""
        if one is not None:
            count = counted_words(len(one.marks), "mark", "marks")
            self.show_marks(f"{count}: {one.finding.code}", rows.mark_rows(one.marks))

    def show_caution(self, one: OrderFinding | None) -> None:
        """Show the marks of a caution, and whether it can be held again."""
        self.show_buttons()
        self.show_marks_of_finding(one)

    def show_left_out(self, left: NotOrdered | None) -> None:
        """Show the mark of what is not ordered, and whether it can be released."""
        self.show_buttons()
        if left is not None:
            self.show_marks("Not ordered", rows.mark_rows([left.mark]))

    def show_marks(self, heading: str, shown: list[Row]) -> None:
        """Show a list of marks under a heading."""
        self.marks_of.setText(heading)
        self.marks.show_rows(shown)

    def title_tab(self, widget: QWidget, title: str, number: int) -> None:
        """Title a page below the lines, with how many rows stand there."""
        place = max(self.tabs.indexOf(page) for page in (widget, widget.parentWidget()) if page is not None)
        self.tabs.setTabText(place, f"{title} ({number:,})" if number else title)

    def _show_tab(self, table: RowsTable, title: str, shown: list[Row]) -> None:
        table.show_rows(shown)
        self.title_tab(table, title, len(shown))

    # --- How it is put together ---

    def _put_together(self) -> None:
        for label in (self.sums, self.warned, self.cost, self.marks_of):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
        for label in (self.sums, self.warned, self.cost):
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        sized(self.marks_of, -1)
        self.marks.setToolTip("A click shows that opening")
        for hidden in (self.work_out, self.warned, self.cost, self.question):
            hidden.hide()
        self.release.setToolTip(
            "The error was read, and its hinges are ordered in spite of it; undo takes it back"
        )
        self.hold.setToolTip("An error that was accepted holds the order of its openings again")
        self.question.put_away.connect(self.question.hide)
        below = (self.progress, self.beside_line, self.question, self.panel)
        parts = (self.top, self._sums_line(), (self._tables(), 1), *below)
        fill(self, down(*parts, spacing=0, margins=BARE))
        self.first_stop = self.lines
        self._put_in_order()

    def _put_in_order(self) -> None:
        """Let Tab go through the page as it is read; splitters and tabs do not tell by themselves."""
        self.tabs.setFocusProxy(None)  # type: ignore[arg-type]  # the bar is a stop by itself: see LeadsOn
        self.tabs.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        top, revisions = self.top, self.revisions
        above = (top.spare, top.prices, top.cross, top.write, self.work_out, self.lines, self.marks)
        below = (
            *(self.tabs.tabBar(), self.hold, self.cautions, self.release, self.left_out),
            *(self.uniform.ask, *self._shelf_stops(), *self.head.fields.values(), revisions.note),
        )
        frozen = (revisions.mark_them, revisions.freeze, revisions.list, revisions.lines, revisions.openings)
        for before, after in pairwise((*above, *below, *frozen)):
            QWidget.setTabOrder(before, after)

    def _shelf_stops(self) -> tuple[QWidget, ...]:
        shelf = self.shelf
        return (shelf.has, shelf.wanted, shelf.ask, shelf.take, shelf.marks)

    def _sums_line(self) -> Box:
        words = down(self.sums, self.warned, self.cost, spacing=0)
        work_out = (self.work_out, 0, Qt.AlignmentFlag.AlignTop)
        return across((words, 1), work_out, margins=(2 * GRID, 0, 2 * GRID, GRID))

    def _tables(self) -> QSplitter:
        above = QSplitter(Qt.Orientation.Horizontal)
        above.addWidget(self.lines)
        above.addWidget(self._aside())
        above.setSizes([270 * GRID, 48 * GRID])
        above.setStretchFactor(0, 1)
        self.tabs.addTab(_with_button(self.cautions, self.hold), "To heed")
        self.tabs.addTab(_with_button(self.left_out, self.release), "Not ordered")
        self.tabs.addTab(self.uniform, "One width")
        self.tabs.addTab(self.shelf, "From the shelf")
        self.tabs.addTab(self.head, "Head of the order")
        self.tabs.addTab(self.revisions, "Revisions")
        self.tabs.setDocumentMode(True)
        both = QSplitter(Qt.Orientation.Vertical)
        both.addWidget(above)
        both.addWidget(self.tabs)
        both.setSizes([100 * GRID, 66 * GRID])
        for splitter in (above, both):
            splitter.setChildrenCollapsible(False)
        return both

    def _aside(self) -> QWidget:
        aside = QWidget()
        fill(aside, down(self.marks_of, (self.marks, 1), spacing=GRID, margins=(GRID, 0, 0, 0)))
        return aside


def _with_button(table: QWidget, button: QPushButton) -> QWidget:
    both = QWidget()
    line = across(button, GROW, margins=(2 * GRID, GRID, 2 * GRID, 0))
    fill(both, down(line, (table, 1), spacing=GRID, margins=BARE))
    return both


class TopRow(QWidget):
    """What an order is made with.

    Signals:
        spare_typed: another allowance was typed.
        prices_asked: a price list is to be chosen; prices_dropped: there are to be none.
        written: the document of that kind is wanted.
    """

    spare_typed = Signal(str)
    prices_asked = Signal()
    prices_dropped = Signal()
    written = Signal(str)

    def __init__(self, kinds: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.spare, self.refusal, self.price_name = QLineEdit(), QLabel(), QLabel()
        self.prices, self.cross, self.write = QPushButton("Price list…"), QToolButton(), QPushButton("Write…")
        self.menu = QMenu(self)
        self.entries = {kind: self.menu.addAction(title) for kind, title in kinds}
        self._dress()
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(2 * GRID)
        name = QLabel("Spare hinges a line")
        name.setBuddy(self.spare)
        for widget in (name, self.spare, self.refusal, self.prices, self.price_name, self.cross):
            line.addWidget(widget)
        line.addStretch(1)
        line.addWidget(self.write)
        self._connect()

    def show_refusal(self, sentence: str, dark: bool) -> None:
        """Say beside the field why the allowance cannot be; an empty sentence takes it away."""
        self.refusal.setText(sentence)
        self.refusal.setVisible(bool(sentence))
        tinted(self.refusal, "error", dark)

    def show_prices(self, name: str) -> None:
        """Show which price list is used; none for an empty name."""
        short = name if len(name) <= 40 else f"{name[:18]}…{name[-18:]}"
        self.price_name.setText(short)
        self.price_name.setToolTip(name)
        self.price_name.setVisible(bool(name))
        self.cross.setVisible(bool(name))

    def _dress(self) -> None:
        self.spare.setPlaceholderText("none; 5% or 2")
        self.spare.setFixedWidth(27 * GRID)
        self.spare.setToolTip(
            "Hinges over those the openings take: per cent of each line, or a number a line"
        )
        self.spare.setAccessibleName("spare hinges a line")
        self.prices.setToolTip(
            "Your own prices, CSV or XLSX: a column price, and any columns that tell hinges apart, such as "
            "size, type, base_metal, finish_bhma; also unit (each or pair), currency, part_number, "
            "description, pack and source. The job remembers the list"
        )
        self.price_name.setTextFormat(Qt.TextFormat.PlainText)
        self.cross.setText("×")
        self.cross.setAutoRaise(True)
        self.cross.setAccessibleName("do without prices")
        self.write.setMenu(self.menu)
        self.write.setToolTip("Write the order, schedules, a submittal or a field sheet to a file")
        sized(self.refusal, -1)
        self.refusal.setWordWrap(True)
        self.refusal.setMinimumWidth(80 * GRID)
        self.refusal.setTextFormat(Qt.TextFormat.PlainText)
        self.refusal.hide()
        self.show_prices("")

    def _connect(self) -> None:
        self.spare.textEdited.connect(self.spare_typed)
        self.prices.clicked.connect(self.prices_asked)
        self.cross.clicked.connect(self.prices_dropped)
        for kind, action in self.entries.items():
            action.triggered.connect(lambda _=False, kind=kind: self.written.emit(kind))
