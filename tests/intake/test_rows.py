import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.intake.columns import reading_of
from configurator.intake.rows import rows_steps
from configurator.intake.saying import fates
from configurator.intake.sheet import IntakeError
from configurator.intake.table import schedule_table
from configurator.intake.words import says_nothing
from configurator.long_work import run
from configurator.model.paths import words_of
from tests.intake.reading import compared, read, reasons, sheet, values
from tests.sweeps import examples


@pytest.mark.parametrize(
    ("cell", "hand"),
    [
        ("LH", "LH"),
        ("l.h.", "LH"),
        ("left hand reverse", "LHR"),
        ("RHRB", "RHR"),
        ("Right", "RH"),
    ],
)
def test_hands(cell, hand):
    assert values("Hand", cell) == {"hand": hand}


@pytest.mark.parametrize(
    ("cell", "made_of"),
    [
        ("HM", "hollow metal, 18 gage"), ("16 ga. HM", "hollow metal, 16 gage"),
        ("hollow metal 14 gauge", "hollow metal, 14 gage"), ("WD", "wood, solid core"),
        ("Hollow Metal, 20 gage", "hollow metal, 20 gage"), ("SC", "wood, solid core"),
        ("H.C.", "wood, hollow core"), ("ALUM", "aluminum and glass"), ("S&R", "wood, stile and rail"),
    ],
)  # fmt: skip
def test_what_a_door_is_made_of(cell, made_of):
    assert values("Material", cell) == {"door.construction": made_of}


@pytest.mark.parametrize(
    ("cell", "kind"),
    [("KD", "knocked-down drywall"), ("HM-KD", "knocked-down drywall"), ("Welded", "welded steel, wrapped"),
     ("WD", "wood with casing"), ("Alum.", "aluminum storefront")],
)  # fmt: skip
def test_frames(cell, kind):
    assert values("Frame", cell) == {"frame.kind": kind}


@pytest.mark.parametrize("field", ["hand", "leaves", "status", "frame.kind", "door.construction", "hung_on"])
def test_every_word_of_the_project_file_is_itself(field):
    heading = {"frame.kind": "Frame", "door.construction": "Material", "hung_on": "Hung on"}.get(field, field)
    for word in words_of(field):
        assert values(heading, word.upper()) == {field: word}


@pytest.mark.parametrize(("cell", "hand"), [("rhra", "RHR"), ("LHA", "LH"), ("L.H.R.A.", "LHR")])
def test_the_hand_of_an_active_leaf_is_that_of_a_pair(cell, hand):
    assert values("Hand", cell) == {"hand": hand, "leaves": "pair"}
    header = ["Mark", "Hand", "Size", "Leaves"]
    (row,) = read(header, ["1", cell, "3070", ""])
    assert row.faults[0].question == "pair width"
    (row,) = read(header, ["1", cell, "6070", "single"])
    assert "pair's active leaf, and the leaves are single" in row.faults[0].reason


@pytest.mark.parametrize(
    ("cell", "minutes"),
    [("20", 20), ("45 MIN", 45), ("90 min.", 90), ("1-1/2 HR", 90), ("3/4 hr", 45), ("1.5 HR", 90),
     ("3 HR", 180), ("FD30", 30),
     ("FD 60S", 60), ("0", 0)],
)  # fmt: skip
def test_ratings_by_time(cell, minutes):
    assert values("Rating", cell) == {"use.fire_rated": minutes > 0, "fire_minutes": minutes}


@pytest.mark.parametrize(
    ("cell", "rated"),
    [("B", True), ("A label", True), ("yes", True), ("NR", False), ("None", False), ("No", False)],
)
def test_ratings_that_say_no_time(cell, rated):
    assert values("Rating", cell) == {"use.fire_rated": rated}


def test_minutes_of_their_own():
    assert values("Fire minutes", "90 min") == {"fire_minutes": 90}
    assert reasons("Fire minutes", "yes") == ["“yes” is no number of minutes"]


@pytest.mark.parametrize("cell", ["-", "–", "n/a", "N.A.", " ", "--"])
def test_a_dash_says_nothing(cell):
    assert says_nothing(cell)
    assert values("Rating", cell) == {}


@pytest.mark.parametrize(("cell", "count"), [("1", 1), ("12 EA", 12), ("3.0", 3), ("1,200", 1200)])
def test_quantities(cell, count):
    (row,) = read(["Mark", "Qty"], ["1", cell])
    assert row.values["quantity"] == count


@pytest.mark.parametrize("cell", ["0", "-1", "one", "1.5", "1 pr", "9999999999", "=1+1"])
def test_no_quantities(cell):
    (row,) = read(["Mark", "Qty"], ["1", cell])
    assert "not a number of openings" in row.faults[0].reason


