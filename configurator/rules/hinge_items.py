"""The hinges of an opening as items that can be ordered: leaf by leaf, the one that carries wires apart.

Everything that names, counts, shows or orders the hinges of an opening takes them from here.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from configurator.model import Opening
from configurator.rules.filling.usual import fill_use
from configurator.rules.hinge.fastening import whole_shares
from configurator.rules.hinge.pin import HANDED
from configurator.rules.specification import LeafSpecification, Specification
from configurator.rules.wording import plain, size

HINGE = "butt hinge"
ELECTRIC_HINGE = "electric butt hinge"
SURFACE_LEAVES: Mapping[str, str] = {
    "half mortise": "frame leaf",
    "half surface": "door leaf",
    "full surface": "both leaves",
}
"""Which leaf lies on a face: it is through-bolted."""
CLEARS_AT = "90 to 95 degrees"
"""The opening of a door on swing clear hinges at which it is wholly clear of its opening."""
_OTHER_HAND = {"LH": "RH", "RH": "LH", "LHR": "RHR", "RHR": "LHR"}


@dataclass(frozen=True, slots=True)
class HingeItem:
    """Everything that makes two hinges different things to order; sizes and thickness are inches.

    `hand` is that of the leaf, on a handed hinge only; `wires` how many an electric hinge carries, None where
    nobody said; `fire` says that it goes on a labelled door; `screws`
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
    wires: int | None
    fire: bool
    screws: tuple[tuple[str, Fraction], ...]

    @property
    def size(self) -> str:
        """Height x width, as `4-1/2 x 4`."""
        return size(self.height, self.width)

    @property
    def product(self) -> "HingeItem":
        """The hinge as it is sold: the label of the door and the screws make no other hinge of it."""
        return replace(self, fire=False, screws=())

    @property
    def sold_by(self) -> str:
        """Whether it is ordered by height x width, or by its height alone, as surface hinges are."""
        return "height" if self.through_bolts or self.clears_at else "height x width"

    @property
    def through_bolts(self) -> str | None:
        """Which leaf is through-bolted, as `door leaf`; None where both are let in."""
        return SURFACE_LEAVES.get(self.mounting)

    @property
    def clears_at(self) -> str | None:
        """At what opening a swing clear hinge leaves the whole opening clear; None of any other."""
        return CLEARS_AT if self.mounting == "swing clear" else None

    @property
    def electric(self) -> bool:
        """Whether the hinge carries wires."""
        return self.item == ELECTRIC_HINGE

    @property
    def screw_kinds(self) -> str:
        """The kinds of screw that come with it, as `machine` or `machine and wood`."""
        return " and ".join(kind for kind, number in self.screws if number) or "none"

    def as_data(self) -> dict[str, Any]:
        """Return the item by the keys of an order line."""
        return {
            "item": self.item,
            "height": self.height,
            "width": self.width,
            "size": self.size,
            "type": self.type,
            "mounting": self.mounting,
            "weight": self.weight,
            "bearing": self.bearing,
            "leaf_thickness": self.leaf_thickness,
            "knuckles": self.knuckles,
            "base_metal": self.base_metal,
            "alloy": self.alloy,
            "finish_bhma": self.finish_bhma,
            "finish_us": self.finish_us,
            "pin": self.pin,
            "security_stud": self.security_stud,
            "tip": self.tip,
            "corner": self.corner,
            "hand": self.hand,
            "wires": self.wires,
            "fire": self.fire,
        }


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
    "wires",
    "fire",
)
"""The keys of an order line that say what is ordered, in the order of the results; `alloy` is added."""


@dataclass(frozen=True, slots=True)
class LeafItem:
    """Hinges of one kind on one leaf of one opening; `count` is for a single opening of that mark."""

    leaf: str
    hinge: HingeItem
    count: int


