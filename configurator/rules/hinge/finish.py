"""The metal and the finish of a hinge, by BHMA number or US code, and whether it looks like the lock's."""

import re
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from configurator.rules.filling.materials import Place
from configurator.rules.finding import Alternative, Finding, Fix, Reason, Source, finding, reason
from configurator.rules.hinge.fire import STEELS
from configurator.tables import FinishRow, practice, table, words_of

USUAL_LOOK = "satin chrome"
USUAL_STAINLESS_LOOK = "satin stainless"
NOWHERE = Place(exterior=False, coastal=False, humid=False, fire_rated=False)
HINGE_METALS = ("steel", "stainless", "brass", "bronze")


@dataclass(frozen=True, slots=True)
class Finish:
    """A finish on a hinge's metal: BHMA number and US code, each with its reason, and the findings."""

    bhma: Reason
    us: Reason
    findings: tuple[Finding, ...]


def us_code(text: str) -> str:
    """Return a US finish code in one spelling: `us 26d` and `26D` are US26D."""
    plain = re.sub(r"[^A-Z0-9]", "", text.upper())
    return plain if plain.startswith("US") else "US" + plain


def bhma_number(text: str) -> str:
    """Return a BHMA number in one spelling: `BHMA 626` is 626."""
    return re.sub(r"[^A-Z0-9]", "", text.upper()).removeprefix("BHMA")


@lru_cache(maxsize=256)
def finishes(
    us: str | None = None, bhma: str | None = None, look: str | None = None, metal: str | None = None
) -> tuple[FinishRow, ...]:
    """Look finishes up in both directions: by US code, BHMA number, words of the look, metal, or several."""
    return tuple(
        row
        for row in table(FinishRow)
        if (us is None or row.us == us_code(us))
        and (bhma is None or row.bhma == bhma_number(bhma))
        and (look is None or look.lower() in f"{row.look}, {row.words}".lower())
        and (metal is None or row.metal == metal)
    )


def metals_of(bhma: str) -> tuple[str, ...]:
    """Return the metals that a BHMA number stands for; none where the number is not known."""
    return tuple(dict.fromkeys(row.metal for row in finishes(bhma=bhma)))


def same_look(row: FinishRow, metal: str) -> FinishRow | None:
    """Return the finish of the same look on another metal; None where none is known.

    One that is not `alike` is the nearest there is, and does not match by eye.
    """
    return next((other for other in table(FinishRow) if (other.look, other.metal) == (row.look, metal)), None)


def on_metal(row: FinishRow, metal: str) -> str:
    """Say how a finish of the same name looks on another metal."""
    if row.alike:
        return f"{row.bhma} has the same look on {metal}"
    return f"{row.bhma} is the nearest on {metal}, and does not match it by eye"


def choose_finish(
    metal: str, us: str | None, bhma: str | None, lock: FinishRow | None = None, place: Place = NOWHERE
) -> Finish:
    """Return the finish of a hinge of that metal; `us` and `bhma` are what was asked for, or None.

    `lock` is the finish on that metal that goes with the lock's; it is taken where nothing was asked for.
    """
    if bhma is not None:
        return _by_number(metal, us, bhma)
    if us is not None:
        return _by_look(metal, us, place)
    return _usual(metal) if lock is None else _made(lock, _WITH_LOCK, practice("finish_match"))


_WITH_LOCK = "it goes with the lock's finish; hinges show beside the lock and should look the same"


@cache
def _usual(metal: str) -> Finish:
    look = USUAL_STAINLESS_LOOK if metal == "stainless" else USUAL_LOOK
    row = next(row for row in table(FinishRow) if (row.look, row.metal) == (look, metal))
    because = f"{look} is taken as the usual look; hinges show beside the lock and should look the same"
    return _made(row, because, practice("finish_match"))


def _made(row: FinishRow, because: str, cited: Source, found: tuple[Finding, ...] = ()) -> Finish:
    number = f"{because}; {row.words} on {row.metal} is BHMA {row.bhma}"
    look = f"{because}; a US code alone says the look, not the metal"
    unstable = () if row.alike else (_unstable(row),)
    bronze = (_brass_or_bronze(row),) if row.metal == "bronze" and row.bhma in BRONZE_LOOKS else ()
    found = (*found, *unstable, *bronze)
    return Finish(reason(row.bhma, number, row.cited), reason(row.us, look, cited), found)


