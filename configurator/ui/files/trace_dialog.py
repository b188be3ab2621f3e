"""Lines of an architect's drawing for the opening on show, in one dialog: unit, layers, and where it lies.

A click into the drawing says which of its points is the corner of the hinge jamb.
"""

import math
from pathlib import Path

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QFormLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QWidget,
)

from configurator.drawing.base.primitives import Point
from configurator.drawing.base.view import Box, box_around
from configurator.export.dxf.reading import INCHES, ForeignDrawing, read_drawing
from configurator.export.dxf.tracing import USES, Placing, traced
from configurator.sentences import as_sentence
from configurator.ui.kit.layout import BARE, StillCombo, across, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state.session import Session

_NEAR = 12.0
"""A click so many pixels from the end of a line means that end."""
_AIR = 10.0
_USES = ("background of the plan", "outline of the frame")


class DrawingView(QWidget):
    """The chosen layers of a drawing, whole, with a cross where its corner of the jamb is.

    Signals:
        picked: the point of the drawing that was clicked, or the end of a line near it.
    """

    picked = Signal(float, float)

    def __init__(self) -> None:
        super().__init__()
        self.lines: list[tuple[Point, ...]] = []
        self.corner: Point | None = None
        self.setMinimumSize(60 * GRID, 50 * GRID)
        self.setAccessibleName("the drawing: click the corner of the hinge jamb")
        self.setCursor(Qt.CursorShape.CrossCursor)

    def show_lines(self, lines: list[tuple[Point, ...]], corner: Point | None) -> None:
        """Show lines, in the drawing's own units."""
        self.lines, self.corner = lines, corner
        self.update()

    def place_of(self, point: Point) -> QPointF:
        """Return where a point of the drawing is shown."""
        box, scale = self._framed()
        across, up = point[0] - (box.left + box.right) / 2, point[1] - (box.bottom + box.top) / 2
        return QPointF(self.width() / 2 + scale * across, self.height() / 2 - scale * up)

    def _framed(self) -> tuple[Box, float]:
        box = box_around([point for line in self.lines for point in line])
        wide, high = max(box.width, 1e-9), max(box.height, 1e-9)
        return box, max(min((self.width() - 2 * _AIR) / wide, (self.height() - 2 * _AIR) / high), 1e-12)

    def paintEvent(self, _: QPaintEvent) -> None:
        """Draw the lines on the ground of a list, and the corner."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), self.palette().base())
        if self.lines:
            painter.setPen(QPen(self.palette().text().color(), 1.0))
            path = QPainterPath()
            for line in self.lines:
                path.moveTo(self.place_of(line[0]))
                for point in line[1:]:
                    path.lineTo(self.place_of(point))
            painter.drawPath(path)
        if self.lines and self.corner is not None:
            at = self.place_of(self.corner)
            painter.setPen(QPen(self.palette().highlight().color(), 2.0))
            painter.drawLine(at - QPointF(_NEAR, 0), at + QPointF(_NEAR, 0))
            painter.drawLine(at - QPointF(0, _NEAR), at + QPointF(0, _NEAR))
            painter.drawEllipse(QRectF(at.x() - 4, at.y() - 4, 8, 8))
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Pick the end of a line that is near, else the place itself."""
        if not self.lines or event.button() != Qt.MouseButton.LeftButton:
            return
        ends = {point for line in self.lines for point in line}
        near = min(ends, key=lambda point: self._distance(point, event.position()))
        if self._distance(near, event.position()) > _NEAR:
            box, scale = self._framed()
            x = (box.left + box.right) / 2 + (event.position().x() - self.width() / 2) / scale
            y = (box.bottom + box.top) / 2 - (event.position().y() - self.height() / 2) / scale
            near = (x, y)
        self.picked.emit(*near)

    def _distance(self, point: Point, at: QPointF) -> float:
        shown = self.place_of(point)
        return math.hypot(shown.x() - at.x(), shown.y() - at.y())


