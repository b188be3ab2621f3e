"""Writing what the order page shows: which file, then the work beside the window, then what came of it."""

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QFileDialog

from configurator.long_work import Progress
from configurator.ui.order.desk import Counted, document_of

if TYPE_CHECKING:
    from configurator.ui.order.page import OrderPage

KINDS = (
    ("order", "Order…"),
    ("doors", "Door schedule…"),
    ("hardware", "Hardware schedule…"),
    ("submittal", "Submittal…"),
    ("changes", "Changes since the chosen revision…"),
    ("field", "Field sheet to fill in on site…"),
)
"""What can be written, and what the menu calls it."""
NAMES = {"doors": "door schedule", "hardware": "hardware schedule", "field": "field sheet"}
FILTERS = "XLSX workbook (*.xlsx);;PDF pages (*.pdf);;CSV table (*.csv)"
PAPER_ONLY = "PDF pages (*.pdf)"
_ENDING = re.compile(r"\*(\.\w+)\)")


class OrderWriting:
    """Writes one document at a time for one order page."""

    def __init__(self, page: "OrderPage") -> None:
        self.page = page

    def ask(self, kind: str) -> None:
        """Ask for a file, and write the document of that kind to it."""
        name = NAMES.get(kind, kind)
        filters = PAPER_ONLY if kind == "field" else FILTERS
        chosen, used = QFileDialog.getSaveFileName(
            self.page, f"Write the {name}", str(self._folder() / self._name(name, filters)), filters
        )
        if not chosen:
            return
        path = _with_ending(Path(chosen), filters, used)
        if path.name != Path(chosen).name and path.exists():
            # Nobody was asked about this one: the dialog knew it under the name without its ending.
            self.page.say(f"{path.name} is there already. Choose it in the dialog to replace it.", wrong=True)
            return
        self.write(kind, path)

    def write(self, kind: str, path: Path) -> None:
        """Write the document of that kind to a file, beside the window."""
        counted = self.page.counted
        if counted is None and kind != "field":
            self.page.say("Nothing was written: the openings are not all worked out.", wrong=True)
            return
        work = (
            self._field(path) if counted is None or kind == "field" else self._document(kind, path, counted)
        )
        self.page.work_beside(
            f"Writing {path.name}",
            work,
            lambda _: self.page.say(f"Written: {path}"),
            lambda error: self.page.say(f"{path.name} could not be written: {_why(error)}", wrong=True),
        )

    def _document(self, kind: str, path: Path, counted: Counted) -> Callable[[Progress], Any]:
        desk, offers = self.page.desk, self.page.offers or ()
        revision = self.page.revisions.revision(counted.job) if kind == "changes" else None
        if kind == "order" and offers:
            findings = (*counted.order.findings, *(offer.said for offer in offers))
            counted = replace(counted, order=replace(counted.order, findings=findings))

        def work(progress: Progress) -> None:
            from configurator.export.document import write_document

            changes = None if revision is None else desk.changes(revision, counted)
            write_document(document_of(kind, counted, changes), path, progress)

        return work

    def _field(self, path: Path) -> Callable[[Progress], Any]:
        job, display = self.page.session.job, self.page.session.display

        def work(progress: Progress) -> None:
            from configurator.export.field_sheet_pdf import write_field_sheet

            write_field_sheet(job, path, display, progress)

        return work

    def _folder(self) -> Path:
        path = self.page.session.path
        return path.parent if path is not None else Path.home()

    def _name(self, name: str, filters: str) -> str:
        path = self.page.session.path
        start = f"{path.stem} " if path is not None else ""
        return f"{start}{name}{'.pdf' if filters == PAPER_ONLY else '.xlsx'}"


def _with_ending(path: Path, filters: str, used: str) -> Path:
    """Return the path with the ending of the kind of file that was chosen, where it has none that may be."""
    endings = _ENDING.findall(filters)
    if path.suffix.lower() in endings:
        return path
    return path.with_name(f"{path.name}{(_ENDING.findall(used) or endings)[0]}")


def _why(error: Exception) -> str:
    return getattr(error, "strerror", None) or str(error)
