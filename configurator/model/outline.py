"""A frame's own outline: corners of its jamb in the axes of the plan, and the sizes that follow from them."""

from collections.abc import Sequence

from configurator.model.fields import Length
from configurator.units import TOLERANCE

Corner = tuple[Length, Length]


def sizes_of(outline: tuple[Corner, ...]) -> dict[str, float]:
    """Return the sizes that follow from a frame's outline by the fields they stand for; inches."""
    into = [y for x, y in outline if x > TOLERANCE]
    depth = -min(y for _, y in outline)
    rabbet = -max(into, default=-depth)
    return {
        "face": -min(x for x, _ in outline),
        "rabbet": rabbet,
        "stop_height": max(0.0, *(x for x, _ in outline)),
        "jamb_depth": depth,
        "stop_width": -min(into, default=-depth) - rabbet or depth - rabbet,
    }


def outline_fault(outline: tuple[Corner, ...]) -> str:
    """Return what makes an outline no jamb's, in words; empty where it is one."""
    if len(outline) < 4 or _crosses_itself(outline) or abs(_area(outline)) <= TOLERANCE:
        return "a frame's outline has four corners or more, and its sides do not cross"
    if (0.0, 0.0) not in outline:
        return "a frame's outline has a corner 0, 0, where its face meets the rabbet"
    if min(x for x, _ in outline) >= 0.0:
        return "a frame's outline reaches away from the opening, across less than 0"
    return ""


def _area(points: Sequence[Corner]) -> float:
    """The area inside a closed outline, square inches; negative where it runs clockwise."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs) / 2


def _crosses_itself(points: Sequence[Corner]) -> bool:
    """Whether two edges of a closed outline that are no neighbours cross or touch."""
    edges = list(zip(points, (*points[1:], points[0]), strict=True))
    last = len(edges) - 1
    return any(
        _meet(*edges[i], *edges[j])
        for i in range(last)
        for j in range(i + 2, last + 1)
        if (i, j) != (0, last)
    )


def _turn(a: Corner, b: Corner, c: Corner) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _meet(a: Corner, b: Corner, c: Corner, d: Corner) -> bool:
    apart = any(
        max(a[axis], b[axis]) < min(c[axis], d[axis]) or max(c[axis], d[axis]) < min(a[axis], b[axis])
        for axis in (0, 1)
    )  # two edges of one line cross nothing where they lie apart on it
    return not apart and _turn(a, b, c) * _turn(a, b, d) <= 0 and _turn(c, d, a) * _turn(c, d, b) <= 0
