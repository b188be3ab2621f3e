"""Manoeuvring clearance on both sides of an accessible door: what is asked, what there is, what is not known.

2010 ADA Standards, Table 404.2.4.1 and 404.2.4.3 (read): a floor so deep before the closed door, and so wide
beyond its edges, by the way people come to it. What nobody measured is asked for and never passes. Inches.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from configurator.model import Floor, Obstruction
from configurator.model.words import Approach, Face
from configurator.rules.filling.leaves import leaves_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Severity, finding
from configurator.rules.wording import exactly, inches
from configurator.tables import ManoeuvringRow, ObstructionKindRow, limit, row_of, table
from configurator.units import TOLERANCE

SIDES: tuple[Face, ...] = ("pull", "push")
Kept = bool | None
"""Whether there is room enough; None where that is not known."""
_LATCHING = ("lever", "knob", "panic device")
_WAYS = {
    "front": "from the front",
    "hinge": "from the hinge side",
    "latch": "from the lock side",
}
_OVERHEAD = 80.0
"""From this height on a thing is over people's heads: 2010 ADA Standards 307.4 (read)."""


@dataclass(frozen=True, slots=True)
class Space:
    """The free floor an approach asks for: before the door, past its lock edge and past its hinge edge."""

    approach: Approach
    depth: float
    latch: float
    hinge: float

    def as_data(self) -> dict[str, Any]:
        """Return the space as other tools read it."""
        return {"approach": self.approach, "depth": self.depth, "latch": self.latch, "hinge": self.hinge}


@dataclass(frozen=True, slots=True)
class Manoeuvring:
    """One side of the door: the spaces that may serve there, and the free floor; None where not known.

    `spaces` are those of the approach given, or of every one. `recessed`: something beside the lock stands
    out so far that people come from the front only.
    """

    side: Face
    approach: Approach | None
    spaces: tuple[Space, ...]
    depth: float | None
    latch: float | None
    hinge: float | None
    recessed: bool
    supposed: str
    """What of closer and latch was supposed because nobody said; empty where nothing was."""

    def kept_by(self, space: Space) -> Kept:
        """Return whether the free floor has room for a space."""
        each = list(_enough(space, self))
        return False if False in each else None if None in each else True

    @property
    def kept(self) -> Kept:
        """Return whether there is room; by every way or by none where the way is not known."""
        by_way: dict[Approach, list[Kept]] = {}
        for space in self.spaces:
            by_way.setdefault(space.approach, []).append(self.kept_by(space))
        each = {True if True in kept else None if None in kept else False for kept in by_way.values()}
        return each.pop() if len(each) == 1 else None

    @property
    def shown(self) -> Space:
        """The space to draw: the first that is kept, else the first asked for."""
        return next((one for one in self.spaces if self.kept_by(one)), self.spaces[0])

    def as_data(self) -> dict[str, Any]:
        """Return the side as the results contract names it."""
        return {
            "side": self.side,
            "approach": self.approach,
            "asked": [space.as_data() for space in self.spaces],
            "depth": self.depth,
            "latch": self.latch,
            "hinge": self.hinge,
            "recessed": self.recessed,
            "kept": self.kept,
        }


def _enough(space: Space, there: Manoeuvring) -> Iterator[Kept]:
    pairs = ((space.depth, there.depth), (space.latch, there.latch), (space.hinge, there.hinge))
    for asked, free in pairs:
        if asked > TOLERANCE:
            yield None if free is None else free >= asked - TOLERANCE


def manoeuvring(filled: FilledOpening) -> tuple[Manoeuvring, ...]:
    """Return both sides of a door on an accessible route; none of any other."""
    if not filled.use.accessible:
        return ()
    return tuple(_side(filled, side) for side in SIDES)


