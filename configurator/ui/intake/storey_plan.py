"""The storeys of a building model as pictures to click and to print: each door, its swing, how it stands."""

from collections.abc import Iterator
from pathlib import Path

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPixmap, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QFileDialog, QLabel, QPushButton, QSizePolicy, QWidget

from configurator.building.records import BuildingModel, ModelDoor, StoreyPlan
from configurator.drawing.base.style import inks
from configurator.drawing.base.view import AS_FRAMED, Framing
from configurator.drawing.pages.page import Page, usual_paper
from configurator.drawing.pages.storey_page import STANDINGS, StoreySheet, storey_page, storey_sheet
from configurator.model import Opening
from configurator.sentences import as_sentence
from configurator.ui.intake.work import ImportWork
from configurator.ui.kit.layout import StillCombo, across, down, fill
from configurator.ui.kit.look import GRID
from configurator.ui.kit.painter import paint_groups
from configurator.ui.kit.runner import Pieces
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session

HOW = (
    "Click a door to go to it. The wheel makes the plan larger where the pointer is; a double click beside "
    "the doors shows it whole."
)
FORMATS = "PDF page (*.pdf);;SVG picture (*.svg);;PNG picture (*.png);;DXF drawing (*.dxf)"
_POINTS_PER_PIXEL = 0.75
_WHEEL = 1.25
_MOST_ZOOM = 60.0


class StoreyCanvas(QWidget):
    """Paints one storey.

    Signals:
        picked: the global id of the door that was clicked.
        pointed: that of the door under the pointer, empty where there is none.
    """

    picked = Signal(str)
    pointed = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._storey: StoreyPlan | None = None
        self._doors: tuple[ModelDoor, ...] = ()
        self._named: dict[str, tuple[str, str]] = {}
        self._framing, self._dark = AS_FRAMED, False
        self._sheet: StoreySheet | None = None
        self._pixmap: QPixmap | None = None
        self.setMinimumSize(400, 280)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMouseTracking(True)
        self.setAccessibleName("Plan of the storey")

    def show_storey(
        self,
        storey: StoreyPlan | None,
        doors: tuple[ModelDoor, ...],
        named: dict[str, tuple[str, str]],
        dark: bool,
    ) -> None:
        """Show another storey, or the same with its doors standing otherwise."""
        if storey is not self._storey:
            self._framing = AS_FRAMED
        self._storey, self._doors, self._named, self._dark = storey, doors, named, dark
        self._redraw()

    @property
    def sheet(self) -> StoreySheet | None:
        """What is on show, in points."""
        if self._sheet is None and self._storey is not None:
            size = self.width() * _POINTS_PER_PIXEL, self.height() * _POINTS_PER_PIXEL
            self._sheet = storey_sheet(self._storey, self._doors, self._named, *size, self._framing)
        return self._sheet

    def _redraw(self) -> None:
        self._sheet, self._pixmap = None, None
        self.update()

    def _at(self, place: QPointF) -> tuple[float, float]:
        return place.x() * _POINTS_PER_PIXEL, (self.height() - place.y()) * _POINTS_PER_PIXEL

    def _door(self, place: QPointF) -> str:
        return "" if self.sheet is None else self.sheet.door_at(self._at(place))

    # --- Qt's own ---

    def paintEvent(self, _: QPaintEvent) -> None:
        """Paint the plan, drawn first where it is new."""
        ratio = self.devicePixelRatioF()
        if self._pixmap is None:
            self._pixmap = QPixmap(self.size() * ratio)
            self._pixmap.fill(QColor(inks()["paper"].on(self._dark)))
            if self.sheet is not None:
                painter = QPainter(self._pixmap)
                high = self.height() * _POINTS_PER_PIXEL
                paint_groups(self.sheet.groups, high, painter, ratio / _POINTS_PER_PIXEL, self._dark)
                painter.end()
            self._pixmap.setDevicePixelRatio(ratio)
        QPainter(self).drawPixmap(0, 0, self._pixmap)

    def resizeEvent(self, _: QResizeEvent) -> None:
        """Lay the plan out for another size."""
        self._redraw()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Say which door is under the pointer."""
        door = self._door(event.position())
        self.setCursor(Qt.CursorShape.PointingHandCursor if door else Qt.CursorShape.ArrowCursor)
        self.pointed.emit(door)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Pick the door under the pointer."""
        if door := self._door(event.position()):
            self.picked.emit(door)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Show the storey whole again, where no door is meant."""
        if not self._door(event.position()):
            self._framing = AS_FRAMED
            self._redraw()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Make the plan larger or smaller about the pointer."""
        grown = _WHEEL if event.angleDelta().y() > 0 else 1 / _WHEEL
        zoom = min(max(self._framing.zoom * grown, 1.0), _MOST_ZOOM)
        if self.sheet is None:
            return
        window = self.sheet.groups[0].view.window
        middle = (window.left + window.right) / 2, (window.bottom + window.top) / 2
        framing = self._framing.about(self._at(event.position()), middle, zoom / self._framing.zoom)
        self._framing = AS_FRAMED if zoom == 1.0 else Framing(zoom, framing.moved)
        self._redraw()
        event.accept()


