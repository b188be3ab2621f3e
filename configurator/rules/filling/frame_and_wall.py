"""The frame's depth and the wall about it, filled in together: what was given leads and the rest follows.

A steel frame that wraps its wall, and a wood jamb, are as deep as the wall asks: their throat, the room
between the two returns, is the wall and a little over. A butted frame and an aluminum tube have a depth of
their own, whatever the wall.
"""

from dataclasses import dataclass

from configurator.rules.filling.filler import Assumed, Filler, NotGivenError
from configurator.rules.finding import Source
from configurator.tables import FrameKindRow, WallLayerRow, frame_usual, row_of, table
from configurator.units import TOLERANCE


def has_returns(kind: str) -> bool:
    """Return whether such a frame turns back at the wall."""
    return row_of(FrameKindRow, kind).returns


def follows_wall(kind: str) -> bool:
    """Return whether such a frame is made as deep as its wall asks."""
    return "throat_slack" in frame_usual(kind)


def throat_of(depth: float, returns: float) -> float:
    """Return the room between the two returns, inches; negative where they overlap."""
    return depth - 2 * returns


def depth_for(kind: str, usual: float, returns: float, wall: float) -> float:
    """Return the jamb depth for a wall, inches: the usual one where it fits, else one made for it.

    Only for a kind of frame that follows the wall.
    """
    slack = frame_usual(kind)["throat_slack"].value or 0.0
    if -TOLERANCE <= throat_of(usual, returns) - wall <= slack + TOLERANCE:
        return usual
    return wall + slack + 2 * returns


def loosest(kind: str) -> float:
    """Return how much wider than the wall such a frame's throat may be without remark, inches."""
    return frame_usual(kind)["throat_loose"].value or 0.0


LEAST_SOFFIT = 0.75
"""A soffit narrower than this leaves no second rabbet: the stop runs to the far face, inches; derived."""
THINNEST_WALL = 1 / 16
"""What is taken for a wall where the returns leave nothing, inches; derived."""
_PRACTICE = Source("common practice, no source", "common practice")
_DERIVED = Source("worked out from what was given", "derived")

Layers = tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True)
class FrameAndWall:
    """A frame's depth and the wall about it, inches."""

    jamb_depth: float
    return_depth: float
    stop_width: float
    metal_thickness: float
    wall_thickness: float
    layers: Layers
    frame_proud: float


def frame_and_wall(filler: Filler, thickness: float, rabbet: float) -> FrameAndWall:
    """Return depth, returns, stop and wall, what nobody gave following from what was given; inches.

    Without a wall the throat is the wall; without a jamb depth a frame that follows its wall is as deep as
    the wall asks. Raises NotGivenError where a butted frame's place is missing.
    """
    kind = filler.opening.frame.kind
    given = filler.opening.frame.return_depth
    returns = filler.of_frame("frame.return_depth", given, thickness) if has_returns(kind) else 0.0
    depth = _jamb_depth(filler, thickness, returns)
    wall, layers = _wall(filler, depth, throat_of(depth, returns))
    return FrameAndWall(
        jamb_depth=depth,
        return_depth=returns,
        stop_width=_stop_width(filler, depth, rabbet),
        metal_thickness=_metal_thickness(filler, thickness),
        wall_thickness=wall,
        layers=layers,
        frame_proud=_frame_proud(filler, depth, wall),
    )


def given_wall(filler: Filler) -> float | None:
    """Return the wall's thickness where it was given, by itself or as its layers; inches."""
    wall = filler.opening.wall
    if wall.thickness is None and wall.layers:
        return sum(layer.thickness for layer in wall.layers)
    return wall.thickness


def _jamb_depth(filler: Filler, thickness: float, returns: float) -> float:
    kind, wall = filler.opening.frame.kind, given_wall(filler)
    given = filler.opening.frame.jamb_depth
    if wall is None or not follows_wall(kind):
        return filler.of_frame("frame.jamb_depth", given, thickness)
    usual = frame_usual(kind)["jamb_depth"].for_door(thickness) or 0.0
    follows = depth_for(kind, usual, returns, wall)
    if follows == usual:
        return filler.of_frame("frame.jamb_depth", given, thickness)
    because = "follows from the wall: its thickness and the two returns"
    if not has_returns(kind):
        because = "follows from the wall: its thickness and 1/16 in, so that the casing lies on both"
    return filler.take("frame.jamb_depth", given, follows, because, _PRACTICE)


