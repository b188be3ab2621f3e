import pytest

from configurator.intake.columns import chosen, columns_told, reading_of, units_told
from configurator.intake.fields import FIELDS, fields_named, height_first, unit_named
from configurator.intake.sheet import IntakeError
from configurator.intake.table import corrected
from tests.intake.reading import sheet, table
from tests.intake.reading import table as read_table


def fields(*rows):
    return [column.field for column in reading_of(table(*rows)).columns]


def test_usual_headings_are_known():
    header = [
        "Door No.",
        "Room Name",
        "Qty.",
        "W",
        "Ht",
        "Thk",
        "Hand",
        "Door Mat'l",
        "Frame",
        "Fire Rating",
        "Remarks",
    ]
    assert fields(header, ["1"]) == [
        "mark", "location", "quantity", "width", "height", "thickness", "hand", "door", "frame",
        "rating", "remarks",
    ]  # fmt: skip


def test_every_field_but_those_of_the_program_s_own_has_a_heading():
    named = {field for heading in FIELDS for field in fields_named(FIELDS[heading].title)}
    named |= {field for name in FIELDS for field in fields_named(name.replace("_", " "))}
    assert set(FIELDS) - named <= {
        "from_room", "to_room", "door_type", "frame_type", "wall", "keep", "layers", "along_wall",
    }  # fmt: skip


@pytest.mark.parametrize(
    "heading", ["DOOR #", "Door_No", "door no", "Door\nNo.", "  Mark: ", "OPENING NUMBER", "No."]
)
def test_a_heading_is_known_by_its_words(heading):
    assert fields_named(heading)[0] == "mark"


def test_door_is_the_mark_where_nothing_else_is_and_else_what_it_is_made_of():
    assert fields(["Door", "Width", "Height"], ["1"]) == ["mark", "width", "height"]
    assert fields(["Mark", "Door", "Width"], ["1"]) == ["mark", "door", "width"]


def test_the_header_is_found_below_title_lines():
    found = table(
        ["Kestrel Point"], ["Door schedule", "Rev. 2"], ["Mark", "Size", "Hand"], ["1", "3070", "LH"]
    )
    assert found.line == 3
    assert [row.line for row in found.rows] == [4]


def test_a_header_may_take_two_lines():
    found = table(
        ["Mark", "Room", "Door", "", "", "Frame", "", "Remarks"],
        ["", "", "Width", "Height", "Material", "Material", "Depth", ""],
        ["1", "Hall", "36", "84", "HM", "KD", "5-7/8", "x"],
    )
    assert [column.field for column in reading_of(found).columns] == [
        "mark", "location", "width", "height", "door", "frame", "jamb_depth", "remarks",
    ]  # fmt: skip
    assert [row.line for row in found.rows] == [3]
    assert found.titles()[6] == "Frame Depth"


def test_titles_totals_and_second_headers_are_passed_over_and_told():
    found = table(
        ["Mark", "Size", "Hand"], ["SECOND FLOOR"], ["1", "3070", "LH"], ["mark", "SIZE", "hand"],
        ["Total", "", "1"], ["2"],
    )  # fmt: skip
    assert [row.line for row in found.rows] == [3, 6]  # a mark alone is a door left unfinished
    assert [over.row.line for over in found.passed_over] == [2, 4, 5]


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ([], "nothing in it"),
        ([["Mark", "Size", "Hand"]], "no door under it"),
        ([["a"], ["c"]], "no header"),
        ([["Mark"], ["1"]], "no header"),
    ],
)
def test_what_has_no_doors_is_refused(rows, said):
    with pytest.raises(IntakeError, match=said):
        read_table(*rows) if rows else table(*sheet().rows)


def test_headings_nobody_knows_are_left_to_be_chosen():
    found = table(["a plan"], ["Ref", "Ho"], ["1", "84"])
    assert (found.line, found.titles()) == (2, ("Ref", "Ho"))
    assert reading_of(found).lacks()


@pytest.mark.parametrize(
    ("heading", "unit"),
    [("Width (mm)", "mm"), ("Width, in.", "in"), ("Width [inches]", "in"), ("Height ft-in", "ft-in"),
     ("Width", None), ("Hinge side", None), ("Thickness in millimetres", "mm")],
)  # fmt: skip
def test_a_heading_may_name_the_unit(heading, unit):
    assert unit_named(heading) == unit


