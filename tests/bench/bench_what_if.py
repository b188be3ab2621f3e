"""What it costs to ask what would be: a chart worked out, laid out and drawn; a value on trial.

python tests/bench/bench_what_if.py
"""

import os
import statistics
import time
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from configurator.drawing.charts.chart_sheet import chart_sheet
from configurator.drawing.charts.what_if_chart import what_if_chart
from configurator.project_file import load
from configurator.study import study
from configurator.study.what_if.curve import what_if
from configurator.study.what_if.parameters import parameters_of
from configurator.ui.kit.canvas import PlanCanvas
from configurator.ui.kit.chart_canvas import ChartCanvas
from configurator.ui.state.edits import edited
from configurator.units import Display

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"
MARKS = ("101A", "112A", "112B", "171A", "205A")


def timed(function, times=5):
    """The median and the least of several runs, milliseconds, wall and processor time."""
    walls, processor = [], []
    for _ in range(times):
        begin, used = time.perf_counter(), time.process_time()
        function()
        walls.append((time.perf_counter() - begin) * 1e3)
        processor.append((time.process_time() - used) * 1e3)
    return statistics.median(walls), statistics.median(processor)


def charts(job, chart):
    """Print a line for each opening: the slowest and the median of everything that can be asked of it."""
    print("wall / processor ms: worked out | laid out | worked out, laid out and drawn")
    for mark in MARKS:
        (opening,) = (one for one in job.openings if one.mark == mark)
        answer = study(opening, job.job)
        candidate = answer.candidates[-1]
        worked, laid, drawn = [], [], []
        for parameter in parameters_of(answer, candidate):
            for hold in parameter.holds:
                asked = (answer, candidate, parameter, hold)
                worked.append(timed(lambda a=asked: what_if(*a)))
                found = what_if(*asked)
                shown = what_if_chart(found, opening.obstructions, Display())
                laid.append(timed(lambda s=shown: chart_sheet(s, 360.0, 130.0), 3))
                drawn.append(timed(lambda s=shown: chart.show_chart(s, str, False), 3))
        for name, column in (("median", statistics.median), ("most", max)):
            each = [f"{column([one[n] for one in col]):5.1f}" for col in (worked, laid) for n in (0, 1)]
            whole = [column([a[n] + b[n] for a, b in zip(worked, drawn, strict=True)]) for n in (0, 1)]
            print(
                f"{mark} {name:6} {each[0]}/{each[1]} | {each[2]}/{each[3]} | {whole[0]:5.1f}/{whole[1]:5.1f}"
            )


def trials(job):
    """Print what one move of the pointer costs: the study of the changed opening, and its picture."""
    (opening,) = (one for one in job.openings if one.mark == "112A")
    canvas = PlanCanvas()
    canvas.resize(864, 440)
    canvas.show()
    values = iter(1.5 + number / 64 for number in range(1000))

    def move():
        answer = study(edited(opening, {"obstructions.0.projection": next(values)}), job.job)
        canvas.show_study(answer, 180.0, Display(), False)

    move()
    wall, processor = timed(move, 25)
    print(f"a move of the pointer, 112A: {wall:.1f} / {processor:.1f} ms")


def main():
    """Time the charts and the trials of the demo job."""
    application = QApplication([])
    job = load(DEMO)
    chart = ChartCanvas("bench")
    chart.resize(480, 170)
    chart.show()
    charts(job, chart)
    trials(job)
    application.quit()


if __name__ == "__main__":
    main()
