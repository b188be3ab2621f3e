"""Nothing that the window shows holds a number that was never written."""

from PySide6.QtWidgets import QAbstractButton, QLabel, QLineEdit, QWidget

from configurator.ui.kit.table import Table
from configurator.ui.window.work import UnderPicture
from configurator.units import Display

MARKS = ("\x02", "\x03")


def texts(window: QWidget) -> list[str]:
    """Every text of a window: what is read, what a tip says, and what a screen reader is told."""
    found = []
    for one in window.findChildren(QWidget):
        found += [one.toolTip(), one.accessibleName(), one.accessibleDescription()]
        if isinstance(one, QLabel | QAbstractButton | QLineEdit):
            found.append(one.text())
        if isinstance(one, QLineEdit):
            found.append(one.placeholderText())
        if isinstance(one, Table):
            cells = [(row, at) for row in range(one.rowCount()) for at in range(one.columnCount())]
            found += [said for cell in cells for said in (one.text(*cell), one.model().tip(*cell) or "")]
    return found


def test_every_number_of_the_window_is_written(window):
    for mark in ("112A", "205A", "126C"):
        window.session.select(mark)
        for display in (Display(64), Display(metric=True)):
            window.session.show_in(display)
            (tabs,) = window.findChildren(UnderPicture)
            for index in range(tabs.count()):
                tabs.setCurrentIndex(index)
                said = texts(window)
                assert len(said) > 200
                assert [text for text in said if any(one in text for one in MARKS)] == []
