"""Charts as primitives: where their points lie, and labels that lie on nothing."""

from itertools import pairwise

import pytest

import configurator.drawing.base.style as style
from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Polyline, Symbol, Text
from configurator.drawing.charts.chart import (
    SIZE,
    Axis,
    Chart,
    Curve,
    Mark,
    Rule,
    nice_step,
    ticks_between,
)
from configurator.drawing.charts.chart_sheet import chart_sheet
from configurator.drawing.charts.swing_chart import corridor_rules, swing_chart
from configurator.drawing.charts.width_chart import length_axis, width_chart
from configurator.model import Use
from configurator.study import study
from configurator.study.over_the_swing import over_the_swing
from configurator.study.widths.leaf_widths import widths_of
from configurator.units import Display
from tests.drawing.cases import demo, random_study
from tests.openings import LEVER, RAIL, plain_opening

INCHES, METRIC = Display(32), Display(metric=True)
SIZES = ((165, 98), (290, 170), (420, 190), (700, 400))
CURVES = ("A-CHRT-BARE", "A-CHRT-HDWR", "A-CHRT-CLER", "A-CHRT-OTHR")
ACROSS = Axis("across", 0, 10, ((0, "0"), (10, "10")))
UP = Axis("up", 0, 100, ((0, "0"), (100, "100")))


def items(sheet, kind):
    return [item for group in sheet.groups for item in group.primitives if isinstance(item, kind)]


def boxes(sheet):
    return [(text_box(t.at, t.text, t.size, t.anchor), t.text) for t in items(sheet, Text)]


def charts_of(one_study, display):
    yield from (width_chart(leaf, display) for leaf in widths_of(one_study))
    swings = over_the_swing(one_study, 1 / 16)
    for leaf in dict.fromkeys(one.leaf for one in swings):
        own = [one for one in swings if one.leaf == leaf]
        yield from (swing_chart(own, n, one_study.opening.use, display) for n in range(len(own)))


def assert_tidy(sheet):
    """No text lies on another, on a curve or off the sheet."""
    lettered = boxes(sheet)
    for number, (box, text) in enumerate(lettered):
        assert box.left >= 0, text
        assert box.right <= sheet.width, text
        assert 0 <= box.bottom <= box.top <= sheet.height, text
        assert not any(box.overlaps(other) for other, _ in lettered[number + 1 :]), text
        for curve in items(sheet, Polyline):
            if curve.layer in CURVES:
                assert not crosses(curve.points, box.shrunk(0.5)), (text, curve.layer)


def crosses(points, box):
    """Whether a chain runs through a box, looked at every half point; no label is so thin."""
    for (x, y), (to_x, to_y) in pairwise(points):
        if max(x, to_x) < box.left or min(x, to_x) > box.right:
            continue
        steps = max(1, int(max(abs(to_x - x), abs(to_y - y)) * 2))
        shares = [n / steps for n in range(steps + 1)]
        if any(box.has((x + (to_x - x) * share, y + (to_y - y) * share)) for share in shares):
            return True
    return False


@pytest.mark.parametrize("mark", ["101A", "112A", "205A", "171A", "126C", "151A", "160A"])
def test_no_label_lies_on_another_or_on_a_curve(mark):
    for display in (INCHES, METRIC):
        for chart in charts_of(demo(mark), display):
            for width, height in SIZES:
                assert_tidy(chart_sheet(chart, width, height))


def test_random_openings_are_tidy_too():
    for seed in range(6):
        for chart in charts_of(random_study(seed), INCHES):
            assert_tidy(chart_sheet(chart, 300, 170))


def test_the_charts_use_only_the_style():
    for chart in charts_of(demo("112A"), INCHES):
        sheet = chart_sheet(chart, 420, 190)
        layers = {item.layer for group in sheet.groups for item in group.primitives}
        assert layers <= set(style.layers())


def test_a_value_lies_where_the_axes_say():
    sheet = chart_sheet(Chart(ACROSS, UP, ()), 300, 200)
    left, right = sheet.place(0, 0), sheet.place(10, 100)
    middle = sheet.place(5, 50)
    assert middle == pytest.approx(((left[0] + right[0]) / 2, (left[1] + right[1]) / 2))
    assert (left[0], right[0]) == pytest.approx((sheet.plot.left, sheet.plot.right))
    assert sheet.plot.bottom < left[1] < right[1] < sheet.plot.top


