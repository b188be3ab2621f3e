"""Sheets of a whole job: plans of several openings on one, with keynotes, and the index of all sheets.

A sheet of several has a cell for each opening with the plan of the hinge that is recommended, true to scale.
What is to be heeded is written once, as a keynote; its number stands in a circle by each opening it is of. An
opening whose plan would be too small in a cell has a sheet of its own.
"""

import math
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Arc, Dimension, Polyline, Primitive, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.frame import Cell, drawing_box, frame_about, triangle
from configurator.drawing.pages.notes import DEFER, Note, cut_to
from configurator.drawing.pages.page import Detail, Page, Paper, Scale
from configurator.drawing.pages.plan_page import Plan, plan_in
from configurator.drawing.pages.tables import keys_of
from configurator.model import Issue, Job, JobFacts, Revision
from configurator.order.revisions import issues_of
from configurator.study import Study
from configurator.units import Display
from configurator.wording.hinge_order_line import order_lines

_LEAST_CELL = (240.0, 225.0)
_GUTTER, _HEAD = 14.0, 30.0
_MARK, _FACTS, _KEY = 10.0, 6.5, 6.0
_CIRCLE = 5.5
_ROW, _TYPE = 13.0, 7.5
_UNDER = 50.0
"""Kept under the plans for the names of dimensions that have no room for words, points."""
_BARE = re.compile(r"[\d./-]+ (in|mm)")
"""A dimension that has its number alone."""
Tags = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class _Placed:
    """An opening in its cell."""

    study: Study
    box: Box
    plan: Plan
    issues: tuple[Issue, ...]


def plans_together(
    studies: Iterable[Study],
    job: JobFacts,
    paper: Paper,
    scale: Scale | None,
    display: Display,
    alone: Callable[[Study, int], Page],
    tags: Callable[[Study, Display], Tags],
    revisions: Sequence[Revision] = (),
) -> Iterator[Page]:
    """Yield sheets with as many openings as have room, in their order.

    `alone` makes the sheet, of a number, of an opening that has no room in a cell; `tags` says what it is.
    Raises ValueError where the scale asked for does not fit the paper.
    """
    cells, number = _cells(paper), 0
    waiting: list[_Placed] = []
    for study in studies:
        box = cells[len(waiting)]
        plan = _plan_in(study, box, scale, paper, display)
        if plan is not None:
            waiting.append(_Placed(study, box, plan, issues_of(study.opening, revisions)))
        if len(waiting) == len(cells):
            number += 1
            yield _together(waiting, job, paper, display, number, tags)
            waiting = []
        if plan is None:
            number += 1
            yield alone(study, number)
    if waiting:
        yield _together(waiting, job, paper, display, number + 1, tags)


def _cells(paper: Paper) -> list[Box]:
    room = drawing_box(paper)
    columns = max(int((room.width + _GUTTER) / (_LEAST_CELL[0] + _GUTTER)), 1)
    rows = max(int((room.height + _GUTTER) / (_LEAST_CELL[1] + _GUTTER)), 1)
    wide = (room.width - (columns - 1) * _GUTTER) / columns
    high = (room.height - (rows - 1) * _GUTTER) / rows
    lefts = [room.left + column * (wide + _GUTTER) for column in range(columns)]
    tops = [room.top - row * (high + _GUTTER) for row in range(rows)]
    return [Box(left, top - high, left + wide, top) for top in tops for left in lefts]


def _under_head(box: Box) -> Box:
    return Box(box.left, box.bottom, box.right, box.top - _HEAD)


def _plan_in(study: Study, box: Box, scale: Scale | None, paper: Paper, display: Display) -> Plan | None:
    """Return the plan in a cell, higher up where what is named under it needs the room."""
    room = _under_head(box)
    plan = plan_in(study, room, scale, paper, display)
    if plan is None or all(_has_room_under(*both, box, study, display) for both in _by_leaf(plan)):
        return plan
    over = Box(room.left, room.bottom + _UNDER, room.right, room.top)
    return plan_in(study, over, scale, paper, display) or plan


def _by_leaf(plan: Plan) -> Iterator[tuple[Detail, Detail]]:
    """Yield each leaf's plan at the hinge with its small plan."""
    return zip(plan.details[::2], plan.details[1::2], strict=False)


def _has_room_under(plan: Detail, small: Detail, box: Box, study: Study, display: Display) -> bool:
    return small.view.window.bottom - box.bottom >= _UNDER or not list(_to_name(plan, study, display))


