"""What stands under the picture, one tab at a time: all but the first are made when first asked for."""

from collections.abc import Callable
from importlib import import_module
from typing import Any

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QSplitter, QTabWidget, QVBoxLayout, QWidget

from configurator.ui.analysis.comparison import ComparisonTable
from configurator.ui.state.session import Session

ROOM = 280
"""Pixels a tab takes when first shown; the comparison keeps what it has."""
HINGE, FINISHES, WORK = "Hinge and order line", "Finishes", "Show the work"
LATER: tuple[tuple[str, str, str], ...] = (
    (HINGE, "configurator.ui.hinge.hinge_panel", "HingePanel"),
    (FINISHES, "configurator.ui.hinge.finish_panel", "FinishPanel"),
    ("Widths and angles", "configurator.ui.analysis.widths_and_angles", "WidthsAndAngles"),
    ("Over the swing", "configurator.ui.analysis.over_the_swing", "OverTheSwingPage"),
    ("How sure", "configurator.ui.analysis.tolerance_page", "TolerancePage"),
    ("What if", "configurator.ui.analysis.what_if", "WhatIfPage"),
    (WORK, "configurator.ui.analysis.derivation_page", "DerivationPage"),
)
"""Title, module and class of the pages that are loaded when first shown; each has a `show_state`."""


class LaterPage(QWidget):
    """Room for a page that is made when it is first shown, so that the window opens no later for it."""

    def __init__(self, make: Callable[[], Any]) -> None:
        super().__init__()
        self._make = make
        self.page: Any = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)

    def show_state(self) -> None:
        """Bring the page in line with the session, if it is on show; made on first use."""
        if not self.isVisible():
            return
        if self.page is None:
            self.page = self._make()
            layout = self.layout()
            assert layout is not None
            layout.addWidget(self.page)
            # A layout shows what is added to it only later, and a page not on show has nothing to show.
            self.page.show()
        self.page.show_state()


class UnderPicture(QTabWidget):
    """The tabs; each keeps the height it was given last: the picture stays large over the comparison."""

    def __init__(self, session: Session, comparison: ComparisonTable) -> None:
        super().__init__()
        self.later = {title: LaterPage(_maker(module, name, session)) for title, module, name in LATER}
        self._heights: dict[int, int] = {}
        self._last = 0
        self.setDocumentMode(True)
        self.setAccessibleName("under the picture")
        pages: tuple[tuple[QWidget, str], ...] = (
            (comparison, "Compare widths"),
            *((page, title) for title, page in self.later.items()),
        )
        for page, title in pages:
            self.addTab(page, title)
        self.currentChanged.connect(self._share_height)
        comparison.work_wanted.connect(self.show_work)
        session.work_asked.connect(lambda one: self.show_work(one.leaf, one.key, one.column))

    def minimumSizeHint(self) -> QSize:
        """Ask for no more than the tab on show needs, so that the comparison leaves the picture its room."""
        page = self.currentWidget()
        least = page.minimumSizeHint() if page is not None else QSize()
        return QSize(least.width(), least.height() + self.tabBar().sizeHint().height())

    def show_state(self) -> None:
        """Bring the tab on show in line with the session; the others catch up when they are shown."""
        for page in self.later.values():
            page.show_state()

    def show_work(self, leaf: str, key: str, column: int) -> None:
        """Show where a number of the comparison comes from; column -1 is the difference."""
        from configurator.drawing.derivation_words import Asked

        later = self.later[WORK]
        self.setCurrentWidget(later)
        if later.page is not None:
            later.page.ask(Asked(leaf, key, column))

    def _share_height(self, place: int) -> None:
        for page in self.later.values():
            page.show_state()
        split = self.parentWidget()
        if not isinstance(split, QSplitter):
            return
        self._heights[self._last] = self.height()
        self._last = place
        whole = sum(split.sizes())
        wanted = self._heights.get(place, max(self.height(), ROOM))
        split.setSizes([whole - wanted, wanted])


def _maker(module: str, name: str, session: Session) -> Callable[[], Any]:
    return lambda: getattr(import_module(module), name)(session)
