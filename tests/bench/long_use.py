"""Use the window at random for a long time and see that it neither dies nor slows nor swells.

    python tests/bench/long_use.py [--steps 50000] [--seeds 10] [--first 1] [--at-once 2]
    python tests/bench/long_use.py --real --steps 4000 --seeds 4

Each seed is a process of its own that does its share of the steps through the real event loop. It runs with
the C allocator and freed memory filled with a pattern, so that whoever reads what was freed dies of it. Half
of the steps go through the window's own widgets and its session, half are blind: a click, a double click, a
key, a turn of the wheel or a drag on whatever stands at a random place. `--real` opens the window on a screen
of its own (Xvfb) and does the blind half through the screen, as a hand would (xdotool).

A table says for each seed how it ended, the time of a step early and late, and the memory early and late.
Returns 1 when a process died, raised, stopped answering, slowed, swelled, or was left with Python objects for
what Qt frees without telling, as layout items are: they once ended the program after some thousands of steps.
"""

import argparse
import contextlib
import faulthandler
import gc
import json
import os
import random
import shutil
import signal
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))

PARTS = 50
"""Times that a run tells how far it is."""
EARLY, LATE = slice(PARTS // 5, 2 * PARTS // 5), slice(4 * PARTS // 5, PARTS)
"""Parts of a run compared: not the first, in which every page is made and loaded for the first time."""
SLOWER, LARGER = 1.35, 60.0
"""How many times the early step a late one may take, and megabytes a run may gain; the history of 500 steps
and what matplotlib and Qt keep of fonts and pictures fill up meanwhile."""
LEAST_JUDGED = 2000
"""Steps below which time and memory say nothing."""
SILENT = 180.0
"""Seconds without a word after which a process counts as hung: of its own work, or of waiting."""
LENGTHS = ("1-3/4", "36", "3-0", "2", "4-1/2", "0", "-1", "7/8", "900", "no length", "", "3070", "90", "5")
MOST_OPENINGS = 16
LEVER = {"kind": "lever", "projection": 2.5, "from_latch_edge": 4.25, "width": 5, "height": 38, "vertical": 2}
THINGS: dict[str, tuple[dict[str, Any], ...]] = {
    "obstructions": (
        {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36},
        {"kind": "casing", "projection": 0.6875, "start": 0, "length": 2.25},
        {"kind": "return wall", "start": 4},
        {"kind": "column", "diameter": 12, "start": 6, "offset": 0},
        {"kind": "other", "projection": 4, "start": 6, "length": 12},
    ),
    "hardware": (LEVER, {**LEVER, "kind": "pull", "face": "push"}, {**LEVER, "leaf": "active"}),
}
"""What is put on the form's lists."""


@dataclass(frozen=True, slots=True)
class Part:
    """A fiftieth of a run: the median step, ms; resident memory, MB; Python objects that may hang."""

    step: float
    memory: float
    loose: int


@dataclass(frozen=True, slots=True)
class Run:
    """How one process ended, and what it told until then."""

    seed: int
    steps: int
    ended: str
    parts: tuple[Part, ...]

    def faults(self, steps: int) -> list[str]:
        """Return what is wrong with the run, in a few words each."""
        found = [self.ended] if self.ended else []
        if self.parts and self.parts[-1].loose:
            found.append(f"{self.parts[-1].loose} loose objects")
        if not self.ended and steps >= LEAST_JUDGED:
            if self.late("step") > SLOWER * self.early("step"):
                found.append("slowed")
            if self.late("memory") - self.early("memory") > LARGER:
                found.append("swelled")
        return found

    def early(self, what: str) -> float:
        """Return the median of what was measured early in the run."""
        return statistics.median([getattr(part, what) for part in self.parts[EARLY]] or [0.0])

    def late(self, what: str) -> float:
        """Return the median of what was measured late in the run."""
        return statistics.median([getattr(part, what) for part in self.parts[LATE]] or [0.0])


# --- The process that uses the window ---


class User:
    """Does one random step after the other in a window; a nested event loop, as of a menu, is used on."""

    def __init__(self, window: Any, seed: int, steps: int, real: bool) -> None:
        self.window, self.session = window, window.session
        self.chance = random.Random(seed)
        self.steps, self.done = steps, 0
        self.trace = "LONG_USE_TRACE" in os.environ
        self._times: list[float] = []
        self._last = time.perf_counter()
        self._hand = ScreenHand(self) if real else Hand(self)
        self._deeds = [getattr(self, name) for name in dir(self) if name.startswith("do_")]

    def step(self) -> None:
        """Do one step; the next one is asked for first, so that no nested event loop ends the run."""
        from PySide6.QtCore import QTimer
        from PySide6.QtWidgets import QApplication

        now = time.perf_counter()
        self._times.append(now - self._last)
        self._last = now
        if self.done and self.done % max(self.steps // PARTS, 1) == 0:
            self._tell()
        if self.done >= self.steps:
            QApplication.closeAllWindows()
            QApplication.exit(0)
            return
        self.done += 1
        QTimer.singleShot(0, self.window, self.step)
        if (popup := QApplication.activePopupWidget()) is not None:
            self._leave_popup(popup)
        elif (dialog := QApplication.activeModalWidget()) is not None:
            dialog.close()
        else:
            deed = self.chance.choice(self._deeds) if self.chance.random() < 0.5 else self._hand.act
            if self.trace:
                print(json.dumps({"deed": deed.__name__}), flush=True)
            deed()

    def _tell(self) -> None:
        pages = int(Path("/proc/self/statm").read_text().split()[1])
        part = Part(
            1000 * statistics.median(self._times),
            pages * os.sysconf("SC_PAGE_SIZE") / 1e6,
            len(loose_objects()),
        )
        print(json.dumps({"done": self.done, "part": [part.step, part.memory, part.loose]}), flush=True)
        self._times.clear()
        self._last = time.perf_counter()

    def _leave_popup(self, popup: Any) -> None:
        from PySide6.QtCore import Qt
        from PySide6.QtTest import QTest
        from PySide6.QtWidgets import QMenu

        if isinstance(popup, QMenu) and popup.actions() and self.chance.random() < 0.6:
            popup.setActiveAction(self.chance.choice(popup.actions()))
            QTest.keyClick(popup, Qt.Key.Key_Return)
        else:
            popup.close()

    def shown(self, kind: Any, within: Any = None) -> list[Any]:
        """Return the widgets of a kind that can be used now."""
        found = (within or self.window).findChildren(kind)
        return [one for one in found if one.isVisible() and one.isEnabled()]

    # --- Deeds: each by way of the window's own widgets or its session ---

    def do_swing(self) -> None:
        """Turn the door."""
        self.window.work.swing.slider.setValue(self.chance.randrange(1801))

    def do_undo(self) -> None:
        """Take back a few steps, or do some of them again."""
        for _ in range(self.chance.randrange(1, 6)):
            self.chance.choice((self.session.undo, self.session.undo, self.session.redo))()

    def do_select(self) -> None:
        """Show another opening."""
        if self.session.job.openings:
            self.session.select(self.chance.choice(self.session.job.openings).mark)

    def do_openings(self) -> None:
        """Add, copy or remove an opening; never very many, never none for long."""
        count = len(self.session.job.openings)
        if count >= MOST_OPENINGS or (count > 1 and self.chance.random() < 0.4):
            self.window.openings.remove.click()
        else:
            self.chance.choice((self.window.openings.add, self.window.openings.copy)).click()

    def do_demo(self) -> None:
        """Open the demo job anew, so that there is something on every page; now and then an empty one."""
        if self.chance.random() < 0.1:
            self.window.files.read(DEMO)
        elif self.chance.random() < 0.02:
            self.session.start_new()

    def do_page(self) -> None:
        """Show another page, or the work."""
        from configurator.ui.window.pages import PAGES

        self.window.turn_to(self.chance.choice(("", *PAGES)))

    def do_work(self) -> None:
        """Go back to the work: most of the form and the tables stand there."""
        self.window.turn_to("")

    def do_tab(self) -> None:
        """Show another tab of whatever tabs there are."""
        from PySide6.QtWidgets import QTabWidget

        for tabs in self.shown(QTabWidget)[:1]:
            tabs.setCurrentIndex(self.chance.randrange(tabs.count()))

    def do_section(self) -> None:
        """Open or close a section of the form."""
        section = self.chance.choice(list(self.window.work.form.sections.values()))
        section.heading.setChecked(self.chance.random() < 0.75)

    def do_type(self) -> None:
        """Type into a line and press Enter."""
        from PySide6.QtCore import Qt
        from PySide6.QtTest import QTest
        from PySide6.QtWidgets import QLineEdit

        lines = [one for one in self.shown(QLineEdit) if not one.isReadOnly()]
        if lines:
            line = self.chance.choice(lines)
            line.setFocus()
            line.selectAll()
            QTest.keyClicks(line, self.chance.choice(LENGTHS))
            QTest.keyClick(line, self.chance.choice((Qt.Key.Key_Return, Qt.Key.Key_Tab, Qt.Key.Key_Escape)))

    def do_choose(self) -> None:
        """Choose in a combo box, and tell of it as the platform would."""
        from PySide6.QtWidgets import QComboBox

        boxes = [one for one in self.shown(QComboBox) if one.count()]
        if boxes:
            box = self.chance.choice(boxes)
            place = self.chance.randrange(box.count())
            box.setCurrentIndex(place)
            box.activated.emit(place)

    def do_list(self) -> None:
        """Put something on one of the form's lists, or take something off it."""
        path = self.chance.choice(list(THINGS))
        rows = [row.model_dump(exclude_unset=True) for row in self.session.value(path) or ()]
        if rows and self.chance.random() < 0.55:
            del rows[self.chance.randrange(len(rows))]
        elif len(rows) < 6:
            rows.insert(self.chance.randrange(len(rows) + 1), dict(self.chance.choice(THINGS[path])))
        if self.session.opening is not None:
            self.session.edit(path, rows)

    def do_layers(self) -> None:
        """Add, move or remove a layer of the wall, or leave them to be usual ones."""
        layers = [layer.model_dump() for layer in self.session.value("wall.layers") or ()]
        if layers and self.chance.random() < 0.5:
            del layers[self.chance.randrange(len(layers))]
        elif len(layers) < 5:
            layers.append({"name": "board", "thickness": self.chance.choice((0.5, 0.625, 3.5))})
        self.chance.shuffle(layers)
        if self.session.opening is not None:
            self.session.edit("wall.layers", layers or None)

    def do_edit(self) -> None:
        """Change what gives the form and the tables another shape."""
        changes: dict[str, Sequence[Any]] = {
            "leaves": ("single", "pair", "dutch"),
            "compare": (None, [4.0], [4.5, 5.0], [4.0, 4.5, 5.0, 6.0], [3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0]),
            "size": ({"width": 36, "height": 84}, {"width": 72, "height": 96}, {"width": 84, "height": 36}),
            "frame.kind": ("welded hollow metal", "wood with casing", "no such frame"),
            "door_stop": (None, {"kind": "wall bumper", "projection": 3.0}),
            "use.accessible": (True, False, None),
            "use.fire_rated": (True, False, None),
            "hinge.width": (None, 4.0, 4.5, 5.0, 99.0),
            "hinge.finish_us": (None, "US26D", "US10B", "US32D"),
        }
        path = self.chance.choice(list(changes))
        if self.session.opening is not None:
            self.session.edit(path, self.chance.choice(changes[path]))

    def do_look(self) -> None:
        """Show it otherwise: units, ink, words, what is swept, one leaf of two."""
        from configurator.ui.window.commands import DISPLAYS

        self.chance.choice(
            (
                lambda: self.session.show_in(self.chance.choice(DISPLAYS)[1]),
                lambda: self.session.use_dark(self.chance.random() < 0.3),
                lambda: self.session.use_plain_words(self.chance.random() < 0.5),
                lambda: self.session.show_swept(self.chance.random() < 0.5),
                lambda: self.session.show_leaf(self.chance.choice(("", "active", "inactive", "upper"))),
            )
        )()

    def do_resize(self) -> None:
        """Make the window larger or smaller."""
        self.window.resize(self.chance.randrange(900, 1700), self.chance.randrange(600, 1100))

    def do_cell(self) -> None:
        """Go to a cell of a table, and press Enter there or go on from it."""
        from PySide6.QtCore import Qt
        from PySide6.QtTest import QTest
        from PySide6.QtWidgets import QAbstractItemView, QTableView

        views = [one for one in self.shown(QAbstractItemView) if one.model() and one.model().rowCount()]
        if views:
            view = self.chance.choice(views)
            model = view.model()
            row, column = self.chance.randrange(model.rowCount()), view.currentIndex().column()
            if isinstance(view, QTableView):
                column = self.chance.randrange(model.columnCount())
            view.setCurrentIndex(model.index(row, max(column, 0)))
            keys = (Qt.Key.Key_Return, Qt.Key.Key_Down, Qt.Key.Key_PageDown, Qt.Key.Key_Escape)
            QTest.keyClick(view, self.chance.choice(keys))

    def do_words(self) -> None:
        """Ask what a word means, and put the window of words away again."""
        if self.window.beside.words is not None and self.window.beside.words.isVisible():
            self.window.beside.words.close()
        elif self.chance.random() < 0.2:
            self.session.asked.emit(self.chance.choice(("", "hand", "door.thickness", "clear width")))

    def do_ask(self) -> None:
        """Ask something in the line under the commands, answer it, or put it away."""
        choices = [("Yes", lambda: None), ("No", lambda: None)][: self.chance.randrange(3)]
        self.window.ask(self.chance.choice("abc"), self.chance.choice(("", "Shall it be so?")), choices)
        self.window.say(self.chance.choice(("", "Something was said.")))

    def do_button(self) -> None:
        """Press a button of the page on show; the row of commands has deeds of its own."""
        from PySide6.QtWidgets import QAbstractButton

        buttons = self.shown(QAbstractButton, self.window.centralWidget())
        if buttons:
            self.chance.choice(buttons).click()


class Hand:
    """Clicks, keys, wheel and drags through Qt's own input path, at random places of the window."""

    def __init__(self, user: User) -> None:
        self.user, self.chance = user, user.chance

    def act(self) -> None:
        """Do one of them, at a random place."""
        from PySide6.QtCore import QPoint

        room = self.user.window.rect()
        # Left of and above this stands the row of commands, half of which ask for a file.
        place = QPoint(self.chance.randrange(room.width()), self.chance.randrange(40, room.height()))
        self.chance.choice((self.click, self.click, self.double, self.key, self.wheel, self.drag))(place)

    def click(self, place: Any) -> None:
        """Click, seldom with the other button."""
        from PySide6.QtCore import Qt
        from PySide6.QtTest import QTest

        widget, at = self._under(place)
        other = self.chance.random() < 0.05
        button = Qt.MouseButton.RightButton if other else Qt.MouseButton.LeftButton
        QTest.mouseClick(widget, button, Qt.KeyboardModifier.NoModifier, at)

    def double(self, place: Any) -> None:
        """Click twice."""
        from PySide6.QtCore import Qt
        from PySide6.QtTest import QTest

        widget, at = self._under(place)
        QTest.mouseDClick(widget, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)

    def key(self, _: Any) -> None:
        """Press a key in whatever has the keyboard."""
        from PySide6.QtTest import QTest
        from PySide6.QtWidgets import QApplication

        QTest.keyClick(QApplication.focusWidget() or self.user.window, self._key())

    def wheel(self, place: Any) -> None:
        """Turn the wheel."""
        from PySide6.QtCore import QPoint, QPointF, Qt
        from PySide6.QtGui import QWheelEvent
        from PySide6.QtWidgets import QApplication

        widget, at = self._under(place)
        turn = QPoint(0, self.chance.choice((-360, -120, 120, 360)))
        none, begun = Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase
        where = QPointF(widget.mapToGlobal(at))
        event = QWheelEvent(QPointF(at), where, QPoint(), turn, Qt.MouseButton.NoButton, none, begun, False)
        QApplication.sendEvent(widget, event)

    def drag(self, place: Any) -> None:
        """Press, move and let go somewhere near."""
        from PySide6.QtCore import QPoint, Qt
        from PySide6.QtTest import QTest

        widget, at = self._under(place)
        none, left = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.LeftButton
        to = at + QPoint(self.chance.randrange(-120, 121), self.chance.randrange(-60, 61))
        QTest.mousePress(widget, left, none, at)
        QTest.mouseMove(widget, to)
        QTest.mouseRelease(widget, left, none, to)

    def _under(self, place: Any) -> tuple[Any, Any]:
        window = self.user.window
        widget = window.childAt(place) or window
        return widget, widget.mapFrom(window, place)

    def _key(self) -> Any:
        from PySide6.QtCore import Qt

        keys = (
            "Tab Backtab Return Escape Up Down Left Right PageUp PageDown Home End Space Delete 1 3 Minus F8"
        )
        return getattr(Qt.Key, f"Key_{self.chance.choice(keys.split())}")


class ScreenHand(Hand):
    """The same through the screen: the server moves the pointer and presses what it is told to."""

    def click(self, place: Any) -> None:
        """Click, seldom with the other button."""
        self._screen(place, "click", "3" if self.chance.random() < 0.05 else "1")

    def double(self, place: Any) -> None:
        """Click twice."""
        self._screen(place, "click", "--repeat", "2", "--delay", "20", "1")

    def key(self, _: Any) -> None:
        """Press a key in whatever has the keyboard."""
        keys = "Tab shift+Tab Return Escape Up Down Left Right Prior Next Home End space Delete 1 3 minus F8"
        _xdotool("key", self.chance.choice(keys.split()))

    def wheel(self, place: Any) -> None:
        """Turn the wheel."""
        self._screen(place, "click", self.chance.choice("45"))

    def drag(self, place: Any) -> None:
        """Press, move and let go somewhere near."""
        across, down = (str(self.chance.randrange(-n, n + 1)) for n in (120, 60))
        self._screen(place, "mousedown", "1", "mousemove_relative", "--", across, down, "mouseup", "1")

    def _screen(self, place: Any, *then: str) -> None:
        at = self.user.window.mapToGlobal(place)
        _xdotool("mousemove", str(at.x()), str(at.y()), *then)


def _xdotool(*words: str) -> None:
    subprocess.run(["xdotool", *words], check=False, timeout=20)


def loose_objects() -> list[Any]:
    """Return the Python objects for what Qt made, owns and may free without telling, as layout items.

    Of a QObject Qt tells, and what was made in Python tells by itself.
    """
    import shiboken6
    from PySide6.QtCore import QMetaObject, QObject

    every = (one for one in shiboken6.getAllValidWrappers() if not isinstance(one, QObject | QMetaObject))
    return [one for one in every if not shiboken6.createdByPython(one) and not shiboken6.ownedByPython(one)]


def use(seed: int, steps: int, real: bool) -> int:
    """Use the window in this process; return its exit status."""
    faulthandler.enable()
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtCore import QSettings, QTimer
    from PySide6.QtWidgets import QFileDialog, QMessageBox

    from configurator.project_file import load
    from configurator.ui.app import new_application, open_window
    from configurator.ui.state.preferences import Preferences
    from configurator.ui.state.session import Session

    application = new_application()
    for name in ("getOpenFileName", "getSaveFileName"):
        setattr(QFileDialog, name, staticmethod(lambda *_, **__: ("", "")))
    QFileDialog.getExistingDirectory = staticmethod(lambda *_, **__: "")  # type: ignore[method-assign]
    QMessageBox.question = staticmethod(lambda *_, **__: QMessageBox.StandardButton.Discard)  # type: ignore
    raised: list[str] = []  # the window goes on after an error, and so does its user

    def note(kind: type[BaseException], error: BaseException, trace: Any) -> None:
        sys.__excepthook__(kind, error, trace)
        raised.append(f"{kind.__name__}: {error}")

    sys.excepthook = note
    settings = QSettings(
        str(Path(tempfile.gettempdir()) / f"long-use-{os.getpid()}.ini"), QSettings.Format.IniFormat
    )
    window = open_window(Session(load(DEMO), None), Preferences(settings))
    user = User(window, seed, steps, real)
    window.picture_shown.connect(lambda: QTimer.singleShot(0, window, user.step))
    window.show()
    status = application.exec()
    gc.collect()
    if raised:
        print(json.dumps({"raised": "; ".join(dict.fromkeys(raised))[:300]}), flush=True)
    sys.stdout.flush()
    return status


# --- The process that watches ---


@contextlib.contextmanager
def screen(wanted: bool) -> Iterator[dict[str, str]]:
    """Give a screen of its own by its environment; without one the window draws into memory."""
    if not wanted:
        yield {"QT_QPA_PLATFORM": "offscreen"}
        return
    reading, writing = os.pipe()
    words = ["Xvfb", "-displayfd", str(writing), "-screen", "0", "1920x1200x24", "-nolisten", "tcp"]
    server = subprocess.Popen(words, pass_fds=[writing], stderr=subprocess.DEVNULL)
    os.close(writing)
    try:
        with os.fdopen(reading) as told:
            yield {"QT_QPA_PLATFORM": "xcb", "DISPLAY": f":{told.readline().strip()}"}
    finally:
        server.terminate()
        server.wait()


def watched(seed: int, steps: int, real: bool, quiet: bool = False) -> Run:
    """Let a process use the window and return how it went."""
    words = [sys.executable, str(Path(__file__).resolve()), "--child", str(seed), "--steps", str(steps)]
    parts: list[Part] = []
    done, raised = 0, ""
    with tempfile.TemporaryDirectory(prefix="long-use-") as folder, screen(real) as shown:
        own = {"XDG_STATE_HOME": folder, "XDG_CONFIG_HOME": folder, "TMPDIR": folder}
        memory = {"PYTHONMALLOC": "malloc", "MALLOC_PERTURB_": "205"}
        log = Path(folder) / "errors"
        with log.open("w") as errors:
            process = subprocess.Popen(
                [*words, *(["--real"] if real else [])],
                env={**os.environ, **own, **memory, **shown},
                stdout=subprocess.PIPE,
                stderr=errors,
                text=True,
            )
        alarm = _Alarm(process)
        assert process.stdout is not None
        for line in process.stdout:
            alarm.put_off()
            told = json.loads(line)
            raised = told.get("raised", raised)
            if "part" in told:
                done = told["done"]
                parts.append(Part(*told["part"]))
        alarm.cancel()
        status = process.wait()
        said = log.read_text(errors="replace")
    ended = "hung" if alarm.rang else _ending(status, raised)
    if ended and not quiet:
        print(f"seed {seed}: {ended} after some {done} steps\n{said[-4000:]}", file=sys.stderr, flush=True)
    return Run(seed, done, ended, tuple(parts))


def _ending(status: int, raised: str) -> str:
    if status < 0:
        return f"died of {signal.Signals(-status).name}"
    return f"raised {raised}" if raised or status else ""


class _Alarm:
    """Kills a process that says nothing for too long."""

    def __init__(self, process: subprocess.Popen[str]) -> None:
        from threading import Timer

        self._timer, self._process, self.rang = Timer, process, False
        self.put_off()

    def put_off(self) -> None:
        """Wait anew."""
        self._worked = self._processor_seconds()
        self._wait()

    def _wait(self) -> None:
        self.cancel()
        self._now = self._timer(SILENT, self._ring)
        self._now.daemon = True
        self._now.start()

    def cancel(self) -> None:
        """Wait no more."""
        if hasattr(self, "_now"):
            self._now.cancel()

    def _processor_seconds(self) -> float:
        """Return what the process has worked so far; 0 once it is gone."""
        try:
            fields = Path(f"/proc/{self._process.pid}/stat").read_text().rpartition(")")[2].split()
        except OSError:
            return 0.0
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def _ring(self) -> None:
        # On a busy machine a process may work and yet come to no word for long; one that waits does not work.
        if 1.0 < self._processor_seconds() - self._worked < SILENT:
            self._wait()
            return
        self.rang = True
        self._process.send_signal(signal.SIGABRT)  # so that it tells where it stands


def main() -> int:
    """Run every seed and print the table."""
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--steps", type=int, default=50_000, help="of all seeds together")
    asked.add_argument("--seeds", type=int, default=10)
    asked.add_argument("--first", type=int, default=1, help="the first seed")
    asked.add_argument("--at-once", type=int, default=2, help="processes at once")
    asked.add_argument("--real", action="store_true", help="a real window, on a screen of its own")
    asked.add_argument("--child", type=int, help=argparse.SUPPRESS)
    given = asked.parse_args()
    if given.child is not None:
        return use(given.child, given.steps, given.real)
    if given.real and not (shutil.which("Xvfb") and shutil.which("xdotool")):
        sys.exit("a real window needs Xvfb and xdotool")
    each = given.steps // given.seeds
    seeds = range(given.first, given.first + given.seeds)
    with ThreadPoolExecutor(given.at_once) as both:
        runs = list(both.map(lambda seed: watched(seed, each, given.real), seeds))
    print("seed   steps   step early  late, ms   memory early  late, MB   ended")
    for run in runs:
        step, memory = (f"{run.early(what):10.1f} {run.late(what):9.1f}" for what in ("step", "memory"))
        print(
            f"{run.seed:4} {run.steps:7,}   {step}     {memory}     {'; '.join(run.faults(each)) or 'well'}"
        )
    return int(any(run.faults(each) for run in runs))


if __name__ == "__main__":
    sys.exit(main())
