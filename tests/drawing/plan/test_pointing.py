import math

from configurator.drawing.base.primitives import Arc, Polyline, Text
from configurator.drawing.base.style import layers
from configurator.drawing.plan.pointing import LAYER, Pointed, letter_at, looked_at, pointed_groups
from configurator.drawing.plan.sheet import plan_sheet
from configurator.study.derivation.working import Mark
from configurator.units import Display
from configurator.wording.derivation_words import Asked, shown_derivation
from tests.drawing.cases import demo, random_study

STUDY = demo("112A")
SHEET = plan_sheet(STUDY, Display(), 864, 540)
LEAVES = [one.leaf for one in STUDY.candidates]


def pointed(key, name, column=0, study=STUDY):
    shown = shown_derivation(study, Display(), Asked("single", key, column))
    letter = next(one for one in shown.letters if one.name == name)
    return Pointed(*shown.of, shown.work.marks[name], f"{letter.written} = {letter.value}")


def items(groups, kind):
    return [item for group in groups for item in group.primitives if isinstance(item, kind)]


def test_a_letter_is_marked_in_both_pictures_of_its_own_hinge_only():
    groups = pointed_groups(SHEET, LEAVES, pointed("pin_off_door_face", "o", 1), 180.0)
    views = [group.view for group in groups if items([group], Polyline)]
    assert views == [SHEET.panels[1].main.view, SHEET.panels[1].inset.view]
    (line, _) = items(groups, Polyline)
    h, pin = SHEET.panels[1].hung.h, SHEET.panels[1].hung.pin
    assert math.isclose(math.dist(*line.points), pin.o)
    assert line.points == ((pin.x_p, -h.i), pin.at)
    assert [text.text for text in items(groups, Text)] == ["o = 3/4 in"]


def test_an_angle_is_marked_by_arcs_from_closed_to_where_the_leaf_is_stopped():
    groups = pointed_groups(SHEET, LEAVES, pointed("greatest_angle_bare", "theta"), 180.0)
    arcs = items(groups, Arc)
    assert arcs
    turn = STUDY.candidates[0].solution.greatest_angle_bare
    assert all(math.isclose(arc.end - arc.start, turn) for arc in arcs)


def test_what_only_the_small_picture_shows_has_its_letter_there():
    groups = pointed_groups(SHEET, LEAVES, pointed("latch_edge_least", "g_l"), 180.0)
    (text,) = items(groups, Text)
    assert SHEET.panels[0].inset.view.window.has(text.at)


def test_the_small_picture_is_marked_as_it_is_shown_at_the_angle():
    """With the lock edge at its closest the small picture is of the latch side, enlarged."""
    one = pointed("latch_edge_least", "G")
    shown = shown_derivation(STUDY, Display(), Asked("single", "latch_edge_least", 0))
    usual = pointed_groups(SHEET, LEAVES, one, 180.0)[1].view
    close = pointed_groups(SHEET, LEAVES, one, shown.work.angle)[1].view
    assert usual == SHEET.panels[0].inset.view
    assert close.scale > 5 * usual.scale


def test_nothing_is_marked_for_a_leaf_or_a_width_that_no_panel_shows():
    mark = pointed("pin_off_door_face", "o").mark
    assert pointed_groups(SHEET, LEAVES, Pointed("inactive", 4.0, mark, "o"), 180.0) == ()
    assert pointed_groups(SHEET, LEAVES, Pointed("single", 9.0, mark, "o"), 180.0) == ()


def test_a_mark_outside_of_every_picture_has_no_letter():
    away = Mark(lines=(((900.0, 900.0), (901.0, 900.0)),))
    assert items(pointed_groups(SHEET, LEAVES, Pointed("single", 4.0, away, "x"), 180.0), Text) == []


def test_every_letter_of_every_number_lies_in_the_window_and_on_its_own_layer():
    assert LAYER in layers()
    for seed in range(6):
        study = random_study(seed)
        sheet = plan_sheet(study, Display(), 864, 540)
        leaves = [one.leaf for one in study.candidates]
        shown = shown_derivation(study, Display(), Asked("single", "greatest_angle", 0))
        for letter in shown.letters:
            if letter.name not in shown.work.marks:
                continue
            one = Pointed(*shown.of, shown.work.marks[letter.name], letter.written)
            groups = pointed_groups(sheet, leaves, one, 90.0)
            assert {item.layer for group in groups for item in group.primitives} == {LAYER}
            for text in items(groups, Text):
                assert any(window.has(text.at) for window in sheet.windows)


def test_a_place_of_the_large_picture_is_found_in_plan():
    for panel, candidate in zip(SHEET.panels, STUDY.candidates, strict=True):
        place = looked_at(SHEET, LEAVES, panel.main.view.to_sheet((0.5, 1.0)))
        assert (place.leaf, place.on) == ("single", candidate.hinge_width)
        assert math.dist(place.point, (0.5, 1.0)) < 1e-9
        window = panel.inset.view.window
        middle = ((window.left + window.right) / 2, (window.bottom + window.top) / 2)
        assert looked_at(SHEET, LEAVES, middle) is None
    assert looked_at(SHEET, LEAVES, (1.0, 1.0)) is None


def test_the_letter_under_the_pointer_is_the_nearest_and_of_several_the_shortest():
    view = SHEET.panels[0].main.view
    marks = {
        "long": Mark(lines=(((0.0, 0.0), (0.0, 4.0)),)),
        "short": Mark(lines=(((0.0, 0.0), (0.0, 1.0)),)),
    }

    def under(x, y):
        return letter_at(marks, looked_at(SHEET, LEAVES, view.to_sheet((x, y))))

    step = 5.0 / view.scale
    assert under(0.0, 0.5) == "short"
    assert under(0.0, 2.0) == "long"
    assert under(0.99 * step, 2.0) == "long"
    assert under(1.01 * step, 2.0) == ""
    assert under(0.0, 1.0 + 0.5 * step) == "long"
