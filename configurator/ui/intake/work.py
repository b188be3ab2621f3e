"""What the import page is about: a file that is read, how it is read, and how it stands against the job.

A schedule is read in pieces. A building model is read in a process of its own, which a thread waits for.
"""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from configurator.building.apart import is_model, lacking, read_apart
from configurator.building.records import BuildingModel
from configurator.documents.document import Document
from configurator.documents.intake_report import intake_report
from configurator.intake.columns import Commas, Reading, reading_of
from configurator.intake.comparing import Compared, compared_steps, facts_with, openings_with
from configurator.intake.fields import Unit
from configurator.intake.refused import Question
from configurator.intake.rows import RowRead, rows_steps
from configurator.intake.saying import all_told
from configurator.intake.sheet import IntakeError, SheetAskedError, sheet_steps
from configurator.intake.table import ScheduleTable, corrected, corrected_alike, schedule_table
from configurator.long_work import Steps
from configurator.model import Job, JobFacts, Opening
from configurator.sentences import as_sentence, capitalized
from configurator.ui.kit.runner import Beside, Pieces
from configurator.ui.state.session import Session


class ImportWork(QObject):
    """Reads, reads again when told how, and compares. `model` stays until another file is read.

    Signals:
        changed: there is something else to show.
    """

    changed = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.path: Path | None = None
        self.table: ScheduleTable | None = None
        self.reading: Reading | None = None
        self.compared: Compared | None = None
        self.refusal = ""
        self.sheets: tuple[str, ...] = ()
        self._rows: tuple[RowRead, ...] = ()
        self._compared_with: Job | None = None
        self.model: BuildingModel | None = None
        self.pieces, self.beside = Pieces(self), Beside(self)
        self.beside.precious = False  # nothing is lost that the file does not have
        self.beside.failed.connect(self._refuse)

    @property
    def running(self) -> bool:
        """Whether a file is being read or compared."""
        return self.pieces.running or self.beside.running

    def read(self, path: Path, sheet: str | None = None) -> None:
        """Read a file from the start, with the choices that its headings suggest."""
        self.clear()
        self.path, self.model = path, None
        if is_model(path):
            undone = f"{path.name} was not read"
            self.beside.start(f"Reading {path.name}", undone, partial(read_apart, path), self._take_model)
            self.changed.emit()
        else:
            self._start(f"Reading {path.name}", self._reading(path, sheet))

    def lacks_library(self) -> bool:
        """Say on the page how to get the library of building models where it is missing."""
        sentence = lacking()
        self.refusal = as_sentence(sentence) if sentence else ""
        self.changed.emit()
        return bool(sentence)

    def _take_model(self, model: BuildingModel) -> None:
        self.model = model
        self._start("Reading its doors", self._reading_model(model))
        if not self.pieces.running:
            self.changed.emit()

    def _refuse(self, sentence: str) -> None:
        """Show why a model was not read; the library's own sentence says all."""
        name = self.path.name if self.path is not None else ""
        self._forget()
        self.refusal = sentence.removeprefix(f"{name} was not read: ")
        self.changed.emit()

    def read_as(self, reading: Reading) -> None:
        """Read the same rows another way."""
        self.reading, self.compared = reading, None
        self._start("Reading it again", self._rows_read())

    def use_field(self, place: int, field: str | None) -> None:
        """Take another field from a column."""
        assert self.reading is not None
        self.read_as(self.reading.with_field(place, field))

    def use_unit(self, place: int, unit: Unit) -> None:
        """Take a column's bare numbers in another unit."""
        assert self.reading is not None
        self.read_as(self.reading.with_unit(place, unit))

    def use_answer(self, question: Question, answer: str) -> None:
        """Answer what is asked of rows."""
        assert self.reading is not None
        self.read_as(self.reading.with_answer(question, answer))

    def use_commas(self, commas: Commas) -> None:
        """Take the commas of numbers so."""
        assert self.reading is not None
        self.read_as(self.reading.with_commas(commas))

    def keep_others(self) -> None:
        """Keep every column that is not read under its own heading."""
        assert self.reading is not None
        self.read_as(self.reading.keeping_others())

    def correct_alike(self, place: int, old: str, new: str) -> None:
        """Read every cell of a column that says the same as what was typed instead."""
        if self.table is not None and self.reading is not None:
            self.table = corrected_alike(self.table, place, old, new)
            self.read_as(self.reading)

    def correct(self, line: int, place: int, text: str) -> None:
        """Read one cell as what was typed instead; the file itself stays as it is."""
        if self.table is not None and self.reading is not None:
            self.table = corrected(self.table, line, place, text)
            self.read_as(self.reading)

    def follow_job(self) -> None:
        """Compare again where the job is another one by now."""
        if self.compared is not None and self._compared_with is not self.session.job:
            self._start("Comparing", self._set_against_job())

    def taken(self, remove_gone: bool, name_the_job: bool) -> tuple[tuple[Opening, ...], JobFacts]:
        """Return the openings and the facts of the job once the good rows are taken."""
        assert self.compared is not None
        assert self.table is not None
        job = self.session.job
        return openings_with(job, self.compared, remove_gone), facts_with(job, self.table, name_the_job)

    def report(self) -> Document:
        """Return what came of reading the file, to be kept."""
        assert self.table is not None
        assert self.reading is not None
        assert self.compared is not None
        return intake_report(self.session.job.job, self.table, self.reading, self._rows, self.compared)

    def told(self) -> tuple[str, ...]:
        """Return everything that was assumed, in sentences."""
        if self.table is None or self.reading is None or self.compared is None:
            return ()
        return all_told(self.table, self.reading, self.compared)

    def stop(self) -> None:
        """Stop what is being read; of a file half read nothing stays."""
        self.clear()
        self.changed.emit()

    def clear(self) -> None:
        """Forget the file."""
        self.pieces.cancel()
        self.beside.give_up()
        self._forget()

    def _forget(self) -> None:
        self.path, self.table, self.reading, self.compared = None, None, None, None
        self.refusal, self._rows, self.sheets = "", (), ()

    def _start(self, doing: str, steps: Steps[None]) -> None:
        self.pieces.start(self._watched(steps), self._end, doing)
        if self.pieces.running:
            self.changed.emit()

    def _end(self) -> None:
        self.follow_job()  # it may have been changed while it was compared with
        if not self.pieces.running:
            self.changed.emit()

    def _watched(self, steps: Steps[None]) -> Steps[None]:
        try:
            yield from steps
        except IntakeError as error:
            path, name = self.path, self.path.name if self.path is not None else ""
            self._forget()
            if isinstance(error, SheetAskedError):
                self.path, self.sheets = path, error.sheets
            said = str(error)
            self.refusal = f"{said if said.startswith(name) else capitalized(said)}."

    def _reading(self, path: Path, sheet: str | None) -> Steps[None]:
        self.table = schedule_table((yield from sheet_steps(path, sheet)))
        self.sheets = self.table.sheets
        self.reading = reading_of(self.table)
        yield from self._rows_read()

    def _reading_model(self, model: BuildingModel) -> Steps[None]:
        from configurator.building.schedule import model_table

        self.table = model_table(model)
        yield 0
        self.reading = reading_of(self.table)
        yield from self._rows_read()

    def _rows_read(self) -> Steps[None]:
        assert self.table is not None
        assert self.reading is not None
        self._rows = yield from rows_steps(self.table, self.reading)
        yield from self._set_against_job()

    def _set_against_job(self) -> Steps[None]:
        assert self.reading is not None
        job = self.session.job
        self.compared = yield from compared_steps(self._rows, self.reading, job)
        self._compared_with = job
