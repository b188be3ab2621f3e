"""What the program took for fields that stand empty, beside what the opening was filled with."""

from typing import TYPE_CHECKING, Any

from configurator.ui.kit.fields import Assumptions

if TYPE_CHECKING:  # loaded with the first study
    from configurator.study import Study

_WHERE = "worked out from what was given"


def taken(study: "Study") -> Assumptions:
    """Return, by path, everything that was assumed: about the opening, its hinge and its leaves."""
    return {**study.filled.assumed, **_of_hinge(study), **_of_leaves(study), **_of_door_stop(study)}


def _of_hinge(study: "Study") -> dict[str, Any]:
    hinge = study.leaves[0].hinge
    reasons = {"hinge.barrel": hinge.barrel, "hinge.leaf_thickness": hinge.leaf_thickness}
    return {path: _assumed(x.value, x.because, x.source, x.mark) for path, x in reasons.items()}


def _of_leaves(study: "Study") -> dict[str, Any]:
    leaves = [one.hinge.leaf for one in study.leaves]
    if study.opening.leaves == "pair":
        width = _assumed(leaves[0].width, "both leaves alike", _WHERE, "derived")
        return {"active_width": width, **_of_carriers(study, "active")}
    if study.opening.leaves == "dutch":
        split = leaves[0].bottom - study.filled.split_gap / 2
        height = _assumed(split, "half the opening height", _WHERE, "derived")
        return {"split_height": height, **_of_carriers(study, "lower")}
    return {}


def _of_carriers(study: "Study", first: str) -> dict[str, Any]:
    """Return which of two leaves carries the hardware that names none."""
    told = _assumed(first, "hardware that names no leaf is counted on that one", _WHERE, "derived")
    return {f"hardware.{place}.leaf": told for place in range(len(study.opening.hardware))}


def _of_door_stop(study: "Study") -> dict[str, Any]:
    """Return where a door stop goes as far as nobody said; of several widths, on the one chosen."""
    if study.opening.door_stop is None:
        return {}
    chosen = study.specification.whole.get("width")  # none where no hinge is chosen here
    width = None if chosen is None else chosen.value
    places = {one.on: one.door_stop for one in reversed(study.candidates)}
    place = (places.get(width) if width is not None else None) or next(reversed(places.values()), None)
    if place is None:
        return {}
    because = "as near the lock edge as it may be met, or in line with the hardware that comes to it"
    source = "worked out from the plan for the hinge chosen"
    found = {"door_stop.from_frame": place.from_frame, "door_stop.height": place.height}
    return {path: _assumed(value, because, source, "derived") for path, value in found.items()}


def _assumed(value: float | str, because: str, source: str, mark: Any) -> Any:
    from configurator.rules.filling.usual import Assumed

    return Assumed(value, because, source, mark)
