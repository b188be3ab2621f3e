"""The comparison table: measured facts down, hinge open widths across, the difference in words."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from configurator.rules.hinge.answers import Stopped
from configurator.rules.wording import hardware, obstruction
from configurator.study import Candidate, Study
from configurator.tables import WayRow, row_of
from configurator.units import TOLERANCE, Display, Rounding, format_decimal, format_size


@dataclass(frozen=True, slots=True)
class Unit:
    """What a fact is counted in: decides how it is said, which way it is rounded and how two of it differ."""

    kind: Literal["length", "angle", "weight", "count"]
    rounding: Rounding = "near"

    def said(self, number: float, display: Display) -> str:
        """Write one number with its unit."""
        return self._written(number, self.rounding, display)

    def difference(self, gain: float, display: Display) -> str:
        """Write by how much two differ, without its sign: to the nearest, however each of them is rounded."""
        return self._written(abs(gain), "near", display)

    def _written(self, number: float, rounding: Rounding, display: Display) -> str:
        if self.kind == "length":
            return display.length(number, rounding)
        if self.kind == "angle":
            return display.angle(number, rounding)
        return f"{format_decimal(number, 0, rounding)}{' lb' if self.kind == 'weight' else ''}"


LENGTH = Unit("length")
AT_LEAST = Unit("length", "down")
"""A length that must be at least so much."""
AT_MOST = Unit("length", "up")
"""A length that must be at most so much."""
REACHED = Unit("angle", "down")


@dataclass(frozen=True, slots=True)
class Row:
    """One measured fact: the plain words and the trade's, what it is measured from, a text a width.

    `key` is the fact's name in the results; `difference` says what the last width does beside the first.
    """

    key: str
    plain: str
    trade: str
    measured: str
    unit: Unit
    values: tuple[str, ...]
    difference: str


@dataclass(frozen=True, slots=True)
class Comparison:
    """The rows of one leaf; `widths` heads the columns, `between` the difference: `4 to 4-1/2`.

    Beside other ways of hanging a column is headed `butt 4 in` or `offset pivot`; `told` are then rows of
    what else differs, which no number measures.
    """

    leaf: str
    widths: tuple[str, ...]
    rows: tuple[Row, ...]
    between: str
    told: tuple[Row, ...] = ()
    other_ways: bool = False

    @property
    def heads(self) -> tuple[str, ...]:
        """What heads each column where nothing says that it is a hinge: `4 in hinge`, `offset pivot`."""
        return self.widths if self.other_ways else tuple(f"{width} hinge" for width in self.widths)


Candidates = Sequence[Candidate]


@dataclass(frozen=True, slots=True)
class Fact:
    """A fact of every candidate: its words, its number, what it is where the last width has more or less.

    `shown` says of a leaf's candidates whether the fact has a row there, `ended_by` what a swing ends at,
    `missing` what stands where there is no number.
    """

    key: str
    plain: str
    trade: str
    measured: str
    unit: Unit
    more: str
    less: str
    number: Callable[[Candidate], float | None]
    shown: Callable[[Candidates], bool] = lambda _: True
    ended_by: Callable[[Candidate], Stopped | None] = lambda _: None
    missing: str = "not reached"


def _past(length: Callable[[Candidate], float]) -> Callable[[Candidate], float | None]:
    """A length of the barrel; None where there is none."""
    return lambda one: length(one) if one.has_barrel else None


def _inactive(candidates: Candidates) -> bool:
    """An inactive leaf opens behind the open active one, so nothing is left for its lock edge to pass."""
    return candidates[0].leaf == "inactive"


def _not_inactive(candidates: Candidates) -> bool:
    return not _inactive(candidates)


FACTS = (
    Fact(
        "greatest_angle_bare", "opens to, the door alone", "greatest angle, bare",
        "how far the leaf and the barrel can turn from closed, without hardware",
        REACHED, "farther", "less far", lambda one: one.greatest_angle_bare,
        ended_by=lambda one: one.stopped_by_bare,
    ),
    Fact(
        "greatest_angle", "opens to, with its hardware", "greatest angle",
        "how far the door can turn from closed until anything on it meets something",
        REACHED, "farther", "less far", lambda one: one.greatest_angle,
        ended_by=lambda one: one.stopped_by,
    ),
    Fact(
        "rests_at", "rests at", "angle at rest",
        "where the open door comes to rest: against its door stop, or against what ends its swing",
        REACHED, "farther", "less far", lambda one: one.rests_at,
        shown=lambda candidates: any(one.rests_at != one.greatest_angle for one in candidates),
    ),
    Fact(
        "pin_off_door_face", "hinge pin stands off the door by", "pin axis off door face",
        "from the closed door's pull face to the pin axis",
        LENGTH, "farther off the door", "nearer the door", lambda one: one.pin_off_door_face,
    ),
    Fact(
        "pin_off_frame_face", "hinge pin stands off the frame by", "pin axis off frame face",
        "from the frame face to the pin axis",
        LENGTH, "farther off the frame", "nearer the frame", lambda one: one.pin_off_frame_face,
    ),
    Fact(
        "axis_from_heel", "it turns that far in from the door's hinge edge", "axis from heel edge",
        "from the door's hinge edge toward the lock side to the axis; below zero beyond the edge",
        LENGTH, "farther in", "less far in", lambda one: one.axis_from_heel,
        shown=lambda candidates: _other_ways(candidates),
    ),
    Fact(
        "barrel_past_frame", "barrel stands out from the frame by", "barrel past frame face",
        "from the frame face to the outside of the barrel",
        LENGTH, "farther out", "less far out", _past(lambda one: one.barrel_past_frame), missing="no barrel",
    ),
    Fact(
        "barrel_past_wall", "barrel stands out from the wall by", "barrel past wall face",
        "from the wall face to the outside of the barrel",
        LENGTH, "farther out", "less far out", _past(lambda one: one.barrel_past_wall), missing="no barrel",
    ),
    Fact(
        "clear_past_frame_at_180", "room behind the door, opened flat", "clear past frame face at 180",
        "from the frame face to the face of the door at 180 degrees",
        AT_LEAST, "more room", "less room", lambda one: one.room_opened_flat,
    ),
    Fact(
        "clear_width_at_90", "walk-through width, door square open", "clear width at 90",
        "from the door's face to the frame stop on the lock side, at 90 degrees",
        AT_LEAST, "wider", "narrower", lambda one: one.clear_width_at_90, _not_inactive,
    ),
    Fact(
        "clear_width_at_90", "walk-through width, both leaves square open", "clear width at 90, both leaves",
        "from face to face of the two leaves, both at 90 degrees",
        AT_LEAST, "wider", "narrower", lambda one: one.clear_width_at_90, _inactive,
    ),
    Fact(
        "hardware_in_clear_width", "hardware takes from that width", "hardware in clear width",
        "past the door's face at 90 degrees, 34 to 80 in above the floor; of a closer only below 78",
        AT_MOST, "more", "less", lambda one: one.hardware_in_clear_width,
        lambda candidates: any(one.hardware_in_clear_width for one in candidates),
    ),
    Fact(
        "latch_edge_least", "tightest gap at the lock side", "latch edge least",
        "from the door's lock edge to the frame, over the whole swing",
        AT_LEAST, "looser", "tighter", lambda one: one.latch_edge_least, _not_inactive,
    ),
    Fact(
        "hinge_edge_least", "tightest gap at the hinge side", "hinge edge least",
        "from the door's hinge edge to the frame and casing, over the whole swing",
        AT_LEAST, "looser", "tighter", lambda one: one.hinge_edge_least,
    ),
    Fact(
        "encroachment_greatest", "stands out into the room, at most", "encroachment, greatest",
        "from the wall face to the farthest corner of the door, over the swing",
        AT_MOST, "farther", "less far", lambda one: one.encroachment_greatest,
    ),
    Fact(
        "leaf_out_at_rest", "stands out into the room, at rest", "encroachment at rest",
        "from the wall face to the farthest corner of the door, where it rests",
        AT_MOST, "farther", "less far", lambda one: one.leaf_out_at_rest,
    ),
)  # fmt: skip
"""Every row of the table, in its order."""


def comparisons(study: Study, display: Display) -> tuple[Comparison, ...]:
    """Return one table a leaf, in the order of the leaves."""
    leaves = dict.fromkeys(candidate.leaf for candidate in study.candidates)
    return tuple(
        _comparison(leaf, [c for c in study.candidates if c.leaf == leaf], display) for leaf in leaves
    )


def stopped_words(stop: Stopped) -> str:
    """Say what meets what, shortly: `leaf on the chair rail`."""
    return f"{hardware(stop.part)} on the {obstruction(stop.kind)}"


def _comparison(leaf: str, candidates: Candidates, display: Display) -> Comparison:
    rows = tuple(_row(fact, candidates, display) for fact in FACTS if fact.shown(candidates))
    if _other_ways(candidates):
        names = tuple(one.name if one.way else f"butt {one.name}" for one in candidates)
        between = f"{names[0]} to {names[-1]}" if len(names) > 1 else ""
        return Comparison(leaf, names, rows, between, _told(candidates), other_ways=True)
    sizes = [format_size(one.hinge_width) for one in candidates]
    between = f"{sizes[0]} to {sizes[-1]}" if len(sizes) > 1 else ""
    return Comparison(leaf, tuple(one.name for one in candidates), rows, between)


def _told(candidates: Candidates) -> tuple[Row, ...]:
    """Return what is cut for each way, how it is sold, and what it is for."""
    kinds = [row_of(WayRow, one.hung_on) for one in candidates]
    columns = (
        ("let_in", "what is cut for it", "preparation", [one.let_in for one in kinds]),
        ("sold_by", "sold by", "ordered by", [one.sold_by for one in kinds]),
        ("handed", "left and right differ", "handed", ["yes" if one.handed else "no" for one in kinds]),
        ("takes", "what it is for", "weight and traffic", [one.takes for one in kinds]),
    )
    return tuple(
        Row(key, plain, trade, "by its kind", LENGTH, tuple(texts), "")
        for key, plain, trade, texts in columns
    )


def _other_ways(candidates: Candidates) -> bool:
    """Whether anything else than butts of several widths is compared."""
    return any(one.way is not None for one in candidates)


def _row(fact: Fact, candidates: Candidates, display: Display) -> Row:
    values = tuple(_value(fact, one, display) for one in candidates)
    difference = _difference(fact, [fact.number(one) for one in candidates], display)
    return Row(fact.key, fact.plain, fact.trade, fact.measured, fact.unit, values, difference)


def _value(fact: Fact, one: Candidate, display: Display) -> str:
    number, stop = fact.number(one), fact.ended_by(one)
    said = fact.missing if number is None else fact.unit.said(number, display)
    return f"{said}, {stopped_words(stop)}" if stop else said


def _difference(fact: Fact, numbers: Sequence[float | None], display: Display) -> str:
    first, last = numbers[0], numbers[-1]
    if len(numbers) < 2 or first is None or last is None:
        return ""
    gain = last - first
    if abs(gain) <= TOLERANCE:
        return "the same"
    return f"{fact.unit.difference(gain, display)} {fact.more if gain > 0 else fact.less}"
