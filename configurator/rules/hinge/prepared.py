"""A door or frame already made, cut for hinges of one height: what still serves, and within which limits."""

from collections.abc import Iterator
from dataclasses import dataclass

from configurator.rules.finding import Finding, Fix, Reason, finding, reason
from configurator.rules.hinge.sizes import leaf_thickness
from configurator.rules.wording import exactly, plain, pounds
from configurator.tables import limit, practice, words_of
from configurator.units import TOLERANCE


@dataclass(frozen=True, slots=True)
class Prepared:
    """A leaf prepared for a hinge height, what it needs, and the hinge as chosen; inches and pounds.

    `door_weight` is the most that the leaf may weigh, None where that is not known.
    """

    height: float
    needed: float
    chosen: float
    weight: str
    count: int
    needed_count: int
    traffic: str
    fire_rated: bool
    door_weight: float | None


def prepared_height(needed: Reason, prepared: float | None) -> Reason:
    """Return the height that was prepared where it is at least what the door takes, else the needed one."""
    if prepared is None or prepared < needed.value - TOLERANCE:
        return needed
    because = f"door or frame is prepared for {plain(prepared)} high; {needed.because}"
    return reason(prepared, because, practice("prepared_fits"))


def prepared_findings(prep: Prepared) -> Iterator[Finding]:
    """Yield the findings about a hinge beside what door or frame is prepared for."""
    if prep.height >= prep.needed - TOLERANCE:
        yield _fits(prep) if prep.chosen == prep.height else _other(prep)
    elif against := _against(prep):
        yield _does_not_serve(prep, against)
    else:
        yield _serves(prep)


def _fits(prep: Prepared) -> Finding:
    message = (
        f"Door or frame is prepared for hinges {plain(prep.height)} high, and these are. Check one "
        "preparation against the hinge's template before ordering."
    )
    return finding("preparation fits", "note", message, practice("prepared_fits"), prepared=prep.height)


def _other(prep: Prepared) -> Finding:
    fault = "does not go in" if prep.chosen > prep.height else "leaves part of the mortise open"
    message = (
        f"Door or frame is prepared for hinges {plain(prep.height)} high; one {plain(prep.chosen)} high "
        f"{fault}. Take {plain(prep.height)}, which is enough for this door."
    )
    fix = (Fix("hinge.height", prep.height, f"Take {plain(prep.height)} high"),)
    source = practice("prepared_fits")
    return finding(
        "preparation differs", "warning", message, source, fix, prepared=prep.height, height=prep.chosen
    )


def _against(prep: Prepared) -> str:
    """Return why a hinge as low as the preparation does not serve, empty where it does; from memory."""
    step, heavy = limit("prepared_step").value, limit("heavy_door").value
    if prep.fire_rated:
        return "the door is fire rated, and its listing decides"
    if prep.traffic == "high":
        return "the door is opened very often"
    if prep.needed - prep.height > step + TOLERANCE:
        return f"it is more than {exactly(step)} lower than the {plain(prep.needed)} this door takes"
    if prep.door_weight is not None and prep.door_weight >= heavy - TOLERANCE:
        return (
            f"the door may weigh {pounds(prep.door_weight, 'up')}, and from {pounds(heavy)} on it is too much"
        )
    return ""


def _does_not_serve(prep: Prepared, against: str) -> Finding:
    message = (
        f"Door or frame is prepared for hinges {plain(prep.height)} high and this door takes "
        f"{plain(prep.needed)}. {plain(prep.height)} does not serve here: {against}. Have the preparation "
        "changed by whoever makes the door and frame, or ask them."
    )
    source = practice("prepared")
    return finding("preparation too low", "error", message, source, prepared=prep.height, needed=prep.needed)


def _serves(prep: Prepared) -> Finding:
    more = prep.needed_count + 1
    if prep.chosen == prep.height and (prep.weight == "heavy" or prep.count >= more):
        message = (
            f"Hinges {plain(prep.height)} high go where door or frame is prepared; this door takes "
            f"{plain(prep.needed)}. They serve by {_by(prep, more)}, in {prep.traffic} use only. "
            "Confirm with whoever makes the door."
        )
        return finding("preparation serves", "note", message, practice("prepared"), prepared=prep.height)
    gage = exactly(leaf_thickness(prep.height, "heavy").value)
    message = (
        f"Door or frame is prepared for hinges {plain(prep.height)} high and this door takes "
        f"{plain(prep.needed)}: {words_of('prepared')}. Take "
        f"{plain(prep.height)} high in heavy weight ({gage} leaf), or {more} of them."
    )
    fix = (
        Fix("hinge.height", prep.height, f"Take {plain(prep.height)} high, heavy weight"),
        Fix("hinge.weight", "heavy", ""),
    )
    source = practice("prepared")
    return finding(
        "preparation low", "warning", message, source, fix, prepared=prep.height, needed=prep.needed
    )


def _by(prep: Prepared, more: int) -> str:
    return "heavier leaves" if prep.weight == "heavy" else f"one hinge more than {more - 1}"
