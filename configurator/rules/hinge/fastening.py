"""Screws and template: what holds a hinge to that door and that frame."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate, pairwise
from math import ceil

from configurator.model import Hinge
from configurator.rules.filling.materials import Fastening
from configurator.rules.finding import Finding, Reason, finding, reason
from configurator.rules.hinge.leaf_hinge import LeafHinge, override
from configurator.rules.wording import counted, plain
from configurator.tables import ScrewRow, practice, table, words_of

CHECK_TEMPLATE = (3.5, 4.0)
TEMPLATE_TO = 5.0


def screws(height: float, count: int, held: Fastening) -> Reason:
    """Return screws of each kind, {"machine": n, "wood": n}, for `count` hinges of that height."""
    row = screw_row(height)
    each = {"machine": 0, "wood": 0}
    for kind in (held.door_screws, held.frame_screws):
        each[kind] += row.per_leaf * count
    because = (
        f"{held.door_screws} screws into the door, {held.frame_screws} screws into the frame: "
        f"{row.per_leaf} a hinge leaf, {counted(count, 'hinge', 'hinges')}; {_pack(row, held)}; "
        f"{words_of('screw_metal')}"
    )
    return reason(each, because, row.cited)


SCREW_KINDS = ("machine", "wood")


@dataclass(frozen=True, slots=True)
class LeafScrews:
    """One leaf's screws by kind, and those of each hinge: a fraction where a number for a set is shared."""

    of_leaf: Reason
    each: Mapping[str, Fraction]


def opening_screws(
    hinges: Sequence[LeafHinge], held: Fastening, by_hand: Hinge, standard: Hinge
) -> tuple[Reason, tuple[LeafScrews, ...]]:
    """Return the screws of a whole opening by kind, and those of each leaf.

    A number by hand, or of the job's standard, is for the whole opening: all its hinges share it alike.
    """
    counts = [hinge.count.value for hinge in hinges]
    needed = [screws(hinge.height.value, hinge.count.value, held) for hinge in hinges]
    program = _of_all_leaves([hinge.leaf.name for hinge in hinges], needed)
    whole = override(by_hand.screws, standard.screws, program)
    if whole is program:
        return whole, tuple(
            LeafScrews(one, _each(one.value, count)) for one, count in zip(needed, counts, strict=True)
        )
    each = _each(whole.value, sum(counts))
    return whole, tuple(LeafScrews(share, each) for share in _shares(whole, each, counts))


def whole_shares(each: Fraction, counts: Iterable[int]) -> tuple[int, ...]:
    """Return whole screws for groups of so many hinges at `each` a hinge; their total is rounded up, once."""
    ends = [ceil(each * end) for end in accumulate(counts, initial=0)]
    return tuple(after - before for before, after in pairwise(ends))


def screws_in_words(screws: Mapping[str, int]) -> str:
    """Return screws by kind, as `24 machine and 12 wood`."""
    return " and ".join(f"{count} {kind}" for kind, count in screws.items() if count) or "none"


def _of_all_leaves(names: Sequence[str], needed: Sequence[Reason]) -> Reason:
    """Add the screws of all leaves, with each leaf's reason; once where both have the same."""
    first = needed[0]
    if len(needed) == 1:
        return first
    total = {kind: sum(one.value[kind] for one in needed) for kind in SCREW_KINDS}
    because = "; ".join(f"{name} leaf: {one.because}" for name, one in zip(names, needed, strict=True))
    if all(one.because == first.because for one in needed):
        because = f"on each leaf {first.because}"
    return replace(first, value=total, because=because)


def _each(screws: Mapping[str, int], hinges: int) -> Mapping[str, Fraction]:
    return {kind: Fraction(number, hinges) for kind, number in screws.items()}


def _shares(whole: Reason, each: Mapping[str, Fraction], counts: Sequence[int]) -> Iterator[Reason]:
    """Yield each leaf's share of the screws of a whole opening, in whole numbers."""
    if len(counts) == 1:
        yield whole
        return
    by_kind = {kind: whole_shares(number, counts) for kind, number in each.items()}
    for place, count in enumerate(counts):
        because = (
            f"{whole.because}: {screws_in_words(whole.value)} for the whole opening, and {count} of its "
            f"{counted(sum(counts), 'hinge', 'hinges')} hang this leaf"
        )
        share = {kind: numbers[place] for kind, numbers in by_kind.items()}
        yield replace(whole, value=share, because=because)


def screw_row(height: float) -> ScrewRow:
    """Return the row of the screw table for a hinge height, else that of the nearest lower height."""
    rows = table(ScrewRow)
    lower = [row for row in rows if row.height <= height]
    return lower[-1] if lower else rows[0]


def _pack(row: ScrewRow, held: Fastening) -> str:
    kinds = dict.fromkeys((held.door_screws, held.frame_screws))
    names = [row.machine if kind == "machine" else row.wood for kind in kinds]
    return "half " + " and half ".join(names) if len(names) > 1 else names[0]


def made_to_template(height: float, held: Fastening) -> bool:
    """Return whether a hinge of that height has the one hole pattern metal doors and frames are cut to."""
    return held.door_screws == held.frame_screws == "machine" and not _pattern_varies(height)


def _in_metal(held: Fastening) -> bool:
    return held.door_family == "metal" or held.frame_material == "steel"


def _pattern_varies(height: float) -> bool:
    return height in CHECK_TEMPLATE or height > TEMPLATE_TO


def fastening_findings(
    height: float, held: Fastening, construction: str | None, fire: bool
) -> tuple[Finding, ...]:
    """Return cautions: a template to check, a mineral core, a fire rated wood door."""
    found = []
    if _in_metal(held) and _pattern_varies(height):
        message = (
            f"Hole patterns of hinges {plain(height)} high vary: check the template with whoever makes the "
            "door and frame before ordering."
        )
        found.append(finding("template check", "note", message, practice("template_check"), height=height))
    if construction == "wood, mineral core":
        words = "; the listing says which screws" if fire else ""
        message = (
            f"A mineral core holds screws only where its blocking is{words}. Ask the door maker for hinge "
            "blocking and the screws it takes."
        )
        found.append(finding("mineral core", "warning", message, practice("mineral_core")))
    return tuple(found)
