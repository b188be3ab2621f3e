"""The preparation sheet: sections and edges at a large scale, with what door and frame are cut for."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Room, room_of, set_side_by_side
from configurator.drawing.pages.dimension_string import refuse_crowded
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.notes import Marks
from configurator.drawing.pages.page import Detail, Page, Paper, Scale, fitted_or_asked, scales
from configurator.drawing.preparation.preparation_facts import (
    Preparation,
    preparation_notes,
    preparation_table,
    preparations,
)
from configurator.drawing.preparation.preparation_parts import (
    CLOSED,
    door_edge,
    frame_rabbet,
    section_at_hinge,
    section_at_latch,
)
from configurator.drawing.preparation.preparation_ways import (
    WayPreparation,
    section_at_axis,
    way_preparations,
    way_sayings,
    way_table,
)
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

_OVER_TABLE = 8.0
_READABLE = 18.0
"""Points an inch, 3 in to the foot: a hinge drawn smaller cannot be read."""
Row = tuple[Block, ...]


def preparation_page(
    study: Study,
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    number: tuple[int, int] = (1, 1),
) -> Page:
    """Lay out what door and frame are cut for; see `sheets.MakesPage`.

    A scale that is asked for holds for every detail; else sections may be larger than edges.
    """
    preps, ways = preparations(study), way_preparations(study)
    table = preparation_table(preps, display) if preps else way_table(ways, display)
    whole = drawing_box(paper)
    under = table.height() + _OVER_TABLE if table.rows else 0.0
    box = Box(whole.left, whole.bottom + under, whole.right, whole.top)
    marks = Marks(study.filled)
    shown = _of_butts(preps, marks, display) if preps else _of_ways(ways, marks, display)
    details = _details(shown, box, scale, paper, display) if shown else ()
    refuse_crowded(details, scale)
    said = way_sayings(study, ways) if ways and not preps else ()
    furniture, _ = page_frame(
        paper,
        study,
        job,
        display,
        "Hinge preparation",
        [detail.scale for detail in details],
        preparation_notes(study, preps, said, display, {detail.name for detail in details}),
        number,
    )
    drawn = table.drawn((whole.left, whole.bottom + table.height()), whole.width) if table.rows else ()
    return Page(f"{study.opening.mark} preparation", paper, details, (*furniture, *drawn), display.metric)


@dataclass(frozen=True, slots=True)
class _Shown:
    """What a sheet has to show: sections at the hinges, one at the latch, and the edges of door and frame."""

    sections: Row
    latch: Block
    doors: Row = ()
    frames: Row = ()


def _of_butts(preps: Sequence[Preparation], marks: Marks, display: Display) -> _Shown:
    """Return sections and edges of leaves on butts; a detail that two leaves share is there once."""
    leaves = [prep.leaf for prep in preps]
    return _Shown(
        _of_leaves(leaves, [section_at_hinge(prep, marks, display) for prep in preps]),
        section_at_latch(preps[0], marks, display),
        _of_leaves(leaves, [door_edge(prep, marks, display) for prep in preps]),
        _of_leaves(leaves, [frame_rabbet(prep, marks, display) for prep in preps]),
    )


def _of_ways(ways: Sequence[WayPreparation], marks: Marks, display: Display) -> _Shown | None:
    """Return the sections of leaves that hang on no butts; None where nothing is known of what they do."""
    if not ways:
        return None
    sections = [section_at_axis(prep, marks, display) for prep in ways]
    latch = section_at_latch(ways[0], marks, display)
    return _Shown(_of_leaves([prep.leaf for prep in ways], sections), latch)


def _arrangements(shown: _Shown) -> Iterator[tuple[Row, ...]]:
    """Yield the ways to set sections and edges in rows.

    The last ones are without the edges, whose mortises stand in the table as well.
    """
    sections, latch, doors, frames = shown.sections, shown.latch, shown.doors, shown.frames
    by_leaf = tuple(zip_longest(sections, doors, frames))
    ways: tuple[tuple[tuple[Block | None, ...], ...], ...] = (
        ((*sections, latch), (*doors, *frames)),
        (sections, (latch, *doors, *frames)),
        (sections, (latch, *doors), frames),
        (*by_leaf[:-1], (*by_leaf[-1], latch)),
        (*by_leaf, (latch,)),
        ((*sections, latch),),
        (*((one,) for one in sections[:-1]), (sections[-1], latch)),
    )
    for way in ways:
        rows = (tuple(block for block in row if block is not None) for row in way)
        yield tuple(row for row in rows if row)


def _of_leaves(leaves: Sequence[str], blocks: Sequence[Block | None]) -> Row:
    """Return the different blocks, named by their leaves where there is more than one.

    Two are the same where they differ only in which way they are seen.
    """
    found: dict[Block, list[str]] = {}
    for leaf, block in zip(leaves, blocks, strict=True):
        if block is not None:
            same = (one for one in found if _alike(one, block))
            found.setdefault(next(same, block), []).append(leaf)
    if len(found) < 2:
        return tuple(found)
    return tuple(
        replace(one, name=f"{one.name.removesuffix(CLOSED)}, {' and '.join(who)}")
        for one, who in found.items()
    )


def _alike(one: Block, other: Block) -> bool:
    return replace(one, mirrored=False, datum="") == replace(other, mirrored=False, datum="")


def _details(
    shown: _Shown,
    box: Box,
    asked: Scale | None,
    paper: Paper,
    display: Display,
) -> tuple[Detail, ...]:
    """Set the rows one over the other, as they are largest; with words where those cost nothing of the scale.

    Raises ValueError where no scale is small enough, or the one asked for does not fit.
    """
    found: list[tuple[list[Scale], tuple[Row, ...]]] = []
    faults: list[ValueError] = []
    for full in _arrangements(shown):
        try:
            rooms = [room_of(row, display) for row in _fewer_words(full, 0)]
            found.append((_scales(rooms, box, asked, paper, display), full))
        except ValueError as error:
            faults.append(error)
    if not found:
        raise faults[0]
    chosen, full = max(found, key=_worth)
    wordings = (full, _fewer_words(full, 1), _fewer_words(full, 0))
    fits = (rows for rows in wordings if _fit_across(rows, chosen, box, display))
    return _set(next(fits, wordings[-1]), chosen, box, display)


def _worth(way: tuple[list[Scale], tuple[Row, ...]]) -> tuple[float, ...]:
    """Return what an arrangement is worth: a scale to be read, then how much is drawn, then how large."""
    least, details = min(each.points for each in way[0]), sum(len(row) for row in way[1])
    return min(least, _READABLE), details, least, way[0][0].points


def _fewer_words(rows: tuple[Row, ...], kept: int) -> tuple[Row, ...]:
    return tuple(tuple(block.without_words(kept) for block in row) for row in rows)


def _fit_across(rows: tuple[Row, ...], chosen: list[Scale], box: Box, display: Display) -> bool:
    rooms = (room_of(row, display) for row in rows)
    return all(room.width_at(scale) <= box.width for room, scale in zip(rooms, chosen, strict=True))


def _set(rows: tuple[Row, ...], scales_of: list[Scale], box: Box, display: Display) -> tuple[Detail, ...]:
    heights = [room_of(row, display).height_at(one) for row, one in zip(rows, scales_of, strict=True)]
    spare = (box.height - sum(heights)) / len(rows)
    top = box.top
    found: list[Detail] = []
    for row, scale, height in zip(rows, scales_of, heights, strict=True):
        bottom = top - height - spare
        found += set_side_by_side(row, Box(box.left, bottom, box.right, top), scale, display)
        top = bottom
    return tuple(found)


def _scales(rooms: list[Room], box: Box, asked: Scale | None, paper: Paper, display: Display) -> list[Scale]:
    """Return a scale for each row: the largest all can have, and the first row's as large as is left."""
    high = sum(room.high for room in rooms)
    points = (box.height - sum(room.upward for room in rooms)) / high
    most = min(points, *((box.width - room.across) / room.wide for room in rooms))
    common = fitted_or_asked(max(most, 0.0), asked, paper, display.metric)
    if asked is not None:
        return [asked] * len(rooms)
    left = box.height - sum(room.height_at(common) for room in rooms[1:])
    first = rooms[0].points_in(box.width, left)
    larger = next((one for one in scales(display.metric) if one.points <= first), common)
    return [larger, *[common] * (len(rooms) - 1)]
