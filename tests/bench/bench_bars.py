"""Every bar of speed in one dated table, each beside its floor taken in the same run, and how cost grows.

Run: .venv/bin/python tests/bench/bench_bars.py [--openings 10000] [--growth PICTURE.png]

Times are of the processor, for the machine may be busy; by the clock only where several processes work. A
floor is what the work would cost with nothing of ours about it: Qt painting the same primitives, the bare
geometry of the same openings. `--growth` adds a table and a picture, log over log, of 100 to 50,000 openings;
it takes some minutes, and `growth.md` keeps what it told. The start has a bench of its own, which is run with
the others.
"""

import argparse
import gc
import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from datetime import date
from itertools import cycle, islice
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from matplotlib.figure import Figure
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication

from configurator.documents.papers import Counted
from configurator.drawing.charts.chart_sheet import chart_sheet
from configurator.drawing.charts.what_if_chart import what_if_chart
from configurator.drawing.pages.page import papers
from configurator.drawing.plan.sheet import Sheet, moving_groups, moving_note_groups
from configurator.drawing.sheets import sheet_maker
from configurator.export.document import write_paper
from configurator.export.field_sheet_pdf import write_field_sheet
from configurator.export.pages import pages_as_bytes
from configurator.model import Job, Opening
from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from configurator.order.tally import tally_of
from configurator.project_file import load, save
from configurator.study import study
from configurator.study.what_if.curve import what_if
from configurator.study.what_if.parameters import parameters_of
from configurator.ui.kit.painter import paint_groups
from configurator.ui.picture.canvas import PictureCanvas
from configurator.ui.state.session import Session
from configurator.ui.window.openings import OpeningsList
from configurator.units import Display
from tests.bench import bench_geometry, bench_order, bench_start
from tests.bench.bench_job import job_of, varied

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"
SIZES = (100, 1_000, 10_000, 50_000)
FRAMES = 80


def used(act: Callable[[], object], clock: Callable[[], float] = time.process_time) -> float:
    """Seconds of the processor that something takes; another clock where it says so."""
    begin = clock()
    act()
    return clock() - begin


def of_all_processes() -> float:
    """Seconds of the processor of this process and of those it has ended."""
    return sum(os.times()[:4])


def line(what: str, figure: str, bar: str, floor: str = "") -> None:
    """Print a line of the table."""
    print(f"| {what} | {figure} | {bar} | {floor} |", flush=True)


def spread(seconds: list[float]) -> tuple[float, float]:
    """Median and 95th percentile, milliseconds."""
    ordered = sorted(seconds)
    return statistics.median(ordered) * 1e3, ordered[int(0.95 * len(ordered))] * 1e3


def pictures(application: QApplication) -> None:
    """An edit to its picture, and a step of the swing, each beside Qt painting the same primitives."""
    job = load(DEMO)
    opening = next(one for one in job.openings if one.mark == "112A")
    doors = (opening.door.model_copy(update={"thickness": 1.75 - n / 640}) for n in range(FRAMES))
    studies = [study(opening.model_copy(update={"door": door}), job.job) for door in doors]
    canvas, display = PictureCanvas(), Display()
    canvas.resize(1200, 700)
    canvas.show()

    def shown(act: Callable[[], object]) -> float:
        def whole() -> None:
            act()
            canvas.repaint()
            application.processEvents()

        return used(whole)

    edits, swings, floors = [], [], []
    for number, one in enumerate(studies):
        angle = 170.0 - number % 7
        edits.append(shown(lambda one=one, angle=angle: canvas.show_study(one, angle, display, False)))
        sheet = canvas.lay_out(canvas.width() * 0.72, canvas.height() * 0.72)
        floors.append(used(lambda sheet=sheet, angle=angle: painted(sheet, angle)))
        swings.append(shown(lambda number=number: canvas.set_angle(90.0 + number)))
    edit, swing, floor = spread(edits[8:]), spread(swings[8:]), spread(floors[8:])
    ratio = f"Qt {floor[0]:.1f} / {floor[1]:.1f} ms: {edit[0] / floor[0]:.2f} times"
    line("edit to picture", f"{edit[0]:.1f} / {edit[1]:.1f} ms", "12 / 17 ms, 1.9 times", ratio)
    line("swing", f"{swing[0]:.1f} / {swing[1]:.1f} ms", "5 / 8 ms")


