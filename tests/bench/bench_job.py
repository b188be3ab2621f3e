"""A job of many openings: opening and saving the file, studying, the take-off, and the memory it all takes.

Run: .venv/bin/python tests/bench/bench_job.py [openings]
"""

import json
import resource
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from configurator.model import Job, Opening
from configurator.order.book import tally_job
from configurator.order.lines import parse_spare
from configurator.order.studied import study_or_fault
from configurator.order.take_off import take_off
from configurator.order.tally import Tally
from configurator.order.uniform import uniform
from configurator.project_file import load, save

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"
T = TypeVar("T")


def timed(words: str, call: Callable[[], T], bar: str = "") -> T:
    """Call once, print how long it took, and return the answer."""
    start = time.perf_counter()
    answer = call()
    print(f"{words:44} {time.perf_counter() - start:8.3f} s   {bar}")
    return answer


def megabytes() -> float:
    """The most memory this process has held."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def varied(opening: Opening, number: int) -> Opening:
    """One more opening like a demo one, no two of them the same."""
    data: dict[str, Any] = opening.model_dump(exclude_unset=True)
    data["mark"] = f"{1000 + number}{'ABCD'[number % 4]}"
    data["size"]["width"] += number / 1e6
    return Opening.model_validate(data)


def job_of(count: int) -> Job:
    """A job of that many openings, the demo ones over and over with another width each."""
    demo = load(DEMO)
    openings = tuple(varied(demo.openings[n % len(demo.openings)], n) for n in range(count))
    return demo.model_copy(update={"openings": openings})


def alike_job(count: int) -> Job:
    """A job of that many openings of the demo's kinds: no two with the same name, many the same otherwise."""
    demo = load(DEMO)
    kinds = len(demo.openings)
    openings = (demo.openings[n % kinds].model_copy(update={"mark": str(n)}) for n in range(count))
    return demo.model_copy(update={"openings": tuple(openings)})


def order_of(job: Job, tallies: tuple[Tally, ...]) -> None:
    """Take the job off twice, so that the second is free of what is loaded once."""
    take_off(tallies[:20], job.job)
    before = megabytes()
    order = timed(
        "take-off, once studied", lambda: take_off(tallies, job.job, parse_spare("5%")), "bar: under 2 s"
    )
    print(f"{len(order.lines)} lines, {order.hinges} hinges, {megabytes() - before:.0f} MB more")
    print(order.reconciliation.words())
    timed("ask for one width for all", lambda: uniform(tallies, job.job))
    timed("the order as data", lambda: json.dumps(order.as_data()))


def main() -> None:
    """Print a line for each thing that is done with a job of that many openings."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    job = job_of(count)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.json"
        timed("save", lambda: save(job, path), "bar: under 0.5 s")
        print(f"{path.stat().st_size / 2**20:.1f} MB on disk, {megabytes():.0f} MB of memory so far")
        job = timed("load", lambda: load(path), "bar: under 1.5 s")
    tallies = timed(f"study {count} openings", lambda: tally_job(job))
    print(f"{megabytes():.0f} MB of memory with all tallies held")
    timed(
        "study one again, as after an edit", lambda: study_or_fault(job.openings[0], job.job), "bar: 0.05 s"
    )
    order_of(job, tallies)
    alike = alike_job(count)
    timed(f"study {count} openings of {len(load(DEMO).openings)} kinds", lambda: tally_job(alike))
    print(f"{megabytes():.0f} MB of memory at most   bar: under 500 MB")


if __name__ == "__main__":
    main()
