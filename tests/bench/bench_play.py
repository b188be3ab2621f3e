"""Print how evenly the client view plays a swing: frames at 1200 x 700, each from turn to painted. By itself.

A frame's work is from one turn of the door to the picture of it. Median under 16.7 ms and none over 33 ms is
the bar; on a machine that is busy with other things the processor time tells whether that is this program's.
"""

import os
import statistics
import sys
import time
from itertools import pairwise
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop
from PySide6.QtWidgets import QApplication

from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.ui.client.canvas import ClientCanvas
from configurator.ui.client.page import ClientPage
from configurator.ui.state.session import Session

MARKS = ("112A", "171A", "205A")
PLAYS = 3


class Painted(ClientCanvas):
    """The canvas, noting when each frame stood on the screen."""

    def __init__(self) -> None:
        super().__init__()
        self.began: list[tuple[float, float]] = []
        self.painted: list[tuple[float, float]] = []

    def set_angle(self, angle: float) -> None:
        self.began.append(_now())
        super().set_angle(angle)

    def paintEvent(self, event: object) -> None:
        super().paintEvent(event)
        self.painted.append(_now())


def _now() -> tuple[float, float]:
    """Return the clock and the processor time this program has had, milliseconds."""
    return 1000 * time.perf_counter(), 1000 * time.process_time()


def played(app: QApplication, session: Session, mark: str) -> tuple[list[float], list[float], list[float]]:
    """Play a swing from closed to its end, and again; return milliseconds of every frame.

    Its work by the clock and in processor time, and the time from one frame to the next.
    """
    session.select(mark)
    page = ClientPage(session)
    old, page.canvas = page.canvas, Painted()
    page._stack.removeWidget(old)
    page._stack.addWidget(page.canvas)
    session.changed.connect(page.show_state)
    page.show_state("open")
    page.resize(1600, 1000)
    page.show()
    page.canvas.setFixedSize(1200, 700)
    app.processEvents()
    clock, processor, between = [], [], []
    for _ in range(PLAYS):
        session.swing(0.0)
        app.processEvents()
        page.canvas.began.clear()
        page.canvas.painted.clear()
        page.player.play()
        while page.player.playing:
            app.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
        app.processEvents()
        frames = list(zip(page.canvas.began, page.canvas.painted, strict=False))
        clock += [end[0] - begin[0] for begin, end in frames[1:]]
        processor += [end[1] - begin[1] for begin, end in frames[1:]]
        between += [b[0] - a[0] for a, b in pairwise(page.canvas.painted[1:])]
    session.changed.disconnect(page.show_state)
    page.close()
    return clock, processor, between


def summary(times: list[float]) -> str:
    """Return median, 95th percentile and the worst."""
    ordered = sorted(times)
    return (
        f"median {statistics.median(ordered):5.1f}, p95 {ordered[int(0.95 * len(ordered))]:5.1f}, "
        f"worst {ordered[-1]:5.1f} ms, {sum(x > 33 for x in ordered)} of {len(ordered)} over 33 ms"
    )


def main() -> None:
    app = QApplication(sys.argv)
    path = Path(resource_path("demo_openings", "kestrel_point.json"))
    session = Session(load(path), path)
    for mark in MARKS:
        names = ("work, processor time", "work, by the clock", "from frame to frame")
        clock, processor, between = played(app, session, mark)
        for name, times in zip(names, (processor, clock, between), strict=True):
            print(f"{mark}  {name:21} {summary(times)}")


main()
