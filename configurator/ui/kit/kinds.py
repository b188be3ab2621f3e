"""How each kind of value is typed into a field and written back: lengths, angles, counts, pounds, text."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.model import Size, paths
from configurator.model.fields import unit_of
from configurator.units import (
    Display,
    LengthError,
    format_decimal,
    format_feet,
    format_lossless,
    format_size,
    parse_length,
    parse_opening_size,
)

USUAL_HEIGHT = 84.0
"""Inches; a width typed alone for a new opening goes with it, and the line says so."""


class NotReadError(ValueError):
    """What was typed cannot be read; the message is the sentence for beside the field."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of value: reads typed text (raising NotReadError), and writes as its field shows it.

    Where `write` rounds, `in_full` writes what reads back as it was.
    """

    name: str
    read: Callable[[str, Display], Any]
    write: Callable[[Any, Display], str]
    in_full: Callable[[Any, Display], str] | None = None

    def lossless(self, value: Any, display: Display) -> str:
        """Write a value to be copied, or edited in place: it reads back as it was."""
        return (self.in_full or self.write)(value, display)


def kind_at(path: str) -> Kind:
    """Return the kind of value that a field takes, known from its place in the model."""
    if path == "size":
        return SIZE
    if path == "hinge_locations.tops":
        return LENGTHS
    if path == "frame.outline":
        return CORNERS
    if path == "other_columns":
        return NAMED_TEXTS
    info = paths.field_at(path)
    unit = unit_of(info)
    if path == "door.latch_bevel":
        return BEVEL
    if unit == " in":
        return LENGTH
    if unit == " degrees":
        return DEGREES
    if unit == " lb":
        return POUNDS
    return WHOLE if paths.holds(path, int) else TEXT


def _write_length(inches: float, display: Display) -> str:
    return display.exact(inches)


def _lossless_length(inches: float, display: Display) -> str:
    return format_lossless(inches, display.metric)


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
    return f"{format_size(2 * ratio)} in per 2 in" if ratio else "square"


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
    """Write width x height: 3'-0" x 7'-0", or 914.4 x 2133.6 mm."""
    if not display.metric:
        return display.opening(size.width, size.height)
    return f"{display.exact(size.width).removesuffix(' mm')} x {display.exact(size.height)}"


def _lossless_size(size: Size, display: Display) -> str:
    sides = (size.width, size.height)
    if not display.metric and all(float(side * 64).is_integer() for side in sides):
        return " x ".join(format_feet(side) for side in sides)
    return " x ".join(format_lossless(side, display.metric) for side in sides)


def _read_lengths(text: str, display: Display) -> list[float]:
    """Read lengths parted by commas; a unit after the last holds for all that have none of their own."""
    pieces = [piece.strip() for piece in text.replace(";", ",").split(",")]
    unit = next((unit for unit in ("mm", "cm", "m", "in") if pieces[-1].endswith(unit)), "")
    bare = (piece.removeprefix("-").replace(".", "", 1).isdigit() for piece in pieces)
    whole = [f"{piece} {unit}" if alone else piece for piece, alone in zip(pieces, bare, strict=True)]
    return [_read_length(piece, display) for piece in whole]


def _write_lengths(lengths: Sequence[float], display: Display) -> str:
    return _in_one_unit([display.exact(length) for length in lengths])


def _lossless_lengths(lengths: Sequence[float], display: Display) -> str:
    return _in_one_unit([format_lossless(length, display.metric) for length in lengths])


def _read_corners(text: str, display: Display) -> list[list[float]]:
    """Read corners parted by semicolons, each across and out, with a comma between."""
    corners = [_read_lengths(piece, display) for piece in text.strip().strip(";").split(";")]
    if any(len(corner) != 2 for corner in corners):
        raise NotReadError("corners are written as 0, 0; -2, 0: across, then out, a semicolon after each")
    return corners


def _write_corners(corners: Sequence[Sequence[float]], display: Display) -> str:
    return "; ".join(_lossless_lengths(corner, display) for corner in corners)


def _in_one_unit(written: Sequence[str]) -> str:
    """Join lengths, their unit said once at the end where all have the same."""
    units = {one.rsplit(" ", 1)[1] for one in written}
    if len(units) != 1:
        return ", ".join(written)
    (unit,) = units
    return ", ".join(one.removesuffix(f" {unit}") for one in written) + f" {unit}"


def _read_named_texts(text: str, _: Display) -> dict[str, str]:
    """Read lines such as `Heading: text`."""
    found: dict[str, str] = {}
    for line in filter(None, map(str.strip, text.splitlines())):
        name, colon, value = line.partition(":")
        if not colon or not name.strip() or name.strip() in found:
            raise NotReadError(f"“{line[:40]}” is not a heading of its own, a colon and a text.")
        found[name.strip()] = value.strip()
    return found


def _write_named_texts(texts: Mapping[str, str], _: Display) -> str:
    return "\n".join(f"{' '.join(name.split())}: {' '.join(text.split())}" for name, text in texts.items())


LENGTH = Kind("length", _read_length, _write_length, _lossless_length)
LENGTHS = Kind("lengths", _read_lengths, _write_lengths, _lossless_lengths)
CORNERS = Kind("corners", _read_corners, _write_corners)
SIZE = Kind("opening size", _read_size, _write_size, _lossless_size)
DEGREES = Kind("degrees", _read_degrees, lambda value, _: f"{format_decimal(value, 4)}°")
POUNDS = Kind("pounds", _read_pounds, lambda value, _: f"{format_decimal(value, 2)} lb")
WHOLE = Kind("whole number", _read_whole, lambda value, _: str(value))
BEVEL = Kind("bevel", _read_bevel, _write_bevel)
NAMED_TEXTS = Kind("headed texts", _read_named_texts, _write_named_texts)
TEXT = Kind("text", _read_text, lambda value, _: str(value))
