"""Lengths in inches: read what the trade types, write what the trade writes.

Inside the program a length is a float of inches, so that every 64th is exact. Feet, fractions and millimetres
exist only here: on the way in and on the way out. What must be at least something is never shown larger than
it is, and what must be at most something never smaller: a clear width of 31-63/64 in shows as 31-31/32, not
as 32. A length that somebody gave, or that is added up from such, is written as exactly as it was given.
"""

import math
import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

MM_PER_INCH = 25.4
TOLERANCE = 1e-9
"""Two numbers no further apart are the same: inches, points on paper, degrees, radians, pounds."""
CLOSED_IN = 1e-6
"""What is closed in on, and not worked out by a formula, is taken to be known no finer; inches or degrees."""
_ON_A_STEP = 1e-8
"""What is shown and lies so near to a step is that step: what was closed in on is known no finer."""
LARGEST = 1_000_000.0
"""Inches. Nothing about a door is longer; beyond it a typing slip is certain."""
_LONGEST_TEXT = 60
_MM_PER_UNIT = {"mm": 1.0, "cm": 10.0, "m": 1000.0}

Precision = Literal[16, 32, 64]


class LengthError(ValueError):
    """What was typed is not a length; the message says what was typed and which forms are read."""


# --- Reading ---

_FORMS = "Write inches as 4-1/2, 4 1/2 or 4.5, feet and inches as 3'-0\", or millimetres as 114 mm"
_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5",
    "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_TRANSLATION = str.maketrans(
    {
        **{vulgar: f" {plain} " for vulgar, plain in _VULGAR.items()},
        **dict.fromkeys("′’‘`´", "'"),
        **dict.fromkeys("″”“", '"'),
        **dict.fromkeys("−–—‐‑", "-"),
        "⁄": "/",
        "×": "x",
    }
)
_NUMBER = r"(?:[0-9]+\.?[0-9]*|\.[0-9]+)"
_JOIN = r"(?:\s*-\s*|\s+)"
_FRACTION = r"[0-9]+\s*/\s*[0-9]+"
_INCHES = rf"(?:(?P<whole>{_NUMBER})(?:{_JOIN}(?P<part>{_FRACTION}))?|(?P<alone>{_FRACTION}))"
_INCH_MARK = r"(?P<mark>\"|''|in\.?|inch|inches)?"
_FOOT_MARK = r"(?:'|ft\.?|feet|foot)"
_METRIC = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>mm|cm|m)")
_FEET = re.compile(rf"(?P<feet>{_NUMBER})\s*{_FOOT_MARK}(?:\s*-?\s*{_INCHES}\s*{_INCH_MARK})?")
_HYPHENATED = re.compile(
    rf"(?P<feet>[0-9]+)\s*-\s*(?P<whole>{_NUMBER})(?:{_JOIN}(?P<part>{_FRACTION}))?(?P<alone>)\s*{_INCH_MARK}"
)
_PLAIN = re.compile(rf"{_INCHES}\s*{_INCH_MARK}")


def parse_length(text: str | float, *, metric: bool = False, negative: bool = True) -> float:
    """Read a length as the trade writes it.

    Returns inches. `n-m` alone is feet and inches, `n-m/d` inches and a fraction. A bare number is inches, or
    millimetres when `metric` is set; a mark or a fraction always says its own unit.
    Raises LengthError in words, also for a length below zero unless `negative` is allowed.
    """
    if isinstance(text, str):
        inches = _parse_text(text, metric)
    elif isinstance(text, bool) or not isinstance(text, int | float):
        raise _not_a_length(text)
    else:
        inches = _checked_number(text) / (MM_PER_INCH if metric else 1.0)
    if abs(inches) > LARGEST:
        raise LengthError(f"{_quoted(text)} is too long for anything about a door. {_FORMS}.")
    if inches < 0 and not negative:
        raise LengthError(f"{_quoted(text)} is below zero; this length is measured outward only.")
    return inches


