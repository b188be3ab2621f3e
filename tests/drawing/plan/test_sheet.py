import math
from dataclasses import replace

import pytest
from shapely.geometry import Polygon as Area
from shapely.geometry import box as rectangular

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.dimension_strokes import line_boxes
from configurator.drawing.base.lettering import text_box, text_width
from configurator.drawing.base.primitives import Arc, Dimension, Polygon, Polyline, Symbol, Text
from configurator.drawing.base.view import Box, Group
from configurator.drawing.plan.dimensions import leaf_on_sheet
from configurator.drawing.plan.dimensions import text_boxes as dimension_boxes
from configurator.drawing.plan.drawn_leaf import turns_clockwise
from configurator.drawing.plan.sheet import (
    FOOT,
    FOOT_OF_FILE,
    bare_plan,
    foot,
    moving_groups,
    moving_note_groups,
    panel_windows,
    plan_sheet,
)
from configurator.geometry.leaf_corners import leaf_corners
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo, demo_pair, random_study
from tests.drawing.plan.picture_bars import ANGLES, faults
from tests.sweeps import sized

SIZE = (864.0, 540.0)
RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
FACTS = JobFacts(name="Kestrel Point Ferry Terminal", number="26-118")


def sheet_of(study, size=SIZE, display=None):
    return plan_sheet(study, display or Display(), *size)


def items(groups, kind):
    return [(item, group.view) for group in groups for item in group.primitives if isinstance(item, kind)]


def all_groups(sheet, angle):
    return (*sheet.still, *sheet.notes, *moving_groups(sheet, angle), *moving_note_groups(sheet, angle))


def text_boxes(groups):
    texts = [
        (item.text, text_box(view.to_sheet(item.at), item.text, item.size, item.anchor, item.bold))
        for item, view in items(groups, Text)
    ]
    return texts + [
        (item.text, text_box(view.to_sheet(item.text_at), item.text, item.size, "middle"))
        for item, view in items(groups, Dimension)
    ]


# --- Dimensions say the candidate's numbers, and touch what they measure ---


@pytest.mark.parametrize("mark", ["112A", "205A", "140A", "122A", "130A", "171A"])
def test_the_dimensions_are_the_candidates_numbers(mark):
    study = demo(mark)
    sheet = sheet_of(study)
    for candidate, panel in zip(study.candidates, sheet.panels, strict=True):
        values = {one.name: one.value for one in panel.dimensions.at(math.pi)}
        if both := values.pop("barrel past frame and wall face", None):
            assert candidate.barrel_past_frame == candidate.barrel_past_wall
            values |= {"barrel past frame face": both, "barrel past wall face": both}
        assert values == {
            "pin axis off door face": candidate.pin_off_door_face,
            "pin axis off frame face": candidate.pin_off_frame_face,
            "barrel past frame face": candidate.barrel_past_frame,
            "barrel past wall face": pytest.approx(candidate.barrel_past_wall, abs=1e-12),
        }
        (clear,) = [one for one in panel.inset.still if isinstance(one, Dimension)]
        assert clear.value == candidate.clear_width_at_90


@pytest.mark.parametrize("seed", range(12))
def test_a_dimension_is_as_long_as_it_says_and_ends_on_what_it_measures(seed):
    for panel in sheet_of(random_study(seed)).panels:
        h, pin = panel.hung.h, panel.hung.pin
        barrel_top = (pin.x_p, pin.y_p + h.d_b / 2)
        ends = {
            "pin axis off door face": ((h.g_h, -h.i), pin.at),
            "pin axis off frame face": ((0, 0), pin.at),
            "barrel past frame face": ((0, 0), barrel_top),
            "barrel past wall face": ((-h.F, -h.p), barrel_top),
            "barrel past frame and wall face": ((0, 0), barrel_top),
        }
        for one in (one for way in range(2) for one in panel.dimensions.way(way)):
            assert (one.a, one.b) == ends[one.name]
            assert one.line_b[1] - one.line_a[1] == pytest.approx(one.value, abs=1e-12)
            assert (one.line_a[1], one.line_b[1]) == (one.a[1], one.b[1])
            assert one.line_a[0] == pytest.approx(one.line_b[0])


