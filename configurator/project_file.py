"""Project files on disk: read with a sentence for every fault, written whole or not at all.

Format history
--------------
1   the first: `format`, `version`, `job`, `openings`; lengths in inches or as the trade writes them.
"""

import gc
import json
import os
import stat
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from configurator.model import FORMAT, VERSION, Job
from configurator.model.faults import Fault, faults_of
from configurator.model.job import MOST_OPENINGS

LARGEST_FILE = 32 * 1024 * 1024
"""Bytes. Ten thousand openings take about a fifth of this."""
DEEPEST_NESTING = 32
MOST_FAULTS = 50


class ProjectFileError(Exception):
    """A project file that could not be read or written; `faults` has a line for each reason."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = faults


def load(path: Path) -> Job:
    """Read a job from `path`. The file is only read, never touched.

    Raises ProjectFileError with one line a fault, each naming the field and what is allowed.
    """
    return parse(_read(path))


def parse(data: bytes) -> Job:
    """Read a job from the bytes of a project file. Raises ProjectFileError."""
    document = _document(data)
    _refuse_other_formats(document)
    _refuse_too_many(document)
    try:
        with _collector_paused():
            return Job.model_validate(document)
    except ValidationError as error:
        faults = faults_of(error, Job)
        shown = tuple(_with_mark(fault, document) for fault in faults[:MOST_FAULTS])
        if len(faults) > MOST_FAULTS:
            shown += (Fault("", f"and {len(faults) - MOST_FAULTS} more faults"),)
        raise ProjectFileError(shown) from None
    except RecursionError:
        raise _refusal("", "the file is nested too deeply to be a project file") from None


def dump(job: Job) -> bytes:
    """Return the canonical bytes of a job: keys in their own order, numbers plain, left-out keys left out."""
    data = job.model_dump(exclude_unset=True)
    document = {"format": job.format, "version": job.version, **data}
    return (json.dumps(_plain(document), indent=2, ensure_ascii=False) + "\n").encode()


def save(job: Job, path: Path) -> None:
    """Write a job to `path`: the old file stays whole until the new one is on the disk.

    Raises ProjectFileError when the file or its folder cannot be written; the old file is then untouched.
    """
    data = dump(job)
    try:
        if path.exists() and not path.is_file():
            raise OSError(f"{path.name} is not an ordinary file")
        write_whole(path, data)
    except (OSError, ValueError) as error:
        raise _refusal("", f"{path.name[:80]} could not be saved: {_reason(error)}") from error


def write_whole(path: Path, data: bytes) -> None:
    """Put `data` into a file so that it holds all of the old or all of the new, whatever happens.

    A link is followed; what is no ordinary file (a pipe, a device) is written to as it is. Raises OSError.
    """
    target = path.resolve() if path.is_symlink() else path
    if target.exists() and not target.is_file():
        target.write_bytes(data)
        return
    if target.exists() and not os.access(target, os.W_OK):
        raise PermissionError(13, "Permission denied")
    _replace(target, data)


def _replace(target: Path, data: bytes) -> None:
    handle, name = tempfile.mkstemp(prefix=f".{target.name[:80]}.", suffix=".part", dir=target.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(_mode_of(target))
        Path(name).replace(target)
    except BaseException:
        with suppress(OSError):
            Path(name).unlink()
        raise
    _sync_folder(target.parent)


def _mode_of(target: Path) -> int:
    """Return the permissions the new file takes: the old file's, or the usual ones of a new file."""
    try:
        return stat.S_IMODE(target.stat().st_mode)
    except FileNotFoundError:
        mask = os.umask(0)
        os.umask(mask)
        return 0o666 & ~mask


def _sync_folder(folder: Path) -> None:
    # The rename itself is only safe once the folder is on the disk; some systems cannot open folders.
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _read(path: Path) -> bytes:
    try:
        if not path.exists():
            raise _refusal("", f"{path.name} is not there")
        if not path.is_file():
            raise _refusal("", f"{path.name} is not a file")
        if path.stat().st_size > LARGEST_FILE:
            raise _refusal("", f"{path.name} is larger than {LARGEST_FILE // 2**20} MB; no job is")
        return path.read_bytes()
    except OSError as error:
        raise _refusal("", f"{path.name} could not be read: {_reason(error)}") from error


def _document(data: bytes) -> dict[str, Any]:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise _refusal("", "this is not a project file: it is not text (UTF-8)") from None
    _refuse_deep_nesting(text)
    try:
        document = json.loads(text, object_pairs_hook=_no_key_twice, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        where = f"line {error.lineno}, column {error.colno}"
        raise _refusal("", f"the file breaks off or is not JSON at {where}: {error.msg}") from None
    except (ValueError, RecursionError) as error:
        raise _refusal("", f"the file is not a project file: {error}") from None
    if not isinstance(document, dict):
        raise _refusal("", "a project file is one group of keys in braces")
    return document


def _no_key_twice(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise ValueError(f"the key {twice!r} stands twice in one group")
    return found


def _no_constant(name: str) -> Any:
    raise ValueError(f"{name} is not a number that can be used; write a finite number")


def _refuse_deep_nesting(text: str) -> None:
    """Refuse before the reader recurses; brackets inside strings only make this stricter for odd files."""
    depth = deepest = 0
    in_string = escaped = False
    for character in text:
        if in_string:
            if escaped:
                escaped = False
            elif character == "\\":
                escaped = True
            elif character == '"':
                in_string = False
        elif character == '"':
            in_string = True
        elif character in "[{":
            depth += 1
            deepest = max(deepest, depth)
            if deepest > DEEPEST_NESTING:
                raise _refusal("", f"the file is nested more than {DEEPEST_NESTING} deep; no project file is")
        elif character in "]}":
            depth -= 1


def _refuse_other_formats(document: dict[str, Any]) -> None:
    if document.get("format") != FORMAT:
        raise _refusal("format", f'must be "{FORMAT}"; this is some other file')
    version = document.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise _refusal("version", f"must be a whole number, {VERSION} at most")
    if version > VERSION:
        raise _refusal(
            "version",
            f"{version} was written by a newer program; this one reads up to {VERSION}. Nothing was changed",
        )


def _refuse_too_many(document: dict[str, Any]) -> None:
    """Refuse before reading them one by one: millions of faults would fill the memory."""
    openings = document.get("openings")
    if isinstance(openings, list) and len(openings) > MOST_OPENINGS:
        raise _refusal(
            "openings", f"a job may have up to {MOST_OPENINGS:,} openings; {len(openings):,} were given"
        )


def _with_mark(fault: Fault, document: dict[str, Any]) -> Fault:
    """Name the opening by its mark as well as by its place, for a person looking for it."""
    place = fault.field.removeprefix("openings[").split("]")[0]
    if not fault.field.startswith("openings[") or not place.isdigit():
        return fault
    try:
        mark = document["openings"][int(place)]["mark"]
    except (KeyError, IndexError, TypeError):
        return fault
    if not isinstance(mark, str) or not mark.isprintable() or not 0 < len(mark) <= 40:
        return fault
    return Fault(fault.field, f"{fault.message} (opening {mark})")


def _plain(value: Any) -> Any:
    """Write whole floats as whole numbers, as a person would."""
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(item) for item in value]
    return value


def _refusal(field: str, message: str) -> ProjectFileError:
    return ProjectFileError((Fault(field, message),))


def _reason(error: OSError | ValueError) -> str:
    return (getattr(error, "strerror", None) or str(error)).lower()


@contextmanager
def _collector_paused() -> Iterator[None]:
    """Pause the garbage collector: a large job otherwise spends two thirds of its reading there."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
