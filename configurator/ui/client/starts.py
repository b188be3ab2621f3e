"""Typical openings a client can try, one click each: invented, and nothing of them measured. No Qt."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from configurator.model import Opening
from configurator.tables import HardwareKindRow, ObstructionKindRow, row_of
from configurator.ui.form.presets import usual_casing, usual_hardware, usual_obstruction


def _thing(kind: str) -> dict[str, Any]:
    return usual_obstruction(row_of(ObstructionKindRow, kind))


def _handle(kind: str) -> dict[str, Any]:
    return usual_hardware(row_of(HardwareKindRow, kind), None)


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
