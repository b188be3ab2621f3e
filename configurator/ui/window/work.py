"""Everything about one opening: form and findings, picture with its swing, and what stands under it."""

from collections.abc import Callable
from importlib import import_module
from typing import Any

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QSplitter, QTabWidget, QVBoxLayout, QWidget

from configurator.ui.analysis.comparison import ComparisonTable
from configurator.ui.analysis.findings import FindingsPanel
from configurator.ui.form.assumptions import taken
from configurator.ui.form.form import NOTHING, Form
from configurator.ui.kit.layout import BARE, across, down, fill
from configurator.ui.kit.look import FORM_WIDTH, GRID
from configurator.ui.picture.picture import LeafChooser, Picture
from configurator.ui.picture.swing import SwingControl
from configurator.ui.picture.widths import WidthsBar
from configurator.ui.state.session import LOOKED, Session


class WorkArea(QSplitter):
    """The views of the opening on show; until `begin` they show what was said, and nothing worked out."""

    def __init__(self, session: Session) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self.session = session
        self.begun = False
        self.form = Form(session)
        self.findings = FindingsPanel(session)
        self.picture = Picture(session)
        self.leaves = LeafChooser(session)
        self.widths = WidthsBar(session)
        self.swing = SwingControl(session)
        self.comparison = ComparisonTable(session)
        self.under = UnderPicture(session, self.comparison)
        self.middle = _stack(self.form, self.findings, [540, 220])
        self.rows = _stack(self._picture_and_controls(), self.under, [521, 245])
        self.setChildrenCollapsible(False)
        self.addWidget(self.middle)
        self.addWidget(self.rows)
        self.setStretchFactor(0, 1)
        self.setStretchFactor(1, 6)
        self.setSizes([FORM_WIDTH, 864])

    def begin(self) -> None:
        """Load the study and the picture, and show the picture; `show_rest` shows what stands about it."""
        self.begun = True
        self.picture.begin()
        self.leaves.show_state()
        self.picture.show_state("open")

    def show_rest(self) -> None:
        """Show all that is said of the picture: the moments of its swing, the tables, the findings."""
        self.swing.show_state()
        self.swing.show_moments()
        self._show_tables()

    def show_state(self, by: str) -> None:
        """Bring every view in line with the session; `by` says what happened, so that a swing stays quick."""
        self.swing.show_state()
        if not self.begun:
            self.show_form()
            return
        self.leaves.show_state()
        self.picture.show_state(by)
        if by != "swing":
            self.swing.show_moments()
        if by not in LOOKED:
            self._show_tables()

    def _show_tables(self) -> None:
        """Show what is said of the opening in tables, findings and the form."""
        self.comparison.show_state()
        self.under.show_state()
        self.findings.show_state()
        self.show_form()

    def show_form(self) -> None:
        """Show what was said and what was refused, and what is assumed once that is worked out."""
        study = self.session.study if self.begun else None
        self.form.show_state(taken(study) if study is not None else NOTHING)
        if self.begun:
            self.widths.show_state()

    def _picture_and_controls(self) -> QWidget:
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        controls = down(
            SideBySide(self.widths, self.swing), self.widths.answer, spacing=GRID, margins=margins
        )
        above = QWidget()
        fill(above, down(self.leaves, (self.picture, 1), controls, spacing=0, margins=BARE))
        return above


class SideBySide(QWidget):
    """Two widgets side by side, the second with what room is left; one over the other in a narrow window."""

    def __init__(self, first: QWidget, second: QWidget) -> None:
        super().__init__()
        self._both = (first, second)
        self._line = fill(self, across(first, (second, 1), spacing=4 * GRID, margins=BARE))

    def minimumSizeHint(self) -> QSize:
        """Ask for the width of the wider one only."""
        wide = max(each.minimumSizeHint().width() for each in self._both)
        return QSize(wide, self._line.minimumSize().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand them as there is room."""
        super().resizeEvent(event)
        needed = sum(each.minimumSizeHint().width() for each in self._both) + self._line.spacing()
        ways = QBoxLayout.Direction
        self._line.setDirection(ways.LeftToRight if needed <= self.width() else ways.TopToBottom)


def _stack(upper: QWidget, lower: QWidget, heights: list[int]) -> QSplitter:
    """Return two views one over the other; of more room the upper takes two thirds."""
    stack = QSplitter(Qt.Orientation.Vertical)
    stack.setChildrenCollapsible(False)
    stack.addWidget(upper)
    stack.addWidget(lower)
    stack.setStretchFactor(0, 2)
    stack.setStretchFactor(1, 1)
    stack.setSizes(heights)
    return stack


HINGE, FINISHES, WORK = "Hinge", "Finishes", "Show the work"
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
    """The tabs. All have the height that the user gives them: another tab never moves the picture."""

    def __init__(self, session: Session, comparison: ComparisonTable) -> None:
        super().__init__()
        self.later = {title: LaterPage(_maker(module, name, session)) for title, module, name in LATER}
        self.setDocumentMode(True)
        self.setAccessibleName("under the picture")
        pages: tuple[tuple[QWidget, str], ...] = (
            (comparison, "Compare widths"),
            *((page, title) for title, page in self.later.items()),
        )
        for page, title in pages:
            self.addTab(page, title)
        self.currentChanged.connect(lambda _: self.show_state())
        comparison.work_wanted.connect(self.show_work)
        session.work_asked.connect(lambda one: self.show_work(one.leaf, one.key, one.column))

    @property
    def help_place(self) -> str:
        """Return what the help calls the tab on show."""
        return "what if" if self.tabText(self.currentIndex()) == "What if" else "compare"

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
        from configurator.wording.derivation_words import Asked

        later = self.later[WORK]
        self.setCurrentWidget(later)
        if later.page is not None:
            later.page.ask(Asked(leaf, key, column))


def _maker(module: str, name: str, session: Session) -> Callable[[], Any]:
    return lambda: getattr(import_module(module), name)(session)
