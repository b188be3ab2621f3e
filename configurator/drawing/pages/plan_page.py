"""The plan sheet: every width side by side at one true scale, the whole opening under or beside each."""

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import nullcontext, suppress
from dataclasses import dataclass, replace

from configurator.drawing.base.lettering import fitted, text_width
from configurator.drawing.base.primitives import Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.notes import Note, cut_to, study_notes
from configurator.drawing.pages.page import Detail, Page, Paper, Scale, scales
from configurator.drawing.pages.plan_layout import Cell, Layout, fewer_and_fewer, layout_at, plan_layout
from configurator.drawing.pages.tables import (
    TABLE_SIZE,
    MeasuredTable,
    keys_of,
    measured_table,
    standing_table,
)
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaves, turns_clockwise
from configurator.drawing.plan.panel import (
    Panel,
    SmallPlace,
    moving_notes,
    moving_parts,
    panel,
    small_picture,
    spare_height,
)
from configurator.drawing.plan.sheet import RECOMMENDED, hand_words, heading, standing_words
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

_DRAWN = ("h", "pin", "mirrored", "hardware", "standing", "contact", "reach", "door_stop", "other_leaf")
"""What of a leaf its picture shows."""
SMALL = "whole opening"
"""What the names of the small plans begin with."""
_TITLE, _SUBTITLE, _CAPTION = 10.0, 7.5, 6.5
_BOLDER = 1.15
_LARGE, _LARGER = 640.0, 8.0
"""Room wider than this has its table lettered larger, points."""
_NARROW = 200.0
"""A plan narrower than this is lettered smaller, points."""
_OVER_TABLE, _BESIDE_TABLE = 8.0, 12.0
_MOST_OF_PAGE = 0.3
"""Share of the drawing's height that the table of what stands there may have."""
"""How much wider bold lettering runs."""


def plan_page(
    study: Study,
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    number: tuple[int, int] = (1, 1),
) -> Page:
    """Return the plan sheet of an opening, its leaves as far open as is wanted and as they go.

    A scale of None is fitted: the largest listed one at which every plan shows its hinge with what it meets.
    Raises ValueError where the scale asked for does not fit the paper, or there is no width to draw.
    """
    if not study.candidates:
        raise ValueError("there is no hinge width to draw")
    whole = drawing_box(paper)
    tables = _tables(study, whole, display)
    room = Box(whole.left, tables.top + _OVER_TABLE, whole.right, whole.top)
    turn = math.radians(study.filled.wanted_angle)
    drawn, layout, panels = _as_many_as_fit(study, room, scale, paper, display, turn)
    plan = _laid_out(panels, layout, turn, display)
    used = sorted((detail.scale for detail in plan.details), key=lambda one: -one.ratio)
    notes = plan_notes(study, len(drawn.candidates), tables.told, display)
    furniture, _ = page_frame(paper, study, job, display, "Plan at the hinge", used, notes, number)
    parts = (*furniture, *plan.parts, *tables.parts)
    return Page(f"{study.opening.mark} plan", paper, plan.details, parts, display.metric)


@dataclass(frozen=True, slots=True)
class Plan:
    """The plans of an opening laid out in a rectangle of a page: details, and headings with borders."""

    details: tuple[Detail, ...]
    parts: tuple[Primitive, ...]


def plan_in(study: Study, room: Box, scale: Scale | None, paper: Paper, display: Display) -> Plan | None:
    """Return the plan of each leaf's recommended hinge in a room of the page; None where it has none."""
    hungs = drawn_leaves(study, display)
    *_, indexes = fewer_and_fewer(study)
    titled = _drawn_once(study, [hungs[index] for index in indexes], display)
    some = tuple(titled.values())
    layout = plan_layout(some, room, display.metric) if scale is None else None
    if scale is not None:
        with suppress(ValueError):
            layout = layout_at(some, room, scale, paper, display.metric)
    if layout is None:
        return None
    turn = math.radians(study.filled.wanted_angle)
    panels = _panels(_only(study, indexes), titled, layout, display)
    return _laid_out(panels, layout, turn, display)


