"""The values of a parameter at which an answer changes: how far a leaf opens, and what it meets and keeps.

Inches and degrees.
"""

from dataclasses import dataclass
from typing import NamedTuple

from configurator.rules.hinge.answers import Must

FLAT, SQUARE = 180.0, 90.0
OPENS, FITTED, CLEAR, BARREL = "opens", "opens with hardware", "clear width", "barrel free"
MEETS, CARRIED_MEETS = "meets", "hardware meets"
MOUNTS, A_DOOR = "mounted", "a door"
Met = tuple[str, int | None, str]
"""What stands, its place in the list of obstructions, and the moving part that meets it."""


@dataclass(frozen=True, slots=True)
class Threshold:
    """A value at which an answer changes.

    what is a kind of answer; `upward` says that it holds from `value` on, else up to there. `amount` is the
    angle in degrees or the length in inches that it is about, `met` what is met from `value` on and
    `met_before` what up to there, None for nothing.
    """

    value: float
    what: str
    upward: bool
    amount: float = 0.0
    met: Met | None = None
    met_before: Met | None = None


class Does(NamedTuple):
    """What a leaf does, as far as it can turn; nothing is met where it is open flat, or as good as shut."""

    angles: tuple[bool, ...]
    fitted_angles: tuple[bool, ...]
    met: Met | None
    met_fitted: Met | None
    clear: bool
    mounted: bool


def angles_asked(must: Must) -> list[float]:
    """Return the angles that a chart of openings is about, degrees: square, flat, and the wanted one."""
    return sorted({SQUARE, must.wanted, FLAT})


def thresholds_between(
    must: Must, near: float, far: float, before: Does | None, after: Does | None
) -> list[Threshold]:
    """Return every threshold between two close values, from what the leaf does at each of them."""
    if before is None or after is None:
        return [threshold_at(near, far, A_DOOR, after is not None)]
    wanted = angles_asked(must)
    found = []
    for what, old, new in (
        (OPENS, before.angles, after.angles),
        (FITTED, before.fitted_angles, after.fitted_angles),
    ):
        turned = [(angle, now) for angle, was, now in zip(wanted, old, new, strict=True) if was != now]
        found += [threshold_at(near, far, what, now, angle) for angle, now in turned]
    if must.clear_width is not None and before.clear != after.clear:
        found.append(threshold_at(near, far, CLEAR, after.clear, must.clear_width))
    if before.mounted != after.mounted:
        found.append(threshold_at(near, far, MOUNTS, after.mounted))
    return [*_without_echo(found), *_other_met(far, before, after)]


def threshold_at(near: float, far: float, what: str, upward: bool, amount: float = 0.0) -> Threshold:
    """Return a threshold at the last value at which the answer still holds."""
    return Threshold(far if upward else near, what, upward, amount)


def _without_echo(thresholds: list[Threshold]) -> list[Threshold]:
    """Leave out what the leaf with its hardware does where the leaf alone does the same."""
    alone = {(one.upward, one.amount) for one in thresholds if one.what == OPENS}
    return [one for one in thresholds if one.what != FITTED or (one.upward, one.amount) not in alone]


def _other_met(far: float, before: Does, after: Does) -> list[Threshold]:
    """Return where a swing ends on another thing than it did: of the leaf, or of what it carries."""
    found = []
    if before.met != after.met and None not in (before.met, after.met):
        found.append(Threshold(far, MEETS, True, met=after.met, met_before=before.met))
    both = (before.met_fitted, after.met_fitted)
    own = after.met_fitted != after.met or before.met_fitted != before.met
    if both[0] != both[1] and None not in both and own:
        found.append(Threshold(far, CARRIED_MEETS, True, met=both[1], met_before=both[0]))
    return found
