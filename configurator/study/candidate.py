"""One leaf on one hinge width or hung another way: the record that rules, tables and files all read."""

import math
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from configurator.geometry.double_acting import at_back
from configurator.geometry.pin import Hanging, Pin, backset_refusal
from configurator.geometry.solve import Solution
from configurator.geometry.swing import Contact
from configurator.model.words import WayKind
from configurator.rules.checks.plan_findings import plan_findings
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import FilledWay
from configurator.rules.finding import Finding
from configurator.rules.hinge.answers import Answers, StopPlace, holder_of, stopped_at
from configurator.rules.hinge.leaf_hinge import LeafHinge
from configurator.study.hang import Arrangement, HangsOn, HungLeaf, hinge_words, name_of
from configurator.study.stop_place import as_met, given_stop, stop_radians, stop_wanted
from configurator.units import TOLERANCE


@dataclass(frozen=True)
class Candidate:
    """One leaf on what it hangs on: inches and degrees in full, None where there is no value.

    `way` says what that is where it is not a butt of some open width; of a leaf that swings both ways it is
    one of them, and lengths off door, frame and wall are then those on the side it swings to. Degrees are 0,
    90 and 180 exactly where they are so. Nothing is worked out before it is asked for.
    """

    hung: HungLeaf
    solution: Solution
    door_stop: StopPlace | None
    """Where the door stop that was given stands at this leaf."""
    others: Answers = field(compare=False, repr=False)
    """The opening on any other width, to know which one is to be taken."""
    way: FilledWay | None = None

    # --- The leaf ---

    @property
    def filled(self) -> FilledOpening:
        """The opening it hangs in."""
        return self.hung.filled

    @cached_property
    def arrangement(self) -> Arrangement:
        """What turns and what stands about it; swung to the push side in the mirrored plan."""
        return self.hung.arrangement(self.on)

    @property
    def to_push(self) -> bool:
        """Whether it swings to the push side, in its mirrored plan."""
        return self.way is not None and self.way.toward == "push"

    @property
    def leaf(self) -> str:
        """Which leaf it is."""
        return self.hung.name

    @property
    def hinge(self) -> LeafHinge:
        """Its hinges as far as no width decides them."""
        return self.hung.hinge

    @cached_property
    def h(self) -> Hanging:
        """Its lengths in the symbols of the plan geometry, inches."""
        return self.solution.hanging

    @property
    def pin(self) -> Pin:
        """Where the pin stands."""
        return self.solution.pin

    # --- The hinge ---

    @cached_property
    def hinge_width(self) -> float:
        """The hinge open width it hangs on; 0 where it hangs on no butt."""
        return self.h.W

    @property
    def hung_on(self) -> WayKind:
        """What it hangs on."""
        if self.way is not None:
            return self.way.kind
        return "swing clear hinge" if self.mounting == "swing clear" else "butt hinge"

    @property
    def axis_off_face(self) -> float:
        """How far its axis stands off the door's pull face; negative inside the door."""
        return self.pin.o if self.way is None else self.way.off_face

    @property
    def axis_from_heel(self) -> float:
        """How far its axis stands from the door's heel edge toward the latch; negative beyond the edge."""
        return self.pin.x_p - self.h.g_h if self.way is None else self.way.from_heel

    @property
    def on(self) -> HangsOn:
        """What it hangs on, to find it again by: a hinge open width, inches, or another way."""
        return self.hinge_width if self.way is None else self.way

    @property
    def name(self) -> str:
        """What it hangs on, as columns call it: `4 in`, `offset pivot`."""
        return name_of(self.on)

    @property
    def hinge_words(self) -> str:
        """What it hangs on, as sentences and headings call it: `4 in hinge`, `offset pivot`."""
        return hinge_words(self.on)

    @property
    def has_barrel(self) -> bool:
        """Whether anything of what it hangs on stands out beside door and frame."""
        return self.way is None or self.way.barrel is not None

    @cached_property
    def mounting(self) -> str:
        """How the hinge is mounted."""
        return self.h.mounting

    @cached_property
    def refusal(self) -> str | None:
        """Why a hinge of that width cannot be mounted so; None where it can."""
        return backset_refusal(self.h, self.pin)

    @property
    def backset_disagreement(self) -> float:
        """By how much the two backsets given differ by other than the gap at the frame stop."""
        return self.pin.backset_disagreement

    @property
    def gap_disagreement(self) -> float:
        """By how much the hinge-side gap given differs from the one that the hinge leaves make."""
        return self.pin.gap_disagreement

    @property
    def pin_off_door_face(self) -> float:
        """How far the pin stands off the door's pull face."""
        return self.pin.o

    @property
    def pin_off_frame_face(self) -> float:
        """How far the pin stands off the frame face."""
        return self.pin.y_p

    @property
    def pin_across(self) -> float:
        """How far the pin stands into the opening from the rabbet face."""
        return self.pin.x_p

    @property
    def barrel_diameter(self) -> float:
        """The diameter of the barrel."""
        return self.h.d_b

    @property
    def barrel_past_frame(self) -> float:
        """How far the barrel stands past the frame face."""
        return self.solution.barrel_past_frame

    @property
    def barrel_past_wall(self) -> float:
        """How far the barrel stands past the wall face."""
        return self.solution.barrel_past_wall

    @property
    def barrel_free_by(self) -> float:
        """How far the barrel stands clear of door, frame and casing; negative where it overlaps."""
        return self.solution.barrel_free_by

    @property
    def barrel_in_trim(self) -> bool:
        """Whether the barrel is nearer to what stands about the door than to door and frame."""
        return self.solution.barrel_free_by < self.solution.barrel_freedom

    @property
    def clear_past_frame_at_180(self) -> float:
        """How far the door opened flat would stand off the frame face, whether or not it gets there."""
        return self.solution.clear_past_frame_at_180

    @property
    def room_opened_flat(self) -> float | None:
        """The same of a door that opens flat, alone; None of one that never gets there."""
        flat = self.solution.rest_angle_bare >= math.pi - TOLERANCE
        return self.clear_past_frame_at_180 if flat else None

    # --- How far it opens ---

    @cached_property
    def greatest_angle(self) -> float:
        """How far the door turns with its hardware."""
        return in_degrees(self.solution.greatest_angle)

    @property
    def stopped_by(self) -> Contact | None:
        """What ends the swing with hardware; None at 180 degrees."""
        return self.solution.with_hardware

    @cached_property
    def greatest_angle_bare(self) -> float:
        """How far leaf and barrels alone turn."""
        return in_degrees(self.solution.greatest_angle_bare)

    @property
    def stopped_by_bare(self) -> Contact | None:
        """What ends the swing of leaf and barrels alone; None at 180 degrees."""
        return self.solution.bare

    @cached_property
    def rests_at(self) -> float:
        """Where the open door comes to rest, with its hardware: the least of its stops and what it meets."""
        return in_degrees(self.solution.rest_angle)

    @property
    def held_by(self) -> str | None:
        """What holds it there before it meets anything: a door stop, an arm; None where nothing does."""
        held = stopped_at(self) is not None
        return holder_of(self.filled, self.leaf, self.door_stop) if held else None

    @cached_property
    def stop_wanted(self) -> StopPlace | None:
        """Where a door stop would keep the door off what it meets; None where none is needed or can help."""
        return stop_wanted(self.hung, self.solution)

    @property
    def stop_tip(self) -> tuple[float, float] | None:
        """Where the tip of the door stop that was given stands in plan."""
        stop, h = self.door_stop, self.h
        return None if stop is None else (-h.F - stop.from_frame, stop.projection - h.p)

    # --- The way through, and the room it takes ---

    @property
    def clear_width_at_90(self) -> float | None:
        """The clear width with the door square open; None where it does not come to 90 degrees."""
        return self.solution.clear_width_at_90

    @property
    def clear_width_at_greatest(self) -> float:
        """The clear width with the door open as far as it goes."""
        return self.solution.clear_width_at_greatest

    @property
    def hardware_in_clear_width(self) -> float | None:
        """What hardware takes from the clear width at 90 degrees."""
        return self.solution.hardware_in_clear_width

    @property
    def latch_edge_least(self) -> float:
        """The least gap at the lock edge over the whole swing; 0 where it binds."""
        return self.solution.latch_edge_least

    @property
    def hinge_edge_least(self) -> float:
        """The least gap at the hinge edge."""
        return self.solution.hinge_edge_least

    @property
    def least_gap(self) -> float | None:
        """Least gap of the bare leaf to what stands along the wall; None with nothing there."""
        return None if self.solution.gap is None else self.solution.gap.distance

    @property
    def least_gap_angle(self) -> float | None:
        """The angle at which that gap is least."""
        return None if self.solution.gap is None else in_degrees(self.solution.gap.angle)

    @property
    def encroachment_greatest(self) -> float:
        """The most that the leaf alone stands out from the wall face."""
        return self.solution.encroachment_greatest

    @property
    def encroachment_at_rest(self) -> float:
        """How far a leaf that carries nothing stands out where it rests, perhaps farther open."""
        return self.solution.encroachment_at_rest

    @property
    def leaf_out_at_rest(self) -> float:
        """How far the leaf, without its hardware, stands out from the wall face where it does rest."""
        return self.solution.leaf_out_at_rest

    # --- What there is to say ---

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What the plan itself says of it, worst first."""
        return plan_findings(self)

    def _in_plan(self, contact: Contact | None) -> list[float] | None:
        """Where two parts meet in the axes of the plan, whichever side the leaf swings to."""
        if contact is None:
            return None
        return list(at_back(self.h, contact.point) if self.to_push else contact.point)

    def as_data(self) -> dict[str, Any]:
        """Return the candidate as the results contract names it."""
        solution, alone, whole = self.solution, self.stopped_by_bare, self.stopped_by
        return {
            "leaf": self.leaf,
            "hung_on": self.hung_on,
            "toward": "pull" if self.way is None else self.way.toward,
            "axis_off_face": self.axis_off_face,
            "axis_from_heel": self.axis_from_heel,
            "hinge_width": self.hinge_width or None,
            "pin_off_door_face": self.pin_off_door_face,
            "pin_off_frame_face": self.pin_off_frame_face,
            "pin_across": self.pin_across,
            "barrel_past_frame": self.barrel_past_frame if self.has_barrel else None,
            "barrel_past_wall": self.barrel_past_wall if self.has_barrel else None,
            "clear_past_frame_at_180": self.clear_past_frame_at_180,
            "greatest_angle": self.greatest_angle,
            "stopped_by": _stopped_data(whole),
            "contact_point": self._in_plan(whole),
            "greatest_angle_bare": self.greatest_angle_bare,
            "stopped_by_bare": _stopped_data(alone),
            "contact_point_bare": self._in_plan(alone),
            "clear_width_at_90": self.clear_width_at_90,
            "clear_width_at_greatest": self.clear_width_at_greatest,
            "hardware_in_clear_width": self.hardware_in_clear_width,
            "latch_edge_least": self.latch_edge_least,
            "hinge_edge_least": self.hinge_edge_least,
            "encroachment_greatest": self.encroachment_greatest,
            "encroachment_at_rest": self.encroachment_at_rest,
            "encroachment_with_hardware_greatest": solution.encroachment_with_hardware_greatest,
            "encroachment_with_hardware_at_rest": solution.encroachment_with_hardware_at_rest,
            "least_gap": self.least_gap,
            "least_gap_angle": self.least_gap_angle,
            "barrel_free_by": self.barrel_free_by if self.has_barrel else None,
            "barrel_diameter": self.barrel_diameter if self.has_barrel else None,
            "rests_at": self.rests_at,
            "held_by": None
            if stopped_at(self) is None
            else holder_of(self.filled, self.leaf, self.door_stop),
            "door_stop": None if self.door_stop is None else self.door_stop.as_data(),
            "findings": [finding.as_data() for finding in self.findings],
        }


def hang(hung: HungLeaf, on: HangsOn, others: Answers) -> Candidate:
    """Return one leaf on a hinge open width, inches, or hung another way.

    `others` are the answers on other widths. Raises ValueError where it cannot be hung as asked.
    """
    plan = hung.scene(on)
    way = on if isinstance(on, FilledWay) else None
    # A door stop stands on the pull side, out of the way of a leaf that swings to the other.
    stop = given_stop(hung, plan) if way is None or way.toward == "pull" else None
    solution = Solution(plan, stop_radians(hung, stop))
    if stop is not None:
        stop = as_met(stop, in_degrees(solution.greatest_angle))
    return Candidate(hung, solution, stop, others, way)


def _stopped_data(contact: Contact | None) -> dict[str, Any] | None:
    if contact is None:
        return None
    return {"kind": contact.kind, "index": contact.index, "part": contact.part}


def in_degrees(radians: float) -> float:
    """Return degrees, exactly 0, 90 or 180 where the angle is so to the last bits."""
    degrees = math.degrees(radians)
    nearest = float(round(degrees / 90.0) * 90)
    return nearest if abs(degrees - nearest) <= 1e-12 else degrees