def test_the_clear_width_of_case_a_by_hand():
    """W 4: o 1/2, x_p 1/16, so the leaf's face stands at 1/16 + 1/2 + 1-3/4 and the stop at 35-3/8."""
    panel = sheet_of(case_a()).panels[0]
    (clear,) = [one for one in panel.inset.still if isinstance(one, Dimension)]
    assert clear.a[0] == pytest.approx(0.0625 + 0.5 + 1.75)
    assert clear.b == (pytest.approx(35.375), pytest.approx(-1.9375))
    assert clear.line_b[0] - clear.line_a[0] == pytest.approx(33.0625)
    assert clear.text == "33-1/16 in clear at 90°"


def test_a_barrel_behind_the_wall_is_said_so():
    first = sheet_of(demo("122A"), (1200, 700)).panels[0]
    (wall,) = [one for one in first.dimensions.at(math.pi) if one.name == "barrel past wall face"]
    assert wall.value < 0
    assert wall.text.endswith("barrel behind wall face")
    assert not wall.text.startswith("-")


def test_where_frame_and_wall_are_flush_the_barrel_is_dimensioned_once():
    for panel in sheet_of(demo("118A")).panels:
        assert [one.name for one in panel.dimensions.at(math.pi)] == [
            "barrel past frame and wall face",
            "pin axis off door face",
            "pin axis off frame face",
        ]


def test_plain_words_are_lettered_in_the_picture():
    panel = plan_sheet(demo("112A"), Display(), *SIZE, plain=True).panels[0]
    assert [one.text for one in panel.dimensions.at(math.pi)] == [
        "1-5/32 in barrel stands out from wall",
        "21/32 in barrel stands out from frame",
        "1/2 in pin stands off door",
        "3/8 in pin stands off frame",
    ]


def test_metric_is_written_in_the_picture():
    texts = [
        text
        for text, _ in text_boxes(
            moving_note_groups(sheet_of(demo("112A"), display=Display(metric=True)), 180)
        )
    ]
    assert "9.5 mm pin axis off frame face" in texts


# --- Contact and clearance ---


def test_the_contact_is_ringed_where_it_is_and_only_at_the_end_of_the_swing():
    sheet = sheet_of(demo("112A"))
    (ring, _), *_ = [
        (one, view) for one, view in items(moving_note_groups(sheet, 180), Symbol) if one.kind == "contact"
    ]
    assert ring.at == demo("112A").candidates[0].stopped_by.point
    assert not [one for one, _ in items(moving_note_groups(sheet, 171), Symbol) if one.kind == "contact"]


def test_the_contact_is_told_in_words():
    texts = [text for text, _ in text_boxes(moving_note_groups(sheet_of(demo("112A")), 180))]
    assert "leaf on the chair rail at 171.7°" in texts
    assert any(text.startswith("stops at 178.8°: lever on the wall") for text in texts)


def test_the_room_left_at_180_is_an_eighth():
    """Case B: 4-1/2 clears the frame by 1-3/8 and the rail stands 1-3/4 off a wall 1/2 back: 1/8 is left."""
    study = case_a(obstructions=[RAIL])
    (left,) = [
        one
        for one, _ in items(moving_note_groups(sheet_of(study), 180), Dimension)
        if one.name == "clearance to the chair rail"
    ]
    assert left.value == pytest.approx(0.125, abs=1e-12)
    assert math.dist(left.a, left.b) == pytest.approx(left.value)
    assert left.a == (-2.5, 1.25)
    assert left.text == "1/8 in to the chair rail"


