"""A section of the form: a heading that opens and closes it, its body made when it is first opened."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QSizePolicy, QToolButton, QVBoxLayout, QWidget

from configurator.ui.kit.look import GRID, sized


class Section(QWidget):
    """One collapsible section.

    Signals:
        opened: the body was just made or shown again, and has to show what holds.
    """

    opened = Signal()

    def __init__(self, title: str, make_body: Callable[[], QWidget]) -> None:
        super().__init__()
        self._make_body = make_body
        self.body: QWidget | None = None
        self.heading = QToolButton()
        self.heading.setText(title)
        self.heading.setCheckable(True)
        self.heading.setAutoRaise(True)
        self.heading.setArrowType(Qt.ArrowType.RightArrow)
        self.heading.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.heading.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.heading.setAccessibleName(f"section {title}")
        sized(self.heading, 0, bold=True)
        self.heading.toggled.connect(self._toggle)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(GRID)
        self._column.addWidget(self.heading)

    @property
    def is_open(self) -> bool:
        """Whether the body is on show."""
        return self.heading.isChecked()

    def open(self) -> None:
        """Open the section."""
        self.heading.setChecked(True)

    def close_up(self) -> None:
        """Close the section."""
        self.heading.setChecked(False)

    def _toggle(self, opened: bool) -> None:
        self.heading.setArrowType(Qt.ArrowType.DownArrow if opened else Qt.ArrowType.RightArrow)
        if opened and self.body is None:
            self.body = self._make_body()
            self._column.addWidget(self.body)
        if self.body is not None:
            self.body.setVisible(opened)
        if opened:
            self.opened.emit()
