"""What the form asks of the use and of a door already made."""

import pytest
from PySide6.QtCore import Qt


def type_into(qtbot, field, text):
    editor = field.editor
    editor.setFocus()
    editor.selectAll()
    qtbot.keyClicks(editor, text)
    qtbot.keyClick(editor, Qt.Key.Key_Return)


def test_traffic_says_what_counts_as_high_and_how_sure_that_is(window):
    field = window.work.form.field("use.traffic")
    field.take_reason({})
    assert "high: school entrance, 1,250 openings a day" in field.toolTip()
    assert "common practice, no source" in field.toolTip()


def test_a_door_already_made_is_typed_in_the_form(qtbot, window):
    form, session = window.work.form, window.session
    type_into(qtbot, form.field("prepared_height"), "4-1/2")
    type_into(qtbot, form.field("existing_hinge.width"), "4")
    assert session.opening.prepared_height == 4.5
    assert session.opening.existing_hinge.width == 4
    type_into(qtbot, form.field("use.lock_finish_bhma"), "605")
    assert session.study.specification.whole["finish_bhma"].value == "632"


def test_a_margin_is_asked_for_only_on_an_accessible_route(window):
    form, session = window.work.form, window.session
    field = form.field("use.clear_width_margin")
    session.edit("use.accessible", True)
    assert not field.isHidden()
    session.edit("use.accessible", False)
    assert field.isHidden()
    session.edit("use.clear_width_margin", 0.5)
    assert not field.isHidden()


@pytest.mark.parametrize("mark", ["205A", "112A", "171A"])
def test_no_section_is_wider_than_the_form(window, mark):
    """With no bar to scroll sideways, what is wider would lie hidden."""
    window.session.select(mark)
    form = window.work.form
    for section in form.sections.values():
        section.open()
        assert form.widget().minimumSizeHint().width() <= form.viewport().width(), section.heading.text()
