"""The sections sheet: jamb, head and sill where they are cut, and the elevation that says where that is."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, String, detail_at, room_of
from configurator.drawing.pages.dimension_string import refuse_crowded
from configurator.drawing.pages.frame import drawing_box, page_frame
from configurator.drawing.pages.notes import Note, study_notes
from configurator.drawing.pages.page import Detail, Page, Paper, Scale, scales
from configurator.drawing.preparation.preparation_parts import LatchShown, section_at_latch
from configurator.drawing.sections.head_and_sill import head_section, sill_section
from configurator.drawing.sections.jamb_section import LAYER, WALL_TOO, jamb_section
from configurator.drawing.sections.keyed_elevation import HEAD, JAMB, LATCH, SILL, keyed_elevation
from configurator.drawing.sections.section import Subject, subject_of
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

_APART = 14.0
"""Between two columns of details, and between two details of one, points."""
_READABLE = 18.0
"""Points an inch, 3 in to the foot: from this scale on words are worth more than size."""
_LEAST_ELEVATION = 70.0
"""An elevation lower than this shows nothing, points."""
Column = tuple[Block, ...]


Row = tuple[Column, ...]


@dataclass(frozen=True, slots=True)
class _Way:
    """Details in columns, those in rows; the elevation stands on top of one column of one row.

    `words` is how many details keep their words, of 3.
    """

    rows: tuple[Row, ...]
    at: tuple[int, int]
    words: int


def sections_page(
    study: Study,
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    number: tuple[int, int] = (1, 1),
) -> Page:
    """Lay out the sections through frame and wall; see `sheets.MakesPage`. The scale is the sections'."""
    subject = subject_of(study, display)
    box = drawing_box(paper)
    details = _details(study, subject, box, scale, paper, display)
    refuse_crowded(details, scale)
    furniture, _ = page_frame(
        paper,
        study,
        job,
        display,
        "Sections of frame and wall",
        [detail.scale for detail in details],
        sections_notes(study, subject, display),
        number,
    )
    return Page(f"{study.opening.mark} sections", paper, details, furniture, display.metric)


def _details(
    study: Study, subject: Subject, box: Box, asked: Scale | None, paper: Paper, display: Display
) -> tuple[Detail, ...]:
    """Return the details as they are best read. Raises ValueError, in words, where a scale does not fit."""
    ways = tuple(_ways(subject))
    best: tuple[tuple[float, ...], tuple[Detail, ...]] = (), ()
    for scale in [asked] if asked is not None else scales(display.metric):
        for way in ways:
            worth = (min(scale.points, _READABLE), way.words, scale.points)
            if worth >= best[0][:3] and (found := _set(study, way, scale, box, display)):
                best = max(best, ((*worth, _worth(found)), found), key=lambda one: one[0])
    if best[1]:
        return best[1]
    if asked is not None:
        raise ValueError(f"{asked.name} does not fit on {paper.name} paper; take another, or none")
    raise ValueError(f"no scale is small enough for {paper.name} paper")


def _worth(details: Sequence[Detail]) -> float:
    """Return a way's worth beside others at its scale: how many details, then how large the elevation."""
    return len(details) + min(one.scale.points for one in details) / 100.0


def _ways(subject: Subject) -> Iterator[_Way]:
    """Yield the ways to set the details, those with most words and details first."""
    whole = (
        jamb_section(subject, f"{JAMB}  Jamb"),
        head_section(subject, f"{HEAD}  Head"),
        sill_section(subject, f"{SILL}  Sill"),
    )
    latch = () if subject.latch is None else (_latch(subject.latch, subject),)
    for words in (3, 2, 1, 0):
        jamb, head, sill = _worded(whole, words)
        for edge in dict.fromkeys((latch, ())):
            upright = (head, sill)
            yield _Way((((), (jamb, *edge), upright),), (0, 0), words)
            yield _Way(((edge, (jamb,), upright),), (0, 0), words)
            yield _Way((((jamb, *edge), upright),), (0, 0), words)
            yield _Way((((), upright, edge), ((jamb,),)), (0, 0), words)
            yield _Way((((), upright), ((jamb,), edge)), (0, 0), words)
            yield _Way((((), (jamb,)), (upright, edge)), (0, 0), words)


def _briefer(string: String) -> String:
    """Return a string of the wall's with its layers by their numbers and its words at the shortest."""
    named = (
        replace(one, words="" if LAYER in one.name else one.words.removesuffix(WALL_TOO))
        for one in string.spans
    )
    return replace(string, spans=tuple(named))


def _latch(shown: LatchShown, subject: Subject) -> Block:
    """Return the latch edge; its letter where the elevation can mark it, at a jamb."""
    edge = section_at_latch(shown, subject.marks, subject.display)
    return edge if shown.other_leaf else replace(edge, name=f"{LATCH}  {edge.name}")


def _worded(blocks: tuple[Block, ...], words: int) -> list[Block]:
    """Return the blocks with less said the fewer `words`.

    First head and sill leave to the jamb what is the jamb's, then layers go by their numbers, then all.
    """
    if words == 3:
        return list(blocks)
    jamb, *upright = blocks
    bare = [replace(one, rows=()) for one in upright]
    if words == 1:
        strings = tuple(_briefer(one) for one in jamb.low.strings)
        jamb = replace(jamb, low=replace(jamb.low, strings=strings))
    return [jamb, *bare] if words else [one.without_words() for one in (jamb, *bare)]


