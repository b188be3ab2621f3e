"""A table as CSV: RFC 4180, UTF-8, every text quoted, and no text that a spreadsheet would run."""

import csv
import io
from decimal import Decimal

from configurator.cells import shield, unshield
from configurator.documents.document import Cell, Table


def csv_bytes(table: Table) -> bytes:
    """Return a table as the bytes of a CSV file: its keys on the first line, then a line for each row.

    Lines end in CR LF. Numbers stand bare; every text stands in quotation marks, so that a program that
    takes another character between cells cannot cut one open. Yes and no are those words.
    """
    written = io.StringIO(newline="")
    writer = csv.writer(written, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    writer.writerow([column.key for column in table.columns])
    writer.writerows([_cell(cell) for cell in row] for row in table.rows)
    return written.getvalue().encode()


def read_csv(data: bytes) -> list[list[str]]:
    """Read the cells of a CSV file, our own or another's, as texts; ours come back as they were.

    Raises ValueError with a sentence where the file is not text (UTF-8) or not CSV.
    """
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise ValueError("the file is not text (UTF-8)") from None
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    except csv.Error as error:
        raise ValueError(f"the file is not CSV: {error}") from None
    return [[unshield(cell) for cell in row] for row in rows]


def _cell(cell: Cell) -> str | int | float | Decimal:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, float) and cell.is_integer():
        return int(cell)
    return shield(cell) if isinstance(cell, str) else cell