def _laid_out(panels: Sequence[Panel], layout: Layout, turn: float, display: Display) -> Plan:
    both = list(zip(panels, layout.cells, strict=True))
    details = tuple(each for one, _ in both for each in _details(one, turn, layout.scale, display))
    heads = [part for one, cell in both for part in _heading(one, cell, turn, layout.scale, display)]
    captions = [part for one in details if one.name.startswith(SMALL) for part in _caption(one)]
    return Plan(details, (*heads, *captions))


@dataclass(frozen=True, slots=True)
class _Tables:
    """The tables under the plans: what they draw, how high they reach, how many widths they tell of."""

    parts: tuple[Primitive, ...]
    top: float
    told: int


def _tables(study: Study, whole: Box, display: Display) -> _Tables:
    """Set what was measured at the left, and what stands there beside it, or under where it is too wide."""
    table, told = _table(study, whole.width, display)
    standing = standing_table(study, display, table.size)
    left = whole.left + min(table.width(table.size), whole.width) + _BESIDE_TABLE
    beside = standing.fits(whole.right - left)
    if not standing.rows:
        top = whole.bottom + table.height()
        return _Tables(table.drawn(Box(whole.left, whole.bottom, whole.right, top)), top, told)
    if beside:
        standing = _shortened(standing, max(table.height(), whole.height * _MOST_OF_PAGE))
        top = whole.bottom + max(table.height(), standing.height())
        parts = table.drawn(Box(whole.left, whole.bottom, left - _BESIDE_TABLE, top))
        return _Tables((*parts, *standing.drawn(Box(left, whole.bottom, whole.right, top))), top, told)
    standing = _shortened(standing, whole.height * _MOST_OF_PAGE)
    middle = whole.bottom + standing.height()
    top = middle + _OVER_TABLE + table.height()
    parts = standing.drawn(Box(whole.left, whole.bottom, whole.right, middle))
    return _Tables((*table.drawn(Box(whole.left, middle, whole.right, top)), *parts), top, told)


def _shortened(table: MeasuredTable, height: float) -> MeasuredTable:
    """Return the table with as many rows as a height holds, and how many more there are."""
    rows = list(table.rows)
    while len(rows) > 1 and replace(table, rows=(*rows, ())).height() > height:
        rows.pop()
    more = len(table.rows) - len(rows)
    if not more:
        return table
    words = f"and {more} more, with the opening in the program"
    return replace(table, rows=(*rows, ("", words, *("" for _ in table.headings[2:]))))


def _as_many_as_fit(
    study: Study, room: Box, scale: Scale | None, paper: Paper, display: Display, turn: float
) -> tuple[Study, Layout, tuple[Panel, ...]]:
    """Return the study with as many of its candidates as can be drawn, the layout, and their panels.

    Fewer are drawn, and larger, where all of them would leave a plan without the dimensions about its pin;
    all where fewer would not mend that.
    """
    found: list[tuple[Study, Layout, tuple[Panel, ...]]] = []
    for some, titled, layout in _ways(study, room, scale, paper, display):
        panels = _panels(some, titled, layout, display)
        found.append((some, layout, panels))
        if scale is not None or all(one.dimensions.at(one.hung.shown_at(turn)) for one in panels):
            return found[-1]
    return found[0]


def _ways(
    study: Study, room: Box, scale: Scale | None, paper: Paper, display: Display
) -> Iterator[tuple[Study, Mapping[str, DrawnLeaf], Layout]]:
    """Yield the sets of candidates that can be drawn, the fullest first, leaves by heading, the layout."""
    hungs = drawn_leaves(study, display)
    sets = list(fewer_and_fewer(study))
    for indexes in sets:
        titled = _drawn_once(study, [hungs[index] for index in indexes], display)
        some = tuple(titled.values())
        last = indexes == sets[-1]
        layout: Layout | None = None
        if scale is None:
            layout = plan_layout(some, room, display.metric, crowded=last)
        else:
            with nullcontext() if last else suppress(ValueError):
                layout = layout_at(some, room, scale, paper, display.metric, crowded=last)
        if layout is not None:
            yield _only(study, indexes), titled, layout


