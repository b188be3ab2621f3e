"""What is said of a cell: why it is refused, and what would answer it for the whole column."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

NOT_WORKED_OUT = "#NOT WORKED OUT"
"""Stands for a cell whose formula no program has worked out; put there by reading a workbook."""
Question = Literal[
    "",
    "size order",
    "pair width",
    "wide door",
    "no hinged door",
    "dutch door",
    "typical",
    "hidden row",
    "struck out",
    "blank cell",
    "new mark",
    "overall size",
    "hand of model",
    "outside",
    "no opening",
]
"""What the user is asked once for all rows; `QUESTIONS` has the answers."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A question: how many rows wait, as a count of what, how it begins, and its answers with their words."""

    one: str
    many: str
    words: str
    answers: Mapping[str, str]

    @property
    def usage(self) -> str:
        """The answers as they are typed."""
        return " or ".join(self.answers)


QUESTIONS: Mapping[Question, Asked] = MappingProxyType(
    {
        "size order": Asked(
            "opening would be wider than high",
            "openings would be wider than high",
            "The first figure of every size is",
            {"width": "the width", "height": "the height"},
        ),
        "pair width": Asked(
            "pair would be narrow",
            "pairs would be narrow",
            "The width of a narrow pair is that",
            {"opening": "of the opening", "leaf": "of each leaf"},
        ),
        "wide door": Asked(
            "opening is wide for one leaf",
            "openings are wide for one leaf",
            "An opening over 4 ft wide, of whose leaves nothing is said, is",
            {"pair": "a pair", "single": "one leaf"},
        ),
        "no hinged door": Asked(
            "row has no door on butt hinges",
            "rows have no door on butt hinges",
            "Openings without butt hinges are",
            {
                "leave out": "left out",
                "by others": "taken: nothing is ordered for them",
                "hinged": "doors on butt hinges all the same",
            },
        ),
        "dutch door": Asked(
            "row may be a Dutch door",
            "rows may be Dutch doors",
            "A door called Dutch is",
            {"dutch": "two leaves, one over the other", "single": "one leaf"},
        ),
        "typical": Asked(
            "row is typical of several",
            "rows are typical of several",
            "“Typ. of 5” says",
            {"quantity": "how many openings the row stands for", "one": "nothing: each has a row of its own"},
        ),
        "hidden row": Asked(
            "row is hidden in the workbook",
            "rows are hidden in the workbook",
            "Hidden rows are",
            {"leave out": "left out", "take": "taken as the others"},
        ),
        "struck out": Asked(
            "row has struck-out text",
            "rows have struck-out text",
            "Struck-out text is",
            {"leave out": "left out, as deleted", "take": "taken as if it were not struck out"},
        ),
        "blank cell": Asked(
            "row leaves out what the job says",
            "rows leave out what the job says",
            "Where the schedule is blank",
            {"keep": "the job keeps what it says", "clear": "the job forgets it"},
        ),
        "new mark": Asked(
            "opening may have a new mark",
            "openings may have a new mark",
            "An opening like one that is no longer in the schedule is",
            {"same": "that one under its new mark", "other": "another opening"},
        ),
        "overall size": Asked(
            "door has an overall size",
            "doors have an overall size",
            "The overall size of a door in the model is",
            {
                "opening": "that of the opening between the rabbets",
                "frame": "outside to outside of the frame",
            },
        ),
        "hand of model": Asked(
            "door has an operation that its shape contradicts",
            "doors have an operation that their shape contradicts",
            "Where the operation type and the shape disagree, the hand is",
            {"operation": "that of the operation type", "shape": "that of the shape", "open": "left open"},
        ),
        "outside": Asked(
            "door has no side known to be outside",
            "doors have no side known to be outside",
            "Where the model does not say which side is outside, it is",
            {
                "push": "the push side: the door opens inward",
                "pull": "the pull side: the door opens outward",
                "open": "left open, and the hand with it",
            },
        ),
        "no opening": Asked(
            "door stands in no opening of a wall",
            "doors stand in no opening of a wall",
            "A door that stands in no opening of a wall is",
            {"leave out": "left out", "take": "taken, its wall not known"},
        ),
    }
)
"""Every question, in the order in which they are best answered."""
LONGEST_CELL = 120
"""Characters of a cell that is not free text."""
_ERRORS = re.compile(r"#(?:REF!|N/A|VALUE!|NAME\?|DIV/0!|NUM!|NULL!|SPILL!|CALC!)")
_DATE = re.compile(
    r"\d{4}-\d{2}-\d{2}|\d{1,2}[-/](?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*(?:[-/]\d{2,4})?",
    re.I,
)


class CellError(ValueError):
    """A cell that cannot be read as what its column is; the message is a sentence."""

    def __init__(self, sentence: str, question: Question = "") -> None:
        super().__init__(sentence)
        self.question: Question = question


@dataclass(frozen=True, slots=True)
class CellFault:
    """Why a cell is not taken. `place` is its column from 0, None where the row as a whole is meant.

    `door` is the mark that names the row of a building model.
    """

    line: int
    place: int | None
    heading: str
    reason: str
    question: Question = ""
    door: str = ""

    def __str__(self) -> str:
        """Return the one line a person reads: which line or door, which column, why."""
        where = f", {' '.join(self.heading.split())}" if self.heading else ""
        return f"{rows_named([self.row])}{where}: {self.reason}"

    @property
    def row(self) -> int | str:
        """What names its row: the line, or the mark of a door."""
        return self.door or self.line


_MOST_NAMED = 8


def rows_named(rows: Sequence[int | str]) -> str:
    """Name rows as people do, the first few of many: `line 4`, `lines 4, 5 and 9`, `door 112A`."""
    one = "line" if isinstance(rows[0], int) else "door"
    if len(rows) == 1:
        return f"{one} {rows[0]}"
    if len(rows) > _MOST_NAMED:
        return f"{one}s {', '.join(map(str, rows[:_MOST_NAMED]))} and {len(rows) - _MOST_NAMED:,} more"
    return f"{one}s {', '.join(map(str, rows[:-1]))} and {rows[-1]}"


def quoted(cell: str) -> str:
    """Return a cell's text to stand in a sentence: on one line, cut where it is long."""
    line = " ".join(cell.split())
    return f"“{line[:39]}…”" if len(line) > 40 else f"“{line}”"


def refuse_what_no_one_wrote(cell: str) -> None:
    """Raise CellError for what a spreadsheet put into a cell instead of a value."""
    if cell == NOT_WORKED_OUT:
        raise CellError(
            "its formula was never worked out; open the file in a spreadsheet program and save it there"
        )
    if _ERRORS.fullmatch(cell.strip()):
        raise CellError(f"the spreadsheet could not work this cell out: {cell.strip()}")


def refuse_long(cell: str) -> None:
    """Raise CellError for what is no word and no length, before anything searches through it."""
    if len(cell) > LONGEST_CELL:
        raise CellError(f"{quoted(cell[:80])} goes on for {len(cell):,} characters")


def is_date(cell: str) -> bool:
    """Say whether a spreadsheet may have made a date of what stood there."""
    return _DATE.fullmatch(cell.strip().split(" ")[0]) is not None


def refuse_date(cell: str) -> None:
    """Raise CellError for a size that a spreadsheet has taken for a date, as it does of 3-6."""
    if is_date(cell):
        raise CellError(f"{quoted(cell)} is a date: the spreadsheet has made one of a size such as 3-6")
