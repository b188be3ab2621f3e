from configurator.drawing.base.lettering import text_box, text_width
from configurator.drawing.base.primitives import Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.frame import BLOCK_HEIGHT, title_block, title_cells
from configurator.drawing.pages.page import scale_named
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo

FACTS = JobFacts(name="Kestrel Point", number="26-118", client="Harbor District", prepared_by="D. Reeve",
                 date="2026-03-02", revision="B")  # fmt: skip
BOX = Box(28.0, 28.0, 764.0, 28.0 + BLOCK_HEIGHT)


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
