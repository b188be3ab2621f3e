"""A small job at the end of a level: a schedule of four openings, and an order of it with slips in it.

The trainee points at the cells of the order that are wrong. They are marked against the order that the
program itself makes of the schedule, not against a list of what was planted.
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from random import Random
from types import MappingProxyType
from typing import Any

from configurator.model import Job, Opening
from configurator.order.book import tally_job
from configurator.order.lines import OrderLine
from configurator.order.take_off import TakeOff, take_off
from configurator.practice.words import fraction
from configurator.rules.hinge.finish import finishes, same_look
from configurator.rules.hinge.stock import next_narrower
from configurator.rules.wording import counted, feet, size
from configurator.sentences import as_sentence, written
from configurator.study.run import study

ORDER_HEADS = ("Line", "Quantity", "Size", "Bearing", "Metal and finish", "Pin", "For")
SCHEDULE_HEADS = ("Mark", "Number", "Opening", "Leaves", "Hand", "Door", "Use", "Wall")
QUANTITY, SIZE, BEARING, FINISH, PIN = 1, 2, 3, 4, 5
"""Places in a row of the order that may be wrong."""
_REASONS: Mapping[int, tuple[str, ...]] = MappingProxyType(
    {
        QUANTITY: ("count",),
        SIZE: ("height", "width"),
        BEARING: ("bearing",),
        FINISH: ("finish_bhma",),
        PIN: ("pin",),
    }
)
_BEARINGS = {"ball": "antifriction", "plain": "plain"}
_MOST_TRIES = 200
Cell = tuple[int, int]
Cells = tuple[str, ...]
_Slip = Callable[[OrderLine, Job, Random], str | None]


@dataclass(frozen=True, slots=True)
class SmallJob:
    """A level's small job: the schedule as a job of its own, the order's rows, how many slips it has."""

    level: int
    seed: int
    job: Job
    order: tuple[Cells, ...]
    slips: int

    @property
    def schedule(self) -> tuple[Cells, ...]:
        """The rows of the schedule."""
        return tuple(_schedule_row(opening) for opening in self.job.openings)


@dataclass(frozen=True, slots=True)
class Outcome:
    """How the cells pointed at compare with the program's own order: found, missed, and right all along."""

    found: frozenset[Cell]
    missed: frozenset[Cell]
    mistaken: frozenset[Cell]
    why: Mapping[Cell, str]
    """For each cell that is wrong, what it reads, what it should read, and the reason."""

    @property
    def is_passed(self) -> bool:
        """Whether every slip was found, and nothing else was pointed at."""
        return not self.missed and not self.mistaken

    @property
    def words(self) -> str:
        """Say how it went, without telling what was missed."""
        slips = len(self.found) + len(self.missed)
        if self.is_passed:
            return f"All {slips} slips found, and nothing else pointed at."
        mistaken = (
            f" {counted(len(self.mistaken), 'cell', 'cells')} you pointed at {_are(self.mistaken)} right."
        )
        return f"{len(self.found)} of {slips} slips found.{mistaken if self.mistaken else ''} Look again."


def _are(cells: Collection[Cell]) -> str:
    return "is" if len(cells) == 1 else "are"


def small_job(level: int, seed: int) -> SmallJob:
    """Return the small job of a level and a seed, always the same. Raises KeyError for an unknown level."""
    kinds, wanted = _LEVELS[level]
    random = Random(f"small job {level} {seed}")
    for _ in range(_MOST_TRIES):
        job = _job(level, random)
        counted_job = _take_off(job)
        if counted_job.not_ordered or counted_job.has_errors or len(counted_job.lines) < 3:
            continue
        order = _with_slips(counted_job, job, random, kinds, wanted)
        if order is not None:
            return SmallJob(level, seed, job, order, wanted)
    raise RuntimeError(f"level {level} finds no small job for the seed {seed}")


