"""Whether frame and wall, as they were given, go together: depth, throat, returns, stop, layers.

What was not given follows from what was, so only what was given can disagree. Each disagreement is said with
its numbers and with every mend that one click can make.
"""

from collections.abc import Iterator
from dataclasses import replace

from configurator.rules.filling.frame_and_wall import depth_for, follows_wall, has_returns, loosest, throat_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, Source, finding
from configurator.rules.wording import exactly, remaining
from configurator.tables import FrameKindRow, row_of
from configurator.units import TOLERANCE

LEAST_RETURN = 0.25
"""A return narrower than this is not offered as a mend, inches; from memory."""
_PLAN = Source("worked out from the plan", "derived")
_PRACTICE = Source("common practice, no source", "common practice")
_APPLIED = ("tile", "stone", "marble", "terrazzo")

CODES = frozenset(
    {
        "wall thicker than throat",
        "throat wider than wall",
        "wall thicker than jamb",
        "jamb deeper than wall",
        "no returns",
        "no room for a stop",
        "stop too wide",
        "tile in the throat",
    }
)
"""The code of every finding that is made here."""

Mends = tuple[tuple[Fix, ...], ...]


def frame_fit_findings(filled: FilledOpening) -> Iterator[Finding]:
    """Yield a finding for each disagreement between the frame and its wall."""
    yield from _returns(filled)
    yield from _stop(filled)
    if not follows_wall(filled.opening.frame.kind):
        return
    over = filled.wall_thickness - throat_of(filled.jamb_depth, filled.return_depth)
    if over > TOLERANCE:
        yield _too_thick(filled)
    elif -over > loosest(filled.opening.frame.kind) + TOLERANCE:
        yield _too_thin(filled, -over)
    yield from _tile_in_throat(filled)


def core_of(filled: FilledOpening) -> float:
    """Return the wall without what is applied to its faces and may stop against a frame, as tile; inches."""
    return filled.wall_thickness - _applied(filled.layers) - _applied(filled.layers[::-1])


def _applied(layers: tuple[tuple[str, float], ...]) -> float:
    """Return how thick what is applied to the first face is; nothing where the wall is nothing else."""
    total = 0.0
    for name, thickness in layers:
        if not _is_applied(name):
            return total
        total += thickness
    return 0.0


def _is_applied(name: str) -> bool:
    return any(word in name.lower() for word in _APPLIED)


def _with(mends: Mends, said: Finding) -> Finding:
    """Put the mends on a finding, the likeliest first."""
    return replace(said, fix=mends[0], other_fixes=mends[1:]) if mends else said


def _returns(filled: FilledOpening) -> Iterator[Finding]:
    """Wood jambs and aluminum tubes have no returns, and so no throat."""
    given, kind = filled.opening.frame.return_depth, filled.opening.frame.kind
    if given and not has_returns(kind):
        yield finding(
            "no returns",
            "warning",
            f"Returns of {exactly(given)} were given, and {_a(kind)} has none, and no throat: they count for "
            "nothing here. Take them out, or choose a steel frame.",
            _PRACTICE,
            (Fix("frame.return_depth", None, "Take the returns out"),),
            returns=given,
        )


def _stop(filled: FilledOpening) -> Iterator[Finding]:
    """What stands behind the rabbet: room for a stop, and no more stop than room."""
    room = filled.jamb_depth - filled.rabbet
    given = filled.opening.frame.stop_width
    if room <= TOLERANCE and filled.stop_height > 0:
        yield _no_room_for_stop(filled)
    elif given is not None and given > room + TOLERANCE:
        yield finding(
            "stop too wide",
            "warning",
            f"The frame stop is {exactly(given, 'up')} wide and behind the rabbet the jamb is "
            f"{exactly(room, 'down')} deep: give a narrower stop or a deeper jamb.",
            _PLAN,
            (Fix("frame.stop_width", None, "Take the usual stop width"),),
            stop=given,
            room=room,
        )


def _no_room_for_stop(filled: FilledOpening) -> Finding:
    mends: Mends = ()
    frame = filled.opening.frame
    if frame.rabbet is not None:
        mends += ((Fix("frame.rabbet", None, "Take the usual rabbet"),),)
    if frame.jamb_depth is not None:
        mends += ((Fix("frame.jamb_depth", None, "Take the usual jamb depth"),),)
    said = finding(
        "no room for a stop",
        "warning",
        f"The rabbet is {exactly(filled.rabbet)} deep and the jamb {exactly(filled.jamb_depth)}: nothing is "
        "left for a frame stop. Check the rabbet and the jamb depth.",
        _PLAN,
        rabbet=filled.rabbet,
        depth=filled.jamb_depth,
    )
    return _with(mends, said)


def _too_thick(filled: FilledOpening) -> Finding:
    if row_of(FrameKindRow, filled.opening.frame.kind).wraps:
        return _thicker_than_throat(filled)
    wall, depth = filled.wall_thickness, filled.jamb_depth
    said = finding(
        "wall thicker than jamb",
        "warning",
        f"The wall is {exactly(wall, 'up')} thick and the jamb {exactly(depth, 'down')} deep: the casing "
        f"would stand off the jamb by up to {exactly(wall - depth, 'up')}. Take a deeper jamb, or add a jamb "
        "extension.",
        _PRACTICE,
        wall=wall,
        depth=depth,
    )
    return _with((*_made_for_wall(filled), *_other_wall(filled)), said)


