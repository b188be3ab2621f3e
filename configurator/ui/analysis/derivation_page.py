"""The page that shows where a number comes from: its formula, in letters and in numbers."""

from html import escape

from PySide6.QtCore import QEvent, QObject, Qt, QUrl
from PySide6.QtGui import QGuiApplication, QHideEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QTextBrowser, QVBoxLayout, QWidget

from configurator.drawing.base.style import inks
from configurator.drawing.plan.pointing import LookedAt, Pointed, letter_at
from configurator.rules.wording import leaf_named
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.study.derivation.terms import Piece
from configurator.ui.kit.chart_canvas import beside
from configurator.ui.kit.layout import QuietCombo
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.table import FittedTable
from configurator.ui.state.session import Session
from configurator.wording.comparison import Comparison, Row, comparisons
from configurator.wording.derivation_words import (
    MADE_FROM,
    Asked,
    Letter,
    Line,
    ShownDerivation,
    shown_derivation,
)

EMPTY = "Choose an opening, or add one with + at the left: the work behind its numbers is shown here."


class DerivationPage(QWidget):
    """One number of the comparison at a time; a letter under the pointer is marked in the picture."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.number, self.column = QuietCombo(), QuietCombo()
        self.turn = QPushButton("Turn the door there")
        self.copy = QPushButton("Copy as text")
        self.words = QLabel(EMPTY)
        self.text = QTextBrowser()
        self.letters = FittedTable("letters of the formula", wrapped=True)
        self.shown: ShownDerivation | None = None
        self._asked: Asked | None = None
        self._drawn: tuple[object, ...] = ()
        self._build()
        self.number.activated.connect(self._choose_number)
        self.column.activated.connect(self._choose_column)
        self.turn.clicked.connect(self._turn_there)
        self.copy.clicked.connect(self.copy_text)
        self.text.highlighted.connect(lambda url: self.point_at(url.fragment()))
        self.text.anchorClicked.connect(self._choose_letter)
        self.text.cursorPositionChanged.connect(self._point_at_cursor)
        session.looked.connect(self._follow_pointer)
        for reached in (self.letters.entered, self.letters.selectionModel().currentChanged):
            reached.connect(lambda index, *_: self._point_at_row(index.row()))

    def ask(self, asked: Asked) -> None:
        """Show the work behind another number of the comparison."""
        self._asked = asked
        self._drawn = ()
        self.show_state()

    def show_state(self) -> None:
        """Show the number asked for of the opening on show; the first one there is where it has no such."""
        session = self.session
        study = session.study
        now = (study, session.display, session.dark, session.plain_words, self._asked)
        if now == self._drawn:
            return
        self.point_at("")
        self._fill_choosers(study)
        self._show_work(study)
        self._drawn = (study, session.display, session.dark, session.plain_words, self._asked)

    def copy_text(self) -> None:
        """Put the work on the clipboard as plain text."""
        if self.shown is not None:
            QGuiApplication.clipboard().setText(self.shown.as_text())

    def point_at(self, name: str) -> None:
        """Mark in the picture what a letter stands for; nothing for a name that has no place there."""
        shown = self.shown
        mark = shown.work.marks.get(name) if shown is not None else None
        # What is on trial has its own measures, which these marks are not of.
        if shown is None or mark is None or self.session.trial.study is not None:
            self.session.pointed.emit(None)
            return
        letter = next((one for one in shown.letters if one.name == name), None)
        words = f"{letter.written} = {letter.value}" if letter is not None else ""
        self.session.pointed.emit(Pointed(*shown.of, mark, words))

    # --- What it shows ---

    def _show_work(self, study: Study | None) -> None:
        self.shown = None
        if study is not None and self._asked is not None:
            self.shown = shown_derivation(study, self.session.display, self._asked, self.session.plain_words)
        shown = self.shown
        for widget in (self._line, self._both):
            widget.setVisible(shown is not None)
        self.words.setVisible(shown is None)
        self.words.setText(self.session.trouble or EMPTY)
        if shown is None:
            return
        self.text.setHtml(as_html(shown, self.session.dark))
        rows = [((one.written, one.value, one.meaning), one.meaning) for one in shown.letters]
        self.letters.blockSignals(True)
        self.letters.fill(("Letter", "Here", "What it is"), rows)
        self.letters.blockSignals(False)
        self.turn.setText(f"Turn the door to {self.session.display.angle(shown.work.angle)}")

    def _fill_choosers(self, study: Study | None) -> None:
        """Offer every number there is, and keep the one that was asked for, as near as there is one."""
        tables = comparisons(study, self.session.display) if study is not None else ()
        rows = [(table, row) for table in tables for row in table.rows]
        plain = self.session.plain_words
        self.number.clear()
        for table, row in rows:
            name = row.plain if plain else row.trade
            self.number.addItem(capitalized(leaf_named(table.leaf, "{}: ") + name), (table.leaf, row.key))
        wanted = (self._asked.leaf, self._asked.key) if self._asked is not None else None
        place = next((n for n, (table, row) in enumerate(rows) if (table.leaf, row.key) == wanted), 0)
        self.number.setCurrentIndex(place if rows else -1)
        self._fill_columns(rows[place] if rows else None)

    def _fill_columns(self, chosen: tuple[Comparison, Row] | None) -> None:
        self.column.clear()
        if chosen is None:
            self._asked = None
            return
        table, row = chosen
        for place, head in enumerate(table.heads):
            self.column.addItem(head, place)
        if row.difference:
            self.column.addItem(f"Difference, {table.between}", -1)
        place = max(self.column.findData(self._asked.column if self._asked is not None else 0), 0)
        self.column.setCurrentIndex(place)
        self._asked = Asked(table.leaf, row.key, self.column.itemData(place))

    # --- What the user does ---

    def _choose_number(self) -> None:
        leaf, key = self.number.currentData()
        self.ask(Asked(leaf, key, self._asked.column if self._asked is not None else 0))

    def _choose_column(self) -> None:
        leaf, key = self.number.currentData()
        self.ask(Asked(leaf, key, self.column.currentData()))

    def _choose_letter(self, url: QUrl) -> None:
        names = [one.name for one in self.shown.letters] if self.shown is not None else []
        if url.fragment() in names:
            self.letters.setCurrentCell(names.index(url.fragment()), 0)

    def _follow_pointer(self, place: LookedAt | None) -> None:
        """Choose the letter whose part of the picture the pointer is on, and mark it there."""
        shown = self.shown
        if shown is None or not self.isVisible():
            return
        there = place is not None and (place.leaf, place.on) == shown.of
        names = [one.name for one in shown.letters]
        marks = {name: shown.work.marks[name] for name in names if name in shown.work.marks}
        name = letter_at(marks, place) if there and place is not None else ""
        if name:
            self.letters.blockSignals(True)
            self.letters.setCurrentCell(names.index(name), 0)
            self.letters.blockSignals(False)
        self.point_at(name)

    def _point_at_cursor(self) -> None:
        """Mark the letter that the keyboard's cursor has come to in the text."""
        if self.text.hasFocus():
            self.point_at(QUrl(self.text.textCursor().charFormat().anchorHref()).fragment())

    def _point_at_row(self, row: int) -> None:
        letters = self.shown.letters if self.shown is not None else ()
        self.point_at(letters[row].name if 0 <= row < len(letters) else "")

    def _turn_there(self) -> None:
        if self.shown is not None:
            self.session.swing(self.shown.work.angle)

    # --- Qt's own names ---

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take the mark out of the picture when the pointer leaves text or letters."""
        if event.type() == QEvent.Type.Leave:
            self.point_at("")
        return super().eventFilter(watched, event)

    def hideEvent(self, event: QHideEvent) -> None:
        """Leave no mark in the picture."""
        super().hideEvent(event)
        self.point_at("")

    # --- How it is put together ---

    def _build(self) -> None:
        self.words.setWordWrap(True)
        self.number.setAccessibleName("number to show the work of")
        self.column.setAccessibleName("hinge open width, or the difference")
        self.number.setMinimumContentsLength(26)
        self.column.setMinimumContentsLength(16)
        self.turn.setToolTip("Turn the door to where this number is decided")
        self.copy.setToolTip("Copy formula, numbers and letters, to be pasted anywhere")
        self.copy.setAccessibleName("copy the work as text")
        self.text.setAccessibleName("the work, line by line")
        self.text.setOpenLinks(False)
        # Tab leaves the text, which has dozens of letters: arrows move in it, and in the table of letters.
        by_keys = Qt.TextInteractionFlag.TextSelectableByKeyboard
        by_mouse = (
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.LinksAccessibleByMouse
        )
        self.text.setTextInteractionFlags(by_keys | by_mouse)
        self.text.setTabChangesFocus(True)
        self.text.setFrameShape(QTextBrowser.Shape.NoFrame)
        self.text.setTabChangesFocus(True)
        sized(self.text, -1)
        self.letters.setMouseTracking(True)
        for watched in (self.text.viewport(), self.letters.viewport()):
            watched.installEventFilter(self)
        self._line = QWidget()
        line = QHBoxLayout(self._line)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        for widget in (self.number, self.column, self.turn, self.copy):
            line.addWidget(widget)
        line.addStretch()
        self._both = beside(self.text, self.letters, (3, 2))
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        column.setSpacing(GRID)
        column.addWidget(self.words, 0, Qt.AlignmentFlag.AlignTop)
        column.addWidget(self._line)
        column.addWidget(self._both, 1)


def as_html(shown: ShownDerivation, dark: bool) -> str:
    """Return the work for a text view: every letter a link of its own name."""
    ink = inks()["accent"].on(dark)
    letters = {one.name: one for one in shown.letters}
    said = f"<p>{escape(shown.remark)}</p>" if shown.remark else ""
    answer = "".join(_line_html(line, letters, ink, "600") for line in shown.answer)
    lines = "".join(_line_html(line, letters, ink, "400") for line in shown.lines)
    made = f"<p>{MADE_FROM.capitalize()}</p>{lines}" if lines else ""
    return f"<p><b>{escape(shown.heading)}: {escape(shown.shown)}</b></p>{said}{answer}{made}"


def _line_html(line: Line, letters: dict[str, Letter], ink: str, weight: str) -> str:
    pieces = "".join(_piece_html(piece, letters, ink) for piece in line.pieces)
    return f'<p style="margin:2px 0 2px 12px;font-weight:{weight}">{pieces}</p>'


def _piece_html(piece: Piece, letters: dict[str, Letter], ink: str) -> str:
    head, mark, below = piece.text.partition("_")
    text = escape(head) + (f"<sub>{escape(below)}</sub>" if mark else "")
    letter = letters.get(piece.symbol)
    if letter is None:
        return text
    style = f"color:{ink};text-decoration:none"
    return f'<a href="#{piece.symbol}" style="{style}" title="{escape(letter.meaning)}">{text}</a>'
