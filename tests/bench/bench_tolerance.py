"""What it costs to say how sure a hinge width is: the draws alone, a whole answer, and one while editing.

python tests/bench/bench_tolerance.py
"""

import statistics
import time
from pathlib import Path

import numpy as np

from configurator.geometry.many.solve_many import latch_edges_of, solve_many
from configurator.project_file import load
from configurator.rules.filling.tolerances import fill_tolerances
from configurator.study import study
from configurator.study.tolerance.analysis import DRAWS, tolerance_result, varied_of
from configurator.study.tolerance.deviations import NAMES, TOLERANCE_OF
from configurator.ui.analysis.tolerance_page import FINE, LIVE_DRAWS

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"


def timed(function, times=5):
    """The median of several runs, seconds."""
    runs = []
    for _ in range(times):
        begin = time.perf_counter()
        function()
        runs.append(time.perf_counter() - begin)
    return statistics.median(runs)


def drawn(answer, candidate):
    """The draws of one candidate solved: what a chance is counted from."""
    varied = varied_of(answer, candidate.leaf, candidate.hinge_width)
    tolerances = fill_tolerances(answer.opening)
    limits = np.array([tolerances[TOLERANCE_OF[name]] for name in NAMES])
    off = np.random.default_rng(1).uniform(-1, 1, (len(NAMES), DRAWS)) * limits[:, None]
    many = varied.many(off)
    return lambda: (solve_many(many), latch_edges_of(many))


def main():
    """Print a line for each opening with something on its wall, and for one with nothing."""
    job = load(DEMO)
    for mark in ("101A", "112A", "205A"):
        (opening,) = (one for one in job.openings if one.mark == mark)
        answer = study(opening, job.job)
        one = answer.candidates[-1]
        leaf, width = one.leaf, one.hinge_width
        whole = timed(lambda answer=answer, leaf=leaf, width=width: tolerance_result(answer, leaf, width))
        live = timed(
            lambda answer=answer, leaf=leaf, width=width: tolerance_result(
                answer, leaf, width, LIVE_DRAWS, fineness=FINE
            )
        )
        print(
            f"{mark}, {width:g} in: {DRAWS:,} draws {timed(drawn(answer, one)):.3f} s; "
            f"the whole answer {whole:.3f} s; while editing, {LIVE_DRAWS:,} draws, {live:.3f} s a width"
        )


if __name__ == "__main__":
    main()
