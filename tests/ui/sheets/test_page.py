from threading import Event

import pytest

from configurator.drawing.pages.page import scales
from configurator.model import Opening
from configurator.ui.kit import runner
from configurator.ui.sheets.page import INDEXED, TOGETHER, TRY_ANOTHER
from configurator.ui.sheets.preview import KINDS
from configurator.ui.sheets.printing import printer_for
from configurator.units import Display
from tests.export.measuring import bookmarks


def choose(box, text):
    box.setCurrentText(text)
    assert box.currentText() == text
    box.activated.emit(box.currentIndex())


def wait(qtbot, page):
    qtbot.waitUntil(lambda: not page.actions_of.busy)


def test_it_shows_the_plan_of_the_opening_on_show_in_place_of_the_work(window):
    window.commands.actions_by_name["sheets"].trigger()
    page = window.pages.made["sheets"]
    page.lay_out()
    assert page.preview.page.title == "112A plan"
    assert not window.work.isVisible()
    assert page.openings.currentIndex().data() == "112A"


@pytest.mark.parametrize("kind", list(KINDS))
def test_every_kind_of_sheet_is_shown(page, kind):
    choose(page.choosers.kind, KINDS[kind])
    assert page.preview.page is not None
    assert page.preview.page.title.startswith("112A")


def test_another_paper_and_scale_are_shown_at_once(page):
    choose(page.choosers.paper, "Tabloid")
    choose(page.choosers.scale, scales(False)[2].name)
    assert page.preview.page.paper.name == "Tabloid"
    assert page.preview.page.details[0].scale == scales(False)[2]


def test_a_scale_too_large_is_refused_in_words_and_nothing_can_be_exported(page):
    choose(page.choosers.scale, scales(False)[0].name)
    assert "does not fit on Letter paper" in page.refusal.text()
    assert page.refusal.isVisible()
    assert page.preview.words.text() == TRY_ANOTHER
    assert page.choosers.zoom.text() == ""
    assert not page.buttons["export"].isEnabled()
    choose(page.choosers.scale, "fitted")
    assert not page.refusal.isVisible()
    assert page.buttons["export"].isEnabled()


def test_one_width_is_drawn_alone_and_stays_chosen_while_it_is_compared(page, session, qtbot):
    assert len({item.name for item in page.preview.page.details}) == 4
    choose(page.choosers.hinge_width, "4-1/2 in hinge")
    assert all("4-1/2 x 4-1/2" in item.name for item in page.preview.page.details)
    session.select("101A")
    qtbot.waitUntil(lambda: page.preview.page.title == "101A plan")
    assert page.choosers.hinge_width.currentText() == "4-1/2 in hinge"
    session.select("205A")
    qtbot.waitUntil(lambda: page.preview.page.title == "205A plan")
    assert page.choosers.hinge_width.currentText() == "every one"


def test_only_a_plan_is_drawn_of_one_width(page):
    assert page.choosers.hinge_width.isEnabled()
    choose(page.choosers.kind, KINDS["client"])
    assert not page.choosers.hinge_width.isEnabled()


def test_openings_that_do_not_compare_the_width_are_named(page, qtbot, tmp_path):
    choose(page.choosers.hinge_width, "4 in hinge")
    page.which.setCurrentIndex(1)
    page.actions_of.write(tmp_path / "all.pdf")
    wait(qtbot, page)
    assert "205A: 4 in hinge is not among the widths compared" in page.panel.text.toPlainText()


def test_all_sheets_are_written_after_their_index_and_several_stand_on_one(page, session, qtbot, tmp_path):
    for which, first in ((INDEXED, "101A plan"), (TOGETHER, "101A, 112A, 112B, 205A plans")):
        page.which.setCurrentIndex(which)
        page.show_what_can_be_done()
        assert not page.buttons["print"].isEnabled()
        assert [one.title for one in list(page.actions_of._pages())[:2]] == ["Index of sheets", first]
    page.actions_of.write(tmp_path / "job.pdf")
    wait(qtbot, page)
    assert (tmp_path / "job.pdf").read_bytes().startswith(b"%PDF")
    page.which.setCurrentIndex(0)
    page.show_what_can_be_done()
    assert page.buttons["print"].isEnabled()


def test_it_follows_an_edit_once_however_much_is_changed(page, session, qtbot):
    before = page.preview.page
    session.edit("location", "Crew mess")
    session.edit("location", "Crew mess to hall")
    assert page.preview.page is before
    qtbot.waitUntil(lambda: page.preview.page is not before)
    assert any(getattr(item, "text", "") == "Crew mess to hall" for item in page.preview.page.furniture)


