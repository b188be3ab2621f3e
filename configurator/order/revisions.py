"""Freezing an order as a revision of the job, and what has changed since: what to order, what to return."""

import hashlib
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from fractions import Fraction
from typing import Any, Literal

from pydantic import ValidationError

from configurator.model import Issue, Job, Opening, OrderedLine, OrderedWay, Revision
from configurator.model.faults import Fault, faults_of
from configurator.order.lines import NO_SPARE, OrderLine, Spare, parse_spare
from configurator.order.other_ways import WayItem, WayLine
from configurator.order.take_off import TakeOff
from configurator.order.tally import NOT_STUDIED
from configurator.rules.hinge_items import HingeItem, sort_key
from configurator.rules.wording import counted

NOT_ABOUT_THE_DOOR = set(NOT_STUDIED - {"mark"})
"""Keys of an opening that may change without the opening being another."""
Kind = Literal["new", "gone", "other hinges", "held by an error", "changed, same hinges"]
SAME: Kind = "changed, same hinges"
Taken = tuple[tuple[HingeItem, int], ...]
"""Hinges of one mark by what they are, all its openings together."""


class RevisionError(ValueError):
    """An order that cannot be frozen, or a revision that cannot be read; `fault` names the field."""

    def __init__(self, fault: Fault) -> None:
        super().__init__(str(fault))
        self.fault = fault


@dataclass(frozen=True, slots=True)
class CountChange:
    """How many of a thing were ordered and how many are wanted now."""

    was: int
    now: int

    @property
    def order(self) -> int:
        """How many are still to be ordered."""
        return max(self.now - self.was, 0)

    @property
    def back(self) -> int:
        """How many were ordered that nothing takes any more."""
        return max(self.was - self.now, 0)


@dataclass(frozen=True, slots=True)
class LineChange(CountChange):
    """The change of one kind of hinge, spare ones included."""

    hinge: HingeItem


@dataclass(frozen=True, slots=True)
class WayChange(CountChange):
    """The change of one thing that is no butt."""

    what: WayItem


@dataclass(frozen=True, slots=True)
class OpeningChange:
    """One mark that is not as it was: what it took and what it takes, and wherein these differ."""

    mark: str
    kind: Kind
    was: Taken
    now: Taken
    differs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Changes:
    """All that changed since a revision; nothing in it where nothing did.

    `same_hinges` are marks that are not as they were and take the same products. `ways` is what is no butt;
    None where the revision did not keep it.
    """

    number: int
    lines: tuple[LineChange, ...]
    openings: tuple[OpeningChange, ...]
    same_hinges: tuple[str, ...] = ()
    ways: tuple[WayChange, ...] | None = ()

    @property
    def order(self) -> int:
        """Hinges still to be ordered, all kinds."""
        return sum(line.order for line in self.lines)

    @property
    def back(self) -> int:
        """Hinges to be returned or kept as stock, all kinds."""
        return sum(line.back for line in self.lines)

    def words(self) -> str:
        """Say in one sentence what changed."""
        if not self.lines and not self.openings and not self.ways:
            return f"Nothing has changed since revision {self.number}.{self._way_words()}{self._same_words()}"
        many = len(self.openings)
        openings = {0: "no opening has changed", 1: "1 opening is not as it was"}.get(
            many, f"{many} openings are not as they were"
        )
        return (
            f"Since revision {self.number}, {openings}: {counted(self.order, 'hinge', 'hinges')} more to "
            f"order, {self.back} no longer wanted.{self._way_words()}{self._same_words()}"
        )

    def _way_words(self) -> str:
        if self.ways is None:
            return " What hangs on no butts was not kept in it: compare that by hand."
        order, back = sum(one.order for one in self.ways), sum(one.back for one in self.ways)
        return f" Of what is no butt {order} more to order, {back} no longer wanted." if self.ways else ""

    def _same_words(self) -> str:
        if not self.same_hinges:
            return ""
        many = counted(len(self.same_hinges), "opening was", "openings were")
        return (
            f" {many} described anew and {'takes' if len(self.same_hinges) == 1 else 'take'} the same hinges."
        )


def freeze(job: Job, order: TakeOff, date: str | None = None, note: str | None = None) -> Revision:
    """Return an order as the job's next revision.

    Raises RevisionError where its sums do not agree, or the note or the number is none that can be kept.
    """
    if not order.reconciliation.agrees:
        raise RevisionError(Fault("", order.reconciliation.words()))
    given = {
        "number": max((one.number for one in job.revisions), default=0) + 1,
        "date": date,
        "note": note,
        "spare": order.spare.written() or None,
        "lines": tuple(part for line in order.lines for part in _frozen(line)),
        "other_ways": tuple(_frozen_way(line) for line in order.other_ways),
        "openings": {opening.mark: print_of(opening) for opening in job.openings},
    }
    try:
        return Revision.model_validate({key: value for key, value in given.items() if value is not None})
    except ValidationError as error:
        raise RevisionError(faults_of(error, Revision)[0]) from None


