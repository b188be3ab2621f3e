"""The openings a command is about, studied; and how a command refuses what it was given."""

from typing import TYPE_CHECKING

from configurator.model import Job, Opening
from configurator.model.faults import Fault
from configurator.project_file import ProjectFileError

if TYPE_CHECKING:
    from configurator.study import Study


def chosen(job: Job, mark: str | None) -> tuple[Opening, ...]:
    """Return the opening with a mark, or all of them for None. Raises ProjectFileError if none has it."""
    if mark is None:
        return job.openings
    found = tuple(opening for opening in job.openings if opening.mark == mark)
    if not found:
        known = ", ".join(opening.mark for opening in job.openings[:20]) or "none"
        raise refused("--mark", f"there is no opening {mark!r} in this job; it has {known}")
    return found


def studied(job: Job, opening: Opening) -> "Study":
    """Study one opening; what the plan refuses (a hinge that cannot be mounted so) is refused as input."""
    from configurator.study import study

    try:
        return study(opening, job.job)
    except ValueError as error:
        place = job.openings.index(opening)
        field = ".".join(filter(None, (f"openings[{place}]", getattr(error, "field", None))))
        raise refused(field, f"{error} (opening {opening.mark})") from None


def refused(field: str, message: str) -> ProjectFileError:
    """Return the refusal of one field or option, to be raised."""
    return ProjectFileError((Fault(field, message),))
