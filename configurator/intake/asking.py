"""What a row says that must be asked before it is an opening with hinges to order."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import Any, Literal

from configurator.intake.columns import Column, Reading
from configurator.intake.fields import FIELDS, HOUSE
from configurator.intake.refused import CellError, CellFault, Question, quoted
from configurator.intake.sheet import SheetRow
from configurator.intake.table import Behind
from configurator.model.words import HungOn

_TYPES = frozenset({"door_type", "door", "hand", "swing", "size", None})
"""Fields in whose cells an abbreviation may say what kind of door it is; None: a column that is not read."""
_TEXTS = frozenset({"remarks", "notes", "frame", "frame_type", "keep"})
"""Fields in whose cells only whole words are looked for."""
_UNHINGED: Mapping[str, tuple[frozenset[str], re.Pattern[str]]] = MappingProxyType(
    {
        "a cased opening": (
            frozenset({"co", "cased", "casedopng", "casedopg", "nodoor"}),
            re.compile(r"\bcased\s+op(?:eni)?n?gs?\b|\bno\s+door\b", re.IGNORECASE),
        ),
        "a pocket door": (frozenset({"pkt", "pktdr"}), re.compile(r"\bpocket\b", re.IGNORECASE)),
        "a sliding door": (
            frozenset({"sl", "sld", "sldg", "slider", "bypass", "barn"}),
            re.compile(
                r"\bsliding\b(?!\s+bolt)|\bslider\b|\bby-?pass(?:ing)?\s+door|\bbarn\s+door", re.IGNORECASE
            ),
        ),
        "a bifold door": (
            frozenset({"bf", "bifold", "bifolding"}),
            re.compile(r"\bbi-?\s?fold(?:ing)?\b", re.IGNORECASE),
        ),
        "an overhead or coiling door": (
            frozenset({"oh", "ohd", "ocd", "overhead", "rollup", "coiling"}),
            re.compile(
                r"\boverhead\s+(?:coiling|sectional|rolling|door)|\bcoiling\b|\broll(?:ing|-?\s?up)\s+"
                r"(?:door|shutter|grille)",
                re.IGNORECASE,
            ),
        ),
        "a folding partition": (
            frozenset({"accordion", "acc"}),
            re.compile(
                r"\baccordion\b|\bfolding\s+(?:partition|door)\b|\boperable\s+partition\b", re.IGNORECASE
            ),
        ),
        "a revolving door": (frozenset({"revolving"}), re.compile(r"\brevolving\b", re.IGNORECASE)),
        "a double-acting door": (frozenset(), re.compile(r"\bdouble[\s-]acting\b", re.IGNORECASE)),
        "a double-egress pair": (frozenset({"de"}), re.compile(r"\bdouble[\s-]?egress\b", re.IGNORECASE)),
        "hung on a continuous hinge": (
            frozenset({"cont", "conthinge"}),
            re.compile(r"\b(?:continuous|geared|cont\.?|piano)\s+hinges?\b", re.IGNORECASE),
        ),
        "hung on pivots": (
            frozenset({"pivot", "pivots"}),
            re.compile(r"\bpivots?\b|\bpivoted\b", re.IGNORECASE),
        ),
        "hung on spring hinges": (
            frozenset({"springhinge", "springhinges"}),
            re.compile(r"\bspring\s+hinges?\b", re.IGNORECASE),
        ),
    }
)
"""What is no hinged door, with its abbreviations and its words; common practice, no source."""
_VOID = re.compile(
    r"\(?(?:not\s+used|unused|deleted?|omit(?:ted)?|void|n\.?i\.?c\.?|not\s+in\s+(?:contract|scope)|by\s+others|"
    r"by\s+owner)\)?\.?",
    re.IGNORECASE,
)
"""What a whole cell says of an opening that is not to be supplied here."""
_OWN = frozenset({"mark", "hung_on", "questions"})
_HUNG_ON: Mapping[str, HungOn] = MappingProxyType(
    {
        "hung on a continuous hinge": "continuous hinge",
        "hung on pivots": "pivots",
        "hung on spring hinges": "spring hinges",
    }
)
_ACTIVE_HANDS = frozenset({"lha", "rha", "lhra", "rhra"})
_PAIR = re.compile(
    r"\b(?:pairs?|pr)\b(?!\s+(?:of\s+)?(?!doors?\b|leaves\b|dr\b)\w+)"
    r"|\b(?:double|dbl)[-\s]+(?:doors?|dr|leaf|leaves|flush|panel|swing)\b",
    re.IGNORECASE,
)
"""A pair, but not a pair of kick plates."""
_DUTCH = re.compile(r"\bdutch\b", re.IGNORECASE)
_TYPICAL = re.compile(
    r"\(?\btyp(?:ical)?\b\.?\s*(?:of|x|for)?\s*\(?(\d{1,3})\)?\)?|\(?\b(\d{1,3})\s*(?:x\s*)?typ(?:ical)?\b\.?\)?",
    re.IGNORECASE,
)
_SEVERAL = re.compile(r"\s*(?:,|;|&|\band\b)\s*", re.IGNORECASE)
_FROM_TO = re.compile(r"([A-Za-z]*)(\d{1,5})\s*(?:thru|through|to|–|—)\s*\1(\d{1,5})", re.IGNORECASE)
DITTO = re.compile(r"[\"″”“〃]|''|,,|ditto|do\.?|same(?:\s+as\s+above)?|-\s*[\"″”]\s*-", re.IGNORECASE)
"""What stands for the cell above."""

Fate = Literal["read", "says nothing", "not understood", "asked", "not read", "kept", "left out"]
"""What became of a cell."""
Cells = Sequence[tuple[Column, str]]
"""The cells of a row that are not blank, each with its column."""


def unhinged(cells: Cells) -> tuple[Column, str, str] | None:
    """Return the cell that says that this is no hinged door, and what it is; None where none says so."""
    for column, cell in cells:
        if column.field not in _OWN and _VOID.fullmatch(cell.strip()):
            return column, cell, "no door of this job"
        if (column.field in _TYPES or column.field in _TEXTS) and (
            kind := _kind(cell, column.field in _TYPES)
        ):
            return column, cell, kind
    return None


@lru_cache(maxsize=4096)
def _kind(cell: str, short: bool) -> str:
    """Return what a cell says that is no hinged door, also by an abbreviation where `short`; else nothing."""
    letters = _letters(cell) if short else ""
    found = (kind for kind, (known, words) in _UNHINGED.items() if letters in known or words.search(cell))
    return next(found, "")


@lru_cache(maxsize=4096)
def is_ditto(cell: str) -> bool:
    """Say whether a cell stands for the one above it."""
    return DITTO.fullmatch(cell.strip()) is not None


def active_hand(cell: str) -> bool:
    """Say whether a hand is that of a pair's active leaf, as RHRA."""
    return _letters(cell) in _ACTIVE_HANDS


