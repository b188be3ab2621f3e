import io
import math
import re

import ezdxf
import pytest
from ezdxf.tools.text import plain_text

from configurator.drawing.base.primitives import Arc, Dimension, Polygon, Polyline, Region, Symbol, Text
from configurator.drawing.base.style import layers
from configurator.drawing.base.view import Box, View
from configurator.drawing.pages.page import Detail, Page, Paper, Scale
from configurator.export.dxf.entities import NAMES, one_line
from configurator.export.dxf.layouts import dxf_bytes

LETTER = Paper("Letter", 279.4, 215.9)
HALF = Scale("1:2", 0.5)
WINDOW = Box(72.0, 72.0, 504.0, 504.0)
"""12 in by 12 in of the real thing, at half size."""
WHOLE_TURN = 2 * math.pi


def a_detail(*primitives, mirrored=False, name="detail", origin=(288.0, 288.0)):
    return Detail(name, HALF, View(HALF.points, origin, mirrored, WINDOW), primitives)


def a_page(*primitives, furniture=(), title="112A plan", **changes):
    return Page(title, LETTER, (a_detail(*primitives, **changes),), furniture)


def read_back(*pages):
    drawing = ezdxf.read(io.StringIO(dxf_bytes(pages).decode("utf-8")))
    found = drawing.audit()
    assert (found.errors, found.fixes) == ([], [])
    return drawing


def model(*primitives, **changes):
    """What is in model space but the detail's title."""
    space = read_back(a_page(*primitives, **changes)).modelspace()
    return [one for one in space if one.dxftype() != "TEXT" or ": detail" not in one.dxf.text]


def a_dimension(**changes):
    said = {
        "layer": "A-ANNO-DIMS",
        "a": (0.0, 0.0),
        "b": (3.0, 1.5),
        "line_a": (-1.0, 0.0),
        "line_b": (-1.0, 1.5),
        "text": "1-1/2 in pin off door",
        "text_at": (-2.0, 0.75),
        "name": "pin axis off door face",
        "value": 1.5,
    }
    return Dimension(**(said | changes))


def xy(point):
    return (point[0], point[1])


def test_a_line_is_in_inches_of_the_real_thing_on_its_layer():
    (line,) = model(Polyline("A-WALL", ((0.0, 0.0), (4.5, -1.25))))
    assert line.dxftype() == "LINE"
    assert (xy(line.dxf.start), xy(line.dxf.end)) == ((0.0, 0.0), (4.5, -1.25))
    assert line.dxf.layer == "A-WALL"


def test_a_mirrored_view_mirrors_the_drawing():
    (line,) = model(Polyline("A-WALL", ((0.0, 0.0), (4.5, -1.25))), mirrored=True)
    assert xy(line.dxf.end) == (-4.5, -1.25)


def test_a_closed_outline_is_one_closed_polyline_with_its_name():
    corners = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0))
    (outline,) = model(Polygon("A-DOOR", corners, name="door leaf"))
    assert outline.closed
    assert [xy(point) for point in outline.get_points()] == list(corners)
    assert outline.get_xdata(NAMES)[0].value == "door leaf"


def test_what_runs_out_of_the_window_is_cut_without_a_line_at_the_cut():
    wall = Polygon("A-WALL", ((-900.0, 0.0), (1.0, 0.0), (1.0, -4.0), (-900.0, -4.0)))
    (outline,) = model(wall)
    ends = {xy(point) for point in outline.get_points()}
    assert not outline.closed
    assert ends == {(-6.0, 0.0), (1.0, 0.0), (1.0, -4.0), (-6.0, -4.0)}


