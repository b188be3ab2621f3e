"""One sheet of an XLSX workbook to rows of texts. No formula is run: what was last worked out counts."""

import io
import re
import warnings
import zipfile
import zlib
from collections.abc import Iterator, Mapping
from datetime import date, datetime, time
from itertools import islice
from typing import Any

from openpyxl import load_workbook
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.utils import column_index_from_string, get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from configurator.intake.fields import best_header
from configurator.intake.refused import NOT_WORKED_OUT
from configurator.intake.sheet import (
    NOT_STRUCK,
    IntakeError,
    Sheet,
    SheetAskedError,
    SheetRow,
    refuse_too_long,
    refuse_too_wide,
    row_of,
)
from configurator.long_work import ROWS_A_STEP, Steps

LARGEST_UNPACKED = 400 * 1024 * 1024
"""Bytes. What unpacks to more is no schedule, and would fill the memory."""
MOST_PARTS = 2000
MOST_TEXTS = 1_000_000
"""Unlike texts in a workbook; they are all read before its first cell is."""
_LAST = column_index_from_string("ZZ")
LAST_ROW = 1_048_576
"""A workbook has no more rows than this, blank ones counted."""
_FORMULA = re.compile(rb"<(?:\w+:)?f[ >/]")
_ROW = re.compile(rb"<(?:\w+:)?row\b([^>]*)>")
_ROW_NUMBER = re.compile(rb'\br="(\d+)"')
_HIDDEN = re.compile(rb'\bhidden="(?:1|true)"')
_COLUMN = re.compile(rb"<(?:\w+:)?col\b([^>]*)>")
_MERGED = re.compile(rb'<(?:\w+:)?mergeCell\b[^>]*\bref="([A-Z]{1,3})(\d{1,7}):[A-Z]{1,3}(\d{1,7})"')
_FAR_CELL = re.compile(rb'<(?:\w+:)?c\b[^>]*\br="([A-Z]{3})(\d{1,7})"[^>]*>')
"""A cell right of column ZZ, whatever it holds."""
_KINDS = "[Content_Types].xml"
_SHARED = re.compile(
    rb'<(?:\w{1,20}:)?Override\b(?=[^>]*sharedStrings\+xml)[^>]*\bPartName=(?:"([^"]+)"|\'([^\']+)\')'
)
"""The part that holds the texts that cells share, by whatever name."""
_TEXT = re.compile(rb"</(?:\w{1,20}:)?si>|<(?:\w{1,20}:)?si/>")
_TEXT_LENGTH = 32
_TALLEST_MERGED = 200
"""Rows of one merged cell; a taller one is no cell of a schedule."""
_ROWS_TRIED = 60


def workbook_steps(data: bytes, name: str, wanted: str | None) -> Steps[Sheet]:
    """Read the sheet of that name, or the one with a door schedule. Raises IntakeError with a sentence."""
    _refuse_bomb(data, name)
    try:
        return (yield from _sheet_steps(data, name, wanted))
    except IntakeError:
        raise
    except Exception as error:  # the library trips over a damaged file in as many ways as there are
        reason = " ".join(str(error).split())[:120] or type(error).__name__
        raise IntakeError(f"{name} is not a workbook that can be read: {reason}") from None


def _sheet_steps(data: bytes, name: str, wanted: str | None) -> Steps[Sheet]:
    book = _opened(data, values=True)
    names = tuple(sheet.title for sheet in book.worksheets)
    place, told = _place(book, names, wanted, name)
    part = _part(data, book, place)
    far = _far_cells(part)
    formulas = _rows(_opened(data, values=False), place, far) if _has_formulas(data) else None
    hidden, struck, merged = _hidden_rows(part), _struck(data, place, part, far), _Merged(part)
    rows: list[SheetRow] = []
    for line, values in enumerate(_rows(book, place, far), 1):
        cells = [_text(value) for value in values]
        if formulas is not None:
            _tell_missing(cells, next(formulas, ()))
        merged.fill(line, cells)
        row = row_of(line, cells, line in hidden, struck.get(line, NOT_STRUCK))
        if row is not None:
            rows.append(row)
            refuse_too_long(len(rows))
        if line > LAST_ROW:
            raise IntakeError(f"{name}: the sheet “{names[place]}” has more rows than a workbook can have")
        if line % ROWS_A_STEP == 0:
            yield len(rows)
    return Sheet(
        names[place], tuple(rows), (*told, *_hidden_columns(part), *merged.told(), *_comments(data)), names
    )


def _part(data: bytes, book: Any, place: int) -> bytes:
    """Return the part of a workbook that holds a sheet, as it stands in the file."""
    with zipfile.ZipFile(io.BytesIO(data)) as parts:
        return parts.read(book.worksheets[place]._worksheet_path)


