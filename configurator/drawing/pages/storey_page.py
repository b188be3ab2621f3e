"""A plan of one storey of a building model: its walls, and every door with its swing and how it stands."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from configurator.building.records import ModelDoor, Sides, StoreyPlan
from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Arc, Point, Polyline, Primitive, Text
from configurator.drawing.base.view import AS_FRAMED, Box, Framing, Group, View, box_around, paper
from configurator.drawing.pages.page import Page, Paper

STANDINGS: Mapping[str, tuple[str, str, str]] = {
    "": ("A-DOOR-CLSD", "", "not in the job, or not worked out yet"),
    "refused": ("A-ANNO-REDL", "error", "cannot be studied as it is"),
    "fails": ("A-ANNO-REDL", "error", "an error is found"),
    "warns": ("A-ANNO-AXIS", "warning", "a warning is found"),
    "fine": ("A-DOOR", "", "nothing is found against it"),
}
"""How an opening stands, to the layer of its door, the word beside its mark, and the words of a key."""
_MARGIN, _FOOT, _LINE = 18.0, 34.0, 11.0
_LARGEST, _SMALLEST = 7.0, 3.5
_LONGEST_DOOR = 72.0


@dataclass(frozen=True, slots=True)
class StoreySheet:
    """A storey laid out on a sheet, points: what is painted, and where each door is by its global id."""

    groups: tuple[Group, ...]
    doors: Mapping[str, Point]

    def door_at(self, at: Point, within: float = 24.0) -> str:
        """Return the global id of the door nearest to a place of the sheet; empty where none is near."""
        near = min(self.doors, key=lambda key: math.dist(self.doors[key], at), default="")
        return near if near and math.dist(self.doors[near], at) <= within else ""


def storey_sheet(
    storey: StoreyPlan,
    doors: Sequence[ModelDoor],
    named: Mapping[str, tuple[str, str]],
    width: float,
    height: float,
    framing: Framing = AS_FRAMED,
) -> StoreySheet:
    """Lay a storey out on a sheet of points; `named` has each door's mark and standing by its global id."""
    own = [door for door in doors if door.level == storey.name and door.width]
    points = [point for line in storey.lines for point in line] + [door.place[:2] for door in own]
    window = Box(_MARGIN, _FOOT, max(width - _MARGIN, _MARGIN + 1), max(height - _MARGIN, _FOOT + 1))
    view = framing.of(_fitted(box_around(points or [(0.0, 0.0)]), window))
    size = min(max(view.scale * 12.0, _SMALLEST), _LARGEST)
    drawn: list[Primitive] = [Polyline("A-WALL-LAYR", line) for line in storey.lines]
    lettered: list[Primitive] = []
    places = {}
    for door in own:
        mark, standing = named.get(door.global_id, (door.tag or door.name, ""))
        drawn += _door(door, STANDINGS[standing][0])
        at = places[door.global_id] = view.to_sheet(_middle(door))
        if window.has(at):
            behind = view.to_sheet(_placed(door, door.width / 2, _low(door))) if door.width else at
            lettered += _letters(at, behind, door.place[3], (mark, STANDINGS[standing][1]), size)
    whole = paper(width, height)
    groups = (Group(view, tuple(drawn)), Group(whole, (*lettered, *_foot(storey, own, named))))
    return StoreySheet(groups, places)


def storey_page(
    storey: StoreyPlan,
    doors: Sequence[ModelDoor],
    named: Mapping[str, tuple[str, str]],
    on: Paper,
    title: str,
) -> Page:
    """Return a storey as a page to print; its scale is what fits, and it tells none."""
    sheet = storey_sheet(storey, doors, named, *on.points)
    heading = Text("A-ANNO-TTLB", (_MARGIN, on.points[1] - _MARGIN + 2.0), title, 9.0, bold=True)
    furniture = tuple(one for group in sheet.groups[1:] for one in group.primitives)
    plan = sheet.groups[0]
    moved = tuple(_on_sheet(one, plan.view) for one in plan.primitives)
    return Page(f"{storey.name} plan", on, (), (*moved, *furniture, heading))


def _fitted(extent: Box, window: Box) -> View:
    across, up = max(extent.width, 1.0), max(extent.height, 1.0)
    scale = min(window.width / across, window.height / up)
    middle = (extent.left + extent.right) / 2, (extent.bottom + extent.top) / 2
    origin = (
        (window.left + window.right) / 2 - scale * middle[0],
        (window.bottom + window.top) / 2 - scale * middle[1],
    )
    return View(scale, origin, False, window)


