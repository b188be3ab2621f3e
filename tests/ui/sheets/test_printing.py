import gc
import weakref
from dataclasses import replace

import pypdfium2
import pytest
from PySide6.QtCore import QTimer
from PySide6.QtGui import QPageLayout
from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrintPreviewWidget
from PySide6.QtWidgets import QWidget

from configurator.drawing.base.primitives import Polygon
from configurator.drawing.base.view import box_around
from configurator.drawing.pages.page import paper_named, papers
from configurator.ui.sheets.printing import (
    ask_printer,
    chosen_pages,
    page_layout,
    preview_dialog,
    print_all,
    printer_for,
    printing,
)
from tests.export.measuring import MM_PER_POINT, read_pdf


def into(path, page):
    """Return a printer that prints a page's paper into a PDF."""
    printer = printer_for(page, "112A plan")
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    return printer


@pytest.mark.parametrize("name", list(papers()))
@pytest.mark.parametrize("turned", [False, True])
def test_every_paper_is_printed_at_its_own_size(qapp, sheet, tmp_path, name, turned):
    paper = paper_named(name).turned() if turned else paper_named(name)
    page = replace(sheet, paper=paper)
    print_all(into(tmp_path / "x.pdf", page), [page])
    with pypdfium2.PdfDocument(tmp_path / "x.pdf") as document:
        wide, high = (side * MM_PER_POINT for side in document[0].get_size())
    assert (wide, high) == pytest.approx((paper.width, paper.height), abs=0.5)  # Qt counts whole points


def test_what_is_printed_is_true_to_scale(qapp, sheet, tmp_path):
    """The first quarter of the scale bar, read back from the printer's page: 3 in = 1'-0\" makes 3/16 in."""
    print_all(into(tmp_path / "x.pdf", sheet), [sheet])
    (read,) = read_pdf((tmp_path / "x.pdf").read_bytes())
    scale = sheet.details[0].scale
    assert scale.name == "3 in = 1'-0\""
    wanted = [quarter(item) for item in sheet.furniture if isinstance(item, Polygon)]
    found = sorted(box.left for box in read.rectangles if box.height == pytest.approx(4.0, abs=0.02))
    assert found == pytest.approx(sorted(box.left for box in wanted), abs=0.1 / MM_PER_POINT)


def quarter(item):
    return box_around(item.points)


def test_pages_of_different_papers_follow_one_another(qapp, sheet, tmp_path):
    other = replace(sheet, paper=paper_named("Letter").turned())
    assert list(printing(into(tmp_path / "x.pdf", sheet), [sheet, other, sheet])) == [1, 2, 3]
    with pypdfium2.PdfDocument(tmp_path / "x.pdf") as document:
        sizes = [page.get_size() for page in document]
    assert [wide > high for wide, high in sizes] == [True, False, True]


def test_it_prints_as_the_paper_lies_and_without_margins(sheet):
    layout = page_layout(sheet)
    assert layout.orientation() == QPageLayout.Orientation.Landscape
    assert page_layout(replace(sheet, paper=sheet.paper.turned())).orientation() == (
        QPageLayout.Orientation.Portrait
    )
    assert layout.margins().isNull()


def test_stopped_in_the_middle_the_job_ends(qapp, sheet, tmp_path):
    printer = into(tmp_path / "x.pdf", sheet)
    steps = printing(printer, [sheet] * 5)
    assert next(steps) == 1
    steps.close()
    assert printer.printerState() != QPrinter.PrinterState.Active


def test_a_printer_that_does_not_take_it_is_said(qapp, sheet, tmp_path):
    with pytest.raises(OSError, match="did not take it"):
        print_all(into(tmp_path / "gone" / "x.pdf", sheet), [sheet])


@pytest.mark.parametrize(
    ("first", "last", "expected"), [(2, 3, "bc"), (1, 1, "a"), (4, 9, "d"), (0, 0, "abcd")]
)
def test_only_the_pages_asked_for_are_printed(qapp, sheet, first, last, expected):
    printer = printer_for(sheet, "x")
    printer.setPrintRange(QPrinter.PrintRange.PageRange)
    printer.setFromTo(first, last)
    assert "".join(chosen_pages(printer, "abcd")) == expected


def test_the_preview_shows_every_page(qtbot, sheet):
    owner = QWidget()
    qtbot.addWidget(owner)
    dialog = preview_dialog(printer_for(sheet, "x"), [sheet, sheet], owner)
    dialog.show()
    shown = dialog.findChild(QPrintPreviewWidget)
    qtbot.waitUntil(lambda: shown.pageCount() == 2)
    dialog.close()


def test_a_print_dialog_is_gone_once_answered_and_its_printer_not_before_it(qtbot, sheet):
    """Its buttons look at the printer; one that Python freed under it once ended the program."""
    owner = QWidget()
    qtbot.addWidget(owner)
    printer = printer_for(sheet, "112A plan")
    kept = weakref.ref(printer)
    QTimer.singleShot(0, lambda: owner.findChild(QPrintDialog).reject())
    assert not ask_printer(printer, 3, owner)
    del printer
    gc.collect()
    assert owner.findChildren(QPrintDialog)
    assert kept() is not None
    qtbot.waitUntil(lambda: not owner.findChildren(QPrintDialog))
    gc.collect()
    assert kept() is None
