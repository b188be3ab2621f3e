"""What a leaf and the hardware on it sweep from closed to as far as they go: the outline exact, arcs as arcs.

Seen from the pin a turning part covers, at every distance, the angles it covers when closed and as many more
as it turns. So the outline is the side that trails where the part starts, the side that leads where it ends,
and arcs about the pin between them. Inches and radians.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from configurator.drawing.base.primitives import Arc, Point, Polyline, Region, turned
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.geometry.shapes import Shape
from configurator.units import TOLERANCE

Bounds = tuple[Polyline | Arc, ...]
_LEAF, _HARDWARE, _FILL = "A-DOOR-SWPT", "A-DOOR-SWPT-HDWR", "swept"


def swept_regions(hung: DrawnLeaf, fill: str = _FILL) -> tuple[Region, ...]:
    """Return what every piece of hardware sweeps and then what the leaf does, which lies over it."""
    pin, reach = hung.pin.at, hung.reach
    parts = [(shape, _HARDWARE, f"what the {shape.kind} sweeps") for shape in hung.hardware]
    parts.append((Shape(leaf_corners(hung.h), kind="leaf"), _LEAF, "what the leaf sweeps"))
    outlines = [(swept_outline(shape, pin, reach, layer), layer, name) for shape, layer, name in parts]
    return tuple(Region(layer, bounds, fill, name) for bounds, layer, name in outlines if bounds)


def swept_outline(shape: Shape, pin: Point, theta: float, layer: str) -> Bounds:
    """Return the outline of what a convex part sweeps as it turns by theta, in order around it.

    Empty where the pin stands in the part, or where nothing turns.
    """
    if theta <= TOLERANCE:
        return ()
    return _round(shape, pin, theta, layer) if shape.radius else _straight(shape.points, pin, theta, layer)


def _round(shape: Shape, pin: Point, theta: float, layer: str) -> Bounds:
    """Two arcs about the pin, closed by half the part at either end."""
    (centre,), radius = shape.points, shape.radius
    rho, phi = _polar(centre, pin)
    if rho <= radius:
        return ()
    end = turned(shape.points, pin, theta)[0]
    return (
        Arc(layer, pin, rho + radius, phi, phi + theta),
        Arc(layer, end, radius, phi + theta, phi + theta + math.pi),
        Arc(layer, pin, rho - radius, phi, phi + theta),
        Arc(layer, centre, radius, phi - math.pi, phi),
    )


def _straight(corners: tuple[Point, ...], pin: Point, theta: float, layer: str) -> Bounds:
    nearest = nearest_on_outline(pin, corners)
    farthest = max(corners, key=lambda corner: math.dist(corner, pin))
    near, far = _polar(nearest, pin), _polar(farthest, pin)
    if near[0] <= TOLERANCE or _holds(corners, pin):
        return ()
    trailing, leading = _sides(corners, nearest, farthest)
    end = turned([*leading], pin, theta)
    return (
        *_outward(trailing, pin, theta, layer),
        Arc(layer, pin, far[0], far[1], far[1] + theta),
        *reversed(_outward(end, pin, -theta, layer)),
        Arc(layer, pin, near[0], near[1], near[1] + theta),
    )


def _sides(
    corners: tuple[Point, ...], nearest: Point, farthest: Point
) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return the two sides of an outline from its nearest point outward: the trailing, the leading one.

    Corners run counter-clockwise, so that from the nearest point on they run along the side that trails.
    """
    start = _corner_index(nearest, corners)
    around = [*corners[start:], *corners[:start]]
    far = around.index(farthest)
    trailing, leading = [nearest, *around[: far + 1]], [nearest, *reversed(around[far:])]
    return _without_doubles(trailing), _without_doubles(leading)


def _corner_index(point: Point, corners: tuple[Point, ...]) -> int:
    """Return the index of the corner at a point of the outline, or of the next one around."""
    for index, corner in enumerate(corners):
        if math.dist(point, corner) <= TOLERANCE:
            return index
    lengths = [_detour(corners[index - 1], point, corner) for index, corner in enumerate(corners)]
    return lengths.index(min(lengths))


def _detour(a: Point, over: Point, b: Point) -> float:
    return math.dist(a, over) + math.dist(over, b) - math.dist(a, b)


