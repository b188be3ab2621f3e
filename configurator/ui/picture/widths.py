"""The hinge widths and other ways of hanging set side by side: a chip each, and what adds another."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QLineEdit, QMenu, QPushButton, QToolButton, QWidget

from configurator.model import Way
from configurator.model.paths import words_of
from configurator.sentences import capitalized
from configurator.ui.form.special import (
    COMPARE,
    USUAL_HINGE_HEIGHT,
    WidthQuestion,
    read_hinge_width,
    read_way,
)
from configurator.ui.kit.fields import Note
from configurator.ui.kit.kinds import NotReadError
from configurator.ui.kit.layout import BARE, GROW, Pool, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.state.session import Session
from configurator.units import format_size

PATH = COMPARE
IN_A_LINE = 6
"""Chips side by side; more go below, so that the window need not grow."""


class WidthsBar(QWidget):
    """Chips with a cross and an add field; `answer` is the line under them, for a refusal or question."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.question: WidthQuestion | None = None
        self.entry = QLineEdit()
        self.entry.setPlaceholderText("add a width")
        self.entry.setToolTip(
            "A hinge open width as 4-1/2, a hinge size as 4-1/2 x 4 (height x width), or another way to hang "
            "the door with its axis off the face and from the heel, as offset pivot 3/4, 3/4"
        )
        self.entry.setAccessibleName("add a hinge open width or another way to hang the door")
        self.ways = QToolButton()
        self.ways.setText("Another way")
        self.ways.setToolTip("Set another way to hang the door beside the hinge widths")
        self.ways.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.ways.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.entry.setFixedWidth(24 * GRID)
        self.entry.returnPressed.connect(self._add)
        self.answer = QWidget()
        self.note = Note(self.answer)
        self.swap, self.keep = QPushButton(), QPushButton()
        self.swap.clicked.connect(lambda: self._answer(swapped=True))
        self.keep.clicked.connect(lambda: self._answer(swapped=False))
        self._chip_lines = QGridLayout()
        self._chips = Pool(self._chip)
        self._shown: tuple[float | Way, ...] = ()
        self._build()

    def show_state(self) -> None:
        """Show a chip for each width, and what stands against the last one typed."""
        widths = self.widths()
        if widths != self._shown:
            self._show_chips(widths)
        self.setVisible(self.session.opening is not None)
        refusal = self.session.refusals.get(PATH)
        if refusal is not None:
            self._say(refusal.sentence, "error")
        elif self.question is None:
            self._say("", "quiet")

    @property
    def chips(self) -> list[QToolButton]:
        """A button for each width, which takes it out."""
        return self._chips.on_show

    def widths(self) -> tuple[float | Way, ...]:
        """Return what is on show: what was given, or what the program compares by itself."""
        given: tuple[float | Way, ...] = self.session.value(PATH) or ()
        study = self.session.study if not given else None
        return given if study is None else study.compared

    def remove(self, width: float | Way) -> None:
        """Take a width or a way out of the comparison."""
        self.question = None
        self.session.edit(PATH, [other for other in self.widths() if other != width])

    def _build(self) -> None:
        title = QLabel("Hinge open widths")
        self._chip_lines.setSpacing(GRID)
        menu = QMenu(self.ways)
        for kind in words_of(f"{PATH}.hung_on"):
            added = menu.addAction(capitalized(kind))
            added.triggered.connect(lambda _=False, kind=kind: self._take({"hung_on": kind}))
        self.ways.setMenu(menu)
        line = across(title, self._chip_lines, self.entry, self.ways, GROW, spacing=GRID, margins=BARE)
        fill(self, down(line, margins=BARE))
        for button in (self.swap, self.keep):
            sized(button, -1)
        fill(self.answer, across((self.note, 1), self.swap, self.keep, spacing=GRID, margins=BARE))
        self.answer.hide()

    def _show_chips(self, widths: tuple[float | Way, ...]) -> None:
        self._shown = widths
        for chip, width in zip(self._chips.take(len(widths)), widths, strict=True):
            way = isinstance(width, Way)
            words = width.words if isinstance(width, Way) else format_size(width)
            chip.setText(f"{words} ×")
            chip.setToolTip(f"Take {words}{'' if way else ' in'} out of the comparison")
            chip.setAccessibleName(f"remove {words}" if way else f"remove hinge open width {words} in")

    def _chip(self, place: int) -> QToolButton:
        chip = QToolButton()
        chip.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        chip.clicked.connect(lambda: self.remove(self._shown[place]))
        self._chip_lines.addWidget(chip, *divmod(place, IN_A_LINE))
        return chip

    def _add(self) -> None:
        self.question = None
        text = self.entry.text()
        if not text.strip():
            self.session.withdraw(PATH)
            self.show_state()
            return
        try:
            found = read_way(text, self.session.display) or read_hinge_width(
                text, self._hinge_height(), self.session.display
            )
        except NotReadError as error:
            self.session.refuse(PATH, text, str(error))
            return
        if isinstance(found, WidthQuestion):
            self._ask(found)
        else:
            self._take(found)

    def _take(self, width: float | dict[str, Any]) -> None:
        if self.session.edit(PATH, [*self.widths(), width]):
            self.entry.clear()
        else:
            # The list is what was refused, not this width: do not try it again with other edits.
            self.session.refuse(PATH, self.entry.text(), self.session.refusals[PATH].sentence)

    def _ask(self, question: WidthQuestion) -> None:
        self.question = question
        self.session.withdraw(PATH)
        self.swap.setText(question.swapped_label)
        self.keep.setText(question.kept_label)
        self._say(question.sentence, "warning")

    def _answer(self, swapped: bool) -> None:
        question, self.question = self.question, None
        if question is not None:
            self._take(question.swapped if swapped else question.kept)
            self.show_state()

    def _say(self, sentence: str, colour: str) -> None:
        self.note.say(sentence, colour, self.session.dark)
        self.answer.setVisible(bool(sentence))
        self.swap.setVisible(self.question is not None)
        self.keep.setVisible(self.question is not None)

    def _hinge_height(self) -> float:
        study = self.session.study
        chosen = study.specification.whole.get("height") if study is not None else None
        return float(chosen.value) if chosen is not None else USUAL_HINGE_HEIGHT
