"""A hinge laid open flat, as a catalogue of sizes would show one; a picture of its parts and not to order.

Inches, across from the pin axis and up from the bottom of the leaves. Screws, tips and stud are drawn where
they commonly are, from memory.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from configurator.drawing.base.primitives import Arc, Point, Polygon, Primitive, rectangle
from configurator.drawing.base.view import Box

HINGE = "A-DETL-HNGE"
_TIP = 0.22
_STUD = 0.09
_SCREW = 0.16
_CORNER_STEPS = 6


@dataclass(frozen=True, slots=True)
class HingeSample:
    """The hinge that is drawn: height, open width, barrel diameter, knuckles, corner radius; inches."""

    height: float = 4.5
    width: float = 4.5
    barrel: float = 0.56
    knuckles: int = 5
    corner: float = 0.25

    @property
    def joints(self) -> tuple[float, ...]:
        """Where one knuckle ends and the next begins, up the barrel."""
        return tuple(self.height * index / self.knuckles for index in range(1, self.knuckles))

    @property
    def screws(self) -> tuple[Point, ...]:
        """The middles of the screws of both leaves."""
        ups = [self.height * share for share in (0.12, 0.38, 0.62, 0.88)]
        return tuple(
            (side * self.width * (0.31 if index % 2 else 0.4), up)
            for side in (-1.0, 1.0)
            for index, up in enumerate(ups)
        )

    @property
    def stud(self) -> Point:
        """The middle of the security stud."""
        return self.width * 0.2, self.height / 2

    def plate(self, side: float) -> tuple[Point, ...]:
        """Return the outline of the leaf to the left (-1) or the right (1), its outer corners rounded."""
        inner, outer = side * self.barrel / 2, side * self.width / 2
        radius = self.corner
        low = [_round(outer - side * radius, radius, radius, step, side, -1.0) for step in _steps()]
        top = [
            _round(outer - side * radius, self.height - radius, radius, step, side, 1.0) for step in _steps()
        ]
        return ((inner, 0.0), *low, *reversed(top), (inner, self.height))


def _steps() -> range:
    return range(_CORNER_STEPS + 1)


def _round(x: float, y: float, radius: float, step: int, side: float, up: float) -> Point:
    """Return a point of a rounded corner, from its level end to its upright one."""
    turn = math.pi / 2 * (1 - step / _CORNER_STEPS)
    return x + side * radius * math.cos(turn), y + up * radius * math.sin(turn)


def barrel_box(sample: HingeSample) -> tuple[Point, ...]:
    """Return the outline of the barrel between its tips."""
    half = sample.barrel / 2
    return rectangle(-half, half, 0.0, sample.height)


def tip_boxes(sample: HingeSample) -> tuple[tuple[Point, ...], ...]:
    """Return the outlines of both tips."""
    half, top = sample.barrel * 0.36, sample.height
    return rectangle(-half, half, top, top + _TIP), rectangle(-half, half, -_TIP, 0.0)


def sample_parts(sample: HingeSample) -> tuple[Primitive, ...]:
    """Return the hinge: leaves, screws, stud, knuckles and tips."""
    parts: list[Primitive] = [
        Polygon(HINGE, sample.plate(side), "plate", "hinge leaf") for side in (-1.0, 1.0)
    ]
    parts += [Arc(HINGE, at, _SCREW, 0.0, 2 * math.pi, "paper", "screw") for at in sample.screws]
    parts.append(Arc(HINGE, sample.stud, _STUD, 0.0, 2 * math.pi, "barrel", "security stud"))
    parts += [Polygon(HINGE, box, "plate", "tip") for box in tip_boxes(sample)]
    edges = (0.0, *sample.joints, sample.height)
    half = sample.barrel / 2
    for low, high in pairwise(edges):
        parts.append(Polygon(HINGE, rectangle(-half, half, low, high), "barrel", "knuckle"))
    return tuple(parts)


def sample_extent(sample: HingeSample) -> Box:
    """Return what the picture covers, with room for a dimension beside and below."""
    half = sample.width / 2
    return Box(-half - 1.9, -1.4, half + 1.9, sample.height + 1.0)
