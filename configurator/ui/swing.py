"""The swing control: a slider and a field that turn the door of every panel at once, 0 to 180 degrees."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDoubleSpinBox, QHBoxLayout, QLabel, QSlider, QWidget

from configurator.ui.look import GRID, tabular
from configurator.ui.session import Session

STEPS = 10
"""Slider steps in a degree."""


class SwingControl(QWidget):
    """Slider and angle field; arrow keys turn by 1 degree, page keys by 15."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(0, 180 * STEPS)
        self.slider.setSingleStep(STEPS)
        self.slider.setPageStep(15 * STEPS)
        self.slider.setMinimumWidth(40 * GRID)
        self.slider.setAccessibleName("swing of the door")
        self.slider.valueChanged.connect(lambda value: session.swing(value / STEPS))
        self.angle = QDoubleSpinBox()
        self.angle.setRange(0, 180)
        self.angle.setDecimals(1)
        self.angle.setSuffix("°")
        self.angle.setKeyboardTracking(False)
        self.angle.setAccessibleName("angle of the door in degrees")
        self.angle.setFont(tabular(self.angle.font()))
        self.angle.valueChanged.connect(session.swing)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        for text, widget in (("Swing", self.slider), ("", self.angle)):
            if text:
                line.addWidget(QLabel(text))
            line.addWidget(widget, 1 if widget is self.slider else 0)
        self.setToolTip("Alt+Left and Alt+Right turn by 1°, Alt+Page Up and Page Down by 15°")

    def show_state(self) -> None:
        """Show the angle that holds; without an opening there is no door to turn."""
        self.setVisible(self.session.opening is not None)
        for widget, value in (
            (self.slider, round(self.session.angle * STEPS)),
            (self.angle, self.session.angle),
        ):
            widget.blockSignals(True)
            widget.setValue(value)  # type: ignore[arg-type]
            widget.blockSignals(False)