def test_where_a_lever_stops_the_door_first_the_room_of_the_leaf_alone_is_told_too():
    sheet = sheet_of(demo("112A"))
    (left,) = [one for one, _ in items(moving_note_groups(sheet, 180), Dimension) if "chair rail" in one.text]
    assert left.value > demo("112A").candidates[1].least_gap == pytest.approx(0.125)
    assert left.text.endswith("to the chair rail, 1/8 in at 180°")
    (before,) = [
        one
        for one, view in items(moving_note_groups(sheet, 178), Dimension)
        if "chair rail" in one.text and view is sheet.panels[1].main.view
    ]
    assert before.text.endswith("to the chair rail")


@pytest.mark.parametrize("size", [SIZE, (622.0, 292.0), (640.0, 300.0), (900.0, 525.0)])
def test_the_room_left_is_told_in_the_usual_windows(size):
    found = items(moving_note_groups(sheet_of(demo("112A"), size), 180), Dimension)
    assert [one.text for one, _ in found if one.name.startswith("clearance")] == [
        "5/32 in to the chair rail, 1/8 in at 180°"
    ]


def test_the_leaf_is_never_drawn_past_what_stops_it():
    sheet = sheet_of(demo("112A"))
    at_the_end, farther = moving_groups(sheet, 178.9), moving_groups(sheet, 180)
    assert at_the_end[0].primitives == farther[0].primitives
    assert at_the_end[1].primitives == farther[1].primitives
    assert moving_groups(sheet, 171)[0].primitives != farther[0].primitives


# --- Nothing overlaps ---


@pytest.mark.parametrize("size", [SIZE, (525.0, 315.0)])
@pytest.mark.parametrize("batch", range(5))
def test_no_two_texts_overlap_on_fifty_openings(size, batch):
    for seed in range(batch * 10, batch * 10 + 10):
        sheet = sheet_of(random_study(seed), size)
        for angle in (20, 90, 180):
            boxes = text_boxes(all_groups(sheet, angle))
            for number, (text, box) in enumerate(boxes):
                hits = [other for other, taken in boxes[number + 1 :] if box.overlaps(taken)]
                assert not hits, (seed, angle, text, hits)


@pytest.mark.parametrize("seed", range(sized(4, 50)))
def test_nothing_lies_over_anything_at_any_angle(seed):
    """All of it: `tests/bench/check_pictures.py`."""
    size = ((630.0, 322.0), (1095.0, 510.0))[seed % 2]
    sheet = plan_sheet(random_study(20 + seed), Display(metric=seed == 3), *size, swept=seed == 4)
    for angle in ANGLES[seed % 3 :: 4]:
        assert list(faults(sheet, angle)) == [], angle


def test_the_checker_of_the_picture_finds_what_lies_over_what():
    sheet = sheet_of(demo("112A"))
    text = next(item for item, _ in items(moving_note_groups(sheet, 180), Dimension))
    at, view = text.text_at, sheet.panels[0].main.view
    over = Text("A-ANNO-TEXT", at, "over it", 8.0, "middle")
    through = Polyline("A-ANNO-LEAD", ((at[0] - 1, at[1] + 0.02), (at[0] + 1, at[1] + 0.02)))
    again = replace(through, points=((at[0] - 0.5, at[1] + 0.02), (at[0] + 2, at[1] + 0.02)))
    worse = replace(sheet, notes=(*sheet.notes, Group(view, (over, through, again))))
    found = " ".join(faults(worse, 180))
    assert all(words in found for words in ("lies over", "is crossed by", "share a line"))


@pytest.mark.parametrize("seed", range(10))
def test_every_text_of_a_panel_lies_in_its_window(seed):
    sheet = sheet_of(random_study(seed), (525.0, 315.0))
    for panel in sheet.panels:
        groups = (*sheet.notes, *moving_note_groups(sheet, 90))
        for text, box in text_boxes([group for group in groups if group.view is panel.main.view]):
            assert panel.main.view.window.holds(box), text


