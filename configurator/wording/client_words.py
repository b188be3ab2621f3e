"""What the client's page names and counts without the trade's terms; how the door does is in `verdict`."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Literal

from configurator.model import Opening
from configurator.rules.finding import Finding
from configurator.rules.hinge.finish import finishes
from configurator.rules.specification import LeafSpecification
from configurator.rules.wording import counted, hardware, obstruction
from configurator.sentences import capitalized
from configurator.study import Candidate, Study
from configurator.study.widths.width_pair import WidthPair
from configurator.tables import resource_rows
from configurator.units import TOLERANCE, Display
from configurator.wording.hinge_words import spelled_value

NOTHING_RECOMMENDED = "No hinge is recommended as things are: read what is said under 'Please note'."
NOT_CHOSEN = "The hinges of this opening are not chosen here."


@dataclass(frozen=True, slots=True)
class _CautionRow:
    """A caution in a client's words; `teller` says it: the client's page, its verdict, the workshop."""

    code: str
    teller: Literal["client", "verdict", "workshop"]
    words: str | None


@cache
def _cautions() -> dict[str, _CautionRow]:
    return {row.code: row for row in resource_rows("words", "client_cautions", _CautionRow)}


def caution_of(found: Finding) -> str:
    """Return a finding as a client understands it; empty where the verdict or the workshop tells it."""
    row = _cautions().get(found.code)
    return "" if row is None else row.words or ""


def client_cautions(study: Study) -> tuple[str, ...]:
    """Return what a client is to be warned of, each sentence once, and how much is for the workshop alone.

    What the verdict tells is not told twice.
    """
    worst = sorted(
        (one for one in study.all_findings() if one.severity != "note"), key=lambda one: one.severity
    )
    said = dict.fromkeys(filter(None, map(caution_of, worst)))
    rows = _cautions()
    kept = len({one.code for one in worst if one.code not in rows or rows[one.code].teller == "workshop"})
    count = counted(kept, "more point is", "more points are")
    rest = (f"{capitalized(count)} for whoever makes the door: see the plan.",) if kept else ()
    return (*said, *rest)


def door_named(opening: Opening) -> str:
    """Return what a client calls a door: by its mark, and where it leads."""
    return f"Door {opening.mark}" + (f", {opening.location}" if opening.location else "")


def recommendation(study: Study, display: Display) -> tuple[str, ...]:
    """Return which hinges are recommended for each leaf and how many, one paragraph each."""
    leaves = study.specification.leaves
    if not leaves:
        return (NOT_CHOSEN,)
    if study.errors:
        return (NOTHING_RECOMMENDED,)
    return tuple(_recommended(leaf, study, display, len(leaves) > 1) for leaf in leaves)


def part_named(name: str) -> str:
    """Return what a client calls a moving part: the leaf is the door itself."""
    return {"leaf": "the door", "barrel": "the hinge"}.get(name, f"the {hardware(name)}")


_THINGS = {
    "latch jamb": "frame on the lock side",
    "stop": "rim of the frame",
    "other leaf": "other door",
    "casing": "trim",
    "base": "baseboard",
    "wainscot": "panelling",
    "return wall": "side wall",
    "other": "thing beside the door",
}


def thing_named(kind: str) -> str:
    """Return what a client calls what stands in the way."""
    return _THINGS.get(kind) or obstruction(kind)


def _recommended(leaf: LeafSpecification, study: Study, display: Display, several: bool) -> str:
    parts = {key: reason.value for key, reason in leaf.parts.items()}
    whose = (
        f"For the {leaf.leaf} leaf" if several else "For each opening" if study.opening.quantity > 1 else ""
    )
    if parts["width"] is None:
        return f"{whose or 'Here'}: no hinge width to be had does all that this opening asks."
    count = counted(parts["count"], "hinge", "hinges")
    size = display.size(parts["height"], parts["width"])
    metal = spelled_value("base_metal", parts["base_metal"], display)
    looks = {row.look for row in finishes(bhma=parts["finish_bhma"])} if parts["finish_bhma"] else set()
    look = f", {looks.pop()}" if len(looks) == 1 else ""
    begin = f"{whose}: {count}" if whose else capitalized(count)
    return f"{begin}, {size} in (height x width opened flat), {metal}{look}."


def difference(pair: WidthPair, display: Display) -> Iterator[str]:
    """Yield how the second hinge differs from the first: how far it stands out, the way through."""
    if pair.wider is None or pair.other_way:
        for one in pair.both:
            yield from way_through(one, display, named=pair.wider is not None)
        return
    narrower, wider = pair.narrower, pair.wider
    out = wider.barrel_past_frame - narrower.barrel_past_frame
    said = f"The wider hinge stands out {display.length(out)} more"
    if out <= TOLERANCE:
        said = "Both hinges stand out alike"
    before, after = narrower.clear_width_at_90, wider.clear_width_at_90
    if before is None or after is None:
        yield f"{said}."
    elif abs(before - after) <= TOLERANCE:
        yield f"{said}; the way through stays {display.length(before, 'down')} wide{_open(wider)}."
    else:
        verb = "takes" if after < before else "adds"
        of = "of" if after < before else "to"
        left = "is left" if after < before else "it is then"
        yield (
            f"{said} and {verb} {display.length(abs(before - after))} {of} the way through: "
            f"{display.length(after, 'down')} {left}{_open(wider)}."
        )


def way_through(one: Candidate, display: Display, named: bool = False) -> Iterator[str]:
    """Yield how wide the way through is on a hinge, where it is known; `named`: with the hinge's name."""
    on = f" on the {one.hinge_words}" if named else ""
    if one.clear_width_at_90 is not None:
        yield f"The way through is {display.length(one.clear_width_at_90, 'down')} wide{on}{_open(one)}."


def _open(one: Candidate) -> str:
    """Say which of two doors stands open where the way through is told."""
    return {"active": ", one door open", "inactive": ", both doors open"}.get(one.leaf, "")
