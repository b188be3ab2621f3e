"""What the sections of an opening are cut through, and what they share; inches, in the axes of the plan."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from configurator.drawing.base.primitives import Point, Polygon, Polyline, Primitive
from configurator.drawing.base.view import Box
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.notes import Marks
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, Standing, drawn_leaf
from configurator.drawing.plan.jamb import stop_width
from configurator.drawing.plan.standing_things import standing_things
from configurator.drawing.preparation.preparation_facts import Preparation, preparations
from configurator.drawing.preparation.preparation_parts import LatchShown, Named
from configurator.drawing.preparation.preparation_ways import WayPreparation, way_preparations
from configurator.geometry.shapes import FAR
from configurator.rules.filling.usual import FilledOpening
from configurator.study import Study
from configurator.units import TOLERANCE, Display

WALL_SHOWN, DOOR_SHOWN = 1.5, 1.25
"""How much of the wall beyond the frame and of the door a section shows, inches."""
ZAG = 0.16
"""Half of a break line's zigzag, and how far it runs past what it breaks, inches."""
CASING = "casing"
_WIDTH_DRAWN = 4.5
"""The hinge a leaf is hung on to be drawn closed where none is chosen; no hinge is shown then."""


@dataclass(frozen=True, slots=True)
class Subject:
    """The leaf that the sections show closed, and its hinge where one is chosen here."""

    hung: DrawnLeaf
    square: DrawnLeaf
    """The same with a square hinge edge, whose section a door's top and bottom have too."""
    hinge: Preparation | None
    way: WayPreparation | None
    latch: LatchShown | None
    marks: Marks
    display: Display

    @property
    def filled(self) -> FilledOpening:
        """The opening, every number filled in."""
        return self.hung.filled

    @property
    def behind_stop(self) -> float:
        """How far the frame's far face lies behind the stop, inches; 0 where the stop runs to it."""
        return max(self.hung.h.D - self.hung.h.R - stop_width(self.hung), 0.0)

    @property
    def casing(self) -> Standing | None:
        """The casing beside the hinge jamb; None where none was given."""
        return next((one for one in self.hung.standing if one.kind == CASING and _beside_hinges(one)), None)


def subject_of(study: Study, display: Display) -> Subject:
    """Return what the sections of an opening show: its first leaf on its hinge."""
    marks = Marks(study.filled)
    plain = drawn_leaf(study.hanger(study.opening.first_leaf, _WIDTH_DRAWN), Display())
    if preps := preparations(study):
        return Subject(preps[0].hung, preps[0].hung, preps[0], None, preps[0], marks, display)
    if ways := way_preparations(study):
        hung = ways[0].hung
        square = hung if hung.h.heel_radius is None else plain
        return Subject(hung, square, None, ways[0], ways[0], marks, display)
    return Subject(plain, plain, None, None, None, marks, display)


def _beside_hinges(thing: Standing) -> bool:
    return all(x <= TOLERANCE for shape in thing.shapes for x, _ in shape.points)


def casing_parts(subject: Subject) -> tuple[Polygon, ...]:
    """Return the casing of the hinge jamb as it is cut."""
    casing = subject.casing
    if casing is None:
        return ()
    own = standing_things(replace(subject.hung, standing=(casing,)))
    return tuple(replace(one, pattern_layer="A-DETL-PATT") for one in own if isinstance(one, Polygon))


def casing_ends(subject: Subject) -> tuple[float, float] | None:
    """Return where the casing begins and ends across, nearer to the door first; None for none."""
    if subject.casing is None:
        return None
    across = [x for shape in subject.casing.shapes for x, _ in shape.points]
    return None if min(across) <= -FAR / 2 else (max(across), min(across))


def level(
    top: float, places: tuple[float, ...], names: tuple[Named, ...], display: Display
) -> tuple[Span, ...]:
    """Return a row across through `places`, ascending, measured at `top`; what has no length is left out."""
    return tuple(
        Span((left, top), (right, top), name, mark, words, display.exact(right - left))
        for (left, right), (name, mark, words) in zip(pairwise(places), names, strict=True)
        if right - left > TOLERANCE
    )


def turned_up(parts: Iterable[Primitive], raised: float = 0.0) -> Iterator[Polygon | Polyline]:
    """Yield parts of a plan as the head has them: the pull side to the left, into the opening downward.

    What lies at 0 across lies `raised` inches below the head rabbet.
    """
    for part in parts:
        if isinstance(part, Polygon):
            points = tuple(head_point(point, raised) for point in part.points)
            yield replace(part, points=points, turned=-math.pi / 2)
        elif isinstance(part, Polyline):
            yield replace(part, points=tuple(head_point(point, raised) for point in part.points))


def head_point(point: Point, raised: float = 0.0) -> Point:
    """Return a place of the plan in the section through the head: left is the pull side, up is up."""
    x, y = point
    return (-y, -x - raised)


def broken_off(a: Point, b: Point) -> Polyline:
    """Return the line with a zigzag in its middle where something is drawn no farther."""
    (x_0, y_0), (x_1, y_1) = a, b
    long = max(abs(x_1 - x_0), abs(y_1 - y_0))
    along = ((x_1 - x_0) / long, (y_1 - y_0) / long)
    aside = (-along[1] * ZAG, along[0] * ZAG)
    middle = long / 2

    def at(distance: float, off: float) -> Point:
        return (
            x_0 + along[0] * distance + aside[0] * off,
            y_0 + along[1] * distance + aside[1] * off,
        )

    zig = (at(middle - ZAG, 0.0), at(middle - ZAG / 3, 1.0), at(middle + ZAG / 3, -1.0))
    return Polyline("A-ANNO-LEAD", (at(-ZAG, 0.0), *zig, at(middle + ZAG, 0.0), at(long + ZAG, 0.0)))


def with_breaks(box: Box, *, across: bool) -> Box:
    """Return what a section takes with its break lines, which stand to both sides or over and under it."""
    if across:
        return replace(box, left=box.left - ZAG, right=box.right + ZAG)
    return replace(box, bottom=box.bottom - ZAG, top=box.top + ZAG)
