"""The order as it is worked on: what is counted, with which spare allowance and prices. No Qt."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from configurator.documents import papers
from configurator.long_work import Progress
from configurator.model import Job, Opening, OrderFacts, Revision
from configurator.order.book import TallyBook
from configurator.order.lines import NO_SPARE, Spare, parse_spare
from configurator.order.order_findings import OrderFinding
from configurator.order.price_list import PriceList, PriceListError, load_prices
from configurator.order.prices import price_order
from configurator.order.revisions import (
    Changes,
    changes_since,
    freeze,
    marked_ordered,
    spare_of,
    with_revision,
)
from configurator.order.substitute import Size, Substitution, substitute
from configurator.order.take_off import take_off
from configurator.order.uniform import made_uniform, offered_width, uniform
from configurator.rules.hinge.sizes import pairs
from configurator.rules.wording import counted as counted_words


@dataclass(frozen=True, slots=True)
class Counted(papers.Counted):
    """A job counted, in words; `price_trouble` says why a price list does not fit the order."""

    price_trouble: str = ""

    def sums(self) -> str:
        """Say the proof in one line, as `Lines 252 = openings 252`, and what is ordered in all."""
        sums = self.order.reconciliation
        less = f" less {sums.left_out:,} not ordered" if sums.left_out else ""
        proof = f"Lines {sums.by_lines:,} {'=' if sums.agrees else '≠'} openings {sums.by_openings:,}{less}."
        if not sums.agrees:
            proof += f" They differ at {', '.join(sums.differing) or 'no one mark'}: do not order."
        spare = f", {sums.spare:,} of them spare" if sums.spare else ""
        hinges = self.order.hinges
        return f"{proof} {hinges:,} {'hinge' if hinges == 1 else 'hinges'} = {pairs(hinges)}{spare}."

    def warned(self) -> str:
        """Say that there are errors, and openings that the order leaves out; empty where neither."""
        errors = sum(1 for one in self.order.findings if one.finding.severity == "error")
        left = sum(one.quantity for one in self.order.not_ordered if not one.leaf)
        leaves = sum(one.quantity for one in self.order.not_ordered if one.leaf)
        out = (
            counted_words(left, "opening", "openings") if left else "",
            counted_words(leaves, "single leaf", "single leaves") if leaves else "",
        )
        words = (
            f"{counted_words(errors, 'error', 'errors')} to heed before ordering." if errors else "",
            f"Nothing is ordered for {' and '.join(filter(None, out))}." if left or leaves else "",
        )
        return " ".join(filter(None, words))

    def cost(self) -> str:
        """Say what it costs, or why that cannot be said; empty without prices."""
        if self.priced is None:
            return self.price_trouble
        return " ".join(filter(None, (self.priced.words(), self.priced.passed_over)))


@dataclass(frozen=True, slots=True)
class Offer:
    """One width for all of a height: the finding, and what the whole order costs now and then.

    `openings` are those of the job with that width; none where no one width does for all.
    """

    finding: OrderFinding
    openings: tuple[Opening, ...] = ()
    cost: str = ""


class Desk:
    """Counts a job, anew after every change, with the allowance and the prices that are set."""

    def __init__(self) -> None:
        self.book = TallyBook()
        self.spare: Spare = NO_SPARE
        self.prices: PriceList | None = None
        self.price_file = ""
        self.remembered: str | None = None
        """How the job names the list that was read last, or tried to be."""

    def unknown(self, job: Job) -> list[Opening]:
        """Return the openings of a job that are not worked out yet."""
        self.book.use_facts(job.job)
        self.book.forget_others(job.openings)
        return [opening for opening in job.openings if self.book.known(opening) is None]

    def count(self, job: Job) -> Counted:
        """Count a job; what is not worked out yet is worked out now."""
        self.book.use_facts(job.job)
        tallies = tuple(self.book.of(opening) for opening in job.openings)
        order = take_off(tallies, job.job, self.spare)
        return self._priced(Counted(job, tallies, order))

    def set_spare(self, text: str) -> None:
        """Take another spare allowance; nothing for an empty text. Raises ValueError."""
        self.spare = parse_spare(text) if text.strip() else NO_SPARE

    def take_prices(self, path: Path) -> None:
        """Read a price list. Raises PriceListError, and then the list before it stays."""
        self.prices, self.price_file = load_prices(path), path.name

    def follow(self, job: Job, job_file: Path | None) -> None:
        """Use the price list that a job remembers, or none. Raises PriceListError where it cannot be read."""
        named = job.order.price_list
        if named == self.remembered:
            return
        self.remembered = named
        self.drop_prices()
        if named is not None:
            self.take_prices(Path.cwd() / named if job_file is None else job_file.absolute().parent / named)

    def drop_prices(self) -> None:
        """Do without prices."""
        self.prices, self.price_file = None, ""

    def offers(self, counted: Counted, progress: Progress) -> tuple[Offer, ...]:
        """Ask whether one width would do for all, and what that costs. Raises Cancelled."""
        found = uniform(counted.tallies, counted.job.job, progress)
        return tuple(self._offer(one, counted) for one in found)

    def substitution(self, counted: Counted, has: Size, wanted: Size, progress: Progress) -> Substitution:
        """Try a hinge size that is there for the one ordered. Raises Cancelled."""
        return substitute(counted.tallies, has, wanted, counted.job.job, progress)

    def _priced(self, counted: Counted) -> Counted:
        if self.prices is None:
            return counted
        job, tallies, order = counted.job, counted.tallies, counted.order
        try:
            return Counted(job, tallies, order, price_order(order.lines, self.prices, order.other_ways))
        except PriceListError as error:
            faults = "; ".join(str(fault) for fault in error.faults)
            return Counted(job, tallies, order, None, f"{self.price_file} does not fit this order: {faults}")

    def _offer(self, finding: OrderFinding, counted: Counted) -> Offer:
        if offered_width(finding) is None:
            return Offer(finding)
        made = made_uniform(counted.job.openings, finding)
        return Offer(finding, made, self._cost_of(made, counted))

    def _cost_of(self, made: Sequence[Opening], counted: Counted) -> str:
        """Say what the order costs now and with other openings, where the list prices both."""
        if counted.priced is None:
            return ""
        book = TallyBook(counted.job.job)
        tallies = tuple(self.book.known(each) or book.of(each) for each in made)
        after = self._priced(Counted(counted.job, tallies, take_off(tallies, counted.job.job, self.spare)))
        if after.priced is None:
            return after.price_trouble
        return f"Now: {counted.priced.words()} Then: {after.priced.words()}"


def head_value(name: str, text: str) -> Any:
    """Return what was typed in a field of the order's head; None where nothing was. Raises ValueError."""
    typed = text.strip()
    if name != "margin" or not typed:
        return typed or None
    try:
        number = float(typed.removesuffix("%"))
    except ValueError:
        number = -1.0
    if not 0 <= number < 100:
        raise ValueError(f"A margin is from 0 to less than 100 per cent; {typed[:20]} was typed.")
    return number


def with_head(job: Job, name: str, value: Any) -> Job:
    """Return the job with another value in the head of its order. Raises ValueError where it cannot be."""
    said = {**job.order.model_dump(exclude_unset=True), name: value}
    order = OrderFacts.model_validate({key: each for key, each in said.items() if each is not None})
    return job.model_copy(update={"order": order})


def frozen(counted: Counted, date: str, note: str, mark_them: bool) -> tuple[Job, int]:
    """Return the job with its order kept as a revision, and the number of that. Raises RevisionError.

    `mark_them` notes the openings that it serves as ordered.
    """
    revision = freeze(counted.job, counted.order, date, note.strip() or None)
    job = marked_ordered(counted.job, counted.order) if mark_them else counted.job
    return with_revision(job, revision), revision.number


def changes_of(revision: Revision, counted: Counted) -> Changes:
    """Return what changed since a revision, with its own spare allowance. Raises RevisionError."""
    order = take_off(counted.tallies, counted.job.job, spare_of(revision))
    return changes_since(revision, counted.job, order)
