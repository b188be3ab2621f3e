"""Which leaf of a pair or a Dutch door the picture shows: both side by side, or one of them larger."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QButtonGroup, QLabel, QToolButton, QWidget

from configurator.ui.form.special import LEAVES
from configurator.ui.kit.layout import GROW, across, fill
from configurator.ui.kit.look import GRID
from configurator.ui.state.session import Session

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
