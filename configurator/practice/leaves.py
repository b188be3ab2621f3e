"""Openings drawn at random for problems about the plan, with everything that counts given; inches."""

from dataclasses import dataclass
from random import Random
from typing import Any

from configurator.geometry.pin import Hanging, Pin, locate_pin
from configurator.model import Opening
from configurator.practice.words import fraction
from configurator.rules.filling.usual import fill
from configurator.rules.hinge.sizes import hinge_height
from configurator.rules.hinge.stock import stock_rows
from configurator.study import Candidate
from configurator.study.hang import HungLeaf, hang_leaves
from configurator.study.run import LeafHanger

WIDTHS = (30.0, 32.0, 34.0, 36.0, 38.0, 40.0, 42.0, 44.0, 48.0)
_THIN, _WIDEST_THIN = 1.375, 36.0
"""Inches: the table of hinge heights has thin doors up to this wide."""
_PROUD = (0.0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75)
LEVER = {
    "kind": "lever",
    "projection": 2.5,
    "from_latch_edge": 2.75,
    "width": 4,
    "height": 38,
    "vertical": 3.5,
}


@dataclass(frozen=True, slots=True)
class PracticeLeaf:
    """A single leaf hung on one hinge open width, inches."""

    opening: Opening
    leaf: HungLeaf
    width: float

    @property
    def h(self) -> Hanging:
        """The leaf in the symbols of the plan geometry."""
        return self.leaf.hanging(self.width)

    @property
    def pin(self) -> Pin:
        """Where the pin stands."""
        return locate_pin(self.h)

    @property
    def hinge_height(self) -> float:
        """The hinge height that a door of this size takes, inches."""
        return float(hinge_height(self.h.T, self.h.O - self.h.g_h - self.h.g_l).value)

    @property
    def size(self) -> str:
        """The size of its hinge, height first."""
        return hinge_size(self.hinge_height, self.width)

    @property
    def wider(self) -> tuple[float, ...]:
        """The stock widths of its hinge height that are wider than its own, inches."""
        return tuple(one for one in usual_widths(self.hinge_height) if one > self.width)

    def hung(self) -> Candidate:
        """Return every answer of the plan for it."""
        return LeafHanger(self.leaf.filled)(self.leaf.name, self.width)

    def on(self, width: float) -> "PracticeLeaf":
        """Return the same leaf on another hinge open width, inches."""
        shown = Opening.model_validate({**self.opening.model_dump(exclude_unset=True), "compare": [width]})
        return PracticeLeaf(shown, self.leaf, width)


def hinge_size(height: float, width: float) -> str:
    """Write a hinge size, height first."""
    return f"{fraction(height)} x {fraction(width)}"


def usual_widths(height: float) -> tuple[float, ...]:
    """Return the stock widths of a hinge height, inches, without those to be asked for first."""
    return tuple(row.width for row in stock_rows(height) if row.stock != "ask first")


def practice_leaf(data: dict[str, Any], width: float) -> PracticeLeaf:
    """Return an opening, as keys of a project file, hung on a hinge open width, inches."""
    opening = Opening.model_validate({"mark": "practice", "compare": [width], **data})
    return PracticeLeaf(opening, hang_leaves(fill(opening))[0], width)


def drawn(random: Random, **more: Any) -> dict[str, Any]:
    """Return a single leaf in a steel frame with sizes, gaps and backset drawn at random."""
    thickness = random.choice((1.75, 1.75, 1.75, _THIN))
    widths = [one for one in WIDTHS if thickness > _THIN or one <= _WIDEST_THIN]
    return {
        "hand": random.choice(("LH", "RH")),
        "size": {"width": random.choice(widths), "height": random.choice((80.0, 84.0, 90.0))},
        "door": {
            "thickness": thickness,
            "latch_bevel": 0.0625,
            "hinge_backset": random.choice((0.25, 0.25, 0.3125, 0.375)),
            "hinge_gap": 0.125,
            "latch_gap": 0.125,
        },
        "frame": {
            "kind": "knocked-down drywall",
            "face": 2,
            "rabbet": thickness + random.choice((0.1875, 0.25, 0.3125)),
            "stop_gap": random.choice((0.0625, 0.125)),
            "stop_height": 0.625,
        },
        "wall": {"frame_proud": random.choice(_PROUD)},
        **more,
    }


def hung_in_stock(data: dict[str, Any], random: Random) -> PracticeLeaf:
    """Return an opening on a hinge whose size is in stock for such a door."""
    first = practice_leaf(data, 4.5)
    return first.on(random.choice(usual_widths(first.hinge_height)))


def random_leaf(random: Random, **more: Any) -> PracticeLeaf | None:
    """Return a drawn opening on a drawn hinge width; None where the barrel would not stand free."""
    found = hung_in_stock(drawn(random, **more), random)
    return found if min(found.pin.o, found.pin.y_p) >= found.h.d_b / 2 else None


def door_words(found: PracticeLeaf) -> str:
    """Say the door, its hinge and its backset."""
    h = found.h
    return f"A {fraction(h.T)} in door on {found.size} hinges, backset {fraction(h.b)} in."


def frame_words(found: PracticeLeaf) -> str:
    """Say the rabbet, the gap at the frame stop and how far proud the frame stands."""
    h = found.h
    return f"Rabbet {fraction(h.R)} in deep, gap at the frame stop {fraction(h.k)} in."


def proud_words(found: PracticeLeaf) -> str:
    """Say how far the frame face stands ahead of the wall."""
    proud = found.h.p
    return f"The frame stands {fraction(proud)} in proud of the wall." if proud else FLUSH


FLUSH = "The frame is flush with the wall."


def off_door_line(found: PracticeLeaf) -> str:
    """Work out how far the pin stands off the door face."""
    h, pin = found.h, found.pin
    return (
        f"Pin off the door face: o = W/2 − (T − b) = {fraction(h.W / 2)} − ({fraction(h.T)} − "
        f"{fraction(h.b)}) = {fraction(pin.o)} in."
    )


def inset_line(found: PracticeLeaf) -> str:
    """Work out how far the door face sits behind the frame face."""
    h = found.h
    return f"Inset: i = R − k − T = {fraction(h.R)} − {fraction(h.k)} − {fraction(h.T)} = {fraction(h.i)} in."


def off_frame_line(found: PracticeLeaf) -> str:
    """Work out how far the pin stands off the frame face."""
    h, pin = found.h, found.pin
    return f"Pin off the frame face: o − i = {fraction(pin.o)} − {fraction(h.i)} = {fraction(pin.y_p)} in."
