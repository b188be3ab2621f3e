"""What door and frame are cut for: each leaf on its recommended hinge, as it is drawn and as it is listed."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaf
from configurator.rules.filling.materials import fastening_of
from configurator.rules.hinge.fastening import screw_row
from configurator.rules.specification import LeafSpecification
from configurator.study import Study
from configurator.units import Display

RADII = {"square": 0.0, "1/4 radius": 0.25, "5/8 radius": 0.625}
"""Corner of a hinge leaf to its radius, inches."""


@dataclass(frozen=True, slots=True)
class Preparation:
    """One leaf's preparation: the parts of its hinge by name, and the leaf hung on it, closed."""

    leaf: str
    parts: Mapping[str, Any]
    hung: DrawnLeaf
    other_leaf: bool
    """Whether its latch edge meets another leaf instead of a jamb."""
    screws: tuple[str, str]
    """A hinge leaf's screws into the door, and into the frame."""

    @property
    def height(self) -> float:
        """Hinge height, and so that of its mortises, inches."""
        return float(self.parts["height"])

    @property
    def radius(self) -> float:
        """Radius of the mortise's corners, inches."""
        return RADII[self.parts["corner"]]

    @property
    def on_door(self) -> float | None:
        """How far the door's mortise runs in from its pull face, inches; None where none is cut."""
        backset = self.hung.pin.b
        return None if backset is None else self.hung.h.T - backset

    @property
    def on_frame(self) -> float | None:
        """How far the frame's mortise runs in from its face, inches; None where none is cut."""
        backset = self.hung.pin.b_f
        return None if backset is None else self.hung.h.R - backset

    @property
    def door_depth(self) -> float:
        """Depth of the door's mortise, inches; flush where none was given."""
        return self.hung.h.t - self.hung.h.proud_d

    @property
    def frame_depth(self) -> float:
        """Depth of the frame's mortise, inches; flush where none was given."""
        return self.hung.h.t - self.hung.h.proud_f


def preparations(study: Study) -> tuple[Preparation, ...]:
    """Return every leaf's preparation; none of a leaf for which no hinge is chosen here."""
    return tuple(
        _preparation(study, spec)
        for spec in study.specification.leaves
        if spec.parts["width"].value is not None
    )


def _preparation(study: Study, spec: LeafSpecification) -> Preparation:
    parts = {key: part.value for key, part in spec.parts.items()}
    opening = study.opening
    held, row = fastening_of(opening.door.construction, opening.frame.kind), screw_row(parts["height"])
    sizes = {"machine": row.machine, "wood": row.wood}
    kinds = (held.door_screws, held.frame_screws)
    into_door, into_frame = (f"{row.per_leaf} {sizes[kind].partition(' (')[0]}" for kind in kinds)
    return Preparation(
        leaf=spec.leaf,
        parts=parts,
        hung=drawn_leaf(study.hanger(spec.leaf, parts["width"]), Display()),
        other_leaf=opening.leaves == "pair",
        screws=(into_door, into_frame),
    )
