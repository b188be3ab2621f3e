"""The lengths of an opening that can be varied, and what its record says at each value; inches."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.model import Obstruction, Opening, Way
from configurator.model.paths import replaced
from configurator.rules.filling.frame_and_wall import follows_wall
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import FilledWay
from configurator.rules.hinge.stock import stock_widths
from configurator.rules.wording import obstruction
from configurator.study.candidate import Candidate
from configurator.study.run import Study
from configurator.tables import ObstructionKindRow, row_of

ABOUT = 1.5
"""Inches that are looked at on either side of the value that holds."""
THINNEST = 1 / 16
"""Inches; nothing thinner is looked at where there must be something at all."""
_THINNER, _THICKER = 0.625, 0.875
"""Inches: doors are 1-3/8, 1-3/4 and 2-1/4 thick."""
_NEAREST_START = -6.0
_PAST_THE_LEAF, _ALONG = 4.0, 6.0
_NARROWEST, _MARGIN = 1.0, 0.5

Changes = Mapping[str, Any]
"""Path in the opening's record to the value there."""


@dataclass(frozen=True, slots=True)
class Hold:
    """What stays as it is while a parameter varies, and what the record says then at a value, inches."""

    name: str
    changes: Callable[[float], Changes]


@dataclass(frozen=True, slots=True)
class Parameter:
    """A length that can be varied, inches.

    `of_hinge` where it is the hinge open width itself, `of_axis` where it is a place of another way's axis.
    The first of the holds is the usual one.
    """

    name: str
    plain: str
    present: float
    low: float
    high: float
    holds: tuple[Hold, ...]
    of_hinge: bool = False
    of_axis: bool = False


def parameters_of(study: Study, candidate: Candidate) -> tuple[Parameter, ...]:
    """Return every length that can be varied, for one leaf of an opening on what it hangs on."""
    filled, way = study.filled, candidate.way
    found = (
        *((_hinge_width(study, candidate),) if way is None else _axis(study, way)),
        _wall(filled),
        _proud(filled),
        *_obstructions(filled),
        _inset(filled),
        _door_thickness(filled),
        *((_backset(filled),) if way is None else ()),
    )
    return tuple(parameter for parameter in found if parameter.low < parameter.high)


def with_changes(opening: Opening, changes: Changes) -> Opening:
    """Return the opening with other values at some paths, not validated: for values known to be in range."""
    for path, value in changes.items():
        opening = replaced(opening, path, value)
    return opening


def _about(present: float, least: float = -math.inf) -> tuple[float, float]:
    """Return the ends of what is looked at about a value; it lies within them."""
    return min(present, max(present - ABOUT, least)), present + ABOUT


def _hinge_width(study: Study, candidate: Candidate) -> Parameter:
    heights = [leaf.parts["height"].value for leaf in study.specification.leaves]
    stock = [width for height in heights for width in stock_widths(height)]
    widths = [*stock, *(one.hinge_width for one in study.butts)]
    compared = [one.hinge_width for one in study.butts]
    ways = tuple(one for one in study.compared if isinstance(one, Way))
    others = {width for width in compared if width != candidate.hinge_width}

    def changes(value: float) -> Changes:
        return {"compare": (*sorted({*others, value}), *ways)}

    low, high = max(_NARROWEST, min(widths) - _MARGIN), max(widths) + _MARGIN
    hold = Hold("all else as it is", changes)
    present = candidate.hinge_width
    return Parameter(
        "hinge open width", "hinge width", present, min(low, present), high, (hold,), of_hinge=True
    )


def _axis(study: Study, way: FilledWay) -> Iterator[Parameter]:
    """Vary where the axis stands; not that of a rounded heel, which is made with it."""
    if way.heel_radius is not None:
        return
    place = study.compared.index(way.given)
    names = (
        ("axis_off_face", "axis off the door's face", way.off_face),
        ("axis_from_heel", "axis from the heel edge", way.from_heel),
    )
    for key, name, present in names:
        hold = Hold("all else as it is", _with_axis(study.compared, place, key))
        low, high = _about(present)
        yield Parameter(name, name, present, low, high, (hold,), of_axis=True)


def _with_axis(compared: Sequence[float | Way], place: int, key: str) -> Callable[[float], Changes]:
    def changes(value: float) -> Changes:
        way = compared[place]
        assert isinstance(way, Way)
        return {"compare": (*compared[:place], way.model_copy(update={key: value}), *compared[place + 1 :])}

    return changes


def _wall(filled: FilledOpening) -> Parameter:
    """Vary the wall about a frame that stays as it is made, or about one that is made for the wall.

    A wall that grows on both faces of a frame centred in it, or by a finish on the pull side alone, hides
    more of the frame; a frame that follows its wall stays as proud of it as it was.
    """
    present = filled.wall_thickness
    frame = {"frame.jamb_depth": filled.jamb_depth}

    def both_faces(value: float) -> Changes:
        return {**_layered(filled, value), **frame, "wall.frame_proud": _proud_by(filled, present - value, 2)}

    def pull_face(value: float) -> Changes:
        proud = _proud_by(filled, present - value, 1)
        return {**_layered(filled, value, finish=True), **frame, "wall.frame_proud": proud}

    def for_the_wall(value: float) -> Changes:
        return _layered(filled, value)

    holds = [Hold("the frame; both faces of the wall move", both_faces)]
    holds.append(Hold("the frame; a finish on the pull side moves", pull_face))
    kind = filled.opening.frame.kind
    if follows_wall(kind) and {"frame.jamb_depth", "wall.frame_proud"} <= filled.assumed.keys():
        holds.append(Hold("how the frame is made for its wall", for_the_wall))
    low, high = _about(present, THINNEST)
    return Parameter("wall thickness", "wall thickness", present, low, high, tuple(holds))


