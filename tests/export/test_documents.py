"""Orders and schedules as CSV, XLSX and PDF: typed, safe from formulas, the same bytes every time."""

import csv
import io
import re
import zipfile
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import load_workbook
from reportlab.platypus import Paragraph

from configurator.documents.document import Column, Document, Table
from configurator.documents.hardware_schedule import schedule_document
from configurator.documents.order import order_document
from configurator.export import table_pdf
from configurator.export.document import csv_bytes, read_csv, write_document
from configurator.export.plain_text import document_text
from configurator.export.table_pdf import pdf_bytes
from configurator.export.table_xlsx import read_xlsx, xlsx_bytes
from configurator.model import JobFacts
from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from configurator.project_file import load
from configurator.resource_files import resource_path
from tests.sweeps import examples

COLUMNS = (
    Column("mark", "Mark"),
    Column("hinges", "Hinges", "count", 6),
    Column("width", "Width", "inches", 6),
    Column("amount", "Amount", "money", 8),
    Column("fire", "Fire", "flag", 5),
)
ROW = ("112A", 3, 4.5, Decimal("12.50"), True)
DANGEROUS = [
    "=1+1",
    "@x",
    "+cmd",
    "-2+3",
    "\t=1",
    "'=1",
    "a;=1+1",
    "#N/A",
    '=HYPERLINK("x")',
    " =1",
    "＝1",
    "_x0041_",
]
ANY_TEXT = st.text(
    st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"], exclude_characters="\ufffe\uffff")
)


def document(*rows, heading=(), notes=("They agree.",)):
    table = Table("Order", COLUMNS, rows or (ROW,))
    return Document("Hinge order", heading, (table,), (table,), notes)


def marks(*texts):
    return document(*((text, 3, 4.5, Decimal(1), False) for text in texts))


def test_csv_is_what_the_standard_library_reads():
    data = csv_bytes(document(ROW, ('a "b", c\nd', -3, 4.0, None, False)).data[0])
    assert data.startswith(b'"Mark","Hinges","Width, in","Amount","Fire"\r\n"112A",3,4.5,12.50,"yes"\r\n')
    rows = list(csv.reader(io.StringIO(data.decode(), newline="")))
    assert rows[2] == ['a "b", c\nd', "-3", "4", "", "no"]


def test_csv_lines_end_in_cr_lf_and_have_as_many_cells_each():
    data = csv_bytes(marks("x", "y").data[0])
    assert data.endswith(b"\r\n")
    assert data.count(b"\r\n") == data.count(b"\n") == 3
    assert {len(row) for row in read_csv(data)} == {len(COLUMNS)}


@pytest.mark.parametrize("text", DANGEROUS)
def test_no_text_of_a_csv_runs_and_all_comes_back(text):
    data = csv_bytes(marks(text).data[0])
    cell = list(csv.reader(io.StringIO(data.decode(), newline="")))[1][0]
    assert not cell.lstrip().startswith(("=", "+", "-", "@", "＝"))
    assert read_csv(data)[1][0] == text


@examples(30)
@given(st.lists(ANY_TEXT, min_size=1, max_size=5))
def test_every_text_comes_back_from_a_csv(texts):
    assert [row[0] for row in read_csv(csv_bytes(marks(*texts).data[0]))[1:]] == texts


@pytest.mark.parametrize(("data", "words"), [(b"\xff\xfe", "not text"), (b'"a', "not CSV")])
def test_what_is_no_csv_is_refused_in_words(data, words):
    with pytest.raises(ValueError, match=words):
        read_csv(data)


def sheet_of(given):
    return load_workbook(io.BytesIO(xlsx_bytes(given))).worksheets[0]


FIRST = 3
"""The row of the headings, under what the document is and an empty row."""


def test_no_noise_of_the_machine_is_written():
    noisy = document(("112A", 3, 0.1 + 0.2, Decimal(1), True), ("113A", 3, 36 - 1e-11, Decimal(1), True))
    assert [row[2] for row in read_csv(csv_bytes(noisy.data[0]))[1:]] == ["0.3", "36"]
    assert [cell.value for cell in sheet_of(noisy)["C"][FIRST:]] == [0.3, 36]