def _side(filled: FilledOpening, side: Face) -> Manoeuvring:
    floor = filled.opening.pull_side if side == "pull" else filled.opening.push_side
    blocked = _blocked(filled, side)
    beside = _beside_latch(filled, floor)
    latch = min((one for one in (beside, blocked) if one is not None), default=None)
    recessed = blocked is not None and blocked < limit("recess_within").value - TOLERANCE
    approach: Approach | None = "front" if recessed else floor.approach
    closer, latched = _closes(filled)
    rows = [row for row in table(ManoeuvringRow) if row.side == side and approach in (None, row.approach)]
    return Manoeuvring(
        side=side,
        approach=approach,
        spaces=tuple(_space(row, closer is not False, latched is not False) for row in rows),
        depth=_depth(filled, floor, side, recessed),
        latch=latch,
        hinge=None if floor.hinge_side is None else floor.hinge_side + filled.frame_face,
        recessed=recessed,
        supposed=_supposing(rows, closer, latched),
    )


def _space(row: ManoeuvringRow, closer: bool, latched: bool) -> Space:
    more = closer if row.when == "closer" else closer and latched and row.when == "closer and latch"
    depth = row.depth + (row.more_depth if more else 0.0)
    return Space(row.approach, depth, row.latch + (row.more_latch if more else 0.0), row.hinge)


def _closes(filled: FilledOpening) -> tuple[bool | None, bool | None]:
    """Return whether the door has a closer and a latch; None where nobody said."""
    use, kinds = filled.opening.use, {thing.kind for thing in filled.opening.hardware}
    closer = filled.opening.closes_itself
    latched = True if use.locked or kinds & set(_LATCHING) else None
    if use.locked is False and latched is None and "pull" in kinds:
        latched = False
    return closer, latched


def _supposing(rows: list[ManoeuvringRow], closer: bool | None, latched: bool | None) -> str:
    """Return in words what is supposed of the door because nobody said, where it makes a space larger."""
    asked = {row.when for row in rows}
    unsaid = ["a closer"] if closer is None and asked != {None} else []
    unsaid += ["a latch"] if latched is None and closer is not False and "closer and latch" in asked else []
    return " and ".join(unsaid)


# --- What there is ---


def _depth(filled: FilledOpening, floor: Floor, side: Face, recessed: bool) -> float | None:
    """Return the free floor before the closed door: from the wall face, of a recessed door from its own."""
    given = floor.depth
    if given is None and side == "pull":
        given = filled.opening.use.corridor_width
    return given if given is None or not recessed else given + max(0.0, _set_back(filled, side))


def _set_back(filled: FilledOpening, side: Face) -> float:
    """Return how far the closed door's face lies behind the wall face; negative where it stands out."""
    if side == "pull":
        return filled.inset - filled.frame_proud
    return filled.frame_proud + filled.wall_thickness - filled.inset - filled.thickness


def _past_latch(filled: FilledOpening) -> float:
    """Return how far the frame's outer edge lies beyond the lock edge of the leaf that serves the route."""
    leaves = {leaf.name: leaf for leaf in leaves_of(filled)}
    other = leaves["inactive"].width + filled.meeting_gap if "inactive" in leaves else 0.0
    return other + filled.frame_face


def _beside_latch(filled: FilledOpening, floor: Floor) -> float | None:
    return None if floor.latch_side is None else floor.latch_side + _past_latch(filled)


def _blocked(filled: FilledOpening, side: Face) -> float | None:
    """Return how far past the lock edge something begins that makes a recess; None where none is known.

    Up to 8 in past the door's face it counts as the wall: 404.2.4.3 (read).
    """
    most, past = limit("recess_deep").value + TOLERANCE, _past_latch(filled)
    starts = [past + (thing.start or 0.0) for thing in _in_the_way(filled) if side == "pull"]
    frame = filled.inset if side == "pull" else filled.jamb_depth - filled.inset - filled.thickness
    starts += [past - filled.frame_face] if frame > most else []
    starts += [past] if _set_back(filled, side) > most else []
    return min(starts, default=None)


