"""What is said of a cell: why it is refused, and what would answer it for the whole column."""

import re
from typing import Literal

NOT_WORKED_OUT = "#NOT WORKED OUT"
"""Stands for a cell whose formula no program has worked out; put there by reading a workbook."""
Question = Literal["", "size order", "pair width"]
"""What the user is asked once for all rows: whether sizes are height first, or whose width a pair's is."""
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
