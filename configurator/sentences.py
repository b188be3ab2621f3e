"""Sentences whose numbers are written when they are shown, to any precision of inches or in millimetres.

A rule writes its sentence once and knows no display. `length` and `angle` put a number into the sentence as a
mark; `written` spells every mark as the display shows such a number: a sentence says what the table says.
"""

import re
from collections.abc import Callable, Mapping
from typing import cast

from configurator.units import Display, Rounding, parse_length

_BEGIN, _END = "\x02", "\x03"
_MARK = re.compile(f"{_BEGIN}(length|exact|angle) (near|down|up) ([^ {_END}]+){_END}")
_INCHES = re.compile(r"(?<![\w/.-])(?:\d+-)?\d+(?:/\d+|\.\d+)? in\b")

_WRITERS: Mapping[str, Callable[[float, Rounding, Display], str]] = {
    "length": lambda number, rounding, display: display.length(number, rounding),
    "exact": lambda number, rounding, display: display.exact(number, rounding),
    "angle": lambda number, rounding, display: display.angle(number, rounding),
}


def length(inches: float, rounding: Rounding = "near") -> str:
    """Return the mark of a length, inches."""
    return _mark("length", inches, rounding)


def exact(inches: float, rounding: Rounding = "near") -> str:
    """Return the mark of a length that somebody gave or a table names, inches: 0.134 for a hinge leaf."""
    return _mark("exact", inches, rounding)


def angle(degrees: float, rounding: Rounding = "down") -> str:
    """Return the mark of an angle, degrees."""
    return _mark("angle", degrees, rounding)


def written(sentence: str, display: Display | None = None) -> str:
    """Return a sentence as it is read, its numbers as the display shows them; inches where there is none.

    In millimetres, inches that stand in the sentence as words get their millimetres beside them.
    """
    shown = display or Display()
    if shown.metric:
        sentence = with_millimetres(sentence)
    return _MARK.sub(lambda mark: _spelled(mark, shown), sentence)


def capitalized(words: str) -> str:
    """Return words with a capital at their head, the rest as it is."""
    return words[:1].upper() + words[1:]


def as_sentence(words: str) -> str:
    """Return words with a capital at their head and a full stop at their end."""
    return f"{capitalized(words)}{'' if words.endswith('.') else '.'}"


def with_millimetres(sentence: str) -> str:
    """Return a sentence with millimetres after each length that its words say in inches."""
    return _INCHES.sub(lambda found: _both(found, sentence), sentence)


def _mark(kind: str, number: float, rounding: Rounding) -> str:
    return f"{_BEGIN}{kind} {rounding} {float(number)!r}{_END}"


def _spelled(mark: re.Match[str], display: Display) -> str:
    kind, rounding, number = mark.groups()
    return _WRITERS[kind](float(number), cast(Rounding, rounding), display)


def _both(found: re.Match[str], sentence: str) -> str:
    millimetres = Display(metric=True).length(parse_length(found[0]))
    before = sentence[: found.start()]
    inside = before.count("(") > before.count(")")
    return f"{found[0]} = {millimetres}" if inside else f"{found[0]} ({millimetres})"