def test_another_opening_is_shown_from_its_list_and_from_elsewhere(page, session, qtbot):
    page.openings.setCurrentIndex(page.marks.index(0))
    assert session.mark == "101A"
    qtbot.waitUntil(lambda: page.preview.page.title == "101A plan")
    session.select("205A")
    qtbot.waitUntil(lambda: page.preview.page.title == "205A plan")
    assert page.openings.currentIndex().data() == "205A"


def test_in_millimetres_it_has_the_scales_of_millimetres(page, session, qtbot):
    session.show_in(Display(metric=True))
    names = [page.choosers.scale.itemText(n) for n in range(1, page.choosers.scale.count())]
    assert names == [scale.name for scale in scales(True)]
    qtbot.waitUntil(lambda: page.preview.page.details[0].scale in scales(True))


def test_a_swing_does_not_lay_it_out_again(page, session):
    page.show_state("swing")
    assert not page._soon.isActive()


def test_a_job_without_openings_says_so(page, session):
    session.take_openings((), "remove all", "")
    page.lay_out()
    assert page.preview.page is None
    assert "no openings yet" in page.preview.words.text()
    assert not page.buttons["print"].isEnabled()


@pytest.mark.parametrize("ending", [".pdf", ".svg", ".dxf", ".png"])
def test_the_sheet_on_show_is_written_in_every_format(page, qtbot, tmp_path, ending):
    page.actions_of.write(tmp_path / f"x{ending}")
    assert not page.buttons["export"].isEnabled()
    wait(qtbot, page)
    assert (tmp_path / f"x{ending}").stat().st_size > 1000
    assert page.buttons["export"].isEnabled()


def test_all_openings_become_one_pdf_with_a_bookmark_each(page, bare_window, qtbot, session, tmp_path):
    page.which.setCurrentIndex(1)
    page.actions_of.write(tmp_path / "all.pdf")
    assert page.progress.isVisible()
    wait(qtbot, page)
    titles = [title for title, _ in bookmarks((tmp_path / "all.pdf").read_bytes())]
    assert titles == [f"{opening.mark} plan" for opening in session.job.openings]
    assert bare_window.line.isVisible()
    assert not page.progress.isVisible()


def test_it_can_be_stopped(page, qtbot, tmp_path):
    page.which.setCurrentIndex(1)
    page.actions_of.write(tmp_path / "all.pdf")
    page.progress.cancel.click()
    wait(qtbot, page)
    assert list(tmp_path.iterdir()) == []


def test_stopped_in_the_middle_nothing_is_written(page, qtbot, tmp_path, monkeypatch, sheet):
    (tmp_path / "two.pdf").write_bytes(b"as it was")
    asked, go_on, said = Event(), Event(), []
    page.said.connect(said.append)

    def pages():
        yield sheet
        asked.set()
        go_on.wait(60)
        yield sheet

    monkeypatch.setattr(page.actions_of, "_pages", pages)
    page.actions_of.write(tmp_path / "two.pdf")
    assert asked.wait(60)
    page.progress.cancel.click()
    go_on.set()
    wait(qtbot, page)
    assert said[-1] == "Stopped. two.pdf was not written."
    assert (tmp_path / "two.pdf").read_bytes() == b"as it was"
    assert [each.name for each in tmp_path.iterdir()] == ["two.pdf"]


@pytest.mark.parametrize(
    ("count", "name", "why"),
    [
        (2, "x.svg", "x.svg was not written: this format holds one sheet, not 2"),
        (0, "x.pdf", "x.pdf was not written: there is no sheet"),
        (1, "gone/x.pdf", "x.pdf was not written: No such file or directory."),
    ],
)
def test_what_cannot_be_written_is_said(page, qtbot, tmp_path, monkeypatch, sheet, count, name, why):
    said = []
    page.said.connect(said.append)
    monkeypatch.setattr(page.actions_of, "_pages", lambda: [sheet] * count)
    page.actions_of.write(tmp_path / name)
    wait(qtbot, page)
    assert said[-1].startswith(why)
    assert list(tmp_path.iterdir()) == []
    assert page.buttons["export"].isEnabled()


def test_a_fault_of_the_program_in_the_middle_is_told_and_the_page_goes_on(
    page, qtbot, tmp_path, monkeypatch, sheet, caplog
):
    def pages():
        yield sheet
        raise KeyError("pin")

    said = []
    page.said.connect(said.append)
    monkeypatch.setattr(page.actions_of, "_pages", pages)
    page.actions_of.write(tmp_path / "x.pdf")
    wait(qtbot, page)
    assert said[-1].startswith("x.pdf was not written: something went wrong in the program (KeyError")
    assert "KeyError" in caplog.text
    assert page.buttons["export"].isEnabled()


