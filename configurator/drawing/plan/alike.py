"""The same dimension in the same words in every panel: as many as all of them have room for."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TypeGuard

from configurator.drawing.base.primitives import Dimension, Primitive
from configurator.drawing.base.view import Group
from configurator.drawing.plan.dimensions import Dimensions
from configurator.drawing.plan.inset import CLEAR, CLEAR_WIDTH
from configurator.drawing.plan.panel import Drawing, Panel, moving_notes
from configurator.drawing.plan.part_dimensions import bare
from configurator.drawing.plan.swing_notes import CLEARANCE
from configurator.units import Display


def notes_alike(panels: Sequence[Panel], turn: float, display: Display) -> list[Group]:
    """Return the notes of every panel with the leaves at an angle, radians."""
    words = _common_wording([one.dimensions for one in panels], turn)

    def notes(bare: bool) -> list[Group]:
        return [Group(one.main.view, moving_notes(one, turn, display, words, bare)) for one in panels]

    full = notes(bare=False)
    clearances = {_is_bare(note) for group in full for note in group.primitives if _is_clearance(note)}
    return notes(bare=True) if len(clearances) > 1 else full


def _common_wording(every: Sequence[Dimensions], angle: float) -> int:
    """Return the fullest wording that all of them have room for at an angle, radians."""
    shorter = 0
    while (found := max((one.wording_at(angle, shorter) for one in every), default=0)) > shorter:
        shorter = found
    return shorter


def _is_clearance(note: Primitive) -> TypeGuard[Dimension]:
    return isinstance(note, Dimension) and note.name.startswith(CLEARANCE)


def _is_bare(note: Dimension) -> bool:
    """Whether a clearance is lettered with its number alone."""
    return " to the " not in note.text


def parts_alike(panels: Iterable[Panel]) -> tuple[Panel, ...]:
    """Return the panels with a part's dimension named in all of them, or lettered with its number in all."""
    panels = tuple(panels)
    every = [one for panel in panels for one in panel.main.notes if isinstance(one, Dimension)]
    bared = {one.name for one in every if not one.text.endswith(one.name)}

    def reworded(one: Primitive, panel: Panel) -> Primitive:
        named = isinstance(one, Dimension) and one.name in bared and one.text.endswith(one.name)
        return bare(one, panel.main.view) if named and isinstance(one, Dimension) else one

    notes = ([reworded(one, panel) for one in panel.main.notes] for panel in panels)
    return tuple(
        replace(panel, main=replace(panel.main, notes=tuple(own)))
        for panel, own in zip(panels, notes, strict=True)
    )


def clear_width_alike(panels: Iterable[Panel]) -> tuple[Panel, ...]:
    """Return the panels with each clear width in the fewest words that one of them has."""
    panels = tuple(panels)
    every = [one for panel in panels if panel.inset for one in panel.inset.still if _is_clear_width(one)]
    words = min((_words_after(one) for one in every), key=len, default="")

    def reworded(one: Primitive) -> Primitive:
        if not _is_clear_width(one):
            return one
        return replace(one, text=one.text.removesuffix(_words_after(one)) + words)

    def inset_of(inset: Drawing | None) -> Drawing | None:
        return replace(inset, still=tuple(map(reworded, inset.still))) if inset else None

    return tuple(replace(panel, inset=inset_of(panel.inset)) for panel in panels)


def _is_clear_width(one: Primitive) -> TypeGuard[Dimension]:
    return isinstance(one, Dimension) and one.name == CLEAR_WIDTH


def _words_after(one: Dimension) -> str:
    """Return what a clear width has after its number."""
    return next(words for words in CLEAR if one.text.endswith(words))
