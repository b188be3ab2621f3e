"""The right answers against figures worked out anew from nothing but the words of each question."""

import math
import re
from pathlib import Path

import pytest

from configurator.practice.answers import LengthAnswer
from configurator.practice.course import BY_KEY
from configurator.practice.leaves import practice_leaf
from configurator.practice.problem import pose
from configurator.units import parse_length

NUMBER = re.compile(r"\d+-\d+/\d+|\d+/\d+|\d+\.\d+|\d+")
SEEDS = range(25)


def numbers(question):
    """Every number of a question, in the order they stand in it."""
    return [parse_length(text) for text in NUMBER.findall(question)]


def off_door(T, _, W, b):
    """Of a hinge size the second figure counts."""
    return W / 2 - (T - b)


def off_frame(T, _, W, b, R, k):
    return off_door(T, _, W, b) - (R - k - T)


def flat(T, _, W, b, R, k):
    return 2 * off_door(T, _, W, b) - (R - k - T)


def relief(T, rise, over=None):
    """A bevel in degrees, or so much in so much."""
    return T * (math.tan(math.radians(rise)) if over is None else rise / over)


WORKED = {
    "inset of a door": lambda R, k, T: R - k - T,
    "pin off the door face": off_door,
    "pin off the frame face": off_frame,
    "pin from the frame side": lambda R, b_f, _, W: W / 2 - (R - b_f),
    "pin across": lambda gap: gap / 2,
    "barrel past the frame": lambda y_p, d_b: y_p + d_b / 2,
    "barrel past the wall": lambda T, _, W, b, R, k, p, d_b: off_frame(T, _, W, b, R, k) + d_b / 2 + p,
    "clearance past the door face": lambda T, _, W, b: 2 * off_door(T, _, W, b),
    "clearance past the frame": flat,
    "clearance past the wall": lambda T, _, W, b, R, k, p: flat(T, _, W, b, R, k) + p,
    "gain of a wider hinge": lambda _, narrow, __, wide: wide - narrow,
    "spare over a rail": lambda face, rail: face - rail,
    "least width by the handbook": lambda T, b, c: 2 * (T - b) + c,
    "clear width lost to a wider hinge": lambda _, narrow, __, wide: (wide - narrow) / 2,
    "clear width at 90": lambda wide, s, T, x_p, o: (wide - s) - (x_p + o + T),
    "relief of a bevel": relief,
    "gap at a square lock edge": lambda arris, corner: arris - corner,
    "out into the corridor, flat": lambda o, T, i, p=0.0: 2 * o - i + p + T,
    "out into the corridor at 90": lambda along, y_p, p=0.0: along + y_p + p,
    "what remains of a corridor": lambda out, corridor: corridor - out,
    "net width of a door": lambda wide, g_h, g_l: wide - g_h - g_l,
    "net height of a door": lambda height, head, undercut: height - head - undercut,
    "open width of a hinge": lambda height, width: width,
}


@pytest.mark.parametrize("key", WORKED)
def test_the_right_length_follows_from_the_numbers_of_the_question(key):
    for seed in SEEDS:
        problem = pose(BY_KEY[key], seed).problem
        worked = WORKED[key](*numbers(problem.question))
        assert isinstance(problem.answer, LengthAnswer)
        assert problem.answer.value == pytest.approx(worked, abs=1e-9), problem.question
        rounded = round(worked / problem.answer.step) * problem.answer.step
        assert problem.answer.is_right(f"{rounded:.6f}")


def count(height):
    return 2 if height <= 60 else 3 + math.ceil(max(height - 90, 0) / 30)


COUNTED = {
    "count of hinges": count,
    "hinges of a job": lambda doors, height: doors * count(height),
    "hinges in pairs": lambda doors, each: doors * each,
    "doors from pairs": lambda pairs, each: pairs * 2 / each,
    "hinges of two heights": lambda low, short, high, tall: low * count(short) + high * count(tall),
    "hinges of double doors": lambda openings, height: 2 * openings * count(height),
    "wood screws": lambda doors, each, leaf: doors * each * leaf,
    "setting that keeps the lever off": lambda _, angle, __, most: min(math.floor(angle), most),
}


