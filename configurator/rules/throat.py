"""How deep a jamb is for the wall it stands in, by kind of frame.

A steel frame that wraps the wall turns back at it on both faces by its returns; what lies between them is the
throat. A wood jamb is as deep as the wall and a little over. A butted frame and an aluminum tube have a depth
of their own, whatever the wall.
"""

from configurator.tables import FrameKindRow, frame_usual, row_of
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