def _thicker_than_throat(filled: FilledOpening) -> Finding:
    """A frame that wraps the wall cannot be narrower inside than the wall, unless tile stops against it."""
    wall, throat = filled.wall_thickness, throat_of(filled.jamb_depth, filled.return_depth)
    stops_against = core_of(filled) <= throat + TOLERANCE
    outer = "tile stops" if stops_against else "the outer layers stop"
    said = finding(
        "wall thicker than throat",
        "note" if stops_against else "warning",
        f"The wall is {exactly(wall, 'up')} thick and the frame's throat {remaining(throat)}: the frame goes "
        f"over that wall only where {outer} against it. Check the jamb depth.",
        _PLAN,
        wall=wall,
        throat=throat,
    )
    placed = _core_in_throat(filled, throat) if stops_against else ()
    return _with((*placed, *_made_for_wall(filled), *_shorter_returns(filled), *_other_wall(filled)), said)


def _core_in_throat(filled: FilledOpening, throat: float) -> Mends:
    """Return the mend that puts the frame over the wall's core, where tile on one face has moved it off."""
    proud = filled.return_depth + (throat - core_of(filled)) / 2 - _applied(filled.layers)
    if "wall.frame_proud" not in filled.assumed or abs(proud - filled.frame_proud) <= TOLERANCE:
        return ()
    place = f"{exactly(proud)} proud" if proud >= 0 else f"{exactly(-proud)} behind the tile"
    return ((Fix("wall.frame_proud", proud, f"Tile stops against it: frame {place}"),),)


def _too_thin(filled: FilledOpening, loose: float) -> Finding:
    wall, depth = filled.wall_thickness, filled.jamb_depth
    throat = throat_of(depth, filled.return_depth)
    if row_of(FrameKindRow, filled.opening.frame.kind).wraps:
        code = "throat wider than wall"
        message = (
            f"The frame's throat is {exactly(throat, 'up')} and the wall {exactly(wall, 'down')} "
            f"thick: {exactly(loose, 'up')} stays open beside it. Take a shallower jamb, or check the wall."
        )
    else:
        code = "jamb deeper than wall"
        message = (
            f"The jamb is {exactly(depth, 'up')} deep and the wall {exactly(wall, 'down')} thick: the casing "
            f"would stand off the wall by up to {exactly(loose, 'up')}. Take a shallower jamb, or check the "
            "wall."
        )
    said = finding(code, "note", message, _PRACTICE, wall=wall, depth=depth, loose=loose)
    return _with((*_made_for_wall(filled), *_other_wall(filled)), said)


def _made_for_wall(filled: FilledOpening) -> Mends:
    """Return the mend that makes the jamb for the wall."""
    kind, wall = filled.opening.frame.kind, filled.wall_thickness
    depth = depth_for(kind, filled.jamb_depth, filled.return_depth, wall)
    return ((Fix("frame.jamb_depth", depth, f"Make the jamb {exactly(depth)} deep"),),)


def _shorter_returns(filled: FilledOpening) -> Mends:
    fitting = (filled.jamb_depth - filled.wall_thickness) / 2
    if fitting < LEAST_RETURN or fitting >= filled.return_depth:
        return ()
    return ((Fix("frame.return_depth", fitting, f"Make the returns {exactly(fitting)}"),),)


def _other_wall(filled: FilledOpening) -> Mends:
    """Return the mend that takes the wall from the frame; not where somebody has counted its layers."""
    if filled.opening.wall.layers or throat_of(filled.jamb_depth, filled.return_depth) <= 0:
        return ()
    return ((Fix("wall.thickness", None, "Take the wall that fits the frame"),),)


def _tile_in_throat(filled: FilledOpening) -> Iterator[Finding]:
    """A depth that nobody gave was taken to go over the tile as well; often the tile stops against it."""
    kind, core = filled.opening.frame.kind, core_of(filled)
    assumed = "frame.jamb_depth" in filled.assumed and "wall.layers" not in filled.assumed
    if (
        not assumed
        or not row_of(FrameKindRow, kind).wraps
        or not 0 < core < filled.wall_thickness - TOLERANCE
    ):
        return
    depth = core + 2 * filled.return_depth
    yield finding(
        "tile in the throat",
        "note",
        f"The frame is taken to go over the tile too: {exactly(filled.jamb_depth)} deep. If the tile comes "
        f"after the frame and stops against it, the jamb is {exactly(depth)} deep, the wall face nearer, "
        "and the door may open less far. Ask, and give the jamb depth.",
        _PRACTICE,
        (Fix("frame.jamb_depth", depth, f"Jamb {exactly(depth)}: tile stops against it"),),
        depth=filled.jamb_depth,
        without=depth,
    )


def _a(kind: str) -> str:
    return f"{'an' if kind[0] in 'aeiou' else 'a'} {kind} frame"
