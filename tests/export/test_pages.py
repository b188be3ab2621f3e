import os
import re
import subprocess
import sys
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PIL import Image

from configurator.drawing.base.primitives import Text
from configurator.drawing.pages.page import Page, papers
from configurator.drawing.pages.plan_page import plan_page
from configurator.export.pages import PAGE_DPI, PAGE_FORMATS, pages_as_bytes, write_pages
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo

STARTS = {".pdf": b"%PDF", ".svg": b"<?xml", ".png": b"\x89PNG"}


def page(paper="Letter", study=None):
    return plan_page(study or demo("112A"), JobFacts(name="Case"), papers()[paper], None, Display())


def empty(paper, *furniture):
    return Page("blank", papers()[paper], (), furniture)


@pytest.mark.parametrize("ending", STARTS)
def test_every_format_says_what_it_is_and_is_the_same_every_time(ending):
    written = pages_as_bytes([page()], ending)
    assert written.startswith(STARTS[ending])
    assert pages_as_bytes([page()], ending.upper()) == written


def test_the_formats_are_those_asked_for():
    assert set(PAGE_FORMATS) == {*STARTS, ".dxf"}, "say in STARTS how a file of it begins"


@pytest.mark.parametrize("ending", ["", ".bmp", ".pdf2"])
def test_any_other_ending_is_refused_in_words(ending):
    with pytest.raises(ValueError, match=r"a sheet ends in \.pdf"):
        pages_as_bytes([page()], ending)


@pytest.mark.parametrize("ending", [".svg", ".png"])
def test_a_format_of_one_sheet_refuses_none_and_two(ending):
    for pages in ([], [page(), page()]):
        with pytest.raises(ValueError, match="one sheet"):
            pages_as_bytes(pages, ending)


def test_a_pdf_of_nothing_is_refused():
    with pytest.raises(ValueError, match="no sheet"):
        pages_as_bytes([], ".pdf")


def test_a_file_is_written_whole_or_the_old_one_stays(tmp_path):
    path = tmp_path / "sheet.pdf"
    path.write_bytes(b"old")

    def stopped():
        yield page()
        raise RuntimeError("stopped by hand")

    with pytest.raises(RuntimeError, match="by hand"):
        write_pages(stopped(), path)
    assert path.read_bytes() == b"old"
    write_pages([page()], path)
    assert path.read_bytes() == pages_as_bytes([page()], ".pdf")
    assert [one.name for one in tmp_path.iterdir()] == ["sheet.pdf"]


def test_a_pdf_has_a_page_and_a_bookmark_for_each_sheet_and_carries_its_fonts():
    written = pages_as_bytes([page(), page("A3", demo("205A"))], ".pdf")
    assert len(re.findall(rb"/Type /Page\b", written)) == 2
    assert b"112A plan" in written
    assert b"205A plan" in written
    assert written.count(b"/FontFile2") == 2
    assert b"Helvetica" not in written  # the library's own, which it would not embed
    assert b"(112A plan and 1 more)" in written
    assert b"/CreationDate (D:2000" in written  # the library's fixed date, never the clock's


def test_the_bytes_are_the_same_in_every_run_and_every_time_zone():
    """Sets come in another order in every run of the program, and clocks differ."""
    code = (
        "from hashlib import sha256; from tests.export.test_pages import page;"
        "from configurator.export.pages import PAGE_FORMATS, pages_as_bytes;"
        "print(*(sha256(pages_as_bytes([page()], one)).hexdigest() for one in PAGE_FORMATS))"
    )
    other = subprocess.run(
        [sys.executable, "-c", code],
        env={**os.environ, "PYTHONHASHSEED": "1", "TZ": "Asia/Kolkata"},
        cwd=Path(__file__).parents[2],
        capture_output=True,
        text=True,
        check=True,
    ).stdout
    here = [sha256(pages_as_bytes([page()], one)).hexdigest() for one in PAGE_FORMATS]
    assert other.split() == here
    assert len(here) == 4


def test_letters_that_a_pdf_lacks_stop_nothing():
    assert pages_as_bytes([page(study=case_a(mark="日本 \U0001f4a5"))], ".pdf").startswith(b"%PDF")


@pytest.mark.parametrize("name", papers())
def test_an_svg_is_as_large_as_its_paper_in_millimetres(name):
    root = ElementTree.fromstring(pages_as_bytes([empty(name)], ".svg"))
    paper = papers()[name]
    assert root.get("width") == f"{paper.width:g}mm"
    assert root.get("height") == f"{paper.height:g}mm"
    assert root.get("viewBox") == f"0 0 {paper.width:g} {paper.height:g}"


def test_svg_lettering_is_text_placed_from_above_with_signs_escaped():
    text = Text("A-ANNO-TEXT", (72.0, 72.0), '3 < 4 & "5"', 10.0, bold=True)
    root = ElementTree.fromstring(pages_as_bytes([empty("Letter", text)], ".svg"))
    (found,) = root.iter("{http://www.w3.org/2000/svg}text")
    assert found.text == '3 < 4 & "5"'
    assert (float(found.get("x")), float(found.get("y"))) == pytest.approx((25.4, 215.9 - 25.4))
    assert float(found.get("font-size")) == pytest.approx(10 * 25.4 / 72, abs=1e-4)
    assert (found.get("class"), found.get("font-weight")) == ("A-ANNO-TEXT", "bold")


def test_an_svg_names_its_dimensions_and_its_layers():
    text = pages_as_bytes([page()], ".svg").decode()
    assert 'data-name="pin axis off door face"' in text
    assert 'class="A-DOOR-FRAM"' in text
    ElementTree.fromstring(text)


def test_a_png_has_the_pixels_of_its_paper_and_says_how_large_they_are():
    image = Image.open(BytesIO(pages_as_bytes([page("A4")], ".png")))
    assert image.size == pytest.approx((297 / 25.4 * PAGE_DPI, 210 / 25.4 * PAGE_DPI), abs=1.0)
    assert image.info["dpi"] == pytest.approx((PAGE_DPI, PAGE_DPI), abs=0.02)
    assert image.convert("RGB").getpixel((3, 3)) == (255, 255, 255)
