"""Things to start from when something is added to an opening: typical sizes, from memory.

Inches, to be changed to what is there. A lever runs 1 in to the latch side of its spindle and 4 in
toward the hinge. No Qt here.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:  # loaded with the first study
    from configurator.rules.usual import FilledOpening

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
    "Shelf": {
        "kind": "shelf",
        "projection": 8,
        "from_latch_edge": 17.875,
        "width": 33.75,
        "height": 41.4375,
        "vertical": 1,
    },
    "Astragal": {
        "kind": "astragal",
        "projection": 0.1875,
        "from_latch_edge": 17.875,
        "width": 33.75,
        "height": 42,
        "vertical": 2,
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

_EDGE_KEPT = 1.0
"""A shelf or an astragal across a leaf stays so far from both its edges, and so off the frame stops, in."""


def fitted(row: dict[str, Any], filled: "FilledOpening | None") -> dict[str, Any]:
    """Return what is added with its place in this very opening: a shelf or an astragal goes by the leaves."""
    place = _FITTED.get(row["kind"])
    return dict(row) if place is None or filled is None else {**row, **place(row, filled)}


def _shelf(row: dict[str, Any], filled: "FilledOpening") -> dict[str, Any]:
    """Return a shelf's place: on a Dutch door across the lower leaf, its top level with that leaf's top."""
    if filled.opening.leaves != "dutch":
        return {}
    lower = _leaf(filled, "lower")
    return {"leaf": "lower", "height": lower.top - row["vertical"] / 2, **_across(lower.width)}


def _astragal(row: dict[str, Any], filled: "FilledOpening") -> dict[str, Any]:
    """Return an astragal's place: over the gap, on the leaf that is to open first, on its pull face."""
    if filled.opening.leaves == "dutch":
        upper = _leaf(filled, "upper")
        return {"leaf": "upper", "height": upper.bottom - filled.split_gap / 2, **_across(upper.width)}
    if filled.opening.leaves != "pair":
        return {}
    active = _leaf(filled, "active")
    return {
        "leaf": "active",
        "from_latch_edge": -filled.meeting_gap / 2,
        "width": row["vertical"],
        "height": (active.bottom + active.top) / 2,
        "vertical": active.top - active.bottom,
    }


def _across(width: float) -> dict[str, Any]:
    return {"from_latch_edge": width / 2, "width": width - 2 * _EDGE_KEPT}


def _leaf(filled: "FilledOpening", name: str) -> Any:
    from configurator.rules.leaves import leaves_of  # loaded with the first study

    return next(leaf for leaf in leaves_of(filled) if leaf.name == name)


_FITTED: dict[str, Callable[[dict[str, Any], "FilledOpening"], dict[str, Any]]] = {
    "shelf": _shelf,
    "astragal": _astragal,
}
USUAL_STOPS: dict[str, dict[str, Any]] = {
    "wall bumper": {"kind": "wall bumper", "projection": 1},
    "floor stop": {"kind": "floor stop", "projection": 3},
}
"""Door stops as they are first put up: how far the tip is off the wall, from memory."""

USUAL_CASING: dict[str, Any] = {"kind": "casing", "projection": 0.6875, "start": -0.5, "length": 2.25}
"""Casing 11/16 x 2-1/4 at a 1/4 reveal on a 3/4 jamb: it reaches 1/2 in over the jamb's edge. From memory."""
