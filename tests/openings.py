"""Openings that the tests share: the plain case, and ways to change it."""

from typing import Any

from configurator.model import Opening
from configurator.study import Candidate, study

RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
BOX = {"kind": "other", "projection": 2.5, "from_latch_edge": 2.75, "width": 4, "height": 38, "vertical": 2}
LEVER = {
    "kind": "lever",
    "projection": 2.5,
    "from_latch_edge": 2.75,
    "width": 4,
    "height": 38,
    "vertical": 3.5,
}
ON_PIVOTS = {"hung_on": "pivots", "frame": {"stop_gap": 0.1875}}
"""With room at the stop for the heel of the door, which turns into it; an error would hold its order."""


def plain_data(**changes: Any) -> dict[str, Any]:
    """An opening 36 x 84 with a 1-3/4 door in a frame 1/2 proud, square latch edge, as keys of a file."""
    data: dict[str, Any] = {
        "mark": "1",
        "hand": "LH",
        "size": {"width": 36, "height": 84},
        "door": {"thickness": 1.75, "latch_bevel": 0},
        "frame": {"kind": "knocked-down drywall"},
        "wall": {"frame_proud": 0.5},
        "compare": [4, 4.5],
    }
    for key, value in changes.items():
        data[key] = data[key] | value if isinstance(value, dict) and key in data else value
    return data


def flat_opening(**changes: Any) -> Opening:
    """The plain opening, asked to open to 180 degrees, as a record."""
    return plain_opening(**changes | {"use": {"wanted_angle": 180} | changes.get("use", {})})


def plain_opening(**changes: Any) -> Opening:
    """The plain opening as a record."""
    return Opening.model_validate(plain_data(**changes))


def answers(**changes: Any) -> tuple[Candidate, ...]:
    """The candidates of the plain opening with changes."""
    return study(plain_opening(**changes)).candidates