@pytest.mark.parametrize(
    ("heading", "cell", "said"),
    [
        ("Hand", "LH/RH", "“LH/RH” is not known here; it may be LH; RH; LHR; RHR"),
        ("Rating", "2 storeys", "no fire rating"),
        ("Width", "wide", "is not a length"),
        ("Frame", "#REF!", "could not work this cell out"),
        ("Width", "#NOT WORKED OUT", "never worked out"),
        ("Width", "2026-03-06", "is a date"),
        ("Must open to", "flat", "not an angle"),
    ],
)
def test_a_cell_that_is_not_understood_says_why(heading, cell, said):
    (reason,) = reasons(heading, cell)
    assert said in reason


def test_yes_and_no():
    rows = read(["Mark", "Closer"], ["1", "yes"], ["2", "N"], ["3", "X"], ["4", "maybe"])
    assert [row.values.get("use.closer") for row in rows] == [True, False, True, None]
    assert "neither yes nor no" in rows[3].faults[0].reason


@pytest.mark.parametrize(
    ("cell", "degrees"), [("90", 90), ("110°", 110), ("180 deg.", 180), ("97.5 degrees", 97.5)]
)
def test_angles(cell, degrees):
    assert values("Must open to", cell) == {"use.wanted_angle": degrees}


def test_a_size_may_say_the_thickness_of_the_door():
    (row,) = read(["Mark", "Size", "Hand"], ["1", '3\'-0" x 7\'-0" x 1-3/8"', "LH"])
    assert row.values["door.thickness"] == 1.375
    assert "1-3/8 in" in row.told[0]
    (row,) = read(["Mark", "Size", "Thk"], ["1", '3\'-0" x 7\'-0" x 1-3/8"', "1-3/4"])
    assert row.values["door.thickness"] == 1.75


def test_no_minutes_are_no_rating():
    assert values("Rating", "0 min") == {"use.fire_rated": False, "fire_minutes": 0}


def test_an_endless_cell_is_refused_at_once():
    for heading in ("Size", "Width", "Hand", "Rating", "Material"):
        for cell in (" " * 30_000 + "x", "1" * 30_000, "w " * 15_000):
            (reason,) = reasons(heading, cell)
            assert "goes on for" in reason


CELLS = st.one_of(
    st.text(max_size=30),
    st.text("0123456789-/ '\".xXwWhHPRpr()@mcin½¾″×", max_size=14),
    st.sampled_from(
        ["=1+1", "#REF!", "3070", "PR 6070", "LHR", "90 min", "1e9", "-1", "inf", "nan", "9" * 60, "3'-0\""]
    ),
)
SOUND = {
    "Mark": "101",
    "Size": "3070",
    "Width": "3-0",
    "Height": "7-0",
    "Thk": "1-3/4",
    "Hand": "LH",
    "Swing": "LH",
    "Leaves": "single",
    "Material": "HM",
    "Rating": "90 min",
    "Qty": "2",
    "Undercut": "3/4",
}
HEADINGS = list(SOUND)


@examples(75)
@given(st.dictionaries(st.sampled_from(HEADINGS), CELLS, max_size=2), st.sets(st.sampled_from(HEADINGS)))
def test_whatever_stands_in_the_cells_is_taken_or_refused(cells, others):
    """Nothing but a value, within what an opening may have, or a fault with a sentence."""
    row = {heading: SOUND[heading] for heading in sorted({"Mark", "Size", *others})} | cells
    try:
        found = compared(schedule_table(sheet(list(row), list(row.values()))))
    except IntakeError:
        assert cells
        return
    assert cells or found.good
    for row in found.bad:
        assert row.faults
        assert all(fault.reason and "\n" not in fault.reason for fault in row.faults)
    for good in found.good:
        assert good.opening.size.width >= 12


@examples(50)
@given(
    st.lists(st.lists(CELLS | st.just(""), min_size=4, max_size=4), min_size=1, max_size=6),
    st.sampled_from(["", "leave out", "by others", "hinged"]),
)
def test_every_cell_is_accounted_for_whatever_stands_in_it(rows, answer):
    written = [["Mark", "Size", "Remarks", "Keynote"], ["101", "3070", "", "8"], *rows]
    try:
        table = schedule_table(sheet(*written))
    except IntakeError:
        return
    reading = reading_of(table)
    reading = reading.with_answer("no hinged door", answer) if answer else reading
    found = list(fates(table, run(rows_steps(table, reading))))
    filled = sum(bool(cell.strip()) for row in written for cell in row)
    assert len(found) == filled == len({(line, place) for line, place, *_ in found})


@pytest.mark.parametrize("heading", HEADINGS[1:])
def test_a_word_of_nothing_is_refused_everywhere(heading):
    (reason,) = reasons(heading, "qqq")
    assert "qqq" in reason