def _far_cells(part: bytes) -> bool:
    """Return whether blank cells stand far right. Raises IntakeError where one there is not blank."""
    far = None
    for far in _FAR_CELL.finditer(part):
        if not far[0].endswith(b"/>"):
            refuse_too_wide(int(far[2]), column_index_from_string(far[1].decode()))
    return far is not None


def _hidden_rows(part: bytes) -> frozenset[int]:
    """Return the numbers of the rows that the workbook hides; the library reads over that."""
    hidden, number = set(), 0
    for row in _ROW.finditer(part):
        named = _ROW_NUMBER.search(row[1])
        number = int(named[1]) if named else number + 1
        if _HIDDEN.search(row[1]):
            hidden.add(number)
    return frozenset(hidden)


class _Merged:
    """Cells merged over several rows: the file holds their text in the first of these only."""

    def __init__(self, part: bytes) -> None:
        self._begun: dict[int, list[tuple[int, int, str]]] = {}
        self._texts: dict[tuple[int, int], str] = {}
        self._filled: dict[str, None] = {}
        for found in _MERGED.finditer(part):
            letters, first, last = found[1].decode(), int(found[2]), int(found[3])
            for line in range(first, last + 1) if 0 < last - first < _TALLEST_MERGED else ():
                place = column_index_from_string(letters) - 1
                self._begun.setdefault(line, []).append((first, place, f"{letters}{first}:{letters}{last}"))

    def fill(self, line: int, cells: list[str]) -> None:
        """Give the cells of a row what the first row of their merged cell says."""
        for first, place, name in self._begun.get(line, ()):
            if line == first:
                self._texts[first, place] = cells[place] if place < len(cells) else ""
            elif (text := self._texts.get((first, place), "")).strip():
                cells.extend([""] * (place + 1 - len(cells)))
                cells[place] = cells[place] or text
                self._filled[name] = None

    def told(self) -> tuple[str, ...]:
        """Say which merged cells were read in each of their rows."""
        return (
            (f"merged cells are read in each of their rows: {', '.join(self._filled)}",)
            if self._filled
            else ()
        )


def _comments(data: bytes) -> tuple[str, ...]:
    with zipfile.ZipFile(io.BytesIO(data)) as parts:
        there = any(re.match(r"xl/(?:threadedC|c)omments", name) for name in parts.namelist())
    return ("comments beside cells of the workbook are not read: look through them",) if there else ()


def _hidden_columns(part: bytes) -> tuple[str, ...]:
    found = []
    for column in _COLUMN.finditer(part):
        first, last = (re.search(rb'\b%s="(\d+)"' % key, column[1]) for key in (b"min", b"max"))
        if _HIDDEN.search(column[1]) and first and last:
            letters = dict.fromkeys(get_column_letter(min(int(end[1]), 16_384)) for end in (first, last))
            found.append(f"hidden in the workbook and read as the others: column {' to '.join(letters)}")
    return tuple(found)


def _struck(data: bytes, place: int, part: bytes, far: bool) -> Mapping[int, Mapping[int, str]]:
    """Return by line and place the cells with struck-out text, and what of them is not struck out."""
    with zipfile.ZipFile(io.BytesIO(data)) as parts:
        styles, shared = (
            parts.read(name) if name in parts.namelist() else b""
            for name in ("xl/styles.xml", "xl/sharedStrings.xml")
        )
    in_part = b"strike" in shared or b"strike" in part
    if not in_part and b"strike" not in styles:
        return {}
    found: dict[int, dict[int, str]] = {}
    for cell in _cells(_opened(data, values=True, rich=in_part).worksheets[place], far):
        left = None if cell.value is None else _not_struck(cell)
        if left is not None:
            found.setdefault(cell.row, {})[cell.column - 1] = left
    return found


def _cells(sheet: Any, cut: bool) -> Iterator[Any]:
    """Yield the cells of a sheet; of one read whole only those that are there, in whatever order."""
    if isinstance(sheet, Worksheet):
        yield from sheet._cells.values()
    else:
        for cells in sheet.iter_rows(max_col=_LAST if cut else None):
            yield from (cell for cell in cells if cell.value is not None)


def _not_struck(cell: Any) -> str | None:
    """Return what of a cell is not struck out; None where nothing is struck out."""
    if cell.font is not None and cell.font.strike:
        return ""
    if not isinstance(cell.value, CellRichText):
        return None
    kept = [part for part in cell.value if not (isinstance(part, TextBlock) and part.font.strike)]
    return None if len(kept) == len(cell.value) else " ".join("".join(map(str, kept)).split())


