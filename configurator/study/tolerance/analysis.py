"""Whether one leaf still works on one hinge width when what is built is a little off what is drawn.

Not part of a study: it is worked out when it is asked for. Inches, degrees outside and radians inside.
"""

import itertools
import math
from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import Any, Final

import numpy as np

from configurator.geometry.pin import TOLERANCE
from configurator.geometry.solve import Scene, Solution
from configurator.rules.checks.door_stop import holds_short_of_square
from configurator.rules.filling.tolerances import fill_tolerances
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import FilledWay
from configurator.rules.hinge.answers import held_at
from configurator.study.candidate import in_degrees
from configurator.study.hang import HangsOn
from configurator.study.run import Study
from configurator.study.stop_place import given_stop
from configurator.study.tolerance.deviations import NAMES, TOLERANCE_OF, Answers, Floats, Varied, answers
from configurator.study.tolerance.findings import tolerance_finding, tolerance_sentence
from configurator.study.tolerance.result import (
    BARREL,
    CHECKS,
    CLEAR_WIDTH,
    LOCK_EDGE,
    MENDS,
    MOUNTING,
    SWING,
    Effect,
    End,
    Reach,
    ToleranceResult,
)
from configurator.study.tolerance.turning_points import EXACT, turning_points

DRAWS: Final = 10_000
SEED: Final = 20_260
FEW_DRAWS: Final = 500
"""Draws where something touches the closed leaf, as an astragal does: each has to be solved by itself."""
_PROBES = 8


def tolerance_result(
    study: Study, leaf: str, on: HangsOn, draws: int = DRAWS, seed: int = SEED, fineness: float = EXACT
) -> ToleranceResult:
    """Return whether a leaf on what it hangs on works at worst, how often, and what stops it; inches.

    Worst case: every thing that may be off at its least, its middle and its most, all together in every way,
    and every draw besides, for between the ends no proof holds. The chance: each thing off by itself, evenly
    spread over its tolerance, from a seeded generator; real work is seldom spread evenly, so it is a measure
    to compare by and no promise. Where something touches the closed leaf, no more than FEW_DRAWS are drawn.
    `fineness` is how finely it is found how far each thing may be off. Derived. Raises ValueError for a leaf
    that is not there, no draws, and tolerances so large that they leave no door.
    """
    if draws < 1:
        raise ValueError(f"At least one draw is needed; {draws} were asked for.")
    varied = varied_of(study, leaf, on)
    tolerances = fill_tolerances(study.opening)
    limits = np.array([tolerances[TOLERANCE_OF[name]] for name in NAMES])
    varied.refuse_no_door(limits)
    drawn = _as_drawn(varied)
    crowded = _crowded(varied, limits)
    draws = min(draws, FEW_DRAWS) if crowded else draws
    effects = _effects(varied, limits, not drawn.fails, fineness)
    worst, worked = _everything_off(varied, limits, draws, seed, crowded)
    most = _matters_most(drawn, worst, effects)
    margins = _margins(varied, drawn, effects)
    return ToleranceResult(
        leaf=leaf,
        on=on,
        wanted_angle=varied.wanted,
        required_clear_width=varied.clear_width,
        as_drawn=drawn,
        worst=worst,
        margins=margins,
        margin_of=_margin_of(drawn, worst, effects, margins, most),
        effects=effects,
        matters_most=most,
        worked=worked,
        draws=draws,
        seed=seed,
        tolerances=tolerances,
        width_moves_pin=varied.hanging.mounting == "full mortise",
    )


def tolerance_results(study: Study, draws: int = DRAWS) -> tuple[ToleranceResult, ...]:
    """Return the result of every candidate of a study, in their order. Raises as `tolerance_result` does."""
    return tuple(tolerance_result(study, one.leaf, one.on, draws) for one in study.candidates)


def tolerance_data(result: ToleranceResult) -> dict[str, Any]:
    """Return a result by the names of the results contract, with its sentence and its finding, if any."""
    said = tolerance_finding(result)
    words = {"sentence": tolerance_sentence(result), "finding": None if said is None else said.as_data()}
    return {**result.as_data(), **words}


# --- One leaf as drawn ---


