"""One sheet of an XLSX workbook to rows of texts. No formula is run: what was last worked out counts."""

import io
import re
import warnings
import zipfile
from collections.abc import Iterator
from datetime import date, datetime, time
from typing import Any

from openpyxl import load_workbook

from configurator.intake.refused import NOT_WORKED_OUT
from configurator.intake.sheet import IntakeError, Sheet, SheetRow, refuse_too_long, row_of
from configurator.long_work import ROWS_A_STEP, Steps

LARGEST_UNPACKED = 400 * 1024 * 1024
"""Bytes. What unpacks to more is no schedule, and would fill the memory."""
MOST_PARTS = 2000
LAST_ROW = 1_048_576
"""A workbook has no more rows than this, blank ones counted."""
_FORMULA = re.compile(rb"<(?:\w+:)?f[ >/]")


def workbook_steps(data: bytes, name: str, wanted: str | None) -> Steps[Sheet]:
    """Read the sheet of that name, or the first. Raises IntakeError with a sentence where there is none."""
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
    place = _place(names, wanted, name)
    formulas = _rows(_opened(data, values=False), place) if _has_formulas(data) else None
    rows: list[SheetRow] = []
    for line, values in enumerate(_rows(book, place), 1):
        cells = [_text(value) for value in values]
        if formulas is not None:
            _tell_missing(cells, next(formulas, ()))
        row = row_of(line, cells)
        if row is not None:
            rows.append(row)
            refuse_too_long(len(rows))
        if line > LAST_ROW:
            raise IntakeError(f"{name}: the sheet “{names[place]}” has more rows than a workbook can have")
        if line % ROWS_A_STEP == 0:
            yield len(rows)
    told = (f"the sheet “{names[place]}” is read; there are {len(names)}",) if len(names) > 1 else ()
    return Sheet(names[place], tuple(rows), told if wanted is None else (), names)


def _refuse_bomb(data: bytes, name: str) -> None:
    """Refuse by what the parts say they unpack to: no more than that is ever unpacked of them."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as parts:
            infos = parts.infolist()
    except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError, EOFError):
        raise IntakeError(f"{name} is not a workbook that can be read: it is damaged") from None
    if len(infos) > MOST_PARTS or sum(info.file_size for info in infos) > LARGEST_UNPACKED:
        raise IntakeError(f"{name} unpacks to more than any door schedule; it is not opened")


def _opened(data: bytes, values: bool) -> Any:
    with warnings.catch_warnings():
        # What the library leaves out (styles, drawings, lists to choose from) is nothing a schedule says.
        warnings.simplefilter("ignore")
        return load_workbook(io.BytesIO(data), read_only=True, data_only=values, keep_links=False)


def _place(names: tuple[str, ...], wanted: str | None, name: str) -> int:
    if not names:
        raise IntakeError(f"{name} has no sheet of cells")
    if wanted is None:
        return 0
    for place, title in enumerate(names):
        if title.casefold() == wanted.casefold():
            return place
    raise IntakeError(f"{name} has no sheet “{wanted[:40]}”; it has {', '.join(names[:20])}")


def _rows(book: Any, place: int) -> Iterator[tuple[Any, ...]]:
    sheet = book.worksheets[place]
    sheet.reset_dimensions()  # what a file says of its own extent is often wrong
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield from sheet.iter_rows(values_only=True)


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
