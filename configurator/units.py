"""Lengths in inches: read what the trade types, write what the trade writes.

Inside the program a length is a float of inches, so that every 64th is exact. Feet, fractions and millimetres
exist only here: on the way in and on the way out. What is shown never rounds across a limit that it fails:
31-31/32 in against a limit of 32 in shows as 31-15/16, not as 32.
"""

import math
import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

MM_PER_INCH = 25.4
TOLERANCE = 1e-9
"""Inches. Two lengths no further apart than this are the same length."""
LARGEST = 1_000_000.0
"""Inches. Nothing about a door is longer; beyond it a typing slip is certain."""
_LONGEST_TEXT = 60
_MM_PER_UNIT = {"mm": 1.0, "cm": 10.0, "m": 1000.0}

Precision = Literal[16, 32, 64]
Side = Literal["min", "max"]


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
    shown = str(text).strip()
    return f"“{shown[:24]}…”" if len(shown) > 25 else f"“{shown}”"


def _not_a_length(text: object) -> LengthError:
    if isinstance(text, str) and not text.strip():
        return LengthError(f"Nothing was typed. {_FORMS}.")
    return LengthError(f"{_quoted(text)} is not a length. {_FORMS}.")


def _not_a_size(text: object) -> LengthError:
    return LengthError(f"{_quoted(text)} is not an opening size. Write width and then height, as 3-0 x 7-0.")


# --- Writing ---


def format_length(
    inches: float,
    precision: Precision = 16,
    style: Literal["inches", "feet"] = "inches",
    unit_mark: bool = True,
    limit: float | None = None,
    side: Side | None = None,
) -> str:
    """Write a length as a reduced fraction, to the nearest of the precision.

    Inches; `feet` writes 3'-0 1/2" from one foot up. Given a `limit`, a value that is not the limit is never
    shown as the limit nor beyond it. `side` says that the limit is a least ("min") or a greatest ("max"), so
    that only a value that fails it is held back.
    Raises ValueError when the length is not finite.
    """
    shown = _rounded(inches, precision, _guards(limit, side, inches))
    sign = "-" if shown < 0 else ""
    whole, part = divmod(round(abs(shown) * precision), precision)
    if style == "feet" and whole >= 12:
        return sign + _feet_text(*divmod(whole, 12), _fraction_text(part, precision), unit_mark)
    fraction = _fraction_text(part, precision)
    body = f"{whole}-{fraction}" if whole and fraction else fraction or str(whole)
    return sign + body + ('"' if unit_mark else "")


def format_mm(inches: float, places: int = 1, limit: float | None = None, side: Side | None = None) -> str:
    """Write a length in millimetres; length and limit are inches, the limit is kept as in `format_length`."""
    guards = [guard * MM_PER_INCH for guard in _guards(limit, side, inches)]
    shown = _rounded(inches * MM_PER_INCH, 10**places, guards)
    return f"{shown + 0.0:.{places}f} mm"


def format_exact(inches: float) -> str:
    """Write a length without rounding: a fraction when it is a whole number of 64ths, else all its decimals.

    Inches, without a mark. Raises ValueError when the length is not finite.
    """
    if abs(inches - _rounded(inches, 64, ())) <= TOLERANCE:
        return format_length(inches, 64, unit_mark=False)
    return format(Decimal(repr(inches)), "f")


def format_decimal(
    number: float, places: int = 3, limit: float | None = None, side: Side | None = None
) -> str:
    """Write a number with at most that many decimals, as 0.134 for a leaf; limits as in `format_length`."""
    shown = _rounded(number, 10**places, _guards(limit, side, number))
    text = f"{shown + 0.0:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def format_angle(degrees: float, limit: float | None = None, side: Side | None = None) -> str:
    """Write an angle in degrees: whole when it is whole, else one decimal.

    179.97 shows as 179.9°, for 180, 90 and 0 are said only of an angle that is exactly so.
    """
    if abs(degrees - round(degrees)) <= TOLERANCE:
        return f"{round(degrees)}°"
    guards = [*_guards(limit, side, degrees), 0.0, 90.0, 180.0]
    return f"{_rounded(degrees, 10, guards):.1f}°"


@dataclass(frozen=True, slots=True)
class Display:
    """How lengths are shown, so that screen, page and finding say the same.

    `precision` is the denominator of the fractions; `metric` shows millimetres. A hinge size stays in inches:
    it is the name of the goods.
    """

    precision: Precision = 32
    metric: bool = False

    def length(self, inches: float, limit: float | None = None, side: Side | None = None) -> str:
        """Write a length with its unit: 4-1/2 in, or 114.3 mm."""
        if self.metric:
            return format_mm(inches, limit=limit, side=side)
        return format_length(inches, self.precision, unit_mark=False, limit=limit, side=side) + " in"

    def opening(self, width: float, height: float) -> str:
        """Write an opening size, width first: 3'-0" x 7'-0", or 914 x 2134 mm."""
        if self.metric:
            return f"{format_mm(width, 0).removesuffix(' mm')} x {format_mm(height, 0)}"
        return " x ".join(format_length(inches, self.precision, "feet") for inches in (width, height))

    def size(self, height: float, width: float) -> str:
        """Write a hinge size, height first: 4-1/2 x 4."""
        return f"{format_exact(height)} x {format_exact(width)}"

    def angle(self, degrees: float, limit: float | None = None, side: Side | None = None) -> str:
        """Write an angle as `format_angle` does."""
        return format_angle(degrees, limit, side)


def _guards(limit: float | None, side: Side | None, value: float) -> list[float]:
    if limit is None or (side == "min" and value > limit) or (side == "max" and value < limit):
        return []
    return [limit]


def _rounded(value: float, per_unit: int, guards: Iterable[float]) -> float:
    """Round to the nearest step, a half away from zero, but never to or across a guard it is not on."""
    if not math.isfinite(value):
        raise ValueError(f"cannot show {value}: it is not a finite number")
    # The tolerance lets 3/32 that arithmetic left a hair short round as 3/32 does.
    shown = math.copysign(math.floor(abs(value) * per_unit + 0.5 + TOLERANCE) / per_unit, value)
    for guard in guards:
        if value < guard - TOLERANCE <= shown + TOLERANCE * 0.5:
            shown = _stepped(math.floor, value, per_unit)
        elif shown - TOLERANCE * 0.5 <= guard + TOLERANCE < value:
            shown = _stepped(math.ceil, value, per_unit)
    return shown


def _stepped(round_off: Callable[[float], int], value: float, per_unit: int) -> float:
    return round_off(value * per_unit) / per_unit


def _fraction_text(part: int, precision: int) -> str:
    shared = math.gcd(part, precision)
    return f"{part // shared}/{precision // shared}" if part else ""


def _feet_text(feet: int, inches: int, fraction: str, unit_mark: bool) -> str:
    foot, inch = ("'", '"') if unit_mark else ("", "")
    return f"{feet}{foot}-{inches}{' ' + fraction if fraction else ''}{inch}"