def pair_in_text(cells: Cells) -> tuple[Column, str] | None:
    """Return the remark or type that says that the opening is a pair; None where none does."""
    return _saying(_PAIR, cells)


def dutch_in_text(cells: Cells) -> tuple[Column, str] | None:
    """Return the remark or type that calls the door Dutch; the column of leaves says it by itself."""
    return _saying(_DUTCH, cells)


def typical_in(cells: Cells) -> Iterator[tuple[Column, str, int]]:
    """Yield each cell that says that a row stands for several openings, and for how many."""
    for column, cell in cells:
        if column.field in ("mark", "quantity", "remarks", "notes", None) and (
            found := _TYPICAL.search(cell)
        ):
            yield column, cell, int(found[1] or found[2])
        elif column.field == "mark" and (several := _marks_in(cell)) > 1:
            yield column, cell, several


def _marks_in(cell: str) -> int:
    """Return how many marks stand in the cell of one, as in 101, 102 or 101 thru 105."""
    if found := _FROM_TO.fullmatch(cell.strip()):
        return max(int(found[3]) - int(found[2]) + 1, 2)
    parts = _SEVERAL.split(cell.strip())
    return len(parts) if all(any(letter.isdigit() for letter in part) for part in parts) else 1


def without_typical(cell: str) -> str:
    """Return a cell without what says of how many it is typical."""
    return _TYPICAL.sub("", cell).strip()


