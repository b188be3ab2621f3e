"""The studies of a job's openings, each made once, and a study on trial beside the one on show."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from configurator.model import JobFacts, Opening
from configurator.model.faults import Fault
from configurator.ui.state import edits
from configurator.ui.state.edits import RefusedError

if TYPE_CHECKING:  # loaded with the first study: the window is painted before it
    from configurator.study import Study

Studier = Callable[[Opening, JobFacts | None], "Study"]
Studied = Callable[[Opening], "Study"]


def study_opening(opening: Opening, facts: JobFacts | None) -> "Study":
    """Study one opening; the study is loaded on first use."""
    from configurator.study.run import study

    return study(opening, facts)


class Studies:
    """Remembers the study of every opening for as long as its record and the job's facts stay the same."""

    def __init__(self, studier: Studier | None = None) -> None:
        self._studier = studier or study_opening
        self._known: dict[str, tuple[Opening, Study | None, str]] = {}
        self._one_leaf: tuple[Study | None, str, Study | None] = (None, "", None)

    def clear(self) -> None:
        """Forget every study."""
        self._known.clear()

    def keep(self, opening: Opening, study: "Study") -> None:
        """Remember a study that was just made."""
        self._known[opening.mark] = (opening, study, "")

    def make(self, opening: Opening, facts: JobFacts | None) -> "Study":
        """Study an opening. Raises RefusedError where it cannot be studied."""
        try:
            return self._studier(opening, facts)
        except ValueError as error:
            faults = getattr(error, "faults", None) or (Fault("", str(error)),)
            raise RefusedError(tuple(faults)) from error

    def study_or_trouble(self, opening: Opening | None, facts: JobFacts | None) -> tuple["Study | None", str]:
        """Return the study of an opening, or None and the reason why there is none."""
        if opening is None:
            return None, ""
        known = self._known.get(opening.mark)
        if known is None or known[0] is not opening:
            try:
                known = (opening, self.make(opening, facts), "")
            except RefusedError as error:
                known = (opening, None, error.about(""))
            self._known[opening.mark] = known
        return known[1], known[2]

    def of_leaf(self, study: "Study | None", leaf: str) -> "Study | None":
        """Return a study as far as it is about one leaf; the whole of it for an empty name."""
        if study is None or not leaf:
            return study
        if self._one_leaf[0] is not study or self._one_leaf[1] != leaf:
            self._one_leaf = (study, leaf, study.of_leaf(leaf))
        return self._one_leaf[2]


class Trial:
    """The study of an opening with other values, for as long as that very opening is on show.

    What the picture shows of it is no edit, and is gone with the next one.
    """

    def __init__(
        self, opening: Callable[[], Opening | None], studied: Studied, changed: Callable[[], object]
    ) -> None:
        self._opening, self._studied, self._changed = opening, studied, changed
        self._base: Opening | None = None
        self._study: Study | None = None
        self._words = ""

    @property
    def study(self) -> "Study | None":
        """What is on trial; None where nothing is, or where the opening has been changed since."""
        return self._study if self._base is self._opening() else None

    @property
    def words(self) -> str:
        """What is on trial, in words; empty where nothing is."""
        return self._words if self.study is not None else ""

    def show(self, changes: Mapping[str, Any], words: str) -> str:
        """Show the opening with other values at some paths; return why not, empty where it is shown."""
        base = self._opening()
        if base is None:
            return ""
        try:
            study = self._studied(edits.edited(base, changes))
        except RefusedError as error:
            self.end()
            return error.about(next(iter(changes)))
        self._base, self._study, self._words = base, study, words
        self._changed()
        return ""

    def end(self) -> None:
        """Show the opening as it is."""
        was = self.study
        self._base = self._study = None
        if was is not None:
            self._changed()
