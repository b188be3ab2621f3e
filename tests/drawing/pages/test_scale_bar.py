import pytest

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Polygon, Text
from configurator.drawing.base.view import box_around
from configurator.drawing.pages.frame import BAR_HEIGHT, BAR_LAYER, bar_length, scale_bar
from configurator.drawing.pages.page import scale_named, scales
from configurator.units import Display

INCHES, METRIC = Display(), Display(metric=True)


def test_at_three_inches_to_the_foot_six_inches_are_an_inch_and_a_half_of_paper():
    parts = scale_bar(scale_named("3"), INCHES, (100.0, 50.0), 120.0)
    box = box_around([point for part in parts if isinstance(part, Polygon) for point in part.points])
    assert (box.left, box.right) == pytest.approx((100.0, 100.0 + 1.5 * 72))
    assert [part.text for part in parts if isinstance(part, Text)] == ["0", "6 in", "3 in = 1'-0\""]


def test_in_millimetres_at_one_to_five_two_hundred_are_forty_of_paper():
    parts = scale_bar(scale_named("1:5"), METRIC, (0.0, 0.0), 120.0)
    box = box_around([point for part in parts if isinstance(part, Polygon) for point in part.points])
    assert box.width == pytest.approx(40 / 25.4 * 72)
    assert "200 mm" in [part.text for part in parts if isinstance(part, Text)]


def test_quarters_are_filled_in_turn():
    quarters = [
        part for part in scale_bar(scale_named("3"), INCHES, (0.0, 0.0), 120.0) if isinstance(part, Polygon)
    ]
    assert [part.fill for part in quarters] == ["steel", "white", "steel", "white"]
    assert {part.layer for part in quarters} == {BAR_LAYER}


@pytest.mark.parametrize("display", [INCHES, METRIC])
def test_every_scale_has_a_bar_that_fits_with_words_that_do_not_meet(display):
    for scale in scales(display.metric):
        parts = scale_bar(scale, display, (10.0, 10.0), 90.0)
        texts = [
            text_box(part.at, part.text, part.size, part.anchor) for part in parts if isinstance(part, Text)
        ]
        assert not any(a.overlaps(b) for n, a in enumerate(texts) for b in texts[n + 1 :])
        bars = [point for part in parts if isinstance(part, Polygon) for point in part.points]
        assert box_around(bars).right <= 100.0 + 1e-9
        assert max(box.top for box in texts) <= 10.0 + BAR_HEIGHT + 2.0


def test_the_longest_bar_that_fits_is_taken():
    assert bar_length(scale_named("full"), INCHES, 144.0) == (2.0, "2 in")
    assert bar_length(scale_named("full"), INCHES, 143.9) == (1.0, "1 in")
    assert bar_length(scale_named("1/4"), INCHES, 100.0) == (48.0, "4 ft")
