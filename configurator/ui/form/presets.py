"""Where what is added to an opening goes in that very opening; its usual sizes are those of its kind.

Inches, to be changed to what is there. No Qt here.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from configurator.tables import HardwareKindRow, ObstructionKindRow, row_of

if TYPE_CHECKING:  # loaded with the first study
    from configurator.rules.filling.usual import FilledOpening

_EDGE_KEPT = 1.0
"""A shelf or an astragal across a leaf stays so far from both its edges, and so off the frame stops, in."""


def usual_hardware(row: HardwareKindRow, filled: "FilledOpening | None") -> dict[str, Any]:
    """Return the hardware as it is first put on: a shelf or an astragal goes by the leaves there are.

    Sizes that only its kind says are left out: they count as assumed until somebody types them.
    """
    place = _PLACED.get(row.place)
    placed = {} if place is None or filled is None else place(row, filled)
    return {"kind": row.kind, **placed}


def usual_obstruction(row: ObstructionKindRow) -> dict[str, Any]:
    """Return what stands along the wall as it is first put there, its sizes assumed until they are typed.

    How far it runs along the wall and up it has no usual where it is left out: that is as its kind has it.
    """
    ends = ("length", "bottom", "top")
    return {key: value for key, value in row.usual.items() if key == "kind" or key in ends}


def usual_casing() -> dict[str, Any]:
    """Return the usual casing at a 1/4 reveal on a 3/4 jamb: it reaches 1/2 in over the jamb's edge."""
    return {**usual_obstruction(row_of(ObstructionKindRow, "casing")), "start": -0.5}


def _shelf(row: HardwareKindRow, filled: "FilledOpening") -> dict[str, Any]:
    """Return a shelf's place: on a Dutch door across the lower leaf, its top level with that leaf's top."""
    if filled.opening.leaves != "dutch":
        return {}
    lower = _leaf(filled, "lower")
    return {"leaf": "lower", "height": lower.top - row.vertical / 2, **_across(lower.width)}


def _astragal(row: HardwareKindRow, filled: "FilledOpening") -> dict[str, Any]:
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
        "width": row.vertical,
        "height": (active.bottom + active.top) / 2,
        "vertical": active.top - active.bottom,
    }


def _over_the_hinges(row: HardwareKindRow, filled: "FilledOpening") -> dict[str, Any]:
    """Return the place of a closer, an arm or an overhead stop: as far from hinges and top as is usual.

    On a leaf of the usual size that is what its kind says, and counts as assumed.
    """
    leaf = _leaf(filled, filled.opening.first_leaf if filled.opening.leaves != "dutch" else "upper")
    wider, higher = leaf.width - _USUAL_LEAF[0], leaf.top - _USUAL_LEAF[1]
    name = {} if leaf.name == filled.opening.first_leaf else {"leaf": leaf.name}
    if abs(wider) < _NEARLY and abs(higher) < _NEARLY:
        return name
    return {**name, "from_latch_edge": row.from_latch_edge + wider, "height": row.height + higher}


def _across(width: float) -> dict[str, Any]:
    return {"from_latch_edge": width / 2, "width": width - 2 * _EDGE_KEPT}


def _leaf(filled: "FilledOpening", name: str) -> Any:
    from configurator.rules.filling.leaves import leaves_of  # loaded with the first study

    return next(leaf for leaf in leaves_of(filled) if leaf.name == name)


_USUAL_LEAF, _NEARLY = (35.75, 83.875), 0.25
"""Width and top of a leaf in an opening 3'-0" x 7'-0", inches, and what of them makes no difference."""
_PLACED: dict[str, Callable[[HardwareKindRow, "FilledOpening"], dict[str, Any]]] = {
    "hinge edge": _over_the_hinges,
    "top of lower leaf": _shelf,
    "gap between leaves": _astragal,
}
