"""A chart on a matplotlib figure, by the same primitives and pens as a plan."""

from matplotlib.collections import PathCollection
from matplotlib.figure import Figure

from configurator.drawing.chart_sheet import ChartSheet
from configurator.drawing.style import inks
from configurator.export.figure import SheetArtists, fill


class ChartArtists:
    """What a figure shows of a chart: all that stands, and over it a line that follows the door."""

    def __init__(self, figure: Figure) -> None:
        self.figure = figure
        self._artists = SheetArtists(figure)

    def show(self, sheet: ChartSheet, cursor: float | None, dark: bool) -> None:
        """Show a chart, with the line at a value across where one is given."""
        self.figure.set_facecolor(inks()["paper"].on(dark))
        fill(self._artists.still, sheet.groups, dark)
        self.point(sheet, cursor, dark)

    def over_the_ground(self) -> PathCollection:
        """Return what is drawn again while only the line moves."""
        return self._artists.moving

    def point(self, sheet: ChartSheet, cursor: float | None, dark: bool) -> None:
        """Move the line only."""
        fill(self._artists.moving, () if cursor is None else (sheet.cursor(cursor),), dark)