@pytest.mark.parametrize("mark", ["112A", "171A", "205A", "151A"])
@pytest.mark.parametrize("size", [SIZE, (525.0, 315.0)])
def test_headings_fit_their_panels(mark, size):
    sheet = sheet_of(demo(mark), size)
    lines = [item for item, _ in items(moving_note_groups(sheet, 180)[-1:], Text)]
    for line, window in zip(lines, sheet.windows, strict=True):
        assert text_width(line.text, line.size) <= window.width


@pytest.mark.parametrize("mark", ["112A", "101A", "118A", "140A", "151A", "122A"])
def test_no_dimension_s_text_or_line_lies_over_the_leaf(mark):
    sheet = sheet_of(demo(mark))
    for panel in sheet.panels:
        view = panel.main.view
        for angle in range(0, 181, 5):
            turn = panel.hung.shown_at(math.radians(angle))
            leaf = Area(leaf_on_sheet(panel.hung, view, turn)).buffer(-0.1)  # touching is no crossing
            placed = panel.dimensions.at(turn)
            assert placed, angle
            # Extension lines begin at the hinge edge; a leaf that folds over it cannot always be kept off.
            for box in (*dimension_boxes(placed, view), *line_boxes(placed, view, extensions=False)):
                assert not leaf.intersects(rectangular(box.left, box.bottom, box.right, box.top)), angle


@pytest.mark.parametrize("angle", [5, 10, 20, 130])
@pytest.mark.parametrize("mark", ["118A", "151A"])
def test_extension_lines_keep_off_the_leaf_too(mark, angle):
    for panel in sheet_of(demo(mark)).panels:
        leaf = Area(leaf_on_sheet(panel.hung, panel.main.view, math.radians(angle)))
        for box in line_boxes(panel.dimensions.at(math.radians(angle)), panel.main.view):
            assert not leaf.intersects(rectangular(box.left, box.bottom, box.right, box.top))


def test_the_room_left_is_told_near_the_end_of_the_swing_and_never_through_the_barrel():
    def told(angle):
        notes = items(moving_note_groups(sheet_of(demo("151A")), angle), Dimension)
        return [one for one, _ in notes if one.name.startswith("clearance")]

    assert not told(110)  # the end is at 155.4 degrees
    assert told(140)
    panel = sheet_of(demo("151A")).panels[0]
    for one in told(140):
        assert clip_segment(one.a, one.b, Box(*panel.hung.pin.at, *panel.hung.pin.at)) is None


@pytest.mark.parametrize("mark", ["112A", "205A", "171A"])
@pytest.mark.parametrize("size", [(525.0, 150.0), (645.0, 225.0), (645.0, 400.0), (864.0, 540.0)])
def test_names_never_lie_across_the_pin_or_its_dimensions(mark, size):
    """A low picture may have no room for a name, a high one has."""
    for panel in sheet_of(demo(mark), size).panels:
        view = panel.main.view
        x, y = view.to_sheet(panel.hung.pin.at)
        drawn = [*line_boxes(panel.dimensions.at(math.pi), view), Box(x, y, x, y)]
        names = [one for one in panel.main.notes if isinstance(one, Text)]
        assert names or size[1] < 300.0
        for one in names:
            box = text_box(view.to_sheet(one.at), one.text, one.size, one.anchor)
            assert not any(box.overlaps(other) for other in drawn), one.text


# --- Hands ---


@pytest.mark.parametrize(("hand", "mirrored"), [("LH", False), ("RH", True), ("LHR", True), ("RHR", False)])
def test_the_hand_is_only_in_the_view(hand, mirrored):
    plain, handed = sheet_of(case_a(obstructions=[RAIL])), sheet_of(case_a(obstructions=[RAIL], hand=hand))
    for one, other in zip(plain.panels, handed.panels, strict=True):
        assert other.main.view.mirrored is mirrored
        assert other.main.view.scale == one.main.view.scale
        assert other.main.still[-3:] == one.main.still[-3:]
    assert moving_groups(plain, 100)[0].primitives == moving_groups(handed, 100)[0].primitives


