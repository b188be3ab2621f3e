"""The client's picture as a moving one: an animated GIF, through the writer that comes with matplotlib."""

from io import BytesIO

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from PIL import Image

from configurator.drawing.client.client_picture import (
    ClientPicture,
    client_picture,
    turning_groups,
    turning_note_groups,
)
from configurator.export.figure import SheetArtists, make_figure
from configurator.study import Study
from configurator.units import Display

SIZE = (960.0, 600.0)
"""Points, and as many pixels: what a mail shows whole."""
_LETTERS = 17.0
_DPI = 72.0
_STEP = 4.0
"""Degrees from one frame to the next."""
_FRAME, _HOLD = 60, 2500
"""Milliseconds of a frame, and of the last one before it begins again."""
_COLOURS = 96


def gif_bytes(study: Study, display: Display, also: tuple[str, ...] = ()) -> bytes:
    """Return the swing of both hinges from closed to its end as an animated GIF; it begins again and again.

    Raises ValueError where there is no width to draw.
    """
    picture = client_picture(study, display, *SIZE, _LETTERS, also)
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


def _frames(picture: ClientPicture) -> list[Image.Image]:
    """Draw what stands once, and over it what turns at every angle."""
    figure = make_figure(picture.width, picture.height, _DPI)
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