class TraceDialog(QDialog):
    """Asks for a drawing and how it lies; takes its lines as one step of the history."""

    def __init__(self, owner: QWidget, session: Session) -> None:
        super().__init__(owner)
        self.session = session
        self.drawing: ForeignDrawing | None = None
        self.file, self.choose = QLabel("No drawing chosen yet."), QPushButton("Choose a drawing (DXF)…")
        self.use, self.unit = StillCombo(), StillCombo()
        self.layers, self.view, self.message = QListWidget(), DrawingView(), QLabel()
        self.at, self.turn, self.mirror = QLineEdit("0, 0"), QLineEdit("0"), QCheckBox("mirrored")
        kinds = QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel
        self.buttons = QDialogButtonBox(kinds)
        self.remove = self.buttons.addButton("Remove background", QDialogButtonBox.ButtonRole.ResetRole)
        self._put_together()
        self._connect()

    def ask(self) -> None:
        """Show the dialog for the opening on show."""
        self.setWindowTitle(f"Lines of a drawing for {self.session.mark}")
        opening = self.session.opening
        self.remove.setEnabled(opening is not None and opening.background is not None)
        self._say("")
        self.open()

    def read(self, path: Path) -> None:
        """Read a drawing and show its layers, or say why it cannot be read."""
        try:
            drawing = read_drawing(path)
        except OSError as error:
            self._say(f"{path.name} cannot be read: {error.strerror or error}")
            return
        except ValueError as error:
            self._say(str(error))
            return
        self.drawing = drawing
        left = ", ".join(f"{count:,} {kind}" for kind, count in drawing.not_read.items())
        self.file.setText(drawing.name + (f"; no lines, so not taken: {left}" if left else ""))
        self._fill_unit(drawing.units)
        self._fill_layers(drawing)
        self._say("" if drawing.units else "The drawing does not say its unit: choose it.")

    def take(self) -> bool:
        """Take the lines into the opening on show; say why not where they cannot be that."""
        opening = self.session.opening
        if opening is None or self.drawing is None:
            self._say("Choose a drawing first.")
            return False
        use = USES[self.use.currentIndex()]
        try:
            changed, _ = traced(opening, use, self.drawing, self._placing())
        except ValueError as error:
            self._say(str(error))
            return False
        path, record = ("background", changed.background) if use == USES[0] else ("frame", changed.frame)
        assert record is not None
        if not self.session.edit(path, record.model_dump(exclude_unset=True)):
            self._say(self.session.refusals[path].sentence)
            self.session.withdraw(path)
            return False
        return True

    def _placing(self) -> Placing:
        """Raises ValueError for what is no number."""
        words = self.at.text().split(",")
        try:
            x, y = map(float, words)
            turn = float(self.turn.text() or 0)
        except ValueError:
            raise ValueError("the corner is two numbers, as 1204.5, 388, and the turn is degrees") from None
        return Placing((x, y), self.unit.currentData() or "", self._chosen(), turn, self.mirror.isChecked())

    def _chosen(self) -> tuple[str, ...]:
        items = (self.layers.item(row) for row in range(self.layers.count()))
        return tuple(item.data(Qt.ItemDataRole.UserRole) for item in items if _is_checked(item))

    def _fill_unit(self, said: str) -> None:
        self.unit.clear()
        if not said:
            self.unit.addItem("not said: choose", "")
        for unit in INCHES:
            self.unit.addItem(f"{unit}, as the drawing says" if unit == said else unit, unit)
        self.unit.setCurrentIndex(max(self.unit.findData(said), 0))

    def _fill_layers(self, drawing: ForeignDrawing) -> None:
        self.layers.blockSignals(True)
        self.layers.clear()
        for name, count in drawing.layers.items():
            item = QListWidgetItem(f"{name}  ({count:,} {'line' if count == 1 else 'lines'})")
            item.setData(Qt.ItemDataRole.UserRole, name)
            item.setCheckState(Qt.CheckState.Checked)
            self.layers.addItem(item)
        self.layers.blockSignals(False)
        self._show()

    def _show(self) -> None:
        chosen = set(self._chosen())
        lines = self.drawing.lines if self.drawing else ()
        try:
            corner: Point | None = self._placing().at
        except ValueError:
            corner = None
        self.view.show_lines([line.points for line in lines if line.layer in chosen], corner)

    def _say(self, words: str) -> None:
        self.message.setText(as_sentence(words) if words else "")
        tinted(self.message, "error", self.session.dark)

    def _put_together(self) -> None:
        self.use.addItems(_USES)
        self.message.setWordWrap(True)
        self.file.setWordWrap(True)
        self.layers.setAccessibleName("layers to take")
        form = QFormLayout()
        side = down(self.choose, self.file, form, self.message, spacing=GRID, margins=BARE)
        fill(self, down(across((self.view, 1), side, spacing=2 * GRID), self.buttons, spacing=GRID))
        for words, widget, tip in (
            ("Take as", self.use, "Lines under the plan, or the frame's own outline"),
            ("Unit", self.unit, "Of the drawing; asked where its file does not say it"),
            ("Layers", self.layers, "The layers to take"),
            (
                "Corner",
                self.at,
                "Where frame and rabbet face of the hinge jamb meet: click it, or type x, y",
            ),
            ("Turned", self.turn, "Degrees that turn the drawing so that the pull side is up"),
            ("", self.mirror, "Mirror the drawing left to right"),
        ):
            widget.setToolTip(tip)
            form.addRow(words, widget)
        self.resize(200 * GRID, 120 * GRID)

    def _connect(self) -> None:
        self.choose.clicked.connect(self._ask_for_file)
        self.layers.itemChanged.connect(lambda _: self._show())
        self.at.textChanged.connect(lambda _: self._show())
        self.view.picked.connect(lambda x, y: self.at.setText(f"{x:.4f}, {y:.4f}"))
        self.buttons.accepted.connect(lambda: self._end(self.take()))
        self.buttons.rejected.connect(self.reject)
        self.remove.clicked.connect(lambda: self._end(self.session.edit("background", None)))

    def _end(self, done: bool) -> None:
        if done:
            self.accept()

    def _ask_for_file(self) -> None:
        start = self.session.path.parent if self.session.path else Path.home()
        name, _ = QFileDialog.getOpenFileName(self, "Choose a drawing", str(start), "Drawings (*.dxf)")
        if name:
            self.read(Path(name))


def _is_checked(item: QListWidgetItem) -> bool:
    return item.checkState() == Qt.CheckState.Checked
