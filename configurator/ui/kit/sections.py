"""A section of the form: a heading that opens and closes it, its body made when it is first opened."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QFormLayout, QLabel, QSizePolicy, QToolButton, QVBoxLayout, QWidget

from configurator.model import paths
from configurator.sentences import capitalized
from configurator.ui.kit.fields import Field
from configurator.ui.kit.look import GRID, LABEL_WIDTH, sized
from configurator.ui.state.session import Session


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


ASK = "Click, or F1 in the field: what it means, with a drawing"


class NameLabel(QLabel):
    """A field's name in the trade's words or the client's; a click asks what it means, as F1 in its field."""

    def __init__(self, path: str, session: Session) -> None:
        super().__init__()
        self._path = path
        self._session = session
        self._plain: bool | None = None
        self.setWordWrap(True)
        self.setFixedWidth(LABEL_WIDTH)
        self.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.setContentsMargins(0, GRID, 0, 0)
        self.setCursor(Qt.CursorShape.WhatsThisCursor)
        self.use_words(session.plain_words)

    def use_words(self, plain: bool) -> None:
        """Show the client's words, or the trade's."""
        if plain == self._plain:
            return
        self._plain = plain
        name = paths.plain_name(self._path) if plain else paths.trade_name(self._path)
        self.setText("Opening width x height" if self._path == "size" else capitalized(name))
        other = paths.other_name(self._path, plain)
        lines = (capitalized(other), paths.help_of(self._path))
        self.setToolTip("\n".join((*(line for line in lines if line), ASK)))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Ask what the name means."""
        super().mouseReleaseEvent(event)
        if event.button() == Qt.MouseButton.LeftButton and self.rect().contains(event.position().toPoint()):
            self._session.asked.emit(self._path)


def new_form() -> QFormLayout:
    """Return an empty form: names left, fields right, on the grid."""
    form = QFormLayout()
    form.setContentsMargins(0, 0, 0, 0)
    form.setHorizontalSpacing(2 * GRID)
    form.setVerticalSpacing(GRID)
    form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
    return form


def add_row(form: QFormLayout, field: Field, session: Session) -> NameLabel:
    """Add a field with its name, which takes the keyboard to it."""
    label = NameLabel(field.path, session)
    label.setBuddy(field.first_stop or field)
    form.addRow(label, field)
    return label
