"""Which openings the schedule shows, in which order, and which of them in one row. No Qt."""

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import Any

from configurator.model import Opening
from configurator.ui.schedule.answers import Answer, Answers
from configurator.ui.schedule.columns import COLUMNS, Worked
from configurator.units import Display

Rows = list[tuple[int, ...]]
"""For each row the places in the job of the openings that it shows."""


GROUPS: Mapping[str, tuple[str, Callable[[Opening], Any] | None]] = MappingProxyType(
    {
        "": ("each in a row", None),
        "like": ("like ones together", None),
        "level": ("by level", lambda opening: opening.level),
        "set": ("by hardware set", lambda opening: opening.hardware_set),
        "fire": ("by fire rating", lambda opening: (opening.fire_label, opening.fire_minutes or None)),
    }
)
"""How openings share rows: the words for it, and what those of one row have alike; of like ones all of it."""
_SIZE = re.compile(r"[^\s,;]+(?:\s*[x×]\s*[^\s,;x×]+)+", re.IGNORECASE)
"""Figures with an x between them: one size, to be found as a whole."""
_ANY_BLANKS = r"\s*[x×]\s*"


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is asked of the table: words to find, a status or state of order, findings, an order, groups.

    `findings` is "any" or "error". `column` None is the order of the job. `grouped` is one of GROUPS.
    """

    words: str = ""
    status: str = ""
    findings: str = ""
    column: int | None = None
    descending: bool = False
    grouped: str = ""

    @property
    def needs_answers(self) -> bool:
        """Whether every opening's answer must be known before this can be shown."""
        # Words are looked for in what is known; the rest is worked out meanwhile.
        worked = self.column is not None and isinstance(COLUMNS[self.column], Worked)
        return worked or bool(self.findings)


class Arranger:
    """Finds, orders and groups openings; what it must know of each is kept as long as its record lives."""

    def __init__(self, answers: Answers) -> None:
        self.answers = answers
        self.display = Display()
        self._texts: dict[int, tuple[Opening, str]] = {}
        self._keys: dict[int, tuple[Opening, str]] = {}

    def show_in(self, display: Display) -> None:
        """Find lengths as they are shown now."""
        if display != self.display:
            self.display = display
            self._texts.clear()

    def arranged(self, openings: Sequence[Opening], wanted: Wanted) -> Rows:
        """Return the rows to show."""
        places = self._found(openings, wanted)
        rows: Rows = [(place,) for place in places]
        if wanted.grouped:
            rows = self._in_groups(openings, places, GROUPS[wanted.grouped][1] or self._like)
        if wanted.column is not None:
            rows.sort(key=self._order(openings, wanted.column), reverse=wanted.descending)
        self._forget_others(openings)
        return rows

    def prepare(self, openings: Sequence[Opening]) -> Iterator[int]:
        """Note what is looked through and grouped by, one opening at each step."""
        for done, opening in enumerate(openings, 1):
            if id(opening) not in self._texts or id(opening) not in self._keys:
                self._text(opening)
                self._like(opening)
                yield done

    def _found(self, openings: Sequence[Opening], wanted: Wanted) -> list[int]:
        places = list(range(len(openings)))
        if wanted.status:
            places = [
                place
                for place in places
                if wanted.status in (openings[place].status, openings[place].order_state)
            ]
        if wanted.findings:
            places = [place for place in places if self._has_findings(openings[place], wanted.findings)]
        for term in terms(wanted.words):
            places = [place for place in places if self._holds(openings[place], term)]
        return places

    def _has_findings(self, opening: Opening, which: str) -> bool:
        answer = self.answers.known(opening)
        if answer is None:
            return False
        return bool(answer.errors or (which == "any" and (answer.warnings or answer.notes)))

    def _holds(self, opening: Opening, term: re.Pattern[str]) -> bool:
        if term.search(self._text(opening)):
            return True
        answer = self.answers.known(opening)
        return answer is not None and term.search(_worked_in_text(answer)) is not None

    def _text(self, opening: Opening) -> str:
        kept = self._texts.get(id(opening))
        if kept is None:
            kept = self._texts[id(opening)] = (opening, said_in_text(opening, self.display))
        return kept[1]

    def _in_groups(
        self, openings: Sequence[Opening], places: Sequence[int], alike: Callable[[Opening], Any]
    ) -> Rows:
        groups: dict[Any, list[int]] = {}
        for place in places:
            groups.setdefault(alike(openings[place]), []).append(place)
        return [tuple(group) for group in groups.values()]

    def _like(self, opening: Opening) -> str:
        kept = self._keys.get(id(opening))
        if kept is None:
            from configurator.order.tally import like_key  # the order desk is loaded on use

            kept = self._keys[id(opening)] = (opening, like_key(opening))
        return kept[1]

    def _order(self, openings: Sequence[Opening], place: int) -> Any:
        column = COLUMNS[place]
        if isinstance(column, Worked):
            return lambda row: column.order(self.answers.work_out(openings[row[0]]))
        return lambda row: column.order([openings[each] for each in row])

    def _forget_others(self, openings: Sequence[Opening]) -> None:
        for kept in (self._texts, self._keys):
            if len(kept) > 2 * len(openings) + 100:
                there = {id(opening) for opening in openings}
                for place in [place for place in kept if place not in there]:
                    del kept[place]


@lru_cache(maxsize=64)
def terms(words: str) -> tuple[re.Pattern[str], ...]:
    """Return what is to be found: each word wherever it stands, and each size as the whole of a size.

    So 5 x 4-1/2 is no part of 3 x 4-1/2 x 4, nor 4 x 4 of 4-1/2 x 4.
    """
    sizes = _SIZE.findall(words.casefold())
    rest = _SIZE.sub(" ", words.casefold()).split()
    return (*(re.compile(re.escape(word)) for word in rest), *map(_size_term, sizes))


def _size_term(size: str) -> re.Pattern[str]:
    parts = [re.escape(part.strip()) for part in re.split(r"[x×]", size)]
    # A count may stand before two figures: 3 x 4-1/2 x 4 is three hinges of 4-1/2 x 4.
    return re.compile(rf"(?<![\w/.'-]){_ANY_BLANKS.join(parts)}(?![\w/.-])(?!{_ANY_BLANKS}\d)")


def said_in_text(opening: Opening, display: Display) -> str:
    """Return what the columns that are not worked out say of an opening, as one text to look through."""
    said = [column.text((opening,), display) for column in COLUMNS if not isinstance(column, Worked)]
    return "\n".join(said).casefold()


def _worked_in_text(answer: Answer) -> str:
    return f"{answer.hinge}\n{answer.angle}\n{answer.counted}\n{answer.findings}".casefold()
