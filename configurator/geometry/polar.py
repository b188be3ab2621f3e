"""Parts seen from the pin: corners as radius and angle, edges as lines at a distance.

Everything that turns about the pin is simplest so. A corner at (rho, phi) turned by theta stands rho
cos(theta + phi - alpha) out along a normal at alpha and rho sin(theta + phi - alpha) along its edge, so when
it meets the edge's line is one arc cosine. Inches and radians.
"""

import math
from typing import Any, Final

from configurator.geometry.pin import TOLERANCE, Point
from configurator.geometry.shapes import Shape

TAU: Final = 2 * math.pi

PolarCorner = tuple[float, float]
"""A corner's distance from the pin, in, and its direction from the pin, radians."""
PolarEdge = tuple[float, float, float, float, float, float]
"""An edge from the pin: its outward normal's direction, the line's distance along it, where it runs.

The direction is alpha, the distance c. Then start and end, which count along the edge from the foot of the
pin's perpendicular; near and far, the least and greatest distance of its points from the pin. alpha in
radians, the rest in inches. Plain tuples, because a study makes some hundreds.
"""


class PolarShape:
    """A closed part's shape from a pin; corners and edges are worked out when they are first asked for.

    Most parts never come near each other, which their least and greatest distance from the pin tells.
    """

    __slots__ = ("_upright", "box", "corners", "edges", "far", "near", "pin", "shape")

    shape: Shape
    pin: Point
    corners: tuple[PolarCorner, ...]
    edges: tuple[PolarEdge, ...]
    #: Between them lies every point's distance from the pin, radius counted, in.
    near: float
    far: float
    #: x least, x greatest, y least, y greatest, radius counted.
    box: tuple[float, float, float, float]

    def __init__(self, pin: Point, shape: Shape) -> None:
        self.pin, self.shape = pin, shape
        p_x, p_y = pin
        points, r = shape.points, shape.radius
        self._upright = _is_upright(points)
        if self._upright:
            (left, low), _, (right, high), _ = points
            self.box = (left - r, right + r, low - r, high + r)
            left, right, low, high = left - p_x, right - p_x, low - p_y, high - p_y
            across = left if left > 0.0 else -right if right < 0.0 else 0.0
            up = low if low > 0.0 else -high if high < 0.0 else 0.0
            self.near = max(0.0, math.hypot(across, up) - r)
            self.far = math.hypot(right if right > -left else left, high if high > -low else low) + r
        elif len(points) == 1:
            ((x, y),) = points
            rho = math.hypot(x - p_x, y - p_y)
            self.near, self.far = max(0.0, rho - r), rho + r
            self.box = (x - r, x + r, y - r, y + r)
        else:
            xs, ys = [x for x, _ in points], [y for _, y in points]
            self.box = (min(xs) - r, max(xs) + r, min(ys) - r, max(ys) + r)
            self.near = max(0.0, _nearest(self.edges) - r)
            self.far = max([rho for rho, _ in self.corners]) + r

    def __getattr__(self, name: str) -> Any:
        if name not in ("corners", "edges"):
            raise AttributeError(name)
        self._see()
        return getattr(self, name)

    def _see(self) -> None:
        p_x, p_y = self.pin
        points = self.shape.points
        if self._upright:
            (left, low), _, (right, high), _ = points
            self.corners, self.edges = _upright(left - p_x, right - p_x, low - p_y, high - p_y)
            return
        around = [(x - p_x, y - p_y) for x, y in points]
        self.corners = tuple([(math.hypot(x, y), math.atan2(y, x)) for x, y in around])
        self.edges = () if len(points) == 1 else _polar_edges(around, self.corners)

    def __eq__(self, other: object) -> bool:
        """Two parts are the same where shape and pin are, for all else follows."""
        return isinstance(other, PolarShape) and (self.pin, self.shape) == (other.pin, other.shape)

    def __hash__(self) -> int:
        return hash((self.pin, self.shape))

    def __reduce__(self) -> Any:
        return PolarShape, (self.pin, self.shape)


def _polar_edges(around: list[Point], corners: tuple[PolarCorner, ...]) -> tuple[PolarEdge, ...]:
    """The edges between corners given relative to the pin, each from the one before; none between equals."""
    edges = []
    x_0, y_0 = around[-1]
    rho_0 = corners[-1][0]
    for (x_1, y_1), (rho_1, _) in zip(around, corners, strict=True):
        d_x, d_y = x_1 - x_0, y_1 - y_0
        length = math.hypot(d_x, d_y)
        if length == 0.0:
            continue
        n_x, n_y = d_y / length, -d_x / length
        c = n_x * x_0 + n_y * y_0
        start, end = n_x * y_0 - n_y * x_0, n_x * y_1 - n_y * x_1
        near, far = _bounds(rho_0, rho_1, c, start <= 0.0 <= end)
        edges.append((math.atan2(n_y, n_x), c, start, end, near, far))
        x_0, y_0, rho_0 = x_1, y_1, rho_1
    return tuple(edges)


