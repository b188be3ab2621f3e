"""The client's page, upright: the picture, three sentences, the table, and what is recommended.

In plain words. What is only assumed and what warns of something stands on it as on every other sheet.
"""

import math
from collections.abc import Sequence
from dataclasses import replace

from configurator.drawing.base.primitives import Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box
from configurator.drawing.client.client_flow import GAP, Flow
from configurator.drawing.client.client_picture import client_panel
from configurator.drawing.pages.frame import BAR_HEIGHT, MARGIN, Cell, scale_bar, title_block
from configurator.drawing.pages.notes import DEFER, Note, assumed_note, cut_to, least_height, notes_column
from configurator.drawing.pages.page import Detail, Page, Paper, Scale, fitted_or_asked
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, degrees, drawn_leaves
from configurator.drawing.plan.panel import (
    closest_scale,
    moving_notes,
    moving_parts,
    spare_height,
    view_scale,
)
from configurator.model import JobFacts
from configurator.study import Study
from configurator.study.widths.width_pair import WidthPair, width_pair
from configurator.units import Display
from configurator.wording.client_words import (
    client_sayings,
    client_table,
    door_named,
    hinge_title,
    recommendation,
)

_EDGE = 12.0
_BLOCK = 48.0
_HEAD = 46.0
_GUTTER = 12.0
_LETTERS = 7.5
_TITLE = 17.0
_SIZES = (16.0, 14.5, 13.0, 12.0, 11.0, 10.0, 9.5, 9.0, 8.5, 8.0)
"""Type sizes tried for what is said, points."""
_LETTERS_A_LINE = 48.0
"""No type is so large that its size goes into the width fewer times than this."""
_LEAST_PICTURE, _MOST_PICTURE = 190.0, 330.0
_OVER_PICTURE = 18.0
_NOTES, _MOST_NOTES = 0.16, 0.36
"""Shares of the page that are kept for what is to be noted: at least, and at most where so much is needed."""


def client_page(
    study: Study,
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    number: tuple[int, int] = (1, 1),
) -> Page:
    """Return the page for the client, upright on the paper, of the leaf that the hinge changes most.

    A scale of None is fitted. Raises ValueError where the scale asked for does not fit, or there is no width
    to draw.
    """
    pair = width_pair(study)
    upright = paper if paper.height >= paper.width else paper.turned()
    border = Box(0.0, 0.0, *upright.points).shrunk(MARGIN)
    room = Box(border.left + _EDGE, border.bottom + _BLOCK, border.right - _EDGE, border.top - _HEAD)
    noted = client_notes(study, display)
    flow, height = _flow(study, pair, display, room, least_height(noted, room.width))
    pictures = Box(room.left, room.top - height, room.right, room.top - _OVER_PICTURE)
    details = _details(study, pair, pictures, scale, upright, display)
    under = pictures.bottom - BAR_HEIGHT - 6.0
    texts, base = flow.drawn(Box(room.left, room.bottom, room.right, under - GAP))
    notes = notes_column(noted, Box(room.left, room.bottom + 6.0, room.right, base))
    bar = scale_bar(details[0].scale, display, (room.left, under), room.width / 2)
    block = Box(border.left, border.bottom, border.right, border.bottom + _BLOCK)
    furniture = (
        Polyline("A-ANNO-BRDR", rectangle(border.left, border.right, border.bottom, border.top), closed=True),
        *_head(study, job, border, display),
        *_captions(pair, details, _shown(study, pair, display)),
        *bar,
        *texts,
        *notes,
        *title_block(_cells(study, job, number), block),
    )
    return Page(f"{study.opening.mark} for the client", upright, details, furniture, display.metric)


def client_notes(study: Study, display: Display) -> tuple[Note, ...]:
    """Return what a client is to note: what warns of something, what was assumed, whose word goes first."""
    found = study.all_findings()
    worst = [one for level in ("error", "warning") for one in found if one.severity == level]
    said = tuple(one.said(display) for one in worst)
    assumed = assumed_note(study, display)
    taken = replace(assumed, heading="Not measured yet, taken as usual")
    first = Note("Before anything is made", (DEFER,), stays=True)
    return (Note("Please note", said, warns=True), taken, first)


def _flow(study: Study, pair: WidthPair, display: Display, room: Box, noted: float) -> tuple[Flow, float]:
    """Return the sentences, as large as leaves picture and notes their room, and the height of the picture.

    `noted` is the least height of the notes, points.
    """
    sentences = client_sayings(study, pair, display)
    table, recommended = client_table(study, pair, display), recommendation(study, pair, display)
    sizes = (size for size in _SIZES if size * _LETTERS_A_LINE <= room.width or size == _SIZES[-1])
    flows = [Flow(size, sentences, table, recommended) for size in sizes]
    share = min(max(_NOTES, (noted + 12.0) / room.height), _MOST_NOTES)
    kept = share * room.height + BAR_HEIGHT + 6.0
    left = [(flow, room.height - kept - flow.height(room.width)) for flow in flows]
    flow, spare = next((one for one in left if one[1] >= _LEAST_PICTURE), left[-1])
    most = max(_MOST_PICTURE, 0.42 * room.height)
    return flow, min(max(spare, _LEAST_PICTURE), most)


