"""The three questions, what to start from, and, folded away, what was taken as usual."""

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from configurator.drawing.client.client_page import client_notes
from configurator.drawing.pages.notes import Note
from configurator.study import Study
from configurator.ui.client.answers import (
    HANDLES,
    NO_HANDLE,
    THINGS,
    WALLS,
    ThingAnswer,
    handle_of,
    places_of,
    wall_changes,
    wall_of,
    with_handle,
    with_nothing,
    with_thing,
)
from configurator.ui.client.controls import Choices, Tiles, fit
from configurator.ui.client.starts import STARTS, started
from configurator.ui.client.stepper import Stepper
from configurator.ui.kit.layout import GROW, Pool, across, down, fill, put_in_order
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state import edits
from configurator.ui.state.session import Session

NOTHING = "Nothing"
_MEASURES = {
    "projection": "how far does it stand out from the wall?",
    "start": "how far from the frame does it begin?",
    "diameter": "how thick is it?",
}
"""What is asked of a thing beside the door, by the key it is kept under."""
_SIZE_STEP, _THING_STEP = 2.0, 0.25
"""Inches a press of a button goes: doors come in twos, what stands on a wall in quarters."""


class Questions(QWidget):
    """What a client is asked. Every answer is an edit of the opening on show, and can be undone.

    Signals:
        tried: a typical door of that name is to be tried.
    """

    tried = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.starts = Tiles(STARTS, "try a door", lambda name, _: self.tried.emit(name))
        sides = ("width", "height")
        self.sizes = [Stepper(session, f"size.{side}", _SIZE_STEP, self._begin) for side in sides]
        self.walls = Choices([one.name for one in WALLS], "the wall", lambda name, _: self._take_wall(name))
        self.things = Choices(
            [NOTHING, *(one.name for one in THINGS)], "on the wall beside the door", self._take_thing
        )
        self.handles = Choices([NO_HANDLE, *HANDLES], "the handle", lambda name, _: self._take_handle(name))
        self.handle_title, self.refusal = QLabel("The handle"), QLabel()
        self.cautions, self.usual = QLabel(), QLabel()
        self.fold, self.undo = QPushButton(), QPushButton("Undo")
        self._touch = 0
        self._tiles_dark: bool | None = None
        self._measured: tuple[str, ...] = ()
        self._rows = QVBoxLayout()
        self._steppers = Pool(self._stepper)
        self._titles: list[QLabel] = []
        self._put_together()

    def work_on(self, session: Session) -> None:
        """Ask about the opening of another session: that of a door on trial, or the job's again."""
        self.session = session
        for stepper in self.sizes:
            stepper.session = session
        self._measured = ()
        self._answered("")

    # --- What it shows ---

    def show_state(self) -> None:
        """Show the answers that hold."""
        self._show_tiles()
        opening = self.session.opening
        if opening is None:
            for choices in (self.walls, self.things):
                choices.show_on([])
        else:
            wall = wall_of(opening)
            self.walls.show_on([wall.name] if wall else [])
            on = [thing.name for thing in THINGS if places_of(opening, thing)]
            self.things.show_on(on or [NOTHING])
            self.handles.show_on([handle_of(opening)])
        self._show_measures()
        for stepper in (*self.sizes, *self.measures):
            stepper.show_state()
        self.undo.setEnabled(self.session.history.undo_name is not None)
        tinted(self.refusal, "error", self.session.dark)
        self._show_notes(self.session.study)

    def _show_tiles(self) -> None:
        """Draw the tiles once for each theme, as the doors they stand for stand open."""
        if self._tiles_dark != self.session.dark:
            self._tiles_dark = self.session.dark
            self.starts.show_pictures(self._tile)

    def _tile(self, name: str, size: QSize) -> QPixmap:
        from configurator.drawing.client.client_picture import tile
        from configurator.study.run import study
        from configurator.ui.kit.pictures import pixmap_of

        shown = study(started("tile", name))
        return pixmap_of(
            lambda width, height: tile(shown, width, height),
            size,
            self.devicePixelRatioF(),
            self.session.dark,
        )

    def _show_measures(self) -> None:
        """Show a length for everything on the wall that a client can say something of."""
        wanted = tuple(path for _, path in self._wanted())
        if wanted == self._measured:
            return
        self._measured = wanted
        for stepper, (thing, path) in zip(self._steppers.take(len(wanted)), self._wanted(), strict=True):
            stepper.session = self.session
            stepper.stand_for(path, f"{thing.name}: {_MEASURES[path.rpartition('.')[2]]}")
            stepper.ask_measured()
        put_in_order(self)

    @property
    def measures(self) -> list[Stepper]:
        """What is asked of the things on the wall."""
        return self._steppers.on_show

    def parts(self) -> list[QWidget]:
        """Return what Tab goes through."""
        above = (self.starts, *self.sizes, self.walls, self.things, *self.measures)
        return [*above, self.undo, self.fold, self.handles]

    def _wanted(self) -> list[tuple[ThingAnswer, str]]:
        opening = self.session.opening
        if opening is None:
            return []
        return [
            (thing, f"obstructions.{place}.{key}")
            for thing in THINGS
            for place in places_of(opening, thing)
            for key in thing.measures
        ]

    def _stepper(self, place: int) -> Stepper:
        stepper = Stepper(self.session, self._measured[place], _THING_STEP)
        stepper.show_size(self._touch)
        self._rows.addWidget(stepper)
        return stepper

    def _show_notes(self, study: Study | None) -> None:
        """Show what is to be noted, and how much was taken as usual; that itself is folded away."""
        notes = client_notes(study, self.session.display) if study else ()
        cautions = _lines([note for note in notes if note.warns])
        self.cautions.setText(cautions)
        self.cautions.setVisible(bool(cautions))
        tinted(self.cautions, "warning", self.session.dark)
        self.usual.setText(_lines([note for note in notes if not note.warns]))
        open_, count = self.fold.isChecked(), len(study.filled.assumed) if study else 0
        for folded in (self.handle_title, self.handles, self.usual):
            folded.setVisible(open_)
        self.fold.setVisible(study is not None)
        self.fold.setText(f"{'▾' if open_ else '▸'} Taken as usual: {count} things")

    # --- What it does ---

    def _begin(self) -> None:
        """Begin a plain door where there is none, so that any question can be the first to be answered."""
        if self.session.opening is None:
            fresh = edits.typical_opening(edits.fresh_mark(self.session.job))
            self.session.take_openings((*self.session.job.openings, fresh), "begin a door", fresh.mark)

    def _take_wall(self, name: str) -> None:
        self._begin()
        opening = self.session.opening
        wall = next(one for one in WALLS if one.name == name)
        if opening is not None and wall_of(opening) is not wall:
            self._take(wall_changes(opening, wall))
        self.show_state()

    def _take_thing(self, name: str, there: bool) -> None:
        self._begin()
        opening = self.session.opening
        if opening is None:
            return
        if name == NOTHING:
            self._take({"obstructions": with_nothing(opening)})
        else:
            thing = next(one for one in THINGS if one.name == name)
            self._take({"obstructions": with_thing(opening, thing, there)})
        self.show_state()

    def _take_handle(self, name: str) -> None:
        opening = self.session.opening
        if opening is not None and handle_of(opening) != name:
            self._take({"hardware": with_handle(opening, name)})
        self.show_state()

    def _take(self, changes: Mapping[str, Any]) -> None:
        """Make the changes, or say why not and leave nothing of them waiting."""
        if self.session.edit_many(changes):
            self._answered("")
            return
        sentence = next(
            (self.session.refusals[x].sentence for x in changes if x in self.session.refusals), ""
        )
        for path in changes:
            self.session.withdraw(path)
        self._answered(sentence)

    def _answered(self, refusal: str) -> None:
        self.refusal.setText(f"⚠ {refusal}" if refusal else "")
        self.refusal.setVisible(bool(refusal))

    # --- How it is put together ---

    def _put_together(self) -> None:
        folded = (self.handle_title, self.handles, self.usual)
        parts = (
            *self._asked("Try a door", self.starts),
            *self._asked("1. How big is the door?", across(*self.sizes)),
            *self._asked("2. What is the wall?", self.walls),
            *self._asked("3. Is there anything on the wall beside it?", self.things, self._rows),
            *(self.refusal, self.undo, self.cautions, self.fold, *folded, (GROW, 1)),
        )
        margins = (2 * GRID, 2 * GRID, 2 * GRID, 2 * GRID)
        fill(self, down(*parts, spacing=GRID, margins=margins))
        for label in (self.refusal, self.cautions, self.usual):
            label.setWordWrap(True)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.refusal.hide()
        self.undo.setAccessibleName("take back the last answer")
        self.undo.setToolTip("Take back the last answer (Ctrl+Z)")
        self.undo.clicked.connect(self.session.undo)
        self.fold.setCheckable(True)
        self.fold.setAccessibleName("show what was taken as usual")
        self.fold.clicked.connect(lambda _: self._show_notes(self.session.study))
        self._titles.append(self.handle_title)

    def _asked(self, title: str, *answers: Any) -> tuple[Any, ...]:
        label = QLabel(title)
        label.setWordWrap(True)
        self._titles.append(label)
        return (GRID, label, *answers)

    def show_size(self, touch: int, columns: int) -> None:
        """Set the questions in bold, the answers in so many columns, each at least `touch` pixels high."""
        self._touch = touch
        for label in self._titles:
            font = self.font()
            font.setBold(True)
            label.setFont(font)
        for choices in (self.starts, self.walls, self.things, self.handles):
            choices.show_size(touch, columns)
        for stepper in (*self.sizes, *self.measures):
            stepper.show_size(touch)
        fit(self.fold, touch, (self.fold.text(),))
        fit(self.undo, touch, (self.undo.text(),))


def _lines(notes: Sequence[Note]) -> str:
    return "\n\n".join("\n".join((note.heading, *note.paragraphs)) for note in notes if note.paragraphs)
