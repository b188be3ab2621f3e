"""How long a whole study takes, and how much of it the choosing of the hinge is beyond the geometry.

Run: .venv/bin/python tests/bench/bench_study.py [openings]
"""

import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

from configurator.model import Opening
from configurator.project_file import load
from configurator.rules.filling.usual import fill
from configurator.rules.hinge.leaf_hinge import leaf_hinges
from configurator.rules.specification import specify
from configurator.study import study
from configurator.study.run import LeafHanger

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"


def milliseconds(call: Callable[[], object], times: int = 40) -> float:
    """Median of several calls."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        call()
        taken.append((time.perf_counter() - start) * 1e3)
    return statistics.median(taken)


def choosing(opening: Opening) -> float:
    """Milliseconds of choosing alone, the geometry answered from memory."""
    filled = fill(opening)
    hanger, hinges = LeafHanger(filled), leaf_hinges(filled)
    specify(filled, hinges, hanger)
    return milliseconds(lambda: specify(filled, hinges, hanger))


def many(openings: tuple[Opening, ...], count: int) -> float:
    """Seconds for that many openings, each a little different so that nothing is answered from memory."""
    varied = [
        opening.model_copy(
            update={"size": opening.size.model_copy(update={"width": opening.size.width + number / 1e6})}
        )
        for number, opening in zip(range(count), openings * (count // len(openings) + 1), strict=False)
    ]
    start = time.perf_counter()
    for opening in varied:
        study(opening)
    return time.perf_counter() - start


def main() -> None:
    """Print a line an opening of the demo job, then the time for many."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    openings = load(DEMO).openings
    print("opening   study ms   choosing alone ms")
    for opening in openings:
        whole = milliseconds(lambda one=opening: study(one))
        print(f"{opening.mark:8} {whole:9.2f} {choosing(opening):12.2f}")
    seconds = many(openings, count)
    print(f"{count} openings: {seconds:.1f} s, {seconds / count * 1e3:.2f} ms each")


if __name__ == "__main__":
    main()
