"""Values on trial: what the picture shows of them is no edit, and is gone with the next one."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from configurator.model import Opening
from configurator.ui.state import edits
from configurator.ui.state.edits import RefusedError

if TYPE_CHECKING:  # loaded with the study: the window is painted before the first one
    from configurator.study import Study
    from configurator.ui.state.session import Session


class Trial:
    """The study of an opening with other values, for as long as that very opening is on show."""

    def __init__(self, session: "Session") -> None:
        self._session = session
        self._base: Opening | None = None
        self._study: Study | None = None
        self._words = ""

    @property
    def study(self) -> "Study | None":
        """What is on trial; None where nothing is, or where the opening has been changed since."""
        return self._study if self._base is self._session.opening else None

    @property
    def words(self) -> str:
        """What is on trial, in words; empty where nothing is."""
        return self._words if self.study is not None else ""

    def show(self, changes: Mapping[str, Any], words: str) -> str:
        """Show the opening with other values at some paths; return why not, empty where it is shown."""
        base = self._session.opening
        if base is None:
            return ""
        try:
            study = self._session.studied(edits.edited(base, changes))
        except RefusedError as error:
            self.end()
            return error.about(next(iter(changes)))
        self._base, self._study, self._words = base, study, words
        self._session.changed.emit("trial")
        return ""

    def end(self) -> None:
        """Show the opening as it is."""
        was = self.study
        self._base = self._study = None
        if was is not None:
            self._session.changed.emit("trial")
