"""The lists of the form: what stands along the wall, the door's hardware, and the wall's layers."""

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QLabel, QMenu, QToolButton, QVBoxLayout, QWidget

from configurator.model import Hardware, Obstruction
from configurator.sentences import capitalized
from configurator.tables import HardwareKindRow, ObstructionKindRow, row_of, table
from configurator.ui.form.presets import usual_hardware, usual_obstruction
from configurator.ui.form.special import LeafField, ProjectionField
from configurator.ui.kit.fields import Assumptions, Field, field_for
from configurator.ui.kit.layout import BARE, Pool, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.sections import NameLabel, add_row, new_form
from configurator.ui.state.session import Session

if TYPE_CHECKING:  # loaded with the first study
    from configurator.rules.filling.usual import FilledOpening

_OBSTRUCTION = ("side", "projection", "start", "length", "diameter", "offset", "bottom", "top")
_HARDWARE = (
    "leaf", "face", "opens_to", "projection", "from_latch_edge", "width", "height", "vertical", "weight",
)  # fmt: skip
THING_FIELDS = {"obstructions": _OBSTRUCTION, "hardware": _HARDWARE}
"""Path of a list to every field that a thing of it may have, in the order they are asked."""

KindOfThing = ObstructionKindRow | HardwareKindRow


class Card(QWidget):
    """The thing at one place of a list; which fields it has goes by its kind.

    F1 in it, away from its fields, is about that kind.
    """

    def __init__(self, session: Session, path: str, place: int, remove: Callable[[int], None]) -> None:
        super().__init__()
        self.session = session
        self.place = place
        self.fields = {name: self._field(f"{path}.{place}.{name}") for name in THING_FIELDS[path]}
        self.title, self.remove = QLabel(), QToolButton()
        sized(self.title, 0, bold=True)
        self.remove.setText("Remove")
        self.remove.setAutoRaise(True)
        self.remove.clicked.connect(lambda: remove(place))
        form = new_form()
        fill(self, down(across((self.title, 1), self.remove), form, spacing=GRID, margins=BARE))
        self._term = ""
        self._labels: dict[str, NameLabel] = {
            name: add_row(form, field, session) for name, field in self.fields.items()
        }

    def show_thing(self, kind: KindOfThing, asked: Iterable[str]) -> dict[str, Field]:
        """Show the fields that are asked of such a thing, empty yet, and return them by path."""
        self._term = kind.term
        self.title.setText(f"{self.place + 1}. {capitalized(kind.kind)}")
        self.remove.setAccessibleName(f"remove {kind.kind} {self.place + 1}")
        names = set(asked)
        for name, field in self.fields.items():
            field.setVisible(name in names)
            self._labels[name].setVisible(name in names)
            field.begin_anew()
            if isinstance(field, ProjectionField):
                field.count_as_kept(kind.kind)
        return {field.path: field for name, field in self.fields.items() if name in names}

    def asked_about(self) -> str:
        """Return the glossary's word for its kind."""
        return self._term

    def _field(self, path: str) -> Field:
        if path.startswith("obstructions.") and path.endswith(".projection"):
            return ProjectionField(self.session, path, self._frame_proud)
        if path.startswith("hardware.") and path.endswith(".leaf"):
            return LeafField(self.session, path)
        return field_for(self.session, path)

    def _frame_proud(self) -> float | None:
        study = self.session.study
        return study.filled.frame_proud if study is not None else None


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
        self._pool = Pool(self._card)
        self._empty = QLabel(empty)
        self._empty.setWordWrap(True)
        self._add = self._add_button()
        fill(self, down(self._empty, self._cards, self._add, spacing=2 * GRID, margins=BARE))

    def show_state(self, assumed: Assumptions) -> None:
        """Show a card for each thing; cards are filled anew only when the list itself changed."""
        rows = self.session.value(self.path) or ()
        shape = [(row.kind, self._columns(self.session, row)) for row in rows]
        if shape != self._shape:
            self._shape = shape
            self._show_things(shape)
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

    def parts(self) -> list[QWidget]:
        """Return what Tab goes through."""
        return [*self._pool.on_show, self._add]

    def _show_things(self, shape: list[tuple[str, tuple[str, ...]]]) -> None:
        self.fields.clear()
        known = {row.kind: row for row in self._kinds}
        for card, (kind, asked) in zip(self._pool.take(len(shape)), shape, strict=True):
            self.fields.update(card.show_thing(known[kind], asked))

    def _card(self, place: int) -> Card:
        card = Card(self.session, self.path, place, self.remove)
        self._cards.addWidget(card)
        return card


def obstruction_columns(_: Session, row: Obstruction) -> tuple[str, ...]:
    """Return what is asked about a thing beside the door: a round one has a diameter and no length."""
    if row_of(ObstructionKindRow, row.kind).outline == "round":
        return tuple(name for name in _OBSTRUCTION if name not in ("length", "projection"))
    return tuple(name for name in _OBSTRUCTION if name != "diameter")


def hardware_columns(session: Session, item: Hardware) -> tuple[str, ...]:
    """Return what is asked about hardware: which leaf where there are two, a degree of what has an arm."""
    idle = {"leaf"} if session.value("leaves") == "single" else set()
    if row_of(HardwareKindRow, item.kind).limits == "no":
        idle.add("opens_to")
    return tuple(name for name in _HARDWARE if name not in idle)


def obstructions_editor(session: Session) -> RowsEditor:
    """Return the list of what stands along the wall."""
    empty = "Nothing stands along the wall yet. Add what the door could meet: a chair rail, casing, a wall."
    return RowsEditor(
        session,
        "obstructions",
        table(ObstructionKindRow),
        lambda row, _: usual_obstruction(row),
        obstruction_columns,
        empty,
    )


def hardware_editor(session: Session) -> RowsEditor:
    """Return the list of the door's hardware."""
    empty = "No hardware yet. Add what stands out from the door's faces, as a lever or a closer."
    return RowsEditor(session, "hardware", table(HardwareKindRow), usual_hardware, hardware_columns, empty)