def varied_of(study: Study, leaf: str, on: HangsOn) -> Varied:
    """Return the leaf as the study hung it, with what it has to do.

    Swung to the push side what stands on the other is left out: behind its own wall it is never met there.
    """
    names = [one.name for one in study.leaves]
    if leaf not in names:
        raise ValueError(f"There is no {leaf} leaf in {study.opening.mark}; it has: {', '.join(names)}.")
    filled, hung, must = study.filled, study.hanger.leaf(leaf), study.hanger.must(leaf)
    plan, laid = hung.scene(on), hung.arrangement(on)
    way = on if isinstance(on, FilledWay) else None
    to_push = way is not None and way.toward == "push"
    held = held_at(study.opening.stop_angle(leaf), None if to_push else given_stop(hung, plan))
    return Varied(
        hanging=plan.hanging,
        leaf=laid.leaf,
        obstructions=() if to_push else laid.obstructions,
        other=laid.other,
        to_push=to_push,
        has_barrel=way is None or way.barrel_beside_faces,
        wall_share=wall_share(filled),
        wanted=min(must.wanted, held or 180.0),
        clear_width=must.clear_width,
        square=not holds_short_of_square(held) and not _hardware_short_of_square(plan),
    )


def _hardware_short_of_square(plan: Scene) -> bool:
    """Say whether hardware, as drawn, keeps a leaf from 90 degrees that would come to it bare."""
    solution = Solution(plan)
    return solution.greatest_angle < math.pi / 2 <= solution.greatest_angle_bare


def wall_share(filled: FilledOpening) -> float:
    """Return how much of a thicker wall comes to the pull side: half where the frame is centred, else all.

    With the frame's place given, nobody knows to which side the wall would grow; all of it is the worst case.
    """
    return 0.5 if "wall.frame_proud" in filled.assumed else 1.0


def _as_drawn(varied: Varied) -> Reach:
    return _reach(answers(varied, np.zeros((len(NAMES), 1))), 0)


def _reach(found: Answers, row: int) -> Reach:
    return Reach(
        greatest_angle=in_degrees(float(found.angle[row])),
        clear_width_at_90=_or_none(float(found.clear_width[row])),
        latch_edge_least=float(found.latch_edge[row]),
        barrel_freedom=float(found.barrel_freedom[row]),
        fails=found.fails(row),
    )


def _or_none(number: float) -> float | None:
    return None if math.isnan(number) else number


# --- Everything off at once ---


def _crowded(varied: Varied, limits: Floats) -> bool:
    """Say whether something touches the closed leaf whatever is off, so that each must be solved singly."""
    probe = np.random.default_rng(SEED).uniform(-1.0, 1.0, (len(limits), _PROBES)) * limits[:, None]
    return answers(varied, probe).singly == _PROBES


def _everything_off(
    varied: Varied, limits: Floats, draws: int, seed: int, crowded: bool
) -> tuple[Reach, int]:
    """Return the worst answers found anywhere, and how many of the draws worked."""
    corners = answers(varied, _grid(limits, middle=not crowded))
    chance = np.random.default_rng(seed)
    drawn = answers(varied, chance.uniform(-1.0, 1.0, (len(limits), draws)) * limits[:, None])
    fails = {check for both in (corners, drawn) for check, holds in both.holds.items() if not holds.all()}
    worst = Reach(
        greatest_angle=in_degrees(float(min(corners.angle.min(), drawn.angle.min()))),
        clear_width_at_90=_least_clear(corners, drawn),
        latch_edge_least=float(min(corners.latch_edge.min(), drawn.latch_edge.min())),
        barrel_freedom=float(min(corners.barrel_freedom.min(), drawn.barrel_freedom.min())),
        fails=tuple(check for check in CHECKS if check in fails),
    )
    return worst, int(drawn.works.sum())


def _least_clear(*found: Answers) -> float | None:
    """Return the least clear width; None where one of the leaves does not come square open."""
    return _or_none(float(np.min(np.concatenate([one.clear_width for one in found]))))


def _grid(limits: Floats, middle: bool) -> Floats:
    """Return every way to combine the least, the middle if asked for, and the most of all that may be off."""
    levels = [
        ((-limit, 0.0, limit) if middle else (-limit, limit)) if limit > 0 else (0.0,) for limit in limits
    ]
    return np.array(list(itertools.product(*levels))).T


# --- One thing off at a time ---


def _effects(varied: Varied, limits: Floats, works: bool, fineness: float) -> tuple[Effect, ...]:
    """Return what each thing does by itself; in the rows of `at` minus and plus take turns."""
    ways = np.repeat(np.eye(len(NAMES)), 2, axis=0) * np.tile([-1.0, 1.0], len(NAMES))[:, None]
    at = answers(varied, ways.T * np.repeat(limits, 2))
    turns = turning_points(varied, ways, works, fineness)
    ends = [End(_reach(at, row), *turn) for row, turn in enumerate(turns)]
    return tuple(
        Effect(name, float(limits[place]), ends[2 * place], ends[2 * place + 1])
        for place, name in enumerate(varied.names)
    )


