"""A plan for a client's eyes: lettered in plain words, with one dimension, and no small picture."""

from dataclasses import replace

from configurator.drawing.base.view import Box
from configurator.drawing.dimension_words import FRAME, Measured, Wording
from configurator.drawing.plan.dimensions import PLAIN, Dimensions, Lettered
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.panel import Panel, panel
from configurator.drawing.plan.sheet import hand_words
from configurator.study import Study
from configurator.units import Display


def client_panel(
    study: Study, hung: DrawnLeaf, window: Box, points: float, spare: float, display: Display, title: str,
    letters: float,
) -> Panel:  # fmt: skip
    """Return the panel of one leaf at so many points for a real inch, lettered so many points high.

    `spare` is the height of the window the picture leaves, points: side by side all have the same.
    """
    hand = hand_words(study)
    # A client reads of the door, not of its leaf; what it carries keeps its name.
    hung = replace(hung, stopped_by=hung.stopped_by.replace("leaf on", "door on", 1))
    one = panel(hung, window, points, spare, display, title, hand, None, True, size=letters)
    alone = Dimensions(hung, one.main.view, hinge_out(hung, display, letters), one.room)
    return replace(one, inset=None, dimensions=alone)


def hinge_out(hung: DrawnLeaf, display: Display, letters: float) -> Lettered:
    """Return the one dimension a client is shown: how far the hinge stands out from the frame."""
    top = (hung.pin.x_p, hung.pin.y_p + hung.h.d_b / 2)
    number = display.length(abs(top[1]))
    way = "out from the frame" if top[1] >= 0 else "behind the frame's face"
    measured = Measured((0.0, 0.0), top, top[1], FRAME, PLAIN)
    choices = (f"{number}: the hinge stands {way}", f"{number} hinge {way}", number)
    return Lettered((measured,), tuple(Wording((words,), letters) for words in choices), ("",))
