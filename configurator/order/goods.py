"""What distinguishes one hinge to be ordered from another."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from configurator.rules.wording import size

HINGE = "butt hinge"
ELECTRIC_HINGE = "electric butt hinge"
HANDED = ("swing clear", "half surface")
"""Mountings whose hinges may be handed."""


@dataclass(frozen=True, slots=True)
class Goods:
    """Everything that makes two hinges different things to order; sizes and thickness are inches.

    `hand` is that of the leaf, on a handed hinge only; `fire` says that it goes on a labelled door; `screws`
    are those that come with one hinge, a fraction where a number was given for a whole set.
    """

    item: str
    height: float
    width: float
    type: str | None
    mounting: str
    weight: str
    bearing: str
    leaf_thickness: float
    knuckles: int
    base_metal: str
    alloy: str | None
    finish_bhma: str | None
    finish_us: str | None
    pin: str
    security_stud: bool
    tip: str
    corner: str
    hand: str | None
    fire: bool
    screws: tuple[tuple[str, Fraction], ...]

    @property
    def size(self) -> str:
        """Height x width, as `4-1/2 x 4`."""
        return size(self.height, self.width)

    @property
    def electric(self) -> bool:
        """Whether the hinge carries wires."""
        return self.item == ELECTRIC_HINGE

    @property
    def screw_kinds(self) -> str:
        """The kinds of screw that come with it, as `machine` or `machine and wood`."""
        return " and ".join(kind for kind, number in self.screws if number) or "none"


CONTRACT_KEYS = (
    "item",
    "height",
    "width",
    "size",
    "type",
    "mounting",
    "weight",
    "bearing",
    "leaf_thickness",
    "knuckles",
    "base_metal",
    "alloy",
    "finish_bhma",
    "finish_us",
    "pin",
    "security_stud",
    "tip",
    "corner",
    "hand",
    "fire",
)
"""The keys of an order line that say what is ordered, in the order of the results; `alloy` is added."""


def goods_as_data(goods: Goods) -> dict[str, Any]:
    """Return the goods by the keys of an order line."""
    return {key: getattr(goods, key) for key in CONTRACT_KEYS}


def sort_key(goods: Goods) -> tuple[Any, ...]:
    """Return what lines are put in order by: size first, the electric hinge after its plain ones."""
    said = (goods.mounting, goods.weight, goods.bearing, goods.base_metal, goods.alloy or "")
    finish = (goods.finish_bhma or "", goods.finish_us or "", goods.pin, goods.tip, goods.corner)
    rest = (goods.type or "", goods.leaf_thickness, goods.knuckles, goods.security_stud, goods.fire)
    return (goods.height, goods.width, *said, *finish, goods.hand or "", *rest, goods.electric, goods.screws)