def test_totals_stand_at_the_end_apart_from_the_rows_that_are_sorted():
    table = Table("Order", COLUMNS, (ROW,), (("in all", 3, None, Decimal("12.50"), None),))
    whole = Document("Hinge order", (), (table,), (table,), ())
    assert read_csv(csv_bytes(table))[-1] == ["in all", "3", "", "12.50", ""]
    sheet = sheet_of(whole)
    assert [cell.value for cell in sheet[FIRST + 2]] == ["in all", 3, None, 12.5, None]
    assert sheet["A5"].font.bold
    assert sheet.auto_filter.ref == "A3:E4"
    assert "in all" in document_text(whole)


def test_xlsx_cells_are_typed():
    sheet = sheet_of(document())
    assert [cell.data_type for cell in sheet[FIRST + 1]] == ["s", "n", "n", "n", "b"]
    assert [cell.value for cell in sheet[FIRST + 1]] == ["112A", 3, 4.5, 12.5, True]
    assert sheet["D4"].number_format == "#,##0.00##"


def test_headings_are_words_and_the_job_stands_over_them():
    for job in ("kestrel_point.json", "pairs_and_dutch.json"):
        tallies = tally_job(load(resource_path("demo_openings", job)))
        facts = JobFacts(name="Kestrel Point Ferry Terminal")
        for whole in (order_document(take_off(tallies, facts)), schedule_document(tallies, facts)):
            book = load_workbook(io.BytesIO(xlsx_bytes(whole)))
            for table, sheet in zip(whole.workbook, book.worksheets, strict=True):
                assert [[cell.value for cell in row[:2]] for row in sheet.iter_rows(1, 2)] == [
                    ["Document", whole.title], ["Job", "Kestrel Point Ferry Terminal"],
                ]  # fmt: skip
                heads = [cell.value for cell in sheet[len(whole.lead) + 2] if cell.value is not None]
                assert heads == [column.heading for column in table.columns]
                assert not [head for head in heads if "_" in head or head[:1].islower()]
            rows = read_csv(csv_bytes(whole.data[0], whole.lead))
            assert rows[len(whole.lead) + 1] == [column.heading for column in whole.data[0].columns]


@pytest.mark.parametrize("text", DANGEROUS)
def test_no_text_of_a_workbook_is_a_formula_and_all_comes_back(text):
    sheet = sheet_of(marks(text))
    assert sheet["A4"].data_type == "s"
    assert sheet["A4"].value == text
    assert sheet["A4"].quotePrefix == (text not in ("a;=1+1", "#N/A", "_x0041_"))
    assert read_xlsx(xlsx_bytes(marks(text)))[FIRST] == [text, "3", "4.5", "1", "no"]


@examples(25)
@given(st.lists(ANY_TEXT.filter(bool), min_size=1, max_size=4))
def test_every_text_comes_back_from_a_workbook(texts):
    assert [row[0] for row in read_xlsx(xlsx_bytes(marks(*texts)))[FIRST:]] == texts


