"""The picture of a problem of practice: what is given lettered with its number, what is asked with `?`.

Once the answer is told, it stands where the `?` was. The door is never drawn at an angle that is asked.
"""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from configurator.drawing.base.lettering import text_width, wrapped
from configurator.drawing.base.primitives import Dimension, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box, Group, View, paper
from configurator.drawing.pages.elevation_parts import elevation_parts
from configurator.drawing.pictures.hand_pictures import hand_picture
from configurator.drawing.pictures.hinge_sample import HingeSample, sample_extent, sample_parts
from configurator.drawing.pictures.marks_front import IN_FRONT, ON_SAMPLE
from configurator.drawing.pictures.marks_plan import IN_PLAN
from configurator.drawing.pictures.marks_practice import MARKS, corridor_mark, left_mark
from configurator.drawing.pictures.scenes import MEASURED, WORD, Mark, Scene, scene, scene_of
from configurator.drawing.pictures.small_plan import small_plan
from configurator.drawing.pictures.word_pictures import Stroke, lettered, strokes, view_of
from configurator.drawing.plan.standing_things import standing_things
from configurator.model import Opening
from configurator.practice.problem import ASKED, Picture, Problem
from configurator.study.run import study

SIZE = (560.0, 400.0)
"""Width and height as it is usually shown, points."""
_TYPE, _ASKED_TYPE, _LETTER = 10.0, 17.0, 13.0
_SWING_AT, _MOST_AT_EASE = math.radians(75), math.radians(80)
_BEYOND = 16.0
"""Inches of wall shown beside the swing of a whole door, where nothing farther counts."""
_OFF = 400.0
"""Inches: walls run on past the edge of every picture."""
_LEVEL = {"rail_closed": "hinge", "rail": "flat", "closed": "hand", "blank": "front"}
Groups = tuple[Group, ...]


def problem_picture(problem: Problem, width: float, height: float, told: bool = False) -> Groups:
    """Return the picture beside a question, points; with the answer where it was asked once that is `told`.

    Raises KeyError for an unknown scene or mark, ValueError for a problem without a picture.
    """
    picture = problem.picture
    if picture is None:
        raise ValueError("the problem has no picture")
    answer = problem.answer.shown if told else ASKED
    marks = tuple((name, words.replace(ASKED, answer)) for name, words in picture.marks)
    words = tuple(one.replace(ASKED, answer.removesuffix(" in")) for one in picture.words)
    shown = replace(picture, marks=marks, words=words)
    asked = frozenset(name for name, lettering in picture.marks if ASKED in lettering)
    ground = Polygon("A-ANNO-BRDR-PICT", rectangle(0.0, width, 0.0, height), "paper", outlined=False)
    draw = _WHOLE.get(picture.scene, _marked)
    return Group(paper(width, height), (ground,)), *draw(shown, Box(0.0, 0.0, width, height), asked, told)


_Drawer = Callable[[Picture, Box, frozenset[str], bool], Groups]


def _marked(picture: Picture, window: Box, asked: frozenset[str], _: bool) -> Groups:
    """Draw a scene of one opening with its marks."""
    shown = _scene(picture)
    marks = {name: _mark(name, picture)(shown) for name, _ in picture.marks}
    view = view_of(_with_room(shown.extent, marks.values()), window)
    drawn = [Group(view, shown.parts)]
    drawn += [Group(view, _inked(mark, name in asked)) for name, mark in marks.items()]
    letters = _letters(picture, marks, shown.parts, view, asked)
    caption = tuple(
        Text("A-ANNO-TEXT", (window.left + 10.0, window.top - 20.0), one, _LETTER, bold=True)
        for one in picture.words
    )
    return *drawn, Group(paper(window.right, window.top), (*letters, *caption))


def _letters(
    picture: Picture, marks: Mapping[str, Mark], parts: Mark, view: View, asked: frozenset[str]
) -> list[Primitive]:
    """Letter every mark, the one asked first and large, none over another or over a measure."""
    taken: list[Stroke] = [stroke for mark in marks.values() for stroke in strokes(mark, view)]
    letters: list[Primitive] = []
    for name, words in sorted(picture.marks, key=lambda one: one[0] not in asked):
        size = _ASKED_TYPE if words == ASKED else _TYPE + 2.0 if name in asked else _TYPE
        found = list(lettered(words, marks[name], parts, view, taken, size))
        taken += _around(found)
        letters += found
    return letters


