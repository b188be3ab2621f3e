"""Pixels of a picture: as many as asked for, and not all alike."""

from configurator.drawing.hand_pictures import hand_picture
from configurator.export.raster import pixels


def test_there_are_as_many_pixels_as_the_size_asks_for():
    data, across, down = pixels(hand_picture("LH", 72.0, 36.0), 72.0, 36.0, 192.0, dark=False)
    assert (across, down) == (192, 96)
    assert len(data) == 4 * across * down


def test_light_and_dark_are_drawn_and_differ():
    light, dark = (
        pixels(hand_picture("RH", 90.0, 90.0), 90.0, 90.0, 96.0, dark)[0] for dark in (False, True)
    )
    assert light != dark
    assert len(set(light[0::4])) > 10
