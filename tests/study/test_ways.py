"""Ways of hanging a door beside one another: figures worked by hand, and an independent sweep."""

import math
import random

import pytest
from pydantic import ValidationError

from configurator.drawing.pages.notes import assumed_note
from configurator.drawing.pages.page import papers
from configurator.drawing.sheets import sheet_maker
from configurator.model import JobFacts, Opening, Way
from configurator.model.paths import vocabulary
from configurator.study import study
from configurator.study.derivation.derive import KEYS, derive
from configurator.study.events import moments
from configurator.study.over_the_swing import over_the_swing
from configurator.study.tolerance.analysis import tolerance_result
from configurator.study.widths.width_pair import width_pair
from configurator.units import Display
from configurator.wording.comparison import comparisons
from configurator.wording.verdict import client_sayings
from tests.bench import judge_ways
from tests.openings import LEVER, RAIL, plain_data, plain_opening
from tests.sweeps import sized

# Case A of the hand-worked figures: O 36, T 1-3/4, gaps 1/8, R 1-15/16, k 1/16, s 5/8, i 1/8, D 5-7/8.
DOOR = {"thickness": 1.75, "hinge_gap": 0.125, "latch_gap": 0.125, "latch_bevel": 0, "hinge_backset": 0.25}
FRAME = {"rabbet": 1.9375, "stop_gap": 0.0625, "stop_height": 0.625, "face": 2, "jamb_depth": 5.875}
CASE_A = {"mark": "1", "size": "3070", "door": DOOR, "frame": FRAME}
CASE_A |= {"wall": {"thickness": 4.875, "frame_proud": 0.5}, "hinge": {"barrel": 0.58}}


def way(kind, off=None, heel=None, **more):
    axis = {"axis_off_face": off, "axis_from_heel": heel}
    return {"hung_on": kind, **{key: value for key, value in axis.items() if value is not None}, **more}


def hung(*entries, **changes):
    """Every candidate as data, in order."""
    opening = Opening.model_validate({**CASE_A, **changes, "compare": list(entries)})
    return [one.as_data() for one in study(opening).candidates]


def codes(found):
    return {finding["code"] for finding in found["findings"]}


# --- Figures by hand


def test_swing_clear_leaves_the_whole_opening_clear_but_for_the_stops():
    """Square open its stop face stands at the rabbet face: 36 less two stops of 5/8."""
    (found,) = hung(way("swing clear hinge"))
    assert found["axis_off_face"] == pytest.approx(0.58 / 2 + 0.125)
    assert found["axis_from_heel"] == pytest.approx(-(0.415 + 1.75) - 0.125)
    assert found["clear_width_at_90"] == 36 - 2 * 0.625
    assert (found["hung_on"], found["hinge_width"], found["greatest_angle"]) == (
        "swing clear hinge",
        None,
        180,
    )


def test_an_axis_beyond_the_heel_is_typed():
    """x = 1/8 - 3 = -2-7/8; square open the stop face stands at -2-7/8 + 1/2 + 1-3/4 < 0: the stop limits."""
    (found,) = hung(way("swing clear hinge", 0.5, -3))
    assert found["pin_across"] == -2.875
    assert found["clear_width_at_90"] == 34.75


def test_an_offset_pivot_takes_its_offset_twice():
    """With 3/16 between door and stop the heel passes; square open x = 7/8 + 3/4 + 1-3/4 = 3-3/8."""
    frame = FRAME | {"rabbet": 2.0625, "stop_gap": 0.1875}
    (found,) = hung(way("offset pivot", 0.75, 0.75), frame=frame)
    assert found["pin_across"] == 0.875
    assert found["clear_width_at_90"] == 36 - 0.625 - 3.375
    assert (found["barrel_past_frame"], found["barrel_free_by"], found["barrel_diameter"]) == (
        None,
        None,
        None,
    )
    assert found["toward"] == "pull"


