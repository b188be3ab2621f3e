"""A schedule set against a job: what is new, what changes, what is refused, and what it does not have."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

from pydantic import ValidationError

from configurator.intake.columns import Reading
from configurator.intake.fields import FIELDS, OPENING_SIZES
from configurator.intake.refused import CellFault, Question, rows_named
from configurator.intake.rows import RowRead
from configurator.intake.table import ScheduleTable
from configurator.long_work import ROWS_A_STEP, Steps
from configurator.model import Job, JobFacts, Opening
from configurator.model.faults import Fault, faults_of
from configurator.model.paths import field_at, put, trade_name, value_at
from configurator.units import TOLERANCE

_TITLES = {field.path: field.title for field in FIELDS.values() if field.path and field.kind != "code"}
_LONGEST_NOTES = 1900
"""Characters of the job's notes, up to which notes under a schedule are added to them."""
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
        return title_of(self.path)


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

    `told` are the assumptions, each once with the lines it was made on; `left_out` are rows that are no
    openings, as the user answered.
    """

    good: tuple[ReadOpening, ...]
    bad: tuple[RowRead, ...]
    gone: tuple[str, ...]
    told: tuple[str, ...]
    left_out: tuple[RowRead, ...] = ()

    def of_kind(self, kind: str) -> tuple[ReadOpening, ...]:
        """Return the good rows that are new, changed or the same."""
        return tuple(row for row in self.good if row.kind == kind)

    def faults(self) -> tuple[CellFault, ...]:
        """Return every fault, in the order of the lines."""
        return tuple(fault for row in self.bad for fault in row.faults)

    def like_faults(self) -> tuple[tuple[CellFault, ...], ...]:
        """Return the faults, those together that one mend would mend: of one column and for one reason."""
        alike: dict[tuple[int | None, str, str], list[CellFault]] = {}
        for fault in self.faults():
            key = fault.place, fault.question, fault.question or fault.reason
            alike.setdefault(key, []).append(fault)
        return tuple(map(tuple, alike.values()))

    def asked(self, question: Question) -> int:
        """Return how many rows wait for the answer to a question."""
        return sum(any(fault.question == question for fault in row.faults) for row in self.bad)


def title_of(path: str) -> str:
    """Return what a schedule calls the field at a path."""
    return _TITLES.get(path) or trade_name(path)


def compared_steps(rows: Sequence[RowRead], reading: Reading, job: Job) -> Steps[Compared]:
    """Set what was read against a job."""
    by_mark = {opening.mark: opening for opening in job.openings}
    taken = [row for row in rows if not row.left_out]
    marks = {row.line: _mark(row, by_mark) for row in taken}
    against = _Against(
        reading, by_mark, _lines_of_twice(marks), _renamed(taken, marks, by_mark), _by_global_id(taken, job)
    )
    good: list[ReadOpening] = []
    bad: list[RowRead] = []
    told: list[RowRead] = []
    for count, row in enumerate(taken):
        found, row = against.opening(row, marks[row.line])
        told.append(row)
        if isinstance(found, ReadOpening):
            good.append(found)
        else:
            bad.append(found)
        if count % ROWS_A_STEP == 0:
            yield count
    waiting = against.renamed.values() if reading.answer("new mark") == "ask" else ()
    befores = (against.before(row, marks[row.line]) for row in taken)
    there = {opening.mark for opening in (*befores, *waiting) if opening is not None}
    gone = tuple(mark for mark in by_mark if mark not in there)
    left_out = tuple(row for row in rows if row.left_out)
    sentences = _told((*told, *left_out), marks, by_mark, reading.names_doors)
    return Compared(tuple(good), tuple(bad), gone, sentences, left_out)


def openings_with(job: Job, compared: Compared, remove_gone: bool = False) -> tuple[Opening, ...]:
    """Return the openings a job has once the good rows are taken: in place where known, the new ones behind.

    Openings that the schedule does not have stay unless told otherwise. What does not change is not touched.
    """
    changed = {row.before.mark: row.opening for row in compared.of_kind("changed") if row.before is not None}
    removed = set(compared.gone) if remove_gone else set()
    kept = [changed.get(opening.mark, opening) for opening in job.openings if opening.mark not in removed]
    return (*kept, *(row.opening for row in compared.of_kind("new")))


def facts_with(job: Job, table: ScheduleTable, name_the_job: bool = False) -> JobFacts:
    """Return the job's facts with the notes under the schedule, and with the name over it where wanted.

    Notes that are there already are not added again; what finds no room stays in the report alone.
    """
    given = {name: getattr(job.job, name) for name in job.job.model_fields_set}
    if name_the_job and table.job_name:
        given["name"] = table.job_name
    notes = job.job.notes or ""
    for note in table.notes:
        text = " ".join(" ".join(cell.split()) for cell in note.row.cells if cell.strip())
        if text not in notes and len(notes) + len(text) < _LONGEST_NOTES:
            notes = f"{notes}\n{text}".strip()
    if notes != (job.job.notes or ""):
        given["notes"] = notes
    return JobFacts.model_validate(given)


def _mark(row: RowRead, by_mark: Mapping[str, Opening]) -> str:
    """Return a row's mark as the job has it, and else without the blanks around it."""
    return row.mark if row.mark in by_mark else row.mark.strip()


