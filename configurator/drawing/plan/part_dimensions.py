"""Dimensions of frame, wall, and what stands along it: shown by kind where somebody asks for them.

Each is measured where the part is drawn. Those along the wall stand in rows below it, those across it in
columns beside the frame. What has no room for its words is left to hovering and the form.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace

from configurator.drawing.base.dimension_strokes import line_boxes
from configurator.drawing.base.lettering import Room, text_box, text_width
from configurator.drawing.base.primitives import Dimension, Point
from configurator.drawing.base.view import Box, View
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.rules.wording import obstruction
from configurator.units import TOLERANCE, Display

KINDS = {
    "frame": "Face, rabbet, stop, throat and depth of the frame",
    "wall": "The wall and its layers",
    "things": "How far what stands along the wall is from the frame, and how far it stands out",
}
"""The kinds of dimensions there are to show, and what each is of."""
STANDS_OUT = " stands out"
_ROWS = tuple(10.0 + 11.0 * row for row in range(6))
_COLUMNS = tuple(10.0 + 13.0 * column for column in range(9))
_BESIDE = 3.0
_THICKEST_LINE = 3.0
"""Of what is taken, what is thinner is a line, which another may cross; points."""


@dataclass(frozen=True, slots=True)
class Part:
    """One length of a part, in plan from one point to another, and what it is called."""

    a: Point
    b: Point
    name: str

    @property
    def is_along(self) -> bool:
        """Whether it is measured along the wall and not across it."""
        return abs(self.a[1] - self.b[1]) < TOLERANCE

    @property
    def value(self) -> float:
        """How long it is, inches."""
        return abs(self.a[0] - self.b[0]) + abs(self.a[1] - self.b[1])


def parts_of(hung: DrawnLeaf, kinds: Collection[str]) -> tuple[Part, ...]:
    """Return every length of the kinds that an opening has."""
    makers = {"frame": _of_frame, "wall": _of_wall, "things": _of_things}
    found = (part for kind, make in makers.items() if kind in kinds for part in make(hung))
    return tuple(part for part in found if part.value > TOLERANCE)


def _of_frame(hung: DrawnLeaf) -> Iterator[Part]:
    h, returns = hung.h, hung.filled.return_depth
    yield Part((-h.F, -h.D), (0.0, -h.D), "frame face")
    yield Part((0.0, -h.D), (h.s, -h.D), "stop height")
    yield Part((0.0, 0.0), (0.0, -h.R), "rabbet")
    yield Part((-h.F, 0.0), (-h.F, -h.D), "jamb depth")
    if returns > TOLERANCE and 2 * returns < h.D:
        yield Part((-h.F, -returns), (-h.F, returns - h.D), "throat")


def _of_wall(hung: DrawnLeaf) -> Iterator[Part]:
    left, top = -hung.h.F, hung.wall_face
    if len(hung.layers) > 1:
        yield Part((left, top), (left, top - hung.wall_depth), "wall thickness")
    for name, thickness in hung.layers:
        yield Part((left, top), (left, top - thickness), name)
        top -= thickness


def _of_things(hung: DrawnLeaf) -> Iterator[Part]:
    edge, face = -hung.h.F, hung.wall_face
    for thing in hung.standing:
        points = [point for shape in thing.shapes for point in shape.points if not shape.radius]
        if not points:
            continue
        near, out = max(x for x, _ in points), max(y for _, y in points)
        name = obstruction(thing.kind)
        yield Part((near, face), (edge, face), f"{name} from the frame")
        yield Part((near, face), (near, out), f"{name}{STANDS_OUT}")


def part_dimensions(
    hung: DrawnLeaf,
    view: View,
    display: Display,
    kinds: Collection[str],
    size: float,
    room: Room,
    words: list[Box],
    lines: list[Box],
    drawn: list[Box],
) -> list[Dimension]:
    """Return the dimensions of some kinds that find room, and take that room.

    What is lettered keeps off what is taken, `words`, `lines` and what is `drawn`; its lines keep
    off what is lettered, and from running along others.
    """
    keep_off = [*words, *lines, *drawn]
    placed: list[Dimension] = []
    for part in parts_of(hung, kinds):
        for found in _ways(part, hung, view, display, size):
            box = text_box(view.to_sheet(found.text_at), found.text, size, "middle")
            own = line_boxes([found], view)
            if not room.is_free(box) or any(box.overlaps(other) for other in keep_off):
                continue
            if _crossed(own, [*words, *room.taken, box]) or _runs_along(own[-1], [*lines, *room.taken]):
                continue
            room.taken += [box, *own]
            placed.append(found)
            break
    return placed


def _crossed(lines: list[Box], taken: list[Box]) -> bool:
    """Whether a line runs through words."""
    words = [other for other in taken if min(other.width, other.height) > _THICKEST_LINE]
    return any(line.overlaps(other) for line in lines for other in words)


def _runs_along(own: Box, lines: list[Box]) -> bool:
    """Whether a dimension's own line lies on another line of the same direction."""
    around, upright = own.shrunk(-0.5), own.height > own.width
    return any(around.overlaps(line) for line in lines if (line.height > line.width) == upright)


