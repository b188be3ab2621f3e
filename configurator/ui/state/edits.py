"""Changes to a job as pure functions: each gives a new, validated record or says why not. No Qt here."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, TypeVar

from pydantic import ValidationError

from configurator.model import Job, JobFacts, Opening, Tolerances, paths
from configurator.model.faults import Fault, faults_of
from configurator.model.fields import Record
from configurator.model.job import MOST_OPENINGS
from configurator.sentences import capitalized

_R = TypeVar("_R", bound=Record)

TYPICAL = {
    "size": {"width": 36, "height": 84},
    "hand": "RH",
    "obstructions": [],
    "hardware": [],
    "compare": [4, 4.5],
}
"""What a new opening starts from; everything else is the usual value until someone says otherwise."""


class RefusedError(Exception):
    """A change that cannot be: its faults, by path within the opening."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("; ".join(str(fault) for fault in faults))
        self.faults = tuple(Fault(paths.from_fault(fault.field), fault.message) for fault in faults)

    def about(self, path: str) -> str:
        """Return the sentence to stand beside the field at `path`."""
        fault = next((fault for fault in self.faults if fault.field == path), self.faults[0])
        return capitalized(fault.message)


@dataclass(frozen=True, slots=True)
class Refusal:
    """A value that could not be taken: what was typed, why not, and whether to try it again later."""

    value: Any
    sentence: str
    retry: bool = True
    typed: str = ""
    """As it was typed; empty of what was chosen."""


class Refusals(dict[str, Refusal]):
    """The refused values of the opening on show, by path; those of the other openings wait for these."""

    def __init__(self) -> None:
        super().__init__()
        self.mark = ""
        self._waiting: dict[str, dict[str, Refusal]] = {}

    def turn_to(self, mark: str) -> None:
        """Set aside the values of the opening on show, and show those of another; the job's own stay."""
        if mark == self.mark:
            return
        of_job = {path: one for path, one in self.items() if path.startswith(paths.JOB)}
        self._waiting[self.mark] = {path: one for path, one in self.items() if path not in of_job}
        self.mark = mark
        self.hold({**of_job, **self._waiting.pop(mark, {})})

    def hold(self, refusals: Mapping[str, Refusal]) -> None:
        """Hold these in place of the ones there were."""
        found = dict(refusals)
        self.clear()
        self.update(found)

    def forget(self) -> None:
        """Forget those of every opening: it is another job."""
        self.clear()
        self._waiting.clear()


STARTS = (
    "compare",
    "hinge_locations.rule",
    "use.clear_width_margin",
    *(f"tolerances.{key}" for key in Tolerances.model_fields),
)
"""What a shop may have its own start of, for new openings."""


def typical_opening(mark: str, starts: Mapping[str, Any] = MappingProxyType({})) -> Opening:
    """Return a plain single door to start from, with a shop's own starts. Raises RefusedError."""
    return started(Opening.model_validate({"mark": mark, **TYPICAL}), starts)


def started(opening: Opening, starts: Mapping[str, Any]) -> Opening:
    """Return a new opening with a shop's own starts where nothing was said of it. Raises RefusedError."""
    said = {path for path in starts if path != "compare" and paths.value_at(opening, path) is not None}
    left = {path: value for path, value in starts.items() if path not in said}
    return edited(opening, left) if left else opening


def another(like: Opening, mark: str) -> Opening:
    """Return one more opening like that one; nobody has verified, approved or ordered it yet.

    It is no door of the building model: that is the one it is like.
    """
    return edited(like, {"mark": mark, "status": None, "order_state": None, "global_id": None})


def edited(opening: Opening, changes: Mapping[str, Any]) -> Opening:
    """Return the opening with the values at some paths changed; None leaves a value to the program.

    Raises RefusedError; all changes are made or none.
    """
    data = opening.model_dump(exclude_unset=True)
    for path, value in changes.items():
        paths.put(data, path, value)
    return validated(Opening, data)


def edited_facts(facts: JobFacts, changes: Mapping[str, Any]) -> JobFacts:
    """Return the job's facts with some changed. Raises RefusedError."""
    data = facts.model_dump(exclude_unset=True)
    for path, value in changes.items():
        paths.put(data, path.removeprefix(paths.JOB), value)
    return validated(JobFacts, data)


def with_openings(job: Job, openings: tuple[Opening, ...]) -> Job:
    """Return the job with other openings. Raises RefusedError, as for a mark that stands twice."""
    if len({opening.mark for opening in openings}) == len(openings) <= MOST_OPENINGS:
        # Each record was asked when it was made; asking ten thousand of them anew takes 30 ms.
        return job.model_copy(update={"openings": openings})
    return validated(Job, {**_parts(job), "openings": openings})


def with_facts(job: Job, facts: JobFacts) -> Job:
    """Return the job with other facts."""
    return validated(Job, {**_parts(job), "job": facts})


def replaced(job: Job, mark: str, opening: Opening) -> Job:
    """Return the job with the opening of that mark replaced. Raises RefusedError."""
    openings = tuple(opening if other.mark == mark else other for other in job.openings)
    return with_openings(job, openings)


def fresh_mark(job: Job, wish: str = "101") -> str:
    """Return a mark that no opening of the job has: the wish itself, or the next after it."""
    from configurator.model.marks import next_mark  # loaded on use: the window is painted without it

    return next_mark(wish, {opening.mark for opening in job.openings})


def name_of(changes: Mapping[str, Any], mark: str) -> str:
    """Name an edit as undo shows it: "change door thickness of 112A"."""
    names = list(dict.fromkeys(paths.trade_name(path) for path in changes))
    what = names[0] if len(names) == 1 else f"{names[0]} and more"
    return f"change {what} of {mark}"


def validated(record: type[_R], data: dict[str, Any]) -> _R:
    """Return the record made of `data`. Raises RefusedError."""
    try:
        return record.model_validate(data)
    except ValidationError as error:
        raise RefusedError(faults_of(error, record)) from None


def new_job() -> Job:
    """Return a job with one typical opening."""
    return with_openings(Job(), (typical_opening("101"),))


def is_left_out(path: str, value_at: Callable[[str], Any]) -> bool:
    """Return whether a field that may be left out was; of what is no field it was not."""
    try:
        return value_at(path) is None and not paths.field_at(path).is_required()
    except (KeyError, AttributeError):
        return False  # a rule may name no field of its own


def waiting_values(refusals: Mapping[str, Refusal], changes: Mapping[str, Any]) -> Iterator[dict[str, Any]]:
    """Yield the refused values of an opening to try along with changes: all of them, each alone, none."""
    waiting = {
        path: refusal.value
        for path, refusal in untouched_refusals(refusals, changes).items()
        if refusal.retry and not path.startswith(paths.JOB)
    }
    if len(waiting) > 1:
        yield waiting
    for path, value in waiting.items():
        yield {path: value}
    yield {}


def untouched_refusals(refusals: Mapping[str, Refusal], changes: Mapping[str, Any]) -> dict[str, Refusal]:
    """Return the refusals that changes leave standing: not at their path, nor in a list that is replaced."""
    return {
        path: refusal
        for path, refusal in refusals.items()
        if not any(path == changed or path.startswith(f"{changed}.") for changed in changes)
    }


def _parts(job: Job) -> dict[str, Any]:
    """Return what the job was given, records kept as they are so that only what is new is validated."""
    return {name: getattr(job, name) for name in job.model_fields_set}
