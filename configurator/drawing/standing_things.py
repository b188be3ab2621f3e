"""What stands along the wall, where it is cut, or broken and thin where the leaf passes over or under it."""

import math

from configurator.drawing.hung import Hung, Standing
from configurator.drawing.primitives import Arc, Polygon
from configurator.geometry.shapes import Shape

_FILLS = {
    "chair rail": "wood",
    "base": "wood",
    "casing": "wood",
    "wainscot": "wood",
    "return wall": "solid",
    "column": "masonry",
    "other": "solid",
}


def standing_things(hung: Hung) -> list[Polygon | Arc]:
    """Return every thing in the order it was given; pieces of one thing carry its name."""
    return [_piece(thing, shape) for thing in hung.standing for shape in thing.shapes]


def _piece(thing: Standing, shape: Shape) -> Polygon | Arc:
    layer = "A-DETL-MCUT" if thing.met else "A-DETL-MBND"
    fill = _FILLS.get(thing.kind, "solid") if thing.met else None
    if shape.radius:
        return Arc(layer, shape.points[0], shape.radius, 0.0, 2 * math.pi, fill, thing.label)
    return Polygon(layer, shape.points, fill, thing.label)
