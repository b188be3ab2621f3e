"""What is marked for a word in an elevation of an opening, and on a hinge laid flat."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from configurator.drawing.base.primitives import Polyline, rectangle
from configurator.drawing.pages.elevation_facts import LeafShown
from configurator.drawing.pictures.hinge_sample import barrel_box, tip_boxes
from configurator.drawing.pictures.scenes import WORD, Mark, Scene, outline, ring, span


def _first(s: Scene) -> LeafShown:
    return s.leaves[0]


def _opening(s: Scene) -> Mark:
    width, height, face = s.filled.opening_width, s.filled.opening_height, s.filled.frame_face
    return (outline(rectangle(-face, width + face, 0.0, height + face)),)


def _width(s: Scene) -> Mark:
    width, height = s.filled.opening_width, s.filled.opening_height
    return (span((0.0, height), (width, height), (0.0, s.filled.frame_face + 4.0)),)


def _height(s: Scene) -> Mark:
    width, height = s.filled.opening_width, s.filled.opening_height
    return (span((width, 0.0), (width, height), (s.filled.frame_face + 6.0, 0.0)),)


def _front_leaf(s: Scene) -> Mark:
    one = _first(s)
    return (outline(rectangle(one.hinge_edge, one.latch_edge, one.leaf.bottom, one.leaf.top)),)


def _head_gap(s: Scene) -> Mark:
    middle = s.filled.opening_width / 2
    return (
        span((middle, _first(s).leaf.top), (middle, s.filled.opening_height)),
        ring((middle, s.filled.opening_height), 2.6),
    )


def _undercut(s: Scene) -> Mark:
    middle = s.filled.opening_width / 2
    return (span((middle, 0.0), (middle, _first(s).leaf.bottom)), ring((middle, 0.4), 2.6))


def _split(s: Scene) -> Mark:
    middle = (s.leaves[0].leaf.bottom + s.leaves[1].leaf.top) / 2
    return (span((s.filled.opening_width, 0.0), (s.filled.opening_width, middle), (8.0, 0.0)),)


def _split_gap(s: Scene) -> Mark:
    return (ring((s.filled.opening_width / 2, (s.leaves[0].leaf.bottom + s.leaves[1].leaf.top) / 2), 2.6),)


def _carried(kind: str) -> Callable[[Scene], Mark]:
    def mark(s: Scene) -> Mark:
        one = _first(s)
        found = next(thing for thing in one.carried if thing.kind == kind)
        x = one.latch_edge - one.way * found.from_latch_edge
        half, up = found.width / 2 + 0.5, found.vertical / 2 + 0.5
        return (outline(rectangle(x - half, x + half, found.height - up, found.height + up)),)

    return mark


def _in_height(s: Scene) -> Mark:
    """A rail on the wall, with how high its bottom and its top are."""
    outer = -s.filled.frame_face
    rail = outline(rectangle(s.extent.left + 0.5, outer, 32.0, 36.0))
    return (
        rail,
        span((outer - 8.0, 0.0), (outer - 8.0, 32.0)),
        span((outer - 12.0, 0.0), (outer - 12.0, 36.0)),
    )


def _hinges(s: Scene) -> Mark:
    found = _first(s).hinges
    return () if found is None else tuple(_about_barrel(s, place) for place in found.places)


def _about_barrel(s: Scene, place: tuple[float, float]) -> Polyline:
    found = _first(s).hinges
    assert found is not None
    pin, half = _first(s).jamb + found.pin, found.barrel / 2 + 0.8
    return outline(rectangle(pin - half, pin + half, place[0] - 0.4, place[1] + 0.4))


def _second_hinge(s: Scene) -> Mark:
    return _hinges(s)[-2:-1]


def _locations(s: Scene) -> Mark:
    found = _first(s).hinges
    if found is None:
        return ()
    (low, _), (_, top) = found.places[0], found.places[-1]
    x, head = -s.filled.frame_face - 6.0, s.filled.opening_height
    return (*_hinges(s), span((0.0, 0.0), (0.0, low), (x, 0.0)), span((0.0, top), (0.0, head), (x, 0.0)))


# --- The hinge laid flat ---


def _plates(s: Scene) -> Mark:
    return tuple(outline(s.sample.plate(side)) for side in (-1.0, 1.0))


def _one_plate(s: Scene) -> Mark:
    return (outline(s.sample.plate(1.0)),)


def _sample_height(s: Scene) -> Mark:
    x = s.sample.width / 2
    return (span((x, 0.0), (x, s.sample.height), (0.8, 0.0)),)


def _sample_width(s: Scene) -> Mark:
    half = s.sample.width / 2
    return (span((-half, 0.0), (half, 0.0), (0.0, -0.8)),)


def _knuckles(s: Scene) -> Mark:
    half, joints = s.sample.barrel / 2, s.sample.joints
    lines = tuple(Polyline(WORD, ((-half, y), (half, y))) for y in joints)
    return (outline(barrel_box(s.sample)), *lines)


def _joints(s: Scene) -> Mark:
    half = s.sample.barrel / 2 + 0.08
    return tuple(outline(rectangle(-half, half, y - 0.07, y + 0.07)) for y in s.sample.joints)


def _tips(s: Scene) -> Mark:
    return tuple(outline(box) for box in tip_boxes(s.sample))


def _corner(s: Scene) -> Mark:
    return (ring((s.sample.width / 2 - s.sample.corner / 2, s.sample.height - s.sample.corner / 2), 0.35),)


def _screws(s: Scene) -> Mark:
    return tuple(ring(at, 0.22) for at in s.sample.screws)


def _stud(s: Scene) -> Mark:
    return (ring(s.sample.stud, 0.2),)


def _whole(s: Scene) -> Mark:
    return (*_sample_height(s), *_sample_width(s))


IN_FRONT: Mapping[str, Callable[[Scene], Mark]] = MappingProxyType(
    {
        "opening": _opening, "width": _width, "height": _height, "leaf": _front_leaf, "active": _front_leaf,
        "head_gap": _head_gap, "undercut": _undercut, "split": _split, "split_gap": _split_gap,
        "lever": _carried("lever"), "closer": _carried("closer"), "thing": _in_height, "hinges": _hinges,
        "second_hinge": _second_hinge, "locations": _locations,
    }
)  # fmt: skip
"""Name of a mark in an elevation to what draws it."""
ON_SAMPLE: Mapping[str, Callable[[Scene], Mark]] = MappingProxyType(
    {
        "whole": _whole, "plates": _plates, "leaf": _one_plate, "height": _sample_height,
        "width": _sample_width, "knuckles": _knuckles, "joints": _joints, "tip": _tips, "corner": _corner,
        "screws": _screws, "stud": _stud,
    }
)  # fmt: skip
"""Name of a mark on a hinge laid flat to what draws it."""