def _in_the_way(filled: FilledOpening) -> Iterator[Obstruction]:
    """Yield what stands on the lock side of the pull side, farther out than a recess may be deep."""
    from_wall = _set_back(filled, "pull")
    for thing in filled.opening.obstructions:
        row = row_of(ObstructionKindRow, thing.kind)
        out = (thing.offset or 0.0) + (thing.diameter or thing.projection or 0.0)
        out += filled.inset if row.measured_from == "frame" else from_wall
        endless = row.outline == "wall" and thing.projection is None
        high = (thing.bottom or 0.0) >= _OVERHEAD - TOLERANCE
        if thing.side == "latch" and not high and (endless or out > limit("recess_deep").value + TOLERANCE):
            yield thing


# --- What is said of it ---


def manoeuvring_findings(filled: FilledOpening) -> Iterator[Finding]:
    """Yield of each side whether there is room, or what has to be measured to know."""
    for one in manoeuvring(filled):
        yield _said(one)


def _said(one: Manoeuvring) -> Finding:
    # No hinge mends the floor before a door: what lacks is warned of, and the hinge stays recommended.
    kinds: dict[Kept, tuple[str, Severity]] = {
        True: ("manoeuvring kept", "note"),
        False: ("manoeuvring short", "warning"),
        None: ("manoeuvring not known", "note"),
    }
    kept = one.kept
    code, severity = kinds[kept]
    source = limit("recess_deep").cited if one.recessed else next(iter(table(ManoeuvringRow))).cited
    message = f"{_asks(one)}{_supposed(one)} {_verdict(one, kept)}"
    numbers = {"depth": one.depth, "latch": one.latch, "hinge": one.hinge}
    known = {key: value for key, value in numbers.items() if value is not None}
    return finding(code, severity, message, source, (), asked=one.shown.depth, **known)


def _asks(one: Manoeuvring) -> str:
    ways: dict[str, list[str]] = {}
    for space in one.spaces:
        ways.setdefault(_WAYS[space.approach], []).append(_room(space))
    asked = "; ".join(f"{' or '.join(rooms)} {way}" for way, rooms in ways.items())
    recess = f", recessed more than {exactly(limit('recess_deep').value)}" if one.recessed else ""
    return f"Manoeuvring space on the {one.side} side{recess}: {asked}."


def _room(space: Space) -> str:
    beyond = ((space.latch, "past the lock"), (space.hinge, "past the hinges"))
    more = [f"{exactly(wide, 'up')} {where}" for wide, where in beyond if wide > TOLERANCE]
    return " and ".join((f"{exactly(space.depth, 'up')} deep", *more))


def _supposed(one: Manoeuvring) -> str:
    return f" Nobody said whether it has {one.supposed}: that is supposed." if one.supposed else ""


def _verdict(one: Manoeuvring, kept: Kept) -> str:
    there = _there(one)
    if kept:
        return f"{there}: kept. Check local codes; the authority decides."
    if kept is False:
        return f"{there}: too little. Move what stands there, or swing the door the other way."
    return f"{f'{there}. ' if there else ''}Give {_missing(one)}."


def _there(one: Manoeuvring) -> str:
    free = ((one.depth, "deep"), (one.latch, "past the lock"), (one.hinge, "past the hinges"))
    words = " and ".join(f"{inches(value, 'down')} {where}" for value, where in free if value is not None)
    return f"Free are {words}" if words else ""


def _missing(one: Manoeuvring) -> str:
    asked = [] if one.approach else ["from which way people come"]
    for key, words in (
        ("depth", "how deep the floor is"),
        ("latch", "what is free beside the lock"),
        ("hinge", "what is free beside the hinges"),
    ):
        if getattr(one, key) is None and any(getattr(space, key) > TOLERANCE for space in one.spaces):
            asked.append(words)
    return " and ".join(filter(None, (", ".join(asked[:-1]), asked[-1])))