BRONZE_LOOKS = tuple(str(number) for number in range(611, 618))
"""Numbers that stand for bronze, and that trade lists put on brass too; common practice, no source."""


def _brass_or_bronze(row: FinishRow) -> Finding:
    message = (
        f"{row.bhma} ({row.look}) stands for bronze, and many lists put it on brass as well: ask which metal "
        "these hinges are before ordering."
    )
    return finding("brass or bronze", "note", message, practice("finish_bronze"))


def _by_look(metal: str, us: str, place: Place) -> Finish:
    rows = finishes(us=us)
    if not rows:
        return _nothing(None, us, _unknown("US finish code", us, "hinge.finish_us"))
    row = next((row for row in rows if row.metal == metal), None)
    if row is None:
        return _nothing(None, us_code(us), _not_on(rows, metal, place))
    return _made(row, f"{us_code(us)} was asked for", row.cited)


def _by_number(metal: str, us: str | None, bhma: str) -> Finish:
    rows = finishes(bhma=bhma)
    if not rows:
        return _nothing(bhma, us, _unknown("BHMA finish number", bhma, "hinge.finish_bhma"))
    row = next((row for row in rows if row.metal == metal), rows[0])
    brass = row.metal == "bronze" and metal == "brass" and row.bhma in BRONZE_LOOKS
    found = () if brass or row.metal == metal else (_wrong_metal(row, rows, metal),)
    if us is not None and us_code(us) != row.us:
        found = (*found, _disagree(us_code(us), row))
    return _made(row, f"BHMA {row.bhma} was asked for", row.cited, found)


def _nothing(bhma: str | None, us: str | None, found: Finding) -> Finish:
    source = practice("finish_by_metal")
    because = "what was asked for cannot be made out"
    return Finish(reason(bhma, because, source), reason(us, because, source), (found,))


def _unknown(kind: str, text: str, path: str) -> Finding:
    message = f"{kind} “{text[:20]}” ({path}) is in no list here. Check it, or choose a finish from the list."
    return finding("finish unknown", "error", message, practice("finish_by_metal"))


def _not_on(rows: tuple[FinishRow, ...], metal: str, place: Place) -> Finding:
    bronze = next((row for row in rows if row.metal == "bronze" and not row.alike), None)
    wet = place.exterior or place.coastal or place.humid
    if metal == "stainless" and wet and bronze is not None and not place.fire_rated:
        return _solid_bronze(bronze)
    known = ", ".join(f"{row.bhma} on {row.metal}" for row in rows if row.metal in HINGE_METALS)
    known = known or "no number on any hinge metal"
    message = f"{rows[0].us} ({rows[0].look}) has no number on {metal}; there is {known}."
    message += " Choose another look or metal."
    return finding("finish not on metal", "error", message, practice("finish_by_metal"))


def _solid_bronze(bronze: FinishRow) -> Finding:
    message = (
        f"{bronze.us} ({bronze.look}) has no number on stainless, which is taken here against rust. Solid "
        f"bronze does not rust either: take bronze, {bronze.bhma}, or choose another look."
    )
    fix = _take("bronze", bronze.bhma)
    return finding("finish not on metal", "error", message, practice("metal_exterior"), fix)


def _take(metal: str, bhma: str) -> tuple[Fix, ...]:
    return Fix("hinge.base_metal", metal, f"Take {metal}, {bhma}"), Fix("hinge.finish_bhma", bhma, "")


def _wrong_metal(row: FinishRow, rows: tuple[FinishRow, ...], metal: str) -> Finding:
    metals = " or ".join(other.metal for other in rows)
    alike = same_look(row, metal)
    mend = on_metal(alike, metal) if alike else f"no number has this look on {metal}"
    fix = (Fix("hinge.finish_bhma", alike.bhma, f"Take {alike.bhma}"),) if alike else ()
    message = f"{row.bhma} is {row.look} on {metals}, and the hinge is {metal}: {mend}. Choose one."
    return finding("finish metal", "error", message, practice("finish_by_metal"), fix)