def test_an_arc_is_an_arc_and_a_circle_a_circle():
    arc, circle = model(
        Arc("A-DOOR-SWNG", (1.0, 2.0), 3.0, 0.0, math.pi / 2),
        Arc("A-DETL-HNGE", (0.5, 0.5), 0.25, 0.0, WHOLE_TURN),
    )
    assert (arc.dxftype(), xy(arc.dxf.center), arc.dxf.radius) == ("ARC", (1.0, 2.0), 3.0)
    assert (arc.dxf.start_angle, arc.dxf.end_angle) == pytest.approx((0.0, 90.0))
    assert (circle.dxftype(), circle.dxf.radius) == ("CIRCLE", 0.25)


def test_a_mirrored_arc_runs_the_other_way_round():
    (arc,) = model(Arc("A-DOOR-SWNG", (1.0, 2.0), 3.0, 0.0, math.pi / 6), mirrored=True)
    assert xy(arc.dxf.center) == (-1.0, 2.0)
    assert (arc.dxf.start_angle, arc.dxf.end_angle) == pytest.approx((150.0, 180.0))


def test_an_arc_cut_off_stays_an_arc():
    # The window ends 6 in over the origin; a radius of 12 about it is cut at 30 degrees on each side.
    pieces = model(Arc("A-DOOR-SWNG", (-6.0, 0.0), 12.0, 0.0, math.pi / 2))
    assert [piece.dxftype() for piece in pieces] == ["ARC"]
    assert pieces[0].dxf.radius == 12.0
    assert (pieces[0].dxf.start_angle, pieces[0].dxf.end_angle) == pytest.approx((0.0, 30.0))


def test_a_region_draws_each_bound_as_what_it_is():
    bounds = (
        Polyline("A-DOOR", ((0.0, 0.0), (2.0, 0.0))),
        Arc("A-DOOR-SWNG", (0.0, 0.0), 2.0, 0.0, math.pi / 2),
        Polyline("A-DOOR", ((0.0, 2.0), (0.0, 0.0))),
    )
    kinds = [one.dxftype() for one in model(Region("A-DOOR-SWPT", bounds, "swept"))]
    assert kinds == ["WIPEOUT", "LINE", "ARC", "LINE"]


def test_a_dimension_is_a_dimension_between_the_points_measured():
    (one,) = model(a_dimension())
    assert one.dxftype() == "DIMENSION"
    assert (xy(one.dxf.defpoint2), xy(one.dxf.defpoint3)) == ((0.0, 0.0), (3.0, 1.5))
    assert one.get_measurement() == pytest.approx(1.5)
    assert one.dxf.text == "<> in pin off door"
    (drawn,) = one.get_geometry_block().query("TEXT")
    assert drawn.dxf.text == "1-1/2 in pin off door"
    assert one.get_xdata(NAMES)[0].value == "pin axis off door face"


@pytest.mark.parametrize(
    ("points", "value"),
    [
        ({"line_a": (0.0, -1.0), "line_b": (3.0, -1.0)}, 3.0),
        ({"line_a": (1.0, -2.0), "line_b": (4.0, -0.5)}, math.hypot(3.0, 1.5)),
        ({"line_a": (-1.0, 1.5), "line_b": (-1.0, 0.0), "a": (3.0, 1.5), "b": (0.0, 0.0)}, 1.5),
    ],
)
@pytest.mark.parametrize("mirrored", [False, True])
def test_a_dimension_measures_along_its_own_line(points, value, mirrored):
    (one,) = model(a_dimension(**points, value=value), mirrored=mirrored)
    assert abs(one.get_measurement()) == pytest.approx(value)
    assert one.dxf.actual_measurement == pytest.approx(value)


def test_a_dimension_is_drawn_in_its_block_as_on_paper():
    (one,) = model(a_dimension())
    drawn = [entity.dxftype() for entity in one.get_geometry_block()]
    assert drawn.count("SOLID") == 2  # the arrowheads
    assert drawn.count("TEXT") == 1


def test_a_dimension_style_letters_as_large_at_its_scale():
    (one,) = model(a_dimension())
    style = one.get_dim_style()
    (text,) = one.get_geometry_block().query("TEXT")
    assert style.dxf.dimscale == 2.0
    assert style.dxf.dimtxt * style.dxf.dimscale == pytest.approx(text.dxf.height)


