"""The lists of the form: what stands along the wall, the door's hardware, and the wall's layers."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QLabel, QMenu, QToolButton, QVBoxLayout, QWidget

from configurator.model import Hardware, Obstruction
from configurator.tables import HardwareKindRow, ObstructionKindRow, row_of, table
from configurator.ui.fields import Assumptions, Field, field_for
from configurator.ui.labels import add_row, new_form
from configurator.ui.look import GRID, sized
from configurator.ui.presets import usual_hardware
from configurator.ui.session import Session
from configurator.ui.special import LeafField, ProjectionField

if TYPE_CHECKING:  # loaded with the first study
    from configurator.rules.usual import FilledOpening

_OBSTRUCTION = ("side", "projection", "start", "length", "diameter", "offset", "bottom", "top")
_HARDWARE = ("leaf", "face", "projection", "from_latch_edge", "width", "height", "vertical")


KindOfThing = ObstructionKindRow | HardwareKindRow


class Card(QWidget):
    """What is known of one thing; F1 in it, away from its fields, is about its kind."""

    def __init__(self, term: str) -> None:
        super().__init__()
        self._term = term

    def asked_about(self) -> str:
        """Return the glossary's word for its kind."""
        return self._term


class RowsEditor(QWidget):
    """A list of things as cards with fields of their own; add from the usual ones, remove one by one."""

    def __init__(
        self,
        session: Session,
        path: str,
        kinds: tuple[KindOfThing, ...],
        usual: Callable[[Any, "FilledOpening | None"], dict[str, Any]],
        columns: Callable[[Session, Any], tuple[str, ...]],
        empty: str,
    ) -> None:
        super().__init__()
        self.session = session
        self.path = path
        self.fields: dict[str, Field] = {}
        self._kinds = kinds
        self._usual = usual
        self._columns = columns
        self._shape: Any = None
        self._cards = QVBoxLayout()
        self._cards.setSpacing(2 * GRID)
        self._empty = QLabel(empty)
        self._empty.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2 * GRID)
        column.addWidget(self._empty)
        column.addLayout(self._cards)
        column.addWidget(self._add_button())

    def show_state(self, assumed: Assumptions) -> None:
        """Show a card for each thing; cards are made anew only when the list itself changed."""
        rows = self.session.value(self.path) or ()
        shape = [(row.kind, self._columns(self.session, row)) for row in rows]
        if shape != self._shape:
            self._shape = shape
            self._build(shape)
        self._empty.setVisible(not rows)
        for field in self.fields.values():
            field.show_state(assumed)

    def add(self, kind: KindOfThing) -> None:
        """Add a thing at the end of the list, as it usually is in this opening."""
        study = self.session.study
        usual = self._usual(kind, study.filled if study is not None else None)
        self.session.edit(self.path, [*self._data(), usual])

    def remove(self, place: int) -> None:
        """Take a thing out of the list."""
        data = self._data()
        del data[place]
        self.session.edit(self.path, data)

    def _data(self) -> list[dict[str, Any]]:
        return [row.model_dump(exclude_unset=True) for row in self.session.value(self.path) or ()]

    def _add_button(self) -> QToolButton:
        button = QToolButton()
        button.setText("Add")
        button.setAccessibleName(f"add to {self.path}")
        button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        menu = QMenu(button)
        for kind in self._kinds:
            menu.addAction(kind.label).triggered.connect(lambda _=False, kind=kind: self.add(kind))
        button.setMenu(menu)
        return button

    def _build(self, shape: list[tuple[str, tuple[str, ...]]]) -> None:
        self.fields.clear()
        while (item := self._cards.takeAt(0)) is not None:
            if (card := item.widget()) is not None:
                card.hide()
                card.deleteLater()
        for place, (kind, columns) in enumerate(shape):
            self._cards.addWidget(self._card(place, kind, columns))

    def _card(self, place: int, kind: str, columns: tuple[str, ...]) -> QWidget:
        card = Card(next(row.term for row in self._kinds if row.kind == kind))
        column = QVBoxLayout(card)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(GRID)
        column.addLayout(self._heading(place, kind))
        form = new_form()
        for name in columns:
            self._add_field(form, f"{self.path}.{place}.{name}", kind)
        column.addLayout(form)
        return card

    def _heading(self, place: int, kind: str) -> QHBoxLayout:
        line = QHBoxLayout()
        title = QLabel(f"{place + 1}. {kind[:1].upper()}{kind[1:]}")
        sized(title, 0, bold=True)
        remove = QToolButton()
        remove.setText("Remove")
        remove.setAutoRaise(True)
        remove.setAccessibleName(f"remove {kind} {place + 1}")
        remove.clicked.connect(lambda: self.remove(place))
        line.addWidget(title, 1)
        line.addWidget(remove)
        return line

    def _add_field(self, form: QFormLayout, path: str, kind: str) -> None:
        field: Field
        if self.path == "obstructions" and path.endswith(".projection"):
            field = ProjectionField(self.session, path, kind, self._frame_proud)
        elif path.startswith("hardware.") and path.endswith(".leaf"):
            field = LeafField(self.session, path)
        else:
            field = field_for(self.session, path)
        self.fields[path] = field
        add_row(form, field, self.session)

    def _frame_proud(self) -> float | None:
        study = self.session.study
        return study.filled.frame_proud if study is not None else None


def obstruction_columns(_: Session, row: Obstruction) -> tuple[str, ...]:
    """Return what is asked about a thing beside the door: a round one has a diameter and no length."""
    if row_of(ObstructionKindRow, row.kind).outline == "round":
        return tuple(name for name in _OBSTRUCTION if name not in ("length", "projection"))
    return tuple(name for name in _OBSTRUCTION if name != "diameter")


def hardware_columns(session: Session, _: Hardware) -> tuple[str, ...]:
    """Return what is asked about a piece of hardware: which leaf only where there are two."""
    single = session.value("leaves") == "single"
    return _HARDWARE[1:] if single else _HARDWARE


def obstructions_editor(session: Session) -> RowsEditor:
    """Return the list of what stands along the wall."""
    empty = "Nothing stands along the wall yet. Add what the door could meet: a chair rail, casing, a wall."
    return RowsEditor(
        session,
        "obstructions",
        table(ObstructionKindRow),
        lambda row, _: row.usual,
        obstruction_columns,
        empty,
    )


def hardware_editor(session: Session) -> RowsEditor:
    """Return the list of the door's hardware."""
    empty = "No hardware yet. Add what stands out from the door's faces, as a lever or a closer."
    return RowsEditor(session, "hardware", table(HardwareKindRow), usual_hardware, hardware_columns, empty)
