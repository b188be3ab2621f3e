"""The three questions, what to start from, and, folded away, what was taken as usual."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from configurator.drawing.client.client_page import client_notes
from configurator.drawing.pages.notes import Note
from configurator.model import paths
from configurator.sentences import capitalized
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
from configurator.ui.client.controls import TICK, Choices, Tiles, fit
from configurator.ui.client.starts import STARTS, started
from configurator.ui.kit.fields import TypedLine
from configurator.ui.kit.kinds import NotReadError, kind_at
from configurator.ui.kit.layout import BARE, GROW, Pool, across, down, fill, put_in_order
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state import edits
from configurator.ui.state.session import Session
from configurator.units import MM_PER_INCH

NOT_MEASURED = "not measured"


class Stepper(QWidget):
    """The length at a path of the opening on show, with its name over it and a refusal under it.

    `step` is in inches; of lengths shown in millimetres it is the nearest five. `begin` begins a door where
    there is none yet.
    """

    def __init__(
        self, session: Session, path: str, step: float, begin: Callable[[], None] | None = None
    ) -> None:
        super().__init__()
        self._begin = begin
        self.session, self.path = session, path
        self._step = step
        self.name, self.line = QLabel(), TypedLine()
        self.measured = QPushButton(NOT_MEASURED)
        self.measured.setCheckable(True)
        self.measured.clicked.connect(self._take_measured)
        self.measured.hide()
        self.name.setWordWrap(True)
        self.line.setMinimumWidth(18 * GRID)
        self.less, self.more = self._button("−", -1), self._button("+", 1)
        self.note = QLabel()
        self.note.setWordWrap(True)
        self.note.hide()
        self.name.setBuddy(self.line)
        self.line.editingFinished.connect(self._finish)
        self.line.given_up.connect(self._give_up)
        self.line.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self._put_together()
        self.stand_for(path, paths.plain_name(path))

    def stand_for(self, path: str, name: str) -> None:
        """Show the length at another path from now on, under its name; what was typed is forgotten."""
        self.path = path
        self.line.being_typed = False
        self.name.setText(capitalized(name))
        self.line.setAccessibleName(name)
        self.line.setAccessibleDescription(paths.help_of(path))
        self.measured.setAccessibleName(f"not measured: {name}")
        self.measured.setToolTip("Nobody has measured it: what is usual is taken, and said to be")
        for button, way in ((self.less, "less"), (self.more, "more")):
            button.setAccessibleName(f"{way}: {name}")
            button.setToolTip(f"{way.capitalize()}: {name}")

    def show_state(self) -> None:
        """Show what holds; a value that was refused stays as it was typed."""
        refusal = self.session.refusals.get(self.path)
        if refusal is None and not self.line.being_typed:
            self.line.setText(self._written())
        self.note.setText(f"⚠ {refusal.sentence}" if refusal else "")
        self.note.setVisible(refusal is not None)
        self.measured.setChecked(self.is_assumed)
        self.measured.setText(TICK + NOT_MEASURED if self.is_assumed else NOT_MEASURED)
        tinted(self.note, "error", self.session.dark)

    @property
    def is_assumed(self) -> bool:
        """Whether nobody gave the length, so that the usual one stands."""
        study = self.session.study
        return study is not None and self.path in study.filled.assumed

    def ask_measured(self) -> None:
        """Offer "not measured" as an answer."""
        self.measured.show()

    def _take_measured(self, not_measured: bool) -> None:
        """Take the usual length, not measured; or the length on show as the one that was measured."""
        self.line.being_typed = False
        self.session.refusals.pop(self.path, None)
        self.session.edit(self.path, None if not_measured else self._holding())
        self.show_state()

    def show_size(self, touch: int) -> None:
        """Make the buttons as large as a finger, so many pixels."""
        for button in (self.less, self.more):
            fit(button, touch, (button.text(),))
        fit(self.measured, touch, (TICK + NOT_MEASURED,))

    def _button(self, sign: str, way: int) -> QPushButton:
        button = QPushButton(sign)
        button.setAutoRepeat(True)
        button.clicked.connect(lambda: self._take_step(way))
        return button

    def _put_together(self) -> None:
        steps = across(self.less, (self.line, 1), self.more, self.measured, spacing=GRID)
        fill(self, down(self.name, steps, self.note, spacing=GRID // 2, margins=BARE))

    def _holding(self) -> Any:
        """Return the length that holds: the one given, or what is taken until somebody measures."""
        given, study = self.session.value(self.path), self.session.study
        if given is None and self.is_assumed and study is not None:
            return study.filled.assumed[self.path].value
        return given

    def _written(self) -> str:
        value = self._holding()
        return "" if value is None else kind_at(self.path).write(value, self.session.display)

    def _take_step(self, way: int) -> None:
        """Go one step that way from what holds; a value too far is refused like a typed one."""
        self.line.being_typed = False
        self.session.refusals.pop(self.path, None)
        if self.session.opening is None:
            self._begin_door()  # its usual length is the first to be shown, and the next step goes from there
            return
        value = float(self._holding() or 0.0)
        step = self._step
        if self.session.display.metric:
            step = max(round(step * MM_PER_INCH / 5) * 5, 5) / MM_PER_INCH
        self.session.edit(self.path, value + way * step)
        self.show_state()

    def _finish(self) -> None:
        if not self.line.being_typed:
            return
        self.line.being_typed = False
        text = self.line.text()
        if text.strip() and text.strip() == self._written():
            self.session.withdraw(self.path)  # what is shown may be rounded: the value stays as it is
            self.show_state()
            return
        try:
            value = kind_at(self.path).read(text, self.session.display)
        except NotReadError as error:
            self.session.refuse(self.path, text, str(error))
        else:
            self._begin_door()
            self.session.edit(self.path, value)
        self.show_state()

    def _begin_door(self) -> None:
        if self.session.opening is None and self._begin is not None:
            self._begin()

    def _give_up(self) -> None:
        """Show what held before; the next Esc is for whoever is behind this line."""
        self.line.being_typed = False
        self.session.refusals.pop(self.path, None)
        self.show_state()
        self.more.setFocus()


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
