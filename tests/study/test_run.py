"""The whole study against figures worked by hand, and against published rules."""

import json
import math
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.model import JobFacts
from configurator.project_file import load
from configurator.study import Candidate, study
from tests.openings import BOX, LEVER, RAIL, answers, plain_opening
from tests.sweeps import examples

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"


def demo(mark: str) -> dict[float, Candidate]:
    job = load(DEMO)
    (opening,) = (one for one in job.openings if one.mark == mark)
    return {one.hinge_width: one for one in study(opening, job.job).candidates}


@pytest.mark.parametrize(
    ("width", "off_door", "off_frame", "barrel", "clear", "clear_width"),
    [
        (4, 0.5, 0.375, 0.665, 0.875, 33.0625),
        (4.5, 0.75, 0.625, 0.915, 1.375, 32.8125),
        (5, 1.0, 0.875, 1.165, 1.875, 32.5625),
        (6, 1.5, 1.375, 1.665, 2.875, 32.0625),
    ],
)
def test_the_plain_case_by_hand(width, off_door, off_frame, barrel, clear, clear_width):
    (one,) = answers(compare=[width])
    assert one.pin_off_door_face == pytest.approx(off_door, abs=1e-9)
    assert one.pin_off_frame_face == pytest.approx(off_frame, abs=1e-9)
    assert one.pin_across == pytest.approx(1 / 16, abs=1e-9)
    assert one.barrel_past_frame == pytest.approx(barrel, abs=1e-9)
    assert one.barrel_past_wall == pytest.approx(barrel + 0.5, abs=1e-9)
    assert one.clear_past_frame_at_180 == pytest.approx(clear, abs=1e-9)
    # O - s - (x_p + o + T), from the door's face to the stop, as 2010 ADA Standards 404.2.3 defines it.
    assert one.clear_width_at_90 == pytest.approx(clear_width, abs=1e-9)
    assert one.greatest_angle_bare == 180.0
    assert one.stopped_by_bare is None


@pytest.mark.parametrize(
    ("width", "square", "beveled"),
    [
        (4, 0.056345, 0.123466),
        (4.5, 0.043280, 0.122582),
        (5, 0.030221, 0.121692),
        (6, 0.004128, 0.113054),
        (7, None, 0.086858),
    ],
)
def test_latch_edge_square_and_beveled(width, square, beveled):
    (one,) = answers(compare=[width])
    (slanted,) = answers(compare=[width], door={"latch_bevel": 1 / 16})
    assert slanted.latch_edge_least == pytest.approx(beveled, abs=5e-7)
    if square is None:
        assert one.latch_edge_least == 0
        assert one.greatest_angle_bare == pytest.approx(2.3842, abs=5e-5)
        assert one.stopped_by_bare.between == ("latch jamb", None, "leaf")
    else:
        assert one.latch_edge_least == pytest.approx(square, abs=5e-7)
        # Past the arris: its distance from the pin less that of the stop-side corner.
        off = width / 2 - 1.5
        by_hand = math.hypot(36 - 1 / 16, off - 1 / 8) - math.hypot(36 - 1 / 8 - 1 / 16, off + 1.75)
        assert one.latch_edge_least == pytest.approx(by_hand, abs=1e-9)


def test_a_rail_stops_the_narrow_hinge_and_lets_the_wider_pass():
    narrow, wide = answers(obstructions=[RAIL])
    # Rail corner about the pin: (-(F + start) - x_p, projection - p - y_p); the face stands o off the pin.
    x, y = 2.5 + 1 / 16, 1.75 - 0.5 - 0.375
    by_hand = 180 - math.degrees(math.atan2(y, x) - math.asin(0.5 / math.hypot(x, y)))
    assert narrow.greatest_angle_bare == pytest.approx(by_hand, abs=1e-9)
    assert narrow.greatest_angle_bare == pytest.approx(171.788, abs=5e-4)
    assert narrow.stopped_by_bare.between == ("chair rail", 0, "leaf")
    assert narrow.stopped_by.point == pytest.approx((-2.5, 1.25), abs=1e-9)
    assert wide.greatest_angle_bare == 180.0
    assert wide.least_gap == pytest.approx(1 / 8, abs=1e-9)