def test_an_offset_pivot_whose_heel_meets_the_stop():
    """The stop corner lies 3/4 back and 2-1/2 behind the axis; the stop 2-9/16 behind it."""
    (found,) = hung(way("offset pivot", 0.75, 0.75))
    by_hand = math.atan2(0.75, 2.5) - math.acos(2.5625 / math.hypot(0.75, 2.5))
    assert found["greatest_angle"] == pytest.approx(math.degrees(by_hand), abs=1e-9)
    assert found["stopped_by"] == {"kind": "stop", "index": None, "part": "leaf"}
    assert found["clear_width_at_90"] is None
    assert "heel binds" in codes(found)


def test_a_centre_hung_heel_that_is_square_binds_on_the_jamb():
    """The corner's radius is hypot(2-3/4, 7/8) = 2.886 and the jamb 2-7/8 from the axis."""
    pull, push = hung(way("centre-hung pivot"))
    by_hand = math.atan2(0.875, 2.75) - math.acos(2.875 / math.hypot(2.75, 0.875))
    for found, toward in ((pull, "pull"), (push, "push")):
        assert found["toward"] == toward
        assert found["greatest_angle"] == pytest.approx(math.degrees(by_hand), abs=1e-9)
        assert (found["axis_off_face"], found["axis_from_heel"]) == (-0.875, 2.75)
        (heel,) = (one for one in found["findings"] if one["code"] == "heel binds")
        assert heel["numbers"]["gap_needed"] == pytest.approx(math.hypot(2.75, 0.875) - 2.75)


def test_a_centre_hung_heel_that_is_rounded_clears_by_its_gap():
    """No stop in the frame: square open 36 less 2-7/8 and half the thickness, both ways."""
    pull, push = hung(way("centre-hung pivot", heel_radius=2.75))
    for found in (pull, push):
        assert found["clear_width_at_90"] == 36 - 2.875 - 0.875
        assert found["hinge_edge_least"] == pytest.approx(0.125)
        assert "heel binds" not in codes(found)
    assert pull["greatest_angle"] > push["greatest_angle"] > 90  # deeper behind the push side's frame face


def test_the_two_sides_are_alike_where_the_leaf_stands_in_the_middle():
    """Door and axis in the middle of the jamb and the frame in the middle of the wall."""
    frame = FRAME | {"rabbet": 2.0625 + 1.75, "stop_gap": 0, "jamb_depth": 5.875}
    wall = {"thickness": 4.875, "frame_proud": 0.5}
    pull, push = hung(way("centre-hung pivot", -0.875, 3, heel_radius=3), frame=frame, wall=wall)
    same = (
        "greatest_angle",
        "clear_width_at_90",
        "encroachment_greatest",
        "latch_edge_least",
        "hinge_edge_least",
    )
    assert {key: pull[key] for key in same} == pytest.approx({key: push[key] for key in same})
    (x, y), (x_2, y_2) = pull["contact_point"], push["contact_point"]
    assert (x_2, y_2) == pytest.approx((x, -5.875 - y))


def test_a_single_acting_centre_hung_door_keeps_its_stop_at_the_latch():
    (found,) = hung(way("centre-hung pivot", heel_radius=2.75, acting="single"))
    assert found["clear_width_at_90"] == 36 - 0.625 - 2.875 - 0.875
    assert found["toward"] == "pull"


def test_a_spring_hinge_has_a_barrel_before_either_face():
    pull, push = hung(way("double-acting spring hinge", 0.5, -0.0625))
    assert (pull["axis_off_face"], push["axis_off_face"]) == (0.5, -2.25)
    # Square open: 1/16 across, 1/2 off the face and the thickness; nothing in the frame to limit it.
    assert pull["clear_width_at_90"] == push["clear_width_at_90"] == 36 - 0.0625 - 0.5 - 1.75