def _on_sheet(one: Primitive, view: View) -> Primitive:
    """Return a line or an arc of the plan in points of the paper."""
    if isinstance(one, Arc):
        return Arc(one.layer, view.to_sheet(one.centre), one.radius * view.scale, one.start, one.end)
    assert isinstance(one, Polyline)
    return Polyline(one.layer, tuple(map(view.to_sheet, one.points)), one.closed)


def _door(door: ModelDoor, layer: str) -> Iterator[Primitive]:
    """Yield a door's leaves, open to 90 degrees, with the arcs they sweep; its place where none is known."""
    assert door.width is not None
    face = _face(door)
    yield Polyline(layer, (_placed(door, 0.0, face), _placed(door, door.width, face)))
    for hinge, reach, opens in _leaves(door):
        level = face if opens > 0 else _low(door)
        centre = _placed(door, hinge, level)
        yield Polyline(layer, (centre, _placed(door, hinge, level + opens * abs(reach))))
        closed = door.place[3] + (0.0 if reach > 0 else math.pi)
        opened = door.place[3] + opens * math.pi / 2
        turn = math.remainder(opened - closed, 2 * math.pi)
        first = closed if turn > 0 else opened
        yield Arc("A-DOOR-SWNG", centre, abs(reach), first, first + abs(turn))


def _leaves(door: ModelDoor) -> Iterator[tuple[float, float, int]]:
    """Yield where each leaf hangs in the door's x, how far it reaches from there, and where it opens to."""
    assert door.width is not None
    if door.pair:
        yield 0.0, door.width / 2, 1
        yield door.width, -door.width / 2, 1
    elif (sides := _sides(door)) is not None:
        yield (0.0, door.width, sides[1]) if sides[0] < 0 else (door.width, -door.width, sides[1])


def _sides(door: ModelDoor) -> Sides | None:
    if door.sides is not None:
        return door.sides
    shape = door.shape
    return (shape.hinges, shape.opens) if shape.hinges and shape.opens else None


def _face(door: ModelDoor) -> float:
    return 0.0 if door.wall is None or door.wall.high is None else door.wall.high


def _low(door: ModelDoor) -> float:
    return 0.0 if door.wall is None or door.wall.low is None else door.wall.low


def _placed(door: ModelDoor, x: float, y: float) -> Point:
    left, bottom, _, angle = door.place
    c, s = math.cos(angle), math.sin(angle)
    return left + c * x - s * y, bottom + s * x + c * y


def _middle(door: ModelDoor) -> Point:
    assert door.width is not None
    return _placed(door, door.width / 2, _face(door) + min(door.width, _LONGEST_DOOR) / 3)


def _letters(
    at: Point, behind: Point, angle: float, words: tuple[str, str], size: float
) -> Iterator[Primitive]:
    """Yield a mark in the swing, and how it stands on the other side of the wall, uncrossed."""
    mark, standing = words
    yield Text("A-ANNO-TEXT", at, mark, size, "middle", bold=True)
    if standing:
        off, wide = 1.1 * size, text_width(standing, 0.85 * size) / 2
        x, y = behind[0] + math.sin(angle) * (off + wide - 0.4 * size), behind[1] - math.cos(angle) * off
        yield Text("A-ANNO-REDL", (x, y - 0.3 * size), standing, 0.85 * size, "middle")


def _foot(
    storey: StoreyPlan, doors: Sequence[ModelDoor], named: Mapping[str, tuple[str, str]]
) -> Iterator[Primitive]:
    """Yield the name of the storey, and the key: how many doors stand how."""
    counts: dict[str, int] = {}
    for door in doors:
        standing = named.get(door.global_id, ("", ""))[1]
        counts[standing] = counts.get(standing, 0) + 1
    name = storey.name or "Storey without a name"
    yield Text(
        "A-ANNO-TTLB",
        (_MARGIN, _FOOT - _LINE),
        f"{name}: {len(doors):,} {'door' if len(doors) == 1 else 'doors'}",
        8.0,
        bold=True,
    )
    x = _MARGIN
    for standing, (layer, _, words) in STANDINGS.items():
        if standing in counts:
            text = f"{counts[standing]:,}: {words}"
            yield Polyline(layer, ((x, _FOOT - 2 * _LINE + 2.5), (x + 16.0, _FOOT - 2 * _LINE + 2.5)))
            yield Text("A-ANNO-NOTE", (x + 20.0, _FOOT - 2 * _LINE), text, 6.5)
            x += 36.0 + text_width(text, 6.5)
