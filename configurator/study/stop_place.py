"""Where a door stop stands at a leaf, and where one goes that keeps a leaf off what it would meet.

A stop is taken as its tip: a point in plan, an inch high. Each leaf has one of its own, on its hinge side.
"""

import math
from dataclasses import replace

from configurator.geometry.inverse.bumper import (
    greatest_along,
    met_stop,
    stop_for_angle,
    stop_on_wall,
)
from configurator.geometry.polar import PolarShape
from configurator.geometry.shapes import Hardware, Shape
from configurator.geometry.solve import Scene, Solution
from configurator.model import DoorStop
from configurator.rules.hinge.answers import Fault, StopPlace, held_at
from configurator.study.hang import HungLeaf
from configurator.tables import DoorStopKindRow, HardwareKindRow, row_of
from configurator.units import TOLERANCE

TIP = 1.0
"""How high a stop's tip is taken to be, inches; from memory."""
USUAL_HEIGHT = 38.0
"""Where a bumper goes with no hardware to meet, inches: level with usual hardware; common practice."""
_OFF_THE_FLOOR = 0.5
"""How far the middle of a floor stop's tip reaches over the bottom of the leaf, inches; from memory."""
_STEP = 0.25
"""A stop to be ordered stands out by whole quarters of an inch, and a quarter more than it must."""
_LONGEST_BUMPER = 4.0
"""No wall bumper is offered that stands farther off the wall, inches; from memory."""
_FARTHEST_FLOOR_STOP = 48.0
"""No floor stop is offered farther out than the longest that a job may hold, inches."""
_OWN = ("frame", "latch jamb", "stop", "other leaf")


def given_stop(leaf: HungLeaf, plan: Scene) -> StopPlace | None:
    """Return where the door stop that was given stands at a leaf, None where none was."""
    given = leaf.filled.opening.door_stop
    return None if given is None else placed(leaf, plan, given)


def placed(leaf: HungLeaf, plan: Scene, stop: DoorStop) -> StopPlace:
    """Return a stop's place at a leaf, worked out as far as it was not given, and what comes of it."""
    h, pin = plan.hanging, plan.pin
    carried = _landing(leaf, stop)
    height = _height(leaf, stop, carried)
    far = _from_frame(plan, stop.projection, carried)
    from_frame = far if stop.from_frame is None else stop.from_frame
    point = (-h.F - from_frame, stop.projection - h.p)
    bottom = 0.0 if row_of(DoorStopKindRow, stop.kind).stands == "floor" else height - TIP / 2
    tip = Shape((point,), 0.0, bottom, height + TIP / 2, "door stop")
    met = met_stop((*plan.bare, *plan.hardware), tip, pin)
    return StopPlace(
        kind=stop.kind,
        projection=stop.projection,
        from_frame=from_frame,
        from_pin=from_frame + h.F + pin.x_p,
        height=height,
        rests_at=None if met is None else math.degrees(met[0]),
        meets="" if met is None else met[1],
        fault=_fault(leaf, plan, tip, None if met is None else met[1]),
        reach=max(_from_frame(plan, stop.projection, None), 0.0),
    )


def stop_radians(leaf: HungLeaf, place: StopPlace | None) -> float | None:
    """Return where the stops given hold the door, radians; the smaller of two, None where there are none."""
    held = held_at(leaf.filled.opening.stop_angle(leaf.name), place)
    return None if held is None else math.radians(held)


def as_met(place: StopPlace, greatest: float) -> StopPlace:
    """Return the place with the fault that something is met before it; degrees."""
    late = place.holds and place.rests_at is not None and place.rests_at > greatest + TOLERANCE
    return replace(place, fault="met too late") if late else place


def stop_wanted(leaf: HungLeaf, solution: Solution) -> StopPlace | None:
    """Return where a stop goes that the door comes to before anything else; None where none was needed.

    None too where a stop is given, or where no stop on the hinge side's wall or floor can help.
    """
    contact, opening = solution.with_hardware, leaf.filled.opening
    if contact is None or contact.at_rest or opening.angle_stop(leaf.name) or opening.door_stop:
        return None
    if contact.kind in _OWN or contact.point[0] > -solution.hanging.F:
        return None
    found = _off_the_wall(leaf, solution) or _off_the_leaf(leaf, solution)
    return found if found is not None and _serves(found, solution) else None


def _serves(place: StopPlace, solution: Solution) -> bool:
    rests = place.rests_at
    return not place.fault and rests is not None and rests < math.degrees(solution.greatest_angle) - TOLERANCE


def _off_the_wall(leaf: HungLeaf, solution: Solution) -> StopPlace | None:
    """Return a usual wall bumper behind the hardware that meets the wall first; None where that is else."""
    contact = solution.with_hardware
    if contact is None or contact.kind != "wall":
        return None
    struck = [one for one in _landing_on_wall(leaf) if one.kind == contact.part]
    if not struck:
        return None
    projection = row_of(DoorStopKindRow, "wall bumper").projection
    bumper = DoorStop(kind="wall bumper", projection=projection, height=struck[0].height)
    return placed(leaf, solution.scene, bumper)


