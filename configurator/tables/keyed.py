"""The rows that are wanted by key: a limit, a practice, the usual sizes and profiles of a frame."""

from collections.abc import Mapping
from functools import cache

from configurator.tables.kinds import Source
from configurator.tables.reading import table
from configurator.tables.rows import FrameProfileRow, FrameSizeRow, LimitRow, PracticeRow


def frame_usual(kind: str) -> Mapping[str, FrameSizeRow]:
    """Return the usual sizes of a kind of frame, by the keys of a project file's frame and door.

    Raises KeyError when there is no such kind.
    """
    return _frame_sizes()[kind]


def frame_profile(name: str) -> FrameProfileRow:
    """Return a usual profile by its name. Raises KeyError when there is none."""
    return {row.profile: row for row in table(FrameProfileRow)}[name]


def limit(key: str) -> LimitRow:
    """Return one limit by its key. Raises KeyError when there is none."""
    return _limits()[key]


def practice(key: str) -> Source:
    """Return where a rule that is words comes from. Raises KeyError when there is none."""
    return _practices()[key].cited


def words_of(key: str) -> str:
    """Return a practice in words. Raises KeyError when there is none."""
    return _practices()[key].words


@cache
def _limits() -> Mapping[str, LimitRow]:
    return {row.key: row for row in table(LimitRow)}


@cache
def _practices() -> Mapping[str, PracticeRow]:
    return {row.key: row for row in table(PracticeRow)}


@cache
def _frame_sizes() -> Mapping[str, Mapping[str, FrameSizeRow]]:
    kinds = dict.fromkeys(row.kind for row in table(FrameSizeRow))
    return {kind: {row.key: row for row in table(FrameSizeRow) if row.kind == kind} for kind in kinds}
