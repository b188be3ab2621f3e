"""How widgets stand beside one another, how Tab goes through them, pools of like ones, and quiet choices."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Generic, Protocol, TypeVar

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QBoxLayout, QComboBox, QDoubleSpinBox, QLayout, QSlider, QWidget

GROW = "grow"
"""In a row or column: room that is left over goes here."""
BARE = (0, 0, 0, 0)
"""No margins."""


@dataclass(frozen=True, slots=True)
class Box:
    """Widgets side by side or one over the other, to be laid out by `fill` or `add`.

    An item is a widget, another box, an empty layout, `GROW`, a number of pixels to leave free, or a tuple of
    one of the first three with what Qt takes beside it: its share of the room, its alignment.
    """

    items: tuple[Any, ...]
    upright: bool
    spacing: int | None = None
    margins: tuple[int, int, int, int] | None = None


def across(*items: Any, spacing: int | None = None, margins: tuple[int, int, int, int] | None = None) -> Box:
    """Return items side by side; margins are left, top, right, bottom."""
    return Box(items, False, spacing, margins)


def down(*items: Any, spacing: int | None = None, margins: tuple[int, int, int, int] | None = None) -> Box:
    """Return items one over the other; margins are left, top, right, bottom."""
    return Box(items, True, spacing, margins)


def fill(widget: QWidget, box: Box) -> QBoxLayout:
    """Lay a box out in a widget, which has no layout yet; return the layout."""
    layout = _made(box)
    widget.setLayout(layout)
    add(layout, *box.items)
    return layout


def add(layout: QBoxLayout, *items: Any) -> None:
    """Add items at the end of a layout that is in its place already.

    An inner layout is added while it is empty and filled then: for what a filled one holds, Qt's binding
    would make Python objects, which outlive what they stand for.
    """
    for item in items:
        what, *how = item if isinstance(item, tuple) else (item,)
        if isinstance(what, QWidget):
            layout.addWidget(what, *how)
        elif isinstance(what, Box):
            inner = _made(what)
            layout.addLayout(inner, *how)
            add(inner, *what.items)
        elif isinstance(what, QLayout):
            assert what.count() == 0, "a layout is filled only once it stands in its place"
            layout.addLayout(what, *how)
        elif what is GROW:
            layout.addStretch(*how)
        else:
            layout.addSpacing(what)


def _made(box: Box) -> QBoxLayout:
    layout = QBoxLayout(QBoxLayout.Direction.TopToBottom if box.upright else QBoxLayout.Direction.LeftToRight)
    if box.margins is not None:
        layout.setContentsMargins(*box.margins)
    if box.spacing is not None:
        layout.setSpacing(box.spacing)
    return layout


# --- As many as are needed ---


class Shown(Protocol):
    """A widget, or a few that come and go together."""

    def setVisible(self, visible: bool) -> None:
        """Show it, or hide it."""


S = TypeVar("S", bound=Shown)


class Pool(Generic[S]):
    """As many like widgets as there is something to show in; those left over are hidden and wait.

    `make` makes one more and puts it in its place; it is told how many there are already.
    """

    def __init__(self, make: Callable[[int], S]) -> None:
        self._make = make
        self._every: list[S] = []
        self.on_show: list[S] = []

    def take(self, count: int) -> list[S]:
        """Show so many, the first ones, and return them; each is to be filled anew.

        The keyboard leaves them: what it stood on now stands for something else.
        """
        for one in self.on_show:
            one.setVisible(False)
        while len(self._every) < count:
            self._every.append(self._make(len(self._every)))
        self.on_show = self._every[:count]
        for one in self.on_show:
            one.setVisible(True)
        return self.on_show


# --- What the wheel passes by ---


_LEAST_LETTERS = 12


class StillCombo(QComboBox):
    """A choice that the mouse wheel passes by: scrolling over it must not change a door."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Pass the wheel on to what scrolls."""
        event.ignore()


class StillSpin(QDoubleSpinBox):
    """A number that the mouse wheel passes by unless it has the keyboard."""

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)  # the wheel alone gives none

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Step only while it has the keyboard."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class StillSlider(QSlider):
    """A slider that the mouse wheel passes by unless it has the keyboard."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Step only while it has the keyboard."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class YieldingCombo(StillCombo):
    """A choice that shows all of its words, and in a narrow window some letters of them."""

    def minimumSizeHint(self) -> QSize:
        """Ask for the room of some letters."""
        letters = self.fontMetrics().averageCharWidth() * _LEAST_LETTERS
        return QSize(min(letters, super().minimumSizeHint().width()), super().minimumSizeHint().height())


class QuietCombo(YieldingCombo):
    """A choice that asks for no more room than a few letters take."""

    def __init__(self) -> None:
        super().__init__()
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(6)


# --- The order of Tab ---


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
    """Yield what Tab stops at inside a widget, in the order it is read.

    Widgets stand in the order in which they were put into it; one that is otherwise tells by `parts()`.
    """
    if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.focusProxy() is None:
        yield widget
        return
    parts = widget.parts() if hasattr(widget, "parts") else widget.children()
    for part in parts:
        if isinstance(part, QWidget) and not part.isWindow():
            yield from reading_order(part)


def put_in_order(widget: QWidget) -> None:
    """Let Tab go through a widget in reading order; what came after it still does."""
    for before, after in pairwise(list(reading_order(widget))):
        QWidget.setTabOrder(before, after)