def _refuse_bomb(data: bytes, name: str) -> None:
    """Refuse by what the parts say they unpack to: no more than that is ever unpacked of them."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as parts:
            infos = parts.infolist()
            small = len(infos) <= MOST_PARTS and sum(info.file_size for info in infos) <= LARGEST_UNPACKED
            texts = _texts(parts) if small else 0
    except (zipfile.BadZipFile, zlib.error, ValueError, OSError, NotImplementedError, EOFError):
        raise IntakeError(f"{name} is not a workbook that can be read: it is damaged") from None
    except KeyError:
        raise IntakeError(f"{name} is not a workbook that can be read: {_KINDS} is not in it") from None
    if not small:
        raise IntakeError(f"{name} unpacks to more than any door schedule; it is not opened")
    if texts > MOST_TEXTS:
        raise IntakeError(f"{name} holds more than {MOST_TEXTS:,} unlike texts; it is not opened")


def _texts(parts: zipfile.ZipFile) -> int:
    """Return how many texts the cells share, counted without keeping them and not far beyond the most."""
    names = {name for told in _SHARED.findall(parts.read(_KINDS)) for name in told if name}
    found = 0
    for name in names & {f"/{name}".encode() for name in parts.namelist()}:
        left = b""
        with parts.open(name[1:].decode()) as part:
            while found <= MOST_TEXTS and (piece := part.read(1 << 20)):
                found += len(_TEXT.findall(left + piece))
                left = piece[-_TEXT_LENGTH:]
                found -= len(_TEXT.findall(left))  # counted with what follows it
        found += len(_TEXT.findall(left))
    return found


def _opened(data: bytes, values: bool, rich: bool = False) -> Any:
    with warnings.catch_warnings():
        # What the library leaves out (drawings, lists to choose from) is nothing a schedule says.
        warnings.simplefilter("ignore")
        # Only read whole does the library tell how a part of a cell is written.
        return load_workbook(
            io.BytesIO(data), read_only=not rich, data_only=values, keep_links=False, rich_text=rich
        )


def _place(book: Any, names: tuple[str, ...], wanted: str | None, name: str) -> tuple[int, tuple[str, ...]]:
    """Return which sheet is read, and what is said of the choice. Raises IntakeError."""
    if not names:
        raise IntakeError(f"{name} has no sheet of cells")
    if wanted is None:
        return _schedule_sheet(book, names, name) if len(names) > 1 else (0, ())
    for place, title in enumerate(names):
        if title.casefold() == wanted.casefold():
            return place, ()
    raise IntakeError(f"{name} has no sheet “{wanted[:40]}”; it has {', '.join(names[:20])}")


def _schedule_sheet(book: Any, names: tuple[str, ...], name: str) -> tuple[int, tuple[str, ...]]:
    """Find the one sheet on show with the headings of a door schedule. Raises SheetAskedError for several."""
    shown = [place for place, sheet in enumerate(book.worksheets) if sheet.sheet_state == "visible"]
    likely = [place for place in shown if _has_doors(book, place)]
    if len(likely) > 1:
        raise SheetAskedError(name, tuple(names[place] for place in likely), names)
    place = (likely or shown or [0])[0]
    why = "it has the headings of a door schedule" if likely else "none has the headings of a door schedule"
    others = ", ".join(each for number, each in enumerate(names) if number != place)
    return place, (f"the sheet “{names[place]}” is read, as {why}; the others are {others}",)


def _has_doors(book: Any, place: int) -> bool:
    first = [[_text(value) for value in values] for values in islice(_rows(book, place, True), _ROWS_TRIED)]
    header = best_header([cells for cells in first if any(cells)])
    return header is not None and header.of_doors


def _rows(book: Any, place: int, cut: bool) -> Iterator[tuple[Any, ...]]:
    """Yield the values of each row; `cut`: up to column ZZ and no farther."""
    sheet = book.worksheets[place]
    sheet.reset_dimensions()  # what a file says of its own extent is often wrong
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield from sheet.iter_rows(max_col=_LAST if cut else None, values_only=True)


def _has_formulas(data: bytes) -> bool:
    with zipfile.ZipFile(io.BytesIO(data)) as parts:
        sheets = [name for name in parts.namelist() if name.startswith("xl/worksheets/")]
        return any(_FORMULA.search(parts.read(name)) for name in sheets)


def _tell_missing(cells: list[str], formulas: tuple[Any, ...]) -> None:
    """Put a sign where a formula stands for which no value is known: blank would pass for nothing said."""
    for place, formula in enumerate(formulas):
        if formula is not None and (place >= len(cells) or not cells[place]):
            cells.extend([""] * (place + 1 - len(cells)))
            cells[place] = NOT_WORKED_OUT


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    if isinstance(value, datetime):
        return value.isoformat(" ") if value.time() != time() else value.date().isoformat()
    if isinstance(value, date | time):
        return value.isoformat()
    return str(value).replace("\r\n", "\n").replace("\r", "\n")
