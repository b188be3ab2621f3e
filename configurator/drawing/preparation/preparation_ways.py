"""The preparation of an opening that hangs on no butts: a section through its axis, and what is let in.

What is drawn is where the door turns, counted from the door and from its frame. What is cut, bored and
screwed is on the maker's drawing. Plan axes, inches.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from configurator.drawing.base.primitives import Arc, Point, Polyline, Primitive
from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Side, String
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.notes import ASSUMED, Marks
from configurator.drawing.pages.tables import SmallTable
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaf
from configurator.drawing.plan.jamb import hinge_jamb
from configurator.drawing.plan.leaf import HINGE, barrel, door_leaf, frame_leaf, open_leaf
from configurator.drawing.preparation.preparation_facts import LISTED
from configurator.drawing.preparation.preparation_parts import (
    ABOUT,
    BEHIND_STOP,
    CLOSED,
    SHOWN_OF_DOOR,
    SHOWN_OF_FRAME,
    Named,
    cut_out,
    upright,
)
from configurator.order.other_ways import WayItem, way_items
from configurator.rules.filling.ways import FilledWay, way_hung_on
from configurator.rules.wording import an, counted
from configurator.study import Study
from configurator.units import TOLERANCE, Display

_PAST_AXIS = 0.75
"""How much of the door a section shows past an axis that stands inside it, inches."""
_SPINDLE = 0.3
"""Half of what a pivot's mark takes, inches."""
_OVER = (("", 3), ("Axis, on the door", 2), ("Axis, on the frame", 2), ("", 2))
_HEADINGS = (
    "Leaf", "Hung on", "How many", "off pull face", "from heel edge", "from rabbet", "off frame face",
    "Long", "What is let in",
)  # fmt: skip
_TEMPLATE = (
    "Nothing that is cut, bored or screwed is drawn: the maker's drawing decides over this sheet. Hold it "
    "against the axis here before anything is cut; angle and clear width were worked out with that."
)


@dataclass(frozen=True, slots=True)
class WayPreparation:
    """One leaf on what its opening hangs on, closed; `items` are what is ordered for it, with their number.

    `back` is the barrel before its push face, of a hinge that has one there.
    """

    leaf: str
    way: FilledWay
    hung: DrawnLeaf
    other_leaf: bool
    back: Point | None
    items: tuple[tuple[WayItem, int], ...]


def way_preparations(study: Study) -> tuple[WayPreparation, ...]:
    """Return every leaf's preparation; none where the opening hangs on butts or on what is not drawn here."""
    given = way_hung_on(study.opening)
    if given is None:
        return ()
    return tuple(_preparation(study, leaf.name) for leaf in study.leaves)


def _preparation(study: Study, leaf: str) -> WayPreparation:
    given = way_hung_on(study.opening)
    assert given is not None
    found = study.hanger.in_way(leaf, given)
    hung = drawn_leaf(found[0], Display())
    way = found[0].way
    assert way is not None
    other = found[1].way if len(found) > 1 and way.barrel is not None else None
    back = None if other is None else (hung.pin.x_p, other.off_face - hung.h.i)
    number = [one.name for one in study.leaves].index(leaf)
    items = [one for one in way_items(study.opening) if one[0].axis_off_face is not None]
    each = len(items) // len(study.leaves)
    own = tuple(items[number * each : (number + 1) * each])
    return WayPreparation(leaf, way, hung, study.opening.leaves == "pair", back, own)


# --- The section ---


