import math
import random
from dataclasses import replace

import pytest
from shapely.geometry import Polygon as Area

from configurator.drawing.base.primitives import Polygon
from configurator.drawing.plan.jamb import _BY_KIND as OUTLINES
from configurator.drawing.plan.jamb import (
    bands,
    hinge_jamb,
    material_of,
    steel_profile,
    stud_boxes,
    thickened,
    wall_beside,
)
from configurator.drawing.plan.sheet import plan_sheet
from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import (
    Hardware,
    Leaf,
    Shape,
    barrel_shapes,
    hardware_shape,
    leaf_shape,
    rectangle,
    standing_shapes,
)
from configurator.geometry.swing import first_contact
from configurator.model.paths import vocabulary
from configurator.units import Display
from tests.drawing.cases import FRAMES, case_a


def hung_in(kind, wall=None, **changes):
    study = case_a(frame={"kind": kind, **changes}, wall={**FRAMES[kind].get("wall", {}), **(wall or {})})
    return plan_sheet(study, Display(), 864, 540).panels[0].hung


def test_every_kind_of_frame_is_drawn():
    assert set(FRAMES) == set(vocabulary()["frame.kind"])
    for kind in FRAMES:
        assert kind in OUTLINES, "give it an outline in drawing/plan/jamb.py"
        assert hinge_jamb(hung_in(kind))


def test_the_steel_profile_of_the_usual_frame_by_hand():
    """Face 2, rabbet 1-15/16, stop 5/8, depth 5-7/8, returns 1/2: a soffit of 2 between two rabbets."""
    assert steel_profile(hung_in("knocked-down drywall")) == (
        (-2, -0.5), (-2, 0), (0, 0), (0, -1.9375), (0.625, -1.9375),
        (0.625, -3.9375), (0, -3.9375), (0, -5.875), (-2, -5.875), (-2, -5.375),
    )  # fmt: skip


def test_a_shallow_frame_has_one_rabbet():
    profile = steel_profile(hung_in("knocked-down drywall", jamb_depth=4.5))
    assert (0.625, -4.5) in profile
    assert (0, -4.5) not in profile
    # A soffit of exactly 3/4 is enough for a second rabbet.
    assert (0, -4.625) in steel_profile(hung_in("knocked-down drywall", jamb_depth=4.625))


def test_the_second_rabbet_is_what_the_stop_leaves():
    """Depth 5-7/8, rabbet 1-15/16, stop 1: the rabbet behind is 2-15/16 deep."""
    profile = steel_profile(hung_in("knocked-down drywall", stop_width=1))
    assert profile[4:8] == ((0.625, -1.9375), (0.625, -2.9375), (0, -2.9375), (0, -5.875))
    # 1/16 behind the stop is still a rabbet, less is none; a stop too wide is drawn to the far face.
    assert (0, -5.8125) in steel_profile(hung_in("knocked-down drywall", stop_width=3.875))
    for width in (3.875 + 1 / 64, 3.9375, 5):
        assert steel_profile(hung_in("knocked-down drywall", stop_width=width))[5] == (0.625, -5.875)


@pytest.mark.parametrize("kind", ["wood with casing", "aluminum storefront"])
@pytest.mark.parametrize("given", [None, 1, 2])
def test_an_applied_stop_is_as_wide_as_said(kind, given):
    hung = hung_in(kind, **({} if given is None else {"stop_width": given}))
    stop = next(part for part in hinge_jamb(hung) if "stop" in part.name)
    ys = [y for _, y in stop.points]
    assert max(ys) == -hung.h.R
    assert max(ys) - min(ys) == pytest.approx(given or 1.375)


@pytest.mark.parametrize(("given", "wall"), [(None, 0.125), (0.1875, 0.1875)])
def test_a_tube_has_the_walls_that_were_said(given, wall):
    hung = hung_in("aluminum storefront", **({} if given is None else {"metal_thickness": given}))
    tube, hollow = hinge_jamb(hung)[:2]
    assert min(x for x, _ in hollow.points) - min(x for x, _ in tube.points) == pytest.approx(wall)


def test_a_sheet_is_as_thick_as_said():
    thin, thick = (
        Area(hinge_jamb(hung_in("welded steel, wrapped", metal_thickness=t))[0].points).area
        for t in (0.042, 0.067)
    )
    assert thick / thin == pytest.approx(0.067 / 0.042, rel=0.03)


TILED = {
    "layers": [
        {"name": "tile", "thickness": 0.5},
        {"name": "gypsum board", "thickness": 0.625},
        {"name": "steel stud", "thickness": 3.625},
        {"name": "gypsum board", "thickness": 0.625},
    ]
}


def test_tile_stops_against_a_frame_that_does_not_go_over_it():
    """Frame flush with the tile: the 1/2 return stands before the board, and the tile beside the return."""
    hung = hung_in("knocked-down drywall", {**TILED, "frame_proud": 0}, jamb_depth=5.875)
    ends = [band.end for band in bands(hung)]
    assert ends[0] == -2
    assert all(end > -2 for end in ends[1:])


def test_tile_goes_into_a_frame_made_for_it():
    assert all(band.end > -2 for band in bands(hung_in("knocked-down drywall", TILED)))