def _set(study: Study, way: _Way, scale: Scale, box: Box, display: Display) -> tuple[Detail, ...]:
    """Return a way's details at a scale, the elevation as large as is left; none where they do not fit."""
    rows = [[[(block, scale) for block in column] for column in row] for row in way.rows]
    sizes = [_row_size(row, display) for row in rows]
    spare = box.height - sum(high for _, high in sizes) - _APART * (len(rows) - 1)
    if spare < 0.0 or any(wide > box.width for wide, _ in sizes):
        return ()
    number, place = way.at
    column, (wide, high) = rows[number][place], sizes[number]
    own_width, own_height = _width(column, display), _height(column, display)
    room = box.width - wide + own_width - (0.0 if own_width else _APART)
    left = high + spare - own_height - (_APART if own_height else 0.0)
    marked = any(block.name.startswith(LATCH) for row in way.rows for column in row for block in column)
    if (elevation := _elevation(study, marked, room, left, scale, display)) is None:
        return ()
    column.insert(0, elevation)
    return _laid(rows, box, display)


def _elevation(
    study: Study, latch: bool, wide: float, high: float, largest: Scale, display: Display
) -> tuple[Block, Scale] | None:
    """Return the elevation at the largest scale there is room for, under the sections'; None for none."""
    for scale in scales(display.metric):
        if scale.points * study.filled.opening_height < _LEAST_ELEVATION:
            return None
        if scale.points < largest.points:
            block = keyed_elevation(study, scale, latch)
            room = room_of((block,), display)
            if room.width_at(scale) <= wide and room.height_at(scale) <= high:
                return block, scale
    return None


_Placed = tuple[Block, Scale]


def _width(column: Sequence[_Placed], display: Display) -> float:
    """Return how wide a column is whose details' origins lie one under another, points."""
    halves = [_about_origin(block, scale, display) for block, scale in column]
    return max((low for low, _ in halves), default=0.0) + max((high for _, high in halves), default=0.0)


def _about_origin(block: Block, scale: Scale, display: Display) -> tuple[float, float]:
    """Return how far a block reaches to the left and right of what its column is lined up by, points."""
    low, high = block.sides(display)
    left, right = low - block.extent.left * scale.points, high + block.extent.right * scale.points
    if block.name[0] not in (HEAD, SILL):  # only head and sill lie over one another in the building
        half = (low + high + block.extent.width * scale.points) / 2
        return half, half
    return left, right


def _height(column: Sequence[_Placed], display: Display) -> float:
    """Return how high a column stands, points."""
    rooms = [room_of((block,), display).height_at(scale) for block, scale in column]
    return sum(rooms) + _APART * max(len(rooms) - 1, 0)


def _row_size(row: Sequence[Sequence[_Placed]], display: Display) -> tuple[float, float]:
    """Return how wide and how high columns side by side are, points."""
    widths = [_width(column, display) for column in row]
    apart = _APART * (sum(1 for width in widths if width) - 1)
    return sum(widths) + apart, max(_height(column, display) for column in row)


def _laid(rows: Sequence[Sequence[Sequence[_Placed]]], box: Box, display: Display) -> tuple[Detail, ...]:
    """Spread the rows over the height of a box, and the columns of each over its width."""
    heights = [_row_size(row, display)[1] for row in rows]
    spare = (box.height - sum(heights)) / len(rows)
    top = box.top
    found: list[Detail] = []
    for row, height in zip(rows, heights, strict=True):
        bottom = top - height - spare
        found += _in_row(row, replace(box, top=top, bottom=bottom), display)
        top = bottom
    return tuple(found)


def _in_row(row: Sequence[Sequence[_Placed]], box: Box, display: Display) -> Iterator[Detail]:
    filled = [column for column in row if column]
    widths = [_width(column, display) for column in filled]
    air = (box.width - sum(widths)) / (len(filled) + 1)
    left = box.left
    for column, width in zip(filled, widths, strict=True):
        left += air
        yield from _column(column, left, box, display)
        left += width


def _column(column: Sequence[_Placed], left: float, box: Box, display: Display) -> Iterator[Detail]:
    axis = left + max(_about_origin(block, scale, display)[0] for block, scale in column)
    heights = [room_of((block,), display).height_at(scale) for block, scale in column]
    gap = (box.height - sum(heights)) / (len(column) + 1)
    top = box.top
    for (block, scale), height in zip(column, heights, strict=True):
        top -= gap
        base = top - height + block.under - block.extent.bottom * scale.points
        start = axis - _about_origin(block, scale, display)[0]
        yield detail_at(block, start, base, replace(box, top=top, bottom=top - height), scale, display)
        top -= height


def sections_notes(study: Study, subject: Subject, display: Display) -> tuple[Note, ...]:
    """Return the notes of a sections sheet, its own after what is severe."""
    said = study_notes(study, display)
    return (*said[:2], Note("Sections", tuple(_sayings(study, subject))), *said[2:])


def _sayings(study: Study, subject: Subject) -> Iterator[str]:
    yield (
        "The sections are cut where the elevation has their marks. The head is drawn as the jamb "
        "turned: where its face is another, the frame's own drawing decides."
    )
    sill = study.opening.sill
    if sill.threshold_height is None:
        yield "No threshold was given, so none is drawn: ask before the undercut is settled."
    if sill.floor_finish is None:
        yield "The floor's finish was not given: the slab under it is not located."
    if subject.hinge is None and subject.way is None:
        yield "No butt hinge is chosen here for this opening, so none is drawn in the jamb."
    yield "Break lines end what goes on. * assumed, not given."
