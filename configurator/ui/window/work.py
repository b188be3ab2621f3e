"""Everything about one opening: form and findings, picture with its swing, and what stands under it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget

from configurator.ui.analysis.comparison import ComparisonTable
from configurator.ui.analysis.findings import FindingsPanel
from configurator.ui.form.assumptions import taken
from configurator.ui.form.form import NOTHING, Form
from configurator.ui.kit.layout import BARE, across, down, fill
from configurator.ui.kit.look import FORM_WIDTH, GRID
from configurator.ui.picture.leaf_chooser import LeafChooser
from configurator.ui.picture.picture import Picture
from configurator.ui.picture.swing import SwingControl
from configurator.ui.picture.widths import WidthsBar
from configurator.ui.state.session import LOOKED, Session
from configurator.ui.window.under_picture import UnderPicture


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
        self.rows = _stack(self._picture_and_controls(), self.under, [640, 126])
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
        line = across(self.widths, (self.swing, 1), spacing=4 * GRID)
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        controls = down(line, self.widths.answer, spacing=GRID, margins=margins)
        above = QWidget()
        fill(above, down(self.leaves, (self.picture, 1), controls, spacing=0, margins=BARE))
        return above


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
