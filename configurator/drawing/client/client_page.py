"""The client's page, upright: the picture with its verdicts and advice, the hinges, and what is to be noted.

All in everyday words; what is the workshop's stands on the plan. What is only assumed is said to be.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box, View
from configurator.drawing.client.client_picture import (
    ClientPicture,
    client_picture,
    turning_groups,
    turning_note_groups,
)
from configurator.drawing.pages.frame import MARGIN, Cell, title_block
from configurator.drawing.pages.notes import Note, cut_to, least_height, notes_column, value_words
from configurator.drawing.pages.page import (
    FITTED,
    POINTS_PER_INCH,
    Detail,
    Page,
    Paper,
    Scale,
    fitted_or_asked,
)
from configurator.model import JobFacts, Shop
from configurator.model.paths import plain_name
from configurator.study import Study
from configurator.units import Display
from configurator.wording.client_words import client_cautions, door_named, recommendation, thing_named

_EDGE = 12.0
_BLOCK = 48.0
_HEAD = 46.0
_TITLE = 17.0
_LETTERS = 1 / 70
"""Largest type of the picture, of the paper's height."""
_NOTES, _MOST_NOTES = 0.2, 0.4
"""Shares of the page that are kept for what is to be noted: at least, and at most where so much is needed."""
_LOGO = (150.0, 34.0)
"""The room for a logo, points wide and high."""
_NO_SHOP = Shop()
DEFER = (
    "This page is no approval: rules for buildings and fire doors, and whoever answers for them, go before "
    "it. Everything is measured at the door before anything is made."
)


def client_page(
    study: Study,
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    number: tuple[int, int] = (1, 1),
    shop: Shop = _NO_SHOP,
    also: Sequence[str] = (),
) -> Page:
    """Return the page for the client, upright on the paper.

    A scale of None is as large as there is room for. `shop` hands it out; `also` are further lines under the
    advice, as what it costs. Raises ValueError where the scale asked for does not fit, or there is no width
    to draw.
    """
    upright = paper if paper.height >= paper.width else paper.turned()
    border = Box(0.0, 0.0, *upright.points).shrunk(MARGIN)
    room = Box(border.left, border.bottom + _BLOCK, border.right, border.top - _HEAD)
    noted = _notes(study, display)
    share = max(_NOTES, (least_height(noted, room.width - 2 * _EDGE) + 14.0) / room.height)
    base = room.bottom + min(share, _MOST_NOTES) * room.height
    box = Box(room.left, base, room.right, room.top)
    picture = _laid_out(study, display, box, scale, upright, also)
    details, lettered = _on_paper(picture, (box.left, box.bottom), scale)
    notes = notes_column(noted, Box(room.left + _EDGE, room.bottom + 6.0, room.right - _EDGE, base - 4.0))
    block = Box(border.left, border.bottom, border.right, border.bottom + _BLOCK)
    furniture = (
        *lettered,
        Polyline("A-ANNO-BRDR", rectangle(border.left, border.right, border.bottom, border.top), closed=True),
        *_head(study, job, border, display, shop),
        *notes,
        *title_block(_cells(study, job, number), block),
    )
    title = f"{study.opening.mark} for the client"
    return Page(title, upright, details, furniture, display.metric, _logo(shop, border))


def _logo(shop: Shop, border: Box) -> tuple[Path, Box] | None:
    if shop.logo is None:
        return None
    right, top = border.right - _EDGE, border.top - 6.0
    return shop.logo, Box(right - _LOGO[0], top - _LOGO[1], right, top)


def client_notes(study: Study, display: Display) -> tuple[Note, ...]:
    """Return what a client is to note: warnings, what was not measured, whose word goes first."""
    assumed = study.filled.assumed
    told = [
        f"{_named(path, study)} {value_words(path, one.value, display)}"
        for path, one in assumed.items()
        if one.value is not False and one.value is not None
    ]
    not_so = [plain_name(path) for path, one in assumed.items() if one.value is False]
    told += [f"not told, so taken as no: {', '.join(not_so)}"] if not_so else []
    taken = ("; ".join(told) + ".",) if told else ()
    return (
        Note("Please note", client_cautions(study), warns=True),
        Note("Not measured yet, taken as usual", taken, lists=True),
        Note("Before anything is made", (DEFER,), stays=True),
    )


