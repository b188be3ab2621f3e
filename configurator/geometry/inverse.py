"""The inverse questions: how wide a hinge, or how little trim, for a wanted angle. Inches and radians.

Both bracket the exact first contact of leaf and barrels alone; a lever that meets a wall wants a stop, not a
wider hinge.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from configurator.geometry.pin import TOLERANCE, Hanging
from configurator.geometry.shapes import Leaf, Obstruction, OtherLeaf
from configurator.geometry.solve import scene
from configurator.geometry.swing import polar_contact

#: The widest hinge that is looked at, in: past every stock table.
WIDEST: Final = 24.0
#: Widths are first looked at this far apart, in, then the bracket is halved to rounding.
_LOOK: Final = 0.25


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


def least_hinge_width(
    hanging: Hanging,
    leaf: Leaf,
    wanted: float,
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
    narrowest: float = 1.0,
) -> float | None:
    """Least exact hinge width at which the bare leaf opens to a wanted angle; round up to stock.

    Inches and radians. From narrowest up, so that a free barrel can be asked for by its choice; the width of
    hanging itself does not matter. None where no hinge up to WIDEST does it, or where the mounting's pin does
    not depend on the width and it does not do. Derived, on the exact contact angle.
    """

    def works(width: float) -> bool:
        return reaches(replace(hanging, W=width), leaf, wanted, obstructions, other)

    if works(narrowest):
        return narrowest
    if hanging.mounting != "full mortise":
        return None
    steps = max(1, math.ceil((WIDEST - narrowest) / _LOOK))
    for step in range(1, steps + 1):
        width = narrowest + step * _LOOK
        if works(width):
            return _last_that_works(works, width, width - _LOOK)
    return None


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
    or farther. Derived, on the exact contact angle. Raises IndexError for an index not in the list.
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
    return most if works(most) else _last_that_works(works, least, most)


def greatest_angles(
    hanging: Hanging,
    leaf: Leaf,
    widths: Sequence[float],
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
) -> list[tuple[float, float]]:
    """The bare leaf's greatest angle, radians, on each of several hinge widths, in."""
    return [(width, angle_bare(replace(hanging, W=width), leaf, obstructions, other)) for width in widths]
