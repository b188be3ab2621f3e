"""Large buttons of which some are on: a tick before the word says so, not the shade alone."""

from collections.abc import Callable, Iterable

from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

from configurator.ui.kit.look import GRID

TICK = "✓ "


def fit(button: QPushButton, least: int, words: Iterable[str]) -> None:
    """Make a button no smaller than so many pixels, and wide enough for whatever words it may have."""
    letters = button.fontMetrics()
    wide = max(letters.horizontalAdvance(each) for each in words) + 4 * GRID
    button.setMinimumSize(max(least, wide), max(least, letters.height() + 2 * GRID))


class Choices(QWidget):
    """Buttons in columns; `chosen` is told the name of the one pressed and whether it was off before."""

    def __init__(self, names: Iterable[str], about: str, chosen: Callable[[str, bool], None]) -> None:
        super().__init__()
        self.setAccessibleName(about)
        self.buttons: dict[str, QPushButton] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(GRID)
        for name in names:
            button = self.buttons[name] = QPushButton(name)
            button.setAccessibleName(f"{about}: {name}")
            button.setCheckable(True)
            button.clicked.connect(lambda on, name=name: chosen(name, on))
            self._grid.addWidget(button)

    def show_size(self, touch: int, columns: int) -> None:
        """Stand the buttons in so many columns, each as large as a finger and wide enough for its tick."""
        for number, (name, button) in enumerate(self.buttons.items()):
            fit(button, touch, (name, TICK + name))
            self._grid.addWidget(button, number // columns, number % columns)

    def show_on(self, names: Iterable[str]) -> None:
        """Show which are on."""
        on = set(names)
        for name, button in self.buttons.items():
            button.setChecked(name in on)
            words = TICK + name if name in on else name
            if button.text() != words:
                button.setText(words)
