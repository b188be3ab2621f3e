"""A tally: what a whole job keeps of each opening's study, its hinges, its answer in short, its findings.

A study holds every candidate's geometry; ten thousand of them would fill half a gigabyte. A tally is a few
figures and the findings, and everything that is counted, scheduled and ordered is made from tallies. Openings
that differ in name and place only share one study.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from configurator.model import Hinge, JobFacts, Opening
from configurator.order.studied import (
    NotOrdered,
    NotStudied,
    Studied,
    held,
    left_out,
    study_or_fault,
)
from configurator.rules.filling.usual import fill
from configurator.rules.filling.ways import way_hung_on
from configurator.rules.finding import Finding, holding
from configurator.rules.hinge.answers import tried
from configurator.rules.hinge.uniform import Chosen
from configurator.rules.hinge_items import LeafItem, hinge_items
from configurator.rules.specification import LeafSpecification
from configurator.study import Study
from configurator.study.candidate import Candidate
from configurator.study.job import known_widths, width_does_all
from configurator.study.run import LeafHanger

KnownFindings = dict[Any, Finding]
"""Findings of other openings, by what makes two of them the same: each is held once."""
ABOUT_ITS_PLACE = frozenset(
    {
        "mark",
        "location",
        "notes",
        "questions",
        "order_despite",
        "level",
        "details",
        "remarks",
        "other_columns",
        "background",
        "global_id",
    }
)
"""Keys of an opening that say where it is and what is written about it."""
NOT_STUDIED = ABOUT_ITS_PLACE | {"status", "order_state", "hardware_set", "glass"}
"""Keys of an opening that no answer depends on."""


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
    """One mark: what a single opening of it takes, what cannot be had and why, and its findings.

    `hinges` are those of one opening, all leaves, as the rules count them. `fault` says why it could not be
    studied; there is nothing else then. `items` are what it takes, `ordered` what an order may have of them.
    `otherwise` is how far each leaf opens that hangs on no butts, on the side on which it opens less.
    """

    opening: Opening
    items: tuple[LeafItem, ...]
    leaves: tuple[LeafTally, ...]
    hinges: int
    left_out: tuple[NotOrdered, ...]
    findings: tuple[Finding, ...]
    fault: str | None = None
    otherwise: tuple[LeafTally, ...] = ()

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.opening.mark

    @property
    def holding(self) -> tuple[Finding, ...]:
        """The errors that hold its order."""
        return holding(self.findings, self.opening.order_despite) if self.items or self.otherwise else ()

    @property
    def accepted(self) -> tuple[Finding, ...]:
        """The errors that the user said to order it in spite of."""
        despite = self.opening.order_despite
        return tuple(one for one in self.findings if one.severity == "error" and one.code in despite)

    @property
    def ordered(self) -> tuple[LeafItem, ...]:
        """The hinges to order for one opening; none while an error holds it."""
        return () if self.holding else self.items

    @property
    def not_ordered(self) -> tuple[NotOrdered, ...]:
        """What an order leaves out of it: what cannot be had, and what an error holds."""
        if not (errors := self.holding):
            return self.left_out
        hinges = sum(item.count for item in self.items) * self.opening.quantity
        # That it hangs otherwise, and is counted on a line of its own, is not so while it is held.
        others = (one for one in self.left_out if one.why != "hung otherwise")
        return (*others, held(self.opening, errors, hinges))


def study_key(opening: Opening) -> str:
    """Return what the answers of an opening depend on: two openings with one key have the same answers.

    A value that is given and one that is left out differ, though the usual value may be the same. The status
    counts only with a width given by hand: one finding asks whether that width was ordered.
    """
    given = opening.model_dump_json(exclude=set(NOT_STUDIED), exclude_defaults=True)
    by_hand = opening.hinge is not None and opening.hinge.width is not None
    return f"{given} settled" if by_hand and opening.settled else given


def like_key(opening: Opening) -> str:
    """Return what openings are grouped by: everything but quantity and what is about their place."""
    return opening.model_dump_json(exclude={*ABOUT_ITS_PLACE, "quantity"}, exclude_defaults=True)


def tally(studied: Studied, known: KnownFindings | None = None) -> Tally:
    """Return the tally of one study; `known` holds the findings of other openings."""
    if isinstance(studied, NotStudied):
        return Tally(studied.opening, (), (), 0, left_out(studied), (), studied.fault)
    leaves = studied.specification.leaves
    known = {} if known is None else known
    hung = tuple(_hung_otherwise(studied))
    return Tally(
        opening=studied.opening,
        items=hinge_items(studied.specification, studied.opening),
        leaves=tuple(_leaf(studied, leaf) for leaf in leaves),
        hinges=studied.specification.whole["count"].value if leaves else 0,
        left_out=left_out(studied),
        findings=held_once((*studied.findings, *(one for sides in hung for one in _findings(sides))), known),
        otherwise=tuple(_otherwise(sides) for sides in hung),
    )


def _hung_otherwise(study: Study) -> Iterator[tuple[Candidate, ...]]:
    """Yield each leaf on what the opening hangs on besides butts, once for each side it swings to."""
    if (given := way_hung_on(study.opening)) is not None:
        yield from (study.hanger.in_way(leaf.name, given) for leaf in study.leaves)


def _findings(sides: tuple[Candidate, ...]) -> Iterator[Finding]:
    """Yield what is to be said of a leaf that is ordered so, whether it is compared or not."""
    for side in sides:
        yield from side.findings


def _otherwise(sides: tuple[Candidate, ...]) -> LeafTally:
    """Return how far a leaf opens on no butts, on the side on which it opens less."""
    shown = min(sides, key=lambda one: one.greatest_angle)
    return LeafTally(
        leaf=shown.leaf,
        count=0,
        height=0.0,
        width=None,
        complete=True,
        greatest_angle=shown.greatest_angle,
        stopped_by=None if shown.stopped_by is None else shown.stopped_by.kind,
        clear_width_at_90=shown.clear_width_at_90,
        does={},
    )


def tally_of(opening: Opening, facts: JobFacts | None, known: KnownFindings | None = None) -> Tally:
    """Study an opening and return its tally alone; what is missing, or refused by the plan, is its fault."""
    studied = study_or_fault(opening, facts, compared=False)
    found = tally(studied, known)
    if isinstance(studied, Study):
        studied.hanger.let_go()
    return found


def leaf_choices(tallies: Iterable[Tally], facts: JobFacts | None = None) -> tuple[Chosen, ...]:
    """Return every ordered leaf's choice, to ask whether one hinge width would do for all."""
    standard = facts.standard_hinge if facts is not None else None
    asking: dict[int, Callable[[float], bool]] = {}  # like openings share their leaves: each is asked once
    return tuple(
        Chosen(
            one.mark,
            leaf.height,
            leaf.width,
            leaf.count * one.opening.quantity,
            asking.setdefault(id(leaf), _asking(one, leaf, standard)),
            leaf.complete,
        )
        for one in tallies
        if one.ordered
        for leaf in one.leaves
        if leaf.width is not None
    )


