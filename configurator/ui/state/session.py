"""The state behind the window, and the one way in for every change to it."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from configurator.history import History
from configurator.model import Job, JobFacts, Opening, Shop, paths
from configurator.model.faults import in_units
from configurator.ui.state import edits
from configurator.ui.state.edits import Refusal, Refusals, RefusedError
from configurator.ui.state.studies import Studier, Studies, Trial
from configurator.units import Display

if TYPE_CHECKING:  # the study is loaded on use: the window is painted before the first one
    from configurator.project_file.held import HeldFile
    from configurator.study import Study

FULLY_OPEN = 180.0
LOOKED = ("swing", "trial")
"""What is done without changing anything that was said, or how it is shown."""


class Session(QObject):
    """What the user is looking at and working on.

    Signals:
        changed: something is different; the argument says what was done ("edit", "undo", "open", "select",
            "swing", "display", "theme", "save", "file": who may save it, "trial": what the picture shows is
            on trial, or no longer).
        refused: a value was not taken; the arguments are its path and the sentence for beside its field.
        missed: a value was not taken for want of another one; the argument is the path of that one.
        leaving: another opening will be shown; what is being typed belongs to the one that is.
        noted: what was done should be known of, though nothing is wrong; the argument is the sentence.
        pointed: something is pointed at elsewhere; the argument is what the picture marks, or None.
        looked: the pointer is on a place of the picture; the argument is which, or None.
        work_asked: the work behind a number of the picture is asked for; the argument is which (an `Asked`).
        asked: the user wants to know what a word means; the argument is a field's path, or words to look in.
    """

    changed = Signal(str)
    refused = Signal(str, str)
    missed = Signal(str)
    leaving = Signal()
    noted = Signal(str)
    pointed = Signal(object)
    looked = Signal(object)
    work_asked = Signal(object)
    asked = Signal(str)

    def __init__(
        self, job: Job | None = None, path: Path | None = None, studier: Studier | None = None
    ) -> None:
        super().__init__()
        self.history = History(job or edits.new_job())
        self._studies = Studies(studier)
        self._mark = ""
        self._place = 0
        self._settled_told: frozenset[str] = frozenset()
        self.path = path
        self.file: HeldFile | None = None
        self.angle = FULLY_OPEN
        self.display = Display()
        self.dark = False
        self.plain_words = self.swept = False
        self.shop = Shop()
        self.starts: Mapping[str, Any] = {}
        self.leaf_shown = ""
        self.parts_shown: frozenset[str] = frozenset()
        self.trial = Trial(lambda: self.opening, self.studied, lambda: self.changed.emit("trial"))
        self.refusals = Refusals()
        self._settle()

    # --- What there is ---

    @property
    def job(self) -> Job:
        """The job as it stands."""
        return self.history.job

    @property
    def mark(self) -> str:
        """The mark of the opening on show; empty in a job without openings."""
        return self._mark

    @property
    def opening(self) -> Opening | None:
        """The opening on show."""
        openings = self.job.openings
        if not (self._place < len(openings) and openings[self._place].mark == self._mark):
            # Every field of the form asks for it: looking through thousands each time would be felt.
            marks = (place for place, opening in enumerate(openings) if opening.mark == self._mark)
            self._place = next(marks, len(openings))
        return openings[self._place] if self._place < len(openings) else None

    @property
    def study(self) -> "Study | None":
        """The study of the opening on show; None where it cannot be studied, and `trouble` says why."""
        return self._studies.study_or_trouble(self.opening, self.job.job)[0]

    @property
    def pictured(self) -> "Study | None":
        """The study as far as the picture shows it: of two leaves both or the chosen one; or one on trial."""
        return self._studies.of_leaf(self.trial.study or self.study, self.leaf_shown)

    @property
    def trouble(self) -> str:
        """Why the opening on show cannot be studied; empty where it can."""
        return self._studies.study_or_trouble(self.opening, self.job.job)[1]

    def value(self, path: str) -> Any:
        """Return what the user gave at a path; None where it was left out."""
        record = self.job.job if path.startswith(paths.JOB) else self.opening
        return None if record is None else paths.value_at(record, path)

    # --- Edits ---

    def edit(self, path: str, value: Any) -> bool:
        """Change one value of the opening on show (or of the job's facts); None gives it its usual value."""
        return self.edit_many({path: value})

    def edit_many(self, changes: Mapping[str, Any]) -> bool:
        """Make several changes as one, or none of them; say whether they were taken.

        Values refused earlier are tried again along with these: one may be what the other waited for.
        """
        of_job = next(iter(changes)).startswith(paths.JOB)
        refusal: RefusedError | None = None
        for waiting in ({},) if of_job else edits.waiting_values(self.refusals, changes):
            try:
                (self._push_facts if of_job else self._push_opening)({**changes, **waiting})
            except RefusedError as error:
                refusal = error
            else:
                return True
        self._refuse_all(changes, refusal)
        return False

    def refuse(self, path: str, value: Any, sentence: str) -> None:
        """Note a value that cannot even be read; it stays in its field until it is typed again."""
        self._refuse(path, Refusal(value, sentence, retry=False))

    def withdraw(self, path: str) -> None:
        """Forget a refused value, so that its field shows what holds."""
        if self.refusals.pop(path, None):
            self.changed.emit("edit")

    # --- Openings ---

    def select(self, mark: str) -> None:
        """Show another opening of the job."""
        if mark != self._mark:
            self.leaving.emit()
            self._mark = mark
            self._settle()
            self.changed.emit("select")

    def add_opening(self, like: Opening | None = None) -> None:
        """Add an opening, typical or like another one, under a fresh mark, and show it."""
        mark = edits.fresh_mark(self.job, like.mark if like else "101")
        opening = edits.another(like, mark) if like else edits.typical_opening(mark, self.starts)
        self.take_openings((*self.job.openings, opening), f"add {mark}", mark)

    def begin_with(self, opening: Opening) -> None:
        """Take the first opening of a job."""
        first = edits.started(opening, self.starts)
        self.take_openings((first,), f"begin with {first.mark}", first.mark)

    def copy_opening(self) -> None:
        """Add an opening like the one on show, which there must be."""
        self.add_opening(self.opening)

    def remove_opening(self) -> None:
        """Take the opening on show out of the job."""
        marks = [opening.mark for opening in self.job.openings]
        rest = tuple(opening for opening in self.job.openings if opening.mark != self._mark)
        place = min(marks.index(self._mark), len(rest) - 1)
        self.take_openings(rest, f"remove {self._mark}", rest[place].mark if rest else "")

    def take_openings(
        self,
        openings: tuple[Opening, ...],
        name: str,
        mark: str,
        field: str | None = None,
        facts: JobFacts | None = None,
    ) -> None:
        """Take other openings for the job as one step of that name, and show the one of that mark.

        `facts` are the job's own, where these change with them. Steps in a row with the same `field` count as
        one. Raises RefusedError, and then nothing has changed.
        """
        before = self.job.openings
        job = edits.with_openings(self.job, openings)
        self.history.push(job if facts is None else edits.with_facts(job, facts), name, field)
        self._mark = mark
        self._note_settled(before)
        self._join("edit")

    def take_job(self, job: Job, name: str) -> None:
        """Take the job with something else of it changed, all of it valid, as one step of that name."""
        self.history.push(job, name)
        self._join("edit")

    # --- Files and time ---

    @property
    def read_only(self) -> str:
        """Why the file on show cannot be saved, as a sentence; empty where it can."""
        return self.file.why_not if self.file else ""

    def start_new(self, job: Job | None = None) -> None:
        """Begin a new job, one without openings where none is given: nobody asked for a door yet."""
        self.let_go()
        self._begin(job or Job(), None)

    def open(self, path: Path, mark: str = "") -> None:
        """Open a project file on that opening or its first. Raises ProjectFileError; nothing changed then."""
        from configurator.project_file.held import open_held

        self.file, job = open_held(path, self.file)
        self._begin(job, path, mark)

    def save(
        self, path: Path | None = None, *, over_theirs: bool = False, over_stale_lock: bool = False
    ) -> None:
        """Save the job, under another name if given. Raises ProjectFileError, and then nothing is written.

        What somebody else wrote into the file meanwhile, and a lock left behind on it, stop it unless told
        so.
        """
        target = path or self.path
        if target is None:
            raise ValueError("a job that was never saved needs a file name")
        from configurator.project_file.held import save_held

        self.file = save_held(self.job, target, self.file, over_theirs, over_stale_lock)
        self.path = target
        self.history.mark_saved()
        self.changed.emit("save")

    def recover(self, job: Job, path: Path | None, based_on: str) -> None:
        """Take unsaved work as a change to the file it belongs to, or to a new job where there is none.

        The lock its own program left on the file is taken over. Raises ProjectFileError when the file is
        there but is refused.
        """
        from configurator.project_file.held import is_there

        if path is not None and is_there(path):
            self.open(path)
            self.take_over()
        else:
            self.start_new()
        if self.file is not None:
            self.file.base_on(based_on)
        self.history.push(job, "recover unsaved work")
        self._join("open")

    def take_over(self) -> None:
        """Take the file on show for this program if nobody works on it any more; `read_only` says if not."""
        if self.file is not None and self.file.why_not:
            self.file.take_over()
            self.changed.emit("file")

    def let_go(self) -> None:
        """Let go of the file on show, so that others may have it."""
        if self.file is not None:
            self.file.release()
            self.file = None

    def undo(self) -> None:
        """Take back the last step, and show the opening that it changed."""
        self._step(self.history.undo)

    def redo(self) -> None:
        """Do again what was taken back, and show the opening that it changed."""
        self._step(self.history.redo)

    # --- How it is shown ---

    def swing(self, angle: float) -> None:
        """Ask every panel's door to stand at an angle, in degrees from 0 to 180."""
        angle = min(max(angle, 0.0), FULLY_OPEN)
        if angle != self.angle:
            self.angle = angle
            self.changed.emit("swing")

    def show_in(self, display: Display) -> None:
        """Show lengths in other units or to another fraction."""
        if display != self.display:
            self.display = display
            self.changed.emit("display")

    def use_plain_words(self, plain: bool) -> None:
        """Put the client's words first, or the trade's."""
        if plain != self.plain_words:
            self.plain_words = plain
            self.changed.emit("display")

    def show_swept(self, swept: bool) -> None:
        """Show what the leaf and its hardware sweep, or not."""
        if swept != self.swept:
            self.swept = swept
            self.changed.emit("display")

    def show_leaf(self, name: str) -> None:
        """Show one leaf of two in the picture, or both for an empty name."""
        if name != self.leaf_shown:
            self.leaf_shown = name
            self.changed.emit("display")

    def use_dark(self, dark: bool) -> None:
        """Show light ink on a dark sheet, or dark ink on paper."""
        if dark != self.dark:
            self.dark = dark
            self.changed.emit("theme")

    # --- Inside ---

    def _begin(self, job: Job, path: Path | None, mark: str = "") -> None:
        self.history = History(job)
        self._studies.clear()
        self._settled_told = frozenset()
        self._mark = mark
        self.path = path
        self._join("open")

    def _step(self, through_history: Callable[[], object]) -> None:
        before = self.job
        if not through_history():
            return
        kept = {id(opening) for opening in before.openings}
        changed = next((opening for opening in self.job.openings if id(opening) not in kept), None)
        self._mark = changed.mark if changed is not None else self._mark
        self._join("undo")

    def _join(self, by: str) -> None:
        """Bring everything in line with the job as it now is, and tell the views."""
        if by == "open":
            self.refusals.forget()
        elif by == "undo":
            self.refusals.clear()
        self._settle()
        self.changed.emit(by)

    def _settle(self) -> None:
        if self.opening is None:
            self._mark = self.job.openings[0].mark if self.job.openings else ""
        self.refusals.turn_to(self._mark)

    def _push_opening(self, changes: Mapping[str, Any]) -> None:
        before = self.opening
        if before is None:
            return
        opening = edits.edited(before, changes)
        job = edits.replaced(self.job, before.mark, opening)
        if opening != before:
            self._studies.keep(opening, self.studied(opening))
        self._mark = self.refusals.mark = opening.mark
        field = f"{opening.mark} {next(iter(changes))}" if len(changes) == 1 else None
        self.history.push(job, edits.name_of(changes, before.mark), field)
        self.refusals.hold(edits.untouched_refusals(self.refusals, changes))
        self._note_settled((before,))
        self.changed.emit("edit")

    def _push_facts(self, changes: Mapping[str, Any]) -> None:
        job = edits.with_facts(self.job, edits.edited_facts(self.job.job, changes))
        path = next(iter(changes))
        self.history.push(job, f"change {paths.trade_name(path)}", path)
        self.refusals.hold(edits.untouched_refusals(self.refusals, changes))
        self._studies.clear()  # what the job asks of its hinges counts in every study
        self.changed.emit("edit")

    def _note_settled(self, before: tuple[Opening, ...]) -> None:
        """Say once of each opening that it was approved or ordered when it was changed."""
        from configurator.ui.state.status_warning import settled_changes  # loaded with the first edit

        self._settled_told, sentence = settled_changes(before, self.job, self._settled_told)
        if sentence:
            self.noted.emit(sentence)

    def _refuse_all(self, changes: Mapping[str, Any], error: RefusedError | None) -> None:
        for path, value in changes.items():
            sentence = in_units(error.about(path), self.display) if error else "This cannot be."
            self._refuse(path, Refusal(value, sentence))
        wanted = error.faults[0].field if error else ""
        if wanted and wanted not in changes and edits.is_left_out(wanted, self.value):
            self.missed.emit(wanted)

    def _refuse(self, path: str, refusal: Refusal) -> None:
        self.refusals[path] = refusal
        self.refused.emit(path, refusal.sentence)

    def studied(self, opening: Opening) -> "Study":
        """Return the study of an opening with the job's facts. Raises RefusedError where there is none."""
        return self._studies.make(opening, self.job.job)
