"""How each kind of value is typed into a field and written back: lengths, angles, counts, pounds, text."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.model.fields import unit_of
from configurator.model.opening import Size
from configurator.ui.state import paths
from configurator.units import (
    MM_PER_INCH,
    Display,
    LengthError,
    format_decimal,
    format_exact,
    parse_length,
    parse_opening_size,
)


class NotReadError(ValueError):
    """What was typed cannot be read; the message is the sentence for beside the field."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of value: reads typed text (raising NotReadError), and writes as its field shows it."""

    name: str
    read: Callable[[str, Display], Any]
    write: Callable[[Any, Display], str]


def kind_at(path: str) -> Kind:
    """Return the kind of value that a field takes, known from its place in the model."""
    if path == "size":
        return SIZE
    if path == "hinge_locations.tops":
        return LENGTHS
    info = paths.field_at(path)
    unit = unit_of(info)
    if path == "door.latch_bevel":
        return BEVEL
    if unit == " in":
        return LENGTH
    if unit == " degrees":
        return DEGREES
    if paths.holds(path, float):
        return POUNDS
    return WHOLE if paths.holds(path, int) else TEXT


def exact_length(inches: float, display: Display) -> str:
    """Write a length without rounding, as a field must: what is shown there is what is taken."""
    if display.metric:
        return f"{format_decimal(inches * MM_PER_INCH, 4)} mm"
    return f"{format_exact(inches)} in"


def _read_length(text: str, display: Display) -> float:
    try:
        return parse_length(text, metric=display.metric)
    except LengthError as error:
        raise NotReadError(str(error)) from None


def _read_bevel(text: str, display: Display) -> float:
    """Read relief against thickness: `1/8 in per 2 in`, `1/8 in 2`, a bare ratio, or `square`."""
    words = text.strip().lower().replace('"', "").removesuffix(" in")
    relief, against, thickness = words.replace(" in per ", " in ").replace(" per ", " in ").partition(" in ")
    if relief == "square":
        return 0.0
    inches = Display(display.precision)  # a ratio has no unit, so millimetres must not come into it
    ratio: float = _read_length(relief, inches)
    if not against:
        return ratio
    depth = _read_length(thickness, inches)
    if depth <= 0:
        raise NotReadError("A bevel is so much off so much of thickness, as 1/8 in per 2 in.")
    return ratio / depth


def _write_bevel(ratio: float, _: Display) -> str:
    return f"{format_exact(2 * ratio)} in per 2 in" if ratio else "square"


def _read_number(text: str, units: str, example: str) -> float:
    body = text.strip().lower()
    for unit in units.split():
        body = body.removesuffix(unit).strip()
    try:
        return float(body)
    except ValueError:
        raise NotReadError(f"“{text.strip()[:24]}” is not a number. Write it as {example}.") from None


def _read_degrees(text: str, _: Display) -> float:
    return _read_number(text, "° deg degrees", "90")


def _read_pounds(text: str, _: Display) -> float:
    return _read_number(text, "lb lbs pounds", "120")


def _read_whole(text: str, _: Display) -> int:
    try:
        return int(text.strip())
    except ValueError:
        raise NotReadError(f"“{text.strip()[:24]}” is not a whole number.") from None


def _read_text(text: str, _: Display) -> str:
    return text.strip()


def _read_size(text: str, display: Display) -> dict[str, float]:
    """Read width, then height."""
    try:
        width, height = parse_opening_size(text, metric=display.metric)
    except LengthError as error:
        raise NotReadError(str(error)) from None
    return {"width": width, "height": height}


def _write_size(size: Size, display: Display) -> str:
    """Write width x height, in feet and inches where that is exact."""
    whole = all(float(side * 64).is_integer() for side in (size.width, size.height))
    if display.metric or not whole:
        width, height = (exact_length(side, display) for side in (size.width, size.height))
        return f"{width.removesuffix(' mm')} x {height}"
    return Display(64).opening(size.width, size.height)


def _read_lengths(text: str, display: Display) -> list[float]:
    """Read lengths parted by commas; a unit after the last holds for all that have none of their own."""
    pieces = [piece.strip() for piece in text.replace(";", ",").split(",")]
    unit = next((unit for unit in ("mm", "cm", "m", "in") if pieces[-1].endswith(unit)), "")
    bare = (piece.replace(".", "", 1).isdigit() for piece in pieces)
    whole = [f"{piece} {unit}" if alone else piece for piece, alone in zip(pieces, bare, strict=True)]
    return [_read_length(piece, display) for piece in whole]


def _write_lengths(lengths: Sequence[float], display: Display) -> str:
    written = [exact_length(length, display) for length in lengths]
    unit = written[-1].rsplit(" ", 1)[1] if written else ""
    return ", ".join(one.removesuffix(f" {unit}") for one in written) + (f" {unit}" if unit else "")


LENGTH = Kind("length", _read_length, exact_length)
LENGTHS = Kind("lengths", _read_lengths, _write_lengths)
DEGREES = Kind("degrees", _read_degrees, lambda value, _: f"{format_decimal(value, 4)}°")
POUNDS = Kind("pounds", _read_pounds, lambda value, _: f"{format_decimal(value, 2)} lb")
WHOLE = Kind("whole number", _read_whole, lambda value, _: str(value))
BEVEL = Kind("bevel", _read_bevel, _write_bevel)
SIZE = Kind("opening size", _read_size, _write_size)
TEXT = Kind("text", _read_text, lambda value, _: str(value))
