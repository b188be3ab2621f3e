"""Writing what the order page shows: which file, and the work that writes it, which touches nothing of Qt."""

import re
from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

from configurator.documents.changes import changes_document
from configurator.documents.papers import LABELS
from configurator.long_work import Progress
from configurator.model import Job, Revision
from configurator.ui.order.desk import Counted, changes_of
from configurator.units import Display

Writing = Callable[[Progress], None]

KINDS = (
    ("order", "Order…"),
    ("doors", "Door schedule…"),
    ("hardware", "Hardware schedule…"),
    ("supplier", "Order for the supplier, without what is for the office…"),
    ("quote", "Quote for the customer…"),
    ("cost", "Quote with cost and margin, for the office…"),
    ("receiving", "Receiving list…"),
    ("labels", "Labels by opening…"),
    ("floor labels", "Labels by floor…"),
    ("submittal", "Submittal…"),
    ("changes", "Changes since the chosen revision…"),
    ("field", "Field sheet to fill in on site…"),
)
"""What can be written, and what the menu calls it."""
NAMES = {
    "doors": "door schedule",
    "hardware": "hardware schedule",
    "field": "field sheet",
    "supplier": "order for the supplier",
    "cost": "quote with cost",
    "receiving": "receiving list",
}
FILTERS = "XLSX workbook (*.xlsx);;PDF pages (*.pdf);;CSV table (*.csv)"
PAPER_ONLY = "PDF pages (*.pdf)"


def ask_file(owner: QWidget, kind: str, job_file: Path | None) -> Path | None:
    """Ask for the file that a document goes to; None where the user chose none.

    Raises FileExistsError, with a sentence, for a file that the user was not asked about.
    """
    filters = PAPER_ONLY if kind in ("field", *LABELS) else FILTERS
    name = NAMES.get(kind, kind)
    folder = job_file.parent if job_file is not None else Path.home()
    start = f"{f'{job_file.stem} ' if job_file is not None else ''}{name}{_endings(filters)[0]}"
    chosen, used = QFileDialog.getSaveFileName(owner, f"Write the {name}", str(folder / start), filters)
    if not chosen:
        return None
    path = _with_ending(Path(chosen), filters, used)
    if path.name != Path(chosen).name and path.exists():
        # The dialog asks before it replaces a file, but it knew this one under the name without its ending.
        raise FileExistsError(f"{path.name} is there already. Choose it in the dialog to replace it.")
    if job_file is not None and path.exists() and path.samefile(job_file):
        raise FileExistsError(f"{path.name} is the job itself. Give another name.")
    return path


def field_sheet_work(job: Job, display: Display, path: Path) -> Writing:
    """Return the work that writes the field sheet of a job."""

    def work(progress: Progress) -> None:
        from configurator.export.field_sheet_pdf import write_field_sheet

        write_field_sheet(job, path, display, progress)

    return work


def document_work(kind: str, counted: Counted, revision: Revision | None, path: Path) -> Writing:
    """Return the work that writes any other document of a counted job.

    `revision` is the one since which changes are written, and None for any other kind.
    """

    def work(progress: Progress) -> None:
        from configurator.export.document import write_document, write_paper

        if revision is None:
            write_paper(kind, counted, path, progress)
        else:
            changes = changes_of(revision, counted)
            write_document(changes_document(changes, counted.job.job), path, progress)

    return work


def _with_ending(path: Path, filters: str, used: str) -> Path:
    """Return the path with the ending of the kind of file that was chosen, where it has none that may be."""
    endings = _endings(filters)
    if path.suffix.lower() in endings:
        return path
    return path.with_name(f"{path.name}{(_endings(used) or endings)[0]}")


def _endings(filters: str) -> list[str]:
    return re.findall(r"\*(\.\w+)\)", filters)