def test_braces_in_a_dimension_are_no_codes():
    (one,) = model(a_dimension(text="{1-1/2} in\\P"))
    assert one.dxf.text == "\\{1-1/2\\} in\\\\P"  # no number stands at its beginning


@pytest.mark.parametrize(
    ("text", "value", "live", "kind", "places"),
    [
        ("1-1/2 in", 1.5, "<> in", 5, 5),
        ("31/32 in", 0.97, "<> in", 5, 5),
        ("61/64 in", 0.953, "<> in", 5, 6),
        ("0.134 in * deep", 0.134, "<> in * deep", 2, 3),
        # What must be at least so much was rounded down: a style would say 1/32 more.
        ("33-1/16 in clear at 90°", 33.09, "33-1/16 in clear at 90°", 5, 5),
        ("less than 1/32 in", 0.01, "less than 1/32 in", 5, 5),
    ],
)
def test_the_number_of_a_dimension_is_live_where_a_style_writes_the_same(text, value, live, kind, places):
    drawing = read_back(a_page(a_dimension(text=text, value=value, line_b=(-1.0, value), b=(3.0, value))))
    (one,) = drawing.modelspace().query("DIMENSION")
    assert one.dxf.text == live
    style = one.get_dim_style().dxf
    assert (style.dimlunit, style.dimdec) == (kind, places)


def test_a_metric_sheet_is_a_drawing_in_millimetres():
    line = Polyline("A-DOOR-CLSD", ((0.0, 0.0), (2.0, 0.0)))
    page = a_page(line, a_dimension(text="38.1 mm pin off door"))
    metric = Page(page.title, page.paper, page.details, page.furniture, metric=True)
    drawing = read_back(metric)
    assert (drawing.header["$INSUNITS"], drawing.header["$MEASUREMENT"], drawing.header["$LUNITS"]) == (
        4,
        1,
        2,
    )
    (drawn,) = drawing.modelspace().query("LINE")
    assert xy(drawn.dxf.end) == (50.8, 0.0)
    (one,) = drawing.modelspace().query("DIMENSION")
    assert one.dxf.text == "<> mm pin off door"
    assert one.get_measurement() == pytest.approx(38.1)
    (text,) = one.get_geometry_block().query("TEXT")
    style = one.get_dim_style().dxf
    assert style.dimtxt * style.dimscale == pytest.approx(text.dxf.height)
    assert (style.dimlunit, style.dimdec) == (2, 1)
    layout = drawing.paperspace("112A plan")
    assert (layout.dxf.paper_width, layout.dxf.paper_height) == pytest.approx((279.4, 215.9))
    (viewport,) = [one for one in layout.viewports() if one.dxf.id > 1]
    assert viewport.dxf.height / viewport.dxf.view_height == pytest.approx(0.5)
    assert viewport.dxf.width == pytest.approx(6.0 * 25.4)
    tags = drawing.linetypes.get("DASH-5-3").pattern_tags.tags
    assert [tag.value for tag in tags if tag.code == 49] == pytest.approx([5 * 25.4 / 72, -3 * 25.4 / 72])


def test_a_viewport_is_locked_and_a_mask_has_its_own_layer_without_a_frame():
    drawing = read_back(a_page(Polygon("A-WALL", ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0)), "masonry")))
    (viewport,) = [one for one in drawing.paperspace("112A plan").viewports() if one.dxf.id > 1]
    assert viewport.dxf.flags & 16384
    (mask,) = drawing.modelspace().query("WIPEOUT")
    assert mask.dxf.layer == "A-DETL-MASK"
    assert {drawing.styles.get(name).dxf.font for name in ("LETTERING", "LETTERING-BOLD")} == {
        "arial.ttf",
        "arialbd.ttf",
    }


