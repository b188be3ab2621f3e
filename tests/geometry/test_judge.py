"""The exact contact against an independent sweep with a general polygon library."""

import random
from dataclasses import replace

import pytest
import shapely

from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import Leaf
from configurator.geometry.solve import solve
from tests.geometry import judge
from tests.geometry.random_openings import Problem, random_hanging, random_problem
from tests.sweeps import sized


@pytest.mark.parametrize("seed", range(sized(3, 12)))
def test_first_contacts_agree_with_the_sweep(seed):
    chance = random.Random(f"contacts {seed}")
    for _ in range(25):
        problem = random_problem(chance)
        verdict = judge.check(problem)
        assert not verdict.wrong, (verdict.wrong, problem)


def test_the_judge_can_fail():
    """A problem judged with its frame moved by 1/1000 in must be seen to disagree."""
    problem = Problem(
        random_hanging(random.Random(2), p=-2.0, F=2, W=4, beta=0.0625, g_l=0.125),
        Leaf(barrels=()),
    )
    contact = solve(problem.hanging, problem.leaf).bare
    assert contact.kind == "wall"
    moved = Problem(replace(problem.hanging, p=-2.001), problem.leaf)
    bare, _ = judge.moving_parts(moved)
    standing = judge.standing_parts(moved)
    pin = locate_pin(moved.hanging).at
    angle, together = judge.judged(bare, standing, pin)
    assert judge.disagreement(contact, angle, together, bare, standing, pin)


def test_a_mirrored_opening_swung_clockwise_meets_the_same():
    """Everything mirrored left to right and turned the other way by the judge, against the exact answer."""
    chance = random.Random("mirror")
    for _ in range(sized(40, 60)):
        problem = random_problem(chance)
        contact = solve(problem.hanging, problem.leaf, (), problem.obstructions, problem.other).bare
        pin = locate_pin(problem.hanging).at
        bare, standing = judge.moving_parts(problem)[0], judge.standing_parts(problem)
        for part in (*bare, *standing):
            part.core, part.sense = shapely.transform(part.core, lambda xy: xy * [-1, 1]), -1
        mirrored = (-pin[0], pin[1])
        angle, together = judge.judged(bare, standing, mirrored)
        assert not judge.disagreement(contact, angle, together, bare, standing, mirrored), problem
