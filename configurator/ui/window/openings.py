"""The openings of the job: pick one, find one, put them in order, add one, copy it, remove it."""

from collections.abc import Iterator

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QKeyEvent, QPainter, QPalette
from PySide6.QtWidgets import (
    QAbstractItemView,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QToolButton,
    QWidget,
)

from configurator.model import JobFacts, Opening
from configurator.ui.kit.layout import BARE, across, down, fill
from configurator.ui.kit.look import GRID, LIST_WIDTH, colour
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session

SIGNS = {
    "": ("○", "quiet", "not worked out yet"),
    "refused": ("⊘", "error", "cannot be studied as it is"),
    "fails": ("✖", "error", "an error is found"),
    "warns": ("▲", "warning", "a warning is found"),
    "fine": ("●", "note", "nothing is found against it"),
}
"""How an opening stands, to its sign, colour and words; no two signs have one shape."""
_LOCATION, _STANDING = Qt.ItemDataRole.UserRole, Qt.ItemDataRole.UserRole + 1
_SIGN_WIDTH = 5 * GRID
Told = tuple[str, str | None]


class _Rows(QStyledItemDelegate):
    """A row: the sign of how the opening stands, its mark, and below it where it is."""

    def __init__(self, session: Session, owner: QListWidget) -> None:
        super().__init__(owner)
        self._session, self._owner = session, owner

    def sizeHint(self, *_: object) -> QSize:
        """Return the height of a row; its width is the list's."""
        return QSize(0, 9 * GRID)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Draw the row on the ground that the style gives it."""
        super().paint(painter, option, index)
        palette, room = option.palette, QRect(option.rect)
        chosen = index.row() == self._owner.currentRow()  # QStyle has it too, and takes long to load
        role = QPalette.ColorRole.HighlightedText if chosen else QPalette.ColorRole.Text
        sign, tint, _ = SIGNS[index.data(_STANDING) or ""]
        ink = palette.color(role)
        quiet, tinted = (
            ink if chosen else QColor(colour(name, self._session.dark)) for name in ("quiet", tint)
        )
        painter.save()
        font = QFont(option.font)
        upper, lower = QRect(room), QRect(room)
        upper.setBottom(room.center().y())
        lower.setTop(room.center().y())
        _letter(painter, upper.adjusted(GRID, 0, 0, 0), sign, font, tinted)
        left = _SIGN_WIDTH
        whole = upper if index.data(_LOCATION) else room
        _letter(painter, whole.adjusted(left, 0, 0, 0), index.data(_MARK), font, ink)
        font.setPointSizeF(font.pointSizeF() - 1)
        _letter(painter, lower.adjusted(left, 0, -GRID, 0), index.data(_LOCATION) or "", font, quiet)
        painter.restore()

    def initStyleOption(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Leave the words to `paint`."""
        super().initStyleOption(option, index)
        option.text = ""


_MARK = Qt.ItemDataRole.DisplayRole


def _letter(painter: QPainter, room: QRect, words: str, font: QFont, ink: QColor) -> None:
    painter.setFont(font)
    painter.setPen(ink)
    cut = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room.width())
    painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, cut)


