"""Which leaf of a pair or a Dutch door the picture shows: both side by side, or one of them larger."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLabel, QToolButton, QWidget

from configurator.ui.look import GRID
from configurator.ui.session import Session
from configurator.ui.special import LEAVES

BOTH = ""


class LeafChooser(QWidget):
    """A line over the picture with a button for both leaves and one for each; hidden for a single leaf."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.buttons: dict[str, QToolButton] = {}
        self._group = QButtonGroup(self)
        self._line = QHBoxLayout(self)
        self._line.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        self._line.setSpacing(GRID)
        self._line.addWidget(QLabel("Picture shows"))
        self._line.addStretch()
        self.hide()

    def show_state(self) -> None:
        """Offer the leaves of the opening on show, the one that is shown pressed."""
        leaves = LEAVES.get(self.session.value("leaves"), ())
        wanted = [BOTH, *leaves] if leaves else []
        if wanted != list(self.buttons):
            self._make(wanted)
        self.setVisible(bool(wanted))
        shown = self.session.leaf_shown if self.session.leaf_shown in wanted else BOTH
        if wanted:
            self.buttons[shown].setChecked(True)

    def _make(self, wanted: list[str]) -> None:
        for old in self.buttons.values():
            self._group.removeButton(old)
            self._line.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.buttons = {leaf: self._button(leaf) for leaf in wanted}
        for place, button in enumerate(self.buttons.values(), 1):
            self._line.insertWidget(place, button)

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
