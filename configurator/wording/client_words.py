"""What the client's page names and counts without the trade's terms; how the door does is in `verdict`."""

from functools import cache
from typing import Literal

from configurator.model import Opening
from configurator.records import dataclass
from configurator.rules.finding import Finding
from configurator.rules.hinge.finish import finishes
from configurator.rules.specification import LeafSpecification
from configurator.rules.wording import counted, hardware, obstruction
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.tables import resource_rows
from configurator.units import Display
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
