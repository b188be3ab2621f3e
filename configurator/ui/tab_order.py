"""The order in which Tab goes from one widget to the next: as the form is read, top to bottom."""

from collections.abc import Iterator
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLayout, QWidget


class LeadsOn:
    """A part of a widget that gives the keyboard to one of its own widgets, its first stop.

    Not by a focus proxy: Qt stops at a widget that has one wherever it stands in the order, so that Tab would
    lead back to its proxy and never out again.
    """

    first_stop: QWidget | None = None

    def setFocus(self, reason: Qt.FocusReason = Qt.FocusReason.OtherFocusReason) -> None:
        """Give the keyboard to the first stop."""
        if self.first_stop is not None:
            self.first_stop.setFocus(reason)


def reading_order(widget: QWidget) -> Iterator[QWidget]:
    """Yield what Tab stops at inside a widget, in the order of its layouts."""
    if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.focusProxy() is None:
        yield widget
    elif (layout := widget.layout()) is not None:
        yield from _in_layout(layout)


def _in_layout(layout: QLayout) -> Iterator[QWidget]:
    for place in range(layout.count()):
        item = layout.itemAt(place)
        if item is None:
            continue
        if (widget := item.widget()) is not None:
            yield from reading_order(widget)
        elif (inner := item.layout()) is not None:
            yield from _in_layout(inner)


def put_in_order(widget: QWidget) -> None:
    """Let Tab go through a widget in reading order; what came after it still does."""
    for before, after in pairwise(list(reading_order(widget))):
        QWidget.setTabOrder(before, after)
