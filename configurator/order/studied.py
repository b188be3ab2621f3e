"""Studies of every opening of a job, one that cannot be studied kept with its fault."""

from dataclasses import dataclass

from configurator.long_work import Progress, unwatched, watched
from configurator.model import Job, JobFacts, Opening
from configurator.study import Study, study


@dataclass(frozen=True, slots=True)
class NotStudied:
    """An opening that has no answer, and why; `field` is the field at fault, or nothing."""

    opening: Opening
    field: str
    fault: str


Studied = Study | NotStudied


def study_job(job: Job, progress: Progress = unwatched) -> tuple[Studied, ...]:
    """Study every opening of a job, in its order. Raises what `progress` raises."""
    openings = watched(job.openings, len(job.openings), progress)
    return tuple(study_or_fault(opening, job.job) for opening in openings)


def study_or_fault(opening: Opening, facts: JobFacts | None = None) -> Studied:
    """Study one opening; what is missing, or refused by the plan, comes back as its fault."""
    try:
        return study(opening, facts)
    except ValueError as error:
        return NotStudied(opening, getattr(error, "field", None) or "", str(error))