def _upright(
    left: float, right: float, low: float, high: float
) -> tuple[tuple[PolarCorner, ...], tuple[PolarEdge, ...]]:
    """Corners and edges of an upright rectangle about the pin, from its lower left corner.

    As `_polar_edges` has them, but the edges' directions are known.
    """
    hypot, atan2 = math.hypot, math.atan2
    rho_0, rho_1, rho_2, rho_3 = hypot(left, low), hypot(right, low), hypot(right, high), hypot(left, high)
    beside, over = low <= 0.0 <= high, left <= 0.0 <= right
    return (
        (rho_0, atan2(low, left)),
        (rho_1, atan2(low, right)),
        (rho_2, atan2(high, right)),
        (rho_3, atan2(high, left)),
    ), (
        (math.pi, -left, -high, -low, *_bounds(rho_3, rho_0, -left, beside)),
        (-math.pi / 2, -low, left, right, *_bounds(rho_0, rho_1, -low, over)),
        (0.0, right, low, high, *_bounds(rho_1, rho_2, right, beside)),
        (math.pi / 2, high, -right, -left, *_bounds(rho_2, rho_3, high, over)),
    )


def _bounds(rho_0: float, rho_1: float, c: float, passes: bool) -> tuple[float, float]:
    """How near and how far the points of an edge are, between corners at rho_0 and rho_1.

    passes: the foot of the pin's perpendicular, c off, lies on it.
    """
    if rho_0 < rho_1:
        return abs(c) if passes else rho_0, rho_1
    return abs(c) if passes else rho_1, rho_0


def _is_upright(points: tuple[Point, ...]) -> bool:
    """Whether a polygon is an upright rectangle from its lower left corner, as `rectangle` lists it."""
    if len(points) != 4:
        return False
    (x_0, y_0), (x_1, y_1), (x_2, y_2), (x_3, y_3) = points
    return x_0 == x_3 < x_1 == x_2 and y_0 == y_1 < y_2 == y_3


def _nearest(edges: tuple[PolarEdge, ...]) -> float:
    """How near a polygon comes to the pin, 0 with the pin inside."""
    inside, least = True, math.inf
    for _, c, _, _, near, _ in edges:
        if c < 0.0:
            inside = False
        if near < least:
            least = near
    return 0.0 if inside else least


def seen_from(pin: Point, shape: Shape) -> PolarShape:
    """A shape as it stands about the pin, closed."""
    return PolarShape(pin, shape)


def crossings(moving: PolarShape, standing: PolarShape) -> tuple[list[float], list[float]]:
    """Every angle at which a corner of one part crosses the outline of the other.

    Radians in [0, 2 pi), unsorted: first as the moving part turns into the other, then as it turns out of it.
    """
    r = moving.shape.radius + standing.shape.radius
    into: list[float] = []
    out_of: list[float] = []
    _corners_over_edges(moving.corners, standing.edges, r, 1.0, into, out_of)
    _corners_over_edges(standing.corners, moving.edges, r, -1.0, into, out_of)
    if r > 0.0:
        _corners_round_corners(moving.corners, standing.corners, r, into, out_of)
    return into, out_of


def _corners_over_edges(
    corners: tuple[PolarCorner, ...],
    edges: tuple[PolarEdge, ...],
    r: float,
    turn: float,
    into: list[float],
    out_of: list[float],
) -> None:
    """Corners of one part against edges of the other, r off the edge; turn -1 for corners that stand."""
    reach = r + TOLERANCE
    for alpha, c, start, end, near, far in edges:
        out = c + r
        least, most = max(near - reach, abs(out)), far + reach
        low, high = start - TOLERANCE, end + TOLERANCE
        for rho, phi in corners:
            if rho < least or rho > most or rho == 0.0:
                continue
            along = turn * math.sqrt(rho * rho - out * out)
            if low <= along <= high:
                into.append((turn * (alpha - phi) + math.acos(out / rho)) % TAU)
            if low <= -along <= high:
                out_of.append((turn * (alpha - phi) - math.acos(out / rho)) % TAU)


def _corners_round_corners(
    moving: tuple[PolarCorner, ...],
    standing: tuple[PolarCorner, ...],
    r: float,
    into: list[float],
    out_of: list[float],
) -> None:
    """Corners (or round centres) that come within r of each other."""
    for rho_m, phi_m in moving:
        for rho_s, phi_s in standing:
            twice = 2 * rho_m * rho_s
            if twice == 0.0:
                continue
            cosine = (rho_m * rho_m + rho_s * rho_s - r * r) / twice
            if -1.0 <= cosine <= 1.0:
                half = math.acos(cosine)
                into.append((phi_s - phi_m - half) % TAU)
                out_of.append((phi_s - phi_m + half) % TAU)


