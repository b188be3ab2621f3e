"""The wall's layers through real widgets, and what the form says of each change at once."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QToolButton

from configurator.tables import WallLayerRow, table
from configurator.ui.form.frame_notes import FrameNotes, FramePlace
from configurator.ui.form.layers import LayersEditor
from configurator.units import Display, format_angle
from tests.ui.conftest import DEMO


@pytest.fixture
def window(edited_window):
    return edited_window


@pytest.fixture
def form(window):
    window.work.form.sections["Wall"].open()
    return window.work.form


@pytest.fixture
def editor(form):
    (found,) = form.sections["Wall"].findChildren(LayersEditor)
    return found


@pytest.fixture
def notes(form):
    (found,) = form.sections["Wall"].findChildren(FrameNotes)
    return found


def add(editor, name):
    editor.menu.aboutToShow.emit()
    next(action for action in editor.menu.actions() if action.text() == name).trigger()


def click(qtbot, editor, name):
    button = next(one for one in editor.findChildren(QToolButton) if one.accessibleName() == name)
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def layers(window):
    return [(layer.name, layer.thickness) for layer in window.session.opening.wall.layers]


def test_a_job_that_is_opened_is_no_change_of_the_one_before(window, editor, notes):
    add(editor, "Tile, 3/8 in")
    assert not notes.isHidden()
    window.session.history.mark_saved()
    window.session.open(DEMO, "112A")
    assert notes.isHidden()


def test_tile_added_to_the_usual_wall_says_what_it_does(window, editor, notes):
    """112A: jamb 5-7/8 and wall 4-7/8 given, the frame centred; 4-1/2 passed the rail and no longer does."""
    assert notes.isHidden()
    add(editor, "Tile, 3/8 in")
    assert layers(window) == [
        ("tile", 0.375),
        ("gypsum board", 0.625),
        ("stud space", 3.625),
        ("gypsum board", 0.625),
    ]
    assert window.session.opening.wall.thickness == 5.25
    told = notes.line.text()
    assert told.startswith("Tile 3/8 in added on the pull side. The wall is 5-1/4 in (was 4-7/8 in).")
    assert "moves 3/16 in nearer to the frame face" in told
    for hinge, now, was in (("4 in hinge", 0, "171.7°"), ("4-1/2 in hinge", 1, "180°")):
        angle = window.session.study.candidates[now].greatest_angle_bare
        assert f"{hinge}: opens to {format_angle(angle)} (was {was})" in told
    assert editor._sum.text() == "5-1/4 in together"


def test_the_line_is_gone_with_the_next_change_of_something_else(window, editor, notes):
    add(editor, "Tile, 3/8 in")
    window.session.swing(40)
    assert notes.line.text()
    window.session.edit("door.undercut", 0.5)
    assert not notes.line.text()


def test_undo_says_what_came_back(window, editor, notes):
    add(editor, "Tile, 3/8 in")
    window.session.undo()
    assert "moves 3/16 in farther from the frame face" in notes.line.text()
    assert editor._sum.isHidden()


def test_another_opening_begins_anew(window, editor, notes):
    add(editor, "Tile, 3/8 in")
    window.session.select("101A")
    assert not notes.line.text()


def test_layers_are_moved_and_taken_away(qtbot, window, editor):
    add(editor, "Tile, 1/2 in")
    click(qtbot, editor, "move wall layer 1 away from the pull side")
    assert [name for name, _ in layers(window)][:2] == ["gypsum board", "tile"]
    click(qtbot, editor, "move wall layer 2 toward the pull side")
    assert layers(window)[0] == ("tile", 0.5)
    click(qtbot, editor, "remove wall layer 1")
    assert window.session.opening.wall.thickness == 4.875

    def buttons():
        return {one.accessibleName(): one for one in editor.findChildren(QToolButton) if not one.isHidden()}

    last = "move wall layer 3 away from the pull side"
    qtbot.waitUntil(lambda: last in buttons() and "remove wall layer 4" not in buttons())
    assert not buttons()["move wall layer 1 toward the pull side"].isEnabled()
    assert not buttons()[last].isEnabled()


def test_the_last_layer_taken_away_leaves_the_usual_wall(qtbot, window, editor):
    window.session.edit_many({"wall.thickness": None, "wall.layers": [{"name": "block", "thickness": 5}]})
    click(qtbot, editor, "remove wall layer 1")
    assert window.session.opening.wall.layers is None
    assert editor._words.text().startswith("Assumed: gypsum board 5/8 in")


def test_the_menu_holds_every_layer_of_the_table_in_the_units_on_show(window, editor):
    editor.menu.aboutToShow.emit()
    assert len(editor.menu.actions()) == len(table(WallLayerRow))
    window.session.show_in(Display(metric=True))
    editor.menu.aboutToShow.emit()
    assert editor.menu.actions()[1].text() == "Tile, 12.7 mm"


def test_a_conflict_stands_beside_the_fields_with_a_button_for_each_mend(qtbot, window, notes):
    window.session.edit("frame.jamb_depth", 5.75)
    (row,) = notes.rows
    assert "throat 4-3/4 in" in row.finding.message
    buttons = {button.text(): button for button in row.findChildren(QPushButton)}
    assert list(buttons) == [
        "Make the jamb 5-7/8 in deep",
        "Make the returns 7/16 in",
        "Take the wall that fits the frame",
    ]
    qtbot.mouseClick(buttons["Make the returns 7/16 in"], Qt.MouseButton.LeftButton)
    assert window.session.opening.frame.return_depth == 0.4375
    assert not notes.rows


def test_frame_and_wall_follow_one_another_in_the_form(window, form):
    """Nothing of the frame given but its depth, the wall follows; the wall given instead, the jamb does."""
    window.session.edit_many({"frame.jamb_depth": None, "frame.return_depth": None, "wall.thickness": 7.25})
    form.sections["Frame"].open()
    assert form.field("frame.jamb_depth").editor.placeholderText() == "8-1/4 in"
    window.session.edit_many({"wall.thickness": None, "frame.jamb_depth": 6})
    assert form.field("wall.thickness").editor.placeholderText() == "5 in"
    assert form.field("wall.frame_proud").editor.placeholderText() == "1/2 in"


@pytest.mark.parametrize(
    ("mark", "kind", "hidden"),
    [
        ("101A", "knocked-down drywall", set()),
        ("140A", "welded steel, butted", set()),
        ("205A", "wood with casing", {"frame.metal_thickness"}),
    ],
)
def test_only_what_a_frame_has_is_asked(window, form, mark, kind, hidden):
    window.session.select(mark)
    assert window.session.opening.frame.kind == kind
    form.sections["Frame"].open()
    asked = {"frame.stop_width", "frame.metal_thickness", "frame.return_depth"}
    assert {path for path in asked if form.fields()[path].isHidden()} == hidden


def test_a_tube_has_no_returns_to_ask_for(window, form):
    window.session.edit_many({"frame.kind": "aluminum storefront", "frame.return_depth": None})
    form.sections["Frame"].open()
    assert form.fields()["frame.return_depth"].isHidden()
    assert form.fields()["frame.stop_width"].editor.placeholderText() == "1-3/8 in"
    window.session.edit("frame.return_depth", 0.5)
    assert not form.fields()["frame.return_depth"].isHidden()
    (found,) = form.sections["Frame"].findChildren(FrameNotes)
    assert [row.finding.code for row in found.rows] == ["no returns"]
    found.rows[0].mend()
    assert window.session.opening.frame.return_depth is None


@pytest.fixture
def place(form):
    (found,) = form.sections["Wall"].findChildren(FramePlace)
    return found


def test_a_tube_is_set_flush_or_in_the_wall(qtbot, window, form, place):
    """A tube 4-1/2 deep in a wall of 7-1/4: centred it stands 1-3/8 behind each face."""
    assert place.isHidden()  # 112A's frame wraps its wall
    window.session.edit_many(
        {"frame.kind": "aluminum storefront", "frame.jamb_depth": None, "frame.return_depth": None}
    )
    window.session.edit("wall.thickness", 7.25)
    assert not place.isHidden()
    for button, proud in ((place.near, 0), (place.far, -2.75), (place.centre, -1.375)):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
        assert window.session.study.filled.frame_proud == proud
    assert window.session.opening.wall.frame_proud is None


def test_a_butted_frame_has_no_usual_place_to_go_back_to(window, form, place):
    window.session.select("140A")
    assert not place.isHidden()
    assert place.centre.isHidden()
