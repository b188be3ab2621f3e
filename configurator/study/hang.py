"""From a filled-in opening to its leaves as the geometry knows them, each to be hung on any hinge width."""

from dataclasses import dataclass

from configurator.geometry.pin import Hanging
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherHalf, OtherLeaf
from configurator.geometry.solve import Scene, scene
from configurator.model import Hardware as GivenHardware
from configurator.model import Hinge
from configurator.model import Obstruction as GivenObstruction
from configurator.rules.checks.lapping import FIRST_LEAF, opens_second
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.places import places_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.hinge.answers import Must
from configurator.rules.hinge.leaf_hinge import LeafHinge, leaf_hinges
from configurator.rules.specification import must_of
from configurator.tables import ObstructionKindRow, row_of


@dataclass(frozen=True, slots=True)
class HungLeaf:
    """One leaf ready to be hung on any width; its hinges as far as no width decides them.

    `opening` is the width it closes, inches: rabbet to rabbet, or to the closed edge of a pair's other leaf.
    """

    filled: FilledOpening
    hinge: LeafHinge
    mounting: str
    leaf_gap: float | None
    leaf: Leaf
    hardware: tuple[Hardware, ...]
    obstructions: tuple[Obstruction, ...]
    other: OtherLeaf | None
    opening: float
    latch_gap: float
    bevel: float

    @property
    def name(self) -> str:
        """Single; active or inactive; upper or lower."""
        return self.hinge.leaf.name

    @property
    def must(self) -> Must:
        """What its hinge width has to do."""
        return must_of(self.filled, self.hinge)

    def hanging(self, width: float) -> Hanging:
        """Return the leaf on a hinge open width, in the symbols of the plan geometry; inches."""
        filled = self.filled
        return Hanging(
            O=self.opening,
            T=filled.thickness,
            g_h=filled.hinge_gap,
            g_l=self.latch_gap,
            beta=self.bevel,
            R=filled.rabbet,
            k=filled.stop_gap,
            s=filled.stop_height,
            F=filled.frame_face,
            D=filled.jamb_depth,
            p=filled.frame_proud,
            b=filled.door_backset,
            b_f=filled.frame_backset,
            m_d=filled.door_mortise,
            m_f=filled.frame_mortise,
            t=self.hinge.leaf_thickness.value,
            a=self.leaf_gap,
            W=width,
            d_b=self.hinge.barrel.value,
            mounting=self.mounting,
        )

    def scene(self, width: float) -> Scene:
        """Return the leaf on a hinge open width, inches, with all that turns and all that stands about it.

        Raises ValueError where a hinge cannot be mounted as asked.
        """
        return scene(self.hanging(width), self.leaf, self.hardware, self.obstructions, self.other)


def hang_leaves(filled: FilledOpening, standard: Hinge | None = None) -> tuple[HungLeaf, ...]:
    """Return every leaf with its hinges, what it carries, what stands about it, what it closes against.

    `standard` is the job's standard hinge.
    """
    hinges = leaf_hinges(filled, standard)
    return tuple(_hung(filled, hinge, standard or Hinge()) for hinge in hinges)


def _hung(filled: FilledOpening, hinge: LeafHinge, standard: Hinge) -> HungLeaf:
    given = filled.opening.hinge or Hinge()
    size = hinge.leaf
    barrels = places_of(filled, size, hinge.count.value, hinge.height.value)
    flipped = size.name == "inactive"
    return HungLeaf(
        filled=filled,
        hinge=hinge,
        mounting=hinge.mounting.value,
        leaf_gap=standard.leaf_gap if given.leaf_gap is None else given.leaf_gap,
        leaf=Leaf(bottom=size.bottom, top=size.top, barrels=barrels, half=_other_half(filled, size)),
        hardware=_carried(filled, size.name),
        obstructions=tuple(_obstruction(one, flipped) for one in filled.opening.obstructions),
        other=_other_leaf(filled, size),
        opening=_leaf_opening(filled, size),
        latch_gap=filled.meeting_gap if filled.opening.leaves == "pair" else filled.latch_gap,
        bevel=0.0 if flipped else filled.latch_bevel,
    )


def _leaf_opening(filled: FilledOpening, size: LeafSize) -> float:
    """Return the width a leaf closes: rabbet to rabbet, or to the closed edge of a pair's other leaf."""
    if filled.opening.leaves != "pair":
        return filled.opening_width
    return filled.hinge_gap + size.width + filled.meeting_gap


def _other_leaf(filled: FilledOpening, size: LeafSize) -> OtherLeaf | None:
    """Return a pair's other leaf: closed beside the active one, already open when the inactive one swings."""
    if filled.opening.leaves != "pair":
        return None
    other = _beside(filled, size)
    return OtherLeaf(
        opening=filled.opening_width,
        w=other.width,
        closed=size.name == "active",
        hardware=_carried(filled, other.name),
    )


def _other_half(filled: FilledOpening, size: LeafSize) -> OtherHalf | None:
    """Return a Dutch door's other half, closed while this one swings: open already where it must be first."""
    if filled.opening.leaves != "dutch" or opens_second(filled) == size.name:
        return None
    half = _beside(filled, size)
    return OtherHalf(bottom=half.bottom, top=half.top, hardware=_carried(filled, half.name))


def _beside(filled: FilledOpening, size: LeafSize) -> LeafSize:
    """Return the other of two leaves."""
    (other,) = (leaf for leaf in leaves_of(filled) if leaf.name != size.name)
    return other


def _carried(filled: FilledOpening, name: str) -> tuple[Hardware, ...]:
    """Return what one leaf carries; hardware that names no leaf is on the first one."""
    first = FIRST_LEAF[filled.opening.leaves]
    return tuple(_hardware(one) for one in filled.opening.hardware if (one.leaf or first) == name)


def _hardware(given: GivenHardware) -> Hardware:
    return Hardware(
        kind=given.kind,
        face=given.face,
        projection=given.projection,
        from_latch_edge=given.from_latch_edge,
        width=given.width,
        height=given.height,
        vertical=given.vertical,
        round=given.outline == "round",
    )


def _obstruction(given: GivenObstruction, flipped: bool) -> Obstruction:
    row = row_of(ObstructionKindRow, given.kind)
    side: str = given.side
    if flipped:
        side = "latch" if side == "hinge" else "hinge"
    return Obstruction(
        kind=given.kind,
        side=side,
        projection=given.projection,
        start=given.start or 0.0,
        length=given.length,
        offset=given.offset or 0.0,
        bottom=given.bottom,
        top=given.top,
        diameter=given.diameter,
        from_frame=row.measured_from == "frame",
        fills=row.outline == "wall",
    )
