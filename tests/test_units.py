import math
import time
from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.units import (
    Display,
    LengthError,
    Rounding,
    format_angle,
    format_decimal,
    format_feet,
    format_fraction,
    format_lossless,
    format_mm,
    format_size,
    parse_length,
    parse_opening_size,
    rounded,
)

ROUNDINGS: tuple[Rounding, ...] = ("down", "near", "up")
READ = {
    "4 1/2": 4.5, '4-1/2"': 4.5, "4-1/2": 4.5, "1.75": 1.75, ".58": 0.58, "3'": 36, "3'-0\"": 36,
    "3'-0 1/2\"": 36.5,
    "3' 0": 36, "3-0": 36, "1/2": 0.5, "4 1/2 in": 4.5, '36"': 36, "2 ft 6 in": 30, "3-0 1/2": 36.5,
    "3-0-1/2": 36.5,
    "4½": 4.5, "½": 0.5, "¼": 0.25, "3′-0½″": 36.5, "3’ 6”": 42, "−1/2": -0.5, "-4-1/2": -4.5, "- 3-6": -42,
    "3'-1/2\"": 36.5, "3070": 3070, "  7 \t": 7, "3.": 3, "36 inches": 36, "3 feet": 36, "3'6": 42,
    "9/8": 1.125,
    "3.5'": 42, "2-11": 35, "2'-11 15/16": 35.9375, "4 - 1/2": 4.5, "1\u00a01/2": 1.5, "4''": 4, "3–0": 36,
}  # fmt: skip


def is_quick(parse, text):
    """Within a tenth of a second of the processor, in one of three goes: the collector may come between."""

    def seconds():
        start = time.thread_time()
        with suppress(LengthError):
            parse(text)
        return time.thread_time() - start

    return any(seconds() < 0.1 for _ in range(3))


@pytest.mark.parametrize(("text", "inches"), READ.items())
def test_reads_every_form_of_the_trade(text, inches):
    assert parse_length(text) == inches


@pytest.mark.parametrize(
    ("text", "mm"), [("114 mm", 114), ("11.4 cm", 114), ("0.9 m", 900), ("114mm", 114), ("-3 MM", -3)]
)
def test_reads_metric(text, mm):
    assert parse_length(text) == pytest.approx(mm / 25.4, abs=1e-12)


@pytest.mark.parametrize("number", [0, 4, 4.5, -2.25])
def test_a_number_is_inches(number):
    assert parse_length(number) == number


def test_metric_takes_a_bare_number_as_millimetres_and_a_mark_at_its_word():
    assert parse_length("254", metric=True) == pytest.approx(10)
    assert parse_length(254, metric=True) == pytest.approx(10)
    assert parse_length('10"', metric=True) == 10
    assert parse_length("4-1/2", metric=True) == 4.5
    assert parse_length("1/2", metric=True) == 0.5
    assert parse_length("3-0", metric=True) == 36
    assert parse_length("2 cm", metric=True) == pytest.approx(20 / 25.4)


@pytest.mark.parametrize(
    "bad",
    ["", "  ", "nan", "inf", "-inf", "1/0", "4-1/2-3", "3'-14\"", "3'-12", "3-12", "1e400", "1e3", "abc",
     True, False,
     float("nan"), float("inf"), 10**400, -(10**400), None, [4], "9" * 5000, "1/" + "9" * 5000,
     pytest.param(10**5000, id="5001 digits"),
     "4 9/8", "4-4/4", "٣",
     "4.5-1/2", "3.5' 6", "1,75", "--4", "+4", "3''6", "'", '"', "-", "4 mm in", "1/2/3", "0x10", "1_000",
     "9999999"],
)  # fmt: skip
def test_refuses_in_words(bad):
    with pytest.raises(LengthError) as refused:
        parse_length(bad)
    assert is_quick(parse_length, bad)
    assert 20 < len(str(refused.value)) < 240
    assert str(refused.value).endswith(".")


def test_a_refusal_says_what_was_typed_and_what_is_read():
    with pytest.raises(LengthError, match=r"“4-1/2-3” is not a length. Write inches as 4-1/2"):
        parse_length("4-1/2-3")
    with pytest.raises(LengthError, match="12 or more inches after the feet"):
        parse_length("3'-12")
    with pytest.raises(LengthError, match="Nothing was typed"):
        parse_length(" ")


def test_inches_after_feet_stop_below_twelve():
    assert parse_length("3'-11 63/64") == pytest.approx(47.984375)


def test_below_zero_only_where_it_is_allowed():
    assert parse_length("-1/2") == -0.5
    assert parse_length("0", negative=False) == 0
    with pytest.raises(LengthError, match="below zero"):
        parse_length("-1/64", negative=False)


