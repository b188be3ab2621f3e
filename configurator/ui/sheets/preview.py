"""The page as it will be printed, as large as the room allows or as large as it was asked for."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPixmap, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QStackedLayout, QWidget

from configurator.drawing.pages.page import Page, Paper, Scale
from configurator.drawing.sheets import FOR_A_CLIENT, plans_of_job, sheet_maker
from configurator.model import Job, JobFacts, Opening, Revision, Shop
from configurator.order.studied import NotStudied, study_or_fault
from configurator.study import Study
from configurator.study.hang import HangsOn, hinge_words
from configurator.ui.kit.look import GRID
from configurator.ui.kit.painter import paint_groups, paint_logo
from configurator.units import Display

STEP = 1.25
LEAST, MOST = 0.25, 4.0
"""Pixels of the screen at 96 an inch for one of paper, at the least and the most."""
_SCREEN = 96.0 / 72.0
_MOST_PIXELS = 40_000_000
"""No picture of a page is larger than this; it would take 160 MB."""
_AIR = 4 * GRID
_TINY = 0.05


class _Paper(QWidget):
    """The page on its ground, kept as a picture until it is another page or another size."""

    def __init__(self) -> None:
        super().__init__()
        self.page: Page | None = None
        self.zoom = 1.0
        self._picture: QPixmap | None = None

    def show_page(self, page: Page | None, zoom: float) -> None:
        """Show a page at a zoom, 1 being as large as it is printed."""
        if page is not self.page or zoom != self.zoom:
            self._picture = None
        self.page, self.zoom = page, zoom
        wide, high = (0.0, 0.0) if page is None else self._size(page)
        self.setMinimumSize(QSize(round(wide) + 2 * _AIR, round(high) + 2 * _AIR))
        self.update()

    def _size(self, page: Page) -> tuple[float, float]:
        wide, high = page.paper.points
        return wide * self.zoom * _SCREEN, high * self.zoom * _SCREEN

    def paintEvent(self, _: QPaintEvent) -> None:
        """Lay the picture of the page in the middle, drawn when it is first needed."""
        if self.page is None:
            return
        wide, high = self._size(self.page)
        ratio = self.devicePixelRatioF()
        if self._picture is None or self._picture.devicePixelRatio() != ratio:
            self._picture = picture_of(self.page, self.zoom * _SCREEN, ratio)
        left, top = max((self.width() - wide) / 2, 0.0), max((self.height() - high) / 2, 0.0)
        painter = QPainter(self)
        painter.drawPixmap(QPointF(left, top), self._picture)
        painter.setPen(QColor("#8c877c"))
        painter.drawRect(QRectF(left, top, wide, high))
        painter.end()


class _Area(QScrollArea):
    """Moves over the page.

    Signals:
        zoom_asked: the wheel was turned with the control key held; the argument says whether to enlarge.
    """

    zoom_asked = Signal(bool)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom with the control key; without it the page is moved."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and event.angleDelta().y():
            self.zoom_asked.emit(event.angleDelta().y() > 0)
            event.accept()
            return
        super().wheelEvent(event)


class SheetPreview(QFrame):
    """The page with room to move over it, or words where there is none.

    Signals:
        zoomed: the page is shown larger or smaller than before.
    """

    zoomed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.page: Page | None = None
        self.whole = True
        self._zoom = 1.0
        self.paper, self.words, self.area = _Paper(), QLabel(), _Area()
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setWidget(self.paper)
        self.area.zoom_asked.connect(self.step)
        self.paper.setAccessibleName("the sheet as it will be printed")
        self.words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.words.setWordWrap(True)
        self.words.setMargin(8 * GRID)
        self._stack = QStackedLayout(self)
        self._stack.addWidget(self.area)
        self._stack.addWidget(self.words)
        self.setMinimumSize(80 * GRID, 60 * GRID)

    @property
    def zoom(self) -> float:
        """How large the page is shown, 1 being as large as it is printed."""
        return self._whole_page() if self.whole else self._zoom

    def show_page(self, page: Page) -> None:
        """Show a page, the whole of it or as large as it was zoomed last."""
        self.page = page
        self.paper.setAccessibleDescription(page.title)
        self._stack.setCurrentWidget(self.area)
        self._show()

    def show_words(self, words: str) -> None:
        """Show why there is no page."""
        self.page = None
        self.words.setText(words)
        self._stack.setCurrentWidget(self.words)
        self._show()

    def step(self, larger: bool) -> None:
        """Show the page one step larger or smaller."""
        before = self.zoom
        wanted = before * (STEP if larger else 1 / STEP)
        self.whole = False
        self._zoom = min(max(wanted, LEAST), self._most())
        self._show()
        self._keep_middle(self._zoom / before)

    def show_whole(self) -> None:
        """Show the whole page, however large the window."""
        self.whole = True
        self._show()

    def _keep_middle(self, grown: float) -> None:
        """Keep in the middle of the room what stood there before the page grew."""
        self.paper.adjustSize()
        for bar in (self.area.horizontalScrollBar(), self.area.verticalScrollBar()):
            half = bar.pageStep() / 2
            bar.setValue(round((bar.value() + half) * grown - half))

    def _most(self) -> float:
        """Return the zoom at which the picture of the page takes as much memory as it may."""
        if self.page is None:
            return MOST
        wide, high = self.page.paper.points
        pixels = wide * high * (_SCREEN * self.devicePixelRatioF()) ** 2
        return float(min(MOST, (_MOST_PIXELS / pixels) ** 0.5))

    def _whole_page(self) -> float:
        if self.page is None:
            return 1.0
        wide, high = self.page.paper.points
        room = self.area.maximumViewportSize()
        fits = min((room.width() - 2 * _AIR) / wide, (room.height() - 2 * _AIR) / high) / _SCREEN
        return float(min(max(fits, _TINY), self._most()))

    def _show(self) -> None:
        self.paper.show_page(self.page, self.zoom)
        self.zoomed.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the whole page in sight."""
        super().resizeEvent(event)
        if self.whole:
            self._show()


