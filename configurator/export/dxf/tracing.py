"""Lines of another's drawing laid into ours: a background under a plan, or the outline of a frame.

A drawing has a point that falls on the corner of the hinge jamb where the frame face on the pull side meets
the rabbet face, a turn that puts the pull side up, and a unit. What comes out is in inches from that corner,
x to the right and y up, as the opening is seen from above with its pull side up.
"""

import math
from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from pydantic import ValidationError

from configurator.drawing.base.clip import clip_polyline
from configurator.drawing.base.primitives import Point
from configurator.drawing.base.view import Box
from configurator.drawing.plan.drawn_leaf import TURNS_CLOCKWISE
from configurator.export.dxf.reading import INCHES, ForeignDrawing
from configurator.model import Background, Frame, Opening
from configurator.model.faults import faults_of
from configurator.model.opening import LONGEST_TRACE, MOST_TRACES
from configurator.model.outline import sizes_of
from configurator.rules.wording import counted

USES = ("background", "outline")
"""What lines may become: the background of a plan, or the outline of a frame."""
REACH = 180.0
"""A background is kept this far about the corner, inches: 15 ft."""
_MEET = 0.01
"""Lines of an outline that end so near one another meet there, inches."""
_PLACES = 3
_OTHER_HAND = "a drawing of the other hand is mirrored first"


@dataclass(frozen=True, slots=True)
class Placing:
    """How a drawing lies: the point of it that is the corner, degrees it is turned, its unit, its layers."""

    at: Point
    unit: str
    layers: tuple[str, ...]
    turned: float = 0.0
    mirrored: bool = False


def placed_lines(drawing: ForeignDrawing, placing: Placing) -> Iterator[list[Point]]:
    """Yield the lines of the chosen layers in inches from the corner.

    Raises ValueError for a layer that has no lines, and where no unit is given.
    """
    if placing.unit not in INCHES:
        raise ValueError(f"the drawing does not say its unit; it is one of {', '.join(INCHES)}")
    if missing := [name for name in placing.layers if name not in drawing.layers]:
        raise ValueError(f"there is no line on layer {missing[0]}; there are {', '.join(drawing.layers)}")
    scale, turn = INCHES[placing.unit], math.radians(placing.turned)
    c, s, hand = scale * math.cos(turn), scale * math.sin(turn), -1.0 if placing.mirrored else 1.0
    x_0, y_0 = placing.at
    for line in drawing.lines:
        if line.layer in placing.layers:
            moved = [(x - x_0, y - y_0) for x, y in line.points]
            yield [(hand * (c * x - s * y), s * x + c * y) for x, y in moved]


def traced(opening: Opening, use: str, drawing: ForeignDrawing, placing: Placing) -> tuple[Opening, str]:
    """Return an opening with a drawing's lines as its `background` or its frame's `outline`, and how many.

    Raises ValueError, in words, where they cannot be that.
    """
    if use == USES[0]:
        found = background_of(drawing, placing)
        return opening.model_copy(update={"background": found}), counted(len(found.lines), "line", "lines")
    hand = -1.0 if opening.hand in TURNS_CLOCKWISE else 1.0
    points = [(hand * x + 0.0, y) for x, y in outline_of(drawing, placing)]
    points = [(0.0, 0.0) if math.hypot(x, y) <= _MEET else (x, y) for x, y in points]
    _face_runs_away(points)
    given = opening.frame.model_dump(exclude_unset=True)
    replaced = [name for name in sizes_of(tuple(points)) if given.pop(name, None) is not None]
    try:
        frame = Frame.model_validate({**given, "outline": points if hand > 0 else points[::-1]})
    except ValidationError as error:
        raise ValueError(f"{faults_of(error, Frame)[0].message}; {_OTHER_HAND}") from None
    instead = f", in place of {', '.join(map(_in_words, replaced))}" if replaced else ""
    return opening.model_copy(update={"frame": frame}), f"{len(points)} corners{instead}"


def _face_runs_away(points: Sequence[Point]) -> None:
    """Raise ValueError where the frame's face, from the corner, runs into the opening: the other hand."""
    if (0.0, 0.0) in points:
        index = points.index((0.0, 0.0))
        beside = (points[index - 1], points[(index + 1) % len(points)])
        if any(abs(y) <= _MEET < x for x, y in beside):
            raise ValueError(f"the frame's face runs into the opening; {_OTHER_HAND}")


