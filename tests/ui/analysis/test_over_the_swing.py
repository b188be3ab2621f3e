"""The page about the whole swing, through real widgets."""

import pytest
from PySide6.QtCore import QPointF

from configurator.model import Job
from configurator.ui.analysis.over_the_swing import EMPTY, OverTheSwingPage
from configurator.ui.state.session import Session
from configurator.units import Display


def shown(qtbot, session):
    page = OverTheSwingPage(session)
    qtbot.addWidget(page)
    page.resize(860, 260)
    page.show()
    page.show_state()
    return page


@pytest.fixture
def page(qtbot, session):
    """The page for 112A."""
    return shown(qtbot, session)


def rows(page):
    texts = [
        [page.table.text(row, column) for column in range(page.table.columnCount())]
        for row in range(page.table.rowCount())
    ]
    return {name: values for name, *values in texts}


def choose(combo, place):
    combo.setCurrentIndex(place)
    combo.activated.emit(place)


def test_the_edges_and_how_far_it_stands_out(page):
    found = rows(page)
    assert found["Lock edge, 1/8 in 2"] == ["3/32 in at 0.2°", "3/32 in at 0.2°"]
    assert found["Lock edge, if it were square"] == ["1/32 in at 2.9°", "1/32 in at 2.9°"]
    assert found["Bevel that leaves 1/16 in there"] == ["1/32 in 2: it has it", "1/32 in 2: it has it"]
    assert found["Stands out at rest, leaf alone"] == ["8-7/32 in at 171.7°", "3-5/8 in at 180°"]


def test_another_gap_may_be_wanted(page):
    choose(page.gap, 3)
    assert rows(page)["Bevel that leaves 1/8 in there"] == ["none does: widen the gap"] * 2
    choose(page.gap, 0)
    assert rows(page)["Bevel that leaves 1/32 in there"] == ["none: square does"] * 2


def test_the_chart_is_of_the_width_chosen(page):
    assert "4 in hinge" in page.chart.sheet.chart.curves[1].label
    choose(page.width_shown, 1)
    labels = [curve.label for curve in page.chart.sheet.chart.curves]
    assert any(label.startswith("4-1/2 in hinge") for label in labels)


def test_the_line_follows_the_door(page, session):
    drawn = page.chart.sheet
    session.swing(45)
    assert page.chart.line_at == 45
    assert page.chart.sheet is drawn  # only the line moved


def test_a_hidden_page_lets_the_door_swing(page, session):
    page.hide()
    session.swing(45)
    assert page.chart.line_at == 180
    page.show()
    page.show_state()
    assert page.chart.line_at == 45


def test_the_pointer_reads_the_angle_there(page):
    sheet = page.chart.sheet
    x, _ = sheet.place(90, 0)
    said = page.chart.read_at(QPointF(x * 96 / 72, page.chart.height() / 2))
    assert said.startswith("open 90")
    assert "the leaf stands out 36-11/16 in" in said


def test_the_corridor_is_drawn_where_it_is_given(qtbot, session):
    session.select("160A")
    page = shown(qtbot, session)
    assert [rule.at for rule in page.chart.sheet.chart.rules] == [60, 38, 23]


def test_other_units_are_shown(page, session):
    session.show_in(Display(metric=True))
    page.show_state()
    assert page.gap.currentText() == "1.6 mm"
    assert page.chart.sheet.chart.left.title == "stands out from the wall, mm"


def test_a_leaf_is_chosen_where_there_are_two(qtbot, session):
    session.edit_many({"leaves": "pair", "size": {"width": 72, "height": 84}})
    page = shown(qtbot, session)
    assert not page.leaf.isHidden()
    assert {one.leaf for one in page.shown()} == {"active"}
    choose(page.leaf, 1)
    assert {one.leaf for one in page.shown()} == {"inactive"}


def test_another_opening_has_its_own_widths(page, session):
    session.select("171A")
    page.show_state()
    assert page.width_shown.count() == 3
    assert page.table.columnCount() == 4


def test_an_empty_job_says_what_to_do(qtbot):
    page = shown(qtbot, Session(Job()))
    assert page.words.text() == EMPTY
    assert page.words.isVisible()
    assert not page.chart.isVisible()
