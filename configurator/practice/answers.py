"""What counts as a right answer, typed as the trade writes it, within a precision that the question states.

Every kind of answer has a `hint` (what to type, and how exactly), `shown` (the right answer as the trade
writes it), `is_right`, `is_clear` (exactly one answer of the stated precision is right), `like` (such an
answer with another value, to recognise a slip by) and `slip_of` (the slips that anybody may make with such an
answer, named). What cannot be read raises UnreadableError: it is asked again, and not marked wrong.
"""

import re
from dataclasses import dataclass, replace
from typing import Any, Literal, Protocol

from configurator.practice.words import fraction, number_in, places
from configurator.rules.hinge.sizes import pairs
from configurator.units import (
    MM_PER_INCH,
    TOLERANCE,
    LengthError,
    format_size,
    parse_length,
    rounded,
)

_EDGE = 0.05
"""A value within this share of a step of the middle between two steps could be rounded either way."""
_FEET = re.compile(r"'|′|ft|feet|foot|^\s*\d+\s*-\s*\d+(?![\d/]|\s*/)", re.IGNORECASE)
_DECIMALS = {0.01: (2, "hundredth: 9.99"), 0.001: (3, "thousandth: 9.999")}
_CLOSE = 0.125
"""Inches: an answer so near was worked the right way and not to the end."""


class UnreadableError(ValueError):
    """What was typed is not an answer of the kind asked for; the message says what is read."""


class Answer(Protocol):
    """What every kind of answer can do."""

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""

    def is_right(self, typed: str) -> bool:
        """Say whether what was typed is right. Raises UnreadableError."""

    def is_clear(self) -> bool:
        """Say whether exactly one answer of the stated precision is right."""

    def like(self, value: Any) -> "Answer":
        """Return an answer of the same kind and precision that another value would be right for."""

    def slip_of(self, typed: str) -> str:
        """Name the slip in a wrong answer that can be read; empty where it is none of the usual ones."""


def _is_near(value: float, typed: float, step: float) -> bool:
    return abs(typed - value) <= step / 2 + TOLERANCE


def _is_off_the_middle(value: float, step: float) -> bool:
    share = abs(value / step) % 1.0
    return abs(share - 0.5) > _EDGE


def _length(typed: str) -> float:
    try:
        return parse_length(typed)
    except LengthError as error:
        raise UnreadableError(str(error)) from None


@dataclass(frozen=True, slots=True)
class LengthAnswer:
    """A length in inches, to the nearest `step` of an inch, or in whole millimetres.

    The `least` that will do is wrong on its short side however near; a `stock` size is that size alone.
    `turned` into inches: feet are what the problem gives, so that they answer nothing.
    """

    value: float
    step: float = 1 / 64
    limit: Literal["", "least", "stock"] = ""
    turned: bool = False

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        if self.step in _DECIMALS:
            return f"Inches, to the nearest {_DECIMALS[self.step][1]}"
        nearest = f"1/{round(1 / self.step)}" if self.step < 1 else fraction(self.step)
        feet = "" if self.turned else ", 11'-7\""
        return f"Inches, to the nearest {nearest}: 7-21/32, 7.656{feet} or 200 mm"

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        if self.step in _DECIMALS:
            return f"{places(self.value, _DECIMALS[self.step][0])} in"
        return f"{format_size(rounded(self.value, 1 / self.step))} in"

    def is_right(self, typed: str) -> bool:
        """Say whether the length typed is nearer than half a step. Raises UnreadableError."""
        inches = _length(typed)
        if self.turned and _FEET.search(typed):
            raise UnreadableError("That is feet and inches. The answer is asked in inches alone.")
        if self.limit == "least" and inches < self.value - TOLERANCE:
            return False
        if _in_whole_mm(typed):
            return self._is_whole_mm(round(inches * MM_PER_INCH))
        if self.limit == "stock":
            return abs(inches - self.value) < TOLERANCE
        return _is_near(self.value, inches, self.step)

    def _is_whole_mm(self, mm: int) -> bool:
        """Take the nearest millimetre, of a least length the next one up."""
        if self.limit == "least":
            return 0 <= mm - self.value * MM_PER_INCH < 1
        return abs(mm - self.value * MM_PER_INCH) <= max(0.5, self.step * MM_PER_INCH / 2 - TOLERANCE)

    def is_clear(self) -> bool:
        """Say whether the value is far enough from the middle between two steps."""
        return _is_off_the_middle(self.value, self.step)

    def like(self, value: float) -> "LengthAnswer":
        """Return the answer that another length would be right for."""
        return LengthAnswer(value, self.step, turned=self.turned)

    def slip_of(self, typed: str) -> str:
        """Name millimetres or feet for inches, the unsafe side of a limit, and an answer not worked out."""
        inches = _length(typed)
        short = self.value - inches
        if self.value and re.fullmatch(r"[\d. ]+", typed) and abs(inches / MM_PER_INCH - self.value) < 0.03:
            return "That is in millimetres. Write mm after it, or give inches."
        if self.value > 1 and abs(12 * inches - self.value) < self.step:
            return "That is in feet. The answer is asked in inches."
        if self.limit and TOLERANCE < short <= 1:
            return "Too small, if only by a little: a least size is rounded up, never down."
        if 0 < abs(short) <= _CLOSE and self.step < 1 / 16:
            return "Close, and outside the precision asked. Work it once more, fraction by fraction."
        return ""


