"""Whether the hinges of a leaf go where they are to go: by a rule, or at the places that were typed."""

from collections.abc import Iterator
from itertools import pairwise

from configurator.rules.filling.leaves import LeafSize
from configurator.rules.filling.places import Places, places_of, typed_places
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, Source, finding
from configurator.rules.hinge.leaf_hinge import LeafHinge
from configurator.rules.wording import counted, exactly, inches, leaf_named, plain
from configurator.units import TOLERANCE

_PLAN = Source("worked out from what was given", "derived")
_MORTISED = {
    "full mortise": ("door", "frame"),
    "half mortise": ("door",),
    "half surface": ("frame",),
}


def fit_findings(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    """Yield what keeps a leaf's hinges from fitting it: their heights, mortises and backset."""
    yield from _along(filled, hinge)
    yield from _backset(filled)
    yield from _mortises(filled, hinge)


def _along(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    leaf, count, height = hinge.leaf, hinge.count.value, hinge.height.value
    if count * height > leaf.height + TOLERANCE:
        yield _too_many(leaf, count, height)
        return
    if filled.opening.hinge_locations.tops:
        yield from typed_place_findings(filled, hinge)
        return
    places = places_of(filled, leaf, count, height)
    apart = places[1][0] - places[0][0] if len(places) > 1 else 0.0
    if count > 1 and apart < height - TOLERANCE:
        yield _overlap(leaf, count, height, apart)
    elif leaf.height < 2 * height - TOLERANCE:
        yield _short_leaf(leaf, height)


def _name(leaf: LeafSize) -> str:
    return leaf_named(leaf.name) or "leaf"


def _too_many(leaf: LeafSize, count: int, height: float) -> Finding:
    start = (
        f"{counted(count, 'hinge', 'hinges')} {exactly(height)} high, {exactly(count * height, 'up')} in all,"
    )
    high = f"is {exactly(leaf.height, 'down')} high" if leaf.height > TOLERANCE else "has no height left"
    message = (
        f"{start} cannot go on the {_name(leaf)}, which {high}. Take fewer or lower hinges, or check the "
        f"height of the {_name(leaf)}."
    )
    numbers = {"needs": count * height, "leaf_height": leaf.height}
    return finding("hinges do not fit", "error", message, _PLAN, (), **numbers)


def _overlap(leaf: LeafSize, count: int, height: float, apart: float) -> Finding:
    message = (
        f"At their usual places the {count} hinges of the {_name(leaf)} stand {inches(apart, 'down')} from "
        f"bottom to bottom and are {exactly(height)} high: they overlap by {inches(height - apart, 'up')}. "
        "Take fewer or lower hinges, or have their places drawn by whoever makes the door."
    )
    return finding("hinges overlap", "error", message, _PLAN, (), apart=apart, height=height)


def _short_leaf(leaf: LeafSize, height: float) -> Finding:
    message = (
        f"The {_name(leaf)} is {exactly(leaf.height, 'down')} high, less than two hinges of "
        f"{plain(height)}: one hinge alone lets it sag. Take lower hinges, or check the height of the "
        f"{_name(leaf)}."
    )
    return finding("leaf too short", "warning", message, _PLAN, (), leaf_height=leaf.height, height=height)


def _backset(filled: FilledOpening) -> Iterator[Finding]:
    backset, thickness = filled.door_backset, filled.thickness
    if backset >= thickness - TOLERANCE:
        message = (
            f"The door's hinge backset of {exactly(backset, 'up')} is no less than its thickness of "
            f"{exactly(thickness, 'down')}: no width of the hinge leaf is left on the door. Check the "
            "backset; 1/4 in is usual."
        )
        yield finding("backset too deep", "error", message, _PLAN, backset=backset, thickness=thickness)


def _mortises(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    """Compare mortise depths with the leaf: deeper sinks it, shallower takes the gap at the hinge side."""
    thickness = hinge.leaf_thickness.value
    depths = {"door": filled.door_mortise, "frame": filled.frame_mortise}
    mortised = _MORTISED.get(hinge.mounting.value, ())
    given = {side: depth for side in mortised if (depth := depths[side]) is not None}
    for side, depth in given.items():
        if depth > thickness + TOLERANCE:
            yield _sunk(side, depth, thickness)
    proud = sum(thickness - depth for depth in given.values())
    if proud > filled.hinge_gap + TOLERANCE:
        yield _clash(given, proud, filled.hinge_gap, thickness)


def _sunk(side: str, depth: float, thickness: float) -> Finding:
    message = (
        f"The mortise in the {side} is {exactly(depth)} deep and the hinge leaf {exactly(thickness)} thick: "
        f"the leaf sinks {exactly(depth - thickness)} below flush. Cut it {exactly(thickness)} deep, or shim "
        "the leaf out."
    )
    fix = (Fix(f"{side}.mortise_depth", thickness, f"Make it {exactly(thickness)} deep"),)
    return finding("leaf below flush", "warning", message, _PLAN, fix, depth=depth, thickness=thickness)


def _clash(given: dict[str, float], proud: float, gap: float, thickness: float) -> Finding:
    message = (
        f"The hinge leaves stand {exactly(proud, 'up')} out of their mortises together, more than the "
        f"hinge-side gap of {exactly(gap, 'down')}: they meet before the door is shut. Cut the mortises "
        f"deeper: {exactly(thickness)} sets a leaf flush."
    )
    fix = tuple(Fix(f"{side}.mortise_depth", thickness, "Set the leaves flush") for side in given)
    return finding("leaves clash", "error", message, _PLAN, fix, proud=proud, gap=gap)


_TYPED = Source("worked out from the hinge places that were typed", "derived")


def typed_place_findings(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    """Yield the faults of the hinge places typed for one leaf; none where none were typed."""
    if not filled.opening.hinge_locations.tops:
        return
    places = typed_places(filled, hinge.leaf, hinge.height.value)
    yield from _number(hinge, len(places))
    yield from _off_leaf(filled, hinge, places)
    yield from _overlapping(filled, hinge, places)


def _named(hinge: LeafHinge) -> str:
    name = hinge.leaf.name
    return leaf_named(name) or "leaf"


def _number(hinge: LeafHinge, typed: int) -> Iterator[Finding]:
    count = hinge.count.value
    if typed == count:
        return
    drawn = "They are drawn where they were typed" if typed else "They are drawn where the rule sets them"
    message = (
        f"The places of {counted(typed, 'hinge', 'hinges')} were typed for the {_named(hinge)}, which takes "
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
                f"{exactly(top)} above the floor; the {_named(hinge)} runs from {exactly(leaf.bottom)} to "
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