def _disagree(us: str, row: FinishRow) -> Finding:
    message = f"{us} and {row.bhma} do not go together: {row.bhma} is {row.us or 'no US code'} ({row.look})."
    fix = (Fix("hinge.finish_us", row.us, f"Take {row.us}"),)
    return finding("finish disagree", "error", message + " Choose one.", practice("finish_by_metal"), fix)


def _unstable(row: FinishRow) -> Finding:
    message = (
        f"{row.bhma} ({row.look}) never matches from one metal, item or maker to the next. Order all of it "
        "together, or choose a plated or coated look."
    )
    return finding("finish unstable", "warning", message, practice("finish_unstable"))


NEAR = (frozenset({"satin chrome", "satin stainless"}), frozenset({"bright chrome", "bright stainless"}))
"""Looks that are taken together though they are not quite the same; common practice, no source."""


def matching(lock: str | None, metal: str) -> FinishRow | None:
    """Return the finish on a hinge of that metal that goes with the lock's BHMA number, None if none does."""
    rows = finishes(bhma=lock) if lock is not None else ()
    alike = (same_look(row, metal) for row in rows)
    return next(filter(None, alike), None) or _near(rows, metal)


def _near(rows: tuple[FinishRow, ...], metal: str) -> FinishRow | None:
    looks = {look for row in rows for pair in NEAR if row.look in pair for look in pair}
    return next((row for row in finishes(metal=metal) if row.look in looks), None)


def lock_finish_findings(
    lock: str | None, metal: str, hinge: str | None, metal_stays: bool = True
) -> tuple[Finding, ...]:
    """Return the findings about a hinge of that metal and BHMA number beside the lock's number.

    Where the metal is found fault with, its finish follows from the other one: `metal_stays` is False.
    """
    if lock is None:
        return ()
    rows, own = finishes(bhma=lock), finishes(bhma=hinge) if hinge is not None else ()
    if not rows:
        return (_unknown_lock(lock),)
    if not own:
        return ()  # the hinge's own number is refused by a finding of its own
    looks = {row.look for row in rows}
    if own[0].look in looks:
        apart = not own[0].alike and own[0].bhma != rows[0].bhma
        return (_nearly(rows[0], own[0]),) if apart else ()
    if any(own[0].look in pair and looks & pair for pair in NEAR):
        return (_nearly(rows[0], own[0]),)
    differs = _differs(rows[0], own[0], matching(lock, metal), metal)
    return (differs if metal_stays else _metal_first(rows[0], own[0]),)


def _metal_first(lock: FinishRow, own: FinishRow) -> Finding:
    message = (
        f"The hinge is {own.bhma} ({own.look}) and the lock beside it {lock.bhma} ({lock.look}): they should "
        "look the same. Choose the hinge's metal first, and then its finish."
    )
    return finding("finish differs from the lock", "warning", message, practice("finish_match"))


def _unknown_lock(lock: str) -> Finding:
    message = (
        f"The lock's finish “{lock[:20]}” is in no list here, so whether the hinges match it cannot be said. "
        "Check the number."
    )
    return finding("lock finish unknown", "warning", message, practice("finish_by_metal"))


def _nearly(lock: FinishRow, own: FinishRow) -> Finding:
    message = (
        f"The lock is {lock.bhma} ({lock.look}) and the hinge {own.bhma} ({own.look}): near, but not quite "
        "the same. Hold them side by side before ordering."
    )
    return finding("finish near the lock's", "note", message, practice("finish_near"))


def _differs(lock: FinishRow, own: FinishRow, match: FinishRow | None, metal: str) -> Finding:
    message = (
        f"The hinge is {own.bhma} ({own.look}) and the lock beside it {lock.bhma} ({lock.look}): they should "
        f"look the same. {_mend(match, lock, metal)}"
    )
    fix = (Fix("hinge.finish_bhma", match.bhma, f"Take {match.bhma}"),) if match else ()
    return finding("finish differs from the lock", "warning", message, practice("finish_match"), fix)


