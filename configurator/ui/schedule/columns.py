"""The columns of the schedule: what each says of an opening, or of several like ones together. No Qt."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from configurator.model import Opening, Size, paths
from configurator.model.marks import mark_order
from configurator.ui.kit.kinds import SIZE, kind_at
from configurator.ui.schedule.answers import Answer
from configurator.units import Display

SHAPES = {"assumed": "○", "field verified": "◔", "approved": "●"}
"""A mark before each status, fuller the more it is settled."""
ORDER_SHAPES = {"not ordered": "□", "ordered": "◪", "received": "■"}
"""A mark before each state of order."""
UNKNOWN = "…"
"""What stands where an answer is not worked out yet."""

Members = Sequence[Opening]
"""The openings of one row: one, or like ones together."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column; `path` is that of its value in an opening, empty where it is worked out.

    `text` is what is read, `order` what rows are sorted by.
    """

    key: str
    title: str
    path: str
    text: Callable[[Members, Display], str]
    order: Callable[[Members], Any]
    editable: bool = True
    tip: str = ""

    @property
    def words(self) -> tuple[str, ...]:
        """The words its value is one of; empty where it is no choice."""
        return paths.words_of(self.path) if self.path and self.path != "size" else ()

    def exact(self, opening: Opening, display: Display) -> str:
        """Write its value without rounding, as it is typed and copied; empty where there is none."""
        value = paths.value_at(opening, self.path)
        return "" if value is None else kind_at(self.path).lossless(value, display)


@dataclass(frozen=True, slots=True)
class Worked:
    """A column that is worked out: its words and its order come from an opening's answer."""

    key: str
    title: str
    text: Callable[[Answer], str]
    order: Callable[[Answer], Any]
    tip: str = ""


def status_text(status: str) -> str:
    """Write a status or a state of order with its mark before it: `● approved`."""
    return f"{(SHAPES | ORDER_SHAPES)[status]} {status}"


def _same_or(path: str, many: str) -> Callable[[Members, Display], str]:
    """Say what all have alike, or how many different ones there are."""

    def text(members: Members, _: Display) -> str:
        said = {paths.value_at(opening, path) for opening in members}
        return (said.pop() or "") if len(said) == 1 else f"{len(members)} {many}"

    return text


@lru_cache(maxsize=20_000)
def _size_text(width: float, height: float, display: Display) -> str:
    """Write a size; most openings of a job have one of a few, and rows are written each time they show."""
    return SIZE.write(Size(width=width, height=height), display)


def _one_line(text: Callable[[Members, Display], str]) -> Callable[[Members, Display], str]:
    return lambda members, display: " ".join(text(members, display).split())


def _place_of(path: str) -> Callable[[Members], int]:
    words = {word: place for place, word in enumerate(paths.words_of(path))}
    return lambda members: words.get(paths.value_at(members[0], path), len(words))


def _text_at(path: str) -> Callable[[Members], str]:
    return lambda members: (paths.value_at(members[0], path) or "").casefold()


def _length(value: float | None, display: Display) -> str:
    return "" if value is None else display.exact(value)


def _fire_text(opening: Opening) -> str:
    """Write the minutes of a fire rating, else whether it is rated; empty where nobody said."""
    if opening.fire_minutes:
        return f"{opening.fire_minutes} min"
    return {True: "rated", False: "not rated", None: ""}[opening.fire_label]


_YES_NO = {True: "yes", False: "no", None: ""}


