"""Changes to many openings as one: each is tried, and all are taken or none. No Qt."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.long_work import Steps
from configurator.model import Opening, paths
from configurator.model.marks import next_mark
from configurator.sentences import capitalized
from configurator.ui.kit.kinds import NotReadError, kind_at
from configurator.ui.schedule.answers import Answers
from configurator.ui.schedule.columns import ORDER_SHAPES, SHAPES
from configurator.ui.state import edits
from configurator.ui.state.edits import RefusedError
from configurator.units import Display

NEVER_AT_FAULT = frozenset(
    {
        "mark",
        "location",
        "quantity",
        "status",
        "order_state",
        "notes",
        "questions",
        "level",
        "hardware_set",
        "glass",
        "remarks",
    }
)
"""Fields that no answer can fail for: a change of these alone need not be studied before it is taken."""
YES_NO = {"yes": True, "no": False}


@dataclass(frozen=True, slots=True)
class Change:
    """What is to become of one opening: its place in the job (None: a new one), and values by path.

    `name` is what a refusal calls it: its mark, or the row it was pasted from.
    """

    place: int | None
    values: Mapping[str, Any]
    name: str


class Trial:
    """Tries changes one by one; afterwards `openings` are those of the job with all of them made.

    Every refusal is one line that names the opening, the field and the reason. With any, nothing is taken.
    """

    def __init__(self, openings: Sequence[Opening], changes: Sequence[Change], answers: Answers) -> None:
        self.changes = changes
        self.refusals: list[str] = []
        self.changed: list[Opening] = []
        self._openings = list(openings)
        self._answers = answers

    @property
    def openings(self) -> tuple[Opening, ...]:
        """All openings of the job, changed and new ones included."""
        return tuple(self._openings)

    def steps(self) -> Steps[None]:
        """Try one change at each step."""
        for done, change in enumerate(self.changes, 1):
            self._try(change)
            yield done
        self._refuse_double_marks()

    def _try(self, change: Change) -> None:
        before = None if change.place is None else self._openings[change.place]
        try:
            opening = _made(before, change.values)
        except RefusedError as error:
            self.refusals.extend(refusals_of(change.name, error))
            return
        if fault := self._fault(before, opening, change):
            self.refusals.append(f"{change.name}: {fault}")
        elif opening != before:
            self._put(change.place, opening)

    def _put(self, place: int | None, opening: Opening) -> None:
        self.changed.append(opening)
        if place is None:
            self._openings.append(opening)
        else:
            self._openings[place] = opening

    def _fault(self, before: Opening | None, opening: Opening, change: Change) -> str:
        """Return why the opening cannot be studied any more; one that could not before may stay so."""
        if before is not None and NEVER_AT_FAULT.issuperset(change.values):
            return ""
        fault = self._answers.work_out(opening).fault
        if fault and (before is None or not self._answers.work_out(before).fault):
            return capitalized(fault)
        return ""

    def _refuse_double_marks(self) -> None:
        if all(change.place is not None and "mark" not in change.values for change in self.changes):
            return
        marks = Counter(opening.mark for opening in self._openings)
        for opening in self.changed:
            if marks[opening.mark] > 1:
                self.refusals.append(f"{opening.mark}, mark: it stands twice; each opening has its own")


def refusals_of(name: str, error: RefusedError) -> Iterator[str]:
    """Yield a line for each fault: what it is about, the field, and the sentence."""
    for fault in error.faults:
        field = _called(fault.field)
        says_it = not field or fault.message.lower().startswith(field.lower())
        about = name if says_it else f"{name}, {field}"
        yield f"{about}: {fault.message}"


def typed(path: str, text: str, display: Display) -> Any:
    """Read what was typed for a field; empty text leaves it to the program. Raises NotReadError.

    A word that only begins one of those allowed is taken for it, if there is but one.
    """
    text = text.strip()
    if not text:
        return None
    if paths.holds(path, bool):
        if text.casefold() not in YES_NO:
            raise NotReadError(f"Yes or no is wanted; “{text[:24]}” was given.")
        return YES_NO[text.casefold()]
    words = paths.words_of(path)
    return _word(text, words) if words else kind_at(path).read(text, display)


def duplicates(openings: Sequence[Opening], places: Sequence[int]) -> tuple[tuple[Opening, ...], list[str]]:
    """Return the openings with a copy after each of those places, and the marks of the copies."""
    taken = {opening.mark for opening in openings}
    wanted, marks, result = set(places), [], []
    for place, opening in enumerate(openings):
        result.append(opening)
        if place in wanted:
            mark = next_mark(opening.mark, taken)
            taken.add(mark)
            marks.append(mark)
            result.append(edits.another(opening, mark))
    return tuple(result), marks


def counted(marks: Sequence[str]) -> str:
    """Name one opening by its mark, or say how many there are."""
    return marks[0] if len(marks) == 1 else f"{len(marks):,} openings"


def _made(before: Opening | None, values: Mapping[str, Any]) -> Opening:
    if before is not None:
        return edits.edited(before, values)
    data: dict[str, Any] = {}
    for path, value in values.items():
        if value is not None:
            paths.put(data, path, value)
    return edits.validated(Opening, data)


def _called(path: str) -> str:
    try:
        return paths.trade_name(path)
    except KeyError:
        return path


def _word(text: str, words: tuple[str, ...]) -> str:
    plain = text.strip("".join((SHAPES | ORDER_SHAPES).values()) + " ").casefold()
    begun = [word for word in words if word.casefold().startswith(plain)] if plain else []
    exact = [word for word in words if word.casefold() == plain]
    found = exact or begun
    return found[0] if len(found) == 1 else text