def section_at_axis(prep: WayPreparation, marks: Marks, display: Display) -> Block:
    """Return the section through the axis: where it stands from door and frame, gaps and what is let in."""
    hung, h, pin = prep.hung, prep.hung.h, prep.hung.pin
    half = h.d_b / 2 or _SPINDLE
    ends = [0.0, pin.y_p + half, -h.i]
    low = [-h.i - h.T, *([] if prep.back is None else [prep.back[1] - half])]
    low += [] if prep.way.double_acting else [-h.R]
    top = max(ends)
    right = max(h.g_h + SHOWN_OF_DOOR, pin.x_p + _PAST_AXIS)
    left = min(-SHOWN_OF_FRAME, pin.x_p - half - ABOUT)
    box = Box(left, min(low) - BEHIND_STOP, right, top + ABOUT)
    closed = (*hinge_jamb(hung), *open_leaf(hung, 0.0))
    hinge = (*frame_leaf(hung), *door_leaf(hung, 0.0), *barrel(hung), *axis_back(prep))
    return Block(
        name=f"Section through the axis{CLOSED}",
        extent=box,
        parts=(*cut_out(closed, box), *hinge),
        low=Side(_on_frame(prep, marks, display, box.left)),
        high=Side(axis_on_door(prep, marks, display, box.right), _heel_label(prep, display)),
        rows=axis_across(prep, marks, display, top),
        mirrored=hung.mirrored,
    )


def axis_back(prep: WayPreparation) -> tuple[Primitive, ...]:
    """Return the barrel before the push face, with its axis; nothing of a hinge that has none there."""
    if prep.back is None:
        return ()
    (x, y), r = prep.back, prep.hung.h.d_b / 2
    arm = r + ABOUT
    cross = (((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm)))
    lines = (Polyline("A-ANNO-AXIS", line) for line in cross)
    return (Arc(HINGE, prep.back, r, 0.0, 2 * math.pi, "barrel", "barrel before the push face"), *lines)


def _heel_label(prep: WayPreparation, display: Display) -> tuple[tuple[float, str], ...]:
    radius = prep.way.heel_radius
    return () if radius is None else ((prep.hung.pin.y_p, f"heel R {display.exact(radius)}"),)


def _mark(prep: WayPreparation, key: str) -> str:
    return ASSUMED if key in prep.way.assumed else ""


def _sorted(*named: tuple[float, Named | None]) -> tuple[tuple[float, ...], tuple[Named, ...]]:
    """Return levels from below up, and between them the names of what lies over each but the last."""
    levels = sorted(named, key=lambda one: one[0])
    return tuple(level for level, _ in levels), tuple(name or ("", "", "") for _, name in levels[:-1])


def _on_frame(prep: WayPreparation, marks: Marks, display: Display, across: float) -> tuple[String, ...]:
    """From the frame's face to the axis; then its rabbet, or where it has no stop how far in the door is."""
    h, y = prep.hung.h, prep.hung.pin.y_p
    mark = _mark(prep, "axis_off_face")
    named = ("frame face to axis", mark, "off frame to axis" if y >= 0 else "frame face to axis")
    strings = [upright(across, (min(y, 0.0), max(y, 0.0)), (named,), display)]
    if prep.way.double_acting:
        inset = ("inset", marks.of("frame.rabbet", "frame.stop_gap", "door.thickness"), "inset")
        strings.append(upright(across, (-h.i, 0.0), (inset,), display) if h.i > 0 else ())
    else:
        rabbet = ("rabbet depth", marks.of("frame.rabbet"), "rabbet")
        strings.append(upright(across, (-h.R, 0.0), (rabbet,), display))
    return tuple(String(spans) for spans in strings if spans)


def axis_on_door(prep: WayPreparation, marks: Marks, display: Display, across: float) -> tuple[String, ...]:
    """From the door's pull face to the axis, out of it or inside; then the door's thickness."""
    h, y = prep.hung.h, prep.hung.pin.y_p
    back, face = -h.i - h.T, -h.i
    words = "off pull face" if y >= face else "pull face to axis"
    axis = ("pull face to axis", _mark(prep, "axis_off_face"), words)
    thick = ("door thickness", marks.of("door.thickness"), "door")
    first = [*upright(across, (min(y, face), max(y, face)), (axis,), display)]
    if prep.back is not None:
        behind = ("push face to its axis", _mark(prep, "axis_off_face"), "off push face")
        first = [*upright(across, (prep.back[1], back), (behind,), display), *first]
    strings: list[tuple[Span, ...]] = [tuple(first)]
    if prep.way.double_acting:
        strings.append(upright(across, (back, face), (thick,), display))
    else:
        gap = ("gap at the frame stop", marks.of("frame.stop_gap"), "at stop")
        strings.append(upright(across, (-h.R, back, face), (gap, thick), display))
    return tuple(String(spans) for spans in strings if spans)


