"""Small lengths as a detail says them: a fraction only where one says it exactly."""

from configurator.units import TOLERANCE, Display, Precision, format_decimal, format_length

_FINEST: Precision = 64


def fine(inches: float, display: Display) -> str:
    """Write a length with its unit: a fraction to the 64th where it is one, else decimals, as 0.134 in.

    A leaf of 0.134 in would otherwise read 1/8 in. Millimetres as the display has them.
    """
    if display.metric:
        return display.length(inches)
    if abs(inches * _FINEST - round(inches * _FINEST)) <= TOLERANCE * _FINEST:
        return format_length(inches, _FINEST, unit_mark=False) + " in"
    return f"{format_decimal(inches)} in"
