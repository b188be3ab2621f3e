"""Where the pin stands, worked from what was given, for every mounting."""

from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.terms import Negative, Symbol, Term, add, call, half, less


def inset(case: Case) -> Symbol:
    """Work out how far the door's face lies behind the frame's."""
    return case.work.let(
        "i", less(case.letter("R"), case.letter("k"), case.letter("T")), meaning=MEANINGS["i"]
    )


def off_frame(case: Case) -> Symbol:
    """Work out how far the pin stands off the frame face."""
    if "y_p" in case.work.known:
        return case.work.known["y_p"]
    if case.h.axis is not None:
        formula: Term = less(off_door(case), inset(case))
    else:
        formula = _OFF_FRAME[case.h.mounting](case)
    return case.work.let("y_p", formula, meaning=MEANINGS["y_p"])


def off_door(case: Case) -> Symbol:
    """Work out how far the pin stands off the face of the closed door."""
    if "o" in case.work.known:
        return case.work.known["o"]
    if case.h.axis is not None:
        return case.work.given("o", case.h.axis[0], meaning=MEANINGS["o"])
    if case.h.mounting == "half surface":
        formula = half(case.letter("d_b"))
    elif case.h.mounting == "full mortise" and not case.pin.backset_disagreement:
        formula = less(half(case.letter("W")), less(case.letter("T"), case.letter("b")))
    else:
        formula = add(off_frame(case), inset(case))
    return case.work.let("o", formula, meaning=MEANINGS["o"])


def across(case: Case) -> Symbol:
    """Work out how far across the pin stands from the rabbet face."""
    if "x_p" in case.work.known:
        return case.work.known["x_p"]
    if case.h.axis is not None:
        heel = case.work.given("h_a", case.h.axis[1], meaning=MEANINGS["h_a"])
        formula: Term = add(case.letter("g_h"), heel)
    else:
        formula = _ACROSS[case.h.mounting](case)
    return case.work.let("x_p", formula, meaning=MEANINGS["x_p"])


def from_heel(case: Case) -> Symbol:
    """Work out how far the axis stands in from the door's heel edge."""
    across(case)
    if "h_a" in case.work.known:
        return case.work.known["h_a"]
    return case.work.let("h_a", less(across(case), case.letter("g_h")), meaning=MEANINGS["h_a"])


def _full_mortise_off_frame(case: Case) -> Term:
    if case.h.b_f is None:
        b_f = case.work.let("b_f", add(case.letter("b"), case.letter("k")), meaning=MEANINGS["b_f"])
    else:
        b_f = case.letter("b_f")
    return less(half(case.letter("W")), less(case.letter("R"), b_f))


def _on_the_frame(case: Case) -> Term:
    return half(case.letter("d_b"))


def _half_surface_off_frame(case: Case) -> Term:
    return less(off_door(case), inset(case))


def _full_surface_off_frame(case: Case) -> Term:
    barrel = half(case.letter("d_b"))
    return call("max", barrel, less(barrel, inset(case)))


def _leaf_gap(case: Case) -> Term:
    """What lies between the closed leaves of the hinge, given or left over of the gap."""
    if case.h.a is not None:
        return case.letter("a")
    left: Term = case.letter("g_h")
    for standing_out in (_out_of_mortise(case, "m_d"), _out_of_mortise(case, "m_f")):
        left = left if standing_out is None else less(left, standing_out)
    return case.work.let("a", left, meaning=MEANINGS["a"])


def _out_of_mortise(case: Case, mortise: str) -> Term | None:
    """How far a leaf stands out of its mortise; None where it is flush or is in none."""
    surface = {"half mortise": "m_f", "half surface": "m_d"}.get(case.h.mounting)
    if getattr(case.h, mortise) is None or mortise == surface:
        return None
    return less(case.letter("t"), case.letter(mortise))


def _from_frame_leaf(case: Case) -> Term:
    gap, out = half(_leaf_gap(case)), _out_of_mortise(case, "m_f")
    return gap if out is None else add(out, gap)


def _from_door_leaf(case: Case) -> Term:
    """Across for a half mortise hinge: from the door's edge back by half of what lies between the leaves."""
    gap, out = half(_leaf_gap(case)), _out_of_mortise(case, "m_d")
    edge: Term = case.letter("g_h")
    return less(edge, gap) if out is None else less(edge, out, gap)


def _half_gap(case: Case) -> Term:
    return half(case.letter("g_h"))


def _swing_clear_across(case: Case) -> Term:
    if case.h.x_p is not None:
        return case.letter("x_p")
    return Negative(add(off_door(case), case.letter("T")))


_OFF_FRAME = {
    "full mortise": _full_mortise_off_frame,
    "half mortise": _on_the_frame,
    "half surface": _half_surface_off_frame,
    "full surface": _full_surface_off_frame,
    "swing clear": _on_the_frame,
}
_ACROSS = {
    "full mortise": _from_frame_leaf,
    "half mortise": _from_door_leaf,
    "half surface": _from_frame_leaf,
    "full surface": _half_gap,
    "swing clear": _swing_clear_across,
}
