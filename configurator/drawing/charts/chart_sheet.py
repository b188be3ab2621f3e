"""A chart laid out on a sheet: its axes, its curves cut off at them, marks and labels. Points, y upward."""

from collections.abc import Iterator
from dataclasses import dataclass

from configurator.drawing.base.clip import clip_polyline
from configurator.drawing.base.lettering import ASCENT, DESCENT, Room, text_box, text_width
from configurator.drawing.base.primitives import Anchor, Point, Polyline, Primitive, Symbol, Text
from configurator.drawing.base.view import Box, Group, View, paper
from configurator.drawing.charts.chart import SIZE, TEXT, Axis, Chart
from configurator.drawing.charts.chart_labels import LineOnSheet, labels

_TICK, _AIR = 3.0, 2.5
_LINE = 11.0


@dataclass(frozen=True, slots=True)
class ChartSheet:
    """A chart laid out: `plot` is the area between the axes, `groups` all that stands still; points."""

    chart: Chart
    width: float
    height: float
    plot: Box
    groups: tuple[Group, ...]
    lettered: tuple[Box, ...]

    def place(self, x: float, y: float, right: bool = False) -> Point:
        """Return where a value of the axes lies on the sheet."""
        return self.chart.place(self.plot, x, y, right)

    def value_across(self, x: float) -> float | None:
        """Return the value across at a place of the sheet, None beside the plot."""
        if not self.plot.left <= x <= self.plot.right:
            return None
        axis = self.chart.across
        return axis.low + (axis.high - axis.low) * (x - self.plot.left) / self.plot.width

    def cursor(self, across: float | None) -> Group:
        """Return an upright line at a value across; nothing for None, or where that is off the plot."""
        if across is None:
            return Group(paper(self.width, self.height), ())
        x = self.place(across, self.chart.left.low)[0]
        inside = self.plot.left - 0.01 <= x <= self.plot.right + 0.01
        line = (Polyline("A-CHRT-CURS", ((x, self.plot.bottom), (x, self.plot.top))),) if inside else ()
        return Group(paper(self.width, self.height), line)


def chart_sheet(chart: Chart, width: float, height: float) -> ChartSheet:
    """Lay a chart out on a sheet of that width and height, points."""
    plot = _plot(chart, width, height)
    room = Room(Box(1.0, 1.0, width - 1.0, height - 1.0))
    whole = paper(width, height)
    inside = View(1.0, (0.0, 0.0), False, plot)
    axes = [*_axis_lines(chart, plot), *_axis_texts(chart, plot, room)]
    lines = [LineOnSheet.of(chart, plot, curve) for curve in chart.curves]
    ruled = _rules(chart, plot)
    words = labels(chart, plot, room, lines)
    drawn = [
        Polyline(line.curve.layer, piece) for line in lines for piece in clip_polyline(line.points, plot)
    ]
    marks = [Symbol("A-CHRT-MARK", chart.place(plot, *mark.at, mark.right), "graze") for mark in chart.marks]
    marks += [Symbol("A-CHRT-MARK", chart.place(plot, *dot), "dot") for dot in chart.dots]
    groups = (
        Group(inside, tuple(ruled)),
        Group(whole, tuple(axes)),
        Group(inside, tuple(drawn)),
        Group(whole, (*marks, *words)),
    )
    return ChartSheet(chart, width, height, plot, groups, tuple(room.taken))


def _plot(chart: Chart, width: float, height: float) -> Box:
    def room_for(axis: Axis | None) -> float:
        texts = [] if axis is None else [text for _, text in axis.ticks]
        return max((text_width(text, SIZE) for text in texts), default=0.0) + _TICK + 2 * _AIR

    left, right = room_for(chart.left), room_for(chart.right)
    return Box(left, 2 * _LINE + _TICK, max(width - right, left + 1.0), max(height - _LINE - 4.0, 40.0))


def _axis_lines(chart: Chart, plot: Box) -> Iterator[Primitive]:
    layer = "A-CHRT-AXIS"
    corners = [(plot.left, plot.top), (plot.left, plot.bottom), (plot.right, plot.bottom)]
    if chart.right is not None:
        corners.append((plot.right, plot.top))
    yield Polyline(layer, tuple(corners))
    for value, text in chart.across.ticks:
        x = chart.place(plot, value, 0.0)[0]
        yield Polyline(layer, ((x, plot.bottom), (x, plot.bottom - (_TICK if text else _TICK / 2))))
    for axis, x, out in ((chart.left, plot.left, -_TICK), (chart.right, plot.right, _TICK)):
        for value, _ in axis.ticks if axis is not None else ():
            y = chart.place(plot, 0.0, value, axis is chart.right)[1]
            yield Polyline(layer, ((x, y), (x + out, y)))


def _axis_texts(chart: Chart, plot: Box, room: Room) -> Iterator[Primitive]:
    """Yield titles and tick texts; a tick text that would lie on another is left out."""
    high = plot.top + 4.0
    wanted: list[tuple[Point, str, Anchor]] = [((1.5, high), chart.left.title, "start")]
    if chart.right is not None:
        wanted.append(((room.window.right, high), chart.right.title, "end"))
    wanted.append((((plot.left + plot.right) / 2, 3.0), chart.across.title, "middle"))
    low = plot.bottom - _TICK - ASCENT * SIZE - 1.0
    wanted += [((chart.place(plot, x, 0.0)[0], low), text, "middle") for x, text in chart.across.ticks]
    drop = 0.5 * (ASCENT - DESCENT) * SIZE
    for axis, x, anchor in _uprights(chart, plot):
        ys = [(chart.place(plot, 0.0, value, axis is chart.right)[1], text) for value, text in axis.ticks]
        wanted += [((x, y - drop), text, anchor) for y, text in ys]
    for at, text, anchor in wanted:
        if text and room.first_free([text_box(at, text, SIZE, anchor)]) is not None:
            yield Text(TEXT, at, text, SIZE, anchor)


def _uprights(chart: Chart, plot: Box) -> Iterator[tuple[Axis, float, Anchor]]:
    yield chart.left, plot.left - _TICK - _AIR, "end"
    if chart.right is not None:
        yield chart.right, plot.right + _TICK + _AIR, "start"


def _rules(chart: Chart, plot: Box) -> list[Primitive]:
    found: list[Primitive] = []
    for rule in chart.rules:
        if rule.upright:
            x = chart.place(plot, rule.at, 0.0)[0]
            found.append(Polyline(rule.layer, ((x, plot.bottom), (x, plot.top))))
        else:
            y = chart.place(plot, 0.0, rule.at)[1]
            found.append(Polyline(rule.layer, ((plot.left, y), (plot.right, y))))
    return found
