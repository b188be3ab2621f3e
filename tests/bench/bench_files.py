"""How long the files of a large job take: to its first rows in the window, to be saved, to be kept.

Run it as `python tests/bench/bench_files.py [OPENINGS] [RUNS]`. Each run is a process of its own, started
as a user would start it on the file; medians are printed with their bars, and 1 is returned when one is
missed.
"""

import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
sys.path.insert(0, str(ROOT))

BARS = {"to first rows": 1.5, "first save": 0.5, "next save": 0.5}
"""Seconds, for ten thousand openings."""

WINDOW = """
import json, sys, time
asked, path = float(sys.argv[1]), sys.argv[2]
from pathlib import Path
from configurator.ui import app

def measured(window):
    found = {"to first rows": time.monotonic() - asked, "... processor time": time.process_time()}
    assert window.openings.list.count() > 0
    session = window.session
    for name in ("first save", "next save"):
        session.edit("location", name)
        start = time.monotonic()
        session.save()
        found[name] = time.monotonic() - start
    window.files.begin()
    session.edit("location", "to be kept")
    start = time.monotonic()
    window.files.keep_now()
    found["keeping, first"] = time.monotonic() - start
    session.edit("location", "to be kept again")
    start = time.monotonic()
    window.files.keep_now()
    found["keeping, next (beside the window)"] = time.monotonic() - start
    start = time.monotonic()
    window.files._keeping.look()
    found["a look at the file"] = time.monotonic() - start
    print(json.dumps(found), flush=True)
    window.files.close()
    app.QApplication.exit()

app.fill = measured  # what the window does as soon as it was painted
app.run_window(Path(path))
"""


def large_job(path: Path, count: int) -> None:
    """Write a job of so many openings, the demo ones over and over."""
    from configurator.project_file import load, save

    demo = load(DEMO)
    openings = demo.openings
    many = (openings[n % len(openings)].model_copy(update={"mark": f"{1000 + n}A"}) for n in range(count))
    save(demo.model_copy(update={"openings": tuple(many)}), path)


def one_run(path: Path, folder: Path) -> dict[str, float]:
    """Open the window on the file in a new process and return what it measured, in seconds."""
    own = {name: str(folder) for name in ("XDG_STATE_HOME", "XDG_CONFIG_HOME", "PYTHONPYCACHEPREFIX")}
    environment = {**os.environ, **own, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-c", WINDOW, str(time.monotonic()), str(path)]
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)
    found: dict[str, float] = json.loads(done.stdout)
    return found


def main(count: int, runs: int) -> int:
    """Print the medians; return 1 when a bar is missed."""
    missed = 0
    with tempfile.TemporaryDirectory() as name:
        path = Path(name) / "large.json"
        large_job(path, count)
        print(f"{count:,} openings, {path.stat().st_size / 2**20:.1f} MB, {runs} runs")
        one_run(path, Path(name))  # compiles, and warms the disk's cache
        measured = [one_run(path, Path(name)) for _ in range(runs)]
    for what in measured[0]:
        median = statistics.median(run[what] for run in measured)
        bar = BARS.get(what)
        missed += bar is not None and median > bar
        print(f"{what:36} {median:7.3f} s" + (f"   bar {bar:g} s" if bar else ""))
    return int(missed > 0)


if __name__ == "__main__":
    words = [*sys.argv[1:], *("10000", "5")[len(sys.argv) - 1 :]]
    sys.exit(main(int(words[0]), int(words[1])))
