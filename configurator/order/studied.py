"""Openings studied for a job, or kept with their fault; and what an order leaves out, with why."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

from configurator.model import JobFacts, Opening
from configurator.rules.specification import LeafSpecification
from configurator.study import Study, study


@dataclass(frozen=True, slots=True)
class NotStudied:
    """An opening that has no answer, and why; `field` is the field at fault, or nothing."""

    opening: Opening
    field: str
    fault: str


Studied = Study | NotStudied
Why = Literal["hung otherwise", "no hinge to be had", "not studied"]
NOTHING_TO_BE_HAD = (
    "No hinge width to be had does what this opening asks. Change the opening or the width first."
)


@dataclass(frozen=True, slots=True)
class NotOrdered:
    """One mark that the order leaves out: how many openings, which leaf ("" for all of it), and why.

    `hinges` are those left out, None where nobody can say how many.
    """

    mark: str
    quantity: int
    leaf: str
    why: Why
    words: str
    hinges: int | None

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written."""
        return {
            "mark": self.mark,
            "quantity": self.quantity,
            "leaf": self.leaf or None,
            "why": self.why,
            "message": self.words,
            "hinges": self.hinges,
        }


def study_or_fault(opening: Opening, facts: JobFacts | None = None) -> Studied:
    """Study one opening; what is missing, or refused by the plan, comes back as its fault."""
    try:
        return study(opening, facts)
    except ValueError as error:
        return NotStudied(opening, getattr(error, "field", None) or "", str(error))


def left_out(studied: Studied) -> tuple[NotOrdered, ...]:
    """Return what an order leaves out of one mark; nothing where all its hinges can be ordered."""
    return tuple(_left_out(studied))


def _left_out(studied: Studied) -> Iterator[NotOrdered]:
    mark, quantity = studied.opening.mark, studied.opening.quantity
    if isinstance(studied, NotStudied):
        field = f"{studied.field}: " if studied.field else ""
        yield NotOrdered(mark, quantity, "", "not studied", field + studied.fault, None)
    elif not studied.specification.leaves:
        why = " ".join(finding.message for finding in studied.specification.findings)
        yield NotOrdered(mark, quantity, "", "hung otherwise", why, 0)
    else:
        for leaf in studied.specification.leaves:
            if not leaf.can_be_had:
                yield _without_hinge(studied, leaf)


def _without_hinge(study: Study, leaf: LeafSpecification) -> NotOrdered:
    quantity = study.opening.quantity
    hinges = leaf.parts["count"].value * quantity
    name = leaf.leaf if len(study.specification.leaves) > 1 else ""
    return NotOrdered(study.opening.mark, quantity, name, "no hinge to be had", NOTHING_TO_BE_HAD, hinges)
