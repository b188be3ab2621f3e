"""Making a job uniform: offered where one hinge width would do for all of a height, with what it costs."""

from collections.abc import Iterator, Mapping, Sequence

from configurator.model import JobFacts
from configurator.order.saying import Said
from configurator.study import job_findings
from configurator.study.records import Study


def uniform(studies: Sequence[Study], facts: JobFacts) -> tuple[Said, ...]:
    """Return, for each hinge height in several widths, whether one would do, and which openings go wider."""
    return tuple(Said(one, tuple(_going_wider(studies, one.numbers))) for one in job_findings(studies, facts))


def _going_wider(studies: Sequence[Study], numbers: Mapping[str, float]) -> Iterator[str]:
    """Yield the marks that would change; none where no one width does for all."""
    height, width = numbers["height"], numbers.get("width", 0.0)
    for study in studies:
        leaves = [one for one in study.specification.leaves if one.complete]
        if any(one.parts["height"].value == height and one.parts["width"].value < width for one in leaves):
            yield study.opening.mark
