"""The elevation sheet: the opening from the pull side and the doors' hinge edges, every hinge located."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Side, String, room_of, set_side_by_side
from configurator.drawing.pages.elevation_facts import LeafShown, leaves_shown
from configurator.drawing.pages.elevation_notes import elevation_notes
from configurator.drawing.pages.elevation_parts import edge_parts, elevation_parts
from configurator.drawing.pages.elevation_strings import (
    Column,
    edge_chain,
    edge_from_top,
    edge_running,
    frame_chain,
    frame_from_head,
    frame_running,
    heights,
    widths,
)
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.hinge_table import hinge_table, unlike
from configurator.drawing.pages.page import Page, Paper, Scale
from configurator.drawing.pages.papers import fitted_or_asked, largest_scale
from configurator.drawing.pages.texts_apart import refuse_crowded
from configurator.drawing.plan.drawn_leaf import turns_clockwise
from configurator.model import JobFacts
from configurator.rules.filling.usual import FilledOpening
from configurator.study import Study
from configurator.units import TOLERANCE, Display

_OVER_TABLE = 8.0
_WITHOUT_EDGES = "The doors' edges have no room on this paper; the table has their figures."
_WITHOUT_HEIGHTS = (
    "The doors' edges, and the heights of doors, gaps and hardware, have no room on this paper: take a "
    "larger one."
)
_WELL_READ = 72.0 / 32
"""Points for an inch at 3/8 in to the foot, the least at which the hinges of a door are well told apart."""
_Layout = tuple[tuple[Block, ...], str]


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
    blocks, left_out = _best(_layouts(study.filled, leaves), box, scale, display)
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
        elevation_notes(study, leaves, display, left_out),
        number,
    )
    rows = table.drawn((whole.left, whole.bottom + table.height()), whole.width) if table.rows else ()
    details = set_side_by_side(blocks, box, chosen, display)
    refuse_crowded(details, scale)
    return Page(f"{study.opening.mark} elevation", paper, details, (*furniture, *rows))


def _layouts(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> Iterator[_Layout]:
    """Yield what may stand on the sheet, the fullest first, and what is then left out."""
    elevation, edges = _elevation(filled, leaves), _edges(filled, leaves)
    without = _WITHOUT_EDGES if edges else ""
    yield (elevation, *edges), ""
    elevation = replace(elevation, low=_fewer(elevation.low, 2))
    yield (elevation, *(replace(edge, high=_fewer(edge.high, 2)) for edge in edges)), ""
    yield (elevation, *(replace(edge, high=_fewer(edge.high, 1)) for edge in edges)), ""
    yield (elevation,), without
    yield (elevation.without_words(),), without
    yield (_briefest(elevation),), _WITHOUT_HEIGHTS


def _fewer(side: Side, count: int) -> Side:
    """Return a side with so many strings, those nearest to what they measure."""
    return replace(side, strings=side.strings[:count])


def _briefest(elevation: Block) -> Block:
    """Return an elevation with the hinges' centres and the opening's height alone beside it."""
    low, high = elevation.low, elevation.high
    return replace(elevation, low=replace(low, strings=low.strings[-1:]), high=Side(high.strings[-1:]))


def _best(layouts: Iterable[_Layout], box: Box, asked: Scale | None, display: Display) -> _Layout:
    """Return the fullest layout that has room at the scale asked for, or at one that is well read.

    Where none is well read, the fullest of those at the largest scale that there is room for. The very
    fullest is taken only where its further strings cost nothing of the scale.
    """
    tried = [(_scale_in(box, one[0], display), one) for one in layouts]
    wanted = _WELL_READ if asked is None else asked.points
    least = min(wanted, max(points for points, _ in tried))
    chosen = next(place for place, (points, _) in enumerate(tried) if place and points >= least - TOLERANCE)
    free = min(tried[chosen][0], wanted) if asked is not None else tried[chosen][0]
    return tried[0 if tried[0][0] >= free - TOLERANCE else chosen][1]


def _scale_in(box: Box, blocks: Sequence[Block], display: Display) -> float:
    """Return the largest listed scale blocks have room at, points for an inch; 0 for none."""
    points = room_of(blocks, display).points_in(box.width, box.height)
    scale = largest_scale(points, display.metric)
    return 0.0 if scale is None else scale.points


def _elevation(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> Block:
    face = filled.frame_face
    hung = tuple(shown for shown in leaves if shown.leaf.name != "inactive" and shown.hinges)
    labels = tuple(label for shown in hung for label in _labels(shown))
    columns = frame_chain(filled, hung), frame_running(filled, hung), frame_from_head(filled, hung)
    low = Side(_strings(*columns), labels) if hung else Side()
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


def _strings(chain: Column, centres: Column, tops: Column) -> tuple[String, ...]:
    return (
        String(chain, heading="ends"),
        String(centres, running=True, heading="centres", leaders=False),
        String(tops, running=True, heading="tops", leaders=False),
    )


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
        groups = [(tuple(shown for shown in leaves if shown.hinges), "Hinge edges")]
    else:
        groups = [((shown,), _name(leaves, names)) for shown, names in unlike(tuple(leaves))]
    return tuple(_edge(filled, group, name) for group, name in groups if group)


def _name(leaves: Sequence[LeafShown], names: str) -> str:
    """Name an edge so briefly that the name takes no more room than its strings."""
    return f"Hinge edge, {names}" if len(leaves) > 1 and " and " not in names else "Hinge edge"


def _edge(filled: FilledOpening, leaves: tuple[LeafShown, ...], name: str) -> Block:
    return Block(
        name=name,
        extent=Box(0.0, 0.0, filled.thickness, filled.opening_height),
        parts=edge_parts(filled, leaves),
        high=Side(
            _strings(edge_chain(filled, leaves), edge_running(filled, leaves), edge_from_top(filled, leaves))
        ),
    )
