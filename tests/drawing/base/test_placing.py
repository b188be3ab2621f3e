from configurator.drawing.base.lettering import ASCENT, DESCENT, text_width
from configurator.drawing.base.placing import AIR, Room, text_box
from configurator.drawing.base.view import Box


def test_a_text_covers_its_width_about_its_anchor():
    width = text_width("abc", 10)
    assert text_box((0, 0), "abc", 10) == Box(0, -DESCENT * 10, width, ASCENT * 10)
    assert text_box((0, 0), "abc", 10, "end").right == 0
    assert text_box((0, 0), "abc", 10, "middle").left == -width / 2


def test_the_first_free_place_is_taken_once():
    room = Room(Box(0, 0, 100, 100))
    one = Box(10, 10, 30, 20)
    assert room.first_free([one]) == one
    assert room.first_free([one]) is None
    beside = Box(30 + AIR, 10, 50, 20)
    assert room.first_free([one, Box(29, 10, 49, 20), beside]) == beside


def test_nothing_is_free_outside_the_window():
    assert not Room(Box(0, 0, 100, 100)).is_free(Box(-1, 0, 5, 5))
    assert Room(Box(0, 0, 100, 100)).is_free(Box(0, 0, 100, 100))


def test_a_copy_fills_up_on_its_own():
    room = Room(Box(0, 0, 100, 100))
    room.copy().take(Box(0, 0, 100, 100))
    assert room.is_free(Box(0, 0, 10, 10))