def cosine_and_sine(theta: float) -> tuple[float, float]:
    """Cosine and sine, exact at 90 and 180 degrees, so that lengths there keep their 1/64ths."""
    if theta == math.pi / 2:
        return 0.0, 1.0
    if theta == math.pi:
        return -1.0, 0.0
    return math.cos(theta), math.sin(theta)


def turned(pin: Point, part: PolarShape, theta: float) -> tuple[Point, ...]:
    """The corners of a part turned about the pin by theta, in."""
    x, y = pin
    return tuple(
        (x + rho * math.cos(phi + theta), y + rho * math.sin(phi + theta)) for rho, phi in part.corners
    )


def corners_within(
    corners: tuple[PolarCorner, ...], edges: tuple[PolarEdge, ...], theta: float, margin: float
) -> list[int]:
    """Which corners, turned by theta, lie in a polygon or no farther than margin off its edges' lines."""
    return [
        place
        for place, (rho, phi) in enumerate(corners)
        if max([rho * math.cos(phi + theta - edge[0]) - edge[1] for edge in edges]) <= margin
    ]


def separation(moving: PolarShape, standing: PolarShape, theta: float) -> float:
    """How far apart two parts are with the door at theta, in; negative by how deep they overlap.

    Exact for overlap, and for straight parts in sign only while they are apart: then never more than the
    distance.
    """
    apart = max(
        _greatest_least_out(moving.corners, standing.edges, theta),
        _greatest_least_out(standing.corners, moving.edges, -theta),
    )
    r = moving.shape.radius + standing.shape.radius
    if apart == -math.inf or (apart > 0.0 and r > 0.0):
        apart = core_distance(moving, standing, theta)
    return apart - r


def overlaps(moving: PolarShape, standing: PolarShape, theta: float) -> bool:
    """Whether two parts overlap past the tolerance with the door at theta: as `separation`, but sooner."""
    r = moving.shape.radius + standing.shape.radius
    if r > 0.0 or not moving.edges or not standing.edges:
        return separation(moving, standing, theta) < -TOLERANCE
    return _none_beyond(moving.corners, standing.edges, theta) and _none_beyond(
        standing.corners, moving.edges, -theta
    )


def _none_beyond(corners: tuple[PolarCorner, ...], edges: tuple[PolarEdge, ...], theta: float) -> bool:
    """Whether there is no edge that all the corners lie beyond, or no deeper behind than the tolerance."""
    cos = math.cos
    polar = [(rho, phi + theta) for rho, phi in corners]
    for edge in edges:
        alpha, c = edge[0], edge[1]
        for rho, at in polar:
            if rho * cos(at - alpha) - c < -TOLERANCE:
                break
        else:
            return False
    return True


def _greatest_least_out(
    corners: tuple[PolarCorner, ...], edges: tuple[PolarEdge, ...], theta: float
) -> float:
    """How far the nearest corner stands beyond an edge's line, of the edge where that is most."""
    if not edges:
        return -math.inf
    cos = math.cos
    polar = [(rho, phi + theta) for rho, phi in corners]
    return max([min([rho * cos(at - edge[0]) for rho, at in polar]) - edge[1] for edge in edges])


def core_distance(moving: PolarShape, standing: PolarShape, theta: float) -> float:
    """Exact least distance between two cores that do not overlap, radii left out, in."""
    best = _distance_to_edges(moving.corners, standing.edges, theta)
    best = min(best, _distance_to_edges(standing.corners, moving.edges, -theta))
    for rho_m, phi_m in moving.corners:
        for rho_s, phi_s in standing.corners:
            if abs(rho_m - rho_s) < best:
                best = min(best, _between(rho_m, rho_s, phi_m + theta - phi_s))
    return best


def _between(rho_m: float, rho_s: float, angle: float) -> float:
    """Distance of two points at an angle to each other about the pin, without cancellation."""
    half = math.sin(angle / 2)
    return math.hypot(rho_m - rho_s, 2 * half * math.sqrt(rho_m * rho_s))


def _distance_to_edges(corners: tuple[PolarCorner, ...], edges: tuple[PolarEdge, ...], theta: float) -> float:
    """Least distance of corners from the edges that they stand in front of; rounding puts none behind."""
    best = math.inf
    for rho, phi in corners:
        for alpha, c, start, end, near, far in edges:
            if rho - far >= best or near - rho >= best:
                continue
            u = phi + theta - alpha
            out = rho * math.cos(u) - c
            if -TOLERANCE <= out < best and start <= rho * math.sin(u) <= end:
                best = max(out, 0.0)
    return best
