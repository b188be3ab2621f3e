"""The page of tolerances: a sentence a hinge width, and a row for everything that may be off."""

from itertools import zip_longest

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from configurator.rules.filling.tolerances import fill_tolerances
from configurator.rules.wording import leaf_named
from configurator.study import Study
from configurator.study.hang import HangsOn, hinge_words
from configurator.study.tolerance.analysis import DRAWS, tolerance_result, wall_share
from configurator.study.tolerance.deviations import TOLERANCE_OF
from configurator.study.tolerance.findings import chance_words, tolerance_sentence, what_to_do
from configurator.study.tolerance.result import ToleranceResult
from configurator.ui.kit.fields import Field, field_for
from configurator.ui.kit.layout import BARE, GROW, Box, Pool, QuietCombo, across, down, fill
from configurator.ui.kit.look import GRID, sized, tabular, tinted
from configurator.ui.state.session import Session
from configurator.units import CLOSED_IN, Display
from configurator.wording.tolerance_rows import ToleranceRow, name_of, tolerance_heads, tolerance_rows

EMPTY = "Choose an opening, or add one with + at the left: how sure its hinge widths are is shown here."
WORKING = "…"
SETTLE = 250
"""Milliseconds without an edit before anything is worked out."""
_FIELD_WIDTH, _CELL_WIDTH = 44 * GRID, 25 * GRID
_HALF = "The frame stands centred in its wall: half of a thicker wall is taken to come to the pull side."
_ALL = "The frame's place is given: all of a thicker wall is taken to come to the pull side, the worst case."
_EVENLY = (
    "Each thing is drawn by itself, evenly over its tolerance, {:,} times. Chances compare hinges; they are "
    "no promise."
)

Key = tuple[str, HangsOn]


