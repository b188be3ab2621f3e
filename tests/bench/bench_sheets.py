"""How long fifty plan sheets take as one PDF, from records to bytes, and what of it is what.

Prints medians of several runs, and the share of layout and of writing; the bar is 1.5 seconds.
Run: .venv/bin/python tests/bench/bench_sheets.py
"""

import statistics
import time
from itertools import cycle, islice

from configurator.drawing.pages.page import papers
from configurator.drawing.sheets import sheet_maker
from configurator.export.pages import pages_as_bytes
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import study
from configurator.units import Display

SHEETS, RUNS = 50, 5


def main() -> None:
    """Print the figures."""
    jobs = [
        load(resource_path("demo_openings", name)) for name in ("kestrel_point.json", "pairs_and_dutch.json")
    ]
    openings = list(islice(cycle((job, one) for job in jobs for one in job.openings), SHEETS))
    make, paper = sheet_maker("plan"), papers()["Letter"]

    def pages():
        for number, (job, opening) in enumerate(openings, 1):
            yield make(study(opening, job.job), job.job, paper, None, Display(), (number, SHEETS))

    first = time.perf_counter()
    written = pages_as_bytes(pages(), ".pdf")
    print(f"first run, fonts and modules loaded: {time.perf_counter() - first:.2f} s")
    layouts, writings = [], []
    for _ in range(RUNS):
        start = time.perf_counter()
        laid_out = list(pages())
        middle = time.perf_counter()
        assert pages_as_bytes(laid_out, ".pdf") == written, "the same sheets gave other bytes"
        layouts.append(middle - start)
        writings.append(time.perf_counter() - middle)
    whole = statistics.median(a + b for a, b in zip(layouts, writings, strict=True))
    print(f"{SHEETS} plan sheets: {whole:.2f} s, {1000 * whole / SHEETS:.0f} ms each")
    print(f"  laid out {statistics.median(layouts):.2f} s, written {statistics.median(writings):.2f} s")
    print(f"  {len(written) / 1024:.0f} KiB, the same bytes every time")


if __name__ == "__main__":
    main()
