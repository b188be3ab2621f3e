"""The page that shows where a number comes from, through real widgets."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt, QUrl
from PySide6.QtGui import QGuiApplication

from configurator.model import Job
from configurator.ui.analysis.comparison import ComparisonTable
from configurator.ui.analysis.derivation_page import EMPTY, DerivationPage
from configurator.ui.kit.canvas import DPI
from configurator.ui.state.session import Session
from configurator.ui.window.work import WORK
from configurator.units import Display
from configurator.wording.comparison import comparisons
from configurator.wording.derivation_words import Asked


def shown(qtbot, session):
    page = DerivationPage(session)
    qtbot.addWidget(page)
    page.resize(860, 280)
    page.show()
    page.show_state()
    return page


@pytest.fixture
def page(qtbot, session):
    """The page for 112A."""
    return shown(qtbot, session)


def choose(combo, place):
    combo.setCurrentIndex(place)
    combo.activated.emit(place)


def letter_row(page, written):
    rows = range(page.letters.rowCount())
    return next(row for row in rows if page.letters.text(row, 0) == written)


def test_the_first_number_is_shown_unasked(page):
    assert page.number.currentText() == "Greatest angle, bare"
    assert page.column.currentText() == "4 in hinge"
    assert "171.7878°" in page.text.toPlainText()
    assert page.letters.rowCount() > 10
    assert page.turn.text() == "Turn the door to 171.7°"


def test_every_number_and_every_column_can_be_chosen(page, session):
    (table,) = comparisons(session.study, Display())
    for place, row in enumerate(table.rows):
        choose(page.number, place)
        for column in range(page.column.count()):
            choose(page.column, column)
            values = (*row.values, row.difference)
            assert values[column] in page.text.toPlainText()
            assert page.shown.answer


def test_a_column_that_the_next_number_lacks_gives_way_to_the_first(page, session):
    session.edit("use.stop_angle", 80.0)
    page.show_state()
    page.ask(Asked("single", "clear_width_at_90", -1))
    assert page.column.currentText() == "4 in hinge"
    assert "does not come to 90°" in page.text.toPlainText()


def test_the_page_follows_edits_words_and_units(page, session):
    page.ask(Asked("single", "pin_off_door_face", 0))
    session.edit("door.thickness", 1.375)
    page.show_state()
    assert "1-3/8" in page.text.toPlainText()
    session.use_plain_words(True)
    page.show_state()
    assert page.number.currentText() == "Hinge pin stands off the door by"
    session.show_in(Display(metric=True))
    page.show_state()
    assert "mm" in page.text.toPlainText()


def test_a_letter_under_the_pointer_or_chosen_by_keyboard_is_marked(page, session):
    marked = []
    session.pointed.connect(marked.append)
    page.text.highlighted.emit(QUrl("#rho_s"))
    assert marked[-1].words == "ρ_s = 2.7078 in"
    assert (marked[-1].leaf, marked[-1].on) == ("single", 4.0)
    page.text.highlighted.emit(QUrl(""))
    assert marked[-1] is None
    page.letters.setCurrentCell(letter_row(page, "W"), 0)
    assert marked[-1].words == "W = 4 in"
    page.text.anchorClicked.emit(QUrl("#theta"))
    assert page.letters.currentRow() == letter_row(page, "θ")
    assert marked[-1].mark.arcs
    page.letters.entered.emit(page.letters.shown.index(letter_row(page, "T"), 1))
    assert marked[-1].words == "T = 1-3/4 in"
    page.hide()
    assert marked[-1] is None


def test_arrows_in_the_text_mark_letters_and_tab_leaves_it(qtbot, page, session):
    page.activateWindow()
    page.text.setFocus()
    qtbot.waitUntil(page.text.hasFocus)
    marked = []
    session.pointed.connect(marked.append)
    cursor = page.text.document().find("ρ")
    cursor.setPosition(cursor.selectionStart())
    page.text.setTextCursor(cursor)
    qtbot.keyClick(page.text, Qt.Key.Key_Right)
    assert marked[-1].words.startswith("ρ_s = ")
    qtbot.keyClick(page.text, Qt.Key.Key_Tab)
    assert page.letters.hasFocus()


def test_a_letter_without_a_place_in_plan_marks_nothing(page, session):
    page.ask(Asked("single", "clear_width_at_90", -1))
    marked = []
    session.pointed.connect(marked.append)
    page.point_at("A_1")
    page.point_at("no such letter")
    assert marked == [None, None]


def test_the_door_turns_to_where_the_number_is_decided(page, session):
    page.turn.click()
    assert session.angle == pytest.approx(171.787780, abs=1e-5)


def test_the_work_is_copied_as_text(page):
    page.copy.click()
    copied = QGuiApplication.clipboard().text()
    assert copied == page.shown.as_text()
    assert copied.startswith("Greatest angle, bare, 4 in hinge: 171.7°")


def test_with_nothing_to_show_it_says_what_to_do(qtbot, qapp):
    page = shown(qtbot, Session(Job()))
    assert page.words.text() == EMPTY
    assert not page.text.isVisible()
    page.copy.click()
    page.turn.click()
    page.point_at("o")
    assert page.shown is None


# --- From the comparison ---


@pytest.fixture
def table(qtbot, session):
    table = ComparisonTable(session)
    qtbot.addWidget(table)
    table.show_state()
    return table


@pytest.mark.parametrize(("column", "asked"), [(0, 0), (1, 0), (2, 1), (3, -1)])
def test_enter_on_a_number_asks_for_its_work(qtbot, table, column, asked):
    wanted = []
    table.work_wanted.connect(lambda *what: wanted.append(what))
    table.setCurrentCell(2, column)
    qtbot.keyClick(table, Qt.Key.Key_Return)
    table.doubleClicked.emit(table.model().index(2, column))
    assert wanted == [("single", "pin_off_door_face", asked)] * 2


def test_other_keys_stay_the_tables_own(qtbot, table):
    table.setCurrentCell(2, 1)
    qtbot.keyClick(table, Qt.Key.Key_Down)
    assert table.currentRow() == 3


def test_the_heading_of_a_leaf_asks_for_nothing(qtbot, session, table):
    session.edit_many({"leaves": "pair", "size.width": 72.0})
    table.show_state()
    wanted = []
    table.work_wanted.connect(lambda *what: wanted.append(what))
    table.doubleClicked.emit(table.model().index(0, 0))
    assert wanted == []
    table.doubleClicked.emit(table.model().index(1, 1))
    assert wanted[0][0] == "active"


def test_a_part_of_the_picture_under_the_pointer_chooses_its_letter(read_window):
    under, canvas = read_window.work.under, read_window.work.picture.canvas
    read_window.work.comparison.work_wanted.emit("single", "pin_off_frame_face", 0)
    page = under.later[WORK].page
    marked = []
    read_window.session.pointed.connect(marked.append)
    panel = canvas._sheet.panels[0]
    h, view = panel.hung.h, panel.main.view
    x, y = view.to_sheet((0.0, -h.R / 2))
    canvas.moved.emit(QPointF(x * DPI / 72, (canvas._sheet.height - y) * DPI / 72))
    assert page.letters.text(page.letters.currentRow(), 0) == "R"
    assert marked[-1].words == "R = 1-15/16 in"
    canvas.moved.emit(None)
    assert marked[-1] is None


def test_in_the_window_the_work_opens_and_a_letter_is_drawn_over_the_picture(read_window):
    under, canvas = read_window.work.under, read_window.work.picture.canvas
    under.setCurrentIndex(0)
    read_window.work.comparison.work_wanted.emit("single", "pin_off_frame_face", 1)
    assert under.tabText(under.currentIndex()) == WORK
    page = under.later[WORK].page
    assert page.shown.heading == "Pin axis off frame face, 4-1/2 in hinge"
    before = np.asarray(canvas.buffer_rgba()).copy()
    page.point_at("W")
    marked = np.asarray(canvas.buffer_rgba()).copy()
    assert not np.array_equal(before, marked)
    read_window.session.swing(90.0)
    page.point_at("")
    read_window.session.swing(180.0)
    assert np.array_equal(np.asarray(canvas.buffer_rgba()), before)


def _dimension_place(canvas, panel, of):
    """Where in the widget the text of a dimension of a panel's large or small picture stands."""
    from configurator.drawing.base.primitives import Dimension

    groups = (*canvas._sheet.still, *canvas.turning_groups(), *canvas._sheet.notes)
    window = canvas._sheet.panels[panel].main.view.window
    places = [
        group.view.to_sheet(item.text_at)
        for group in groups
        for item in group.primitives
        if isinstance(item, Dimension) and item.name == of
    ]
    x, y = next(place for place in places if window.has(place))
    return QPointF(x * DPI / 72, (canvas._sheet.height - y - 2) * DPI / 72)