def _around(found: Iterable[Primitive]) -> list[Stroke]:
    """Return the outline of a lettering, and a line through it, as strokes to keep clear of."""
    lines: list[Stroke] = []
    for part in found:
        if isinstance(part, Polygon):
            a, b, c, d = part.points
            lines += [(a, b), (b, c), (c, d), (d, a), (a, c)]
    return lines


def _inked(mark: Mark, asked: bool) -> Mark:
    """Return a mark in the ink of what is asked, or of what is given, which has no accent."""
    if asked:
        return tuple(replace(part, layer=WORD) if isinstance(part, Dimension) else part for part in mark)
    inks = {WORD: "A-ANNO-LEAD", MEASURED: "A-ANNO-DIMS"}
    return tuple(replace(part, layer=inks.get(part.layer, part.layer)) for part in mark)


def _mark(name: str, picture: Picture) -> Callable[[Scene], Mark]:
    if name == "corridor":
        return corridor_mark(picture.values[1])
    if name == "left":
        return left_mark(picture.values[1])
    front = picture.scene in ("front", "blank")
    found = ON_SAMPLE if picture.scene == "sample" else {**(IN_FRONT if front else IN_PLAN), **MARKS}
    return found[name]


def _with_room(extent: Box, marks: Iterable[Mark]) -> Box:
    """Return an area with room for its marks and their lettering."""
    points = [
        one
        for mark in marks
        for part in mark
        if isinstance(part, Dimension)
        for one in (part.line_a, part.line_b)
    ]
    room = 0.06 * max(extent.width, extent.height)
    return Box(
        min([extent.left, *(x for x, _ in points)]) - room,
        min([extent.bottom, *(y for _, y in points)]) - room,
        max([extent.right, *(x for x, _ in points)]) + room,
        max([extent.top, *(y for _, y in points)]) + room,
    )


def _scene(picture: Picture) -> Scene:
    """Return the scene of a picture's first opening, of a typical one where it names none."""
    name = picture.scene
    if name == "sample":
        height, width = picture.values
        sample = HingeSample(height=height, width=width)
        return replace(
            scene("sample"), parts=sample_parts(sample), extent=sample_extent(sample), sample=sample
        )
    if not picture.openings:
        return scene(name)
    found = study(picture.openings[0])
    if name == "blank":
        return _without_hinges(scene_of("front", found))
    if name in ("swing", "corridor"):
        return _whole_plan(scene_of("whole", found), picture)
    return scene_of(_LEVEL.get(name, name), found)


def _without_hinges(shown: Scene) -> Scene:
    leaves = tuple(replace(one, hinges=None) for one in shown.leaves)
    return replace(shown, parts=elevation_parts(shown.filled, leaves), leaves=leaves)


def _whole_plan(shown: Scene, picture: Picture) -> Scene:
    """Draw the whole opening with what stands along its wall, or with the corridor before it."""
    hung, h = shown.hung, shown.hung.h
    corridor = picture.values[1] if picture.scene == "corridor" else 0.0
    angle = math.radians(picture.values[0]) if picture.scene == "corridor" else min(_SWING_AT, hung.reach)
    flat = angle > _MOST_AT_EASE or any(name == "bumper" for name, _ in picture.marks)
    beside = max(_BEYOND, _farthest(shown), hung.opening + 4.0 if flat else 0.0)
    wide, top, low = hung.opening, hung.wall_face, hung.wall_face - hung.wall_depth
    left, right = -h.F - beside, wide + h.F + 14.0
    walls = [
        Polygon("A-WALL-LAYR", rectangle(*ends, low, top), "poche", "wall")
        for ends in ((-_OFF, -h.F), (wide + h.F, _OFF))
    ]
    if corridor:
        walls.append(
            Polygon(
                "A-WALL-LAYR", rectangle(-_OFF, _OFF, top + corridor, top + corridor + 4.0), "poche", "wall"
            )
        )
    reach = max(corridor + 4.0, wide + 3.0)
    standing = standing_things(hung)
    parts = (*walls, *standing, *small_plan(hung, angle)[2:])
    return replace(shown, parts=parts, extent=Box(left, low - 5.0, right, top + reach), angle=angle)


