"""What is kept of an opening's study for a whole job: its hinges, its answer in short, and its findings.

A study holds every candidate's geometry; ten thousand of them would fill half a gigabyte. A tally is a few
figures and the findings, and everything that is counted, scheduled and ordered is made from tallies.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from configurator.long_work import Progress, unwatched, watched
from configurator.model import Hinge, Job, JobFacts, Opening
from configurator.order.like_openings import study_key
from configurator.order.not_ordered import NotOrdered, left_out
from configurator.order.studied import NotStudied, Studied, study_or_fault
from configurator.rules.finding import Finding
from configurator.rules.hinge_items import LeafItem, hinge_items
from configurator.rules.specification import LeafSpecification
from configurator.rules.uniform import Chosen
from configurator.rules.usual import fill
from configurator.study import Candidate, Study
from configurator.study.job import hung_on, known_widths, width_does_all

Kept = dict[Any, Finding]
"""Findings already said, by what makes two of them the same."""


@dataclass(frozen=True, slots=True)
class LeafTally:
    """One leaf's hinges and how far it opens on them: inches and degrees, None where there is no width.

    `does` says of each width that was tried whether it does all that the leaf needs.
    """

    leaf: str
    count: int
    height: float
    width: float | None
    complete: bool
    greatest_angle: float | None
    stopped_by: str | None
    clear_width_at_90: float | None
    does: Mapping[float, bool]


@dataclass(frozen=True, slots=True)
class Tally:
    """One mark: what a single opening of it takes, what is left out and why, and its findings.

    `hinges` are those of one opening, all leaves, as the rules count them. `fault` says why it could not be
    studied; there is nothing else then.
    """

    opening: Opening
    items: tuple[LeafItem, ...]
    leaves: tuple[LeafTally, ...]
    hinges: int
    left_out: tuple[NotOrdered, ...]
    findings: tuple[Finding, ...]
    fault: str | None = None

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.opening.mark


def tally_job(job: Job, progress: Progress = unwatched) -> tuple[Tally, ...]:
    """Study every kind of opening of a job and keep a tally of each mark. Raises what `progress` raises."""
    kept: Kept = {}
    known: dict[str, Tally] = {}
    tallies = []
    for opening in watched(job.openings, len(job.openings), progress):
        key = study_key(opening)
        if key not in known:
            known[key] = tally(study_or_fault(opening, job.job), job.job, kept)
        tallies.append(of_another(known[key], opening))
    return tuple(tallies)


def tally(studied: Studied, facts: JobFacts | None = None, kept: Kept | None = None) -> Tally:
    """Return the tally of one study; `kept` holds the findings of other openings, each once.

    `facts` are those the opening was studied with.
    """
    if isinstance(studied, NotStudied):
        return Tally(studied.opening, (), (), 0, left_out(studied), (), studied.fault)
    standard = facts.standard_hinge if facts is not None else None
    leaves = studied.specification.leaves
    found = {} if kept is None else kept
    return Tally(
        opening=studied.opening,
        items=hinge_items(studied.specification, studied.opening),
        leaves=tuple(_leaf(studied, leaf, standard) for leaf in leaves),
        hinges=studied.specification.whole["count"].value if leaves else 0,
        left_out=left_out(studied),
        findings=tuple(found.setdefault(_same(one), one) for one in studied.findings),
    )


def chosen(tallies: Iterable[Tally], facts: JobFacts | None = None) -> tuple[Chosen, ...]:
    """Return every leaf's choice, to ask whether one hinge width would do for all.

    A leaf on which no width does everything is left out: it wants another mend first.
    """
    standard = facts.standard_hinge if facts is not None else None
    asking: dict[int, Callable[[float], bool]] = {}  # like openings share their leaves: each is asked once
    return tuple(
        Chosen(
            one.mark,
            leaf.height,
            leaf.width,
            leaf.count * one.opening.quantity,
            asking.setdefault(id(leaf), _asking(one, leaf, standard)),
        )
        for one in tallies
        for leaf in one.leaves
        if leaf.complete and leaf.width is not None
    )


def of_another(one: Tally, opening: Opening) -> Tally:
    """Return a tally for an opening of which the same was said but its name and place."""
    left = tuple(replace(each, mark=opening.mark) for each in one.left_out)
    return one if opening is one.opening else replace(one, opening=opening, left_out=left)


def _same(one: Finding) -> Any:
    return one.code, one.message, tuple(one.numbers.items())


def _leaf(study: Study, leaf: LeafSpecification, standard: Hinge | None) -> LeafTally:
    parts, width = leaf.parts, leaf.parts["width"].value
    shown = _on_width(study, leaf.leaf, standard, width)
    return LeafTally(
        leaf=leaf.leaf,
        count=parts["count"].value,
        height=parts["height"].value,
        width=width,
        complete=leaf.complete,
        greatest_angle=None if shown is None else shown.greatest_angle,
        stopped_by=None if shown is None or shown.stopped_by is None else shown.stopped_by.kind,
        clear_width_at_90=None if shown is None else shown.clear_width_at_90,
        does=known_widths(study, leaf.leaf, standard),
    )


def _on_width(study: Study, leaf: str, standard: Hinge | None, width: float | None) -> Candidate | None:
    """Return the leaf on the hinge to be ordered; None where that cannot be mounted at all."""
    if width is None:
        return None
    compared = (one for one in study.candidates if (one.leaf, one.hinge_width) == (leaf, width))
    return next(compared, None) or hung_on(study.filled, leaf, standard, width)


def _asking(one: Tally, leaf: LeafTally, standard: Hinge | None) -> Callable[[float], bool]:
    known = dict(leaf.does)

    def answer(width: float) -> bool:
        if width not in known:
            known[width] = width_does_all(fill(one.opening), leaf.leaf, standard, width)
        return known[width]

    return answer
