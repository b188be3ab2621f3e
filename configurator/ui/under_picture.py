"""What stands under the picture, one tab of three at a time: the comparison, the hinge, the finishes."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QSplitter, QTabWidget, QWidget

from configurator.ui.comparison import ComparisonTable
from configurator.ui.finish_panel import FinishPanel
from configurator.ui.hinge_panel import HingePanel
from configurator.ui.session import Session

ROOM = 280
"""Pixels the hinge and the finishes take when first shown; the comparison keeps what it has."""


class UnderPicture(QTabWidget):
    """The tabs; each keeps the height it was given last: the picture stays large over the comparison."""

    def __init__(self, session: Session, comparison: ComparisonTable) -> None:
        super().__init__()
        self.hinge = HingePanel(session)
        self.finishes = FinishPanel(session)
        self._heights: dict[int, int] = {}
        self._last = 0
        self.setDocumentMode(True)
        self.setAccessibleName("under the picture")
        pages: tuple[tuple[QWidget, str], ...] = (
            (comparison, "Compare widths"),
            (self.hinge, "Hinge and order line"),
            (self.finishes, "Finishes"),
        )
        for page, title in pages:
            self.addTab(page, title)
        self.currentChanged.connect(self._share_height)

    def minimumSizeHint(self) -> QSize:
        """Ask for no more than the tab on show needs, so that the comparison leaves the picture its room."""
        page = self.currentWidget()
        least = page.minimumSizeHint() if page is not None else QSize()
        return QSize(least.width(), least.height() + self.tabBar().sizeHint().height())

    def show_state(self) -> None:
        """Bring the tab on show in line with the session; the others catch up when they are shown."""
        self.hinge.show_state()
        self.finishes.show_state()

    def _share_height(self, place: int) -> None:
        split = self.parentWidget()
        if not isinstance(split, QSplitter):
            return
        self._heights[self._last] = self.height()
        self._last = place
        whole = sum(split.sizes())
        wanted = self._heights.get(place, max(self.height(), ROOM))
        split.setSizes([whole - wanted, wanted])
