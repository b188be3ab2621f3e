"""The comparison table: measured facts down, hinge open widths across, the difference in words."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from configurator.rules.answers import Stopped
from configurator.rules.wording import hardware, obstruction
from configurator.study import Candidate, Study
from configurator.units import Display

LEAST_CLEAR_WIDTH = 32.0
"""Inches, 2010 ADA Standards 404.2.3; a shown clear width never rounds across it."""
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Row:
    """One measured fact: the plain words and the trade's, what it is measured from, a text a width.

    `key` is the fact's name in the results; `difference` says what the last width does beside the first.
    """

    key: str
    plain: str
    trade: str
    measured: str
    values: tuple[str, ...]
    difference: str


@dataclass(frozen=True, slots=True)
class Comparison:
    """The rows of one leaf; `widths` heads the columns, `between` the difference: `4 to 4-1/2`."""

    leaf: str
    widths: tuple[str, ...]
    rows: tuple[Row, ...]
    between: str


@dataclass(frozen=True, slots=True)
class _Fact:
    key: str
    plain: str
    trade: str
    measured: str
    more: str
    less: str
    limit: float | None = None


_LENGTHS = (
    _Fact(
        "pin_off_door_face",
        "hinge pin stands off the door by",
        "pin axis off door face",
        "from the closed door's pull face to the pin axis",
        "farther off the door",
        "nearer the door",
    ),
    _Fact(
        "pin_off_frame_face",
        "hinge pin stands off the frame by",
        "pin axis off frame face",
        "from the frame face to the pin axis",
        "farther off the frame",
        "nearer the frame",
    ),
    _Fact(
        "barrel_past_frame",
        "barrel stands out from the frame by",
        "barrel past frame face",
        "from the frame face to the outside of the barrel",
        "farther out",
        "less far out",
    ),
    _Fact(
        "barrel_past_wall",
        "barrel stands out from the wall by",
        "barrel past wall face",
        "from the wall face to the outside of the barrel",
        "farther out",
        "less far out",
    ),
    _Fact(
        "clear_past_frame_at_180",
        "room behind the door, opened flat",
        "clear past frame face at 180",
        "from the frame face to the face of the door at 180 degrees",
        "more room",
        "less room",
    ),
)
_CLEAR = (
    _Fact(
        "clear_width_at_90", "walk-through width, door square open", "clear width at 90",
        "from the door's face to the frame stop on the lock side, at 90 degrees", "wider", "narrower",
        LEAST_CLEAR_WIDTH,
    ),
    _Fact(
        "hardware_in_clear_width", "hardware takes from that width", "hardware in clear width",
        "what stands past the door's face at 90 degrees, 34 to 80 in above the floor", "more", "less",
    ),
    _Fact(
        "latch_edge_least", "tightest gap at the lock side", "latch edge least",
        "from the door's lock edge to the frame, over the whole swing", "looser", "tighter",
    ),
    _Fact(
        "hinge_edge_least", "tightest gap at the hinge side", "hinge edge least",
        "from the door's hinge edge to the frame and casing, over the whole swing", "looser", "tighter",
    ),
    _Fact(
        "encroachment_greatest", "stands out into the room, at most", "encroachment, greatest",
        "from the wall face to the farthest corner of the door, over the swing", "farther", "less far",
    ),
    _Fact(
        "leaf_out_at_rest", "stands out into the room, at rest", "encroachment at rest",
        "from the wall face to the farthest corner of the door, where it rests", "farther", "less far",
    ),
)  # fmt: skip


def comparisons(study: Study, display: Display) -> tuple[Comparison, ...]:
    """Return one table a leaf, in the order of the leaves."""
    leaves = dict.fromkeys(candidate.leaf for candidate in study.candidates)
    return tuple(
        _comparison(leaf, [c for c in study.candidates if c.leaf == leaf], display) for leaf in leaves
    )


def _comparison(leaf: str, candidates: list[Candidate], display: Display) -> Comparison:
    names = [display.size(0, c.hinge_width).split(" x ")[1] for c in candidates]
    lengths = [_length_row(fact, candidates, display) for fact in _LENGTHS]
    facts = [_of_leaf(fact, leaf) for fact in _CLEAR if _is_shown(fact, candidates)]
    clear = [_length_row(fact, candidates, display) for fact in facts]
    rows = (*_angle_rows(candidates, display), *lengths, *clear)
    widths = tuple(f"{name} in" for name in names)
    return Comparison(leaf, widths, rows, f"{names[0]} to {names[-1]}" if len(names) > 1 else "")


def _of_leaf(fact: _Fact, leaf: str) -> _Fact:
    """Word the clear width of an inactive leaf as what it is: it opens behind the open active one."""
    if leaf != "inactive" or fact.key != "clear_width_at_90":
        return fact
    return replace(
        fact,
        plain="walk-through width, both leaves square open",
        trade="clear width at 90, both leaves",
        measured="from face to face of the two leaves, both at 90 degrees",
    )


def _is_shown(fact: _Fact, candidates: list[Candidate]) -> bool:
    """Leave out what hardware takes from the clear width where it takes nothing.

    And the gap at the lock side of an inactive leaf: the open active one has left nothing there to pass.
    """
    if fact.key == "latch_edge_least":
        return candidates[0].leaf != "inactive"
    if fact.key != "hardware_in_clear_width":
        return True
    return any(candidate.hardware_in_clear_width for candidate in candidates)


def _angle_rows(candidates: list[Candidate], display: Display) -> tuple[Row, ...]:
    bare = _angle_row(
        "greatest_angle_bare", "opens to, the door alone", "greatest angle, bare",
        "how far the leaf and the barrel can turn from closed, without hardware",
        candidates, display, lambda c: (c.greatest_angle_bare, c.stopped_by_bare),
    )  # fmt: skip
    whole = _angle_row(
        "greatest_angle", "opens to, with its hardware", "greatest angle",
        "how far the door can turn from closed until anything on it meets something",
        candidates, display, lambda c: (c.greatest_angle, c.stopped_by),
    )  # fmt: skip
    if all(candidate.rests_at == candidate.greatest_angle for candidate in candidates):
        return bare, whole
    rests = _angle_row(
        "rests_at", "rests at", "angle at rest",
        "where the open door comes to rest: against its door stop, or against what ends its swing",
        candidates, display, lambda c: (c.rests_at, None),
    )  # fmt: skip
    return bare, whole, rests


def _angle_row(
    key: str,
    plain: str,
    trade: str,
    measured: str,
    candidates: list[Candidate],
    display: Display,
    answer: Callable[[Candidate], tuple[float, Stopped | None]],
) -> Row:
    answers = [answer(candidate) for candidate in candidates]
    values = tuple(
        display.angle(angle) + (f", {stopped_words(stop)}" if stop else "") for angle, stop in answers
    )
    gain = answers[-1][0] - answers[0][0]
    difference = "the same"
    if abs(gain) > _SAME:
        difference = f"{display.angle(abs(gain))} {'farther' if gain > 0 else 'less far'}"
    return Row(key, plain, trade, measured, values, difference if len(candidates) > 1 else "")


def stopped_words(stop: Stopped) -> str:
    """Say what meets what, shortly: `leaf on the chair rail`."""
    return f"{hardware(stop.part)} on the {obstruction(stop.kind)}"


def _length_row(fact: _Fact, candidates: list[Candidate], display: Display) -> Row:
    numbers: list[float | None] = [getattr(candidate, fact.key) for candidate in candidates]
    values = tuple(
        "not reached" if number is None else display.length(number, limit=fact.limit) for number in numbers
    )
    return Row(fact.key, fact.plain, fact.trade, fact.measured, values, _difference(fact, numbers, display))


def _difference(fact: _Fact, numbers: list[float | None], display: Display) -> str:
    first, last = numbers[0], numbers[-1]
    if len(numbers) < 2 or first is None or last is None:
        return ""
    gain = last - first
    if abs(gain) <= _SAME:
        return "the same"
    return f"{_amount(abs(gain), display)} {fact.more if gain > 0 else fact.less}"


def _amount(gain: float, display: Display) -> str:
    """Write a difference; one too small for the precision is said to be so, not shown as nothing."""
    shown = display.length(gain)
    if shown != display.length(0.0):
        return shown
    return f"less than {display.length(0.1 / 25.4 if display.metric else 1 / display.precision)}"
