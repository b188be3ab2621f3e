"""A document as a file: CSV, XLSX or PDF by its ending, put there whole or not at all."""

from collections.abc import Callable, Mapping
from pathlib import Path

from configurator.documents.document import Document
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


# Each library is loaded on first use: neither is small, and most of the program needs none of them.


def _csv(document: Document, _: Progress) -> bytes:
    from configurator.export.table_csv import csv_bytes

    return csv_bytes(document.data[0])


def _xlsx(document: Document, progress: Progress) -> bytes:
    from configurator.export.table_xlsx import xlsx_bytes

    return xlsx_bytes(document, progress)


def _pdf(document: Document, progress: Progress) -> bytes:
    from configurator.export.table_pdf import pdf_bytes

    return pdf_bytes(document, progress)


_MAKERS: Mapping[str, Callable[[Document, Progress], bytes]] = dict(
    zip(DOCUMENT_FORMATS, (_csv, _xlsx, _pdf), strict=True)
)
