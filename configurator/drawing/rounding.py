"""Lengths shown on the safe side: a least value never smaller than it is, a greatest never larger."""

import math
from collections.abc import Callable

from configurator.units import MM_PER_INCH, Display, format_decimal, format_exact

NEAR = 1e-8
"""Inches. What was closed in on is no nearer known; within so much of a step it is that step."""
_THOUSAND = 1000.0


def at_least(inches: float, display: Display) -> str:
    """Write a length that must not be less, rounded up to what is shown: `4-3/8 in`."""
    return display.length(stepped_up(inches, display))


def at_most(inches: float, display: Display) -> str:
    """Write a length that must not be more, rounded down to what is shown."""
    return display.length(stepped_down(inches, display))


def stepped_up(inches: float, display: Display) -> float:
    """Return a length that must not be less, as it is shown."""
    return _stepped(inches, _per_inch(display), math.ceil)


def stepped_down(inches: float, display: Display) -> float:
    """Return a length that must not be more, as it is shown."""
    return _stepped(inches, _per_inch(display), math.floor)


def width_from(inches: float) -> str:
    """Write a hinge open width from which something holds: a fraction if it is one, else 3 places, up."""
    return _width(inches, math.ceil)


def width_to(inches: float) -> str:
    """Write a hinge open width up to which something holds: likewise, rounded down."""
    return _width(inches, math.floor)


def _width(inches: float, towards: Callable[[float], int]) -> str:
    nearest = round(inches * 64) / 64
    if abs(inches - nearest) <= NEAR:
        return format_exact(nearest)
    return format_decimal(_stepped(inches, _THOUSAND, towards))


def _per_inch(display: Display) -> float:
    return 10 * MM_PER_INCH if display.metric else float(display.precision)


def _stepped(inches: float, per_inch: float, towards: Callable[[float], int]) -> float:
    nearest = round(inches * per_inch)
    number = nearest if abs(inches - nearest / per_inch) <= NEAR else towards(inches * per_inch)
    return number / per_inch
