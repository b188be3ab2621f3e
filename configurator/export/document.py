"""A document as a file: CSV, XLSX or PDF by its ending, put there whole or not at all.

A CSV is as RFC 4180 has it: UTF-8, every text quoted, and no text that a spreadsheet would run.
"""

import csv
import io
from collections.abc import Callable, Mapping, Sequence
from decimal import Decimal
from pathlib import Path

from configurator.cells import shield, unshield
from configurator.documents.document import PLACES, Cell, Document, Table
from configurator.documents.papers import LABELS, Counted, labels_of, paper_of
from configurator.long_work import Progress, unwatched
from configurator.project_file import write_whole

DOCUMENT_FORMATS = (".csv", ".xlsx", ".pdf")


def write_document(document: Document, path: Path, progress: Progress = unwatched) -> None:
    """Write a document; a CSV holds its first table only.

    Raises ValueError for any other ending, OSError when the file cannot be written, and Cancelled when
    `progress`, which is told how many rows are done, says not to go on; nothing is written then.
    """
    make = _MAKERS.get(path.suffix.lower())
    if make is None:
        raise ValueError(f"a document ends in {', '.join(DOCUMENT_FORMATS)}; {path.name} was given")
    write_whole(path, make(document, progress))


def write_paper(kind: str, counted: Counted, path: Path, progress: Progress = unwatched) -> None:
    """Write the paper of a kind, or its labels. Raises as `write_document` does, and NoPaperError."""
    if kind not in LABELS:
        write_document(paper_of(kind, counted), path, progress)
        return
    from configurator.export.table_pdf import labels_bytes

    if path.suffix.lower() != ".pdf":
        raise ValueError(f"labels are a PDF; {path.name} was given")
    write_whole(path, labels_bytes(labels_of(kind, counted), progress))


def csv_bytes(table: Table, lead: Sequence[tuple[str, str]] = ()) -> bytes:
    """Return a table as the bytes of a CSV file: its headings on a line, a line for each row, its totals.

    What leads stands above, each fact on a line, with an empty line after it.

    Lines end in CR LF. Numbers stand bare; every text stands in quotation marks, so that a program that
    takes another character between cells cannot cut one open. Yes and no are those words.
    """
    written = io.StringIO(newline="")
    writer = csv.writer(written, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    wide = max(len(table.columns), 2)
    for row in (*lead, *(((),) if lead else ())):
        writer.writerow([shield(cell) for cell in row] + [""] * (wide - len(row)))
    writer.writerow([column.heading for column in table.columns])
    writer.writerows([_cell(cell) for cell in row] for row in (*table.rows, *table.totals))
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
    if isinstance(cell, float):
        short = round(cell, PLACES)
        return int(short) if short.is_integer() else short
    return shield(cell) if isinstance(cell, str) else cell


def _csv(document: Document, _: Progress) -> bytes:
    return csv_bytes(document.data[0], document.lead)


# Each library is loaded on first use: neither is small, and most of the program needs none of them.


def _xlsx(document: Document, progress: Progress) -> bytes:
    from configurator.export.table_xlsx import xlsx_bytes

    return xlsx_bytes(document, progress)


def _pdf(document: Document, progress: Progress) -> bytes:
    from configurator.export.table_pdf import pdf_bytes

    return pdf_bytes(document, progress)


_MAKERS: Mapping[str, Callable[[Document, Progress], bytes]] = dict(
    zip(DOCUMENT_FORMATS, (_csv, _xlsx, _pdf), strict=True)
)