def test_a_heading_with_a_unit_is_still_known():
    assert fields_named("Width (mm)") == ("width",)
    assert fields_named("Door Ht, in.") == ()
    assert fields_named("Ht, in.") == ("height",)


@pytest.mark.parametrize(
    ("heading", "first"),
    [("Size (H x W)", True), ("Height x Width", True), ("Size W x H", False), ("Size", False)],
)
def test_a_heading_may_say_that_the_height_comes_first(heading, first):
    assert height_first(heading) == first


def test_a_column_whose_words_are_others_is_not_read_and_that_is_told():
    found = table(["Mark", "Size", "Status"], ["1", "3070", "NEW"], ["2", "3070", "EXIST."])
    assert reading_of(found).columns[2].field is None
    assert columns_told(found, reading_of(found)) == (
        "Status: not read, for none of its words is known as status",
    )
    chosen_all_the_same = reading_of(found).with_field(2, "status")
    assert columns_told(found, chosen_all_the_same) == ()
    mixed = table(["Mark", "Size", "Status"], ["1", "3070", "NEW"], ["2", "3070", "approved"])
    assert reading_of(mixed).columns[2].field == "status"
    blank = table(["Mark", "Size", "Status"], ["1", "3070", "-"], ["2", "3070", ""])
    assert reading_of(blank).columns[2].field == "status"


def test_references_to_details_are_no_sizes():
    assert fields(["Mark", "Size", "Head", "Jamb", "Sill"], ["1"]) == [
        "mark", "size", "head_detail", "jamb_detail", "sill_detail",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("cells", "unit"),
    [(["915", "762"], "mm"), (["36", "30"], "in"), (["3", "2.5"], "ft-in"), (["3'-0\"", "2-6"], "in"),
     (["10"], "ft-in"), (["10.25"], "in"), (["199"], "in"), (["200"], "mm"), ([""], "in")],
)  # fmt: skip
def test_bare_numbers_show_their_unit(cells, unit):
    found = table(["Mark", "Width"], *([str(n), cell] for n, cell in enumerate(cells)))
    reading = reading_of(found)
    assert reading.columns[1].unit == unit
    assert bool(units_told(found, reading)) == (unit != "in")


def test_a_size_in_one_number_is_not_in_millimetres():
    assert reading_of(table(["Mark", "Size"], ["1", "3070"], ["2", "2868"])).columns[1].unit == "in"


def test_a_choice_takes_the_field_from_the_column_that_had_it():
    reading = reading_of(table(["Mark", "Width", "Clear", "Height"], ["1", "36", "33", "84"]))
    changed = chosen(reading, "Clear=width:mm")
    assert [column.field for column in changed.columns] == ["mark", None, "width", "height"]
    assert changed.columns[2].unit == "mm"
    assert chosen(reading, "mark=").lacks() == "no column is said to hold the marks"
    assert reading.lacks() == ""


def test_notes_may_be_in_several_columns():
    assert fields(["Mark", "Remarks", "Comments"], ["1", "a", "b"]) == ["mark", "remarks", "remarks"]


@pytest.mark.parametrize("choice", ["Clear", "Clear=depth", "Nothing=width", "Clear=width:m", "=width"])
def test_a_choice_that_cannot_be_is_refused(choice):
    with pytest.raises(IntakeError):
        chosen(reading_of(table(["Mark", "Width", "Clear"], ["1", "36", "33"])), choice)


def test_a_corrected_cell_is_read_so_and_told():
    before = table(["Mark", "Size", "Qty"], ["1", "3070", "one"], ["2"])
    after = corrected(corrected(before, 2, 2, "1"), 3, 1, "3070")
    assert [row.cells for row in after.rows] == [("1", "3070", "1"), ("2", "3070")]
    assert after.told[len(before.told) :] == (
        "line 2, Qty: corrected here from “one” to “1”",
        "line 3, Size: corrected here from blank to “3070”",
    )
    assert before.rows[0].cells == ("1", "3070", "one"), "the table read from the file stays"


def test_a_line_without_a_row_cannot_be_corrected():
    with pytest.raises(ValueError, match="9"):
        corrected(table(["Mark", "Size"], ["1", "3070"]), 9, 0, "x")