def test_a_continuous_hinge_stands_beside_both_faces():
    """A barrel of 1/2 in on the frame's face: 1/4 off it and 3/8 off the door, in the middle of the gap."""
    (found,) = hung(way("continuous hinge"))
    assert (found["axis_off_face"], found["pin_off_frame_face"]) == (0.375, 0.25)
    assert found["clear_width_at_90"] == 36 - 0.625 - (0.0625 + 0.375 + 1.75)
    assert found["barrel_past_frame"] == 0.5


@pytest.mark.parametrize(("width", "off"), [(4, 0.5), (4.5, 0.75), (5, 1.0)])
def test_a_butt_by_its_axis_is_the_butt_by_its_width(width, off):
    by_width, by_axis = hung(width, way("butt hinge", off, -0.0625))
    assert by_axis["hinge_width"] == width
    assert {key: value for key, value in by_axis.items() if key != "findings"} == pytest.approx(
        {key: value for key, value in by_width.items() if key != "findings"}
    )
    assert (by_width["hung_on"], by_width["toward"]) == ("butt hinge", "pull")
    assert (by_width["axis_off_face"], by_width["axis_from_heel"]) == (off, -0.0625)


def test_a_butt_without_an_axis_is_the_one_taken():
    opening = Opening.model_validate({**CASE_A, "compare": [way("butt hinge"), way("offset pivot")]})
    answer = study(opening)
    taken = answer.specification.leaves[0].parts["width"].value
    assert [one.hinge_width for one in answer.butts] == [taken]
    assert "width not compared" not in {one.code for one in answer.findings}


def test_candidates_go_by_leaf_then_in_the_order_of_compare():
    pair = plain_opening(
        leaves="pair",
        size={"width": 72, "height": 84},
        compare=[way("offset pivot"), 4.5, way("continuous hinge")],
    )
    names = [(one.leaf, one.hung_on) for one in study(pair).candidates]
    of_leaf = ["offset pivot", "butt hinge", "continuous hinge"]
    assert names == [(leaf, kind) for leaf in ("active", "inactive") for kind in of_leaf]


def test_what_is_carried_and_what_stands_stop_another_way_too():
    """A lever 2-1/2 out meets the rail on the pull side only; toward the push side nothing stands."""
    spring = way("double-acting spring hinge")
    pull, push = hung(spring, hardware=[LEVER], obstructions=[RAIL | {"top": 36.0, "bottom": 32.0}])
    assert pull["stopped_by"]["kind"] == "chair rail"
    assert push["stopped_by"]["kind"] == "frame"


# --- What is typed


def test_what_does_not_go_together_is_refused():
    for wrong, words in (
        (way("offset pivot", acting="double"), "only a centre-hung pivot"),
        (way("centre-hung pivot", -0.875, -1, heel_radius=2), "in from the heel edge"),
        (way("pivot"), "offset pivot"),
    ):
        with pytest.raises(ValidationError, match=words):
            plain_opening(compare=[wrong])


def test_a_heel_radius_that_does_not_reach_both_faces_is_told():
    with pytest.raises(ValueError, match="does not reach both faces"):
        study(plain_opening(compare=[way("centre-hung pivot", heel_radius=0.5)]))


def test_an_assumed_axis_is_asked_for_and_a_typed_one_is_not():
    assumed, typed = hung(way("offset pivot"), way("offset pivot", 0.75, 0.75))
    assert "axis not given" in codes(assumed)
    assert "axis not given" not in codes(typed)
    (asked,) = (one for one in assumed["findings"] if one["code"] == "axis not given")
    assert "before ordering" in asked["message"]
    assert asked["mark_of_source"] == "common practice"


# --- In words


def test_a_butt_and_a_pivot_stand_side_by_side_in_words():
    table = comparisons(study(plain_opening(compare=[4, way("offset pivot")])), Display())[0]
    assert table.widths == table.heads == ("butt 4 in", "offset pivot")
    assert table.between == "butt 4 in to offset pivot"
    rows = {row.key: row.values for row in table.rows}
    assert rows["barrel_past_frame"][1] == "no barrel"
    assert rows["axis_from_heel"][1] == "3/4 in"
    assert {row.key: row.values for row in table.told}["sold_by"] == ("each", "set")


