"""Where dimensions and notes go when something that turns is in their way."""

import pytest

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Dimension, Text
from configurator.drawing.plan.dimensions import is_clear, moving_on_sheet, text_boxes
from configurator.drawing.plan.panel import moving_notes
from configurator.drawing.plan.sheet import plan_sheet
from configurator.units import Display
from tests.drawing.cases import case_a, demo_pair


def test_no_words_lie_over_the_shelf_of_a_dutch_door():
    """A shelf 8 in deep hides the wall where the dimensions would stand; all words keep off it."""
    lower = plan_sheet(demo_pair("304A"), Display(), 640, 360).panels[1]
    view = lower.main.view
    leaf, shelf = moving_on_sheet(lower.hung, view, lower.hung.reach)
    notes = moving_notes(lower, lower.hung.reach, Display())
    words = [
        (view.to_sheet(one.at), one.text, one.size, one.anchor) for one in notes if isinstance(one, Text)
    ]
    boxes = [text_box(*one) for one in words]
    boxes += text_boxes([one for one in notes if isinstance(one, Dimension)], view)
    assert len(words) == 1
    assert len(boxes) >= 5
    assert all(is_clear(box, [leaf, shelf], 0.0) for box in boxes)


def test_what_turns_is_the_leaf_and_a_square_about_what_is_round():
    """A round knob 2 in across, 2-1/2 out: as high over the face of the closed leaf as a box would be."""
    knob = {
        "kind": "knob",
        "projection": 2.5,
        "from_latch_edge": 2.375,
        "width": 2,
        "height": 36,
        "vertical": 2,
    }
    (panel, _) = plan_sheet(case_a(hardware=[{**knob, "outline": "round"}]), Display(), 864, 540).panels
    view = panel.main.view
    leaf, square = moving_on_sheet(panel.hung, view, 0.0)
    assert len(leaf) == len(square) == 4
    tall = max(y for _, y in square) - min(y for _, y in square)
    assert tall == pytest.approx(2 * view.scale)
