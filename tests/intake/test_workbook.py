import io
import re
import zipfile
from datetime import datetime, time
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook, load_workbook
from openpyxl.comments import Comment

from configurator.intake.sheet import IntakeError, sheet_steps
from configurator.intake.workbook import LARGEST_UNPACKED, MOST_TEXTS, NOT_WORKED_OUT, _texts, workbook_steps
from configurator.long_work import run
from tests.sweeps import examples


def book(*rows, title="Doors", **cells):
    made = Workbook()
    made.active.title = title
    for row in rows:
        made.active.append(row)
    for place, value in cells.items():
        made.active[place] = value
    return made


def data_of(made):
    written = io.BytesIO()
    made.save(written)
    return written.getvalue()


SOUND = data_of(book(["Mark", "Size"], ["1", "3070"], ["2", 36.5]))


def rows(made, wanted=None):
    data = made if isinstance(made, bytes) else data_of(made)
    return [(row.line, row.cells) for row in run(workbook_steps(data, "doors.xlsx", wanted)).rows]


def refusal(data, wanted=None):
    with pytest.raises(IntakeError) as error:
        rows(data, wanted)
    return str(error.value)


def test_cells_arrive_as_the_texts_they_show():
    made = book(
        ["Mark", "Qty", "Width"], ["101A", 2, 36.5], [102, 3.0, None], [None, None, None], ["x", True, ""]
    )
    assert rows(made) == [
        (1, ("Mark", "Qty", "Width")),
        (2, ("101A", "2", "36.5")),
        (3, ("102", "3")),
        (5, ("x", "yes")),
    ]


def test_text_that_looks_like_a_formula_is_text():
    made = book(["Mark", "Room"])
    for place, text in (("A2", "=1+1"), ("A3", "@x"), ("A4", "+cmd")):
        made.active[place].value = text
        made.active[place].data_type = "s"
        made.active[place.replace("A", "B")] = "room"
    assert [cells[0] for _, cells in rows(made)] == ["Mark", "=1+1", "@x", "+cmd"]


def test_a_formula_nobody_worked_out_is_not_taken_for_blank():
    made = book(["Mark", "Width"], ["1", "=30+6"])
    assert rows(made)[1] == (2, ("1", NOT_WORKED_OUT))


def test_a_formula_that_was_worked_out_gives_its_value():
    data = data_of(book(["Mark", "Width"], ["1", "=30+6"]))
    worked_out = replaced(
        data,
        "xl/worksheets/sheet1.xml",
        lambda xml: xml.replace(b"<v></v>", b"<v>36</v>").replace(b"<v />", b"<v>36</v>"),
    )
    assert rows(worked_out)[1] == (2, ("1", "36"))


def replaced(data, name, change):
    written = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED) as new:
        for part in old.namelist():
            content = old.read(part)
            new.writestr(part, change(content) if part == name else content)
    return written.getvalue()


def test_a_size_that_became_a_date_shows_as_one():
    assert rows(book(["Mark", "Size"], ["1", datetime(2026, 3, 6)]))[1] == (2, ("1", "2026-03-06"))


def test_the_first_sheet_is_read_or_the_one_named():
    made = book(["Mark", "Size"], ["1", "3070"])
    made.create_sheet("Old").append(["Other", "sheet"])
    assert rows(made)[1] == (2, ("1", "3070"))
    assert rows(made, "old") == [(1, ("Other", "sheet"))]
    assert "it has Doors, Old" in refusal(data_of(made), "New")
    assert run(workbook_steps(data_of(made), "a.xlsx", None)).sheets == ("Doors", "Old")


def test_what_a_sheet_says_of_its_extent_is_not_believed():
    data = data_of(book(["Mark", "Size"], ["1", "3070"]))
    lying = replaced(
        data, "xl/worksheets/sheet1.xml", lambda xml: xml.replace(b'ref="A1:B2"', b'ref="A1:XFD1048576"')
    )
    assert lying != data
    assert rows(lying) == rows(data)


def test_rows_beyond_the_last_are_refused():
    data = data_of(book(["Mark", "Size"], ["1", "3070"]))
    far = replaced(data, "xl/worksheets/sheet1.xml", lambda xml: xml.replace(b'r="2"', b'r="99999999"'))
    assert "more rows than a workbook can have" in refusal(far)


def test_too_many_columns_are_refused():
    assert "16,384 columns" in refusal(data_of(book(["Mark", "Size"], XFD2="x")))


