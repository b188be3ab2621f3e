"""The first page where there is no job yet: jobs worked on lately, and a new one by three questions."""

import json
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

from pydantic import ValidationError
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QLabel, QLineEdit, QPushButton, QWidget

from configurator.model import Opening
from configurator.model.faults import faults_of
from configurator.project_file.lock import clock, holder_of
from configurator.sentences import capitalized
from configurator.ui.client.answers import THINGS, WALLS, wall_changes
from configurator.ui.kit.fields import Note
from configurator.ui.kit.kinds import LENGTH, SIZE, USUAL_HEIGHT, NotReadError
from configurator.ui.kit.layout import BARE, GROW, LeadsOn, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.table import FittedTable
from configurator.ui.kit.table_model import Head, Row
from configurator.ui.state import edits
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session

MARK = "101"
USUAL_SIZE = "3-0 x 7-0"
NOTHING = "Nothing"
JOBS_HEIGHT = 60 * GRID
"""Pixels: room for as many jobs as are remembered."""
NOT_KNOWN = "Not known"
LARGEST_LOOKED_INTO = 2_000_000
"""Bytes of a job that is read to say what is in it; of a larger one only its age is said."""


class Choice(QWidget):
    """Buttons of which one is pressed; arrow keys go from one to the next."""

    def __init__(self, names: Sequence[str], about: str, chosen: Callable[[], object]) -> None:
        super().__init__()
        self.group = QButtonGroup(self)
        self.buttons: dict[str, QPushButton] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(*BARE)
        grid.setSpacing(GRID)
        for place, name in enumerate(names):
            button = self.buttons[name] = QPushButton(name)
            button.setCheckable(True)
            button.setAutoDefault(False)
            button.setAccessibleName(f"{about}: {name}")
            button.clicked.connect(lambda _=False: chosen())
            self.group.addButton(button)
            grid.addWidget(button, *divmod(place, 3))  # so that half of a wide screen is enough
        next(iter(self.buttons.values())).setChecked(True)

    @property
    def name(self) -> str:
        """What is chosen."""
        return next(name for name, button in self.buttons.items() if button.isChecked())


