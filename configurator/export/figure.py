"""Pictures on a matplotlib figure: collections of paths, apart where the canvas redraws them apart.

The client's picture is also made to move: an animated GIF, through the writer that comes with matplotlib.
"""

from collections.abc import Callable, Iterable
from io import BytesIO
from typing import Any

import numpy as np
from matplotlib.collections import PathCollection
from matplotlib.figure import Figure
from matplotlib.transforms import Affine2D

from configurator.drawing.base.style import inks
from configurator.drawing.base.view import Group
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups
from configurator.export.batch import Batch, batch_of
from configurator.export.painting import Picture, logo_place
from configurator.study import Study
from configurator.units import Display

POINTS_PER_INCH = 72.0


def make_figure(width: float, height: float, dpi: float = 72.0) -> Figure:
    """Return an empty figure of that width and height, points."""
    return Figure(figsize=(width / POINTS_PER_INCH, height / POINTS_PER_INCH), dpi=dpi)


class SheetArtists:
    """The collections of one figure, filled anew for every sheet. Nothing else is on the figure.

    `turning` and `turning_notes` return what changes with the angle, degrees, of the kind of sheet it shows.
    """

    def __init__(
        self,
        figure: Figure,
        turning: Callable[[Any, float], Iterable[Group]] = moving_groups,
        turning_notes: Callable[[Any, float], Iterable[Group]] = moving_note_groups,
    ) -> None:
        self.figure = figure
        self._turning, self._turning_notes = turning, turning_notes
        self.still, self.moving, self.notes, self.moving_notes = (_collection(figure) for _ in range(4))
        self._pointed: PathCollection | None = None

    def show(self, sheet: Any, angle: float, dark: bool) -> None:
        """Fill every collection."""
        self.figure.set_facecolor(inks()["paper"].on(dark))
        fill(self.still, sheet.still, dark)
        fill(self.notes, sheet.notes, dark)
        self.turn(sheet, angle, dark)

    def turn(self, sheet: Any, angle: float, dark: bool) -> None:
        """Fill only what changes with the angle, degrees."""
        fill(self.moving, self._turning(sheet, angle), dark)
        fill(self.moving_notes, self._turning_notes(sheet, angle), dark)

    def point(self, groups: Iterable[Group], dark: bool) -> None:
        """Lay other marks over everything; made on first use, since files have none."""
        if self._pointed is None:
            self._pointed = _collection(self.figure)
        fill(self._pointed, groups, dark)

    def over_the_ground(self) -> tuple[PathCollection, ...]:
        """Return what is drawn again while the leaf turns, in painting order."""
        pointed = () if self._pointed is None else (self._pointed,)
        return (self.moving, self.notes, self.moving_notes, *pointed)


class ChartArtists:
    """What a figure shows of a chart: all that stands, and over it a line that follows the door."""

    def __init__(self, figure: Figure) -> None:
        self.figure = figure
        self._still, self._line = _collection(figure), _collection(figure)

    def show(self, chart: Iterable[Group], line: Iterable[Group], dark: bool) -> None:
        """Show a chart with its line, which may be nothing."""
        self.figure.set_facecolor(inks()["paper"].on(dark))
        fill(self._still, chart, dark)
        self.point(line, dark)

    def over_the_ground(self) -> PathCollection:
        """Return what is drawn again while only the line moves."""
        return self._line

    def point(self, line: Iterable[Group], dark: bool) -> None:
        """Move the line only."""
        fill(self._line, line, dark)


def png_bytes(picture: Picture, dpi: float) -> bytes:
    """Return a picture as a PNG; the file carries its pixels an inch, so that it prints at its own size."""
    figure = make_figure(picture.width, picture.height, dpi)
    figure.set_facecolor(picture.ground.on(picture.dark))
    fill(_collection(figure), picture.groups, picture.dark)
    _add_logo(figure, picture)
    written = BytesIO()
    figure.savefig(
        written, format="png", dpi=dpi, facecolor="auto", edgecolor="none", metadata={"Software": None}
    )
    return written.getvalue()


