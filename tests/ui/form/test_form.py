"""Typing into the form as a person does: real widgets, real keys."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QLineEdit, QToolButton

from configurator.ui.form.form import SECTIONS
from configurator.units import Display


@pytest.fixture
def window(edited_window):
    return edited_window


def type_into(qtbot, field, text, key=Qt.Key.Key_Return):
    field.editor.setFocus()
    field.editor.selectAll()
    qtbot.keyClicks(field.editor, text)
    qtbot.keyClick(field.editor, key)


def choose(field, value):
    place = field.editor.findData(value)
    assert place >= 0
    field.editor.setCurrentIndex(place)
    field.editor.activated.emit(place)


@pytest.mark.parametrize("typed", ["1 3/8", '1-3/8"', "1.375", "34.925 mm"])
def test_a_length_is_typed_as_the_trade_writes_it(qtbot, window, typed):
    field = window.work.form.field("door.thickness")
    type_into(qtbot, field, typed)
    assert window.session.opening.door.thickness == pytest.approx(1.375, abs=1e-12)
    assert field.editor.text() == "1-3/8 in"


@pytest.mark.parametrize(
    ("typed", "size"), [("3070", (36, 84)), ("3-0 x 6-8", (36, 80)), ("2'-10\" x 7'-0\"", (34, 84))]
)
def test_an_opening_size_is_typed_width_first(qtbot, window, typed, size):
    type_into(qtbot, window.work.form.field("size"), typed)
    found = window.session.opening.size
    assert (found.width, found.height) == size


def test_a_size_typed_height_first_is_asked_about_and_swapped_by_one_click(qtbot, fresh_window):
    field = fresh_window.work.form.field("size")
    type_into(qtbot, field, "84 x 36")
    assert field.note.text() == "7'-0\" wide? Doors are width first. Swap?"
    assert not field.swap.isHidden()
    qtbot.mouseClick(field.swap, Qt.MouseButton.LeftButton)
    assert (fresh_window.session.opening.size.width, fresh_window.session.opening.size.height) == (36, 84)
    assert field.swap.isHidden()
    assert field.note.isHidden()


def test_a_wide_opening_is_confirmed_by_one_click(qtbot, fresh_window):
    field = fresh_window.work.form.field("size")
    type_into(qtbot, field, "84 x 36")
    qtbot.mouseClick(field.keep, Qt.MouseButton.LeftButton)
    assert field.note.isHidden()
    assert field.swap.isHidden()
    assert field.keep.isHidden()
    assert fresh_window.session.opening.size.width == 84
    type_into(qtbot, field, "85 x 36")
    assert not field.keep.isHidden()


@pytest.mark.parametrize("typed", ["1/8 in 2", "1/8 in per 2 in", "1/8 per 2", "1/16"])
def test_a_bevel_is_shown_as_so_much_in_so_much(qtbot, window, typed):
    field = window.work.form.field("door.latch_bevel")
    type_into(qtbot, field, typed)
    assert window.session.opening.door.latch_bevel == 0.0625
    assert field.editor.text() == "1/8 in per 2 in"


def test_barrel_and_split_show_what_is_taken(window):
    barrel = window.work.form.field("hinge.barrel")
    taken = window.session.study.candidates[0].barrel_diameter
    assert barrel.editor.placeholderText() == barrel.write(taken)
    assert barrel.editor.tag.text() == "assumed"
    window.session.edit_many({"leaves": "dutch", "size": {"width": 36, "height": 84}})
    assert window.work.form.field("split_height").editor.placeholderText() == "42 in"
    window.session.edit("leaves", "pair")
    active = window.work.form.field("active_width")
    # What the gaps leave of 36, halved.
    study = window.session.study
    both = 36 - 2 * study.filled.hinge_gap - study.filled.meeting_gap
    assert active.editor.placeholderText() == active.write(both / 2)


@pytest.mark.parametrize(
    ("typed", "said"),
    [("-1", "more than 0"), ("0", "more than 0"), ("9999", "at most 6"), ("abc", "not a length")],
)
def test_a_refusal_stands_beside_its_field_and_leaves_no_trace(qtbot, window, typed, said):
    before = window.session.job
    study = window.session.study
    field = window.work.form.field("door.thickness")
    type_into(qtbot, field, typed)
    assert said in field.note.text()
    assert not field.note.isHidden()
    assert field.editor.text() == typed
    assert window.session.job is before
    assert window.session.study is study
    assert not window.session.history.unsaved


def test_escape_brings_back_what_held(qtbot, window):
    field = window.work.form.field("door.thickness")
    type_into(qtbot, field, "nonsense")
    qtbot.keyClick(field.editor, Qt.Key.Key_Escape)
    assert field.editor.text() == "1-3/4 in"
    assert field.note.isHidden()
    assert not window.session.refusals


def test_an_emptied_field_shows_the_usual_value_as_assumed_and_says_why(qtbot, window):
    field = window.work.form.field("frame.stop_height")
    type_into(qtbot, field, "3/4")
    field.editor.clear()
    field.editor.textEdited.emit("")
    qtbot.keyClick(field.editor, Qt.Key.Key_Return)
    assert "stop_height" not in window.session.opening.frame.model_fields_set
    assert field.editor.text() == ""
    assert field.editor.placeholderText() == "5/8 in"
    assert field.editor.tag.text() == "assumed"
    assert field.editor.font().italic()
    qtbot.keyClick(field.editor, Qt.Key.Key_F1)
    assert field.note.text().startswith("Assumed. ")


def test_the_sign_in_a_given_field_goes_back_to_the_usual_value(qtbot, window):
    field = window.work.form.field("frame.face")
    type_into(qtbot, field, "2-1/4")
    assert field.editor.tag.text() == "↺"
    qtbot.mouseClick(field.editor.tag, Qt.MouseButton.LeftButton)
    assert window.session.opening.frame.face is None


def test_the_metric_switch_shows_and_reads_millimetres(qtbot, window):
    field = window.work.form.field("door.thickness")
    window.session.show_in(Display(metric=True))
    assert field.editor.text() == "44.5 mm"
    type_into(qtbot, field, "45")
    assert window.session.opening.door.thickness == pytest.approx(45 / 25.4, abs=1e-12)
    assert field.editor.text() == "45.0 mm"


def test_what_is_shown_rounded_is_kept_as_it_was_unless_it_is_changed(qtbot, window):
    """A thickness of 1-3/4 in reads 44.5 mm: typing just that leaves the 44.45 mm that it is."""
    field = window.work.form.field("door.thickness")
    window.session.edit("door.thickness", 1.4375)
    window.session.show_in(Display(metric=True))
    assert field.editor.text() == "36.5 mm"
    type_into(qtbot, field, "36.5 mm")
    assert window.session.opening.door.thickness == 1.4375
    assert not field.refused
    type_into(qtbot, field, "36.6 mm")
    assert window.session.opening.door.thickness == pytest.approx(36.6 / 25.4)


def test_a_refused_value_is_forgotten_when_what_holds_is_typed(qtbot, window):
    field = window.work.form.field("door.thickness")
    holds = field.editor.text()
    type_into(qtbot, field, "thick")
    assert field.refused
    type_into(qtbot, field, holds)
    assert not field.refused


def test_a_butted_frame_waits_for_its_place_in_the_wall(qtbot, window):
    proud = window.work.form.field("wall.frame_proud")
    kind = window.work.form.field("frame.kind")
    choose(kind, "welded steel, butted")
    assert kind.editor.currentData() == "welded steel, butted"
    assert window.session.opening.frame.kind == "knocked-down drywall"
    assert not kind.note.isHidden()
    type_into(qtbot, proud, "0")
    assert window.session.opening.frame.kind == "welded steel, butted"
    assert window.session.opening.wall.frame_proud == 0
    assert kind.note.isHidden()


def test_a_butted_frame_puts_the_keyboard_where_its_place_is_typed(qtbot, fresh_window):
    form = fresh_window.work.form
    assert not form.sections["Wall"].is_open
    choose(form.field("frame.kind"), "welded steel, butted")
    assert form.sections["Wall"].is_open
    proud = form.fields()["wall.frame_proud"]
    assert fresh_window.focusWidget() is proud.editor
    qtbot.waitUntil(
        lambda: form.viewport().rect().contains(proud.mapTo(form.viewport(), proud.rect().center()))
    )
    qtbot.keyClicks(fresh_window.focusWidget(), "0")
    qtbot.keyClick(fresh_window.focusWidget(), Qt.Key.Key_Return)
    assert fresh_window.session.opening.frame.kind == "welded steel, butted"


def test_undo_is_the_windows_while_nothing_is_being_typed(qtbot, fresh_window):
    field = fresh_window.work.form.field("door.thickness")
    type_into(qtbot, field, "1-3/8")
    fresh_window.activateWindow()
    qtbot.keyClick(field.editor, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert fresh_window.session.opening.door.thickness == 1.75
    assert field.editor.text() == "1-3/4 in"


def test_a_rails_projection_can_be_counted_from_the_frame_face(qtbot, window):
    field = window.work.form.field("obstructions.0.projection")
    assert field.editor.text() == "1-3/4 in"
    choose_counted(field, from_frame=True)
    assert field.editor.text() == "1-1/4 in"
    assert window.session.opening.obstructions[0].projection == 1.75
    type_into(qtbot, field, "1-3/4")
    assert window.session.opening.obstructions[0].projection == 2.25
    choose_counted(field, from_frame=False)
    assert field.editor.text() == "2-1/4 in"


def choose_counted(field, from_frame):
    place = field.counted.findData(from_frame)
    field.counted.setCurrentIndex(place)
    field.counted.activated.emit(place)


def test_things_are_added_and_removed(qtbot, window):
    window.work.form.sections["What stands along the wall"].open()
    editor = next(rows for rows in window.work.form._rows if getattr(rows, "path", "") == "obstructions")
    adding = next(b for b in editor.findChildren(QToolButton) if b.accessibleName() == "add to obstructions")
    next(action for action in adding.menu().actions() if action.text() == "Column").trigger()
    assert [thing.kind for thing in window.session.opening.obstructions] == ["chair rail", "column"]
    assert "obstructions.1.diameter" in editor.fields
    assert "obstructions.1.length" not in editor.fields
    removing = next(
        b for b in editor.findChildren(QToolButton) if b.accessibleName() == "remove chair rail 1"
    )
    qtbot.mouseClick(removing, Qt.MouseButton.LeftButton)
    assert [thing.kind for thing in window.session.opening.obstructions] == ["column"]


def test_sizes_of_what_is_added_are_assumed_until_they_are_typed_or_confirmed(qtbot, window):
    session, form = window.session, window.work.form
    form.sections["What stands along the wall"].open()
    editor = next(rows for rows in form._rows if getattr(rows, "path", "") == "obstructions")
    adding = next(b for b in editor.findChildren(QToolButton) if b.accessibleName() == "add to obstructions")
    next(action for action in adding.menu().actions() if action.text() == "Column").trigger()
    of_it = {"obstructions.1.diameter", "obstructions.1.start"}
    assert of_it <= set(session.study.filled.assumed)
    assert session.value("obstructions.1.diameter") is None
    assert session.opening.model_dump(exclude_unset=True)["obstructions"][1] == {"kind": "column"}
    type_into(qtbot, form.field("obstructions.1.diameter"), "14")
    assert of_it & set(session.study.filled.assumed) == {"obstructions.1.start"}
    (asked,) = [one for one in session.study.findings if one.code == "sizes not given"]
    session.edit_many({fix.path: fix.value for fix in asked.fix})
    assert not of_it & set(session.study.filled.assumed)
    assert session.opening.obstructions[1].start == 6


def test_a_wall_layer_carries_the_wall_with_it(qtbot, window):
    window.session.edit_many(
        {"wall.layers": [{"name": "tile", "thickness": 0.5}, {"name": "block", "thickness": 4.375}]}
    )
    field = window.work.form.field("wall.layers.0.thickness")
    type_into(qtbot, field, "3/4")
    assert window.session.opening.wall.thickness == 5.125
    assert window.session.opening.wall.layers[0].thickness == 0.75


def test_a_wood_frame_offers_its_usual_casing(qtbot, window):
    window.session.select("205A")
    window.session.edit("obstructions", [])
    window.work.form.sections["Frame"].open()
    assert not window.work.form._casing.isHidden()
    qtbot.mouseClick(window.work.form._casing, Qt.MouseButton.LeftButton)
    (casing,) = window.session.opening.obstructions
    assert (casing.kind, casing.projection, casing.start, casing.length) == ("casing", 0.6875, -0.5, 2.25)
    assert window.work.form._casing.isHidden()


def test_fields_without_a_meaning_for_this_opening_are_away(window):
    meeting = window.work.form.field("door.meeting_gap")
    assert meeting.isHidden()
    window.session.edit("leaves", "pair")
    assert not meeting.isHidden()


def test_every_field_can_be_named_by_a_screen_reader_and_reached_by_keys(read_window):
    for section in read_window.work.form.sections.values():
        section.open()
    editors = [e for kind in (QLineEdit, QComboBox) for e in read_window.work.form.findChildren(kind)]
    assert len(editors) > 50
    for editor in editors:
        if editor.parent().metaObject().className() != "QDoubleSpinBox":
            assert editor.accessibleName(), editor
            assert editor.focusPolicy() & Qt.FocusPolicy.TabFocus


def test_every_section_has_a_field_for_each_of_its_paths(read_window):
    for paths in SECTIONS.values():
        for path in paths:
            assert read_window.work.form.field(path) is read_window.work.form.fields()[path]


@pytest.mark.parametrize("path", [path for own in SECTIONS.values() for path in own])
def test_a_tip_never_says_only_the_name(read_window, path):
    field = read_window.work.form.field(path)
    label = read_window.work.form._labels[path]
    for tip in (field.toolTip(), label.toolTip()):
        lines = tip.lower().split("\n") if tip else []
        assert label.text().lower() not in lines
        assert all(": ".join([label.text().lower()] * 2) != line for line in lines)
    assert label.toolTip() or path.startswith("job.")


def test_tab_goes_down_the_form_as_it_is_read(window):
    form = window.work.form
    form.sections["Door"].open()
    form.sections["What stands along the wall"].open()
    form.sections["Schedule and notes"].open()
    wanted = [
        form.sections["Opening"].heading,
        form.field("mark").editor,
        form.field("quantity").editor,
        form.sections["What stands along the wall"].heading,
        form.field("obstructions.0.side").editor,
        form.field("obstructions.0.top").editor,
        form.sections["Door"].heading,
        form.field("door.thickness").editor,
        form.sections["Hardware"].heading,
        form.sections["Schedule and notes"].heading,
        form.field("notes").editor,
        form.sections["Job"].heading,
    ]
    stops, widget = [], wanted[0]
    for _ in range(2000):
        stops.append(widget)
        widget = widget.nextInFocusChain()
        if widget is wanted[0]:
            break
    places = [stops.index(stop) for stop in wanted]
    assert places == sorted(places)
    assert places[-1] < stops.index(window.work.swing.slider)


def test_hinge_places_are_typed_as_a_list_and_a_wrong_one_is_refused_beside_it(qtbot, window):
    window.work.form.sections["Hinge"].open()
    field = window.work.form.field("hinge_locations.tops")
    type_into(qtbot, field, "5, 37, 69-1/2")
    assert window.session.opening.hinge_locations.tops == (5.0, 37.0, 69.5)
    assert field.editor.text() == "5, 37, 69-1/2 in"
    type_into(qtbot, field, "37, 5")
    assert "each farther below" in field.note.text()
    assert window.session.opening.hinge_locations.tops == (5.0, 37.0, 69.5)


def test_the_western_rule_is_chosen_in_the_form(window):
    window.work.form.sections["Hinge"].open()
    choose(window.work.form.field("hinge_locations.rule"), "7 and 11")
    assert window.session.opening.hinge_locations.rule == "7 and 11"


def test_a_width_alone_leaves_the_height_and_says_so(qtbot, window):
    field, session = window.work.form.field("size"), window.session
    session.edit("size", {"width": 32, "height": 80})
    type_into(qtbot, field, "36")
    assert (session.opening.size.width, session.opening.size.height) == (36, 80)
    assert field.note.text() == "Read as 3'-0\" x 6'-8\": a width alone leaves the height as it is."
    type_into(qtbot, field, "3-0 x 7-0")
    assert field.note.isHidden()


def test_what_could_not_be_kept_is_there_again_when_its_opening_is(qtbot, window):
    field, session = window.work.form.field("size"), window.session
    type_into(qtbot, field, "36 x 900")
    session.select("101A")
    assert field.editor.text() == "3'-0\" x 7'-0\""
    assert field.note.isHidden()
    session.select("112A")
    assert field.editor.text() == "36 x 900"
    assert "300 in" in field.note.text()


def test_what_is_being_typed_is_taken_before_another_opening_is_shown(qtbot, fresh_window):
    field, session = fresh_window.work.form.field("location"), fresh_window.session
    field.editor.setFocus()
    field.editor.selectAll()
    qtbot.keyClicks(field.editor, "Harbor office")
    session.select("101A")
    assert [one.location for one in session.job.openings if one.mark in ("101A", "112A")] == [
        "Ticket office to hall",
        "Harbor office",
    ]
