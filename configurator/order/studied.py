"""Studies of every opening of a job, one that cannot be studied kept with its fault."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from configurator.model import Job, JobFacts, Opening
from configurator.study import Study, study

Progress = Callable[[int, int], bool]
"""Told how many openings are done, and of how many; what it returns says whether to go on."""


@dataclass(frozen=True, slots=True)
class NotStudied:
    """An opening that has no answer, and why; `field` is the field at fault, or nothing."""

    opening: Opening
    field: str
    fault: str


Studied = Study | NotStudied


class Cancelled(Exception):  # noqa: N818 - not an error: somebody asked for it
    """Whoever watches the work asked to stop it."""


def study_job(job: Job, progress: Progress | None = None) -> tuple[Studied, ...]:
    """Study every opening of a job, in its order. Raises Cancelled when `progress` says not to go on."""
    return tuple(study_or_fault(opening, job.job) for opening in watched(job.openings, progress))


def watched(openings: Sequence[Opening], progress: Progress | None = None) -> Iterator[Opening]:
    """Yield openings one by one, telling `progress` before each. Raises Cancelled when it says to stop."""
    for done, opening in enumerate(openings):
        if progress is not None and not progress(done, len(openings)):
            raise Cancelled
        yield opening


def study_or_fault(opening: Opening, facts: JobFacts | None = None) -> Studied:
    """Study one opening; what is missing, or refused by the plan, comes back as its fault."""
    try:
        return study(opening, facts)
    except ValueError as error:
        return NotStudied(opening, getattr(error, "field", None) or "", str(error))
