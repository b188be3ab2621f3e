import pytest

from configurator.drawing.base.view import Box
from configurator.drawing.pages.plan_layout import CAPTION, HEADING, Cell, arrangements

ROOM = Box(36.0, 200.0, 560.0, 570.0)


@pytest.mark.parametrize("count", [1, 2, 3, 4, 8])
def test_windows_lie_in_the_room_and_never_over_one_another(count):
    ways = list(arrangements(count, ROOM))
    assert ways
    for cells in ways:
        assert len(cells) == count
        boxes = [box for cell in cells for box in (cell.plan, cell.small)]
        assert all(ROOM.shrunk(-1e-9).holds(box) for box in boxes)
        assert not any(a.overlaps(b) for n, a in enumerate(boxes) for b in boxes[n + 1 :])


def test_a_heading_has_its_room_over_every_cell():
    for cells in arrangements(4, ROOM):
        for cell in cells:
            head = Box(cell.plan.left, cell.plan.top, cell.right, cell.plan.top + HEADING)
            assert head.top <= ROOM.top + 1e-9
            assert not any(head.overlaps(box, -1e-9) for other in cells for box in (other.plan, other.small))


def test_what_a_small_plan_does_not_need_goes_to_the_large_one_over_it():
    cell = Cell(Box(0, 110, 200, 300), Box(0, 0, 200, 100))
    trimmed = cell.trimmed(60)
    assert trimmed.small == Box(0, 0, 200, 60)
    assert trimmed.plan == Box(0, 60 + CAPTION, 200, 300)
    assert cell.trimmed(100) == cell


def test_a_small_plan_beside_the_large_one_hangs_from_the_top():
    cell = Cell(Box(0, 0, 100, 300), Box(110, 0, 200, 300))
    assert cell.trimmed(80) == Cell(Box(0, 0, 100, 300), Box(110, 220, 200, 300))
