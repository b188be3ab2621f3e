"""A CSV file to rows: how its letters are written and what stands between its cells is found out."""

import csv
import io
from collections import Counter
from collections.abc import Iterator

from configurator.cells import unshield
from configurator.intake.sheet import IntakeError, Sheet, SheetRow, refuse_too_long, row_of
from configurator.long_work import ROWS_A_STEP, Steps

DELIMITERS = {",": "commas", ";": "semicolons", "\t": "tabs"}
_LINES_TRIED = 60
_UTF16 = (b"\xff\xfe", b"\xfe\xff")
_END = "end of the schedule"


def text_steps(data: bytes, name: str) -> Steps[Sheet]:
    """Read the rows of a CSV file. Raises IntakeError with a sentence where it is not one."""
    text, told = _decoded(data, name)
    text, delimiter = _delimiter(text)
    rows: list[SheetRow] = []
    for count, (line, cells) in enumerate(_records(text, delimiter, name)):
        row = row_of(line, [_cell(cell) for cell in cells])
        if row is not None:
            rows.append(row)
            refuse_too_long(len(rows))
        if count % ROWS_A_STEP == 0:
            yield len(rows)
    return Sheet(name, tuple(rows), told)


def _decoded(data: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    if data.startswith(_UTF16):
        return _as_text(data, "utf-16", name), ()
    if b"\x00" in data:
        raise IntakeError(f"{name} is not text; a schedule is a .csv or .xlsx file")
    try:
        data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = _as_text(data, "cp1252", name)
    else:
        return _as_text(data, "utf-8-sig", name), ()
    return text, ("the file is not UTF-8; its letters are read as Windows writes them (cp1252)",)


def _as_text(data: bytes, encoding: str, name: str) -> str:
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError:
        raise IntakeError(f"{name} is not text; a schedule is a .csv or .xlsx file") from None
    strange = sum(1 for letter in text[:4000] if not letter.isprintable() and letter not in "\t\r\n\f")
    if strange > 3:
        raise IntakeError(f"{name} is not text; a schedule is a .csv or .xlsx file")
    return text


def _delimiter(text: str) -> tuple[str, str]:
    """Return the text and what stands between its cells; a first line `sep=;` says so itself."""
    first = text.split("\n", 1)[0].rstrip("\r")
    if first[:4].lower() == "sep=" and first[4:] in DELIMITERS:
        return text[len(first) :], first[4:]
    lines = text[:65_536].splitlines(keepends=True)[:_LINES_TRIED]
    return text, max(DELIMITERS, key=lambda delimiter: _regularity(lines, delimiter))


def _regularity(lines: list[str], delimiter: str) -> int:
    """Say how well a delimiter cuts the lines into rows of one width."""
    try:
        widths = Counter(len(row) for row in csv.reader(lines, delimiter=delimiter) if row)
    except csv.Error:
        return 0
    return max(((width - 1) * count for width, count in widths.items()), default=0)


def _records(text: str, delimiter: str, name: str) -> Iterator[tuple[int, list[str]]]:
    """Yield each record with the line it begins on.

    A line of our own behind the last one shows whether a quotation mark was left open before it.
    """
    guarded = io.StringIO(f"{text}\r\n{_END}\r\n", newline="")
    reader = csv.reader(guarded, delimiter=delimiter)
    begins = 1
    try:
        for cells in reader:
            if cells == [_END]:
                return
            if cells and _END in cells[-1]:
                raise IntakeError(f"{name}: a quotation mark that opens on line {begins} is never closed")
            yield begins, cells
            begins = reader.line_num + 1
    except csv.Error as error:
        raise IntakeError(f"{name}: line {begins} is not CSV: {_in_words(error)}") from None


def _in_words(error: csv.Error) -> str:
    if "field limit" in str(error):
        return f"it has a cell of more than {csv.field_size_limit():,} characters"
    return str(error)


def _cell(cell: str) -> str:
    return unshield(cell).replace("\r\n", "\n").replace("\r", "\n")
