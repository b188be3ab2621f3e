"""Frame and wall together: every disagreement of what was given, with its mends."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.model import Opening
from configurator.rules.checks.frame_fit import core_of, frame_fit_findings
from configurator.rules.filling.frame_and_wall import has_returns
from configurator.rules.filling.usual import fill
from configurator.ui.state.edits import edited
from configurator.units import Display
from tests.sweeps import examples

STEP = 1 / 64
DRYWALL, WELDED, BUTTED = "knocked-down drywall", "welded steel, wrapped", "welded steel, butted"
WOOD, ALUMINUM = "wood with casing", "aluminum storefront"
TILED = [
    {"name": "tile", "thickness": 0.5},
    {"name": "gypsum board", "thickness": 0.625},
    {"name": "stud space", "thickness": 3.625},
    {"name": "gypsum board", "thickness": 0.625},
]


def opening(kind=DRYWALL, frame=(), **wall) -> Opening:
    place = {"frame_proud": 0} if kind == BUTTED else {}
    return Opening.model_validate(
        {
            "mark": "1",
            "size": {"width": 36, "height": 84},
            "door": {"thickness": 1.75},
            "frame": {"kind": kind, **dict(frame)},
            "wall": {**place, **wall},
        }
    )


def said(*args, **kwargs):
    return list(frame_fit_findings(fill(opening(*args, **kwargs))))


@pytest.mark.parametrize("kind", [WOOD, ALUMINUM])
def test_a_frame_without_returns_has_no_throat(kind):
    got = fill(opening(kind, frame={"return_depth": 0.5, "jamb_depth": 5}))
    assert (got.return_depth, got.wall_thickness, has_returns(kind)) == (0, 5, False)
    (one,) = said(kind, frame={"return_depth": 0.5})
    assert one.code == "no returns"
    assert [(fix.path, fix.value) for fix in one.fix] == [("frame.return_depth", None)]
    assert not said(kind, frame={"return_depth": 0})


@pytest.mark.parametrize("kind", [DRYWALL, WELDED, BUTTED])
def test_a_steel_frame_has_returns(kind):
    assert has_returns(kind)
    assert fill(opening(kind, frame={"return_depth": 0.375})).return_depth == 0.375
    assert not said(kind, frame={"return_depth": 0.375})


@pytest.mark.parametrize(
    ("kind", "depth", "wall", "code"),
    [
        (DRYWALL, 5.875, 4.875, None),
        (DRYWALL, 5.875, 4.875 + STEP, "wall thicker than throat"),
        (DRYWALL, 5.875, 4.75, None),  # 1/8 loose
        (DRYWALL, 5.875, 4.75 - STEP, "throat wider than wall"),
        (WELDED, 5.75, 4.875, None),
        (WELDED, 5.75, 4.875 + STEP, "wall thicker than throat"),
        (WOOD, 4.5625, 4.5625, None),
        (WOOD, 4.5625, 4.5625 + STEP, "wall thicker than jamb"),
        (WOOD, 4.5625, 4.4375, None),
        (WOOD, 4.5625, 4.4375 - STEP, "jamb deeper than wall"),
        (BUTTED, 5.75, 11.625, None),
        (BUTTED, 5.75, 4, None),
        (ALUMINUM, 4.5, 7.25, None),
        (ALUMINUM, 6, 4.875, None),
    ],
)
def test_depth_and_wall_both_given(kind, depth, wall, code):
    found = [one.code for one in said(kind, frame={"jamb_depth": depth}, thickness=wall)]
    assert found == ([code] if code else [])


def test_a_wall_too_thick_says_by_what_and_offers_three_ways():
    """Depth 5-3/4 with returns of 1/2 leaves a throat of 4-3/4; returns of 7/16 take the 4-7/8 wall."""
    (one,) = said(frame={"jamb_depth": 5.75}, thickness=4.875)
    assert "The wall is 4-7/8 in thick and the frame's throat 4-3/4 in" in one.message
    assert dict(one.numbers) == {"wall": 4.875, "throat": 4.75}
    assert one.severity == "warning"
    ways = [(fix.path, fix.value, fix.said(Display())) for (fix,) in one.fixes]
    assert ways == [
        ("frame.jamb_depth", 5.875, "Make the jamb 5-7/8 in deep"),
        ("frame.return_depth", 0.4375, "Make the returns 7/16 in"),
        ("wall.thickness", None, "Take the wall that fits the frame"),
    ]


def test_returns_too_small_to_fold_are_not_offered():
    paths = [fix.path for (fix,) in said(frame={"jamb_depth": 5.75}, thickness=5.25)[0].fixes]
    assert "frame.return_depth" in paths  # just 1/4
    paths = [fix.path for (fix,) in said(frame={"jamb_depth": 5.75}, thickness=5.25 + STEP)[0].fixes]
    assert "frame.return_depth" not in paths


def test_tile_that_stops_against_the_frame_is_only_a_note():
    """The core of 4-7/8 fits the throat; the tile of 1/2 stands before the return."""
    (one,) = said(frame={"jamb_depth": 5.875}, layers=TILED)
    assert (one.code, one.severity) == ("wall thicker than throat", "note")
    assert "only where tile stops against it" in one.message
    assert core_of(fill(opening(layers=TILED))) == 4.875
    assert not [fix for (fix,) in one.fixes if fix.path == "wall.thickness"]  # its layers were counted


@pytest.mark.parametrize(
    ("layers", "proud"),
    [
        (TILED, 0),  # the return of 1/2 stands before the board, as does the tile of 1/2
        ([{"name": "tile", "thickness": 0.375}, *TILED[1:]], 0.125),
        ([{"name": "tile", "thickness": 0.75}, *TILED[1:]], -0.25),
        ([*TILED[1:], TILED[0]], 0.5),  # tile on the far side alone
        ([*TILED, TILED[0]], None),  # on both faces alike: centred is right
    ],
)
def test_the_frame_goes_over_the_wall_behind_the_tile(layers, proud):
    (one,) = said(frame={"jamb_depth": 5.875}, layers=layers)
    placed = [fix.value for (fix,) in one.fixes if fix.path == "wall.frame_proud"]
    assert placed == ([] if proud is None else [proud])
    again = said(frame={"jamb_depth": 5.875}, layers=layers, frame_proud=0.25)
    assert not [fix for (fix,) in again[0].fixes if fix.path == "wall.frame_proud"]


def test_a_frame_taken_to_go_over_the_tile_says_so():
    (one,) = said(layers=TILED)
    assert one.code == "tile in the throat"
    assert "6-3/8 in deep" in one.message
    assert "the jamb is 5-7/8 in deep" in one.message
    assert (one.fix[0].path, one.fix[0].value) == ("frame.jamb_depth", 5.875)
    assert not said(layers=TILED[1:])
    assert "tile in the throat" not in [
        one.code for one in said(layers=TILED[:1])
    ]  # nothing but tile: no core for a frame to go over
    assert not said(WOOD, layers=TILED)


@pytest.mark.parametrize(
    ("frame", "code"),
    [
        ({"jamb_depth": 5.875, "stop_width": 3.9375}, None),
        ({"jamb_depth": 5.875, "stop_width": 3.9375 + STEP}, "stop too wide"),
        ({"jamb_depth": 1.9375 + STEP}, None),
        ({"jamb_depth": 1.9375}, "no room for a stop"),
        ({"jamb_depth": 1.9375, "stop_height": 0}, None),
        ({"rabbet": 6, "jamb_depth": 5.875}, "no room for a stop"),
    ],
)
def test_room_for_the_stop(frame, code):
    assert [one.code for one in said(frame=frame)] == ([code] if code else [])


@examples(30)
@given(
    kind=st.sampled_from([DRYWALL, WELDED, WOOD]),
    depth=st.integers(3 * 64, 14 * 64),
    wall=st.integers(2 * 64, 13 * 64),
)
def test_every_mend_of_a_misfit_mends_it(kind, depth, wall):
    before = opening(kind, frame={"jamb_depth": depth / 64}, thickness=wall / 64)
    for one in frame_fit_findings(fill(before)):
        for way in one.fixes:
            after = edited(before, {fix.path: fix.value for fix in way})
            assert one.code not in [other.code for other in frame_fit_findings(fill(after))], way