def test_titles_in_model_space_stand_clear_of_one_another():
    line = Polyline("A-WALL", ((0.0, 0.0), (1.0, 0.0)))
    long = "detail with a name so long that it runs far past the window of what it is the name of"
    page = Page("112A plan", LETTER, (a_detail(line, name=long), a_detail(line, name="other")), ())
    first, second = read_back(page).modelspace().query("TEXT")
    assert second.dxf.insert.x - first.dxf.insert.x > 0.55 * first.dxf.height / 0.729 * len(first.dxf.text)


def test_lettering_is_as_high_on_paper_as_its_capitals():
    (text,) = model(Text("A-ANNO-TEXT", (1.0, 1.0), "chair rail", 10.0))
    # Ten points of which capitals are 0.729, seen at half size.
    assert text.dxf.height == pytest.approx(2 * 7.29 / 72)
    assert xy(text.dxf.insert) == (1.0, 1.0)


@pytest.mark.parametrize(("anchor", "halign"), [("start", 0), ("middle", 1), ("end", 2)])
def test_lettering_keeps_its_anchor(anchor, halign):
    (text,) = model(Text("A-ANNO-TEXT", (1.0, 1.0), "chair rail", 10.0, anchor))
    assert text.dxf.halign == halign
    assert xy(text.get_placement()[1]) == (1.0, 1.0)


@pytest.mark.parametrize("words", ["90° open", "50% more", "a^b", "{x} \\P", "é 漢"])
def test_lettering_reads_as_it_was_written(words):
    (text,) = model(Text("A-ANNO-TEXT", (0.0, 0.0), words, 8.0))
    assert plain_text(text.dxf.text) == words


def test_codes_in_lettering_are_broken_up():
    assert "%%" not in one_line("100%%c %%%d")
    assert one_line("two\nlines\x00") == "two lines "


def test_a_light_ground_is_a_mask_and_a_dark_one_gray():
    corners = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0))
    mask, pattern, _ = model(Polygon("A-WALL", corners, "masonry"))
    gray, _ = model(Polygon("A-DOOR-FRAM", corners, "steel"))
    assert mask.dxftype() == "WIPEOUT"
    assert (pattern.dxf.pattern_name, pattern.dxf.solid_fill) == ("MASONRY", 0)
    assert (gray.dxftype(), gray.dxf.solid_fill, gray.dxf.color) == ("HATCH", 1, 8)


def test_an_outline_without_area_has_no_ground():
    assert [one.dxftype() for one in model(Polygon("A-WALL", ((0, 0), (1, 0), (2, 0)), "steel"))] == [
        "LWPOLYLINE"
    ]


def test_a_mark_is_as_large_on_paper_at_any_scale():
    (mark,) = model(Symbol("A-ANNO-REDL", (1.0, 2.0), "contact"))
    assert (mark.dxf.name, xy(mark.dxf.insert)) == ("MARK-CONTACT", (1.0, 2.0))
    assert mark.dxf.xscale == pytest.approx(1 / 36)  # a point of paper at half size


def test_layers_carry_color_line_weight_dash_and_words():
    drawing = read_back(
        a_page(Polyline("A-DOOR-CLSD", ((0, 0), (1, 1))), Polyline("A-ANNO-REDL", ((0, 0), (1, 2))))
    )
    closed, red = drawing.layers.get("A-DOOR-CLSD"), drawing.layers.get("A-ANNO-REDL")
    assert (closed.dxf.lineweight, closed.dxf.linetype) == (25, "DASH-5-3")
    assert (red.color, red.dxf.lineweight) == (1, 35)
    assert closed.description == "the leaf closed"
    assert "A-WALL" not in drawing.layers


def test_every_layer_of_the_style_is_named_after_the_pattern():
    pattern = re.compile(r"A-[A-Z]{4}(-[A-Z]{4}){0,2}")
    assert [name for name in layers() if not pattern.fullmatch(name)] == []


