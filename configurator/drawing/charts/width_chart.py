"""The chart of a leaf's widths: hinge open width across, how far it opens up, clear width at the right."""

import math
from bisect import bisect_left
from collections.abc import Sequence

from configurator.drawing.charts.chart import Axis, Chart, Curve, Mark, Rule, nice_step, ticks_between
from configurator.study.widths.break_points import CLEAR_WIDTH, BreakPoint
from configurator.study.widths.leaf_widths import LeafWidths
from configurator.units import CLOSED_IN, MM_PER_INCH, Display, format_decimal, format_size
from configurator.wording.width_words import break_words, clear_width_name, headline, reading, wanted_words

_DEGREES = (1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 45.0)
_INCHES = (1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0, 2.0, 5.0, 10.0, 20.0)
_MILLIMETRES = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0)
_PARTS = 4
"""An upright axis has no more parts than about so many."""


def width_chart(leaf: LeafWidths, display: Display, plain: bool = False) -> Chart:
    """Return the chart; stock widths and the widths compared are ticked and marked with a dot.

    `plain` letters it in plain words instead of the trade's.
    """
    curve = leaf.curve
    widths = tuple(one.width for one in leaf.tried)
    bare = tuple(zip(curve.widths, curve.bare, strict=True))
    across = Axis(
        "hinge open width, in",
        curve.widths[0],
        curve.widths[-1],
        (*((width, format_size(width)) for width in widths), *_quarters(curve.widths, widths)),
    )
    return Chart(
        across=across,
        left=angle_axis(_angles(leaf)),
        curves=_curves(leaf, bare, plain),
        right=clear_axis(leaf.curve.clear_widths, display, plain),
        rules=(*(Rule("A-CHRT-GRID", width, upright=True) for width in widths), _wanted(leaf, display)),
        marks=tuple(_mark(leaf, one, display, plain) for one in leaf.breaks),
        dots=tuple((width, _angle_at(leaf, width)) for width in widths),
        said=said(leaf, display, plain),
    )


def said(leaf: LeafWidths, display: Display, plain: bool = False) -> str:
    """Return all that the chart shows as sentences, for who cannot see it."""
    breaks = "; ".join(break_words(one, display, plain)[0] for one in leaf.breaks)
    mounted = (one.candidate for one in leaf.tried)
    each = "; ".join(reading(one, display, plain) for one in mounted if one is not None)
    return " ".join(part for part in (headline(leaf, display), f"{breaks}." if breaks else "", each) if part)


def _quarters(curve: tuple[float, ...], widths: tuple[float, ...]) -> tuple[tuple[float, str], ...]:
    return tuple((at, "") for at in ticks_between(curve[0], curve[-1], 0.25) if at not in widths)


def _wanted(leaf: LeafWidths, display: Display) -> Rule:
    return Rule("A-CHRT-WANT", leaf.must.wanted, wanted_words(leaf.must, display))


def _curves(leaf: LeafWidths, bare: tuple[tuple[float, float], ...], plain: bool) -> tuple[Curve, ...]:
    curve = leaf.curve
    apart = any(a - b > CLOSED_IN for a, b in zip(curve.bare, curve.with_hardware, strict=True))
    together = "leaf, with and without hardware" if leaf.hung.hardware else "leaf"
    found = [Curve("A-CHRT-BARE", bare, "leaf alone" if apart else together)]
    if apart:
        fitted = tuple(zip(curve.widths, curve.with_hardware, strict=True))
        found.append(Curve("A-CHRT-HDWR", fitted, "with its hardware", above=False))
    clear = tuple((w, c) for w, c in zip(curve.widths, curve.clear_widths, strict=True) if c is not None)
    if len(clear) > 1:
        found.append(Curve("A-CHRT-CLER", clear, f"{clear_at_90(plain)} (right)", right=True))
    return tuple(found)


def _angles(leaf: LeafWidths) -> tuple[float, ...]:
    return *leaf.curve.with_hardware, *leaf.curve.bare, leaf.must.wanted


def angle_axis(angles: Sequence[float]) -> Axis:
    """Return an upright axis of how far a door opens that holds all of the angles, degrees."""
    least, most = min(angles), max(angles)
    step = nice_step(most - least, _DEGREES, _PARTS)
    high = max(step, math.ceil(most / step) * step)
    low = min(math.floor(least / step) * step, high - step)
    ticks = tuple((at, format_decimal(at)) for at in ticks_between(low, high, step))
    return Axis("opens to, degrees", low, high, ticks)


def clear_axis(clears: Sequence[float | None], display: Display, plain: bool) -> Axis | None:
    """Return an upright axis of clear widths, inches; None where there are too few of them for a curve."""
    shown = [clear for clear in clears if clear is not None]
    if len(shown) < 2:
        return None
    return length_axis(clear_at_90(plain), min(shown), max(shown), display)


def clear_at_90(plain: bool) -> str:
    """Return what a curve of clear widths is called."""
    return clear_width_name(plain) if plain else f"{clear_width_name(plain)} at 90"


def length_axis(title: str, least: float, most: float, display: Display) -> Axis:
    """Return an upright axis of lengths, ticked in round fractions or millimetres; its values are inches."""
    unit, steps = (1 / MM_PER_INCH, _MILLIMETRES) if display.metric else (1.0, _INCHES)
    step = nice_step(max(most - least, CLOSED_IN) / unit, steps, _PARTS)
    low, high = (math.floor(least / unit / step) * step, math.ceil(most / unit / step) * step)
    high = high if high > low else low + step
    ticks = ticks_between(low, high, step)
    texts = [format_decimal(at) if display.metric else format_size(at) for at in ticks]
    ticked = tuple((at * unit, text) for at, text in zip(ticks, texts, strict=True))
    return Axis(f"{title}, {'mm' if display.metric else 'in'}", low * unit, high * unit, ticked)


def _mark(leaf: LeafWidths, one: BreakPoint, display: Display, plain: bool) -> Mark:
    wordings = break_words(one, display, plain)
    if one.what == CLEAR_WIDTH:
        return Mark((one.width, one.value), wordings, right=True)
    return Mark((one.width, _angle_at(leaf, one.width)), wordings)


def _angle_at(leaf: LeafWidths, width: float) -> float:
    """Return the bare leaf's angle at a width of the curve, the greater one where it jumps there."""
    curve = leaf.curve
    first = bisect_left(curve.widths, width - CLOSED_IN)
    near = [first]
    while near[-1] + 1 < len(curve.widths) and curve.widths[near[-1] + 1] <= width + CLOSED_IN:
        near.append(near[-1] + 1)
    return max(curve.bare[number] for number in near)
