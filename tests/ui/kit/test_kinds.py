import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.ui.kit.kinds import (
    DEGREES,
    LENGTH,
    LENGTHS,
    NAMED_TEXTS,
    POUNDS,
    TEXT,
    WHOLE,
    NotReadError,
    kind_at,
)
from configurator.units import Display
from tests.sweeps import examples

INCHES, METRIC = Display(), Display(metric=True)


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("door.thickness", LENGTH),
        ("obstructions.0.projection", LENGTH),
        ("hinge_locations.tops", LENGTHS),
        ("use.wanted_angle", DEGREES),
        ("door.weight", POUNDS),
        ("quantity", WHOLE),
        ("hinge.count", WHOLE),
        ("mark", TEXT),
        ("job.client", TEXT),
    ],
)
def test_the_model_says_what_kind_a_field_takes(path, kind):
    assert kind_at(path) is kind


@pytest.mark.parametrize(
    ("text", "display", "inches"),
    [
        ("4 1/2", INCHES, 4.5),
        ("3'-0\"", INCHES, 36),
        ("114.3 mm", INCHES, 4.5),
        ("114.3", METRIC, 4.5),
        ("4-1/2", METRIC, 4.5),
        ("36 in", METRIC, 36),
    ],
)
def test_a_bare_number_is_in_the_units_on_show(text, display, inches):
    assert LENGTH.read(text, display) == pytest.approx(inches, abs=1e-12)


@pytest.mark.parametrize(
    ("inches", "display", "text"),
    [
        (4.5, INCHES, "4-1/2 in"),
        (0.134, INCHES, "0.134 in"),
        (4.5, METRIC, "114.3 mm"),
        (0.015625, METRIC, "0.4 mm"),
        (1.4375, METRIC, "36.5 mm"),
        (1000 / 25.4, INCHES, "39.37 in"),
    ],
)
def test_a_field_shows_what_was_given(inches, display, text):
    assert LENGTH.write(inches, display) == text


@pytest.mark.parametrize(
    ("inches", "display", "text"),
    [
        (1.4375, METRIC, "1-7/16 in"),
        (4.5, METRIC, "114.3 mm"),
        (1000 / 25.4, INCHES, "1000 mm"),
        (0.134, INCHES, "0.134 in"),
    ],
)
def test_what_is_copied_reads_back_as_it_was(inches, display, text):
    assert LENGTH.lossless(inches, display) == text
    assert LENGTH.read(text, display) == pytest.approx(inches, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "display", "inches"),
    [
        ("5, 37-1/4, 69.5", INCHES, [5, 37.25, 69.5]),
        ("5; 37 1/4; 69-1/2 in", INCHES, [5, 37.25, 69.5]),
        ("127, 254", METRIC, [5, 10]),
        ("127, 254 mm", INCHES, [5, 10]),  # the unit holds for both
        ("5 in, 254 mm", INCHES, [5, 10]),
        ("5", INCHES, [5]),
    ],
)
def test_lengths_are_parted_by_commas(text, display, inches):
    assert LENGTHS.read(text, display) == pytest.approx(inches, abs=1e-12)


def test_lengths_are_written_with_one_unit_and_read_back():
    assert LENGTHS.write((5.0, 37.25, 69.5), INCHES) == "5, 37-1/4, 69-1/2 in"
    assert LENGTHS.write((5.0, 10.0), METRIC) == "127.0, 254.0 mm"
    assert LENGTHS.lossless((5.0, 1.4375), METRIC) == "127 mm, 1-7/16 in"
    for display in (INCHES, METRIC):
        written = LENGTHS.lossless((5.0, 37.25, 69.5), display)
        assert LENGTHS.read(written, display) == pytest.approx([5.0, 37.25, 69.5], abs=1e-6)


@examples(50)
@given(st.integers(0, 300 * 64), st.sampled_from([INCHES, METRIC]))
def test_what_is_copied_of_a_field_reads_back_as_what_it_holds(sixty_fourths, display):
    inches = sixty_fourths / 64
    assert LENGTH.read(LENGTH.lossless(inches, display), display) == pytest.approx(inches, abs=5e-6)


@pytest.mark.parametrize("text", ["120", "120 lb", "120 lbs", " 120 pounds "])
def test_pounds_take_their_unit_or_none(text):
    assert POUNDS.read(text, INCHES) == 120


@pytest.mark.parametrize("text", ["90", "90°", "90 deg", "90 degrees"])
def test_degrees_take_their_unit_or_none(text):
    assert DEGREES.read(text, INCHES) == 90


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        (LENGTH, "wide"),
        (LENGTHS, "wide"),
        (DEGREES, "flat"),
        (POUNDS, "heavy"),
        (WHOLE, "2.5"),
        (WHOLE, "two"),
    ],
)
def test_what_cannot_be_read_is_said_with_what_was_typed(kind, text):
    with pytest.raises(NotReadError, match=text):
        kind.read(text, INCHES)


def test_headed_texts_are_lines_with_a_heading_each():
    texts = {"Keynote": "8.14", "Phase": "1: east"}
    assert NAMED_TEXTS.write(texts, INCHES) == "Keynote: 8.14\nPhase: 1: east"
    assert NAMED_TEXTS.read("Keynote: 8.14\n\nPhase: 1: east\n", INCHES) == texts
    for line in ("no heading", ": nothing before", "A: 1\nA: 2"):
        with pytest.raises(NotReadError):
            NAMED_TEXTS.read(line, INCHES)