def test_hardware_meets_the_rail_or_the_wall():
    with_rail = answers(obstructions=[RAIL], hardware=[BOX])
    assert with_rail[0].greatest_angle == pytest.approx(171.788, abs=5e-4)
    assert with_rail[0].stopped_by.part == "leaf"
    assert with_rail[1].greatest_angle == pytest.approx(175.624, abs=5e-4)
    assert with_rail[1].stopped_by.between == ("chair rail", 0, "other")
    bare_wall = answers(hardware=[BOX])
    assert [one.greatest_angle for one in bare_wall] == pytest.approx([177.9269, 178.8477], abs=5e-5)
    assert bare_wall[0].stopped_by.kind == "wall"
    # The box's outer corner nearest the latch: on its circle until it comes down to the wall.
    x, y = 35.875 - 2.75 - 2 - 1 / 16, 2.5 - 0.5
    by_hand = 180 + math.degrees(math.asin((0.5 + 0.375) / math.hypot(x, y)) - math.atan2(y, x))
    assert bare_wall[0].greatest_angle == pytest.approx(by_hand, abs=1e-9)


@pytest.mark.parametrize(("proud", "angle"), [(-7 / 8, 180.0), (-1, 176.5568), (-1.5, 163.6774)])
def test_a_frame_behind_the_wall_face(proud, angle):
    (one,) = answers(compare=[4], wall={"frame_proud": proud})
    assert one.greatest_angle_bare == pytest.approx(angle, abs=5e-5)
    assert (one.stopped_by_bare is None) == (angle == 180.0)
    if angle == 180.0:
        assert one.greatest_angle_bare == 180.0


def test_encroachment_by_hand():
    _, wide = answers(use={"stop_angle": 90})
    assert wide.encroachment_at_rest == pytest.approx(36.9375, abs=1e-9)
    _, flat = answers()
    # Bare and flat on the wall: 2 o - i + p + T.
    assert flat.encroachment_at_rest == pytest.approx(1.5 - 0.125 + 0.5 + 1.75, abs=1e-9)


def test_no_clear_width_at_an_angle_the_door_does_not_reach():
    wall = {"kind": "return wall", "start": 0}
    (one,) = answers(compare=[4], obstructions=[wall], hardware=[BOX | {"projection": 4}])
    assert one.greatest_angle < 90 < one.greatest_angle_bare
    assert one.clear_width_at_90 is None
    assert one.hardware_in_clear_width is None


# --- The worked openings of the demo job, to the precision printed with them ---


def test_101a_the_lever_meets_the_wall():
    one = demo("101A")[4]
    assert (one.greatest_angle_bare, one.stopped_by.part) == (180.0, "lever")
    assert one.greatest_angle == pytest.approx(177.927, abs=5e-4)
    assert one.clear_width_at_90 == pytest.approx(33 + 1 / 16, abs=1e-9)


def test_101a_where_a_bumper_goes():
    (said,) = (one for one in demo("101A")[4].findings if one.code == "hardware meets first")
    # In line with the spindle, 1-3/4 from the latch edge; the tip stands 1 - 1/2 - 3/8 = 1/8 past the pin.
    rho = math.hypot(35.875 - 1.75 - 1 / 16, 2.5 - 0.5)
    along = math.sqrt(rho**2 - 0.125**2) - 1 / 16 - 2
    assert along == pytest.approx(32.0584, abs=5e-5)
    assert "1 in off the wall, 32 in along the wall from the frame (34-1/16 in from the pin)" in said.message
    assert "38 in above the floor: the door then rests at 176.4°" in said.message
    assert said.numbers["rests_at"] == pytest.approx(180 - math.degrees(0.125 / rho + 2 / 34.0625), abs=0.02)


def test_112a_the_lever_passes_over_the_rail():
    found = demo("112A")
    assert found[4].greatest_angle == pytest.approx(171.788, abs=5e-4)
    assert found[4].stopped_by.between == ("chair rail", 0, "leaf")
    assert found[4.5].greatest_angle_bare == 180.0
    assert found[4.5].least_gap == pytest.approx(1 / 8, abs=1e-9)
    assert found[4.5].stopped_by.between == ("wall", None, "lever")
    assert found[4.5].greatest_angle == pytest.approx(178.848, abs=5e-4)
    assert demo("112B")[4.5].greatest_angle_bare == pytest.approx(171.842, abs=5e-4)


