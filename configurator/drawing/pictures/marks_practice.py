"""What problems of practice mark besides the words: lengths about an opening, what is asked of a swing."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from configurator.drawing.base.primitives import Arc, Polyline, rectangle, turned
from configurator.drawing.pages.elevation_facts import LeafShown
from configurator.drawing.pictures.scenes import WORD, Mark, Scene, outline, ring, span
from configurator.drawing.plan.leaf import door_leaf_outline, frame_leaf_outline
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.shapes import FAR

Marker = Callable[[Scene], Mark]

# --- About the hinge ---


def _flat_face(s: Scene) -> float:
    """Return where the face of the door opened flat lies, from the frame face outward."""
    return 2 * s.hung.pin.o - s.hung.h.i


def _upright(x: float, low: float, high: float, reach: float = 0.0) -> Mark:
    """Return an upright measure at `x`, from two lines that begin `reach` farther to the right."""
    return (span((x + reach, low), (x + reach, high), (-reach, 0.0)),)


def _half_width(s: Scene) -> Mark:
    back = min(y for _, y in door_leaf_outline(s.hung))
    x = s.hung.h.g_h
    return (span((x, back), (x, s.hung.pin.y_p), (1.9, 0.0)),)


def _frame_backset(s: Scene) -> Mark:
    h = s.hung.h
    back = min(y for _, y in frame_leaf_outline(s.hung))
    return (span((0.0, -h.R), (0.0, back), (-0.8, 0.0)),)


def _whole_rabbet(s: Scene) -> Mark:
    return (span((0.0, -s.hung.h.R), (0.0, 0.0), (-1.5, 0.0)),)


def _pin_across(s: Scene) -> Mark:
    x, y = s.hung.pin.at
    rise = s.hung.h.d_b / 2 + 0.5
    return (Polyline("A-ANNO-LEAD", ((0.0, 0.0), (0.0, y + rise))), span((0.0, y), (x, y), (0.0, rise)))


def _barrel(s: Scene) -> Mark:
    (x, y), half = s.hung.pin.at, s.hung.h.d_b / 2
    return (span((x - half, y), (x + half, y), (0.0, half + 0.5)),)


def _past_frame(s: Scene) -> Mark:
    return _upright(-1.7, 0.0, s.hung.pin.y_p + s.hung.h.d_b / 2, 1.7)


def _past_wall(s: Scene) -> Mark:
    h = s.hung.h
    top = s.hung.pin.y_p + h.d_b / 2
    line = Polyline("A-ANNO-LEAD", ((s.hung.pin.x_p, top), (-h.F - 2.7, top)))
    return (line, *_upright(-h.F - 2.4, s.hung.wall_face, top))


def _own_face(s: Scene) -> Mark:
    h = s.hung.h
    line = Polyline("A-ANNO-LEAD", ((h.g_h + 1.6, -h.i), (h.g_h, -h.i)))
    far = Polyline("A-ANNO-LEAD", ((0.0, _flat_face(s)), (h.g_h + 1.6, _flat_face(s))))
    return (line, far, *_upright(h.g_h + 1.3, -h.i, _flat_face(s)))


def _off_wall(s: Scene) -> Mark:
    return _upright(-s.hung.h.F - 1.2, s.hung.wall_face, _flat_face(s))


def _spare(s: Scene) -> Mark:
    near, out = _near_end(s)
    return (span((near - 0.5, out), (near - 0.5, _flat_face(s))),)


def _near_end(s: Scene) -> tuple[float, float]:
    """Return how far across what stands along the wall begins, and how far off the frame face it reaches."""
    points = [point for one in s.hung.standing[0].shapes for point in one.points if point[0] > -FAR]
    return max(x for x, _ in points), max(y for _, y in points)


def _arris(s: Scene) -> Mark:
    """Ring the edge of the latch jamb that the lock edge passes."""
    return (ring((s.hung.h.O, 0.0), 0.4),)


# --- Of the whole plan ---


def _opening(s: Scene) -> Mark:
    """The opening, rabbet to rabbet; lettered off its middle, where the clear width is lettered."""
    h, wide = s.hung.h, s.hung.opening
    measured = span((0.0, -h.D), (wide, -h.D), (0.0, -7.0))
    return (replace(measured, text_at=(0.2 * wide, measured.line_a[1])),)


def _top_of(s: Scene) -> float:
    return max(y for _, y in turned(leaf_corners(s.hung.h), s.hung.pin.at, s.angle))


def _out(s: Scene) -> Mark:
    x, top = s.hung.opening + s.hung.h.F + 3.0, _top_of(s)
    line = Polyline("A-ANNO-LEAD", ((s.hung.pin.x_p, top), (x + 1.0, top)))
    return (line, *_upright(x, s.hung.wall_face, top))


def corridor_mark(corridor: float) -> Marker:
    """Return what marks a corridor so wide, inches."""

    def mark(s: Scene) -> Mark:
        x = s.hung.opening + s.hung.h.F + 7.5
        return _upright(x, s.hung.wall_face, s.hung.wall_face + corridor)

    return mark


def left_mark(corridor: float) -> Marker:
    """Return what marks how much of a corridor is left."""

    def mark(s: Scene) -> Mark:
        x, top = s.hung.opening / 2, _top_of(s)  # well away from the corridor's own width
        line = Polyline("A-ANNO-LEAD", ((s.hung.pin.x_p, top), (x + 1.0, top)))
        return (line, *_upright(x, top, s.hung.wall_face + corridor))

    return mark


def _stop_at(s: Scene) -> Mark:
    return (Arc(WORD, s.hung.pin.at, 12.0, 0.0, s.angle),)


def _beside(s: Scene) -> Mark:
    near, y = _near_end(s)[0], s.hung.pin.y_p + 9.0
    line = Polyline("A-ANNO-LEAD", ((s.hung.pin.x_p, s.hung.pin.y_p), (s.hung.pin.x_p, y + 1.0)))
    return (line, span((near, y), (s.hung.pin.x_p, y)))


def _lever_spindle(s: Scene) -> float:
    lever = s.hung.filled.opening.hardware[0]
    h = s.hung.h
    return h.O - h.g_l - lever.from_latch_edge + lever.width / 2 - 1.0


def _along(s: Scene) -> Mark:
    y = -s.hung.h.D
    return (span((s.hung.pin.x_p, y), (_lever_spindle(s), y), (0.0, -4.0)),)


def _bumper(s: Scene) -> Mark:
    face, x = s.hung.wall_face, s.hung.pin.x_p - (_lever_spindle(s) - s.hung.pin.x_p)
    rubber = outline(rectangle(x - 0.9, x + 0.9, face, face + 1.25))
    return (span((x, face), (s.hung.pin.x_p, face), (0.0, -8.5)), replace(rubber, layer=WORD))


# --- In elevation ---


def _first(s: Scene) -> LeafShown:
    return s.leaves[0]


def _leaf_width(s: Scene) -> Mark:
    one = _first(s)
    y = one.leaf.bottom + 0.36 * one.leaf.height
    return (span((one.hinge_edge, y), (one.latch_edge, y)),)


def _leaf_height(s: Scene) -> Mark:
    one = _first(s)
    x = one.hinge_edge + 0.25 * (one.latch_edge - one.hinge_edge)
    return (span((x, one.leaf.bottom), (x, one.leaf.top)),)


def _hinge_at(index: int, share: float) -> Marker:
    def mark(s: Scene) -> Mark:
        hinges = _first(s).hinges
        if hinges is None:
            return ()
        low, high = hinges.places[index]
        x = -s.filled.frame_face - 5.0
        y = low + share * (high - low)
        return (span((0.0, 0.0), (0.0, y), (x, 0.0)), ring((0.0, (low + high) / 2), 4.0))

    return mark


def _split(s: Scene) -> Mark:
    middle, wide = (s.leaves[0].leaf.bottom + s.leaves[1].leaf.top) / 2, s.filled.opening_width
    return (span((wide, 0.0), (wide, middle), (s.filled.frame_face + 13.0, 0.0)),)


MARKS: Mapping[str, Marker] = MappingProxyType(
    {
        "half_width": _half_width, "frame_backset": _frame_backset, "whole_rabbet": _whole_rabbet,
        "pin_across": _pin_across, "barrel": _barrel, "barrel_past_frame": _past_frame,
        "barrel_past_wall": _past_wall, "past_own_face": _own_face, "past_wall": _off_wall, "spare": _spare,
        "opening": _opening, "arris": _arris, "out": _out, "stop_at": _stop_at, "beside": _beside,
        "along": _along, "bumper": _bumper, "leaf_width": _leaf_width, "leaf_height": _leaf_height,
        "top_hinge": _hinge_at(-1, 0.0), "middle_hinge": _hinge_at(1, 0.5), "split": _split,
    }
)  # fmt: skip
"""Name of a mark to what draws it; a name that words have too is the problem's own here."""
