"""Whether another program takes our files: XLSX and CSV through LibreOffice, and back by our own readers.

Run: .venv/bin/python tests/bench/check_documents.py
Needs LibreOffice (Debian: libreoffice-calc-nogui); it is too slow and too large to be part of the tests.
Ends with status 1 where a cell did not arrive as it was written, or a file was not taken at all.
"""

import csv
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from configurator.documents.changes import changes_document
from configurator.documents.document import Document
from configurator.documents.hardware_schedule import schedule_document
from configurator.documents.order import order_document
from configurator.documents.submittal import submittal_document
from configurator.export.document import read_csv, write_document
from configurator.export.field_sheet_pdf import write_field_sheet
from configurator.export.table_xlsx import read_xlsx
from configurator.model import Job
from configurator.order.book import tally_job
from configurator.order.revisions import changes_since, freeze
from configurator.order.take_off import take_off
from configurator.project_file import load

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"
DANGEROUS = (
    "=1+1",
    "@x",
    "+cmd",
    "-2+3",
    "'=1",
    '=HYPERLINK("x")',
    "a;=1+1",
    "#N/A",
    "  =2+2",
)
"""Marks that a spreadsheet would like to run, and some that only look so."""
LIKE_NUMBERS = ("TRUE", "007", "1-2")
"""Marks that a workbook keeps as text; what a program makes of them in a CSV is its own affair."""
LIBREOFFICE = ("soffice", "libreoffice")


def dangerous_job() -> Job:
    """The demo job with marks that a spreadsheet would like to run."""
    job = load(DEMO)
    marked = (
        opening.model_copy(update={"mark": mark})
        for opening, mark in zip(job.openings, DANGEROUS + LIKE_NUMBERS, strict=False)
    )
    return job.model_copy(update={"openings": tuple(marked)})


def documents() -> Iterator[tuple[str, Document]]:
    """Everything that is written of that job; for the changes half of its openings have gone."""
    job = dangerous_job()
    tallies = tally_job(job)
    order = take_off(tallies, job.job)
    yield "order", order_document(order)
    yield "schedule", schedule_document(tallies, job.job)
    yield "submittal", submittal_document(tallies, order)
    less = job.model_copy(update={"openings": job.openings[::2]})
    changes = changes_since(freeze(job, order), less, take_off(tally_job(less), less.job))
    yield "changes", changes_document(changes, job.job)


def convert(program: str, path: Path, wanted: str, folder: Path) -> Path:
    """Let LibreOffice convert a file; raises where it makes none."""
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    words = [program, profile, "--headless", "--convert-to", wanted, "--outdir", str(folder), str(path)]
    done = subprocess.run(words, capture_output=True, text=True, timeout=180, check=False)
    made = folder / f"{path.stem}.{wanted.split(':')[0]}"
    if done.returncode or not made.exists():
        raise SystemExit(f"{path.name} was not taken: {done.stderr or done.stdout}")
    return made


def check_field_sheet(folder: Path) -> bool:
    """Write the field sheet and let another program read it: every mark, and every page counted."""
    reader = shutil.which("pdftotext")
    if reader is None:
        print("field sheet: pdftotext is not installed (Debian: poppler-utils); not checked")
        return True
    job = dangerous_job()
    write_field_sheet(job, folder / "field.pdf")
    read = subprocess.run(
        [reader, "-layout", str(folder / "field.pdf"), "-"], capture_output=True, check=True
    )
    pages = read.stdout.decode().removesuffix("\f").split("\f")
    marked = [opening.mark for opening in job.openings if opening.mark.strip() not in read.stdout.decode()]
    good = not marked and all(f"page {n} of {len(pages)}" in page for n, page in enumerate(pages, 1))
    print(f"field sheet, {len(pages)} pages: {'all marks and pages' if good else f'MISSING: {marked}'}")
    return good


def marks_of(rows: list[list[str]]) -> list[str]:
    """The column of marks."""
    return [row[rows[0].index("mark")] for row in rows[1:]]


def check(program: str, folder: Path) -> bool:
    """Write, convert and read back; say what came of each."""
    good = check_field_sheet(folder)
    for name, document in documents():
        for ending in (".xlsx", ".csv"):
            write_document(document, folder / f"{name}{ending}")
        pdf = convert(program, folder / f"{name}.xlsx", "pdf", folder)
        print(f"{name}.xlsx became {pdf.name} of {pdf.stat().st_size:,} bytes")
    for ending, reader in ((".xlsx", read_xlsx), (".csv", read_csv)):
        data = (folder / f"schedule{ending}").read_bytes()
        good &= said(f"our own reader, schedule{ending}", marks_of(reader(data)), LIKE_NUMBERS)
        theirs = folder / f"theirs{ending}"
        theirs.write_bytes(data)
        back = convert(
            program, theirs, "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,true", folder
        )
        rows = list(csv.reader(back.read_text("utf-8").splitlines()))
        if ending == ".xlsx":
            good &= said("LibreOffice, schedule.xlsx", marks_of(rows), LIKE_NUMBERS)
        else:
            shown = marks_of(read_csv(back.read_bytes()))[: len(DANGEROUS)]
            good &= said("LibreOffice, schedule.csv", shown)
    return good


def said(words: str, marks: list[str], more: tuple[str, ...] = ()) -> bool:
    """Say whether the marks are those that went out."""
    same = tuple(marks) == DANGEROUS + more
    print(f"{words}: {'all marks as written' if same else f'DIFFERS: {marks}'}")
    return same


def main() -> None:
    """Check, or say what is missing."""
    program = next(filter(None, map(shutil.which, LIBREOFFICE)), None)
    if program is None:
        raise SystemExit("LibreOffice is not installed (Debian: libreoffice-calc-nogui)")
    with tempfile.TemporaryDirectory() as folder:
        sys.exit(0 if check(program, Path(folder)) else 1)


if __name__ == "__main__":
    main()
