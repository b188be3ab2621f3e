"""A scale bar: a drafter's bar of a round length, exact to the scale, with its scale in words."""

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Point, Polygon, Primitive, Text, rectangle
from configurator.drawing.pages.page import MM_PER_INCH, Scale
from configurator.units import Display, format_decimal, format_size

LAYER = "A-ANNO-SBAR"
HEIGHT = 22.0
"""Points from the base of the lower line of words to the top of the upper one."""
_BAR = 4.0
_SIZE = 6.5
_QUARTERS = 4
_INCHES = (0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 36.0, 48.0, 96.0)
_MM = (10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0)


def scale_bar(scale: Scale, display: Display, at: Point, width: float) -> tuple[Primitive, ...]:
    """Return the bar with its left lower end at a point of the page, no wider than so many points.

    Under the bar stand 0 and its length, over it the scale in words.
    """
    length, label = bar_length(scale, display, width - text_width("0", _SIZE))
    left, base = at
    bottom = base + 9.0
    long = length * scale.points
    bar = tuple(_quarter(left, bottom, long, number) for number in range(_QUARTERS))
    ends = (Text("A-ANNO-NOTE", (left, base + 1.5), "0", _SIZE), _far_end(left + long, base, label, long))
    words = Text("A-ANNO-TEXT", (left, bottom + _BAR + 3.0), scale.name, _SIZE)
    return (*bar, *ends, words)


def bar_length(scale: Scale, display: Display, width: float) -> tuple[float, str]:
    """Return how long a bar is, inches of the real thing, and that in words: the longest that fits.

    The shortest one where none does.
    """
    if display.metric:
        choices = [(mm / MM_PER_INCH, _metric(mm)) for mm in _MM]
    else:
        choices = [(inches, _imperial(inches)) for inches in _INCHES]
    return next((one for one in reversed(choices) if one[0] * scale.points <= width), choices[0])


def _quarter(left: float, bottom: float, long: float, number: int) -> Polygon:
    x_0, x_1 = (left + long * (number + end) / _QUARTERS for end in (0, 1))
    fill = "steel" if number % 2 == 0 else "white"
    return Polygon(LAYER, rectangle(x_0, x_1, bottom, bottom + _BAR), fill)


def _far_end(right: float, base: float, label: str, long: float) -> Text:
    """The length under the bar's end, kept off the nought of a short one."""
    room = long - text_width("0", _SIZE) - 3.0
    anchor = "end" if text_width(label, _SIZE) <= room else "start"
    at = right if anchor == "end" else right - text_width("0", _SIZE)
    return Text("A-ANNO-NOTE", (at, base + 1.5), label, _SIZE, anchor)  # type: ignore[arg-type]


def _metric(mm: float) -> str:
    return f"{format_decimal(mm, 0)} mm" if mm < 1000 else f"{format_decimal(mm / 1000, 0)} m"


def _imperial(inches: float) -> str:
    if inches >= 12:
        return f"{format_decimal(inches / 12, 0)} ft"
    return f"{format_size(inches)} in"
