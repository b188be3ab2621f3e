"""Large buttons of which some are on: a tick before the word says so, not the shade alone."""

from collections.abc import Callable, Iterable

from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

from configurator.ui.look import GRID

TICK = "✓ "


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
        self.set_columns(2)

    def set_columns(self, columns: int) -> None:
        """Stand the buttons in so many columns, each wide enough for a tick before its word."""
        tick = self.fontMetrics().horizontalAdvance(TICK)
        for number, button in enumerate(self.buttons.values()):
            on = button.text().startswith(TICK)
            button.setMinimumWidth(button.sizeHint().width() + (0 if on else tick))
            self._grid.addWidget(button, number // columns, number % columns)

    def show_on(self, names: Iterable[str]) -> None:
        """Show which are on."""
        on = set(names)
        for name, button in self.buttons.items():
            button.setChecked(name in on)
            words = TICK + name if name in on else name
            if button.text() != words:
                button.setText(words)