def painted(sheet: Sheet, angle: float) -> None:
    """Paint with Qt alone what the canvas shows."""
    groups = (*sheet.still, *moving_groups(sheet, angle), *sheet.notes, *moving_note_groups(sheet, angle))
    image = QImage(1200, 700, QImage.Format.Format_RGB32)
    image.fill(0xFFFFFFFF)
    painter = QPainter(image)
    paint_groups(groups, sheet.height, painter, 1 / 0.72)
    painter.end()


def studies_of(openings: tuple[Opening, ...]) -> None:
    """One opening studied at two widths; the floor is its geometry, the leaves hung anew."""

    def geometry() -> None:
        for one in made:
            for leaf in one.leaves:
                for width in {candidate.hinge_width for candidate in one.butts}:
                    tried = type(one.candidates[0].solution)(leaf.scene(width))
                    _ = tried.greatest_angle, tried.clear_width_at_90, tried.latch_edge, tried.gap

    for one in openings[:20]:
        study(one)
    made = [study(one) for one in openings]
    whole = used(lambda: [tally_of(one, None) for one in openings]) / len(openings) * 1e3
    bare = used(geometry) / len(openings) * 1e3
    line("a study, all in", f"{whole:.2f} ms", "0.9 ms", f"geometry of two widths {bare:.2f} ms")


def large_job(count: int) -> None:
    """A job of unlike openings studied on every core, and its papers."""
    job = job_of(count)
    tallies: list = []
    seconds = used(lambda: tallies.extend(tally_job(job)), time.perf_counter)
    cores = os.cpu_count() or 1
    line(f"{count:,} openings, {cores} cores, by the clock", f"{seconds:.1f} s", "6 s for 10,000")
    counted = Counted(job, tuple(tallies), take_off(tallies, job.job))
    with tempfile.TemporaryDirectory() as folder:
        writes: tuple[tuple[str, float, Callable[[Path], object]], ...] = (
            ("order.pdf", 2, lambda path: write_paper("order", counted, path)),
            ("order.xlsx", 1, lambda path: write_paper("order", counted, path)),
            ("field.pdf", 6, lambda path: write_field_sheet(job, path)),
        )
        for name, bar, write in writes:
            taken = used(lambda name=name, write=write: write(Path(folder) / name))
            line(f"{name} of {count:,}", f"{taken:.2f} s", f"{bar} s for 10,000")


def plan_sheets() -> None:
    """Fifty plan sheets from records to bytes."""
    jobs = [load(DEMO), load(DEMO.with_name("pairs_and_dutch.json"))]
    openings = list(islice(cycle((job, one) for job in jobs for one in job.openings), 50))
    make, paper = sheet_maker("plan"), papers()["Letter"]

    def written() -> bytes:
        places = enumerate(openings, 1)
        pages = (
            make(study(one, job.job), job.job, paper, None, Display(), (n, 50)) for n, (job, one) in places
        )
        return pages_as_bytes(pages, ".pdf")

    written()
    line("50 plan sheets", f"{min(used(written) for _ in range(3)):.2f} s", "1.5 s")


