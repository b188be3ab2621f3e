import re
from pathlib import Path

import pytest

from configurator.drawing.pages.page import scale_named
from configurator.drawing.sheets import SHEETS
from configurator.export import document, pages
from configurator.model import JobFacts, Opening
from configurator.ui.files import files
from configurator.ui.order import writing as order_writing
from configurator.ui.sheets import page as sheet_page
from configurator.ui.sheets.preview import KINDS, SheetChoice, pages_of

README = Path(__file__).resolve().parents[3] / "README.md"
GOOD = {"hand": "LH", "size": {"width": 36, "height": 84}, "compare": [4, 4.5]}


def opening(mark, **more):
    return Opening.model_validate({"mark": mark, **GOOD, **more})


def test_every_kind_of_sheet_has_a_name_in_the_window():
    assert set(KINDS) == set(SHEETS), "SHEETS of drawing/sheets.py and KINDS of ui/sheets/preview.py"
    assert len(set(KINDS.values())) == len(KINDS)


@pytest.mark.parametrize(
    ("offered", "written"),
    [
        (sheet_page.FORMATS, pages.PAGE_FORMATS),
        (sheet_page.ONE_FILE, pages.OF_MANY_PAGES),
        (files.PICTURES, pages.PLAN_FORMATS),
        (order_writing.FILTERS, document.DOCUMENT_FORMATS),
    ],
)
def test_a_file_dialog_offers_every_format_there_is(offered, written):
    missing = sorted(set(written) - set(re.findall(r"\*(\.\w+)", offered)))
    assert missing == [], f"offer these beside “{offered}”"
    assert sorted(re.findall(r"\*(\.\w+)", offered)) == sorted(written)


def test_readme_names_every_kind_of_sheet_and_every_ending():
    text = README.read_text("utf-8").replace("\\|", "|")
    assert f"[--sheet {'|'.join(SHEETS)}]" in text, "name every sheet at `draw` in README"
    for ending in (*pages.PAGE_FORMATS, *document.DOCUMENT_FORMATS):
        assert f"`{ending}`" in text or f"X{ending}" in text, ending


def test_pages_come_in_the_order_of_the_openings_and_count_them(choice):
    pages = list(pages_of([opening("1"), opening("2")], JobFacts(), choice, []))
    assert [page.title for page in pages] == ["1 plan", "2 plan"]
    texts = [getattr(item, "text", "") for item in pages[1].furniture]
    assert "2 of 2" in texts


def test_a_page_is_laid_out_when_it_is_asked_for(choice, monkeypatch):
    laid_out, page = [], SheetChoice.page

    def noted(self, study, job, number):
        laid_out.append(study.opening.mark)
        return page(self, study, job, number)

    monkeypatch.setattr(SheetChoice, "page", noted)
    pages = pages_of([opening(mark) for mark in "123"], JobFacts(), choice, [])
    assert laid_out == []
    assert next(pages).title == "1 plan"
    assert laid_out == ["1"]
    assert [one.title for one in pages] == ["2 plan", "3 plan"]
    assert laid_out == ["1", "2", "3"]


def test_what_cannot_be_studied_or_drawn_is_told_and_the_rest_is_drawn(choice):
    """Of a leaf without height there is no study; at full size no plan fits on Letter."""
    low = opening("2", size={"width": 36, "height": 5}, door={"undercut": 12})
    told: list[str] = []
    pages = list(pages_of([opening("1"), low, opening("3")], JobFacts(), choice, told))
    assert [page.title for page in pages] == ["1 plan", "3 plan"]
    assert len(told) == 1
    assert told[0].startswith("2: ")
    large = SheetChoice("plan", choice.paper, scale_named("full"), choice.display)
    assert list(pages_of([opening("1")], JobFacts(), large, told)) == []
    assert "does not fit on Letter paper" in told[1]
