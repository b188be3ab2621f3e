"""Typical openings a client can start from, one click each: invented, every number to be changed. No Qt."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from configurator.model import Job, Opening
from configurator.tables import HardwareKindRow, ObstructionKindRow, row_of
from configurator.ui.form.presets import usual_casing
from configurator.ui.state import edits


def _thing(kind: str) -> dict[str, Any]:
    return row_of(ObstructionKindRow, kind).usual


def _handle(kind: str) -> dict[str, Any]:
    return row_of(HardwareKindRow, kind).usual


_USUAL = {"hand": "RH", "hardware": [_handle("lever")], "obstructions": []}

STARTS: Mapping[str, dict[str, Any]] = MappingProxyType(
    {
        "Office door": {
            **_USUAL,
            "size": {"width": 36, "height": 84},
            "door": {"construction": "wood, solid core"},
            "obstructions": [_thing("base")],
        },
        "Chair-rail corridor": {
            **_USUAL,
            "size": {"width": 36, "height": 84},
            "door": {"construction": "hollow metal, 18 gage"},
            "obstructions": [_thing("chair rail")],
            "use": {"closer": True},
            "compare": [4, 4.5],
        },
        "Wide storeroom": {
            **_USUAL,
            "size": {"width": 42, "height": 84},
            "door": {"construction": "hollow metal, 16 gage"},
            "use": {"closer": True},
        },
        "Closet at home": {
            **_USUAL,
            "size": {"width": 32, "height": 80},
            "door": {"construction": "wood, hollow core", "thickness": 1.375},
            "frame": {"kind": "wood with casing"},
            "hardware": [_handle("knob")],
            "obstructions": [usual_casing(), {**_thing("base"), "start": 1.75}],
            "use": {"closer": False, "locked": False},
        },
        "Corner washroom": {
            **_USUAL,
            "size": {"width": 36, "height": 84},
            "obstructions": [_thing("return wall")],
            "use": {"closer": True, "wanted_angle": 90},
        },
        "Pair of doors": {
            **_USUAL,
            "leaves": "pair",
            "size": {"width": 72, "height": 84},
            "use": {"closer": True},
        },
    }
)
"""What a client calls it, to the opening it is."""


def started(mark: str, name: str) -> Opening:
    """Return a typical opening under a mark."""
    return Opening.model_validate({"mark": mark, **STARTS[name]})


def with_start(
    job: Job, shown: Opening | None, name: str
) -> tuple[tuple[Opening, ...], Opening]:  # fmt: skip
    """Return the job's openings with a typical one begun, and that one.

    It takes the place of the opening on show where nobody has changed that since it was begun so; any other
    opening stays as it is, and the new one stands beside it.
    """
    if shown is not None and _is_untouched(shown):
        fresh = started(shown.mark, name)
        return tuple(fresh if one is shown else one for one in job.openings), fresh
    fresh = started(edits.fresh_mark(job), name)
    return (*job.openings, fresh), fresh


def _is_untouched(opening: Opening) -> bool:
    """Whether the opening is just what a start, or a new job, made of it."""
    begun = (edits.typical_opening(opening.mark), *(started(opening.mark, name) for name in STARTS))
    return opening in begun