def parse_opening_size(text: str | int, *, metric: bool = False) -> tuple[float, float]:
    """Read an opening size: width, then height.

    Returns inches. `3070` is 3'-0" x 7'-0". Feet take one digit, inches one digit or, when they are 10 or 11,
    two: `21070` is 2'-10" x 7'-0". Digits that read two ways, or that need two digits of feet, are refused
    and asked for with separators, as `3-0 x 10-0`. A unit after the second number holds for both.
    Raises LengthError in words.
    """
    if isinstance(text, bool) or not isinstance(text, str | int):
        raise _not_a_size(text)
    plain = _normalised(text) if isinstance(text, str) else _digits(text)
    if re.fullmatch(r"[0-9]+", plain):
        return _parse_shorthand(plain)
    parts = re.split(r"\s*(?:x|by)\s*", plain)
    if len(parts) != 2:
        raise _not_a_size(text)
    unit = re.search(r"(?:mm|cm|m)$", parts[1])
    if unit and re.fullmatch(_NUMBER, parts[0]):
        parts[0] += unit.group()
    width, height = (parse_length(part, metric=metric) for part in parts)
    if width <= 0 or height <= 0:
        raise LengthError(f"{_quoted(text)}: both the width and the height of an opening must be above zero.")
    return width, height


def _parse_shorthand(digits: str) -> tuple[float, float]:
    found = re.fullmatch(r"[0-9]{4,6}", digits) and [
        (12 * int(a) + int(b), 12 * int(c) + int(d))
        for a, b, c, d in _splits(digits)
        if int(a) and int(c) and all(len(i) == 1 or i in ("10", "11") for i in (b, d))
    ]
    if not found or len(found) > 1:
        why = "can be read in two ways" if found else "is not an opening size"
        raise LengthError(
            f"“{digits[:20]}” {why}. Write the width and then the height, as 3-0 x 7-0 or 3070."
        )
    return float(found[0][0]), float(found[0][1])


