"""Things to start from when something is added to an opening: typical sizes, from memory.

Inches, to be changed to what is there. A lever runs 1 in to the latch side of its spindle and 4 in
toward the hinge. No Qt here.
"""

from typing import Any

OBSTRUCTIONS: dict[str, dict[str, Any]] = {
    "Chair rail": {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36},
    "Base": {"kind": "base", "projection": 0.5625, "start": 0, "bottom": 0, "top": 5.25},
    "Wainscot": {"kind": "wainscot", "projection": 0.75, "start": 0, "bottom": 0, "top": 36},
    "Casing": {"kind": "casing", "projection": 0.6875, "start": 0, "length": 2.25},
    "Return wall": {"kind": "return wall", "start": 4},
    "Column": {"kind": "column", "diameter": 12, "start": 6, "offset": 0},
    "Something else": {"kind": "other", "projection": 4, "start": 6, "length": 12},
}
"""What a person calls it, to the row it starts as."""

HARDWARE: dict[str, dict[str, Any]] = {
    "Lever": {
        "kind": "lever",
        "projection": 2.5,
        "from_latch_edge": 4.25,
        "width": 5,
        "height": 38,
        "vertical": 2,
    },
    "Knob": {
        "kind": "knob",
        "projection": 2.5,
        "from_latch_edge": 2.75,
        "width": 2,
        "height": 38,
        "vertical": 2,
    },
    "Pull": {
        "kind": "pull",
        "projection": 2.5,
        "from_latch_edge": 3,
        "width": 1,
        "height": 42,
        "vertical": 10,
    },
    "Panic device": {
        "kind": "panic device",
        "face": "push",
        "projection": 3.5,
        "from_latch_edge": 16,
        "width": 30,
        "height": 40,
        "vertical": 4,
    },
    "Closer": {
        "kind": "closer",
        "projection": 2.5,
        "from_latch_edge": 28,
        "width": 10,
        "height": 81,
        "vertical": 3,
    },
    "Something else": {
        "kind": "other",
        "projection": 2,
        "from_latch_edge": 4,
        "width": 2,
        "height": 40,
        "vertical": 2,
    },
}

USUAL_STOPS: dict[str, dict[str, Any]] = {
    "wall bumper": {"kind": "wall bumper", "projection": 1},
    "floor stop": {"kind": "floor stop", "projection": 3},
}
"""Door stops as they are first put up: how far the tip is off the wall, from memory."""

USUAL_CASING: dict[str, Any] = {"kind": "casing", "projection": 0.6875, "start": -0.5, "length": 2.25}
"""Casing 11/16 x 2-1/4 at a 1/4 reveal on a 3/4 jamb: it reaches 1/2 in over the jamb's edge. From memory."""
