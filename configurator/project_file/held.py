"""The project file a window works on: locked meanwhile, and never written over what somebody else wrote."""

import hashlib
import os
import weakref
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from configurator.model import Job
from configurator.project_file.lock import Holder, Lock, LockedError, holder_of
from configurator.project_file.reading import parse, read_bytes
from configurator.project_file.refusals import ProjectFileError, reason, refusal
from configurator.project_file.writing import KnownTexts, dump, save_bytes

News = Literal["", "changed", "gone", "lock lost", "lock free", "lock stale"]
Signature = tuple[int, int, int]


class ChangedOnDiskError(ProjectFileError):
    """A project file that somebody else changed since it was read; it was not written."""


@dataclass(frozen=True, slots=True)
class Seen:
    """How a file stood when it was last read or written."""

    signature: Signature | None
    digest: str


class HeldFile:
    """A project file, ours to save (`why_not` is empty) or open read-only, and then `why_not` says why.

    It is let go by `release`, or when the program ends in order.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self.holder: Holder | None = None
        self.why_not = ""
        self._lock: Lock | None = None
        self._seen: Seen | None = None
        self._known = KnownTexts()
        self._letting_go: weakref.finalize[[], HeldFile] | None = None

    @property
    def digest(self) -> str:
        """What tells the file as last read or written from any other; empty for one not yet written."""
        return self._seen.digest if self._seen else ""

    def read(self) -> Job:
        """Read the job that now stands in the file. Raises ProjectFileError."""
        data = read_bytes(self.path)
        job = parse(data)
        self._note(data)
        return job

    def base_on(self, digest: str) -> None:
        """Take the file for changed unless it is the one that work with this digest began from."""
        if digest != self.digest:
            self._seen = Seen(None, digest)

    def save(self, job: Job, over_theirs: bool = False) -> None:
        """Write the job, over what somebody else wrote only when told so.

        Raises ChangedOnDiskError, and ProjectFileError when it is not ours to write or cannot be written.
        """
        self._require_lock()
        data = dump(job, self._known)
        save_bytes(data, self.path, lambda: None if over_theirs else self._refuse_over_theirs())
        self._note(data)

    def lock(self) -> None:
        """Take the file for this program, or note in `why_not` why it is read-only."""
        if is_there(self.path) and not os.access(self.path, os.W_OK):
            self.why_not = f"{self.path.name} is write-protected"
            return
        try:
            lock = Lock(self.path)
            self._had(lock, lock.take())
        except OSError as error:
            self.why_not = f"the folder of {self.path.name} cannot be written: {reason(error)}"

    def take_over(self) -> None:
        """Take the file although a stale lock is on it, on the user's word. `why_not` says if that failed."""
        if self.holder is None:
            self.lock()
            return
        lock = Lock(self.path)
        try:
            self._had(lock, lock.replace(self.holder))
        except OSError as error:
            self.why_not = f"the lock of {self.path.name} cannot be taken over: {reason(error)}"

    def release(self) -> None:
        """Let the file go."""
        if self._lock is not None:
            self._lock.release()
            self._lock = None
        if self._letting_go is not None:
            self._letting_go.detach()

    def news(self) -> News:
        """Say what happened to the file meanwhile. A cheap look, unless it was written."""
        if self._lock is None:
            return self._news_of_theirs()
        if not self._lock.keep():
            self._lose()
            return "lock lost"
        return self._news_on_disk()

    def _news_of_theirs(self) -> News:
        if self.holder is None:
            return ""
        try:
            now = holder_of(self.path)
        except OSError:
            return ""
        if now is None:
            return "lock free"
        self.holder = now
        return self._news_on_disk() or ("lock stale" if self._turned_stale() else "")

    def _turned_stale(self) -> bool:
        """Say whether the program that has the file ended, and then in `why_not` too."""
        if self.holder is None or not self.holder.stale():
            return False
        self.why_not = str(LockedError(self.path, self.holder))
        return True

    def _news_on_disk(self) -> News:
        seen = self._seen
        if seen is None or (now := _signature(self.path)) == seen.signature:
            return ""
        if now is None:
            return "gone"
        try:
            data = self.path.read_bytes()
        except OSError:
            return ""
        if _digest(data) != seen.digest:
            return "changed"
        self._seen = Seen(now, seen.digest)
        return ""

    def _refuse_over_theirs(self) -> None:
        try:
            now = _digest(self.path.read_bytes())
        except FileNotFoundError:
            return
        if now != self.digest:
            raise ChangedOnDiskError(refusal("", f"{self.path.name[:80]} {CHANGED}").faults)

    def _require_lock(self) -> None:
        if self._lock is not None and not self._lock.keep():
            self._lose()
        if self._lock is None:
            raise refusal("", f"{self.path.name[:80]} was not saved: {self.why_not or 'it is not ours'}")

    def _lose(self) -> None:
        self._lock = None
        try:
            self.holder = holder_of(self.path)
        except OSError:
            self.holder = None
        who = self.holder.words() if self.holder else "somebody"
        self.why_not = f"{self.path.name} was taken over by {who}"

    def _had(self, lock: Lock, other: Holder | None) -> None:
        self.holder = other
        if other is not None:
            self.why_not = str(LockedError(self.path, other))
            return
        self.why_not = ""
        self._lock = lock
        self._letting_go = weakref.finalize(self, lock.release)

    def _note(self, data: bytes) -> None:
        self._seen = Seen(_signature(self.path), _digest(data))


CHANGED = "was changed on disk by another program since it was opened here; nothing was written"


def open_held(path: Path, mine: HeldFile | None = None) -> tuple[HeldFile, Job]:
    """Take a project file and read it; one that somebody else has is read all the same.

    `mine` is a file held so far: it is read anew if it is this one, and else let go. Raises ProjectFileError,
    and then what was held still is, and no more.
    """
    if mine is not None and not mine.why_not and same_file(mine.path, path):
        return mine, mine.read()
    file = HeldFile(path)
    if is_there(path):
        file.lock()
    try:
        job = file.read()
    except BaseException:
        file.release()
        raise
    if mine is not None:
        mine.release()
    return file, job


def save_held(
    job: Job, path: Path, mine: HeldFile | None, over_theirs: bool = False, over_stale_lock: bool = False
) -> HeldFile:
    """Save a job to a file and return the file, now held.

    `mine` is a file held so far. If it is another one, that one is let go; whoever chose the new name was
    asked about what stands there, so it is replaced. Raises LockedError, ChangedOnDiskError and
    ProjectFileError, and then nothing is written and what was held still is.
    """
    if mine is not None and same_file(mine.path, path):
        mine.save(job, over_theirs)
        return mine
    file = _claimed(path, over_stale_lock)
    try:
        file.save(job, over_theirs=True)
    except BaseException:
        file.release()
        raise
    if mine is not None:
        mine.release()
    return file


def _claimed(path: Path, take_over: bool = False) -> HeldFile:
    file = HeldFile(path)
    file.lock()
    if file.holder is not None and take_over:
        file.take_over()
    if file.holder is not None:
        raise LockedError(path, file.holder)
    if file.why_not:
        raise refusal("", f"{path.name[:80]} could not be saved: {file.why_not}")
    return file


def is_there(path: Path) -> bool:
    """Say whether there is a file at a path; a path that cannot even be looked at has none."""
    try:
        return path.is_file()
    except OSError:
        return False


def same_file(one: Path, other: Path) -> bool:
    """Say whether two paths lead to one file."""
    return one.resolve() == other.resolve()


def _signature(path: Path) -> Signature | None:
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
