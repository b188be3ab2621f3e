"""What door and frame are cut for: each leaf on its recommended hinge, as drawn, as listed and in notes."""

import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.drawing.pages.notes import Note, study_notes
from configurator.drawing.pages.tables import SmallTable
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaf
from configurator.rules.filling.materials import fastening_of
from configurator.rules.filling.ways import way_hung_on
from configurator.rules.hinge.electric import beside_the_hinges, wires_words
from configurator.rules.hinge.fastening import screw_row
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED
from configurator.rules.hinge_items import SURFACE_LEAVES
from configurator.rules.specification import LeafSpecification
from configurator.rules.wording import an
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.units import TOLERANCE, Display

RADII = {"square": 0.0, "1/4 radius": 0.25, "5/8 radius": 0.625}
"""Corner of a hinge leaf to its radius, inches."""
_OVER = (("", 3), ("Mortise", 2), ("In the door", 4), ("In the frame", 4))
_HEADINGS = ("Leaf", "Hinges", "Size", "high", "corners") + 2 * ("wide", "deep", "backset", "screws a leaf")
_ON_FACE, _BY_TEMPLATE, _NONE = "on the face", "by template", "none"
_LEAVES_ON_FACES = {"frame leaf": ("frame",), "door leaf": ("door",), "both leaves": ("door", "frame")}
_TEMPLATE = (
    "Screw holes are not drawn: they follow the hinge's own template, which decides over this sheet. "
    "Reinforcement and blocking are the door's and the frame's makers'."
)
LISTED = (
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
    def on_faces(self) -> tuple[str, ...]:
        """Which of door and frame has its hinge leaf on its face, through-bolted, instead of let in."""
        return _LEAVES_ON_FACES.get(SURFACE_LEAVES.get(self.parts["mounting"], ""), ())

    @property
    def packing(self) -> float:
        """What goes under the door leaf of a full surface hinge, inches; negative: under the frame leaf."""
        return self.hung.pin.packing

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
    # What is to be confirmed with the template is so for every cell: a note says that it decides.
    short = {kind: words.partition(" (")[0].partition(", ")[0] for kind, words in sizes.items()}
    into_door, into_frame = (f"{row.per_leaf} {short[kind]}" for kind in kinds)
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
    door = _cut_words(prep, "door", (prep.on_door, prep.door_depth, hung.pin.b), into_door, display)
    frame = _cut_words(prep, "frame", (prep.on_frame, prep.frame_depth, hung.pin.b_f), into_frame, display)
    size = display.size(parts["height"], parts["width"])
    return str(parts["count"]), size, display.exact(prep.height), parts["corner"], *door, *frame


def _cut_words(
    prep: Preparation, side: str, cut: tuple[float | None, float, float | None], screws: str, display: Display
) -> tuple[str, str, str, str]:
    """Return how wide, how deep and how far back it is cut, and what holds the leaf."""
    wide, deep, backset = cut
    if side in prep.on_faces:
        return _ON_FACE, _NONE, _NONE, "through-bolts, by template"
    if wide is None or backset is None:
        return _BY_TEMPLATE, _BY_TEMPLATE, _BY_TEMPLATE, screws
    return display.exact(wide), display.exact(deep), display.exact(backset), screws


def preparation_notes(
    study: Study, preps: Sequence[Preparation], own: Iterable[str], display: Display, drawn: Collection[str]
) -> tuple[Note, ...]:
    """Return the notes of a preparation sheet, after what is severe; `drawn` names its details.

    `own` is what it says of what is no butt.
    """
    said, own = study_notes(study, display), [*own, *_sayings(study, preps, display)]
    let_in = any(prep.on_door or prep.on_frame for prep in preps)
    if let_in and not any(("edge" in name and "hinge" in name) or "rabbet" in name for name in drawn):
        own.insert(1, "The edges find no room on this paper: the table has their mortises.")
    return (*said[:2], Note("Preparation", tuple(own)), *said[2:])


def _sayings(study: Study, preps: Sequence[Preparation], display: Display) -> Iterator[str]:
    if preps:
        yield from _of_butts(study, preps, display)
    elif way_hung_on(study.opening) is None:
        yield "No hinges are chosen here for this opening, so nothing is prepared for them."
    asked = study.opening.hinge or NOTHING_ASKED
    if (beside := beside_the_hinges(asked)) is not None:
        yield (
            f"{capitalized(an(beside))} carries {wires_words(asked.wires)}. Its place and what is cut or "
            "bored for it, in door and frame, are on its own template."
        )
    if preps:
        yield "* assumed, not given; a mortise depth without its own figure sets the hinge leaf flush."


def _of_butts(study: Study, preps: Sequence[Preparation], display: Display) -> Iterator[str]:
    first = preps[0]
    yield _drawn(preps, display)
    yield from _mounted(first, display)
    yield _bevel(first, display)
    yield _TEMPLATE
    if study.opening.fire_label:
        yield LISTED
    if any(leaf.electric is not None for leaf in study.specification.leaves):
        yield "The hinge that carries wires needs its mortises cut for them: its own template decides."


def _drawn(preps: Sequence[Preparation], display: Display) -> str:
    parts = preps[0].parts
    words = f"Drawn for a {display.size(parts['height'], parts['width'])} hinge"
    others = [prep for prep in preps[1:] if _differs(prep, preps[0])]
    if not others:
        return words + "."
    other = display.size(others[0].parts["height"], others[0].parts["width"])
    return f"{words} of the {preps[0].leaf} leaf and a {other} hinge of the {others[0].leaf} leaf."


def _differs(one: Preparation, other: Preparation) -> bool:
    keys = ("height", "width", "leaf_thickness", "mounting", "corner")
    return any(one.parts[key] != other.parts[key] for key in keys)


def _mounted(prep: Preparation, display: Display) -> Iterator[str]:
    """Say what is let in where, and what lies on a face, where not both leaves are let in at a backset."""
    name = str(prep.parts["mounting"]).capitalize()
    if prep.parts["mounting"] == "swing clear":
        yield (
            f"{name}: each leaf is let into the door's edge or the frame's rabbet and runs over the face "
            "beside it to the pin. How wide, how deep and where is by the hinge's template: cut nothing from "
            "this sheet. Its legs are drawn, not measured; where the pin stands is what the swing was worked "
            "out with, so hold the template against it."
        )
    if "door" in prep.on_faces:
        yield (
            f"{name}: the door leaf lies on the pull face, through-bolted; nothing is let into the door's "
            "edge. The template decides where the bolts go; the door needs to be solid or reinforced there."
        )
    if "frame" in prep.on_faces:
        yield (
            f"{name}: the frame leaf lies on the frame's face, through-bolted; nothing is let into the "
            "frame's rabbet. The template decides where the bolts go."
        )
    if abs(prep.packing) > TOLERANCE:
        which = "door" if prep.packing > 0 else "frame"
        yield f"Pack the {which} leaf out {display.exact(abs(prep.packing))}, level with the other leaf."


def _bevel(prep: Preparation, display: Display) -> str:
    h = prep.hung.h
    if h.beta <= 0.0:
        return "The latch edge is square."
    relief, angle = display.exact(h.beta * h.T), display.angle(math.degrees(math.atan(h.beta)), "near")
    ratio = "" if display.metric else f" {display.exact(2 * h.beta).removesuffix(' in')} in 2:"
    return f"Latch edge beveled{ratio} {relief} over the door's thickness, {angle}."