def _proud_by(filled: FilledOpening, thinner: float, faces: int) -> float:
    return filled.frame_proud + thinner / faces


def _layered(filled: FilledOpening, value: float, finish: bool = False) -> Changes:
    """Return a wall's thickness and its layers: the finish on the pull side takes it up, or the core does."""
    layers = filled.opening.wall.layers
    if not layers:
        return {"wall.thickness": value}
    thicknesses = [layer.thickness for layer in layers]
    place = 0 if finish else thicknesses.index(max(thicknesses))
    grown = thicknesses[place] + value - filled.wall_thickness
    if grown < THINNEST:
        # The layers would not be those that were given: the wall is taken as one that nobody described.
        return {"wall.layers": None, "wall.thickness": value}
    return {f"wall.layers.{place}.thickness": grown, "wall.thickness": value}


def _proud(filled: FilledOpening) -> Parameter:
    def changes(value: float) -> Changes:
        return {"wall.frame_proud": value}

    low, high = _about(filled.frame_proud)
    hold = Hold("frame and wall", changes)
    plain = "frame stands out from wall by"
    return Parameter("frame proud of wall", plain, filled.frame_proud, low, high, (hold,))


def _obstructions(filled: FilledOpening) -> Iterator[Parameter]:
    things = filled.opening.obstructions
    for place, one in enumerate(things):
        name = obstruction(one.kind)
        alike = [other.kind for other in things[: place + 1]].count(one.kind)
        if [other.kind for other in things].count(one.kind) > 1:
            name = f"{name} {alike}"
        if one.projection is not None:
            low, high = _about(one.projection, THINNEST)
            high = max(high, 2 * one.projection)
            holds = (_at(f"obstructions.{place}.projection"),)
            yield Parameter(f"{name} projection", f"{name} stands off by", one.projection, low, high, holds)
        yield _start(filled, one, place, name)


def _start(filled: FilledOpening, one: Obstruction, place: int, name: str) -> Parameter:
    present = one.start or 0.0
    fills = row_of(ObstructionKindRow, one.kind).outline == "wall"
    low = 0.0 if fills else max(_NEAREST_START, -filled.frame_face)
    past = filled.opening_width + _PAST_THE_LEAF if fills else present + _ALONG
    plain = f"{name} begins this far from the frame"
    holds = (_at(f"obstructions.{place}.start"),)
    return Parameter(f"{name} start", plain, present, min(low, present), max(past, present + 1.0), holds)


def _at(path: str) -> Hold:
    return Hold("all else as it is", lambda value: {path: value})


def _inset(filled: FilledOpening) -> Parameter:
    """Vary how far the door sits behind the frame face, by the depth of the rabbet it closes into."""

    def changes(value: float) -> Changes:
        return {"frame.rabbet": value + filled.stop_gap + filled.thickness}

    least = THINNEST - filled.stop_gap - filled.thickness
    low, high = _about(filled.inset, least)
    hold = Hold("door thickness and gap at the frame stop", changes)
    return Parameter("inset", "door face sits behind frame face by", filled.inset, low, high, (hold,))


def _door_thickness(filled: FilledOpening) -> Parameter:
    present = filled.thickness
    held = {"door.hinge_backset": filled.door_backset}

    def inset(value: float) -> Changes:
        return {"door.thickness": value, "frame.rabbet": filled.rabbet + value - present, **held}

    def frame(value: float) -> Changes:
        return {"door.thickness": value, "frame.rabbet": filled.rabbet, **held}

    holds = (
        Hold("the inset; the rabbet is made for the door", inset),
        Hold("the frame; the inset makes up for it", frame),
    )
    low, high = min(present, max(0.75, present - _THINNER)), min(present + _THICKER, 6.0)
    return Parameter("door thickness", "door thickness", present, low, high, holds)


def _backset(filled: FilledOpening) -> Parameter:
    """Vary how far the hinge is set back; a frame leaf with a backset of its own moves by as much."""
    present, own = filled.door_backset, filled.frame_backset

    def changes(value: float) -> Changes:
        data = {"door.hinge_backset": value}
        return data if own is None else {**data, "frame.hinge_backset": own + value - present}

    least = 0.0 if own is None else max(0.0, present - own)
    low, high = max(least, present - ABOUT), min(present + ABOUT, max(present, filled.thickness))
    hold = Hold("door, frame and hinge", changes)
    return Parameter(
        "hinge backset", "hinge set back from the door's far face by", present, low, high, (hold,)
    )