def bare(one: Dimension, view: View) -> Dimension:
    """Return a placed dimension with its number alone, which stands as near its line as the words did."""
    number = one.text.removesuffix(f" {one.name}")
    x, y = one.text_at
    left, right = sorted((one.line_a[0], one.line_b[0]))
    shorter = (text_width(one.text, one.size) - text_width(number, one.size)) / 2 / view.scale
    x += 0.0 if left < x < right else shorter if x <= left else -shorter
    return replace(one, text=number, text_at=(x, y))


def _ways(part: Part, hung: DrawnLeaf, view: View, display: Display, size: float) -> Iterator[Dimension]:
    """Yield the places a dimension may have: named in full before its number alone, near before far."""
    number = display.length(part.value)
    for text in (f"{number} {part.name}", number):
        if part.is_along:
            yield from _rows(part, hung, view, text, size)
        else:
            yield from _columns(part, hung, view, text, size)


def _rows(part: Part, hung: DrawnLeaf, view: View, text: str, size: float) -> Iterator[Dimension]:
    far = view.to_sheet((0.0, min(hung.wall_face - hung.wall_depth, -hung.h.D)))[1]
    half = text_width(text, size) / 2
    (left, _), (right, _) = sorted(map(view.to_sheet, (part.a, part.b)))
    for row in _ROWS:
        low = view.to_plan((0.0, far - row))[1]
        for middle in ((left + right) / 2, left - half - 14.0, right + half + 14.0):
            at = (middle, far - row + (2.0 if left < middle < right else -size / 3))
            if left < middle < right and 2 * half + 4.0 > right - left and row == _ROWS[0]:
                continue
            yield _dimension(part, (part.a[0], low), (part.b[0], low), text, view.to_plan(at), size)


def _columns(part: Part, hung: DrawnLeaf, view: View, text: str, size: float) -> Iterator[Dimension]:
    half = text_width(text, size) / 2
    (_, low), (_, high) = sorted((view.to_sheet(part.a), view.to_sheet(part.b)), key=lambda at: at[1])
    starts: tuple[tuple[float, float], ...] = ((-hung.h.F, -view.hand), (hung.h.s, view.hand))
    if part.name.endswith(STANDS_OUT):  # beside the thing: from farther off its lines run through the hinge
        starts = ((part.a[0], view.hand),)
    for edge, side in starts:
        start = view.to_sheet((edge, 0.0))[0]
        for column in _COLUMNS:
            x = start + side * column
            across = view.to_plan((x, 0.0))[0]
            for middle in (0.5, 0.75, 0.25):
                at = (x + side * (half + _BESIDE), low + middle * (high - low) - size / 3)
                yield _dimension(part, (across, part.a[1]), (across, part.b[1]), text, view.to_plan(at), size)


def _dimension(part: Part, line_a: Point, line_b: Point, text: str, at: Point, size: float) -> Dimension:
    return Dimension(
        "A-ANNO-DIMS", part.a, part.b, line_a, line_b, text, at, part.name, part.value, 0.0, size,
        explained=f"{part.name}: {text.removesuffix(part.name).strip()}",
    )  # fmt: skip