@pytest.mark.parametrize(("number", "kept"), [(999_999.0, True), (1_000_000.0, True), (1_000_001.0, False)])
def test_nothing_about_a_door_is_longer_than_the_greatest(number, kept):
    if kept:
        assert parse_length(number) == number
    else:
        with pytest.raises(LengthError, match="too long"):
            parse_length(number)


@pytest.mark.parametrize(
    ("text", "size"),
    [("3070", (36, 84)), ("2868", (32, 80)), ("21070", (34, 84)), ("30610", (36, 82)), ("210610", (34, 82)),
     (3070, (36, 84)), ("3-0 x 7-0", (36, 84)), ("3'-0\" x 7'-0\"", (36, 84)), ("36 x 84", (36, 84)),
     ("36×84", (36, 84)), ("3-0 by 7-0", (36, 84)), ("3-0 x 10-0", (36, 120)), ("2-11 x 7-0", (35, 84)),
     ("21170", (35, 84)), ("30611", (36, 83)), ("36-1/2 X 84", (36.5, 84))],
)  # fmt: skip
def test_reads_opening_sizes(text, size):
    assert parse_opening_size(text) == size


def test_reads_opening_sizes_in_millimetres():
    for text in ("915 x 2134 mm", "915 mm x 2134 mm", "91.5 x 213.4 cm"):
        assert parse_opening_size(text) == pytest.approx((915 / 25.4, 2134 / 25.4))
    assert parse_opening_size("915 x 2134", metric=True) == pytest.approx((915 / 25.4, 2134 / 25.4))


@pytest.mark.parametrize(
    "bad",
    ["", "36", "307", "0070", "3000", "30100", "21270", "3070700", "210612", "a x b", "3 x 4 x 5",
     "0 x 84", "36 x -84",
     True, None, pytest.param(10**5000, id="5001 digits"), -3070, 30.7, "9" * 5000],
)  # fmt: skip
def test_refuses_other_opening_sizes(bad):
    with pytest.raises(LengthError):
        parse_opening_size(bad)


def test_digits_that_read_two_ways_are_asked_for_with_separators():
    # 3'-11" x 1'-0" and 3'-1" x 1'-10" with the same digits; one digit of feet never makes it out.
    with pytest.raises(LengthError, match=r"two ways.*3-0 x 7-0"):
        parse_opening_size("31110")


@pytest.mark.parametrize(
    ("inches", "shown"),
    [(4.5, "4-1/2"), (4, "4"), (0, "0"), (0.5, "1/2"), (-1.5, "-1-1/2"), (-0.0001, "0"), (31.96, "31-15/16"),
     (31.99, "32"), (2.5625, "2-9/16"), (1 / 32, "1/16"), (-1 / 32, "-1/16")],
)  # fmt: skip
def test_writes_reduced_fractions(inches, shown):
    assert format_fraction(inches, 16) == shown


def test_writes_other_precisions():
    assert format_fraction(29 + 33 / 64) == "29-33/64"
    assert format_fraction(29 + 33 / 64, 32) == "29-17/32"


@pytest.mark.parametrize(
    ("inches", "shown"),
    [(36.5, "3'-0 1/2\""), (84, "7'-0\""), (-84, "-7'-0\""), (11.5, '11-1/2"'), (11.999, "1'-0\""),
     (36 + 1 / 64, "3'-0 1/64\"")],
)  # fmt: skip
def test_writes_feet_to_the_64th(inches, shown):
    assert format_feet(inches) == shown


BELOW, STEP, ABOVE = 32 - 1e-6, 32.0, 32 + 1e-6
HAIR = 1e-9
"""What arithmetic may leave of a step, inches."""


@pytest.mark.parametrize(
    ("inches", "down", "near", "up"),
    [
        (BELOW, "31-15/16", "32", "32"),
        (STEP - HAIR, "32", "32", "32"),
        (STEP, "32", "32", "32"),
        (STEP + HAIR, "32", "32", "32"),
        (ABOVE, "32", "32", "32-1/16"),
        (31.99, "31-15/16", "32", "32"),
        (31 + 31 / 32, "31-15/16", "32", "32"),
        (31.96, "31-15/16", "31-15/16", "32"),
        (-BELOW, "-32", "-32", "-31-15/16"),
        (-ABOVE, "-32-1/16", "-32", "-32"),
        (0.0, "0", "0", "0"),
    ],
)
def test_down_is_never_more_and_up_never_less(inches, down, near, up):
    shown = tuple(format_fraction(inches, 16, rounding) for rounding in ROUNDINGS)
    assert shown == (down, near, up)


