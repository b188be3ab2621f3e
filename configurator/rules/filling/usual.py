"""What the user did not say, filled in with the usual value for that frame kind and door, and marked so."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from math import ceil
from types import MappingProxyType
from typing import Any

from configurator.model import DoorStop, Hardware, Obstruction, Opening, Way
from configurator.model.words import Exposure, Leaves, Traffic, WidthPolicy
from configurator.rules.filling.door_weight import door_weight, made_of
from configurator.rules.filling.filler import Assumed as Assumed
from configurator.rules.filling.filler import Filler
from configurator.rules.filling.filler import NotGivenError as NotGivenError
from configurator.rules.filling.frame_and_wall import follows_wall, frame_and_wall
from configurator.rules.filling.frame_and_wall import usual_layers as usual_layers
from configurator.rules.filling.leaves import GappedOpening, leaves_of
from configurator.rules.finding import Source
from configurator.tables import (
    DoorStopKindRow,
    HardwareKindRow,
    KindRow,
    ObstructionKindRow,
    WayRow,
    limit,
    row_of,
)
from configurator.units import format_size

USUAL_BEVEL = 0.0625
USUAL_ANGLE = 180.0

_BEVEL = Source("the usual bevel of 1/8 in 2; common practice, no source", "common practice")
_BACKSET = Source("The Building Trades Pocketbook, Doors: the edge of the butt kept 1/4 in back", "read")
_DERIVED = Source("worked out from what was given", "derived")
_WEIGHED = Source("usual weights of hardware from memory, to be changed to what is there", "from memory")
_SAFE = Source("the safe case, until you say otherwise", "derived")
_LIKELY = Source("the milder case, until you say otherwise", "derived")


@dataclass(frozen=True, slots=True)
class FilledUse:
    """The use with every question answered that decides a part of the hinge."""

    exposure: Exposure
    coastal: bool
    humid: bool
    locked: bool
    lock_both_sides: bool
    fire_rated: bool
    closer: bool
    traffic: Traffic
    accessible: bool
    beds_moved: bool


INSWING = ("LH", "RH")
"""Hands of doors that swing in, whose barrels are on the protected side."""

USUAL_USE = FilledUse(
    exposure="interior",
    coastal=False,
    humid=False,
    locked=False,
    lock_both_sides=False,
    fire_rated=False,
    closer=False,
    traffic="average",
    accessible=False,
    beds_moved=False,
)
"""What is assumed for the use where it was not given."""
_USUAL_USE: Mapping[str, Any] = MappingProxyType(asdict(USUAL_USE))


@dataclass(frozen=True, slots=True)
class FilledOpening(GappedOpening):
    """An opening with every number present: inches, the symbols of the plan geometry beside each name."""

    opening_width: float  # O
    opening_height: float
    thickness: float  # T
    latch_bevel: float  # beta
    door_backset: float  # b
    frame_backset: float | None  # b_f, None where it follows from b + k
    door_mortise: float | None  # m_d, None = flush
    frame_mortise: float | None  # m_f
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
    use: FilledUse
    assumed: Mapping[str, Assumed]
    """Path of a field in the opening (such as `frame.rabbet`) to what was assumed for it."""
    width_policy: WidthPolicy = "narrowest that works"
    """Which of the stock widths that work is taken; the job's."""

    @property
    def inset(self) -> float:
        """How far the closed door's pull face sits behind the frame face (i); negative if it stands proud."""
        return self.rabbet - self.stop_gap - self.thickness

    @property
    def depth(self) -> float:
        """How deep the opening is: frame and wall together, from the one face to the other."""
        pull, push = -self.frame_proud, -self.frame_proud - self.wall_thickness
        return max(0.0, pull) - min(-self.jamb_depth, push)

    @property
    def depth_known(self) -> bool:
        """Whether what makes the depth was given: the wall, or a frame that goes round it."""
        wall = "wall.thickness" not in self.assumed
        return wall or ("frame.jamb_depth" not in self.assumed and follows_wall(self.opening.frame.kind))