def _named(path: str, study: Study) -> str:
    """Return what a client calls what was assumed; of a thing beside the door, whose it is."""
    listed, _, rest = path.partition(".")
    if listed not in ("obstructions", "hardware") or not rest:
        return plain_name(path)
    place = int(rest.partition(".")[0])
    kind = (
        thing_named(study.opening.obstructions[place].kind)
        if listed == "obstructions"
        else study.opening.hardware[place].kind
    )
    return f"{kind}, {plain_name(path)}"


def _notes(study: Study, display: Display) -> tuple[Note, ...]:
    cautions, taken, first = client_notes(study, display)
    return (Note("What we recommend", recommendation(study, display)), cautions, taken, first)


def _laid_out(
    study: Study, display: Display, box: Box, scale: Scale | None, paper: Paper, also: Sequence[str]
) -> ClientPicture:
    letters = _LETTERS * paper.points[1]
    picture = client_picture(study, display, box.width, box.height, letters, also)
    if scale is None:
        return picture
    fits = picture.panels[0].room.view.scale
    asked = fitted_or_asked(fits, scale, paper, display.metric)
    return client_picture(study, display, box.width, box.height, letters, also, asked.points)


def _on_paper(
    picture: ClientPicture, at: Point, asked: Scale | None
) -> tuple[tuple[Detail, ...], tuple[Primitive, ...]]:
    """Return rooms and magnifiers as details of the page, and all that is lettered about them."""
    angle = picture.end
    groups = (
        *picture.still,
        *turning_groups(picture, angle),
        *picture.notes,
        *turning_note_groups(picture, angle),
    )
    drawn: dict[View, list[Primitive]] = {}
    about: list[Primitive] = []
    for group in groups:
        if group.view.scale == 1.0 and group.view.origin == (0.0, 0.0):
            about += [_moved(item, at) for item in group.primitives]
        else:
            drawn.setdefault(group.view, []).extend(group.primitives)
    rooms = {one.room.view: one.title for one in picture.panels}
    details = tuple(
        Detail(
            rooms.get(view, "magnified"),
            asked if asked is not None and view in rooms else Scale(FITTED, view.scale / POINTS_PER_INCH),
            _view_moved(view, at),
            tuple(parts),
        )
        for view, parts in drawn.items()
    )
    return details, tuple(about)


def _view_moved(view: View, at: Point) -> View:
    x, y = at
    window = view.window
    moved = Box(window.left + x, window.bottom + y, window.right + x, window.top + y)
    return View(view.scale, (view.origin[0] + x, view.origin[1] + y), view.mirrored, moved)


def _moved(item: Primitive, at: Point) -> Primitive:
    x, y = at
    match item:
        case Text():
            return replace(item, at=(item.at[0] + x, item.at[1] + y))
        case Arc():
            return replace(item, centre=(item.centre[0] + x, item.centre[1] + y))
        case Polyline() | Polygon():
            return replace(item, points=tuple((a + x, b + y) for a, b in item.points))
        case _:
            raise TypeError(f"the client's picture has no {type(item).__name__} on its sheet")


def _head(study: Study, job: JobFacts, border: Box, display: Display, shop: Shop) -> Iterator[Primitive]:
    opening, filled = study.opening, study.filled
    left, room = border.left + _EDGE, border.width - 2 * _EDGE
    size = display.opening(filled.opening_width, filled.opening_height)
    whose = ", ".join(words for words in (job.name, f"door {size}") if words)
    beside = _LOGO[0] + _EDGE if shop.logo is not None else 0.0
    if shop.name:
        name = cut_to(shop.name, 11.0, 0.4 * room, True)
        yield Text(
            "A-ANNO-TTLB", (border.right - _EDGE - beside, border.top - 25.0), name, 11.0, "end", bold=True
        )
        beside += text_width(name, 11.0, True) + _EDGE
    where = cut_to(door_named(opening), _TITLE, room - beside, True)
    yield Text("A-ANNO-TTLB", (left, border.top - 25.0), where, _TITLE, bold=True)
    yield Text("A-ANNO-NOTE", (left, border.top - 38.0), cut_to(whose, 9.0, room - beside), 9.0)


def _cells(study: Study, job: JobFacts, number: tuple[int, int]) -> tuple[tuple[Cell, ...], ...]:
    opening = study.opening
    status = "assumed, not yet measured" if opening.status == "assumed" else opening.status
    return (
        (
            Cell("Job", job.name or "", 3.0, True),
            Cell("Client", job.client or "", 2.6),
            Cell("Door", opening.mark, 1.2, True),
            Cell("Sizes", status, 2.4),
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
