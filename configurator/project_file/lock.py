"""A lock beside a project file says who works on it, so that two people cannot overwrite each other.

The lock of `plan.json` is `.plan.json.lock`, a small JSON file: the program that holds it, since when, and
a token of its own. It is put there whole or not at all, touched every few seconds, and removed when the
file is let go. One that its program left behind is *stale*: the process is gone, or, where it cannot be
asked, the lock was not touched for ten minutes (the clocks are taken to agree that far). A stale lock is
never taken but on the user's word.
"""

import hashlib
import json
import os
import stat
import tempfile
import time
from contextlib import suppress
from dataclasses import asdict, dataclass
from pathlib import Path

from configurator.project_file.owner import Owner, fresh_token, owner_from, this_program
from configurator.project_file.refusals import ProjectFileError, refusal
from configurator.project_file.writing import cut_name, part_prefix, real_place, sweep

QUIET_TOO_LONG = 600.0
"""Seconds without a sign of life after which a lock from elsewhere is stale."""
LARGEST_LOCK = 4096
_LONGEST_NAME, _CUT_NAME = 240, 200
"""Bytes of a file's name that its lock can still be named after, and what is kept of a longer one."""
TRIES = 5


@dataclass(frozen=True, slots=True)
class Holder:
    """Who holds a lock; `owner` is None where the lock cannot be read. Times are seconds since 1970."""

    token: str
    owner: Owner | None
    since: float
    last_sign: float

    def stale(self) -> bool:
        """Say whether the program that made the lock left it behind."""
        lives = self.owner.lives() if self.owner else None
        return time.time() - self.last_sign > QUIET_TOO_LONG if lives is None else not lives

    def words(self) -> str:
        """Return who and since when, as in "ann on desk-7 since 14:02"."""
        return f"{self.owner.words() if self.owner else 'somebody'} since {clock(self.since)}"


class LockedError(ProjectFileError):
    """A project file that another program works on; `holder` is who."""

    def __init__(self, path: Path, holder: Holder) -> None:
        still = "is still marked as open by" if holder.stale() else "is open by"
        super().__init__(refusal("", f"{path.name[:80]} {still} {holder.words()}").faults)
        self.holder = holder


class Lock:
    """The lock this program holds on one project file."""

    def __init__(self, path: Path) -> None:
        self._project = real_place(path)
        self._place = lock_place(path)
        self._data = {
            "opening_project_lock": 1,
            "token": fresh_token(),
            "since": time.time(),
            "owner": asdict(this_program()),
        }

    def take(self) -> Holder | None:
        """Take the lock; return who has it instead, None when it is ours. Raises OSError."""
        for _ in range(TRIES):
            if self._put():
                sweep(self._place.parent, part_prefix(self._project))
                return None
            holder = _holder_at(self._place)
            if holder is not None:  # otherwise it was let go this very moment
                return None if holder.token == self._data["token"] else holder
        raise OSError("its lock comes and goes")

    def replace(self, stale: Holder) -> Holder | None:
        """Put our lock in place of a stale one; return who was quicker, None when it is ours.

        Raises OSError.
        """
        now = _holder_at(self._place)
        if now is None:
            return self.take()
        if now.token != stale.token or not now.stale():
            return now
        self._written().replace(self._place)
        after = _holder_at(self._place)  # of two who replace it at once the later one has it
        return None if after is None or after.token == self._data["token"] else after

    def keep(self) -> bool:
        """Give a sign of life; say whether the lock is still ours. One that was deleted is put back."""
        try:
            holder = _holder_at(self._place)
            if holder is None:
                return self._put()
            if holder.token != self._data["token"]:
                return False
            os.utime(self._place)
        except OSError:
            pass  # the folder is out of reach just now; nobody else can be told to have the file
        return True

    def release(self) -> None:
        """Let the file go, unless somebody else took the lock over."""
        with suppress(OSError):
            holder = _holder_at(self._place)
            if holder is not None and holder.token == self._data["token"]:
                self._place.unlink()

    def _put(self) -> bool:
        """Put the lock where none is, whole from the first moment; say whether it was put."""
        part = self._written()
        try:
            os.link(part, self._place)
        except FileExistsError:
            return False
        except OSError:  # no hard links here
            return self._put_without_links()
        finally:
            part.unlink()
        return True

    def _put_without_links(self) -> bool:
        try:
            handle = os.open(self._place, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o644)
        except FileExistsError:
            return False
        with os.fdopen(handle, "wb") as file:
            file.write(self._bytes())
        return True

    def _written(self) -> Path:
        prefix = part_prefix(self._project)
        handle, name = tempfile.mkstemp(prefix=prefix, suffix=".part", dir=self._place.parent)
        part = Path(name)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(self._bytes())
            part.chmod(0o644)  # others are to read who holds it
        except BaseException:
            part.unlink()
            raise
        return part

    def _bytes(self) -> bytes:
        return (json.dumps(self._data, indent=1) + "\n").encode()


def lock_place(path: Path) -> Path:
    """Return where the lock of a project file stands: beside the file itself, whatever links lead to it."""
    real = real_place(path)
    name = real.name
    if len(os.fsencode(name)) > _LONGEST_NAME:
        name = f"{cut_name(name, _CUT_NAME)}-{hashlib.sha256(os.fsencode(name)).hexdigest()[:16]}"
    return real.with_name(f".{name}.lock")


def holder_of(path: Path) -> Holder | None:
    """Return who works on a project file, None where nobody does. Raises OSError."""
    return _holder_at(lock_place(path))


def clock(moment: float) -> str:
    """Return a moment as 14:02, with the day before it where that is not today."""
    try:
        then = time.localtime(moment)
    except (ValueError, OverflowError, OSError):
        return "an unknown time"
    today = then[:3] == time.localtime()[:3]
    return time.strftime("%H:%M" if today else "%Y-%m-%d %H:%M", then)


def _holder_at(place: Path) -> Holder | None:
    try:
        found = place.lstat()
        if not stat.S_ISREG(found.st_mode):
            # A pipe would be waited for, and a link that leads nowhere is there and is not. No program of
            # ours put it there, so it may be replaced at once.
            return Holder("", None, found.st_mtime, 0.0)
        with place.open("rb") as file:
            text = file.read(LARGEST_LOCK)
    except FileNotFoundError:
        return None
    last_sign = found.st_mtime
    try:
        data = json.loads(text)
        return Holder(str(data["token"]), owner_from(data["owner"]), float(data["since"]), last_sign)
    except (ValueError, KeyError, TypeError, OverflowError, RecursionError):
        return Holder("", None, last_sign, last_sign)