@pytest.mark.parametrize(
    ("inches", "down", "near", "up"),
    [
        (BELOW, "812.7 mm", "812.8 mm", "812.8 mm"),
        (STEP, "812.8 mm", "812.8 mm", "812.8 mm"),
        (ABOVE, "812.8 mm", "812.8 mm", "812.9 mm"),
        (1 / 8, "3.1 mm", "3.2 mm", "3.2 mm"),
        (4.375, "111.1 mm", "111.1 mm", "111.2 mm"),
        (-0.0001, "-0.1 mm", "0.0 mm", "0.0 mm"),
    ],
)
def test_millimetres_are_rounded_with_the_same_care(inches, down, near, up):
    assert tuple(format_mm(inches, 1, rounding) for rounding in ROUNDINGS) == (down, near, up)


@pytest.mark.parametrize("rounding", ROUNDINGS)
@pytest.mark.parametrize("number", [2.0**53, -(2.0**53), 1e300, -1.7e308])
def test_a_number_so_large_that_it_is_whole_stays_as_it_is(number, rounding):
    assert rounded(number, 10**4, rounding) == number


def test_whole_millimetres():
    assert format_mm(4.5, 0) == "114 mm"


@pytest.mark.parametrize(
    ("inches", "shown"),
    [(4.5, "4-1/2"), (0.58, "0.58"), (-0.58, "-0.58"), (33 / 64, "33/64"), (0.134, "0.134"), (7 / 64, "7/64"),
     (0.0916, "0.092"), (0.203, "0.203"), (1.7500000000000002, "1-3/4"), (39.37007874015748, "39.37"),
     (1.4375, "1-7/16")],
)  # fmt: skip
def test_a_size_is_a_fraction_only_where_it_is_one(inches, shown):
    assert format_size(inches) == shown


@pytest.mark.parametrize(
    ("inches", "down", "up"),
    [(4.375, "4-3/8", "4-3/8"), (4.374999999, "4-3/8", "4-3/8"), (3.83, "3.83", "3.83"),
     (6.15833, "6.158", "6.159"), (4.0001, "4", "4.001")],
)  # fmt: skip
def test_a_hinge_width_from_or_up_to_which_something_holds(inches, down, up):
    assert (format_size(inches, 3, "down"), format_size(inches, 3, "up")) == (down, up)


@pytest.mark.parametrize(
    ("inches", "in_inches", "metric"),
    [
        (1.4375, "1-7/16 in", "1-7/16 in"),  # 36.5125 mm
        (4.5, "4-1/2 in", "114.3 mm"),
        (1000 / 25.4, "1000 mm", "1000 mm"),
        (914.4 / 25.4, "36 in", "914.4 mm"),
        (0.134, "0.134 in", "3.4036 mm"),
        (1.7500000000000002, "1-3/4 in", "1-3/4 in"),
    ],
)
def test_what_is_copied_loses_nothing(inches, in_inches, metric):
    assert (format_lossless(inches), format_lossless(inches, metric=True)) == (in_inches, metric)


def test_writes_decimals():
    assert format_decimal(0.134) == "0.134"
    assert format_decimal(0.58) == "0.58"
    assert format_decimal(3) == "3"
    assert format_decimal(20, 0) == "20"
    assert format_decimal(0.1339, 2, "down") == "0.13"
    assert format_decimal(0.131, 2, "up") == "0.14"
    assert format_decimal(-0.0001) == "0"


@pytest.mark.parametrize(
    ("degrees", "down", "near", "up"),
    [
        (180, "180°", "180°", "180°"),
        (90, "90°", "90°", "90°"),
        (0, "0°", "0°", "0°"),
        (180 - 1e-12, "180°", "180°", "180°"),
        (105, "105°", "105°", "105°"),
        (179.97, "179.9°", "just under 180°", "just under 180°"),
        (171.788, "171.7°", "171.8°", "171.8°"),
        (89.97, "89.9°", "just under 90°", "just under 90°"),
        (90.02, "just over 90°", "just over 90°", "90.1°"),
        (0.02, "less than 0.1°", "less than 0.1°", "0.1°"),
        (44.96, "44.9°", "45.0°", "45.0°"),
        (109.98, "109.9°", "110.0°", "110.0°"),
        (110.02, "110.0°", "110.0°", "110.1°"),
        (-10.26, "-10.3°", "-10.3°", "-10.2°"),
    ],
)
def test_writes_angles(degrees, down, near, up):
    assert tuple(format_angle(degrees, rounding) for rounding in ROUNDINGS) == (down, near, up)


def test_an_angle_is_shown_as_reached():
    assert format_angle(171.788) == "171.7°"


@pytest.mark.parametrize("write", [format_fraction, format_mm, format_size, format_decimal, format_lossless])
@pytest.mark.parametrize("number", [math.nan, math.inf])
def test_what_is_not_finite_is_never_shown(write, number):
    with pytest.raises(ValueError, match="not a finite"):
        write(number)


INCHES, METRIC = Display(32), Display(metric=True)


