"""The client's picture on a canvas: two widths, large letters, the doors turning on the quick path."""

from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QWidget

from configurator.drawing.client_picture import (
    ClientPicture,
    client_picture,
    turning_groups,
    turning_note_groups,
)
from configurator.drawing.sheet import Group
from configurator.export.figure import POINTS_PER_INCH, SheetArtists
from configurator.ui.canvas import DPI, PlanCanvas


class ClientCanvas(PlanCanvas):
    """The picture of one opening as a client is shown it; its letters are as high as `set_letters` says."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._letters = 10.0
        super().__init__(parent)
        self.setAccessibleName("Picture of the door from above, one for each hinge width")

    def set_letters(self, pixels: float) -> None:
        """Set the type size of the picture, pixels of the screen."""
        points = pixels / DPI * POINTS_PER_INCH
        if points != self._letters:
            self._letters = points
            self._redraw()

    def make_artists(self) -> SheetArtists:
        """Return collections that turn the client's picture."""
        return SheetArtists(self.figure, turning_groups, turning_note_groups)

    def lay_out(self, width: float, height: float) -> ClientPicture:
        """Return the two widths laid out so many points wide and high."""
        assert self._study is not None
        return client_picture(self._study, self._display, width, height, self._letters)

    def turning_groups(self) -> tuple[Group, ...]:
        """Return everything that stands where the angle puts it."""
        return (*turning_groups(self._sheet, self._angle), *turning_note_groups(self._sheet, self._angle))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Leave a press to the page, which swings the door with it."""
        event.ignore()
