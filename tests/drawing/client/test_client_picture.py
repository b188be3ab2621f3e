import itertools
import math
import random

import pytest

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Polygon, Text
from configurator.drawing.client.client_picture import (
    client_picture,
    picture_end,
    tile,
    turning_groups,
    turning_note_groups,
)
from configurator.drawing.client.room import shown_angle
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import study
from configurator.units import Display
from tests.drawing.cases import case_a, demo
from tests.export.random_sheets import random_study

INCHES = Display()
SIZES = ((860, 480), (1366, 620), (1440, 900), (2880, 1620), (570, 520), (700, 960))
PAIR = {"leaves": "pair", "size": {"width": 72, "height": 84}}


def picture(mark="112A", letters=16.0, width=1000.0, height=620.0):
    return client_picture(demo(mark), INCHES, width, height, letters)


def texts(groups):
    return [one for group in groups for one in group.primitives if isinstance(one, Text)]


def everything(one, angle):
    return (*one.still, *turning_groups(one, angle), *one.notes, *turning_note_groups(one, angle))


def boxes(one, angle):
    return [
        (text.text, text_box(group.view.to_sheet(text.at), text.text, text.size, text.anchor, text.bold))
        for group in everything(one, angle)
        for text in group.primitives
        if isinstance(text, Text)
    ]


def faults(one, angle):
    """Return texts that leave the sheet, and pairs that lie over one another."""
    found = boxes(one, angle)
    out = [
        text
        for text, box in found
        if box.left < 0 or box.bottom < 0 or box.right > one.width or box.top > one.height
    ]
    over = [
        (a, b)
        for (a, box), (b, other) in itertools.combinations(found, 2)
        if box.shrunk(0.3).overlaps(other.shrunk(0.3))
    ]
    return out + over


def by_twos(groups):
    return list(zip(groups[::2], groups[1::2], strict=True))


def touch_rings(one, angle):
    groups = turning_note_groups(one, angle)
    return [item for group in groups for item in group.primitives if item.layer == "A-ANNO-TUCH"]


def test_each_hinge_has_a_heading_and_one_is_our_choice():
    said = [one.text for one in texts(picture().notes)]
    assert "Hinge 4 in wide" in said
    assert "Hinge 4-1/2 in wide, our choice" in said


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("mark", ["112A", "205A", "171A", "126C", "151A"])
def test_no_text_is_cropped_or_lies_over_another(mark, size):
    one = picture(mark, size[1] / 24, *size)
    for angle in (0.0, 75.0, one.end):
        assert faults(one, angle) == []


def test_no_text_of_openings_at_random_is_cropped_or_lies_over_another():
    for seed in range(30):
        width, height = SIZES[seed % len(SIZES)]
        display = Display(metric=seed % 4 == 3)
        one = client_picture(random_study(seed), display, width, height, height / 26)
        assert faults(one, one.end) == [], seed


@pytest.mark.parametrize("size", SIZES)
def test_the_rooms_have_half_the_height_or_a_row_each(size):
    one = picture("112A", size[1] / 24, *size)
    first, second = one.windows
    side_by_side = first.right < second.left
    assert first.height >= 0.5 * size[1] if side_by_side else first.height >= 0.2 * size[1]
    assert len({panel.room.view.scale for panel in one.panels}) == 1
    assert len({panel.lens.view.scale for panel in one.panels}) == 1
    assert len({panel.lens.centre for panel in one.panels}) == 1


def test_a_wide_opening_stands_one_over_the_other_where_that_shows_it_larger():
    one = client_picture(case_a(**PAIR), INCHES, 1200.0, 680.0, 15.0)
    first, second = one.windows
    assert first.bottom > second.top


def test_type_gives_way_to_the_picture_and_is_never_larger_than_asked():
    assert picture(letters=16.0).letters == 16.0
    assert picture(letters=60.0).letters < 30.0


def test_a_door_turns_no_farther_than_where_it_rests():
    """160A is held at 90 degrees by its stop; asked for more, it stands just as at 90."""
    one = picture("160A")
    assert picture_end(demo("160A")) == 90
    assert turning_groups(one, 180.0) == turning_groups(one, 90.0)
    assert turning_groups(one, 80.0) != turning_groups(one, 90.0)


def test_the_end_is_that_of_the_door_that_goes_farther():
    assert picture_end(demo("112A")) == pytest.approx(178.848, abs=1e-3)


