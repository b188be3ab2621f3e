"""What is done with the chosen rows of the schedule: each one named step, all of it or nothing."""

from collections.abc import Callable, Sequence
from typing import Protocol

from PySide6.QtGui import QGuiApplication

from configurator.model import paths
from configurator.ui.kit.kinds import NotReadError
from configurator.ui.kit.message_line import TextPanel
from configurator.ui.kit.runner import Pieces
from configurator.ui.kit.table import as_text
from configurator.ui.schedule.answers import Answers
from configurator.ui.schedule.changing import Change, Trial, counted, duplicates, typed
from configurator.ui.schedule.columns import COLUMNS
from configurator.ui.schedule.model import ScheduleModel
from configurator.ui.schedule.pasting import Pasted, Target, read_pasted
from configurator.ui.schedule.table import ScheduleTable
from configurator.ui.state.edits import RefusedError
from configurator.ui.state.session import Session

Offer = tuple[str, str, str, Callable[[], object]]
"""Name, title and tooltip of a button, and what it does."""
_MEANWHILE = "The job was changed while this was tried. Nothing was taken; try it again."


class ActedOn(Protocol):
    """The schedule page, as far as its actions need it."""

    session: Session
    answers: Answers
    schedule: ScheduleModel
    table: ScheduleTable
    panel: TextPanel
    trying: Pieces

    def chosen_places(self) -> list[int]:
        """Return the chosen openings, by their place in the job."""

    def choose_marks(self, marks: Sequence[str]) -> None:
        """Choose the rows of some marks."""

    def say(self, heading: str, lines: Sequence[str] = (), wrong: bool = False) -> None:
        """Say a sentence in the panel under the table."""


class ScheduleActions:
    """The actions of one schedule page."""

    def __init__(self, page: ActedOn) -> None:
        self.page = page
        self.session = page.session

    def offered(self) -> tuple[Offer, ...]:
        """Return the buttons to offer, in their order."""
        return (
            ("add", "Add", "Add a typical opening", self.add),
            (
                "duplicate",
                "Duplicate",
                "Add openings like the chosen ones under the next marks",
                self.duplicate,
            ),
            ("remove", "Remove", "Take the chosen openings out of the job (Delete)", self.remove),
            ("copy", "Copy", "Copy the chosen rows for a spreadsheet (Ctrl+C)", self.copy),
            ("paste", "Paste", "Paste rows of a spreadsheet (Ctrl+V)", self.paste),
            ("questions", "Questions", "List all questions to the architect", self.list_questions),
        )

    def add(self) -> None:
        """Add a typical opening and show it."""
        self.session.add_opening()

    def set_on_chosen(self, path: str, text: str) -> None:
        """Set one field of all chosen openings."""
        openings = self.session.job.openings
        places = self.page.chosen_places()
        try:
            value = typed(path, text, self.session.display)
        except NotReadError as error:
            self._refuse([f"{paths.trade_name(path)}: {error}"])
            return
        changes = [Change(place, {path: value}, openings[place].mark) for place in places]
        marks = [change.name for change in changes]
        self._try(changes, f"change {paths.trade_name(path)} of {counted(marks)}", Pasted())

    def duplicate(self) -> None:
        """Put a copy after each chosen opening, under the next mark."""
        openings = self.session.job.openings
        places = self.page.chosen_places()
        if places:
            result, marks = duplicates(openings, places)
            name = f"duplicate {counted([openings[place].mark for place in places])}"
            self.session.take_openings(result, name, marks[0])
            self.page.choose_marks(marks)

    def remove(self) -> None:
        """Take the chosen openings out of the job."""
        openings = self.session.job.openings
        gone = set(self.page.chosen_places())
        if not gone:
            return
        marks = [openings[place].mark for place in sorted(gone)]
        rest = tuple(opening for place, opening in enumerate(openings) if place not in gone)
        after = min(min(gone), len(rest) - 1)
        self.session.take_openings(rest, f"remove {counted(marks)}", rest[after].mark if rest else "")
        self.page.say(f"{counted(marks)} removed: undo brings back what was there.")

    def copy(self) -> None:
        """Put the chosen rows on the clipboard with their heads, cells apart by tabs."""
        schedule = self.page.schedule
        table = self.page.table
        places = [place for place in range(len(COLUMNS)) if not table.isColumnHidden(place)]
        rows = [[schedule.exact(row, place) for place in places] for row in self.page.table.chosen_rows()]
        if rows:
            text = as_text(rows, [COLUMNS[place].title for place in places])
            QGuiApplication.clipboard().setText(text)

    def paste(self) -> None:
        """Take the rows on the clipboard, all of them or none."""
        page = self.page
        if page.schedule.wanted.grouped:
            self._refuse(["Like openings stand together in one row; show each by itself to paste."])
            return
        current = page.table.currentIndex()
        shown = [places[0] for places in page.schedule.rows[max(current.row(), 0) :]]
        openings = self.session.job.openings
        target = Target(openings, shown, max(current.column(), 0), self.session.display, page.table.hidden)
        pasted = read_pasted(QGuiApplication.clipboard().text(), target)
        if pasted.refusals:
            self._refuse(pasted.refusals)
        else:
            many = len(pasted.changes)
            self._try(pasted.changes, f"paste {many:,} row{'' if many == 1 else 's'}", pasted)

    def list_questions(self) -> None:
        """Show all questions to the architect as a text to copy."""
        from configurator.documents.schedule import NO_QUESTIONS, questions_text, with_questions

        job = self.session.job
        asked = with_questions(job)
        if not asked:
            self.page.say(f"{NO_QUESTIONS} Write them in the last column, or in the form.")
            return
        many = "1 opening has a question" if len(asked) == 1 else f"{len(asked):,} openings have questions"
        self.page.panel.show_text(
            f"{many} to the architect.", questions_text(job), "questions", "quiet", self.session.dark
        )

    def _try(self, changes: Sequence[Change], name: str, pasted: Pasted) -> None:
        if self.page.trying.running:
            self._refuse(["Something else is still being tried; wait for it, or cancel it."])
            return
        trial = Trial(self.session.job.openings, changes, self.page.answers)
        job = self.session.job

        def take() -> None:
            if self.session.job is not job:
                self._refuse([_MEANWHILE])
            elif trial.refusals:
                self._refuse(trial.refusals)
            else:
                self._take(trial, name, pasted, len(job.openings))

        self.page.trying.start(trial.steps(), take, "Trying it on openings", len(changes))

    def _take(self, trial: Trial, name: str, pasted: Pasted, before: int) -> None:
        added = len(trial.openings) - before
        changed = len(trial.changed) - added
        said = [f"{number:,} {verb}" for number, verb in ((changed, "changed"), (added, "added")) if number]
        words = f"{' and '.join(said) or 'Nothing'} {'' if said else 'is different'}".strip()
        words = f"{words}: undo takes all of it back." if said else f"{words}."
        if pasted.not_read:
            words += f" Not read, for they are worked out here or no column: {', '.join(pasted.not_read)}."
        try:
            if trial.changed:
                self.session.take_openings(trial.openings, name, self.session.mark)
        except RefusedError as error:
            self._refuse([str(error)])
            return
        self.page.say(words)

    def _refuse(self, lines: Sequence[str]) -> None:
        many = "a reason" if len(lines) == 1 else f"{len(lines):,} reasons"
        self.page.say(f"Nothing was changed, for {many}:", lines, wrong=True)
