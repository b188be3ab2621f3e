"""Makes the pictures that the documents show, from the real window and the real exporters.

Run: QT_QPA_PLATFORM=offscreen .venv/bin/python tests/bench/make_pictures.py [folder]
"""

import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QElapsedTimer, QSettings, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from configurator.cli import main as command
from configurator.drawing.pages.page import papers
from configurator.drawing.sheets import SHEETS, sheet_maker
from configurator.export.figure import png_bytes
from configurator.export.pages import picture_of
from configurator.project_file import load
from configurator.study import study
from configurator.ui.app import new_application, open_window
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session
from configurator.ui.words.window import WordsWindow
from configurator.units import Display

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
SIZE = (1440, 900)
SHEET_DPI = 130.0
LONGEST_WAIT = 20_000
PROBLEM = 557
"""The problem of practice that is shown: how far a pin stands off the frame face."""


def picture_of_window(
    application: QApplication,
    path: Path,
    dark: bool = False,
    page: str = "",
    size: tuple[int, int] = SIZE,
    under: str = "",
) -> None:
    """Grab the whole window on opening 112A, with a page in place of the work, or a tab of it, if named."""
    session = Session(load(DEMO), DEMO)
    session.select("112A")
    with tempfile.TemporaryDirectory() as folder:
        preferences = Preferences(QSettings(f"{folder}/settings.ini", QSettings.Format.IniFormat))
        preferences.dark = dark
        window = open_window(session, preferences)
        shown: list[bool] = []
        window.picture_shown.connect(lambda: shown.append(True))
        window.resize(*size)
        window.show()
        clock = QElapsedTimer()
        clock.start()
        while not shown and clock.elapsed() < LONGEST_WAIT:
            application.processEvents()
        window.turn_to(page)
        if page == "import":
            window.pages.made[page].read(DEMO.with_name("door_schedule.csv"))
        if under:
            tabs = window.work.under
            tabs.setCurrentIndex([tabs.tabText(n) for n in range(tabs.count())].index(under))
        if page == "practice":
            window.pages.made[page].call(PROBLEM)
            window.pages.made[page].help_on()
        for _ in range(20):
            application.processEvents()
        window.grab().save(str(path))
        window.close()


HELP = {"work": "", "client": "client", "schedule": "schedule", "order": "order", "sheets": "sheets"}
HELP |= {"practice": "practice", "start": "start", "import": "import", "what_if": ""}
"""Picture of the help to the page it shows."""
HELP_WIDTH = 760


def pictures_of_help(application: QApplication, folder: Path) -> None:
    """Grab every page for the help, in a window just large enough, and shrink it to the help's width."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, page in HELP.items():
        place = folder / f"{name}.png"
        under = "What if" if name == "what_if" else ""
        picture_of_window(application, place, page=page, size=(1100, 690), under=under)
        picture = QImage(str(place)).scaledToWidth(HELP_WIDTH, Qt.TransformationMode.SmoothTransformation)
        picture.save(str(place))


def picture_of_a_word(application: QApplication, path: Path, place: str = "frame.rabbet") -> None:
    """Grab the window of words on one of them, with what it comes to in opening 112A."""
    session = Session(load(DEMO), DEMO)
    session.select("112A")
    words = WordsWindow(session)
    words.ask(place)
    words.show()
    application.processEvents()
    words.grab().save(str(path))
    words.close()


def picture_of_sheet(kind: str, path: Path) -> None:
    """Draw one kind of sheet of opening 112A as it is printed, small enough to look at."""
    job = load(DEMO)
    opening = next(one for one in job.openings if one.mark == "112A")
    page = sheet_maker(kind)(study(opening, job.job), job.job, papers()["Letter"], None, Display())
    path.write_bytes(png_bytes(picture_of(page), SHEET_DPI))


def main() -> None:
    """Write every picture into `resources/pictures/`, or the folder named."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "resources" / "pictures"
    folder.mkdir(parents=True, exist_ok=True)
    application = new_application()
    picture_of_window(application, folder / "window.png")
    for page in ("client", "schedule", "order", "practice"):
        picture_of_window(application, folder / f"window-{page}.png", page=page)
    picture_of_a_word(application, folder / "window-words.png")
    pictures_of_help(application, folder.with_name("help"))
    # Last of the windows: the application keeps the dark theme.
    picture_of_window(application, folder / "window-dark.png", dark=True)
    command(["draw", str(DEMO), "--mark", "205A", "--out", str(folder / "plan-205A.png")])
    for kind in SHEETS:
        picture_of_sheet(kind, folder / f"sheet-{kind}.png")


if __name__ == "__main__":
    main()