def test_205a_wood_with_casing_and_plinth():
    found = demo("205A")
    assert found[3].greatest_angle_bare == pytest.approx(143.406, abs=5e-4)
    assert found[3].stopped_by_bare.between == ("casing", 1, "leaf")
    assert found[3.5].greatest_angle_bare == 180.0
    assert found[3.5].clear_width_at_90 == pytest.approx(29 + 33 / 64, abs=1e-9)
    assert found[3.5].stopped_by.between == ("wall", None, "knob")
    assert found[3.5].greatest_angle == pytest.approx(177.551, abs=5e-4)


def test_130a_140a_and_171a():
    assert demo("130A")[4.5].greatest_angle == pytest.approx(179.034, abs=5e-4)
    assert demo("130A")[4.5].clear_width_at_90 == pytest.approx(38 + 13 / 16, abs=1e-9)
    assert demo("140A")[4].greatest_angle_bare == 180.0
    toilet = demo("171A")
    assert [toilet[w].greatest_angle_bare for w in (4, 4.5, 6)] == pytest.approx(
        [100.545, 100.944, 102.136], abs=5e-4
    )
    assert toilet[4].greatest_angle == pytest.approx(96.676, abs=5e-4)


def test_our_own_openings_teach_what_their_notes_say():
    assert demo("118A")[4].greatest_angle_bare == 180.0
    assert demo("122A")[4].greatest_angle_bare == pytest.approx(176.5568, abs=5e-5)
    assert demo("122A")[4.5].greatest_angle_bare == 180.0
    assert demo("126C")[4.5].stopped_by_bare.kind == "latch jamb"
    assert demo("151A")[4].stopped_by_bare.kind == "column"
    held = demo("160A")[4.5]
    assert 60 - held.encroachment_at_rest == pytest.approx(23 + 1 / 16, abs=1e-9)
    assert demo("164A")[4].hardware_in_clear_width == pytest.approx(3.5, abs=1e-9)


def test_heights_that_do_not_overlap_do_not_touch():
    below = {"kind": "base", "projection": 20, "start": 0.5, "bottom": 0, "top": 0.75}
    above = {"kind": "other", "projection": 20, "start": 0.5, "bottom": 83.875}
    free = answers(compare=[4])[0]
    for thing in (below, above):
        assert answers(compare=[4], obstructions=[thing])[0].greatest_angle_bare == free.greatest_angle_bare
    touching = below | {"top": 0.76}
    assert answers(compare=[4], obstructions=[touching])[0].greatest_angle_bare < 120


def test_published_rule_for_the_width_of_a_butt():
    """The Building Trades Pocketbook, Doors: a 2 in door, 1-7/8 projection, 5-3/8, use 5-1/2."""
    on_the_list = (5.0, 5.5, 6.0)
    thing = {"kind": "casing", "projection": 1.875, "start": 0, "length": 4}
    frame = {"kind": "wood with casing", "rabbet": 2, "stop_gap": 0, "face": 0.5}  # door flush with the frame

    def angle(width):
        return answers(
            compare=[width],
            door={"thickness": 2, "latch_bevel": 0.0625, "hinge_backset": 0.25},
            frame=frame,
            wall={"frame_proud": 0},
            obstructions=[thing],
        )[0].greatest_angle_bare

    assert 2 * (2 - 0.25) + 1.875 == 5.375
    assert angle(5.375) == 180.0
    assert angle(5.375 - 1e-6) < 180.0
    assert next(width for width in on_the_list if angle(width) == 180.0) == 5.5


def test_pin_at_half_the_distance_to_the_outside_of_the_trim():
    """A woodwork-joints text, Open Joint Hingeing: the pin stands half way, door face to architrave."""
    trim = 1.25
    (one,) = answers(compare=[2 * (1.75 - 0.25) + trim])
    assert one.pin_off_door_face == pytest.approx(trim / 2, abs=1e-9)


# --- Findings and the usual widths ---


def codes(candidate: Candidate) -> set[str]:
    return {finding.code for finding in candidate.findings}