def test_a_mirrored_sheet_is_the_other_seen_in_a_mirror():
    plain, mirrored = (sheet_of(case_a(hand=hand)).panels[0].main.view for hand in ("LH", "RH"))
    for point in ((0, 0), (5, 1), (-3, 2)):
        x, y = plain.to_sheet(point)
        other_x, other_y = mirrored.to_sheet(point)
        window = plain.window
        assert other_y == y
        assert other_x == pytest.approx(window.left + window.right - x)


def test_the_outside_is_told():
    below = [text for text, _ in text_boxes(sheet_of(case_a(hand="RH")).still)]
    above = [text for text, _ in text_boxes(sheet_of(case_a(hand="RHR")).still)]
    assert "RH, outside below" in below
    assert "RHR, outside above" in above


def test_a_pairs_inactive_leaf_turns_the_other_way():
    pair = case_a(leaves="pair", size={"width": 72, "height": 84})
    assert {one.leaf for one in pair.candidates} == {"active", "inactive"}
    assert [turns_clockwise(pair.filled, leaf) for leaf in ("active", "inactive")] == [False, True]
    sheet = sheet_of(pair)
    assert len(sheet.panels) == 4
    assert "active leaf" in sheet.panels[0].title


# --- Layout ---


@pytest.mark.parametrize("count", range(1, 13))
def test_panels_share_the_sheet_without_overlap(count):
    windows = panel_windows(count, *SIZE)
    assert len(windows) == count
    whole = Box(0, 0, *SIZE)
    for number, window in enumerate(windows):
        assert whole.holds(window)
        assert window.width > 90
        assert window.height > 60
        assert not any(window.overlaps(other) for other in windows[number + 1 :])


def test_two_panels_stand_side_by_side_at_one_scale():
    sheet = sheet_of(demo("112A"))
    one, other = sheet.panels
    assert one.main.view.scale == other.main.view.scale
    assert one.main.view.window.bottom == other.main.view.window.bottom
    assert panel_windows(0, *SIZE) == ()


def test_the_argument_lies_in_the_window():
    sheet = sheet_of(demo("112A"))
    for panel in sheet.panels:
        view, h, pin = panel.main.view, panel.hung.h, panel.hung.pin
        rail = (-h.F - 0.5, -h.p + 1.75)
        for point in (pin.at, (0, 0), (-h.F, -h.p), rail, (h.s, -h.D)):
            assert view.window.has(view.to_sheet(point))


# --- What is drawn is what was solved ---


def test_arcs_stay_arcs():
    panel = sheet_of(demo("112A")).panels[0]
    barrel = [one for one in moving_groups(sheet_of(demo("112A")), 90)[0].primitives if isinstance(one, Arc)]
    assert next(one.radius for one in barrel) == pytest.approx(panel.hung.h.d_b / 2)
    assert all(one.centre == panel.hung.pin.at for one in barrel)
    swept = [one for one in panel.inset.still if isinstance(one, Arc)]
    assert swept[0].end - swept[0].start == pytest.approx(panel.hung.reach)


def test_the_open_leaf_keeps_its_size_and_turns_about_the_pin():
    sheet = sheet_of(case_a())
    panel = sheet.panels[0]
    leaf = next(
        one
        for one in moving_groups(sheet, 90)[0].primitives
        if isinstance(one, Polygon) and "leaf" in one.name
    )
    for corner, closed in zip(leaf.points, leaf_corners(panel.hung.h), strict=True):
        assert math.dist(corner, panel.hung.pin.at) == pytest.approx(math.dist(closed, panel.hung.pin.at))
    assert leaf.points[0][0] == pytest.approx(0.0625 + 0.5 + 1.75)  # the stop-side face at 90 degrees


