"""From a filled-in opening to its leaves as the geometry knows them, each to be hung in any way."""

from dataclasses import dataclass, replace
from functools import cached_property

from configurator.geometry import double_acting
from configurator.geometry.pin import Hanging
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherHalf, OtherLeaf
from configurator.geometry.solve import LaidOut, Scene, laid_out, scene, seen
from configurator.model import Hardware as GivenHardware
from configurator.model import Hinge
from configurator.model import Obstruction as GivenObstruction
from configurator.rules.checks.lapping import opens_second
from configurator.rules.checks.way_findings import on_way
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.places import places_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import FilledWay
from configurator.rules.hinge.answers import Must
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED, LeafHinge, leaf_hinges
from configurator.rules.specification import must_of
from configurator.tables import ObstructionKindRow, row_of
from configurator.units import format_size

HangsOn = float | FilledWay
"""What a leaf is hung on: a butt of an open width, inches, or another way."""


def name_of(on: HangsOn) -> str:
    """Return what a leaf hangs on, as a column is headed: `4 in`, `offset pivot`."""
    return on.name if isinstance(on, FilledWay) else f"{format_size(on)} in"


def hinge_words(on: HangsOn) -> str:
    """Return what a leaf hangs on, as sentences have it: `4 in hinge`, `offset pivot`."""
    return on.name if isinstance(on, FilledWay) else f"{format_size(on)} in hinge"


def on_words(on: HangsOn) -> str:
    """Return the start of a sentence: `On a hinge 4 in wide`, `On an offset pivot`."""
    return on_way(on) if isinstance(on, FilledWay) else f"On a hinge {format_size(on)} in wide"


@dataclass(frozen=True, slots=True)
class Arrangement:
    """What turns and what stands about a leaf in one direction, before it is seen from its pin."""

    hanging: Hanging
    leaf: Leaf
    hardware: tuple[Hardware, ...]
    obstructions: tuple[Obstruction, ...]
    other: OtherLeaf | None


@dataclass(frozen=True)
class HungLeaf:
    """One leaf ready to be hung on any width or in any other way; its hinges as far as no width decides them.

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

    def hanging(self, on: HangsOn) -> Hanging:
        """Return the leaf on what it hangs on, in the symbols of the plan geometry; inches.

        Swung to the push side it is in the mirrored plan of `double_acting`.
        """
        return self._in_way(on) if isinstance(on, FilledWay) else self._on_width(on)

    def _in_way(self, way: FilledWay) -> Hanging:
        filled = self.filled
        off, backset = way.off_face, filled.door_backset
        h = replace(
            self._on_width(2 * (off + filled.thickness - backset) if way.kind == "butt hinge" else 0.0),
            mounting=way.mounting,
            axis=(off, way.from_heel),
            heel_radius=way.heel_radius,
            heel_stop=not way.heel_meets_stop,
            d_b=way.barrel or 0.0,
        )
        if way.double_acting:
            h = double_acting.without_stop(h, filled.wall_thickness)
        return double_acting.toward_push(h) if way.toward == "push" else h

    def _on_width(self, width: float) -> Hanging:
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
            outline=filled.opening.frame.outline,
        )

    def scene(self, on: HangsOn) -> Scene:
        """Return the leaf on what it hangs on, with all that turns and all that stands about it.

        Raises ValueError where it cannot be hung as asked.
        """
        if not isinstance(on, FilledWay):
            return seen(self._on_width(on), self.leaf, self._laid_out, self.other)
        laid = self.arrangement(on)
        return scene(laid.hanging, laid.leaf, laid.hardware, laid.obstructions, laid.other)

    @cached_property
    def _laid_out(self) -> LaidOut:
        """All that no width of a hinge changes."""
        return laid_out(self._on_width(0.0), self.leaf, self.hardware, self.obstructions, self.other)

    def arrangement(self, on: HangsOn) -> Arrangement:
        """Return the leaf and what stands about it; to the push side in its mirrored plan."""
        h, leaf = self.hanging(on), self.leaf
        if isinstance(on, FilledWay):
            leaf = replace(leaf, barrels=self._barrels(on))
        if not isinstance(on, FilledWay) or on.toward == "pull":
            return Arrangement(h, leaf, self.hardware, self.obstructions, self.other)
        pull = self._on_width(0.0)
        return Arrangement(
            h,
            replace(leaf, half=double_acting.half_at_back(leaf.half, pull)),
            double_acting.hardware_at_back(self.hardware, pull),
            double_acting.things_at_back(self.obstructions, self.filled.wall_thickness),
            double_acting.other_at_back(self.other, pull),
        )

    def _barrels(self, way: FilledWay) -> tuple[tuple[float, float], ...]:
        """Return the heights of the barrels of what a leaf hangs on; none on pivots."""
        whole = ((self.leaf.bottom, self.leaf.top),)
        of_kind = {"pivots": (), "full length": whole, "hinge barrels": self.leaf.barrels}
        return of_kind[way.row.turns_on]


def hang_leaves(filled: FilledOpening, standard: Hinge | None = None) -> tuple[HungLeaf, ...]:
    """Return every leaf with its hinges, what it carries, what stands about it, what it closes against.

    `standard` is the job's standard hinge.
    """
    hinges = leaf_hinges(filled, standard)
    return tuple(_hung(filled, hinge, standard or NOTHING_ASKED) for hinge in hinges)


def _hung(filled: FilledOpening, hinge: LeafHinge, standard: Hinge) -> HungLeaf:
    given = filled.opening.hinge or NOTHING_ASKED
    size = hinge.leaf
    barrels = places_of(filled, size, hinge.count.value, hinge.height.value)
    flipped = size.name == "inactive"
    return HungLeaf(
        filled=filled,
        hinge=hinge,
        mounting=hinge.mounting.value,
        leaf_gap=standard.leaf_gap if given.leaf_gap is None else given.leaf_gap,
        leaf=Leaf(bottom=size.bottom, top=size.top, barrels=barrels, half=_other_half(filled, size)),
        hardware=_hardware_on(filled, size.name),
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
        hardware=_hardware_on(filled, other.name),
    )


def _other_half(filled: FilledOpening, size: LeafSize) -> OtherHalf | None:
    """Return a Dutch door's other half, closed while this one swings: open already where it must be first."""
    if filled.opening.leaves != "dutch" or opens_second(filled) == size.name:
        return None
    half = _beside(filled, size)
    return OtherHalf(bottom=half.bottom, top=half.top, hardware=_hardware_on(filled, half.name))


def _beside(filled: FilledOpening, size: LeafSize) -> LeafSize:
    """Return the other of two leaves."""
    (other,) = (leaf for leaf in leaves_of(filled) if leaf.name != size.name)
    return other


def _hardware_on(filled: FilledOpening, leaf: str) -> tuple[Hardware, ...]:
    return tuple(_hardware(one) for one in filled.opening.carried_by(leaf))


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
