"""Lengths and opening sizes as schedules write them, and the two things about sizes that must be asked.

A size written height first, and a pair's width that may be that of one leaf, are never mended in silence:
the cell is refused with the question until it is answered for the whole schedule.
"""

import re
from dataclasses import dataclass, replace

from configurator.intake.fields import Unit
from configurator.intake.refused import CellError, quoted, refuse_date
from configurator.units import LengthError, format_feet, format_mm, parse_length, parse_opening_size

NARROW_PAIR = 48.0
"""Inches. A pair no wider may have had the width of one leaf written down: common practice, no source."""
LOW_PAIR = 78.0
"""Inches. A pair wider than high is usual, but not below this height: common practice, no source."""
LEAST_WIDTH, LEAST_HEIGHT = 12.0, 24.0
"""Inches. Less is a column read in the wrong unit."""
THICKEST = 6.0

_NUMBER = re.compile(r"(?:\d+\.?\d*|\.\d+)")
_SHORTHAND = re.compile(r"\d{4,6}")
_SPACED = re.compile(r"(\d{2,3}|\d{1,2}-\d{1,2})\s+(\d{2,3}|\d{1,2}-\d{1,2})")
"""A size whose two figures have a blank between them, as 30 70 for 3070."""
_EACH = re.compile(r"(?:\(\s*2\s*\)|2\s*@|2\s*/\s*(?=\d{4}\b))\s*")
_PAIR = re.compile(r"\(?(?:pr|pair|dbl|double)\b\.?\)?(?:\s+of\b)?\s*", re.IGNORECASE)
_PAIR_BEHIND = re.compile(r"[\s(]+(?:pr|pair)\b\.?\)?$", re.IGNORECASE)
_SLASHED = re.compile(r"(\d{1,2})/(\d{1,2})")
_SINGLE = re.compile(r"(?:sgl|single)\b\.?\s*", re.IGNORECASE)
_BETWEEN = re.compile(r"\s*(?:[x×X]|\bby\b)\s*")


@dataclass(frozen=True, slots=True)
class Size:
    """A size as it was read, inches; `leaves` and `thickness` where the cell said them too.

    `named` says that letters told which figure is which, `each` that the width is plainly that of one leaf,
    `metric` that it was written in millimetres.
    """

    width: float
    height: float
    leaves: str = ""
    thickness: float | None = None
    named: bool = False
    each: bool = False
    metric: bool = False

    def words(self) -> str:
        """Say how wide and how high it is, in the unit it was written in."""
        return f"{self.written(self.width)} wide and {self.written(self.height)} high"

    def written(self, inches: float) -> str:
        """Write a length in the unit this size was written in."""
        return format_mm(inches, 0) if self.metric else format_feet(inches)


def read_length(cell: str, unit: Unit, negative: bool = False) -> float:
    """Read a length; a bare number is in the column's unit. Returns inches. Raises CellError."""
    refuse_date(cell)
    text = cell.strip()
    try:
        if unit == "ft-in" and _NUMBER.fullmatch(text):
            return parse_length(f"{text}'")
        return parse_length(text, metric=unit == "mm", negative=negative)
    except LengthError as error:
        raise CellError(str(error)) from None


def read_opening_length(cell: str, unit: Unit) -> float:
    """Read the width or the height of an opening, where 2/8 is feet and inches: no door is that small."""
    slashed = _SLASHED.fullmatch(cell.strip())
    return read_length(f"{slashed[1]}-{slashed[2]}" if slashed else cell, unit)


def read_size(cell: str, unit: Unit) -> Size:
    """Read a size as it stands, first figure for the width. Raises CellError."""
    refuse_date(cell)
    text, leaves, each = without_leaves(cell.strip())
    parts = _BETWEEN.split(text)
    if spaced := _SPACED.fullmatch(text):
        parts = ["".join(spaced.groups())] if spaced[1].isdigit() else list(spaced.groups())
    if _SHORTHAND.fullmatch(parts[0]) and len(parts) <= 2:
        width, height = _shorthand(parts[0])
        return Size(width, height, leaves, _thickness(parts[1:], unit), each=each)
    if len(parts) not in (2, 3) or not all(map(str.strip, parts)):
        raise CellError(f"{quoted(cell)} is not an opening size: width and then height, as 3'-0\" x 7'-0\"")
    named = [_named(part) for part in parts[:2]]
    first, second = (read_opening_length(text, unit) for text in _share_unit([text for _, text in named]))
    metric = unit == "mm" or parts[1].casefold().endswith("mm")
    size = Size(first, second, leaves, _thickness(parts[2:], unit), each=each, metric=metric)
    return _ordered(size, [letter for letter, _ in named], cell)


