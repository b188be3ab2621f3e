"""The client's picture on a screen: the two widths side by side, large, each saying how far its door goes."""

import math
from dataclasses import replace

from configurator.drawing.base.lettering import fitted, text_box, text_width
from configurator.drawing.base.primitives import Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box, Group, paper
from configurator.drawing.plan.dimensions import PLAIN, Dimensions, Lettered, is_clear, moving_on_sheet
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaves
from configurator.drawing.plan.panel import Panel, moving_notes, moving_parts, panel, spare_height, view_scale
from configurator.drawing.plan.sheet import RECOMMENDED, hand_words
from configurator.records import dataclass
from configurator.study import Candidate, Study
from configurator.study.widths.width_pair import width_pair
from configurator.units import TOLERANCE, Display
from configurator.wording.client_words import end_words, hinge_title
from configurator.wording.dimension_words import FRAME, Measured, Wording

_EDGE = 8.0
_LINE = 1.45
"""Height of a line of lettering, of its size."""
_LARGER = 1.15
_STEP = 5.0
"""Degrees between the places of the leaf that names keep off."""


@dataclass(frozen=True, slots=True)
class ClientPicture:
    """A whole picture but for what turns: its size and that of its letters in points."""

    width: float
    height: float
    letters: float
    display: Display
    panels: tuple[Panel, ...]
    candidates: tuple[Candidate, ...]
    windows: tuple[Box, ...]
    still: tuple[Group, ...]
    notes: tuple[Group, ...]


def picture_end(study: Study) -> float:
    """Return how far that of the two pictured doors goes that goes farther, degrees."""
    return max(one.rests_at for one in width_pair(study).both)


def client_picture(
    study: Study, display: Display, width: float, height: float, letters: float
) -> ClientPicture:
    """Lay the two widths out side by side on a sheet; width, height and type size in points.

    Raises ValueError where there is no width to draw.
    """
    pair = width_pair(study)
    hungs = drawn_leaves(pair.of(study), display)
    windows = _windows(len(hungs), width, height, letters)
    pairs = list(zip(hungs, windows, strict=True))
    scale = min(view_scale(hung, window.width, window.height) for hung, window in pairs)
    spare = min(spare_height(hung, window, scale) for hung, window in pairs)
    titles = [_title(one, pair.recommended) for one in pair.both]
    panels = tuple(
        _out_of_the_way(client_panel(study, hung, window, scale, spare, display, title, letters))
        for (hung, window), title in zip(pairs, titles, strict=True)
    )
    whole = paper(width, height)
    still = [Group(whole, tuple(_ground(window) for window in windows))]
    still += [Group(one.main.view, one.main.still) for one in panels]
    still.append(Group(whole, tuple(_headings(panels, windows, letters))))  # no leaf ever reaches them
    borders = Group(whole, tuple(map(_border, windows)))
    notes = (*(Group(one.main.view, one.main.notes) for one in panels), borders)
    return ClientPicture(
        width, height, letters, display, panels, pair.both, windows, tuple(still), notes
    )  # fmt: skip


def turning_groups(picture: ClientPicture, angle: float) -> tuple[Group, ...]:
    """Return what turns with the doors at `angle` degrees, each no farther than where it rests."""
    return tuple(
        Group(one.main.view, moving_parts(one, _radians(min(angle, candidate.rests_at))))
        for one, candidate in zip(picture.panels, picture.candidates, strict=True)
    )


def turning_note_groups(picture: ClientPicture, angle: float) -> tuple[Group, ...]:
    """Return the notes that change with the angle: what meets, and the line under each heading."""
    groups = []
    lines = []
    for one, candidate, window in zip(picture.panels, picture.candidates, picture.windows, strict=True):
        turn = _radians(min(angle, candidate.rests_at))
        groups.append(Group(one.main.view, moving_notes(one, turn, picture.display)))
        lines.append(_standing(candidate, window, angle, picture))
    return (*groups, Group(paper(picture.width, picture.height), tuple(lines)))


