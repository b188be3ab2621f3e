"""What of the plan each letter of the hung leaf stands for: lines to be laid over the picture."""

from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.pin import Hanging, Pin, Point
from configurator.study.derivation.working import Mark


def marks_of(h: Hanging, pin: Pin, opening: float) -> dict[str, Mark]:
    """Return a mark for each letter that has a place in plan; inches, the door closed."""
    return {**_of_frame(h, opening), **_of_door(h), **_of_hinge(h, pin)}


def _line(*points: Point) -> Mark:
    return Mark(lines=(points,))


def _of_frame(h: Hanging, opening: float) -> dict[str, Mark]:
    return {
        "O": _line((0.0, 0.0), (h.O, 0.0)),
        "O_2": _line((0.0, 0.0), (opening, 0.0)),
        "F": _line((-h.F, 0.0), (0.0, 0.0)),
        "D": _line((-h.F, 0.0), (-h.F, -h.D)),
        "R": _line((0.0, 0.0), (0.0, -h.R)),
        "s": Mark(lines=(((0.0, -h.R), (h.s, -h.R)), ((opening - h.s, -h.R), (opening, -h.R)))),
        "p": _line((-h.F, -h.p), (-h.F, 0.0)),
    }


def _of_door(h: Hanging) -> dict[str, Mark]:
    pull, stop = -h.i, -h.i - h.T
    latch_stop, latch_pull = leaf_corners(h)[1:3]
    return {
        "T": _line((h.g_h, stop), (h.g_h, pull)),
        "g_h": _line((0.0, pull), (h.g_h, pull)),
        "g_l": _line((h.O - h.g_l, pull), (h.O, pull)),
        "k": _line((h.s / 2, -h.R), (h.s / 2, stop)),
        "i": _line((h.g_h, 0.0), (h.g_h, pull)),
        "beta": _line(latch_stop, latch_pull),
        "b": _line((h.g_h, stop), (h.g_h, stop + h.b)),
    }


def _of_hinge(h: Hanging, pin: Pin) -> dict[str, Mark]:
    (x, y), stop = pin.at, -h.i - h.T
    leaves = (((x, y), (h.g_h, y - h.W / 2)), ((x, y), (0.0, y - h.W / 2)))
    found = {
        "W": Mark(lines=leaves),
        "d_b": _line((x - h.d_b / 2, y), (x + h.d_b / 2, y)),
        "o": _line((x, -h.i), (x, y)),
        "y_p": _line((x, 0.0), (x, y)),
        "x_p": _line((0.0, y), (x, y)),
        "t": _line((-h.t, stop / 2), (0.0, stop / 2)),
        "a": _line((0.0, stop / 2), (h.g_h, stop / 2)),
        "m_d": _line((h.g_h, stop / 2), (h.g_h + (h.m_d or h.t), stop / 2)),
        "m_f": _line((-(h.m_f or h.t), stop / 2), (0.0, stop / 2)),
    }
    if h.axis is not None:
        found["h_a"] = _line((h.g_h, y), (x, y))
    if pin.b_f is not None:
        found["b_f"] = _line((0.0, -h.R), (0.0, -h.R + pin.b_f))
    return found