@pytest.mark.parametrize(
    ("kind", "name", "boxes"),
    [
        ("knocked-down drywall", "steel stud", 3),
        ("knocked-down drywall", "2x4 wood stud", 1),
        ("wood with casing", "stud space", 1),
        ("wood with casing", "steel stud", 3),
        ("wood with casing", "air space", 0),
    ],
)
def test_studs_are_drawn_as_their_name_says(kind, name, boxes):
    layers = [{"name": "gypsum board", "thickness": 0.5}, {"name": name, "thickness": 3.5}]
    assert len(stud_boxes(hung_in(kind, {"layers": layers}))) == boxes


def test_a_folded_sheet_has_its_length_times_its_thickness():
    line = ((0, 0), (0, 4), (3, 4))
    sheet = thickened(line, 0.1)
    assert Area(sheet).area == pytest.approx(7 * 0.1 - 0.1 * 0.1)
    assert sheet[:3] == line


def test_steel_stays_behind_its_faces_and_is_never_thinner_than_asked():
    hung = hung_in("knocked-down drywall")
    fine, thick = (hinge_jamb(hung, thinnest)[0] for thinnest in (0.0, 0.2))
    assert Area(fine.points).is_valid
    outer = Area(steel_profile(hung)).buffer(1e-9)
    assert outer.covers(Area(fine.points))
    assert Area(thick.points).area == pytest.approx(Area(fine.points).area * 0.2 / 0.053, rel=0.05)


@pytest.mark.parametrize("kind", list(FRAMES))
def test_frame_and_face_and_stop_are_where_they_were_solved(kind):
    hung = hung_in(kind)
    points = [point for part in hinge_jamb(hung) for point in part.points]
    h = hung.h
    assert min(x for x, _ in points) == pytest.approx(-h.F)
    assert max(x for x, _ in points) == pytest.approx(h.s)
    assert max(y for _, y in points) == pytest.approx(0)
    assert min(y for _, y in points) == pytest.approx(-h.D)


def test_a_butted_frame_is_grouted_and_the_wall_stops_at_it():
    hung = hung_in("welded steel, butted")
    assert "grout" in {part.fill for part in hinge_jamb(hung)}
    layers = [part for part in wall_beside(hung, -10) if isinstance(part, Polygon)]
    assert max(x for part in layers for x, _ in part.points) == pytest.approx(-hung.h.F)


def test_the_wall_runs_into_a_frame_that_wraps_it_layer_by_layer():
    hung = hung_in("knocked-down drywall")
    layers = [part for part in wall_beside(hung, -10) if isinstance(part, Polygon)]
    assert [part.name for part in layers] == [name for name, _ in hung.layers]
    assert all(-hung.h.F < max(x for x, _ in part.points) < 0 for part in layers)
    tops = [max(y for _, y in part.points) for part in layers]
    assert tops[0] == -hung.h.p
    assert min(y for _, y in layers[-1].points) == pytest.approx(-hung.h.p - hung.wall_depth)


@pytest.mark.parametrize(
    ("words", "material"),
    [
        ("gypsum board", "gypsum"), ("Concrete block", "masonry"), ("stud space", "cavity"), ("tile", "tile"),
        ("brick veneer", "brick"), ("cast concrete", "concrete"), ("air space", "cavity"),
        ("plywood", "wood"), ("felt", "solid"),
    ],
)  # fmt: skip
def test_a_layers_name_tells_its_material(words, material):
    assert material_of(words) == material


def contacts(h, item, stop_width):
    """The first contact bare and with a box on the push face, the frame stop as wide as said; degrees."""
    leaf = Leaf()
    pin = locate_pin(h)
    standing = []
    for shape in standing_shapes(h, leaf):
        xs = [x for x, _ in shape.points]
        band = rectangle(min(xs), max(xs), -h.R - stop_width, -h.R)
        standing.append(Shape(band, kind="stop") if shape.kind == "stop" else shape)
    bare = (leaf_shape(h, leaf), *barrel_shapes(h, pin, leaf))
    found = (first_contact(parts, standing, pin.at) for parts in (bare, (*bare, hardware_shape(h, item, 0))))
    return [math.pi if one is None else one.angle for one in found]


@pytest.mark.parametrize("mounting", [None, "swing clear", "half surface"])
def test_a_stop_filled_to_the_far_face_lets_nothing_pass_that_the_real_one_stops(mounting):
    """And it stops nothing that the real one lets pass."""
    dice = random.Random(7)
    h = replace(hung_in("knocked-down drywall").h, mounting=mounting or "full mortise")
    room = h.D - h.R
    for _ in range(60):
        item = Hardware(
            kind="other", face="push", projection=dice.uniform(0.5, 12), from_latch_edge=dice.uniform(1, 6),
            width=dice.uniform(0.5, 4), height=40, vertical=3,
        )  # fmt: skip
        filled, real = (contacts(h, item, width) for width in (room, dice.uniform(0.25, room)))
        assert real[0] == filled[0]
        assert filled[1] <= real[1]
        assert (filled[1] == math.pi) == (real[1] == math.pi)
