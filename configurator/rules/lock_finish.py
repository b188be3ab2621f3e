"""The lock's finish beside the hinge's: both are seen together, and should look the same."""

from configurator.rules.finding import Finding, Fix, finding
from configurator.rules.finish import HINGE_METALS, finishes, same_look
from configurator.tables import FinishRow, practice

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


def lock_finish_findings(lock: str | None, metal: str, hinge: str | None) -> tuple[Finding, ...]:
    """Return what is to be said of a hinge of that metal and BHMA number beside the lock's number."""
    if lock is None:
        return ()
    rows, own = finishes(bhma=lock), finishes(bhma=hinge) if hinge is not None else ()
    if not rows:
        return (_unknown(lock),)
    if not own:
        return ()  # the hinge's own number is refused by a finding of its own
    looks = {row.look for row in rows}
    if own[0].look in looks:
        return ()
    if any(own[0].look in pair and looks & pair for pair in NEAR):
        return (_nearly(rows[0], own[0]),)
    return (_differs(rows[0], own[0], matching(lock, metal), metal),)


def _unknown(lock: str) -> Finding:
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
