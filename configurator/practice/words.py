"""How numbers and reasons read in a problem and its solution."""

from configurator.units import format_decimal, format_size, rounded


def fraction(value: float) -> str:
    """Write a length of a solution: a fraction where it is one, else four decimals; inches without a mark."""
    return format_size(value, 4)


def decimal(value: float) -> str:
    """Write a number of a formula with four decimals at most, without a mark."""
    return format_decimal(value, 4)


def places(value: float, decimals: int) -> str:
    """Write a number of a solution with just so many decimals, as its answer is asked for: `152.0`."""
    return f"{rounded(value, 10**decimals):.{decimals}f}"
