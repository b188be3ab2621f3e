"""Hinge places that were typed: whether there is one for each hinge, on its leaf, clear of the next."""

from collections.abc import Iterator
from itertools import pairwise

from configurator.rules.finding import Finding, Fix, Source, finding
from configurator.rules.leaf_hinge import LeafHinge
from configurator.rules.places import Places, typed_places
from configurator.rules.usual import FilledOpening
from configurator.rules.wording import counted, exactly
from configurator.units import TOLERANCE

_TYPED = Source("worked out from the hinge places that were typed", "derived")


def typed_place_findings(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    """Yield what is wrong with the places typed for one leaf's hinges; nothing where none were typed."""
    if not filled.opening.hinge_locations.tops:
        return
    places = typed_places(filled, hinge.leaf, hinge.height.value)
    yield from _number(hinge, len(places))
    yield from _off_leaf(filled, hinge, places)
    yield from _overlapping(filled, hinge, places)


def _name(hinge: LeafHinge) -> str:
    name = hinge.leaf.name
    return "leaf" if name == "single" else f"{name} leaf"


def _number(hinge: LeafHinge, typed: int) -> Iterator[Finding]:
    count = hinge.count.value
    if typed == count:
        return
    drawn = "They are drawn where they were typed" if typed else "They are drawn where the rule sets them"
    message = (
        f"The places of {counted(typed, 'hinge', 'hinges')} were typed for the {_name(hinge)}, which takes "
        f"{count}. {drawn}; check the list against the door or frame, or the number of hinges."
    )
    single = hinge.leaf.name == "single" and typed > 0
    fix = (Fix("hinge.count", typed, f"Take {counted(typed, 'hinge', 'hinges')}"),) if single else ()
    yield finding("hinge places number", "warning", message, _TYPED, fix, typed=typed, count=count)


def _off_leaf(filled: FilledOpening, hinge: LeafHinge, places: Places) -> Iterator[Finding]:
    leaf = hinge.leaf
    for bottom, top in reversed(places):
        if bottom < leaf.bottom - TOLERANCE or top > leaf.top + TOLERANCE:
            below = filled.opening_height - top
            message = (
                f"The hinge typed {exactly(below)} below the head rabbet reaches from {exactly(bottom)} to "
                f"{exactly(top)} above the floor; the {_name(hinge)} runs from {exactly(leaf.bottom)} to "
                f"{exactly(leaf.top)}. Check where it was measured from."
            )
            yield finding("hinge off its leaf", "error", message, _TYPED, (), bottom=bottom, top=top)


def _overlapping(filled: FilledOpening, hinge: LeafHinge, places: Places) -> Iterator[Finding]:
    head = filled.opening_height
    for lower, upper in pairwise(places):
        if (over := lower[1] - upper[0]) > TOLERANCE:
            message = (
                f"The hinges typed {exactly(head - upper[1])} and {exactly(head - lower[1])} below the head "
                f"rabbet are {exactly(hinge.height.value)} high each: they overlap by {exactly(over, 'up')}. "
                "Check the list against the door or frame."
            )
            yield finding("typed hinges overlap", "error", message, _TYPED, (), overlap=over)