def marked_ordered(job: Job, order: TakeOff) -> Job:
    """Return the job with every opening that a line of the order serves noted as ordered."""
    served = {mark for line in order.lines for mark in line.by_mark}
    served |= {mark for line in order.other_ways for mark in line.by_mark}
    openings = (
        # A state is one of three words; checking ten thousand openings again would take seconds.
        one.model_copy(update={"order_state": "ordered"})
        if one.mark in served and one.order_state == "not ordered"
        else one
        for one in job.openings
    )
    return job.model_copy(update={"openings": tuple(openings)})


def with_revision(job: Job, revision: Revision) -> Job:
    """Return the job with one more revision. Raises RevisionError where its number is not the next."""
    if any(one.number >= revision.number for one in job.revisions):
        raise RevisionError(
            Fault("revisions", f"there is a revision {revision.number} or a later one already")
        )
    # Both records are checked already; checking ten thousand openings again would take a second.
    return job.model_copy(update={"revisions": (*job.revisions, revision)})


def spare_of(revision: Revision) -> Spare:
    """Return the allowance a revision was ordered with. Raises RevisionError where it cannot be read."""
    try:
        return NO_SPARE if revision.spare is None else parse_spare(revision.spare)
    except ValueError as error:
        raise RevisionError(Fault(f"revision {revision.number}, spare", str(error))) from None


def changes_since(revision: Revision, job: Job, order: TakeOff) -> Changes:
    """Return what changed since a revision, line by line and mark by mark.

    `order` is the job's order now, made with the same spare allowance. Raises RevisionError where the
    revision's screws are no numbers.
    """
    was, now = _quantities(revision), {line.hinge: line.quantity for line in order.lines}
    lines = (
        LineChange(was.get(hinge, 0), now.get(hinge, 0), hinge)
        for hinge in sorted({**was, **now}, key=sort_key)
    )
    before, after = (
        _by_mark(_thawed_marks(revision)),
        _by_mark({one.hinge: one.by_mark for one in order.lines}),
    )
    held = {one.mark for one in order.not_ordered if one.why == "held"}
    ways_then, ways_now = _ways_then(revision), _products({one.what: one.by_mark for one in order.other_ways})
    other = _marks_otherwise(ways_then, ways_now)
    openings = tuple(_opening_changes(revision, job, before, after, held, other))
    return Changes(
        revision.number,
        tuple(line for line in lines if line.was != line.now),
        tuple(one for one in openings if one.kind != SAME),
        tuple(one.mark for one in openings if one.kind == SAME),
        None if ways_then is None else tuple(_way_changes(ways_then, ways_now)),
    )


def standing(job: Job, order: TakeOff) -> str:
    """Say which revision an order is, or that it is no longer the last one; empty where none was kept.

    A revision that cannot be read stops no order; the words say so.
    """
    if not job.revisions:
        return ""
    last = job.revisions[-1]
    named = f"revision {last.number} of {last.date}" if last.date else f"revision {last.number}"
    try:
        was = _quantities(last)
    except RevisionError:
        return f"{named} cannot be read"
    now = {line.hinge: line.quantity for line in order.lines}
    return f"as kept in {named}" if was == now else f"not as kept in {named}"


def issues_of(opening: Opening, revisions: Sequence[Revision]) -> tuple[Issue, ...]:
    """Return the job's revisions as the sheets of an opening tell them, the first that has it first.

    What was changed since the last that has it is told as one more, without a number: it did not go out yet.
    """
    found, before = list[Issue](), ""
    for one in revisions:
        now = one.openings.get(opening.mark, "")
        if now or before:
            found.append(Issue(str(one.number), one.date or "", one.note or "", now != before))
        before = now
    if found and print_of(opening) != before:
        found.append(Issue("", "", "changed since, not issued", True))
    return tuple(found)


def print_of(opening: Opening) -> str:
    """Return a print of the opening itself: where the print changed, the opening did.

    Usual values leave no trace in it, so that keys which a later program adds do not change it.
    """
    given = opening.model_dump_json(exclude=NOT_ABOUT_THE_DOOR, exclude_defaults=True)
    return hashlib.sha256(given.encode()).hexdigest()[:16]


def _frozen(line: OrderLine) -> Iterator[OrderedLine]:
    """Yield a line for each way the product is taken, which keeps label and screws; spare on the first."""
    for place, (hinge, marks) in enumerate(line.parts.items()):
        given: dict[str, Any] = {each.name: getattr(hinge, each.name) for each in fields(HingeItem)}
        given["screws"] = {kind: str(number) for kind, number in hinge.screws}
        given |= {"spare": 0 if place else line.spare, "marks": dict(marks)}
        yield OrderedLine.model_validate({key: value for key, value in given.items() if value is not None})


