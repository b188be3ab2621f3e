"""The four hands of a door as they are seen from outside, and what each looks like from inside.

You stand below, outside, where you unlock. Naming hands from outside is trade usage; common practice, no
source.
"""

import math

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box, Group, View, paper
from configurator.drawing.pictures.scenes import WORD, Scene, scene
from configurator.drawing.pictures.small_plan import mapped, small_plan, swing_arc
from configurator.drawing.pictures.word_pictures import view_of
from configurator.geometry.leaf_corners import leaf_corners

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


def hand_picture(
    hand: str,
    width: float = SIZE[0],
    height: float = SIZE[1],
    words: tuple[str, str] = ("you, outside", "inside"),
    closed: bool = False,
) -> tuple[Group, ...]:
    """Return the plan of a typical door of that hand, the outside below it; width and height in points.

    `words` are lettered below and above it, and you stand where they begin with `you`; a `closed` door shows
    neither its swing nor its barrel. Raises KeyError for an unknown hand.
    """
    NAMES[hand]
    drawn = scene("bare_whole")
    across, up = (1.0 if hinges_on_left(hand) else -1.0), (-1.0 if opens_toward_you(hand) else 1.0)
    middle = (drawn.hung.opening / 2, -drawn.hung.h.D / 2)
    swinging = (*small_plan(drawn.hung, drawn.angle), swing_arc(drawn.hung, drawn.angle, WORD), _lock(drawn))
    parts = (*small_plan(drawn.hung, 0.0)[:4], _shut(drawn)) if closed else swinging
    placed = tuple(mapped(part, across, up, middle) for part in parts)
    extent = _extent(drawn, up)
    view = view_of(extent, Box(0.0, 0.0, width, height))
    whole = paper(width, height)
    ground = Polygon("A-ANNO-BRDR-PICT", rectangle(0.0, width, 0.0, height), "paper", outlined=False)
    above = words[1].startswith("you")
    you = _you(middle[0], extent.top - _YOU, -1.0) if above else _you(middle[0], extent.bottom + _YOU, 1.0)
    stands = any(one.startswith("you") for one in words)
    return (
        Group(whole, (ground,)),
        Group(view, (*placed, *(you if stands else ()))),
        Group(whole, _words(view, middle[0], extent, words)),
    )


def _shut(drawn: Scene) -> Polygon:
    return Polygon("A-DOOR", leaf_corners(drawn.hung.h), "door", "leaf")


def _extent(drawn: Scene, up: float) -> Box:
    """Return what is shown: the swing above or below the wall, and on the other side room to stand."""
    h, wide = drawn.hung.h, drawn.hung.opening
    reach = swing_arc(drawn.hung, drawn.angle).radius + drawn.hung.pin.y_p + h.D + 1.0
    above, below = (reach + 8.0, _BEYOND + 3.0) if up > 0 else (_BEYOND + 3.0, reach + 8.0)
    middle = -h.D / 2
    return Box(-h.F - 7.0, middle - below, wide + h.F + 7.0, middle + above)


def _lock(drawn: Scene) -> Polygon:
    """A mark of the lock at the latch edge of the closed leaf, toward the outside."""
    h = drawn.hung.h
    x, y = h.O - h.g_l - _LOCK_IN, -h.i - h.T
    return Polygon("A-DOOR-HDWR", rectangle(x - _LOCK_SIZE, x + _LOCK_SIZE, y - _LOCK_SIZE, y), "hardware")


def _you(x: float, y: float, way: float) -> tuple[Primitive, ...]:
    """Somebody seen from above, shoulders and head, who looks up the picture (1) or down (-1)."""
    shoulders = tuple(
        (x + 4.2 * math.cos(turn), y + 1.7 * math.sin(turn))
        for turn in (math.tau * step / 24 for step in range(24))
    )
    nose = ((x - 0.9, y + 1.9 * way), (x, y + 3.0 * way), (x + 0.9, y + 1.9 * way))
    return (
        Polygon("A-ANNO-TEXT", shoulders, "poche", "you"),
        Arc("A-ANNO-TEXT", (x, y), 1.9, 0.0, math.tau, "paper", "you"),
        Polyline("A-ANNO-TEXT", nose),
    )


def _words(view: View, middle: float, extent: Box, words: tuple[str, str]) -> tuple[Primitive, ...]:
    return (
        _beside(view, (middle, extent.bottom + _YOU), words[0], -0.3 * _TYPE),
        _beside(view, (middle, extent.top - _YOU), words[1], -0.3 * _TYPE),
    )


def _beside(view: View, at: Point, words: str, lower: float) -> Text:
    """Letter words beside somebody who stands there, or in the middle where nobody does."""
    you = words.startswith("you")
    x, y = view.to_sheet((at[0] + (5.5 if you else 0.0), at[1]))
    return Text(
        "A-ANNO-TEXT" if you else "A-ANNO-NOTE", (x, y + lower), words, _TYPE, "start" if you else "middle"
    )