@pytest.mark.parametrize("key", COUNTED)
def test_the_right_count_follows_from_the_numbers_of_the_question(key):
    for seed in SEEDS:
        problem = pose(BY_KEY[key], seed).problem
        assert problem.answer.value == COUNTED[key](*numbers(problem.question)), problem.question


def test_a_bumper_goes_as_far_along_the_wall_as_its_point_is_along_the_door():
    for seed in SEEDS:
        problem = pose(BY_KEY["place of a bumper"], seed).problem
        _, along = numbers(problem.question)
        assert problem.answer.value == pytest.approx(along, abs=0.5)
        assert problem.answer.is_right(str(round(2 * along) / 2))


def turned(point, degrees):
    turn = math.radians(degrees)
    x, y = point
    return x * math.cos(turn) - y * math.sin(turn), x * math.sin(turn) + y * math.cos(turn)


def hung(opening):
    """A practice opening as it hangs, and what of its plan the angles are worked from."""
    found = practice_leaf(opening.model_dump(exclude_unset=True), opening.compare[0])
    return found, found.h, found.pin


def test_at_the_angle_of_a_rail_its_corner_lies_in_the_face():
    met = 0
    for seed in SEEDS:
        for opening in pose(BY_KEY["angle at a rail"], seed).problem.picture.openings:
            found, h, pin = hung(opening)
            rail, angle = opening.obstructions[0], found.hung().greatest_angle_bare
            corner = (-(h.F + rail.start + pin.x_p), rail.projection - h.p - pin.y_p)
            if corner[1] > 0 and angle < 180:
                x, y = turned(corner, -angle)
                assert y == pytest.approx(-pin.o, abs=1e-6)
                assert x > 0
                met += 1
    assert met > 20


def test_at_the_angle_of_a_return_wall_the_corner_lies_in_it():
    for seed in SEEDS:
        problem = pose(BY_KEY["angle at a return wall"], seed).problem
        beside, along = numbers(problem.question)
        found, _, pin = hung(problem.opening)
        angle = found.hung().greatest_angle_bare
        assert turned((along, -pin.o), angle)[0] == pytest.approx(-beside, abs=1e-6)
        assert float(problem.answer.right.removesuffix("°")) == pytest.approx(angle, abs=2.5)


def test_the_shares_of_a_door_are_the_angles_past_square():
    for share, past in ((0.1, 5), (0.25, 15), (0.5, 30), (0.87, 60)):
        assert math.degrees(math.asin(share)) == pytest.approx(past, abs=0.8)


def test_at_the_angle_of_a_lever_its_corner_lies_in_the_wall():
    met = 0
    for seed in SEEDS:
        for opening in pose(BY_KEY["angle of a lever on the wall"], seed).problem.picture.openings:
            found, h, pin = hung(opening)
            lever, angle = opening.hardware[0], found.hung().greatest_angle
            along = h.O - h.g_l - (lever.from_latch_edge + lever.width / 2) - pin.x_p
            corner = turned((along, lever.projection - pin.o), angle)
            if angle < 180:
                assert corner[1] == pytest.approx(-(h.p + pin.y_p), abs=1e-6)
                met += 1
    assert met > 20


FROM_OUTSIDE = {
    ("left", "away"): "LH",
    ("right", "away"): "RH",
    ("left", "toward"): "LHR",
    ("right", "toward"): "RHR",
}
FROM_INSIDE = {
    ("right", "toward"): "LH",
    ("left", "toward"): "RH",
    ("right", "away"): "LHR",
    ("left", "away"): "RHR",
}