def _splits(digits: str) -> list[tuple[str, str, str, str]]:
    """Return every way to cut the digits as feet, inches, feet, inches with one digit of feet."""
    cuts = (1, 2) if len(digits) == 5 else (len(digits) // 2 - 1,)
    return [(digits[0], digits[1 : 1 + n], digits[1 + n], digits[2 + n :]) for n in cuts]


def _parse_text(text: str, metric: bool) -> float:
    plain = _normalised(text)
    sign = -1.0 if plain.startswith("-") else 1.0
    body = plain.removeprefix("-").strip()
    if match := _METRIC.fullmatch(body):
        return sign * float(match["number"]) * _MM_PER_UNIT[match["unit"]] / MM_PER_INCH
    if match := _PLAIN.fullmatch(body):
        bare = metric and match["whole"] is not None and match["part"] is None and match["mark"] is None
        return sign * _inches(match, text) / (MM_PER_INCH if bare else 1.0)
    if match := _FEET.fullmatch(body) or _HYPHENATED.fullmatch(body):
        return sign * _feet_and_inches(match, text)
    raise _not_a_length(text)


def _feet_and_inches(match: re.Match[str], text: str) -> float:
    inches = _inches(match, text)
    if inches >= 12:
        raise LengthError(f"{_quoted(text)} has 12 or more inches after the feet. {_FORMS}.")
    if "." in match["feet"] and (match["whole"] or match["alone"]):
        raise LengthError(f"{_quoted(text)} has a part of a foot and inches as well. {_FORMS}.")
    return 12.0 * float(match["feet"]) + inches


def _inches(match: re.Match[str], text: str) -> float:
    part = _fraction(match["part"], text) if match["part"] else 0.0
    if match["part"] and ("." in match["whole"] or part >= 1):
        raise LengthError(f"{_quoted(text)} has a fraction of one or more, or a decimal before it. {_FORMS}.")
    whole = float(match["whole"] or 0)
    return whole + part + (_fraction(match["alone"], text) if match["alone"] else 0.0)


def _fraction(fraction: str, text: str) -> float:
    top, bottom = (int(digits) for digits in fraction.split("/"))
    if bottom == 0:
        raise LengthError(f"{_quoted(text)} divides by zero. {_FORMS}.")
    return top / bottom


def _normalised(text: str) -> str:
    if len(text) > _LONGEST_TEXT:
        raise _not_a_length(text)
    plain = re.sub(r"\s+", " ", text.translate(_TRANSLATION)).strip().lower()
    return re.sub(r"^- ", "-", plain)


def _checked_number(number: float) -> float:
    try:
        inches = float(number)
    except OverflowError:
        raise LengthError(f"A number of that size is not a length. {_FORMS}.") from None
    if not math.isfinite(inches):
        raise _not_a_length(number)
    return inches


def _digits(number: int) -> str:
    # Turning a number of thousands of digits into text is slow, and refused by Python itself.
    return str(number) if 0 <= number < 10**8 else ""


def _quoted(text: object) -> str:
    if isinstance(text, int) and abs(text) > 10**20:
        return "A number of that size"
    # A lone surrogate or a control character in it could not be printed.
    shown = "".join(letter if letter.isprintable() else "?" for letter in str(text).strip())
    return f"“{shown[:24]}…”" if len(shown) > 25 else f"“{shown}”"


def _not_a_length(text: object) -> LengthError:
    if isinstance(text, str) and not text.strip():
        return LengthError(f"Nothing was typed. {_FORMS}.")
    return LengthError(f"{_quoted(text)} is not a length. {_FORMS}.")


def _not_a_size(text: object) -> LengthError:
    return LengthError(f"{_quoted(text)} is not an opening size. Write width and then height, as 3-0 x 7-0.")


# --- Writing ---

Rounding = Literal["near", "down", "up"]
"""How a number is shown that lies between two steps.

`down`: what must be at least so much (a gap, a clear width, the angle a door reaches), and the most that is
allowed. `up`: what must be at most so much (how far a door stands out), the least that is asked for, and what
is missing. `near`: everything else.
"""
_RIGHT_ANGLES = (0.0, 90.0, 180.0)
_WHOLE = 2.0**53
"""From here on every float is a whole number; so many steps of the largest would be infinite."""


def rounded(number: float, per_unit: float, rounding: Rounding = "near") -> float:
    """Return a number rounded to whole steps, `per_unit` of them to one; `near` takes a half outward.

    What arithmetic left a hair short of 3/32 is 3/32. Raises ValueError when the number is not finite.
    """
    if not math.isfinite(number):
        raise ValueError(f"cannot show {number}: it is not a finite number")
    if abs(number) >= _WHOLE:
        return number
    steps = number * per_unit
    nearest = math.copysign(math.floor(abs(steps) + 0.5 + TOLERANCE), number)
    if rounding == "near" or abs(number - nearest / per_unit) <= _ON_A_STEP:
        return nearest / per_unit + 0.0
    return (math.floor(steps) if rounding == "down" else math.ceil(steps)) / per_unit + 0.0


def format_fraction(inches: float, precision: Precision = 64, rounding: Rounding = "near") -> str:
    """Write inches as a reduced fraction without a unit: `4-1/2`."""
    shown = rounded(inches, precision, rounding)
    whole, part = divmod(round(abs(shown) * precision), precision)
    fraction = _fraction_text(part, precision)
    body = f"{whole}-{fraction}" if whole and fraction else fraction or str(whole)
    return ("-" if shown < 0 else "") + body


def format_feet(inches: float) -> str:
    """Write inches in feet and inches, to the nearest 1/64: `3'-0 1/2"`; less than a foot as `11-1/2"`."""
    shown = rounded(inches, 64)
    whole, part = divmod(round(abs(shown) * 64), 64)
    if whole < 12:
        return f'{format_fraction(shown)}"'
    fraction = _fraction_text(part, 64)
    return f"{'-' if shown < 0 else ''}{whole // 12}'-{whole % 12}{' ' + fraction if fraction else ''}\""


@lru_cache(maxsize=4096)
def format_size(inches: float, places: int = 3, rounding: Rounding = "near") -> str:
    """Write a length that somebody gave or a table names: 64ths where it is so many, else decimals.

    Inches, without a unit: `4-1/2` for a hinge, `0.134` for a leaf of it.
    """
    if abs(inches - rounded(inches, 64)) <= _ON_A_STEP:
        return format_fraction(inches)
    return format_decimal(inches, places, rounding)


def format_lossless(inches: float, metric: bool = False) -> str:
    """Write a length with its unit so that it reads back as it was: `1-7/16 in`, `1000 mm`.

    What is a whole number of 64ths or of tenths of a millimetre is written so, the display's unit first; what
    is neither has as many decimals as it takes.
    """
    millimetres = inches * MM_PER_INCH
    if abs(inches - rounded(inches, 10 * MM_PER_INCH)) <= TOLERANCE:
        tenths = f"{format_decimal(millimetres, 1)} mm"
        if metric or abs(inches - rounded(inches, 64)) > TOLERANCE:
            return tenths
    if metric and abs(inches - rounded(inches, 64)) > TOLERANCE:
        return f"{format_decimal(millimetres, 8)} mm"
    return f"{format_size(inches, 10)} in"


def format_decimal(number: float, places: int = 3, rounding: Rounding = "near") -> str:
    """Write a number with at most so many decimals: `0.134`."""
    text = f"{rounded(number, 10**places, rounding):.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def format_mm(inches: float, places: int = 1, rounding: Rounding = "near") -> str:
    """Write inches in millimetres: `114.3 mm`."""
    return f"{rounded(inches * MM_PER_INCH, 10**places, rounding):.{places}f} mm"


def format_angle(degrees: float, rounding: Rounding = "down") -> str:
    """Write an angle in degrees: whole when it is whole, else one decimal.

    An angle that a door reaches is never shown larger than it is. 0, 90 and 180 are said only of an angle
    that is exactly so; what would round to one of them is said to be just over or just under it.
    """
    if abs(degrees - round(degrees)) <= TOLERANCE:
        return f"{round(degrees)}°"
    shown = rounded(degrees, 10, rounding)
    if shown in _RIGHT_ANGLES:
        beside = f"just {'over' if degrees > shown else 'under'} {shown:.0f}°"
        return "less than 0.1°" if shown == 0.0 and degrees > 0 else beside
    return f"{shown:.1f}°"


@dataclass(frozen=True, slots=True)
class Display:
    """How lengths are shown, so that table, picture, sheet and sentence say the same.

    `precision` is the denominator of the fractions; `metric` shows millimetres. A hinge size stays in inches:
    it is the name of the goods.
    """

    precision: Precision = 32
    metric: bool = False

    @property
    def step(self) -> float:
        """The least difference that is shown, inches."""
        return 0.1 / MM_PER_INCH if self.metric else 1 / self.precision

    def shown(self, inches: float, rounding: Rounding = "near") -> float:
        """Return a length as it is shown, inches."""
        return rounded(inches, 10 * MM_PER_INCH if self.metric else self.precision, rounding)

    def length(self, inches: float, rounding: Rounding = "near") -> str:
        """Write a length with its unit: `4-1/2 in`, `114.3 mm`; never something as nothing."""
        shown = self.shown(inches, rounding)
        if shown == 0.0 and abs(inches) > _ON_A_STEP:
            return f"{'less than ' if inches > 0 else 'more than -'}{self._written(self.step)}"
        return self._written(shown)

    def exact(self, inches: float, rounding: Rounding = "near") -> str:
        """Write a length that somebody gave, with its unit, however fine: `0.134 in`."""
        return format_mm(inches, 1, rounding) if self.metric else f"{format_size(inches, 3, rounding)} in"

    def opening(self, width: float, height: float) -> str:
        """Write an opening size, width first: 3'-0" x 7'-0", or 914 x 2134 mm."""
        if self.metric:
            return f"{format_mm(width, 0).removesuffix(' mm')} x {format_mm(height, 0)}"
        return f"{format_feet(width)} x {format_feet(height)}"

    def size(self, height: float, width: float) -> str:
        """Write a hinge size, height first: 4-1/2 x 4."""
        return f"{format_size(height)} x {format_size(width)}"

    def angle(self, degrees: float, rounding: Rounding = "down") -> str:
        """Write an angle as `format_angle` does."""
        return format_angle(degrees, rounding)

    def _written(self, inches: float) -> str:
        return format_mm(inches) if self.metric else f"{format_fraction(inches, self.precision)} in"


def _fraction_text(part: int, precision: int) -> str:
    shared = math.gcd(part, precision)
    return f"{part // shared}/{precision // shared}" if part else ""