def _in_whole_mm(typed: str) -> bool:
    return re.fullmatch(r"\s*\d+\s*mm\s*", typed.lower()) is not None


@dataclass(frozen=True, slots=True)
class AngleAnswer:
    """An angle in degrees, to the nearest `step` of a degree; a `setting` is that whole degree alone."""

    value: float
    step: float = 1.0
    setting: bool = False

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        nearest = "nearest degree: 45" if self.step == 1.0 else "nearest tenth of a degree: 45.5"
        return "Whole degrees, such as 45" if self.setting else f"Degrees, to the {nearest}"

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        return f"{places(self.value, 0 if self.step == 1.0 else 1)}°"

    def _read(self, typed: str) -> float:
        plain = re.sub(r"\s*(?:°|degrees?|deg\.?)$", "", typed.strip().lower())
        if not re.fullmatch(r"\d{1,4}(?:\.\d{0,9})?|\.\d{1,9}", plain):
            raise UnreadableError("Type degrees as a number, such as 171.8 or 90.")
        return float(plain)

    def is_right(self, typed: str) -> bool:
        """Say whether the angle typed is nearer than half a step. Raises UnreadableError."""
        degrees = self._read(typed)
        return degrees == self.value if self.setting else _is_near(self.value, degrees, self.step)

    def is_clear(self) -> bool:
        """Say whether the value is far enough from the middle between two steps."""
        return _is_off_the_middle(self.value, self.step)

    def like(self, value: float) -> "AngleAnswer":
        """Return the answer that another angle would be right for."""
        return AngleAnswer(value, self.step)

    def slip_of(self, typed: str) -> str:
        """Name a part of a degree, the unsafe side of a limit, and what is counted from the wall."""
        degrees = self._read(typed)
        if self.setting and 0 < degrees - self.value <= 1:
            return "Too far, if only by a little: a stop is set down to a whole degree, never up."
        if self.setting and not degrees.is_integer():
            return "Such a stop is set in whole degrees."
        if degrees != 90 and _is_near(self.value, 180 - degrees, self.step):
            return "That is counted back from the wall. 0° is the closed door."
        return ""


@dataclass(frozen=True, slots=True)
class CountAnswer:
    """A whole number of things; hinges may be typed in pairs, `in_pairs` says that a bare number is pairs."""

    value: int
    things: str = "hinges"
    in_pairs: bool = False

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        if self.in_pairs:
            return "Pairs, exactly: 1-1/2"
        pair = ": 7, seven, 7 ea, or 3-1/2 pair" if self.things == "hinges" else ""
        return f"How many {self.things}, exactly{pair}"

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        return pairs(self.value) if self.in_pairs else f"{self.value} {self.things}"

    def is_right(self, typed: str) -> bool:
        """Say whether that many were typed. Raises UnreadableError."""
        return self._hinges(typed) == self.value

    def _hinges(self, typed: str) -> float:
        """Return how many things were typed, pairs counted as two."""
        plain = re.sub(r"\s+", " ", typed.strip().lower())
        number = re.sub(r" ?(?:pairs?|pr\.?)(?: of hinges)?$", "", plain)
        if number != plain and self.things == "hinges":
            return self._paired(number)
        kinds = rf"{self.things.rstrip('s')}s?|{self.things.split()[-1].rstrip('s')}s?"
        number = re.sub(rf" ?(?:{kinds}|ea\.?|each|pcs?\.?|pieces|no\.?)$", "", plain)
        if self.in_pairs and number == plain:
            return self._paired(number)
        counted = number_in(number)
        if counted is None:
            raise UnreadableError(f"Type a whole number of {self.things}.")
        return counted

    def _paired(self, number: str) -> float:
        counted = number_in(number)
        try:
            return 2 * (parse_length(number) if counted is None else counted)
        except LengthError:
            raise UnreadableError("Type pairs as a number, such as 3 or 1-1/2.") from None

    def is_clear(self) -> bool:
        """A count has no other beside it."""
        return self.value > 0

    def like(self, value: int) -> "CountAnswer":
        """Return the answer that another count would be right for."""
        return replace(self, value=value)

    def slip_of(self, typed: str) -> str:
        """Name pairs for hinges, and hinges for pairs."""
        typed_hinges = self._hinges(typed)
        if self.things != "hinges":
            return ""
        if self.in_pairs and typed_hinges == 2 * self.value:
            return "That is hinges. Two hinges make a pair, so there are half as many pair."
        if 2 * typed_hinges == self.value:
            return "That is pairs. The answer is asked in hinges, and a pair is two."
        if typed_hinges == 2 * self.value:
            return "That is double: a pair is two hinges, so that many hinges is half as many pair."
        return ""
