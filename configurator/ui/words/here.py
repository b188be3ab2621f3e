"""What a word comes to in the opening on show: values given or assumed, and what was worked out."""

from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTableView, QWidget

from configurator.model import paths
from configurator.rules.wording import leaf_named
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.ui.form.assumptions import taken
from configurator.ui.kit.fields import Assumptions, reason_of
from configurator.ui.kit.kinds import kind_at
from configurator.ui.state.session import Session
from configurator.wording.comparison import comparisons
from configurator.wording.glossary import Word, words_in

_PLAIN = (str, int, float, bool)


def here(session: Session, word: Word) -> tuple[str, ...]:
    """Return a line for each place of a word that has a value in this opening."""
    study = session.study
    if session.opening is None or study is None:
        return ()
    assumed = taken(study)
    fields = (line for place in word.where for line in _of_field(session, place, assumed))
    return (*fields, *(line for place in word.where for line in _of_rows(session, study, place)))


def _of_field(session: Session, path: str, assumed: Assumptions) -> Iterator[str]:
    if path.startswith(("obstructions.", "hardware.", "wall.layers.", "compare.", paths.JOB)):
        return  # of several things, or of none of this opening
    try:
        name = paths.trade_name(path)
    except KeyError:
        return  # a row of the comparison
    given, found = session.value(path), assumed.get(path)
    value = given if given is not None or found is None else found.value
    if not isinstance(value, _PLAIN):
        return
    written = _written(session, path, value).rstrip(".")  # a note that is a sentence has its own
    yield f"{capitalized(name)}: {written}, {'given' if given is not None else 'assumed'}."
    if given is None and found is not None:
        yield reason_of(found, session.display)


def _written(session: Session, path: str, value: str | float) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return value if isinstance(value, str) else kind_at(path).write(value, session.display)


def _of_rows(session: Session, study: Study, key: str) -> Iterator[str]:
    for table in comparisons(study, session.display):
        for row in (row for row in table.rows if row.key == key):
            leaf = leaf_named(table.leaf, ", {}")
            pairs = zip(row.values, table.heads, strict=True)
            yield (f"{capitalized(row.trade)}{leaf}: " + "; ".join(f"{v} on the {w}" for v, w in pairs) + ".")


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
        if isinstance(widget, QTableView) and words_in(heading := _heading(widget)):
            return heading
        widget = widget.parentWidget()
    return ""


def _heading(table: QTableView) -> str:
    model, place = table.model(), table.currentIndex()
    if model is None or not place.isValid():
        return ""
    return str(model.headerData(place.column(), Qt.Orientation.Horizontal) or "")
