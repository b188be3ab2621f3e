"""What an elevation shows, in inches: leaves, frame, the place of every hinge, what the leaves carry.

Axes: across from the rabbet face of the hinge jamb of the first leaf toward its latch, up from the finished
floor. The table under the elevation tells every hinge's place, on the frame and on the door.
"""

from dataclasses import dataclass

from configurator.drawing.pages.tables import SmallTable
from configurator.model import Hardware
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.places import Places, places_of
from configurator.rules.filling.ways import way_hung_on
from configurator.rules.specification import LeafSpecification
from configurator.study import Candidate, Study
from configurator.tables import WayRow, row_of
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
