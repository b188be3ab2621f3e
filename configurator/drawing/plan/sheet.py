"""The sheet: one panel a candidate, all at one scale, with headings, and a foot that says how to read it.

A sheet that goes out as a file says at its foot whose opening it is.
"""

import math
import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from configurator.drawing.base.lettering import fitted, text_width
from configurator.drawing.base.primitives import Point, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import AS_FRAMED, Box, Framing, Group, paper
from configurator.drawing.plan.alike import clear_width_alike, notes_alike, parts_alike
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, degrees, drawn_leaves, turns_clockwise
from configurator.drawing.plan.panel import (
    Panel,
    moving_parts,
    panel,
    small_picture,
    spare_height,
    view_scale,
)
from configurator.model import JobFacts
from configurator.rules.wording import leaf_named
from configurator.sentences import capitalized
from configurator.study import Candidate, Study
from configurator.units import TOLERANCE, Display, format_size

MARGIN = 8.0
GUTTER = 8.0
HEADING = 32.0
_TITLE, _SUBTITLE = 11.0, 8.5
RECOMMENDED = ", recommended"
_SHAPE = 1.05
"""Width of a panel to its height that shows most of the hinge."""
FOOT = 16.0
FOOT_OF_FILE = 27.0
"""Points kept below the panels: for one line, and for two."""
_FOOT_SIDE = 8.0
_FOOT_BASE = 4.5
_FOOT_TYPE = 7.0
_BAR = 60.0
"""A scale bar is no longer than this where a shorter one will do, points."""
_CLOSE = 160.0
"""Points an inch up to which the second of the usual bars is taken, however long."""
_BAR_ROOM = 90.0


@dataclass(frozen=True, slots=True)
class Sheet:
    """A whole picture but for what turns: width and height in points, its panels, and what stands still."""

    width: float
    height: float
    display: Display
    panels: tuple[Panel, ...]
    windows: tuple[Box, ...]
    still: tuple[Group, ...]
    notes: tuple[Group, ...]


def plan_sheet(
    study: Study,
    display: Display,
    width: float,
    height: float,
    job: JobFacts | None = None,
    plain: bool = False,
    swept: bool = False,
    framing: Framing = AS_FRAMED,
    kinds: Collection[str] = (),
) -> Sheet:
    """Lay out the plan of every candidate on a sheet of that width and height, points.

    With the facts of a job the foot names the opening and the job, so that the sheet can go out by itself.
    `plain` letters the dimensions in plain words instead of the trade's; `swept` shows what leaf and hardware
    sweep; `framing` shows every panel larger, and moved alike; `kinds` are those of `part_dimensions`.
    """
    below = FOOT if job is None else FOOT_OF_FILE
    windows = panel_windows(len(study.candidates), width, height, below)
    hungs = drawn_leaves(study, display)
    scale = min((view_scale(h, w.width, w.height) for h, w in zip(hungs, windows, strict=True)), default=1.0)
    spare = min((spare_height(h, w, scale) for h, w in zip(hungs, windows, strict=True)), default=0.0)
    panels = clear_width_alike(
        _panel_of(study, candidate, hung, window, scale, spare, display, plain, swept, framing, kinds)
        for candidate, hung, window in zip(study.candidates, hungs, windows, strict=True)
    )
    panels = parts_alike(panels) if kinds else panels
    whole = paper(width, height)
    still = [Group(whole, tuple(_ground(window) for window in windows))]
    still += [Group(one.main.view, one.main.still) for one in panels]
    insets = [Group(one.inset.view, one.inset.still) for one in panels if one.inset]
    inset_windows = [one.inset.view.window for one in panels if one.inset]
    borders = [_border(window) for window in (*windows, *inset_windows)]
    furniture = (*borders, *foot(study, display, scale * framing.zoom, width, job), *_titles(panels, windows))
    notes = [Group(one.main.view, one.main.notes) for one in panels]
    return Sheet(
        width, height, display, panels, windows, (*still, *insets), (*notes, Group(whole, furniture))
    )


def moving_groups(sheet: Sheet, angle: float) -> tuple[Group, ...]:
    """Return what turns with the leaves at `angle` degrees, each leaf no farther than it goes."""
    turn = math.radians(angle) if angle < 180.0 else math.pi
    groups = [Group(one.main.view, moving_parts(one, turn)) for one in sheet.panels]
    insets = (small_picture(one, turn, sheet.display) for one in sheet.panels)
    return (*groups, *(Group(*inset) for inset in insets if inset is not None))


def moving_note_groups(sheet: Sheet, angle: float) -> tuple[Group, ...]:
    """Return the notes that change with the angle: contacts, clearances, and the line under each heading."""
    turn = math.radians(angle) if angle < 180.0 else math.pi
    groups = notes_alike(sheet.panels, turn, sheet.display)
    lines = tuple(
        line
        for one, window in zip(sheet.panels, sheet.windows, strict=True)
        for line in _subtitle(one, window, turn, sheet.display)
    )
    return (*groups, Group(paper(sheet.width, sheet.height), lines))


