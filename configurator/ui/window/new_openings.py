"""What new openings begin with, as a shop has it: chosen in the preferences, kept on this computer."""

from typing import Any

from PySide6.QtWidgets import QFormLayout, QLabel, QPushButton, QWidget

from configurator.model import Job, paths
from configurator.rules.filling.tolerances import fill_tolerances
from configurator.sentences import capitalized
from configurator.ui.kit.fields import Field, LineField, field_for
from configurator.ui.kit.kinds import LENGTHS
from configurator.ui.kit.layout import GROW, across, down, fill
from configurator.ui.kit.look import GRID
from configurator.ui.state import edits
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session

ABOUT = (
    "Kept on this computer. An opening that is begun anew has these as given, kept with its job. "
    "What is empty stays the usual. An architect's schedule is taken as it is."
)
NAMES = {"compare": "Stock widths compared", "hinge_locations.rule": "Hinge locations"}


class NewOpenings(QWidget):
    """Fields of an opening that stands in no job; what is typed there is kept for new ones."""

    def __init__(self, session: Session, preferences: Preferences) -> None:
        super().__init__()
        self.session, self.preferences = session, preferences
        self.scratch = Session(Job())
        self.fields: dict[str, Field] = {path: self._field(path) for path in edits.STARTS}
        self.to_all = QPushButton("Give to all openings of this job")
        self.to_all.setAutoDefault(False)
        self.to_all.clicked.connect(self._give_to_all)
        rows, about = QFormLayout(), QLabel(ABOUT)
        about.setWordWrap(True)
        fill(self, down(about, rows, across(GROW, self.to_all), GROW, spacing=2 * GRID))
        for path, field in self.fields.items():
            rows.addRow(NAMES.get(path, capitalized(paths.trade_name(path))), field)
        self.scratch.changed.connect(self._keep)
        self.scratch.refused.connect(lambda *_: self._show())
        self.show_state()

    def show_state(self) -> None:
        """Show what new openings begin with."""
        self.scratch.display, self.scratch.dark = self.session.display, self.session.dark
        begun = edits.typical_opening("1", self.preferences.starts)
        if self.scratch.opening != begun and not self.scratch.refusals:
            self.scratch.take_openings((begun,), "begin", "1")
        self._show()

    def begin_anew(self) -> None:
        """Forget what was refused."""
        self.scratch.refusals.forget()
        self.show_state()

    def _field(self, path: str) -> Field:
        return LineField(self.scratch, path, LENGTHS) if path == "compare" else field_for(self.scratch, path)

    def _show(self) -> None:
        opening = self.scratch.opening
        assert opening is not None
        for field in self.fields.values():
            field.show_state(fill_tolerances(opening).assumed)
        self.to_all.setEnabled(bool(self.preferences.starts and self.session.job.openings))

    def _keep(self, by: str) -> None:
        opening, typical = self.scratch.opening, edits.typical_opening("1")
        if by == "edit" and opening is not None:
            values = {path: paths.value_at(opening, path) for path in edits.STARTS}
            own = (path for path, value in values.items() if value != paths.value_at(typical, path))
            chosen = {path: _as_stored(values[path]) for path in own}
            if chosen != self.preferences.starts:
                self.preferences.starts = chosen
            self.session.starts = self.preferences.starts
        self._show()

    def _give_to_all(self) -> None:
        """Give the starts to every opening of the job, as one step."""
        starts, job = self.preferences.starts, self.session.job
        openings = tuple(edits.edited(opening, starts) for opening in job.openings)
        self.session.take_openings(openings, "give the shop's starts to all openings", self.session.mark)


def _as_stored(value: Any) -> Any:
    return list(value) if isinstance(value, tuple) else value
