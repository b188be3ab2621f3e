"""Typical openings, studied: what words and the hand are pictured on where no opening is on show."""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from configurator.model import Opening
from configurator.study.run import Study, study

_LEVER = {
    "kind": "lever", "projection": 2.5, "from_latch_edge": 4.25, "width": 5, "height": 38, "vertical": 2,
}  # fmt: skip
_CLOSER = {
    "kind": "closer", "projection": 2.5, "from_latch_edge": 28, "width": 10, "height": 81, "vertical": 3,
}  # fmt: skip
_RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
_TYPICAL: Mapping[str, Any] = {
    "mark": "typical",
    "hand": "LH",
    "size": "3070",
    "door": {"construction": "hollow metal, 18 gage"},
    "hardware": [_LEVER],
    "compare": [4.5],
}
_BARE: Mapping[str, Any] = {**_TYPICAL, "hardware": []}
_OPENINGS: Mapping[str, Mapping[str, Any]] = MappingProxyType(
    {
        "typical": _TYPICAL,
        "bare": _BARE,
        "rail": {**_BARE, "obstructions": [_RAIL]},
        "narrow": {**_BARE, "obstructions": [_RAIL], "compare": [4]},
        "column": {**_BARE, "obstructions": [{"kind": "column", "diameter": 6, "start": 3}]},
        "return": {**_BARE, "obstructions": [{"kind": "return wall", "start": 4}]},
        "casing": {
            **_BARE,
            "door": {"construction": "wood, solid core"},
            "frame": {"kind": "wood with casing"},
            "obstructions": [{"kind": "casing", "projection": 0.6875, "start": -0.5, "length": 2.25}],
        },
        "stop": {**_BARE, "door_stop": {"kind": "wall bumper", "projection": 2, "from_frame": 5}},
        "pair": {**_TYPICAL, "leaves": "pair", "size": "6070"},
        "dutch": {**_TYPICAL, "leaves": "dutch", "hardware": []},
        "closer": {**_TYPICAL, "hardware": [_LEVER, _CLOSER]},
    }
)


@cache
def typical_study(name: str) -> Study:
    """Return the study of a typical opening. Raises KeyError for one that there is not."""
    return study(Opening.model_validate(dict(_OPENINGS[name])))
