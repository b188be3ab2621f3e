"""What stands about a schedule: the job's name over it, and the notes under it with the marks they name."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from configurator.intake.sheet import SheetRow

_NOTES = re.compile(
    r"(?:(?:general|door|schedule|hardware|frame|remarks?)\s+)*(?:notes?|remarks|legend|abbreviations|key\s?notes?)"
    r"\b.*",
    re.IGNORECASE,
)
_NUMBER = re.compile(r"\(?([0-9]{1,3}|[A-Za-z])\s*[.):]\)?\s+(?=\S)|\(([0-9]{1,3})\)\s*(?=\S)")
_NUMBER_ALONE = re.compile(r"\(?([0-9]{1,3}|[A-Za-z])[.):]?\)?")
_LONG_TEXT = 12
"""Characters from which the second of two cells is the text of a note and not a cell of a door."""
_NAMED = re.compile(
    r"\b(?:doors?|openings?|marks?|nos?\.?)\s+(?:nos?\.?\s+)?"
    r"((?:[\w.\-]*\d[\w.\-]*(?:\s*(?:,|&|\band\b|\bthru\b|\bthrough\b|\bto\b)\s*)*)+)",
    re.IGNORECASE,
)
_TOKEN = re.compile(r"[A-Za-z0-9][\w.\-]*\w|\w")
_RANGE = re.compile(r"([\w.\-]*\w)\s*(?:\bthru\b|\bthrough\b|\bto\b|–|—)\s*([\w.\-]*\w)", re.IGNORECASE)
_SURE_MARK = 3
"""Characters of a mark that is told from a plain number wherever it stands."""
_REFERENCE = re.compile(r"(?:see\s+)?(?:notes?|n\.?)\s*#?\s*(\d{1,3}(?:\s*[,;&/]\s*\d{1,3})*)", re.IGNORECASE)
_NUMBERS = re.compile(r"\d{1,3}(?:\s*[,;&/ ]\s*\d{1,3})*")
_JOB = re.compile(r"(?:project|job)(?:\s+name)?\s*[:\-–]?\s*(.*)", re.IGNORECASE | re.DOTALL)
_NO_NAME = re.compile(
    r"\b(?:schedule|date[d]?|sheet|rev(?:ision)?|page|issued?|prepared|drawing|dwg|scale|addendum|bulletin|"
    r"architects?|phone|no\.?|number)\b|[:#@]",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Note:
    """A line under the table, kept whole: where it stands, its number where it has one, and its text."""

    row: SheetRow
    number: str
    text: str

    @property
    def line(self) -> int:
        """The line it stands on."""
        return self.row.line

    @property
    def question(self) -> str:
        """What is asked of an opening that the note is about."""
        number = f" {self.number}" if self.number else ""
        return f"Note{number} under the schedule: {' '.join(self.text.split())}"


def is_title(text: str) -> bool:
    """Say whether the only text of a row heads what follows; a mark by itself is a door left unfinished."""
    return " " in text or not any(letter.isdigit() for letter in text)


def notes_begin(rows: Sequence[SheetRow], columns: int) -> int:
    """Return the place of the first row of the notes under a table, else how many rows there are.

    Only behind the last row that is filled as a door's is can notes begin.
    """
    least = min(3, columns)
    full = [place for place, row in enumerate(rows) if len(_texts(row)) >= least]
    tail = full[-1] + 1 if full and columns > 1 else len(rows)
    return next((place for place in range(tail, len(rows)) if _begins_notes(rows[place])), len(rows))


def note_of(row: SheetRow) -> Note:
    """Return a row under a table as a note: its number may stand in a cell of its own."""
    texts = _texts(row)
    if len(texts) > 1 and (alone := _NUMBER_ALONE.fullmatch(texts[0])):
        return Note(row, alone[1], " ".join(texts[1:]))
    text = " ".join(texts)
    number = _NUMBER.match(text)
    return Note(row, (number[1] or number[2]) if number else "", text[number.end() :] if number else text)


def name_above(above: Iterable[SheetRow]) -> str:
    """Return what may be the job's name among the lines above a table; empty where nothing looks like one."""
    lines = [_texts(row) for row in above]
    for texts in lines:
        for place, text in enumerate(texts):
            if (named := _JOB.fullmatch(text)) and not _NO_NAME.search(named[1]):
                name = named[1].strip() or (texts[place + 1] if place + 1 < len(texts) else "")
                if len(name) > 1:
                    return " ".join(name.split())
    plain = (" ".join(texts[0].split()) for texts in lines if len(texts) == 1)
    return next((text for text in plain if " " in text and not _NO_NAME.search(text)), "")


def marks_named(note: Note, marks: Sequence[str]) -> tuple[str, ...]:
    """Return the marks a note names, in the order of the schedule; a range names all between its ends.

    A short number is a mark only where doors or openings are spoken of: “2 hours” names no door.
    """
    place = {mark: number for number, mark in enumerate(marks)}
    listed = " ; ".join(found[1] for found in _NAMED.finditer(note.text))
    named = {token for token in _TOKEN.findall(listed) if token in place}
    named |= {token for token in _TOKEN.findall(note.text) if token in place and _is_sure(token)}
    for first, last in _RANGE.findall(note.text):
        if first in named and last in named:
            named |= set(marks[place[first] : place[last] + 1])
    return tuple(mark for mark in marks if mark in named)


def notes_of_rows(notes: Sequence[Note], cells_of: Mapping[str, Sequence[str]]) -> dict[str, list[Note]]:
    """Return by mark the notes that name it, or that the remarks beside it refer to by number.

    `cells_of` has the remarks and notes of each mark.
    """
    marks = tuple(cells_of)
    numbered = {note.number: note for note in notes if note.number.isdigit()}
    found: dict[str, list[Note]] = {}
    for note in notes:
        for mark in marks_named(note, marks):
            found.setdefault(mark, []).append(note)
    for mark, cells in cells_of.items():
        for number in _referred(cells):
            if number in numbered and numbered[number] not in found.setdefault(mark, []):
                found[mark].append(numbered[number])
    return {mark: own for mark, own in found.items() if own}


def _referred(cells: Sequence[str]) -> Iterator[str]:
    for cell in cells:
        lists = [cell] if _NUMBERS.fullmatch(cell.strip()) else _REFERENCE.findall(cell)
        for each in lists:
            yield from re.findall(r"\d+", each)


def _is_sure(token: str) -> bool:
    return len(token) >= _SURE_MARK and any(letter.isdigit() for letter in token)


def _begins_notes(row: SheetRow) -> bool:
    texts = _texts(row)
    if _NOTES.fullmatch(texts[0]) or (len(texts) == 1 and is_title(texts[0])):
        return True
    return len(texts) == 2 and bool(_NUMBER_ALONE.fullmatch(texts[0])) and len(texts[1]) >= _LONG_TEXT


def _texts(row: SheetRow) -> list[str]:
    return [cell.strip() for cell in row.cells if cell.strip()]
