"""A jamb of its own outline: as a box with a stop nothing changes, else as worked by hand."""

import pytest

from configurator.geometry.outline import convex_pieces
from configurator.model import Opening
from configurator.study import study
from configurator.study.candidate import in_degrees
from configurator.study.what_if.curve import what_if
from configurator.study.what_if.parameters import parameters_of
from configurator.study.widths.width_curve import width_curve

PLAIN = [[-2, 0], [-2, -5.875], [0.625, -5.875], [0.625, -1.9375], [0, -1.9375], [0, 0]]
BEAD = [[-1, 0], [-1, 0.5], [-2, 0.5], *PLAIN[1:]]
"""The same with a bead half an inch out over the outer inch of its face."""


def studied(frame=None, **more):
    data = {
        "mark": "1",
        "hand": "LH",
        "size": {"width": 36, "height": 84},
        "door": {"thickness": 1.75, "latch_bevel": 0},
        "frame": {"kind": "knocked-down drywall", "face": 2, "jamb_depth": 5.875, **(frame or {})},
        "wall": {"thickness": 4.875},
        "hardware": [{"kind": "lever"}],
        "compare": [3.5, 4, 4.5],
    }
    return study(Opening.model_validate(data | more))


def answers(found):
    return [
        (one.solution.rest_angle, one.solution.greatest_angle_bare, one.as_data()) for one in found.candidates
    ]


def covered(pieces):
    pairs = (zip(piece, (*piece[1:], piece[0]), strict=True) for piece in pieces)
    return sum(a[0] * b[1] - b[0] * a[1] for piece in pairs for a, b in piece) / 2


@pytest.mark.parametrize("turned", [1, -1])
def test_the_pieces_cover_the_outline_and_part_at_the_rabbet_face(turned):
    outline = tuple((float(x), float(y)) for x, y in PLAIN)[::turned]
    beside, into = convex_pieces(outline)
    assert covered(beside) == pytest.approx(2 * 5.875)
    assert covered(into) == pytest.approx(0.625 * (5.875 - 1.9375))
    assert all(x <= 0 for piece in beside for x, _ in piece)
    assert all(x >= 0 for piece in into for x, _ in piece)


def test_a_box_with_a_stop_drawn_as_an_outline_gives_the_same_answers():
    plain = studied({"rabbet": 1.9375, "stop_height": 0.625})
    drawn = studied({"face": None, "jamb_depth": None, "outline": PLAIN})
    assert answers(drawn) == answers(plain)
    sizes = drawn.filled.frame_face, drawn.filled.rabbet, drawn.filled.stop_height, drawn.filled.jamb_depth
    assert sizes == (2, 1.9375, 0.625, 5.875)
    assert not {"frame.face", "frame.rabbet", "frame.stop_height"} & set(drawn.filled.assumed)


def test_a_bead_on_the_face_stops_the_leaf_as_a_casing_there_does():
    casing = {"kind": "casing", "side": "hinge", "start": -1, "length": 1, "projection": 0.5}
    beaded = studied({"face": None, "jamb_depth": None, "outline": BEAD})
    trimmed = studied(obstructions=[casing])
    assert [one.solution.greatest_angle_bare for one in beaded.candidates] == pytest.approx(
        [one.solution.greatest_angle_bare for one in trimmed.candidates], abs=1e-12
    )
    assert beaded.candidates[0].stopped_by_bare.kind == "frame"


def test_many_widths_at_once_are_answered_as_one_by_one():
    found = studied({"face": None, "jamb_depth": None, "outline": BEAD})
    curve = width_curve(found.leaves[0], 3.5, 4.5)
    by_width = dict(zip(curve.widths, curve.bare, strict=True))
    one_by_one = {one.hinge_width: in_degrees(one.solution.greatest_angle_bare) for one in found.candidates}
    assert {width: by_width[width] for width in one_by_one} == pytest.approx(one_by_one, abs=1e-9)


def test_what_if_varies_the_door_s_place_before_an_outline_that_stays():
    found = studied({"face": None, "jamb_depth": None, "outline": BEAD})
    candidate = found.candidates[1]
    inset = next(one for one in parameters_of(found, candidate) if one.name == "inset")
    curve = what_if(found, candidate, inset, inset.holds[0]).curve
    at = curve.values.index(inset.present)
    assert curve.bare[at] == pytest.approx(in_degrees(candidate.solution.greatest_angle_bare), abs=1e-9)


def test_the_pair_s_other_jamb_has_the_outline_too():
    found = studied({"face": None, "jamb_depth": None, "outline": BEAD}, leaves="pair", size="6070")
    by_leaf = {one.leaf: one.solution.greatest_angle_bare for one in found.candidates if one.hinge_width == 4}
    assert by_leaf["active"] == pytest.approx(by_leaf["inactive"], abs=1e-12)


@pytest.mark.parametrize(
    ("frame", "reason"),
    [
        ({"outline": PLAIN[:3]}, "four corners or more"),
        ({"outline": [[0, 0], [-2, -5], [-2, 0], [0, -5]]}, "do not cross"),
        ({"outline": [[1, 0], [-2, 0], [-2, -5], [1, -5]]}, "a corner 0, 0"),
        ({"outline": [[0, 0], [2, 0], [2, -5], [0, -5]]}, "away from the opening"),
        ({"outline": PLAIN, "face": 1.5}, "has a face of 2 in and 1-1/2 in is given"),
        ({"profile": "wood jamb 4-9/16"}, "is of a wood with casing frame"),
    ],
)
def test_what_is_no_jamb_or_says_two_things_is_refused(frame, reason):
    with pytest.raises(ValueError, match=reason):
        studied(frame)


def test_a_profile_s_sizes_are_assumed_until_they_are_known():
    usual = studied({"face": None, "jamb_depth": None, "profile": "drywall 7-1/4 throat"}, wall={})
    assert (usual.filled.jamb_depth, usual.filled.wall_thickness) == (8.25, 7.25)
    assert usual.filled.assumed["frame.jamb_depth"].because == "usual of the profile drywall 7-1/4 throat"
    known = {"face": None, "jamb_depth": None, "profile": "drywall 7-1/4 throat", "sizes_from": "measured"}
    assert "frame.jamb_depth" not in studied(known, wall={}).filled.assumed