def _lines_of_twice(marks: Mapping[int, str]) -> Mapping[str, list[int]]:
    lines = defaultdict(list)
    for line, mark in marks.items():
        if mark:
            lines[mark].append(line)
    return {mark: found for mark, found in lines.items() if len(found) > 1}


def _renamed(
    rows: Sequence[RowRead], marks: Mapping[int, str], by_mark: Mapping[str, Opening]
) -> dict[str, Opening]:
    """Return by its new mark each opening of the job that the schedule seems to have under another one."""
    there, ids = set(marks.values()), {row.values.get("global_id") for row in rows} - {None}
    gone = [one for mark, one in by_mark.items() if mark not in there and one.global_id not in ids]
    new = [row for row in rows if marks[row.line] and marks[row.line] not in by_mark] if gone else []
    by_stem: dict[str, list[Opening]] = defaultdict(list)
    for opening in gone:
        by_stem[_stem(opening.mark)].append(opening)
    pairs = [
        (marks[row.line], opening)
        for row in new
        for opening in by_stem.get(_stem(marks[row.line]), ())
        if _alike(row, opening)
    ]
    olds, news = (Counter(each) for each in ([old.mark for _, old in pairs], [mark for mark, _ in pairs]))
    return {mark: old for mark, old in pairs if olds[old.mark] == 1 and news[mark] == 1}


def _by_global_id(rows: Sequence[RowRead], job: Job) -> Mapping[str, Opening]:
    """Return by its global id each opening of the job whose door a building model still has."""
    read = {row.values["global_id"] for row in rows if "global_id" in row.values}
    return {one.global_id: one for one in job.openings if one.global_id and one.global_id in read}


def _stem(mark: str) -> str:
    """Return a mark without the letter behind its number: 248 and 248A are of one stem."""
    return (
        mark.rstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz.- ").casefold() or mark.casefold()
    )


def _alike(row: RowRead, opening: Opening) -> bool:
    """Say whether a row may be about an opening: size and location agree as far as both say them."""
    return all(
        _agree(value_at(opening, path), row.values[path])
        for path in ("size.width", "size.height", "location")
        if path in row.values and value_at(opening, path) is not None
    )


@dataclass(frozen=True, slots=True)
class _Against:
    """A job that rows are set against: its openings by mark, marks that stand twice, and those renamed."""

    reading: Reading
    by_mark: Mapping[str, Opening]
    twice: Mapping[str, Sequence[int]]
    renamed: Mapping[str, Opening]
    by_global_id: Mapping[str, Opening]

    def before(self, row: RowRead, mark: str) -> Opening | None:
        """Return the opening of the job that a row is about: by its global id, else by its mark."""
        known, found = self.by_global_id.get(row.values.get("global_id", "")), self.by_mark.get(mark)
        if known is not None:
            return found if found is not None and found.global_id == known.global_id else known
        if found is not None and found.global_id in self.by_global_id:
            found = None  # another row is that door, under another mark by now
        if found is None and self.reading.answer("new mark") == "same":
            found = self.renamed.get(mark)
        return found

    def opening(self, row: RowRead, mark: str) -> tuple[ReadOpening | RowRead, RowRead]:
        """Return the opening a row makes, or the row with all its faults; and the row with what it tells."""
        headings = {column.place: column.heading for column in self.reading.columns}
        row = self._renamed(row, mark, headings)
        before = self.before(row, mark)
        row, cleared = self._blanks(row, before, headings)
        faults = list(row.faults)
        if mark in self.twice:
            others = ", ".join(str(line) for line in self.twice[mark][: _MOST_LINES + 1] if line != row.line)
            where = "has another door" if self.reading.names_doors else f"stands on line {others}"
            faults.append(_fault(row, "mark", f"the mark {mark} {where} too", headings))
        changes = () if before is None else (*_changes(row, before, mark), *cleared)
        made = _made(row, mark, before, changes)
        if isinstance(made, Opening) and not faults:
            return ReadOpening(row.line, made, before, changes), row
        if not isinstance(made, Opening):
            refused = {fault.place for fault in faults}
            later = [_fault(row, fault.field, fault.message, headings) for fault in made]
            # One cell is refused once: what its record says of it afterwards only follows.
            faults += [fault for fault in later if fault.place is None or fault.place not in refused]
        if self.reading.names_doors:
            faults = [replace(fault, door=mark or row.values.get("global_id", "")) for fault in faults]
        return replace(row, mark=mark, faults=tuple(faults)), row

    def _renamed(self, row: RowRead, mark: str, headings: Mapping[int, str]) -> RowRead:
        old = self.renamed.get(mark)
        if old is None:
            return row
        answer = self.reading.answer("new mark")
        if answer == "same":
            return replace(row, told=(*row.told, f"{old.mark} of the job has the mark {mark} now"))
        if answer == "other":
            return replace(
                row, told=(*row.told, f"{mark} is taken as another opening than {old.mark} of the job")
            )
        source = "model" if self.reading.names_doors else "schedule"
        sentence = f"{old.mark} of the job is not in the {source}: say whether {mark} is that opening"
        fault = _fault(row, "mark", sentence, headings)
        return replace(row, faults=(*row.faults, replace(fault, question="new mark")))

    def _blanks(
        self, row: RowRead, before: Opening | None, headings: Mapping[int, str]
    ) -> tuple[RowRead, tuple[Change, ...]]:
        """Return the row, and as changes what the job says and the schedule leaves blank, as answered."""
        left = [] if before is None else [path for path in sorted(row.blank) if _is_given(before, path)]
        answer = self.reading.answer("blank cell")
        if before is None or not left:
            return row, ()
        names = " and ".join(map(title_of, left))
        if answer == "keep":
            return replace(row, told=(*row.told, f"{names}: blank here, and as the job says")), ()
        if answer == "clear":
            return row, tuple(Change(path, value_at(before, path), None) for path in left)
        sentence = f"blank here, where the job says {names}: say whether the job keeps that"
        place = next((p for p, h in headings.items() if self._gives(p, left[0])), None)
        fault = CellFault(row.line, place, "" if place is None else headings[place], sentence, "blank cell")
        return replace(row, faults=(*row.faults, fault)), ()

    def _gives(self, place: int, path: str) -> bool:
        column = next(column for column in self.reading.columns if column.place == place)
        return column.field is not None and FIELDS[column.field].path == path