def _off_the_leaf(leaf: HungLeaf, solution: Solution) -> StopPlace | None:
    """Return a stop for the face of the leaf, long enough that the door comes to it before what it meets."""
    h, pin = solution.hanging, solution.pin
    _, needed = stop_for_angle(h, pin, solution.greatest_angle, greatest_along(h, pin))
    projection = math.ceil(max(needed, 0.0) / _STEP) * _STEP + _STEP
    on_floor = leaf.leaf.bottom <= leaf.filled.leaf_bottom
    if projection > (_FARTHEST_FLOOR_STOP if on_floor else _LONGEST_BUMPER):
        return None
    if on_floor:
        stop = DoorStop(kind="floor stop", projection=projection)
    else:
        middle = _clear_height(leaf, (leaf.leaf.bottom + leaf.leaf.top) / 2)
        stop = DoorStop(kind="wall bumper", projection=projection, height=middle)
    return placed(leaf, solution.scene, stop)


def _landing(leaf: HungLeaf, stop: DoorStop) -> Hardware | None:
    """Return what on the pull face a wall bumper is set behind: what stands out farthest at its height."""
    if row_of(DoorStopKindRow, stop.kind).stands != "wall":
        return None
    carried = _landing_on_wall(leaf)
    if stop.height is not None:
        carried = [one for one in carried if abs(one.height - stop.height) <= (one.vertical + TIP) / 2]
    return max(carried, key=lambda one: one.projection, default=None)


def _landing_on_wall(leaf: HungLeaf) -> list[Hardware]:
    """Return what on the pull face can come to a wall bumper."""
    facing = [one for one in leaf.hardware if one.face == "pull"]
    return [one for one in facing if row_of(HardwareKindRow, one.kind).meets_bumper]


def _height(leaf: HungLeaf, stop: DoorStop, carried: Hardware | None) -> float:
    """Return the height of a tip's middle: as given, of what it is set behind, or where stops usually go."""
    if stop.height is not None:
        return stop.height
    if row_of(DoorStopKindRow, stop.kind).stands == "floor":
        return leaf.filled.leaf_bottom + _OFF_THE_FLOOR
    if carried is not None:
        return carried.height
    low, high = leaf.leaf.bottom, leaf.leaf.top
    usual = USUAL_HEIGHT if low + TIP <= USUAL_HEIGHT <= high - TIP else (low + high) / 2
    return _clear_height(leaf, usual)


def _clear_height(leaf: HungLeaf, wanted: float) -> float:
    """Return the height nearest to the wanted one at which a tip meets the leaf and nothing that it carries.

    The wanted one where there is none.
    """
    facing = [one for one in leaf.hardware if one.face == "pull"]
    spans = [(one.height - (one.vertical + TIP) / 2, one.height + (one.vertical + TIP) / 2) for one in facing]
    ends = [end for span in spans for end in span]
    low, high = leaf.leaf.bottom + TIP, leaf.leaf.top - TIP
    clear = [
        height
        for height in (wanted, *ends)
        if low <= height <= high and not any(a + TOLERANCE < height < b - TOLERANCE for a, b in spans)
    ]
    return min(clear, key=lambda height: abs(height - wanted), default=wanted)


def _from_frame(plan: Scene, projection: float, carried: Hardware | None) -> float:
    """Return how far along the wall from the frame a tip goes: behind hardware, or near the latch edge.

    Inches, to the sixteenth toward the frame, as it is set out on site.
    """
    h, pin = plan.hanging, plan.pin
    most, out = greatest_along(h, pin), 0.0
    along = most
    if carried is not None:
        out = carried.projection
        along = min(h.O - h.g_l - _line(carried) - pin.x_p, most)
    place = stop_on_wall(h, pin, projection, along, out)
    if place is not None:
        x = place.point[0]
    elif projection - h.p - pin.y_p < along / 2:  # so short that the door never comes to it: where it would
        x = pin.x_p - along
    else:  # so long that it is not met before the door stands square
        x = pin.x_p
    return math.floor((-h.F - x) * 16) / 16


def _line(carried: Hardware) -> float:
    """Return how far from the latch edge a bumper goes: behind a lever's spindle, else behind the middle."""
    spindle = row_of(HardwareKindRow, carried.kind).spindle
    if spindle is None:
        return carried.from_latch_edge
    return carried.from_latch_edge - carried.width / 2 + min(spindle, carried.width / 2)


def _fault(leaf: HungLeaf, plan: Scene, tip: Shape, part: str | None) -> Fault:
    """Return what is wrong with where a tip stands, apart from what is met before it."""
    (x, y), h, pin = tip.points[0], plan.hanging, plan.pin
    if x > -h.F:
        return "in the doorway"
    if any(_holds(standing, tip) for standing in plan.obstructions):
        return "buried"
    if min(leaf.leaf.top, tip.top) - max(leaf.leaf.bottom, tip.bottom) <= TOLERANCE and part is None:
        return "misses"
    if part is None:
        return "never met"
    along = math.sqrt(max(math.dist((x, y), pin.at) ** 2 - pin.o * pin.o, 0.0))
    return "near the edge" if part == "leaf" and along > greatest_along(h, pin) + TOLERANCE else ""


def _holds(standing: PolarShape, tip: Shape) -> bool:
    """Whether a thing along the wall has a tip inside it, or between itself and the wall."""
    shape, (x, y) = standing.shape, tip.points[0]
    across = [a for a, _ in shape.points]
    outer = max(b for _, b in shape.points) + shape.radius
    beside = min(across) - shape.radius < x < max(across) + shape.radius
    return (
        beside
        and y < outer - TOLERANCE
        and min(shape.top, tip.top) - max(shape.bottom, tip.bottom) > TOLERANCE
    )
