"""A schedule set against a job: what is new, what changes, what is refused, and what it does not have."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

from pydantic import ValidationError

from configurator.intake.columns import Reading
from configurator.intake.fields import FIELDS, OPENING_SIZES
from configurator.intake.refused import Question
from configurator.intake.rows import CellFault, RowRead
from configurator.long_work import ROWS_A_STEP, Steps
from configurator.model import Job, Opening
from configurator.model.faults import Fault, faults_of
from configurator.model.paths import value_at
from configurator.units import TOLERANCE

_TITLES = {field.path: field.title for field in FIELDS.values() if field.path and field.kind != "code"}
_MOST_LINES = 8


@dataclass(frozen=True, slots=True)
class Change:
    """One field of an opening that the schedule says otherwise; None where nothing was said."""

    path: str
    old: Any
    new: Any

    @property
    def title(self) -> str:
        """The trade's name of the field."""
        return _TITLES[self.path]


@dataclass(frozen=True, slots=True)
class ReadOpening:
    """One good row: the opening as the job will have it, and as it has it now (None: it is new)."""

    line: int
    opening: Opening
    before: Opening | None
    changes: tuple[Change, ...] = ()

    @property
    def kind(self) -> Literal["new", "changed", "same"]:
        """Whether taking it adds an opening, changes one, or neither."""
        return "new" if self.before is None else "changed" if self.changes else "same"


@dataclass(frozen=True, slots=True)
class Compared:
    """A schedule against a job. `gone` are marks of the job that the schedule does not have.

    `told` are the assumptions, each once with the lines it was made on.
    """

    good: tuple[ReadOpening, ...]
    bad: tuple[RowRead, ...]
    gone: tuple[str, ...]
    told: tuple[str, ...]

    def of_kind(self, kind: str) -> tuple[ReadOpening, ...]:
        """Return the good rows that are new, changed or the same."""
        return tuple(row for row in self.good if row.kind == kind)

    def faults(self) -> tuple[CellFault, ...]:
        """Return every fault, in the order of the lines."""
        return tuple(fault for row in self.bad for fault in row.faults)

    def asked(self, question: Question) -> int:
        """Return how many rows wait for the answer to a question."""
        return sum(any(fault.question == question for fault in row.faults) for row in self.bad)


def compared_steps(rows: Sequence[RowRead], reading: Reading, job: Job) -> Steps[Compared]:
    """Set what was read against a job."""
    by_mark = {opening.mark: opening for opening in job.openings}
    marks = {row.line: _mark(row, by_mark) for row in rows}
    twice = _lines_of_twice(marks)
    headings = {column.place: column.heading for column in reading.columns}
    good: list[ReadOpening] = []
    bad: list[RowRead] = []
    for count, row in enumerate(rows):
        mark = marks[row.line]
        found = _opening(row, mark, by_mark.get(mark), twice.get(mark, ()), headings)
        if isinstance(found, ReadOpening):
            good.append(found)
        else:
            bad.append(found)
        if count % ROWS_A_STEP == 0:
            yield count
    there = set(marks.values())
    gone = tuple(mark for mark in by_mark if mark not in there)
    return Compared(tuple(good), tuple(bad), gone, _told(rows, marks, by_mark))


def openings_with(job: Job, compared: Compared, remove_gone: bool = False) -> tuple[Opening, ...]:
    """Return the openings a job has once the good rows are taken: in place where known, the new ones behind.

    Openings that the schedule does not have stay unless told otherwise. What does not change is not touched.
    """
    changed = {row.opening.mark: row.opening for row in compared.of_kind("changed")}
    removed = set(compared.gone) if remove_gone else set()
    kept = [changed.get(opening.mark, opening) for opening in job.openings if opening.mark not in removed]
    return (*kept, *(row.opening for row in compared.of_kind("new")))


def _mark(row: RowRead, by_mark: Mapping[str, Opening]) -> str:
    """Return a row's mark as the job has it, and else without the blanks around it."""
    return row.mark if row.mark in by_mark else row.mark.strip()


def _lines_of_twice(marks: Mapping[int, str]) -> Mapping[str, list[int]]:
    lines = defaultdict(list)
    for line, mark in marks.items():
        if mark:
            lines[mark].append(line)
    return {mark: found for mark, found in lines.items() if len(found) > 1}


