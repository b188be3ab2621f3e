"""What one solve costs, beside a bisection with a general polygon library measured in the same run.

python tests/bench/bench_geometry.py
"""

import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "geometry"))

import math

import judge
import numpy as np
import shapely
from openings import BEVEL, BOX, LEAF, RAIL, case_a
from random_openings import Problem

from configurator.geometry.batch import Many, solve_many
from configurator.geometry.inverse import angle_bare, greatest_projection, least_hinge_width
from configurator.geometry.pin import locate_pin
from configurator.geometry.solve import scene, solve
from configurator.geometry.swing import polar_contact

WIDTHS = (4, 4.5)


def timed(function, times):
    """The median of several runs, microseconds a call."""
    runs = []
    for _ in range(7):
        begin = time.perf_counter()
        for _ in range(times):
            function()
        runs.append((time.perf_counter() - begin) / times * 1e6)
    return statistics.median(runs)


def study():
    """Everything the geometry says about one opening, with its hardware and a rail, on two widths."""
    for W in WIDTHS:
        solve(case_a(W, beta=BEVEL), LEAF, (BOX,), (RAIL,))


def contact_alone(plan):
    return polar_contact(plan.bare, plan.standing, plan.pin.at)


def bisected(bare, standing, pin):
    """First overlap by steps of 1 degree, then halved to 1e-6 degree, with unions of polygons."""
    still = shapely.union_all([part.core for part in standing]).buffer(-1e-9, join_style="mitre")

    def overlaps(degrees):
        return any(judge._turned(part.core, pin, math.radians(degrees)).intersects(still) for part in bare)

    last = next((step for step in range(1, 181) if overlaps(step)), None)
    if last is None:
        return 180.0
    clear, met = last - 1.0, float(last)
    while met - clear > 1e-6:
        middle = (clear + met) / 2
        clear, met = (clear, middle) if overlaps(middle) else (middle, met)
    return met


def many_at_once(count, hardware=()):
    """So many openings of one arrangement with wall, gap, backset and width varied: seconds to solve them."""
    chance = np.random.default_rng(1)
    columns = {
        "p": chance.uniform(-0.5, 0.6, count),
        "W": chance.uniform(3.9, 5.0, count),
        "g_h": chance.uniform(0.09, 0.15, count),
        "b": chance.uniform(0.2, 0.3, count),
    }
    many = Many(
        hanging=case_a(4, beta=BEVEL), leaf=LEAF, hardware=hardware, obstructions=(RAIL,), columns=columns
    )
    begin = time.perf_counter()
    solve_many(many)
    return time.perf_counter() - begin


def main():
    h = case_a(4, beta=BEVEL)
    plan = scene(h, LEAF, (), (RAIL,))
    problem = Problem(h, LEAF, (), (RAIL,))
    leaf, standing = judge.moving_parts(problem)[0][:1], judge.standing_parts(problem)
    pin = locate_pin(h).at
    exact, judged = math.degrees(contact_alone(plan).angle), bisected(leaf, standing, pin)
    two, one = timed(study, 100), timed(lambda: angle_bare(h, LEAF, (RAIL,)), 200)
    alone, general = timed(lambda: contact_alone(plan), 500), timed(lambda: bisected(leaf, standing, pin), 3)
    print(f"one opening studied at two widths        {two:10.0f} us")
    print(f"bare contact angle, parts laid out anew  {one:10.0f} us")
    print(f"bare contact angle, parts laid out       {alone:10.0f} us")
    print(f"the same by bisection, polygon library   {general:10.0f} us   {general / one:.0f} times as long")
    print(f"the two angles                           {exact:.7f} and {judged:.7f} degrees")
    bare_many, all_many = many_at_once(100_000), many_at_once(100_000, (BOX,))
    ratio = general / (bare_many * 10)
    print(f"100,000 openings at once, bare           {bare_many:10.2f} s    {ratio:.0f} times as fast each")
    print(f"100,000 openings at once, with hardware  {all_many:10.2f} s")
    width = timed(lambda: least_hinge_width(h, LEAF, math.pi, (RAIL,)), 10)
    trim = timed(lambda: greatest_projection(h, LEAF, math.pi, (RAIL,), 0), 10)
    print(f"least hinge width by root finding        {width:10.0f} us")
    print(f"greatest projection by root finding      {trim:10.0f} us")


if __name__ == "__main__":
    main()
