"""How far a leaf stands out from the wall on the pull side as it swings. Inches and radians."""

import math
from collections.abc import Iterable

from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.polar import TAU, PolarShape, cosine_and_sine


def encroachment(parts: Iterable[PolarShape], h: Hanging, pin: Pin, theta: float) -> float:
    """How far the parts stand out from the wall face on the pull side with the door at theta, in."""
    cosine, sine = cosine_and_sine(theta)
    x_p, y_p = pin.at
    out = max(
        (x - x_p) * sine + (y - y_p) * cosine + part.shape.radius
        for part in parts
        for x, y in part.shape.points
    )
    return y_p + out + h.p


def greatest_encroachment(parts: Iterable[PolarShape], h: Hanging, pin: Pin, reach: float) -> float:
    """The most that the parts stand out from the wall face anywhere from closed to reach, in; exact."""
    out = max(
        _greatest_out(rho, phi, reach) + part.shape.radius for part in parts for rho, phi in part.corners
    )
    return pin.y_p + out + h.p


def _greatest_out(rho: float, phi: float, reach: float) -> float:
    """The farthest out a corner comes: straight out from the pin if it gets there, else at an end."""
    if (math.pi / 2 - phi) % TAU <= reach:
        return rho
    return rho * max(math.sin(phi), math.sin(phi + reach))


def encroachment_curve(
    parts: Iterable[PolarShape], h: Hanging, pin: Pin, reach: float, samples: int = 91
) -> list[tuple[float, float]]:
    """Angle and encroachment at evenly spaced angles from closed to reach, both ends counted.

    Raises ValueError for fewer than two samples.
    """
    if samples < 2:
        raise ValueError(f"A curve needs two samples or more, not {samples}.")
    turning = tuple(parts)
    angles = [reach * step / (samples - 1) for step in range(samples)]
    return [(theta, encroachment(turning, h, pin, theta)) for theta in angles]
