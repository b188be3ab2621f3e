"""Making a job uniform: offered where one hinge width would do for all of a height, with what it costs."""

from collections.abc import Iterator, Mapping, Sequence

from configurator.model import JobFacts
from configurator.order.saying import Said
from configurator.order.tally import Tally, chosen
from configurator.rules.uniform import uniform_findings


def uniform(tallies: Sequence[Tally], facts: JobFacts | None = None) -> tuple[Said, ...]:
    """Return, for each hinge height in several widths, whether one would do, and which openings go wider.

    A width that no study has tried is asked of the geometry, opening by opening: of ten thousand openings
    that may take seconds, so it is asked only when somebody wants to know.
    """
    found = uniform_findings(chosen(tallies, facts))
    return tuple(Said(one, tuple(_going_wider(tallies, one.numbers))) for one in found)


def _going_wider(tallies: Sequence[Tally], numbers: Mapping[str, float]) -> Iterator[str]:
    """Yield the marks that would change; none where no one width does for all."""
    height, width = numbers["height"], numbers.get("width", 0.0)
    for one in tallies:
        leaves = [leaf for leaf in one.leaves if leaf.complete and leaf.height == height]
        if any(leaf.width is not None and leaf.width < width for leaf in leaves):
            yield one.mark
