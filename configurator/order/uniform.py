"""Making a job uniform: offered where one hinge width would do for all of a height, with what it costs."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import count

from configurator.long_work import Progress, unwatched
from configurator.model import JobFacts, Opening
from configurator.order.order_findings import OrderFinding
from configurator.order.tally import Tally, leaf_choices
from configurator.rules.hinge.uniform import Chosen, uniform_findings


def uniform(
    tallies: Sequence[Tally], facts: JobFacts | None = None, progress: Progress = unwatched
) -> tuple[OrderFinding, ...]:
    """Return, for each hinge height in several widths, whether one would do, and which openings go wider.

    A width that no study has tried is asked of the geometry, opening by opening: of ten thousand openings
    that may take seconds, so it is asked only when somebody wants to know. `progress` counts every
    question, of how many at least; what it raises ends the work.
    """
    choices = leaf_choices(tallies, facts)
    found = uniform_findings(_watched(choices, progress))
    return tuple(OrderFinding(one, tuple(_going_wider(tallies, one.numbers))) for one in found)


def offered_width(offer: OrderFinding) -> float | None:
    """Return the width that would do for all, inches; None where the finding offers none."""
    return offer.finding.numbers.get("width")


def made_uniform(openings: Iterable[Opening], offer: OrderFinding) -> tuple[Opening, ...]:
    """Return a job's openings with the offered width, by hand, on every one that the finding names.

    Raises ValueError where no width is offered, or an opening cannot have it.
    """
    width, marks = offered_width(offer), set(offer.marks)
    if width is None:
        raise ValueError("no one width does for all of them")
    return tuple(_with_width(one, width) if one.mark in marks else one for one in openings)


def _with_width(opening: Opening, width: float) -> Opening:
    data = opening.model_dump(exclude_unset=True)
    return Opening.model_validate({**data, "hinge": {**(data.get("hinge") or {}), "width": width}})


def _watched(choices: Sequence[Chosen], progress: Progress) -> list[Chosen]:
    number = count()

    def watching(ask: Callable[[float], bool]) -> Callable[[float], bool]:
        def answer(width: float) -> bool:
            done = next(number)
            progress(done, max(len(choices), done))
            return ask(width)

        return answer

    return [replace(one, does_all=watching(one.does_all)) for one in choices]


def _going_wider(tallies: Sequence[Tally], numbers: Mapping[str, float]) -> Iterator[str]:
    """Yield the marks that would change; none where no one width does for all."""
    height, width = numbers["height"], numbers.get("width", 0.0)
    for one in tallies:
        leaves = [leaf for leaf in one.leaves if one.ordered and leaf.complete and leaf.height == height]
        if any(leaf.width is not None and leaf.width < width for leaf in leaves):
            yield one.mark
