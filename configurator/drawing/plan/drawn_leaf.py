"""One leaf on one hinge width as it is drawn: the candidate studied, with what stands about it."""

import math
from dataclasses import dataclass
from functools import cached_property

from configurator.drawing.base.primitives import turned
from configurator.geometry.gaps import LeastGap
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.geometry.pin import Hanging, Pin, Point
from configurator.geometry.shapes import Shape, hardware_shape, obstruction_shapes, other_leaf_shapes
from configurator.geometry.solve import Solution
from configurator.model import Obstruction as ObstructionRecord
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.hinge.answers import StopPlace, holder_of
from configurator.rules.wording import obstruction
from configurator.study import Candidate, Study
from configurator.study.events import gap_on_the_way, held_by, latch_passage
from configurator.units import Display
from configurator.wording.comparison import stopped_words

Layers = tuple[tuple[str, float], ...]
TURNS_CLOCKWISE = frozenset({"RH", "LHR"})


@dataclass(frozen=True, slots=True)
class Standing:
    """One thing along the wall: its pieces in plan, what to call it, whether the leaf meets its heights."""

    shapes: tuple[Shape, ...]
    kind: str
    label: str
    met: bool = True


@dataclass(frozen=True)
class DrawnLeaf:
    """A candidate as it is drawn. Inches and radians, the axes and letters of the geometry.

    `hardware` is what of its hardware is drawn, `stopped_by` what ends the swing, in words; empty at 180
    degrees.
    """

    candidate: Candidate
    standing: tuple[Standing, ...]
    hardware: tuple[Shape, ...]
    stopped_by: str

    @property
    def filled(self) -> FilledOpening:
        """The opening it hangs in, every number filled in."""
        return self.candidate.filled

    @cached_property
    def h(self) -> Hanging:
        """The lengths of the hung leaf."""
        return self.candidate.h

    @cached_property
    def pin(self) -> Pin:
        """Where the pin stands."""
        return self.candidate.pin

    @property
    def opening(self) -> float:
        """The whole opening between rabbet faces: more than h.O for a leaf of a pair."""
        return self.filled.opening_width

    @property
    def mirrored(self) -> bool:
        """Whether the picture is turned over, since the geometry turns every leaf one way.

        One that swings to the push side is shown from there, its push side up.
        """
        return turns_clockwise(self.filled, self.candidate.leaf) != self.candidate.to_push

    @property
    def frame_kind(self) -> str:
        """Kind of the frame."""
        return self.filled.opening.frame.kind

    @property
    def construction(self) -> str:
        """What the door is made of; empty where nobody said."""
        return self.filled.opening.door.construction or ""

    # --- The wall ---

    @cached_property
    def layers(self) -> Layers:
        """The wall's layers from the side the leaf swings to; one where nobody described them."""
        layers = self.filled.layers or (("wall", self.filled.wall_thickness),)
        return layers[::-1] if self.candidate.to_push else layers

    @cached_property
    def wall_depth(self) -> float:
        """Thickness of the wall."""
        return math.fsum(thickness for _, thickness in self.layers)

    @property
    def wall_face(self) -> float:
        """Height of the wall's face on the side the leaf swings to, in the axes of the plan."""
        return -self.h.p

    # --- The other leaf ---

    @cached_property
    def other_leaf(self) -> tuple[Shape, ...]:
        """The closed other leaf of a pair."""
        laid = self.candidate.arrangement
        return other_leaf_shapes(self.h, laid.other, laid.leaf)

    @property
    def open_other(self) -> float | None:
        """Net width of a pair's other leaf that already stands open when this one swings."""
        other = self.candidate.hung.other
        return None if other is None or other.closed else other.w

    # --- How far it goes ---

    @property
    def door_stop(self) -> StopPlace | None:
        """The door stop that was given."""
        return self.candidate.door_stop

    @property
    def held(self) -> bool:
        """Whether a door stop, one that is drawn or one at an angle, holds the leaf before anything else."""
        return held_by(self.candidate) != ""

    @property
    def reach(self) -> float:
        """How far the leaf goes with its hardware: to its door stop, or to what it meets."""
        return self.candidate.solution.rest_angle

    @property
    def contact(self) -> Point | None:
        """Where the swing ends against something; a stop at an angle has no place."""
        met, held = self.candidate.stopped_by, held_by(self.candidate)
        if held:
            return self.candidate.stop_tip if held == "tip" else None
        return None if met is None else met.point

    @cached_property
    def touching(self) -> tuple[Shape, Shape] | None:
        """What moves (closed) and what stands where they meet; None where nothing does, or a stop holds."""
        return None if self.held else _touching(self.candidate.solution)

    @property
    def reach_bare(self) -> float:
        """How far leaf and barrels alone turn."""
        return self.candidate.solution.greatest_angle_bare

    @property
    def contact_bare(self) -> Point | None:
        """Where the swing of leaf and barrels alone ends against something."""
        met = self.candidate.stopped_by_bare
        return None if met is None else met.point

    @cached_property
    def least(self) -> LeastGap | None:
        """The leaf's nearest passage to what stands along the wall, as far as it goes."""
        return gap_on_the_way(self.candidate.solution, self.reach)

    @cached_property
    def latch(self) -> LeastGap | None:
        """The latch edge's nearest passage; None where it binds or closes against nothing."""
        return latch_passage(self.candidate.solution)

    def shown_at(self, angle: float) -> float:
        """Return the angle at which the leaf is drawn, radians: the one asked for, or where it is stopped."""
        return min(angle, self.reach)


