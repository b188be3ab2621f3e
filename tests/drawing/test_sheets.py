import pytest

from configurator.drawing.pages.page import Page, papers
from configurator.drawing.sheets import SHEETS, sheet_maker
from configurator.model import JobFacts
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
