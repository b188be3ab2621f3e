"""What the window asks about its file: who has it, who changed it, and what a crash left behind."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Protocol

from configurator.project_file import ProjectFileError
from configurator.project_file.held import ChangedOnDiskError, News
from configurator.project_file.lock import LockedError, clock
from configurator.project_file.recovery import DAYS_ASIDE, LeftBehind, RecoveryFile, discarded, left_behind
from configurator.ui.kit.message_line import Choice
from configurator.ui.state.session import Session

MOST_OFFERED = 3
LOCK, CHANGE, SAVING, DISCARDED = "lock", "change", "saving", "discarded"
Ask = Callable[[str, str, Sequence[Choice]], None]


class FileCommands(Protocol):
    """The file commands, as far as an answer may need them."""

    session: Session
    say: Callable[[str], None]

    def save_as(self) -> bool:
        """Save under another name."""

    def read(self, path: Path) -> bool:
        """Open a file."""

    def write(self, path: Path, *, over_theirs: bool = False, over_stale_lock: bool = False) -> bool:
        """Save to a file."""

    def may_leave(self) -> bool:
        """Ask about unsaved work."""

    def keep_now(self) -> bool:
        """Set unsaved work aside at once."""


@dataclass(frozen=True, slots=True)
class FileQuestions:
    """Asks in lines of text, never in the way; each answer is a button beside its sentence."""

    files: FileCommands
    ask: Ask

    def settle(self) -> None:
        """Take away what was asked about a state of the file that is no more, and say how it is now."""
        self.ask(CHANGE, "", ())
        self.ask(SAVING, "", ())
        self.about_lock()

    # --- Who has the file ---

    def about_lock(self) -> None:
        """Say why the file on show is read-only, or take that away."""
        session = self.files.session
        holder = session.file.holder if session.file else None
        if not session.read_only:
            self.ask(LOCK, "", ())
        elif holder is not None and holder.stale():
            ended = "but that program has ended. Here it is read-only until you take it over."
            self.ask(LOCK, f"{session.read_only}, {ended}", [("Take it over", self._take_over)])
        else:
            other_name = "Here it is read-only: what you change can be saved under another name."
            self.ask(LOCK, f"{session.read_only}. {other_name}", [("Save as…", self.files.save_as)])

    def _take_over(self) -> None:
        self.files.session.take_over()
        self.about_lock()

    # --- Who changed it ---

    def about_news(self, news: News) -> None:
        """Say what happened to the file on disk meanwhile."""
        if news in ("changed", "gone"):
            self.about_change(gone=news == "gone")
        elif news == "":
            self.ask(CHANGE, "", ())
        elif news == "lock free":
            free = f"{self._name()} is free again; here it is still read-only."
            self.ask(LOCK, free, [("Take it for editing", self._take_over)])
        elif news in ("lock lost", "lock stale"):
            self.files.session.changed.emit("file")
            self.about_lock()

    def about_change(self, gone: bool = False) -> None:
        """Say that somebody else changed the file, and offer every way on."""
        session = self.files.session
        if gone:
            moved = f"{self._name()} was moved or deleted by another program; Save writes it anew."
            self.ask(CHANGE, moved, ())
            return
        changed = f"{self._name()} was changed on disk by another program"
        load = ("Load theirs", self._take_theirs)
        if session.read_only:
            self.ask(CHANGE, f"{changed}.", [load])
            return
        choices: list[Choice] = [("Save mine as…", self.files.save_as), load]
        choices.append(("Replace theirs", self._replace_theirs))
        kept = "; yours is set aside if you load theirs" if session.history.unsaved else ""
        self.ask(CHANGE, f"{changed}, and nothing was written over it{kept}.", choices)

    def _take_theirs(self) -> None:
        session = self.files.session
        mine = RecoveryFile()
        try:
            if session.history.unsaved:
                mine.write(session.job, session.path, session.file.digest if session.file else "", True)
        except OSError as error:
            why = error.strerror or error
            self.files.say(f"Your work could not be set aside, so nothing was loaded: {why}.")
            return
        if session.path is not None and not self.files.read(session.path):
            mine.remove()
            self.about_change()
        self.offer_left_behind()

    def _replace_theirs(self) -> None:
        path = self.files.session.path
        if path is not None:
            self.files.write(path, over_theirs=True)

    # --- A save that did not go ---

    def about_refused_save(self, error: ProjectFileError, path: Path) -> None:
        """Say why a save did not go, with the ways on where there are any."""
        if isinstance(error, ChangedOnDiskError):
            self.about_change()
        elif isinstance(error, LockedError) and error.holder.stale():
            sentence = f"{error.faults[0]}, but that program has ended. Nothing was saved."
            over = lambda: self.files.write(path, over_stale_lock=True)  # noqa: E731
            self.ask(SAVING, sentence, [("Take it over and save", over)])
        else:
            locked = "; nothing was saved. Choose another name." if isinstance(error, LockedError) else ""
            self.files.say(f"{error.faults[0]}{locked}")
        if self.files.session.read_only:
            self.about_lock()

    # --- What a crash left behind ---

    def offer_left_behind(self) -> None:
        """Offer the unsaved work that no running program looks after."""
        for left in left_behind()[:MOST_OFFERED]:
            self._offer(left)

    def offer_discarded(self) -> None:
        """Offer the work that was discarded and is still kept aside, the latest first."""
        found = discarded()[:MOST_OFFERED]
        if not found:
            self.files.say(f"No discarded work is kept; it is for {DAYS_ASIDE} days.")
        for left in found:
            back = ("Bring it back", partial(self._bring_back, left))
            self.ask(left.place.name, f"Discarded: {left.words()}", [back])

    def _offer(self, left: LeftBehind) -> None:
        answers = [("Recover", lambda: self._recover(left)), ("Discard", lambda: self._discard(left))]
        self.ask(left.place.name, left.words(), answers)

    def _discard(self, left: LeftBehind) -> None:
        if mine := left.claim():
            mine.discard()
            until = f"It can be brought back for {DAYS_ASIDE} days."
            what = f"The work of {clock(left.when)} was discarded. {until}"
            self.ask(DISCARDED, what, [("Bring it back", lambda: self._bring_back(mine))])

    def _bring_back(self, discarded: LeftBehind) -> None:
        try:
            discarded.bring_back()
        except OSError as error:
            self.files.say(f"It could not be brought back: {error.strerror or error}.")
        else:
            self._offer(discarded)

    def _recover(self, left: LeftBehind) -> None:
        if not self.files.may_leave():
            self._offer(left)
            return
        mine = left.claim()
        if mine is None:
            self.files.say("Another window has taken that work already.")
            return
        try:
            self.files.session.recover(mine.job(), mine.path, mine.based_on)
        except ProjectFileError as error:
            self.files.say(f"It was not recovered: {error.faults[0]}. It stays in {mine.place}")
            return
        self.settle()
        if self.files.keep_now():
            mine.forget()

    def _name(self) -> str:
        path = self.files.session.path
        return path.name[:80] if path else "the file"
