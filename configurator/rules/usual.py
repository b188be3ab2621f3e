"""What the user did not say, filled in with the usual value for that frame kind and door, and marked so."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from configurator.model import Opening, Use
from configurator.rules.filling import Assumed as Assumed
from configurator.rules.filling import Filler
from configurator.rules.filling import NotGivenError as NotGivenError
from configurator.rules.finding import Source
from configurator.rules.usual_wall import frame_and_wall
from configurator.rules.usual_wall import usual_layers as usual_layers
from configurator.tables import limit

USUAL_BEVEL = 0.0625
USUAL_ANGLE = 180.0

_BEVEL = Source("the usual bevel of 1/8 in 2; common practice, no source", "common practice")
_BACKSET = Source("The Building Trades Pocketbook, Doors: the edge of the butt kept 1/4 in back", "read")
_DERIVED = Source("worked out from what was given", "derived")
_LIKELY = Source("the milder case, until you say otherwise", "derived")


@dataclass(frozen=True, slots=True)
class FilledOpening:
    """An opening with every number present: inches, the symbols of the plan geometry beside each name."""

    opening: Opening
    opening_width: float  # O
    opening_height: float
    thickness: float  # T
    latch_bevel: float  # beta
    door_backset: float  # b
    frame_backset: float | None  # b_f, None where it follows from b + k
    door_mortise: float | None  # m_d, None = flush
    frame_mortise: float | None  # m_f
    hinge_gap: float  # g_h
    latch_gap: float  # g_l
    head_gap: float
    meeting_gap: float
    split_gap: float
    undercut: float
    frame_face: float  # F
    rabbet: float  # R
    stop_height: float  # s
    stop_gap: float  # k
    jamb_depth: float  # D
    return_depth: float
    """0 of a kind of frame that has no returns, whatever was given."""
    stop_width: float
    """How far the frame stop runs through the wall; a steel frame's soffit."""
    metal_thickness: float
    """Sheet of a steel frame, wall of an aluminum tube; 0 of wood."""
    wall_thickness: float
    layers: tuple[tuple[str, float], ...]
    """Wall layers from the pull side as (name, inches); usual ones where none were given."""
    frame_proud: float  # p
    wanted_angle: float  # degrees
    assumed: Mapping[str, Assumed]
    """Path of a field in the opening (such as `frame.rabbet`) to what was assumed for it."""

    @property
    def inset(self) -> float:
        """How far the closed door's pull face sits behind the frame face (i); negative if it stands proud."""
        return self.rabbet - self.stop_gap - self.thickness

    @property
    def leaf_bottom(self) -> float:
        """Height of the leaf's bottom above the finished floor."""
        return self.undercut

    @property
    def leaf_top(self) -> float:
        """Height of the leaf's top above the finished floor."""
        return self.opening_height - self.head_gap


def fill(opening: Opening) -> FilledOpening:
    """Return the opening with every number present.

    Inches, degrees. Raises NotGivenError, naming the field, where a butted frame's place is missing.
    """
    filler = Filler(opening)
    thickness = _thickness(filler)
    frame = {key: filler.of_frame(f"frame.{key}", thickness) for key in _FRAME_KEYS}
    gaps = {key: filler.of_frame(f"door.{key}", thickness) for key in _GAP_KEYS}
    _forget_idle_gaps(filler)
    built = frame_and_wall(filler, thickness, frame["rabbet"])
    _use(filler)
    return FilledOpening(
        opening=opening,
        opening_width=opening.size.width,
        opening_height=opening.size.height,
        thickness=thickness,
        latch_bevel=filler.take("door.latch_bevel", USUAL_BEVEL, "usual latch bevel", _BEVEL),
        door_backset=_door_backset(filler, thickness, frame["stop_gap"]),
        frame_backset=opening.frame.hinge_backset,
        door_mortise=opening.door.mortise_depth,
        frame_mortise=opening.frame.mortise_depth,
        frame_face=frame["face"],
        rabbet=frame["rabbet"],
        stop_height=frame["stop_height"],
        stop_gap=frame["stop_gap"],
        jamb_depth=built.jamb_depth,
        return_depth=built.return_depth,
        stop_width=built.stop_width,
        metal_thickness=built.metal_thickness,
        wall_thickness=built.wall_thickness,
        layers=built.layers,
        frame_proud=built.frame_proud,
        wanted_angle=filler.take("use.wanted_angle", USUAL_ANGLE, "opening flat against the wall", _LIKELY),
        assumed=MappingProxyType(filler.assumed),
        **gaps,
    )


def _forget_idle_gaps(filler: Filler) -> None:
    """Do not show as assumed what this opening has no use for."""
    if filler.opening.leaves != "pair":
        filler.assumed.pop("door.meeting_gap", None)
    if filler.opening.leaves != "dutch":
        filler.assumed.pop("door.split_gap", None)


_FRAME_KEYS = ("face", "rabbet", "stop_height", "stop_gap")
_GAP_KEYS = ("hinge_gap", "latch_gap", "head_gap", "meeting_gap", "split_gap", "undercut")


def _thickness(filler: Filler) -> float:
    return filler.of_frame("door.thickness", 0.0, "usual door thickness with such a frame")


def _door_backset(filler: Filler, thickness: float, stop_gap: float) -> float:
    frame_backset = filler.opening.frame.hinge_backset
    if frame_backset is not None and frame_backset >= stop_gap:
        because = "follows from the frame's hinge backset less the gap at the frame stop"
        return filler.take("door.hinge_backset", frame_backset - stop_gap, because, _DERIVED)
    thick = limit("thick_door_backset")
    usual, source = (0.375, thick.cited) if thickness > thick.value else (0.25, _BACKSET)
    return filler.take("door.hinge_backset", usual, "usual hinge backset for that thickness", source)


def _use(filler: Filler) -> None:
    """Note what is taken for the use where nothing was said."""
    for key, usual in USUAL_USE.items():
        # From which sides it locks is only a question of a door that locks.
        idle = key == "lock_both_sides" and not filler.opening.use.locked
        if filler.given(f"use.{key}") is None and not idle:
            filler.assumed[f"use.{key}"] = Assumed(usual, "nothing was said", _LIKELY.text, _LIKELY.mark)


USUAL_USE: Mapping[str, str | bool] = MappingProxyType(
    {
        "exposure": "interior",
        "coastal": False,
        "humid": False,
        "locked": False,
        "lock_both_sides": False,
        "fire_rated": False,
        "closer": False,
        "traffic": "average",
        "accessible": False,
    }
)
"""What is taken for the use where nothing was said; shown as assumed."""


def use_of(use: Use, key: str) -> Any:
    """Return what was said of one use, or what is taken for it."""
    value = getattr(use, key)
    return USUAL_USE[key] if value is None else value