class TolerancePage(QWidget):
    """Worked out a little after the last edit, a width at a time, so that typing never waits for it."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.fields: dict[str, Field] = {}
        self.width_shown = QuietCombo()
        self.sentences: dict[Key, QLabel] = {}
        self.cells: dict[str, tuple[QLabel, ...]] = {}
        self.heads: tuple[QLabel, ...] = ()
        self.note, self.empty = _words(), _words()
        self._found: dict[Key, ToleranceResult | str] = {}
        self._waiting: list[Key] = []
        self._study: Study | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._work_out_next)
        self._said = QVBoxLayout()
        self._labels = Pool(self._sentence)
        self._build()
        self.width_shown.activated.connect(lambda _: self._show())
        session.refused.connect(lambda *_: self._show_fields())

    def show_state(self) -> None:
        """Show the opening on show; what was worked out holds until there is another study."""
        study = self.session.study
        self.body.setVisible(study is not None)
        self.empty.setVisible(study is None)
        self.empty.setText(self.session.trouble or EMPTY)
        if study is not self._study:
            self._study = study
            self._found.clear()
            self._waiting = [] if study is None else _keys(study)
            self._fill_widths()
        if study is not None:
            self._show_fields()
            self._show()
        if self._waiting:
            self._timer.start(SETTLE)

    def found(self) -> ToleranceResult | None:
        """Return what was worked out for the width on show, if it is already."""
        known = self._found.get(self.width_shown.currentData())
        return known if isinstance(known, ToleranceResult) else None

    # --- Working out ---

    def _work_out_next(self) -> None:
        if self._study is None or not self._waiting or not self.isVisible():
            return
        leaf, on = key = self._waiting.pop(0)
        try:
            self._found[key] = tolerance_result(self._study, leaf, on, fineness=CLOSED_IN)
        except ValueError as error:
            self._found[key] = str(error)
        self._show()
        if self._waiting:
            self._timer.start(0)

    # --- What it shows ---

    def _fill_widths(self) -> None:
        keys = [] if self._study is None else _keys(self._study)
        kept = self.width_shown.currentData()
        self.width_shown.clear()
        for key in keys:
            self.width_shown.addItem(_name(key), key)
        wanted = next((key for key in (kept, *_recommended(self._study)) if key in keys), None)
        self.width_shown.setCurrentIndex(0 if wanted is None else keys.index(wanted))
        self.sentences = dict(zip(keys, self._labels.take(len(keys)), strict=True))

    def _show_fields(self) -> None:
        opening = self.session.opening
        if opening is None:
            return
        assumed = fill_tolerances(opening).assumed
        for field in self.fields.values():
            field.show_state(assumed)

    def _show(self) -> None:
        """Show every sentence, and the rows of the width chosen."""
        for key, label in self.sentences.items():
            known = self._found.get(key, WORKING)
            said = known if isinstance(known, str) else _said(known, self.session.display)
            label.setText(f"<b>{_name(key)}</b>: {said}")
        result = self.found()
        for head, text in zip(self.heads, tolerance_heads(result), strict=True):
            head.setText(text)
            tinted(head, "quiet", self.session.dark)
        rows = () if result is None else tolerance_rows(result, self.session.display)
        for name, row in zip_longest(self.cells, rows):
            self._show_row(name, row)
        self._show_note()

    def _show_row(self, name: str, row: ToleranceRow | None) -> None:
        title, *cells = self.cells[name]
        shown = name if row is None else row.name
        title.setText(
            name_of(shown, self.session.plain_words) + (" ●" if row is not None and row.most else "")
        )
        title.setToolTip("" if row is None else row.tip)
        texts = ("", "", "", "") if row is None else (row.minus, row.plus, row.down_to, row.up_to)
        stops = (False, False) if row is None else row.stops
        for cell, text, failing in zip(cells, texts, (*stops, False, False), strict=True):
            cell.setText(("⚠ " if failing else "") + text)
            cell.setToolTip("" if row is None else row.tip)
            if failing:
                tinted(cell, "warning", self.session.dark)
            else:
                cell.setPalette(self.palette())

    def _show_note(self) -> None:
        if self._study is None:
            return
        share = wall_share(self._study.filled)
        result = self.found()
        most = "● matters most. " if result is not None and result.matters_most else ""
        draws = DRAWS if result is None else result.draws
        self.note.setText(f"{most}{_HALF if share < 1 else _ALL} {_EVENLY.format(draws)}")
        tinted(self.note, "quiet", self.session.dark)

    # --- How it is put together ---

    def _build(self) -> None:
        self.width_shown.setAccessibleName("hinge width whose tolerances are shown")
        self.width_shown.setMinimumContentsLength(14)
        sized(self.note, -1)
        self._said.setSpacing(GRID)
        inner, grid = QWidget(), QGridLayout()
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        parts = (self._said, self._choice(), grid, self.note, GROW)
        fill(inner, down(*parts, spacing=2 * GRID, margins=margins))
        self._fill_grid(grid)
        self.body = QScrollArea()
        self.body.setWidget(inner)
        self.body.setWidgetResizable(True)
        self.body.setFrameShape(QFrame.Shape.NoFrame)
        self.body.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.empty.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.empty.setContentsMargins(*margins)
        fill(self, down(self.body, self.empty, margins=BARE))

    def _sentence(self, _: int) -> QLabel:
        label = _words()
        self._said.addWidget(label)
        return label

    def _choice(self) -> Box:
        name = QLabel("Each thing off by itself, with the")
        name.setBuddy(self.width_shown)
        return across(name, self.width_shown, GROW, spacing=2 * GRID)

    def _fill_grid(self, grid: QGridLayout) -> None:
        grid.setHorizontalSpacing(4 * GRID)
        grid.setVerticalSpacing(GRID)
        self.heads = tuple(_small() for _ in tolerance_heads(None))
        for place, head in enumerate(self.heads):
            grid.addWidget(head, 0, place)
        for line, (name, key) in enumerate(TOLERANCE_OF.items(), start=1):
            self.cells[name] = (QLabel(), *(_figures() for _ in range(4)))
            grid.addWidget(self.cells[name][0], line, 0)
            grid.addWidget(self._field(f"tolerances.{key}"), line, 1)
            for place, cell in enumerate(self.cells[name][1:], start=2):
                grid.addWidget(cell, line, place)
        for place in range(2, len(self.heads)):
            grid.setColumnMinimumWidth(place, _CELL_WIDTH)  # so that nothing moves when the answers come
        grid.setColumnStretch(len(self.heads) - 1, 1)

    def _field(self, path: str) -> QWidget:
        """Return the field of a tolerance, or, where two things share one, a word for the second."""
        if path in self.fields:
            shared = _small()
            shared.setText("the same")
            return shared
        self.fields[path] = field_for(self.session, path)
        self.fields[path].setFixedWidth(_FIELD_WIDTH)
        return self.fields[path]


def _keys(study: Study) -> list[Key]:
    return [(one.leaf, one.on) for one in study.candidates]


def _recommended(study: Study | None) -> list[Key]:
    leaves = () if study is None else study.specification.leaves
    return [(leaf.leaf, leaf.parts["width"].value) for leaf in leaves]


def _name(key: Key) -> str:
    leaf, on = key
    return f"{hinge_words(on)}{leaf_named(leaf, ', {}')}"


def _said(result: ToleranceResult, display: Display) -> str:
    """Return the sentence, what to do about it, and the chance where the sentence does not say it."""
    chance = f"Chance: {chance_words(result.worked, result.draws)}." if result.works_worst_case else ""
    return " ".join(filter(None, (tolerance_sentence(result, display), what_to_do(result), chance)))


def _words() -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label


def _small() -> QLabel:
    label = QLabel()
    sized(label, -1)
    return label


def _figures() -> QLabel:
    label = QLabel()
    label.setFont(tabular(label.font()))
    return label