def fill(opening: Opening, width_policy: WidthPolicy | None = None) -> FilledOpening:
    """Return the opening with every number present; `width_policy` is the job's.

    Inches, degrees. Raises NotGivenError, naming the field, where a butted frame's place is missing.
    """
    filler, door, frame = Filler(opening), opening.door, opening.frame
    thickness = _thickness(filler)
    # In the order in which what is assumed is told.
    face = filler.of_frame("frame.face", frame.face, thickness)
    rabbet = filler.of_frame("frame.rabbet", frame.rabbet, thickness)
    stop_height = filler.of_frame("frame.stop_height", frame.stop_height, thickness)
    stop_gap = filler.of_frame("frame.stop_gap", frame.stop_gap, thickness)
    gapped = _gapped(filler, thickness)
    _weight(filler, thickness, gapped)
    _things(filler)
    built = frame_and_wall(filler, thickness, rabbet)
    _axes(filler)
    use = _use(filler)
    return FilledOpening(
        opening=opening,
        opening_width=opening.size.width,
        opening_height=opening.size.height,
        thickness=thickness,
        latch_bevel=_latch_bevel(filler),
        door_backset=_door_backset(filler, thickness, stop_gap),
        frame_backset=frame.hinge_backset,
        door_mortise=door.mortise_depth,
        frame_mortise=frame.mortise_depth,
        hinge_gap=gapped.hinge_gap,
        latch_gap=gapped.latch_gap,
        head_gap=gapped.head_gap,
        meeting_gap=gapped.meeting_gap,
        split_gap=gapped.split_gap,
        undercut=gapped.undercut,
        frame_face=face,
        rabbet=rabbet,
        stop_height=stop_height,
        stop_gap=stop_gap,
        jamb_depth=built.jamb_depth,
        return_depth=built.return_depth,
        stop_width=built.stop_width,
        metal_thickness=built.metal_thickness,
        wall_thickness=built.wall_thickness,
        layers=built.layers,
        frame_proud=built.frame_proud,
        wanted_angle=_wanted_angle(filler),
        use=use,
        assumed=MappingProxyType(filler.assumed),
        width_policy=width_policy or "narrowest that works",
    )


def _axes(filler: Filler) -> None:
    """Remember of each other way of hanging compared that the place of its axis was not given."""
    for place, way in enumerate(filler.opening.compare):
        if not isinstance(way, Way) or way.hung_on == "butt hinge":
            continue  # a butt's size says where its pin stands
        row = row_of(WayRow, way.hung_on)
        usual = {
            "axis_off_face": (row.off_face, row.off_face_from),
            "axis_from_heel": (row.from_heel, row.from_heel_from),
        }
        for key, (inches, datum) in usual.items():
            if getattr(way, key) is None:
                value = datum if inches is None else f"{format_size(inches)} in from the {datum}"
                because = f"the usual place on a {way.hung_on}; ask for its drawing before ordering"
                told = f"of the {way.hung_on}, {value}"
                filler.assumed[f"compare.{place}.{key}"] = Assumed(told, because, row.source, row.mark)


def _gapped(filler: Filler, thickness: float) -> GappedOpening:
    """Return the opening with the gaps about its leaves, in the order in which they are told."""
    door = filler.opening.door
    return GappedOpening(
        opening=filler.opening,
        hinge_gap=filler.of_frame("door.hinge_gap", door.hinge_gap, thickness),
        latch_gap=filler.of_frame("door.latch_gap", door.latch_gap, thickness),
        head_gap=filler.of_frame("door.head_gap", door.head_gap, thickness),
        meeting_gap=_between_leaves(filler, "pair", "door.meeting_gap", door.meeting_gap),
        split_gap=_between_leaves(filler, "dutch", "door.split_gap", door.split_gap),
        undercut=filler.of_frame("door.undercut", door.undercut, thickness),
    )


def _latch_bevel(filler: Filler) -> float:
    given = filler.opening.door.latch_bevel
    return filler.take("door.latch_bevel", given, USUAL_BEVEL, "usual latch bevel", _BEVEL)


def _wanted_angle(filler: Filler) -> float:
    given, because = filler.opening.use.wanted_angle, "opening flat against the wall"
    return filler.take("use.wanted_angle", given, USUAL_ANGLE, because, _LIKELY)


def _between_leaves(filler: Filler, leaves: Leaves, path: str, given: float | None) -> float:
    """Return the gap between two leaves; not shown as assumed where the opening has no such gap."""
    gap = filler.of_frame(path, given, 0.0)
    if filler.opening.leaves != leaves:
        filler.assumed.pop(path, None)
    return gap


def _thickness(filler: Filler) -> float:
    given = filler.opening.door.thickness
    return filler.of_frame("door.thickness", given, 0.0, "usual door thickness with such a frame")


SIZES_OF_A_KIND = {
    "obstructions": ("projection", "start", "diameter"),
    "hardware": (
        "face",
        "projection",
        "from_latch_edge",
        "width",
        "height",
        "vertical",
        "weight",
        "opens_to",
    ),
    "door_stop": ("projection",),
}
"""What of a thing is the usual of its kind where nobody said."""