def hinge_items(specification: Specification, opening: Opening) -> tuple[LeafItem, ...]:
    """Return the hinges that one opening takes, leaf by leaf; none of a leaf that no hinge can be had for."""
    wires = None if opening.hinge is None else opening.hinge.wires
    items: list[LeafItem] = []
    for leaf in specification.leaves:
        if not leaf.can_be_had:
            continue
        hinge = _item(leaf, opening)
        wired = 0 if leaf.electric is None else 1
        items.append(LeafItem(leaf.leaf, hinge, leaf.parts["count"].value - wired))
        items.append(LeafItem(leaf.leaf, replace(hinge, item=ELECTRIC_HINGE, wires=wires), wired))
    return tuple(one for one in items if one.count)


def screws_of_items(items: Sequence[LeafItem], openings: int) -> tuple[dict[str, int], ...]:
    """Return the whole screws of each item for that many openings.

    Items of one kind add up to what an order line of that kind has: a part of a screw goes up, once.
    """
    alike: dict[HingeItem, list[int]] = {}
    for place, one in enumerate(items):
        alike.setdefault(one.hinge, []).append(place)
    found: list[dict[str, int]] = [{} for _ in items]
    for hinge, places in alike.items():
        counts = [items[place].count * openings for place in places]
        for kind, each in hinge.screws:
            for place, number in zip(places, whole_shares(each, counts), strict=True):
                found[place][kind] = number
    return tuple(found)


def sold_words(hinge: HingeItem) -> tuple[str, ...]:
    """Return what a surface or swing clear hinge is ordered by; nothing of a hinge ordered by its size."""
    if hinge.sold_by != "height":
        return ()
    bolts = f"through-bolts for the {hinge.through_bolts}" if hinge.through_bolts else ""
    clear = f"opening clear at {hinge.clears_at}" if hinge.clears_at else ""
    return tuple(filter(None, (f"sold by height, {plain(hinge.height)} high", bolts, clear)))


def sort_key(hinge: HingeItem) -> tuple[Any, ...]:
    """Return what lines are put in order by: size first, the electric hinge after its plain ones."""
    make = (hinge.mounting, hinge.weight, hinge.bearing, hinge.base_metal, hinge.alloy or "")
    finish = (hinge.finish_bhma or "", hinge.finish_us or "", hinge.pin, hinge.tip, hinge.corner)
    rest = (hinge.type or "", hinge.leaf_thickness, hinge.knuckles, hinge.security_stud, hinge.fire)
    wired = (hinge.electric, hinge.wires or 0)
    return (hinge.height, hinge.width, *make, *finish, hinge.hand or "", *rest, *wired, hinge.screws)


def _item(leaf: LeafSpecification, opening: Opening) -> HingeItem:
    parts: Mapping[str, Any] = {key: part.value for key, part in leaf.parts.items()}
    return HingeItem(
        item=HINGE,
        height=parts["height"],
        width=parts["width"],
        type=parts["type"],
        mounting=parts["mounting"],
        weight=parts["weight"],
        bearing=parts["bearing"],
        leaf_thickness=parts["leaf_thickness"],
        knuckles=parts["knuckles"],
        base_metal=parts["base_metal"],
        alloy=parts["alloy"],
        finish_bhma=parts["finish_bhma"],
        finish_us=parts["finish_us"],
        pin=parts["pin"],
        security_stud=bool(parts["security_stud"]),
        tip=parts["tip"],
        corner=parts["corner"],
        hand=hand_of_leaf(opening.hand, leaf.leaf) if parts["mounting"] in HANDED else None,
        wires=None,
        fire=fill_use(opening).fire_rated,
        screws=tuple((kind, number) for kind, number in sorted(leaf.screws_each.items()) if number),
    )


def hand_of_leaf(hand: str | None, leaf: str) -> str | None:
    """Return a leaf's own hand: a pair's is that of its active leaf, and the other leaf has the opposite."""
    return _OTHER_HAND.get(hand) if hand and leaf == "inactive" else hand
