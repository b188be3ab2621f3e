"""Door, frame, hinge, marks and title block as blocks with attributes; notes as paragraphs."""

import io
from collections import Counter

import ezdxf
import pytest
from ezdxf.render import dim_linear

from configurator.drawing.pages.page import papers
from configurator.drawing.sheets import sheet_maker
from configurator.export.pages import pages_as_bytes
from configurator.model import JobFacts, Opening
from configurator.study import study
from configurator.units import Display
from tests.bench.check_dxf import Fractions, faults_of

FACTS = JobFacts(name="Kestrel Point", number="26-118")


@pytest.fixture(scope="module")
def drawn():
    opening = Opening.model_validate(
        {
            "mark": "112A",
            "hand": "RH",
            "size": {"width": 36, "height": 84},
            "door": {"construction": "hollow metal, 18 gage"},
            "frame": {"kind": "knocked-down drywall"},
            "compare": [4.5, 5],
        }
    )
    answer = study(opening, FACTS)
    kinds = ("plan", "elevation", "client")
    return {
        kind: ezdxf.read(
            io.StringIO(
                pages_as_bytes(
                    [sheet_maker(kind)(answer, FACTS, papers()["Letter"], None, Display())], ".dxf"
                ).decode()
            )
        )
        for kind in kinds
    }


def attributes(insert):
    return {one.dxf.tag: one.dxf.text for one in insert.attribs}


def parts(drawing):
    found = drawing.modelspace().query("INSERT")
    return [one for one in found if one.dxf.name.startswith(("DOOR", "FRAME", "HINGE"))]


def test_door_frame_and_hinge_of_each_plan_carry_the_opening(drawn):
    found = parts(drawn["plan"])
    large = [one for one in found if one.dxf.name.startswith("FRAME")]
    assert [attributes(one) for one in large] == [
        {"MARK": "112A", "HAND": "RH", "SIZE": "3'-0\" x 7'-0\"", "HINGE": f"4-1/2 x {width} hinge"}
        for width in ("4-1/2", "5")
    ]
    kinds = Counter(one.dxf.name.partition("-")[0] for one in found)
    # The small plans of the whole opening have a hinge of their own.
    assert (kinds["DOOR"], kinds["FRAME"], kinds["HINGE"]) == (2, 2, 4)


def test_a_part_is_drawn_whole_in_its_block_where_it_stands(drawn):
    frame = next(one for one in parts(drawn["plan"]) if one.dxf.name.startswith("FRAME"))
    block = drawn["plan"].blocks.get(frame.dxf.name)
    assert {"LWPOLYLINE", "ATTDEF"} <= {one.dxftype() for one in block}
    assert {one.dxf.layer for one in block.query("LWPOLYLINE")} == {"A-DOOR-FRAM"}
    # The first detail's origin is that of model space: frame face and rabbet face meet there.
    corners = [point[:2] for one in block.query("LWPOLYLINE") for point in one.get_points()]
    assert any(point == pytest.approx((0.0, 0.0)) for point in corners)
    assert tuple(frame.dxf.insert)[:2] == (0.0, 0.0)
    assert not drawn["plan"].modelspace().query('LWPOLYLINE[layer=="A-DOOR-FRAM"]')


def test_an_elevation_carries_the_hinge_that_was_chosen(drawn):
    assert {attributes(one)["HINGE"] for one in parts(drawn["elevation"])} == {"4-1/2 x 4 hinge"}


def test_what_people_are_shown_is_no_part(drawn):
    assert parts(drawn["client"]) == []


def test_the_fields_of_the_title_block_are_attributes_where_they_are_read(drawn):
    layout = drawn["plan"].paperspace("112A plan")
    (block,) = (one for one in layout.query("INSERT") if one.dxf.name.startswith("TITLE-BLOCK"))
    said = attributes(block)
    assert (said["OPENING"], said["JOB"], said["HAND"], said["JOB_NUMBER"]) == (
        "112A",
        "Kestrel Point",
        "RH",
        "26-118",
    )
    assert said["CLIENT"] == ""  # to be written in by hand
    mark = next(one for one in block.attribs if one.dxf.tag == "OPENING")
    assert not mark.is_invisible
    assert layout.dxf.paper_width / 25.4 * 0.3 < mark.dxf.insert.x < layout.dxf.paper_width / 25.4 * 0.6
    assert [one.dxf.text for one in layout.query("TEXT") if one.dxf.text == "112A"] == []


def test_a_mark_says_what_it_marks(drawn):
    marks = [one for one in drawn["plan"].modelspace().query("INSERT") if one.dxf.name == "MARK-PIN-AXIS"]
    assert [attributes(one) for one in marks] == [{"NAME": "pin axis"}] * 2
    assert all(one.attribs[0].is_invisible for one in marks)


def test_a_paragraph_of_the_notes_is_one_text_in_its_column(drawn):
    texts = drawn["plan"].paperspace("112A plan").query("MTEXT")
    words = [one.plain_text() for one in texts]
    (read,) = (one for one in words if one.startswith("Seen from above"))
    assert read.endswith("only what is dimensioned is measured.")
    assert "\n" not in read
    assert all(0 < one.dxf.width < 5 and one.dxf.style == "LETTERING" for one in texts)


@pytest.mark.parametrize("kind", ["plan", "elevation", "prep"])
@pytest.mark.parametrize("seed", [1, 2])
def test_dimensions_drawn_anew_read_the_same_and_parts_their_opening(kind, seed, monkeypatch):
    monkeypatch.setattr(dim_linear, "LengthMeasurement", Fractions)
    counts = Counter()
    assert faults_of(kind, seed, counts) == []
    assert counts["dimensions"]
    assert counts["blocks"]


def test_sheets_of_one_paper_share_the_block_of_their_title():
    pages = []
    for mark in ("1", "2"):
        opening = Opening.model_validate({"mark": mark, "hand": "RH", "size": {"width": 36, "height": 84}})
        pages.append(sheet_maker("plan")(study(opening), FACTS, papers()["Letter"], None, Display()))
    drawing = ezdxf.read(io.StringIO(pages_as_bytes(pages, ".dxf").decode()))
    assert not drawing.audit().errors
    blocks = [
        one
        for page in pages
        for one in drawing.paperspace(page.title).query("INSERT")
        if one.dxf.name.startswith("TITLE-BLOCK")
    ]
    assert len({one.dxf.name for one in blocks}) == 1
    assert [attributes(one)["OPENING"] for one in blocks] == ["1", "2"]
    (definition,) = {one.dxf.name for one in blocks}
    tags = [one.dxf.tag for one in drawing.blocks.get(definition).query("ATTDEF")]
    assert len(tags) == len(set(tags)) == len(blocks[0].attribs)
