"""A project file to a job, with one sentence for every fault."""

import gc
import json
import re
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import accumulate
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from configurator.model import FORMAT, VERSION, Job
from configurator.model.faults import Fault, faults_of
from configurator.model.job import MOST_OPENINGS
from configurator.project_file.migrations import brought_up
from configurator.project_file.refusals import LARGEST_FILE, ProjectFileError, reason, refusal

DEEPEST_NESTING = 32
MOST_FAULTS = 50
_STEP = {ord("["): 1, ord("{"): 1, ord("]"): -1, ord("}"): -1}
_NEITHER_BRACKET_NOR_QUOTE = bytes(set(range(256)) - {*_STEP, ord('"')})
_ESCAPED = re.compile(rb"\\.", re.DOTALL)


def load(path: Path) -> Job:
    """Read a job from `path`. The file is only read, never touched.

    Raises ProjectFileError with one line a fault, each naming the field and what is allowed.
    """
    return parse(read_bytes(path))


def parse(data: bytes) -> Job:
    """Read a job from the bytes of a project file. Raises ProjectFileError."""
    with _collector_paused():
        return _parse(data)


def _parse(data: bytes) -> Job:
    document = _document(data)
    _refuse_other_formats(document)
    document = brought_up(document)
    _refuse_too_many(document)
    try:
        return Job.model_validate(document)
    except ValidationError as error:
        faults = faults_of(error, Job)
        shown = tuple(_with_mark(fault, document) for fault in faults[:MOST_FAULTS])
        if len(faults) > MOST_FAULTS:
            shown += (Fault("", f"and {len(faults) - MOST_FAULTS} more faults"),)
        raise ProjectFileError(shown) from None
    except RecursionError:
        raise refusal("", "the file is nested too deeply to be a project file") from None


def read_bytes(path: Path) -> bytes:
    """Return what stands in a project file. Raises ProjectFileError where it cannot be read."""
    try:
        if not path.exists():
            raise refusal("", f"{path.name} is not there")
        if not path.is_file():
            raise refusal("", f"{path.name} is not a file")
        if path.stat().st_size > LARGEST_FILE:
            raise refusal("", f"{path.name} is larger than {LARGEST_FILE // 2**20} MB; no job is")
        return path.read_bytes()
    except OSError as error:
        raise refusal("", f"{path.name} could not be read: {reason(error)}") from error


def _document(data: bytes) -> dict[str, Any]:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refusal("", "this is not a project file: it is not text (UTF-8)") from None
    _refuse_deep_nesting(data)
    try:
        document = json.loads(text, object_pairs_hook=_no_key_twice, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        where = f"line {error.lineno}, column {error.colno}"
        raise refusal("", f"the file breaks off or is not JSON at {where}: {error.msg}") from None
    except (ValueError, RecursionError) as error:
        raise refusal("", f"the file is not a project file: {error}") from None
    if not isinstance(document, dict):
        raise refusal("", "a project file is one group of keys in braces")
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


def _refuse_deep_nesting(data: bytes) -> None:
    """Refuse before the reader recurses; what is no JSON may be told so here already."""
    if b"\\" in data:
        data = _ESCAPED.sub(b"", data)
    outside_strings = data.translate(None, _NEITHER_BRACKET_NOR_QUOTE).split(b'"')[::2]
    depths = accumulate(map(_STEP.__getitem__, b"".join(outside_strings)))
    if max(depths, default=0) > DEEPEST_NESTING:
        raise refusal("", f"the file is nested more than {DEEPEST_NESTING} deep; no project file is")


def _refuse_other_formats(document: dict[str, Any]) -> None:
    if document.get("format") != FORMAT:
        raise refusal("format", f'must be "{FORMAT}"; this is some other file')
    version = document.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise refusal("version", f"must be a whole number, {VERSION} at most")
    if version > VERSION:
        raise refusal(
            "version",
            f"{version} was written by a newer program; this one reads up to {VERSION}. Nothing was changed",
        )


def _refuse_too_many(document: dict[str, Any]) -> None:
    """Refuse before reading them one by one: millions of faults would fill the memory."""
    openings = document.get("openings")
    if isinstance(openings, list) and len(openings) > MOST_OPENINGS:
        raise refusal(
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
