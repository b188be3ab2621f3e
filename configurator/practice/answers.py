"""What counts as a right answer, typed as the trade writes it, within a precision that the question states.

Every kind of answer has a `hint` (what to type, and how exactly), `shown` (the right answer as the trade
writes it), `is_right`, and `is_clear`, which says that exactly one answer of the stated precision is right.
What cannot be read raises UnreadableError in words: it is asked again, and not marked wrong.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Protocol

from configurator.practice.words import places
from configurator.rules.hinge.finish import bhma_number, us_code
from configurator.rules.hinge.sizes import pairs
from configurator.units import LengthError, format_size, parse_length, rounded

_EDGE = 0.05
"""A value within this share of a step of the middle between two steps could be rounded either way."""
_DECIMALS = {0.01: (2, "hundredth: 9.99"), 0.001: (3, "thousandth: 9.999")}


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


def _is_near(value: float, typed: float, step: float) -> bool:
    return abs(typed - value) < step / 2


def _is_off_the_middle(value: float, step: float) -> bool:
    share = abs(value / step) % 1.0
    return abs(share - 0.5) > _EDGE


@dataclass(frozen=True, slots=True)
class LengthAnswer:
    """A length in inches, to the nearest `step` of an inch."""

    value: float
    step: float = 1 / 64

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        if self.step in _DECIMALS:
            return f"Inches, to the nearest {_DECIMALS[self.step][1]}"
        return f"Inches, to the nearest 1/{round(1 / self.step)}: 7-21/32, 7.656, 11'-7\" or 200 mm"

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        if self.step in _DECIMALS:
            return f"{places(self.value, _DECIMALS[self.step][0])} in"
        return f"{format_size(rounded(self.value, 1 / self.step))} in"

    def is_right(self, typed: str) -> bool:
        """Say whether the length typed is nearer than half a step. Raises UnreadableError."""
        try:
            return _is_near(self.value, parse_length(typed), self.step)
        except LengthError as error:
            raise UnreadableError(str(error)) from None

    def is_clear(self) -> bool:
        """Say whether the value is far enough from the middle between two steps."""
        return _is_off_the_middle(self.value, self.step)


@dataclass(frozen=True, slots=True)
class AngleAnswer:
    """An angle in degrees, to the nearest `step` of a degree."""

    value: float
    step: float = 1.0

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        nearest = "nearest degree: 45" if self.step == 1.0 else "nearest tenth of a degree: 45.5"
        return f"Degrees, to the {nearest}"

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        return f"{places(self.value, 0 if self.step == 1.0 else 1)}°"

    def is_right(self, typed: str) -> bool:
        """Say whether the angle typed is nearer than half a step. Raises UnreadableError."""
        plain = re.sub(r"\s*(?:°|degrees?|deg\.?)$", "", typed.strip().lower())
        if not re.fullmatch(r"\d{1,4}(?:\.\d{0,9})?|\.\d{1,9}", plain):
            raise UnreadableError("Type degrees as a number, such as 171.8 or 90.")
        return _is_near(self.value, float(plain), self.step)

    def is_clear(self) -> bool:
        """Say whether the value is far enough from the middle between two steps."""
        return _is_off_the_middle(self.value, self.step)


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
        pair = ": 7, or 3-1/2 pair" if self.things == "hinges" else ""
        return f"How many {self.things}, exactly{pair}"

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        return pairs(self.value) if self.in_pairs else f"{self.value} {self.things}"

    def is_right(self, typed: str) -> bool:
        """Say whether that many were typed. Raises UnreadableError."""
        plain = re.sub(r"\s+", " ", typed.strip().lower())
        number = re.sub(r" ?(?:pairs?|pr\.?)$", "", plain)
        if number != plain and self.things == "hinges":
            return self._paired(number)
        number = plain.removesuffix(self.things).removesuffix(self.things.rstrip("s")).strip()
        if self.in_pairs and number == plain:
            return self._paired(number)
        if not re.fullmatch(r"\d{1,7}", number):
            raise UnreadableError(f"Type a whole number of {self.things}.")
        return int(number) == self.value

    def _paired(self, number: str) -> bool:
        try:
            hinges = 2 * parse_length(number)
        except LengthError:
            raise UnreadableError("Type pairs as a number, such as 3 or 1-1/2.") from None
        return hinges == self.value

    def is_clear(self) -> bool:
        """A count has no other beside it."""
        return self.value > 0


@dataclass(frozen=True, slots=True)
class HingeSizeAnswer:
    """A hinge size, height first, exactly."""

    height: float
    width: float

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        return "A hinge size, height first: 8 x 7-1/2"

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        return f"{format_size(self.height)} x {format_size(self.width)}"

    def is_right(self, typed: str) -> bool:
        """Say whether that very size was typed. Raises UnreadableError."""
        parts = re.split(r"\s*(?:[x×]|by)\s*", typed.strip().lower())
        if len(parts) != 2:
            raise UnreadableError("Type height x width, as 4-1/2 x 4.")
        try:
            height, width = (parse_length(part, negative=False) for part in parts)
        except LengthError as error:
            raise UnreadableError(str(error)) from None
        return (height, width) == (self.height, self.width)

    def is_clear(self) -> bool:
        """A size has two numbers above zero."""
        return self.height > 0 and self.width > 0


@dataclass(frozen=True, slots=True)
class ChoiceAnswer:
    """One of several, picked or typed by its letter or its words."""

    right: str
    options: tuple[str, ...]

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        return f"Pick one, or type its letter, A to {self.letters[-1]}"

    @property
    def letters(self) -> str:
        """A letter for each option, in their order."""
        return "ABCDEFGH"[: len(self.options)]

    @property
    def shown(self) -> str:
        """The right answer as it stands among the options."""
        return self.right

    def is_right(self, typed: str) -> bool:
        """Say whether the right one was picked. Raises UnreadableError."""
        plain = typed.strip().lower()
        if len(plain) == 1 and plain.upper() in self.letters:
            return self.options[self.letters.index(plain.upper())] == self.right
        meant = [option for option in self.options if option.lower() == plain]
        meant = meant or [option for option in self.options if plain and option.lower().startswith(plain)]
        if len(meant) != 1:
            raise UnreadableError(f"Type a letter from A to {self.letters[-1]}.")
        return meant == [self.right]

    def is_clear(self) -> bool:
        """Say whether the options are distinct and the right one is among them."""
        plain = [option.lower() for option in self.options]
        return len(set(plain)) == len(plain) >= 2 and plain.count(self.right.lower()) == 1


HANDS: Mapping[str, str] = MappingProxyType(
    {"LH": "left hand", "RH": "right hand", "LHR": "left hand reverse", "RHR": "right hand reverse"}
)


def _hand(text: str) -> str:
    plain = re.sub(r"[^a-z]", "", text.lower()).removesuffix("bevel")
    words = {name.replace(" ", ""): code for code, name in HANDS.items()}
    code = plain.upper().removesuffix("B") if plain.upper().endswith("RB") else plain.upper()
    return words.get(plain, code)


def _digits(text: str) -> str:
    return re.sub(r"\s", "", text)


_CODES = MappingProxyType(
    {
        "hand": (_hand, r"[LR]HR?", "A hand: LH, RH, LHR or RHR"),
        "BHMA number": (bhma_number, r"\d{3}", "A BHMA number of three figures: 628"),
        "US code": (us_code, r"US(?:P|\d{1,2}[A-Z]?)", "A US code: US28"),
        "opening size": (_digits, r"\d{4,6}", "The size in figures alone, width first: 5080"),
    }
)


@dataclass(frozen=True, slots=True)
class CodeAnswer:
    """A code of the trade, in any of its spellings; `kind` says which sort it is."""

    right: str
    kind: str

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        return _CODES[self.kind][2]

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        return f"{self.right} ({HANDS[self.right]})" if self.kind == "hand" else self.right

    def is_right(self, typed: str) -> bool:
        """Say whether that code was typed. Raises UnreadableError."""
        reader, form, hint = _CODES[self.kind]
        code = reader(typed)
        if not re.fullmatch(form, code):
            raise UnreadableError(f"{hint}.")
        return code == self.right

    def is_clear(self) -> bool:
        """Say whether the right code is one that can be typed."""
        return self.is_right(self.right)


def yes_or_no(yes: bool) -> ChoiceAnswer:
    """Return the answer to a question that is answered by yes or no."""
    return ChoiceAnswer("yes" if yes else "no", ("yes", "no"))