@pytest.mark.parametrize("ask", ["write", "print_on", "show_preview"])
def test_what_is_asked_meanwhile_is_refused_in_words(page, qtbot, tmp_path, monkeypatch, sheet, ask):
    go_on, said = Event(), []
    page.said.connect(said.append)
    monkeypatch.setattr(page.actions_of, "_pages", lambda: (go_on.wait(60) and each for each in [sheet]))
    page.actions_of.write(tmp_path / "x.pdf")
    given = {"write": [tmp_path / "y.pdf"], "print_on": [None], "show_preview": []}[ask]
    getattr(page.actions_of, ask)(*given)
    assert said[-1] == "Sheets are being made: wait for them, or cancel them, and ask again."
    go_on.set()
    wait(qtbot, page)
    assert [each.name for each in tmp_path.iterdir()] == ["x.pdf"]


def test_what_has_no_sheet_is_named(page, session, qtbot, tmp_path):
    """The other openings are written all the same."""
    low = {"mark": "999", "hand": "LH", "size": {"width": 36, "height": 5}, "door": {"undercut": 12}}
    bad = Opening.model_validate(low)
    session.take_openings((session.job.openings[1], bad), "two", "112A")
    page.which.setCurrentIndex(1)
    page.actions_of.write(tmp_path / "all.pdf")
    wait(qtbot, page)
    assert page.panel.isVisible()
    assert page.panel.text.toPlainText().startswith("999: ")
    assert len(bookmarks((tmp_path / "all.pdf").read_bytes())) == 1


def test_the_export_asks_for_a_file_named_after_the_opening(page, qtbot, tmp_path, monkeypatch):
    asked = []

    def answer(owner, title, start, formats):
        asked.append((start, formats))
        return str(tmp_path / "mine"), "DXF drawing (*.dxf)"

    monkeypatch.setattr("configurator.ui.sheets.page.QFileDialog.getSaveFileName", answer)
    page.buttons["export"].click()
    wait(qtbot, page)
    assert asked[0][0].endswith("112A plan.pdf")
    assert (tmp_path / "mine.dxf").exists()


def test_all_openings_are_printed_page_by_page(page, qtbot, session, tmp_path):
    from PySide6.QtPrintSupport import QPrinter

    printer = printer_for(page.preview.page, "x")
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "x.pdf"))
    page.which.setCurrentIndex(1)
    said = []
    page.said.connect(said.append)
    page.actions_of.print_on(printer)
    wait(qtbot, page)
    import pypdfium2

    with pypdfium2.PdfDocument(tmp_path / "x.pdf") as document:
        assert len(document) == len(session.job.openings)
    assert said[-1] == "Printed."


def test_printing_stopped_says_so(page, qtbot, tmp_path, monkeypatch):
    from PySide6.QtPrintSupport import QPrinter

    monkeypatch.setattr(runner, "FIRST", 0.0)
    printer = printer_for(page.preview.page, "x")
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "x.pdf"))
    page.which.setCurrentIndex(1)
    said = []
    page.said.connect(said.append)
    page.actions_of.print_on(printer)
    page.progress.cancel.click()
    wait(qtbot, page)
    assert said[-1] == "Stopped."


@pytest.mark.parametrize("which", [0, 1])
def test_the_platforms_preview_is_given_the_sheets(page, qtbot, session, monkeypatch, which):
    shown = []
    monkeypatch.setattr(
        "configurator.ui.sheets.printing.show_preview", lambda _, pages, __: shown.append(pages)
    )
    page.which.setCurrentIndex(which)
    page.buttons["preview"].click()
    qtbot.waitUntil(lambda: bool(shown))
    assert len(shown[0]) == (1, len(session.job.openings))[which]


def test_a_preview_of_very_many_ends_and_says_so(page, session, monkeypatch, qtbot):
    monkeypatch.setattr("configurator.ui.sheets.page.MOST_PREVIEWED", 3)
    monkeypatch.setattr("configurator.ui.sheets.printing.show_preview", lambda *_: None)
    page.which.setCurrentIndex(1)
    page.buttons["preview"].click()
    wait(qtbot, page)
    assert "ends after 3 sheets" in page.panel.text.toPlainText()


def test_every_action_has_its_button(page):
    assert [name for name, *_ in page.actions_of.offered()] == list(page.buttons)
