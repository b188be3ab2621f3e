"""The hinges of one opening as goods to order: leaf by leaf, the one that carries wires apart."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from configurator.model import Opening
from configurator.order.goods import ELECTRIC_HINGE, HANDED, HINGE, Goods
from configurator.rules.asked import NOTHING_ASKED
from configurator.rules.finding import Reason
from configurator.rules.specification import LeafSpecification
from configurator.rules.usual import use_of
from configurator.study.records import Study

_OTHER_HAND = {"LH": "RH", "RH": "LH", "LHR": "RHR", "RHR": "LHR"}


@dataclass(frozen=True, slots=True)
class Piece:
    """Hinges of one kind on one leaf of one opening; `count` is for a single opening of that mark."""

    leaf: str
    goods: Goods
    count: int


def hinges_of(study: Study) -> tuple[Piece, ...]:
    """Return what one opening takes, for each leaf that a hinge can be had for."""
    leaves = [leaf for leaf in study.specification.leaves if can_be_had(leaf)]
    screws = _screws_each(study)
    pieces: list[Piece] = []
    for leaf in leaves:
        goods = _goods(leaf, study.opening, screws[leaf.leaf])
        wired = 1 if leaf.leaf == wired_leaf(study) else 0
        pieces.append(Piece(leaf.leaf, goods, leaf.parts["count"].value - wired))
        pieces.append(Piece(leaf.leaf, replace(goods, item=ELECTRIC_HINGE), wired))
    return tuple(piece for piece in pieces if piece.count)


def can_be_had(leaf: LeafSpecification) -> bool:
    """Say whether there is a width to order for that leaf at all."""
    return leaf.parts["width"].value is not None


def wired_leaf(study: Study) -> str | None:
    """Return the leaf whose hinges include the one that carries wires: the first that has that many hinges.

    None where none is asked for, and where no leaf has so many.
    """
    which = (study.opening.hinge or NOTHING_ASKED).electric
    if which is None:
        return None
    fitting = (
        leaf.leaf
        for leaf in study.specification.leaves
        if can_be_had(leaf) and leaf.parts["count"].value >= which
    )
    return next(fitting, None)


def hand_of_leaf(hand: str | None, leaf: str) -> str | None:
    """Return a leaf's own hand: a pair's is that of its active leaf, and the other leaf has the opposite."""
    return _OTHER_HAND.get(hand) if hand and leaf == "inactive" else hand


def _screws_each(study: Study) -> dict[str, Mapping[str, Fraction]]:
    """Return screws of each kind with one hinge of each leaf; a number by hand is shared by all leaves."""
    specification = study.specification
    if specification.asked_screws is not None:
        total = sum(leaf.parts["count"].value for leaf in specification.leaves)
        shared = _per_hinge(specification.asked_screws.value, total)
        return {leaf.leaf: shared for leaf in specification.leaves}
    return {
        leaf.leaf: _per_hinge(leaf.parts["screws"].value, leaf.parts["count"].value)
        for leaf in specification.leaves
    }


def _per_hinge(screws: Mapping[str, int], hinges: int) -> Mapping[str, Fraction]:
    return {kind: Fraction(number, hinges) for kind, number in sorted(screws.items()) if number}


def _goods(leaf: LeafSpecification, opening: Opening, screws: Mapping[str, Fraction]) -> Goods:
    parts: Mapping[str, Reason] = leaf.parts
    mounting = parts["mounting"].value
    return Goods(
        item=HINGE,
        height=parts["height"].value,
        width=parts["width"].value,
        type=parts["type"].value,
        mounting=mounting,
        weight=parts["weight"].value,
        bearing=parts["bearing"].value,
        leaf_thickness=parts["leaf_thickness"].value,
        knuckles=parts["knuckles"].value,
        base_metal=parts["base_metal"].value,
        alloy=parts["alloy"].value,
        finish_bhma=parts["finish_bhma"].value,
        finish_us=parts["finish_us"].value,
        pin=parts["pin"].value,
        security_stud=bool(parts["security_stud"].value),
        tip=parts["tip"].value,
        corner=parts["corner"].value,
        hand=hand_of_leaf(opening.hand, leaf.leaf) if mounting in HANDED else None,
        fire=bool(use_of(opening.use, "fire_rated")),
        screws=tuple(screws.items()),
    )
