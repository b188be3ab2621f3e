"""The widths of a leaf as data, for the command line and other tools."""

from typing import Any

from configurator.rules.answers import barrel_free, binds
from configurator.study.inverse import MOST, BreakPoint, LeafWidths, WidthTried


def widths_as_data(leaf: LeafWidths) -> dict[str, Any]:
    """Return one leaf's widths; inches and degrees in full, None where there is no value."""
    chosen = leaf.next_in_stock
    return {
        "leaf": leaf.leaf,
        "wanted_angle": leaf.must.wanted,
        "least_for_angle": leaf.least_for_angle,
        "barrel_free_from": leaf.barrel_free_from,
        "least": leaf.least,
        "next_in_stock": None if chosen is None else chosen.width,
        "break_points": [_break(one) for one in leaf.breaks],
        "widths": [_width(leaf, one) for one in leaf.tried],
    }


def _break(one: BreakPoint) -> dict[str, Any]:
    return {"hinge_width": one.width, "what": one.what, "value": one.value}


def _width(leaf: LeafWidths, one: WidthTried) -> dict[str, Any]:
    data: dict[str, Any] = {"hinge_width": one.width, "stock": one.stock, "fits": one.fits}
    found = one.candidate
    if found is None:
        return data | {"refusal": one.refusal}
    things = zip(leaf.hung.obstructions, one.projections, strict=True)
    return data | {
        "greatest_angle_bare": found.greatest_angle_bare,
        "greatest_angle": found.greatest_angle,
        "clear_width_at_90": found.clear_width_at_90,
        "binds": binds(found),
        "barrel_free": barrel_free(found),
        "greatest_projections": [
            {"index": index, "kind": thing.kind, "passes": _passes(most), "projection": _limit(most)}
            for index, (thing, most) in enumerate(things)
        ],
    }


def _passes(most: float | None) -> str:
    """Say what of an obstruction passes: as much as `projection` says, any, or that other things decide."""
    if most is None:
        return "stopped elsewhere"
    return "any" if most >= MOST else "up to"


def _limit(most: float | None) -> float | None:
    return None if most is None or most >= MOST else most