def _saying(words: re.Pattern[str], cells: Cells) -> tuple[Column, str] | None:
    for column, cell in cells:
        asked = column.field in _TEXTS or column.field in ("door_type", "hand", None)
        if asked and words.search(cell):
            return column, cell
    return None


def _letters(cell: str) -> str:
    return "".join(letter for letter in cell.casefold() if letter.isalnum()) if len(cell) < 30 else ""


def is_text(name: str | None) -> bool:
    """Say whether a field takes any text as it stands."""
    return name is not None and FIELDS[name].kind in ("text", "keep")


def without_ditto(row: SheetRow, above: SheetRow, reading: Reading) -> tuple[SheetRow, tuple[str, ...]]:
    """Return a row with the cells above it where it has ditto marks, and that they were taken so."""
    if not any(is_ditto(cell) for cell in row.cells):
        return row, ()
    cells, told = list(row.cells), []
    for column in reading.columns:
        cell = row.cell(column.place)
        if column.field not in HOUSE and is_ditto(cell) and above.cell(column.place).strip():
            cells[column.place] = above.cell(column.place)
            told.append(f"{column.heading}: {quoted(cell)} is taken as what stands above it")
    return replace(row, cells=tuple(cells)), tuple(told)


class AskedRow:
    """A row while it is read: what it says, what is wrong, and the questions that come before both.

    `texts` are its cells by place, without those whose meaning is known already.
    """

    def __init__(self, row: SheetRow, reading: Reading) -> None:
        self.line, self.row, self.reading = row.line, row, reading
        self.texts = {place: cell for place, cell in enumerate(row.cells) if cell.strip()}
        self.values: dict[str, Any] = {}
        self.places: dict[str, int] = {}
        self.faults: list[CellFault] = []
        self.told: list[str] = []
        self.asks: list[str] = []
        self.fates: dict[int, Fate] = {}
        self.leaves_by, self.left_out = "", ""
        self.typical: tuple[int, Column] | None = None
        self.of_hands: dict[Column, tuple[str, ...]] = {}

    def cells(self) -> Cells:
        """Return the cells that are not blank, each with its column."""
        columns = self.reading.columns
        return [(column, self.texts[column.place]) for column in columns if column.place in self.texts]

    def put(self, path: str, value: Any, column: Column) -> None:
        """Note a value of the opening; a column about a field itself outranks one that only touches on it."""
        if FIELDS[column.field or "keep"].kind == "code" and path in self.values:
            return
        self.values[path] = value
        self.places[path] = column.place

    def reach(self, column: Column, behind: Behind) -> None:
        """Take what stands behind a cell. Raises CellError while its question waits for an answer."""
        while behind.question:
            answer = self.reading.answer(behind.question)
            if answer not in behind.answers:
                raise CellError(behind.sentence, behind.question)
            self.told.extend(behind.told)
            behind = behind.answers[answer]
        if behind.sentence:
            raise CellError(behind.sentence)
        self.left_out = behind.left_out or self.left_out
        self.told.extend(behind.told)
        self.asks.extend(behind.asks)
        for path, value in behind.values.items():
            self.put(path, value, column)
        if behind.hands:
            self.of_hands[column] = behind.hands

    def refuse_other_hands(self) -> None:
        """Refuse what a model found for one hand where the row has another one by now."""
        for column, hands in self.of_hands.items():
            hand = self.values.get("hand")
            if hand is not None and hand not in hands:
                sentence = f"found for a door that is {' or '.join(hands)}, and the hand is {hand}: blank it"
                self.faults.append(CellFault(self.line, column.place, column.heading, sentence))

    def ask_of_row(self) -> None:
        """Ask, or do as was answered, where the row is hidden, struck out or no plain hinged door."""
        self._hidden()
        self._struck()
        if not self.left_out:
            self._unhinged()
            self._dutch()
            self._typical()

    def _ask(self, question: Question, sentence: str, column: Column | None) -> str:
        """Return the answer to a question; while there is none, the row has a fault that asks."""
        answer = self.reading.answer(question)
        if answer == "ask":
            place, heading = (column.place, column.heading) if column is not None else (None, "")
            self.faults.append(CellFault(self.line, place, heading, sentence, question))
        return answer

    def _hidden(self) -> None:
        if not self.row.hidden:
            return
        answer = self._ask(
            "hidden row", "the workbook hides this row: say whether hidden rows are taken", None
        )
        if answer == "leave out":
            self.left_out = "it is hidden in the workbook"
        elif answer == "take":
            self.told.append("hidden in the workbook, and taken")

    def _struck(self) -> None:
        struck = {place: left for place, left in self.row.struck.items() if place in self.texts}
        if not struck or self.left_out:
            return
        marks = [column.place for column in self.reading.columns if column.field == "mark"]
        whole = (
            not any(struck.get(place, " ") for place in self.texts) or struck.get(*marks[:1] or [-1]) == ""
        )
        first = next((each for each in self.reading.columns if each.place in struck), None)
        words = "this row is struck out" if whole else f"{quoted(self.texts[min(struck)])} is struck out"
        answer = self._ask("struck out", f"{words}: say whether that is deleted", None if whole else first)
        if answer == "leave out" and whole:
            self.left_out = "it is struck out"
        elif answer == "leave out":
            self._strike(struck)
        elif answer == "take":
            self.told.append("struck out, and taken as if it were not")

    def _strike(self, struck: Mapping[int, str]) -> None:
        for place, left in struck.items():
            self.told.append(
                f"{quoted(self.texts[place])} is struck out: "
                + (f"{quoted(left)} is read" if left else "left out")
            )
            if left:
                self.texts[place] = left
            else:
                self.fates[place] = "left out"
                del self.texts[place]

    def _unhinged(self) -> None:
        found = unhinged(self.cells())
        if found is None:
            return
        column, cell, kind = found
        sentence = f"{quoted(cell)} is {kind}: say what becomes of openings without butt hinges"
        answer = self._ask("no hinged door", sentence, column)
        if answer == "leave out":
            self.left_out = f"it is {kind}"
        elif answer in ("ask", "by others"):
            self.values["hung_on"] = hung_on = _HUNG_ON.get(kind, "by others")
            self.places["hung_on"] = column.place
            self._consume(column, "read")
            if answer == "by others":
                self.told.append(f"{quoted(cell)} is {kind}: hung on {hung_on}, so nothing is ordered for it")

    def _dutch(self) -> None:
        found = dutch_in_text(self.cells())
        if found is None:
            return
        column, cell = found
        answer = self._ask(
            "dutch door", f"{quoted(cell)}: say whether the door is in two leaves, one over the other", column
        )
        if answer == "dutch":
            self.leaves_by = "dutch"
            self.told.append(f"{quoted(cell)} is taken as a Dutch door")
        if column.field in ("hand", "door_type"):
            self._consume(column, "read")

    def _typical(self) -> None:
        for column, cell, count in [*typical_in(self.cells())]:
            sentence = (
                f"{quoted(cell)}: say whether the row stands for {count} openings or each has its own row"
            )
            answer = self._ask("typical", sentence, column)
            if answer == "quantity":
                self.typical = (count, column)
                self.told.append(f"{quoted(cell)} is taken as a quantity of {count}")
            elif answer == "one":
                self.told.append(f"{quoted(cell)} is taken as one opening; the others have rows of their own")
            if column.field == "quantity":
                self._consume(column, "read")
            elif column.field == "mark":
                self.texts[column.place] = without_typical(cell)

    def _consume(self, column: Column, fate: Fate) -> None:
        """Have a cell not read any further: what it says is known."""
        if not is_text(column.field):
            self.texts.pop(column.place, None)
            self.fates.setdefault(column.place, fate)