def _farthest(shown: Scene) -> float:
    """Return how far beyond the frame what stands along the wall has to be shown, inches."""
    starts = [thing.start or 0.0 for thing in shown.hung.filled.opening.obstructions]
    return max(starts, default=0.0) + 10.0


# --- Pictures that are laid out on their own ---


def _hand_of(opening: Opening) -> str:
    return opening.hand or "LH"


def _hand(picture: Picture, window: Box, _: frozenset[str], __: bool) -> Groups:
    below, above = picture.words
    return hand_picture(_hand_of(picture.openings[0]), window.width, window.height, (below, above))[1:]


def _closed(picture: Picture, window: Box, _: frozenset[str], told: bool) -> Groups:
    words = ("outside", "inside")
    hand = _hand_of(picture.openings[0])
    return hand_picture(hand, window.width, window.height, words, closed=not told)[1:]


def _cells(window: Box, count: int) -> list[Box]:
    """Share a window out: side by side where it is wide, else in two rows."""
    columns = count if count < 4 or window.width > 3 * window.height else 2
    rows = math.ceil(count / columns)
    wide, high = window.width / columns, window.height / rows
    return [
        Box(n % columns * wide, window.height - (n // columns + 1) * high, (n % columns + 1) * wide,
            window.height - n // columns * high)
        for n in range(count)
    ]  # fmt: skip


def moved(groups: Sequence[Group], left: float, bottom: float) -> Groups:
    """Return a picture somewhere else on its sheet, points."""
    return tuple(Group(_moved_view(one.view, left, bottom), one.primitives) for one in groups)


def _moved_view(view: View, left: float, bottom: float) -> View:
    box, (x, y) = view.window, view.origin
    window = Box(box.left + left, box.bottom + bottom, box.right + left, box.top + bottom)
    return View(view.scale, (x + left, y + bottom), view.mirrored, window)


def _hands(picture: Picture, window: Box, _: frozenset[str], __: bool) -> Groups:
    """Draw a plan for every option, lettered as the options are."""
    drawn: list[Group] = []
    for letter, opening, cell in zip(
        "ABCD", picture.openings, _cells(window, len(picture.openings)), strict=False
    ):
        room = cell.shrunk(12.0)
        plan = hand_picture(_hand_of(opening), room.width, room.height, ("you, outside", ""))[1:]
        drawn += [*moved(plan, room.left, room.bottom), _letter(letter, cell)]
    return tuple(drawn)


def _letter(words: str, cell: Box) -> Group:
    at = (cell.left + 10.0, cell.top - 20.0)
    return Group(_over(cell), (Text("A-ANNO-TEXT", at, words, _LETTER, bold=True),))


def _over(cell: Box) -> View:
    """Return a view of the sheet's own points that is not cut off at a cell."""
    return paper(cell.right, cell.top)


def _two(picture: Picture, window: Box, asked: frozenset[str], told: bool) -> Groups:
    """Draw two openings side by side, in elevation where a first value says so, else in plan."""
    drawn: list[Group] = []
    kind = "front" if picture.values and told else "blank" if picture.values else "swing"
    most = max(len(wrapped(words, _TYPE, window.width / 2 - 24.0)) for words in picture.words)
    under = 14.0 * most + 6.0
    for letter, opening, words, cell in zip(
        "AB", picture.openings, picture.words, _cells(window, 2), strict=True
    ):
        lines = wrapped(words, _TYPE, cell.width - 24.0)
        room = Box(cell.left, cell.bottom + under, cell.right, cell.top - 20.0)
        drawn += [*_marked(Picture(kind, (), (opening,)), room, asked, told), _letter(letter, cell)]
        for number, line in enumerate(lines):
            at = ((cell.left + cell.right) / 2, cell.bottom + under - 14.0 * (number + 1))
            drawn.append(Group(_over(cell), (Text("A-ANNO-TEXT", at, line, _TYPE, "middle", bold=True),)))
    return tuple(drawn)


def _tape(picture: Picture, window: Box, _: frozenset[str], __: bool) -> Groups:
    """Draw a tape of so many inches with its feet numbered."""
    (inches,) = picture.values
    left, right, middle = window.width * 0.08, window.width * 0.92, window.height / 2
    scale, half = (right - left) / inches, 14.0
    parts: list[Primitive] = [
        Polygon("A-ANNO-DIMS", rectangle(left, right, middle - half, middle + half), "wood")
    ]
    for inch in range(math.floor(inches) + 1):
        foot, x = inch % 12 == 0, left + inch * scale
        parts.append(
            Polyline("A-ANNO-DIMS", ((x, middle + half), (x, middle + (-half if foot else half / 3))))
        )
        if foot and inch:
            parts.append(Text("A-ANNO-TEXT", (x, middle - half - 15.0), f"{inch // 12} ft", _TYPE, "middle"))
    said = Text(
        "A-ANNO-TEXT",
        (window.width / 2, middle + half + 16.0),
        picture.words[0],
        _ASKED_TYPE,
        "middle",
        bold=True,
    )
    return (Group(paper(window.width, window.height), (*parts, said)),)


def _chips(picture: Picture, window: Box, _: frozenset[str], __: bool) -> Groups:
    """Draw the looks of finishes as leaves of hinges; several are lettered as the options are."""
    parts: list[Primitive] = []
    for letter, look, cell in zip("ABCD", picture.words, _cells(window, len(picture.words)), strict=False):
        side = 0.45 * min(cell.width, cell.height)
        x, y = (cell.left + cell.right - side) / 2, (cell.bottom + cell.top - side) / 2
        parts.append(Polygon("A-DETL-HNGE", rectangle(x, x + side, y, y + side), f"finish {look}", look))
        words = letter if len(picture.words) > 1 else look
        parts.append(Text("A-ANNO-TEXT", (x + side / 2, y + side + 8.0), words, _LETTER, "middle", bold=True))
    note = "A swatch is only an idea of the colour."
    parts.append(Text("A-ANNO-NOTE", (window.width / 2, 8.0), note, _TYPE - 2.0, "middle"))
    return (Group(paper(window.width, window.height), tuple(parts)),)


def _pairs(picture: Picture, window: Box, _: frozenset[str], __: bool) -> Groups:
    """Draw the hinges of one door side by side, two and two in a frame of their own, and how many doors."""
    doors, each = (int(one) for one in picture.values)
    sample = HingeSample()
    area = sample_extent(sample)
    room = (window.width - 40.0) / max(each, 1)
    drawn: list[Group] = []
    frames: list[Primitive] = []
    for index in range(each):
        cell = Box(20.0 + index * room, window.height * 0.25, 20.0 + (index + 1) * room, window.height * 0.8)
        drawn.append(Group(view_of(area, cell), sample_parts(sample)))
        if index % 2 == 0:
            last = min(index + 2, each)
            box = rectangle(22.0 + index * room, 18.0 + last * room, cell.bottom, cell.top)
            frames.append(Polyline("A-ANNO-WORD", box, closed=True))
            words = "1 pair" if last - index == 2 else "1/2 pair"
            x = (22.0 + index * room + 18.0 + last * room) / 2
            frames.append(Text("A-ANNO-TEXT", (x, cell.bottom - 18.0), words, _LETTER, "middle", bold=True))
    said = f"one door of {doors}" if doors else "one door"
    wide = text_width(said, _LETTER, bold=True)
    frames.append(
        Text("A-ANNO-TEXT", ((window.width - wide) / 2, window.height * 0.87), said, _LETTER, bold=True)
    )
    return (*drawn, Group(paper(window.width, window.height), tuple(frames)))


_WHOLE: Mapping[str, _Drawer] = MappingProxyType(
    {
        "hand": _hand, "closed": _closed, "hands": _hands, "two": _two, "tape": _tape, "chips": _chips,
        "pairs": _pairs,
    }
)  # fmt: skip