def test_blank_cells_at_the_far_right_are_passed_over_at_once():
    """Read to its width, each of these rows would have 16,384 cells."""
    data = data_of(book(["Mark", "Size"], *([str(number), "3070"] for number in range(3000))))
    rowed = re.compile(rb'(<row r="(\d+)".*?)(</row>)')
    far = replaced(data, "xl/worksheets/sheet1.xml", lambda xml: rowed.sub(rb'\1<c r="XFD\2" s="1"/>\3', xml))
    widths = {len(cells) for _, cells in rows(far)}
    assert far != data
    assert widths == {2}
    assert rows(far) == rows(data)


def with_texts(texts, name="xl/sharedStrings.xml"):
    """Return a workbook whose cells might share these texts."""
    written = io.BytesIO(
        replaced(
            SOUND,
            "[Content_Types].xml",
            lambda xml: xml.replace(
                b"</Types>",
                f'<Override PartName="/{name}" ContentType="application/vnd.openxmlformats-officedocument.'
                'spreadsheetml.sharedStrings+xml"/></Types>'.encode(),
            ),
        )
    )
    with zipfile.ZipFile(written, "a", zipfile.ZIP_DEFLATED, compresslevel=1) as parts:
        parts.writestr(name, texts)
    return written.getvalue()


def test_more_texts_than_a_schedule_has_are_counted_and_refused():
    many = b"<sst>" + b"<si><t>a</t></si>" * (MOST_TEXTS + 1) + b"</sst>"
    assert "more than 1,000,000 unlike texts" in refusal(with_texts(many))
    assert "more than 1,000,000 unlike texts" in refusal(with_texts(many, "xl/other.xml"))


@pytest.mark.parametrize("before", [0, 1, 2, 2**20 - 3, 2**20 - 1])
def test_texts_are_counted_across_the_pieces_they_are_read_in(before):
    texts = b"<sst>" + b" " * before + b"<si><t>a</t></si><si/><x:si></x:si>" * 3 + b"</sst>"
    with zipfile.ZipFile(io.BytesIO(with_texts(texts))) as parts:
        assert _texts(parts) == 9


