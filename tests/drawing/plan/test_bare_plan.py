import pytest

from configurator.drawing.base.primitives import Text
from configurator.drawing.plan.sheet import bare_plan, plan_sheet
from configurator.units import Display
from tests.drawing.cases import demo


@pytest.fixture
def study():
    """112A on two widths."""
    return demo("112A")


def test_the_plans_are_those_of_the_sheet_with_the_leaf_closed(study):
    groups = bare_plan(study, 600.0, 400.0)
    sheet = plan_sheet(study, Display(), 600.0, 400.0)
    assert len(groups) == 1 + len(study.candidates)
    for group, panel in zip(groups[1:], sheet.panels, strict=True):
        assert group.view == panel.main.view
        assert set(panel.main.still) <= set(group.primitives)
        assert len(group.primitives) > len(panel.main.still)


def test_nothing_in_it_is_lettered_dimensioned_or_marked(study):
    items = [item for group in bare_plan(study, 600.0, 400.0) for item in group.primitives]
    assert not any(isinstance(item, Text) for item in items)
    assert {item.layer for item in items}.isdisjoint({"A-ANNO-DIMS", "A-ANNO-REDL", "A-ANNO-NOTE"})