class FindLine(QLineEdit):
    """What is typed leaves in the list only what has it; Esc empties the line."""

    def __init__(self, found: QListWidget) -> None:
        super().__init__()
        self._found = found
        self.setPlaceholderText("find")
        self.setAccessibleName("find an opening")
        self.setToolTip("Part of a mark or a location (Ctrl+Shift+F)")
        self.setClearButtonEnabled(True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Empty the line with Esc; go to the list with the arrow keys."""
        if event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        elif event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Up):
            self._found.setFocus()
        else:
            super().keyPressEvent(event)


class OpeningsList(QWidget):
    """A narrow list: marks, locations, and signs of how the openings stand once `begin` was called."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.list = QListWidget()
        self.list.setAccessibleName("openings of the job")
        # One height for all, asked once: a list of thousands stands in a third of the time.
        self.list.setItemDelegate(_Rows(session, self.list))
        self.list.setUniformItemSizes(True)
        self.list.setFrameShape(QListWidget.Shape.NoFrame)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.list.setDefaultDropAction(Qt.DropAction.MoveAction)
        self.list.currentRowChanged.connect(self._pick)
        self.list.model().rowsMoved.connect(self._take_order)
        self.words = FindLine(self.list)
        self.words.textChanged.connect(self._show_found)
        self.words.returnPressed.connect(self._pick_found)
        self._shown: list[Told] = []
        self.standings: Standings | None = None
        self.add = _button("+", "Add a typical opening", "add an opening")
        self.copy = _button("Copy", "Add an opening like this one", "copy the opening")
        self.remove = _button("−", "Remove this opening", "remove the opening")
        self.add.clicked.connect(lambda: session.add_opening())
        self.copy.clicked.connect(session.copy_opening)
        self.remove.clicked.connect(session.remove_opening)
        buttons = across(self.add, self.copy, self.remove, spacing=0, margins=(GRID, 0, 0, GRID))
        fill(self, down(self.words, self.list, buttons, spacing=0, margins=BARE))
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
        self._show_found()
        there = self.session.opening is not None
        self.copy.setEnabled(there)
        self.remove.setEnabled(there)
        if self.standings is not None:
            self.standings.ask()

    def begin(self) -> None:
        """Work out how the openings in view stand, behind everything else, from now on."""
        if self.standings is None:
            self.standings = Standings(self)
        self.standings.ask()

    def search(self) -> None:
        """Put the keyboard where an opening is looked for."""
        self.words.setFocus()
        self.words.selectAll()

    def shift(self, step: int) -> None:
        """Move the opening on show up or down the job; at the ends it stays."""
        openings = list(self.session.job.openings)
        row = self.list.currentRow()
        if row >= 0 and 0 <= row + step < len(openings):
            openings.insert(row + step, openings.pop(row))
            self._take(openings)

    def step(self, step: int) -> None:
        """Show the opening so many further down the job; at the ends it stays."""
        marks = [mark for mark, _ in self._shown]
        if self.session.mark in marks:
            place = marks.index(self.session.mark) + step
            self.session.select(marks[min(max(place, 0), len(marks) - 1)])

    def show_standing(self, row: int, standing: str) -> None:
        """Show how the opening of a row stands."""
        item = self.list.item(row)
        if item is not None and item.data(_STANDING) != standing:
            item.setData(_STANDING, standing)
            words = SIGNS[standing][2]
            mark, location = self._shown[row]
            item.setToolTip(f"{_told(mark, location)}\n{words[0].upper()}{words[1:]}.")
            item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{_told(mark, location)}, {words}")

    def rows_in_view(self) -> range:
        """Return the rows that can be seen."""
        view = self.list.viewport().rect()
        first = self.list.indexAt(view.topLeft()).row()
        last = self.list.indexAt(view.bottomLeft()).row()
        return range(max(first, 0), (last if last >= 0 else self.list.count() - 1) + 1)

    def _fill(self, wanted: list[Told]) -> None:
        self.list.clear()
        self.list.addItems([mark for mark, _ in wanted])
        for row, (mark, location) in enumerate(wanted):
            _write(self.list.item(row), mark, location)

    def _write_what_differs(self, wanted: list[Told]) -> None:
        """Write anew only where something else is wanted: thousands of items are slow to make."""
        for row, (was, now) in enumerate(zip(self._shown, wanted, strict=True)):
            if was != now:
                _write(self.list.item(row), *now)

    def _pick(self, row: int) -> None:
        if 0 <= row < len(self._shown):
            self.session.select(self._shown[row][0])

    # --- Finding ---

    def _show_found(self) -> None:
        typed = self.words.text().casefold()
        self.list.setDragEnabled(not typed)
        for row, told in enumerate(self._shown):
            hidden = bool(typed) and typed not in _told(*told).casefold()
            if hidden != self.list.isRowHidden(row):
                self.list.setRowHidden(row, hidden)

    def _pick_found(self) -> None:
        found = [row for row in range(self.list.count()) if not self.list.isRowHidden(row)]
        if found:
            self.list.setCurrentRow(found[0])
            self.list.setFocus()

    # --- Order ---

    def _take_order(self) -> None:
        """Take the order that rows were dragged into for that of the job."""
        by_mark = {opening.mark: opening for opening in self.session.job.openings}
        self._take([by_mark[self.list.item(row).text()] for row in range(self.list.count())])

    def _take(self, openings: list[Opening]) -> None:
        mark = self.list.currentItem().text() if self.list.currentItem() else self.session.mark
        self.session.take_openings(tuple(openings), f"move {mark}", mark)


class Standings:
    """How the openings in view stand, worked out a few at a time while nothing else is done."""

    def __init__(self, owner: OpeningsList) -> None:
        from configurator.ui.kit.runner import Pieces  # loaded once the picture stands

        self._owner, self._session = owner, owner.session
        self._facts: JobFacts | None = None
        self._known: dict[int, tuple[Opening, str]] = {}
        self.working = Pieces(owner, first=0.0)
        owner.list.verticalScrollBar().valueChanged.connect(lambda _: self.ask())

    def ask(self) -> None:
        """Show what is known of the openings in view, and work out the rest."""
        openings, facts = self._session.job.openings, self._session.job.job
        if facts is not self._facts:
            self._facts = facts
            self._known.clear()
        there = {id(opening) for opening in openings}
        self._known = {place: kept for place, kept in self._known.items() if place in there}
        rows = [row for row in self._owner.rows_in_view() if row < len(openings)]
        for row in rows:
            self._owner.show_standing(row, self._known.get(id(openings[row]), (None, ""))[1])
        wanted = [row for row in rows if id(openings[row]) not in self._known]
        if wanted:
            self.working.start(self._steps(openings, wanted))

    def _steps(self, openings: tuple[Opening, ...], rows: list[int]) -> Iterator[int]:
        for done, row in enumerate(rows, 1):
            standing = self._standing(openings[row])
            # The record is kept beside it, so that no other one can come to have its identity.
            self._known[id(openings[row])] = (openings[row], standing)
            self._owner.show_standing(row, standing)
            yield done

    def _standing(self, opening: Opening) -> str:
        try:
            study = self._session.study if opening is self._session.opening else None
            found = (study or self._session.studied(opening)).all_findings()
        except RefusedError:
            return "refused"
        severities = {finding.severity for finding in found}
        return "fails" if "error" in severities else "warns" if "warning" in severities else "fine"


def _write(item: QListWidgetItem, mark: str, location: str | None) -> None:
    item.setText(mark)
    item.setData(_LOCATION, location)
    item.setData(_STANDING, "")
    item.setToolTip(_told(mark, location))


def _told(mark: str, location: str | None) -> str:
    return f"{mark}: {location}" if location else mark


def _button(text: str, tip: str, name: str) -> QToolButton:
    button = QToolButton()
    button.setText(text)
    button.setToolTip(tip)
    button.setAccessibleName(name)
    button.setAutoRaise(True)
    return button
