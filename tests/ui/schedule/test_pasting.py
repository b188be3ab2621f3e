import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.model import Opening
from configurator.ui.kit.table import as_text
from configurator.ui.schedule.columns import COLUMNS, PLACES, Column
from configurator.ui.schedule.pasting import Target, read_pasted
from configurator.units import Display
from tests.sweeps import examples

HEADS = [column.title for column in COLUMNS]


def opening(mark, **more):
    return Opening.model_validate({"mark": mark, "size": "3070", "hand": "RH", **more})


OPENINGS = (opening("101", location="Hall"), opening("102"), opening("103", quantity=2))


def read(text, column="mark", shown=(0, 1, 2), display=Display(), openings=OPENINGS):  # noqa: B008 - frozen
    return read_pasted(text, Target(openings, shown, PLACES[column], display))


def said(pasted):
    return [(change.place, dict(change.values), change.name) for change in pasted.changes]


def test_a_mark_with_a_space_beside_it_is_still_that_mark():
    spaced = (opening(" 7 "), opening("8"))
    pasted = read("mark\thand\n 7 \tLH\n 8\tLH", openings=spaced)
    assert [(change.place, dict(change.values)) for change in pasted.changes] == [
        (0, {"hand": "LH"}),
        (1, {"hand": "LH"}),
    ]


def test_heads_say_which_column_is_which():
    pasted = read("Hand\tmark\nLH\t102\n")
    assert said(pasted) == [(1, {"hand": "LH"}, "row 2")]
    assert pasted.refusals == []


def test_an_unknown_mark_is_a_new_opening():
    pasted = read("mark\tSize\tLocation\tHand\n201\t3068\tGalley\t\n")
    values = {"mark": "201", "size": {"width": 36.0, "height": 80.0}, "location": "Galley"}
    assert said(pasted) == [(None, values, "row 2")]


def test_without_heads_columns_go_on_from_the_current_one_and_rows_from_the_current_row():
    pasted = read("4\tLH\n5\tRHR", column="quantity", shown=(2, 0))
    assert said(pasted) == [
        (2, {"quantity": 4, "hand": "LH"}, "row 1"),
        (0, {"quantity": 5, "hand": "RHR"}, "row 2"),
    ]


def test_without_heads_from_the_first_column_rows_are_known_by_their_marks():
    assert said(read("103\tGalley", shown=(0,))) == [(2, {"location": "Galley"}, "row 1")]


def test_a_cell_is_emptied_by_an_empty_one_and_one_that_says_what_holds_is_no_change():
    assert said(read("mark\tlocation\tleaves\n101\t\tsingle")) == [(0, {"location": None}, "row 2")]
    assert said(read("mark\tlocation\n101\tHall")) == []


def test_each_refused_cell_is_named_by_row_column_and_reason():
    pasted = read("mark\tquantity\tsize\n101\ttwo\t3070\n102\t2\twide\n\t3\t3070\n101\t2\t3070")
    assert pasted.refusals == [
        "row 2, quantity: “two” is not a whole number.",
        "row 3, opening size: “wide” is not an opening size. Write width and then height, as 3-0 x 7-0.",
        "row 4, mark: a mark is missing",
        "row 5, mark: “101” stands twice in what was pasted",
    ]


def test_rows_past_the_last_one_shown_are_refused():
    pasted = read("LH\nLH", column="hand", shown=(2,))
    assert pasted.refusals == ["row 2: no opening stands there; with a column of marks, rows add openings"]


def test_more_cells_than_columns_are_refused_unless_they_are_empty():
    assert read("a\tb\n", column="remarks").refusals == ["row 1: 2 cells, and only 1 column to take them"]
    assert read("a\t\n", column="remarks").refusals == []


def test_what_is_worked_out_and_unknown_columns_are_named_as_not_read():
    pasted = read("Mark\tHinges\tFire label\tLocation\n101\t3 x 5\t90 min\tGalley")
    assert said(pasted) == [(0, {"location": "Galley"}, "row 2")]
    assert pasted.not_read == ["Fire label", "Hinges"]


def test_one_row_that_happens_to_hold_a_head_is_not_a_row_of_heads():
    assert said(read("101\tHand")) == [(0, {"location": "Hand"}, "row 1")]


@pytest.mark.parametrize(
    ("text", "why"),
    [("", "nothing to paste"), ("\n\n\t\n", "nothing to paste"), ("mark\thand\n", "only a row of heads")],
)
def test_nothing_to_paste_is_said(text, why):
    assert why in read(text).refusals[0]


def test_quotation_marks_that_quote_nothing_do_not_swallow_rows():
    pasted = read('mark\tlocation\n101\t"rough\n102\tHall')
    assert [change.values["location"] for change in pasted.changes] == ['"rough', "Hall"]
    assert said(read("mark\tsize\n102\t3'-0\" x 6'-8\""))[0][1]["size"] == {"width": 36.0, "height": 80.0}


def test_breaks_and_tabs_inside_quotes_stay_in_their_cell():
    pasted = read('mark\tquestions\r\n101\t"Which ""lock""?\r\n\tAnd when?"\r\n102\tWhy?\r\n')
    assert pasted.changes[0].values == {"questions": 'Which "lock"?\n\tAnd when?'}
    assert pasted.changes[1].name == "row 3"


def test_hostile_text_is_refused_or_read_but_never_breaks():
    for text in ("\x00\x01", "mark\thand\n" + "x" * 200_000 + "\tLH", '"', "\t" * 5000, "=1+1\t@x"):
        read(text)
    assert csv.field_size_limit() == 131072


def test_lengths_follow_the_units_on_show_and_a_rounded_copy_is_no_change():
    metric = Display(metric=True)
    column = COLUMNS[PLACES["size"]]
    assert isinstance(column, Column)
    shown = column.text(OPENINGS[:1], metric)
    assert said(read(f"mark\tsize\n101\t{shown}", display=metric)) == []
    found = said(read("mark\tsize\n101\t915 x 2134", display=metric))[0][1]["size"]
    assert found["width"] == pytest.approx(915 / 25.4)


def test_a_cell_that_would_run_as_a_formula_does_not_and_comes_back_the_same():
    text = as_text([["=1+1", "@x"], ["+cmd", "-5"]], ["Mark", "Location"])
    rows = list(csv.reader(io.StringIO(text), "excel-tab"))
    assert all(cell[0] == "'" for row in rows[1:] for cell in row)
    pasted = read(text)
    assert [change.values["mark"] for change in pasted.changes] == ["=1+1", "+cmd"]
    assert [change.values["location"] for change in pasted.changes] == ["@x", "-5"]


CELLS = st.text(st.characters(codec="utf-8", exclude_characters="\x00\r"), min_size=1, max_size=12).filter(
    lambda text: text.strip() == text
)


@examples(30)
@given(st.lists(st.tuples(CELLS, CELLS), min_size=1, max_size=4, unique_by=lambda row: row[0]))
def test_any_cells_come_back_the_same_through_the_clipboard(rows):
    pasted = read(as_text([list(row) for row in rows], ["Mark", "Location"]), openings=())
    assert pasted.refusals == []
    assert [(c.values["mark"], c.values["location"]) for c in pasted.changes] == rows


def test_columns_that_are_not_shown_take_nothing_without_heads():
    target = Target(OPENINGS, (0,), PLACES["location"], Display(), frozenset({"level", "quantity"}))
    assert dict(read_pasted("Store\tRH", target).changes[0].values) == {"location": "Store"}
    assert dict(read_pasted("mark\tlevel\n101\t2", target).changes[0].values) == {"level": "2"}
