"""The page that says how sure a width is, through real widgets; worked out a little after the last edit."""

import pytest

from configurator.project_file import load
from configurator.study.tolerance.analysis import DRAWS
from configurator.ui.analysis.tolerance_page import WORKING, TolerancePage
from configurator.ui.state.session import Session
from tests.ui.conftest import DEMO
from tests.ui.form.test_form import type_into


@pytest.fixture
def window(edited_window):
    return edited_window


@pytest.fixture
def panel(qtbot, session):
    panel = TolerancePage(session)
    qtbot.addWidget(panel)
    session.changed.connect(lambda _: panel.show_state())
    panel.resize(900, 400)
    panel.show()
    panel.show_state()
    settled(qtbot, panel)
    return panel


def settled(qtbot, panel):
    def all_there():
        assert panel.sentences
        assert not [label for label in panel.sentences.values() if label.text().endswith(WORKING)]

    qtbot.waitUntil(all_there)


def said(panel, width):
    return panel.sentences["single", width].text()


def cells(panel, name):
    return [cell.text() for cell in panel.cells[name]]


def test_every_width_has_its_sentence_and_the_recommended_one_its_rows(panel):
    assert said(panel, 4).startswith("<b>4 in hinge</b>: Does not work as drawn: it stops at 171.7°")
    assert "Works as drawn with 1/8 in to spare" in said(panel, 4.5)
    assert f"{DRAWS:,} draws" in said(panel, 4.5)
    assert panel.width_shown.currentText() == "4-1/2 in hinge"
    assert cells(panel, "wall_thickness")[1:] == ["180°", "180°", "any", "+1/4 in"]
    assert panel.heads[-1].text() == "Works up to"
    assert cells(panel, "frame_setting")[0].endswith("●"), "of several that count alike the first"


def test_another_width_is_shown_when_chosen(panel):
    panel.width_shown.setCurrentIndex(0)
    panel.width_shown.activated.emit(0)
    assert cells(panel, "frame_setting")[3:] == ["none", "+3/8 in"]
    assert panel.heads[-1].text() == "or at"


def test_a_tolerance_is_assumed_until_it_is_typed_and_then_counts(panel, qtbot, session):
    field = panel.fields["tolerances.frame_setting"]
    assert field.editor.text() == ""
    assert field.editor.placeholderText() == "1/16 in"
    assert field.editor.tag.text() == "assumed"
    assert "3.02.B" in field.toolTip()
    type_into(qtbot, field, "3/16")
    assert session.opening.tolerances.frame_setting == 0.1875
    assert said(panel, 4.5).endswith(WORKING), "what no longer holds is not left standing"
    settled(qtbot, panel)
    assert "with a frame set 3/16 in back it stops at" in said(panel, 4.5)
    assert cells(panel, "frame_setting")[1].startswith("⚠ 17")
    assert cells(panel, "frame_setting")[0].endswith("●")
    session.undo()
    assert session.opening.tolerances.frame_setting is None


def test_a_refused_tolerance_is_said_beside_its_field(panel, qtbot, session):
    field = panel.fields["tolerances.gaps"]
    type_into(qtbot, field, "2")
    assert session.opening.tolerances.gaps is None
    assert field.note.text().endswith("must be at least 0 and at most 0.5 in; 2 was given")
    assert not field.note.isHidden()


def test_nothing_is_worked_out_again_for_a_swing_or_for_other_units(panel, session):
    before = panel.found()
    session.swing(30)
    panel.show_state()
    assert panel.found() is before


def test_plain_words_and_the_wall_are_said(panel, session):
    assert "centred in its wall: half" in panel.note.text()
    session.use_plain_words(True)
    assert cells(panel, "latch_gap")[0] == "Gap on the lock side"
    session.edit("wall.frame_proud", 0.5)
    assert "all of a thicker wall" in panel.note.text()


def test_tolerances_that_leave_no_door_are_said(panel, qtbot, session):
    session.edit_many({"door.thickness": 0.5, "tolerances.door_thickness": 0.5})
    settled(qtbot, panel)
    assert "leaves nothing of a door" in said(panel, 4.5)


def test_a_job_without_an_opening_says_where_to_begin(qtbot):
    session = Session(load(DEMO))
    for _ in session.job.openings:
        session.remove_opening()
    panel = TolerancePage(session)
    qtbot.addWidget(panel)
    panel.show()
    panel.show_state()
    assert panel.body.isHidden()
    assert "Choose an opening" in panel.empty.text()


def test_the_tab_is_there_and_made_when_first_shown(window, qtbot):
    under = window.work.under
    page = under.later["How sure"]
    assert page.page is None
    under.setCurrentWidget(page)
    qtbot.waitUntil(lambda: page.page is not None and bool(page.page.sentences))
