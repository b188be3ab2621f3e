"""Cut the power at every moment of a save, a freeze and an import, and look at what the disk then holds.

    python tests/bench/power_cut.py [--jobs 20] [--seed N]

No disk is harmed: each command runs once on a real folder, and what it does to the folder is recorded, call
by call. Then the cut is played after each call. What was written and not synced since may be on the disk,
not be there, or be torn in the middle; names that were made, moved or removed since their folder was synced
may have been so or not, each by itself. Under every such outcome the project file must be the whole old one
or the whole new one; once the command has ended, the new one. A file with a second name (a hard link) is
written in place: there a whole copy must stand beside it. Returns 1 when an outcome breaks this.
"""

import argparse
import contextlib
import io
import itertools
import os
import random
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from unittest.mock import patch

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))

CALLS = ("open", "fsync", "rename", "replace", "link", "unlink", "remove", "close")
MOST_FREE = 10
"""Unsynced changes of names that are taken or left one by one; of more, only the first so many are."""
Names = Mapping[str, int]
Changed = Mapping[str, int | None]
"""A name to the file it now leads to, None where it was removed: one change, which happens or does not."""


@dataclass(slots=True)
class Content:
    """What one file may hold after a cut: what was synced last, and what was written since."""

    synced: bytes = b""
    since: list[bytes] = field(default_factory=list)

    def outcomes(self) -> Iterator[bytes]:
        """Yield what the disk may hold."""
        before = self.synced
        yield before
        for after in self.since:
            half = len(after) // 2
            yield from (after, after[:half], b"", after[:half] + before[half:], bytes(len(after)))
            before = after


@dataclass(slots=True)
class Disk:
    """A folder as the program sees it, and what of it would outlive a cut."""

    folder: Path
    names: dict[str, int] = field(default_factory=dict)
    kept: dict[str, int] = field(default_factory=dict)
    unsynced: list[Changed] = field(default_factory=list)
    contents: dict[int, Content] = field(default_factory=dict)
    _numbers: dict[int, int] = field(default_factory=dict)

    def look(self) -> None:
        """Take in what was done to the folder since the last look."""
        now: dict[str, int] = {}
        for entry in sorted(os.scandir(self.folder), key=lambda one: one.name):
            if entry.is_file(follow_symlinks=False):
                now[entry.name] = number = self._number(entry.inode())
                content, data = self.contents[number], Path(entry.path).read_bytes()
                if data != (content.since[-1] if content.since else content.synced):
                    content.since.append(data)
        changed = {
            name: now.get(name) for name in {*now, *self.names} if now.get(name) != self.names.get(name)
        }
        if changed:
            self.unsynced.append(changed)
        self.names = now
        self._numbers = {inode: one for inode, one in self._numbers.items() if one in now.values()}

    def _number(self, inode: int) -> int:
        """Return a number for a file that no later one has, as inodes have."""
        if inode not in self._numbers:
            self._numbers[inode] = len(self.contents)
            self.contents[self._numbers[inode]] = Content()
        return self._numbers[inode]

    def sync(self, handle: int) -> None:
        """Note that what an open file or folder holds is on the disk."""
        found = os.fstat(handle)
        if found.st_ino == self.folder.stat().st_ino:
            self.kept, self.unsynced = dict(self.names), []
        elif (number := self._numbers.get(found.st_ino)) is not None:
            content = self.contents[number]
            content.synced, content.since = (content.since or [content.synced])[-1], []

    def sync_all(self) -> None:
        """Note that all is on the disk, as before the command."""
        self.kept, self.unsynced = dict(self.names), []
        for content in self.contents.values():
            content.synced, content.since = (content.since or [content.synced])[-1], []

    def outcomes(self) -> Iterator[tuple[Names, Mapping[int, Content]]]:
        """Yield the names that a cut may leave, with what each file may hold."""
        free, rest = self.unsynced[:MOST_FREE], self.unsynced[MOST_FREE:]
        for happened in itertools.product((False, True), repeat=len(free)):
            names: dict[str, int | None] = dict(self.kept)
            for change in (*itertools.compress(free, happened), *(rest if all(happened) else ())):
                names.update(change)
            yield {name: number for name, number in names.items() if number is not None}, self.contents


@dataclass(frozen=True, slots=True)
class Outcome:
    """How many cuts were played for one command, how many outcomes they had, and which of them are wrong."""

    calls: int
    outcomes: int
    wrong: tuple[str, ...]


def cut_during(command: Callable[[], object], path: Path) -> Outcome:
    """Run a command that writes a project file, and judge every outcome of a cut at each of its calls."""
    disk = Disk(path.parent)
    disk.look()
    disk.sync_all()
    old = path.read_bytes() if path.exists() else None
    moments: list[tuple[str, list[tuple[str, set[bytes | None], set[bytes]]]]] = []

    def note(call: str) -> None:
        disk.look()
        moments.append((call, [_found(path.name, *each) for each in disk.outcomes()]))

    with contextlib.ExitStack() as watched:
        for call in CALLS:
            watched.enter_context(patch.object(os, call, _watched(call, getattr(os, call), disk, note)))
        command()
    note("the end")
    new = path.read_bytes()
    wrong = list(_wrong(moments, old, new))
    return Outcome(len(moments), sum(len(each) for _, each in moments), tuple(wrong))


