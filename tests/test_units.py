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
    format_angle,
    format_decimal,
    format_exact,
    format_length,
    format_mm,
    parse_length,
    parse_opening_size,
)

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


def seconds(parse, text):
    """The processor's time of the quickest of three goes: neither a busy machine nor the collector counts."""

    def once():
        start = time.thread_time()
        with suppress(LengthError):
            parse(text)
        return time.thread_time() - start

    return min(once() for _ in range(3))


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
    assert seconds(parse_length, bad) < 0.1
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
    [(4.5, '4-1/2"'), (4, '4"'), (0, '0"'), (0.5, '1/2"'), (-1.5, '-1-1/2"'), (-0.0001, '0"'),
     (31.96, '31-15/16"'),
     (31.99, '32"'), (2.5625, '2-9/16"'), (1 / 32, '1/16"'), (-1 / 32, '-1/16"')],
)  # fmt: skip
def test_writes_reduced_fractions(inches, shown):
    assert format_length(inches) == shown


def test_writes_other_precisions_and_styles():
    assert format_length(29 + 33 / 64, 64, unit_mark=False) == "29-33/64"
    assert format_length(29 + 33 / 64, 32) == '29-17/32"'
    assert format_length(36.5, style="feet") == "3'-0 1/2\""
    assert format_length(84, style="feet") == "7'-0\""
    assert format_length(-84, style="feet", unit_mark=False) == "-7-0"
    assert format_length(11.5, style="feet") == '11-1/2"'
    assert format_length(11.999, style="feet") == "1'-0\""


@pytest.mark.parametrize(
    ("inches", "side", "shown"),
    [(31.99, None, "31-15/16"), (31 + 31 / 32, None, "31-15/16"), (32, None, "32"), (32 - 1e-10, None, "32"),
     (32.01, None, "32-1/16"), (32.01, "min", "32"), (32.01, "max", "32-1/16"), (31.99, "max", "32"),
     (31.99, "min", "31-15/16"), (31.5, None, "31-1/2")],
)  # fmt: skip
def test_never_shown_across_the_limit_it_fails(inches, side, shown):
    assert format_length(inches, unit_mark=False, limit=32, side=side) == shown


def test_a_limit_between_two_steps_is_kept_too():
    assert format_length(32.035, unit_mark=False, limit=32.03) == "32-1/16"
    assert format_length(32.028, unit_mark=False, limit=32.03) == "32"


def test_writes_millimetres_with_the_same_care():
    assert format_mm(4.5) == "114.3 mm"
    assert format_mm(4.5, 0) == "114 mm"
    assert format_mm(-0.0001) == "0.0 mm"
    assert format_mm(31.9999, limit=32) == "812.7 mm"
    assert format_mm(32, limit=32) == "812.8 mm"
    assert format_mm(32.0001, limit=32) == "812.9 mm"


def test_writes_exactly():
    assert format_exact(4.5) == "4-1/2"
    assert format_exact(0.58) == "0.58"
    assert format_exact(-0.58) == "-0.58"
    assert format_exact(33 / 64) == "33/64"


def test_writes_decimals():
    assert format_decimal(0.134) == "0.134"
    assert format_decimal(0.58) == "0.58"
    assert format_decimal(3) == "3"
    assert format_decimal(20, 0) == "20"
    assert format_decimal(0.1339, 2, limit=0.134) == "0.13"
    assert format_decimal(-0.0001) == "0"


@pytest.mark.parametrize(
    ("degrees", "shown"),
    [(180, "180°"), (90, "90°"), (0, "0°"), (179.97, "179.9°"), (171.788, "171.8°"), (90.02, "90.1°"),
     (89.97, "89.9°"),
     (180.02, "180.1°"), (0.02, "0.1°"), (105, "105°"), (44.96, "45.0°"), (180 - 1e-12, "180°"),
     (-10.26, "-10.3°")],
)  # fmt: skip
def test_writes_angles(degrees, shown):
    assert format_angle(degrees) == shown


def test_an_angle_keeps_the_wanted_angle_too():
    assert format_angle(109.98, limit=110) == "109.9°"
    assert format_angle(110.02, limit=110, side="min") == "110.0°"


@pytest.mark.parametrize("write", [format_length, format_mm, format_exact, format_decimal])
@pytest.mark.parametrize("number", [math.nan, math.inf])
def test_what_is_not_finite_is_never_shown(write, number):
    with pytest.raises(ValueError, match="not a finite"):
        write(number)


def test_display():
    inches, metric = Display(precision=32), Display(metric=True)
    assert inches.length(29 + 17 / 32) == "29-17/32 in"
    assert metric.length(4.5) == "114.3 mm"
    assert metric.length(31.9999, limit=32) == "812.7 mm"
    assert inches.opening(36, 84.5) == "3'-0\" x 7'-0 1/2\""
    assert metric.opening(36, 84) == "914 x 2134 mm"
    assert inches.size(4.5, 4) == metric.size(4.5, 4) == "4-1/2 x 4"
    assert inches.angle(179.97) == "179.9°"


sixty_fourths = st.integers(-64_000, 64_000).map(lambda n: n / 64)
lengths = st.floats(-1000, 1000)
precisions = st.sampled_from([16, 32, 64])


@given(sixty_fourths, st.sampled_from(["inches", "feet"]), st.booleans())
def test_what_is_written_reads_back(inches, style, mark):
    assert parse_length(format_length(inches, 64, style, mark)) == inches


@given(lengths)
def test_exact_reads_back(inches):
    assert parse_length(format_exact(inches)) == pytest.approx(inches, abs=1e-9)


@given(lengths, lengths, precisions)
def test_the_longer_never_shows_shorter(one, other, precision):
    shorter, longer = sorted((one, other))
    assert parse_length(format_length(shorter, precision)) <= parse_length(format_length(longer, precision))


@given(lengths, st.floats(-0.2, 0.2), precisions)
def test_shown_on_its_own_side_of_any_limit(limit, off, precision):
    value = limit + off
    shown = parse_length(format_length(value, precision, limit=limit))
    assert abs(shown - value) <= 1 / precision + 1e-12
    if value < limit - 1e-9:
        assert shown < limit
    if value > limit + 1e-9:
        assert shown > limit


@given(st.one_of(st.text(max_size=70), st.text(alphabet="0123456789-/'\". infmtxX½−", max_size=70)))
def test_no_text_raises_anything_else(text):
    for parse in (parse_length, parse_opening_size):
        try:
            parse(text)
        except LengthError as refused:
            assert len(str(refused)) < 240  # noqa: PT017
        assert seconds(parse, text) < 0.1


@given(st.integers(0, 999), st.integers(1, 63), st.sampled_from(["{} {}", "{}-{}", '{}-{}"', "{} {} in"]))
def test_mixed_fractions_are_exact(whole, part, form):
    text = form.format(whole, f"{part}/64")
    assert Fraction(parse_length(text)) == whole + Fraction(part, 64)
