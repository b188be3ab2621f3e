"""How numbers and reasons read in a problem and its solution."""

from configurator.units import format_decimal, format_length


def fraction(value: float) -> str:
    """Write a length of a solution: a fraction where it is one, else four decimals; inches without a mark."""
    in_64ths = value * 64
    if abs(in_64ths - round(in_64ths)) < 1e-6:
        return format_length(value, 64, unit_mark=False)
    return format_decimal(value, 4)


def decimal(value: float) -> str:
    """Write a length in a formula with four decimals at most; inches without a mark."""
    return format_decimal(value, 4)


def sentence(words: str) -> str:
    """Return the words with a capital at their head and a full stop at their end."""
    return f"{words[:1].upper()}{words[1:]}{'' if words.endswith('.') else '.'}"