@pytest.mark.parametrize(
    ("width", "code"), [(3.8, "barrel overlaps"), (3.83, "barrel close"), (3.9, None), (4, None)]
)
def test_barrel_freedom_at_its_boundaries(width, code):
    # Free when y_p = W/2 - 1.625 is at least d_b/2 = 0.29: from 3.83 on; confirmed from 3.8925 on.
    found = codes(answers(compare=[width])[0]) & {"barrel overlaps", "barrel close"}
    assert found == ({code} if code else set())


def test_findings_say_what_to_do_with_their_numbers():
    for one in answers(obstructions=[RAIL], hardware=[LEVER], use={"accessible": True}):
        for finding in one.findings:
            assert finding.message.endswith(".")
            assert finding.source
            assert finding.numbers


@pytest.mark.parametrize(("width", "short"), [(36, False), (35.1875, False), (35.1874, True), (34, True)])
def test_clear_width_of_an_accessible_door_is_strict(width, short):
    one = answers(size={"width": width}, compare=[4.5], use={"accessible": True})[0]
    assert ("too narrow to pass" in codes(one)) == short


def test_a_width_no_one_stocks_is_said():
    assert "wider than stock" in codes(answers(compare=[9])[0])
    assert "not a stock size" in codes(answers(compare=[4.25])[0])
    assert not codes(answers(compare=[4.5])[0])


def test_no_widths_given_takes_the_least_without_an_error_and_the_next_wider():
    assert [one.hinge_width for one in answers(compare=[])] == [4.0, 4.5]


def test_a_shallow_rabbet_is_said():
    found = study(plain_opening(frame={"rabbet": 1.5}))
    assert "door stands proud" in {finding.code for finding in found.findings}
    assert found.candidates[0].greatest_angle_bare > 0


def test_backsets_that_disagree_are_said_and_the_frame_rules():
    one = answers(compare=[4], door={"hinge_backset": 0.25}, frame={"hinge_backset": 0.375})[0]
    assert "backsets disagree" in codes(one)
    assert one.pin_off_frame_face == pytest.approx(2 - (1.9375 - 0.375), abs=1e-9)


def test_a_given_leaf_gap_that_does_not_fit_is_said():
    one = answers(compare=[4], hinge={"leaf_gap": 1 / 16})[0]
    assert "gaps disagree" in codes(one)
    assert one.pin_across == pytest.approx(1 / 32, abs=1e-9)


def test_the_results_are_plain_data():
    found = study(plain_opening(obstructions=[RAIL], hardware=[LEVER]))
    data = json.loads(json.dumps(found.as_data(), allow_nan=False))
    assert data["mark"] == "1"
    assert data["candidates"][0]["stopped_by"] == {"kind": "chair rail", "index": 0, "part": "leaf"}
    assert data["candidates"][0]["hinge_width"] == 4


@examples(30)
@given(
    narrow=st.integers(62, 90),
    wider=st.integers(1, 40),
    projection=st.integers(1, 160),
    start=st.integers(0, 200),
)
def test_a_wider_hinge_lifts_the_pin_and_more_trim_never_opens_farther(narrow, wider, projection, start):
    rail = {"kind": "chair rail", "projection": projection / 32, "start": start / 16}
    more = rail | {"projection": (projection + 8) / 32}
    widths = [narrow / 16, (narrow + wider) / 16]
    first, second = answers(compare=widths, obstructions=[rail], door={"latch_bevel": 0.0625})
    assert second.pin_off_frame_face > first.pin_off_frame_face
    behind = answers(compare=widths, obstructions=[more], door={"latch_bevel": 0.0625})
    for less, one in zip(behind, (first, second), strict=True):
        assert less.greatest_angle_bare <= one.greatest_angle_bare + 1e-9


def test_the_jobs_standard_mounting_is_what_the_plan_is_drawn_with():
    job = JobFacts.model_validate({"standard_hinge": {"mounting": "half surface", "leaf_gap": 0.0625}})
    (one,) = study(plain_opening(compare=[4.5]), job).candidates
    # Half surface hangs off the door face by half the barrel.
    assert one.pin_off_door_face == pytest.approx(0.29, abs=1e-9)


def test_hardware_on_a_leaf_that_is_not_there_is_said():
    found = study(plain_opening(hardware=[LEVER | {"leaf": "upper"}]))
    assert "hardware on no leaf" in {one.code for one in found.findings}
    assert "hardware on no leaf" not in {one.code for one in study(plain_opening(hardware=[LEVER])).findings}
