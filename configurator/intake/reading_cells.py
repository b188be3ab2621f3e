"""A cell's text to the value its field takes; what was assumed in reading it is told."""

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from configurator.intake.fields import FIELDS, OPENING_SIZES, Kind, Unit
from configurator.intake.refused import CellError, quoted
from configurator.intake.sizes import read_length, read_opening_length, read_size
from configurator.intake.words import accepted, word

Reader = Callable[[str, str, Unit], tuple[Any, tuple[str, ...]]]
"""A field's name, a cell and the column's unit to a value (None: nothing said), and what is assumed."""
_COUNT = re.compile(
    r"(\d{1,3}(?:,\d{3})+|\d+)(?:\.0+)?\s*(?:ea\.?|each|pcs?\.?|openings?|doors?)?", re.IGNORECASE
)
_ANGLE = re.compile(r"(\d+\.?\d*)\s*(?:°|deg\.?|degrees?)?", re.IGNORECASE)
_MINUTES = re.compile(r"(\d{1,4})\s*-?\s*(?:min(?:ute)?s?\.?|m)?", re.IGNORECASE)
_HOURS = re.compile(
    r"(?:(\d+)(?:[-\s](\d)/(\d)|(\.\d+))?|(\d)/(\d))\s*-?\s*(?:h(?:ou)?rs?\.?|h)", re.IGNORECASE
)
_FIRE_DOOR = re.compile(r"f\.?d\.?\s*-?\s*(\d{2,3})\s*s?", re.IGNORECASE)
"""FD30, FD60S: a fire door by its minutes; s is a smoke seal, which is not kept."""
_LABELS = frozenset("abcde")
_NOT_RATED = frozenset({"nr", "none", "no", "n", "notrated", "nonrated", "unrated", "nonlabel", "nonlabeled"})
_RATED = frozenset({"yes", "y", "x", "rated", "firerated", "fire"})


def _text(_: str, cell: str, __: Unit) -> tuple[Any, tuple[str, ...]]:
    return cell, ()


def _count(_: str, cell: str, __: Unit) -> tuple[Any, tuple[str, ...]]:
    match = _COUNT.fullmatch(cell.strip())
    if match is None or len(match[1]) > 9 or int(match[1].replace(",", "")) < 1:
        raise CellError(f"{quoted(cell)} is not a number of openings: a whole number from 1 up")
    return int(match[1].replace(",", "")), ()


def _size(_: str, cell: str, unit: Unit) -> tuple[Any, tuple[str, ...]]:
    return read_size(cell, unit), ()


def _length(field: str, cell: str, unit: Unit) -> tuple[Any, tuple[str, ...]]:
    if field in OPENING_SIZES:
        return read_opening_length(cell, unit), ()
    return read_length(cell, unit, negative=field == "frame_proud"), ()


def _angle(_: str, cell: str, __: Unit) -> tuple[Any, tuple[str, ...]]:
    match = _ANGLE.fullmatch(cell.strip())
    if match is None:
        raise CellError(f"{quoted(cell)} is not an angle in degrees")
    return float(match[1]), ()


def _word(field: str, cell: str, _: Unit) -> tuple[Any, tuple[str, ...]]:
    found = word(field, cell)
    if found is None:
        raise CellError(f"{quoted(cell)} is not known here; it may be {accepted(field)}")
    if not found.means:
        return None, (f"{quoted(cell)} leaves the {FIELDS[field].title} open: {found.because}",)
    return found.means, _assumed(cell, found.means, found.because)


def _code(field: str, cell: str, _: Unit) -> tuple[Any, tuple[str, ...]]:
    kind = field.removesuffix("_type")
    found = word(kind, cell)
    if found is None:
        return None, (f"the {kind} type {quoted(cell)} says nothing of what it is made of: left out",)
    if not found.means:
        return None, (f"the {kind} type {quoted(cell)} is left open: {found.because}",)
    return found.means, _assumed(cell, found.means, found.because)


def _flag(_: str, cell: str, __: Unit) -> tuple[Any, tuple[str, ...]]:
    found = word("flag", cell)
    if found is None:
        raise CellError(f"{quoted(cell)} is neither yes nor no")
    return found.means == "yes", ()


def _swing(_: str, cell: str, unit: Unit) -> tuple[Any, tuple[str, ...]]:
    found = word("swing", cell)
    return (found.means, ()) if found is not None else _word("hand", cell, unit)


def _rating(_: str, cell: str, __: Unit) -> tuple[Any, tuple[str, ...]]:
    """Read the minutes an opening is fire rated for; of a yes, a no or a letter whether it is."""
    key = "".join(letter for letter in cell.casefold() if letter.isalnum())
    if key in _NOT_RATED:
        return False, ()
    if key in _RATED:
        return True, ()
    text = cell.strip()
    minutes = _minutes_of(text)
    if minutes is not None:
        told = () if text == str(minutes) else (f"rated {quoted(cell)} is taken as {minutes} minutes",)
        return minutes, told
    if key.removesuffix("label") not in _LABELS:
        raise CellError(f"{quoted(cell)} is no fire rating known here: minutes as 90 or 45 min, or NR")
    return True, (f"rated {quoted(cell)} is taken as fire rated; a letter says no minutes for certain",)


def _minutes_of(text: str) -> int | None:
    """Return the minutes of a rating given in minutes, in hours or as FD30; None where it is none of them."""
    if match := _MINUTES.fullmatch(text) or _FIRE_DOOR.fullmatch(text):
        return int(match[1])
    hours = _HOURS.fullmatch(text)
    if hours is None:
        return None
    whole, over, under, decimals, part, parts = hours.groups()
    figure = int(part) / int(parts or 1) if part else int(whole) + float(decimals or 0)
    return round(60 * (figure + (int(over) / int(under) if over else 0)))


def _fire_minutes(_: str, cell: str, __: Unit) -> tuple[Any, tuple[str, ...]]:
    minutes = _minutes_of(cell.strip())
    if minutes is None:
        raise CellError(f"{quoted(cell)} is no number of minutes")
    return minutes, ()


def _found(field: str, cell: str, _: Unit) -> tuple[Any, tuple[str, ...]]:
    raise CellError(
        f"{FIELDS[field].title}: {quoted(cell)} cannot be typed here; leave it as it was found, or blank"
    )


def _assumed(cell: str, means: str, because: str) -> tuple[str, ...]:
    if cell.strip().casefold() == means.casefold():
        return ()
    return (f"{quoted(cell)} is taken as {means}" + (f": {because}" if because else ""),)


READERS: Mapping[Kind, Reader] = MappingProxyType(
    {
        "text": _text,
        "count": _count,
        "size": _size,
        "length": _length,
        "angle": _angle,
        "word": _word,
        "code": _code,
        "flag": _flag,
        "rating": _rating,
        "minutes": _fire_minutes,
        "found": _found,
        "hand": _word,
        "swing": _swing,
    }
)
"""How the cells of each kind of field are read."""
