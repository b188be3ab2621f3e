"""Every template of practice over many seeds: one right answer each, and how long a problem takes to pose.

    .venv/bin/python tests/bench/check_practice.py 1000

The tests do this for ten thousand seeds in all; here each template has as many as are asked for.
"""

import sys
import time
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from configurator.practice.course import TEMPLATES
from configurator.practice.problem import Template, pose
from tests.practice.test_problems import check


def posed_in(template: Template, seeds: int) -> list[float]:
    """Pose and check a template's problems; return how many milliseconds each took to pose."""
    times = []
    for seed in range(seeds):
        start = time.perf_counter()
        posed = pose(template, seed)
        times.append(1000 * (time.perf_counter() - start))
        check(posed)
    return times


def main() -> None:
    """Check every template."""
    seeds = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    slowest: list[tuple[float, str]] = []
    for template in TEMPLATES:
        slowest.append((median(posed_in(template, seeds)), template.key))
    print(f"{len(TEMPLATES)} templates, {seeds} seeds each: every problem has one right answer")
    for took, key in sorted(slowest, reverse=True)[:3]:
        print(f"{took:6.2f} ms  {key}")


if __name__ == "__main__":
    main()