def drawn_leaves(study: Study, display: Display) -> tuple[DrawnLeaf, ...]:
    """Return every candidate's leaf as it is drawn, in the order of the candidates."""
    return tuple(drawn_leaf(one, display) for one in study.candidates)


def drawn_leaf(candidate: Candidate, display: Display) -> DrawnLeaf:
    """Return a candidate as it is drawn, what stands along the wall labeled."""
    h, carried = candidate.h, candidate.arrangement.hardware
    return DrawnLeaf(
        candidate=candidate,
        standing=tuple(_standing(candidate, display)),
        hardware=tuple(hardware_shape(h, item, index) for index, item in enumerate(carried)),
        stopped_by=_stopped_by(candidate),
    )


def _stopped_by(candidate: Candidate) -> str:
    stop, met = candidate.door_stop, candidate.stopped_by
    match held_by(candidate):
        case "tip" if stop is not None:
            return f"{stop.meets} on the {stop.kind}"
        case "angle":
            return f"held by its {holder_of(candidate.filled, candidate.leaf, None)}"
    return "" if met is None else stopped_words(met)


def _touching(solution: Solution) -> tuple[Shape, Shape] | None:
    """Return what moves and what stands at the first contact of anything, the first of them closed."""
    contact, scene = solution.with_hardware, solution.scene
    if contact is None:
        return None
    moving = [one.shape for one in (*scene.bare, *scene.hardware) if one.shape.kind == contact.part]
    standing = [
        one.shape
        for one in scene.standing
        if (one.shape.kind, one.shape.index) == (contact.kind, contact.index)
    ]
    back = turned([contact.point], solution.pin.at, -contact.angle)[0]
    return _nearest(back, moving), _nearest(contact.point, standing)


def _nearest(point: Point, shapes: list[Shape]) -> Shape:
    return min(shapes, key=lambda shape: _away(point, shape))


def _away(point: Point, shape: Shape) -> float:
    return abs(math.dist(point, nearest_on_outline(point, shape.points)) - shape.radius)


def turns_clockwise(filled: FilledOpening, leaf: str) -> bool:
    """Whether the leaf turns clockwise seen from above, pull side up: RH and LHR do, LH and RHR do not.

    The inactive leaf of a pair turns against the active one.
    """
    return (filled.opening.hand in TURNS_CLOCKWISE) != (leaf == "inactive")


def _standing(candidate: Candidate, display: Display) -> list[Standing]:
    opening, hung = candidate.filled.opening, candidate.arrangement
    heights = (hung.leaf.bottom, hung.leaf.top)
    both = zip(opening.obstructions, hung.obstructions, strict=True)
    return [
        Standing(
            obstruction_shapes(candidate.h, plain, index, candidate.filled.opening_width),
            thing.kind,
            thing_label(thing, display),
            _is_met(thing, heights),
        )
        for index, (thing, plain) in enumerate(both)
    ]


def _is_met(thing: ObstructionRecord, heights: tuple[float, float]) -> bool:
    bottom, top = heights
    return (thing.bottom or 0.0) < top and (thing.top is None or thing.top > bottom)


def thing_label(thing: ObstructionRecord, display: Display) -> str:
    """Return what to call a thing, with its heights above the floor where it has any."""
    name = obstruction(thing.kind)
    if thing.top is None and not thing.bottom:
        return name
    if thing.top is None:
        return f"{name}, from {display.exact(thing.bottom or 0.0)} above floor"
    if not thing.bottom:
        return f"{name}, to {display.exact(thing.top)} above floor"
    low = display.exact(thing.bottom)
    high = display.exact(thing.top)
    return f"{name}, {low.rsplit(' ', 1)[0]} to {high} above floor"


def degrees(radians: float) -> float:
    """Return an angle in degrees, exact at the half turn."""
    return 180.0 if radians == math.pi else math.degrees(radians)