def _is_given(opening: Opening, path: str) -> bool:
    value = value_at(opening, path)
    return value is not None and value != field_at(path).default


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
        put(data, path, value)
    try:
        return Opening.model_validate(data)
    except ValidationError as error:
        return faults_of(error, Opening)


def _new_values(row: RowRead) -> dict[str, Any]:
    values = {path: _trimmed(value) for path, value in row.values.items() if path != "mark"}
    if row.asks:
        values["questions"] = _joined(values.get("questions"), row.asks)
    return values


def _changes(row: RowRead, before: Opening, mark: str) -> tuple[Change, ...]:
    """Return what a row says otherwise than the job; what it does not say stays as it is."""
    values = {**row.values, "mark": mark}
    if row.asks:
        values["questions"] = _joined(row.values.get("questions") or before.questions, row.asks)
    if "obstructions" in values:  # a model knows nothing of what was typed
        typed = (one for one in before.obstructions if one.element is None)
        values["obstructions"] = (*typed, *values["obstructions"])
    if "other_columns" in values:
        values["other_columns"] = {**before.other_columns, **values["other_columns"]}
    changes = []
    for path, value in values.items():
        old = value_at(before, path)
        if not _agree(old, value):
            changes.append(Change(path, old, _trimmed(value)))
    return tuple(changes)


def _joined(said: str | None, asks: Sequence[str]) -> str:
    """Return questions with those added that are not among them yet."""
    lines = [] if not said else [said.strip()]
    return "\n".join([*lines, *(ask for ask in asks if ask not in (said or ""))])


def _agree(old: Any, new: Any) -> bool:
    if isinstance(old, float) and isinstance(new, int | float) and not isinstance(new, bool):
        return abs(old - new) <= TOLERANCE
    if isinstance(old, str) and isinstance(new, str):
        return old.strip() == new.strip()
    return bool(old == new)


def _trimmed(value: Any) -> Any:
    return value.strip() if isinstance(value, str) else value


def _fault(row: RowRead, path: str, reason: str, headings: Mapping[int, str]) -> CellFault:
    """Return a fault of the cell that a path's value came from, or of the row where no cell says it."""
    place = row.places.get(path)
    if place is None:
        place = next((p for known, p in row.places.items() if known.startswith(f"{path}.")), None)
    if place is None and path in _TITLES:
        reason = f"{reason}; a column headed “{_TITLES[path]}” can give it"
    return CellFault(row.line, place, "" if place is None else headings[place], reason)


def _told(
    rows: Iterable[RowRead], marks: Mapping[int, str], by_mark: Mapping[str, Opening], names_doors: bool
) -> tuple[str, ...]:
    lines: dict[str, list[int | str]] = defaultdict(list)
    alike = {mark.casefold(): mark for mark in by_mark}
    for row in rows:
        mark = marks.get(row.line, row.mark)
        name = mark if names_doors and mark else row.line
        for sentence in row.told:
            lines[sentence].append(name)
        if mark not in by_mark and mark.casefold() in alike:
            sentence = f"{mark} is taken as another opening than {alike[mark.casefold()]} of the job"
            lines[sentence].append(name)
    return tuple(f"{sentence} ({rows_named(found)})" for sentence, found in lines.items())
