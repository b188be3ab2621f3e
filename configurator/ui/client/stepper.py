"""One length that a client can tell: typed, stepped, or said not to be measured."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from configurator.model import paths
from configurator.sentences import capitalized
from configurator.ui.client.controls import TICK, fit
from configurator.ui.kit.kinds import NotReadError, kind_at
from configurator.ui.kit.layout import BARE, across, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.kit.typed_line import TypedLine
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
