"""Unsaved work kept against a crash, in the user's own folder for what programs remember.

A recovery file is one line of JSON, saying whose work it is and which file it belongs to, and then the
bytes of a project file. It is written whole or not at all, and removed when the work is saved or given up.
One found while the program that wrote it runs no more was left behind by a crash. Work can also be *set
aside*: kept on the user's word until it is recovered or discarded.
"""

import json
import os
import time
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

from configurator.model import Job
from configurator.project_file.lock import clock
from configurator.project_file.owner import Owner, fresh_token, owner_from, this_program
from configurator.project_file.reading import parse
from configurator.project_file.refusals import reason, refusal
from configurator.project_file.writing import PRIVATE_MODE, KnownTexts, dump, sweep, write_whole
from configurator.resource_files import state_folder

SUFFIX = ".recovery"
ASIDE = ".discarded"
DAYS_ASIDE = 30
_SECONDS_A_DAY = 86_400
LONGEST_HEAD = 16_384


def recovery_folder() -> Path:
    """Return where unsaved work is kept."""
    return state_folder() / "unsaved"


class RecoveryFile:
    """The unsaved work of one window."""

    def __init__(self) -> None:
        self.place = recovery_folder() / f"{fresh_token()}{SUFFIX}"
        self._known = KnownTexts()

    def write(self, job: Job, path: Path | None, based_on: str, set_aside: bool = False) -> None:
        """Keep a job that belongs to the file at `path`, None for one never saved. Raises OSError.

        `based_on` is the digest of that file as it was when the work on it began.
        """
        head = {
            "opening_recovery": 1,
            "path": str(path.resolve()) if path else None,
            "based_on": based_on,
            "when": time.time(),
            "set_aside": set_aside,
            "owner": asdict(this_program()),
            "about": _about(job),
        }
        # What somebody works on may be private: no one else on the machine is to read it.
        self.place.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        data = json.dumps(head).encode() + b"\n" + dump(job, self._known)
        write_whole(self.place, data, mode=PRIVATE_MODE)

    def remove(self) -> None:
        """Forget what was kept."""
        with suppress(OSError):
            self.place.unlink()


@dataclass(frozen=True, slots=True)
class LeftBehind:
    """Unsaved work that was found; `path` is the file it belongs to, None where it was never saved."""

    place: Path
    path: Path | None
    based_on: str
    when: float
    set_aside: bool
    owner: Owner | None
    about: str = ""

    def words(self) -> str:
        """Return the sentence that offers it."""
        never = f"a job that was never saved ({self.about})" if self.about else "a job that was never saved"
        name = self.path.name[:80] if self.path else never
        if self.set_aside:
            return f"Your own changes to {name} of {clock(self.when)} were set aside."
        kept = f"The program ended without saving {name}; its work of {clock(self.when)} was kept."
        later = self._saved_later()
        return f"{kept} The file itself was saved after that, at {clock(later)}." if later else kept

    def _saved_later(self) -> float | None:
        try:
            saved = self.path.stat().st_mtime if self.path else 0.0
        except OSError:
            return None
        return saved if saved > self.when else None

    def job(self) -> Job:
        """Return the work. Raises ProjectFileError, and then the file stays where it is."""
        try:
            data = self.place.read_bytes()
        except OSError as error:
            raise refusal("", f"the unsaved work could not be read: {reason(error)}") from error
        return parse(data.partition(b"\n")[2])

    def claim(self) -> "LeftBehind | None":
        """Take the work for this window; None when another window was quicker.

        It keeps a name under which it is found again, should this window end before it has its own copy.
        """
        mine = self.place.with_name(f"{fresh_token()}{SUFFIX}")
        try:
            self.place.rename(mine)
        except OSError:
            return None
        return replace(self, place=mine)

    def forget(self) -> None:
        """Forget the work for good: it is in this window now."""
        with suppress(OSError):
            self.place.unlink()

    def discard(self) -> None:
        """Put the work away: it is offered no more, and kept aside for DAYS_ASIDE days."""
        with suppress(OSError):
            self.place.replace(self.place.with_suffix(ASIDE))
            os.utime(self.place.with_suffix(ASIDE))

    def bring_back(self) -> None:
        """Offer work again that was discarded. Raises OSError where it is there no more."""
        self.place.with_suffix(ASIDE).replace(self.place)


def _about(job: Job) -> str:
    """Tell a job from others that were never saved: its name, and the openings it has."""
    marks = [opening.mark for opening in job.openings]
    first = (
        f"opening {marks[0]}"
        if len(marks) == 1
        else f"{len(marks)} openings from {marks[0]}"
        if marks
        else ""
    )
    return ", ".join(part[:60] for part in (job.job.name, first) if part)


def left_behind() -> tuple[LeftBehind, ...]:
    """Return the unsaved work that no running program looks after, the latest first."""
    try:
        places = [place for place in recovery_folder().iterdir() if place.suffix == SUFFIX]
    except OSError:
        return ()
    sweep(recovery_folder(), ".")
    _forget_what_is_old()
    found = [each for place in places if (each := _read_head(place)) and _is_left(each)]
    return tuple(sorted(found, key=lambda each: -each.when))


def discarded() -> tuple[LeftBehind, ...]:
    """Return the work that was discarded and is still kept aside, the latest first."""
    _forget_what_is_old()
    found = filter(None, map(_read_head, recovery_folder().glob(f"*{ASIDE}")))
    as_left = (replace(each, place=each.place.with_suffix(SUFFIX)) for each in found)
    return tuple(sorted(as_left, key=lambda each: -each.when))


def _forget_what_is_old() -> None:
    """Take away what was discarded more than DAYS_ASIDE days ago."""
    oldest = time.time() - DAYS_ASIDE * _SECONDS_A_DAY
    for place in recovery_folder().glob(f"*{ASIDE}"):
        with suppress(OSError):
            if place.stat().st_mtime < oldest:
                place.unlink()


def _is_left(found: LeftBehind) -> bool:
    # From another machine that shares the folder it is not known, and then its own will offer it.
    return found.set_aside or (found.owner is not None and found.owner.lives() is False)


def _read_head(place: Path) -> LeftBehind | None:
    try:
        with place.open("rb") as file:
            head: dict[str, Any] = json.loads(file.readline(LONGEST_HEAD))
        path = Path(head["path"]) if head["path"] else None
        when, set_aside = float(head["when"]), bool(head["set_aside"])
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None
    owner = owner_from(head.get("owner"))
    about = str(head.get("about", ""))[:120]
    return LeftBehind(place, path, str(head.get("based_on", "")), when, set_aside, owner, about)
