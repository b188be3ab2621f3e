"""A schedule of many openings in the window: its first rows, one edit, finding, sorting, and the memory.

Run it as `python tests/bench/bench_schedule.py [OPENINGS]`. The window is started in a process of its own on
a file of so many different openings, as a user would start it; every step counts until the window has shown
it. Times are the processor's, for the clock of a busy machine says little; nothing here waits for anything
else. Figures are printed with their bars, and 1 is returned when one is missed.
"""

import json
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

BARS = {
    "first rows of the window, from the file": 1500.0,
    "first rows of the schedule, from the file": 1500.0,
    "edit one, median": 50.0,
    "edit one, slowest": 50.0,
    "find, median": 100.0,
    "find, slowest": 100.0,
    "most memory, everything worked out": 500.0,
}
"""Milliseconds, and megabytes, for ten thousand openings."""

WINDOW = """
import json, os, resource, statistics, sys, time, traceback
asked, path = float(sys.argv[1]), sys.argv[2]
from pathlib import Path
from PySide6.QtCore import QSettings, Qt, QTimer
from configurator.ui import app

found = {}

def milliseconds(act, shown):
    app.QApplication.processEvents()
    start = time.process_time()
    act()
    shown.repaint()
    return (time.process_time() - start) * 1000

def painted(window):
    found["first rows of the window, from the file"] = time.process_time() * 1000
    found["... by the clock"] = (time.monotonic() - asked) * 1000
    window.turn_to("schedule")
    page = window.pages.made["schedule"]
    page.table.viewport().repaint()
    assert page.schedule.rowCount() > 0 and page.table.rowAt(0) == 0
    found["first rows of the schedule, from the file"] = time.process_time() * 1000

def settled(window):
    page = window.pages.made["schedule"]
    while page.behind.running:
        app.QApplication.processEvents()
    QTimer.singleShot(0, lambda: or_end(window, page))

def or_end(window, page):
    try:
        measured(window, page)
    except BaseException:
        traceback.print_exc()
        os._exit(1)

def note(what, times):
    found[what + ", median"] = statistics.median(times)
    found[what + ", slowest"] = max(times)

def measured(window, page):
    def timed(act):
        return milliseconds(act, page.table.viewport())

    study = page.answers._studier
    openings, facts = window.session.job.openings, window.session.job.job
    begun = time.process_time()
    for opening in openings[-40:]:
        study(opening, facts)
    found["an answer, for how busy the machine is"] = (time.process_time() - begun) * 1000 / 40
    model, count = page.schedule, page.schedule.rowCount()
    rows = [count * place // 12 for place in range(12)]
    edits = []
    for turn, row in enumerate(rows):
        column, typed = ((2, str(50 + turn)), (3, "LHR"), (1, f"place {turn}"))[turn % 3]
        def edit(row=row, column=column, typed=typed):
            page.table.scrollTo(model.index(row, 0))
            assert model.setData(model.index(row, column), typed) or column == 3
        edits.append(timed(edit))
    note("edit one", edits)
    line = page.finder.words
    def find(text):
        line.setText(text)
        line.textEdited.emit(text)
    words = ("g", "ga", "gall", "galley 10", "zzz", "lh 7", "")
    note("find", [timed(lambda: find(text)) for text in words])
    head = page.table.horizontalHeader()
    order = Qt.SortOrder.AscendingOrder
    note("sort", [timed(lambda: head.setSortIndicator(place, order)) for place in (0, 1, 2, 4, 6, 9)])
    bar = page.table.verticalScrollBar()
    note("scroll", [timed(lambda: bar.setValue(bar.maximum() * part // 20)) for part in range(20)])
    note("group like ones, and not", [timed(page.finder.grouped.click) for _ in range(4)])
    note("undo", [timed(window.session.undo) for _ in range(6)])
    start = time.process_time()
    head.setSortIndicator(8, order)
    waits = []
    while page.working.running:
        begun = time.process_time()
        app.QApplication.processEvents()
        waits.append((time.process_time() - begun) * 1000)
    found["work everything out, to sort by it"] = (time.process_time() - start) * 1000
    found["... and the longest the window did not answer"] = max(waits, default=0.0)
    assert not page.unknown()
    found["most memory, everything worked out"] = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(json.dumps(found), flush=True)
    window.files.close()
    app.QApplication.exit()

opened = app.open_window
def open_window(*given):
    window = opened(*given)
    window.painted.connect(lambda: painted(window))
    window.picture_shown.connect(lambda: QTimer.singleShot(300, lambda: settled(window)))
    return window
app.open_window = open_window
app.run_window(Path(path))
"""


def large_job(path: Path, count: int) -> None:
    """Write a job of so many openings, the demo ones over and over with another width each."""
    from configurator.project_file import save
    from tests.bench.bench_job import job_of

    save(job_of(count), path)


def one_run(path: Path, folder: Path) -> dict[str, float]:
    """Open the window on the file in a new process and return what it measured."""
    own = {name: str(folder) for name in ("XDG_STATE_HOME", "XDG_CONFIG_HOME", "PYTHONPYCACHEPREFIX")}
    environment = {**os.environ, **own, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-c", WINDOW, str(time.monotonic()), str(path)]
    done = subprocess.run(command, env=environment, capture_output=True, text=True, timeout=600)
    if done.returncode or not done.stdout:
        sys.exit(done.stderr)
    found: dict[str, float] = json.loads(done.stdout)
    return found


def main(count: int) -> int:
    """Print the figures; return 1 when a bar is missed."""
    missed = 0
    with tempfile.TemporaryDirectory() as name:
        warm, path = Path(name) / "small.json", Path(name) / "large.json"
        large_job(warm, 50)
        large_job(path, count)
        one_run(warm, Path(name))  # compiles, and warms the disk's cache
        found = one_run(path, Path(name))
    print(f"{count:,} openings")
    for what, figure in found.items():
        bar = BARS.get(what)
        missed += bar is not None and figure > bar
        unit = "MB" if "memory" in what else "ms"
        print(f"{what:48} {figure:9.1f} {unit}" + (f"   bar {bar:g} {unit}" if bar else ""))
    return int(missed > 0)


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000))
