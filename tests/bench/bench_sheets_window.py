"""How long fifty plan sheets take from the window as one PDF, and how long the window ever waits meanwhile.

Prints, for several runs, the seconds and the longest times between two turns of the window's loop, beside
those of a window that does nothing: on a busy machine that waits too.
Run: QT_QPA_PLATFORM=offscreen .venv/bin/python tests/bench/bench_sheets_window.py
"""

import tempfile
from itertools import cycle, islice
from pathlib import Path
from time import perf_counter

from PySide6.QtCore import QSettings, QTimer
from PySide6.QtWidgets import QApplication

from configurator.model import Job
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.ui.app import new_application, open_window
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session

SHEETS, RUNS = 50, 3


def job_of_fifty() -> Job:
    """Return the demo job's openings over and over, each under a mark of its own."""
    job = load(resource_path("demo_openings", "kestrel_point.json"))
    openings = [
        one.model_copy(update={"mark": f"{number}-{one.mark}"})
        for number, one in enumerate(islice(cycle(job.openings), SHEETS), 1)
    ]
    return Job(job=job.job, openings=tuple(openings))


def gaps_until(application: QApplication, over) -> list[float]:
    """Run the loop until something is over; return the seconds between its turns, the longest first."""
    found: list[float] = []
    last = perf_counter()

    def turn() -> None:
        nonlocal last
        now = perf_counter()
        found.append(now - last)
        last = now

    timer = QTimer()
    timer.timeout.connect(turn)
    timer.start(0)
    while not over():
        application.processEvents()
    timer.stop()
    return sorted(found, reverse=True)


def told(what: str, seconds: float, gaps: list[float]) -> None:
    """Print one line."""
    longest = ", ".join(f"{1000 * gap:.0f}" for gap in gaps[:5])
    print(f"{what}: {seconds:.2f} s, longest waits {longest} ms, over 50 ms {sum(g > 0.05 for g in gaps)}")


def main() -> None:
    """Print the figures."""
    application = new_application()
    with tempfile.TemporaryDirectory() as folder:
        preferences = Preferences(QSettings(f"{folder}/settings.ini", QSettings.Format.IniFormat))
        window = open_window(Session(job_of_fifty()), preferences)
        shown: list[bool] = []
        window.picture_shown.connect(lambda: shown.append(True))
        window.show()
        gaps_until(application, lambda: bool(shown))
        window.turn_to("sheets")
        page = window.pages.made["sheets"]
        page.which.setCurrentIndex(1)
        until = perf_counter() + 2.0
        told("at rest", 2.0, gaps_until(application, lambda: perf_counter() > until))
        for _ in range(RUNS):
            start = perf_counter()
            page.actions_of.write(Path(folder) / "all.pdf")
            gaps = gaps_until(application, lambda: not page.actions_of.busy)
            told(f"{SHEETS} sheets", perf_counter() - start, gaps)
        window.session.history.mark_saved()
        window.close()


if __name__ == "__main__":
    main()
