import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.intake.refused import CellError
from configurator.intake.sizes import (
    LOW_PAIR,
    NARROW_PAIR,
    Size,
    read_length,
    read_opening_length,
    read_size,
    settled,
)
from configurator.units import format_feet

MM = 25.4


@pytest.mark.parametrize(
    "cell",
    [
        "3'-0\" x 7'-0\"", "3'-0\"x7'-0\"", "3'0\" X 7'0\"", "3-0 x 7-0", "3070", " 3070 ", "36 x 84",
        '36" x 84"',
        "3′-0″ × 7′-0″", "3'-0\" by 7'-0\"", "3'-0\" W x 7'-0\" H", "7'-0\"H x 3'-0\"W", "W 36 x H 84",
        "3 ft x 7 ft", "914.4 x 2133.6 mm", "914.4 mm x 2133.6 mm", "36 in x 84 in", "36 x 84 in.",
        "SGL 3070",
    ],
)  # fmt: skip
def test_a_three_by_seven_is_known_however_it_is_written(cell):
    size = read_size(cell, "in")
    assert (size.width, size.height) == pytest.approx((36, 84))


def test_a_bare_number_is_in_the_unit_of_the_column():
    assert read_size("915 x 2134", "mm") == Size(
        pytest.approx(915 / MM), pytest.approx(2134 / MM), metric=True
    )
    assert read_size("3 x 7", "ft-in") == Size(36, 84)
    assert read_size("36 x 84", "in") == Size(36, 84)
    assert read_size("3070", "mm") == Size(36, 84)  # no unit has a size in one number but feet and inches


@pytest.mark.parametrize(
    ("cell", "unit", "inches"),
    [("1-3/4", "in", 1.75), ("1 3/4\"", "in", 1.75), ("44", "mm", 44 / MM), ("44 mm", "in", 44 / MM),
     ("7", "ft-in", 84), ("6'-8\"", "in", 80), ("6-8", "mm", 80), ("6.5", "ft-in", 78), ("36", "in", 36)],
)  # fmt: skip
def test_a_length_is_in_its_own_unit_or_the_column_s(cell, unit, inches):
    assert read_length(cell, unit) == pytest.approx(inches)


def test_feet_and_inches_may_stand_with_a_slash():
    assert read_size("2/8 x 6/8", "in") == Size(32, 80)
    assert read_opening_length("3/0", "mm") == 36
    assert read_length("3/4", "in") == 0.75  # of anything else it is a fraction


def test_a_third_figure_is_the_thickness():
    assert read_size('3\'-0" x 7\'-0" x 1-3/4"', "in").thickness == 1.75
    assert read_size("3070 x 1-3/4", "in") == Size(36, 84, thickness=1.75)
    with pytest.raises(CellError, match="no thickness"):
        read_size("36 x 84 x 7", "in")


def test_a_prefix_says_how_many_leaves():
    assert read_size("PR 6070", "in") == Size(72, 84, "pair")
    assert read_size("(2) 3070", "in") == Size(36, 84, "pair", each=True)
    assert read_size("2/3070", "in") == Size(36, 84, "pair", each=True)
    assert read_size("2 @ 3'-0\" x 7'-0\"", "in") == Size(36, 84, "pair", each=True)
    for cell in ("Pair of 3-0 x 7-0", "(PR) 3070", "3070 PR", "3'-0\" x 7'-0\" (pair)"):
        assert read_size(cell, "in") == Size(36, 84, "pair")


@pytest.mark.parametrize(
    "cell", ["", "x", "3'-0\"", "3070 x 2 x 3 x 4", "see plan", "3'-0\" x", "2026-03-06", "6-Mar", "30x70x",
             "12345", "W 36 x W 84", "9" * 500, "1/0/2 x 84", "36 x -84"],
)  # fmt: skip
def test_what_is_no_size_is_refused_in_words(cell):
    with pytest.raises(CellError) as error:
        settled(read_size(cell, "in"), "", "ask", "ask")
    assert len(str(error.value)) < 260


def test_a_date_is_told_for_what_it_is():
    for cell in ("2026-03-06", "6-Mar", "3-Jun-26"):
        with pytest.raises(CellError, match="spreadsheet has made one"):
            read_size(cell, "in")


# --- Height first ---


def test_wider_than_high_is_asked_about():
    with pytest.raises(CellError) as error:
        settled(Size(84, 36), "", "ask", "ask")
    assert error.value.question == "size order"
    assert "7'-0\" wide and 3'-0\" high" in str(error.value)


def test_a_square_opening_is_not_asked_about():
    assert settled(Size(84, 84), "", "ask", "ask")[0] == Size(84, 84)


def test_the_answer_holds_for_every_size():
    assert settled(Size(84, 36), "", "height", "ask")[0] == Size(36, 84)
    with pytest.raises(CellError, match="not all written the same way"):
        settled(Size(36, 84), "", "height", "ask")
    size, told = settled(Size(84, 36), "", "width", "ask")
    assert size == Size(84, 36)
    assert told


def test_letters_say_it_and_nothing_is_asked():
    assert settled(read_size("7'-0\"H x 3'-0\"W", "in"), "", "height", "ask")[0].width == 36
    assert settled(read_size("84 W x 36 H", "in"), "", "ask", "ask")[0].width == 84


@pytest.mark.parametrize(
    ("height", "asked"), [(LOW_PAIR - 0.25, True), (LOW_PAIR, False), (LOW_PAIR + 0.25, False)]
)
def test_a_pair_may_be_wider_than_high_but_not_if_it_is_low(height, asked):
    if asked:
        with pytest.raises(CellError):
            settled(Size(96, height), "pair", "ask", "ask")
    else:
        assert settled(Size(96, height), "pair", "ask", "ask")[0].width == 96


# --- Whose width a pair's is ---


@pytest.mark.parametrize(
    ("width", "asked"), [(NARROW_PAIR - 0.25, True), (NARROW_PAIR, True), (NARROW_PAIR + 0.25, False)]
)
def test_a_narrow_pair_is_asked_about(width, asked):
    if asked:
        with pytest.raises(CellError) as error:
            settled(Size(width, 84), "pair", "ask", "ask")
        assert error.value.question == "pair width"
        assert settled(Size(width, 84), "pair", "ask", "leaf")[0].width == 2 * width
        assert settled(Size(width, 84), "pair", "ask", "opening")[0].width == width
    else:
        assert settled(Size(width, 84), "pair", "ask", "leaf")[0].width == width


def test_two_of_a_size_need_no_question():
    size, told = settled(read_size("(2) 3070", "in"), "", "ask", "ask")
    assert size.width == 72
    assert told == ["two leaves of 3'-0\" make an opening 6'-0\" wide"]


@pytest.mark.parametrize(("width", "height"), [(11.9, 84), (23, 23.9)])
def test_a_column_in_the_wrong_unit_is_not_believed(width, height):
    with pytest.raises(CellError, match="check the column's unit"):
        settled(Size(width, height), "", "ask", "ask")


WIDTHS = st.integers(12 * 16, 60 * 16).map(lambda n: n / 16)
HEIGHTS = st.integers(60 * 16, 144 * 16).map(lambda n: n / 16)


@given(WIDTHS, HEIGHTS)
def test_what_we_write_is_read_the_same(width, height):
    cell = f"{format_feet(width)} x {format_feet(height)}"
    size, told = settled(read_size(cell, "in"), "", "ask", "ask")
    assert (size.width, size.height, told) == (width, height, [])
    assert read_size(f"{width * MM!r} x {height * MM!r} mm", "in").width == pytest.approx(width)
