"""The order page on a large job: how long each thing takes, and how long the window is held up meanwhile.

Run: .venv/bin/python tests/bench/bench_order.py [openings]
No two openings are alike, so that each is studied. What is written goes to a folder that is thrown away.
How long a thing takes is by the clock; what holds the window up is what one turn of its own thread costs the
processor, for that does not waver on a busy machine.
"""

import gc
import os
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from PySide6.QtWidgets import QApplication

from configurator.ui.order.page import OrderPage
from configurator.ui.state.session import Session
from tests.bench.bench_job import job_of, megabytes

HOLDS_BAR = 50
"""Milliseconds that the window may be held up at a time, with ten thousand openings."""
FILES = (("order", ".xlsx"), ("order", ".pdf"), ("submittal", ".pdf"), ("doors", ".csv"), ("field", ".pdf"))


def until(
    application: QApplication, words: str, begin: Callable[[], object], done: Callable[[], bool]
) -> None:
    """Begin something, let the window live until it is done, and print how long both took."""
    start, last, held_up = time.perf_counter(), time.thread_time(), 0.0
    begin()
    while True:
        application.processEvents()
        now = time.thread_time()
        held_up, last = max(held_up, now - last), now
        if done():
            break
    print(
        f"{words:28} {time.perf_counter() - start:8.2f} s   held up {held_up * 1000:5.0f} ms"
        f" (bar {HOLDS_BAR})   {megabytes():5.0f} MB",
        flush=True,
    )


def main(count: int) -> None:
    """Print a line for each thing that is done with an order."""
    application = QApplication.instance() or QApplication([])
    assert isinstance(application, QApplication)
    session = Session(job_of(count))
    gc.freeze()  # as the window does once its picture stands
    page = OrderPage(session)
    session.changed.connect(page.show_state)
    page.resize(1280, 740)
    page.show()

    def counted() -> bool:
        return page.counted is not None

    def idle() -> bool:
        return not page.beside.running and counted()

    until(application, f"count {count} openings", lambda: page.show_state("open"), counted)
    print(page.sums.text())
    until(application, "another spare allowance", lambda: page.set_spare("5%"), counted)
    until(application, "edit one opening", lambda: session.edit("quantity", 7), counted)
    until(application, "freeze the order", lambda: page.freeze("first", mark_them=True), idle)
    until(application, "what changed since", lambda: page.tabs.setCurrentWidget(page.revisions), counted)
    until(application, "would one width do", page.ask_uniform, idle)
    with tempfile.TemporaryDirectory() as folder:
        for kind, ending in FILES:
            path = Path(folder) / f"{kind}{ending}"
            until(application, f"write {path.name}", lambda: page.write(kind, path), idle)  # noqa: B023


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