def test_display():
    assert INCHES.length(29 + 17 / 32) == "29-17/32 in"
    assert METRIC.length(4.5) == "114.3 mm"
    assert INCHES.length(31.999, "down") == "31-31/32 in"
    assert METRIC.length(31.9999, "down") == "812.7 mm"
    assert INCHES.opening(36, 84.5) == "3'-0\" x 7'-0 1/2\""
    assert METRIC.opening(36, 84) == "914 x 2134 mm"
    assert INCHES.size(4.5, 4) == METRIC.size(4.5, 4) == "4-1/2 x 4"
    assert INCHES.angle(179.97) == "179.9°"
    assert INCHES.exact(0.134) == "0.134 in"
    assert METRIC.exact(0.134) == "3.4 mm"


def test_the_size_of_an_opening_is_the_same_at_every_precision():
    sizes = {Display(precision).opening(36 + 1 / 64, 84) for precision in (16, 32, 64)}
    assert sizes == {"3'-0 1/64\" x 7'-0\""}


@pytest.mark.parametrize(
    ("inches", "down", "near", "up"),
    [
        (0.004, "less than 1/32 in", "less than 1/32 in", "1/32 in"),
        (-0.004, "-1/32 in", "more than -1/32 in", "more than -1/32 in"),
        (0.0, "0 in", "0 in", "0 in"),
        (HAIR, "0 in", "0 in", "0 in"),
    ],
)
def test_something_is_never_shown_as_nothing(inches, down, near, up):
    assert tuple(INCHES.length(inches, rounding) for rounding in ROUNDINGS) == (down, near, up)


def test_something_is_never_shown_as_nothing_in_millimetres():
    assert METRIC.length(0.001, "down") == "less than 0.1 mm"


sixty_fourths = st.integers(-64_000, 64_000).map(lambda n: n / 64)
lengths = st.floats(-1000, 1000)
displays = st.sampled_from([Display(16), Display(32), Display(64), METRIC])
SLACK = 2e-8
"""What lies nearer to a step than this may be shown as that step, inches."""


@given(sixty_fourths)
def test_what_is_written_reads_back(inches):
    assert parse_length(format_fraction(inches)) == inches
    assert parse_length(format_feet(inches)) == inches


@given(lengths, st.booleans())
def test_what_is_copied_reads_back(inches, metric):
    assert parse_length(format_lossless(inches, metric)) == pytest.approx(inches, abs=SLACK)


@given(lengths, displays)
def test_shown_on_the_safe_side_and_within_a_step(inches, display):
    down, near, up = (display.shown(inches, rounding) for rounding in ROUNDINGS)
    assert inches - display.step - SLACK < down <= inches + SLACK
    assert inches - SLACK <= up < inches + display.step + SLACK
    assert abs(near - inches) <= display.step / 2 + SLACK
    assert near in (down, up)


@given(lengths, displays)
def test_what_is_shown_reads_back_as_shown(inches, display):
    for rounding in ROUNDINGS:
        text = display.length(inches, rounding)
        if "than" not in text:
            assert parse_length(text) == pytest.approx(display.shown(inches, rounding), abs=1e-9)


@given(lengths, lengths, displays, st.sampled_from(ROUNDINGS))
def test_the_longer_never_shows_shorter(one, other, display, rounding):
    shorter, longer = sorted((one, other))
    assert display.shown(shorter, rounding) <= display.shown(longer, rounding)


@given(lengths, st.floats(-0.2, 0.2), displays)
def test_what_fails_a_limit_reads_as_failing_it(limit, off, display):
    """What must be at least a limit goes down and the limit up, and the other way round."""
    value = limit + off
    if value < limit - SLACK:
        assert display.shown(value, "down") <= value + SLACK < limit <= display.shown(limit, "up") + SLACK
        assert display.shown(value, "down") < display.shown(limit, "up")
    if value > limit + SLACK:
        assert display.shown(value, "up") > display.shown(limit, "down")


@given(st.floats(0, 180))
def test_an_angle_is_never_shown_beyond_itself(degrees):
    shown = format_angle(degrees).removesuffix("°")
    if "just" not in shown and "than" not in shown:
        assert float(shown) <= degrees + 2e-8


@given(st.one_of(st.text(max_size=70), st.text(alphabet="0123456789-/'\". infmtxX½−", max_size=70)))
def test_no_text_raises_anything_else(text):
    for parse in (parse_length, parse_opening_size):
        try:
            parse(text)
        except LengthError as refused:
            assert len(str(refused)) < 240  # noqa: PT017
        assert is_quick(parse, text)


@given(st.integers(0, 999), st.integers(1, 63), st.sampled_from(["{} {}", "{}-{}", '{}-{}"', "{} {} in"]))
def test_mixed_fractions_are_exact(whole, part, form):
    text = form.format(whole, f"{part}/64")
    assert Fraction(parse_length(text)) == whole + Fraction(part, 64)
