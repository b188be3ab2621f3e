"""A word's picture marks what the word says: measured spans are the opening's own numbers."""

import math

import pytest

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Arc, Dimension, Polyline, Symbol, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pictures.marks_front import IN_FRONT, ON_SAMPLE
from configurator.drawing.pictures.marks_plan import IN_PLAN
from configurator.drawing.pictures.scenes import arrow, scene, span
from configurator.drawing.pictures.word_pictures import SIZE, strokes, view_of, word_picture
from configurator.wording.glossary import glossary

# The typical opening: 3070, door 1-3/4, rabbet 1-15/16, frame stop gap 1/16, hinge 4-1/2 wide, backset 1/4.
IN_PLAN_INCHES = {
    ("hinge", "thickness"): 1.75,
    ("hinge", "inset"): 1.9375 - 0.0625 - 1.75,
    ("hinge", "rabbet"): 1.9375,
    ("hinge", "stop_gap"): 0.0625,
    ("hinge", "hinge_gap"): 0.125,
    ("hinge", "door_backset"): 0.25,
    ("hinge", "frame_backset"): 0.3125,
    ("hinge", "pin_off_door"): 4.5 / 2 - (1.75 - 0.25),
    ("hinge", "pin_off_frame"): 0.75 - 0.125,
    ("flat", "clear_past"): 2 * 0.75 - 0.125,
    ("latch", "latch_gap"): 0.125,
    ("rail", "projection"): 1.75,
    ("rail", "start"): 0.5,
    ("pair", "meeting_gap"): 0.125,
}


def _span(mark):
    return next(part for part in mark if isinstance(part, Dimension))


@pytest.mark.parametrize(("name", "inches"), IN_PLAN_INCHES.items())
def test_a_span_in_plan_is_what_the_word_measures(name, inches):
    where, shown = name
    assert _span(IN_PLAN[shown](scene(where))).value == pytest.approx(inches, abs=1e-9)


@pytest.mark.parametrize(
    ("where", "shown", "inches"),
    [
        ("front", "width", 36.0),
        ("front", "height", 84.0),
        ("front", "head_gap", 0.125),
        ("front", "undercut", 0.75),
        ("dutch", "split", 42.0),
        ("sample", "height", 4.5),
        ("sample", "width", 4.5),
    ],
)
def test_a_span_in_elevation_is_what_the_word_measures(where, shown, inches):
    marks = ON_SAMPLE if where == "sample" else IN_FRONT
    assert _span(marks[shown](scene(where))).value == pytest.approx(inches, abs=1e-9)


def test_the_clear_width_is_that_of_the_study():
    drawn = scene("square")
    pin, h = drawn.hung.pin, drawn.hung.h
    clear = (h.O - h.s) - max(h.s, pin.x_p + pin.o + h.T)
    assert _span(IN_PLAN["clear"](drawn)).value == pytest.approx(clear, abs=1e-9)


def test_the_angle_is_drawn_as_wide_as_the_leaf_turns():
    (mark,) = IN_PLAN["greatest"](scene("flat_whole"))
    assert isinstance(mark, Arc)
    assert mark.end - mark.start == math.pi


def test_a_narrow_hinge_is_shown_stopped_and_its_contact_ringed():
    drawn = scene("stopped")
    (mark,) = IN_PLAN["contact"](drawn)
    assert drawn.angle < math.pi
    assert mark.centre == drawn.hung.contact


@pytest.mark.parametrize("word", glossary(), ids=lambda word: word.term)
def test_the_picture_marks_and_names_the_word(word):
    groups = word_picture(word)
    view, mark = groups[2].view, groups[2].primitives
    assert mark
    window = Box(0.0, 0.0, *SIZE)
    lines = strokes(mark, view)
    assert any(clip_segment(*stroke, window) is not None for stroke in lines)
    (named,) = [part for part in groups[3].primitives if isinstance(part, Text)]
    assert named.text == word.term
    box = text_box(named.at, named.text, named.size, bold=True)
    assert window.holds(box)
    assert all(clip_segment(*stroke, box) is None for stroke in lines)


@pytest.mark.parametrize("size", [(150.0, 120.0), (300.0, 210.0), (900.0, 500.0)])
def test_a_picture_of_any_size_is_drawn(size):
    for word in glossary():
        groups = word_picture(word, *size)
        assert groups[0].view.window == Box(0.0, 0.0, *size)


def test_a_scene_or_mark_that_is_not_there_is_refused():
    with pytest.raises(KeyError):
        scene("no such scene")


def test_a_view_shows_all_of_its_extent_in_the_middle():
    view = view_of(Box(-2.0, 0.0, 2.0, 2.0), Box(0.0, 0.0, 100.0, 100.0))
    assert view.scale == 25.0
    assert view.to_sheet((0.0, 1.0)) == (50.0, 50.0)


def test_spans_and_arrows_point_where_they_measure():
    one = span((0.0, 0.0), (0.0, 2.0), (1.0, 0.0))
    assert (one.line_a, one.line_b, one.text_at) == ((1.0, 0.0), (1.0, 2.0), (1.0, 1.0))
    shaft, head = arrow((0.0, 0.0), (0.0, 4.0))
    assert shaft.points == ((0.0, 0.0), (0.0, 4.0))
    assert head.points == ((0.5, 3.0), (0.0, 4.0), (-0.5, 3.0))


def test_scenes_are_made_of_the_plans_own_parts():
    parts = scene("hinge").parts
    assert any(isinstance(part, Symbol) and part.kind == "pin axis" for part in parts)
    assert any(isinstance(part, Polyline) and part.layer == "A-DOOR" for part in parts)