def _details(
    study: Study, pair: WidthPair, box: Box, asked: Scale | None, paper: Paper, display: Display
) -> tuple[Detail, ...]:
    """The plan on each width, side by side at one scale, lettered in plain words."""
    hungs = drawn_leaves(pair.of(study), display)
    windows = _windows(box, len(hungs))
    fits = closest_scale if asked else view_scale
    points = min(fits(hung, one.width, one.height) for hung, one in zip(hungs, windows, strict=True))
    scale = fitted_or_asked(points, asked, paper, display.metric)
    spare = min(spare_height(hung, one, scale.points) for hung, one in zip(hungs, windows, strict=True))
    turn = math.radians(study.filled.wanted_angle)
    titles = [f"on a hinge {one.name} wide" if one.way is None else one.name for one in pair.both]
    return tuple(
        _detail(study, hung, window, scale, spare, display, title, turn)
        for hung, window, title in zip(hungs, windows, titles, strict=True)
    )


def _windows(box: Box, count: int) -> list[Box]:
    across = (box.width - (count - 1) * _GUTTER) / count
    lefts = [box.left + number * (across + _GUTTER) for number in range(count)]
    return [Box(left, box.bottom, left + across, box.top) for left in lefts]


def _detail(
    study: Study,
    hung: DrawnLeaf,
    window: Box,
    scale: Scale,
    spare: float,
    display: Display,
    title: str,
    turn: float,
) -> Detail:
    main = client_panel(study, hung, window, scale.points, spare, display, title, _LETTERS)
    drawn = main.main
    parts = (*drawn.still, *moving_parts(main, turn), *drawn.notes, *moving_notes(main, turn, display))
    return Detail(title, scale, drawn.view, tuple(map(_on_white, parts)))


def _on_white(item: Primitive) -> Primitive:
    """The ground of a picture is the paper itself on a sheet to hand on."""
    return replace(item, fill="white") if isinstance(item, Polygon) and item.fill == "paper" else item


def _shown(study: Study, pair: WidthPair, display: Display) -> list[str]:
    """Say how far open each picture has its door."""
    turn = math.radians(study.filled.wanted_angle)
    hungs = drawn_leaves(pair.of(study), display)
    return [f"open {display.angle(degrees(hung.shown_at(turn)))}" for hung in hungs]


def _captions(pair: WidthPair, details: Sequence[Detail], shown: Sequence[str]) -> list[Primitive]:
    """Over each picture the hinge and how far the door stands open, and a border around it."""
    found: list[Primitive] = []
    for candidate, detail, angle in zip(pair.both, details, shown, strict=True):
        box = detail.view.window
        words = hinge_title(candidate)
        words += ", recommended" if candidate.on == pair.recommended else ""
        found.append(Text("A-ANNO-TTLB", (box.left, box.top + 5.0), words, 10.0, bold=True))
        found.append(Text("A-ANNO-NOTE", (box.right, box.top + 5.0), angle, 8.0, "end"))
        outline = rectangle(box.left, box.right, box.bottom, box.top)
        found.append(Polyline("A-ANNO-BRDR-PICT", outline, closed=True))
    return found


def _head(study: Study, job: JobFacts, border: Box, display: Display) -> list[Primitive]:
    opening, filled = study.opening, study.filled
    left, room = border.left + _EDGE, border.width - 2 * _EDGE
    where = door_named(opening)
    size = display.opening(filled.opening_width, filled.opening_height)
    hand = f", hand {opening.hand}" if opening.hand else ", hand not given yet"
    whose = ", ".join(words for words in (job.name, f"opening {size}{hand}") if words)
    return [
        Text("A-ANNO-TTLB", (left, border.top - 25.0), cut_to(where, _TITLE, room, True), _TITLE, bold=True),
        Text("A-ANNO-NOTE", (left, border.top - 38.0), cut_to(whose, 9.0, room), 9.0),
    ]


def _cells(study: Study, job: JobFacts, number: tuple[int, int]) -> tuple[tuple[Cell, ...], ...]:
    opening = study.opening
    status = "assumed, not yet measured" if opening.status == "assumed" else opening.status
    return (
        (
            Cell("Job", job.name or "", 3.0, True),
            Cell("Client", job.client or "", 2.6),
            Cell("Door", opening.mark, 1.2, True),
            Cell("Dimensions", status, 2.4),
        ),
        (
            Cell("Job number", job.number or "", 1.4),
            Cell("Prepared by", job.prepared_by or "", 2.4),
            Cell("Date", job.date or "", 1.4),
            Cell("Revision", job.revision or "", 1.0),
            Cell("How many", str(opening.quantity), 1.0),
            Cell("Sheet", f"{number[0]} of {number[1]}", 1.0),
        ),
    )