def test_butts_alone_are_headed_as_ever():
    table = comparisons(study(plain_opening(compare=[4, 4.5])), Display())[0]
    assert (table.widths, table.between, table.told) == (("4 in", "4-1/2 in"), "4 to 4-1/2", ())
    assert "axis_from_heel" not in {row.key for row in table.rows}


# --- Tolerances


@pytest.mark.parametrize("kind", judge_ways.KINDS[1:])
def test_how_sure_another_way_is(kind):
    """Every draw is one of the openings the single path answers: as drawn it says the same."""
    wide = plain_data(door={"hinge_gap": 0.375, "latch_bevel": 0.0625}, use={"wanted_angle": 90})
    radius = {"heel_radius": 2.75} if kind == "centre-hung pivot" else {}
    answer = study(Opening.model_validate(wide | {"compare": [way(kind, **radius)]}))
    for one in answer.candidates:
        found = tolerance_result(answer, one.leaf, one.on, draws=50, fineness=0.1)
        assert found.as_drawn.greatest_angle == pytest.approx(one.greatest_angle_bare)
        assert found.as_drawn.clear_width_at_90 == pytest.approx(one.clear_width_at_90)


# --- Against the sweep


def test_every_way_is_swept():
    unswept = sorted(set(vocabulary()["compare.hung_on"]) - set(judge_ways.KINDS))
    assert unswept == [], "say in KINDS and random_way of tests/bench/judge_ways.py where their axis may lie"


@pytest.mark.parametrize("kind", judge_ways.KINDS)
def test_every_way_agrees_with_the_sweep(kind):
    chance = random.Random(f"ways {kind}")
    for _ in range(sized(4, 200)):
        opening = judge_ways.random_opening(chance, kind)
        assert not judge_ways.check(opening), opening


def test_the_judge_of_ways_can_fail(monkeypatch):
    opening = judge_ways.random_opening(random.Random(3), "continuous hinge")
    assert not judge_ways.check(opening)
    moved = opening.compare[0].model_copy(update={"axis_off_face": opening.compare[0].axis_off_face + 0.01})
    monkeypatch.setattr(
        judge_ways, "axis_of", lambda opening, way, real=judge_ways.axis_of: real(opening, moved)
    )
    assert judge_ways.check(opening)


def test_a_way_is_told_by_its_words():
    assert Way.model_validate(way("offset pivot", 0.75, 0.75)).words == "offset pivot (3/4 off, 3/4 in)"


# --- What is proposed


def proposed(**changes):
    answer = study(plain_opening(**changes))
    return [one for one in answer.findings if one.code == "another way to hang it"]


def test_a_heavy_much_used_door_is_offered_a_continuous_hinge():
    busy = {"door": {"weight": 200}, "use": {"traffic": "high"}}
    (found,) = proposed(**busy)
    assert "continuous hinge" in found.message
    ((_, *_, way),) = (one.value for one in found.fix)
    assert way.hung_on == "continuous hinge"
    assert proposed(door={"weight": 199}, use={"traffic": "high"}) == []
    assert proposed(door={"weight": 200}) == []
    assert proposed(**busy, compare=[4.5, {"hung_on": "continuous hinge"}]) == []


def test_a_storefront_door_is_offered_offset_pivots_and_nothing_else_is():
    (found,) = proposed(frame={"kind": "aluminum storefront"})
    assert "offset pivots" in found.message
    assert proposed() == proposed(frame={"kind": "aluminum storefront"}, hung_on="pivots") == []


# --- On paper and on the screen