def test_a_fault_names_line_and_column():
    (row,) = read(["Mark", "Door\nHand", "Qty"], ["1", "LX", "1"])
    (fault,) = row.faults
    assert (fault.line, fault.place) == (2, 1)
    assert str(fault).startswith("line 2, Door Hand: “LX”")


def test_readings_that_are_more_than_spelling_are_told_with_why():
    (row,) = read(["Mark", "Material", "Hand"], ["1", "HM", "LH"])
    assert row.told == ("“HM” is taken as hollow metal, 18 gage: no gage is given and 18 is usual",)


def test_a_type_that_says_no_material_is_left_out_and_told():
    (row,) = read(["Mark", "Door Type", "Frame Type"], ["1", "F2", "HM welded"])
    assert row.values.get("door.construction") is None
    assert row.values["frame.kind"] == "welded steel, wrapped"
    assert "left out" in row.told[0]


def test_the_material_outranks_the_type():
    for header in (["Mark", "Material", "Door Type"], ["Mark", "Door Type", "Material"]):
        cells = {"Mark": "1", "Material": "WD", "Door Type": "HM"}
        (row,) = read(header, [cells[heading] for heading in header])
        assert row.values["door.construction"] == "wood, solid core"


def test_hand_and_swing_go_together():
    def hand(*cells):
        (row,) = read(["Mark", "Hand", "Swing"], ["1", *cells])
        return row.values.get("hand"), [fault.reason for fault in row.faults]

    assert hand("LH", "out") == ("LHR", [])
    assert hand("LH", "in") == ("LH", [])
    assert hand("LHR", "out") == ("LHR", [])
    assert hand("", "RHR") == ("RHR", [])
    assert hand("", "out") == (None, [])
    assert "opens outward" in hand("LHR", "in")[1][0]
    assert "LH under Hand" in hand("LH", "RH")[1][0]


def test_rooms_make_a_location():
    (row,) = read(["Mark", "From", "To"], ["1", "Hall", "Stair"])
    assert row.values["location"] == "Hall to Stair"
    (row,) = read(["Mark", "From", "To", "Location"], ["1", "Hall", "Stair", "Lobby"])
    assert row.values["location"] == "Lobby"


def test_notes_of_several_columns_are_put_together():
    (row,) = read(["Mark", "Remarks", "Comments"], ["1", "a", "b"])
    assert row.values["remarks"] == "a; b"


def test_width_and_height_of_their_own():
    (row,) = read(["Mark", "Width", "Height"], ["1", "3'-0\"", "7'-0\""])
    assert (row.values["size.width"], row.values["size.height"]) == (36, 84)


def test_a_width_may_say_how_many_leaves_there_are():
    header = ["Mark", "Width", "Height"]
    (row,) = read(header, ["1", "(2) 3'-0\"", "7'-0\""])
    assert (row.values["size.width"], row.values["leaves"]) == (72, "pair")
    (row,) = read(header, ["1", "PR 6'-0\"", "7'-0\""])
    assert (row.values["size.width"], row.values["leaves"]) == (72, "pair")
    (row,) = read(header, ["1", "PR 3'-0\"", "7'-0\""])
    assert row.faults[0].question == "pair width"
    (row,) = read(header, ["1", "(2) 3'-0\"", ""])
    assert "with its height beside it" in row.faults[0].reason


def test_columns_the_wrong_way_round_are_asked_about_too():
    (row,) = read(["Mark", "Width", "Height"], ["1", "84", "36"])
    assert row.faults[0].question == "size order"
    (row,) = read(["Mark", "Width", "Height"], ["1", "84", "36"], order="height")
    assert (row.values["size.width"], row.values["size.height"]) == (36, 84)


def test_a_size_and_its_own_columns_must_agree():
    header = ["Mark", "Size", "Width", "Height"]
    (row,) = read(header, ["1", "3070", "36.03", "84"])
    assert row.values["size.width"] == 36.03  # within 1/16 the figure is the finer one
    (row,) = read(header, ["1", "7'-0\" x 3'-0\"", "36", "84"])
    assert not row.faults
    assert row.values["size.width"] == 36
    (row,) = read(header, ["1", "3070", "32", "84"])
    assert "“Width” says 2'-8\"" in row.faults[0].reason
    (row,) = read(header, ["1", "(2) 3070", "72", "84"])
    assert row.values["size.width"] == 72
    (row,) = read(header, ["1", "(2) 3070", "36", "84"])
    assert row.values["size.width"] == 72


def test_a_size_may_be_broken_over_lines():
    assert values("Size", "3'-0\"\nx 7'-0\"") == {"size.width": 36, "size.height": 84}


