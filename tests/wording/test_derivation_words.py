import pytest

from configurator.drawing.base.primitives import Dimension
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups, plan_sheet
from configurator.units import Display
from configurator.wording.comparison import comparisons
from configurator.wording.derivation_words import (
    Asked,
    asked_of_dimension,
    shown_derivation,
    with_unit,
    writer,
)
from tests.drawing.cases import case_a, demo, demo_pair


def lines(shown):
    return [line.text for line in (*shown.answer, *shown.lines)]


def test_the_pin_off_the_door_reads_as_the_trade_writes_it():
    shown = shown_derivation(case_a(), Display(), Asked("single", "pin_off_door_face", 1))
    assert shown.heading == "Pin axis off door face, 4-1/2 in hinge"
    assert shown.shown == "3/4 in"
    assert lines(shown) == ["o = W/2 − (T − b) = (4-1/2)/2 − (1-3/4 − 1/4) = 3/4 in"]
    assert [(one.written, one.value) for one in shown.letters][:2] == [("o", "3/4 in"), ("W", "4-1/2 in")]
    assert shown.of == ("single", 4.5)


def test_all_of_it_copies_as_text():
    shown = shown_derivation(case_a(), Display(), Asked("single", "barrel_past_frame", 0))
    assert shown.as_text().splitlines() == [
        "Barrel past frame face, 4 in hinge: 21/32 in",
        "  B = y_p + d_b/2 = 3/8 + 0.58/2 = 0.665 in",
        "made from",
        "  b_f = b + k = 1/4 + 1/16 = 5/16 in",
        "  y_p = W/2 − (R − b_f) = 4/2 − (1-15/16 − 5/16) = 3/8 in",
        "where",
        "  B = 0.665 in: how far the barrel stands out of the frame face",
        "  y_p = 3/8 in: pin axis off the frame face",
        "  d_b = 0.58 in: diameter of the barrel",
        "  b_f = 5/16 in: hinge backset on the frame, from the frame stop to the edge of the hinge leaf",
        "  b = 1/4 in: hinge backset on the door, from its stop-side face to the edge of the hinge leaf",
        "  k = 1/16 in: gap between the closed door and the frame stop",
        "  W = 4 in: hinge open width",
        "  R = 1-15/16 in: rabbet depth, from the frame face back to the frame stop",
    ]


def test_a_contact_begins_with_the_law_and_the_angle_it_gives():
    shown = shown_derivation(demo("112A"), Display(), Asked("single", "greatest_angle_bare", 0))
    law, angle = (line.text for line in shown.answer)
    assert law.startswith("ρ_s cos(φ_s − θ − α) = q − n·pin:   2.7078 × cos(161.1468° − 171.7878° − 90°) = ")
    assert angle.startswith("θ = φ_s − α + arccos((q − n·pin)/ρ_s) = ")
    assert angle.endswith(" = 171.7878°")
    assert "α = 90°" in lines(shown)


def test_the_difference_is_of_the_last_width_less_the_first():
    shown = shown_derivation(case_a(), Display(), Asked("single", "clear_width_at_90", -1))
    assert shown.heading == "Clear width at 90, 4 to 4-1/2 in hinge, difference"
    assert shown.shown == "1/4 in narrower"
    assert lines(shown) == ["Δ = A_2 − A_1 = 32-13/16 − 33-1/16 = −1/4 in"]


def test_millimetres_and_plain_words():
    shown = shown_derivation(
        case_a(), Display(metric=True), Asked("single", "pin_off_door_face", 0), plain=True
    )
    assert shown.heading == "Hinge pin stands off the door by, 4 in hinge"
    assert lines(shown) == ["o = W/2 − (T − b) = 101.6/2 − (44.45 − 6.35) = 12.7 mm"]


def test_two_leaves_are_told_apart():
    one = demo_pair(next(iter(_marks())))
    leaf = one.candidates[0].leaf
    assert shown_derivation(one, Display(), Asked(leaf, "greatest_angle", 0)).heading.endswith(
        f", {leaf} leaf"
    )


def _marks():
    from configurator.project_file import load
    from configurator.resource_files import resource_path

    job = load(resource_path("demo_openings", "pairs_and_dutch.json"))
    return [opening.mark for opening in job.openings if opening.leaves in ("pair", "dutch")]


@pytest.mark.parametrize(
    ("leaf", "key", "column"),
    [("active", "greatest_angle", 0), ("single", "price", 0), ("single", "greatest_angle", 7)],
)
def test_what_the_comparison_does_not_show_has_no_work(leaf, key, column):
    assert shown_derivation(case_a(), Display(), Asked(leaf, key, column)) is None


def test_one_width_has_no_difference_to_show():
    assert shown_derivation(case_a(compare=[4]), Display(), Asked("single", "greatest_angle", -1)) is None


def test_every_cell_of_the_comparison_can_be_asked_for():
    one = demo("112A")
    (table,) = comparisons(one, Display())
    for row in table.rows:
        for column, value in enumerate(row.values):
            shown = shown_derivation(one, Display(), Asked("single", row.key, column))
            assert shown.shown == value
            assert shown.answer
            assert all(letter.meaning for letter in shown.letters)
        if row.difference:
            assert shown_derivation(one, Display(), Asked("single", row.key, -1)).shown == row.difference


def test_numbers_are_fractions_where_they_are_64ths_and_four_decimals_where_not():
    write = writer(Display())
    assert [write(value, "length") for value in (1.75, -0.5, -2.5, 0.58, -0.58, 0.0, 36.0)] == [
        "1-3/4", "−1/2", "−2-1/2", "0.58", "−0.58", "0", "36",
    ]  # fmt: skip
    assert with_unit(171.787780, "angle", Display()) == "171.7878°"
    assert with_unit(0.0625, "plain", Display()) == "0.0625"
    assert with_unit(-0.5, "length", Display()) == "−1/2 in"
    assert with_unit(-0.5, "length", Display(metric=True)) == "−12.7 mm"


@pytest.mark.parametrize("mark", ["101A", "112A", "130A", "171A", "205A"])
def test_every_dimension_of_the_picture_is_a_number_with_its_work(mark):
    study = demo(mark)
    sheet = plan_sheet(study, Display(), 900.0, 500.0)
    groups = (*sheet.still, *sheet.notes, *moving_groups(sheet, 0.0), *moving_note_groups(sheet, 0.0))
    names = {one.name for group in groups for one in group.primitives if isinstance(one, Dimension)}
    pin = {name for name in names if "clearance" not in name and "stop" not in name}
    assert len(pin) >= 4
    for candidate in study.candidates:
        for name in pin:
            asked = asked_of_dimension(study, candidate.leaf, candidate.hinge_width, name)
            assert asked is not None, name
            work = shown_derivation(study, Display(), asked)
            assert work is not None
            assert work.of == (candidate.leaf, candidate.hinge_width)


def test_faces_that_are_flush_and_what_the_comparison_has_not():
    study = case_a()
    asked = asked_of_dimension(study, "single", 4.5, "barrel past frame and wall face")
    assert asked == Asked("single", "barrel_past_frame", 1)
    assert asked_of_dimension(study, "single", 4.5, "clearance to the chair rail") is None
    assert asked_of_dimension(study, "single", 7.0, "pin axis off door face") is None
    assert asked_of_dimension(study, "active", 4.5, "pin axis off door face") is None
