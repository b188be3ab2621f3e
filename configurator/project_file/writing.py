"""A job to the bytes of its file, and bytes to the disk so that a file is always whole."""

import errno
import json
import os
import re
import stat
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

from configurator.model import Job, Opening
from configurator.project_file.refusals import LARGEST_FILE, reason, refusal

_WITH_EXPONENT = re.compile(r"e[-+]?\d+,?\n")
LEFT_OVER = 600.0
"""Seconds after which a half-written copy of a file belongs to no save that still runs."""
_NAME_IN_PART = 80
"""Bytes of a file's own name in that of its half-written copy; a name may take up to 255."""
USUAL_MODE = 0o666
PRIVATE_MODE = 0o600
_NEW_FILE = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
_INDENT = "\n    "


class KnownTexts:
    """The text of the openings written last, so that the next writing costs only what changed since."""

    def __init__(self) -> None:
        self._known: dict[int, tuple[Opening, str]] = {}

    def of(self, job: Job) -> list[str]:
        """Return the text of every opening of a job, in order."""
        # The opening is kept with its text: as long as it lives, nothing else can have its id.
        known = self._known
        now = {id(each): known.get(id(each)) or (each, _opening_text(each)) for each in job.openings}
        self._known = now
        return [now[id(each)][1] for each in job.openings]


def dump(job: Job, known: KnownTexts | None = None) -> bytes:
    """Return the canonical bytes of a job: keys in their own order, numbers plain, left-out keys left out."""
    data = job.model_dump(exclude_unset=True, exclude={"openings"})
    head = _json({"format": job.format, "version": job.version, **data})
    if "openings" not in job.model_fields_set:
        return f"{head}\n".encode()
    texts = (known or KnownTexts()).of(job)
    openings = f"[{_INDENT}{f',{_INDENT}'.join(texts)}\n  ]" if texts else "[]"
    return f'{head[:-2]},\n  "openings": {openings}\n}}\n'.encode()


def save(job: Job, path: Path) -> None:
    """Write a job to `path`: the old file stays whole until the new one is on the disk.

    Raises ProjectFileError when the file or its folder cannot be written; the old file is then untouched.
    """
    save_bytes(dump(job), path)


def save_bytes(data: bytes, path: Path, before: Callable[[], None] = lambda: None) -> None:
    """Write the bytes of a project file; `before` is called last before the old one goes, and may raise.

    Raises ProjectFileError when the file or its folder cannot be written; the old file is then untouched.
    """
    try:
        if path.exists() and not path.is_file():
            raise OSError(f"{path.name} is not an ordinary file")
        if len(data) > LARGEST_FILE:
            raise OSError(f"it would be larger than {LARGEST_FILE // 2**20} MB and could not be opened again")
        write_whole(path, data, before)
    except (OSError, ValueError) as error:
        raise refusal("", f"{path.name[:80]} could not be saved: {reason(error)}") from error


def write_whole(
    path: Path, data: bytes, before: Callable[[], None] = lambda: None, mode: int = USUAL_MODE
) -> None:
    """Put `data` into a file so that it holds all of the old or all of the new, whatever happens.

    A link is followed; what is no ordinary file (a pipe, a device) is written to as it is. `before` is called
    when all is on the disk but the old file still stands; what it raises leaves the old one. `mode` is the
    permissions of a file that was not there, less what the user's umask takes away. Raises OSError.
    """
    target = real_place(path) if path.is_symlink() else path
    if target.exists() and not target.is_file():
        target.write_bytes(data)
        return
    if target.exists() and not os.access(target, os.W_OK):
        raise PermissionError(13, "Permission denied")
    _replace(target, data, before, mode)


def real_place(path: Path) -> Path:
    """Return where a file stands, whatever links lead to it. Raises OSError where they lead in a circle."""
    try:
        return path.resolve()
    except RuntimeError:
        raise OSError(errno.ELOOP, os.strerror(errno.ELOOP)) from None


def part_prefix(target: Path) -> str:
    """Return how the names of half-written copies of a file begin; they end in `.part`."""
    return f".{cut_name(target.name, _NAME_IN_PART)}."


def cut_name(name: str, most: int) -> str:
    """Return the beginning of a file's name that takes up to so many bytes on the disk."""
    while len(os.fsencode(name)) > most:
        name = name[:-1]
    return name


def sweep(folder: Path, prefix: str) -> None:
    """Remove what saves that were cut off left in a folder: copies that no save still works on."""
    with suppress(OSError):
        for part in folder.iterdir():
            if part.name.startswith(prefix) and part.name.endswith(".part"):
                with suppress(OSError):
                    if time.time() - part.stat().st_mtime > LEFT_OVER:
                        part.unlink()


def _replace(target: Path, data: bytes, before: Callable[[], None], mode: int) -> None:
    try:
        old = target.stat()
    except FileNotFoundError:
        old = None
    part = target.with_name(f"{part_prefix(target)}{os.urandom(8).hex()}.part")
    # The system itself takes the umask off `mode`: a program can only ask for its umask by changing it, which
    # every other thread would feel. What replaces a file is private until it has that one's permissions.
    handle = os.open(part, _NEW_FILE, PRIVATE_MODE if old else mode)
    try:
        _write_out(handle, data)
        if old is not None:
            _make_like(part, old)
        before()
        if old is not None and old.st_nlink > 1:
            _write_through(target, data, part)
        else:
            part.replace(target)
    except BaseException:
        with suppress(OSError):
            part.unlink()
        raise
    _sync_folder(target.parent)


def _write_out(handle: int, data: bytes) -> None:
    """Write to a file just opened, and wait until it is on the disk."""
    with os.fdopen(handle, "wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _write_through(target: Path, data: bytes, part: Path) -> None:
    """Write into a file that has other names too (hard links): they would keep an old one that is replaced.

    Meanwhile a whole copy stands beside it, under a name that nothing sweeps away.
    """
    whole = part.with_suffix(".whole")
    part.rename(whole)
    _sync_folder(target.parent)
    _write_out(os.open(target, os.O_WRONLY | os.O_TRUNC | getattr(os, "O_BINARY", 0)), data)
    whole.unlink()


def _make_like(part: Path, old: os.stat_result) -> None:
    """Give a file another's permissions, and group and owner as far as the user may: a group may share it."""
    if hasattr(os, "chown"):
        with suppress(OSError):
            os.chown(part, -1, old.st_gid)
            os.chown(part, old.st_uid, -1)
    part.chmod(stat.S_IMODE(old.st_mode))


def _sync_folder(folder: Path) -> None:
    # The rename itself is only safe once the folder is on the disk; some systems cannot open folders.
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _opening_text(opening: Opening) -> str:
    """Return an opening as it stands in the file, indented.

    pydantic writes it four times as fast as json, and the same but for numbers: a whole one ends in `.0`, and
    only a number can stand before the end of a line so; very small and very large ones are left to json.
    """
    text = opening.model_dump_json(exclude_unset=True, indent=2)
    if ".0000" in text or _WITH_EXPONENT.search(text):
        text = _json(opening.model_dump(exclude_unset=True))
    return text.replace(".0,\n", ",\n").replace(".0\n", "\n").replace("\n", _INDENT)


def _json(document: dict[str, Any]) -> str:
    return json.dumps(_plain(document), indent=2, ensure_ascii=False)


def _plain(value: Any) -> Any:
    """Write whole floats as whole numbers, as a person would."""
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(item) for item in value]
    return value
