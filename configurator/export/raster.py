"""A picture as pixels, for what shows pictures and is no canvas itself."""

from collections.abc import Sequence

from matplotlib.backends.backend_agg import FigureCanvasAgg

from configurator.drawing.sheet import Group
from configurator.drawing.style import inks
from configurator.export.figure import SheetArtists, fill, make_figure


def pixels(
    groups: Sequence[Group], width: float, height: float, dpi: float, dark: bool
) -> tuple[bytes, int, int]:
    """Return red, green, blue and opacity of every pixel, row by row from the top, and how many there are.

    Width and height in points; `dpi` pixels to an inch of 72 points.
    """
    figure = make_figure(width, height, dpi)
    figure.set_facecolor(inks()["paper"].on(dark))
    fill(SheetArtists(figure).still, groups, dark)
    canvas = FigureCanvasAgg(figure)
    canvas.draw()  # type: ignore[no-untyped-call]
    across, down = canvas.get_width_height()
    return bytes(canvas.buffer_rgba()), across, down  # type: ignore[no-untyped-call]
