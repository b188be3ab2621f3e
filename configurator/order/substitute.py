"""Substitution: a hinge size on the shelf for the one ordered; where it will do, where not, and why."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from configurator.long_work import Progress, unwatched, watched
from configurator.model import JobFacts, Opening
from configurator.order.book import TallyBook
from configurator.order.tally import Tally
from configurator.rules.finding import Finding
from configurator.rules.wording import counted, size
from configurator.units import TOLERANCE

Size = tuple[float, float]
"""Height and open width of a hinge, inches."""
NOT_ENOUGH = frozenset({"hinge too low", "width by hand"})
"""Warnings by which a hinge is less than the opening takes."""
NOT_ASKED = frozenset({"hinge size swapped"})
"""A size that somebody holds in the hand was not swapped in typing."""


@dataclass(frozen=True, slots=True)
class Instead:
    """One mark with the hinge that is there: whether it will do, and what is then said that was not before.

    `hinges` are those of all its openings; `opening` and `tally` are the mark with that hinge.
    """

    mark: str
    hinges: int
    does: bool
    findings: tuple[Finding, ...]
    fault: str
    opening: Opening
    tally: Tally

    @property
    def why(self) -> str:
        """Why it will not do, or what to heed where it does; empty where there is nothing."""
        return self.fault or " ".join(dict.fromkeys(one.message for one in self.findings))

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written."""
        return {
            "mark": self.mark,
            "hinges": self.hinges,
            "will_do": self.does,
            "why": self.why or None,
            "findings": [one.as_data() for one in self.findings],
        }


@dataclass(frozen=True, slots=True)
class Substitution:
    """What is there, what it stands in for, and every mark that takes that; `tallies` are of the whole job.

    Marks where it will do have the hinge that is there, and all others what they had.
    """

    has: Size
    wanted: Size
    marks: tuple[Instead, ...]
    tallies: tuple[Tally, ...]

    @property
    def openings(self) -> tuple[Opening, ...]:
        """The openings of the job with the hinge that is there wherever it will do."""
        return tuple(one.opening for one in self.tallies)

    @property
    def doing(self) -> tuple[Instead, ...]:
        """The marks where it will do."""
        return tuple(one for one in self.marks if one.does)

    def words(self) -> str:
        """Say for how many hinges it will do, and where it will not."""
        has, wanted = size(*self.has), size(*self.wanted)
        if not self.marks:
            return f"No opening takes {wanted}."
        hinges, doing = sum(one.hinges for one in self.marks), sum(one.hinges for one in self.doing)
        will = f"{has} will do for {doing} of {counted(hinges, 'hinge', 'hinges')} {wanted}"
        against = [one.mark for one in self.marks if not one.does]
        return f"{will}; not for {', '.join(against)}." if against else f"{will}: everywhere."

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written."""
        return {
            "have": size(*self.has),
            "for": size(*self.wanted),
            "message": self.words(),
            "openings": [one.as_data() for one in self.marks],
        }


def substitute(
    tallies: Sequence[Tally],
    has: Size,
    wanted: Size,
    facts: JobFacts | None = None,
    progress: Progress = unwatched,
) -> Substitution:
    """Work a job out with the hinge size that is there wherever the wanted one is taken.

    A mark will do where nothing stands against it, and its leaves do all that they did. Raises what
    `progress` raises.
    """
    book = TallyBook(facts)
    found, after = [], []
    for one in watched(tallies, len(tallies), progress):
        instead = _instead(one, has, book) if _takes(one, wanted) else None
        if instead is not None:
            found.append(instead)
        after.append(instead.tally if instead is not None and instead.does else one)
    return Substitution(has, wanted, tuple(found), tuple(after))


def _takes(one: Tally, wanted: Size) -> bool:
    return any(_alike((item.hinge.height, item.hinge.width), wanted) for item in one.items)


def _alike(one: Size, other: Size) -> bool:
    return all(abs(a - b) <= TOLERANCE for a, b in zip(one, other, strict=True))


def _instead(one: Tally, has: Size, book: TallyBook) -> Instead:
    opening = _with_size(one.opening, has)
    after = book.of(opening)
    said = _to_say(one, after)
    short = any(found.code in NOT_ENOUGH for found in said)
    does = bool(after.ordered) and not short and _does_as_much(one, after)
    hinges = sum(item.count for item in one.items) * one.opening.quantity
    return Instead(one.mark, hinges, does, said, after.fault or "", opening, after)


def _to_say(before: Tally, after: Tally) -> tuple[Finding, ...]:
    """Return what holds its order, and what is warned of that was not before."""
    known = {found.code for found in before.findings} | NOT_ASKED
    new = (one for one in after.findings if one.severity == "warning" and one.code not in known)
    return (*after.holding, *new)


def _does_as_much(before: Tally, after: Tally) -> bool:
    """Say whether every leaf that did all it needs still does."""
    did = {leaf.leaf: leaf.complete for leaf in before.leaves}
    return not any(
        did.get(leaf.leaf) and leaf.width is not None and not leaf.does.get(leaf.width, True)
        for leaf in after.leaves
    )


def _with_size(opening: Opening, has: Size) -> Opening:
    data = opening.model_dump(exclude_unset=True)
    hinge = {**(data.get("hinge") or {}), "height": has[0], "width": has[1]}
    return Opening.model_validate({**data, "hinge": hinge})
