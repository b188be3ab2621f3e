import pytest

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Polygon, Polyline, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.frame import BAR_LAYER, MARGIN, border_box, drawing_box, page_frame
from configurator.drawing.pages.notes import Note
from configurator.drawing.pages.page import papers, scale_named
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import demo

SCALES = (scale_named("3"), scale_named("1/4"), scale_named("3"))
PAPERS = [*papers().values(), papers()["A4"].turned()]


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
