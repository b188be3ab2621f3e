import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.cells import shield
from configurator.intake.sheet import MOST_COLUMNS, IntakeError
from configurator.intake.text_file import text_steps
from configurator.long_work import run


def rows(data, name="doors.csv"):
    return [(row.line, row.cells) for row in run(text_steps(data, name)).rows]


def refusal(data):
    with pytest.raises(IntakeError) as error:
        rows(data)
    return str(error.value)


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_what_stands_between_the_cells_is_found_out(delimiter):
    text = "Mark,Size,Remarks\r\n1,3070,a\r\n2,3070,b\r\n".replace(",", delimiter)
    assert rows(text.encode()) == [
        (1, ("Mark", "Size", "Remarks")),
        (2, ("1", "3070", "a")),
        (3, ("2", "3070", "b")),
    ]


def test_commas_inside_words_do_not_hide_the_semicolons():
    assert rows(b"Mark;Room\n1;Mess, galley\n2;Hall, stair\n")[1] == (2, ("1", "Mess, galley"))


def test_a_first_line_may_say_what_stands_between():
    assert rows(b"sep=;\nMark;Room\n1;a,b,c\n") == [(2, ("Mark", "Room")), (3, ("1", "a,b,c"))]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_letters_of_every_usual_kind_arrive(encoding):
    assert rows("Mark,Room\n1,Café ½\n".encode(encoding))[1] == (2, ("1", "Café ½"))


def test_letters_of_windows_are_told():
    assert run(text_steps("Mark,Room\n1,Café\n".encode("cp1252"), "a.csv")).told
    assert not run(text_steps("Mark,Room\n1,Café\n".encode(), "a.csv")).told


def test_lines_are_counted_as_people_count_them():
    text = 'Mark,Remarks\n1,"two\r\nlines"\n\n , \n2,x\n'
    assert rows(text.encode()) == [(1, ("Mark", "Remarks")), (2, ("1", "two\nlines")), (6, ("2", "x"))]


def test_an_inch_mark_needs_no_quoting():
    assert rows(b"Mark,Size\n1,3'-0\" x 7'-0\"\n")[1] == (2, ("1", "3'-0\" x 7'-0\""))
    assert rows(b'Mark,Size\n1,"3\'-0"" x 7\'-0"""\n')[1] == (2, ("1", "3'-0\" x 7'-0\""))


def test_a_quotation_mark_left_open_is_named_by_its_line():
    said = refusal(b'Mark,Remarks\n1,a\n2,"never closed\n3,b\n4,c\n')
    assert "line 3" in said
    assert "never closed" in said


@pytest.mark.parametrize(
    "data",
    [
        b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 4,
        b"Mark,Size\n1,\x003070\n",
        b"\x7fELF\x01\x02\x03\x04\x05" * 9,
    ],
)
def test_what_is_no_text_is_refused(data):
    assert "not text" in refusal(data)


def test_a_row_may_be_as_wide_as_allowed_and_no_wider():
    wide = ",".join(["x"] * MOST_COLUMNS)
    assert len(rows(f"{wide}\n{wide}\n".encode())[1][1]) == MOST_COLUMNS
    assert f"{MOST_COLUMNS + 1} columns" in refusal(f"{wide},x\n".encode())
    assert "100,000 columns" in refusal(b",".join([b"x"] * 100_000))


def test_blank_cells_at_the_end_make_a_row_no_wider():
    assert rows(b"Mark,Size" + b"," * 100_000 + b"\n1,3070\n")[0] == (1, ("Mark", "Size"))


def test_a_cell_that_never_ends_is_refused_by_its_line():
    said = refusal(b"Mark,Remarks\n1," + b"x" * 200_000)
    assert "line 2" in said
    assert "131,072" in said


@given(st.lists(st.lists(st.text(max_size=12), min_size=2, max_size=4), min_size=1, max_size=5))
def test_every_text_written_so_that_no_formula_runs_comes_back(cells):
    """RFC 4180 by the standard library's writer, all quoted: what reads it is ours, line ends apart."""
    cells = [[c.replace("\r\n", "\n").replace("\r", "\n").replace("\x00", "") for c in row] for row in cells]
    cells = [[*row, "end"] for row in cells]
    written = io.StringIO(newline="")
    csv.writer(written, quoting=csv.QUOTE_ALL).writerows([shield(c) for c in row] for row in cells)
    try:
        data = written.getvalue().encode()
        back = [list(found) for _, found in rows(data)]
    except (UnicodeEncodeError, IntakeError):
        return  # lone surrogates and control characters are no text
    assert back == cells
