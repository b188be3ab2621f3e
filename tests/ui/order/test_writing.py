"""What is written from the order page."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog

from configurator.export import document as documents
from configurator.ui.order.page import OrderPage
from configurator.ui.order.writing import KINDS, ask_file
from tests.order.cases import table_of

PRICES = Path(__file__).resolve().parents[3] / "demo_openings" / "kestrel_point_prices.csv"


@pytest.fixture
def page(qtbot, session):
    page = OrderPage(session)
    qtbot.addWidget(page)
    session.changed.connect(page.show_state)
    page.show_state("open")
    qtbot.waitUntil(lambda: page.counted is not None)
    return page


def write(qtbot, page, kind, path):
    with qtbot.waitSignal(page.beside.ended):
        page.write(kind, path)
    return page.panel.heading.text()


@pytest.mark.parametrize("ending", [".csv", ".xlsx", ".pdf"])
@pytest.mark.parametrize("kind", ["order", "supplier", "receiving", "doors", "hardware", "submittal"])
def test_every_document_is_written_in_every_format(qtbot, page, tmp_path, kind, ending):
    path = tmp_path / f"{kind}{ending}"
    assert write(qtbot, page, kind, path) == f"Written: {path}"
    assert (
        path.read_bytes()[:2]
        == {".csv": b'"' + path.read_bytes()[1:2], ".xlsx": b"PK", ".pdf": b"%P"}[ending]
    )


def test_the_order_has_the_allowance_and_what_was_asked(qtbot, page, tmp_path):
    page.set_spare("1")
    with qtbot.waitSignal(page.beside.ended):
        page.uniform.ask.click()
    write(qtbot, page, "order", tmp_path / "order.csv")
    rows = table_of(tmp_path / "order.csv")
    assert [row["Spare"] for row in rows] == ["1"] * 6 + [""] * 2 + ["6"]
    write(qtbot, page, "order", tmp_path / "order.xlsx")
    from openpyxl import load_workbook

    found = [row[1].value for row in load_workbook(tmp_path / "order.xlsx")["Findings"].iter_rows()]
    assert "one width would do" in found


def test_a_field_sheet_needs_no_count(qtbot, page, tmp_path):
    page.counted = None
    path = tmp_path / "field.pdf"
    assert write(qtbot, page, "field", path) == f"Written: {path}"
    page.write("order", tmp_path / "order.pdf")
    assert page.panel.heading.text().startswith("order.pdf was not written: not all")


def test_the_menu_asks_for_a_file_and_gives_it_its_ending(qtbot, page, tmp_path, monkeypatch):
    asked = []

    def answer(_, title, start, filters):
        asked.append((title, start.rpartition("/")[2], filters))
        return str(tmp_path / "mine"), filters.split(";;")[-1]

    monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
    for kind, ending in (("doors", ".csv"), ("field", ".pdf")):
        with qtbot.waitSignal(page.beside.ended):
            page.top.entries[kind].trigger()
        assert (tmp_path / f"mine{ending}").exists()
    assert asked[0][:2] == ("Write the door schedule", "kestrel_point door schedule.xlsx")
    assert asked[1] == ("Write the field sheet", "kestrel_point field sheet.pdf", "PDF pages (*.pdf)")
    assert not page.top.entries["changes"].isEnabled()
    assert list(page.top.entries) == [kind for kind, _ in KINDS]


def test_no_file_chosen_writes_nothing(page, monkeypatch):
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("", ""))
    page.top.entries["order"].trigger()
    assert not page.beside.running


def test_changes_are_written_once_an_order_is_frozen(qtbot, page, tmp_path):
    with qtbot.waitSignal(page.beside.ended):
        page.freeze("", mark_them=False)
    page.session.edit("quantity", 4)
    assert page.top.entries["changes"].isEnabled()
    write(qtbot, page, "changes", tmp_path / "changes.csv")
    (row,) = table_of(tmp_path / "changes.csv")
    assert list(row.values())[:4] == ["9", "0", "6", "15"]


def test_a_file_that_cannot_be_written_says_why(qtbot, page, tmp_path):
    folder = tmp_path / "no" / "such"
    said = write(qtbot, page, "order", folder / "order.csv")
    assert said == "order.csv was not written: No such file or directory."


def test_writing_is_stopped_and_the_file_before_stays(qtbot, page, tmp_path, monkeypatch):
    path = tmp_path / "order.xlsx"
    path.write_bytes(b"before")
    write_document = documents.write_document

    def slowly(document, target, progress):
        def watched(done, total):
            while True:
                progress(done, total)

        write_document(document, target, watched)

    monkeypatch.setattr(documents, "write_document", slowly)
    page.show()
    page.write("order", path)
    assert page.beside_line.isVisible()
    page.write("doors", tmp_path / "doors.csv")
    assert page.panel.heading.text().startswith("doors.csv was not written. Writing order.xlsx is under way")
    with qtbot.waitSignal(page.beside.ended):
        page.beside_line.cancel.click()
    assert not page.beside_line.isVisible()
    assert page.panel.heading.text() == "Stopped. order.xlsx was not written."
    assert path.read_bytes() == b"before"
    assert [one.name for one in tmp_path.iterdir() if "xlsx" in one.name or "doors" in one.name] == [
        "order.xlsx"
    ]


def test_a_file_that_nobody_was_asked_about_is_not_replaced(page, tmp_path, monkeypatch):
    (tmp_path / "order.xlsx").write_bytes(b"before")
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "order"), "XLSX workbook (*.xlsx)")
    )
    page.top.entries["order"].trigger()
    assert not page.beside.running
    assert page.panel.heading.text().startswith("order.xlsx is there already")
    assert (tmp_path / "order.xlsx").read_bytes() == b"before"


def test_the_job_itself_is_not_written_over(tmp_path, monkeypatch, qapp):
    job = tmp_path / "job.csv"
    job.write_bytes(b"before")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(job), "CSV table (*.csv)"))
    with pytest.raises(FileExistsError, match=r"job\.csv is the job itself"):
        ask_file(None, "order", job)


@pytest.mark.parametrize(
    ("kind", "chosen", "used", "written"),
    [
        ("field", "a.xlsx", "PDF pages (*.pdf)", "a.xlsx.pdf"),
        ("order", "a.PDF", "CSV table (*.csv)", "a.PDF"),
        ("order", "a.b", "CSV table (*.csv)", "a.b.csv"),
        ("order", "a", "", "a.xlsx"),
    ],
)
def test_the_ending_is_one_that_can_be_written(
    qtbot, page, tmp_path, monkeypatch, kind, chosen, used, written
):
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / chosen), used))
    with qtbot.waitSignal(page.beside.ended):
        page.top.entries[kind].trigger()
    assert page.panel.heading.text() == f"Written: {tmp_path / written}"
    assert (tmp_path / written).exists()


def test_a_revision_that_cannot_be_read_stops_its_changes_only(qtbot, page, tmp_path):
    with qtbot.waitSignal(page.beside.ended):
        page.freeze("", mark_them=False)
    job = page.session.job
    (revision,) = job.revisions
    broken = revision.lines[0].model_copy(update={"screws": {"machine": "many"}})
    wrong = revision.model_copy(update={"lines": (broken, *revision.lines[1:])})
    page.session.take_job(job.model_copy(update={"revisions": (wrong,)}), "break it")
    page.tabs.setCurrentWidget(page.revisions)
    assert page.revisions.words.text().startswith("This revision cannot be read: screws")
    assert write(qtbot, page, "order", tmp_path / "order.csv").startswith("Written")
    assert "changes.csv was not written" in write(qtbot, page, "changes", tmp_path / "changes.csv")
    assert not (tmp_path / "changes.csv").exists()


def test_a_submittal_has_no_prices(qtbot, page, tmp_path):
    page.desk.take_prices(page.session.path.parent / "kestrel_point_prices.csv")
    page.drop_prices()
    write(qtbot, page, "submittal", tmp_path / "without.csv")
    page.use_prices(page.session.path.parent / "kestrel_point_prices.csv")
    write(qtbot, page, "submittal", tmp_path / "with.csv")
    assert (tmp_path / "with.csv").read_bytes() == (tmp_path / "without.csv").read_bytes()


@pytest.mark.parametrize("kind", ["labels", "floor labels"])
def test_labels_are_written_as_a_pdf(qtbot, page, tmp_path, kind):
    path = tmp_path / f"{kind}.pdf"
    assert write(qtbot, page, kind, path) == f"Written: {path}"
    assert path.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("kind", ["quote", "cost"])
def test_a_quote_is_written_once_it_has_prices_and_a_margin(qtbot, page, tmp_path, kind):
    page.use_prices(PRICES)
    page.edit_head("margin", "30")
    qtbot.waitUntil(lambda: page.counted is not None)
    path = tmp_path / f"{kind}.csv"
    assert write(qtbot, page, kind, path) == f"Written: {path}"
    (total,) = [row["Amount, invented units"] for row in table_of(path) if row["Hinge"] == ""]
    assert float(total) > float(page.counted.priced.total)