def axis_across(
    prep: WayPreparation, marks: Marks, display: Display, top: float
) -> tuple[tuple[Span, ...], ...]:
    """The gap, and the axis from the heel edge and from the rabbet's face."""
    g, x = prep.hung.h.g_h, prep.hung.pin.x_p
    mark = _mark(prep, "axis_from_heel")

    def level(ends: tuple[float, float], name: str, mark: str, words: str) -> Span:
        left, right = min(ends), max(ends)
        return Span((left, top), (right, top), name, mark, words, display.exact(right - left))

    gap = level((0.0, g), "hinge-side gap", marks.of("door.hinge_gap"), "gap")
    words = "heel edge to axis" if x >= g else "axis to heel edge"
    heel = level((g, x), "heel edge to axis", mark, words)
    rabbet = level((0.0, x), "rabbet face to axis", mark, "rabbet to axis")
    # Nearest to the door a chain from the rabbet on, then what goes over it.
    if x >= g:
        apart = ((gap, heel), (rabbet,))
    else:
        apart = ((rabbet, heel), (gap,)) if x >= 0 else ((rabbet, gap), (heel,))
    rows = (tuple(span for span in row if span.b[0] - span.a[0] > TOLERANCE) for row in apart)
    return tuple(row for row in rows if row)


# --- The table, and in words ---


def way_table(preps: Sequence[WayPreparation], display: Display) -> SmallTable:
    """Return where each leaf turns, what is ordered for it and what is let in."""
    rows = [row for prep in preps for row in _rows(prep, display)]
    return SmallTable(_OVER, _HEADINGS, tuple(rows))


def _rows(prep: WayPreparation, display: Display) -> Iterator[tuple[str, ...]]:
    pin, way = prep.hung.pin, prep.way
    off, heel = _mark(prep, "axis_off_face"), _mark(prep, "axis_from_heel")
    axis = (
        display.exact(way.off_face) + off,
        display.exact(way.from_heel) + heel,
        display.exact(pin.x_p) + heel,
        display.exact(pin.y_p) + off,
    )
    for item, count in prep.items:
        long = "" if item.length is None else display.exact(item.length)
        many = counted(count, "set", "sets") if item.unit == "set" else str(count)
        yield prep.leaf, item.item, many, *axis, long, item.let_in


def way_sayings(study: Study, preps: Sequence[WayPreparation]) -> Iterator[str]:
    """Yield what a preparation sheet says in words of what is no butt."""
    way = preps[0].way
    yield f"Drawn for {an(way.given.words)}; what is let in: {way.row.let_in}."
    yield _TEMPLATE
    yield (
        "Off the pull face is out of the door, a negative number inside it; from the heel edge is toward the "
        "latch, a negative number beyond the edge."
    )
    if way.barrel is not None:
        yield "The leaves of the hinge are drawn, not measured: its drawing has them."
    if way.assumed:
        yield (
            f"* assumed, not given: the usual place of the axis of {an(way.kind)}, {way.row.mark}. Ask for "
            "its drawing before anything is made."
        )
    if way.double_acting:
        yield "The door swings both ways: its frame has no stop on any side."
    if way.heel_radius is not None:
        yield "The heel edge is rounded about the axis over the whole height of the door."
    if study.opening.fire_label:
        yield LISTED
