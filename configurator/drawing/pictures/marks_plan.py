"""What is marked for a word in a plan: about the hinge, along the wall, at the latch, of the whole."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from configurator.drawing.base.primitives import Arc, Polyline, Primitive, rectangle, turned
from configurator.drawing.pictures.scenes import WORD, Mark, Scene, arrow, outline, ring, span
from configurator.drawing.pictures.small_plan import swing_arc
from configurator.drawing.plan.inset import clear_width_points
from configurator.drawing.plan.jamb import stop_width
from configurator.drawing.plan.leaf import door_leaf_outline, frame_leaf_outline
from configurator.drawing.plan.standing_things import merged
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.shapes import FAR

# --- About the hinge ---


def _up(x: float, low: float, high: float) -> Mark:
    return (span((x, low), (x, high)),)


def _across(low: float, high: float, y: float) -> Mark:
    return (span((low, y), (high, y)),)


def _thickness(s: Scene) -> Mark:
    return _up(s.hung.h.g_h + 2.2, -s.hung.h.i - s.hung.h.T, -s.hung.h.i)


def _inset(s: Scene) -> Mark:
    x = s.hung.h.g_h + 1.3
    line = Polyline("A-ANNO-LEAD", ((0.0, 0.0), (x + 0.4, 0.0)))
    return (line, *_up(x, -s.hung.h.i, 0.0))


def _rabbet(s: Scene) -> Mark:
    h = s.hung.h
    return (
        span((0.0, -h.R), (0.0, 0.0), (-0.8, 0.0)),
        Polyline(WORD, ((h.s, -h.R), (0.0, -h.R), (0.0, 0.0))),
    )


def _frame_stop(s: Scene) -> Mark:
    h = s.hung.h
    return (outline(rectangle(0.0, h.s, -h.R - stop_width(s.hung), -h.R)),)


def _stop_gap(s: Scene) -> Mark:
    h = s.hung.h
    return _up(h.s * 0.6, -h.R, -h.i - h.T)


def _face(s: Scene) -> Mark:
    return (span((-s.hung.h.F, 0.0), (0.0, 0.0), (0.0, 0.7)),)


def _jamb_depth(s: Scene) -> Mark:
    h = s.hung.h
    return (span((-h.F, -h.D), (-h.F, 0.0), (-1.6, 0.0)),)


def _throat(s: Scene) -> Mark:
    h, back = s.hung.h, s.hung.filled.return_depth
    return (span((-h.F, back - h.D), (-h.F, -back), (-1.6, 0.0)),)


def _return(s: Scene) -> Mark:
    return (span((-s.hung.h.F, -s.hung.filled.return_depth), (-s.hung.h.F, 0.0), (-0.8, 0.0)),)


def _metal(s: Scene) -> Mark:
    return (ring((-s.hung.h.F / 2, -s.hung.filled.metal_thickness / 2), 0.3),)


def _frame(s: Scene) -> Mark:
    h = s.hung.h
    return (outline(((-h.F, -h.D), (h.s, -h.D), (h.s, -h.R), (0.0, -h.R), (0.0, 0.0), (-h.F, 0.0))),)


def _frame_backset(s: Scene) -> Mark:
    back = min(y for _, y in frame_leaf_outline(s.hung))
    return (span((0.0, -s.hung.h.R), (0.0, back), (-0.8, 0.0)),)


def _door_backset(s: Scene) -> Mark:
    h = s.hung.h
    back = min(y for _, y in door_leaf_outline(s.hung))
    return (span((h.g_h, -h.i - h.T), (h.g_h, back), (1.0, 0.0)),)


def _mortise(s: Scene) -> Mark:
    return (outline(door_leaf_outline(s.hung)), outline(frame_leaf_outline(s.hung)))


def _hinge_gap(s: Scene) -> Mark:
    h = s.hung.h
    return (span((0.0, -h.i), (h.g_h, -h.i), (0.0, -0.9)),)


def _leaf(s: Scene) -> Mark:
    return (outline(turned(leaf_corners(s.hung.h), s.hung.pin.at, s.angle)),)


def _wall_face(s: Scene) -> Mark:
    y = s.hung.wall_face
    return (Polyline(WORD, ((s.extent.left, y), (-s.hung.h.F, y))),)


def _proud(s: Scene) -> Mark:
    h = s.hung.h
    line = Polyline("A-ANNO-LEAD", ((-h.F, 0.0), (-h.F - 1.8, 0.0)))
    return (line, *_up(-h.F - 1.3, s.hung.wall_face, 0.0))


def _wall_thickness(s: Scene) -> Mark:
    top = s.hung.wall_face
    return _up(-s.hung.h.F - 1.8, top - s.hung.wall_depth, top)


def _wall_layer(s: Scene) -> Mark:
    y, (_, deep) = s.hung.wall_face, s.hung.layers[0]
    return (outline(rectangle(s.extent.left + 0.1, -s.hung.h.F, y - deep, y)),)


def _barrel(s: Scene) -> Mark:
    return (ring(s.hung.pin.at, s.hung.h.d_b / 2),)


def _pin(s: Scene) -> Mark:
    return (ring(s.hung.pin.at, s.hung.h.d_b / 4),)


def _pin_off_door(s: Scene) -> Mark:
    (x, y), i = s.hung.pin.at, s.hung.h.i
    return (span((x, -i), (x, y), (1.2, 0.0)),)


def _pin_off_frame(s: Scene) -> Mark:
    x, y = s.hung.pin.at
    line = Polyline("A-ANNO-LEAD", ((x, y), (-1.4, y)))
    return (line, *_up(-1.0, 0.0, y))


def _side(up: float) -> Callable[[Scene], Mark]:
    def mark(s: Scene) -> Mark:
        y = s.hung.pin.y_p + 0.6 if up > 0 else -s.hung.h.i - s.hung.h.T - 0.7
        return arrow((2.4, y), (2.4, y + up * 1.2))

    return mark


# --- In plan, with the leaf open, and about what stands along the wall ---


def _clear_past(s: Scene) -> Mark:
    line = 2 * s.hung.pin.o - s.hung.h.i
    return (span((-s.hung.h.F / 2, 0.0), (-s.hung.h.F / 2, line)),)


def _thing(s: Scene) -> Mark:
    marks: list[Primitive] = []
    for shape in (one for thing in s.hung.standing for one in merged(thing.shapes)):
        if shape.radius:
            marks.append(ring(shape.points[0], shape.radius))
        else:
            shown = tuple((max(x, s.extent.left + 0.1), min(y, s.extent.top - 0.1)) for x, y in shape.points)
            marks.append(outline(shown))
    return tuple(marks)


def _near_end(s: Scene) -> tuple[float, float]:
    """Return how far across the thing begins, and how far off the wall it stands."""
    points = [point for one in s.hung.standing[0].shapes for point in one.points if point[0] > -FAR]
    return max(x for x, _ in points), max(y for _, y in points)


def _projection(s: Scene) -> Mark:
    near, out = _near_end(s)
    return (span((near, s.hung.wall_face), (near, out), (-1.0, 0.0)),)


def _start(s: Scene) -> Mark:
    (near, _), y = _near_end(s), s.hung.wall_face
    return (span((near, y), (-s.hung.h.F, y), (0.0, -0.8)),)


def _contact(s: Scene) -> Mark:
    return () if s.hung.contact is None else (ring(s.hung.contact, 0.4),)


def _door_stop(s: Scene) -> Mark:
    tip = s.hung.candidate.stop_tip
    if tip is None:
        return ()
    x, y = tip
    return (outline(rectangle(x - 0.9, x + 0.9, s.hung.wall_face, y)),)


# --- In plan, at the latch ---


def _latch_gap(s: Scene) -> Mark:
    h = s.hung.h
    return (span((h.O - h.g_l, -h.i), (h.O, -h.i), (0.0, 0.9)),)


def _bevel(s: Scene) -> Mark:
    stop, pull = leaf_corners(s.hung.h)[1:3]
    return (Polyline(WORD, (stop, pull)), span(stop, (pull[0], stop[1]), (0.0, -0.9)))


def _latch_least(s: Scene) -> Mark:
    least = s.hung.latch
    return () if least is None else (ring(least.point_standing, 0.3), ring(least.point_moving, 0.12))


def _lever_in_plan(s: Scene) -> Mark:
    return tuple(outline(turned(one.points, s.hung.pin.at, s.angle)) for one in s.hung.hardware)


# --- In plan, the whole opening ---


def _hand(s: Scene) -> Mark:
    return (swing_arc(s.hung, s.angle, WORD), ring(s.hung.pin.at, 2.4))


def _outside(s: Scene) -> Mark:
    middle = s.hung.opening / 2
    return arrow((middle, s.extent.bottom + 1.0), (middle, -s.hung.h.D))


def _greatest(s: Scene) -> Mark:
    return (Arc(WORD, s.hung.pin.at, 13.0, 0.0, s.angle),)


def _clear(s: Scene) -> Mark:
    (x_0, _), (x_1, _) = clear_width_points(s.hung)
    return (span((x_0, -s.hung.h.D), (x_1, -s.hung.h.D), (0.0, -3.0)),)


def _out_from_wall(s: Scene) -> Mark:
    """The way out from the wall, upright, beside the opening."""
    x = s.hung.opening + s.hung.h.F + 4.0
    top = max(y for _, y in turned(leaf_corners(s.hung.h), s.hung.pin.at, s.angle))
    line = Polyline("A-ANNO-LEAD", ((s.hung.pin.x_p, top), (x + 1.5, top)))
    return (line, *_up(x, s.hung.wall_face, top))


IN_PLAN: Mapping[str, Callable[[Scene], Mark]] = MappingProxyType(
    {
        "thickness": _thickness, "inset": _inset, "rabbet": _rabbet, "frame_stop": _frame_stop,
        "stop_gap": _stop_gap, "face": _face, "jamb_depth": _jamb_depth, "throat": _throat,
        "return": _return, "metal": _metal, "frame": _frame, "frame_backset": _frame_backset,
        "door_backset": _door_backset, "mortise": _mortise, "hinge_gap": _hinge_gap, "leaf": _leaf,
        "wall_face": _wall_face, "proud": _proud, "wall_layer": _wall_layer,
        "wall_thickness": _wall_thickness, "barrel": _barrel, "pin": _pin,
        "pin_off_door": _pin_off_door, "pin_off_frame": _pin_off_frame, "pull_side": _side(1.0),
        "push_side": _side(-1.0), "clear_past": _clear_past, "thing": _thing, "projection": _projection,
        "start": _start, "contact": _contact, "door_stop": _door_stop, "latch_gap": _latch_gap,
        "bevel": _bevel, "latch_least": _latch_least, "lever": _lever_in_plan, "meeting_gap": _latch_gap,
        "hand": _hand, "outside": _outside, "greatest": _greatest, "wanted": _greatest, "clear": _clear,
        "encroachment": _out_from_wall, "casing": _thing,
    }
)  # fmt: skip
"""Name of a mark to what draws it."""
