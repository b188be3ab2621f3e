"""Another's DXF drawing: its lines with their layers, in its own units; what is no line is counted.

A drawing is looked at before it is read: one too large to be read at once is refused by its size and by the
number of its entities. Blocks are taken apart, as deep and as often as the limits allow.
"""

import math
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import groupby
from pathlib import Path
from types import MappingProxyType
from typing import Any

import ezdxf
from ezdxf import recover
from ezdxf.document import Drawing
from ezdxf.path import make_path

from configurator.drawing.base.primitives import Point
from configurator.units import TOLERANCE

MOST_BYTES = 12 * 2**20
MOST_ENTITIES, MOST_LINES, MOST_INSERTS = 40_000, 20_000, 5_000
_DEEPEST = 12
"""Blocks in blocks are taken apart so deep."""
INCHES: Mapping[str, float] = MappingProxyType(
    {"in": 1.0, "ft": 12.0, "mm": 1 / 25.4, "cm": 1 / 2.54, "m": 1000 / 25.4}
)
"""A unit of drawings to its length in inches."""
_UNITS = {1: "in", 2: "ft", 4: "mm", 5: "cm", 6: "m"}
_LINES = frozenset({"LINE", "LWPOLYLINE", "POLYLINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE"})
_FLATNESS = 1 / 400
"""A curve is drawn in chords that leave it by no more than this part of its size."""
_ENTITY = re.compile(rb"\n[ \t]*0\r?\n(?=[A-Z])")
_SMALLER = "write out what stands about the door alone and take that"


@dataclass(frozen=True, slots=True)
class ForeignLine:
    """A line of the drawing in its own units; the end of a closed one is its start."""

    layer: str
    points: tuple[Point, ...]

    @property
    def closed(self) -> bool:
        """Whether it ends where it starts."""
        return len(self.points) > 3 and math.dist(self.points[0], self.points[-1]) < TOLERANCE


@dataclass(frozen=True, slots=True)
class ForeignDrawing:
    """What was read: `units` is empty where the file does not say; `not_read` counts what are no lines."""

    name: str
    units: str
    lines: tuple[ForeignLine, ...]
    not_read: Mapping[str, int] = field(default_factory=dict)

    @property
    def layers(self) -> dict[str, int]:
        """The layers that have lines, by name, with how many."""
        return dict(sorted(Counter(line.layer for line in self.lines).items()))


def read_drawing(path: Path) -> ForeignDrawing:
    """Read a drawing. Raises OSError where there is no file to read, else ValueError with a sentence."""
    name = path.name[:80]
    _look_at(path, name)
    drawing = _opened(path, name)
    reader = _Reader(name)
    try:
        lines = tuple(reader.lines(drawing.modelspace(), 0))
    except (ArithmeticError, LookupError, TypeError, AttributeError, ezdxf.DXFError) as error:
        raise ValueError(f"{name} is damaged: {type(error).__name__}: {str(error)[:120]}") from None
    if not lines:
        raise ValueError(f"{name} has no lines in its model space")
    units = _UNITS.get(drawing.header.get("$INSUNITS", 0), "")
    return ForeignDrawing(name, units, lines, dict(sorted(reader.not_read.items())))


def _look_at(path: Path, name: str) -> None:
    """Refuse what is too large, or no DXF, before any of it is taken apart."""
    if (size := path.stat().st_size) > MOST_BYTES:
        raise ValueError(
            f"{name} has {size / 2**20:.0f} MB; up to {MOST_BYTES // 2**20} MB are read: {_SMALLER}"
        )
    data = path.read_bytes()
    if data.startswith(b"AC10"):
        raise ValueError(f"{name} is a DWG; save it as DXF in the program it comes from")
    if not data.startswith(b"AutoCAD Binary DXF") and b"SECTION" not in data[:4096]:
        raise ValueError(f"{name} is no DXF drawing")
    if (count := len(_ENTITY.findall(data))) > MOST_ENTITIES:
        raise ValueError(
            f"{name} has {count:,} entities; a drawing of up to {MOST_ENTITIES:,} is read: {_SMALLER}"
        )


def _opened(path: Path, name: str) -> Drawing:
    try:
        try:
            return ezdxf.readfile(path)
        except ezdxf.DXFStructureError:
            return recover.readfile(path)[0]
    except OSError:
        raise
    except Exception as error:
        # The library meets a damaged file with whatever Python raises first.
        raise ValueError(f"{name} cannot be read as a DXF drawing: {str(error)[:120]}") from None


class _Reader:
    """Takes lines out of a space, and counts what it leaves."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.not_read: Counter[str] = Counter()
        self._lines = self._inserts = 0

    def lines(self, entities: Iterable[Any], deep: int) -> Iterator[ForeignLine]:
        for entity in entities:
            kind = entity.dxftype()
            if kind == "INSERT":
                yield from self._of_block(entity, deep)
            elif kind in _LINES:
                yield from self._of_line(entity)
            else:
                self.not_read[kind] += 1

    def _of_line(self, entity: Any) -> Iterator[ForeignLine]:
        self._lines += 1
        if self._lines > MOST_LINES:
            raise ValueError(
                f"{self.name} has more than {MOST_LINES:,} lines when its blocks are taken apart: {_SMALLER}"
            )
        points = _chords(entity)
        if len(points) > 1:
            yield ForeignLine(str(entity.dxf.layer), points)

    def _of_block(self, insert: Any, deep: int) -> Iterator[ForeignLine]:
        """A block within a block on layer 0 stands on the layer of the one around it, as CAD shows it."""
        if deep >= _DEEPEST:
            self.not_read["INSERT"] += 1
            return
        for one in insert.multi_insert():
            self._inserts += 1
            if self._inserts > MOST_INSERTS:
                raise ValueError(f"{self.name} has more than {MOST_INSERTS:,} blocks: {_SMALLER}")
            for line in self.lines(one.virtual_entities(), deep + 1):
                yield ForeignLine(str(insert.dxf.layer), line.points) if line.layer == "0" else line


def _chords(entity: Any) -> tuple[Point, ...]:
    """Return a line's points in plan; none where a number of it is none."""
    try:
        path = make_path(entity)
        corners = [(point.x, point.y) for point in path.control_vertices()]
    except (TypeError, ValueError, ArithmeticError):
        return ()
    if not corners or not all(math.isfinite(x) and math.isfinite(y) for x, y in corners):
        return ()
    if not path.has_curves:
        return tuple(corner for corner, _ in groupby(corners))
    xs, ys = zip(*corners, strict=True)
    size = max(max(xs) - min(xs), max(ys) - min(ys))
    if size <= 0.0:
        return ()
    return tuple((point.x, point.y) for point in path.flattening(size * _FLATNESS))
