"""A leaf that swings both ways: no stop stands in its frame, and the push side is the pull side mirrored.

Swung to the push side a leaf is solved as any other, in a plan mirrored across the middle of the jamb: its
push face, its wall face there and the axis take the places of those on the pull side. Inches; axes as in
`pin`, and of the mirrored plan +y out of the frame on the push side.
"""

from collections.abc import Iterable
from dataclasses import replace

from configurator.geometry.pin import Hanging, Point
from configurator.geometry.shapes import Hardware, Obstruction, OtherHalf, OtherLeaf, jamb_depth


def without_stop(h: Hanging, wall: float) -> Hanging:
    """The same leaf at the same place in a frame that has no stop, in a wall so thick.

    The jamb's face is as deep as the jamb, whatever outline it has with a stop.
    """
    deep = jamb_depth(h)
    return replace(h, R=deep, k=deep - h.T - h.i, s=0.0, D=deep, wall=wall, outline=None)


def toward_push(h: Hanging) -> Hanging:
    """The leaf of a frame without stop in the mirrored plan.

    Raises ValueError for a leaf that turns on no axis of its own, or whose wall has no thickness.
    """
    if h.axis is None or h.wall is None:
        raise ValueError("A leaf that swings both ways turns on an axis that is given, in a wall so thick.")
    off, from_heel = h.axis
    # The bevel relieves the other face now: the latch edge as it is, seen from behind.
    return replace(
        h,
        k=h.i,
        p=h.D - h.wall - h.p,
        g_l=h.g_l + h.beta * h.T,
        beta=-h.beta,
        axis=(-off - h.T, from_heel),
    )


def at_back(h: Hanging, point: Point) -> Point:
    """A point of the mirrored plan in the plan's own axes, or the other way."""
    x, y = point
    return x, -h.D - y


def hardware_at_back(hardware: Iterable[Hardware], h: Hanging) -> tuple[Hardware, ...]:
    """What a leaf carries, seen from behind; h is the leaf on its pull side."""
    return tuple(
        replace(
            item,
            face="push" if item.face == "pull" else "pull",
            from_latch_edge=item.from_latch_edge - h.beta * h.T,
        )
        for item in hardware
    )


def half_at_back(half: OtherHalf | None, h: Hanging) -> OtherHalf | None:
    """The closed other half of a Dutch door, seen from behind."""
    return None if half is None else replace(half, hardware=hardware_at_back(half.hardware, h))


def other_at_back(other: OtherLeaf | None, h: Hanging) -> OtherLeaf | None:
    """The other leaf of a pair, seen from behind. Raises ValueError where its meeting edge has a bevel."""
    if other is None:
        return None
    if other.beta:
        raise ValueError("The meeting edge of a leaf that swings both ways is square.")
    return replace(other, hardware=hardware_at_back(other.hardware, replace(h, beta=0.0)))


def things_at_back(things: Iterable[Obstruction], wall: float) -> tuple[Obstruction, ...]:
    """What stands on the pull side, behind a wall so thick in the mirrored plan."""
    return tuple(replace(thing, behind=wall) for thing in things)