def test_what_unpacks_to_too_much_is_not_opened():
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as parts:
        block = bytes(2**20)
        with parts.open("xl/worksheets/sheet1.xml", "w", force_zip64=True) as part:
            for _ in range(LARGEST_UNPACKED // 2**20 + 1):
                part.write(block)
    assert len(packed.getvalue()) < 4 * 2**20
    assert "unpacks to more" in refusal(packed.getvalue())


@pytest.mark.parametrize("cut", [30, 300, 3000])
def test_a_damaged_workbook_is_refused_in_a_sentence(cut):
    said = refusal(data_of(book(["Mark"]))[:-cut])
    assert said.startswith("doors.xlsx is not a workbook that can be read")


def test_a_zip_that_is_no_workbook_is_refused():
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as parts:
        parts.writestr("readme.txt", "no workbook")
    assert "not a workbook" in refusal(packed.getvalue())


def test_a_sheet_that_is_not_xml_is_refused():
    data = data_of(book(["Mark", "Size"], ["1", "3070"]))
    assert "not a workbook" in refusal(
        replaced(data, "xl/worksheets/sheet1.xml", lambda xml: xml[: len(xml) // 2])
    )


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("schedules")


def refused_or_read(act):
    """Return the sentence of a refusal, nothing where it was read; anything else is a mistake."""
    try:
        act()
    except IntakeError as error:
        return str(error)
    return ""


@examples(30)
@given(st.integers(0, 10_000), st.binary(min_size=1, max_size=40))
def test_bytes_changed_anywhere_give_rows_or_a_sentence(place, noise):
    data = bytearray(SOUND)
    place %= len(data)
    data[place : place + len(noise)] = noise
    said = refused_or_read(lambda: rows(bytes(data)))
    assert not said or said.startswith("doors.xlsx")


@examples(30)
@given(st.integers(0, 10_000), st.binary(min_size=1, max_size=12))
def test_a_sheet_changed_anywhere_gives_rows_or_a_sentence(place, noise):
    def change(xml):
        return xml[: place % len(xml)] + noise + xml[place % len(xml) + len(noise) :]

    said = refused_or_read(lambda: rows(replaced(SOUND, "xl/worksheets/sheet1.xml", change)))
    assert not said or said.startswith(("doors.xlsx", "line"))


@examples(40)
@given(st.binary(max_size=300))
def test_any_bytes_are_a_schedule_or_not_one(folder, data):
    path = folder / "any.csv"
    path.write_bytes(data)
    assert "\n" not in refused_or_read(lambda: run(sheet_steps(path)))


def test_times_and_line_ends_in_cells():
    made = book(
        ["Mark", "Remarks"], ["1", "two\r\nlines"], ["2", datetime(2026, 3, 6, 14, 30)], ["3", time(7, 30)]
    )
    assert [cells[1] for _, cells in rows(made)[1:]] == ["two\nlines", "2026-03-06 14:30:00", "07:30:00"]


def test_more_rows_than_a_job_has_room_for_are_refused(monkeypatch):
    monkeypatch.setattr("configurator.intake.sheet.MOST_ROWS", 3)
    three = book(["Mark", "Size"], ["1", "3070"], ["2", "3070"])
    assert len(rows(three)) == 3
    three.active.append(["3", "3070"])
    assert "more than 3 rows" in refusal(data_of(three))


def test_what_cannot_be_read_at_all_is_said(tmp_path, monkeypatch):
    with pytest.raises(IntakeError, match="is not a file"):
        run(sheet_steps(tmp_path))
    path = tmp_path / "doors.csv"
    path.write_text("Mark,Size\n1,3070\n")
    monkeypatch.setattr("configurator.intake.sheet.LARGEST_FILE", 10)
    with pytest.raises(IntakeError, match="is larger than"):
        run(sheet_steps(path))
    monkeypatch.undo()

    def fails(_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "read_bytes", fails)
    with pytest.raises(IntakeError, match="could not be read: permission denied"):
        run(sheet_steps(path))


def test_the_kind_of_file_is_told_by_what_is_in_it(tmp_path):
    named_csv = tmp_path / "doors.csv"
    named_csv.write_bytes(data_of(book(["Mark", "Size"], ["1", "3070"])))
    assert run(sheet_steps(named_csv)).rows[1].cells == ("1", "3070")
    named_xlsx = tmp_path / "doors.xlsx"
    named_xlsx.write_text("Mark,Size\n1,3070\n")
    assert run(sheet_steps(named_xlsx)).rows[1].cells == ("1", "3070")
    project = tmp_path / "job.csv"
    project.write_text('{\n  "format": "opening-project",\n  "version": 1}')
    with pytest.raises(IntakeError, match="open it instead"):
        run(sheet_steps(project))
    old = tmp_path / "doors.xls"
    old.write_bytes(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600))
    with pytest.raises(IntakeError, match="old kind or one with a password"):
        run(sheet_steps(old))


def test_the_test_workbooks_are_ones_others_read():
    assert load_workbook(io.BytesIO(data_of(book(["Mark"])))).active["A1"].value == "Mark"


def test_merged_cells_are_read_in_each_of_their_rows():
    made = book(["Mark", "Level", "Size"], ["1", "First", "3070"], ["2", None, "3070"], ["3", None, "3070"])
    made["Doors"].merge_cells("B2:B3")
    sheet = run(workbook_steps(data_of(made), "doors.xlsx", None))
    assert [row.cell(1) for row in sheet.rows] == ["Level", "First", "First", ""]
    assert "merged cells are read in each of their rows: B2:B3" in sheet.told


def test_a_sheet_that_is_hidden_is_not_the_schedule_and_none_is_told():
    made = book(["Mark", "Size", "Hand"], ["1", "3070", "LH"], title="Old")
    made["Old"].sheet_state = "hidden"
    sheet = made.create_sheet("New")
    for row in (["Mark", "Size", "Hand"], ["2", "3070", "LH"]):
        sheet.append(row)
    found = run(workbook_steps(data_of(made), "doors.xlsx", None))
    assert (found.name, found.rows[1].cells[0]) == ("New", "2")
    assert found.told == (
        "the sheet “New” is read, as it has the headings of a door schedule; the others are Old",
    )


def test_comments_beside_cells_are_named_as_not_read():
    made = book(["Mark", "Size"], ["1", "3070"])
    made["Doors"]["B2"].comment = Comment("verify in field", "architect")
    sheet = run(workbook_steps(data_of(made), "doors.xlsx", None))
    assert any("comments beside cells" in told for told in sheet.told)
