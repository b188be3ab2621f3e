"""The platform's own style with a slider for a finger: a handle as large, and it comes where one taps."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QProxyStyle, QStyle, QStyleHintReturn, QStyleOption, QWidget

_HANDLE = (
    QStyle.PixelMetric.PM_SliderLength,
    QStyle.PixelMetric.PM_SliderThickness,
    QStyle.PixelMetric.PM_SliderControlThickness,
)


class FingerStyle(QProxyStyle):
    """Draws as the platform does; `size` is how wide and high a slider's handle is, pixels."""

    def __init__(self) -> None:
        super().__init__()
        self.size = 0

    def pixelMetric(
        self,
        metric: QStyle.PixelMetric,
        option: QStyleOption | None = None,
        widget: QWidget | None = None,
    ) -> int:
        """Give the handle its size."""
        usual = int(super().pixelMetric(metric, option, widget))
        return max(usual, self.size) if metric in _HANDLE else usual

    def styleHint(
        self,
        hint: QStyle.StyleHint,
        option: QStyleOption | None = None,
        widget: QWidget | None = None,
        returned: QStyleHintReturn | None = None,
    ) -> int:
        """Let the handle come to where the slider is pressed."""
        if hint == QStyle.StyleHint.SH_Slider_AbsoluteSetButtons:
            return int(Qt.MouseButton.LeftButton.value)
        return int(super().styleHint(hint, option, widget, returned))
