"""A scale at which dimensions would lie over one another is refused, never drawn."""

import pytest

from configurator.drawing.base.primitives import Text
from configurator.drawing.base.view import Box, View
from configurator.drawing.pages.dimension_string import refuse_crowded
from configurator.drawing.pages.page import Detail, Scale, paper_named, scale_named
from configurator.drawing.sheets import sheet_maker
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import demo

SMALL = Scale("small", 0.5)
WINDOW = Box(0.0, 0.0, 200.0, 100.0)


def detail(*at):
    texts = tuple(Text("A-ANNO-TEXT", point, "5 in", 7.0) for point in at)
    return Detail("Door", SMALL, View(1.0, (0.0, 0.0), False, WINDOW), texts)


def test_texts_apart_are_taken_at_any_scale():
    refuse_crowded([detail((10.0, 50.0), (10.0, 58.0)), detail((10.0, 50.0))], SMALL)


@pytest.mark.parametrize("second", [(12.0, 50.0), (10.0, 53.0)])
def test_a_scale_that_sets_one_over_another_is_refused_by_name(second):
    with pytest.raises(ValueError, match="small is too small for the dimensions"):
        refuse_crowded([detail((10.0, 50.0), second)], SMALL)
    refuse_crowded([detail((10.0, 50.0), second)], None)  # nobody asked for it: the best there is


def test_a_text_cut_off_by_the_window_is_refused_too():
    with pytest.raises(ValueError, match="too small"):
        refuse_crowded([detail((195.0, 50.0))], SMALL)


@pytest.mark.parametrize(("kind", "fits", "crowded"), [("prep", "1-1/2", "3/4"), ("elevation", "1/4", "1/8")])
def test_sheets_say_which_scale_their_dimensions_have_no_room_at(kind, fits, crowded):
    def made(scale):
        return sheet_maker(kind)(
            demo("101A"), JobFacts(), paper_named("Tabloid"), scale_named(scale), Display()
        )

    assert made(fits).details
    with pytest.raises(ValueError, match="too small"):
        made(crowded)
