"""The work behind one number of the comparison: every key of its rows can be asked for."""

from collections.abc import Callable

from configurator.study.candidate import Candidate
from configurator.study.derivation import angles, lengths, passages, pin_steps
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.marks import marks_of
from configurator.study.derivation.terms import Symbol, less
from configurator.study.derivation.working import Derivation, Working

_WORK: dict[str, Callable[[Case], Symbol | None]] = {
    "greatest_angle_bare": angles.opens_to_bare,
    "greatest_angle": angles.opens_to,
    "rests_at": angles.rests,
    "pin_off_door_face": pin_steps.off_door,
    "pin_off_frame_face": pin_steps.off_frame,
    "axis_from_heel": pin_steps.from_heel,
    "barrel_past_frame": lengths.barrel_past_frame,
    "barrel_past_wall": lengths.barrel_past_wall,
    "clear_past_frame_at_180": lengths.clear_past_frame,
    "clear_width_at_90": lengths.clear_width,
    "hardware_in_clear_width": lengths.hardware_taken,
    "latch_edge_least": passages.latch_edge,
    "hinge_edge_least": passages.hinge_edge,
    "encroachment_greatest": lengths.stands_out,
    "leaf_out_at_rest": lengths.stands_out_at_rest,
}
_ANGLES = frozenset({"greatest_angle_bare", "greatest_angle", "rests_at"})

KEYS = tuple(_WORK)
"""The numbers that can be asked for, by their names in the results."""


def derive(candidate: Candidate, key: str) -> Derivation:
    """Return the work behind one number of a candidate; inches and degrees.

    The last step's value is found from its formula alone and equals the candidate's to the geometry's
    tolerance. Raises KeyError for a name that is not one of KEYS.
    """
    return derive_case(Case(candidate), key)


def derive_case(case: Case, key: str) -> Derivation:
    """`derive` for a case made ready already, of which nothing was worked yet."""
    answer = _WORK[key](case)
    value = None if answer is None else answer.value
    work = case.work
    used = work.used() if value is not None else tuple(work.known.values())
    return Derivation(
        key=key,
        value=value,
        unit="angle" if key in _ANGLES else "length",
        steps=work.needed() if value is not None else (),
        given=used,
        meanings=work.meanings,
        marks={**marks_of(case.h, case.pin, case.opening), **work.marks},
        angle=work.angle,
        remark=" ".join(work.remarks),
        beside=frozenset(work.also),
    )


def derive_difference(first: Candidate, last: Candidate, key: str) -> Derivation:
    """Return the work behind the difference of one number between two widths of a leaf.

    Without a value where one of the two has none. Raises KeyError as `derive` does.
    """
    one, other = derive(first, key), derive(last, key)
    work = Working()
    if one.value is None or other.value is None:
        return Derivation(key, None, one.unit, (), (), {}, {}, last.rests_at, "One of the two has no value.")
    a_1 = work.given("A_1", one.value, one.unit, f"{MEANINGS['A_1']}, {first.name}")
    a_2 = work.given("A_2", other.value, other.unit, f"{MEANINGS['A_2']}, {last.name}")
    answer = work.let("delta", less(a_2, a_1), one.unit, MEANINGS["delta"])
    steps, given = work.needed(), work.used()
    return Derivation(key, answer.value, one.unit, steps, given, work.meanings, {}, last.rests_at)
