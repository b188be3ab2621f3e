"""A small picture: as many pixels as asked for, and not all alike."""

from functools import partial

from PySide6.QtCore import QSize
from PySide6.QtGui import QImage

from configurator.drawing.pictures.hand_pictures import hand_picture
from configurator.ui.kit.pictures import pixmap_of


def picture(hand, size, ratio, dark=False):
    return pixmap_of(partial(hand_picture, hand), size, ratio, dark).toImage()


def test_it_has_as_many_pixels_as_the_screen_has_for_its_size(qapp):
    made = picture("LH", QSize(96, 48), 2.0)
    assert (made.width(), made.height(), made.devicePixelRatio()) == (192, 96, 2.0)


def test_light_and_dark_are_drawn_and_differ(qapp):
    light, dark = (picture("RH", QSize(120, 120), 1.0, dark) for dark in (False, True))
    assert light != dark
    grey = light.convertToFormat(QImage.Format.Format_Grayscale8)
    assert len({grey.pixel(60, y) for y in range(120)} | {grey.pixel(x, 60) for x in range(120)}) > 10