class StoreyPlanWindow(QWidget):
    """A window of its own beside the page.

    Signals:
        row_asked: the line of the table of a door that is not in the job yet.
    """

    row_asked = Signal(int)

    def __init__(self, session: Session, work: ImportWork, owner: QWidget) -> None:
        super().__init__(owner, Qt.WindowType.Window)
        self.setWindowTitle("Plan of the storeys")
        self._session, self._work = session, work
        self._model: BuildingModel | None = None
        self._standings: dict[str, tuple[Opening, str]] = {}
        self.storeys, self.canvas = StillCombo(), StoreyCanvas()
        self.storeys.setAccessibleName("storey on show")
        self.print, self.save = QPushButton("Print…"), QPushButton("Save…")
        self.words = QLabel(HOW)
        self.words.setWordWrap(True)
        self.working = Pieces(self)
        head = across(self.storeys, (self.words, 1), self.save, self.print, spacing=2 * GRID)
        fill(self, down(head, (self.canvas, 1), spacing=GRID, margins=(GRID, GRID, GRID, GRID)))
        self.storeys.activated.connect(lambda _: self.show_state())
        self.canvas.picked.connect(self._pick)
        self.canvas.pointed.connect(self._say)
        self.print.clicked.connect(lambda _: self._print())
        self.save.clicked.connect(lambda _: self._ask_where())
        self.resize(1000, 700)

    @property
    def storey(self) -> StoreyPlan | None:
        """The storey on show."""
        model, place = self._work.model, self.storeys.currentIndex()
        return model.storeys[place] if model is not None and 0 <= place < len(model.storeys) else None

    def show_state(self) -> None:
        """Show the model and the job as they are now; how doors stand is worked out a few at a time."""
        model = self._work.model
        if model is not self._model:
            self._model = model
            self.storeys.clear()
            storeys = model.storeys if model is not None else ()
            self.storeys.addItems([storey.name or "Storey without a name" for storey in storeys])
            with_doors = {door.level for door in model.doors} if model is not None else set()
            first = next((n for n, storey in enumerate(storeys) if storey.name in with_doors), 0)
            self.storeys.setCurrentIndex(first if storeys else -1)
        self._show()
        self.working.start(self._work_out(), self._show)

    def page(self) -> Page:
        """Return the storey on show as a page."""
        assert self.storey is not None
        assert self._model is not None
        name = self._session.job.job.name or self._model.name or self._model.file
        paper = usual_paper(self._session.display)
        return storey_page(self.storey, self._model.doors, self._named(), paper, name)

    def write(self, path: Path) -> None:
        """Write the storey on show; what became of it is said in the window's line."""
        from configurator.export.pages import write_pages

        try:
            write_pages([self.page()], path)
        except (OSError, ValueError) as error:
            self.words.setText(as_sentence(f"{path.name} was not written: {error}"))
        else:
            self.words.setText(f"Written to {path.name}.")

    def _show(self) -> None:
        doors = self._model.doors if self._model is not None else ()
        self.canvas.show_storey(self.storey, doors, self._named(), self._session.dark)
        for button in (self.print, self.save):
            button.setEnabled(self.storey is not None)

    def _openings(self) -> dict[str, Opening]:
        return {one.global_id: one for one in self._session.job.openings if one.global_id}

    def _named(self) -> dict[str, tuple[str, str]]:
        """Return by global id what each door is called, and how it stands in the job."""
        openings = self._openings()
        marks = self._marks()
        named = {}
        for door in self._model.doors if self._model is not None else ():
            opening = openings.get(door.global_id)
            known, standing = self._standings.get(door.global_id, (None, ""))
            mark = opening.mark if opening is not None else marks.get(door.global_id, door.tag or door.name)
            named[door.global_id] = (mark, standing if opening is not None and known is opening else "")
        return named

    def _marks(self) -> dict[str, str]:
        """Return the marks of doors that are read and not yet taken."""
        compared = self._work.compared
        good = compared.good if compared is not None else ()
        return {row.opening.global_id: row.opening.mark for row in good if row.opening.global_id}

    def _work_out(self) -> Iterator[int]:
        """Study the openings of the storey on show that are not known yet."""
        openings, storey = self._openings(), self.storey
        doors = self._model.doors if self._model is not None and storey is not None else ()
        for done, door in enumerate(doors, 1):
            opening = openings.get(door.global_id)
            known = self._standings.get(door.global_id, (None, ""))[0]
            if (
                opening is not None
                and known is not opening
                and storey is not None
                and door.level == storey.name
            ):
                self._standings[door.global_id] = (opening, self._standing(opening))
            yield done

    def _standing(self, opening: Opening) -> str:
        try:
            found = self._session.studied(opening).all_findings()
        except RefusedError:
            return "refused"
        severities = {finding.severity for finding in found}
        return "fails" if "error" in severities else "warns" if "warning" in severities else "fine"

    def _say(self, key: str) -> None:
        if not key:
            self.words.setText(HOW)
            return
        mark, standing = self._named()[key]
        self.words.setText(as_sentence(f"{mark}: {STANDINGS[standing][2]}"))

    def _pick(self, key: str) -> None:
        """Go to a door: to its opening in the job, else to its row of the model."""
        opening = self._openings().get(key)
        if opening is not None:
            self._session.select(opening.mark)
        elif self._model is not None and self._work.table is not None:
            self.row_asked.emit([door.global_id for door in self._model.doors].index(key) + 1)

    def _print(self) -> None:
        from configurator.ui.sheets import printing

        page = self.page()
        printer = printing.printer_for(page, page.title)
        if printing.ask_printer(printer, 1, self):
            try:
                printing.print_all(printer, [page])
            except OSError as error:
                self.words.setText(f"Nothing was printed: {error}.")

    def _ask_where(self) -> None:
        folder = self._work.path.parent if self._work.path is not None else Path.home()
        start = str(folder / f"{self.storeys.currentText()}.pdf")
        name, _ = QFileDialog.getSaveFileName(self, "Save the plan", start, FORMATS)
        if name:
            self.write(Path(name))
