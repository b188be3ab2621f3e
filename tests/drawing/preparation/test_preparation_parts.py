import math

from configurator.drawing.base.primitives import Arc, Polygon, Polyline
from configurator.drawing.base.view import Box
from configurator.drawing.preparation.preparation_parts import cut_out, mirrored

BOX = Box(0.0, 0.0, 2.0, 2.0)


def test_a_polygon_that_runs_out_is_cut_without_a_line_there():
    slab = Polygon("A-DOOR", ((1.0, 0.5), (5.0, 0.5), (5.0, 1.5), (1.0, 1.5)), "core", "leaf")
    fill, *lines = cut_out([slab], BOX)
    assert isinstance(fill, Polygon)
    assert not fill.outlined
    assert max(x for x, _ in fill.points) == 2.0
    drawn = [line.points for line in lines]
    assert not any(a[0] == b[0] == 2.0 for a, *_, b in drawn)
    ends = [point for points in drawn for point in (points[0], points[-1])]
    assert (2.0, 0.5) in ends
    assert (2.0, 1.5) in ends


def test_what_lies_outside_is_gone_and_what_lies_inside_stays_whole():
    away = Polygon("A-DOOR", ((3.0, 0.0), (4.0, 0.0), (4.0, 1.0)), "core")
    assert cut_out([away], BOX) == ()
    line = Polyline("A-DOOR", ((0.5, 0.5), (1.5, 0.5)))
    knuckle = Arc("A-DETL-HNGE", (1.0, 1.0), 0.25, 0.0, 2 * math.pi)
    assert cut_out([line, knuckle], BOX) == (line, knuckle)


def test_a_closed_line_is_cut_like_an_outline():
    around = Polyline("A-DOOR", ((1.0, 1.0), (3.0, 1.0), (3.0, 3.0), (1.0, 3.0)), closed=True)
    pieces = cut_out([around], BOX)
    assert all(isinstance(piece, Polyline) and not piece.closed for piece in pieces)
    assert (
        sum(math.dist(a, b) for piece in pieces for a, b in zip(piece.points, piece.points[1:], strict=False))
        == 2
    )


def test_mirrored_about_a_line():
    (slab,) = mirrored([Polygon("A-DOOR", ((0.0, 0.0), (1.0, 0.0), (1.0, 2.0)), "core", "leaf")], 18.0)
    assert slab.points == ((36.0, 0.0), (35.0, 0.0), (35.0, 2.0))
    assert (slab.fill, slab.name) == ("core", "leaf")
    (line,) = mirrored([Polyline("A-DOOR", ((0.0, 0.0), (1.0, 0.0)), closed=True)], 0.0)
    assert line.points == ((0.0, 0.0), (-1.0, 0.0))
    assert line.closed
