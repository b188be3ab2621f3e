"""Which metal a hinge is made of, from where it hangs."""

from configurator.rules.filling.materials import Place
from configurator.rules.finding import Alternative, Finding, Fix, Reason, finding, reason
from configurator.rules.hinge.finish import finishes, metals_of, same_look
from configurator.rules.hinge.fire import STEELS
from configurator.tables import practice, words_of


def hinge_metal(place: Place) -> Reason:
    """Return the base metal for a place, with its reason."""
    stainless = Alternative("stainless", "does not rust; costs more, and its looks are 629 and 630 only")
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
    """Return what is to be said of that metal in that place."""
    if place.fire_rated and metal not in STEELS:
        return (_fire_metal(bhma or "", metal),)
    if metal == "steel" and (place.exterior or place.coastal):
        where, key = ("near salt water", "metal_coastal") if place.coastal else ("outdoors", "metal_exterior")
        message = f"A steel hinge {where} rusts, plated or primed. Take stainless."
        fix = (Fix("hinge.base_metal", "stainless", "Take stainless"), Fix("hinge.finish_bhma", "630", "630"))
        return (finding("metal exposed", "warning", message, practice(key), fix),)
    return ()


def _fire_metal(bhma: str, metal: str) -> Finding:
    rows = finishes(bhma=bhma)
    what = f"{bhma} is {' or '.join(metals_of(bhma))}" if rows else f"The hinge is {metal}"
    alike = same_look(rows[0], "steel") if rows else None
    fix: tuple[Fix, ...] = (Fix("hinge.base_metal", "steel", "Take steel"),)
    mend = "Choose a finish on steel."
    if alike is not None:
        mend = f"{alike.bhma} has the same look on steel: choose it."
        fix = (*fix, Fix("hinge.finish_bhma", alike.bhma, f"Take {alike.bhma}"))
    message = f"{what}; a labelled door takes steel, since {metal} softens in a fire. {mend}"
    return finding("fire metal", "error", message, practice("metal_fire"), fix)