def test_the_second_scale_has_its_own_place():
    sheet = chart_sheet(
        Chart(ACROSS, UP, (), right=Axis("right", 30, 34, ((30, "30"), (34, "34")))), 300, 200
    )
    assert sheet.place(5, 32, right=True) == pytest.approx(sheet.place(5, 50))


def test_the_value_at_a_place_is_the_one_put_there():
    sheet = chart_sheet(Chart(ACROSS, UP, ()), 300, 200)
    assert sheet.value_across(sheet.place(7.25, 0)[0]) == pytest.approx(7.25)
    assert sheet.value_across(sheet.plot.left - 1) is None
    assert sheet.value_across(sheet.plot.right + 1) is None


def test_a_curve_goes_through_the_places_of_its_points_and_is_cut_at_the_plot():
    points = ((0.0, 0.0), (5.0, 100.0), (10.0, 50.0))
    sheet = chart_sheet(Chart(ACROSS, UP, (Curve("A-CHRT-BARE", points),)), 300, 200)
    (drawn,) = (line for line in items(sheet, Polyline) if line.layer == "A-CHRT-BARE")
    for point, there in zip(points, drawn.points, strict=True):
        assert there == pytest.approx(sheet.place(*point))
    beyond = Chart(ACROSS, UP, (Curve("A-CHRT-BARE", ((0.0, 0.0), (10.0, 1000.0))),))
    cut = chart_sheet(beyond, 300, 200)
    (drawn,) = (line for line in items(cut, Polyline) if line.layer == "A-CHRT-BARE")
    assert max(y for _, y in drawn.points) == pytest.approx(cut.plot.top)


def test_a_mark_is_lettered_shorter_where_there_is_little_room():
    long, short = "a long wording of what happens here " * 2, "short"
    chart = Chart(ACROSS, UP, (), marks=(Mark((5, 50), (long, short)),))
    assert long in [text for _, text in boxes(chart_sheet(chart, 900, 200))]
    assert short in [text for _, text in boxes(chart_sheet(chart, 200, 120))]


def test_curves_and_rules_are_named_where_there_is_room():
    chart = Chart(
        ACROSS,
        UP,
        (Curve("A-CHRT-BARE", ((0.0, 10.0), (10.0, 40.0)), "the curve"),),
        rules=(Rule("A-CHRT-WANT", 80.0, "the rule"), Rule("A-CHRT-GRID", 5.0, "upright", upright=True)),
    )
    assert {"the curve", "the rule", "upright"} <= {text for _, text in boxes(chart_sheet(chart, 300, 200))}


def test_two_curves_near_each_other_keep_their_labels_to_themselves():
    low = Curve("A-CHRT-BARE", ((0.0, 48.0), (10.0, 48.0)), "low", above=False)
    high = Curve("A-CHRT-HDWR", ((0.0, 52.0), (10.0, 52.0)), "high")
    sheet = chart_sheet(Chart(ACROSS, UP, (low, high)), 300, 200)
    found = {text: box for box, text in boxes(sheet)}
    assert found["low"].top < sheet.place(0, 48)[1]
    assert found["high"].bottom > sheet.place(0, 52)[1]


def test_the_cursor_stands_upright_at_its_value_and_not_off_the_plot():
    sheet = chart_sheet(Chart(ACROSS, UP, ()), 300, 200)
    (line,) = sheet.cursor(2.5).primitives
    assert {x for x, _ in line.points} == {sheet.place(2.5, 0)[0]}
    assert not sheet.cursor(11.0).primitives


@pytest.mark.parametrize(("span", "step"), [(4.0, 1), (4.1, 2), (0.2, 1 / 16), (1000, 20)])
def test_round_steps(span, step):
    assert nice_step(span, (1 / 16, 1, 2, 20), 4) == step


def test_ticks_begin_and_end_on_the_ends():
    assert ticks_between(30.0, 34.0, 1.0) == [30, 31, 32, 33, 34]
    assert ticks_between(30.01, 33.99, 1.0) == [31, 32, 33]


