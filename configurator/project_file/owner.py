"""Which running program something belongs to, and whether that program still runs."""

import getpass
import os
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from pydantic import TypeAdapter, ValidationError

LONGEST_NAME = 60


@dataclass(frozen=True, slots=True)
class Owner:
    """One run of a program: who started it, on which machine and which start of it, as which process.

    `space` is the set of processes that can see each other, for a container has its own; `started` tells a
    process from a later one with the same number. What a system does not tell is empty.
    """

    user: str
    host: str
    machine: str
    boot: str
    space: str
    pid: int
    started: str

    def lives(self) -> bool | None:
        """Say whether the program still runs; None where this machine cannot know."""
        here = this_program()
        if (self.host, self.machine) != (here.host, here.machine):
            return None
        if self.boot != here.boot:
            return False
        if self.space != here.space or os.name != "posix":
            return None
        return self._process_lives()

    def _process_lives(self) -> bool | None:
        try:
            os.kill(self.pid, 0)
        except (ProcessLookupError, OverflowError):
            return False
        except PermissionError:
            pass  # it is another user's, and it runs
        started = _started(self.pid)
        return started == self.started if started and self.started else None

    def words(self) -> str:
        """Return who it is, as in "ann on desk-7"."""
        return f"{_clean(self.user) or 'somebody'} on {_clean(self.host) or 'some machine'}"


def owner_from(data: object) -> Owner | None:
    """Read an owner from what stands in a file; None where it is none."""
    try:
        return TypeAdapter(Owner).validate_python(data)
    except ValidationError:
        return None


def fresh_token() -> str:
    """Return a word that nobody else has."""
    return os.urandom(16).hex()


def _host() -> str:
    return os.uname().nodename if hasattr(os, "uname") else os.environ.get("COMPUTERNAME", "")


@cache
def _fixed() -> tuple[str, str, str, str]:
    try:
        user = getpass.getuser()
    except (KeyError, OSError):
        user = ""
    machine = _line(Path("/etc/machine-id"))
    return user, _host(), machine, _line(Path("/proc/sys/kernel/random/boot_id"))


def this_program() -> Owner:
    """Return this run of this program."""
    pid = os.getpid()
    return Owner(*_fixed(), _space(), pid, _started(pid))


def _space() -> str:
    try:
        return str(Path("/proc/self/ns/pid").readlink())
    except OSError:
        return ""


def _started(pid: int) -> str:
    # The program's name stands in brackets and may hold anything; the start is the twentieth word after it.
    words = _line(Path(f"/proc/{pid}/stat")).rpartition(")")[2].split()
    return words[19] if len(words) > 19 else ""


def _line(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8", errors="replace").strip()
    except OSError:
        return ""


def _clean(name: str) -> str:
    return "".join(letter for letter in name if letter.isprintable())[:LONGEST_NAME].strip()