def settled(size: Size, leaves: str, order: str, pair: str) -> tuple[Size, list[str]]:
    """Return a size with both questions answered, and what was assumed. Raises CellError with the question.

    `leaves` is what the row says of them, empty where nothing.
    """
    size = replace(size, leaves=size.leaves or leaves)
    told: list[str] = []
    if order == "height" and not size.named:
        size = replace(size, width=size.height, height=size.width)
    _ask_order(size, order, told)
    size = _of_both_leaves(size, pair, told)
    _refuse_tiny(size)
    return size, told


def _ask_order(size: Size, order: str, told: list[str]) -> None:
    is_pair = size.leaves == "pair"
    if size.width <= size.height or size.named or (is_pair and size.height >= LOW_PAIR):
        return
    said = size.words()
    if order == "ask":
        raise CellError(f"{said}? Say whether these sizes are written height first", "size order")
    if order == "height":
        raise CellError(f"read height first it is {said}; the sizes are not all written the same way")
    told.append(f"{said}, as it is written")


def _of_both_leaves(size: Size, pair: str, told: list[str]) -> Size:
    if size.leaves != "pair" or not (size.each or size.width <= NARROW_PAIR):
        return size
    if not size.each and pair == "ask":
        raise CellError(
            f"a pair {size.written(size.width)} wide: say whether that is the opening or each leaf",
            "pair width",
        )
    if not size.each and pair == "opening":
        told.append(f"{size.written(size.width)} is taken as the width of the opening of a pair")
        return size
    both = size.written(2 * size.width)
    told.append(f"two leaves of {size.written(size.width)} make an opening {both} wide")
    return replace(size, width=2 * size.width)


def _refuse_tiny(size: Size) -> None:
    if size.width < LEAST_WIDTH or size.height < LEAST_HEIGHT:
        raise CellError(f"{size.words()} is no door; check the column's unit")


def without_leaves(text: str) -> tuple[str, str, bool]:
    """Take off what says how many leaves there are, and return it behind the rest, empty where nothing does.

    The third is whether the width is plainly that of each leaf, as in (2) 3'-0".
    """
    for pattern, leaves, each in ((_EACH, "pair", True), (_PAIR, "pair", False), (_SINGLE, "single", False)):
        if match := pattern.match(text):
            return text[match.end() :], leaves, each
    if behind := _PAIR_BEHIND.search(text):
        return text[: behind.start()], "pair", False
    return text, "", False


def _shorthand(digits: str) -> tuple[float, float]:
    try:
        return parse_opening_size(digits)
    except LengthError as error:
        raise CellError(str(error)) from None


def _thickness(parts: list[str], unit: Unit) -> float | None:
    """Read the third figure of a size. It may be inches under feet: no door is a foot thick."""
    if not parts:
        return None
    thickness = read_length(parts[0], "in" if unit == "ft-in" else unit)
    if not 0 < thickness <= THICKEST:
        raise CellError(f"{quoted(parts[0])} is no thickness of a door; a size is width x height")
    return thickness


def _share_unit(parts: list[str]) -> list[str]:
    """Give both figures the unit that stands once, behind the second."""
    unit = re.search(r"(?:mm|cm|m|in\.?|inches)$", parts[1].casefold())
    bare = unit is not None and _NUMBER.fullmatch(parts[0].strip()) is not None
    return [f"{parts[0]} {unit.group()}", parts[1]] if unit is not None and bare else parts


def _named(part: str) -> tuple[str, str]:
    """Return the letter that says what a figure is, w or h or nothing, and the figure."""
    text = part.strip()
    if before := re.match(r"([wh])(?=[\s\d])\s*", text, re.IGNORECASE):
        return before[1].lower(), text[before.end() :]
    if after := re.search(r"\s*\(?(w|h)(?:ide|igh|idth|eight)?\.?\)?$", text, re.IGNORECASE):
        return after[1].lower(), text[: after.start()]
    return "", text


def _ordered(size: Size, letters: list[str], cell: str) -> Size:
    if letters in (["", ""], ["w", ""], ["", "h"]):
        return replace(size, named=letters != ["", ""])
    if letters == ["w", "h"]:
        return replace(size, named=True)
    if letters in (["h", "w"], ["h", ""], ["", "w"]):
        return replace(size, width=size.height, height=size.width, named=True)
    raise CellError(f"{quoted(cell)} gives the width or the height twice")