@pytest.mark.parametrize(
    ("panel", "of", "heading"),
    [
        (0, "pin axis off door face", "Pin axis off door face, 4 in hinge"),
        (1, "barrel past wall face", "Barrel past wall face, 4-1/2 in hinge"),
        (1, "clear width at 90", "Clear width at 90, 4-1/2 in hinge"),
    ],
)
def test_a_double_click_on_a_dimension_of_the_picture_shows_its_work(qtbot, read_window, panel, of, heading):
    canvas, under = read_window.work.picture.canvas, read_window.work.under
    under.setCurrentIndex(0)
    at = _dimension_place(canvas, panel, of).toPoint()
    qtbot.mouseDClick(canvas, Qt.MouseButton.LeftButton, pos=at)
    assert under.tabText(under.currentIndex()) == WORK
    assert under.later[WORK].page.shown.heading == heading


def test_a_double_click_elsewhere_or_on_a_trial_asks_for_nothing(qtbot, read_window):
    canvas, asked = read_window.work.picture.canvas, []
    read_window.session.work_asked.connect(asked.append)
    at = _dimension_place(canvas, 0, "pin axis off door face")
    read_window.session.trial.show({"obstructions.0.projection": 1.5}, "a thinner rail")
    assert read_window.session.trial.study is not None
    canvas.picked.emit(at)
    read_window.session.trial.end()
    canvas.picked.emit(QPointF(2.0, 2.0))
    assert asked == []


def test_what_a_letter_is_goes_on_in_a_second_line_and_is_never_cut_off(qtbot, page):
    page.resize(700, 260)
    letters = page.letters
    letters.setFixedWidth(320)
    qtbot.waitUntil(lambda: letters.horizontalScrollBar().maximum() == 0)
    single, row = letters.fontMetrics().height(), 0
    texts = [letters.text(n, 2) for n in range(letters.rowCount())]
    row = max(range(len(texts)), key=lambda n: len(texts[n]))
    assert letters.fontMetrics().horizontalAdvance(texts[row]) > letters.columnWidth(2)
    assert letters.rowHeight(row) >= 2 * single
