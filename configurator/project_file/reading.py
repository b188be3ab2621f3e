"""A project file to a job, with one sentence for every fault."""

import gc
import json
import re
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import accumulate
from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from configurator.model import FORMAT, VERSION, Job, Opening, Revision
from configurator.model.faults import Fault, faults_of
from configurator.model.job import MOST_OPENINGS
from configurator.project_file.migrations import brought_up, with_order_apart
from configurator.project_file.refusals import LARGEST_FILE, ProjectFileError, reason, refusal

DEEPEST_NESTING = 32
MOST_FAULTS = 50
"""Faults that are named; of more it is said how many there are."""
MOST_COUNTED = 10_000
"""Faults after which nobody looks for more: millions would fill the memory."""
MOST_GROUPS = 1_500_000
"""Groups in braces and lists in brackets of one file. A hundred thousand openings have half of that."""
LONGEST_LIST = MOST_OPENINGS + 500
"""Plain values that may stand one after another: a revision has a print of every opening."""
_STEP = {ord("["): 1, ord("{"): 1, ord("]"): -1, ord("}"): -1}
_NO_STRUCTURE = bytes(set(range(256)) - {*_STEP, *b',"'})
_TOO_LONG = b"," * LONGEST_LIST
R = TypeVar("R", bound=BaseModel)
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
    document = with_order_apart(brought_up(document))
    _refuse_too_many(document)
    found = _Faults()
    # What a job has many of is read one by one, so that a bad file is left before its faults fill the memory.
    parts = {
        name: [found.read(record, each, f"{name}[{place}]") for place, each in enumerate(document[name])]
        for name, record in (("revisions", Revision), ("openings", Opening))
        if isinstance(document.get(name), list)
    }
    job = found.read(Job, document | ({name: [] for name in parts} if found.count else parts), "")
    if found.count or job is None:
        raise ProjectFileError(found.told(document))
    return job


class _Faults:
    """The faults of one file: the first ones in words, of the others how many."""

    def __init__(self) -> None:
        self.count = 0
        self._named: list[Fault] = []

    def read(self, record: type[R], given: Any, path: str) -> R | None:
        """Return a record made of what was given, None where it is refused or enough has been."""
        if self.count > MOST_COUNTED:
            return None
        try:
            return record.model_validate(given)
        except ValidationError as error:
            self.count += error.error_count()
            if len(self._named) < MOST_FAULTS:
                faults = faults_of(error, record)[: MOST_FAULTS - len(self._named)]
                self._named.extend(Fault(_below(path, fault.field), fault.message) for fault in faults)
            return None

    def told(self, document: dict[str, Any]) -> tuple[Fault, ...]:
        """Return the named faults, and that there are more."""
        shown = tuple(_with_mark(fault, document) for fault in self._named)
        if self.count > MOST_COUNTED:
            return (*shown, Fault("", f"and more than {MOST_COUNTED - MOST_FAULTS:,} more faults"))
        more = self.count - len(shown)
        return (*shown, Fault("", f"and {more:,} more faults")) if more else shown


def _below(path: str, field: str) -> str:
    return f"{path}.{field}".strip(".") if not field.startswith("[") else path + field


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
    _refuse_strange_structure(data)
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
        twice, _ = Counter(key for key, _ in pairs).most_common(1)[0]
        raise ValueError(f"the key {twice[:60]!r} stands twice in one group")
    return found


def _no_constant(name: str) -> Any:
    raise ValueError(f"{name} is not a number that can be used; write a finite number")


def _refuse_strange_structure(data: bytes) -> None:
    """Refuse before the reader recurses or fills the memory; what is no JSON may be told so here already."""
    if b"\\" in data:
        data = _ESCAPED.sub(b"", data)
    # Most texts hold none of the signs; without them few pieces are left to take apart.
    structure = data.translate(None, _NO_STRUCTURE).replace(b'""', b"")
    outside_strings = b"".join(structure.split(b'"')[::2])
    if _TOO_LONG in outside_strings:
        raise refusal("", f"more than {LONGEST_LIST:,} values stand in one list; no project file has so many")
    brackets = outside_strings.translate(None, b",")
    if len(brackets) > 2 * MOST_GROUPS:
        raise refusal("", f"the file has more than {MOST_GROUPS:,} groups and lists; no project file has")
    if max(accumulate(map(_STEP.__getitem__, brackets)), default=0) > DEEPEST_NESTING:
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
