import math

import pytest

from configurator.drawing.base.primitives import Arc, Dimension, Polygon, Polyline, Region, Symbol, Text
from configurator.drawing.base.style import layers, materials
from configurator.drawing.base.view import Box, Group, View
from configurator.export.painting import StrokePainter, paint

WINDOW = Box(100.0, 50.0, 200.0, 150.0)


class Heard(StrokePainter):
    """Writes down every stroke it is given."""

    def __init__(self):
        self.strokes = []

    def chains(self, *given):
        self.strokes.append(("chains", *given))

    def arc(self, *given):
        self.strokes.append(("arc", *given))

    def fill(self, *given):
        self.strokes.append(("fill", *given))

    def disc(self, *given):
        self.strokes.append(("disc", *given))

    def letter(self, *given):
        self.strokes.append(("letter", *given))

    def of(self, name):
        return [stroke[1:] for stroke in self.strokes if stroke[0] == name]


def painted(*items, mirrored=False, origin=(100.0, 50.0)):
    view = View(18.0, origin, mirrored, WINDOW)
    heard = Heard()
    paint([Group(view, items)], heard)
    return heard


def test_a_line_is_scaled_and_cut_off_at_its_window():
    ((chains, layer),) = painted(Polyline("A-DOOR", ((1.0, 1.0), (20.0, 1.0)))).of("chains")
    assert layer == "A-DOOR"
    assert chains == [((118.0, 68.0), (200.0, 68.0))]


def test_a_line_outside_its_window_is_no_stroke():
    assert painted(Polyline("A-DOOR", ((-5.0, -5.0), (-1.0, -5.0)))).of("chains") == []


def test_a_filled_polygon_has_its_ground_its_hatch_and_its_outline():
    square = ((0.5, 0.5), (3.0, 0.5), (3.0, 3.0), (0.5, 3.0))
    heard = painted(Polygon("A-WALL", square, "gypsum"))
    ((outline, shade),) = heard.of("fill")
    assert (len(outline), shade) == (4, materials()["gypsum"].ground)
    assert [layer for _, layer in heard.of("chains")] == ["A-DETL-PATT", "A-WALL"]


def test_an_arc_within_its_window_stays_one_arc():
    ((arc, layer),) = painted(Arc("A-DOOR-SWNG", (2.0, 2.0), 1.0, 0.0, math.pi / 2)).of("arc")
    assert layer == "A-DOOR-SWNG"
    assert arc == ((136.0, 86.0), 18.0, 0.0, pytest.approx(math.pi / 2))


def test_an_arc_cut_off_is_arcs_of_the_same_circle():
    strokes = painted(Arc("A-DOOR-SWNG", (0.0, 0.0), 3.0, 0.0, math.pi)).of("arc")
    ((arc, _),) = strokes
    assert arc[:2] == ((100.0, 50.0), 54.0)
    assert arc[2:] == pytest.approx((0.0, math.pi / 2))


def test_a_whole_circle_is_filled_as_a_disc():
    heard = painted(Arc("A-DETL-HNGE", (2.0, 2.0), 0.3, 0.0, 2 * math.pi, "barrel"))
    assert heard.of("disc")[0][1] == materials()["barrel"].ground
    assert len(heard.of("arc")) == 1


def test_a_mirrored_view_mirrors_the_arc():
    ((arc, _),) = painted(Arc("A-DOOR", (2.0, 2.0), 1.0, 0.0, 1.0), mirrored=True, origin=(200.0, 50.0)).of(
        "arc"
    )
    assert arc[0] == (164.0, 86.0)
    assert arc[2:] == pytest.approx((math.pi - 1.0, math.pi))


def test_a_region_is_filled_and_its_bounds_drawn_as_what_they_are():
    bounds = (
        Polyline("A-DOOR-SWPT", ((2.0, 2.0), (3.0, 2.0))),
        Arc("A-DOOR-SWPT", (2.0, 2.0), 1.0, 0.0, 1.5),
    )
    heard = painted(Region("A-DOOR-SWPT", bounds, "swept"))
    assert len(heard.of("fill")) == len(heard.of("arc")) == len(heard.of("chains")) == 1


def test_a_dimension_is_lines_two_arrows_and_its_text():
    item = Dimension(
        "A-ANNO-DIMS", (1.0, 1.0), (4.0, 1.0), (1.0, 2.0), (4.0, 2.0), "3 in", (2.5, 2.2), "three", 3.0
    )
    heard = painted(item)
    assert [name for name, *_ in heard.strokes] == ["chains", "fill", "fill", "letter"]
    ((at, text, size, layer, bold, angle),) = heard.of("letter")
    assert (text, size, layer, bold, angle) == ("3 in", 8.0, "A-ANNO-DIMS", False, 0.0)
    assert at[0] < 145.0


@pytest.mark.parametrize(("anchor", "left"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_lettering_starts_where_its_anchor_says(anchor, left):
    ((at, *_),) = painted(Text("A-ANNO-TEXT", (2.0, 2.0), "II", 10.0, anchor)).of("letter")
    assert at == pytest.approx((136.0 - left * 2 * 2.95, 86.0))


def test_turned_lettering_goes_back_along_its_own_line():
    ((at, *_, angle),) = painted(Text("A-ANNO-TEXT", (2.0, 2.0), "II", 10.0, "end", math.pi / 2)).of("letter")
    assert at == pytest.approx((136.0, 86.0 - 2 * 2.95))
    assert angle == math.pi / 2


def test_nothing_but_blanks_is_not_lettered():
    assert painted(Text("A-ANNO-TEXT", (2.0, 2.0), "  ", 10.0)).of("letter") == []


def test_symbols_keep_their_size_and_stay_in_the_window():
    contact = painted(Symbol("A-ANNO-REDL", (2.0, 2.0), "contact"))
    ((arc, layer, heavier),) = contact.of("arc")
    assert (arc[:2], layer, heavier) == (((136.0, 86.0), 5.5), "A-ANNO-REDL", 2.0)
    assert len(painted(Symbol("A-ANNO-REDL", (2.0, 2.0), "graze")).of("arc")) == 1
    assert painted(Symbol("A-ANNO-LEAD", (2.0, 2.0), "dot")).of("disc")[0][1] == layers()["A-ANNO-LEAD"].ink
    assert painted(Symbol("A-ANNO-LEAD", (9.0, 9.0), "dot")).of("disc") == []
