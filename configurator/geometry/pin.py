"""Where the pin of a hinge stands, and the plain lengths that follow from it alone.

Axes of the plan, used by the whole package: the origin is where the frame face on the pull side meets the
rabbet face of the hinge jamb; +x runs into the opening toward the latch jamb, +y out of the frame toward the
side the door swings into. Opening turns the leaf counter-clockwise about the pin. Lengths are inches.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from configurator.units import format_size

Point = tuple[float, float]

#: The one tolerance of the geometry, in inches: overlap no deeper than this is clear.
TOLERANCE: Final = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Hanging:
    """One leaf hung in its frame on one hinge width; every length in inches.

    O opening width between rabbet faces (for a leaf of a pair: to the other leaf's closed edge), T door
    thickness, g_h and g_l hinge-side and latch-side gap, beta latch bevel per inch of thickness, R rabbet
    depth, k stop gap, s stop height, F frame face width, D jamb depth, p frame face ahead of the wall face, b
    door hinge backset, b_f frame hinge backset (None: b + k), m_d and m_f mortise depths (None: flush), t
    leaf thickness, a gap between the closed leaves (None: worked out from g_h), W hinge open width, d_b
    barrel diameter, x_p where the pin of a swing-clear hinge stands across (None: -(o + T)).

    axis says where a leaf turns that hangs on something else than a butt, in place of what its mounting would
    give: off the door's pull face (positive out of the door) and from its heel edge (positive toward the
    latch). heel_radius rounds the heel edge about that axis (None: square). heel_stop False: no stop stands
    at the hinge jamb, for a heel that turns into it. wall is how thick the wall is (None: all behind its
    pull face is filled, as it is for a leaf that never comes there). outline is the jamb's own where it is no
    box with a stop: its corners in the plan's axes, from which F, R, s and D follow.
    """

    O: float  # noqa: E741 - the letter of the opening width
    T: float
    g_h: float
    g_l: float
    beta: float
    R: float
    k: float
    s: float
    F: float
    D: float
    p: float
    b: float
    t: float
    W: float
    d_b: float
    b_f: float | None = None
    m_d: float | None = None
    m_f: float | None = None
    a: float | None = None
    x_p: float | None = None
    mounting: str = "full mortise"
    axis: tuple[float, float] | None = None
    heel_radius: float | None = None
    heel_stop: bool = True
    wall: float | None = None
    outline: tuple[tuple[float, float], ...] | None = None

    @property
    def heel_s(self) -> float:
        """How far the stop at the hinge jamb stands into the opening, in; 0 where there is none."""
        return self.s if self.heel_stop else 0.0

    @property
    def i(self) -> float:
        """Inset: the door's pull face behind the frame face, in; negative if the door stands proud."""
        return self.R - self.k - self.T

    @property
    def w(self) -> float:
        """Net door width on the pull face, in."""
        return self.O - self.g_h - self.g_l

    @property
    def proud_d(self) -> float:
        """How far the door leaf of the hinge stands out of its mortise, in."""
        return 0.0 if self.m_d is None else self.t - self.m_d

    @property
    def proud_f(self) -> float:
        """How far the frame leaf of the hinge stands out of its mortise, in."""
        return 0.0 if self.m_f is None else self.t - self.m_f


@dataclass(frozen=True, slots=True)
class Pin:
    """Where the pin stands, in inches, and what the given dimensions disagree about.

    x_p across from the rabbet face, y_p off the frame face, o off the closed door's pull face, a the leaf gap
    used, b and b_f the backsets used or following from a surface leaf (None where no mortised leaf has one).
    packing is what goes under the door leaf of a full surface hinge (negative: under the frame leaf).
    backset_disagreement is k - (b_f - b) as given; gap_disagreement is g_h less what the leaves leave.
    """

    x_p: float
    y_p: float
    o: float
    a: float
    b: float | None
    b_f: float | None
    packing: float = 0.0
    backset_disagreement: float = 0.0
    gap_disagreement: float = 0.0

    @property
    def at(self) -> tuple[float, float]:
        """The pin's centre in plan, in."""
        return (self.x_p, self.y_p)


def _on_axis(h: Hanging, off_face: float, from_heel: float) -> Pin:
    """Turning about an axis whose place on the leaf is known."""
    return Pin(h.g_h + from_heel, off_face - h.i, off_face, h.g_h, None, None)


def _full_mortise(h: Hanging) -> Pin:
    """Both leaves in mortises; the frame side rules where the two backsets disagree."""
    b_f = h.b + h.k if h.b_f is None else h.b_f
    y_p = h.W / 2 - (h.R - b_f)
    left = h.g_h - h.proud_d - h.proud_f
    a = left if h.a is None else h.a
    disagreement = 0.0 if h.b_f is None else h.k - (h.b_f - h.b)
    return Pin(h.proud_f + a / 2, y_p, y_p + h.i, a, h.b, b_f, 0.0, disagreement, left - a)