def _stop_width(filler: Filler, depth: float, rabbet: float) -> float:
    kind, given = filler.opening.frame.kind, filler.opening.frame.stop_width
    room = max(depth - rabbet, 0.0)
    row = frame_usual(kind).get("stop_width")
    if row is not None:
        usual = min(row.value or 0.0, room)
        return filler.take("frame.stop_width", given, usual, f"usual for a {kind} frame", row.cited)
    soffit = depth - 2 * rabbet
    if soffit >= LEAST_SOFFIT:
        because = "the soffit: what the jamb depth leaves between two rabbets alike"
        return filler.take("frame.stop_width", given, soffit, because, _DERIVED)
    because = "to the far face: the jamb depth leaves no second rabbet"
    return filler.take("frame.stop_width", given, room, because, _DERIVED)


def _metal_thickness(filler: Filler, thickness: float) -> float:
    if "metal_thickness" not in frame_usual(filler.opening.frame.kind):
        return 0.0
    return filler.of_frame("frame.metal_thickness", filler.opening.frame.metal_thickness, thickness)


def _wall(filler: Filler, depth: float, throat: float) -> tuple[float, Layers]:
    """Return the wall's thickness and layers: the layers' sum where only they are given, else the throat.

    A butted frame goes round no wall: its masonry is the thinnest block that takes the frame.
    """
    given = filler.opening.wall.layers
    kind = filler.opening.frame.kind
    because, source = "the frame's throat: jamb depth less two returns", _DERIVED
    usual = given_wall(filler) if given else max(throat, THINNEST_WALL)
    block = None if row_of(FrameKindRow, kind).usual_place else _block_for(depth)
    if given:
        because = "the sum of the wall's layers"
    elif block is not None:
        usual, source = block.thickness, block.cited
        because = "the thinnest concrete block that takes the frame"
    elif not has_returns(kind):
        because = "as thick as the jamb is deep"
    thickness = filler.take(
        "wall.thickness", filler.opening.wall.thickness, usual or THINNEST_WALL, because, source
    )
    if given:
        return thickness, tuple((layer.name, layer.thickness) for layer in given)
    layers = usual_layers(kind, thickness)
    words = ", ".join(name for name, _ in layers)
    filler.assumed["wall.layers"] = Assumed(
        words, "usual wall about such a frame", _PRACTICE.text, _PRACTICE.mark
    )
    return thickness, layers


def _block_for(depth: float) -> WallLayerRow | None:
    """Return the thinnest concrete block at least as thick as a frame is deep; None where none is."""
    blocks = [row for row in table(WallLayerRow) if row.name == "concrete block"]
    return next((row for row in blocks if row.thickness >= depth - TOLERANCE), None)


def usual_layers(kind: str, thickness: float) -> tuple[tuple[str, float], ...]:
    """Return what such a wall is likely made of: masonry about a butted frame, else boards on studs."""
    row = frame_usual(kind).get("board")
    if row is None or row.value is None:
        return (("masonry", thickness),)
    board = row.value
    if thickness <= 2 * board + 1:
        return (("gypsum board", thickness),)
    return (("gypsum board", board), ("stud space", thickness - 2 * board), ("gypsum board", board))


def _frame_proud(filler: Filler, depth: float, wall: float) -> float:
    row = row_of(FrameKindRow, filler.opening.frame.kind)
    given = filler.opening.wall.frame_proud
    if not row.usual_place and given is None:
        raise NotGivenError(
            "wall.frame_proud",
            "frame proud of wall must be given: a butted frame has no usual place in a masonry wall "
            "(0 where it is flush, negative where it stands behind the wall face)",
        )
    because = "centred: half of what the jamb is deeper than the wall"
    if row.wraps:
        because = "centred in the wall that it wraps"
    return filler.take("wall.frame_proud", given, (depth - wall) / 2, because, _DERIVED)
