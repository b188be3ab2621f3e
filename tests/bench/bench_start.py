"""How soon the window and its picture stand on the screen, beside a bare process with the same libraries.

Run it as `python tests/bench/bench_start.py [RUNS]`. Each run is a process of its own, ours and the bare one
by turns; times count from the moment it is asked for. The bar is 1.25 times the bare process, for both.

Processor time is printed too: it wavers less on a busy machine.

The bare process imports the very names of Qt that ours has imported by then, for Qt makes its classes as they
are named, and makes one record of one field, for pydantic loads most of itself only then. Compiled
modules are kept in a folder of the bench's own, as an installed program has them.
"""

import ast
import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
BAR = 1.25
MEMORY_BAR = 170
"""Megabytes at most, with one picture on the screen."""

WATCH = """
import json, sys, time
asked = float(sys.argv[1])
done, loaded = {}, {}

def watch(application, kinds):
    from PySide6.QtCore import QEvent, QObject, QTimer

    class Watch(QObject):
        def eventFilter(self, thing, event):
            if event.type() == QEvent.Type.Paint and (name := kinds.get(type(thing).__name__)):
                if name not in done:
                    done[name] = ()
                    QTimer.singleShot(0, lambda: note(name))
            return False

    def note(name):
        done[name] = (time.monotonic() - asked, time.process_time())
        loaded.setdefault(name, [each for each in sys.modules if each.startswith("configurator.ui")])
        if all(done.get(each) for each in kinds.values()):
            # Not by getrusage, whose most is at first that of the process which started this one.
            told = dict(line.split(":", 1) for line in open("/proc/self/status"))
            peak = int(told["VmHWM"].split()[0]) / 1024
            print(*done["window"], *done["picture"], peak, flush=True)
            print(json.dumps([loaded["window"], loaded["picture"]]), flush=True)
            application.quit()

    QTimer.singleShot(20_000, application.quit)
    application.watch = Watch()
    application.installEventFilter(application.watch)
"""

OURS = """
import tempfile
from pathlib import Path
from configurator import project_file  # before Qt, as the command does
from configurator.ui.window.environment import load_qt_quickly
load_qt_quickly()
from PySide6.QtCore import QSettings
from configurator.ui.app import new_application, open_window
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session

path = Path(sys.argv[2])
job = project_file.load(path)
application = new_application()
watch(application, {"Window": "window", "PictureCanvas": "picture"})
with tempfile.TemporaryDirectory() as folder:
    settings = QSettings(folder + "/bench.ini", QSettings.Format.IniFormat)
    window = open_window(Session(job, path), Preferences(settings))
    window.show()
    application.exec()
    window.deleteLater()
"""

BARE = """
from pydantic import AfterValidator, BaseModel, BeforeValidator, Field, field_validator, model_validator
from PySide6.QtCore import QTimer
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

class Record(BaseModel):
    length: float | None = Field(None, gt=0)

def name_more():
    pass
#MORE

class Window(QWidget):
    def paintEvent(self, event):
        QPainter(self).end()
        if not self.findChildren(QWidget):
            QTimer.singleShot(0, self.begin)

    def begin(self):
        if self.findChildren(QWidget):
            return
        name_more()
        from matplotlib.backends.backend_qtagg import FigureCanvasQTAgg
        from matplotlib.figure import Figure
        self.layout().addWidget(FigureCanvasQTAgg(Figure()))

application = QApplication([])
watch(application, {"Window": "window", "FigureCanvasQTAgg": "picture"})
window = Window()
QVBoxLayout(window)
window.resize(1280, 800)
window.show()
application.exec()
"""


def main(runs: int) -> int:
    """Print the medians and their ratios; return 1 when a bar is missed."""
    times: dict[str, list[list[float]]] = {"ours": [], "bare": []}
    with tempfile.TemporaryDirectory() as compiled:
        bare = bare_code(*first_paints(OURS, compiled)[1])
        for run in range(runs + 1):
            for name, code in (("ours", OURS), ("bare", bare)):
                measured, _ = first_paints(code, compiled)
                if run:  # the first pair only compiles, and warms the disk's cache
                    times[name].append(measured)
    missed = 0
    for place, what in enumerate(
        ("first window", "... processor time", "first picture", "... processor time")
    ):
        ours, floor = (statistics.median(run[place] for run in times[name]) for name in ("ours", "bare"))
        missed += ours / floor > BAR
        print(
            f"{what}: {ours * 1000:.0f} ms, bare {floor * 1000:.0f} ms, {ours / floor:.2f} times (bar {BAR})"
        )
    peak = statistics.median(run[-1] for run in times["ours"])
    missed += peak > MEMORY_BAR
    print(f"most memory with one picture: {peak:.0f} MB (bar {MEMORY_BAR})")
    return 1 if missed else 0


def bare_code(at_window: list[str], at_picture: list[str]) -> str:
    """The bare process, naming of Qt what the modules name that ours has loaded by each of the two paints."""
    more = qt_names(set(at_picture) - set(at_window)).replace("\n", "\n    ")
    return f"{qt_names(set(at_window))}\n{BARE.replace('#MORE', '    ' + more)}"


def qt_names(modules: set[str]) -> str:
    """The import lines of Qt in those modules of the window, as one text."""
    lines = set()
    for module in modules:
        source = ROOT.joinpath(*module.split("."))
        source = source / "__init__.py" if source.is_dir() else source.with_suffix(".py")
        for node in ast.parse(source.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("PySide6."):
                lines.add(ast.unparse(node))
    return "\n".join(sorted(lines))


def first_paints(code: str, compiled: str) -> tuple[list[float], list[list[str]]]:
    """Seconds to the window painted, by the clock and by the processor, likewise to the picture; megabytes.

    Also which modules of the window's were loaded by then.
    """
    environment = {**os.environ, "PYTHONPYCACHEPREFIX": compiled}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    if not environment.get("DISPLAY"):
        environment["QT_QPA_PLATFORM"] = "offscreen"
    demo = ROOT / "demo_openings" / "kestrel_point.json"
    command = [sys.executable, "-c", WATCH + code, str(time.monotonic()), str(demo)]
    result = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, timeout=60)
    if result.returncode or not result.stdout:
        sys.exit(f"A process never showed its picture:\n{result.stderr}")
    figures, loaded = result.stdout.splitlines()
    return [float(number) for number in figures.split()], json.loads(loaded)


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 9))
