"""Openings, or leaves of them, for which nothing is ordered, each with why: nothing is silently missing."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

from configurator.order.studied import NotStudied, Studied
from configurator.rules.specification import LeafSpecification
from configurator.study.records import Study

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


def left_out(studied: Studied) -> tuple[NotOrdered, ...]:
    """Return what an order leaves out of one mark; nothing where all its hinges can be ordered."""
    return tuple(_left_out(studied))


def _left_out(studied: Studied) -> Iterator[NotOrdered]:
    mark, quantity = studied.opening.mark, studied.opening.quantity
    if isinstance(studied, NotStudied):
        field = f"{studied.field}: " if studied.field else ""
        yield NotOrdered(mark, quantity, "", "not studied", field + studied.fault, None)
    elif not studied.specification.leaves:
        yield NotOrdered(mark, quantity, "", "hung otherwise", _why_hung_otherwise(studied), 0)
    else:
        for leaf in studied.specification.leaves:
            if not leaf.can_be_had:
                yield _without_hinge(studied, leaf)


def _without_hinge(study: Study, leaf: LeafSpecification) -> NotOrdered:
    quantity = study.opening.quantity
    hinges = leaf.parts["count"].value * quantity
    name = leaf.leaf if len(study.specification.leaves) > 1 else ""
    return NotOrdered(study.opening.mark, quantity, name, "no hinge to be had", NOTHING_TO_BE_HAD, hinges)


def _why_hung_otherwise(study: Study) -> str:
    return " ".join(finding.message for finding in study.specification.findings)
