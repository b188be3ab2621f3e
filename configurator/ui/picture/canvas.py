"""The picture in the work: shown larger and moved, all panels alike, and measured in."""

import math
from typing import Any

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QCursor,
    QFocusEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPaintEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QGestureEvent, QPinchGesture, QWidget

from configurator.drawing.base.style import materials
from configurator.drawing.base.view import AS_FRAMED, Box, Framing
from configurator.drawing.plan.measuring import Snap, distance_words, drawn_parts, snapped
from configurator.drawing.plan.panel import Panel
from configurator.drawing.plan.pointing import Pointed, direction, leaf_at
from configurator.drawing.plan.sheet import plan_sheet
from configurator.export.figure import POINTS_PER_INCH
from configurator.study.derivation.working import Mark
from configurator.ui.kit.canvas import DPI, PlanCanvas

STEP = 1.25
"""How much larger one step shows the picture."""
LEAST, MOST = 0.25, 12.0
HOW_TO_MEASURE = "Click two places of the picture: corners, centres and edges hold. Esc ends it."
_NOTCH = 120.0
"""What Qt counts for one notch of a wheel."""
_NEAR = 9.0
"""A place within so many pixels of the pointer is taken for measuring."""
_SOON = 40
"""Milliseconds until a picture that was only moved is drawn anew."""
_DRAGGED = 3.0
"""Pixels a pressed pointer moves before the picture goes with it."""


