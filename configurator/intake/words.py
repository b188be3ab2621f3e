"""The words of a schedule in those of a project file; each reading that is more than spelling says why.

What is written for what is common practice, no source; `resources/intake/words.csv` has it line by line.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from configurator.intake.fields import FIELDS
from configurator.model.paths import words_of
from configurator.tables import resource_rows

_GAGE = re.compile(r"(?<![0-9])(14|16|18|20)\s*(?:ga|gage|gauge)?(?![0-9])")
_METAL = re.compile(r"\b(?:hm|hmd|hollow\s+metal|steel|stl)\b")
_NOTHING = re.compile(r"[-–—.\s]*|n\.?/?a\.?|", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Word:
    """What a word of a schedule means here, and why it is taken so where that is more than its spelling.

    `means` is empty where the word is known and leaves the field open.
    """

    means: str
    because: str = ""


@dataclass(frozen=True, slots=True)
class _WordRow:
    """What is written in a field of a schedule, what it means, and why where that is not plain."""

    field: str
    written: str
    means: str | None
    because: str | None


@lru_cache(maxsize=4096)
def says_nothing(cell: str) -> bool:
    """Say whether a cell leaves its field open: blank, a dash, or not applicable."""
    return _NOTHING.fullmatch(cell.strip()) is not None


def word(field: str, cell: str) -> Word | None:
    """Return what a cell means in a field with words of its own; None where it is not known."""
    found = _known(field).get(_key(cell))
    if found is None and field == "door":
        found = _metal_door(cell)
    return found


def accepted(field: str) -> str:
    """Return the words a field accepts, for a refusal."""
    return "; ".join(_own(field)) or "; ".join(
        dict.fromkeys(known.means for known in _known(field).values() if known.means)
    )


def _own(field: str) -> tuple[str, ...]:
    """Return the words that the project file itself accepts there."""
    found = FIELDS.get(field)
    return words_of(found.path) if found is not None and found.kind in ("word", "hand") else ()


def _metal_door(cell: str) -> Word | None:
    """Read a gage beside the word for a metal door, as in “16 ga HM”."""
    text = cell.casefold()
    gage = _GAGE.search(text)
    if gage is None or _METAL.search(text) is None:
        return None
    return Word(f"hollow metal, {gage[1]} gage")


@cache
def _known(field: str) -> Mapping[str, Word]:
    own = {_key(name): Word(name) for name in _own(field)}
    return {**_table().get(field, {}), **own}


@cache
def _table() -> Mapping[str, Mapping[str, Word]]:
    found: dict[str, dict[str, Word]] = {}
    for row in resource_rows("intake", "words", _WordRow):
        found.setdefault(row.field, {})[_key(row.written)] = Word(row.means or "", row.because or "")
    return found


def _key(text: str) -> str:
    """Return a word by its letters and figures alone, so that L.H.R. is LHR."""
    return "".join(letter for letter in text.casefold() if letter.isalnum())
