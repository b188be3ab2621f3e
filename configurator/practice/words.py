"""How numbers and reasons read in a problem and its solution."""

import re

from configurator.units import format_decimal, format_size, rounded

_ONES = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


def number_in(text: str) -> int | None:
    """Read a whole number in figures or in words up to ninety-nine; None for anything else."""
    plain = re.sub(r"(?<=\d),(?=\d{3}\b)", "", text.strip().lower())
    if re.fullmatch(r"\d{1,7}", plain):
        return int(plain)
    words = plain.replace("-", " ").split()
    if len(words) == 1 and plain in _ONES:
        return _ONES.index(plain)
    if words and words[0] in _TENS and (len(words) == 1 or (len(words) == 2 and words[1] in _ONES[1:10])):
        return 10 * (_TENS.index(words[0]) + 2) + (_ONES.index(words[1]) if len(words) == 2 else 0)
    return None


def fraction(value: float) -> str:
    """Write a length of a solution: a fraction where it is one, else four decimals; inches without a mark."""
    return format_size(value, 4)


def decimal(value: float) -> str:
    """Write a number of a formula with four decimals at most, without a mark."""
    return format_decimal(value, 4)


def places(value: float, decimals: int) -> str:
    """Write a number of a solution with just so many decimals, as its answer is asked for: `152.0`."""
    return f"{rounded(value, 10**decimals):.{decimals}f}"
