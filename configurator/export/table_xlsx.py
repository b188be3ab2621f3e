"""A document as an XLSX workbook: typed cells, a header that stays, and pages set up to be printed."""

import io
import re
import zipfile
from collections.abc import Sequence
from copy import copy
from math import ceil
from typing import Any

from openpyxl import Workbook, load_workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter
from openpyxl.utils.exceptions import InvalidFileException
from openpyxl.writer.excel import ExcelWriter

from configurator.cells import shield
from configurator.documents.document import PLACES, Cell, Column, Document, Table, headed
from configurator.long_work import Counter, Progress, unwatched

HEADER = Font(name="Calibri", size=11, bold=True)
LEAD = Font(name="Calibri", size=11)
HEADER_FILL = PatternFill("solid", fgColor="E6E6E6")
TEXT = Alignment(horizontal="left", vertical="top", wrap_text=True, indent=1)
NUMBER = Alignment(horizontal="right", vertical="top")
LINE = 15.0
"""Points a line of text takes."""
HIGHEST_ROW = 409.0
"""Points: no spreadsheet has a row higher than that; what does not go in is still in the cell."""
LETTER = "1"
PAGE_WIDE = 180
"""Characters of columns that can still be read when they are as wide as the page."""
FORMATS = {
    "inches": "0.####",
    "degrees": "0.0##",
    "money": "#,##0.00##",
    "count": "0",
    "flag": '"yes";"yes";"no"',
}
LONGEST_CELL = 32_767
"""Characters that a cell can hold."""
_MOMENT = (1980, 1, 1, 0, 0, 0)
_MODIFIED = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*(</dcterms:)")
_NOT_IN_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")


def xlsx_bytes(document: Document, progress: Progress = unwatched) -> bytes:
    """Return a document's tables as the bytes of a workbook, a sheet for each; the same bytes every time.

    Numbers, money and yes or no are typed cells; text is always text, so that none of it runs as a formula.
    Raises ValueError where a text is longer than a cell can hold, Cancelled when `progress` says to stop.
    """
    _refuse_long(document)
    book = Workbook(write_only=True)
    rows = Counter(sum(len(table.rows) + len(table.totals) for table in document.workbook), progress)
    try:
        for table in document.workbook:
            _sheet(book, table, document, rows)
    except BaseException:
        _throw_away(book)
        raise
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w") as archive:  # it is packed once, with the moment taken out
        ExcelWriter(book, archive).save()
    return _always_the_same(written.getvalue())