def _standing(candidate: Candidate, window: Box, angle: float, picture: ClientPicture) -> Text:
    """Say how far open the door stands, and at the end what ends it."""
    ended = angle >= candidate.rests_at - TOLERANCE
    said = (f"open {picture.display.angle(angle)}",)
    words = fitted(end_words(candidate, picture.display) if ended else said, picture.letters, window.width)
    return Text("A-ANNO-TTLB", (window.left, window.top + 0.4 * picture.letters), words, picture.letters)


def _out_of_the_way(one: Panel) -> Panel:
    """Leave the names of what stands there to hovering where the door would turn over one of them."""
    view = one.main.view
    names = [text for text in one.main.notes if isinstance(text, Text)]
    boxes = [text_box(view.to_sheet(x.at), x.text, x.size, x.anchor, x.bold) for x in names]
    steps = round(math.degrees(one.hung.reach) / _STEP) + 1
    places = [one.hung.reach * step / max(steps - 1, 1) for step in range(steps)] if boxes else []
    swept = [outline for turn in places for outline in moving_on_sheet(one.hung, view, turn)]
    if all(is_clear(box, swept, 0.0) for box in boxes):
        return one
    return replace(one, main=replace(one.main, notes=()))


def _windows(count: int, width: float, height: float, letters: float) -> tuple[Box, ...]:
    across = (width - (count + 1) * _EDGE) / count
    top = height - _LINE * letters * (1.0 + _LARGER)
    lefts = [_EDGE + number * (across + _EDGE) for number in range(count)]
    return tuple(Box(left, _EDGE, left + across, top) for left in lefts)


def _title(candidate: Candidate, recommended: float | None) -> str:
    return hinge_title(candidate) + (RECOMMENDED if candidate.on == recommended else "")


def _headings(panels: tuple[Panel, ...], windows: tuple[Box, ...], letters: float) -> list[Primitive]:
    """Set the headings; the word of recommendation is shortened to a sign where there is no room for it."""
    size = letters * _LARGER
    base = 0.4 * letters + _LINE * letters
    found: list[Primitive] = []
    for one, window in zip(panels, windows, strict=True):
        forms = (one.title, one.title.replace(RECOMMENDED, " ✓"))
        words = next((form for form in forms if text_width(form, size, True) <= window.width), forms[-1])
        found.append(Text("A-ANNO-TTLB", (window.left, window.top + base), words, size, bold=True))
    return found


def _ground(window: Box) -> Polygon:
    return Polygon("A-ANNO-BRDR-PICT", _corners(window), "paper", outlined=False)


def _border(window: Box) -> Polyline:
    return Polyline("A-ANNO-BRDR-PICT", _corners(window), closed=True)


def _corners(window: Box) -> tuple[tuple[float, float], ...]:
    return rectangle(window.left, window.right, window.bottom, window.top)


def _radians(angle: float) -> float:
    return math.radians(angle) if angle < 180.0 else math.pi


def client_panel(
    study: Study, hung: DrawnLeaf, window: Box, points: float, spare: float, display: Display, title: str,
    letters: float,
) -> Panel:  # fmt: skip
    """Return the panel of one leaf; scale in points a real inch, type size in points.

    `spare` is the height that the picture leaves free, points: panels side by side share it.
    """
    hand = hand_words(study)
    # A client reads of the door, not of its leaf; what it carries keeps its name.
    hung = replace(hung, stopped_by=hung.stopped_by.replace("leaf on", "door on", 1))
    one = panel(hung, window, points, spare, display, title, hand, None, True, size=letters)
    alone = Dimensions(hung, one.main.view, hinge_out(hung, display, letters), one.room)
    return replace(one, inset=None, dimensions=alone)


def hinge_out(hung: DrawnLeaf, display: Display, letters: float) -> Lettered:
    """Return the one dimension a client is shown: how far the hinge stands out from the frame."""
    top = (hung.pin.x_p, hung.pin.y_p + hung.h.d_b / 2)
    number = display.length(abs(top[1]))
    way = "out from the frame" if top[1] >= 0 else "behind the frame's face"
    measured = Measured((0.0, 0.0), top, top[1], FRAME, PLAIN)
    choices = (f"{number}: the hinge stands {way}", f"{number} hinge {way}", number)
    return Lettered((measured,), tuple(Wording((words,), letters) for words in choices), ("",))
