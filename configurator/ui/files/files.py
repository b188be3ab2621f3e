"""Opening, saving and exporting from the window: which file, and what to say when it does not work."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import (
    QFileDialog,
    QLineEdit,
    QMenu,
    QMessageBox,
    QPlainTextEdit,
    QTextEdit,
    QWidget,
)

from configurator.model import Job
from configurator.project_file import ProjectFileError, save
from configurator.resource_files import resource_path
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.ui.files.file_questions import Ask, FileQuestions
    from configurator.ui.files.keeping import Keeping

DEMO = "kestrel_point.json"
PROJECTS = "Opening projects (*.json)"
PICTURES = "PNG picture (*.png);;SVG drawing (*.svg);;PDF page (*.pdf)"


class Files:
    """The file commands of the window.

    `say` shows a sentence in the window's own line, `ask` one with answers that stands until it is answered.
    """

    def __init__(
        self,
        session: Session,
        preferences: Preferences,
        owner: QWidget,
        say: Callable[[str], None],
        ask: "Ask",
    ) -> None:
        self.session = session
        self.preferences = preferences
        self.owner = owner
        self.say = say
        self._ask = ask
        self._questions: FileQuestions | None = None
        self._keeping: Keeping | None = None

    @property
    def questions(self) -> "FileQuestions":
        """What is asked about the file; loaded on use."""
        from configurator.ui.files.file_questions import FileQuestions

        self._questions = self._questions or FileQuestions(self, self._ask)
        return self._questions

    def begin(self) -> None:
        """Begin to look after the file and the unsaved work, once the window stands."""
        from configurator.ui.files.keeping import Keeping

        keep_after = lambda: self.preferences.keep_after  # noqa: E731
        self._keeping = Keeping(self.session, self.questions.about_news, self.say, keep_after)
        self.questions.about_lock()
        self.questions.offer_left_behind()

    def keep_now(self) -> bool:
        """Keep the unsaved work against a crash at once; say whether it is on the disk."""
        return self._keeping is not None and self._keeping.keep_now()

    def keep_if_unsaved(self) -> bool:
        """Keep what is not saved at once; say whether all there is stands on the disk."""
        return not self.session.history.unsaved or self.keep_now()

    def leave(self) -> None:
        """Let the file go and leave unsaved work to be offered at the next start: nobody can be asked."""
        if self._keeping is not None:
            self._keeping.leave()
            self._keeping = None
        self.session.let_go()

    def close(self) -> None:
        """Let the file go and forget what was kept: the window closes in order."""
        if self._keeping is not None:
            self._keeping.close()
            self._keeping = None
        self.session.let_go()

    def new(self) -> None:
        """Begin a new job, asking first about unsaved work."""
        if self.may_leave():
            self.session.start_new()
            self.questions.settle()

    def open(self) -> None:
        """Ask for a project file and open it."""
        if not self.may_leave():
            return
        name, _ = QFileDialog.getOpenFileName(self.owner, "Open a project", self._folder(), PROJECTS)
        if name:
            self.read(Path(name))

    def recent_menu(self) -> QMenu:
        """Return a menu of the files opened lately, made anew whenever it is shown."""
        menu = QMenu("Open a recent job", self.owner)
        menu.aboutToShow.connect(lambda: self._fill_recent(menu))
        return menu

    def _fill_recent(self, menu: QMenu) -> None:
        menu.clear()
        for path in self.preferences.recent:
            menu.addAction(path.name, partial(self.open_other, path)).setToolTip(str(path))
        if not self.preferences.recent:
            menu.addAction("No job was opened yet").setEnabled(False)
        menu.setToolTipsVisible(True)

    def open_demo(self) -> None:
        """Open the job that comes with the program, asking first about unsaved work."""
        self.open_other(resource_path("demo_openings", DEMO))

    def open_other(self, path: Path) -> None:
        """Open a project file, asking first about unsaved work."""
        if self.may_leave():
            self.read(path)

    def read(self, path: Path) -> bool:
        """Open a project file and say whether it was; one that is refused leaves everything as it was."""
        try:
            self.session.open(path, self.preferences.place(path)[1])
        except ProjectFileError as error:
            self.say(refusal_words(path, error))
            return False
        self.preferences.note_recent(path)
        self.say("")
        self.questions.settle()
        return True

    def save(self) -> bool:
        """Save where the job came from, or elsewhere if that is read-only; say whether it was saved."""
        self._finish_typing()
        if self.session.path is None or self.session.read_only:
            return self.save_as()
        return self.write(self.session.path)

    def save_as(self) -> bool:
        """Ask where to save; say whether it was saved."""
        self._finish_typing()
        start = str(self.session.path or Path(self._folder()) / "openings.json")
        name, _ = QFileDialog.getSaveFileName(self.owner, "Save the project", start, PROJECTS)
        return bool(name) and self.write(_ending(Path(name), ".json"))

    def write(self, path: Path, *, over_theirs: bool = False, over_stale_lock: bool = False) -> bool:
        """Save to a file and say whether it was saved; what others did to it stops it unless told so."""
        job = self._job_in(path)
        if moved := job is not self.session.job:
            self.session.take_job(job, "keep the price list")
        try:
            self.session.save(path, over_theirs=over_theirs, over_stale_lock=over_stale_lock)
        except ProjectFileError as error:
            if moved:
                self.session.undo()
            self.questions.about_refused_save(error, path)
            return False
        self.preferences.note_recent(path)
        self.say("")
        self.questions.settle()
        return True

    def _job_in(self, path: Path) -> Job:
        """Return the job as it is written to a file there, with the price list it has found from there."""
        job = self.session.job
        if job.order.price_list is None or path == self.session.path:
            return job
        from configurator.order.price_list import with_prices_from

        return with_prices_from(job, self.session.path, path)

    def save_copy(self) -> None:
        """Ask for a name and write the job there; the window goes on with the file it has."""
        start = str(Path(self._folder()) / "copy of openings.json")
        name, _ = QFileDialog.getSaveFileName(self.owner, "Save a copy", start, PROJECTS)
        if not name:
            return
        path = _ending(Path(name), ".json")
        try:
            save(self._job_in(path), path)
        except ProjectFileError as error:
            self.say(str(error.faults[0]))
        else:
            self.say(f"A copy was written: {path}")

    def export(self, save_picture: Callable[[Path], None]) -> None:
        """Ask where the picture goes and write it there."""
        start = str(Path(self._folder()) / f"{self.session.mark or 'opening'}.png")
        name, chosen = QFileDialog.getSaveFileName(self.owner, "Export the picture", start, PICTURES)
        if not name:
            return
        path = _ending(Path(name), "." + chosen.partition("*.")[2].rstrip(")") if chosen else ".png")
        try:
            save_picture(path)
        except (OSError, ValueError) as error:
            self.say(f"{path.name} could not be written: {getattr(error, 'strerror', None) or error}")
        else:
            self.say(f"Picture written: {path}")

    def may_leave(self) -> bool:
        """Say whether the job may be left: it is saved, or the user saved or gave it up just now."""
        self._finish_typing()
        if not self.session.history.unsaved:
            return True
        name = self.session.path.name if self.session.path else "this job"
        buttons = QMessageBox.StandardButton
        answer = QMessageBox.question(
            self.owner,
            "Unsaved work",
            f"Save the changes to {name} first?",
            buttons.Save | buttons.Discard | buttons.Cancel,
            buttons.Save,
        )
        if answer == buttons.Save:
            return self.save()
        return bool(answer == buttons.Discard)

    def may_close(self) -> bool:
        """Say whether the window may close: what it is doing may be stopped, and the job may be left."""
        from configurator.ui.kit.runner import under_way  # loaded on use: the window is painted before it

        doing = under_way(self.owner)
        if doing:
            sentence = (
                f"{' and '.join(doing)} {'is' if len(doing) == 1 else 'are'} under way. Stop and close?"
            )
            answer = QMessageBox.question(self.owner, "Work under way", sentence)
            if answer != QMessageBox.StandardButton.Yes:
                return False
        return self.may_leave()

    def _finish_typing(self) -> None:
        """Take what stands in the field being typed in, as leaving it would."""
        typed = self.owner.focusWidget()
        if isinstance(typed, QLineEdit | QPlainTextEdit | QTextEdit):
            typed.clearFocus()

    def _folder(self) -> str:
        recent = self.preferences.recent
        folder = self.session.path or (recent[0] if recent else None)
        return str(folder.parent if folder else Path.home())


def _ending(path: Path, suffix: str) -> Path:
    return path if path.suffix else path.with_suffix(suffix)


def refusal_words(path: Path, error: ProjectFileError) -> str:
    """Say why a file was not opened."""
    more = f" (and {len(error.faults) - 1} more)" if len(error.faults) > 1 else ""
    return f"{path.name} was not opened: {error.faults[0]}{more}"
