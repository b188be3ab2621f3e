"""The preparation sheet: sections and edges at a large scale, with what door and frame are cut for."""

from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Room, room_of, set_side_by_side
from configurator.drawing.pages.dimension_string import refuse_crowded
from configurator.drawing.pages.elevation_parts import Marks
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.page import Detail, Page, Paper, Scale, fitted_or_asked, scales
from configurator.drawing.pages.preparation_facts import (
    Preparation,
    preparation_notes,
    preparation_table,
    preparations,
)
from configurator.drawing.pages.preparation_parts import (
    door_edge,
    frame_rabbet,
    section_at_hinge,
    section_at_latch,
)
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

_OVER_TABLE = 8.0
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
    preps = preparations(study)
    table = preparation_table(preps, display)
    whole = drawing_box(paper)
    under = table.height() + _OVER_TABLE if table.rows else 0.0
    box = Box(whole.left, whole.bottom + under, whole.right, whole.top)
    details = _details(preps[0], Marks(study.filled), box, scale, paper, display) if preps else ()
    refuse_crowded(details, scale)
    furniture, _ = page_frame(
        paper,
        study,
        job,
        display,
        "Hinge preparation",
        [detail.scale for detail in details],
        preparation_notes(study, preps, display),
        number,
    )
    drawn = table.drawn((whole.left, whole.bottom + table.height()), whole.width) if table.rows else ()
    return Page(f"{study.opening.mark} preparation", paper, details, (*furniture, *drawn))


def _rows(prep: Preparation, marks: Marks, display: Display) -> tuple[Row, ...]:
    """Return the sections, and under them the edges where anything is let into them."""
    sections = (section_at_hinge(prep, marks, display), section_at_latch(prep, marks, display))
    edges = (door_edge(prep, marks, display), frame_rabbet(prep, marks, display))
    return tuple(row for row in (sections, tuple(edge for edge in edges if edge is not None)) if row)


def _details(
    prep: Preparation, marks: Marks, box: Box, asked: Scale | None, paper: Paper, display: Display
) -> tuple[Detail, ...]:
    """Set the rows one over the other; their dimensions have words where those cost nothing of the scale."""
    full = _rows(prep, marks, display)
    wordings = (full, _fewer_words(full, 1), _fewer_words(full, 0))
    chosen = _scales([room_of(row, display) for row in wordings[-1]], box, asked, paper, display)
    fits = (rows for rows in wordings if _fit_across(rows, chosen, box, display))
    return _set(next(fits, wordings[-1]), chosen, box, display)


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
