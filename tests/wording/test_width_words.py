"""What is said of the widths: never a width that binds, never a number that flatters."""

import pytest

from configurator.study import study
from configurator.study.widths.leaf_widths import widths_of
from configurator.units import Display
from configurator.wording.width_words import break_words, headline, reading, width_table
from tests.openings import LEVER, RAIL, flat_opening, plain_opening

INCHES = Display(32)


def leaf_of(**changes):
    (leaf,) = widths_of(study(flat_opening(**changes)))
    return leaf


def said(**changes):
    return headline(leaf_of(**changes), INCHES)


def test_the_least_width_exactly_and_the_next_in_stock():
    assert said(obstructions=[RAIL]) == (
        "Least hinge open width for 180°: 4-3/8 in exactly; next in stock 4-1/2."
    )
    deeper = said(obstructions=[RAIL | {"projection": 2.2}])
    assert deeper == "Least hinge open width for 180°: 4.825 in exactly; next in stock 5 (uncommon)."


def test_where_the_barrel_rules_it_is_said():
    assert said() == (
        "Least hinge open width for 180°: 3.893 in exactly, where the barrel is free by 1/32 in "
        "(3-1/8 in for the angle alone); next in stock 4."
    )


def test_a_stock_width_that_binds_is_named_and_not_offered():
    assert said(obstructions=[RAIL | {"projection": 3.475}]) == (
        "Least hinge open width for 180°: 6.1 in exactly; next in stock 7 does not do: binds at 2.3°."
    )


def test_a_return_wall_that_no_width_passes():
    wall = {"kind": "return wall", "start": 4}
    assert said(obstructions=[wall]) == (
        "No hinge open width opens this leaf to 180°: the leaf meets the return wall."
    )


def test_where_nobody_said_how_far_that_is_said():
    (leaf,) = widths_of(study(plain_opening(obstructions=[{"kind": "return wall", "start": 4}])))
    assert headline(leaf, INCHES).startswith(
        "How far it must open was not said. Least hinge open width for 90°"
    )


def test_a_narrow_square_door_binds_before_its_barrel_is_free():
    words = said(size={"width": 18, "height": 72})
    assert words.startswith(
        "180° needs a hinge open width of 3-1/8 in, but the barrel is free only from 3.893"
    )
    assert words.endswith("on the lock edge binds.")


def test_a_surface_hinge_is_not_asked_for_its_width():
    words = said(hinge={"mounting": "full surface"})
    assert "a wider hinge opens the door no farther" in words


def test_the_table_says_yes_or_no_and_why():
    table = width_table(leaf_of(obstructions=[RAIL], hardware=[LEVER], use={"accessible": True}), INCHES)
    assert table.heads[-2:] == ("Chair rail may stand out", "Why not")
    by_width = {line.width: dict(zip(table.heads, line.cells, strict=True)) for line in table.lines}
    assert by_width[4] == {
        "Open width": "4",
        "Fits": "no",
        "Opens to, bare": "171.7°",
        "With hardware": "171.7°",
        "Clear at 90": "33-1/16 in",
        "Chair rail may stand out": "up to 1-3/8 in",
        "Why not": "stops at 171.7°, leaf on the chair rail",
    }
    assert by_width[4.5]["Fits"] == "yes"
    assert by_width[4.5]["Why not"] == ""
    assert by_width[5]["Open width"] == "5 (uncommon)"
    assert by_width[7]["Why not"].startswith("binds at 2.3°")
    assert by_width[7]["Chair rail may stand out"] == "stopped elsewhere"


def test_a_clear_width_just_under_what_is_asked_is_not_shown_as_it():
    leaf = leaf_of(use={"accessible": True}, compare=[6.13])
    (line,) = (one for one in width_table(leaf, INCHES).lines if one.width == 6.13)
    assert line.cells[4] == "31-31/32 in"
    assert line.cells[-1] == "less than 32 in clear"


def test_a_door_that_does_not_come_square_open_is_not_said_to_be_narrow():
    shut = LEVER | {"from_latch_edge": -3}  # it stands over the face of the latch jamb
    leaf = leaf_of(use={"accessible": True}, hardware=[shut], compare=[4])
    (line,) = (one for one in width_table(leaf, INCHES).lines if one.width == 4)
    assert line.cells[4] == "not reached"
    assert line.cells[-1] == "does not come square open"


def test_two_of_a_kind_are_numbered():
    second = RAIL | {"start": 8, "projection": 1}
    heads = width_table(leaf_of(obstructions=[RAIL, second]), INCHES).heads
    assert heads[5:7] == ("Chair rail 1 may stand out", "Chair rail 2 may stand out")


def test_a_width_that_cannot_be_mounted_is_in_the_table_with_its_reason():
    leaf = leaf_of(hinge={"mounting": "half surface"}, compare=[4, 4.5])
    whys = [line.cells[-1] for line in width_table(leaf, INCHES).lines]
    assert "too wide to be mounted so" in whys[-1]


@pytest.mark.parametrize(("display", "length"), [(INCHES, "32 in"), (Display(metric=True), "812.8 mm")])
def test_break_points_in_words(display, length):
    leaf = leaf_of(obstructions=[RAIL], use={"accessible": True})
    assert [break_words(one, display)[0] for one in leaf.breaks] == [
        f"barrel free by {display.exact(1 / 32)} from 3.893 in",
        "opens to 180° from 4-3/8 in",
        f"{length} clear width up to 6-1/8 in",
        "lock edge binds from 6.158 in",
    ]


def test_what_the_pointer_reads():
    one_study = study(flat_opening(obstructions=[RAIL], hardware=[LEVER]))
    (leaf,) = widths_of(one_study)
    assert reading(one_study.hanger(leaf.leaf, 4.5), INCHES) == (
        "4-1/2 in: opens to 180° bare, 175.6° with hardware; clear width 32-13/16 in"
    )


def test_plain_words_for_a_client():
    leaf = leaf_of(use={"accessible": True})
    heads = width_table(leaf, INCHES, plain=True).heads
    assert heads[:5] == (
        "Hinge width",
        "Does it",
        "Door alone opens to",
        "With its hardware",
        "Walk-through width",
    )
    said = [break_words(one, INCHES, plain=True)[0] for one in leaf.breaks]
    assert "32 in walk-through width up to 6-1/8 in" in said


def test_what_the_pointer_reads_never_rounds_across_a_limit():
    one_study = study(flat_opening(use={"wanted_angle": 170}, obstructions=[RAIL]))
    (leaf,) = widths_of(one_study)
    just_under = leaf.least_for_angle - 0.002
    assert reading(one_study.hanger(leaf.leaf, just_under), INCHES).count("169.9° bare") == 1
    assert reading(one_study.hanger(leaf.leaf, 6.13), INCHES).endswith("clear width 31-31/32 in")
