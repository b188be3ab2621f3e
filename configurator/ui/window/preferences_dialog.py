"""How its user likes the program, in one dialog: each choice with where it is kept, and a way back."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QDialog, QFormLayout, QLabel, QPushButton, QWidget

from configurator.ui.kit.fields import field_for
from configurator.ui.kit.layout import GROW, StillCombo, across, add, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state.preferences import APPEARANCES, Preferences
from configurator.ui.state.session import Session
from configurator.ui.window.command_bar import display_place
from configurator.ui.window.commands import DISPLAYS
from configurator.units import Display

POLICY = "job.width_policy"
HERE, IN_JOB = "kept on this computer", "kept in the job"
WORDS = ("the trade's", "the client's")


class PreferencesDialog(QDialog):
    """Every choice holds at once; Reset goes back to what the program begins with."""

    def __init__(self, owner: QWidget, session: Session, preferences: Preferences) -> None:
        super().__init__(owner)
        self.session, self.preferences = session, preferences
        self.setWindowTitle("Preferences")
        self.lengths = self._choice("lengths", [words for words, _ in DISPLAYS], self._show_in)
        self.appearance = self._choice("appearance", list(APPEARANCES.values()), self._appear)
        self.words = self._choice("words that come first", list(WORDS), self._use_words)
        self.policy = field_for(session, POLICY)
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self._reset, close = QPushButton("Reset"), QPushButton("Close")
        self._reset.setToolTip("What is kept on this computer goes back to what the program begins with")
        self._reset.clicked.connect(self.reset)
        close.clicked.connect(self.accept)
        close.setDefault(True)
        rows = QFormLayout()
        fill(
            self,
            down(rows, self.trouble, GROW, across(self._reset, GROW, close), margins=(4 * GRID,) * 4),
        )
        for title, editor, kept in (
            ("Lengths in", self.lengths, HERE),
            ("Appearance", self.appearance, HERE),
            ("Words first", self.words, HERE),
            ("Hinge widths taken", self.policy, IN_JOB),
        ):
            row, where = QWidget(), QLabel(kept)
            tinted(where, "quiet", session.dark)
            add(fill(row, across(spacing=2 * GRID, margins=(0, 0, 0, 0))), (editor, 1), where)
            rows.addRow(title, row)
        session.changed.connect(lambda _: self.show_state())
        self.show_state()

    def show_state(self) -> None:
        """Show what holds, and which stored values could not be read."""
        self.lengths.setCurrentIndex(display_place(self.session.display))
        self.appearance.setCurrentIndex(list(APPEARANCES).index(self.preferences.appearance))
        self.words.setCurrentIndex(int(self.session.plain_words))
        self.policy.show_state({})
        problems = self.preferences.problems()
        self.trouble.setText("\n".join(problems))
        self.trouble.setVisible(bool(problems))
        tinted(self.trouble, "warning", self.session.dark)

    def reset(self) -> None:
        """Take back every choice that is kept on this computer."""
        self.preferences.reset()
        self.session.show_in(Display())
        self.session.use_plain_words(False)
        self.session.use_dark(self.preferences.dark)

    def _choice(self, name: str, words: list[str], chosen: Callable[[int], Any]) -> StillCombo:
        combo = StillCombo()
        combo.setAccessibleName(name)
        combo.addItems(words)
        combo.activated.connect(chosen)
        return combo

    def _show_in(self, place: int) -> None:
        self.preferences.display = DISPLAYS[place][1]
        self.session.show_in(DISPLAYS[place][1])

    def _appear(self, place: int) -> None:
        self.preferences.appearance = list(APPEARANCES)[place]
        self.session.use_dark(self.preferences.dark)

    def _use_words(self, place: int) -> None:
        self.preferences.plain_words = bool(place)
        self.session.use_plain_words(bool(place))