def _opening(
    row: RowRead,
    mark: str,
    before: Opening | None,
    twice: Sequence[int],
    headings: Mapping[int, str],
) -> ReadOpening | RowRead:
    """Return the opening a row makes, or the row with all its faults."""
    faults = list(row.faults)
    if twice:
        others = ", ".join(str(line) for line in twice[: _MOST_LINES + 1] if line != row.line)
        faults.append(_fault(row, "mark", f"the mark {mark} stands on line {others} too", headings))
    changes = () if before is None else _changes(row, before)
    made = _made(row, mark, before, changes)
    if isinstance(made, Opening) and not faults:
        return ReadOpening(row.line, made, before, changes)
    if not isinstance(made, Opening):
        refused = {fault.place for fault in faults}
        later = [_fault(row, fault.field, fault.message, headings) for fault in made]
        # One cell is refused once: what its record says of it afterwards only follows.
        faults += [fault for fault in later if fault.place is None or fault.place not in refused]
    return replace(row, mark=mark, faults=tuple(faults))


def _made(
    row: RowRead, mark: str, before: Opening | None, changes: Sequence[Change]
) -> Opening | tuple[Fault, ...]:
    """Return the opening as it will be; or why there cannot be one so."""
    if not mark:
        return ()
    if before is not None and not changes:
        return before
    if before is None and not {"size.width", "size.height"} <= set(row.values):
        said = bool(row.refused & OPENING_SIZES)
        return () if said else (Fault("size", "a new opening needs its width and its height"),)
    data = before.model_dump(exclude_unset=True) if before is not None else {"mark": mark}
    values = {c.path: c.new for c in changes} if before is not None else _new_values(row)
    for path, value in values.items():
        _put(data, path, value)
    try:
        return Opening.model_validate(data)
    except ValidationError as error:
        return faults_of(error, Opening)


def _new_values(row: RowRead) -> dict[str, Any]:
    return {path: _trimmed(value) for path, value in row.values.items() if path != "mark"}


def _changes(row: RowRead, before: Opening) -> tuple[Change, ...]:
    """Return what a row says otherwise than the job; what it does not say stays as it is."""
    changes = []
    for path, value in row.values.items():
        old = value_at(before, path)
        if path != "mark" and not _agree(old, value):
            changes.append(Change(path, old, _trimmed(value)))
    return tuple(changes)


def _agree(old: Any, new: Any) -> bool:
    if isinstance(old, float) and isinstance(new, int | float) and not isinstance(new, bool):
        return abs(old - new) <= TOLERANCE
    if isinstance(old, str) and isinstance(new, str):
        return old.strip() == new.strip()
    return bool(old == new)


def _trimmed(value: Any) -> Any:
    return value.strip() if isinstance(value, str) else value


def _put(data: dict[str, Any], path: str, value: Any) -> None:
    *way, last = path.split(".")
    for name in way:
        data = data.setdefault(name, {})
    data[last] = value


def _fault(row: RowRead, path: str, reason: str, headings: Mapping[int, str]) -> CellFault:
    """Return a fault of the cell that a path's value came from, or of the row where no cell says it."""
    place = row.places.get(path)
    if place is None:
        place = next((p for known, p in row.places.items() if known.startswith(f"{path}.")), None)
    if place is None and path in _TITLES:
        reason = f"{reason}; a column headed “{_TITLES[path]}” can give it"
    return CellFault(row.line, place, "" if place is None else headings[place], reason)


def _told(
    rows: Iterable[RowRead], marks: Mapping[int, str], by_mark: Mapping[str, Opening]
) -> tuple[str, ...]:
    lines: dict[str, list[int]] = defaultdict(list)
    alike = {mark.casefold(): mark for mark in by_mark}
    for row in rows:
        mark = marks[row.line]
        for sentence in row.told:
            lines[sentence].append(row.line)
        if mark not in by_mark and mark.casefold() in alike:
            sentence = f"{mark} is taken as another opening than {alike[mark.casefold()]} of the job"
            lines[sentence].append(row.line)
    return tuple(f"{sentence} ({lines_named(found)})" for sentence, found in lines.items())


def lines_named(lines: Sequence[int]) -> str:
    """Name lines as people do: `line 4`, `lines 4, 5 and 9`, the first few of many."""
    if len(lines) == 1:
        return f"line {lines[0]}"
    if len(lines) > _MOST_LINES:
        return f"lines {', '.join(map(str, lines[:_MOST_LINES]))} and {len(lines) - _MOST_LINES} more"
    return f"lines {', '.join(map(str, lines[:-1]))} and {lines[-1]}"
