"""The sheets as a page of the window: any sheet of any opening as it will be printed, and where it goes."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QStringListModel, Qt, QTimer, Signal
from PySide6.QtWidgets import QFileDialog, QLabel, QListView, QPushButton, QSplitter, QWidget

from configurator.drawing.pages.page import Page
from configurator.export.pages import write_pages
from configurator.long_work import watched
from configurator.model import Opening
from configurator.sentences import as_sentence
from configurator.study import Study
from configurator.study.hang import HangsOn
from configurator.ui.kit.layout import BARE, GROW, Box, LeadsOn, StillCombo, across, down, fill
from configurator.ui.kit.look import FORM_WIDTH, GRID, LIST_WIDTH, tinted
from configurator.ui.kit.message_line import TextPanel
from configurator.ui.kit.runner import Beside, Pieces, ProgressLine
from configurator.ui.sheets.choosers import Choosers
from configurator.ui.sheets.preview import SheetChoice, SheetPreview, pages_of, sheets_of_job
from configurator.ui.state.session import Session

INDEXED, TOGETHER = 2, 3
"""Places among the choices; these are written only, for their index has to know every sheet."""
_OF_JOB = ("all with an index", "all, several on a sheet")
NO_OPENINGS = "This job has no openings yet. Add one with + at the left of the work."
TRY_ANOTHER = "Take the fitted scale, a smaller one, or a larger paper."
_IDLE = ("swing", "theme", "save", "file")


class SheetsPage(LeadsOn, QWidget):
    """The openings, the sheet of the one on show, and what to do with it or with those of all.

    Signals:
        left: the opening on show is to be worked on.
        said: a sentence for the window's line.
    """

    left = Signal()
    said = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.marks = QStringListModel()
        self.openings = QListView()
        self.choosers = Choosers(session.display)
        self.refusal = QLabel()
        self.preview = SheetPreview()
        self.panel = TextPanel()
        self.which = StillCombo()
        self.buttons: dict[str, QPushButton] = {}
        self.actions_of = SheetActions(self)
        self.progress = ProgressLine(self.actions_of.writing, self.actions_of.printing)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(0)
        self._put_together()
        self._connect()
        self.first_stop = self.openings

    # --- What it shows ---

    def show_state(self, by: str) -> None:
        """Bring the page in line with the session, at the next idle moment: ten changes give one sheet."""
        if by in _IDLE:
            return
        self.choosers.show_units(self.session.display)
        self._show_openings()
        self._soon.start()

    def choice(self) -> SheetChoice:
        """Return which sheet is chosen, and how."""
        return replace(
            self.choosers.choice(self.session.display),
            shop=self.session.shop,
            revisions=self.session.job.revisions,
        )

    def lay_out(self) -> None:
        """Lay the sheet of the opening on show out anew, or say why it cannot be."""
        self._soon.stop()
        study, refusal = self.session.study, ""
        if study is None:
            self.preview.show_words(self.session.trouble or NO_OPENINGS)
        else:
            self.choosers.show_widths(_widths_of(study))
            try:
                self.preview.show_page(self.choice().page(study, self.session.job.job))
            except ValueError as error:
                refusal = as_sentence(str(error))
                self.preview.show_words(TRY_ANOTHER if self.choice().scale else "")
        self.refusal.setText(refusal)
        self.refusal.setVisible(bool(refusal))
        tinted(self.refusal, "error", self.session.dark)
        self.show_what_can_be_done()

    def _show_openings(self) -> None:
        marks = [opening.mark for opening in self.session.job.openings]
        chosen = self.openings.selectionModel()
        chosen.blockSignals(True)
        if marks != self.marks.stringList():
            self.marks.setStringList(marks)
            self.which.setItemText(1, f"all {len(marks):,} openings" if len(marks) != 1 else "all openings")
        if self.session.mark in marks:
            self.openings.setCurrentIndex(self.marks.index(marks.index(self.session.mark)))
        chosen.blockSignals(False)
        self.openings.viewport().update()

    def show_what_can_be_done(self) -> None:
        """Offer what can be done with the chosen sheets, and nothing while something is being done."""
        there = self.preview.page is not None if self.of_one else bool(self.session.job.openings)
        to_file = self.which.currentIndex() in (INDEXED, TOGETHER)
        for name, button in self.buttons.items():
            button.setEnabled(there and not self.actions_of.busy and (name == "export" or not to_file))
        self.which.setEnabled(not self.actions_of.busy)
        self.choosers.allow(self.actions_of.busy)

    @property
    def of_one(self) -> bool:
        """Whether the sheet of the opening on show is meant, not those of all openings."""
        return self.which.currentIndex() == 0

    # --- How it is put together ---

    def _put_together(self) -> None:
        self.openings.setModel(self.marks)
        self.openings.setUniformItemSizes(True)
        self.openings.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.openings.setFrameShape(QListView.Shape.NoFrame)
        self.openings.setAccessibleName("openings of the job")
        self.openings.setMinimumWidth(LIST_WIDTH)
        self.refusal.setMargin(2 * GRID)
        self.refusal.setWordWrap(True)
        self.refusal.hide()
        right = QWidget()
        below = (self.progress, self.panel, self._bottom())
        parts = (self.choosers, self.refusal, (self.preview, 1), *below)
        fill(right, down(*parts, spacing=0, margins=BARE))
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.addWidget(self.openings)
        split.addWidget(right)
        split.setStretchFactor(1, 1)
        split.setSizes([LIST_WIDTH, 4 * FORM_WIDTH])
        fill(self, down(split, margins=BARE))

    def _bottom(self) -> Box:
        self.which.addItems(["this opening", "all openings", *_OF_JOB])
        self.which.setAccessibleName("which openings")
        self.which.setToolTip(
            "Whose sheets are exported and printed; plans stand several on a sheet where they fit"
        )
        for name, title, tip, run in self.actions_of.offered():
            button = self.buttons[name] = QPushButton(title)
            button.setToolTip(tip)
            button.clicked.connect(lambda _=False, run=run: run())
        parts = ((GROW, 1), self.which, *self.buttons.values())
        return across(*parts, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, GRID))

    def _connect(self) -> None:
        self._soon.timeout.connect(self.lay_out)
        self.openings.selectionModel().currentChanged.connect(lambda index: self._pick(index.row()))
        self.openings.doubleClicked.connect(lambda _: self.left.emit())
        self.choosers.changed.connect(self.lay_out)
        self.choosers.zoom_asked.connect(self.preview.step)
        self.choosers.whole_asked.connect(self.preview.show_whole)
        self.preview.zoomed.connect(
            lambda: self.choosers.show_zoom(self.preview.zoom if self.preview.page else None)
        )
        self.which.activated.connect(lambda _: self.show_what_can_be_done())

    def _pick(self, row: int) -> None:
        if 0 <= row < len(self.session.job.openings):
            self.session.select(self.session.job.openings[row].mark)


def _widths_of(study: Study) -> tuple[HangsOn, ...]:
    """Return what the leaves hang on: the widths, narrow to wide, then the other ways."""
    widths = sorted({one.hinge_width for one in study.butts})
    return (*widths, *dict.fromkeys(one.on for one in study.candidates if one.way is not None))


if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter


FORMATS = "PDF page (*.pdf);;SVG drawing (*.svg);;DXF drawing (*.dxf);;PNG picture (*.png)"
ONE_FILE = "PDF of all sheets (*.pdf);;DXF with a layout for each sheet (*.dxf)"
MOST_PREVIEWED = 100
"""A preview holds no more sheets than this: each is kept in memory as long as it is on show."""

Offered = tuple[str, str, str, Callable[[], None]]


class SheetActions(QObject):
    """What the buttons under the preview do. Nothing here stops the window while it goes on."""

    def __init__(self, page: "SheetsPage") -> None:
        super().__init__(page)
        self.page = page
        self.writing, self.printing = Beside(self), Pieces(self, precious=True)
        self._not_drawn: list[str] = []
        self.writing.failed.connect(self._end)
        self.printing.ended.connect(self._note_stopped)

    @property
    def busy(self) -> bool:
        """Whether sheets are being written or printed."""
        return self.writing.running or self.printing.running

    def offered(self) -> tuple[Offered, ...]:
        """Return the name, title, tip and function of each button."""
        return (
            ("export", "Export…", "Write PDF, SVG, DXF or PNG; of all openings a PDF or DXF", self.export),
            ("preview", "Print preview…", "See the sheets as the printer takes them", self.show_preview),
            ("print", "Print…", "Print the sheets at their true scale", self.print),
        )

    def export(self) -> None:
        """Ask for a file and write the sheet to it, or those of all openings to one file."""
        path = self.page.session.path
        start = (path.parent if path else Path.home()) / f"{self._name()}.pdf"
        formats = FORMATS if self.page.of_one else ONE_FILE
        name, chosen = QFileDialog.getSaveFileName(self.page, "Export sheets", str(start), formats)
        if name:
            ending = "." + chosen.partition("*.")[2].rstrip(")") if chosen else ".pdf"
            self.write(Path(name) if Path(name).suffix else Path(name).with_suffix(ending))

    def write(self, path: Path) -> None:
        """Write the sheet on show to a file, or those of all openings, behind the window."""
        if not self._may_begin():
            return
        pages, total = self._pages(), len(self._openings())
        self.writing.start(
            "Writing sheets",
            f"{path.name} was not written",
            lambda progress: write_pages(watched(pages, total, progress), path),
            lambda _: self._end(f"Written: {path}"),
        )
        self.page.show_what_can_be_done()

    def print(self) -> None:
        """Ask for a printer and print the sheet, or those of all openings."""
        from configurator.ui.sheets import printing

        printer = self._printer()
        if printer is not None and printing.ask_printer(printer, len(self._openings()), self.page):
            self.print_on(printer)

    def print_on(self, printer: "QPrinter") -> None:
        """Print on a printer that was chosen, page by page between what the window has to do."""
        from configurator.ui.sheets import printing

        if not self._may_begin():
            return
        pages = printing.chosen_pages(printer, self._pages())
        ended = ["Printed.", "Nothing was printed: none of the sheets can be drawn."]
        steps = self._printed(printing.printing(printer, pages), ended)
        self._in_pieces("Printing sheets", steps, lambda: self._end(ended[0]))

    def show_preview(self) -> None:
        """Show the platform's own preview of the sheet, or of the sheets of all openings."""
        if self._may_begin():
            pages: list[Page] = []
            self._in_pieces("Laying out sheets", self._collected(pages), lambda: self._preview(pages))

    def _preview(self, pages: list[Page]) -> None:
        from configurator.ui.sheets import printing

        self._end("")
        if pages:
            printing.show_preview(printing.printer_for(pages[0], self._name()), pages, self.page)

    def _printer(self) -> "QPrinter | None":
        from configurator.ui.sheets import printing

        page = self.page.preview.page or next(iter(self._pages()), None)
        return None if page is None else printing.printer_for(page, self._name())

    def _collected(self, pages: list[Page]) -> Iterator[int]:
        for page in self._pages():
            if len(pages) == MOST_PREVIEWED:
                self._not_drawn.append(f"The preview ends after {MOST_PREVIEWED} sheets; printing does not.")
                return
            pages.append(page)
            yield len(pages)

    def _printed(self, steps: Iterator[int], ended: list[str]) -> Iterator[int]:
        """Pass the steps on, and note in place of the first sentence how it ended."""
        done = 0
        try:
            for done in steps:
                yield done
        except OSError as error:
            ended[0] = f"Printing ended after {done} sheets: {error}."
        else:
            ended[0] = ended[0] if done else ended[1]

    def _may_begin(self) -> bool:
        """Say whether sheets can be made now: while some are, the user is told to wait."""
        if self.busy:
            self.page.said.emit("Sheets are being made: wait for them, or cancel them, and ask again.")
            return False
        self.page.said.emit("")
        self.page.panel.hide()
        self._not_drawn = []
        return True

    def _in_pieces(self, what: str, steps: Iterator[int], then: Callable[[], None]) -> None:
        self.printing.start(steps, then, what, len(self._openings()))
        self.page.show_what_can_be_done()

    def _note_stopped(self, whole: bool) -> None:
        if not whole:
            self._end("Stopped.")

    def _end(self, sentence: str) -> None:
        """Say how it ended, and of which openings there is no sheet."""
        page = self.page
        page.said.emit(sentence)
        if self._not_drawn:
            text, dark = "\n".join(self._not_drawn), page.session.dark
            page.panel.show_text("Not among the sheets:", text, "openings without a sheet", "warning", dark)
        page.show_what_can_be_done()

    def _openings(self) -> tuple[Opening, ...]:
        session = self.page.session
        if not self.page.of_one:
            return session.job.openings
        return (session.opening,) if session.opening else ()

    def _pages(self) -> Iterable[Page]:
        if self.page.of_one and self.page.preview.page is not None:
            return [self.page.preview.page]
        session, choice, which = self.page.session, self.page.choice(), self.page.which.currentIndex()
        if which in (INDEXED, TOGETHER):
            return sheets_of_job(session.job, choice, self._not_drawn, which == TOGETHER)
        return pages_of(self._openings(), session.job.job, choice, self._not_drawn)

    def _name(self) -> str:
        """Return what a file of the chosen sheets is called, without its ending."""
        session = self.page.session
        of = session.mark if self.page.of_one else session.job.job.number or "all openings"
        return "".join(c if c.isalnum() or c in " -_." else "-" for c in f"{of} {self.page.choice().kind}")