def panel_windows(count: int, width: float, height: float, below: float = FOOT) -> tuple[Box, ...]:
    """Return a window for each panel, in the rows that show most of each hinge, over `below` free points."""
    if count == 0:
        return ()
    columns = max(range(1, count + 1), key=lambda n: _usable(count, n, width, height))
    rows = math.ceil(count / columns)
    across = (width - 2 * MARGIN - (columns - 1) * GUTTER) / columns
    down = (height - MARGIN - below - (rows - 1) * GUTTER) / rows
    boxes = []
    for number in range(count):
        left = MARGIN + (number % columns) * (across + GUTTER)
        top = height - MARGIN - (number // columns) * (down + GUTTER)
        boxes.append(Box(left, top - down, left + across, top - HEADING))
    return tuple(boxes)


def _usable(count: int, columns: int, width: float, height: float) -> float:
    rows = math.ceil(count / columns)
    return min(width / columns / _SHAPE, height / rows - HEADING)


def _panel_of(
    study: Study,
    candidate: Candidate,
    hung: DrawnLeaf,
    window: Box,
    scale: float,
    spare: float,
    display: Display,
    plain: bool,
    swept: bool,
    framing: Framing,
    kinds: Collection[str],
) -> Panel:
    title = heading(study, candidate, display)
    hand = hand_words(study, candidate)
    clear = candidate.clear_width_at_90
    return panel(
        hung, window, scale, spare, display, title, hand, clear, plain, swept, framing=framing, kinds=kinds
    )


def heading(study: Study, candidate: Candidate, display: Display) -> str:
    """Return a panel's heading: the hinge's size, height first, and which leaf where there are two."""
    chosen = {one.leaf: one.parts for one in study.specification.leaves}
    if candidate.way is not None:
        return capitalized(candidate.name) + leaf_named(candidate.leaf, ", {}")
    size = f"{format_size(candidate.hinge_width)} in open width"
    if (parts := chosen.get(candidate.leaf)) is not None:
        size = f"{display.size(parts['height'].value, candidate.hinge_width)} hinge"
        if parts["width"].value == candidate.hinge_width and not study.errors:
            size += RECOMMENDED
    return size + leaf_named(candidate.leaf, ", {}")


def hand_words(study: Study, candidate: Candidate | None = None) -> str:
    """Return the hand, and which side of the small picture is outside; empty where no hand was given.

    A candidate that swings to the push side is drawn with that side up.
    """
    hand = study.filled.opening.hand
    if hand is None:
        return ""
    turned = candidate is not None and candidate.to_push
    return f"{hand}, outside {'below' if (hand in ('LH', 'RH')) != turned else 'above'}"


def _ground(window: Box) -> Polygon:
    return Polygon("A-ANNO-BRDR-PICT", _corners(window), "paper", outlined=False)


def _border(window: Box) -> Polyline:
    """The border goes over everything that is cut off at it."""
    return Polyline("A-ANNO-BRDR-PICT", _corners(window), closed=True)


def _corners(window: Box) -> tuple[Point, ...]:
    return rectangle(window.left, window.right, window.bottom, window.top)


def _titles(panels: Sequence[Panel], windows: Sequence[Box]) -> list[Primitive]:
    """Return the headings, all in the fullest wording that every panel has room for."""
    forms = [_wordings(one.title) for one in panels]
    form = max((_first_fitting(*one) for one in zip(forms, windows, strict=True)), default=0)
    return [
        Text("A-ANNO-TTLB", (window.left + 1.0, window.top + 18.0), *forms[number][form], bold=True)
        for number, window in enumerate(windows)
    ]


def _wordings(title: str) -> tuple[tuple[str, float], ...]:
    """Return the ways to letter a heading, the fullest first, each with its size in points."""
    if title[0].isdigit():
        short = title.replace(" hinge", "").replace(" leaf", "")
        brief = short.replace(RECOMMENDED, "")
    else:  # another way of hanging, with its axis in brackets
        short = re.sub(r" \(.*?\)", "", title)
        brief = short.replace(", to the ", ", ").replace(" side", "").replace(" leaf", "")
        return (title, _TITLE), (short, _TITLE), (brief, _TITLE), (brief, _SUBTITLE)
    return (title, _TITLE), (short, _TITLE), (short, _SUBTITLE), (brief, _SUBTITLE)


def _first_fitting(forms: Sequence[tuple[str, float]], window: Box) -> int:
    fitting = (n for n, (words, size) in enumerate(forms) if text_width(words, size, True) <= window.width)
    return next(fitting, len(forms) - 1)


def _subtitle(one: Panel, window: Box, turn: float, display: Display) -> list[Primitive]:
    layer, words = standing_words(one.hung, turn, display, _SUBTITLE, window.width)
    return [Text(layer, (window.left + 1.0, window.top + 5.5), words, _SUBTITLE)]


def standing_words(
    hung: DrawnLeaf, turn: float, display: Display, size: float, width: float
) -> tuple[str, str]:
    """Return words for the leaf's angle, radians, and for what stopped it, that fit a width in points.

    Returns the layer to letter it on, and the words.
    """
    stopped = bool(hung.stopped_by) and turn >= hung.reach - TOLERANCE
    if not stopped:
        words = f"open {display.angle(degrees(turn))}"
        if turn < hung.reach - TOLERANCE:
            words += f", goes to {display.angle(degrees(hung.reach))}"
        return "A-ANNO-TTLB", fitted((words,), size, width)
    words = f"stops at {display.angle(degrees(hung.reach))}: {hung.stopped_by}"
    if hung.held:
        rests = (words.replace("stops at", "rests at"), f"rests at {display.angle(degrees(hung.reach))}")
        return "A-ANNO-TTLB", fitted(rests, size, width)
    bare = hung.reach_bare
    more = f"{words}; the leaf alone goes to {display.angle(degrees(bare))}"
    shorter = (words, words.partition(":")[0])
    choices = (more, *shorter) if bare > hung.reach + TOLERANCE else shorter
    layer = "A-ANNO-REDL" if bare <= hung.reach + TOLERANCE else "A-ANNO-TTLB"
    return layer, fitted(choices, size, width)


def foot(study: Study, display: Display, scale: float, width: float, job: JobFacts | None) -> list[Primitive]:
    """Return the line that says how to read the sheet, its scale bar, and over them whose sheet it is."""
    room = width - 2 * _FOOT_SIDE
    lines = [(_FOOT_BASE, _how_to_read(study, job is None), room - _BAR_ROOM)]
    if job is not None:
        lines.append((_FOOT_BASE + 10.5, _whose_opening(study, display, job), room))
    return [
        *(
            Text("A-ANNO-NOTE", (_FOOT_SIDE + 1.0, base), _as_many_words(words, free), _FOOT_TYPE)
            for base, words, free in lines
        ),
        *_scale_bar(display, scale, width - _FOOT_SIDE, _FOOT_BASE),
    ]


def _as_many_words(words: Sequence[str], room: float) -> str:
    return fitted([" · ".join(words[:count]) for count in range(len(words), 0, -1)], _FOOT_TYPE, room)


def _whose_opening(study: Study, display: Display, job: JobFacts) -> list[str]:
    """Say which opening of which job this is, with the date only where the job gives one."""
    filled = study.filled
    said = (
        f"opening {filled.opening.mark}",
        filled.opening.location,
        display.opening(filled.opening_width, filled.opening_height),
        job.name,
        f"job {job.number}" if job.number else None,
        job.date,
    )
    return [words for words in said if words]


def _how_to_read(study: Study, with_mark: bool) -> list[str]:
    filled = study.filled
    mirrored = all(turns_clockwise(filled, candidate.leaf) for candidate in study.candidates)
    words = [filled.opening.mark] if with_mark else []
    words.append("seen from above, pull side up" + (", hinges right" if mirrored else ""))
    if len(study.candidates) > 1:
        words.append("all at one scale")
    return [*words, "frame and leaf cut as commonly made; only dimensioned parts are measured"]


def _scale_bar(display: Display, scale: float, right: float, base: float) -> list[Primitive]:
    """A drafter's bar in the unit of the dimensions, every other quarter filled."""
    whole, label = _length_of_bar(display, scale)
    left = right - whole * scale
    quarter = whole * scale / 4
    bars: list[Primitive] = []
    for number in range(4):
        x_0 = left + number * quarter
        fill = "steel" if number % 2 else "paper"
        bars.append(Polygon("A-ANNO-LEAD", rectangle(x_0, x_0 + quarter, base, base + 3.0), fill))
    return [
        *bars,
        Polyline("A-ANNO-LEAD", ((left, base), (right, base))),
        Text("A-ANNO-NOTE", (left - 4.0, base - 0.5), label, _FOOT_TYPE, "end"),
    ]


def _length_of_bar(display: Display, scale: float) -> tuple[float, str]:
    """Return how long a bar is, inches, and its length in words: the longest of the usual ones that fits."""
    if display.metric:
        choices = [(mm / 25.4, f"{mm} mm") for mm in (50, 20, 5, 1)]
    else:
        choices = [(inches, f"{format_size(inches)} in") for inches in (2.0, 1.0, 0.25)]
    usual = (one for one in choices if one[0] * scale <= _BAR or (one is choices[1] and scale <= _CLOSE))
    return next(usual, choices[-1])


def bare_plan(study: Study, width: float, height: float) -> tuple[Group, ...]:
    """Return the plans of a study without numbers or angles, for a sheet of that width and height, points.

    The small picture is left out too: its arc ends where the swing does.
    """
    sheet = plan_sheet(study, Display(), width, height)
    ground, *_ = sheet.still
    views = [Group(one.main.view, (*one.main.still, *moving_parts(one, 0.0))) for one in sheet.panels]
    whole = paper(width, height)
    return (Group(whole, ground.primitives), *views)