def _in_words(name: str) -> str:
    return name.replace("_", " ")


def background_of(drawing: ForeignDrawing, placing: Placing) -> Background:
    """Return the lines of a drawing as the background of a plan.

    Raises ValueError where none lies about the door, or more than a file may keep.
    """
    window = Box(-REACH, -REACH, REACH, REACH)
    pieces = [piece for line in placed_lines(drawing, placing) for piece in clip_polyline(line, window)]
    traces = tuple(dict.fromkeys(trace for piece in pieces for trace in _traces(piece)))
    if not traces:
        raise ValueError(
            "no line of these layers lies within 15 ft of the corner; the point or the unit may be wrong"
        )
    if len(traces) > MOST_TRACES:
        raise ValueError(
            f"{len(traces):,} lines lie about the door; up to {MOST_TRACES:,} are kept: choose fewer layers"
        )
    return Background(drawing=drawing.name, layers=placing.layers, lines=traces)


def _traces(piece: Sequence[Point]) -> Iterator[str]:
    """Yield a line as texts of points that a file keeps, each beginning where the one before ends."""
    words = [word for word, _ in groupby(f"{_number(x)},{_number(y)}" for x, y in piece)]
    begun: list[str] = []
    for word in words:
        if begun and sum(map(len, begun)) + len(begun) + len(word) > LONGEST_TRACE:
            yield " ".join(begun)
            begun = begun[-1:]
        begun.append(word)
    if len(begun) > 1:
        yield " ".join(begun)


def _number(value: float) -> str:
    return f"{round(value, _PLACES) + 0.0:.{_PLACES}f}".rstrip("0").rstrip(".")


def outline_of(drawing: ForeignDrawing, placing: Placing) -> tuple[Point, ...]:
    """Return the one outline that the lines of the chosen layers make, counter-clockwise, its start once.

    Raises ValueError where they do not close, or make several.
    """
    loops = list(_loops([line for line in placed_lines(drawing, placing) if len(set(line)) > 1]))
    if len(loops) != 1:
        raise ValueError(
            f"the lines of {_listed(placing.layers)} make {len(loops)} outlines; choose a layer with one"
        )
    (loop,) = loops
    points = [(round(x, _PLACES) + 0.0, round(y, _PLACES) + 0.0) for x, y in loop]
    points = [point for index, point in enumerate(points) if point != points[index - 1]]
    return tuple(points if _area(points) > 0 else points[::-1])


def _loops(lines: list[list[Point]]) -> Iterator[list[Point]]:
    """Join lines end to end into outlines. Raises ValueError where one stays open."""
    ends: dict[tuple[int, int], list[int]] = defaultdict(list)
    for index, line in enumerate(lines):
        for end in (line[0], line[-1]):
            ends[_cell(end)].append(index)
    left = set(range(len(lines)))
    while left:
        index = min(left)
        left.remove(index)
        yield _joined(list(lines[index]), lines, ends, left)


def _joined(
    chain: list[Point], lines: list[list[Point]], ends: dict[tuple[int, int], list[int]], left: set[int]
) -> list[Point]:
    while math.dist(chain[0], chain[-1]) > _MEET or len(chain) < 3:
        following = next(_next(chain[-1], lines, ends, left), None)
        if following is None:
            x, y = chain[-1]
            raise ValueError(f"the outline is open at {x:.3f}, {y:.3f} in from the corner")
        left.remove(following)
        line = lines[following]
        chain += line[1:] if math.dist(chain[-1], line[0]) <= _MEET else line[-2::-1]
    return chain[:-1]


def _next(
    at: Point, lines: list[list[Point]], ends: dict[tuple[int, int], list[int]], left: Collection[int]
) -> Iterator[int]:
    across, up = _cell(at)
    for x in (across - 1, across, across + 1):
        for y in (up - 1, up, up + 1):
            for index in ends.get((x, y), ()):
                line = lines[index]
                if index in left and min(math.dist(at, line[0]), math.dist(at, line[-1])) <= _MEET:
                    yield index


def _cell(point: Point) -> tuple[int, int]:
    return math.floor(point[0] / _MEET), math.floor(point[1] / _MEET)


def _area(points: Sequence[Point]) -> float:
    shifted = [*points[1:], points[0]]
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, shifted, strict=True)) / 2


def _listed(names: Sequence[str]) -> str:
    return f"layer {names[0]}" if len(names) == 1 else f"layers {', '.join(names)}"