def _watched(name: str, real: Any, disk: Disk, note: Callable[[str], None]) -> Any:
    """Return a call of the system that is noted before and after it."""
    busy: list[bool] = []

    def call(*given: Any, **named: Any) -> Any:
        if busy:
            return real(*given, **named)
        busy.append(True)
        try:
            note(f"before {name}")
            if name == "fsync":
                disk.sync(given[0])
            answer = real(*given, **named)
            note(f"after {name}")
            return answer
        finally:
            busy.pop()

    return call


def _found(
    name: str, names: Names, contents: Mapping[int, Content]
) -> tuple[str, set[bytes | None], set[bytes]]:
    """Return which names there are, what the file may hold, and what surely stands whole beside it."""
    there: set[bytes | None] = set(contents[names[name]].outcomes()) if name in names else {None}
    whole = {
        contents[number].synced
        for other, number in names.items()
        if other.endswith(".whole") and not contents[number].since
    }
    return " ".join(sorted(names)), there, whole


def _wrong(
    moments: Sequence[tuple[str, list[tuple[str, set[bytes | None], set[bytes]]]]],
    old: bytes | None,
    new: bytes,
) -> Iterator[str]:
    for place, (call, outcomes) in enumerate(moments):
        may_be = {new} if place == len(moments) - 1 else {old, new}
        for names, found, whole in outcomes:
            torn = found - may_be
            if torn and new not in whole:
                held = sorted("nothing" if one is None else f"{len(one)} bytes" for one in torn)
                yield f"{call} ({place}): {', '.join(held)}; there are {names}"


# --- Commands ---


def commands(folder: Path, chance: random.Random) -> Iterator[tuple[str, Path, Callable[[], object]]]:
    """Yield what writes a project file: its name, the file, and the command."""
    from configurator.project_file import load, parse, save

    job = load(DEMO)
    some = chance.sample(job.openings, chance.randrange(1, len(job.openings)))
    smaller = job.model_copy(update={"openings": tuple(some)})

    new = folder / "new" / "job.json"
    yield "save, new", new, lambda: save(job, new)
    kept = _placed(folder / "kept", smaller)
    yield "save over", kept, lambda: save(job, kept)
    linked = _placed(folder / "linked", smaller)
    os.link(linked, folder / "linked" / "second.json")
    yield "save, two names", linked, lambda: save(job, linked)
    frozen = _placed(folder / "frozen", smaller)
    yield "freeze", frozen, lambda: _run("order", str(frozen), "--freeze", "sent", "--with-errors")
    taken = _placed(folder / "taken", smaller)
    doors = folder / "doors.csv"
    doors.write_text("Mark,Width,Height,Hand\nK1,3-0,7-0,RH\nK2,2-8,7-0,LHR\n", "utf-8")
    yield "import", taken, lambda: _run("import", str(doors), "--into", str(taken))
    begun = folder / "begun" / "job.json"
    yield "import, new", begun, lambda: _run("import", str(doors), "--into", str(begun))
    assert parse(kept.read_bytes()) == job


def _placed(folder: Path, job: Any) -> Path:
    from configurator.project_file import save

    folder.mkdir()
    save(job, folder / "job.json")
    return folder / "job.json"


def _run(*words: str) -> None:
    from configurator.cli import main as command

    said = io.StringIO()
    with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said):
        status = command(list(words))
    assert status in (0, 1), said.getvalue()


def main() -> int:
    """Cut every command on so many jobs and print a line of each kind."""
    asked = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    asked.add_argument("--jobs", type=int, default=20)
    asked.add_argument("--seed", type=int, default=1)
    given = asked.parse_args()
    found: dict[str, list[Outcome]] = {}
    for number in range(given.jobs):
        with tempfile.TemporaryDirectory(prefix="power-cut-") as name:
            for kind, path, command in commands(Path(name), random.Random(given.seed + number)):
                path.parent.mkdir(exist_ok=True)
                found.setdefault(kind, []).append(cut_during(command, path))
    for kind, outcomes in found.items():
        wrong = [each for one in outcomes for each in one.wrong]
        calls, cases = sum(one.calls for one in outcomes), sum(one.outcomes for one in outcomes)
        print(f"{kind:16} {calls:5,} moments {cases:7,} outcomes {len(wrong):4} wrong")
        print(*(f"  {each}" for each in wrong[:5]), sep="\n", end="\n" if wrong else "")
    return int(any(one.wrong for outcomes in found.values() for one in outcomes))


if __name__ == "__main__":
    sys.exit(main())