@pytest.mark.parametrize(
    ("key", "hands"), [("hand seen from outside", FROM_OUTSIDE), ("hand seen from inside", FROM_INSIDE)]
)
def test_the_hand_follows_from_what_is_seen(key, hands):
    seen = set()
    for seed in SEEDS:
        problem = pose(BY_KEY[key], seed).problem
        side, swing = re.search(
            r"on your (left|right) and the door opens (away|toward)", problem.question
        ).groups()
        assert problem.answer.right == hands[side, swing]
        seen.add(problem.answer.right)
    assert seen == {"LH", "RH", "LHR", "RHR"}


def test_the_hand_from_push_and_pull():
    for seed in SEEDS:
        problem = pose(BY_KEY["hand from push and pull"], seed).problem
        found = re.search(
            r"From (outside|inside) you (push|pull) .* lock edge is on your (left|right)", problem.question
        )
        where, does, lock = found.groups()
        side = "right" if lock == "left" else "left"
        swing = "toward" if does == "pull" else "away"
        hands = FROM_OUTSIDE if where == "outside" else FROM_INSIDE
        assert problem.answer.right == hands[side, swing], problem.question


def test_the_hand_from_the_rooms():
    form = r"from (.*?)\. Standing in (.*?) you see the hinges on your (left|right); .*into (.*?)\."
    for seed in range(60):
        problem = pose(BY_KEY["hand from the rooms"], seed).problem
        outside, stands, side, into = re.search(form, problem.question).groups()
        swing = "toward" if into == stands else "away"
        hands = FROM_OUTSIDE if stands == outside else FROM_INSIDE
        assert problem.answer.right == hands[side, swing], problem.question


def test_the_middle_hinge_of_a_seven_foot_door_by_either_rule():
    middles = {}
    for seed in range(200):
        problem = pose(BY_KEY["place of the middle hinge"], seed).problem
        if "the head rabbet is 84 in" in problem.question:
            middles[re.search("“(.*?)”", problem.question)[1]] = problem.answer.shown
    assert middles == {"5 and 10": "44-1/2 in", "7 and 11": "44 in"}


def test_a_slip_is_the_part_that_was_made_wrong_and_every_other_part_is_right():
    fine = 0
    for key, template in BY_KEY.items():
        if key.startswith("slip: "):
            for seed in range(6):
                problem = pose(template, seed).problem
                *parts, none = problem.answer.options
                assert all(part in problem.question for part in parts)
                assert problem.answer.options.count(problem.answer.right) == 1
                if problem.answer.right == none:
                    fine += 1
                    continue
                mended = problem.solution[-1].removeprefix("It should read: ").removesuffix(".")
                assert problem.answer.right in parts
                assert mended not in problem.answer.options
    assert 8 < fine < 28


READ_OR_CHOSEN = {
    "opening width from figures",
    "opening height from figures",
    "feet into inches",
    "opening size in figures",
    "hinge size from measures",
    "what a hand says",
    "hand from a plan",
    "side the barrel shows on",
    "height of a hinge",
    "place of the top hinge",
    "bearing of a hinge",
    "pin of a hinge",
    "count on a Dutch door",
    "look of a number",
    "number of a finish",
    "US code of a number",
    "metal of a number",
    "same look on steel",
    "whether it folds flat",
    "least width in stock",
    "least width over a rail",
    "clear width of an accessible door",
    "least opening width",
    "whether a square edge binds",
    "enough corridor at rest",
    "enough corridor in the swing",
    "what a door wants",
    "setting at a return wall",
    "what ends the swing",
}
"""What is right here is read in a table or follows from a number above; its rule has tests of its own."""


def test_every_problem_is_worked_by_hand_or_read_in_a_table():
    text = Path(__file__).read_text("utf-8").partition("READ_OR_CHOSEN = {")[0]
    worked = {key for key in BY_KEY if f'"{key}"' in text or key.startswith("slip: ")}
    unworked = sorted(set(BY_KEY) - worked - READ_OR_CHOSEN)
    assert unworked == [], "work these by hand above, or list them in READ_OR_CHOSEN"
    assert set(BY_KEY) == worked | READ_OR_CHOSEN
    assert not worked & READ_OR_CHOSEN