def test_leaves_by_the_size_and_by_their_column():
    (row,) = read(["Mark", "Size", "Leaves"], ["1", "PR 6070", ""])
    assert row.values["leaves"] == "pair"
    (row,) = read(["Mark", "Size", "Leaves"], ["1", "PR 6070", "single"])
    assert "the size says pair, and Leaves single" in row.faults[0].reason
    (row,) = read(["Mark", "Size", "Leaves"], ["1", "3070", "pair"])
    assert row.faults[0].question == "pair width"


def test_a_mark_that_a_spreadsheet_made_a_date_of_is_told():
    dated, plain = read(["Mark", "Size"], ["2026-03-04", "3070"], ["3-4", "3070"])
    assert (dated.mark, dated.faults) == ("2026-03-04", ())
    assert any("“2026-03-04” is a date" in said for said in dated.told)
    assert not any("is a date" in said for said in plain.told)


def test_a_row_without_a_mark_is_refused():
    (row,) = read(["Mark", "Size", "Hand"], ["", "3070", "LH"])
    assert str(row.faults[0]) == "line 2: it has no mark"


def test_one_bad_cell_does_not_hide_another():
    (row,) = read(["Mark", "Size", "Hand", "Qty"], ["1", "big", "LX", "none"])
    assert len(row.faults) == 3


@pytest.mark.parametrize(
    ("remark", "kind", "hung_on"),
    [
        ("Continuous hinge", "hung on a continuous hinge", "continuous hinge"),
        ("On offset pivots", "hung on pivots", "pivots"),
        ("SPRING HINGES", "hung on spring hinges", "spring hinges"),
        ("Double egress pair", "a double-egress pair", "by others"),
        ("Barn door", "a sliding door", "by others"),
    ],
)
def test_what_hangs_on_no_butt_hinges_is_asked_and_taken_as_that(remark, kind, hung_on):
    header = ["Mark", "Size", "Remarks"]
    (row,) = read(header, ["1", "6070", remark])
    assert [fault.question for fault in row.faults] == ["no hinged door"]
    assert f"is {kind}:" in row.faults[0].reason
    (row,) = read(header, ["1", "6070", remark], no_hinged_door="by others")
    assert (row.faults, row.values["hung_on"], row.values["remarks"]) == ((), hung_on, remark)


@pytest.mark.parametrize(
    ("mark", "count"),
    [("101, 102", 2), ("101 & 102 & 103", 3), ("101 thru 105", 5), ("A101 to A104", 4), ("101A and 101B", 2)],
)
def test_several_marks_in_one_cell_are_asked(mark, count):
    header = ["Mark", "Size"]
    (row,) = read(header, [mark, "3070"])
    assert row.faults[0].question == "typical"
    (row,) = read(header, [mark, "3070"], typical="quantity")
    assert (row.mark, row.values["quantity"]) == (mark, count)


@pytest.mark.parametrize("mark", ["101-105", "1/A", "101, closet", "B & C"])
def test_one_mark_is_not_taken_for_several(mark):
    (row,) = read(["Mark", "Size"], [mark, "3070"])
    assert row.faults == ()


@pytest.mark.parametrize("cell", ["NOT USED", "(deleted)", "N.I.C.", "By others", "Omit"])
def test_what_is_no_door_of_the_job_is_asked_and_can_be_left_out(cell):
    header = ["Mark", "Room", "Size"]
    (row,) = read(header, ["103", cell, "3070"])
    assert [fault.question for fault in row.faults] == ["no hinged door"]
    (row,) = read(header, ["103", cell, ""], no_hinged_door="leave out")
    assert (row.left_out, row.faults) == ("it is no door of this job", ())


def test_a_room_called_after_what_was_deleted_is_no_such_door():
    (row,) = read(["Mark", "Room", "Size"], ["103", "Void shaft", "3070"])
    assert row.faults == ()


def test_an_opening_too_wide_for_one_leaf_is_asked_about():
    header = ["Mark", "Size", "Leaves"]
    (row,) = read(header, ["1", "6070", ""])
    assert [fault.question for fault in row.faults] == ["wide door"]
    (row,) = read(header, ["1", "6070", ""], wide_door="pair")
    assert (row.values["leaves"], row.values["size.width"]) == ("pair", 72)
    (row,) = read(header, ["1", "6070", ""], wide_door="single")
    assert row.values["leaves"] == "single"
    for said in (["1", "4070", ""], ["1", "6070", "single"], ["1", "PR 6070", ""]):
        (row,) = read(header, said)
        assert row.faults == ()
    (row,) = read(["Mark", "Size", "Family"], ["1", "6070", "Double-Flush: 72 x 84"])
    assert row.values["leaves"] == "pair"
