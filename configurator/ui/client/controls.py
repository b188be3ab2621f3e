"""The row under the client's picture: playing the swing, and where to go from there."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QIcon, QPixmap
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QScroller,
    QSizePolicy,
    QSlider,
    QToolButton,
    QWidget,
)

from configurator.ui.client.put_away import FingerStyle
from configurator.ui.kit.look import GRID

STEPS = 10
"""Slider steps in a degree."""
PLAY, PAUSE = "▶ Play", "❚❚ Pause"
WHOLE, LEAVE = "Full screen", "Leave"
_AT_FULL_SCREEN = ("play", "questions", "whole")


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


TICK = "✓ "
TILE = QSize(104, 62)
"""Pixels of the picture on a tile."""


def fit(button: QAbstractButton, least: int, words: Iterable[str]) -> None:
    """Make a button no smaller than so many pixels, and wide enough for whatever words it may have."""
    letters = button.fontMetrics()
    wide = max(letters.horizontalAdvance(each) for each in words) + 4 * GRID
    button.setMinimumSize(max(least, wide), max(least, letters.height() + 2 * GRID))


class Choices(QWidget):
    """Buttons in columns; `chosen` is told the name of the one pressed and whether it was off before."""

    def __init__(self, names: Iterable[str], about: str, chosen: Callable[[str, bool], None]) -> None:
        super().__init__()
        self.setAccessibleName(about)
        self.buttons: dict[str, QAbstractButton] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(GRID)
        for name in names:
            button = self.buttons[name] = self.made(name)
            button.setAccessibleName(f"{about}: {name}")
            button.setCheckable(True)
            button.clicked.connect(lambda on, name=name: chosen(name, on))
            self._grid.addWidget(button)

    def show_size(self, touch: int, columns: int) -> None:
        """Stand the buttons in so many columns, each as large as a finger and wide enough for its tick."""
        for number, (name, button) in enumerate(self.buttons.items()):
            fit(button, touch, (name, TICK + name))
            self._grid.addWidget(button, number // columns, number % columns)

    def made(self, name: str) -> QAbstractButton:
        """Return the button of a name."""
        return QPushButton(name)

    def show_on(self, names: Iterable[str]) -> None:
        """Show which are on."""
        on = set(names)
        for name, button in self.buttons.items():
            button.setChecked(name in on)
            words = TICK + name if name in on else name
            if button.text() != words:
                button.setText(words)


class Tiles(Choices):
    """Choices with a picture each over its name."""

    def show_pictures(self, draw: Callable[[str, QSize], QPixmap]) -> None:
        """Show the picture that `draw` returns for a name and a size."""
        for name, button in self.buttons.items():
            button.setIcon(QIcon(draw(name, TILE)))
            button.setIconSize(TILE)

    def show_size(self, touch: int, columns: int) -> None:
        """Stand the tiles in so many columns, two at the least."""
        super().show_size(touch, max(columns, 2))
        for name, button in self.buttons.items():
            words = button.fontMetrics().size(0, name)
            wide = max(TILE.width(), words.width()) + 4 * GRID
            button.setMinimumSize(wide, TILE.height() + words.height() + 3 * GRID)

    def made(self, name: str) -> QAbstractButton:
        """Return a button that holds a picture over its words."""
        tile = QToolButton()
        tile.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        tile.setText(name)
        tile.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        return tile


class Side(QScrollArea):
    """Follows the width of its contents, whatever type they are set in."""

    def __init__(self, contents: QWidget) -> None:
        super().__init__()
        self.setWidget(contents)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        QScroller.grabGesture(self.viewport(), QScroller.ScrollerGestureType.TouchGesture)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take the width that the contents ask for whenever that may have changed."""
        contents = self.widget()
        if event.type() == QEvent.Type.LayoutRequest and contents is not None and watched is contents:
            bar = self.verticalScrollBar().sizeHint().width()
            self.setFixedWidth(contents.minimumSizeHint().width() + bar)
        return bool(super().eventFilter(watched, event))
