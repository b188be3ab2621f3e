"""The elevation sheet: the opening from the pull side and the doors' hinge edges, every hinge located."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from configurator.drawing.hanging_of import turns_clockwise
from configurator.drawing.pages.blocks import Block, Side, String, room_of, set_side_by_side
from configurator.drawing.pages.elevation_facts import LeafShown, leaves_shown
from configurator.drawing.pages.elevation_notes import elevation_notes
from configurator.drawing.pages.elevation_parts import edge_parts, elevation_parts
from configurator.drawing.pages.elevation_strings import (
    Column,
    edge_chain,
    edge_running,
    frame_chain,
    frame_running,
    heights,
    widths,
)
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.hinge_table import hinge_table, unlike
from configurator.drawing.pages.page import Page, Paper, Scale
from configurator.drawing.pages.papers import fitted_or_asked
from configurator.drawing.view import Box
from configurator.model import JobFacts
from configurator.rules.usual import FilledOpening
from configurator.study.records import Study
from configurator.units import Display

_OVER_TABLE = 8.0
_WELL_READ = 72.0 / 32
"""Points for an inch at 3/8 in to the foot, the least at which the hinges of a door are well told apart."""


def elevation_page(
    study: Study,
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    number: tuple[int, int] = (1, 1),
) -> Page:
    """Lay out the elevation and the hinge locations of an opening; see `sheets.MakesPage`."""
    leaves = leaves_shown(study)
    table = hinge_table(leaves, study.filled.opening_height, display)
    whole = drawing_box(paper)
    under = table.height() + _OVER_TABLE if table.rows else 0.0
    box = Box(whole.left, whole.bottom + under, whole.right, whole.top)
    blocks = _best(_layouts(study.filled, leaves), box, scale, display)
    chosen = fitted_or_asked(
        room_of(blocks, display).points_in(box.width, box.height), scale, paper, display.metric
    )
    furniture, _ = page_frame(
        paper,
        study,
        job,
        display,
        "Elevation and hinge locations",
        [chosen],
        elevation_notes(study, leaves, display, without_edges=len(blocks) == 1),
        number,
    )
    rows = table.drawn((whole.left, whole.bottom + table.height()), whole.width) if table.rows else ()
    details = set_side_by_side(blocks, box, chosen, display)
    return Page(f"{study.opening.mark} elevation", paper, details, (*furniture, *rows))


def _layouts(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> Iterator[tuple[Block, ...]]:
    """Yield what may stand on the sheet, the fullest first; the table has every figure in any case."""
    elevation, edges = _elevation(filled, leaves), _edges(filled, leaves)
    yield (elevation, *edges)
    if edges:
        yield (elevation, *(replace(edge, high=Side(edge.high.strings[:1])) for edge in edges))
        yield (elevation,)


def _best(
    layouts: Iterable[tuple[Block, ...]], box: Box, asked: Scale | None, display: Display
) -> tuple[Block, ...]:
    """Return the fullest layout that has room at the scale asked for, or at one that is well read."""
    wanted = _WELL_READ if asked is None else asked.points
    tried = [(room_of(blocks, display).points_in(box.width, box.height), blocks) for blocks in layouts]
    fits = (blocks for points, blocks in tried if points >= wanted)
    return next(fits, max(tried, key=lambda one: one[0])[1])


def _elevation(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> Block:
    face = filled.frame_face
    hung = tuple(shown for shown in leaves if shown.leaf.name != "inactive" and shown.hinges)
    labels = tuple(label for shown in hung for label in _labels(shown))
    low = Side(_strings(frame_chain(filled, hung), frame_running(filled, hung)), labels) if hung else Side()
    return Block(
        name="Elevation from the pull side, counted on the frame",
        extent=Box(-face, 0.0, filled.opening_width + face, filled.opening_height + face),
        parts=elevation_parts(filled, leaves),
        low=low,
        high=Side(tuple(String(column, running) for column, running in heights(filled, leaves))),
        rows=widths(filled, leaves),
        datum="finished floor",
        mirrored=not turns_clockwise(filled, leaves[0].leaf.name),
    )


def _strings(chain: Column, running: Column) -> tuple[String, ...]:
    return String(chain, heading="ends"), String(running, running=True, heading="centres", leaders=False)


def _labels(shown: LeafShown) -> list[tuple[float, str]]:
    """Return a label beside each hinge: its number from the top, and whether it carries wires."""
    hinges, name = shown.hinges, shown.leaf.name
    if hinges is None:
        return []
    which = f"{name} " if name in ("upper", "lower") else ""
    numbers = [hinges.number(place) for place in range(len(hinges.places))]
    return [
        ((bottom + top) / 2, f"{which}{number}{' electric' if number == hinges.electric else ''}")
        for number, (bottom, top) in zip(numbers, hinges.places, strict=True)
    ]


def _edges(filled: FilledOpening, leaves: Sequence[LeafShown]) -> tuple[Block, ...]:
    """Return the hinge edges of the doors: of a Dutch door both in one, of a pair each that differs."""
    if filled.opening.leaves == "dutch":
        groups = [(tuple(shown for shown in leaves if shown.hinges), "Doors, hinge edge")]
    else:
        groups = [((shown,), _name(leaves, names)) for shown, names in unlike(tuple(leaves))]
    return tuple(_edge(filled, group, name) for group, name in groups if group)


def _name(leaves: Sequence[LeafShown], names: str) -> str:
    if len(leaves) == 1:
        return "Door, hinge edge"
    return "Doors, hinge edge" if " and " in names else f"{names.capitalize()} leaf, hinge edge"


def _edge(filled: FilledOpening, leaves: tuple[LeafShown, ...], name: str) -> Block:
    return Block(
        name=name,
        extent=Box(0.0, 0.0, filled.thickness, filled.opening_height),
        parts=edge_parts(filled, leaves),
        high=Side(_strings(edge_chain(filled, leaves), edge_running(filled, leaves))),
    )
