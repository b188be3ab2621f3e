"""What F1 asks about: the word of whatever has the keyboard."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTableView, QWidget

from configurator.drawing.glossary import words_in
from configurator.ui.analysis.comparison import ComparisonTable


def asked_about(widget: QWidget | None) -> str:
    """Return a field's path, a row's key or a few words to look in; empty where nothing is known of it.

    A widget tells it by its `path`, or by its `asked_about()` where that changes; a table by the heading of
    the column that is current, if there is a word in it, else what it stands in.
    """
    while widget is not None:
        if callable(telling := getattr(widget, "asked_about", None)):
            return str(telling())
        if isinstance(path := getattr(widget, "path", None), str):
            return path
        if isinstance(widget, ComparisonTable):
            return _row(widget)
        if isinstance(widget, QTableView) and words_in(heading := _heading(widget)):
            return heading
        widget = widget.parentWidget()
    return ""


def _heading(table: QTableView) -> str:
    model, place = table.model(), table.currentIndex()
    if model is None or not place.isValid():
        return ""
    return str(model.headerData(place.column(), Qt.Orientation.Horizontal) or "")


def _row(table: ComparisonTable) -> str:
    """Return the key of the comparison's current row; each leaf of several has a heading before its rows."""
    from configurator.drawing.comparison import comparisons

    study = table.session.study
    tables = comparisons(study, table.session.display) if study is not None else ()
    headed = [""] if len(tables) > 1 else []
    keys = [key for one in tables for key in (*headed, *(row.key for row in one.rows))]
    place = table.currentRow()
    return keys[place] if 0 <= place < len(keys) else ""