def _things(filler: Filler) -> None:
    """Note the sizes that nobody gave of what stands along the wall, is on a leaf and stops it."""
    opening = filler.opening
    for place, thing in enumerate(opening.obstructions):
        _sizes(filler, f"obstructions.{place}", thing, row_of(ObstructionKindRow, thing.kind))
    for place, item in enumerate(opening.hardware):
        _sizes(filler, f"hardware.{place}", item, row_of(HardwareKindRow, item.kind))
    if (stop := opening.door_stop) is not None:
        _sizes(filler, "door_stop", stop, row_of(DoorStopKindRow, stop.kind))


def _sizes(filler: Filler, path: str, given: Obstruction | Hardware | DoorStop, row: KindRow) -> None:
    for key in SIZES_OF_A_KIND[path.split(".")[0]]:
        value = getattr(given, key)
        if value is not None and key not in given.model_fields_set:
            because = f"usual for {row.kind}, until it is measured"
            source = _WEIGHED if key == "weight" else row.cited
            filler.assumed[f"{path}.{key}"] = Assumed(value, because, source.text, source.mark)


def _weight(filler: Filler, thickness: float, gapped: GappedOpening) -> None:
    """Note the weight assumed for the heaviest leaf where what was given does not decide it."""
    opening, given = filler.opening, filler.opening.door.weight
    weights = [
        door_weight(made_of(opening, thickness, leaf.name), leaf.width, leaf.height, given)
        for leaf in leaves_of(gapped)
    ]
    known = [weight for weight in weights if weight is not None]
    if not known:
        because = "not known: taken as heavy, this or more, until the lead thickness or the weight is given"
        filler.take("door.weight", None, limit("heavy_door").value, because, _SAFE)
    elif known[0].guessed:
        because = "the heaviest construction short of lead, until the construction or the weight is given"
        filler.take("door.weight", None, float(ceil(max(one.high for one in known))), because, _SAFE)


def _door_backset(filler: Filler, thickness: float, stop_gap: float) -> float:
    given, frame_backset = filler.opening.door.hinge_backset, filler.opening.frame.hinge_backset
    if frame_backset is not None and frame_backset >= stop_gap:
        because = "follows from the frame's hinge backset less the gap at the frame stop"
        return filler.take("door.hinge_backset", given, frame_backset - stop_gap, because, _DERIVED)
    thick = limit("thick_door_backset")
    usual, source = (0.375, thick.cited) if thickness > thick.value else (0.25, _BACKSET)
    return filler.take("door.hinge_backset", given, usual, "usual hinge backset for that thickness", source)


def _use(filler: Filler) -> FilledUse:
    """Return the use, noting what is assumed where it was not given."""
    opening, use = filler.opening, filler.opening.use
    given = {key for key, value in use if value is not None}
    if opening.fire_label is not None:
        given.add("fire_rated")
    if opening.closes_itself is not None:
        given.add("closer")
    usual = _USUAL_USE
    if opening.hand not in INSWING:
        usual = {**usual, "locked": True}  # its barrel may be on the public side
    for key, value in usual.items():
        # From which sides it locks is only a question of a door that locks.
        idle = key == "lock_both_sides" and not use.locked
        if key not in given and not idle:
            source = _SAFE if value is True else _LIKELY
            filler.assumed[f"use.{key}"] = Assumed(value, "nothing was said", source.text, source.mark)
    filled = fill_use(opening)
    return filled if use.locked is not None else replace(filled, locked=usual["locked"])


def fill_use(opening: Opening) -> FilledUse:
    """Return an opening's use as given, with what is assumed where it was not."""
    use, label = opening.use, opening.fire_label
    return FilledUse(
        exposure=USUAL_USE.exposure if use.exposure is None else use.exposure,
        coastal=USUAL_USE.coastal if use.coastal is None else use.coastal,
        humid=USUAL_USE.humid if use.humid is None else use.humid,
        locked=USUAL_USE.locked if use.locked is None else use.locked,
        lock_both_sides=USUAL_USE.lock_both_sides if use.lock_both_sides is None else use.lock_both_sides,
        fire_rated=USUAL_USE.fire_rated if label is None else label,
        closer=USUAL_USE.closer if opening.closes_itself is None else opening.closes_itself,
        traffic=USUAL_USE.traffic if use.traffic is None else use.traffic,
        accessible=USUAL_USE.accessible if use.accessible is None else use.accessible,
        beds_moved=USUAL_USE.beds_moved if use.beds_moved is None else use.beds_moved,
    )
