"""What stands along the wall, where it is cut, or broken and thin where the leaf passes over or under it."""

import math
from dataclasses import replace

from configurator.drawing.base.primitives import Arc, Polygon
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, Standing
from configurator.geometry.shapes import Shape
from configurator.tables import ObstructionKindRow, row_of


def standing_things(hung: DrawnLeaf) -> list[Polygon | Arc]:
    """Return every thing in the order it was given; pieces of one thing carry its name."""
    return [_piece(thing, shape) for thing in hung.standing for shape in merged(thing.shapes)]


def merged(shapes: tuple[Shape, ...]) -> tuple[Shape, ...]:
    """Return the pieces of one thing with no line between them where one meets the next at the frame's edge.

    A thing that reaches over the frame's face is solved as two upright rectangles and drawn as one outline.
    """
    if len(shapes) != 2 or any(len(shape.points) != 4 for shape in shapes):
        return shapes
    left, right = sorted(shapes, key=lambda shape: min(x for x, _ in shape.points))
    (x_0, y_0), _, (seam, outer), _ = left.points
    (start, y_1), _, (x_1, top), _ = right.points
    if start != seam or outer != top:
        return shapes
    outline = ((x_0, y_0), (seam, y_0), (seam, y_1), (x_1, y_1), (x_1, outer), (x_0, outer))
    return (replace(left, points=outline),)


def fill_of(thing: Standing) -> str:
    """Return the style's material that a thing is filled with where it is cut."""
    return row_of(ObstructionKindRow, thing.kind).material


def _piece(thing: Standing, shape: Shape) -> Polygon | Arc:
    layer = "A-DETL-MCUT" if thing.met else "A-DETL-MBND"
    fill = fill_of(thing) if thing.met else None
    if shape.radius:
        return Arc(layer, shape.points[0], shape.radius, 0.0, 2 * math.pi, fill, thing.label)
    return Polygon(layer, shape.points, fill, thing.label)
