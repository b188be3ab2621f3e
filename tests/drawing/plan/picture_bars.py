"""The bars of the window's picture: what lies over what, at any angle, in a sheet of any size."""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.dimension_strokes import strokes_of
from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Dimension, Polyline, Text
from configurator.drawing.base.view import Box, Group
from configurator.drawing.plan.sheet import Sheet, moving_groups, moving_note_groups
from configurator.drawing.plan.swing_notes import CLEARANCE

ANGLES = tuple(4.5 * number for number in range(1, 41))
"""Forty, the last of them flat."""
_LINES = ("A-ANNO-DIMS", "A-ANNO-LEAD", "A-ANNO-REDL")
_JUMPS = 60.0
"""Points that a name of what stands still may move between two angles next to one another: not at all."""


def groups_at(sheet: Sheet, angle: float) -> tuple[Group, ...]:
    """Return everything of a picture with the leaves at an angle, degrees."""
    return (*sheet.still, *moving_groups(sheet, angle), *sheet.notes, *moving_note_groups(sheet, angle))


def faults(sheet: Sheet, angle: float) -> Iterator[str]:
    """Yield what lies over what in a picture at an angle, degrees."""
    groups = groups_at(sheet, angle)
    texts = list(_texts(groups))
    whole = Box(0.0, 0.0, sheet.width, sheet.height)
    for (a, one, _), (b, other, _) in combinations(texts, 2):
        if one.shrunk(0.05).overlaps(other):
            yield f"{a!r} lies over {b!r}"
    lines = list(_lines(groups))
    for text, box, owner in texts:
        if not whole.holds(box.shrunk(0.05)):
            yield f"{text!r} leaves the sheet"
        inner = box.shrunk(0.6)
        for start, end, name, of in lines:
            if of is not owner and clip_segment(start, end, inner):
                yield f"{text!r} is crossed by {name}"
    for (a, b, name, of), (c, d, other, of_other) in combinations(_leaders(groups), 2):
        if of is not of_other and _run_together(a, b, c, d):
            yield f"{name} and {other} share a line"
    yield from _read_otherwise(groups)


def _texts(groups: Sequence[Group]) -> Iterator[tuple[str, Box, object]]:
    for group in groups:
        for one in group.primitives:
            if isinstance(one, Dimension):
                box = text_box(group.view.to_sheet(one.text_at), one.text, one.size, "middle")
                yield one.text, box, one
            elif isinstance(one, Text):
                at = group.view.to_sheet(one.at)
                yield one.text, text_box(at, one.text, one.size, one.anchor, one.bold), one


def _lines(groups: Sequence[Group], own: bool = False) -> Iterator[tuple[tuple, tuple, str, object]]:
    """Yield every stroke of a dimension and of a leader, as far as its window shows it.

    `own`: without extension lines, which two dimensions may have in common.
    """
    for group in groups:
        for one in group.primitives:
            if isinstance(one, Dimension):
                lines, name = strokes_of(one, group.view).lines[-1 if own else 0 :], one.name
            elif isinstance(one, Polyline) and not one.closed and one.layer.startswith(_LINES):
                lines, name = [[group.view.to_sheet(point) for point in one.points]], one.layer
            else:
                continue
            for line in lines:
                for ends in pairwise(line):
                    if kept := clip_segment(*ends, group.view.window):
                        yield (*kept, name, one)


def _leaders(groups: Sequence[Group]) -> list:
    return [each for each in _lines(groups, own=True) if math.dist(each[0], each[1]) > 3.0]


def _run_together(a, b, c, d) -> bool:
    """Whether two strokes lie on one line and share more than two points of it."""
    long = math.dist(a, b)
    along = ((b[0] - a[0]) / long, (b[1] - a[1]) / long)
    off = [abs(along[0] * (p[1] - a[1]) - along[1] * (p[0] - a[0])) for p in (c, d)]
    if max(off) > 0.4:
        return False
    first, last = sorted(along[0] * (p[0] - a[0]) + along[1] * (p[1] - a[1]) for p in (c, d))
    return min(last, long) - max(first, 0.0) > 2.0


def _read_otherwise(groups: Sequence[Group]) -> Iterator[str]:
    """Yield the dimensions that are worded in one panel and bare, or worded otherwise, in another."""
    found: dict[str, set[str]] = {}
    for group in groups:
        for one in group.primitives:
            if isinstance(one, Dimension):
                said = one.text.removeprefix("less than ").partition(",")[0]  # and what else is told there
                if one.name.startswith(CLEARANCE):
                    said = said.partition(" at ")[0]  # of the least one, where the leaf has it
                words = " ".join(word for word in said.split() if not any(c.isdigit() for c in word))
                found.setdefault(one.name, set()).add(words.removesuffix(" behind"))
    for name, words in found.items():
        if len(words) > 1:
            yield f"{name} reads {sorted(words)}"
