"""Ways of hanging a door other than a butt of some width: where each leaf then turns, and which ways."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from configurator.model import Opening, Way
from configurator.model.words import HungOn, WayKind
from configurator.rules.filling.usual import FilledOpening
from configurator.tables import WayRow, row_of

Toward = Literal["pull", "push"]


@dataclass(frozen=True, slots=True)
class FilledWay:
    """One way a leaf hangs and swings, every number present; inches, from pull face and heel edge.

    `barrel` is the barrel's diameter, None where it turns on pivots. `assumed` names what of it nobody gave.
    `double_acting`: it swings both ways, so that no stop stands in its frame; `toward` is which of them this
    is. `given` is the entry it was filled from.
    """

    given: Way
    off_face: float
    from_heel: float
    barrel: float | None
    double_acting: bool
    toward: Toward
    assumed: tuple[str, ...]

    @property
    def kind(self) -> WayKind:
        """What the door hangs on."""
        return self.given.hung_on

    @property
    def heel_radius(self) -> float | None:
        """What the heel edge is rounded to about the axis; None where it is square."""
        return self.given.heel_radius

    @property
    def row(self) -> WayRow:
        """What is known of its kind."""
        return row_of(WayRow, self.kind)

    @property
    def heel_meets_stop(self) -> bool:
        """Whether its heel turns into where a stop at the hinge jamb would be, so that none stands there."""
        return self.row.off_face_from == "middle of the door"

    @property
    def barrel_beside_faces(self) -> bool:
        """Whether its barrel has to lie clear of the faces of door and frame."""
        return self.barrel is not None and not self.double_acting

    @property
    def mounting(self) -> str:
        """What the geometry and the pictures know it by: a butt or a swing clear hinge by its mounting."""
        return {"butt hinge": "full mortise", "swing clear hinge": "swing clear"}.get(self.kind, self.kind)

    @property
    def name(self) -> str:
        """What it is called, with its axis where that was given, and the side it swings to."""
        return self.kind_with_axis + (f", to the {self.toward} side" if self.double_acting else "")

    @property
    def kind_with_axis(self) -> str:
        """What it is called, with its axis where that was given."""
        return self.given.words


_KINDS_OF: Mapping[HungOn, tuple[WayKind, ...]] = {
    "pivots": ("offset pivot", "centre-hung pivot"),
    "continuous hinge": ("continuous hinge",),
    "spring hinges": ("double-acting spring hinge",),
}
"""What each word of an opening's `hung_on` may be; the first is the usual one."""
_ONLY_WHERE_COMPARED = "spring hinges"
"""Most spring hinges swing one way and hang like butts; they are not worked out here."""


def way_hung_on(opening: Opening) -> Way | None:
    """Return the way an opening hangs that hangs on no butts: as compared, else the usual of that word.

    None where it hangs on butts, or on what is not worked out here.
    """
    kinds = _KINDS_OF.get(opening.hung_on, ())
    compared = (one for one in opening.compare if isinstance(one, Way) and one.hung_on in kinds)
    usual = None if not kinds or opening.hung_on == _ONLY_WHERE_COMPARED else Way(hung_on=kinds[0])
    return next(compared, usual)


def fill_way(given: Way, filled: FilledOpening, barrel: float) -> tuple[FilledWay, ...]:
    """Return a way with its numbers, once for each side it swings to; `barrel` is the hinge's own, inches.

    Of a butt the axis must be given off the face: its usual place is a width's. Raises ValueError where it
    is not.
    """
    row = row_of(WayRow, given.hung_on)
    own = None if row.turns_on == "pivots" else row.barrel or barrel
    off = _off_face(row, filled, own or 0.0) if given.axis_off_face is None else given.axis_off_face
    heel = _from_heel(row, filled, off) if given.axis_from_heel is None else given.axis_from_heel
    double = (given.acting or row.acting) == "double"
    assumed = tuple(key for key in ("axis_off_face", "axis_from_heel") if getattr(given, key) is None)
    way = FilledWay(given, off, heel, own, double, "pull", assumed)
    return (way, _to_the_push_side(way, filled)) if double else (way,)


def _to_the_push_side(way: FilledWay, filled: FilledOpening) -> FilledWay:
    """Return the other direction: pivots keep their axis, a spring hinge has a barrel before either face."""
    off = way.off_face if way.row.turns_on == "pivots" else -filled.thickness - way.off_face
    return replace(way, toward="push", off_face=off)


def _off_face(row: WayRow, filled: FilledOpening, barrel: float) -> float:
    """Return the usual axis off the pull face, inches."""
    inset = filled.inset
    match row.off_face_from:
        case "pull face":
            return row.off_face or 0.0
        case "middle of the door":
            return -filled.thickness / 2
        case "clear of the faces":
            return barrel / 2 + max(inset, 0.0)
        case "frame face":
            return barrel / 2 + inset
    raise ValueError(f"A {row.kind} without an axis is given as its open width.")


def _from_heel(row: WayRow, filled: FilledOpening, off: float) -> float:
    """Return the usual axis from the heel edge, inches; that of a butt lies in the middle of its gap."""
    match row.from_heel_from:
        case "heel edge":
            return row.from_heel or 0.0
        case "clear of the frame":
            return -(off + filled.thickness) - filled.hinge_gap
    return -filled.hinge_gap / 2
