"""The drafting style: layers with their line widths and inks, and how cut materials are filled.

Everything is read from resources/style. Layers follow the form of the US National CAD Standard (discipline,
major group, minor group). Widths are of the series 0.18, 0.25, 0.35, 0.5 and 0.7 mm: that standard's fine
(patterns), thin (dimensions, leaders), medium (objects), wide (profiles) and extra wide (borders) as course
notes quote it, and ISO 128's as draughting notes quote it. Patterns are sized in points on paper.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from configurator.tables import FinishRow, resource_rows, table

POINTS_PER_MM = 72 / 25.4
SERIES = (0.18, 0.25, 0.35, 0.5, 0.7)
"""Line widths of the National CAD Standard and of ISO 128, millimetres; both as quoted in secondary texts."""

Pattern = Literal["none", "dots", "lines", "grain"]


@dataclass(frozen=True, slots=True)
class Shade:
    """One colour as it is on the light sheet and on the dark one."""

    light: str
    dark: str

    def on(self, dark: bool) -> str:
        """Return the colour for that sheet."""
        return self.dark if dark else self.light


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer's pen: width in points, dash in points (empty: solid), ink, and what lies on it."""

    name: str
    width: float
    dash: tuple[float, ...]
    ink: Shade
    words: str


@dataclass(frozen=True, slots=True)
class Material:
    """How a cut material is filled: its ground, and a pattern with spacing in points and angle in degrees."""

    name: str
    ground: Shade
    pattern: Pattern
    spacing: float
    angle: float


@dataclass(frozen=True, slots=True)
class _InkRow:
    ink: str
    light: str
    dark: str
    words: str


@dataclass(frozen=True, slots=True)
class _LayerRow:
    layer: str
    millimetres: float
    dash: tuple[float, ...]
    ink: str
    words: str


@dataclass(frozen=True, slots=True)
class _MaterialRow:
    material: str
    light: str
    dark: str
    pattern: Pattern
    spacing: float
    angle: float
    words: str


@cache
def inks() -> Mapping[str, Shade]:
    """Return every ink by name."""
    return {row.ink: Shade(row.light, row.dark) for row in resource_rows("style", "inks", _InkRow)}


@cache
def layers() -> Mapping[str, Layer]:
    """Return every layer by name, in the file's order. Raises ValueError for a width not of the series."""
    return {row.layer: _layer(row) for row in resource_rows("style", "layers", _LayerRow)}


@cache
def materials() -> Mapping[str, Material]:
    """Return every material by name; the look of a finish is one too, as `finish satin chrome`."""
    looks = {f"finish {row.look}": row.swatch for row in table(FinishRow)}
    return {
        name: Material(name, Shade(swatch, swatch), "none", 0.0, 0.0) for name, swatch in looks.items()
    } | {
        row.material: Material(row.material, Shade(row.light, row.dark), row.pattern, row.spacing, row.angle)
        for row in resource_rows("style", "materials", _MaterialRow)
    }


def _layer(row: _LayerRow) -> Layer:
    if row.millimetres not in SERIES:
        raise ValueError(
            f"layers.csv: {row.layer} is {row.millimetres} mm wide, which is not a drafting width"
        )
    return Layer(row.layer, row.millimetres * POINTS_PER_MM, row.dash, inks()[row.ink], row.words)
