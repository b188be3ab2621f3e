"""Answers that are written rather than measured: sizes, options, and the codes of the trade."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from configurator.practice.answers import UnreadableError
from configurator.rules.hinge.finish import bhma_number, finishes, us_code
from configurator.units import LengthError, format_size, parse_length, parse_opening_size

LETTERS = "ABCDEFGH"
"""What options are picked by."""


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

    def like(self, value: tuple[float, float]) -> "HingeSizeAnswer":
        """Return the answer that another size would be right for."""
        return HingeSizeAnswer(*value)

    def slip_of(self, typed: str) -> str:
        """Name a size written the way a door's is."""
        turned = HingeSizeAnswer(self.width, self.height).is_right(typed)
        return "That is width first, as a door is written. A hinge is height first." if turned else ""


@dataclass(frozen=True, slots=True)
class OpeningSizeAnswer:
    """An opening size in feet and inches, width first, in any of the trade's notations; inches."""

    width: float
    height: float

    @property
    def hint(self) -> str:
        """What to type, and how exactly."""
        return "Feet and inches, width first: 5080, 5-0 x 8-0 or 5'-0\" x 8'-0\""

    @property
    def shown(self) -> str:
        """The right answer as the trade writes it."""
        return " x ".join(f"{int(one // 12)}-{format_size(one % 12)}" for one in (self.width, self.height))

    def is_right(self, typed: str) -> bool:
        """Say whether that size was typed in feet and inches. Raises UnreadableError."""
        try:
            size = parse_opening_size(typed)
        except LengthError as error:
            raise UnreadableError(str(error)) from None
        if re.fullmatch(r"\s*\d\d+\s*(?:[x×]|by)\s*\d\d+\s*", typed.lower()):
            raise UnreadableError("That is in inches. Write feet and inches, as 5-0 x 8-0.")
        return size == (self.width, self.height)

    def is_clear(self) -> bool:
        """Say whether the width cannot be taken for the height."""
        return 0 < self.width < self.height

    def like(self, value: tuple[float, float]) -> "OpeningSizeAnswer":
        """Return the answer that another size would be right for."""
        return OpeningSizeAnswer(*value)

    def slip_of(self, typed: str) -> str:
        """Name a size written the way a hinge's is."""
        turned = OpeningSizeAnswer(self.height, self.width).is_right(typed)
        return "That is height first, as a hinge is written. A door is width first." if turned else ""


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
        return LETTERS[: len(self.options)]

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

    def like(self, value: str) -> "ChoiceAnswer":
        """Return the answer that another option would be right for."""
        return replace(self, right=value)

    def slip_of(self, _: str) -> str:
        """What a wrong option means is known to its problem alone."""
        return ""


HANDS: Mapping[str, str] = MappingProxyType(
    {"LH": "left hand", "RH": "right hand", "LHR": "left hand reverse", "RHR": "right hand reverse"}
)


def _hand(text: str) -> str:
    plain = re.sub(r"[^a-z]", "", text.lower()).removesuffix("bevel")
    words = {name.replace(" ", ""): code for code, name in HANDS.items()}
    words |= {name.replace("hand", ""): code for name, code in words.items()}
    code = plain.upper().removesuffix("B") if plain.upper().endswith("RB") else plain.upper()
    return words.get(plain, code)


def _hand_slip(right: str, code: str) -> str:
    side, swing = right[0] != code[0], right.endswith("R") != code.endswith("R")
    if side and swing:
        return "That is what it looks like from inside. The hand is told from outside."
    if side:
        return "Left and right are turned about. Look from outside, at the side of the hinges."
    return "Check the swing: toward you, seen from outside, is a reverse hand; away from you is not."


def _bhma_slip(_: str, code: str) -> str:
    rows = finishes(bhma=code)
    return f"{code} is {rows[0].look} on {' or '.join(row.metal for row in rows)}." if rows else ""


def _us_slip(_: str, code: str) -> str:
    rows = finishes(us=code)
    return f"{code} is {rows[0].look}." if rows else ""


_CODES = MappingProxyType(
    {
        "hand": (
            _hand,
            r"[LR]HR?",
            "A hand: LH or RH, left or right; LHR or RHR where it is a reverse",
            _hand_slip,
        ),
        "BHMA number": (bhma_number, r"\d{3}", "A BHMA number of three figures: 628", _bhma_slip),
        "US code": (us_code, r"US(?:P|\d{1,2}[A-Z]?)", "A US code: US28", _us_slip),
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

    def _read(self, typed: str) -> str:
        reader, form, hint, _ = _CODES[self.kind]
        code = reader(typed)
        if not re.fullmatch(form, code):
            raise UnreadableError(f"{hint}.")
        return code

    def is_right(self, typed: str) -> bool:
        """Say whether that code was typed. Raises UnreadableError."""
        return self._read(typed) == self.right

    def is_clear(self) -> bool:
        """Say whether the right code is one that can be typed."""
        return self.is_right(self.right)

    def like(self, value: str) -> "CodeAnswer":
        """Return the answer that another code would be right for."""
        return replace(self, right=value)

    def slip_of(self, typed: str) -> str:
        """Say what the code typed stands for."""
        return _CODES[self.kind][3](self.right, self._read(typed))


def yes_or_no(yes: bool) -> ChoiceAnswer:
    """Return the answer to a question that is answered by yes or no."""
    return ChoiceAnswer("yes" if yes else "no", ("yes", "no"))