def _to_name(plan: Detail, study: Study, display: Display) -> Iterator[str]:
    """Yield what the plan has room for as a number only: dimensions, and things by their keys."""
    for one in plan.primitives:
        if isinstance(one, Dimension) and _BARE.fullmatch(one.text):
            yield f"{one.text} {one.name}"
    lettered = {one.text for one in plan.primitives if isinstance(one, Text)}
    for label, key in keys_of(study, display).items():
        if key in lettered:
            yield f"{key}: {label}"


def _together(
    placed: Sequence[_Placed],
    job: JobFacts,
    paper: Paper,
    display: Display,
    number: int,
    tags: Callable[[Study, Display], Tags],
) -> Page:
    keys = _keynotes([one.study for one in placed], display)
    details = tuple(
        replace(detail, opening=tags(one.study, display), name=f"{one.study.opening.mark}, {detail.name}")
        for one in placed
        for detail in one.plan.details
    )
    scales = sorted({detail.scale for detail in details}, key=lambda one: -one.ratio)
    marks = ", ".join(one.study.opening.mark for one in placed)
    drawing = f"Plans at the hinge: {marks}"
    frame = frame_about(
        paper, _block(job, drawing, number), display, scales[:4], _notes(placed, keys), _issues(placed)
    )
    parts = [
        part
        for one in placed
        for part in (*_head(one, keys, display), *one.plan.parts, *_named(one, display))
    ]
    return Page(f"{marks} plans", paper, details, (*frame, *parts), display.metric)


def _issues(placed: Sequence[_Placed]) -> tuple[Issue, ...]:
    """Return the revisions of the openings on a sheet, each once; changed where one of them was."""
    found: dict[str, Issue] = {}
    for each in (issue for one in placed for issue in one.issues):
        known = found.get(each.number)
        found[each.number] = each if known is None or each.changed else known
    return tuple(sorted(found.values(), key=lambda one: (not one.number, int(one.number or 0))))


def _named(one: _Placed, display: Display) -> Iterator[Primitive]:
    """Name what had no room for its words in the plan, under the small plan of its leaf."""
    for plan, small in _by_leaf(one.plan):
        window = small.view.window
        base = window.bottom - 10.0
        for words in _to_name(plan, one.study, display):
            if base > one.box.bottom:
                yield Text("A-ANNO-NOTE", (window.left, base), cut_to(words, _KEY, window.width), _KEY)
                base -= 1.35 * _KEY


def _keynotes(studies: Sequence[Study], display: Display) -> Mapping[str, tuple[int, bool]]:
    """Return each sentence to heed with its number, and whether it is an error's; errors come first."""
    found: dict[str, tuple[int, bool]] = {}
    for study in studies:
        for severity in ("error", "warning"):
            for one in study.all_findings():
                if one.severity == severity:
                    found.setdefault(one.said(display), (len(found) + 1, severity == "error"))
    return found


def _notes(placed: Sequence[_Placed], keys: Mapping[str, tuple[int, bool]]) -> tuple[Note, ...]:
    keynotes = tuple(f"{number}  {sentence}" for sentence, (number, _) in keys.items())
    hinges = tuple(line.text for one in placed for line in order_lines(one.study))
    read = "Seen from above, pull side up. A number in a circle is that of a keynote. The widths compared, "
    read += "and what was assumed, stand on each opening's own sheet."
    return (
        Note("Keynotes", keynotes, warns=True),
        Note("Hinges", hinges),
        Note("How to read the plans", (read,)),
        Note("Before use", (DEFER,), stays=True),
    )


def _head(one: _Placed, keys: Mapping[str, tuple[int, bool]], display: Display) -> Iterator[Primitive]:
    """The mark and its place, what the opening is, and its keynotes in circles at the right."""
    opening, box = one.study.opening, one.box
    said = dict.fromkeys(each.said(display) for each in one.study.all_findings())
    own = [keys[text] for text in said if text in keys]
    right = box.right
    for number, is_error in sorted(own, reverse=True):
        if right - 2 * _CIRCLE < box.left + box.width / 2:
            break
        yield from _bubble((right - _CIRCLE, box.top - 7.0), str(number), is_error)
        right -= 2 * _CIRCLE + 3.0
    changed = [each.number for each in one.issues if each.changed]
    if changed:
        yield from triangle((right - _CIRCLE, box.top - 7.0), changed[-1])
        right -= 2 * _CIRCLE + 3.0
    wide = text_width(opening.mark, _MARK, bold=True)
    yield Text("A-ANNO-TTLB", (box.left, box.top - 10.0), opening.mark, _MARK, bold=True)
    place = cut_to(opening.location or "", _FACTS, right - box.left - wide - 8.0)
    yield Text("A-ANNO-TEXT", (box.left + wide + 6.0, box.top - 10.0), place, _FACTS)
    size = display.opening(one.study.filled.opening_width, one.study.filled.opening_height)
    many = f", {opening.quantity} alike" if opening.quantity > 1 else ""
    words = f"{size}, {opening.hand or 'hand not given'}, {opening.leaves}{many}"
    yield Text("A-ANNO-NOTE", (box.left, box.top - 19.0), cut_to(words, _FACTS, box.width), _FACTS)
    line = box.top - 23.0
    yield Polyline("A-ANNO-LEAD", ((box.left, line), (box.right, line)))


