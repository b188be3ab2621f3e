"""Print how long the canvas takes: an edit redrawn whole, a step of the swing, of a zoom and of a pan.

Frames of zoom and pan should be as quick as the swing's: each is the last picture moved, and every 40 ms
it is drawn anew, which counts among them. Run it by itself.
"""

import os
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
if "--2x" in sys.argv:
    os.environ["QT_SCALE_FACTOR"] = "2"

from PySide6.QtWidgets import QApplication

from configurator.drawing.base.view import AS_FRAMED, Framing
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import study
from configurator.ui.kit.canvas import PlanCanvas
from configurator.ui.picture.canvas import PictureCanvas
from configurator.units import Display

RUNS = 120


def timed(app: QApplication, canvas: PlanCanvas, act: Callable[[int], None]) -> str:
    """Return median and 95th percentile of acting and painting, by the clock and of processor time."""
    clock, processor = [], []
    for number in range(RUNS + 10):
        start, busy = time.perf_counter(), time.process_time()
        act(number)
        canvas.repaint()
        app.processEvents()
        clock.append((time.perf_counter() - start) * 1000)
        processor.append((time.process_time() - busy) * 1000)
    return f"{_summary(clock[10:])} by the clock, {_summary(processor[10:])} of processor time"


def _summary(times: list[float]) -> str:
    ordered = sorted(times)
    return f"{statistics.median(ordered):.1f} / {ordered[int(0.95 * len(ordered))]:.1f} ms"


def main() -> None:
    app = QApplication([])
    job = load(Path(resource_path("demo_openings", "kestrel_point.json")))
    opening = next(one for one in job.openings if one.mark == "112A")
    # A slightly different door every time, so that nothing can be kept from the time before.
    studies = [
        study(
            opening.model_copy(
                update={"door": opening.door.model_copy(update={"thickness": 1.75 - n / 640})}
            ),
            job.job,
        )
        for n in range(16)
    ]
    canvas = PictureCanvas()
    canvas.resize(1200, 700)
    canvas.show()
    app.processEvents()
    print("median / 95th percentile at 1200 x 700" + (" at 2x" if canvas.devicePixelRatioF() == 2 else ""))
    print(
        "everything changed:",
        timed(app, canvas, lambda n: canvas.show_study(studies[n % 16], 170 - n % 7, Display(), False)),
    )
    print("swinging:          ", timed(app, canvas, lambda n: canvas.set_angle(90 + n % 80)))
    canvas.show_study(studies[0], 90, Display(), False, swept=True)
    print("the same, swept:   ", timed(app, canvas, lambda n: canvas.set_angle(90 + n % 80)))
    canvas.show_study(studies[0], 170, Display(), False)
    zoomed, panned = (lambda n: Framing(1 + n / 40, (0, 0))), (lambda n: Framing(2.0, (n, n / 2)))
    print("zooming:           ", timed(app, canvas, lambda n: canvas.frame_soon(zoomed(n))))
    print("panning:           ", timed(app, canvas, lambda n: canvas.frame_soon(panned(n))))
    canvas.frame(AS_FRAMED)
    print("zoomed, drawn anew:", timed(app, canvas, lambda n: canvas.frame(zoomed(n))))


main()
