"""What one solve costs, beside a bisection with a general polygon library measured in the same run.

Times are the processor's, on one core, so that what else the machine does counts little.

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

from configurator.geometry.inverse.widths import angle_bare, greatest_projection, widths_that_work
from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.many.answers import answers_of
from configurator.geometry.many.solve_many import Many, latch_edges_of, solve_many
from configurator.geometry.pin import locate_pin
from configurator.geometry.solve import scene, solve
from configurator.geometry.swing import polar_contact

WIDTHS = (4, 4.5)


def timed(function, times):
    """The median of several runs, microseconds a call."""
    runs = []
    for _ in range(7):
        begin = time.process_time()
        for _ in range(times):
            function()
        runs.append((time.process_time() - begin) / times * 1e6)
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
    """So many openings of one arrangement with wall, gap, backset and width varied."""
    chance = np.random.default_rng(1)
    columns = {
        "p": chance.uniform(-0.5, 0.6, count),
        "W": chance.uniform(3.9, 5.0, count),
        "g_h": chance.uniform(0.09, 0.15, count),
        "b": chance.uniform(0.2, 0.3, count),
    }
    return Many(
        hanging=case_a(4, beta=BEVEL), leaf=LEAF, hardware=hardware, obstructions=(RAIL,), columns=columns
    )


def seconds(function):
    begin = time.process_time()
    function()
    return time.process_time() - begin


def every_answer(many):
    """All that a single study says, for each of many openings."""
    solved = solve_many(many)
    latch_edges_of(many)
    answers_of(many, solved)


def draws(many):
    """What a draw of chances asks: how far it opens, its clear width, its barrel and its latch edge."""
    solve_many(many)
    latch_edges_of(many)


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
    bare, fitted = many_at_once(100_000), many_at_once(100_000, (BOX,))
    bare_many, all_many = seconds(lambda: solve_many(bare)), seconds(lambda: solve_many(fitted))
    ratio = general / (bare_many * 10)
    print(f"100,000 openings at once, bare           {bare_many:10.2f} s    {ratio:.0f} times as fast each")
    print(f"100,000 openings at once, with hardware  {all_many:10.2f} s")
    print(f"100,000 draws with their latch edges     {seconds(lambda: draws(bare)):10.2f} s")
    print(f"100,000 openings, every answer           {seconds(lambda: every_answer(fitted)):10.2f} s")
    solution = solve(h, LEAF, (BOX,), (RAIL,))
    print(f"least gaps with the walls, one opening   {timed(lambda: least_gaps(solution), 100):10.0f} us")
    width = timed(lambda: widths_that_work(h, LEAF, math.pi, (RAIL,)), 10)
    trim = timed(lambda: greatest_projection(h, LEAF, math.pi, (RAIL,), 0), 10)
    print(f"every span of hinge widths that works    {width:10.0f} us")
    print(f"greatest projection by root finding      {trim:10.0f} us")


if __name__ == "__main__":
    main()