def _bubble(middle: tuple[float, float], number: str, is_error: bool) -> tuple[Primitive, ...]:
    layer = "A-ANNO-REDL" if is_error else "A-ANNO-TEXT"
    x, y = middle
    circle = Arc("A-ANNO-LEAD", middle, _CIRCLE, 0.0, 2 * math.pi)
    return circle, Text(layer, (x, y - 0.36 * _KEY), number, _KEY, "middle")


def _block(job: JobFacts, drawing: str, number: int) -> tuple[tuple[Cell, ...], ...]:
    above = (
        Cell("Job", job.name or "", 3.2, True),
        Cell("Client", job.client or "", 3.0),
        Cell("Drawing", drawing, 7.5, True),
    )
    below = (
        Cell("Job number", job.number or "", 1.2),
        Cell("Prepared by", job.prepared_by or "", 1.7),
        Cell("Date", job.date or "", 1.2),
        Cell("Revision", job.revision or "", 0.8),
        Cell("Scale", "as shown" if number else "none", 1.6),
        Cell("Sheet", str(number) if number else "index", 0.9),
    )
    return above, below


# --- The index ---

HEADINGS = ("Sheet", "Opening", "Location", "Size", "Hand", "Hinge", "Revision", "Drawing")
_SHARES = (0.8, 1.0, 3.4, 1.8, 0.8, 2.0, 1.0, 2.2)


def with_index(pages: Sequence[Page], job: Job, paper: Paper, display: Display, drawing: str) -> list[Page]:
    """Return the sheets of a job after the index of them, which is a page or several.

    `drawing` says what the sheets show. An opening stands where its own sheet, or the one it shares, is.
    """
    rows = list(_index_rows(pages, job, drawing))
    room = drawing_box(paper)
    most = max(int(room.height / _ROW) - 2, 1)
    chunks = [rows[start : start + most] for start in range(0, len(rows), most)] or [[]]
    made = [_index_page(chunk, job, paper, display, count) for count, chunk in enumerate(chunks, 1)]
    return [*made, *pages]


def _index_rows(pages: Sequence[Page], job: Job, drawing: str) -> Iterator[tuple[str, ...]]:
    openings = {one.mark: one for one in job.openings}
    for number, page in enumerate(pages, 1):
        told = [page.opening] if page.opening else [detail.opening for detail in page.details]
        for tags in dict.fromkeys(filter(None, told)):
            said = dict(tags)
            opening = openings[said["MARK"]]
            changed = [one.number or "changed" for one in issues_of(opening, job.revisions) if one.changed]
            yield (
                str(number), said["MARK"], opening.location or "", said["SIZE"], said["HAND"], said["HINGE"],
                changed[-1] if changed else "", drawing,
            )  # fmt: skip


def _index_page(
    rows: Sequence[tuple[str, ...]], job: Job, paper: Paper, display: Display, count: int
) -> Page:
    room = drawing_box(paper)
    lefts = [room.left + room.width * sum(_SHARES[:place]) / sum(_SHARES) for place in range(len(_SHARES))]
    parts: list[Primitive] = []
    for place, row in enumerate((HEADINGS, *rows)):
        base = room.top - _TYPE - place * _ROW
        for left, right, text in zip(lefts, [*lefts[1:], room.right], row, strict=True):
            words = cut_to(text, _TYPE, right - left - 5.0, bold=place == 0)
            parts += [Text("A-ANNO-TEXT", (left, base), words, _TYPE, bold=place == 0)] if words else []
        layer = "A-ANNO-LEAD" if place == 0 else "A-ANNO-BRDR-PICT"
        parts.append(Polyline(layer, ((room.left, base - 3.5), (room.right, base - 3.5))))
    told = "Each opening with the sheet that shows it. A revision is the last that changed the opening."
    cells = _block(job.job, "Index of sheets", 0)
    notes = (Note("How to read the index", (told,)), Note("Before use", (DEFER,), stays=True))
    frame = frame_about(paper, cells, display, (), notes)
    title = "Index of sheets" + (f" {count}" if count > 1 else "")
    return Page(title, paper, (), (*frame, *parts), display.metric)