def _half_mortise(h: Hanging) -> Pin:
    """Door leaf in its mortise, frame leaf on the frame face."""
    y_p = h.d_b / 2
    o = y_p + h.i
    a = h.g_h - h.proud_d if h.a is None else h.a
    b = h.T + o - h.W / 2
    return Pin(h.g_h - h.proud_d - a / 2, y_p, o, a, b, None)


def _half_surface(h: Hanging) -> Pin:
    """Door leaf on the door face, frame leaf in its mortise."""
    o = h.d_b / 2
    y_p = o - h.i
    a = h.g_h - h.proud_f if h.a is None else h.a
    b_f = h.R + y_p - h.W / 2
    return Pin(h.proud_f + a / 2, y_p, o, a, None, b_f)


def _full_surface(h: Hanging) -> Pin:
    """Both leaves on the faces, the farther-back face packed out level with the other."""
    y_p = h.d_b / 2 + (abs(h.i) - h.i) / 2
    return Pin(h.g_h / 2, y_p, y_p + h.i, h.g_h, None, None, packing=h.i)


def _swing_clear(h: Hanging) -> Pin:
    """Leaves bent round, so that at 90 degrees the door stands clear of the rabbet face."""
    y_p = h.d_b / 2
    o = y_p + h.i
    x_p = -(o + h.T) if h.x_p is None else h.x_p
    return Pin(x_p, y_p, o, h.g_h, None, None)


_PIN_BY_MOUNTING: Final[dict[str, Callable[[Hanging], Pin]]] = {
    "full mortise": _full_mortise,
    "half mortise": _half_mortise,
    "half surface": _half_surface,
    "full surface": _full_surface,
    "swing clear": _swing_clear,
}

#: The mountings the pin can be worked out for.
MOUNTINGS: Final = tuple(_PIN_BY_MOUNTING)


def locate_pin(h: Hanging) -> Pin:
    """Work out where the pin stands: at the axis given, else where the mounting puts it.

    Full mortise, inches: y_p = W/2 - (R - b_f), o = y_p + i, x_p = (t - m_f) + a/2; without a b_f of its own
    that is o = W/2 - (T - b). Half mortise and full surface hang off the frame face, half surface off the
    door face, by half the barrel; derived. A width that a surface mounting cannot take is told by
    `backset_refusal`. Raises ValueError for a mounting that is not known.
    """
    if h.axis is not None:
        return _on_axis(h, *h.axis)
    pin_of = _PIN_BY_MOUNTING.get(h.mounting)
    if pin_of is None:
        raise ValueError(f"{h.mounting!r} is not a mounting; it is one of: {', '.join(MOUNTINGS)}.")
    return pin_of(h)


def backset_refusal(h: Hanging, pin: Pin) -> str | None:
    """Say why a hinge is too wide for a half mortise or half surface mounting, None if it is not.

    Refused where the backset that follows for the mortised leaf is below 0: the leaf would run out past the
    door's or the frame's stop side. The pin and every clearance still have values, for they do not depend on
    the width in those mountings.
    """
    backsets = {"half mortise": ("door", pin.b), "half surface": ("frame", pin.b_f)}
    side, backset = backsets.get(h.mounting, ("", None))
    if backset is None or backset >= -TOLERANCE:
        return None
    return (
        f"A hinge {format_size(h.W)} in wide is too wide for this {h.mounting} mounting: its {side} leaf "
        f"would run {format_size(-backset, 3, 'up')} in out past the {side}'s stop side."
    )


def barrel_past_frame(h: Hanging, pin: Pin) -> float:
    """How far the barrel stands past the frame face, in."""
    return pin.y_p + h.d_b / 2


def barrel_past_wall(h: Hanging, pin: Pin) -> float:
    """How far the barrel stands past the wall face, in."""
    return barrel_past_frame(h, pin) + h.p


def clear_past_frame_at_180(h: Hanging, pin: Pin) -> float:
    """How far the leaf open flat stands off the frame face, in; given whether or not 180 is reached."""
    return 2 * pin.o - h.i


def barrel_freedom(h: Hanging, pin: Pin) -> float:
    """The lesser distance from barrel to door face and to frame face, in; negative where it overlaps."""
    return min(pin.o, pin.y_p) - h.d_b / 2


def least_width_for_clearance(T: float, b: float, c: float) -> float:
    """Least exact hinge width that clears what stands c past the door face with the door open flat.

    Inches: 2 (T - b) + c, before rounding up to stock. Source: The Building Trades Pocketbook, read: twice
    the thickness of the door, less 1/2 in, plus the projection, with the edge of the butt 1/4 in back.
    """
    return 2 * (T - b) + c


def least_width_for_barrel(h: Hanging) -> float:
    """Least width of a full mortise hinge whose barrel is free of door face and frame face, in; derived."""
    b_f = h.b + h.k if h.b_f is None else h.b_f
    return 2 * (h.R - b_f) + h.d_b + max(0.0, -2 * h.i)