def _matters_most(drawn: Reach, worst: Reach, effects: tuple[Effect, ...]) -> str | None:
    """Return the thing that matters most at the limit that fails: as drawn, else at the worst, else first.

    It is the one whose tolerance takes the largest share of what there is before that limit fails. Where it
    fails as drawn, or none of them reaches it alone, it is the one that moves that limit's answer most. None
    where nothing may be off.
    """
    limits = drawn.fails[:1] or worst.fails
    shares = {effect.name: 0.0 if drawn.fails else _share(effect, limits) for effect in effects}
    if not any(shares.values()):
        limit = limits[0] if limits else SWING
        shares = {effect.name: _moves(effect, limit) for effect in effects}
    if not any(shares.values()):
        shares = {effect.name: _moves(effect, SWING) for effect in effects}
    # Two that count alike are named in their order, not by the last bits of either.
    name = max(shares, key=lambda one: round(shares[one], 3))
    return name if shares[name] > 0.0 else None


def _share(effect: Effect, limits: Sequence[str]) -> float:
    """Return how much of the way to one of the limits a tolerance takes; to any where none fails."""
    nearest = _toward(effect, limits)
    return effect.tolerance / max(nearest[0].turns_at or 0.0, TOLERANCE) if nearest else 0.0


def _toward(effect: Effect, limits: Sequence[str]) -> list[End]:
    """Return the sides on which a thing comes to one of the limits, the nearer first; to any for none."""
    ends = [end for _, end in effect.ends if end.turns_at is not None]
    return sorted(
        (end for end in ends if not limits or end.fails_by in limits), key=lambda end: end.turns_at or 0.0
    )


_ANSWER: Mapping[str, Callable[[Reach], float]] = MappingProxyType(
    {
        SWING: lambda at: at.greatest_angle + 1e-3 * at.latch_edge_least,
        LOCK_EDGE: lambda at: at.latch_edge_least,
        BARREL: lambda at: at.barrel_freedom,
        CLEAR_WIDTH: lambda at: at.clear_width_at_90 or 0.0,
    }
)
"""The answer that each limit is about; of a swing that nothing moves, far behind, the lock edge's passage."""


def _moves(effect: Effect, limit: str) -> float:
    """Return how much a thing moves the answer that a limit is about, from its least to its most."""
    answer = _ANSWER.get(limit, _ANSWER[SWING])
    return abs(answer(effect.plus.at) - answer(effect.minus.at))


# --- What there is to spare ---


def _margins(varied: Varied, drawn: Reach, effects: tuple[Effect, ...]) -> Mapping[str, float | None]:
    clear = drawn.clear_width_at_90
    required = varied.clear_width
    spare = None if clear is None or required is None else clear - required
    margins = {
        SWING: _swing_margin(drawn, effects),
        LOCK_EDGE: drawn.latch_edge_least if varied.passes_at_latch else None,
        BARREL: drawn.barrel_freedom,
        CLEAR_WIDTH: spare,
        MOUNTING: None,
    }
    return MappingProxyType(margins)


def _swing_margin(drawn: Reach, effects: tuple[Effect, ...]) -> float | None:
    """Return by how much the wall face may come toward the door; by how much the hinge may shrink if no wall.

    Open flat, both count in full: 2 o - i + p less what stands there. Below 0 it is what lacks.
    """
    by_name = {effect.name: effect for effect in effects}
    for effect in (by_name[name] for name in MENDS if name in by_name):
        ends = [end for _, end in effect.ends if end.turns_at is not None]
        turns = [end.turns_at for end in ends if drawn.fails or end.fails_by == SWING]
        if turns:
            nearest = min(turn for turn in turns if turn is not None)
            return -nearest if drawn.fails else nearest
    return None


def _margin_of(
    drawn: Reach,
    worst: Reach,
    effects: tuple[Effect, ...],
    margins: Mapping[str, float | None],
    most: str | None,
) -> str:
    """Return the check that gives way first: one that fails, else by what matters most, else the swing."""
    if drawn.fails:
        return drawn.fails[0]
    by_name = {effect.name: effect for effect in effects}
    nearest = [] if most is None else _toward(by_name[most], worst.fails)
    if nearest and nearest[0].fails_by is not None:
        return nearest[0].fails_by
    return next((one for one in (SWING, LOCK_EDGE) if margins[one] is not None), BARREL)
