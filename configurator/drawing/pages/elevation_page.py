"""The elevation sheet: the opening from the pull side and the doors' hinge edges, every hinge located."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Side, String, room_of, set_side_by_side
from configurator.drawing.pages.dimension_string import refuse_crowded
from configurator.drawing.pages.elevation_facts import (
    LeafShown,
    hinge_table,
    leaves_shown,
    lite_shown,
    lock_shown,
    unlike,
)
from configurator.drawing.pages.elevation_parts import (
    Column,
    edge_chain,
    edge_from_top,
    edge_parts,
    edge_running,
    elevation_parts,
    frame_chain,
    frame_from_head,
    frame_running,
    heights,
    widths,
)
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.notes import Note, study_notes
from configurator.drawing.pages.page import Page, Paper, Scale, fitted_or_asked, largest_scale
from configurator.drawing.plan.drawn_leaf import turns_clockwise
from configurator.model import JobFacts
from configurator.rules.filling.materials import fastening_of
from configurator.rules.filling.places import USUAL_RULE, row_of_place, rows_of_rule
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import way_hung_on
from configurator.rules.wording import an
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.tables import ToleranceRow, WayRow, row_of, table
from configurator.units import TOLERANCE, Display
from configurator.wording.hinge_parts import cited

_OVER_TABLE = 8.0
_WITHOUT_EDGES = "The doors' edges have no room on this paper; the table has their figures."
_WITHOUT_HEIGHTS = (
    "The doors' edges, and the heights of doors, gaps and hardware, have no room on this paper: take a "
    "larger one."
)
_WELL_READ = 72.0 / 32
"""Points for an inch at 3/8 in to the foot, the least at which the hinges of a door are well told apart."""
_Layout = tuple[tuple[Block, ...], str]
_DATUM = (
    "Heights are counted from the finished floor, the head is the frame's head rabbet. Agree on the datum "
    "before anything is made: where the floor's finish is laid later, heights from the slab differ by it."
)
_MAKERS = (
    "Those who make doors and frames do not all set hinges alike: confirm with both before ordering; what is "
    "already made rules."
)


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
    return Page(f"{study.opening.mark} elevation", paper, details, (*furniture, *rows), display.metric)


def _layouts(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> Iterator[_Layout]:
    """Yield what may stand on the sheet, the fullest first, and what is then left out."""
    elevation, edges = _elevation(filled, leaves), _edges(filled, leaves)
    without = _WITHOUT_EDGES if edges else ""
    yield (elevation, *edges), ""
    elevation = replace(elevation, low=_fewer(elevation.low, 2))
    yield (elevation, *(replace(edge, high=_fewer(edge.high, 2)) for edge in edges)), ""
    yield (elevation, *(replace(edge, high=_fewer(edge.high, 1)) for edge in edges)), ""
    if edges:  # drawn with numbers alone they still tell what differs from leaf to leaf
        least = replace(elevation, low=_fewer(elevation.low, 1)).without_words()
        yield (least, *(replace(edge, high=_fewer(edge.high, 1)).without_words() for edge in edges)), ""
    yield (elevation,), without
    yield (elevation.without_words(),), without
    yield (_briefest(elevation),), _WITHOUT_HEIGHTS


def _fewer(side: Side, count: int) -> Side:
    """Return a side with only its first `count` strings, those nearest to what they measure."""
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
    chosen = next(index for index, (points, _) in enumerate(tried) if index and points >= least - TOLERANCE)
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
    numbers = [hinges.number(index) for index in range(len(hinges.places))]
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


def elevation_notes(
    study: Study, leaves: Sequence[LeafShown], display: Display, left_out: str
) -> tuple[Note, ...]:
    """Return the notes of an elevation sheet; `left_out` says what had no room on it."""
    said = study_notes(study, display)
    locations = list(_locations(study, leaves, display))
    if left_out:
        locations.append(left_out)
    return (*said[:2], Note("Hinge locations", tuple(locations)), *said[2:])


def _locations(study: Study, leaves: Sequence[LeafShown], display: Display) -> Iterator[str]:
    if not any(shown.hinges for shown in leaves) and any(shown.turns_on for shown in leaves):
        yield from _other_way(study, leaves, display)
        return
    if not any(shown.hinges for shown in leaves):
        yield "No hinges are chosen here for this opening, so none are located."
        return
    yield _DATUM
    yield _by_what(study, display)
    yield from _how_exact(study, display)
    yield _MAKERS
    if any(shown.hinges and shown.hinges.electric for shown in leaves):
        yield "Electric: that hinge carries wires; its mortises need room for them."
    yield from _set_by_others(study, leaves, display)
    yield "The dashed lines meet at the edge that is hung. * assumed, not given."


def _set_by_others(study: Study, leaves: Sequence[LeafShown], display: Display) -> Iterator[str]:
    """Say where lock and strike are, and what of a lite has no place; template and schedule decide both."""
    if (lock := lock_shown(study.filled, leaves)) is not None:
        backset = "" if lock.backset is None else f", backset {display.exact(lock.backset)}"
        usual = " (* the lever's usual place)" if lock.assumed else ""
        yield (
            f"Lock and strike centred {display.exact(lock.height)} above the floor{backset}{usual}; their "
            "templates decide."
        )
    if study.opening.door.lite_width and lite_shown(study.filled, leaves[0]) is None:
        yield "The lite's place in the door was not given, so it is not drawn."


def _other_way(study: Study, leaves: Sequence[LeafShown], display: Display) -> Iterator[str]:
    """Say where along the height it is that a door without butts turns on."""
    way = way_hung_on(study.opening)
    assert way is not None
    across = display.exact(abs(leaves[0].axis - leaves[0].jamb))
    match row_of(WayRow, way.hung_on).turns_on:
        case "full length":
            lengths = " and ".join(dict.fromkeys(display.exact(one.leaf.height) for one in leaves))
            yield f"{capitalized(an(way.words))} runs the whole height of the door: {lengths}, cut to it."
        case "pivots":
            yield (
                f"{capitalized(way.words)}: a top and a bottom one in one plumb line, {across} from the "
                "rabbet. An intermediate one, where there is any, stands where its drawing has it."
            )
        case _:
            yield (
                f"{capitalized(way.words)}: {len(leaves[0].turns_on)} a leaf, drawn where hinges are usual. "
                "How high they are and where they sit is on their drawing."
            )
    yield (
        "Drawn, not measured: the maker's drawing decides over this sheet. The dashed lines meet at the edge "
        "that is hung. * assumed, not given."
    )


def _how_exact(study: Study, display: Display) -> Iterator[str]:
    """Say how far hinges of a wood door may be off; of steel no figure could be read."""
    if fastening_of(study.opening.door.construction, study.opening.frame.kind).door_family == "wood":
        row = next(row for row in table(ToleranceRow) if row.key == "hinge_backset" and row.made_of == "wood")
        within = display.exact(row.value)
        yield f"On the wood door each within {within} of its place [{cited(row.source, row.mark)}]."


def _by_what(study: Study, display: Display) -> str:
    given = study.opening.hinge_locations
    if given.tops:
        return "Places as typed, measured from the head rabbet down to the top of each hinge."
    rule = given.rule or USUAL_RULE
    top, bottom = rows_of_rule(rule)
    taken = "" if given.rule else " (* usual; none was given)"
    split = ""
    if study.opening.leaves == "dutch":
        beside = row_of_place("above split")
        split = (
            f" Beside a Dutch door's split line {display.exact(beside.distance)} above and below it "
            f"[{cited(beside.source, beside.mark)}]."
        )
    return (
        f"By the {rule} rule{taken}: the top hinge's top {display.exact(top.distance)} below the head "
        f"rabbet, the bottom hinge's bottom {display.exact(bottom.distance)} above the floor, the rest "
        f"equally spaced [{cited(top.source, top.mark)}].{split}"
    )