def test_a_dash_is_as_long_on_paper_as_in_the_style():
    drawing = read_back(a_page(Polyline("A-DOOR-CLSD", ((0, 0), (1, 1)))))
    tags = drawing.linetypes.get("DASH-5-3").pattern_tags.tags
    assert [tag.value for tag in tags if tag.code == 49] == pytest.approx([5 / 72, -3 / 72])
    assert drawing.header["$PSLTSCALE"] == 1


def test_a_layout_is_the_paper_with_a_viewport_at_the_scale():
    furniture = (Polyline("A-ANNO-BRDR", ((28.0, 28.0), (764.0, 28.0))),)
    layout = read_back(a_page(furniture=furniture)).paperspace("112A plan")
    assert (layout.dxf.paper_width, layout.dxf.paper_height) == pytest.approx((279.4, 215.9))
    (viewport,) = [one for one in layout.viewports() if one.dxf.id > 1]
    assert viewport.dxf.height / viewport.dxf.view_height == pytest.approx(0.5)
    assert (viewport.dxf.width, viewport.dxf.height) == (6.0, 6.0)
    assert xy(viewport.dxf.center) == (4.0, 4.0)
    assert xy(viewport.dxf.view_center_point) == (0.0, 0.0)
    (border,) = layout.query("LINE")
    assert xy(border.dxf.end) == pytest.approx((764 / 72, 28 / 72))


def test_the_frame_of_a_viewport_is_not_printed():
    drawing = read_back(a_page())
    layout = drawing.paperspace("112A plan")
    (viewport,) = [one for one in layout.viewports() if one.dxf.id > 1]
    assert drawing.layers.get(viewport.dxf.layer).dxf.plot == 0


def test_details_stand_apart_each_from_a_whole_foot():
    line = Polyline("A-WALL", ((0.0, 0.0), (1.0, 0.0)))
    two = Page("112A plan", LETTER, (a_detail(line), a_detail(line, name="other")), ())
    other = a_page(line, title="118 plan")
    starts = [xy(one.dxf.start) for one in read_back(two, other).modelspace().query("LINE")]
    assert starts == [(0.0, 0.0), (24.0, 0.0), (0.0, -24.0)]


def test_layouts_have_names_of_their_own_without_forbidden_signs():
    titles = ["1/A plan", "1/a plan", "Model", "", "x" * 300]
    names = read_back(*(a_page(title=title) for title in titles)).layout_names_in_taborder()
    assert names == ["Model", "1-A plan", "1-a plan (2)", "Model (2)", "Sheet", "x" * 80]


def test_the_same_pages_are_the_same_bytes_and_the_library_is_left_as_it_was():
    page = a_page(a_dimension(), Polygon("A-WALL", ((0, 0), (2, 0), (2, 1)), "gypsum", "wall"))
    before = ezdxf.options.write_fixed_meta_data_for_testing
    assert dxf_bytes([page]) == dxf_bytes([page])
    assert ezdxf.options.write_fixed_meta_data_for_testing is before


def test_a_drawing_of_nothing_is_refused():
    with pytest.raises(ValueError, match="no sheet"):
        dxf_bytes([])


def test_units_are_inches():
    assert read_back(a_page()).header["$INSUNITS"] == 1


@pytest.mark.parametrize(("angle", "level"), [(0.0, 1), (math.pi / 2, 0)])
def test_a_dimension_style_keeps_lettering_level_or_along_its_line(angle, level):
    drawing = read_back(a_page(a_dimension(text_angle=angle)))
    (one,) = drawing.modelspace().query("DIMENSION")
    assert (one.get_dim_style().dxf.dimtih, one.get_dim_style().dxf.dimtoh) == (level, level)
    assert drawing.header["$DIMSTYLE"] == one.dxf.dimstyle
    assert (drawing.header["$DIMTIH"], drawing.header["$DIMSCALE"]) == (level, 2.0)
