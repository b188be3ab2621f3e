"""Where the picture stands: the canvas once it is loaded, and words where there is nothing to draw."""

import atexit
import re
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import shiboken6
from PySide6.QtCore import QMimeData, QPointF, Qt, Signal
from PySide6.QtGui import QAction, QGuiApplication, QImage
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QLabel,
    QMenu,
    QSizePolicy,
    QStackedLayout,
    QToolButton,
    QWidget,
)

from configurator.ui.form.special import LEAVES
from configurator.ui.kit.layout import GROW, across, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state.session import Session

NUMBER = r"(less than )?[0-9/.'\"-]+( (in|mm))?"
"""What of a dimension's text is its number, with its unit."""
IN_MENU = (
    ("copy_png", "copy_svg", "export"),
    ("fit", "true", "measure", "sweep"),
    ("parts frame", "parts wall", "parts things"),
)
"""Commands of the window that the picture's menu has, in groups."""


def _take_back(copied: QMimeData) -> None:
    """Take what was copied off the clipboard, if it is still there.

    Qt would free it after Python has ended, and the program would end in a fault.
    """
    if shiboken6.isValid(copied) and QGuiApplication.instance() is not None:
        QGuiApplication.clipboard().clear()


class Picture(QFrame):
    """The drafting sheet. Its canvas is made by `begin`, after the window was first painted.

    Signals:
        measured: what was measured in it, in words; empty when measuring ends.
    """

    measured = Signal(str)
    help_place = "picture"

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.canvas: Any = None
        self.commands: Mapping[str, QAction] = {}
        """The window's commands by name, for the menu."""
        self._menu = QMenu(self)
        self.words = QLabel("The picture is being drawn…")
        self.words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.words.setWordWrap(True)
        self.words.setMargin(8 * GRID)
        self.trial = QLabel(self)
        self.trial.setAccessibleName("what is on trial")
        self.trial.setMargin(GRID)
        self.trial.setAutoFillBackground(True)
        self.trial.hide()
        self._stack = QStackedLayout(self)
        self._stack.addWidget(self.words)
        session.pointed.connect(self._mark)
        self.setMinimumSize(100 * GRID, 60 * GRID)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def begin(self) -> None:
        """Load the canvas, and with it matplotlib, which takes longer than everything else together."""
        try:
            from configurator.ui.picture.canvas import PictureCanvas
        except ImportError as error:
            # The form, the comparison and the findings are worth having without a picture.
            self.words.setText(f"The picture cannot be drawn here: {error}")
            return
        self.canvas = PictureCanvas(self)
        self.canvas.moved.connect(self._look)
        self.canvas.picked.connect(self._ask_work)
        self.canvas.measured.connect(self.measured)
        self.canvas.turned.connect(self.session.swing)
        self.canvas.menu_asked.connect(lambda position, at: self.menu_at(position).popup(at))
        self._stack.addWidget(self.canvas)

    def show_state(self, by: str) -> None:
        """Show the opening, or what is on trial; while it cannot be studied, the last good picture stays."""
        if self.canvas is None:
            return
        if by != "swing":
            self._say_trial()
        if by in ("select", "open"):
            self.canvas.forget_framing()
        study = self.session.pictured
        if study is None:
            self._say_why()
            return
        self._stack.setCurrentWidget(self.canvas)
        if by == "swing":
            self.canvas.set_angle(self.session.angle)
        elif by == "theme":
            self.canvas.set_dark(self.session.dark)
        elif by != "save":
            session = self.session
            self.canvas.kinds = session.parts_shown
            self.canvas.show_study(
                study, session.angle, session.display, session.dark, session.plain_words, session.swept
            )

    def save(self, path: Path) -> None:
        """Write the picture of the opening as it is to a file. Raises OSError."""
        self.session.trial.end()
        self.canvas.save_picture(path, self.session.job.job)

    def copy(self, ending: str) -> None:
        """Put the picture of the opening on the clipboard, as `.png` or `.svg`. Raises OSError."""
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / f"picture{ending}"
            self.save(path)
            data = path.read_bytes()
        copied = QMimeData()
        if ending == ".png":
            copied.setImageData(QImage.fromData(data))
        else:
            copied.setData("image/svg+xml", data)
            copied.setText(data.decode())
        QGuiApplication.clipboard().setMimeData(copied)
        atexit.register(_take_back, copied)
        if (application := QGuiApplication.instance()) is not None:
            application.aboutToQuit.connect(lambda: _take_back(copied))

    def menu_at(self, position: QPointF) -> QMenu:
        """Return the menu about what is at a place of the canvas."""
        spot, menu = self.canvas.spot_under(position), self._menu
        menu.clear()
        if spot is not None and spot.measures:
            number = re.match(NUMBER, spot.text)
            words = number.group() if number else spot.text
            menu.addAction(f"Copy {words}", lambda: QGuiApplication.clipboard().setText(words))
            menu.addAction("Show the work", lambda: self._ask_work(position))
        if spot is not None:
            asked = spot.measures or spot.name
            menu.addAction("What is this?", lambda: self.session.asked.emit(asked))
            menu.addSeparator()
        for group in IN_MENU:
            menu.addActions([self.commands[name] for name in group if name in self.commands])
            menu.addSeparator()
        return menu

    def _look(self, position: Any) -> None:
        """Tell what place of the plan the pointer is on, or that it is on none."""
        place = None if position is None else self.canvas.looked_at(position)
        self.session.looked.emit(place)

    def _ask_work(self, position: Any) -> None:
        """Ask for the work behind a dimension; what is on trial has none, for it is no opening of the job."""
        from configurator.wording.derivation_words import asked_of_dimension

        study, found = self.session.study, self.canvas.measured_under(position)
        if study is None or found is None or self.session.trial.study is not None:
            return
        asked = asked_of_dimension(study, *found)
        if asked is not None:
            self.session.work_asked.emit(asked)

    def _mark(self, pointed: Any) -> None:
        """Mark what is pointed at elsewhere, or nothing."""
        if self.canvas is not None:
            self.canvas.point_at(pointed)

    def _say_trial(self) -> None:
        """Say over the picture that it shows no more than a trial; nothing where it does not."""
        words = self.session.trial.words
        self.trial.setText(f"On trial: {words}. Nothing is changed." if words else "")
        self.trial.setVisible(bool(words))
        tinted(self.trial, "warning", self.session.dark)
        self.trial.adjustSize()
        self.trial.move(0, self.height() - self.trial.height())
        self.trial.raise_()

    def _say_why(self) -> None:
        trouble = self.session.trouble
        self.words.setText(trouble or "This job has no openings yet. Add one with + at the left.")
        self._stack.setCurrentWidget(self.words)


