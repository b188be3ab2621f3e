"""Finishes looked up in both directions through real widgets, and taken for the opening."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from configurator.ui.hinge.finish_panel import HEADS
from configurator.ui.window.work import FINISHES


@pytest.fixture
def panel(under):
    """The finishes' tab on show for 112A."""
    under.setCurrentWidget(under.later[FINISHES])
    return under.later[FINISHES].page


def column(panel, name):
    place = HEADS.index(name)
    return [panel.table.text(row, place) for row in range(panel.table.rowCount())]


def look_up(qtbot, panel, text):
    panel.search.setFocus()
    panel.search.selectAll()
    qtbot.keyClicks(panel.search, text)


def use(qtbot, panel):
    qtbot.mouseClick(panel.use, Qt.MouseButton.LeftButton)


def test_from_the_us_code_to_the_number_on_every_metal(qtbot, panel):
    look_up(qtbot, panel, "26d")
    assert column(panel, "BHMA number") == ["626", "626", "652", "702", "682"]
    assert column(panel, "Metal") == ["brass", "bronze", "steel", "aluminum", "zinc"]
    assert "it says the look, not the metal" in panel.same.text()


def test_from_the_number_to_the_look_the_code_and_the_metal(qtbot, panel):
    look_up(qtbot, panel, "652")
    assert (column(panel, "Look"), column(panel, "US code"), column(panel, "Metal")) == (
        ["satin chrome"],
        ["US26D"],
        ["steel"],
    )
    assert panel.same.text().startswith("652 is satin chrome")


def test_from_the_look_and_the_metal(qtbot, panel):
    look_up(qtbot, panel, "bronze")
    place = panel.metal.findData("steel")
    panel.metal.setCurrentIndex(place)
    panel.metal.activated.emit(place)
    assert set(column(panel, "Metal")) == {"steel"}
    assert "640" in column(panel, "BHMA number")
    oxidised = column(panel, "Look").index("oil-rubbed bronze")
    assert column(panel, "On other metals")[oxidised] == "not the same on every metal"


def test_every_finish_says_where_it_comes_from(panel):
    assert all(column(panel, "Source"))
    assert any(source.endswith("(read in the source)") for source in column(panel, "Source"))


def test_a_swatch_is_only_an_idea(panel):
    assert "only an idea of the colour" in panel.idea.text()
    finishes = panel.table.shown
    assert all("only an idea" in finishes.tip(row, 0) for row in range(finishes.rowCount()))
    assert not finishes.index(0, 0).data(Qt.ItemDataRole.DecorationRole).isNull()
    assert "only an idea" in finishes.index(0, 0).data(Qt.ItemDataRole.AccessibleTextRole)


def test_a_finish_is_taken_for_the_opening_with_its_metal_and_undone(qtbot, session, panel):
    look_up(qtbot, panel, "606")
    assert panel.use.text() == "Use this finish: 606 on brass"
    use(qtbot, panel)
    hinge = session.opening.hinge
    assert (hinge.finish_bhma, hinge.base_metal) == ("606", "brass")
    assert session.study.recommended["finish_us"] == "US4"
    session.undo()
    assert session.opening.hinge is None


def test_a_number_of_two_metals_takes_the_metal_that_was_selected(qtbot, session, panel):
    look_up(qtbot, panel, "626 ")
    panel.table.setCurrentCell(1, 1)
    use(qtbot, panel)
    assert session.study.recommended["base_metal"] == "bronze"


def test_a_finish_taken_replaces_a_code_that_was_asked_for(qtbot, session, panel):
    session.edit("hinge.finish_us", "US10B")
    look_up(qtbot, panel, "652")
    use(qtbot, panel)
    assert session.opening.hinge.finish_us is None
    assert "finish disagree" not in {one.code for one in session.study.specification.findings}


def test_brass_on_a_labelled_door_is_taken_as_said_and_found_fault_with(qtbot, session, panel):
    session.select("140A")
    look_up(qtbot, panel, "626")
    use(qtbot, panel)
    chosen = session.study.specification.whole
    assert chosen["finish_bhma"].value == "626"  # nothing is converted silently
    assert session.study.recommended == {}
    assert "fire metal" in {one.code for one in session.study.specification.findings}


def test_a_metal_no_hinge_is_made_of_cannot_be_taken(qtbot, session, panel):
    look_up(qtbot, panel, "682")
    assert not panel.use.isEnabled()
    assert "no hinge is made of zinc here" in panel.same.text()
    panel.use_selected()
    assert session.opening.hinge is None


def test_nothing_found_says_what_to_type(qtbot, panel):
    look_up(qtbot, panel, "sky blue")
    assert panel.table.rowCount() == 0
    assert "No finish is found by that" in panel.same.text()
    assert not panel.use.isEnabled()


def test_without_an_opening_nothing_can_be_taken(session, panel):
    while session.opening is not None:
        session.remove_opening()
    assert not panel.use.isEnabled()


def test_everything_is_reached_by_the_keyboard_and_named(qtbot, panel):
    panel.search.setFocus()
    reached = []
    for _ in range(4):
        widget = QApplication.focusWidget()
        reached.append(widget.accessibleName() or widget.text())
        qtbot.keyClick(widget, Qt.Key.Key_Tab)
    assert reached[0].startswith("look a finish up")
    assert reached[1] == "metal of the finish"
    assert "finishes" in reached
    assert any(name.startswith("Use this finish") for name in reached)


def test_the_finish_of_the_hinge_is_selected_first(window):
    window.work.under.setCurrentWidget(window.work.under.later[FINISHES])
    parts = window.session.study.specification.leaves[0].parts
    line = window.work.under.later[FINISHES].page.selected()
    assert (line.row.bhma, line.row.metal) == (parts["finish_bhma"].value, parts["base_metal"].value)