def mark_job(one: SmallJob, chosen: Collection[Cell]) -> Outcome:
    """Compare the cells pointed at with the order that the program makes of the schedule."""
    lines = _take_off(one.job).lines
    right = tuple(_row(line) for line in lines)
    wrong = {
        (row, place)
        for row, cells in enumerate(right)
        for place, cell in enumerate(cells)
        if one.order[row][place] != cell
    }
    why = {
        (row, place): f"Line {row + 1} reads {one.order[row][place]} and should read {right[row][place]}. "
        + _reason(one.job, lines[row], place)
        for row, place in wrong
    }
    pointed = frozenset(chosen)
    return Outcome(frozenset(wrong & pointed), frozenset(wrong - pointed), frozenset(pointed - wrong), why)


def _reason(job: Job, line: OrderLine, place: int) -> str:
    """Return why the program orders what it does, of the first opening that a line serves."""
    mark = next(iter(line.by_mark))
    opening = next(one for one in job.openings if one.mark == mark)
    whole = study(opening).specification.whole
    said = [whole[key] for key in _REASONS[place] if key in whole]
    return " ".join(as_sentence(written(one.because)) for one in said)


def _take_off(job: Job) -> TakeOff:
    return take_off(tally_job(job), job.job)


# --- The schedule ---

_PLACES = (
    "ferry office",
    "crew mess",
    "baggage room",
    "boat shed",
    "ticket hall",
    "linen closet",
    "pump room",
)


def _job(level: int, random: Random) -> Job:
    places = random.sample(_PLACES, 4)
    openings = [_opening(f"{101 + number}", places[number], level, random, number) for number in range(4)]
    return Job.model_validate({"job": {"name": "Kestrel Point, small job"}, "openings": openings})


def _opening(mark: str, place: str, level: int, random: Random, number: int) -> dict[str, Any]:
    """Draw one of the four; what a level is about is in one of them for certain."""
    pair = level >= 3 and number == 1
    wide = random.choice((60, 72)) if pair else random.choice((32, 34, 36, 40, 44))
    busy = random.random() < 0.5
    data: dict[str, Any] = {
        "mark": mark,
        "location": place,
        "quantity": random.randint(2, 9),
        "hand": random.choice(("LHR", "RHR") if level >= 4 and number == 2 else ("LH", "RH")),
        "size": {"width": wide, "height": random.choice((84, 84, 96) if number else (84, 96))},
        "leaves": "pair" if pair else "single",
        "door": {"construction": "hollow metal, 18 gage", "thickness": 1.75},
        "frame": {"kind": "knocked-down drywall"},
        "wall": {"frame_proud": 0.125},
        "obstructions": [],
        "use": {
            "closer": number == 0 or random.random() < 0.6,
            "locked": level < 4 or number == 2 or random.random() < 0.7,
            "traffic": "average" if busy else "low",
            "fire_rated": False,
            "exposure": "interior",
            "wanted_angle": 180 if level == 5 and number == 3 else 90,
        },
    }
    if level == 5 and number == 3:
        rail = {"kind": "chair rail", "projection": random.choice((1.25, 1.5, 1.75)), "start": 1}
        data["obstructions"] = [{**rail, "bottom": 32, "top": 36}]
    return data


def _schedule_row(opening: Opening) -> Cells:
    use, rails = opening.use, opening.obstructions
    used = (
        "closer" if use.closer else "no closer",
        f"{use.traffic} traffic",
        "locked" if use.locked else "no lock",
        "opens flat" if use.wanted_angle == 180 else "",
    )
    wall = [
        f"chair rail {fraction(rail.projection or 0.0)}, from {fraction(rail.start or 0.0)}" for rail in rails
    ]
    return (
        opening.mark,
        str(opening.quantity),
        f"{feet(opening.size.width)} x {feet(opening.size.height)}",
        opening.leaves,
        opening.hand or "",
        f"{fraction(opening.door.thickness or 0.0)} hollow metal",
        ", ".join(filter(None, used)),
        ", ".join(wall) or "nothing on it",
    )


# --- The order, and what goes wrong in it ---


def _row(line: OrderLine) -> Cells:
    hinge = line.hinge
    return (
        str(line.number),
        f"{line.quantity} hinges",
        hinge.size,
        _BEARINGS[hinge.bearing],
        f"{hinge.base_metal}, {hinge.finish_bhma}",
        hinge.pin,
        ", ".join(line.by_mark),
    )


