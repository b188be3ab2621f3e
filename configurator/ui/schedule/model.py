"""The schedule as Qt's table model: rows are openings, or groups of like ones; the session holds them."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QColor

from configurator.long_work import run
from configurator.model import Opening
from configurator.ui.kit import look
from configurator.ui.kit.kinds import NotReadError
from configurator.ui.schedule.answers import Answer, Answers
from configurator.ui.schedule.arranging import Arranger, Rows, Wanted
from configurator.ui.schedule.changing import Change, Trial, typed
from configurator.ui.schedule.columns import COLUMNS, UNKNOWN, Column, Worked
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session

Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()
_READ = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemNeverHasChildren
_MIDDLE = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_FLAGS = [_READ | Qt.ItemFlag.ItemIsEditable if isinstance(column, Column) else _READ for column in COLUMNS]


class ScheduleModel(QAbstractTableModel):
    """Shows the job of the session; a row that was edited stays where it is until it is arranged anew.

    Signals:
        refused: a typed value was not taken; the argument is the line that says why.
    """

    refused = Signal(str)

    def __init__(self, session: Session, answers: Answers) -> None:
        super().__init__()
        self.session = session
        self.answers = answers
        self.wanted = Wanted()
        self._arranger = Arranger(answers)
        self._openings: tuple[Opening, ...] = ()
        self._rows: Rows = []
        self._row_of: dict[int, int] | None = None

    # --- What it shows ---

    def arrange(self, wanted: Wanted) -> None:
        """Show what is wanted of the job as it stands."""
        self.wanted = wanted
        self.beginResetModel()
        self._openings = self.session.job.openings
        self._arranger.show_in(self.session.display)
        self._rows = self._arranger.arranged(self._openings, wanted)
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
        self._tell(range(len(self._rows)))

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

    @property
    def shown(self) -> Sequence[tuple[int, ...]]:
        """For each row the places in the job of its openings."""
        return self._rows

    def members(self, row: int) -> tuple[Opening, ...]:
        """Return the openings that a row shows."""
        return tuple(self._openings[place] for place in self._rows[row])

    def row_of(self, place: int) -> int | None:
        """Return the row that shows the opening at that place in the job; None where none does."""
        if self._row_of is None:
            self._row_of = {place: row for row, places in enumerate(self._rows) for place in places}
        return self._row_of.get(place)

    # --- Qt's own ---

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Return how many rows there are."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Return how many columns there are."""
        return 0 if parent.isValid() else len(COLUMNS)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = 0) -> Any:
        """Return the title of a column, and what it says in its tooltip."""
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(COLUMNS):
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return COLUMNS[section].title
        if role == Qt.ItemDataRole.ToolTipRole:
            return COLUMNS[section].tip or None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return self.alignment(0, COLUMNS[section])
        return None

    def data(self, index: Index, role: int = 0) -> Any:
        """Return what a cell shows, in whichever role is asked for."""
        teller = _TELLERS.get(role)  # most roles say nothing: every cell on show is asked for all of them
        if teller is None or not self._is_there(index):
            return None
        return teller(self, index.row(), COLUMNS[index.column()])

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
        place = self._rows[index.row()][0]
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

    def _is_there(self, index: Index) -> bool:
        return 0 <= index.row() < len(self._rows) and index.column() < len(COLUMNS)

    def _tell(self, rows: Iterable[int]) -> None:
        """Tell the views of changed rows, those next to each other at once."""
        ordered = sorted(set(rows))
        starts = [row for before, row in pairwise([-2, *ordered]) if row != before + 1]
        ends = [row for row, after in pairwise([*ordered, -2]) if after != row + 1]
        for first, last in zip(starts, ends, strict=True):
            self.dataChanged.emit(self.index(first, 0), self.index(last, len(COLUMNS) - 1))

    # --- What a cell says ---

    def text(self, row: int, column: Column | Worked) -> str:
        """Return what a cell reads; of what is not worked out yet only that it is not."""
        if isinstance(column, Column):
            return column.text(self.members(row), self.session.display)
        answer = self.answer(row)
        return UNKNOWN if answer is None else column.text(answer)

    def answer(self, row: int) -> Answer | None:
        """Return what is worked out for a row; None until it is."""
        return self.answers.known(self._openings[self._rows[row][0]])

    def exact(self, row: int, column: Column | Worked) -> str:
        """Return what a cell holds without rounding, as it is typed and copied."""
        if isinstance(column, Worked) or self.wanted.grouped:
            return self.text(row, column)
        return column.exact(self._openings[self._rows[row][0]], self.session.display)

    def tip(self, row: int, column: Column | Worked) -> str | None:
        """Return the whole of what a cell says, and what a worked out one rests on."""
        answer = self.answer(row)
        if column.key == "findings" and answer is not None:
            return answer.findings or "Nothing to say."
        if isinstance(column, Column) and len(self._rows[row]) == 1 and column.path == "questions":
            return self._openings[self._rows[row][0]].questions
        return self.text(row, column) or None

    def colour(self, row: int, column: Column | Worked) -> QColor | None:
        """Return the colour of findings by the worst of them, and of what is not worked out yet."""
        if isinstance(column, Column):
            return None
        answer = self.answer(row)
        if answer is None or column.key != "findings":
            return QColor(look.colour("quiet", self.session.dark)) if answer is None else None
        worst = "error" if answer.errors else "warning" if answer.warnings else "quiet"
        return QColor(look.colour(worst, self.session.dark))

    def alignment(self, _: int, column: Column | Worked) -> Qt.AlignmentFlag:
        """Put counts under the middle of their head, and words to the left."""
        return _MIDDLE if column.key == "quantity" else _LEFT

    def spoken(self, row: int, column: Column | Worked) -> str:
        """Return what a screen reader says of a cell."""
        said = self.text(row, column)
        said = "not worked out yet" if said == UNKNOWN else said
        return f"{column.title}: {said or 'nothing'}"


_TELLERS: dict[int, Callable[[ScheduleModel, int, Column | Worked], Any]] = {
    int(Qt.ItemDataRole.DisplayRole): ScheduleModel.text,
    int(Qt.ItemDataRole.EditRole): ScheduleModel.exact,
    int(Qt.ItemDataRole.ToolTipRole): ScheduleModel.tip,
    int(Qt.ItemDataRole.ForegroundRole): ScheduleModel.colour,
    int(Qt.ItemDataRole.AccessibleTextRole): ScheduleModel.spoken,
    int(Qt.ItemDataRole.TextAlignmentRole): ScheduleModel.alignment,
}