def for_opening(one: Tally, opening: Opening) -> Tally:
    """Return the tally for an opening that differs in its name and place only."""
    left = tuple(replace(each, mark=opening.mark) for each in one.left_out)
    return one if opening is one.opening else replace(one, opening=opening, left_out=left)


def held_once(findings: Sequence[Finding], known: KnownFindings) -> tuple[Finding, ...]:
    """Return findings, each that another opening has too as the very record of that one."""
    same = ((one.code, one.sentence, tuple(one.numbers.items())) for one in findings)
    return tuple(known.setdefault(key, one) for key, one in zip(same, findings, strict=True))


def _leaf(study: Study, leaf: LeafSpecification) -> LeafTally:
    parts, width = leaf.parts, leaf.parts["width"].value
    # No width, or one that cannot be mounted at all, has no answer to show.
    found = None if width is None else tried(study.hanger, leaf.leaf, width)
    shown = None if isinstance(found, str) else found
    return LeafTally(
        leaf=leaf.leaf,
        count=parts["count"].value,
        height=parts["height"].value,
        width=width,
        complete=leaf.complete,
        greatest_angle=None if shown is None else shown.greatest_angle,
        stopped_by=None if shown is None or shown.stopped_by is None else shown.stopped_by.kind,
        clear_width_at_90=None if shown is None else shown.clear_width_at_90,
        does=known_widths(study.hanger, leaf.leaf),
    )


def _asking(one: Tally, leaf: LeafTally, standard: Hinge | None) -> Callable[[float], bool]:
    known = dict(leaf.does)

    def answer(width: float) -> bool:
        if width not in known:
            known[width] = width_does_all(LeafHanger(fill(one.opening), standard), leaf.leaf, width)
        return known[width]

    return answer
