"""The plan of a storey: every door with its swing where it is, how it stands, and what is printed."""

import math

import pytest

from configurator.building.records import LeafShape, ModelDoor, StoreyPlan, WallRead
from configurator.drawing.base.primitives import Arc, Polyline, Text
from configurator.drawing.pages.page import papers
from configurator.drawing.pages.storey_page import storey_page, storey_sheet

WALL = WallRead("Wall", 0.0, 5.0)
STOREY = StoreyPlan("Level 1", 0.0, (((0.0, 0.0), (400.0, 0.0)), ((0.0, 5.0), (400.0, 5.0))))


def door(key, x, operation="SINGLE_SWING_LEFT", **how):
    return ModelDoor(key, tag=key, operation=operation, width=36.0, height=84.0, level="Level 1", wall=WALL,
                     place=(x, 0.0, 0.0, how.pop("angle", 0.0)), **how)  # fmt: skip


def arcs(doors, named=None):
    sheet = storey_sheet(STOREY, doors, named or {}, 800, 400)
    return [one for one in sheet.groups[0].primitives if isinstance(one, Arc)]


@pytest.mark.parametrize(
    ("operation", "centre", "start"),
    [("SINGLE_SWING_LEFT", (100, 5), 0.0), ("SINGLE_SWING_RIGHT", (136, 5), math.pi / 2)],
)
def test_a_leaf_sweeps_a_quarter_about_its_hinges(operation, centre, start):
    (arc,) = arcs([door("1", 100, operation)])
    assert arc.centre == centre
    assert (arc.radius, arc.start, arc.end) == pytest.approx((36, start, start + math.pi / 2))


def test_a_door_turned_about_opens_to_the_other_side():
    (arc,) = arcs([door("1", 100, angle=math.pi)])
    assert arc.centre == pytest.approx((100, -5))
    assert arc.start == pytest.approx(math.pi)


def test_a_pair_has_two_leaves_and_a_door_of_no_known_swing_none():
    assert [one.radius for one in arcs([door("1", 100, "DOUBLE_DOOR_SINGLE_SWING")])] == [18, 18]
    assert arcs([door("1", 100, "SLIDING_TO_LEFT")]) == []
    assert len(arcs([door("1", 100, "", shape=LeafShape(1, -1, "its drawn swing"))])) == 1


def test_how_a_door_stands_is_told_by_line_and_word():
    doors = [door("1", 100), door("2", 200)]
    sheet = storey_sheet(STOREY, doors, {"1": ("101A", "fails"), "2": ("102A", "fine")}, 800, 400)
    layers = [
        one.layer for one in sheet.groups[0].primitives if isinstance(one, Polyline) and "DOOR" in one.layer
    ]
    texts = [one.text for one in sheet.groups[1].primitives if isinstance(one, Text)]
    assert layers == ["A-DOOR", "A-DOOR"]
    assert {"101A", "102A", "error", "Level 1: 2 doors", "1: an error is found"} <= set(texts)


def test_a_place_of_the_sheet_is_the_door_that_is_near():
    sheet = storey_sheet(STOREY, [door("1", 100), door("2", 300)], {}, 800, 400)
    x, y = sheet.doors["2"]
    assert sheet.door_at((x + 10, y - 10)) == "2"
    assert sheet.door_at((x, y + 100)) == ""


def test_a_page_is_all_in_points_of_its_paper():
    page = storey_page(STOREY, [door("1", 100)], {}, papers()["Letter"], "Kestrel Point")
    wide, high = page.paper.points
    for one in page.furniture:
        if isinstance(one, Polyline):
            assert all(0 <= x <= wide and 0 <= y <= high for x, y in one.points)
    assert any(isinstance(one, Text) and one.text == "Kestrel Point" for one in page.furniture)


def test_a_storey_without_anything_is_a_page_too():
    page = storey_page(StoreyPlan("Roof", 300.0), [], {}, papers()["A4"], "Kestrel Point")
    assert any(isinstance(one, Text) and one.text == "Roof: 0 doors" for one in page.furniture)
