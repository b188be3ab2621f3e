"""Grabs every page and dialog of the window at every usual size, 1x and 2x, light and dark; lists cuts.

Run: .venv/bin/python tests/bench/look_at_window.py FOLDER [SIZE ...]   (all of it: some minutes)
Ends with status 1 where a widget has less room than its words take, or lies over another.

The sizes are those of screens; the window takes what a title bar and a panel leave of them.
"""

import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

SCREENS = ("1280x800", "1366x768", "1920x1080")
PANEL_AND_TITLE = 64
"""Pixels of a screen that a desktop's panel and the window's title bar take."""
DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"
SCHEDULE = DEMO.with_name("door_schedule.csv")


def main() -> int:
    """Grab at each ratio in a process of its own: Qt takes it only at the start."""
    folder, screens = Path(sys.argv[1]), sys.argv[2:] or list(SCREENS)
    if ratio := os.environ.get("QT_SCALE_FACTOR"):
        return _grab(folder, screens, f"{ratio}x")
    ends = []
    for ratio in ("1", "2"):
        surroundings = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "QT_SCALE_FACTOR": ratio}
        ends.append(subprocess.run([sys.executable, *sys.argv], env=surroundings, check=False).returncode)
    return max(ends)


def _grab(folder: Path, screens: list[str], ratio: str) -> int:
    from configurator.ui.app import new_application

    application = new_application()
    folder.mkdir(parents=True, exist_ok=True)
    faults = 0
    for screen in screens:
        width, height = map(int, screen.split("x"))
        for theme in ("light", "dark"):
            with tempfile.TemporaryDirectory() as state:
                os.environ["XDG_STATE_HOME"] = state
                for name, widget in _views(application, state, (width, height - PANEL_AND_TITLE), theme):
                    widget.grab().save(str(folder / f"{name}-{screen}-{ratio}-{theme}.png"))
                    for fault in {*cut(widget), *covered(widget)}:
                        print(f"{name} {screen} {ratio} {theme}: {fault}", flush=True)
                        faults += 1
    print(f"{ratio}: {faults} faults")
    return 1 if faults else 0


def _views(application, state: str, size: tuple[int, int], theme: str) -> Iterator[tuple[str, object]]:
    """Yield every page and dialog on show, with its name."""
    from PySide6.QtCore import QSettings

    from configurator.project_file import load
    from configurator.ui.app import open_window
    from configurator.ui.state.preferences import Preferences
    from configurator.ui.state.session import Session
    from configurator.ui.window.command_bar import TABS

    session = Session(load(DEMO), DEMO)
    session.select("112A")
    preferences = Preferences(QSettings(f"{state}/settings.ini", QSettings.Format.IniFormat))
    preferences.appearance = theme
    window = open_window(session, preferences)
    shown: list[bool] = []
    window.picture_shown.connect(lambda: shown.append(True))
    window.resize(*size)
    window.show()
    session.use_dark(theme == "dark")
    while not shown:
        application.processEvents()
    for page, words in TABS.items():
        window.turn_to(page)
        _settle(application)
        if page == "import":
            window.pages.made[page].read(SCHEDULE)
            _settle(application)
        yield words.lower().replace(" ", "_"), window
    window.turn_to("")
    under = window.work.under
    for place in range(under.count()):
        under.setCurrentIndex(place)
        _settle(application)
        yield f"under_{under.tabText(place).lower().replace(' ', '_')}", window
    for name in ("preferences", "help", "words", "find"):
        before = set(application.topLevelWidgets())
        window.commands.actions_by_name[name].trigger()
        _settle(application)
        for dialog in set(application.topLevelWidgets()) - before:
            if dialog.isVisible() and dialog.windowTitle():
                yield name, dialog
                dialog.hide()
    session.history.mark_saved()
    window.close()
    window.deleteLater()
    _settle(application)


def _settle(application) -> None:
    for _ in range(20):
        application.processEvents()


def _seen(widget) -> Iterator[object]:
    from PySide6.QtWidgets import QWidget

    yield from (one for one in widget.findChildren(QWidget) if one.isVisible() and one.window() is widget)


def cut(window) -> Iterator[str]:
    """Yield what has less room than its words take."""
    from PySide6.QtWidgets import QAbstractButton, QComboBox, QLabel, QTabBar, QTableView

    for one in _seen(window):
        if isinstance(one, QLabel) and one.text() and not one.wordWrap() and one.pixmap().isNull():
            if one.width() < one.sizeHint().width():
                yield f"label “{one.text()[:40]}” is cut"
        elif isinstance(one, QLabel) and one.text() and one.wordWrap():
            if one.height() < one.heightForWidth(one.width()):
                yield f"words “{one.text()[:40]}” are cut below"
        elif isinstance(one, QAbstractButton) and one.width() < min(
            _words_wide(one) + 4, one.minimumSizeHint().width()
        ):
            yield f"button “{one.text()[:40]}” is cut"
        elif isinstance(one, QTabBar) and one.isVisible():
            tabs = [one.tabRect(n) for n in range(one.count()) if one.isTabVisible(n)]
            if tabs and (tabs[-1].right() > one.width() or tabs[0].left() < 0):
                yield f"tabs of “{one.accessibleName() or one.tabText(0)}” are cut"
        elif isinstance(one, QComboBox):
            words = one.fontMetrics().horizontalAdvance(one.currentText())
            if words + 24 > one.width():
                yield f"choice “{one.currentText()[:40]}” is cut"
        elif isinstance(one, QTableView):
            yield from _cut_cells(one)


def _words_wide(button) -> int:
    lines = button.text().replace("&", "").splitlines()
    return max((button.fontMetrics().horizontalAdvance(line) for line in lines), default=0)


def _cut_cells(table) -> Iterator[str]:
    """Yield cells of one line that have less room than their words, and show these nowhere else."""
    from PySide6.QtCore import Qt

    model, metrics = table.model(), table.fontMetrics()
    for row in range(max(table.rowAt(0), 0), model.rowCount()):
        if not 0 <= table.rowViewportPosition(row) < table.viewport().height():
            continue
        for column in (n for n in range(model.columnCount()) if not table.isColumnHidden(n)):
            index = model.index(row, column)
            words = str(index.data() or "")
            short = metrics.horizontalAdvance(words) + 6 - table.columnWidth(column)
            if short > 0 and table.rowHeight(row) < 2 * metrics.height() and not index.data(Qt.ToolTipRole):
                yield f"cell “{words[:40]}” is cut by {short}"


def covered(window) -> Iterator[str]:
    """Yield widgets with words that lie over one another beside one another, in one parent."""
    from PySide6.QtWidgets import QAbstractButton, QComboBox, QLabel, QLineEdit

    kinds = (QAbstractButton, QComboBox, QLabel, QLineEdit)
    seen = [one for one in _seen(window) if isinstance(one, kinds)]
    for n, one in enumerate(seen):
        for other in seen[n + 1 :]:
            if one.parent() is other.parent() and one.geometry().intersects(other.geometry()):
                yield f"{_name(one)} lies over {_name(other)}"


def _name(widget) -> str:
    words = getattr(widget, "text", lambda: "")() or widget.accessibleName() or widget.objectName()
    return f"{type(widget).__name__} “{words[:30]}”"


if __name__ == "__main__":
    sys.exit(main())
