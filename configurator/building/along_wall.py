"""What stands before a door as obstructions: measured from its frame, on the side that it opens to."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from configurator.building.neighbours import MANOEUVRE, SWEEP
from configurator.building.records import Box, ModelDoor, Sides
from configurator.model import Obstruction
from configurator.model.words import Side

_MOST_OVER_FRAME = 24.0
"""Inches that an obstruction may reach over the frame's face and the opening."""
_FARTHEST = 600.0
_MOST = 150


@dataclass(frozen=True, slots=True)
class Frame:
    """Where a frame's outer edges are in the door's x, inches."""

    left: float
    right: float


def obstructions_of(
    door: ModelDoor, sides: Sides, frame: Frame
) -> tuple[tuple[Obstruction, ...], tuple[str, ...]]:
    """Return what stands on the side that a door opens to, and what cannot be said so and must be asked."""
    found, asks = [], []
    for box in door.beside.get(sides[1], ()):
        for side, start, end in _stretches(box, sides[0], frame):
            if not _matters(door, side, start, box):
                continue
            if start < -_MOST_OVER_FRAME:
                asks.append(
                    f"{box.element} stands before the opening, over {_MOST_OVER_FRAME:.0f} in from the "
                    "nearer jamb: say whether the door may meet it"
                )
            else:
                found.append(_obstruction(box, side, start, end))
    found = _before_walls(found)
    if len(found) > _MOST:
        asks.append(
            f"{len(found):,} things stand before the door in the model: the nearest {_MOST} are taken"
        )
        found = sorted(found, key=lambda one: (one.offset or 0.0, one.start or 0.0))[:_MOST]
    return tuple(dict.fromkeys(found)), tuple(dict.fromkeys(asks))


def _before_walls(things: list[Obstruction]) -> list[Obstruction]:
    """Return things without those behind a wall that runs out beyond all reach."""
    kept = []
    for thing in things:
        walls = [
            one.start or 0.0
            for one in things
            if one.kind == "return wall" and one.projection is None and one.side == thing.side
        ]
        nearest = min(walls, default=math.inf)
        start = thing.start or 0.0
        if start < nearest or (start == nearest and thing.kind == "return wall"):
            kept.append(thing)
    return kept


def _stretches(box: Box, hinges: int, frame: Frame) -> Iterator[tuple[Side, float, float]]:
    """Yield the side of a box, and where it starts and ends from the frame's outer edge of that side.

    What reaches over the middle of the opening is told from either side.
    """
    middle = (frame.left + frame.right) / 2
    at_left: Side = "hinge" if hinges < 0 else "latch"
    at_right: Side = "latch" if hinges < 0 else "hinge"
    if box.diameter is not None:
        left = (box.left + box.right) / 2 < middle
        start = frame.left - box.right if left else box.left - frame.right
        yield at_left if left else at_right, start, start + box.diameter
        return
    if box.left < middle:
        yield at_left, frame.left - min(box.right, middle), frame.left - box.left
    if box.right > middle:
        yield at_right, max(box.left, middle) - frame.right, box.right - frame.right


def _matters(door: ModelDoor, side: Side, start: float, box: Box) -> bool:
    """Say whether a thing lies within the sweep of a leaf, or within the floor before the lock."""
    assert door.width is not None
    reach = door.width + SWEEP
    if side == "hinge" or door.pair:
        return start <= reach and box.near <= reach
    return start <= MANOEUVRE[0] and box.near <= max(reach, MANOEUVRE[1])


def _obstruction(box: Box, side: Side, start: float, end: float) -> Obstruction:
    kind = box.kind
    if kind == "return wall" and (start < 0 or box.near > 0 or box.bottom > 0 or math.isfinite(box.top)):
        kind = "other"
    data: dict[str, object] = {"kind": kind, "side": side, "start": _exact(start), "element": box.element}
    heights = {"bottom": box.bottom, "top": box.top}
    data |= {name: _exact(value) for name, value in heights.items() if math.isfinite(value)}
    if box.near > 0:
        data["offset"] = _exact(box.near)
    if box.diameter is not None:
        return Obstruction.model_validate({**data, "diameter": _exact(box.diameter)})
    if math.isfinite(box.far) or kind != "return wall":
        data["projection"] = _exact(min(box.far, _FARTHEST + box.near) - box.near)
    if math.isfinite(end) and kind != "return wall":
        data["length"] = _exact(end - start)
    return Obstruction.model_validate(data)


def _exact(value: float) -> float:
    """Return a length without what subtraction adds behind its sixth figure."""
    return round(value, 6)
