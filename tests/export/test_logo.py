"""A page's logo stands in its room in every format that can hold a picture, as large as it fits."""

from io import BytesIO

import numpy as np
import pytest
from PIL import Image
from PySide6.QtGui import QImage, QPainter

from configurator.drawing.client.client_page import client_page
from configurator.drawing.pages.page import paper_named
from configurator.export.pages import pages_as_bytes
from configurator.export.painting import logo_place
from configurator.model import JobFacts, Shop
from configurator.ui.kit.painter import paint_groups, paint_logo
from configurator.units import Display
from tests.drawing.cases import demo

GREEN = (10, 200, 60)


@pytest.fixture
def page(tmp_path):
    """The client's page of a shop whose logo is a green rectangle, four times as wide as high."""
    file = tmp_path / "logo.png"
    Image.new("RGB", (400, 100), GREEN).save(file)
    shop = Shop("Harbor Doors", file)
    return client_page(demo("112A"), JobFacts(), paper_named("Letter"), None, Display(), shop=shop)


def test_it_keeps_its_shape_and_lies_at_the_right_of_its_room(page):
    place, room = logo_place(page.logo), page.logo[1]
    assert place.width == pytest.approx(4 * place.height)
    assert place.right == room.right
    assert place.height == pytest.approx(room.height)


def green(pixels):
    return (abs(pixels[..., :3].astype(int) - GREEN).sum(axis=2) < 40).sum()


def test_it_is_in_the_png_the_pdf_and_the_svg(page):
    place = logo_place(page.logo)
    with Image.open(BytesIO(pages_as_bytes([page], ".png"))) as written:
        share = green(np.asarray(written.convert("RGB"))) / (written.width * written.height)
    area = page.paper.points[0] * page.paper.points[1]
    assert share == pytest.approx(place.width * place.height / area, rel=0.05)
    assert b"/Subtype /Image" in pages_as_bytes([page], ".pdf")
    assert b"data:image/png;base64," in pages_as_bytes([page], ".svg")


def test_it_is_painted_on_the_screen_and_the_printer(qapp, page):
    wide, high = (round(side) for side in page.paper.points)
    picture = QImage(wide, high, QImage.Format.Format_RGB888)
    picture.fill(0xFFFFFF)
    painter = QPainter(picture)
    paint_groups(page.groups, float(high), painter, 1.0)
    paint_logo(page.logo, float(high), painter, 1.0)
    painter.end()
    place = logo_place(page.logo)
    at = (round((place.left + place.right) / 2), round(high - (place.bottom + place.top) / 2))
    assert picture.pixelColor(*at).getRgb()[:3] == GREEN


def test_a_logo_that_is_gone_leaves_its_room_empty(page):
    page.logo[0].unlink()
    assert logo_place(page.logo) is None
    assert b"/Subtype /Image" not in pages_as_bytes([page], ".pdf")
    assert b"<image" not in pages_as_bytes([page], ".svg")