def test_lengths_are_ticked_in_fractions_or_in_millimetres():
    axis = length_axis("clear", 32.3, 33.1, INCHES)
    assert [text for _, text in axis.ticks] == ["32-1/4", "32-1/2", "32-3/4", "33", "33-1/4"]
    metric = length_axis("clear", 32.3, 33.1, METRIC)
    assert metric.title == "clear, mm"
    assert all(float(text) == pytest.approx(at * 25.4) for at, text in metric.ticks)
    assert metric.low <= 32.3 < 33.1 <= metric.high


def test_the_chart_of_widths_shows_what_solving_each_width_gives():
    one_study = study(plain_opening(obstructions=[RAIL], hardware=[LEVER]))
    (leaf,) = widths_of(one_study)
    chart = width_chart(leaf, INCHES)
    bare, fitted, clear = chart.curves
    assert len({bare.layer, fitted.layer, clear.layer}) == 3
    assert len({style.layers()[curve.layer].dash for curve in chart.curves}) == 3
    clears = dict(clear.points)
    for (width, angle), (_, less) in list(zip(bare.points, fitted.points, strict=True))[::9]:
        here = one_study.hanger(leaf.leaf, width)
        assert angle == pytest.approx(here.greatest_angle_bare, abs=1e-9)
        assert less == pytest.approx(here.greatest_angle, abs=1e-9)
        assert clears.get(width) == pytest.approx(here.clear_width_at_90, abs=1e-9)


def test_every_stock_width_is_ticked_and_dotted_on_the_curve():
    (leaf,) = widths_of(study(plain_opening(obstructions=[RAIL])))
    chart = width_chart(leaf, INCHES)
    texts = [text for _, text in chart.across.ticks if text]
    assert texts == ["4", "4-1/2", "5", "6", "7", "8"]
    assert chart.dots[0] == (4, pytest.approx(171.788, abs=5e-4))
    sheet = chart_sheet(chart, 420, 190)
    dots = [symbol for symbol in items(sheet, Symbol) if symbol.kind == "dot"]
    assert [dot.at for dot in dots] == [sheet.place(*dot) for dot in chart.dots]


def test_the_break_points_are_marked_where_the_curve_has_them():
    (leaf,) = widths_of(study(plain_opening(obstructions=[RAIL])))
    marks = {mark.wordings[0]: mark.at for mark in width_chart(leaf, INCHES).marks}
    assert marks["opens to 180° from 4-3/8 in"] == (pytest.approx(4.375), 180)
    assert marks["lock edge binds from 6.158 in"][1] == 180


def test_what_the_chart_says_to_who_cannot_see_it():
    (leaf,) = widths_of(study(plain_opening(obstructions=[RAIL])))
    said = width_chart(leaf, INCHES).said
    assert "4-3/8 in exactly" in said
    assert "lock edge binds from 6.158 in" in said
    assert "4 in: opens to 171.7° bare; clear width 33-1/16 in" in said


def test_the_corridor_by_hand():
    # Half of 44 must remain of 60 in any position: 38 may go; all but 7 of 44 at rest: 23.
    rules = corridor_rules(Use(corridor_width=60, required_width=44), INCHES)
    assert [rule.at for rule in rules] == [60, 38, 23]
    assert [rule.at for rule in corridor_rules(Use(corridor_width=60), INCHES)] == [60]
    assert corridor_rules(Use(), INCHES) == ()


def test_the_swing_chart_marks_the_greatest_and_the_rest():
    swings = over_the_swing(study(plain_opening(compare=[4, 4.5])), 1 / 16)
    chart = swing_chart(swings, 1, Use(), INCHES)
    assert [mark.wordings[0] for mark in chart.marks] == [
        "greatest 37-1/32 in at 93.9°",
        "at rest 3-5/8 in at 180°",
    ]
    assert [curve.layer for curve in chart.curves] == ["A-CHRT-OTHR", "A-CHRT-BARE"]
    held = over_the_swing(study(plain_opening(compare=[4.5], use={"stop_angle": 90})), 1 / 16)
    (only,) = swing_chart(held, 0, Use(), INCHES).marks
    assert only.wordings[0] == "greatest, and at rest, 36-15/16 in at 90°"


def test_the_type_of_a_chart_can_be_read():
    assert SIZE >= 7


def test_plain_words_in_the_chart():
    (leaf,) = widths_of(study(plain_opening()))
    chart = width_chart(leaf, INCHES, plain=True)
    assert chart.right.title == "walk-through width, in"
    assert chart.curves[-1].label == "walk-through width (right)"
    assert "clear width" not in chart.said