def _drawn_once(study: Study, hungs: Sequence[DrawnLeaf], display: Display) -> dict[str, DrawnLeaf]:
    """Return the leaves by their headings; one picture does for leaves that differ in nothing it shows.

    So it is with the leaves of a Dutch door that carry the same on the same hinge.
    """
    found: dict[str, list[DrawnLeaf]] = {}
    for hung in hungs:
        words = _without_leaf(study, hung, display)
        same = [title for title, one in found.items() if _same_picture(one[0], hung)]
        title = next((each for each in same if _without_leaf(study, found[each][0], display) == words), "")
        found.setdefault(title or heading(study, hung.candidate, display), []).append(hung)
    return {_of_all(title, each): each[0] for title, each in found.items()}


def _without_leaf(study: Study, hung: DrawnLeaf, display: Display) -> str:
    return heading(study, hung.candidate, display).replace(f", {hung.candidate.leaf} leaf", "")


def _of_all(title: str, hungs: Sequence[DrawnLeaf]) -> str:
    leaves = " and ".join(one.candidate.leaf for one in hungs)
    return title.replace(f"{hungs[0].candidate.leaf} leaf", f"{leaves} leaf")


def _same_picture(one: DrawnLeaf, other: DrawnLeaf) -> bool:
    alike = all(getattr(one, name) == getattr(other, name) for name in _DRAWN)
    return alike and one.candidate.clear_width_at_90 == other.candidate.clear_width_at_90


def _table(study: Study, width: float, display: Display) -> tuple[MeasuredTable, int]:
    """Return the table of as many candidates as the width holds, and how many those are."""
    size = TABLE_SIZE if width < _LARGE else _LARGER
    sets = list(fewer_and_fewer(study))
    for indexes in sets:
        whole = len(indexes) == len(study.candidates)
        over = "" if whole else f"{len(indexes)} of {len(study.candidates)} widths"
        table = measured_table(_only(study, indexes), display, size, over)
        if table.fits(width) or indexes == sets[-1]:
            return table, len(indexes)
    raise AssertionError("the last set has a table")


def _only(study: Study, indexes: Sequence[int]) -> Study:
    return replace(study, candidates=tuple(study.candidates[index] for index in indexes))


def plan_notes(study: Study, drawn: int, told: int, display: Display) -> tuple[Note, ...]:
    """Return the notes beside the plans: those of every sheet, and how to read the plan.

    `drawn` is how many candidates are drawn, `told` how many stand in the table.
    """
    words = _how_to_read(study, display)
    count = len(study.candidates)
    if drawn < count:
        table = "them all" if told == count else f"{told} of them; the comparison has all"
        words += f" {drawn} of {count} are drawn at this scale; the table has {table}."
    read = Note("How to read the plan", (words,))
    said = study_notes(study, display)
    return (*said[:3], read, *said[3:])


def _how_to_read(study: Study, display: Display) -> str:
    filled = study.filled
    right = all(turns_clockwise(filled, candidate.leaf) for candidate in study.candidates)
    hinges = ", hinges right" if right else ""
    under = filled.opening.background
    drawn = f" Light lines are those of {under.drawing or 'another drawing'}, not checked." if under else ""
    return (
        f"Seen from above, pull side up{hinges}. Drawn as far open as "
        f"{display.angle(filled.wanted_angle, 'up')} or as it goes. Frame, leaf and wall are cut as commonly "
        f"made; only what is dimensioned is measured.{_assumed(filled.assumed)}{drawn}"
    )


def _assumed(paths: Collection[str]) -> str:
    """Explain the asterisks of the table of what stands there, where it has any."""
    marked = any(path.startswith(("obstructions.", "door_stop.projection")) for path in paths)
    return " * in the table: assumed, not given." if marked else ""