def _thawed(line: OrderedLine) -> HingeItem:
    """Return the product of a frozen line. Raises RevisionError where its screws are no numbers."""
    given = {each.name: getattr(line, each.name) for each in fields(HingeItem)}
    try:
        screws = tuple((kind, Fraction(number)) for kind, number in sorted(line.screws.items()))
    except (ValueError, ZeroDivisionError):
        raise RevisionError(Fault("screws", f"{line.screws} are no numbers of screws")) from None
    return HingeItem(**given | {"screws": screws}).product


_Ways = Mapping[WayItem, Mapping[str, int]]
"""How many each mark takes of what is no butt."""


def _frozen_way(line: WayLine) -> OrderedWay:
    given = {each.name: getattr(line.what, each.name) for each in fields(WayItem)}
    given |= {"wired": line.what.wired or None, "marks": dict(line.by_mark)}
    return OrderedWay.model_validate({key: value for key, value in given.items() if value is not None})


def _ways_then(revision: Revision) -> _Ways | None:
    """Return what was ordered that is no butt; None of a revision that did not keep it."""
    if revision.other_ways is None:
        return None
    kept = (
        ({each.name: getattr(one, each.name) for each in fields(WayItem)}, one) for one in revision.other_ways
    )
    return _products({WayItem(**given | {"wired": one.wired or ""}): one.marks for given, one in kept})


def _products(ways: _Ways) -> _Ways:
    """Return the same by what is sold: an axis that was typed as it is usual makes no other thing."""
    found: dict[WayItem, Counter[str]] = {}
    for what, marks in ways.items():
        found.setdefault(replace(what, axis_assumed=False), Counter()).update(marks)
    return found


def _way_changes(was: _Ways, now: _Ways) -> Iterator[WayChange]:
    for what in dict.fromkeys((*was, *now)):
        then, wanted = (sum(ways.get(what, {}).values()) for ways in (was, now))
        if then != wanted:
            yield WayChange(then, wanted, what)


def _marks_otherwise(was: _Ways | None, now: _Ways) -> frozenset[str]:
    """Return the marks that take other things that are no butts than they did; none where nobody kept it."""
    if was is None:
        return frozenset()
    pairs = [{(what, *one) for what, marks in ways.items() for one in marks.items()} for ways in (was, now)]
    return frozenset(mark for _, mark, _ in pairs[0] ^ pairs[1])


def _quantities(revision: Revision) -> dict[HingeItem, int]:
    """Return how many of each product were ordered, spare ones included."""
    found: Counter[HingeItem] = Counter()
    for line in revision.lines:
        found[_thawed(line)] += sum(line.marks.values()) + line.spare
    return found


def _thawed_marks(revision: Revision) -> dict[HingeItem, Counter[str]]:
    found: dict[HingeItem, Counter[str]] = {}
    for line in revision.lines:
        found.setdefault(_thawed(line), Counter()).update(line.marks)
    return found


def _by_mark(lines: Mapping[HingeItem, Mapping[str, int]]) -> dict[str, Taken]:
    found: dict[str, Taken] = {}
    for hinge in sorted(lines, key=sort_key):
        for mark, count in lines[hinge].items():
            found[mark] = (*found.get(mark, ()), (hinge, count))
    return found


def _opening_changes(
    revision: Revision,
    job: Job,
    was: Mapping[str, Taken],
    now: Mapping[str, Taken],
    held: Collection[str],
    other: Collection[str],
) -> Iterator[OpeningChange]:
    """Yield every mark that is not as it was; `other` are those that take other things that are no butts."""
    prints = {opening.mark: opening for opening in job.openings}
    for mark in dict.fromkeys((*revision.openings, *prints)):
        before, after = was.get(mark, ()), now.get(mark, ())
        if mark not in revision.openings:
            yield OpeningChange(mark, "new", before, after, ())
        elif mark not in prints:
            yield OpeningChange(mark, "gone", before, after, ())
        elif before != after or mark in other:
            kind: Kind = "held by an error" if mark in held else "other hinges"
            hung = ("what it hangs on",) if mark in other else ()
            yield OpeningChange(mark, kind, before, after, (*_differs(before, after), *hung))
        elif print_of(prints[mark]) != revision.openings[mark]:
            yield OpeningChange(mark, SAME, before, after, ())


def _differs(was: Taken, now: Taken) -> Iterator[str]:
    """Name wherein the hinges of one mark differ: what they are, and how many."""
    if sum(count for _, count in was) != sum(count for _, count in now):
        yield "quantity"
    for each in fields(HingeItem):
        values = [{getattr(hinge, each.name) for hinge, _ in taken} for taken in (was, now)]
        if was and now and values[0] != values[1]:
            yield each.name.replace("_", " ")
