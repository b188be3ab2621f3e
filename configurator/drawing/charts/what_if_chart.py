"""The chart of what would be: the varied thing across, how far the leaf opens up, clear width at right."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from configurator.drawing.base.primitives import Point
from configurator.drawing.charts.chart import Axis, Chart, Curve, Mark, Rule, nice_step, ticks_between
from configurator.drawing.charts.width_chart import angle_axis, clear_at_90, clear_axis
from configurator.model import Obstruction
from configurator.study.what_if.curve import WhatIf
from configurator.study.what_if.thresholds import BARREL, CARRIED_MEETS, CLEAR, FITTED, Threshold
from configurator.units import CLOSED_IN, MM_PER_INCH, Display, format_decimal, format_size
from configurator.wording.what_if_words import at_value, parameter_name, threshold_words, what_if_said
from configurator.wording.width_words import wanted_words

_INCHES = (1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0, 2.0, 4.0, 8.0, 12.0, 24.0)
_MILLIMETRES = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0)
_PARTS = 14


def what_if_chart(
    found: WhatIf, things: Sequence[Obstruction], display: Display, plain: bool = False
) -> Chart:
    """Return the chart: the present value a line and a dot, the values where something turns named.

    things are the obstructions of the opening; `plain` letters it in plain words instead of the trade's.
    """
    curve, parameter = found.curve, found.parameter
    angles = [angle for column in (curve.bare, curve.with_hardware) for angle in column if angle is not None]
    now = Rule(
        "A-CHRT-AXIS",
        parameter.present,
        f"now {at_value(parameter, parameter.present, display)}",
        upright=True,
    )
    bare = _value_at(found, curve.bare, parameter.present)
    return Chart(
        across=_across(found, display, plain),
        left=angle_axis([*angles, found.must.wanted]),
        curves=tuple(_curves(found, plain)),
        right=clear_axis(curve.clear_widths, display, plain),
        rules=(now, Rule("A-CHRT-WANT", found.must.wanted, wanted_words(found.must, display))),
        marks=tuple(_mark(found, one, things, display, plain) for one in found.thresholds),
        dots=() if bare is None else ((parameter.present, bare),),
        said=what_if_said(found, things, display, plain),
    )


def _across(found: WhatIf, display: Display, plain: bool) -> Axis:
    parameter = found.parameter
    metric = display.metric and not parameter.of_hinge
    unit, steps = (1 / MM_PER_INCH, _MILLIMETRES) if metric else (1.0, _INCHES)
    step = nice_step((parameter.high - parameter.low) / unit, steps, _PARTS)
    ticks = ticks_between(parameter.low / unit, parameter.high / unit, step)
    texts = (format_decimal(at) if metric else format_size(at) for at in ticks)
    ticked = tuple((at * unit, text) for at, text in zip(ticks, texts, strict=True))
    return Axis(
        f"{parameter_name(parameter, plain)}, {'mm' if metric else 'in'}",
        parameter.low,
        parameter.high,
        ticked,
    )


def _curves(found: WhatIf, plain: bool) -> Iterator[Curve]:
    curve = found.curve
    both = zip(curve.bare, curve.with_hardware, strict=True)
    apart = any(a is not None and b is not None and a - b > CLOSED_IN for a, b in both)
    together = "leaf, with and without hardware" if found.has_hardware else "leaf"
    yield from _pieces(found, curve.bare, "A-CHRT-BARE", "leaf alone" if apart else together)
    if apart:
        yield from _pieces(found, curve.with_hardware, "A-CHRT-HDWR", "with its hardware", above=False)
    if clear_axis(curve.clear_widths, Display(), plain) is not None:
        name = f"{clear_at_90(plain)} (right)"
        yield from _pieces(found, curve.clear_widths, "A-CHRT-CLER", name, right=True)


def _pieces(
    found: WhatIf,
    column: Sequence[float | None],
    layer: str,
    label: str,
    right: bool = False,
    above: bool = True,
) -> Iterator[Curve]:
    """Yield a curve in as many pieces as it has; the longest is labelled."""
    points = zip(found.curve.values, column, strict=True)
    grouped = groupby(points, key=lambda point: point[1] is not None)
    pieces = [tuple((x, y) for x, y in group if y is not None) for there, group in grouped if there]
    longest = max(pieces, key=_span, default=())
    for piece in pieces:
        if len(piece) > 1:
            yield Curve(layer, piece, label if piece is longest else "", right, above)


def _span(piece: Sequence[Point]) -> float:
    return piece[-1][0] - piece[0][0]


def _mark(
    found: WhatIf, threshold: Threshold, things: Sequence[Obstruction], display: Display, plain: bool
) -> Mark:
    wordings = threshold_words(threshold, found, things, display, plain)
    if threshold.what == CLEAR:
        return Mark((threshold.value, threshold.amount), wordings, right=True)
    fitted = threshold.what in (FITTED, CARRIED_MEETS)
    column = found.curve.with_hardware if fitted else found.curve.bare
    height = _value_at(found, column, threshold.value, reaches=threshold.what != BARREL)
    return Mark((threshold.value, found.must.wanted if height is None else height), wordings)


def _value_at(
    found: WhatIf, column: Sequence[float | None], value: float, reaches: bool = True
) -> float | None:
    """Return what a curve has at a value, the greater where it jumps there."""
    near = min(abs(at - value) for at in found.curve.values)
    here = [
        answer
        for at, answer in zip(found.curve.values, column, strict=True)
        if abs(at - value) <= near + CLOSED_IN and answer is not None
    ]
    return (max if reaches else min)(here, default=None)