def _panels(
    study: Study, titled: Mapping[str, DrawnLeaf], layout: Layout, display: Display
) -> tuple[Panel, ...]:
    points = layout.scale.points
    both = list(zip(titled.items(), layout.cells, strict=True))
    spare = min(spare_height(hung, cell.plan, points) for (_, hung), cell in both)
    listed = tuple(one.points for one in scales(display.metric))
    whole = tuple(one.points for one in layout.small)
    keys = keys_of(study, display)
    return tuple(
        panel(
            hung, cell.plan, points, spare, display, title, hand_words(study, hung.candidate),
            hung.candidate.clear_width_at_90, False,
            small=SmallPlace(cell.small, whole, listed, layout.floor), size=_size_in(cell.plan), keys=keys,
            turn=math.radians(study.filled.wanted_angle),
        )
        for (title, hung), cell in both
    )  # fmt: skip


def _size_in(window: Box) -> float:
    """Return the type size of a plan's dimensions and names, points."""
    return 7.5 if window.width >= _NARROW else 6.5


def _details(one: Panel, turn: float, scale: Scale, display: Display) -> Iterator[Detail]:
    """Yield the plan at the hinge, and that of the whole opening at the scale it was given."""
    main = one.main
    moving, notes = moving_parts(one, turn), moving_notes(one, turn, display)
    hinge = one.title.replace(RECOMMENDED, "")
    yield Detail(one.title, scale, main.view, (*main.still, *moving, *main.notes, *notes), hinge)
    small = small_picture(one, turn, display)
    if one.inset is None or small is None:
        return
    view, moves = small
    still = one.inset.still if view == one.inset.view else ()
    named = min(scales(display.metric), key=lambda listed: abs(listed.points - view.scale))
    what = SMALL if view == one.inset.view and not one.told.latch_side else f"{SMALL}, latch side"
    shown = tuple(map(_on_white, (*still, *moves)))
    yield Detail(f"{what}, {one.title}", named, view, shown, hinge)


def _on_white(item: Primitive) -> Primitive:
    """The ground of a picture is the paper itself on a sheet to hand on."""
    return replace(item, fill="white") if isinstance(item, Polygon) and item.fill == "paper" else item


def _heading(one: Panel, cell: Cell, turn: float, scale: Scale, display: Display) -> list[Primitive]:
    """The size of the hinge; under it where the leaf stands and why, and at the right the scale."""
    box = cell.plan
    scale_wide = text_width(scale.name, _CAPTION)
    across, room = cell.right - box.left, box.width - scale_wide - 6.0
    plain = one.title.replace(RECOMMENDED, "")
    choices = (one.title, plain, plain.replace(" hinge", ""))
    title = cut_to(fitted(choices, _TITLE * _BOLDER, across), _TITLE, across, bold=True)
    layer, words = standing_words(one.hung, turn, display, _SUBTITLE, room)
    return [
        Text("A-ANNO-TTLB", (box.left, box.top + 14.5), title, _TITLE, bold=True),
        Text("A-ANNO-NOTE", (box.right, box.top + 4.0), scale.name, _CAPTION, "end"),
        Text(layer, (box.left, box.top + 4.0), cut_to(words, _SUBTITLE, room), _SUBTITLE),
        _border(box),
    ]


def _caption(detail: Detail) -> list[Primitive]:
    """What the small plan is, and its scale, over its border."""
    box = detail.view.window
    wide = text_width(detail.scale.name, _CAPTION)
    latch = detail.name.startswith(f"{SMALL}, latch side")
    choices = ("the latch side", "latch", "") if latch else ("the whole opening", "opening", "")
    words = fitted(choices, _CAPTION, box.width - wide - 8.0)
    base = box.top + 3.0
    found: list[Primitive] = [
        Text("A-ANNO-NOTE", (box.right, base), detail.scale.name, _CAPTION, "end"),
        _border(box),
    ]
    return [*found, Text("A-ANNO-NOTE", (box.left, base), words, _CAPTION)] if words else found


def _border(box: Box) -> Polyline:
    return Polyline("A-ANNO-BRDR-PICT", rectangle(box.left, box.right, box.bottom, box.top), closed=True)