MOVING_SIZE = (960.0, 600.0)
"""Points, and as many pixels: what a mail shows whole."""
_LETTERS = 17.0
_STEP = 4.0
"""Degrees from one frame to the next."""
_FRAME, _HOLD = 60, 2500
"""Milliseconds of a frame, and of the last one before it begins again."""
_COLOURS = 96


def gif_bytes(study: Study, display: Display, also: tuple[str, ...] = ()) -> bytes:
    """Return the swing of both hinges from closed to its end as an animated GIF; it begins again and again.

    Raises ValueError where there is no width to draw.
    """
    from PIL import Image  # loaded where a moving picture is asked for

    from configurator.drawing.client.client_picture import client_picture

    picture = client_picture(study, display, *MOVING_SIZE, _LETTERS, also)
    *moving, last = _frames(picture)
    palette = last.quantize(_COLOURS)
    frames = [one.quantize(palette=palette, dither=Image.Dither.NONE) for one in (*moving, last)]
    written = BytesIO()
    frames[0].save(
        written,
        format="GIF",
        save_all=True,
        append_images=frames[1:],
        duration=[_FRAME] * len(moving) + [_HOLD],
        loop=0,
    )
    return written.getvalue()


def _frames(picture: Any) -> list[Any]:
    """Draw what stands once, and over it what turns at every angle."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from PIL import Image

    from configurator.drawing.client.client_picture import turning_groups, turning_note_groups

    figure = make_figure(picture.width, picture.height)
    canvas = FigureCanvasAgg(figure)
    artists = SheetArtists(figure, turning_groups, turning_note_groups)
    artists.show(picture, 0.0, False)
    for one in artists.over_the_ground():
        one.set_visible(False)
    canvas.draw()  # type: ignore[no-untyped-call]
    ground = canvas.copy_from_bbox(figure.bbox)  # type: ignore[no-untyped-call]
    frames = []
    for angle in _angles(picture.end):
        artists.turn(picture, angle, False)
        canvas.restore_region(ground)  # type: ignore[no-untyped-call]
        for one in artists.over_the_ground():
            one.set_visible(True)
            figure.draw_artist(one)
        shown = np.asarray(canvas.buffer_rgba())  # type: ignore[no-untyped-call]
        frames.append(Image.fromarray(shown).convert("RGB"))
    return frames


def _angles(end: float) -> list[float]:
    """Return the angles of the frames, closer together where the door sets off and where it comes to rest."""
    count = max(round(end / _STEP), 2)
    shares = [step / count for step in range(count + 1)]
    return [end * share * share * (3.0 - 2.0 * share) for share in shares]


def _add_logo(figure: Figure, picture: Picture) -> None:
    place = logo_place(picture.logo)
    if place is None or picture.logo is None:
        return
    from matplotlib.image import imread

    wide, high = picture.width, picture.height
    axes = figure.add_axes((place.left / wide, place.bottom / high, place.width / wide, place.height / high))
    axes.set_axis_off()
    axes.imshow(imread(picture.logo[0]), aspect="auto", interpolation="lanczos")


def _collection(figure: Figure) -> PathCollection:
    collection = PathCollection([], capstyle="butt", joinstyle="miter")
    collection.set_transform(Affine2D().scale(1 / POINTS_PER_INCH) + figure.dpi_scale_trans)
    figure.add_artist(collection, clip=False)
    return collection


def fill(collection: PathCollection, groups: Iterable[Group], dark: bool) -> None:
    """Replace what a collection draws."""
    batch = batch_of(groups, dark)
    collection.set_paths(batch.paths)
    collection.set_facecolor(_colours(batch, "face"))
    collection.set_edgecolor(_colours(batch, "edge"))
    collection.set_linewidth([pen.width for pen in batch.pens] or [0.0])
    collection.set_linestyle([_dash(pen.dash, pen.width) for pen in batch.pens] or ["-"])


def _colours(batch: Batch, which: str) -> Any:
    return np.array([getattr(pen, which) for pen in batch.pens] or [(0.0, 0.0, 0.0, 0.0)])


def _dash(dash: tuple[float, ...], width: float) -> Any:
    """Dashes are in points; matplotlib multiplies them by the line's width."""
    return (0.0, tuple(part / width for part in dash)) if dash else "-"