@pytest.mark.parametrize("kind", ["plan", "client", "before-after", "elevation", "prep"])
def test_every_sheet_is_drawn_with_other_ways_beside_a_butt(kind):
    opening = plain_opening(
        hand="RH",
        compare=[
            4.5,
            *(way(one) for one in judge_ways.KINDS[1:5]),
            way("centre-hung pivot", heel_radius=2.75),
        ],
    )
    page = sheet_maker(kind)(study(opening), JobFacts(), papers()["Tabloid"], None, Display(), (1, 1))
    assert page.details


@pytest.mark.parametrize("kind", ["plan", "client", "before-after"])
def test_sheets_are_drawn_with_no_butt_at_all(kind):
    for entries in (
        [way("offset pivot")],
        [way("centre-hung pivot", heel_radius=2.75)],
        [way("continuous hinge")],
    ):
        answer = study(plain_opening(compare=entries))
        assert sheet_maker(kind)(answer, JobFacts(), papers()["Tabloid"], None, Display(), (1, 1)).details


def test_what_was_assumed_of_an_axis_stands_on_the_sheet():
    said = assumed_note(study(plain_opening(compare=[4, way("offset pivot")])), Display()).paragraphs[0]
    assert "axis off the door's face of the offset pivot, 3/4 in from the pull face (common practice)" in said


def test_every_number_of_another_way_has_its_work():
    for kind in judge_ways.KINDS[1:]:
        for one in study(plain_opening(compare=[way(kind)])).candidates:
            for key in KEYS:
                value = getattr(one, key)
                work = derive(one, key)
                if work.value is not None and value is not None:
                    assert work.value == pytest.approx(value, abs=1e-6), (kind, key)


def test_what_happens_over_the_swing_is_told_of_every_way():
    answer = study(plain_opening(compare=[4, *(way(kind) for kind in judge_ways.KINDS[1:])]))
    assert len(over_the_swing(answer, 0.0625)) == len(answer.candidates)
    assert moments(answer)


def test_a_client_is_told_of_a_butt_beside_a_pivot():
    answer = study(plain_opening(compare=[4.5, way("continuous hinge")], obstructions=[RAIL]))
    said = " ".join(client_sayings(answer, width_pair(answer), Display()))
    assert "Continuous hinge: " in said
    assert "The way through is 32-13/16 in wide on the 4-1/2 in hinge." in said
    assert "The way through is 33-3/16 in wide on the continuous hinge." in said
    assert "wider hinge" not in said


def test_a_tolerance_draws_where_the_axis_stands():
    """Flat with o = 1 it lies 2 o - 1/8 + 1/2 = 2-3/8 off the wall: 1/8 over a rail of 2-1/4.

    So the axis may stand 1/16 nearer the face; along the door it does not matter. A rounded heel keeps it.
    """
    rail = {**RAIL, "projection": 2.25}
    entry = way("continuous hinge", 1, 0.25)
    opening = Opening.model_validate(
        {**CASE_A, "compare": [entry], "obstructions": [rail], "use": {"wanted_angle": 180}}
    )
    answer = study(opening)
    found = tolerance_result(answer, "single", answer.candidates[0].on, draws=20)
    along = found.effect("axis_from_heel")
    assert found.effect("axis_off_face").minus.turns_at == pytest.approx(1 / 16, abs=1e-8)
    assert found.effect("frame_setting").minus.turns_at == pytest.approx(1 / 8, abs=1e-8)
    assert found.margins["swing"] == pytest.approx(1 / 8, abs=1e-8)
    assert (along.minus.turns_at, along.tolerance) == (None, 1 / 64)
    rounded = way("centre-hung pivot", heel_radius=2.9)
    held = study(opening.model_copy(update={"compare": (Way.model_validate(rounded),)}))
    for one in held.candidates:
        result = tolerance_result(held, one.leaf, one.on, draws=5, fineness=0.5)
        assert {end.at.greatest_angle for _, end in result.effect("axis_off_face").ends} == {
            result.as_drawn.greatest_angle
        }