def test_a_door_that_stops_first_is_slowed_down_to_its_stop():
    """112A on 4 in: it stops at 171.7 of 178.8 degrees, and moves ever more slowly as it comes there."""
    one = picture()
    leaf, end = one.panels[0].room.first, one.end
    shown = [math.degrees(shown_angle(leaf, float(angle), end)) for angle in range(150, 180)]
    steps = [b - a for a, b in itertools.pairwise(shown)]
    assert shown[-1] == pytest.approx(leaf.candidate.rests_at)
    assert all(step >= -1e-9 for step in steps)
    assert all(later <= before + 1e-9 for before, later in itertools.pairwise(steps))
    assert shown[0] == pytest.approx(150)


def test_the_place_that_stops_a_door_short_lights_up_when_it_comes_there():
    one = picture()
    assert touch_rings(one, 160.0) == []
    found = touch_rings(one, one.end)
    assert len(found) == 2  # in the room and in the magnifier, of the 4 in hinge alone
    leaf = one.panels[0].room.first
    assert found[0].centre == one.panels[0].room.view.to_sheet(leaf.contact)


def test_a_door_that_does_what_it_must_lights_nothing_up():
    assert touch_rings(picture("171A"), 180.0) == []


def test_the_magnifier_tells_how_far_the_hinge_stands_out():
    said = [one.text for one in texts(turning_note_groups(picture(), 90.0))]
    assert "hinge stands out 21/32 in" in said
    assert "hinge stands out 29/32 in" in said


def test_the_magnifier_is_round():
    """Nothing of a door that runs on past it is drawn outside its rim."""
    one = picture()
    for panel, groups in zip(one.panels, by_twos(turning_note_groups(one, 120.0)), strict=True):
        middle, r = panel.lens.on_sheet
        for item in groups[0].primitives:
            points = getattr(item, "points", ())
            assert all(math.dist(groups[0].view.to_sheet(p), middle) <= r + 0.01 for p in points)


def test_where_doors_are_stopped_far_from_the_hinge_that_place_is_magnified():
    one = picture("126C")
    said = [text.text for text in texts(turning_note_groups(one, one.end))]
    assert said.count("touches here") == 2
    for panel in one.panels:
        assert math.dist(panel.lens.centre, panel.room.first.contact) < 3.0


def test_the_magnifier_lies_over_no_door_where_it_rests():
    for seed in range(30):
        one = client_picture(random_study(seed), INCHES, 1000.0, 640.0, 14.0)
        for panel in one.panels:
            middle, r = panel.lens.on_sheet
            leaf = panel.room.first
            groups = turning_groups(one, 180.0)
            doors = [
                item for item in groups[one.panels.index(panel)].primitives
                if isinstance(item, Polygon) and item.name == "door"
            ]  # fmt: skip
            for door in doors:
                ends = [panel.room.view.to_sheet(point) for point in door.points]
                assert min(math.dist(middle, end) for end in ends) > r - 1.0, (seed, leaf.candidate.name)


def test_a_pair_shows_both_leaves_and_a_dutch_door_both_halves():
    for changes in (PAIR, {"leaves": "dutch"}):
        one = client_picture(case_a(**changes), INCHES, 1200.0, 680.0, 15.0)
        for group in turning_groups(one, 120.0):
            assert sum(getattr(item, "name", "") == "door" for item in group.primitives) == 2


def test_the_halves_of_a_dutch_door_are_named_where_they_stand_apart():
    job = load(resource_path("demo_openings", "pairs_and_dutch.json"))
    lost = study(next(one for one in job.openings if one.mark == "305A"), job.job)
    one = client_picture(lost, INCHES, 1200.0, 680.0, 15.0)
    said = [text.text for text in texts(turning_note_groups(one, one.end))]
    assert "upper half" in said
    assert "lower half" in said
    assert "both halves" in said


def test_a_person_walks_through_an_open_door_and_no_other():
    one = picture()
    for angle, count in ((80.0, 0), (90.0, 4)):
        items = [item for group in turning_groups(one, angle) for item in group.primitives]
        assert sum(getattr(item, "name", "") == "a person" for item in items) == count


def test_what_stands_in_the_way_is_named():
    assert "side wall" in [one.text for one in texts(picture("171A").notes)]


def test_a_single_hinge_has_the_whole_sheet():
    one = client_picture(case_a(compare=[4]), INCHES, 1000.0, 620.0, 15.0)
    assert len(one.panels) == 1


def test_a_tile_shows_the_room_with_its_door_open():
    (group,) = tile(demo("112A"), 78.0, 46.0)
    assert any(getattr(item, "name", "") == "door" for item in group.primitives)


def test_any_angle_of_any_opening_can_be_drawn():
    dice = random.Random("client picture")
    for seed in range(30):
        one = client_picture(random_study(seed), INCHES, 900.0, 520.0, 14.0)
        assert all(group.primitives for group in turning_groups(one, dice.uniform(0, 180)))