COLUMNS: tuple[Column | Worked, ...] = (
    Column(
        "mark",
        "Mark",
        "mark",
        lambda members, _: ", ".join(opening.mark for opening in members),
        lambda members: mark_order(members[0].mark),
    ),
    Column(
        "location",
        "Location",
        "location",
        _one_line(_same_or("location", "places")),
        lambda members: (members[0].location or "").casefold(),
    ),
    Column(
        "quantity",
        "Quantity",
        "quantity",
        lambda members, _: str(sum(opening.quantity for opening in members)),
        lambda members: sum(opening.quantity for opening in members),
        tip="openings of this mark",
    ),
    Column("hand", "Hand", "hand", lambda members, _: members[0].hand or "", _place_of("hand")),
    Column(
        "size",
        "Opening size",
        "size",
        lambda members, display: _size_text(members[0].size.width, members[0].size.height, display),
        lambda members: (members[0].size.width, members[0].size.height),
        tip="width x height",
    ),
    Column("level", "Level", "level", _one_line(_same_or("level", "levels")), _text_at("level")),
    Column("leaves", "Leaves", "leaves", lambda members, _: members[0].leaves, _place_of("leaves")),
    Column("frame", "Frame", "frame.kind", lambda members, _: members[0].frame.kind, _place_of("frame.kind")),
    Column(
        "door",
        "Door",
        "door.construction",
        lambda members, _: members[0].door.construction or "",
        _place_of("door.construction"),
    ),
    Column(
        "thickness",
        "Thickness",
        "door.thickness",
        lambda members, display: _length(members[0].door.thickness, display),
        lambda members: members[0].door.thickness or 0.0,
    ),
    Column(
        "fire",
        "Fire",
        "fire_minutes",
        lambda members, _: _fire_text(members[0]),
        lambda members: (members[0].fire_minutes or 0, bool(members[0].fire_label)),
        tip="minutes of the fire rating, or whether it is rated",
    ),
    Column(
        "closer",
        "Closer",
        "use.closer",
        lambda members, _: _YES_NO[members[0].use.closer],
        lambda members: _YES_NO[members[0].use.closer],
    ),
    Column(
        "set",
        "Set",
        "hardware_set",
        lambda members, _: members[0].hardware_set or "",
        _text_at("hardware_set"),
        tip="hardware set",
    ),
    Column("glass", "Glass", "glass", lambda members, _: members[0].glass or "", _text_at("glass")),
    Worked("hinge", "Hinges", lambda answer: answer.hinge, lambda answer: answer.hinge, "of one opening"),
    Worked(
        "angle",
        "Opens to",
        lambda answer: answer.angle,
        lambda answer: (answer.least_angle is None, answer.least_angle or 0.0),
        "on the hinges chosen, until the leaf or its hardware meets something",
    ),
    Column(
        "status",
        "Status",
        "status",
        lambda members, _: status_text(members[0].status),
        _place_of("status"),
    ),
    Column(
        "order_state",
        "Order",
        "order_state",
        lambda members, _: status_text(members[0].order_state),
        _place_of("order_state"),
    ),
    Worked(
        "findings",
        "Findings",
        lambda answer: answer.counted,
        lambda answer: (-answer.errors, -answer.warnings, -answer.notes),
        "what the program has to say, the worst first",
    ),
    Column(
        "questions",
        "Questions",
        "questions",
        _one_line(_same_or("questions", "different")),
        lambda members: (not members[0].questions, (members[0].questions or "").casefold()),
        tip="to the architect",
    ),
    Column(
        "remarks",
        "Remarks",
        "remarks",
        _one_line(_same_or("remarks", "different")),
        _text_at("remarks"),
        tip="of the schedule",
    ),
)
HIDDEN = frozenset({"level", "door", "thickness", "fire", "closer", "set", "glass", "remarks"})
"""Columns that are shown once the user asks for them."""
TOGETHER = frozenset({"mark", "location", "quantity", "level", "questions", "remarks"})
"""Columns that have words of their own for several openings in one row."""


def text_of(column: Column, members: Members, display: Display) -> str:
    """Write a column of openings that share a row though they differ: what all have, or how many kinds."""
    if len(members) == 1 or column.key in TOGETHER:
        return column.text(members, display)
    texts = {column.text((opening,), display) for opening in members}
    return texts.pop() if len(texts) == 1 else f"{len(texts)} different"


PLACES = {column.key: place for place, column in enumerate(COLUMNS)}
"""Key of a column to its place."""
