"""How a number reads inside a sentence: as a mark, spelled by whatever shows it; and counts and names."""

from configurator import sentences
from configurator.geometry.shapes import BUILDING
from configurator.tables import HardwareKindRow, ObstructionKindRow, row_of
from configurator.units import Rounding, format_decimal, format_feet, format_size


def inches(length: float, rounding: Rounding = "near") -> str:
    """Write a length into a sentence, read as `33-1/16 in`; `units.Rounding` says which way to round."""
    return sentences.length(length, rounding)


def exactly(length: float, rounding: Rounding = "near") -> str:
    """Write a length that somebody gave or a table names, or a sum of such, however fine: `0.134 in`."""
    return sentences.exact(length, rounding)


def degrees(angle: float, rounding: Rounding = "down") -> str:
    """Write an angle into a sentence, read as `171.8°`: `down` if it is reached, `up` if it is asked."""
    return sentences.angle(angle, rounding)


def pounds(weight: float, rounding: Rounding = "near") -> str:
    """Write a weight as whole pounds: `120 lb`."""
    return f"{format_decimal(weight, 0, rounding)} lb"


def size(height: float, width: float) -> str:
    """Write a hinge size, height first: `4-1/2 x 4`."""
    return f"{format_size(height)} x {format_size(width)}"


def plain(length: float) -> str:
    """Write the name of a stock width or height, without its unit: `4-1/2`."""
    return format_size(length)


def feet(length: float) -> str:
    """Write a length in feet and inches: `7'-0"`."""
    return format_feet(length)


def counted(count: int, one: str, many: str) -> str:
    """Write a count with the right word: `1 hinge`, `3 hinges`."""
    return f"{count} {one if count == 1 else many}"


def an(words: str) -> str:
    """Return the words with their article: `an offset pivot`, `a closer`."""
    return f"{'an' if words[0] in 'aeiou' else 'a'} {words}"


def leaf_named(leaf: str, form: str = "{}") -> str:
    """Return which of two leaves is meant, in a form as ` ({})`; empty where there is but one."""
    return "" if leaf == "single" else form.format(f"{leaf} leaf")


def the_leaf(leaf: str, alone: str = "the door") -> str:
    """Return `the active leaf`; where there is but one, what it is called alone."""
    return alone if leaf == "single" else f"the {leaf} leaf"


def remaining(length: float) -> str:
    """Write what is left of something; where it is less than nothing, say by how much there is too little."""
    if length < 0:
        return f"nothing: it is {inches(-length, 'up')} more than there is"
    return inches(length, "down")


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