def _mend(match: FinishRow | None, lock: FinishRow, metal: str) -> str:
    if match is not None:
        return f"Take {match.bhma} ({match.look}) on {metal}."
    others = [same_look(lock, other) for other in HINGE_METALS]
    known = [f"{row.bhma} on {row.metal}" for row in others if row is not None]
    return f"Nothing on {metal} looks so: choose {' or '.join((*known, 'another finish for the lock'))}."


def hinge_metal(place: Place) -> Reason:
    """Return the base metal for a place, with its reason."""
    stainless = Alternative(
        "stainless", "does not rust; costs more, and 629 and 630 are its usual looks: ask for others"
    )
    if place.coastal:
        return reason("stainless", words_of("metal_coastal"), practice("metal_coastal"))
    if place.exterior:
        return reason("stainless", words_of("metal_exterior"), practice("metal_exterior"))
    if place.humid:
        return reason("stainless", words_of("metal_humid"), practice("metal_humid"))
    if place.fire_rated:
        return reason("steel", words_of("metal_fire"), practice("metal_fire"), stainless)
    return reason("steel", words_of("metal_interior"), practice("metal_interior"), stainless)


def stainless_alloy(place: Place, metal: str) -> Reason:
    """Return the alloy of a stainless hinge, None for other metals."""
    if metal != "stainless":
        return reason(None, "only stainless comes in alloys to choose from", practice("alloy_304"))
    key = "alloy_316" if place.coastal else "alloy_304"
    return reason("316" if place.coastal else "304", words_of(key), practice(key))


def metal_of_number(bhma: str | None, chosen: Reason) -> Reason:
    """Return the metal that an asked BHMA number stands for, where it stands for another than was chosen.

    The number says what the hinge is made of, so it decides; whether that does is then checked.
    """
    metals = () if bhma is None else metals_of(bhma)
    if not metals or chosen.value in metals:
        return chosen
    other = Alternative(chosen.value, f"what the program would take: {chosen.because}")
    because = f"BHMA {bhma} was asked for and is {' or '.join(metals)}"
    return reason(metals[0], because, practice("finish_by_metal"), other)


def metal_findings(place: Place, metal: str, bhma: str | None) -> tuple[Finding, ...]:
    """Return the findings about that metal in that place."""
    if place.fire_rated and metal not in STEELS:
        return (_fire_metal(bhma or "", metal),)
    if metal == "steel" and (place.exterior or place.coastal):
        where, key = ("near salt water", "metal_coastal") if place.coastal else ("outdoors", "metal_exterior")
        rows = () if place.fire_rated or bhma is None else finishes(bhma=bhma)
        bronze = None if not rows or rows[0].alike else same_look(rows[0], "bronze")
        rusts = f"A steel hinge {where} rusts, plated or primed."
        fix = (Fix("hinge.base_metal", "stainless", "Take stainless"), Fix("hinge.finish_bhma", "630", "630"))
        if bronze is None:
            return (finding("metal exposed", "warning", f"{rusts} Take stainless.", practice(key), fix),)
        message = f"{rusts} Take solid bronze, {bronze.bhma}, or stainless."
        said = finding("metal exposed", "warning", message, practice(key), _take("bronze", bronze.bhma))
        return (replace(said, other_fixes=(fix,)),)
    return ()


def _fire_metal(bhma: str, metal: str) -> Finding:
    rows = finishes(bhma=bhma)
    what = f"{bhma} is {' or '.join(metals_of(bhma))}" if rows else f"The hinge is {metal}"
    alike = same_look(rows[0], "steel") if rows else None
    fix: tuple[Fix, ...] = (Fix("hinge.base_metal", "steel", "Take steel"),)
    mend = "Choose a finish on steel."
    if alike is not None:
        mend = f"{on_metal(alike, 'steel')}: choose it."
        fix = (*fix, Fix("hinge.finish_bhma", alike.bhma, f"Take {alike.bhma}"))
    message = f"{what}; a labelled door takes steel, since {metal} softens in a fire. {mend}"
    return finding("fire metal", "error", message, practice("metal_fire"), fix)
