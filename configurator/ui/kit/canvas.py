"""The canvas: a study's sheet drawn with matplotlib, whole on an edit and in part while the leaf swings."""

from pathlib import Path
from typing import Any

from matplotlib.backends.backend_qtagg import FigureCanvasQTAgg
from PySide6.QtCore import QEvent, QPointF, QSize, Signal
from PySide6.QtGui import QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QToolTip, QWidget

from configurator.drawing.base.view import Group
from configurator.drawing.plan.pointing import Spot, measured_at, name_at, spot_at, spots_of
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups, plan_sheet
from configurator.export.figure import POINTS_PER_INCH, SheetArtists, make_figure
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

DPI = 96.0
_LEAST = QSize(360, 260)


class PlanCanvas(FigureCanvasQTAgg):
    """The picture of one opening, every width side by side.

    Signals:
        hovered: the name of the dimension or part under the pointer, empty where there is none.
        moved: the pointer is at a place of the widget; None when it has left.
        picked: a place of the widget was clicked twice.
    """

    hovered = Signal(str)
    moved = Signal(object)
    picked = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(make_figure(6.0 * POINTS_PER_INCH, 4.0 * POINTS_PER_INCH, DPI))
        self.setParent(parent)
        self.setMinimumSize(_LEAST)
        self.setMouseTracking(True)
        self.setAccessibleName("Plan of the opening, one picture for each hinge width")
        self._artists = self.make_artists()
        self._study: Study | None = None
        self._display = Display()
        self._angle = 0.0
        self._dark = False
        self._plain = self._swept = False
        self._sheet: Any = None
        self._ground: Any = None
        self._spots: tuple[Spot, ...] = ()
        self._pointed: Any = None

    def show_study(
        self,
        study: Study,
        angle: float,
        display: Display,
        dark: bool,
        plain: bool = False,
        swept: bool = False,
    ) -> None:
        """Show another study, or the same one changed, with the leaves at `angle` degrees.

        `plain` letters the dimensions in plain words instead of the trade's; `swept` shows what leaf and
        hardware sweep.
        """
        self._study, self._angle, self._display, self._dark = study, angle, display, dark
        self._plain, self._swept = plain, swept
        self._redraw()

    def set_angle(self, angle: float) -> None:
        """Swing the leaves to `angle` degrees; only what turns is drawn again."""
        if angle == self._angle:
            return
        self._angle = angle
        if self._sheet is None:
            return
        self._artists.turn(self._sheet, angle, self._dark)
        if self._pointed is not None:
            self._fill_marks()
        self._spots = ()
        if self._ground is None:
            self._redraw()
        else:
            self._paint_moving()

    def set_dark(self, dark: bool) -> None:
        """Show the dark sheet or the light one."""
        if dark != self._dark:
            self._dark = dark
            self._redraw()

    def point_at(self, pointed: Any) -> None:
        """Mark what a letter of a formula stands for (a `Pointed`), or nothing; only the marks are drawn."""
        if pointed == self._pointed:
            return
        self._pointed = pointed
        self._fill_marks()
        if self._ground is not None:
            self._paint_moving()

    def _fill_marks(self) -> None:
        from configurator.drawing.plan.pointing import pointed_groups

        if self._sheet is None or self._study is None:
            return
        leaves = [one.leaf for one in self._study.candidates]
        shown = self._sheet, leaves, self._pointed, self._angle
        self._artists.point(() if self._pointed is None else pointed_groups(*shown), self._dark)

    def save_picture(self, path: Path | str, job: JobFacts) -> None:
        """Write the opening on show as PNG, SVG or PDF, by the ending, whatever the shape of the window.

        Raises ValueError with nothing shown yet.
        """
        if self._study is None:
            raise ValueError("there is no picture to save yet")
        from configurator.export.pages import write_plan

        write_plan(
            self._study, Path(path), self._angle, self._display, self._dark, job, self._plain, self._swept
        )

    def accessible_summary(self) -> str:
        """Return the headings of the panels as one sentence."""
        return "; ".join(one.title for one in self._sheet.panels) if self._sheet else ""

    def make_artists(self) -> SheetArtists:
        """Return the collections that this kind of picture is drawn with."""
        return SheetArtists(self.figure)

    def lay_out(self, width: float, height: float) -> Any:
        """Return the picture laid out so many points wide and high."""
        assert self._study is not None
        return plan_sheet(self._study, self._display, width, height, plain=self._plain, swept=self._swept)

    def turning_groups(self) -> tuple[Group, ...]:
        """Return everything that stands where the angle puts it."""
        return (*moving_groups(self._sheet, self._angle), *moving_note_groups(self._sheet, self._angle))

    def _redraw(self) -> None:
        """Lay the sheet out for the widget's size and draw all of it at once, not at the next idle moment."""
        if self._study is None:
            return
        width, height = (size / DPI * POINTS_PER_INCH for size in (self.width(), self.height()))
        if width < 1 or height < 1:
            return
        self._sheet = self.lay_out(width, height)
        self._artists.show(self._sheet, self._angle, self._dark)
        if self._pointed is not None:
            self._fill_marks()
        self._spots = ()
        self.setAccessibleDescription(self.accessible_summary())
        self.draw()

    def draw(self) -> None:
        """Draw the ground, keep it for swinging, and lay what turns over it."""
        for artist in self._artists.over_the_ground():
            artist.set_visible(False)
        super().draw()
        self._ground = self.copy_from_bbox(self.figure.bbox)
        for artist in self._artists.over_the_ground():
            artist.set_visible(True)
            self.figure.draw_artist(artist)
        self.update()

    def _paint_moving(self) -> None:
        self.restore_region(self._ground)
        for artist in self._artists.over_the_ground():
            self.figure.draw_artist(artist)
        self.update()

    # --- Qt's own names ---

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the sheet out again: text and lines keep their size, only the room changes."""
        self._ground = None
        super().resizeEvent(event)
        self._redraw()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Tell the name of what is under the pointer."""
        super().mouseMoveEvent(event)
        name = self.name_under(event.position())
        self.hovered.emit(name)
        self.moved.emit(event.position())
        QToolTip.showText(event.globalPosition().toPoint(), name, self)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Tell where it was clicked twice."""
        super().mouseDoubleClickEvent(event)
        self.picked.emit(event.position())

    def leaveEvent(self, event: QEvent) -> None:
        """Forget what was under the pointer."""
        super().leaveEvent(event)
        self.hovered.emit("")
        self.moved.emit(None)

    def looked_at(self, position: QPointF) -> Any:
        """Return the place in plan under a place of the widget (a `LookedAt`), None beside the pictures."""
        from configurator.drawing.plan.pointing import looked_at

        if self._sheet is None or self._study is None:
            return None
        leaves = [one.leaf for one in self._study.candidates]
        return looked_at(self._sheet, leaves, self._on_sheet(position))

    def name_under(self, position: QPointF) -> str:
        """Return what a client would call the dimension or part at a place of the widget, else nothing."""
        return name_at(self._named_spots(), self._on_sheet(position)) if self._sheet is not None else ""

    def spot_under(self, position: QPointF) -> Spot | None:
        """Return what is at a place of the widget, with its names; None for nothing."""
        return spot_at(self._named_spots(), self._on_sheet(position)) if self._sheet is not None else None

    def measured_under(self, position: QPointF) -> tuple[str, Any, str] | None:
        """Return leaf, what it hangs on and what is measured by the dimension there; None for none."""
        from configurator.drawing.plan.pointing import hinge_at

        if self._sheet is None or self._study is None:
            return None
        at = self._on_sheet(position)
        hinge = hinge_at(self._sheet, [one.leaf for one in self._study.candidates], at)
        measures = measured_at(self._named_spots(), at)
        return (*hinge, measures) if hinge is not None and measures else None

    def _named_spots(self) -> tuple[Spot, ...]:
        if not self._spots:
            self._spots = spots_of((*self._sheet.still, *self.turning_groups(), *self._sheet.notes))
        return self._spots

    def _on_sheet(self, position: QPointF) -> tuple[float, float]:
        """Return a place of the widget in points on the sheet."""
        share = POINTS_PER_INCH / DPI
        return position.x() * share, self._sheet.height - position.y() * share
