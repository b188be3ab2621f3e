"""What door and frame are cut for: each leaf on its recommended hinge, as drawn, as listed and in notes."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.drawing.pages.notes import Note, study_notes
from configurator.drawing.pages.tables import SmallTable
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaf
from configurator.rules.filling.materials import fastening_of
from configurator.rules.hinge.fastening import screw_row
from configurator.rules.specification import LeafSpecification
from configurator.study import Study
from configurator.units import Display

RADII = {"square": 0.0, "1/4 radius": 0.25, "5/8 radius": 0.625}
"""Corner of a hinge leaf to its radius, inches."""
_OVER = (("", 3), ("Mortise", 2), ("In the door", 4), ("In the frame", 4))
_HEADINGS = ("Leaf", "Hinges", "Size", "high", "corners") + 2 * ("wide", "deep", "backset", "screws a leaf")
_NONE = "none"
_TEMPLATE = (
    "Screw holes are not drawn: they follow the hinge's own template, which decides over this sheet. "
    "Reinforcement and blocking are the door's and the frame's makers'."
)
_LISTED = (
    "A fire rated door or frame is prepared only as its listing allows, by those it names: ask before "
    "cutting anything."
)


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


def preparation_table(preps: Sequence[Preparation], display: Display) -> SmallTable:
    """Return what each leaf and its frame are cut for; leaves alike share a row."""
    rows: dict[tuple[str, ...], list[str]] = {}
    for prep in preps:
        rows.setdefault(_cells_of(prep, display), []).append(prep.leaf)
    return SmallTable(_OVER, _HEADINGS, tuple((" and ".join(who), *row) for row, who in rows.items()))


def _cells_of(prep: Preparation, display: Display) -> tuple[str, ...]:
    hung, parts = prep.hung, prep.parts
    into_door, into_frame = prep.screws
    door = _cut_words(prep.on_door, prep.door_depth, hung.pin.b, into_door, display)
    frame = _cut_words(prep.on_frame, prep.frame_depth, hung.pin.b_f, into_frame, display)
    size = display.size(parts["height"], parts["width"])
    return str(parts["count"]), size, display.exact(prep.height), parts["corner"], *door, *frame


def _cut_words(
    wide: float | None, deep: float, backset: float | None, screws: str, display: Display
) -> tuple[str, str, str, str]:
    if wide is None or backset is None:
        return _NONE, _NONE, _NONE, screws
    return display.exact(wide), display.exact(deep), display.exact(backset), screws


def preparation_notes(study: Study, preps: Sequence[Preparation], display: Display) -> tuple[Note, ...]:
    """Return the notes of a preparation sheet, its own after what is severe."""
    said = study_notes(study, display)
    return (*said[:2], Note("Preparation", tuple(_sayings(study, preps, display))), *said[2:])


def _sayings(study: Study, preps: Sequence[Preparation], display: Display) -> Iterator[str]:
    if not preps:
        yield "No hinges are chosen here for this opening, so nothing is prepared for them."
        return
    first = preps[0]
    yield _drawn(preps, display)
    yield from _surface(first)
    yield _bevel(first, display)
    yield _TEMPLATE
    if study.opening.fire_label:
        yield _LISTED
    if any(leaf.electric is not None for leaf in study.specification.leaves):
        yield "The hinge that carries wires needs its mortises cut for them: its own template decides."
    yield "* assumed, not given; a mortise depth without its own figure sets the hinge leaf flush."


def _drawn(preps: Sequence[Preparation], display: Display) -> str:
    parts = preps[0].parts
    words = f"Drawn for a {display.size(parts['height'], parts['width'])} hinge"
    others = [prep.leaf for prep in preps[1:] if _differs(prep, preps[0])]
    return (
        f"{words} of the {preps[0].leaf} leaf; the {others[0]} leaf is in the table."
        if others
        else words + "."
    )


def _differs(one: Preparation, other: Preparation) -> bool:
    keys = ("height", "width", "leaf_thickness", "mounting", "corner")
    return any(one.parts[key] != other.parts[key] for key in keys)


def _surface(prep: Preparation) -> Iterator[str]:
    """Say where a hinge leaf lies on a face instead of in a mortise."""
    if prep.on_door is None:
        yield f"{prep.parts['mounting'].capitalize()}: nothing is let into the door's edge at a backset."
    if prep.on_frame is None:
        yield f"{prep.parts['mounting'].capitalize()}: nothing is let into the frame's rabbet at a backset."


def _bevel(prep: Preparation, display: Display) -> str:
    h = prep.hung.h
    if h.beta <= 0.0:
        return "The latch edge is square."
    relief, angle = display.exact(h.beta * h.T), display.angle(math.degrees(math.atan(h.beta)), "near")
    ratio = "" if display.metric else f" {display.exact(2 * h.beta).removesuffix(' in')} in 2:"
    return f"Latch edge beveled{ratio} {relief} over the door's thickness, {angle}."
