"""What an elevation shows, in inches: leaves, frame, the place of every hinge, what the leaves carry.

Axes: across from the rabbet face of the hinge jamb of the first leaf toward its latch, up from the finished
floor. The table under the elevation tells every hinge's place, on the frame and on the door.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from configurator.drawing.pages.tables import SmallTable
from configurator.model import Hardware
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.places import Places, places_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import way_hung_on
from configurator.rules.specification import LeafSpecification
from configurator.study import Candidate, Study
from configurator.tables import HardwareKindRow, WayRow, row_of
from configurator.units import Display

_OVER = (
    ("", 1),
    ("Frame: below the head rabbet", 2),
    ("Frame: above the floor", 2),
    ("Door: below its top", 2),
    ("Door: above its bottom", 2),
)
_HEADINGS = (
    "Hinge",
    "to top",
    "to centre",
    "to centre",
    "to bottom",
    "to top",
    "to centre",
    "to centre",
    "to bottom",
)


@dataclass(frozen=True, slots=True)
class HingesSet:
    """The hinges of one leaf as they are set: places above the floor, the lowest first; inches.

    `electric` is which from the top carries wires; `pin` is how far the pin stands across from the rabbet.
    `let_in` is how far the hinge leaf runs over the door's edge from the pull face; 0 on the door's face.
    """

    places: Places
    height: float
    width: float | None
    mounting: str
    leaf_thickness: float
    barrel: float
    pin: float
    let_in: float
    electric: int | None

    def number(self, index: int) -> int:
        """Return a hinge's number from the top; its index counts from the lowest, 0."""
        return len(self.places) - index


_PIVOT = 1.25
"""How large a pivot is drawn at the end of a door, inches; it is not measured."""


@dataclass(frozen=True, slots=True)
class LeafShown:
    """One leaf: where it and the rabbet it hangs on lie across; its hinges (None: not chosen here).

    `turns_on` is what it turns on besides butts, as (lowest, highest, half as wide) about `axis` across.
    """

    leaf: LeafSize
    jamb: float
    hinge_edge: float
    latch_edge: float
    hinges: HingesSet | None
    carried: tuple[Hardware, ...]
    turns_on: tuple[tuple[float, float, float], ...] = ()
    axis: float = 0.0

    @property
    def way(self) -> float:
        """1 where the latch lies farther across than the hinges, -1 for a pair's inactive leaf."""
        return 1.0 if self.latch_edge > self.hinge_edge else -1.0


def leaves_shown(study: Study) -> tuple[LeafShown, ...]:
    """Return the leaves of an opening as an elevation shows them, the one that opens first first."""
    return tuple(_shown(study, leaf) for leaf in leaves_of(study.filled))


def _shown(study: Study, leaf: LeafSize) -> LeafShown:
    filled = study.filled
    jamb, way = (filled.opening_width, -1.0) if leaf.name == "inactive" else (0.0, 1.0)
    edge = jamb + way * filled.hinge_gap
    carried = filled.opening.carried_by(leaf.name)
    turns_on, axis = _turns_on(study, leaf)
    ends = edge, edge + way * leaf.width
    return LeafShown(leaf, jamb, *ends, _hinges(study, leaf), carried, turns_on, jamb + way * axis)


def _turns_on(study: Study, leaf: LeafSize) -> tuple[tuple[tuple[float, float, float], ...], float]:
    """Return what a leaf turns on that is no butt, and its axis from the rabbet; nothing of butts.

    Its heights are the maker's: a continuous hinge is as long as the door, a pivot stands at either end.
    """
    given = way_hung_on(study.opening)
    if given is None:
        return (), 0.0
    hung = study.hanger.leaf(leaf.name)
    found = study.hanger.in_way(leaf.name, given)[0]
    kind, half = row_of(WayRow, given.hung_on).turns_on, found.barrel_diameter / 2
    ends = {
        "full length": ((leaf.bottom, leaf.top),),
        "pivots": ((leaf.bottom, leaf.bottom + _PIVOT), (leaf.top - _PIVOT, leaf.top)),
        "hinge barrels": hung.leaf.barrels,
    }
    return tuple((low, high, half or _PIVOT / 2) for low, high in ends[kind]), found.pin_across


def _hinges(study: Study, leaf: LeafSize) -> HingesSet | None:
    spec = next((one for one in study.specification.leaves if one.leaf == leaf.name), None)
    if spec is None:
        return None
    parts = {key: part.value for key, part in spec.parts.items()}
    best = _studied(study, spec)
    pin = None if best is None else best.solution.pin
    backset = study.filled.door_backset if pin is None else pin.b
    return HingesSet(
        places=places_of(study.filled, leaf, parts["count"], parts["height"]),
        height=parts["height"],
        width=parts["width"],
        mounting=parts["mounting"],
        leaf_thickness=parts["leaf_thickness"],
        barrel=0.0 if best is None else best.barrel_diameter,
        pin=study.filled.hinge_gap / 2 if pin is None else pin.x_p,
        let_in=0.0 if backset is None else max(study.filled.thickness - backset, 0.0),
        electric=spec.electric,
    )


