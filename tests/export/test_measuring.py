import pytest

from configurator.drawing.base.primitives import Dimension, Polygon, Text
from configurator.drawing.base.view import Box, View
from configurator.drawing.pages.page import Detail, Page, Paper, Scale
from configurator.export.pages import pages_as_bytes
from configurator.units import Display
from tests.export.measuring import length_said, read_pdf, read_svg, says_its_length, scale_bar

HALF = Scale("1:2", 0.5)
WINDOW = Box(72.0, 72.0, 504.0, 504.0)
THREE_INCHES = Dimension(
    "A-ANNO-DIMS", (0.0, 0.0), (3.0, 1.0), (0.0, 2.0), (3.0, 2.0), "3 in wide", (1.5, 2.2), "width", 3.0
)


def a_page(*furniture):
    """Letter, and on it 3 in at half size: 108 points."""
    view = View(HALF.points, (288.0, 288.0), False, WINDOW)
    return Page(
        "112A", Paper("Letter", 279.4, 215.9), (Detail("plan", HALF, view, (THREE_INCHES,)),), furniture
    )


def pdf_of(page):
    (sheet,) = read_pdf(pages_as_bytes([page], ".pdf"))
    return sheet


def test_a_dimension_is_measured_in_a_pdf_between_its_arrowheads():
    (one,) = pdf_of(a_page()).measured
    assert one.length == pytest.approx(108.0, abs=1e-3)
    assert one.lettered.text == "3 in wide"
    assert len(one.strokes) == 3  # the line and two extensions


def test_a_dimension_is_measured_in_an_svg_between_its_arrowheads():
    sheet, ((one,),) = read_svg(pages_as_bytes([a_page()], ".svg"), 1)
    assert one.length == pytest.approx(108.0, abs=1e-3)
    assert (sheet.width, sheet.height) == (279.4, 215.9)


def test_a_paper_is_measured_in_millimetres():
    sheet = pdf_of(a_page())
    assert (sheet.width, sheet.height) == pytest.approx((279.4, 215.9), abs=1e-3)


def test_the_box_of_a_text_is_what_its_letters_cover():
    """The stem of an upright H: 0.729 of the type size high."""
    text = pdf_of(a_page(Text("A-ANNO-TEXT", (100.0, 40.0), "HH", 10.0))).texts[-1]
    assert (text.box.bottom, text.box.top) == pytest.approx((40.0, 47.29), abs=0.02)
    assert 100.0 < text.box.left < text.box.right < 100.0 + 2 * 7.52


def test_texts_over_one_another_are_seen():
    words = (
        Text("A-ANNO-TEXT", (100.0, 40.0), "HHHH", 10.0),
        Text("A-ANNO-TEXT", (120.0, 44.0), "HHHH", 10.0),
    )
    one, other = pdf_of(a_page(*words)).texts[-2:]
    assert one.box.overlaps(other.box)


def test_a_scale_bar_is_found_under_the_name_of_its_scale():
    quarters = [
        Polygon("A-ANNO-SBAR", ((x, 30.0), (x + 18.0, 30.0), (x + 18.0, 34.0), (x, 34.0)), fill)
        for x, fill in ((100.0, "steel"), (118.0, "white"), (136.0, "steel"), (154.0, "white"))
    ]
    words = [
        Text("A-ANNO-TEXT", (100.0, 37.0), "1:2", 6.5),
        Text("A-ANNO-NOTE", (100.0, 22.5), "0", 6.5),
        Text("A-ANNO-NOTE", (172.0, 22.5), "2 in", 6.5, "end"),
    ]
    assert scale_bar(pdf_of(a_page(*quarters, *words)), "1:2") == (pytest.approx(72.0, abs=1e-3), 2.0)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("1-3/16 in pin off door", 1.1875),
        ("3/4 in pin/frame", 0.75),
        ("2 in pin axis off door face", 2.0),
        ("undercut 3/4 in", 0.75),
        ("25.4 mm pin", 1.0),
        ("7'-0\"", 84.0),
        ("6'-11 1/4\" to the head", 83.25),
        ("leaf 0.134 in thick", 0.134),
        ("4 ft", 48.0),
        ("1 m", 1000 / 25.4),
    ],
)
def test_a_length_is_read_out_of_words(text, inches):
    assert length_said(text) == pytest.approx(inches)


@pytest.mark.parametrize("text", ["open 90°", "into the wall", "4-1/2 hinge"])
def test_words_without_a_length_have_none(text):
    assert length_said(text) is None


@pytest.mark.parametrize(
    ("real", "says"),
    [(32.0, True), (32.03, True), (31.985, True), (32.033, False), (31.98, False), (31.9, False)],
)
def test_a_dimension_may_lose_a_step_and_gain_half_of_one(real, says):
    assert says_its_length("32 in clear", real, Display(32), 1e-6) is says


def test_what_says_no_length_does_not_say_its_length():
    assert not says_its_length("clear", 32.0, Display(), 1e-6)
