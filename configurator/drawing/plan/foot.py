"""The foot of a sheet: how to read it, its scale, and, where it goes out as a file, whose opening it is."""

from collections.abc import Sequence

from configurator.drawing.base.lettering import fitted
from configurator.drawing.base.primitives import Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.plan.drawn_leaf import turns_clockwise
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

FOOT = 16.0
FOOT_OF_FILE = 27.0
"""Points kept below the panels: for one line, and for two."""
_SIDE = 8.0
_BASE = 4.5
_SIZE = 7.0
_BAR = 60.0
"""A scale bar is no longer than this where a shorter one will do, points."""
_BAR_ROOM = 90.0


def foot(study: Study, display: Display, scale: float, width: float, job: JobFacts | None) -> list[Primitive]:
    """Return the line that says how to read the sheet, its scale bar, and over them whose sheet it is."""
    room = width - 2 * _SIDE
    lines = [(_BASE, _how_to_read(study, job is None), room - _BAR_ROOM)]
    if job is not None:
        lines.append((_BASE + 10.5, _of_what(study, display, job), room))
    return [
        *(
            Text("A-ANNO-NOTE", (_SIDE + 1.0, base), _as_many_as_fit(words, free), _SIZE)
            for base, words, free in lines
        ),
        *_scale_bar(display, scale, width - _SIDE, _BASE),
    ]


def _as_many_as_fit(words: Sequence[str], room: float) -> str:
    return fitted([" · ".join(words[:count]) for count in range(len(words), 0, -1)], _SIZE, room)


def _of_what(study: Study, display: Display, job: JobFacts) -> list[str]:
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
        Text("A-ANNO-NOTE", (left - 4.0, base - 0.5), label, _SIZE, "end"),
    ]


def _length_of_bar(display: Display, scale: float) -> tuple[float, str]:
    """Return how long a bar is, inches, and its length in words: the longest of the usual ones that fits."""
    if display.metric:
        choices = [(mm / 25.4, f"{mm} mm") for mm in (50, 20)]
    else:
        choices = [(float(inches), f"{inches} in") for inches in (2, 1)]
    return next((one for one in choices if one[0] * scale <= _BAR), choices[-1])
