"""What the dimensions about the pin are called: in full or plainly, in short, and on hovering."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from configurator.geometry.pin import Point
from configurator.units import Display


@dataclass(frozen=True, slots=True)
class Measured:
    """One length to be dimensioned: its two points in plan, what it is called, and its layer."""

    a: Point
    b: Point
    value: float
    name: str
    layer: str


@dataclass(frozen=True, slots=True)
class Wording:
    """One way to letter the dimensions: a text for each, and their size in points."""

    texts: tuple[str, ...]
    size: float


WALL, FRAME, BOTH = "barrel past wall face", "barrel past frame face", "barrel past frame and wall face"
PIN_DOOR, PIN_FRAME = "pin axis off door face", "pin axis off frame face"

_PLAIN = {
    WALL: "barrel stands out from wall",
    FRAME: "barrel stands out from frame",
    BOTH: "barrel stands out from frame and wall",
    PIN_DOOR: "pin stands off door",
    PIN_FRAME: "pin stands off frame",
}
_SHORT = {
    WALL: "barrel past wall",
    FRAME: "barrel past frame",
    BOTH: "barrel past frame, wall",
    PIN_DOOR: "pin off door",
    PIN_FRAME: "pin off frame",
}
_BRIEF = {
    WALL: "barrel/wall",
    FRAME: "barrel/frame",
    BOTH: "barrel/frame, wall",
    PIN_DOOR: "pin/door",
    PIN_FRAME: "pin/frame",
}
_EXPLAINED = {
    WALL: "barrel stands out from the wall, measured from the wall face",
    FRAME: "barrel stands out from the frame, measured from the frame face",
    BOTH: "barrel stands out from frame and wall, measured from their faces, which are flush",
    PIN_DOOR: "pin stands off the door, measured from the face of the closed door to the pin's axis",
    PIN_FRAME: "pin stands off the frame, measured from the frame face to the pin's axis",
}
_BEHIND = (
    (" stands out from ", " lies behind "),
    (" stands off ", " lies behind "),
    (" past ", " behind "),
    (" off ", " behind "),
)


def wordings(measured: Sequence[Measured], display: Display, size: float, plain: bool) -> tuple[Wording, ...]:
    """Return the ways to letter the dimensions, the fullest first, at last the numbers alone."""
    full = _named(measured, display, _PLAIN if plain else {})
    short = _named(measured, display, _SHORT)
    numbers = tuple(
        display.length(abs(item.value)) + (" behind" if item.value < 0 else "") for item in measured
    )
    brief = tuple(
        words if item.value < 0 else f"{number} {_BRIEF[item.name]}"
        for number, words, item in zip(numbers, short, measured, strict=True)
    )
    return (
        Wording(full, size),
        Wording(short, size),
        Wording(short, size - 1.0),
        Wording(brief, size - 1.0),
        Wording(numbers, size),
    )


def _named(measured: Sequence[Measured], display: Display, names: Mapping[str, str]) -> tuple[str, ...]:
    return tuple(
        f"{display.length(abs(item.value))} {_side_words(names.get(item.name, item.name), item.value)}"
        for item in measured
    )


def explained(item: Measured, display: Display) -> str:
    """Return what a length is and what it is measured from, in plain words, with its number."""
    return f"{_side_words(_EXPLAINED[item.name], item.value)}: {display.length(abs(item.value))}"


def _side_words(name: str, value: float) -> str:
    """Say behind instead of past, off or out where a length is below zero."""
    if value >= 0:
        return name
    before, after = next(pair for pair in _BEHIND if pair[0] in name)
    return name.replace(before, after, 1)
