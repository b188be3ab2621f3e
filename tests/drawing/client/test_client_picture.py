import math

import pytest

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Dimension, Text
from configurator.drawing.client.client_picture import (
    client_picture,
    picture_end,
    turning_groups,
    turning_note_groups,
)
from configurator.drawing.plan.dimensions import is_clear, moving_on_sheet
from configurator.drawing.plan.sheet import moving_groups, plan_sheet
from configurator.units import Display
from tests.drawing.cases import case_a, demo
from tests.export.random_sheets import random_study

INCHES = Display()


def picture(mark="112A", letters=12.0, width=900.0, height=520.0):
    return client_picture(demo(mark), INCHES, width, height, letters)


def texts(groups):
    return [one for group in groups for one in group.primitives if isinstance(one, Text)]


def test_each_width_has_a_heading_and_one_is_recommended():
    bold = [one.text for one in texts(picture().still) if one.bold]
    assert bold == ["Hinge 4 in wide", "Hinge 4-1/2 in wide, recommended"]


def test_where_there_is_no_room_for_the_word_a_tick_stands_for_it():
    bold = [one.text for one in texts(picture(letters=28.0).still) if one.bold]
    assert bold == ["Hinge 4 in wide", "Hinge 4-1/2 in wide ✓"]


def test_under_each_heading_stands_how_far_it_is_open_and_then_what_ended_it():
    one = picture()
    said = [text.text for text in texts(turning_note_groups(one, 175.0))]
    assert "stops at 171.7°: the door meets the chair rail" in said
    assert "open 175°" in said
    said = [text.text for text in texts(turning_note_groups(one, 180.0))]
    assert "stops at 178.8°: the lever meets the wall" in said


def test_a_door_turns_no_farther_than_where_it_rests():
    """160A is held at 90 degrees by its stop; asked for more, it stands just as at 90."""
    one = picture("160A")
    assert picture_end(demo("160A")) == 90
    assert turning_groups(one, 180.0) == turning_groups(one, 90.0)
    assert turning_groups(one, 80.0) != turning_groups(one, 90.0)
    said = [text.text for text in texts(turning_note_groups(one, 180.0))]
    assert "rests at 90° against its door stop" in said


def test_the_end_is_that_of_the_door_that_goes_farther():
    assert picture_end(demo("112A")) == pytest.approx(178.848, abs=1e-3)


def test_it_letters_nothing_smaller_than_it_was_asked_to():
    """But what stands along the wall, half a point smaller, as on every plan."""
    one = picture("205A", letters=27.0)
    groups = (*one.still, *one.notes, *turning_note_groups(one, 120.0))
    assert min(text.size for text in texts(groups)) >= 26.5
    dimensions = [x for group in groups for x in group.primitives if isinstance(x, Dimension)]
    assert dimensions


def test_no_name_stands_where_a_door_turns():
    """Of fifty openings at random, in large letters, at every third degree."""
    kept = 0
    for seed in range(50):
        one = client_picture(random_study(seed), INCHES, 1000.0, 430.0, 22.0)
        for panel, group in zip(one.panels, one.notes, strict=False):
            for text in texts((group,)):
                kept += 1
                box = text_box(group.view.to_sheet(text.at), text.text, text.size, text.anchor, text.bold)
                for degrees in range(0, int(math.degrees(panel.hung.reach)), 3):
                    turned = moving_on_sheet(panel.hung, group.view, math.radians(degrees))
                    assert is_clear(box.shrunk(1.5), turned, 0.0), (seed, text.text, degrees)
    assert kept > 15


@pytest.mark.parametrize("size", [(900, 520), (1440, 480), (480, 300)])
def test_the_pictures_lie_side_by_side_on_the_sheet_and_level(size):
    one = picture(width=size[0], height=size[1])
    first, second = one.windows
    assert first.right < second.left
    assert second.right <= size[0]
    assert one.panels[0].main.view.origin[1] == one.panels[1].main.view.origin[1]
    assert one.panels[0].main.view.scale == one.panels[1].main.view.scale


def test_a_single_width_has_the_whole_sheet():
    one = client_picture(case_a(compare=[4]), INCHES, 900.0, 520.0, 12.0)
    assert len(one.panels) == 1
    assert one.windows[0].width > 850


def test_the_leaf_is_the_same_as_on_the_plan():
    """One drawing: what turns in the client's picture is made of the plan's own parts."""
    one = picture()
    sheet = plan_sheet(demo("112A"), INCHES, 900.0, 520.0)
    kinds = [[type(x).__name__ for x in group.primitives] for group in turning_groups(one, 100.0)]
    assert kinds == [
        [type(x).__name__ for x in group.primitives] for group in moving_groups(sheet, 100.0)[:2]
    ]


def test_what_meets_is_a_door_to_a_client_and_a_leaf_to_the_trade():
    said = [text.text for text in texts(turning_note_groups(picture(), 180.0))]
    assert "door on the chair rail at 171.7°" in said
    assert not any("leaf" in one for one in said)
