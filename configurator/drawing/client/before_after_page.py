"""The before-and-after sheet: one leaf on two hinge widths laid over one another, the difference hatched."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Polygon, Polyline, Primitive, Symbol, Text, rectangle
from configurator.drawing.base.view import Box, View
from configurator.drawing.client.overlay import (
    NARROWER,
    WIDER,
    leaves_overlaid,
    overlaid,
    room_of,
    spans_of,
    standing_parts,
    start_of,
    start_of_wall,
    strings_beside,
    strings_go_over_opening,
)
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.notes import Note, cut_to, study_notes
from configurator.drawing.pages.page import Detail, Page, Paper, Scale, fitted_or_asked, scales
from configurator.drawing.pages.tables import measured_table
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaves
from configurator.drawing.plan.inset import Told, inset_still, inset_view
from configurator.drawing.plan.panel import closest_scale, main_view, spare_height, view_scale
from configurator.drawing.plan.sheet import hand_words, heading, standing_words
from configurator.model import JobFacts
from configurator.rules.wording import leaf_named
from configurator.study import Study
from configurator.study.widths.width_pair import WidthPair, width_pair
from configurator.units import Display
from configurator.wording.comparison import comparisons

_ROW = 15.0
_SIZE, _CAPTION = 8.5, 6.5
_SWATCH = 16.0
_AIR = 12.0
_SHARE = 0.62
"""Share of the height for the large picture, and of the width for the small one under it."""
_SMALL_SHARE = 0.46
ONE_WIDTH = "Only one width is compared, so there is nothing to lay over it: compare it with another."


@dataclass(frozen=True, slots=True)
class _Room:
    """Where things stand on the sheet: headings, large picture, small one, and the table beside that."""

    head: Box
    large: Box
    small: Box
    table: Box


def before_after_page(
    study: Study,
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    number: tuple[int, int] = (1, 1),
) -> Page:
    """Return the recommended width laid over the one beside it, of the leaf that it changes most.

    A scale of None is fitted. Raises ValueError where the scale asked for does not fit the paper, or there is
    no width to draw.
    """
    pair = width_pair(study)
    hungs = drawn_leaves(pair.of(study), display)
    turn = math.radians(study.filled.wanted_angle)
    room = _shared(drawing_box(paper))
    large = _large(hungs, pair, turn, room.large, scale, paper, display)
    small = _small(study, hungs, turn, room.small, display)
    used = sorted({large.scale, small.scale}, key=lambda one: -one.ratio)
    said = study_notes(study, display)
    notes = (*said[:2], _what_changes(study, pair, display), *said[2:])
    title = "Before and after"
    furniture, _ = page_frame(paper, study, job, display, title, used, notes, number)
    heads = _heads(study, pair, hungs, turn, room.head, display)
    captions = [part for one, words in ((large, "at the hinge"), (small, "the whole opening"))
                for part in _captioned(one, words)]  # fmt: skip
    table = measured_table(pair.of(study), display).drawn(room.table)
    whole = (*furniture, *heads, *captions, *table)
    return Page(f"{study.opening.mark} before and after", paper, (large, small), whole, display.metric)


def _shared(box: Box) -> _Room:
    top = box.top - 2 * _ROW - 4.0
    bottom = top - _SHARE * (top - box.bottom)
    right = box.left + _SMALL_SHARE * box.width
    lower = bottom - 2 * _AIR
    return _Room(
        Box(box.left, top, box.right, box.top),
        Box(box.left, bottom, box.right, top - _AIR),
        Box(box.left, box.bottom, right, lower),
        Box(right + _AIR, box.bottom, box.right, lower),
    )


def _large(
    hungs: Sequence[DrawnLeaf],
    pair: WidthPair,
    turn: float,
    box: Box,
    asked: Scale | None,
    paper: Paper,
    display: Display,
) -> Detail:
    """The hinge at a large scale, with the dimensions on the side where no leaf stands."""
    fits = closest_scale if asked else view_scale
    points = min(fits(hung, box.width, box.height) for hung in hungs)
    scale = fitted_or_asked(points, asked, paper, display.metric)
    spare = min(spare_height(hung, box, scale.points) for hung in hungs)
    view = main_view(hungs[-1], box, scale.points, spare)
    shown = _inside(overlaid(hungs[0], hungs[1] if len(hungs) > 1 else None, turn), view)
    dimensions = _dimensions(hungs, pair, turn, view, display)
    still = standing_parts(hungs[0], view)
    return Detail("two widths at the hinge", scale, view, (*still, *shown, *dimensions))


def _dimensions(
    hungs: Sequence[DrawnLeaf], pair: WidthPair, turn: float, view: View, display: Display
) -> tuple[Primitive, ...]:
    """The strings over the opening or over the wall; without words where those find no room there."""
    over_opening = strings_go_over_opening(hungs, turn)
    out = view.hand if over_opening else -view.hand
    beside = max(start_of(hung, turn) for hung in hungs) if over_opening else -start_of_wall(hungs)
    edge = view.window.right if out > 0 else view.window.left
    start = view.to_sheet((beside, 0.0))[0] + out * _AIR
    headings = [candidate.hinge_words.replace(" in hinge", " hinge") for candidate in pair.both]
    in_words = [spans_of(hung, turn, words=True) for hung in hungs]
    bare = [spans_of(hung, turn, words=False) for hung in hungs]
    strings = in_words if room_of(in_words, display) <= abs(edge - start) else bare
    start = out * min(out * start, out * edge - room_of(strings, display))
    return strings_beside(strings, headings, start, out, view, display)


def _inside(items: Iterable[Primitive], view: View) -> list[Primitive]:
    """Leave out marks that would lie outside the window: they are not cut off at its edge."""
    return [
        one
        for one in items
        if not isinstance(one, Symbol) or view.window.shrunk(_AIR / 2).has(view.to_sheet(one.at))
    ]


def _small(study: Study, hungs: Sequence[DrawnLeaf], turn: float, box: Box, display: Display) -> Detail:
    """The whole opening with both leaves, as large as a listed scale allows."""
    listed = scales(display.metric)
    views = [inset_view(hung, box, Told(floor=False), tuple(one.points for one in listed)) for hung in hungs]
    view = min(views, key=lambda one: one.scale)
    hung = hungs[-1]
    still = inset_still(hung, view, display, None, hand_words(study), Told(floor=False))
    leaves = leaves_overlaid(hungs[0], hungs[1] if len(hungs) > 1 else None, turn)
    scale = min(listed, key=lambda one: abs(one.points - view.scale))
    return Detail("the whole opening on two widths", scale, view, (*map(_on_white, still), *leaves))


def _on_white(item: Primitive) -> Primitive:
    """The ground of a picture is the paper itself on a sheet to hand on."""
    return replace(item, fill="white") if isinstance(item, Polygon) and item.fill == "paper" else item


def _heads(
    study: Study, pair: WidthPair, hungs: Sequence[DrawnLeaf], turn: float, box: Box, display: Display
) -> list[Primitive]:
    """A line for each width: how it is hatched, which hinge it is, where the leaf stands and why."""
    found: list[Primitive] = []
    kinds = (NARROWER, WIDER) if len(hungs) > 1 else (WIDER,)
    for row, (candidate, hung, kind) in enumerate(zip(pair.both, hungs, kinds, strict=True)):
        base = box.top - (row + 1) * _ROW + 4.0
        found += _swatch(kind, box.left, base)
        words = f"{heading(study, candidate, display)}:"
        left = box.left + _SWATCH + 6.0
        found.append(Text("A-ANNO-TTLB", (left, base), words, _SIZE, bold=True))
        left += text_width(words, _SIZE, bold=True) + 5.0
        layer, said = standing_words(hung, turn, display, _SIZE, box.right - left)
        found.append(Text(layer, (left, base), cut_to(said, _SIZE, box.right - left), _SIZE))
    return found


def _swatch(kind: str, left: float, base: float) -> list[Primitive]:
    outline = rectangle(left, left + _SWATCH, base - 1.5, base + 7.5)
    layer = "A-DOOR-NARW" if kind == NARROWER else "A-DOOR"
    hatch = "A-DOOR-PATT-NARW" if kind == NARROWER else "A-DOOR-PATT-WIDE"
    return [Polygon(layer, outline, kind, pattern_layer=hatch)]


def _captioned(detail: Detail, words: str) -> list[Primitive]:
    """A picture's border, and over it what it shows and its scale."""
    box = detail.view.window
    base = box.top + 3.0
    return [
        Text("A-ANNO-NOTE", (box.left, base), words, _CAPTION),
        Text("A-ANNO-NOTE", (box.right, base), detail.scale.name, _CAPTION, "end"),
        Polyline("A-ANNO-BRDR-PICT", rectangle(box.left, box.right, box.bottom, box.top), closed=True),
    ]


def _what_changes(study: Study, pair: WidthPair, display: Display) -> Note:
    """Return each fact that differs, as what the wider hinge does beside the narrower one."""
    if pair.wider is None:
        return Note("What the wider hinge changes", (ONE_WIDTH,))
    (table,) = comparisons(pair.of(study), display)
    said = [f"{row.trade}: {row.difference}" for row in table.rows if row.difference not in ("", "the same")]
    of = leaf_named(pair.leaf, " of the {}")
    return Note(f"What the wider hinge{of} changes, {table.between}", tuple(said) or ("Nothing measured.",))