def test_a_workbook_is_set_up_to_be_printed():
    sheet = sheet_of(document(heading=(("Job", "Doors & frames"),)))
    assert sheet.freeze_panes == "A5"
    assert sheet.print_title_rows == "$4:$4"
    assert (sheet.page_setup.orientation, sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (
        "landscape", 1, 0,
    )  # fmt: skip
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert sheet.oddFooter.right.text == "Page &P of &N"
    assert sheet.oddHeader.left.text == "Doors && frames"
    assert sheet.auto_filter.ref == "A4:E5"


def test_a_sheet_of_many_columns_goes_over_several_pages_with_the_first_column_on_each():
    wide = Table("Lines", tuple(Column(f"c{n}", "C", "text", 20) for n in range(10)), (("x",) * 10,))
    sheet = sheet_of(Document("Order", (), (wide,), (wide,), ()))
    assert sheet.page_setup.fitToWidth == 2
    assert sheet.print_title_cols == "$A:$A"


def test_a_text_too_long_for_a_cell_is_refused_and_not_cut_short():
    assert len(read_xlsx(xlsx_bytes(marks("x" * 32_767)))[FIRST][0]) == 32_767
    with pytest.raises(ValueError, match="32,768 characters"):
        xlsx_bytes(marks("x" * 32_768))


def test_what_is_no_workbook_is_refused_in_words():
    with pytest.raises(ValueError, match="not an XLSX workbook"):
        read_xlsx(b"PK no")
    empty = io.BytesIO()
    with zipfile.ZipFile(empty, "w") as archive:
        archive.writestr("a", "b")
    with pytest.raises(ValueError, match="not an XLSX workbook"):
        read_xlsx(empty.getvalue())


def pages(data):
    return int(re.search(rb"/Count (\d+)", data)[1])


def test_pdf_pages_are_counted_and_numbered(monkeypatch):
    said = []
    monkeypatch.setattr(table_pdf, "_foot", lambda _, job, number, of: said.append((job, number, of)))
    assert pages(pdf_bytes(document(heading=(("Job", "Terminal"),)))) == 1
    assert pages(pdf_bytes(document(*(ROW,) * 200))) == 5
    assert said == [("Terminal", 1, 1)] + [("no job name given", number, 5) for number in range(1, 6)]


def test_every_page_of_a_pdf_begins_with_the_header(monkeypatch):
    drawn = []
    draw = Paragraph.draw
    monkeypatch.setattr(Paragraph, "draw", lambda self: (drawn.append(self.style.name), draw(self)))
    assert pages(pdf_bytes(document(*(ROW,) * 200))) == 5
    assert (drawn.count("head"), drawn.count("number head")) == (5 * 2, 5 * 3)


def test_a_row_longer_than_a_page_goes_on_to_the_next():
    assert pages(pdf_bytes(marks("word " * 3000))) > 1


def test_signs_of_markup_and_other_alphabets_are_letters_in_a_pdf():
    assert pages(pdf_bytes(marks("<b>&amp; Ω ж \n two lines", "日本"))) == 1


def test_a_pdf_names_no_face_that_it_does_not_embed():
    assert b"Helvetica" not in pdf_bytes(document())


@pytest.mark.parametrize("make", [xlsx_bytes, pdf_bytes], ids=["xlsx", "pdf"])
def test_the_same_document_is_the_same_bytes(make):
    assert make(document(ROW, ROW)) == make(document(ROW, ROW))


def test_a_document_is_written_by_its_ending(tmp_path):
    for name, start in (("a.csv", b'"Document"'), ("a.XLSX", b"PK"), ("a.pdf", b"%PDF")):
        write_document(document(), tmp_path / name)
        assert (tmp_path / name).read_bytes().startswith(start)
    with pytest.raises(ValueError, match=r"ends in \.csv, \.xlsx, \.pdf"):
        write_document(document(), tmp_path / "a.doc")


def test_wide_columns_of_a_table_too_wide_for_a_terminal_stand_under_their_row():
    columns = (Column("mark", "Mark"), Column("why", "Why", "text", 60), Column("how", "How", "text", 60))
    wide = Table("Order", columns, (("112A", "because " * 9, None), ("113A", None, "so " * 20)))
    lines = document_text(Document("Order", (), (wide,), (wide,), ())).splitlines()
    assert lines[5:7] == ["Mark", "112A"]
    assert lines[7].startswith("        why: because")
    assert lines[8:10] == ["113A", "        how: " + ("so " * 20).strip()]


def test_a_row_of_a_workbook_is_as_high_as_its_text_and_never_higher_than_can_be():
    sheet = sheet_of(marks("x", "y" * 45, "z" * 30_000))
    assert [sheet.row_dimensions[row].height for row in (4, 5, 6)] == [15, 75, 409]


def test_a_long_job_name_goes_on_several_lines_in_a_terminal():
    text = document_text(document(heading=(("Job", "a long name " * 40),)))
    assert max(map(len, text.splitlines())) <= 110


def test_text_for_a_terminal_keeps_every_cell_whole():
    text = document_text(document(("a mark that goes on and on " * 8, 3, 4.5, Decimal("1234.50"), True)))
    assert max(map(len, text.splitlines())) <= 110
    assert "1,234.50" in text
    assert text.split().count("mark") == 8
    assert text.endswith("They agree.\n")