def _studied(study: Study, spec: LeafSpecification) -> Candidate | None:
    """Return the leaf on its recommended width, else on any that was studied; None where none was."""
    own = [one for one in study.butts if one.leaf == spec.leaf]
    width = spec.parts["width"].value
    return next((one for one in own if one.hinge_width == width), own[0] if own else None)


@dataclass(frozen=True, slots=True)
class LockShown:
    """A lock on a leaf: its middle above the floor and from the latch edge (None: not known), inches.

    `assumed`: both are a lever's usual place.
    """

    shown: LeafShown
    height: float
    backset: float | None
    assumed: bool

    @property
    def across(self) -> float | None:
        """Where its middle lies across; None where the backset is not known."""
        return None if self.backset is None else self.shown.latch_edge - self.shown.way * self.backset


def lock_shown(filled: FilledOpening, leaves: Sequence[LeafShown]) -> LockShown | None:
    """Return the lock of the leaf that opens first, as given, else where its lever or knob turns."""
    door, shown = filled.opening.door, leaves[0]
    turned = next((one for one in shown.carried if row_of(HardwareKindRow, one.kind).name in _TURNED), None)
    height, backset = door.lock_height, door.lock_backset
    assumed = height is None and turned is not None and "height" not in turned.model_fields_set
    if height is None and turned is not None:
        height = turned.height
    if backset is None and turned is not None:
        spindle = row_of(HardwareKindRow, turned.kind).spindle
        backset = turned.from_latch_edge + (0.0 if spindle is None else spindle - turned.width / 2)
    in_leaf = next((one for one in leaves if height and one.leaf.bottom < height < one.leaf.top), shown)
    return None if height is None else LockShown(in_leaf, height, backset, assumed)


_TURNED = ("lever", "knob")
"""Kinds of hardware that turn where the lock is."""


def lite_shown(filled: FilledOpening, shown: LeafShown) -> tuple[float, float, float, float] | None:
    """Return where a leaf's lite lies: both ends across, its bottom and top; None where nobody said."""
    door = filled.opening.door
    wide, high, bottom = door.lite_width, door.lite_height, door.lite_above_floor
    if wide is None or high is None or bottom is None:
        return None
    off = (shown.leaf.width - wide) / 2 if door.lite_from_latch is None else door.lite_from_latch
    near = shown.latch_edge - shown.way * off
    ends = sorted((near, near - shown.way * wide))
    fits = shown.leaf.bottom < bottom and bottom + high < shown.leaf.top
    inside = min(shown.hinge_edge, shown.latch_edge) < ends[0] and ends[1] < max(
        shown.hinge_edge, shown.latch_edge
    )
    return (ends[0], ends[1], bottom, bottom + high) if fits and inside else None


def hinge_table(leaves: tuple[LeafShown, ...], head: float, display: Display) -> SmallTable:
    """Return every hinge's place; `head` is the head rabbet above the floor, inches.

    Leaves whose hinges sit alike share their rows.
    """
    rows: list[tuple[str, ...]] = []
    for shown, names in unlike(leaves):
        assert shown.hinges is not None
        label = "" if len(leaves) == 1 else f"{names} "
        rows += _rows(shown, shown.hinges, head, label, display)
    return SmallTable(_OVER, _HEADINGS, tuple(rows))


def unlike(leaves: tuple[LeafShown, ...]) -> tuple[tuple[LeafShown, str], ...]:
    """Return the leaves that differ in height or hinges, each with the names of all that are like it."""
    found: dict[object, tuple[LeafShown, str]] = {}
    for shown in leaves:
        if shown.hinges is None:
            continue
        leaf = shown.leaf
        key = (leaf.bottom, leaf.top, shown.hinges.places, shown.hinges.electric)
        if key in found:
            first, names = found[key]
            found[key] = first, f"{names} and {leaf.name}"
        else:
            found[key] = shown, leaf.name
    return tuple(found.values())


def _rows(
    shown: LeafShown, hinges: HingesSet, head: float, label: str, display: Display
) -> list[tuple[str, ...]]:
    leaf = shown.leaf
    rows = []
    for index, (bottom, top) in reversed(list(enumerate(hinges.places))):
        centre = (bottom + top) / 2
        lengths = (
            head - top, head - centre, centre, bottom,
            leaf.top - top, leaf.top - centre, centre - leaf.bottom, bottom - leaf.bottom,
        )  # fmt: skip
        number = hinges.number(index)
        wired = ", electric" if number == hinges.electric else ""
        rows.append((f"{label}{number}{wired}", *(display.length(one) for one in lengths)))
    return rows