class StartPage(LeadsOn, QWidget):
    """What to do where nothing is begun.

    Signals:
        command_wanted: the command of that name is asked for.
        file_wanted: a project file is to be opened.
        job_wanted: a new job is to begin with that opening.
    """

    command_wanted = Signal(str)
    file_wanted = Signal(object)
    job_wanted = Signal(object)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self._preferences: Preferences | None = None
        self._listed: list[Path] = []
        self.door_size = QLineEdit(USUAL_SIZE)
        self.walls = Choice([NOT_KNOWN, *(wall.name for wall in WALLS)], "wall", self._clear)
        self.things = Choice([NOTHING, *(thing.name for thing in THINGS)], "beside it", self._show_measures)
        self.projection, self.start = QLineEdit(), QLineEdit()
        self._asked, self._measures = QWidget(), QWidget()
        self.note = Note(self)
        self.begin = QPushButton("Show the door")
        self.jobs = FittedTable("jobs worked on lately", (Head("Job"), Head("State"), Head("Folder")))
        self._none = QLabel("No job was opened here yet.")
        self._put_together()
        self.first_stop = self.door_size

    def remember_in(self, preferences: Preferences) -> None:
        """Take the jobs worked on lately from there."""
        self._preferences = preferences

    def show_state(self, _by: str) -> None:
        """Show the jobs as they are now; what was answered stays."""
        self._listed = self._preferences.recent if self._preferences is not None else []
        rows = [Row((path.name, state_of(path), str(path.parent)), path) for path in self._listed]
        self.jobs.show_rows(rows)
        self.jobs.setFixedHeight(JOBS_HEIGHT)
        self.jobs.setVisible(bool(rows))
        self._none.setVisible(not rows)
        self.door_size.selectAll()

    def opening(self) -> Opening:
        """Return the opening that was answered for. Raises NotReadError with the reason in words."""
        data: dict[str, Any] = {"mark": MARK, **edits.TYPICAL, "size": self._size()}
        try:
            opening = Opening.model_validate({**data, "obstructions": self._obstructions()})
            self.door_size.setText(SIZE.write(opening.size, self.session.display))
            return self._with_wall(opening)
        except ValidationError as error:
            fault = faults_of(error, Opening)[0]
            raise NotReadError(f"{capitalized(fault.message)}") from None

    def _size(self) -> dict[str, float]:
        """Return the width and height that were typed; a width alone is a door of the usual height."""
        typed, display = self.door_size.text(), self.session.display
        try:
            return dict(SIZE.read(typed, display))
        except NotReadError as error:
            try:
                width = LENGTH.read(typed, display)
            except NotReadError:
                raise error from None
        return {"width": width, "height": USUAL_HEIGHT}

    def _with_wall(self, opening: Opening) -> Opening:
        wall = next((wall for wall in WALLS if wall.name == self.walls.name), None)
        return opening if wall is None else edits.edited(opening, wall_changes(opening, wall))

    def _obstructions(self) -> list[dict[str, Any]]:
        thing = next((thing for thing in THINGS if thing.name == self.things.name), None)
        if thing is None:
            return []
        typed = {"projection": self.projection, "start": self.start}
        given = {
            key: LENGTH.read(line.text(), self.session.display)
            for key, line in typed.items()
            if line.isVisibleTo(self) and line.text().strip() not in ("", self._usual(thing.usual.get(key)))
        }
        return [{**thing.row, **given}]

    def _begin(self) -> None:
        try:
            opening = self.opening()
        except NotReadError as error:
            self.note.say(str(error), "error", self.session.dark)
        else:
            self._clear()
            self.job_wanted.emit(opening)

    def _clear(self) -> None:
        self.note.say("", "error", self.session.dark)

    def _show_measures(self) -> None:
        self._clear()
        thing = next((thing for thing in THINGS if thing.name == self.things.name), None)
        row = {} if thing is None else thing.usual
        for key, line in (("projection", self.projection), ("start", self.start)):
            line.setText(self._usual(row.get(key)))
        self._measures.setVisible(thing is not None)
        self.projection.setEnabled(row.get("projection") is not None)

    def _usual(self, length: float | None) -> str:
        """Return what a line holds until somebody has measured."""
        return "" if length is None else LENGTH.write(length, self.session.display)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Enter on any answer for being done with all of them."""
        focused = self.focusWidget()
        done = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if done and focused is not None and self._asked.isAncestorOf(focused):
            self._begin()
        else:
            super().keyPressEvent(event)

    # --- How it is put together ---

    def _put_together(self) -> None:
        self.begin.setDefault(True)
        for line, name in (
            (self.door_size, "door width and height"),
            (self.projection, "how far it stands out"),
            (self.start, "how far from the frame"),
        ):
            line.setAccessibleName(name)
            line.setMaximumWidth(30 * GRID)
            line.returnPressed.connect(self._begin)
            line.textEdited.connect(self._clear)
        self.begin.clicked.connect(self._begin)
        self.jobs.select_rows()
        self.jobs.opened.connect(self.file_wanted)
        measures = across(
            QLabel("Stands out by"),
            self.projection,
            QLabel("begins beside the frame at"),
            self.start,
            GROW,
            spacing=2 * GRID,
        )
        fill(self._measures, down(measures, margins=BARE))
        self._measures.hide()
        fill(self._asked, down(*self._questions(), GROW, spacing=2 * GRID, margins=BARE))
        sides = (self._left(), 1), (self._asked, 1)
        fill(
            self,
            down(across(*sides, spacing=6 * GRID), GROW, margins=(4 * GRID, 8 * GRID, 4 * GRID, 8 * GRID)),
        )

    def _questions(self) -> Iterator[Any]:
        yield _heading("A new job")
        yield QLabel("How large is the opening? Width x height, as 3-0 x 7-0, 3070 or 36 x 84")
        yield across(self.door_size, GROW)
        yield QLabel("What is the wall?")
        yield self.walls
        yield QLabel("What stands along the wall, where the door swings back?")
        yield self.things
        yield self._measures
        yield self.note
        yield across(self.begin, GROW)

    def _left(self) -> QWidget:
        left = QWidget()
        buttons = [
            self._button("Open a job…", "open"),
            self._button("Take in an architect's schedule…", "import"),
            self._button("Look at the demo job", "demo"),
        ]
        parts = (
            _heading("Jobs worked on lately"),
            self._none,
            self.jobs,
            across(*buttons, GROW, spacing=GRID),
            GROW,
        )
        fill(left, down(*parts, spacing=2 * GRID, margins=BARE))
        return left

    def _button(self, words: str, command: str) -> QPushButton:
        button = QPushButton(words)
        button.setAutoDefault(False)
        button.clicked.connect(lambda: self.command_wanted.emit(command))
        return button


def _heading(words: str) -> QLabel:
    label = QLabel(words)
    sized(label, 1, bold=True)
    return label


def state_of(path: Path) -> str:
    """Say how a job of the list is: gone, in use elsewhere, or what is in it and when it was changed."""
    try:
        found = path.stat()
    except OSError:
        return "not there any more"
    holder = holder_of(path)
    parts = ["open in another window"] if holder is not None and not holder.stale() else []
    if found.st_size <= LARGEST_LOOKED_INTO:
        parts.append(_content_of(path))
    return ", ".join((*parts, f"changed {clock(found.st_mtime)}"))


def _content_of(path: Path) -> str:
    try:
        openings = len(json.loads(path.read_bytes())["openings"])
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return "cannot be read"
    return f"{openings} opening{'' if openings == 1 else 's'}"