BOTH = ""


class LeafChooser(QWidget):
    """A line over the picture with a button for both leaves and one for each; hidden for a single leaf."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self._group = QButtonGroup(self)
        every = [BOTH, *(leaf for leaves in LEAVES.values() for leaf in leaves)]
        self._every = {leaf: self._button(leaf) for leaf in every}
        self.buttons: dict[str, QToolButton] = {}
        parts = (QLabel("Picture shows"), *self._every.values(), GROW)
        fill(self, across(*parts, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, 0)))
        self.hide()

    def show_state(self) -> None:
        """Offer the leaves of the opening on show, the one that is shown pressed."""
        leaves = LEAVES.get(self.session.value("leaves"), ())
        wanted = [BOTH, *leaves] if leaves else []
        if wanted != list(self.buttons):
            self._offer(wanted)
        self.setVisible(bool(wanted))
        shown = self.session.leaf_shown if self.session.leaf_shown in wanted else BOTH
        if wanted:
            self.buttons[shown].setChecked(True)

    def _offer(self, wanted: list[str]) -> None:
        self.buttons = {leaf: self._every[leaf] for leaf in wanted}
        for leaf, button in self._every.items():
            button.setVisible(leaf in self.buttons)

    def _button(self, leaf: str) -> QToolButton:
        button = QToolButton()
        button.setText(f"{leaf.capitalize()} leaf" if leaf else "Both leaves")
        button.setCheckable(True)
        button.setAutoRaise(True)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.setAccessibleName(f"show the {leaf} leaf alone" if leaf else "show both leaves")
        button.clicked.connect(lambda: self.session.show_leaf(leaf))
        self._group.addButton(button)
        return button