def read_xlsx(data: bytes) -> list[list[str]]:
    """Read the cells of a workbook's first sheet as texts; what was written as text comes back as it was.

    Formulas are not run: a cell that has one gives what was last worked out for it. Raises ValueError with a
    sentence where the file is no workbook.
    """
    try:
        book = load_workbook(io.BytesIO(data), read_only=True, data_only=True)
        sheet = book.worksheets[0]
        return [[_text(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]
    except (InvalidFileException, zipfile.BadZipFile, KeyError, IndexError, ValueError, OSError) as error:
        raise ValueError(f"the file is not an XLSX workbook: {error}") from None


def _throw_away(book: Workbook) -> None:
    """Close the sheets of a workbook that is not to be: each has begun a temporary file."""
    for sheet in book.worksheets:
        sheet.close()
        writer = getattr(sheet, "_writer", None)
        if writer is not None:
            writer.cleanup()


def _sheet(book: Workbook, table: Table, document: Document, rows: Counter) -> None:
    sheet = book.create_sheet(table.title)
    first = len(document.lead) + 2
    sheet.freeze_panes = f"A{first + 1}"
    for number, column in enumerate(table.columns, 1):
        sheet.column_dimensions[get_column_letter(number)].width = _width(column)
    names = max(len(name) for name, _ in document.lead) + 2
    sheet.column_dimensions["A"].width = max(_width(table.columns[0]), names)
    _set_up_printing(sheet, table, document, first)
    for name, fact in document.lead:
        sheet.append([_lead_cell(sheet, name, HEADER), _lead_cell(sheet, fact, LEAD)])
    sheet.append([])
    headings = [column.heading for column in table.columns]
    rooms, styles = [_width(column) - 3 for column in table.columns], _Styles(sheet)
    sheet.row_dimensions[first].height = LINE * _lines(headings, rooms)
    sheet.append([_header_cell(sheet, heading) for heading in headings])
    for number, row in enumerate((*table.rows, *table.totals), first + 1):
        sheet.row_dimensions[number].height = min(LINE * _lines(row, rooms), HIGHEST_ROW)
        cells = [styles.cell(cell, column) for cell, column in zip(row, table.columns, strict=True)]
        sheet.append(_total(cells) if number > first + len(table.rows) else cells)
        rows.take()
    last = get_column_letter(len(table.columns))
    sheet.auto_filter.ref = f"A{first}:{last}{first + len(table.rows)}"


def _total(cells: Sequence[Any]) -> Sequence[Any]:
    """Return cells as a sum stands: bold, a line above it."""
    for cell in cells:
        if cell is not None:
            cell._style = copy(cell._style)
            cell.font, cell.border = HEADER, Border(top=Side("thin"))
    return cells


def _lead_cell(sheet: Any, text: str, font: Font) -> Any:
    cell = WriteOnlyCell(sheet)
    cell.font = font
    _set_text(cell, text)
    return cell


def _width(column: Column) -> int:
    """Return how many characters wide a column is: its heading may take two lines, but breaks no word."""
    return max(column.width, *map(len, column.heading.split())) + 3


def _lines(row: Sequence[Cell], rooms: Sequence[int]) -> int:
    """Return how many lines the fullest cell of a row takes: not every program works that out for itself.

    `rooms` are how many characters go on a line of each column.
    """
    most = 1
    for cell, room in zip(row, rooms, strict=True):
        if isinstance(cell, str) and (len(cell) > room or "\n" in cell):
            most = max(most, sum(-(-len(line) // room) or 1 for line in cell.split("\n")))
    return most


def _refuse_long(document: Document) -> None:
    """Refuse what a cell cannot hold; the library would cut it off in silence."""
    texts = (
        cell for table in document.workbook for row in table.rows for cell in row if isinstance(cell, str)
    )
    longest = max(map(len, texts), default=0)
    if longest > LONGEST_CELL:
        raise ValueError(f"a text of {longest:,} characters is longer than a spreadsheet's cell can hold")


def _set_up_printing(sheet: Any, table: Table, document: Document, first: int) -> None:
    """Landscape letter, few enough pages across to be read, the header on each, page x of y under it."""
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.paperSize = LETTER
    across = ceil(sum(column.width for column in table.columns) / PAGE_WIDE)
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = across, 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    sheet.print_title_rows = f"{first}:{first}"
    if across > 1:
        sheet.print_title_cols = "A:A"
    sheet.oddHeader.left.text = _header_text(headed(document))
    sheet.oddHeader.right.text = _header_text(f"{document.title}: {table.title}")
    sheet.oddFooter.right.text = "Page &P of &N"


def _header_text(text: str) -> str:
    """Return text for a printed header, where ampersands are codes and 255 characters are all there is."""
    return _printable(text).replace("\n", " ")[:100].replace("&", "&&")


def _header_cell(sheet: Any, heading: str) -> Any:
    cell = WriteOnlyCell(sheet, heading)
    cell.font, cell.fill, cell.alignment = HEADER, HEADER_FILL, TEXT
    return cell


class _Styles:
    """Makes the cells of a sheet; those of a kind share a style, which the library would look up anew."""

    def __init__(self, sheet: Any) -> None:
        self._sheet = sheet
        self._made: dict[str, Any] = {}

    def cell(self, value: Cell, column: Column) -> Any:
        """Return a cell of a column, None for one that is empty."""
        if value is None:
            return None
        cell: Any = WriteOnlyCell(self._sheet)
        if isinstance(value, str):
            cell._style = self._style("text")
            _set_text(cell, value)
            return cell
        cell.value = round(value, PLACES) if isinstance(value, float) else value
        cell._style = self._style(FORMATS.get(column.kind, "General"))
        return cell

    def _style(self, shown: str) -> Any:
        if shown not in self._made:
            cell: Any = WriteOnlyCell(self._sheet)
            cell.alignment = TEXT if shown == "text" else NUMBER
            if shown != "text":
                cell.number_format = shown
            self._made[shown] = cell._style
        return self._made[shown]


def _set_text(cell: Any, text: str) -> None:
    """Put text into a cell as text; the quote sign keeps it text even when somebody edits it there."""
    cell.value = _printable(text)
    cell.data_type = "s"
    if shield(text) != text:
        cell._style = copy(cell._style)
        cell.quotePrefix = True


def _printable(text: str) -> str:
    """Return text that a workbook's XML can hold; what it cannot is shown by the sign for that."""
    return _NOT_IN_XML.sub("\ufffd", text)


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return str(value)


def _always_the_same(data: bytes) -> bytes:
    """Return the workbook without the moment it was written: that would make every file another."""
    written = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(written, "w") as new:
        for name in old.namelist():
            info = zipfile.ZipInfo(name, _MOMENT)
            info.compress_type = zipfile.ZIP_DEFLATED
            content = old.read(name)
            if name == "docProps/core.xml":
                content = _MODIFIED.sub(rb"\g<1>1980-01-01T00:00:00Z\g<3>", content)
            new.writestr(info, content)
    return written.getvalue()
