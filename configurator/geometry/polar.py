"""Parts seen from the pin: corners as radius and angle, edges as lines at a distance.

Everything that turns about the pin is simplest so. A corner at (rho, phi) turned by theta stands rho
cos(theta + phi - alpha) out along a normal at alpha and rho sin(theta + phi - alpha) along its edge, so when
it meets the edge's line is one arc cosine. Inches and radians.
"""

import math
from typing import Final, NamedTuple

from configurator.geometry.pin import TOLERANCE
from configurator.geometry.shapes import Point, Shape

TAU: Final = 2 * math.pi


class PolarCorner(NamedTuple):
    """A corner's distance from the pin, in, and its direction from the pin, radians."""

    rho: float
    phi: float


class PolarEdge(NamedTuple):
    """An edge from the pin: its outward normal's direction, the line's distance along it, where it runs.

    start and end count along the edge from the foot of the pin's perpendicular; near and far are the least
    and greatest distance of its points from the pin. alpha in radians, the rest in inches.
    """

    alpha: float
    c: float
    start: float
    end: float
    near: float
    far: float


class PolarShape(NamedTuple):
    """A shape from the pin; near and far bound its distance from the pin with its radius counted, in."""

    shape: Shape
    corners: tuple[PolarCorner, ...]
    edges: tuple[PolarEdge, ...]
    near: float
    far: float
    #: x least, x greatest, y least, y greatest with the part closed, radius counted.
    box: tuple[float, float, float, float]


def _polar_edges(around: list[Point], rhos: list[float]) -> tuple[PolarEdge, ...]:
    """The edges between corners given relative to the pin, each from the one before; none between equals."""
    edges = []
    x_0, y_0 = around[-1]
    rho_0 = rhos[-1]
    for (x_1, y_1), rho_1 in zip(around, rhos, strict=True):
        d_x, d_y = x_1 - x_0, y_1 - y_0
        length = math.hypot(d_x, d_y)
        if length == 0.0:
            continue
        n_x, n_y = d_y / length, -d_x / length
        c = n_x * x_0 + n_y * y_0
        start, end = n_x * y_0 - n_y * x_0, n_x * y_1 - n_y * x_1
        near, far = (rho_0, rho_1) if rho_0 < rho_1 else (rho_1, rho_0)
        if start <= 0.0 <= end:
            near = abs(c)
        edges.append(PolarEdge(math.atan2(n_y, n_x), c, start, end, near, far))
        x_0, y_0, rho_0 = x_1, y_1, rho_1
    return tuple(edges)


def _upright_edges(around: list[Point], rhos: list[float]) -> tuple[PolarEdge, ...]:
    """`_polar_edges` for an upright rectangle from its lower left corner, whose directions are known."""
    (left, low), _, (right, high), _ = around
    rho_0, rho_1, rho_2, rho_3 = rhos
    return (
        _upright_edge(math.pi, -left, -high, -low, rho_3, rho_0),
        _upright_edge(-math.pi / 2, -low, left, right, rho_0, rho_1),
        _upright_edge(0.0, right, low, high, rho_1, rho_2),
        _upright_edge(math.pi / 2, high, -right, -left, rho_2, rho_3),
    )


def _upright_edge(alpha: float, c: float, start: float, end: float, rho_0: float, rho_1: float) -> PolarEdge:
    """One edge between two corners at distances rho_0 and rho_1 from the pin."""
    near, far = (rho_0, rho_1) if rho_0 < rho_1 else (rho_1, rho_0)
    if start <= 0.0 <= end:
        near = abs(c)
    return PolarEdge(alpha, c, start, end, near, far)


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


def _box(points: tuple[Point, ...], r: float, *, upright: bool) -> tuple[float, float, float, float]:
    """The upright box around a polygon, its radius counted."""
    if upright:
        (left, low), _, (right, high), _ = points
        return left - r, right + r, low - r, high + r
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs) - r, max(xs) + r, min(ys) - r, max(ys) + r


def seen_from(pin: Point, shape: Shape) -> PolarShape:
    """A shape as it stands about the pin, closed."""
    p_x, p_y = pin
    points, r = shape.points, shape.radius
    around = [(x - p_x, y - p_y) for x, y in points]
    rhos = [math.hypot(x, y) for x, y in around]
    corners = tuple([PolarCorner(rho, math.atan2(y, x)) for rho, (x, y) in zip(rhos, around, strict=True)])
    if len(points) == 1:
        ((x, y),), (rho,) = points, rhos
        return PolarShape(shape, corners, (), max(0.0, rho - r), rho + r, (x - r, x + r, y - r, y + r))
    upright = _is_upright(points)
    edges = _upright_edges(around, rhos) if upright else _polar_edges(around, rhos)
    near, box = max(0.0, _nearest(edges) - r), _box(points, r, upright=upright)
    return PolarShape(shape, corners, edges, near, max(rhos) + r, box)


def crossings(moving: PolarShape, standing: PolarShape, sense: int) -> list[float]:
    """Every angle at which a corner of one part crosses the outline of the other.

    Radians in [0, 2 pi), unsorted. sense +1: as the moving part turns into the other; -1: as it turns out of
    it.
    """
    r = moving.shape.radius + standing.shape.radius
    angles = _corners_over_edges(moving.corners, standing.edges, r, sense, moving_corners=True)
    angles += _corners_over_edges(standing.corners, moving.edges, r, sense, moving_corners=False)
    if r > 0.0:
        angles += _corners_round_corners(moving.corners, standing.corners, r, sense)
    return angles


def _corners_over_edges(
    corners: tuple[PolarCorner, ...],
    edges: tuple[PolarEdge, ...],
    r: float,
    sense: int,
    *,
    moving_corners: bool,
) -> list[float]:
    """Corners of one part against edges of the other, r off the edge; a corner that stands turns backward."""
    found = []
    turn = 1.0 if moving_corners else -1.0
    side = turn * sense
    for rho, phi in corners:
        for alpha, c, start, end, near, far in edges:
            out = c + r
            if rho < near - r - TOLERANCE or rho > far + r + TOLERANCE or abs(out) > rho or rho == 0.0:
                continue
            along = side * math.sqrt(rho * rho - out * out)
            if start - TOLERANCE <= along <= end + TOLERANCE:
                found.append((turn * (alpha - phi) + sense * math.acos(out / rho)) % TAU)
    return found


def _corners_round_corners(
    moving: tuple[PolarCorner, ...], standing: tuple[PolarCorner, ...], r: float, sense: int
) -> list[float]:
    """Corners (or round centres) that come within r of each other."""
    found = []
    for rho_m, phi_m in moving:
        for rho_s, phi_s in standing:
            twice = 2 * rho_m * rho_s
            if twice == 0.0:
                continue
            cosine = (rho_m * rho_m + rho_s * rho_s - r * r) / twice
            if -1.0 <= cosine <= 1.0:
                found.append((phi_s - phi_m - sense * math.acos(cosine)) % TAU)
    return found


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