def charts() -> None:
    """The slowest what-if chart of any demo opening, and every answer of 100,000 openings."""
    slowest: tuple[float, str] = (0.0, "")
    for name in ("kestrel_point.json", "pairs_and_dutch.json"):
        job = load(DEMO.with_name(name))
        for opening in job.openings:
            for seconds, what in _charts_of(opening, job):
                slowest = max(slowest, (seconds, f"{opening.mark}, {what}"))
    line("slowest what-if", f"{slowest[0] * 1e3:.0f} ms", "50 ms", slowest[1])
    many = bench_geometry.many_at_once(100_000, (bench_geometry.BOX,))
    alone = used(lambda: bench_geometry.solve_many(many))
    every = used(lambda: bench_geometry.every_answer(many))
    line("every answer of 100,000", f"{every:.2f} s", "1.5 s", f"contact alone {alone:.2f} s")


def _charts_of(opening: Opening, job: Job) -> Iterator[tuple[float, str]]:
    answer = study(opening, job.job)
    candidate = answer.candidates[-1]
    for parameter in parameters_of(answer, candidate):
        for hold in parameter.holds:

            def chart(parameter=parameter, hold=hold) -> None:
                found = what_if(answer, candidate, parameter, hold)
                chart_sheet(what_if_chart(found, opening.obstructions, Display()), 360.0, 130.0)

            yield min(used(chart) for _ in range(2)), parameter.name


def growth(picture: Path) -> None:
    """A table of what each thing takes at each size of a job, and the same as a picture, log over log."""
    kinds = ("study", "order", "save", "search", "draw")
    taken: dict[str, list[float]] = {kind: [] for kind in kinds}
    demo = load(DEMO)
    print(f"\n| openings | {' | '.join(kinds)} |\n|---|{'---|' * len(kinds)}")
    for size in SIZES:
        openings = tuple(varied(demo.openings[n % len(demo.openings)], n) for n in range(size))
        job = demo.model_copy(update={"openings": openings})
        for kind, seconds in zip(kinds, _at_size(job), strict=True):
            taken[kind].append(seconds)
        print(f"| {size:,} | {' | '.join(f'{taken[kind][-1]:.3f} s' for kind in kinds)} |", flush=True)
    figure = Figure(figsize=(6, 4), layout="constrained")
    axes = figure.add_subplot(xscale="log", yscale="log", xlabel="openings", ylabel="seconds")
    for kind in kinds:
        axes.plot(SIZES, taken[kind], marker="o", label=kind)
    axes.plot(SIZES, [size / 1e5 for size in SIZES], "k:", label="in proportion")
    axes.legend()
    figure.savefig(picture)


def _at_size(job: Job) -> Iterator[float]:
    tallies: list = []
    yield used(lambda: tallies.extend(tally_job(job)), of_all_processes)
    yield used(lambda: take_off(tallies, job.job))
    with tempfile.TemporaryDirectory() as folder:
        yield used(lambda: save(job, Path(folder) / "job.json"))
    session = Session(job)
    listed = OpeningsList(session)
    listed.show_state()
    yield used(lambda: listed.words.setText("2A"))
    canvas = PictureCanvas()
    canvas.resize(1200, 700)

    def edit() -> None:
        session.edit("quantity", 7)
        canvas.show_study(session.study, 90.0, Display(), False)

    edit()
    yield used(lambda: (session.edit("quantity", 8), edit()))


def main() -> None:
    """Print the table."""
    asked = argparse.ArgumentParser()
    asked.add_argument("--openings", type=int, default=10_000)
    asked.add_argument("--growth", type=Path, metavar="PICTURE")
    options = asked.parse_args()
    application = QApplication([])
    gc.freeze()  # as the window does once its picture stands
    print(f"{date.today():%Y-%m-%d}, load {os.getloadavg()[0]:.1f}\n")
    print("| what | measured | bar | floor |\n|---|---|---|---|")
    pictures(application)
    studies_of(job_of(300).openings)
    charts()
    plan_sheets()
    large_job(options.openings)
    if options.growth is not None:
        growth(options.growth)
    print("\nThe order page, and what holds the window up:", flush=True)
    bench_order.main(options.openings)
    print("\nStart:", flush=True)
    bench_start.main(5)


if __name__ == "__main__":
    main()
