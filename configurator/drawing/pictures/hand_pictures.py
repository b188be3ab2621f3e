"""The four hands of a door as they are seen from outside, and what each looks like from inside.

You stand below, outside, where you unlock. Naming hands from outside is trade usage; common practice, no
source.
"""

import math

from configurator.drawing.base.primitives import Arc, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box, Group, View, paper
from configurator.drawing.pictures.scenes import WORD, Scene, scene
from configurator.drawing.pictures.small_plan import mapped, small_plan, swing_arc
from configurator.drawing.pictures.word_pictures import view_of

NAMES = {"LH": "left hand", "RH": "right hand", "LHR": "left hand reverse", "RHR": "right hand reverse"}
"""Every hand, spelled out."""
SIZE = (190.0, 190.0)
"""Width and height of a picture as it is usually shown, points."""
_FROM_INSIDE = {"LH": "RHR", "RH": "LHR", "LHR": "RH", "RHR": "LH"}
_BEYOND, _YOU, _TYPE = 13.0, 4.0, 7.5
_LOCK_IN, _LOCK_SIZE = 3.5, 1.6
"""The lock's mark from the latch edge, and how large, inches; drawn, not measured."""


def hinges_on_left(hand: str) -> bool:
    """Say whether somebody outside has the hinges on the left."""
    return hand.startswith("L")


def opens_toward_you(hand: str) -> bool:
    """Say whether the door opens toward somebody outside: such a hand is a reverse one."""
    return hand.endswith("R")


def seen_from_outside(hand: str) -> str:
    """Say in plain words what is seen from where you unlock."""
    side = "left" if hinges_on_left(hand) else "right"
    return f"Hinges on your {side}, opens {'toward' if opens_toward_you(hand) else 'away from'} you"


def looks_from_inside(hand: str) -> str:
    """Return the hand that the same door would have if the inside were taken for the outside."""
    return _FROM_INSIDE[hand]


def said_from_inside(hand: str) -> str:
    """Say what the same door looks like from inside, and that it keeps its hand."""
    other = looks_from_inside(hand)
    side = "left" if hinges_on_left(other) else "right"
    way = "toward" if opens_toward_you(other) else "away from"
    return (
        f"Seen from inside, the hinges of this door are on your {side} and it opens {way} you, as an {other} "
        f"does from outside. It is {hand}, {NAMES[hand]}, all the same: the hand is named from outside."
    )


def hand_picture(hand: str, width: float = SIZE[0], height: float = SIZE[1]) -> tuple[Group, ...]:
    """Return the plan of a typical door of that hand, with you below it; width and height in points.

    Raises KeyError for an unknown hand.
    """
    NAMES[hand]
    drawn = scene("bare_whole")
    across, up = (1.0 if hinges_on_left(hand) else -1.0), (-1.0 if opens_toward_you(hand) else 1.0)
    middle = (drawn.hung.opening / 2, -drawn.hung.h.D / 2)
    parts = (*small_plan(drawn.hung, drawn.angle), swing_arc(drawn.hung, drawn.angle, WORD), _lock(drawn))
    placed = tuple(mapped(part, across, up, middle) for part in parts)
    extent = _extent(drawn, up)
    view = view_of(extent, Box(0.0, 0.0, width, height))
    whole = paper(width, height)
    ground = Polygon("A-ANNO-BRDR-PICT", rectangle(0.0, width, 0.0, height), "paper", outlined=False)
    return (
        Group(whole, (ground,)),
        Group(view, (*placed, *_you(middle[0], extent.bottom + _YOU))),
        Group(whole, _words(view, middle[0], extent)),
    )


def _extent(drawn: Scene, up: float) -> Box:
    """Return what is shown: the swing above or below the wall, and on the other side room to stand."""
    h, wide = drawn.hung.h, drawn.hung.opening
    reach = swing_arc(drawn.hung, drawn.angle).radius + drawn.hung.pin.y_p + h.D + 1.0
    above, below = (reach, _BEYOND + 3.0) if up > 0 else (_BEYOND - 5.0, reach + 8.0)
    middle = -h.D / 2
    return Box(-h.F - 7.0, middle - below, wide + h.F + 7.0, middle + above)


def _lock(drawn: Scene) -> Polygon:
    """A mark of the lock at the latch edge of the closed leaf, toward the outside."""
    h = drawn.hung.h
    x, y = h.O - h.g_l - _LOCK_IN, -h.i - h.T
    return Polygon("A-DOOR-HDWR", rectangle(x - _LOCK_SIZE, x + _LOCK_SIZE, y - _LOCK_SIZE, y), "hardware")


def _you(x: float, y: float) -> tuple[Primitive, ...]:
    """Somebody seen from above, shoulders and head."""
    shoulders = tuple(
        (x + 4.2 * math.cos(turn), y + 1.7 * math.sin(turn))
        for turn in (math.tau * step / 24 for step in range(24))
    )
    return (
        Polygon("A-ANNO-TEXT", shoulders, "poche", "you"),
        Arc("A-ANNO-TEXT", (x, y), 1.9, 0.0, math.tau, "paper", "you"),
        Polyline("A-ANNO-TEXT", ((x - 0.9, y + 1.9), (x, y + 3.0), (x + 0.9, y + 1.9))),
    )


def _words(view: View, middle: float, extent: Box) -> tuple[Primitive, ...]:
    x, y = view.to_sheet((middle + 5.5, extent.bottom + _YOU))
    top = view.to_sheet((middle, extent.top))[1]
    return (
        Text("A-ANNO-TEXT", (x, y - 0.3 * _TYPE), "you, outside", _TYPE),
        Text("A-ANNO-NOTE", (view.window.width / 2, top - 1.2 * _TYPE), "inside", _TYPE, "middle"),
    )
