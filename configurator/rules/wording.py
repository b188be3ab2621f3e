"""How a number reads inside a sentence: inches to the nearest 1/64, never rounded across a limit it fails."""

from configurator.geometry.shapes import BUILDING
from configurator.tables import HardwareKindRow, ObstructionKindRow, row_of
from configurator.units import Side, format_angle, format_exact, format_length


def inches(length: float, limit: float | None = None, side: Side | None = None) -> str:
    """Write a length as `33-1/16 in`; limits as in `units.format_length`."""
    return format_length(length, 64, unit_mark=False, limit=limit, side=side) + " in"


def roughly(length: float) -> str:
    """Write where something goes on site, to the nearest 1/16: `29-1/16 in`."""
    return format_length(length, 16, unit_mark=False) + " in"


def degrees(angle: float, limit: float | None = None, side: Side | None = None) -> str:
    """Write an angle with its unit, as `171.8°`; limits as in `units.format_angle`."""
    return format_angle(angle, limit, side)


def size(height: float, width: float) -> str:
    """Write a hinge size, height first: `4-1/2 x 4`."""
    return f"{format_exact(height)} x {format_exact(width)}"


def plain(length: float) -> str:
    """Write the name of a stock width or height, without its unit: `4-1/2`."""
    return format_exact(length)


def feet(length: float) -> str:
    """Write a length in feet and inches: `7'-0"`."""
    return format_length(length, 64, "feet")


def counted(count: int, one: str, many: str) -> str:
    """Write a count with the right word: `1 hinge`, `3 hinges`."""
    return f"{count} {one if count == 1 else many}"


def remaining(length: float, limit: float | None = None) -> str:
    """Write what is left of something; where it is less than nothing, say by how much there is too little."""
    if length < 0:
        return f"nothing: it is {inches(-length)} more than there is"
    return inches(length, limit, "min")


_NOT_LISTED = BUILDING | {"other leaf", "door stop"}
"""What can end a swing without being in the list of obstructions; each is called by its kind."""


def obstruction(kind: str) -> str:
    """Return the name of what a door can meet. Raises KeyError where there is no such kind."""
    return kind if kind in _NOT_LISTED else row_of(ObstructionKindRow, kind).name


def cut_back(kind: str) -> str:
    """Return the advice to cut back what a door meets, empty for what cannot be; unknown is to be asked."""
    if kind in _NOT_LISTED:
        return ""
    row = row_of(ObstructionKindRow, kind)
    advice = {
        "yes": f"cut the {row.name} back",
        "no": "",
        "unknown": f"ask whether the {row.name} can be cut back",
    }
    return advice[row.cut_back]


def hardware(part: str) -> str:
    """Return the name of a moving part. Raises KeyError where there is no such kind."""
    return part if part in ("leaf", "barrel") else row_of(HardwareKindRow, part).name
