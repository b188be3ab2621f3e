"""Sheets on a printer: every page on paper of its own size, at its true scale."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice

from PySide6.QtCore import QMarginsF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter
from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrintPreviewDialog
from PySide6.QtWidgets import QWidget

from configurator.drawing.pages.page import Page
from configurator.ui.kit.painter import paint_groups, paint_logo

POINTS_PER_INCH = 72.0


def printer_for(page: Page, name: str) -> QPrinter:
    """Return the usual printer, set to a page's paper; `name` is what the job is called in its queue."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setDocName(name)
    _lay(printer, page)
    return printer


def page_layout(page: Page) -> QPageLayout:
    """Return the paper of a page as it lies, without margins: the sheet has its own."""
    short, long = sorted((page.paper.width, page.paper.height))
    unit, match = QPageSize.Unit.Millimeter, QPageSize.SizeMatchPolicy.FuzzyMatch
    size = QPageSize(QSizeF(short, long), unit, page.paper.name, match)
    upright = page.paper.height >= page.paper.width
    way = QPageLayout.Orientation.Portrait if upright else QPageLayout.Orientation.Landscape
    layout = QPageLayout(size, way, QMarginsF(0.0, 0.0, 0.0, 0.0))
    layout.setMode(QPageLayout.Mode.FullPageMode)
    return layout


def printing(printer: QPrinter, pages: Iterable[Page]) -> Iterator[int]:
    """Print pages one at a time, yielding how many are done; closing it stops the job.

    Raises OSError when the printer does not take the job.
    """
    painter = QPainter()
    try:
        for done, page in enumerate(pages, 1):
            _lay(printer, page)
            if done == 1 and not painter.begin(printer):
                raise OSError("the printer did not take it")
            if done > 1 and not printer.newPage():
                raise OSError("the printer took no further page")
            _, height = page.paper.points
            points = printer.resolution() / POINTS_PER_INCH
            paint_groups(page.groups, height, painter, points)
            paint_logo(page.logo, height, painter, points)
            yield done
    except GeneratorExit:
        printer.abort()
        raise
    finally:
        if painter.isActive():
            painter.end()


def print_all(printer: QPrinter, pages: Iterable[Page]) -> None:
    """Print pages at once, for a preview that waits for them."""
    for _ in printing(printer, pages):
        pass


def chosen_pages(printer: QPrinter, pages: Iterable[Page]) -> Iterable[Page]:
    """Return the pages from the first to the last one asked for in the print dialog, else all of them."""
    if printer.printRange() != QPrinter.PrintRange.PageRange or not printer.fromPage():
        return pages
    return islice(pages, printer.fromPage() - 1, printer.toPage())


def ask_printer(printer: QPrinter, count: int, owner: QWidget) -> bool:
    """Ask which printer and which of so many pages; say whether to print."""
    dialog = QPrintDialog(printer, owner)
    dialog.setMinMax(1, max(count, 1))
    dialog.setOption(QPrintDialog.PrintDialogOption.PrintPageRange, count > 1)
    # Its buttons look at the printer for as long as they are there, and Python would have freed it.
    dialog.destroyed.connect(lambda: printer)
    try:
        return bool(dialog.exec() == QPrintDialog.DialogCode.Accepted)
    finally:
        dialog.deleteLater()


def show_preview(printer: QPrinter, pages: Sequence[Page], owner: QWidget) -> None:
    """Show pages as that printer would print them, until the user closes it."""
    dialog = preview_dialog(printer, pages, owner)
    dialog.exec()
    dialog.deleteLater()


def preview_dialog(printer: QPrinter, pages: Sequence[Page], owner: QWidget) -> QPrintPreviewDialog:
    """Return the platform's own preview of pages, not yet shown."""

    def paint(_: QPrinter) -> None:
        print_all(printer, pages)  # named here, so that the printer lives as long as the dialog

    dialog = QPrintPreviewDialog(printer, owner)
    dialog.setWindowTitle("Print preview")
    dialog.resize(owner.window().size() * 0.9)
    dialog.paintRequested.connect(paint)
    return dialog


def _lay(printer: QPrinter, page: Page) -> None:
    printer.setPageLayout(page_layout(page))
    printer.setFullPage(True)