def _with_slips(
    order: TakeOff, job: Job, random: Random, kinds: Collection[str], wanted: int
) -> tuple[Cells, ...] | None:
    """Return the rows of an order with so many slips, each of its own kind; None where they find no place."""
    rows = [list(_row(line)) for line in order.lines]
    planted: set[Cell] = set()
    for kind in random.sample(sorted(kinds), len(kinds)):
        place, slip = _SLIPS[kind]
        for row in random.sample(range(len(rows)), len(rows)):
            cell = slip(order.lines[row], job, random)
            if cell is not None and cell != rows[row][place] and (row, place) not in planted:
                rows[row][place] = cell
                planted.add((row, place))
                break
        if len(planted) == wanted:
            return tuple(tuple(row) for row in rows)
    return None


def _openings_of(line: OrderLine, job: Job) -> list[Opening]:
    return [opening for opening in job.openings if opening.mark in line.by_mark]


def _turned(line: OrderLine, _: Job, __: Random) -> str:
    return size(line.hinge.width, line.hinge.height)


def _one_short(line: OrderLine, job: Job, _: Random) -> str:
    doors = sum(one.quantity * (2 if one.leaves == "pair" else 1) for one in _openings_of(line, job))
    return f"{line.quantity - doors} hinges"


def _one_opening_left_out(line: OrderLine, job: Job, _: Random) -> str | None:
    served = _openings_of(line, job)
    return None if len(served) < 2 else f"{line.quantity - line.by_mark[served[-1].mark]} hinges"


def _as_pairs(line: OrderLine, _: Job, __: Random) -> str:
    return f"{line.quantity} pair"


def _leaf_forgotten(line: OrderLine, job: Job, _: Random) -> str | None:
    pairs_in = [one for one in _openings_of(line, job) if one.leaves == "pair"]
    return f"{line.quantity - line.by_mark[pairs_in[0].mark] // 2} hinges" if pairs_in else None


def _other_bearing(line: OrderLine, _: Job, __: Random) -> str:
    return _BEARINGS["plain" if line.hinge.bearing == "ball" else "ball"]


def _other_metal(line: OrderLine, _: Job, random: Random) -> str | None:
    rows = finishes(bhma=line.hinge.finish_bhma)
    brass = same_look(rows[0], "brass") if rows else None
    numbers = [brass.bhma] if brass is not None else []
    return f"{line.hinge.base_metal}, {random.choice([*numbers, '630'])}"


def _removable(line: OrderLine, _: Job, __: Random) -> str | None:
    return "removable" if line.hinge.pin == "non-removable" else None


def _narrower(line: OrderLine, job: Job, _: Random) -> str | None:
    """Take the width below where a chair rail asked for more."""
    narrow = next_narrower(line.hinge.height, line.hinge.width)
    rails = any(one.obstructions for one in _openings_of(line, job))
    return size(line.hinge.height, narrow) if rails and narrow is not None else None


_SLIPS: Mapping[str, tuple[int, _Slip]] = MappingProxyType(
    {
        "size turned about": (SIZE, _turned),
        "one short on every door": (QUANTITY, _one_short),
        "an opening left out": (QUANTITY, _one_opening_left_out),
        "other bearing": (BEARING, _other_bearing),
        "finish of another metal": (FINISH, _other_metal),
        "second leaf forgotten": (QUANTITY, _leaf_forgotten),
        "pairs for hinges": (QUANTITY, _as_pairs),
        "pin in reach": (PIN, _removable),
        "too narrow for the rail": (SIZE, _narrower),
    }
)
_FIRST = ("size turned about", "one short on every door", "an opening left out")
_SECOND = (*_FIRST, "other bearing", "finish of another metal")
_THIRD = ("second leaf forgotten", "size turned about", "other bearing", "finish of another metal")
_FOURTH = (
    "pin in reach",
    "pairs for hinges",
    "other bearing",
    "finish of another metal",
    "size turned about",
)
_FIFTH = ("too narrow for the rail", "pin in reach", "second leaf forgotten", "finish of another metal")
_LEVELS: Mapping[int, tuple[tuple[str, ...], int]] = MappingProxyType(
    {1: (_FIRST, 2), 2: (_SECOND, 2), 3: (_THIRD, 3), 4: (_FOURTH, 3), 5: (_FIFTH, 4)}
)
"""For each level which slips may be planted, and how many are."""
