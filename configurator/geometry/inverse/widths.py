"""The inverse questions: how wide a hinge, or how little trim, for a wanted angle. Inches and radians.

Both ask the exact first contact of leaf and barrels alone; a lever that meets a wall wants a stop, not a
wider hinge.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import groupby, pairwise
from typing import Final

import numpy as np

from configurator.geometry.inverse.break_widths import break_projections, break_widths
from configurator.geometry.many.solve_many import Many, solve_many
from configurator.geometry.pin import TOLERANCE, Hanging
from configurator.geometry.shapes import Leaf, Obstruction, OtherLeaf
from configurator.geometry.solve import scene
from configurator.geometry.swing import polar_contact

#: The widest hinge that is looked at, in: past every stock table.
WIDEST: Final = 24.0
#: A closed form is tried this far beside itself, in.
_BESIDE: Final = 1e-7


def angle_bare(
    hanging: Hanging, leaf: Leaf, obstructions: Sequence[Obstruction] = (), other: OtherLeaf | None = None
) -> float:
    """The greatest angle of leaf and barrels alone, radians; exactly math.pi where nothing stops them."""
    plan = scene(hanging, leaf, (), obstructions, other)
    contact = polar_contact(plan.bare, plan.standing, plan.pin.at)
    return math.pi if contact is None else contact.angle


def reaches(
    hanging: Hanging,
    leaf: Leaf,
    wanted: float,
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
) -> bool:
    """Whether leaf and barrels alone turn as far as a wanted angle, radians."""
    plan = scene(hanging, leaf, (), obstructions, other)
    return polar_contact(plan.bare, plan.standing, plan.pin.at, wanted) is None


def _last_that_works(works: Callable[[float], bool], good: float, bad: float) -> float:
    """The value nearest to bad that still works, to half the tolerance; good works and bad does not."""
    while abs(bad - good) > TOLERANCE / 2:
        middle = (good + bad) / 2
        if middle in (good, bad):
            break
        good, bad = (middle, bad) if works(middle) else (good, middle)
    return good


def widths_that_work(
    hanging: Hanging,
    leaf: Leaf,
    wanted: float,
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
    narrowest: float = 1.0,
    widest: float = WIDEST,
) -> tuple[tuple[float, float], ...]:
    """Every span of hinge widths at which the bare leaf opens to a wanted angle, narrowest span first.

    Inches and radians, each span with both its ends; the width of hanging itself does not matter. Exact: the
    widths where anything can change are closed form (`break_widths`), and between two of them one width
    speaks for all. A single width between two spans that fail, and spans under the tolerance, are left out.
    Where the mounting's pin does not depend on the width, all that was asked for or nothing.
    """

    def works(width: float) -> bool:
        return reaches(replace(hanging, W=width), leaf, wanted, obstructions, other)

    if hanging.mounting != "full mortise":
        return ((narrowest, widest),) if works(narrowest) else ()
    breaks = break_widths(hanging, leaf, wanted, obstructions, other)
    ends = _told_apart([narrowest, *(width for width in breaks if narrowest < width < widest), widest])
    middles = [(low + high) / 2 for (_, low), (high, _) in pairwise(ends)]
    many = Many(
        hanging=hanging, leaf=leaf, obstructions=tuple(obstructions), other=other,
        columns={"W": np.array(middles)},
    )  # fmt: skip
    good = [bool(angle >= wanted) for angle in solve_many(many).greatest_angle_bare]
    return _spans(works, ends, middles, good)


def _told_apart(widths: Sequence[float]) -> list[tuple[float, float]]:
    """Sorted widths as groups, least and greatest, of those that the tolerance does not tell apart."""
    groups: list[tuple[float, float]] = []
    for width in sorted(widths):
        if groups and width - groups[-1][1] <= TOLERANCE:
            groups[-1] = (groups[-1][0], width)
        else:
            groups.append((width, width))
    return groups


def _spans(
    works: Callable[[float], bool],
    ends: list[tuple[float, float]],
    middles: list[float],
    good: list[bool],
) -> tuple[tuple[float, float], ...]:
    """The spans that work, from what the middle between each two ends says."""
    spans = []
    for works_here, group in groupby(range(len(middles)), key=lambda place: good[place]):
        places = list(group)
        first, last = places[0], places[-1]
        if works_here:
            low, high = ends[first][1], ends[last + 1][0]
            if first > 0:
                low = _edge(works, middles[first], middles[first - 1], low)
            if last + 1 < len(middles):
                high = _edge(works, middles[last], middles[last + 1], high)
            spans.append((low, high))
    return tuple(spans)


def _edge(works: Callable[[float], bool], good: float, bad: float, near: float) -> float:
    """Where widths cease to work: the closed form if it bears out, else by halving beside it.

    Where two roots fall together a closed form is good to half its figures only.
    """
    beyond = near + math.copysign(min(_BESIDE, abs(bad - near)), bad - good)
    if works(beyond):
        return _last_that_works(works, beyond, bad)
    return near if works(near) else _last_that_works(works, good, near)


def least_hinge_width(
    hanging: Hanging,
    leaf: Leaf,
    wanted: float,
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
    narrowest: float = 1.0,
) -> float | None:
    """Least exact hinge width at which the bare leaf opens to a wanted angle; round up to stock.

    Inches and radians; as `widths_that_work`, from narrowest up, so that a free barrel can be asked for by
    its choice. None where no hinge up to WIDEST does it.
    """
    spans = widths_that_work(hanging, leaf, wanted, obstructions, other, narrowest)
    return spans[0][0] if spans else None


def greatest_hinge_width(
    hanging: Hanging,
    leaf: Leaf,
    wanted: float,
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
    narrowest: float = 1.0,
) -> float | None:
    """Greatest exact hinge width at which the bare leaf opens to a wanted angle: wider, it binds.

    Inches and radians; as `widths_that_work`. WIDEST where nothing bounds it, None where no width does it.
    """
    spans = widths_that_work(hanging, leaf, wanted, obstructions, other, narrowest)
    return spans[-1][1] if spans else None


def greatest_projection(
    hanging: Hanging,
    leaf: Leaf,
    wanted: float,
    obstructions: Sequence[Obstruction],
    index: int,
    other: OtherLeaf | None = None,
    most: float = 48.0,
) -> float | None:
    """The greatest projection that one obstruction may have for the bare leaf to open to a wanted angle.

    Inches and radians, counted as that obstruction's own projection is; the others stay as they are. None
    where the leaf does not get there even with that obstruction flat, `most` where it may stand out so far
    or farther. Every lesser projection does too, also of something round, which past the leaf's reach would
    be out of its way again. Derived, on the exact contact angle. Raises IndexError for an index not in the
    list.
    """
    thing = obstructions[index]

    def works(projection: float) -> bool:
        # An obstruction flattened to nothing has no shape, so the place it held in the list is kept.
        changed = [*obstructions]
        changed[index] = replace(thing, projection=projection)
        return reaches(hanging, leaf, wanted, changed, other)

    least = TOLERANCE / 4
    if not works(least):
        return None
    if thing.diameter is not None:
        breaks = break_projections(hanging, leaf, wanted, thing, other)
        return _first_end(works, [least, *(one for one in breaks if least < one < most), most])
    return most if works(most) else _last_that_works(works, least, most)


def _first_end(works: Callable[[float], bool], ends: list[float]) -> float:
    """How far from the first of some values on all work, where one between two of them speaks for all."""
    groups = _told_apart(ends)
    middles = [(low + high) / 2 for (_, low), (high, _) in pairwise(groups)]
    for place, middle in enumerate(middles):
        if not works(middle):
            return groups[0][0] if place == 0 else _edge(works, middles[place - 1], middle, groups[place][0])
    return ends[-1]


def greatest_angles(
    hanging: Hanging,
    leaf: Leaf,
    widths: Sequence[float],
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
) -> list[tuple[float, float]]:
    """The bare leaf's greatest angle, radians, on each of several hinge widths, in."""
    return [(width, angle_bare(replace(hanging, W=width), leaf, obstructions, other)) for width in widths]
