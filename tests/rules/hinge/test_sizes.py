"""Height, count, stock and gage: every row of their tables below, at and above its boundary."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.rules.hinge.sizes import barrel_diameter, hinge_count, hinge_height, leaf_thickness, pairs
from configurator.rules.hinge.stock import (
    least_stock_width,
    next_narrower,
    next_wider,
    stock_of,
    stock_widths,
    widths_by_stock,
)

STEP = 1 / 64


@pytest.mark.parametrize(
    ("thickness", "width", "height"),
    [
        (1.375, 12, 3.5),
        (1.375, 32 - STEP, 3.5),
        (1.375, 32, 3.5),
        (1.375, 32 + STEP, 4),
        (1.375, 36, 4),
        (1.375, 36 + STEP, 4),  # the table ends there; what lies outside is said as a finding
        (1.375 + STEP, 32, 4.5),
        (1.75, 36 - STEP, 4.5),
        (1.75, 36, 4.5),
        (1.75, 36 + STEP, 5),
        (1.75, 48 - STEP, 5),
        (1.75, 48, 5),
        (1.75, 48 + STEP, 6),
        (1.75 + STEP, 36, 5),
        (2.25, 42 - STEP, 5),
        (2.25, 42, 5),
        (2.25, 42 + STEP, 6),
        (2.5, 60, 6),
        (2.5 + STEP, 36, 5),
    ],
)
def test_hinge_height(thickness, width, height):
    """Common practice, no source: the height table as it is handed round."""
    found = hinge_height(thickness, width)
    assert found.value == height
    assert found.mark == "common practice"
    assert "high" in found.because


@pytest.mark.parametrize(
    ("height", "count"),
    [
        (24, 2),
        (60 - STEP, 2),
        (60, 2),
        (60 + STEP, 3),
        (90 - STEP, 3),
        (90, 3),
        (90 + 1 / 16, 4),  # 90 -> 3 and 90-1/16 -> 4: UFC 3-190-02FA, para. 6e
        (120 - STEP, 4),
        (120, 4),
        (120 + STEP, 5),
        (150, 5),
    ],
)
def test_hinge_count(height, count):
    """UFC 3-190-02FA (2003, since cancelled), Builders' Hardware, para. 6e."""
    found = hinge_count(height)
    assert found.value == count
    assert found.mark == "read"


def test_count_does_not_trip_over_arithmetic_noise():
    assert hinge_count(90.00000000001).value == 3
    assert hinge_count(120.00000000001).value == 4


@given(st.floats(1, 290), st.floats(1, 290))
def test_a_higher_leaf_never_takes_fewer(one, other):
    low, high = sorted((one, other))
    assert hinge_count(low).value <= hinge_count(high).value


@pytest.mark.parametrize(
    ("hinges", "words"),
    [(0, "0 pair"), (1, "1/2 pair"), (2, "1 pair"), (3, "1-1/2 pair"), (120, "60 pair"), (81, "40-1/2 pair")],
)
def test_pairs(hinges, words):
    """A construction handbook: three hinges are a pair and a half."""
    assert pairs(hinges) == words


def test_stock_is_pairs_of_height_and_width():
    assert stock_widths(4.5) == (4, 4.5, 5, 6, 7, 8)
    assert widths_by_stock(5) == (4.5, 5, 6, 7, 4, 8)
    assert stock_of(5, 4).stock == "ask first"
    assert stock_of(5, 4.5).stock == "common"
    assert stock_of(4.5, 5.5) is None
    assert stock_widths(4.25) == ()


def test_neighbours_in_stock():
    assert next_wider(4.5, 4) == 4.5
    assert next_wider(4.5, 8) is None
    assert next_narrower(4.5, 4.5) == 4
    assert next_narrower(4.5, 4) is None


def test_least_stock_width_rounds_up():
    """2 (1-3/4 - 1/4) + C; The Building Trades Pocketbook rounds 5-3/8 up to the next width made."""
    assert least_stock_width(4.5, 4) == 4
    assert least_stock_width(4.5, 4 + STEP) == 4.5
    assert least_stock_width(4.5, 4.875) == 5
    assert least_stock_width(5, 5.375) == 6
    assert least_stock_width(4.5, 8 + STEP) is None


@pytest.mark.parametrize(
    ("height", "weight", "thickness", "mark"),
    [
        (3.5, "standard", 0.123, "from memory"),
        (4, "standard", 0.130, "from memory"),
        (4.5, "standard", 0.134, "common practice"),
        (4.5, "heavy", 0.180, "common practice"),
        (5, "standard", 0.146, "common practice"),
        (5, "heavy", 0.190, "read"),  # BHMA Hardware Highlight for ANSI/BHMA A156.1-2016
        (6, "heavy", 0.203, "from memory"),
    ],
)
def test_leaf_thickness(height, weight, thickness, mark):
    found = leaf_thickness(height, weight)
    assert (found.value, found.mark) == (thickness, mark)


def test_leaf_thickness_off_the_table_says_so():
    assert leaf_thickness(4.75, "standard").value == 0.134
    assert leaf_thickness(3, "heavy").value == 0.170
    assert "in no list" in leaf_thickness(4.75, "standard").because


@pytest.mark.parametrize(
    ("height", "weight", "diameter"),
    [
        (3.5, "standard", 0.5),
        (3.5 + STEP, "standard", 0.58),
        (4.5, "standard", 0.58),
        (3.5, "heavy", 0.75),
        (5, "heavy", 0.75),
    ],
)
def test_barrel_diameter(height, weight, diameter):
    found = barrel_diameter(height, weight)
    assert (found.value, found.mark) == (diameter, "from memory")
