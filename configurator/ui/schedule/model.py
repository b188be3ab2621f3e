"""The schedule as Qt's table model: rows are openings, or groups of like ones; the session holds them."""

from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import Any

from PySide6.QtCore import Qt, Signal

from configurator.long_work import run
from configurator.model import Opening
from configurator.ui.kit.kinds import NotReadError
from configurator.ui.kit.table_model import MIDDLE, Index, TableModel
from configurator.ui.schedule.answers import Answer, Answers, together
from configurator.ui.schedule.arranging import Arranger, Rows, Wanted
from configurator.ui.schedule.changing import Change, Trial, typed
from configurator.ui.schedule.columns import COLUMNS, UNKNOWN, Column, Worked, text_of
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session

_READ = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemNeverHasChildren
_FLAGS = [_READ | Qt.ItemFlag.ItemIsEditable if isinstance(column, Column) else _READ for column in COLUMNS]


class ScheduleModel(TableModel):
    """Shows the job of the session; a row that was edited stays where it is until it is arranged anew.

    Signals:
        refused: a typed value was not taken; the argument is the line that says why.
    """

    refused = Signal(str)

    def __init__(self, session: Session, answers: Answers) -> None:
        super().__init__(COLUMNS)
        self.session = session
        self.answers = answers
        self.wanted = Wanted()
        self._arranger = Arranger(answers)
        self._openings: tuple[Opening, ...] = ()
        self.rows: Rows = []
        self._row_of: dict[int, int] | None = None

    # --- What it shows ---

    def arrange(self, wanted: Wanted) -> None:
        """Show what is wanted of the job as it stands."""
        self.wanted = wanted
        self.beginResetModel()
        self._openings = self.session.job.openings
        self._arranger.show_in(self.session.display)
        self.rows = self._arranger.arranged(self._openings, wanted)
        self._row_of = None
        self.endResetModel()

    def show_job(self) -> bool:
        """Show what has changed in the job row by row; say whether it must be arranged anew instead."""
        openings = self.session.job.openings
        if openings is self._openings:
            return False
        if len(openings) != len(self._openings) or self.wanted.grouped:
            return True
        both = enumerate(zip(self._openings, openings, strict=True))
        changed = [place for place, (was, now) in both if was is not now]
        self._openings = openings
        self._tell(row for place in changed if (row := self.row_of(place)) is not None)
        return False

    def tell_all(self) -> None:
        """Have every row on show read anew, as lengths are when the units change."""
        self._tell(range(len(self.rows)))

    def tell_answered(self, rows: Iterable[int]) -> None:
        """Have what is worked out read anew in some rows."""
        self._tell(rows)

    def prepare(self) -> Iterator[int]:
        """Get ready step by step to find and to group openings, so that the first time is as quick."""
        return self._arranger.prepare(self._openings)

    @property
    def openings(self) -> tuple[Opening, ...]:
        """All openings of the job, on show or not."""
        return self._openings

    def members(self, row: int) -> tuple[Opening, ...]:
        """Return the openings that a row shows."""
        return tuple(self._openings[place] for place in self.rows[row])

    def row_of(self, place: int) -> int | None:
        """Return the row that shows the opening at that place in the job; None where none does."""
        if self._row_of is None:
            self._row_of = {place: row for row, places in enumerate(self.rows) for place in places}
        return self._row_of.get(place)

    # --- Qt's own ---

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Say whether a cell can be edited in place: not what is worked out, and not several at once."""
        # Asked of every cell when all rows are selected, so it has to be quick.
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        return _READ if self.wanted.grouped else _FLAGS[index.column()]

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Take a typed value as one step of the session, or refuse it with a line that says why."""
        if role != Qt.ItemDataRole.EditRole or not self.flags(index) & Qt.ItemFlag.ItemIsEditable:
            return False
        column = COLUMNS[index.column()]
        assert isinstance(column, Column)
        place = self.rows[index.row()][0]
        opening = self._openings[place]
        if str(value) == column.exact(opening, self.session.display):
            return False
        sentence = self._edit(column, place, opening, str(value))
        if sentence:
            self.refused.emit(sentence)
        return not sentence

    def _edit(self, column: Column, place: int, opening: Opening, text: str) -> str:
        """Change one value through the session; return why not, or nothing."""
        name = f"{opening.mark}, {column.title.lower()}"
        try:
            value = typed(column.path, text, self.session.display)
        except NotReadError as error:
            return f"{name}: {error}"
        trial = Trial(self._openings, [Change(place, {column.path: value}, opening.mark)], self.answers)
        run(trial.steps())
        if trial.refusals:
            return trial.refusals[0]
        mark = trial.openings[place].mark
        what = f"change {column.title.lower()} of {opening.mark}"
        try:
            self.session.take_openings(trial.openings, what, mark, f"{mark} {column.path}")
        except RefusedError as error:
            return f"{name}: {error}"
        return ""

    def _tell(self, rows: Iterable[int]) -> None:
        """Tell the views of changed rows, those next to each other at once."""
        ordered = sorted(set(rows))
        starts = [row for before, row in pairwise([-2, *ordered]) if row != before + 1]
        ends = [row for row, after in pairwise([*ordered, -2]) if after != row + 1]
        for first, last in zip(starts, ends, strict=True):
            self.dataChanged.emit(self.index(first, 0), self.index(last, len(COLUMNS) - 1))

    # --- What a cell says ---

    def answer(self, row: int) -> Answer | None:
        """Return what is worked out for a row; None until it is."""
        if self.wanted.grouped in ("", "like"):
            return self.answers.known(self._openings[self.rows[row][0]])
        known = [self.answers.known(opening) for opening in self.members(row)]
        answers = [answer for answer in known if answer is not None]
        return together(answers) if len(answers) == len(known) else None

    def text(self, row: int, place: int) -> str:
        """Return what a cell reads; of what is not worked out yet only that it is not."""
        column = COLUMNS[place]
        if isinstance(column, Column):
            return text_of(column, self.members(row), self.session.display)
        answer = self.answer(row)
        return UNKNOWN if answer is None else column.text(answer)

    def exact(self, row: int, place: int) -> str:
        """Return what a cell holds without rounding, as it is typed and copied."""
        column = COLUMNS[place]
        if isinstance(column, Worked) or self.wanted.grouped:
            return self.text(row, place)
        return column.exact(self._openings[self.rows[row][0]], self.session.display)

    def tip(self, row: int, place: int) -> str | None:
        """Return the whole of what a cell says, and what a worked out one rests on."""
        column, answer = COLUMNS[place], self.answer(row)
        if column.key == "findings" and answer is not None:
            return answer.findings or "Nothing to say."
        if isinstance(column, Column) and len(self.rows[row]) == 1 and column.path == "questions":
            return self._openings[self.rows[row][0]].questions
        return self.text(row, place) or None

    def tint(self, row: int, place: int) -> str:
        """Return the colour of findings by the worst of them, and of what is not worked out yet."""
        column = COLUMNS[place]
        if isinstance(column, Column):
            return ""
        answer = self.answer(row)
        if answer is None:
            return "quiet"
        if column.key != "findings":
            return ""
        return "error" if answer.errors else "warning" if answer.warnings else "quiet"

    def is_dark(self) -> bool:
        """Return whether the window is dark."""
        return self.session.dark

    def side(self, place: int) -> Qt.AlignmentFlag:
        """Put counts under the middle of their head, and words to the left."""
        counts = COLUMNS[place].key == "quantity"
        return (Qt.AlignmentFlag.AlignHCenter if counts else Qt.AlignmentFlag.AlignLeft) | MIDDLE

    def spoken(self, row: int, place: int) -> str:
        """Return what a screen reader says of a cell."""
        said = self.text(row, place)
        said = "not worked out yet" if said == UNKNOWN else said
        return f"{COLUMNS[place].title}: {said or 'nothing'}"
