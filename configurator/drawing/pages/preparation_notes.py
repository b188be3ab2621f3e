"""What the preparation sheet says in words and in its table."""

import math
from collections.abc import Iterator, Sequence

from configurator.drawing.pages.notes_column import Note
from configurator.drawing.pages.preparation_facts import Preparation
from configurator.drawing.pages.small_table import SmallTable
from configurator.drawing.pages.study_notes import study_notes
from configurator.study import Study
from configurator.units import Display

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


def preparation_table(preps: Sequence[Preparation], display: Display) -> SmallTable:
    """Return what each leaf and its frame are cut for; leaves alike share a row."""
    rows: dict[tuple[str, ...], list[str]] = {}
    for prep in preps:
        rows.setdefault(_row(prep, display), []).append(prep.leaf)
    return SmallTable(_OVER, _HEADINGS, tuple((" and ".join(who), *row) for row, who in rows.items()))


def _row(prep: Preparation, display: Display) -> tuple[str, ...]:
    hung, parts = prep.hung, prep.parts
    into_door, into_frame = prep.screws
    door = _cut(prep.on_door, prep.door_depth, hung.pin.b, into_door, display)
    frame = _cut(prep.on_frame, prep.frame_depth, hung.pin.b_f, into_frame, display)
    size = display.size(parts["height"], parts["width"])
    return str(parts["count"]), size, display.exact(prep.height), parts["corner"], *door, *frame


def _cut(
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
    if study.opening.use.fire_rated:
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