def picture_of(page: Page, points: float, ratio: float = 1.0) -> QPixmap:
    """Return a page as a picture, so many pixels for a point on a screen of that ratio."""
    wide, high = page.paper.points
    picture = QPixmap(max(round(wide * points * ratio), 1), max(round(high * points * ratio), 1))
    picture.fill(QColor("white"))
    painter = QPainter(picture)
    paint_groups(page.groups, high, painter, points * ratio)
    paint_logo(page.logo, high, painter, points * ratio)
    painter.end()
    picture.setDevicePixelRatio(ratio)
    return picture


KINDS: Mapping[str, str] = MappingProxyType(
    {
        "plan": "Plan at the hinge",
        "elevation": "Elevation, hinge locations",
        "prep": "Preparation for hinges",
        "sections": "Sections of frame and wall",
        "before-after": "Before and after",
        "client": "Page for the client",
    }
)
"""The kinds of sheets in the order they are offered, and what the window calls them."""
OF_THE_SHOP = "client"
"""The kind that the shop's name and logo stand on."""
ONE_WIDTH_OF = "plan"
"""The kind that can be drawn of one hinge width alone, which it then draws large."""


@dataclass(frozen=True, slots=True)
class SheetChoice:
    """What is to be laid out, and how; a scale of None is fitted, a width of None is every one compared.

    The hinge open width, inches, is asked of a plan only: the other sheets choose theirs.
    """

    kind: str
    paper: Paper
    scale: Scale | None
    display: Display
    width: "HangsOn | None" = None
    shop: Shop = field(default_factory=Shop)
    revisions: tuple[Revision, ...] = ()

    def page(self, study: Study, job: JobFacts, number: tuple[int, int] = (1, 1)) -> Page:
        """Return the sheet of one opening. Raises ValueError, in words, where it cannot be drawn so."""
        found, how = self._narrowed(study), (self.paper, self.scale, self.display, number)
        if self.kind == OF_THE_SHOP:
            from configurator.drawing.client.client_page import client_page

            return client_page(found, job, *how, self.shop)
        return sheet_maker(self.kind, self.revisions)(found, job, *how)

    def _narrowed(self, study: Study) -> Study:
        if self.width is None or self.kind != ONE_WIDTH_OF:
            return study
        found = tuple(one for one in study.candidates if one.on == self.width)
        if not found:
            raise ValueError(f"{hinge_words(self.width)} is not among the widths compared")
        return replace(study, candidates=found)


def pages_of(
    openings: Sequence[Opening], job: JobFacts, choice: SheetChoice, not_drawn: list[str]
) -> Iterator[Page]:
    """Yield the sheet of each opening, studied and laid out when it is asked for.

    Of one that cannot be drawn, `not_drawn` is told the mark and why; the others keep their numbers.
    """
    for number, opening in enumerate(openings, 1):
        found = study_or_fault(opening, job)
        if isinstance(found, NotStudied):
            not_drawn.append(f"{opening.mark}: {found.fault}")
            continue
        try:
            page = choice.page(found, job, (number, len(openings)))
        except ValueError as error:
            not_drawn.append(f"{opening.mark}: {error}")
        else:
            yield page


def sheets_of_job(job: Job, choice: SheetChoice, not_drawn: list[str], together: bool) -> Iterator[Page]:
    """Yield the index and the sheets of all openings, or with `together` plans of several on each.

    All are laid out before the first. Pages for a client have no index.
    """
    from configurator.drawing.pages.job_pages import with_index

    if choice.kind in FOR_A_CLIENT and not together:
        not_drawn.append("The index: pages for a client have none.")
        yield from pages_of(job.openings, job.job, choice, not_drawn)
        return
    kind = ONE_WIDTH_OF if together else choice.kind
    if together:
        pages = plans_of_job(_studies(job, not_drawn), job, choice.paper, choice.scale, choice.display)
    else:
        pages = pages_of(job.openings, job.job, choice, not_drawn)
    yield from with_index(list(pages), job, choice.paper, choice.display, KINDS[kind])


def _studies(job: Job, not_drawn: list[str]) -> Iterator[Study]:
    for opening in job.openings:
        found = study_or_fault(opening, job.job)
        if isinstance(found, NotStudied):
            not_drawn.append(f"{opening.mark}: {found.fault}")
        else:
            yield found
