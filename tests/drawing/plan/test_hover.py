import math

from configurator.drawing.base.primitives import Dimension
from configurator.drawing.plan.pointing import name_at, spots_of
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups, plan_sheet
from configurator.units import Display
from tests.drawing.cases import demo

SHEET = plan_sheet(demo("112A"), Display(), 864, 540)
PANEL = SHEET.panels[0]
SPOTS = spots_of((*SHEET.still, *moving_groups(SHEET, 180), *SHEET.notes, *moving_note_groups(SHEET, 180)))


def name_of(x, y):
    return name_at(SPOTS, PANEL.main.view.to_sheet((x, y)))


def test_a_dimension_is_named_on_its_text_and_on_its_line():
    (axis,) = [one for one in PANEL.dimensions.at(math.pi) if one.name == "pin axis off frame face"]
    told = "pin stands off the frame, measured from the frame face to the pin's axis: 3/8 in"
    assert name_of(*axis.text_at) == told
    assert name_of(axis.line_a[0], (axis.line_a[1] + axis.line_b[1]) / 2) == told


def test_every_dimension_says_its_number_once():
    pictures = (PANEL.dimensions.at(math.pi), PANEL.inset.still, SHEET.panels[1].inset.still)
    for one in (item for picture in pictures for item in picture if isinstance(item, Dimension)):
        number = one.text.split(" in ")[0] + " in"
        assert one.explained.endswith(f": {number}")
        assert one.explained.count(number) == 1


def test_parts_are_named_the_uppermost_first():
    assert name_of(*PANEL.hung.pin.at) == "pin axis"
    assert name_of(-3.5, 0.0) == "chair rail, 32 to 36 in above floor"
    assert name_of(-3.5, -0.8) == "gypsum board"
    assert name_of(0.3, -3) == ""


def test_outside_everything_there_is_no_name():
    assert name_at(SPOTS, (-50, -50)) == ""
