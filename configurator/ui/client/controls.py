"""The row under the client's picture: playing the swing, and where to go from there."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSlider, QWidget

from configurator.ui.client.choices import fit
from configurator.ui.client.finger_style import FingerStyle
from configurator.ui.kit.look import GRID

STEPS = 10
"""Slider steps in a degree."""
PLAY, PAUSE = "▶ Play", "❚❚ Pause"
WHOLE, LEAVE = "Full screen", "Leave"
_AT_FULL_SCREEN = ("play", "questions", "print", "whole")


@dataclass(frozen=True, slots=True)
class Deed:
    """What a button does: its name, its words, what they mean, its function; `toggles` for one that stays."""

    name: str
    words: str
    tip: str
    run: Callable[[], object]
    toggles: bool = False


class Controls(QWidget):
    """The slider that turns the door, between the button that plays it and the others."""

    def __init__(self, deeds: tuple[Deed, ...], turn: Callable[[float], None]) -> None:
        super().__init__()
        self.buttons: dict[str, QPushButton] = {}
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self._style = FingerStyle()
        self.slider.setStyle(self._style)
        self.slider.setAccessibleName("how far the door is open")
        self.slider.setSingleStep(STEPS)
        self.slider.setPageStep(15 * STEPS)
        self.slider.setMinimumWidth(20 * GRID)
        self.slider.valueChanged.connect(lambda value: turn(value / STEPS))
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        row.setSpacing(GRID)
        for deed in deeds:
            row.addWidget(self._button(deed))
        row.insertWidget(1, self.slider, 1)

    def show_angle(self, angle: float, end: float) -> None:
        """Show how far the door is open, of how far it goes; degrees."""
        self.slider.blockSignals(True)
        self.slider.setRange(0, round(end * STEPS))
        self.slider.setValue(min(round(angle * STEPS), self.slider.maximum()))
        self.slider.blockSignals(False)

    def show_size(self, touch: int, whole_screen: bool) -> None:
        """Make everything as high and wide as a finger, `touch` pixels, or as its words need if that is more.

        At full screen, where letters are large, only what is used in front of a client is offered.
        """
        self._style.size = touch
        self.slider.setMinimumHeight(touch)
        self.slider.updateGeometry()
        self.buttons["whole"].setText(LEAVE if whole_screen else WHOLE)
        for name, button in self.buttons.items():
            fit(button, touch, (PLAY, PAUSE) if name == "play" else (button.text(),))
            button.setVisible(not whole_screen or name in _AT_FULL_SCREEN)

    def show_playing(self, playing: bool) -> None:
        """Show what the button that plays would do now."""
        self.buttons["play"].setText(PAUSE if playing else PLAY)

    def _button(self, deed: Deed) -> QPushButton:
        button = self.buttons[deed.name] = QPushButton(deed.words)
        button.setToolTip(deed.tip)
        button.setAccessibleName(deed.tip)
        button.setCheckable(deed.toggles)
        button.clicked.connect(lambda _=False: deed.run())
        return button