@pytest.mark.parametrize("size", [(640, 360), (400, 300), (900, 420)])
def test_headings_of_a_pair_keep_to_their_panels_and_are_lettered_alike(size):
    sheet = sheet_of(demo_pair("302A"), size)
    titles = [one for one in sheet.notes[-1].primitives if isinstance(one, Text) and one.bold]
    assert len(titles) == len(sheet.windows) == 4
    assert len({one.size for one in titles}) == 1
    for one, window in zip(titles, sheet.windows, strict=True):
        assert text_width(one.text, one.size, bold=True) <= window.width


def lines(width=864.0, job=None, display=None):
    found = foot(demo("112A"), display or Display(), 20.0, width, job)
    return [one.text for one in found if isinstance(one, Text)]


def test_on_the_screen_the_mark_comes_first():
    assert lines()[0].startswith(
        "112A · seen from above, pull side up, hinges right · all at one scale · frame"
    )


def test_a_file_says_of_which_opening_and_job_it_is():
    location = demo("112A").opening.location
    reading, whose, _ = lines(job=FACTS)
    assert reading.startswith("seen from above")
    assert whose == (
        f"opening 112A · {location} · 3'-0\" x 7'-0\" · Kestrel Point Ferry Terminal · job 26-118"
    )


def test_a_date_stands_only_where_the_job_has_one():
    assert lines(job=FACTS.model_copy(update={"date": "3 May 2026"}))[1].endswith("job 26-118 · 3 May 2026")
    assert lines(job=JobFacts())[1].endswith("3'-0\" x 7'-0\"")


def test_what_does_not_fit_is_left_off_from_the_end():
    assert lines(width=240.0, job=FACTS)[1].startswith("opening 112A")
    assert "Kestrel" not in lines(width=240.0, job=FACTS)[1]


def test_the_panels_leave_room_for_both_lines():
    alone, file = (plan_sheet(demo("112A"), Display(), 864, 540, job) for job in (None, FACTS))
    assert {window.bottom for window in alone.windows} == {FOOT}
    assert {window.bottom for window in file.windows} == {FOOT_OF_FILE}


@pytest.mark.parametrize(
    ("metric", "scale", "label", "inches"),
    [
        (False, 30.0, "2 in", 2.0),  # 60 points: just fits
        (False, 30.1, "1 in", 1.0),
        (True, 30.0, "50 mm", 50 / 25.4),
        (True, 31.0, "20 mm", 20 / 25.4),
    ],
)
def test_the_scale_bar_is_in_the_unit_of_the_dimensions(metric, scale, label, inches):
    parts = foot(demo("112A"), Display(metric=metric), scale, 864.0, None)
    (base,) = [one for one in parts if isinstance(one, Polyline)]
    assert base.points[1][0] - base.points[0][0] == pytest.approx(inches * scale)
    assert [one.text for one in parts if isinstance(one, Text)][-1] == label


@pytest.fixture
def study():
    """112A on two widths."""
    return demo("112A")


def test_the_plans_are_those_of_the_sheet_with_the_leaf_closed(study):
    groups = bare_plan(study, 600.0, 400.0)
    sheet = plan_sheet(study, Display(), 600.0, 400.0)
    assert len(groups) == 1 + len(study.candidates)
    for group, panel in zip(groups[1:], sheet.panels, strict=True):
        assert group.view == panel.main.view
        assert set(panel.main.still) <= set(group.primitives)
        assert len(group.primitives) > len(panel.main.still)


def test_nothing_in_it_is_lettered_dimensioned_or_marked(study):
    items = [item for group in bare_plan(study, 600.0, 400.0) for item in group.primitives]
    assert not any(isinstance(item, Text) for item in items)
    assert {item.layer for item in items}.isdisjoint({"A-ANNO-DIMS", "A-ANNO-REDL", "A-ANNO-NOTE"})
