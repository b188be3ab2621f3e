"""Openings studied for a job, or kept with their fault; and what an order leaves out, with why."""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from typing import Any, Literal

from configurator.model import JobFacts, Opening
from configurator.rules.finding import Finding
from configurator.rules.specification import LeafSpecification
from configurator.study import Study, study


@dataclass(frozen=True, slots=True)
class NotStudied:
    """An opening that has no answer, and why; `field` is the field at fault, or nothing."""

    opening: Opening
    field: str
    fault: str


Studied = Study | NotStudied
Why = Literal["hung otherwise", "no hinge to be had", "not studied", "held"]
NOTHING_TO_BE_HAD = (
    "No hinge width to be had does what this opening asks. Change the opening or the width first."
)

HOW_TO_RELEASE = "Mend this, or say: order it all the same."


@dataclass(frozen=True, slots=True)
class NotOrdered:
    """One mark that the order leaves out: how many openings, which leaf ("" for all of it), and why.

    `hinges` are those left out, None where nobody can say how many. `codes` are the errors that hold it.
    """

    mark: str
    quantity: int
    leaf: str
    why: Why
    words: str
    hinges: int | None
    codes: tuple[str, ...] = ()

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written."""
        return {
            "mark": self.mark,
            "quantity": self.quantity,
            "leaf": self.leaf or None,
            "why": self.why,
            "message": self.words,
            "hinges": self.hinges,
            "codes": list(self.codes),
        }


def study_or_fault(opening: Opening, facts: JobFacts | None = None, *, compared: bool = True) -> Studied:
    """Study one opening as `study` does; what is missing, or refused by the plan, comes back as its fault."""
    try:
        return study(opening, facts, compared=compared)
    except ValueError as error:
        return NotStudied(opening, getattr(error, "field", None) or "", str(error))


def held(opening: Opening, errors: Iterable[Finding], hinges: int) -> NotOrdered:
    """Return the entry of an opening whose hinges wait until its errors are mended or accepted."""
    found = tuple(errors)
    words = " ".join(dict.fromkeys(one.message for one in found))
    codes = tuple(dict.fromkeys(one.code for one in found))
    return NotOrdered(opening.mark, opening.quantity, "", "held", f"{words} {HOW_TO_RELEASE}", hinges, codes)


def with_despite(
    openings: Iterable[Opening], marks: Collection[str], codes: Collection[str], without: Collection[str] = ()
) -> tuple[Opening, ...]:
    """Return openings, those of the marks ordered in spite of the codes too, and no more of `without`."""
    return tuple(_despite(one, codes, without) if one.mark in marks else one for one in openings)


def _despite(opening: Opening, codes: Collection[str], without: Collection[str]) -> Opening:
    kept = tuple(one for one in dict.fromkeys((*opening.order_despite, *codes)) if one not in without)
    return opening.model_copy(update={"order_despite": kept})


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