def _without_doubles(points: Sequence[Point]) -> tuple[Point, ...]:
    kept = [points[0]]
    kept += [point for before, point in pairwise(points) if before != point]
    return tuple(kept)


def _outward(side: tuple[Point, ...], pin: Point, turn: float, layer: str) -> list[Polyline | Arc]:
    """Return a side from its nearest point to its farthest, what falls back toward the pin bridged by an arc.

    A corner that stands farther out than what follows it sweeps over that as the part turns; turn is how the
    part turns away from this side, negative for the side that leads.
    """
    pieces: list[Polyline | Arc] = []
    chain, from_corner = [side[0]], None
    for a, b in pairwise(side):
        if from_corner is None and _falls_back(a, b, pin):
            from_corner = a
        if from_corner is None:
            chain.append(b)
            continue
        back = _out_again(a, b, pin, math.dist(from_corner, pin))
        if back is None:
            continue
        pieces += [Polyline(layer, tuple(chain)), *_hollow(from_corner, back, pin, turn, layer)]
        if math.dist(back, b) > TOLERANCE:
            pieces.append(Polyline(layer, (back, b)))
        chain, from_corner = [b], None
    return pieces if len(chain) == 1 and pieces else [*pieces, Polyline(layer, tuple(chain))]


def _hollow(one: Point, other: Point, pin: Point, turn: float, layer: str) -> tuple[Polyline | Arc, ...]:
    """Return what bounds a straight hollow between two points as far from the pin as each other.

    The first sweeps over all of it, or as far as it turns: then a notch is left between the hollow as it
    starts and as it ends, down to the distance from the pin where it is as wide as the turn.
    """
    bridge = _bridge(one, other, pin, layer)
    if bridge.end - bridge.start <= abs(turn):
        return (bridge,)
    rho, phi = _polar(one, pin)
    middle = ((one[0] + other[0]) / 2 - pin[0], (one[1] + other[1]) / 2 - pin[1])
    (deepest,) = turned([(pin[0] + middle[0], pin[1] + middle[1])], pin, turn / 2)
    wider = 1.0 / math.cos(turn / 2)
    notch = (pin[0] + wider * (deepest[0] - pin[0]), pin[1] + wider * (deepest[1] - pin[1]))
    arc = Arc(layer, pin, rho, min(phi, phi + turn), max(phi, phi + turn))
    (end,) = turned([one], pin, turn)
    return (arc, Polyline(layer, (end, notch, other)))


def _falls_back(a: Point, b: Point, pin: Point) -> bool:
    """Whether the way from a to b first leads nearer to the pin."""
    return (a[0] - pin[0]) * (b[0] - a[0]) + (a[1] - pin[1]) * (b[1] - a[1]) < -TOLERANCE


def _out_again(a: Point, b: Point, pin: Point, radius: float) -> Point | None:
    """Return where the way from a to b comes out of a circle about the pin, None where it stays inside."""
    if math.dist(b, pin) < radius - TOLERANCE:
        return None
    d_x, d_y, x, y = b[0] - a[0], b[1] - a[1], a[0] - pin[0], a[1] - pin[1]
    square, half = d_x * d_x + d_y * d_y, x * d_x + y * d_y
    share = (-half + math.sqrt(max(0.0, half * half - square * (x * x + y * y - radius * radius)))) / square
    share = min(share, 1.0)
    return (a[0] + share * d_x, a[1] + share * d_y)


def _bridge(one: Point, other: Point, pin: Point, layer: str) -> Arc:
    (rho, phi), (_, psi) = _polar(one, pin), _polar(other, pin)
    turn = math.remainder(psi - phi, 2 * math.pi)
    start = min(phi, phi + turn)
    return Arc(layer, pin, rho, start, start + abs(turn))


def _holds(corners: tuple[Point, ...], point: Point) -> bool:
    """Whether a convex outline holds a point: it lies to the left of every edge."""
    x, y = point
    return all(
        (x_1 - x_0) * (y - y_0) - (y_1 - y_0) * (x - x_0) >= 0.0
        for (x_0, y_0), (x_1, y_1) in zip(corners, (*corners[1:], corners[0]), strict=True)
    )


def _polar(point: Point, pin: Point) -> tuple[float, float]:
    x, y = point[0] - pin[0], point[1] - pin[1]
    return math.hypot(x, y), math.atan2(y, x)
