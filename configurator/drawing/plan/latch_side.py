"""The latch side, enlarged in the small picture's place while the latch edge passes closest."""

from collections.abc import Sequence
from dataclasses import replace

from configurator.drawing.base.lettering import fitted, text_width
from configurator.drawing.base.primitives import Dimension, Primitive
from configurator.drawing.base.view import Box, View
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.inset import AIR, SIZE, Told, inset_moving, inset_still, inset_view, row
from configurator.geometry.gaps import LeastGap
from configurator.units import Display

_SAME_ANGLE = 1e-9
_TOLD = "least gap between the lock edge of the leaf and the {}, over the whole swing: {}"


def latch_side(
    hung: DrawnLeaf, angle: float, window: Box, display: Display, scales: Sequence[float] = ()
) -> tuple[View, tuple[Primitive, ...]] | None:
    """Return the latch side with its least gap dimensioned, and the view it is drawn through.

    None at any other angle than that of the closest passage, radians. Scales as for `inset_view`.
    """
    passage = hung.latch
    if passage is None or abs(angle - passage.angle) > _SAME_ANGLE or passage.angle > hung.reach:
        return None
    number = display.length(passage.distance, "down")
    choices = (f"{number}, the least at the latch edge", f"{number} at the latch edge", number)
    words = fitted(choices, SIZE, window.width - 2 * AIR)
    told = Told(words, latch_side=True, about=passage.point_standing)
    view = inset_view(hung, window, told, scales)
    bare = replace(hung, hardware=())  # a lever beside the edge would only hide it
    still = inset_still(bare, view, display, None, "", told)
    moving = inset_moving(bare, passage.angle, view, told)
    return view, (*still, *moving, _dimension(passage, words, number, view))


def _dimension(passage: LeastGap, words: str, number: str, view: View) -> Dimension:
    """The gap between its two points, its line carried up to the words above."""
    a, b = passage.point_standing, passage.point_moving
    left, base = view.to_sheet(row(view, 2))
    width = text_width(words, SIZE)
    above = (view.to_sheet(b)[0], base - 2.0)
    far = max((left, left + width), key=lambda x: abs(x - above[0]))
    shoulder = (view.to_plan(above), view.to_plan((far, base - 2.0)))
    told = _TOLD.format(passage.kind, number)
    return Dimension(
        "A-ANNO-DIMS", a, b, a, b, words, view.to_plan((left + width / 2, base)), "latch edge least",
        passage.distance, 0.0, SIZE, shoulder, told,
    )  # fmt: skip
