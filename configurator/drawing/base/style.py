"""The drafting style: layers with their line widths and inks, and how cut materials are filled.

Everything is read from resources/style. Layers follow the form of the US National CAD Standard (discipline,
major group, minor group). Widths are of the series 0.18, 0.25, 0.35, 0.5 and 0.7 mm: that standard's fine
(patterns), thin (dimensions, leaders), medium (objects), wide (profiles) and extra wide (borders) as course
notes quote it, and ISO 128's as draughting notes quote it. Patterns are sized in points on paper.
"""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from configurator.resource_files import resource_path

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


@cache
def inks() -> Mapping[str, Shade]:
    """Return every ink by name."""
    return {row["ink"]: Shade(row["light"], row["dark"]) for row in _rows("inks.csv")}


@cache
def layers() -> Mapping[str, Layer]:
    """Return every layer by name, in the file's order. Raises ValueError for a width not of the series."""
    return {row["layer"]: _layer(row) for row in _rows("layers.csv")}


@cache
def materials() -> Mapping[str, Material]:
    """Return every material by name."""
    return {
        row["material"]: Material(
            row["material"],
            Shade(row["light"], row["dark"]),
            cast(Pattern, row["pattern"]),
            float(row["spacing"]),
            float(row["angle"]),
        )
        for row in _rows("materials.csv")
    }


def _layer(row: Mapping[str, str]) -> Layer:
    width = float(row["millimetres"])
    if width not in SERIES:
        raise ValueError(f"layers.csv: {row['layer']} is {width} mm wide, which is not a drafting width")
    dash = tuple(float(part) for part in row["dash"].split())
    return Layer(row["layer"], width * POINTS_PER_MM, dash, inks()[row["ink"]], row["words"])


def _rows(name: str) -> list[dict[str, str]]:
    text = resource_path("style", name).read_text(encoding="utf-8")
    return list(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))
