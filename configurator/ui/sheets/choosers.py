"""Which sheet, on which paper, at which scale, and how large it is shown."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QToolButton, QWidget

from configurator.drawing.pages.page import Scale, papers, scales, usual_paper
from configurator.study.hang import HangsOn, hinge_words
from configurator.ui.kit.layout import YieldingCombo
from configurator.ui.kit.look import GRID
from configurator.ui.sheets.preview import KINDS, ONE_WIDTH_OF, SheetChoice
from configurator.units import Display

FITTED, EVERY_WIDTH = "fitted", "every one"


class Choosers(QWidget):
    """One row of choices.

    Signals:
        changed: another sheet, paper or scale was chosen.
        zoom_asked: larger (True) or smaller (False).
        whole_asked: the whole page is to be seen.
    """

    changed = Signal()
    zoom_asked = Signal(bool)
    whole_asked = Signal()

    def __init__(self, display: Display) -> None:
        super().__init__()
        self.kind, self.paper, self.scale = YieldingCombo(), YieldingCombo(), YieldingCombo()
        self.hinge_width = YieldingCombo()
        self._widths: tuple[HangsOn, ...] | None = None
        self.zoom = QLabel()
        self._metric: bool | None = None
        for kind, title in KINDS.items():
            self.kind.addItem(title, kind)
        for paper in papers():
            self.paper.addItem(paper, paper)
        self.paper.setCurrentText(usual_paper(display).name)
        self._put_together()
        self.show_units(display)
        self.show_widths(())
        for box in (self.kind, self.hinge_width, self.paper, self.scale):
            box.activated.connect(self.changed)

    def choice(self, display: Display) -> SheetChoice:
        """Return what is chosen, with lengths shown as the display says."""
        scale: Scale | None = self.scale.currentData()
        paper = papers()[self.paper.currentData()]
        return SheetChoice(self.kind.currentData(), paper, scale, display, self.hinge_width.currentData())

    def show_widths(self, widths: tuple["HangsOn", ...]) -> None:
        """Offer the hinge widths compared; one chosen before stays chosen while it is among them."""
        if widths == self._widths:
            return
        self._widths = widths
        kept = self.hinge_width.currentText()
        self.hinge_width.clear()
        self.hinge_width.addItem(EVERY_WIDTH, None)
        for width in widths:
            self.hinge_width.addItem(hinge_words(width), width)
        self.hinge_width.setCurrentIndex(max(self.hinge_width.findText(kept), 0))

    def allow(self, busy: bool) -> None:
        """Let the choices be changed unless something is being done with them."""
        for box in (self.kind, self.paper, self.scale):
            box.setEnabled(not busy)
        self.hinge_width.setEnabled(not busy and self.kind.currentData() == ONE_WIDTH_OF)

    def show_units(self, display: Display) -> None:
        """Offer the scales of drawings in these units; one that they do not have falls back to fitted."""
        if display.metric == self._metric:
            return
        self._metric = display.metric
        kept = self.scale.currentText()
        self.scale.clear()
        self.scale.addItem(FITTED, None)
        for scale in scales(display.metric):
            self.scale.addItem(scale.name, scale)
        self.scale.setCurrentIndex(max(self.scale.findText(kept), 0))

    def show_zoom(self, zoom: float | None) -> None:
        """Say how large the page is shown; nothing where there is none."""
        self.zoom.setText("" if zoom is None else f"{zoom:.0%}")

    def _put_together(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(GRID)
        for words, box, tip in (
            ("Sheet", self.kind, "What the sheet shows"),
            (
                "Widths",
                self.hinge_width,
                "Every width compared side by side, or one of them large; of a plan only",
            ),
            ("Paper", self.paper, "The size of the paper"),
            ("Scale", self.scale, "Fitted is the largest usual scale at which everything has its room"),
        ):
            label = QLabel(words)
            label.setBuddy(box)
            box.setToolTip(tip)
            box.setAccessibleName(words.lower())
            line.addWidget(label)
            line.addWidget(box)
            line.addSpacing(2 * GRID)
        line.addStretch(1)
        for text, name, act in (
            ("−", "smaller", lambda: self.zoom_asked.emit(False)),
            ("+", "larger", lambda: self.zoom_asked.emit(True)),
            ("Whole page", "show the whole page", self.whole_asked.emit),
        ):
            line.addWidget(_button(text, name, act))
        line.addWidget(self.zoom)
        self.zoom.setMinimumWidth(10 * GRID)


def _button(text: str, name: str, act: object) -> QToolButton:
    button = QToolButton()
    button.setText(text)
    button.setAccessibleName(name)
    button.setToolTip(name.capitalize())
    button.setAutoRaise(True)
    button.clicked.connect(lambda: act())  # type: ignore[operator]
    return button
