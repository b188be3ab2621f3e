"""The page about widths and angles, through real widgets."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt

from configurator.model import Job
from configurator.ui.analysis.widths_and_angles import EMPTY, WidthsAndAngles
from configurator.ui.state.session import Session
from configurator.units import Display
from tests.openings import plain_opening


@pytest.fixture
def window(edited_window):
    return edited_window


def shown(qtbot, session):
    page = WidthsAndAngles(session)
    qtbot.addWidget(page)
    page.resize(860, 260)
    page.show()
    page.show_state()
    session.changed.connect(lambda _: page.show_state())
    return page


@pytest.fixture
def page(qtbot, session):
    """The page for 112A."""
    return shown(qtbot, session)


def cell(page, row, head):
    heads = [head.title for head in page.table.shown.heads]
    return page.table.text(row, heads.index(head))


def on_chart(page, width):
    sheet = page.chart.sheet
    x, _ = sheet.place(width, sheet.chart.left.low)
    return QPoint(round(x * 96 / 72), page.chart.height() // 2)


def test_the_sentence_and_the_table(page):
    assert page.sentence.text() == "Least hinge open width for 180°: 4-3/8 in exactly; next in stock 4-1/2."
    assert [cell(page, row, "Open width") for row in range(3)] == ["4", "4-1/2", "5 (uncommon)"]
    assert [cell(page, row, "Fits") for row in range(3)] == ["no", "yes", "yes"]
    assert cell(page, 0, "Why not") == "stops at 171.7°, leaf on the chair rail"
    assert cell(page, 1, "Chair rail may stand out") == "up to 1-7/8 in"
    assert "opens to 180° from 4-3/8 in" in page.breaks.text()


def test_the_next_in_stock_is_selected_first(page):
    assert page.selected() == 4.5
    assert not page.compare.isEnabled()
    assert page.compare.text() == "4-1/2 is compared"


def test_enter_in_the_table_compares_the_width_too(qtbot, page, session):
    page.table.setFocus()
    qtbot.keyClick(page.table, Qt.Key.Key_Down)
    assert page.compare.text() == "Compare 5 too"
    qtbot.keyClick(page.table, Qt.Key.Key_Return)
    assert session.value("compare") == (4, 4.5, 5)
    assert page.selected() == 5
    assert not page.compare.isEnabled()


def test_the_button_compares_it_and_undo_takes_it_back(qtbot, page, session):
    page.table.setCurrentCell(3, 0)
    qtbot.mouseClick(page.compare, Qt.MouseButton.LeftButton)
    assert session.value("compare") == (4, 4.5, 6)
    session.undo()
    assert session.value("compare") == (4, 4.5)
    assert page.compare.isEnabled()


def test_a_click_on_a_stock_width_in_the_chart_compares_it(qtbot, page, session):
    qtbot.mouseClick(page.chart, Qt.MouseButton.LeftButton, pos=on_chart(page, 7))
    assert session.value("compare") == (4, 4.5, 7)


@pytest.mark.parametrize(("width", "button"), [(6.5, "LeftButton"), (6, "RightButton"), (4, "LeftButton")])
def test_other_clicks_change_nothing(qtbot, page, session, width, button):
    before = session.job
    qtbot.mouseClick(page.chart, Qt.MouseButton[button], pos=on_chart(page, width))
    assert session.job is before


def test_the_pointer_reads_the_exact_answer_there(page):
    said = page.chart.read_at(QPointF(on_chart(page, 4.5)))
    assert said.startswith("4-1/2 in: opens to 180° bare, 178.8° with hardware; clear width 32-13/16 in")
    assert page.chart.read_at(QPointF(1, 1)) == ""


def test_the_chart_says_itself_to_who_cannot_see_it(page):
    assert "4-3/8 in exactly" in page.chart.accessibleDescription()
    assert page.chart.accessibleName()


def test_other_units_are_shown_at_once(page, session):
    session.show_in(Display(metric=True))
    assert cell(page, 1, "Clear at 90") == "833.4 mm"
    assert page.chart.sheet.chart.right.title == "clear width at 90, mm"


def test_plain_words_are_shown_at_once(page, session):
    session.use_plain_words(True)
    assert cell(page, 1, "Walk-through width") == "32-13/16 in"
    assert page.chart.sheet.chart.right.title == "walk-through width, in"


def test_an_edit_is_followed_and_nothing_else_is_worked_out_again(page, session):
    before = page.shown_leaf()
    session.swing(30)
    session.use_dark(True)
    assert page.shown_leaf() is before
    session.edit("obstructions.0.projection", 2.25)
    assert (
        page.sentence.text()
        == "Least hinge open width for 180°: 4-7/8 in exactly; next in stock 5 (uncommon)."
    )


def test_the_chart_is_laid_out_for_the_room_there_is(page):
    narrow = page.chart.sheet.width
    page.resize(1400, 500)
    assert page.chart.sheet.width > narrow
    assert page.chart.sheet.width == pytest.approx(page.chart.width() * 72 / 96)


def test_a_leaf_is_chosen_where_there_are_two(qtbot, session):
    session.edit_many({"leaves": "pair", "size": {"width": 72, "height": 84}})
    page = shown(qtbot, session)
    assert not page.leaf.isHidden()
    assert page.shown_leaf().leaf == "active"
    page.leaf.setCurrentIndex(1)
    page.leaf.activated.emit(1)
    assert page.shown_leaf().leaf == "inactive"
    session.select("101A")
    assert page.leaf.isHidden()
    assert page.shown_leaf().leaf == "single"


def test_no_more_widths_are_added_than_may_be_compared(page, session):
    many = [4 + n / 16 for n in range(12)]
    session.edit("compare", many)
    page.table.setCurrentCell(page.table.rowCount() - 1, 0)
    assert not page.compare.isEnabled()
    page.compare_selected()
    assert session.value("compare") == tuple(many)


def test_an_empty_job_says_what_to_do(qtbot):
    page = shown(qtbot, Session(Job()))
    assert page.sentence.text() == EMPTY
    assert not page.chart.isVisible()
    assert page.selected() is None


def test_an_opening_that_cannot_be_studied_says_why(qtbot):
    def refuse(opening, facts):
        raise ValueError("This door cannot be hung.")

    page = shown(qtbot, Session(Job(openings=(plain_opening(),)), studier=refuse))
    assert page.sentence.text() == "This door cannot be hung."
    assert not page.chart.isVisible()


def test_both_pages_are_made_when_their_tab_is_first_shown(qtbot, fresh_window, session):
    under = fresh_window.work.under
    titles = [under.tabText(place) for place in range(under.count())]
    for title in ("Widths and angles", "Over the swing"):
        assert under.later[title].page is None
        under.setCurrentIndex(titles.index(title))
        page = under.later[title].page
        qtbot.waitUntil(page.isVisible)
    swing = under.later["Over the swing"].page
    fresh_window.work.swing.angle.setValue(60)
    assert swing.chart.line_at == 60
    under.setCurrentIndex(titles.index("Widths and angles"))
    session.edit("obstructions.0.projection", 2.25)
    assert "4-7/8 in exactly" in under.later["Widths and angles"].page.sentence.text()
