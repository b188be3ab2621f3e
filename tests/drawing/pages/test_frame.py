import pytest

from configurator.drawing.base.lettering import text_box, text_width
from configurator.drawing.base.primitives import Polygon, Polyline, Text
from configurator.drawing.base.view import Box, box_around
from configurator.drawing.pages.frame import (
    BAR_HEIGHT,
    BAR_LAYER,
    BLOCK_HEIGHT,
    MARGIN,
    bar_length,
    border_box,
    drawing_box,
    page_frame,
    scale_bar,
    title_block,
    title_cells,
)
from configurator.drawing.pages.notes import Note
from configurator.drawing.pages.page import papers, scale_named, scales
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo

SCALES = (scale_named("3"), scale_named("1/4"), scale_named("3"))
PAPERS = [*papers().values(), papers()["A4"].turned()]
FACTS = JobFacts(name="Kestrel Point", number="26-118", client="Harbor District", prepared_by="D. Reeve",
                 date="2026-03-02", revision="B")  # fmt: skip
BOX = Box(28.0, 28.0, 764.0, 28.0 + BLOCK_HEIGHT)
INCHES, METRIC = Display(), Display(metric=True)


def frame(paper, scales=SCALES):
    notes = (Note("Notes", ("One.",)),)
    return page_frame(paper, demo("112A"), JobFacts(), Display(), "Plan", scales, notes)


@pytest.mark.parametrize("paper", PAPERS, ids=lambda paper: f"{paper.name} {paper.width:g}")
def test_nothing_of_the_frame_leaves_its_border_or_lies_where_details_go(paper):
    furniture, free = frame(paper)
    border = border_box(paper)
    assert free == drawing_box(paper)
    assert border.holds(free)
    for part in furniture:
        if isinstance(part, Text):
            box = text_box(part.at, part.text, part.size, part.anchor, part.bold)
            assert border.holds(box)
            assert not box.overlaps(free)
        if isinstance(part, Polygon):
            assert not any(free.has(point) for point in part.points)


def test_the_border_stands_a_margin_in():
    assert border_box(papers()["Letter"]) == Box(MARGIN, MARGIN, 792 - MARGIN, pytest.approx(612 - MARGIN))
    lines = [part for part in frame(papers()["Letter"])[0] if part.layer == "A-ANNO-BRDR"]
    assert [isinstance(line, Polyline) and line.closed for line in lines] == [True]


def test_there_is_one_bar_a_scale_and_none_without():
    def bars(scales):
        parts, _ = frame(papers()["Letter"], scales)
        return sum(part.layer == BAR_LAYER for part in parts) / 4

    assert (bars(SCALES), bars(SCALES[:1]), bars(())) == (2, 1, 0)


def said(study, job, scales=(), number=(1, 1)):
    rows = title_cells(study, job, Display(), "Plan", scales, number)
    return {cell.label: cell.value for row in rows for cell in row}


def test_every_field_says_what_is_known():
    cells = said(demo("112A"), FACTS, (scale_named("3"),), (2, 14))
    assert cells["Job"] == "Kestrel Point"
    assert cells["Opening"] == "112A"
    assert cells["Opening size"] == "3'-0\" x 7'-0\""
    assert (cells["Date"], cells["Revision"]) == ("2026-03-02", "B")
    assert cells["Hand"] == "RH"
    assert cells["Scale"] == "3 in = 1'-0\""
    assert cells["Sheet"] == "2 of 14"


def test_what_is_not_known_is_left_blank_and_no_date_is_made_up():
    cells = said(case_a(hand=None), JobFacts())
    assert (cells["Job"], cells["Date"], cells["Prepared by"], cells["Revision"]) == ("", "", "", "")
    assert cells["Hand"] == "not given"


def test_assumed_dimensions_are_said_to_be_so_and_several_scales_are_as_shown():
    cells = said(case_a(), JobFacts(), (scale_named("3"), scale_named("1/4"), scale_named("3")))
    assert cells["Dimensions"] == "assumed, not yet verified"
    assert cells["Scale"] == "as shown"
    assert said(case_a(status="field verified"), JobFacts())["Dimensions"] == "field verified"


def test_nothing_is_lettered_past_the_block_or_over_another_text():
    long = JobFacts(name="A terminal " * 30, client="A district " * 30, number="9" * 80, prepared_by="W" * 90)
    for box in (BOX, Box(28.0, 28.0, 567.0, 28.0 + BLOCK_HEIGHT)):
        parts = title_block(title_cells(case_a(mark="M" * 60), long, Display(), "Plan", (), (1, 1)), box)
        texts = [part for part in parts if isinstance(part, Text)]
        boxes = [text_box(part.at, part.text, part.size, part.anchor, part.bold) for part in texts]
        assert all(box.left <= one.left and one.right <= box.right for one in boxes)
        assert not any(a.overlaps(b) for n, a in enumerate(boxes) for b in boxes[n + 1 :])


def test_a_value_is_lettered_smaller_before_it_is_cut():
    rows = title_cells(
        case_a(location="Between the crew mess and the lower car deck"), FACTS, Display(), "Plan", (), (1, 1)
    )
    (text,) = [
        part for part in title_block(rows, BOX) if isinstance(part, Text) and part.text.startswith("Between")
    ]
    assert text.size < 8.0
    assert text_width(text.text, text.size) <= 736 * 3.0 / 13.7


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
