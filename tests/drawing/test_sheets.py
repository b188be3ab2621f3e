import pytest

from configurator.drawing.base.primitives import Polyline, Text
from configurator.drawing.pages.page import Page, papers
from configurator.drawing.sheets import SHEETS, sheet_maker
from configurator.model import JobFacts, Revision
from configurator.order.revisions import print_of
from configurator.units import Display
from tests.drawing.cases import demo


@pytest.mark.parametrize("kind", SHEETS)
def test_every_kind_of_sheet_makes_a_page_of_the_paper_asked_for(kind):
    found = sheet_maker(kind)(demo("112A"), JobFacts(), papers()["Tabloid"], None, Display(), (2, 3))
    assert isinstance(found, Page)
    assert found.paper in (papers()["Tabloid"], papers()["Tabloid"].turned())
    assert found.details
    assert found.title.startswith("112A ")


def test_an_unknown_kind_is_no_sheet():
    with pytest.raises(KeyError):
        sheet_maker("section")


def test_a_sheet_tells_the_revisions_of_its_opening_and_marks_what_changed():
    answer = demo("112A")
    as_it_is, as_it_was = print_of(answer.opening), "0" * 16
    given = {"date": "2026-03-02", "note": "for approval"}

    def marked(*prints):
        revisions = [
            Revision(number=number, openings={"112A": one} if one else {}, **given)
            for number, one in enumerate(prints, 1)
        ]
        page = sheet_maker("plan", revisions)(answer, JobFacts(), papers()["Letter"], None, Display())
        drawn = [one for one in page.furniture if one.layer == "A-ANNO-REVS"]
        words = [one.text for one in drawn if isinstance(one, Text)]
        return words, sum(isinstance(one, Polyline) for one in drawn)

    # The triangles are one for each change, and the last of them beside the mark in the title block.
    assert marked(as_it_is) == (["Revisions", "1", "2026-03-02", "for approval", "1"], 2)
    assert marked(as_it_was, as_it_is, as_it_is)[1] == 3
    assert marked(as_it_was)[0][-2:] == ["changed since, not issued", ""]
    assert marked("", as_it_is)[0].count("for approval") == 1
    assert marked() == ([], 0)
    many = marked(*([as_it_was, as_it_is] * 6))[0]
    assert "and 7 earlier" in many