class PictureCanvas(PlanCanvas):
    """The wheel, a pinch or a step zooms; dragging the leaf turns it, the ground moves the picture.

    With the space bar held all of it is ground. While measuring, a click takes a place.

    Signals:
        measured: what was measured, in words; empty when measuring ends.
        turned: the leaf was dragged to an angle, degrees.
        menu_asked: a menu is asked for; the arguments are the place of the widget and that of the screen.
    """

    measured = Signal(str)
    turned = Signal(float)
    menu_asked = Signal(object, object)

    def __init__(self, parent: QWidget | None = None) -> None:
        self.framing = AS_FRAMED
        self.kinds: frozenset[str] = frozenset()
        """Kinds of parts that have their dimensions too."""
        self.measuring = False
        self._from: tuple[int, Snap] | None = None
        self._held: QPointF | None = None
        self._leaf_held: tuple[Panel, float] | None = None
        self._dragging = self._space = False
        self._last: tuple[Framing, QImage] | None = None
        self._soon = QTimer(singleShot=True, interval=_SOON)
        super().__init__(parent)
        self._soon.setParent(self)
        self._soon.timeout.connect(self.settle)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.grabGesture(Qt.GestureType.PinchGesture)

    # --- Larger, smaller, elsewhere ---

    def lay_out(self, width: float, height: float) -> Any:
        """Return the picture laid out so many points wide and high, as it is framed."""
        assert self._study is not None
        return plan_sheet(
            self._study,
            self._display,
            width,
            height,
            plain=self._plain,
            swept=self._swept,
            framing=self.framing,
            kinds=self.kinds,
        )

    def frame(self, framing: Framing) -> None:
        """Show the picture framed so."""
        if framing != self.framing:
            self.framing = framing
            self._redraw()

    def frame_soon(self, framing: Framing) -> None:
        """Show it framed so at once, as the last picture moved; it is drawn anew some moments later.

        So a wheel and a dragged picture are followed as quickly as a swing.
        """
        if framing == self.framing or self._sheet is None:
            return
        if self._last is None:
            self._last = (self.framing, _image_of(self))
        self.framing = framing
        self.update()
        if not self._soon.isActive():
            self._soon.start()

    def settle(self) -> None:
        """Draw anew what was only moved."""
        if self._last is not None:
            self._redraw()

    def _redraw(self) -> None:
        self._last = None
        self._soon.stop()
        super()._redraw()

    def set_angle(self, angle: float) -> None:
        """Swing the leaves to `angle` degrees, in the picture as it is framed now."""
        self.settle()
        super().set_angle(angle)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the picture, or the last one moved to where it is framed now."""
        if self._last is None:
            super().paintEvent(event)
            return
        (before, image), now, share = self._last, self.framing, DPI / POINTS_PER_INCH
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(0, 0, image)
        for window in self._sheet.windows:
            left, top = window.left * share, (self._sheet.height - window.top) * share
            seen = QRectF(left, top, window.width * share, window.height * share)
            painter.save()
            painter.setClipRect(seen)
            painter.fillRect(seen, QColor(materials()["paper"].ground.on(self._dark)))
            painter.translate(seen.center() + _pixels(now.moved))
            painter.scale(now.zoom / before.zoom, now.zoom / before.zoom)
            painter.translate(-seen.center() - _pixels(before.moved))
            painter.drawImage(0, 0, image)
            painter.restore()
        painter.end()

    def forget_framing(self) -> None:
        """Frame the next opening of itself, and measure nothing of the one before."""
        self.framing, self._from = AS_FRAMED, None

    def step(self, way: int) -> None:
        """Show it a step larger or, for -1, smaller."""
        self.zoom(STEP**way)

    def fit(self) -> None:
        """Show the picture as it is framed of itself."""
        self.frame(AS_FRAMED)

    def zoom(self, grown: float, position: QPointF | None = None) -> None:
        """Show it so much larger; what lies at a place of the widget, as a rule the hinge, stays there."""
        if position is None:
            self.settle()
        if self._sheet is None or not self._sheet.panels:
            return
        panel = self._panel_at(position) if position is not None else None
        view = self._sheet.panels[panel or 0].main.view
        at = self._on_sheet(position) if position is not None and panel is not None else self._hinge()
        grown = min(max(grown, LEAST / self.framing.zoom), MOST / self.framing.zoom)
        framing = self.framing.about(at, _middle(view.window), grown)
        (self.frame if position is None else self.frame_soon)(framing)

    def show_true_size(self) -> None:
        """Show an inch of the plan as an inch of the screen, as far as the screen knows its own size."""
        if self._sheet is not None and self._sheet.panels:
            pixels = self.screen().physicalDotsPerInch()
            wanted = (pixels if 48 <= pixels <= 480 else DPI) * POINTS_PER_INCH / DPI
            self.zoom(wanted / self._sheet.panels[0].main.view.scale)

    def _hinge(self) -> tuple[float, float]:
        """Return where the first panel shows the pin, points; its middle where the pin is out of sight."""
        first = self._sheet.panels[0]
        view = first.main.view
        at: tuple[float, float] = view.to_sheet(first.hung.pin.at)
        return at if view.window.has(at) else _middle(view.window)

    def _panel_at(self, position: QPointF) -> int | None:
        at = self._on_sheet(position)
        panels = self._sheet.panels if self._sheet is not None else ()
        return next((n for n, one in enumerate(panels) if one.main.view.window.has(at)), None)

    def _move(self, by: QPointF) -> None:
        share = POINTS_PER_INCH / DPI
        x, y = self.framing.moved
        self.frame_soon(Framing(self.framing.zoom, (x + by.x() * share, y - by.y() * share)))

    # --- Measuring ---

    def measure(self, wanted: bool) -> None:
        """Begin to measure, or end it and take the measure away."""
        self.measuring, self._from = wanted, None
        self.setCursor(Qt.CursorShape.CrossCursor if wanted else Qt.CursorShape.ArrowCursor)
        self.point_at(None)
        if wanted:
            self.setFocus()  # so that Esc ends it
        self.measured.emit(HOW_TO_MEASURE if wanted else "")

    def snap(self, position: QPointF) -> tuple[int, Snap] | None:
        """Return the panel at a place of the widget and what in its plan to measure from; None beside."""
        panel = self._panel_at(position)
        if panel is None:
            return None
        one = self._sheet.panels[panel]
        view = one.main.view
        near = _NEAR * POINTS_PER_INCH / DPI / view.scale
        at = view.to_plan(self._on_sheet(position))
        return panel, snapped(drawn_parts(one, self._angle), at, near)

    def _take(self, position: QPointF) -> None:
        found = self.snap(position)
        if found is None:
            return
        if self._from is None or self._from[0] != found[0]:
            self._from = found
            self._show_measure(found, found)
        else:
            self._show_measure(self._from, found)
            self._from = None

    def _show_measure(self, start: tuple[int, Snap], end: tuple[int, Snap]) -> None:
        """Draw the line measured so far, and tell how long it is."""
        assert self._study is not None
        panel, (a, b) = start[0], (start[1], end[1])
        words = distance_words(a.point, b.point, self._display)
        candidate = self._study.candidates[panel]
        mark = Mark(((a.point, b.point),))
        self.point_at(Pointed(candidate.leaf, candidate.hinge_width, mark, words.partition(" (")[0]))
        ends = " to ".join(one.what or "a free place" for one in (a, b))
        self.measured.emit(f"{words}, {ends}")

    # --- Qt's own names ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a place while measuring, else hold the leaf or the picture."""
        self.settle()
        left = event.button() == Qt.MouseButton.LeftButton
        if left and self.measuring:
            self._take(event.position())
        elif left and (panel := self._leaf_under(event.position())) is not None:
            stands = math.degrees(panel.hung.shown_at(math.radians(self._angle)))
            self._leaf_held = (panel, direction(panel, self._on_sheet(event.position())) - stands)
        elif left or event.button() == Qt.MouseButton.MiddleButton:
            self._held, self._dragging = event.position(), False
        self._show_cursor(event.position())
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Turn the leaf or move the picture that is held; else tell what is under the pointer."""
        if self._leaf_held is not None:
            panel, ahead = self._leaf_held
            turned = direction(panel, self._on_sheet(event.position())) - ahead
            self.turned.emit(min(max((turned + 90.0) % 360.0 - 90.0, 0.0), 180.0))
        elif self._held is not None:
            by = event.position() - self._held
            if self._dragging or by.manhattanLength() > _DRAGGED:
                self._dragging, self._held = True, event.position()
                self._move(by)
        else:
            self._measure_on(event.position())
            self._show_cursor(event.position())
            super().mouseMoveEvent(event)

    def _measure_on(self, position: QPointF) -> None:
        """Show how far it is from the place taken to the pointer."""
        if self.measuring and self._from is not None:
            found = self.snap(position)
            if found is not None and found[0] == self._from[0]:
                self._show_measure(self._from, found)

    def _leaf_under(self, position: QPointF) -> Panel | None:
        if self._sheet is None or self._space:
            return None
        return leaf_at(self._sheet, self._angle, self._on_sheet(position))

    def _show_cursor(self, position: QPointF) -> None:
        """A hand over what can be dragged, closed while it is."""
        shapes = Qt.CursorShape
        if self.measuring:
            shape = shapes.CrossCursor
        elif self._held is not None or self._leaf_held is not None:
            shape = shapes.ClosedHandCursor
        else:
            over = self._space or self._leaf_under(position) is not None
            shape = shapes.OpenHandCursor if over else shapes.ArrowCursor
        if shape != self.cursor().shape():
            self.setCursor(shape)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of leaf and picture."""
        self._held, self._leaf_held, self._dragging = None, None, False
        self._show_cursor(event.position())
        super().mouseReleaseEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for a menu about what is under the pointer."""
        self.settle()
        self.menu_asked.emit(QPointF(event.pos()), event.globalPos())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer."""
        self.zoom(STEP ** (event.angleDelta().y() / _NOTCH), event.position())
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc ends measuring; the space bar makes ground of everything as long as it is held."""
        if event.key() == Qt.Key.Key_Escape and self.measuring:
            self.measure(False)
        elif event.key() == Qt.Key.Key_Space:
            self._hold_space(True)
        else:
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Let go of the space bar."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._hold_space(False)
        else:
            super().keyReleaseEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """A space bar let go elsewhere is not heard of."""
        self._hold_space(False)
        super().focusOutEvent(event)

    def _hold_space(self, held: bool) -> None:
        self._space = held
        self._show_cursor(QPointF(self.mapFromGlobal(QCursor.pos())))

    def event(self, event: QEvent) -> bool:
        """Zoom with two fingers, on a screen or a touch pad."""
        if isinstance(event, QNativeGestureEvent):
            if event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture:
                self.zoom(1.0 + event.value(), event.position())
                return True
        elif isinstance(event, QGestureEvent):
            pinch = event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(pinch, QPinchGesture):
                self.zoom(pinch.scaleFactor(), QPointF(self.mapFromGlobal(pinch.centerPoint())))
                return True
        return bool(super().event(event))


def _middle(window: Box) -> tuple[float, float]:
    return (window.left + window.right) / 2, (window.bottom + window.top) / 2


def _pixels(moved: tuple[float, float]) -> QPointF:
    share = DPI / POINTS_PER_INCH
    return QPointF(moved[0] * share, -moved[1] * share)


def _image_of(canvas: PlanCanvas) -> QImage:
    """Return what the canvas shows."""
    pixels = canvas.buffer_rgba()
    high, wide = pixels.shape[:2]
    image = QImage(pixels, wide, high, QImage.Format.Format_RGBA8888).copy()
    image.setDevicePixelRatio(canvas.devicePixelRatioF())
    return image
