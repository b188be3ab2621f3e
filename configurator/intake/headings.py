"""Headings of schedules to the fields they stand for, by the table of what they are commonly called.

The table is `resources/intake/headings.csv`; common practice, no source.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from configurator.intake.fields import FIELDS, SEVERAL, Unit
from configurator.tables import resource_rows

_UNITS: tuple[tuple[str, Unit], ...] = (
    (r"\b(?:ft\.?\s*[-&]?\s*in\.?|feet(?:\s+and\s+inches)?|ft\.?)(?=\W|$)", "ft-in"),
    (r"\b(?:mm|millimet(?:er|re)s?)\b", "mm"),
    (r"(?:\(\s*in(?:ches|\.)?\s*\)|\[\s*in(?:ches|\.)?\s*\]|\binches\b|,\s*in\.?$)", "in"),
)
_LONGEST_HEADING = 80
_OF_DOORS = frozenset({"size", "width", "height", "hand", "leaves", "door"})
_LEAST_OF_DOORS = 2


@dataclass(frozen=True, slots=True)
class _HeadingRow:
    """A field, and what a schedule may call it."""

    field: str
    heading: str


def fields_named(heading: str) -> tuple[str, ...]:
    """Return the fields a heading may stand for, the likeliest first; none where it is not known."""
    return _table().get(_plain(heading), ())


def unit_named(heading: str) -> Unit | None:
    """Return the unit a heading names, as in “Width (mm)”."""
    return next((unit for pattern, unit in _UNITS if re.search(pattern, heading, re.IGNORECASE)), None)


def height_first(heading: str) -> bool:
    """Say whether the heading of a size names the height before the width, as H x W does."""
    return re.search(r"\bh(?:eight|t)?\.?\s*(?:x|×|by)\s*w", heading, re.IGNORECASE) is not None


def matched(headings: Sequence[tuple[str, str]]) -> tuple[str | None, ...]:
    """Return the field of every column, None where it says none; each field once, the best match first.

    A heading has what stands over it and itself; both together count more than itself alone. “Door” is the
    mark where no other column is.
    """
    found: dict[int, str] = {}
    for parts in (2, 1):
        for place, heading in enumerate(headings):
            taken = set(found.values()) - SEVERAL
            free = [field for field in fields_named(_joined(heading[-parts:])) if field not in taken]
            if place not in found and free:
                found[place] = free[0]
    if "mark" not in found.values():
        found |= _mark_after_all(headings)
    return tuple(found.get(place) for place in range(len(headings)))


@dataclass(frozen=True, slots=True)
class Header:
    """A header among rows: its place from 0, how many rows it takes, and its headings.

    `fields` are those that its headings name. Of a header in two rows the headings have the upper one first,
    and `groups` counts those that mean something only together with it.
    """

    place: int
    depth: int
    headings: tuple[tuple[str, str], ...]
    fields: frozenset[str]
    groups: int = 0

    @property
    def of_doors(self) -> bool:
        """Whether it is plainly that of a door schedule."""
        return "mark" in self.fields and bool(_OF_DOORS & self.fields) and len(self.fields) > _LEAST_OF_DOORS


def best_header(rows: Sequence[Sequence[str]]) -> Header | None:
    """Return the row, or the two rows, that name the most fields; None where none names two."""
    best: Header | None = None
    for place, depth, headings in _candidates(rows):
        fields = frozenset(field for field in matched(headings) if field is not None)
        groups = sum(bool(upper and fields_named(_joined((upper, lower)))) for upper, lower in headings)
        if (len(fields), groups) > ((len(best.fields), best.groups) if best is not None else (1, 99)):
            best = Header(place, depth, headings, fields, groups)
    return best


def _candidates(rows: Sequence[Sequence[str]]) -> Iterator[tuple[int, int, tuple[tuple[str, str], ...]]]:
    """Yield every row as a header, and then every two rows in a row: those must match more to win."""
    for place, cells in enumerate(rows):
        yield place, 1, tuple(("", cell.strip()) for cell in cells)
    for place, (upper, lower) in enumerate(pairwise(rows)):
        yield place, 2, _two_lines(upper, lower)


def _two_lines(upper: Sequence[str], lower: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """Put a line of groups over a line of headings; a group reaches as far as the next one."""
    width = max(len(upper), len(lower))
    group = ""
    headings = []
    for place in range(width):
        above = upper[place].strip() if place < len(upper) else ""
        below = lower[place].strip() if place < len(lower) else ""
        group = above or group
        headings.append((group, below) if below else ("", above))
    return tuple(headings)


def _mark_after_all(headings: Sequence[tuple[str, str]]) -> dict[int, str]:
    for place, heading in enumerate(headings):
        if "mark" in fields_named(heading[1]):
            return {place: "mark"}
    return {}


def _joined(parts: Sequence[str]) -> str:
    return " ".join(filter(None, parts))


def _plain(heading: str) -> str:
    """Return a heading as words only: no unit, no marks, # for a number."""
    text = heading[:_LONGEST_HEADING].casefold().replace("#", " no ").replace("×", " x ").replace("_", " ")
    for pattern, _ in _UNITS:
        text = re.sub(pattern, " ", text)
    return " ".join(re.findall(r"[^\W_]+", text.replace("'", "")))


@cache
def _table() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for row in resource_rows("intake", "headings", _HeadingRow):
        if row.field not in FIELDS:
            raise ValueError(f"headings.csv: there is no field {row.field}")
        heading = _plain(row.heading)
        found[heading] = (*found.get(heading, ()), row.field)
    return found
