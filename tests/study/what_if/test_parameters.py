"""What can be varied, how far, and what the record says then: worked by hand from what is typed."""

import pytest

from configurator.study import study
from configurator.study.what_if.parameters import parameters_of, with_changes
from tests.rules.hung import opening

THINGS = [
    {"kind": "chair rail", "projection": 1.75, "start": 0.5},
    {"kind": "casing", "projection": 0.6875, "start": 0, "length": 2.25},
    {"kind": "column", "diameter": 6, "start": 10, "offset": 0},
    {"kind": "chair rail", "projection": 1.5, "start": -7},
    {"kind": "return wall", "start": 4},
]
TILED = {
    "wall": {
        "thickness": None,
        "layers": [{"name": "tile", "thickness": 0.5}, {"name": "block", "thickness": 5.625}],
    },
    "frame": {"jamb_depth": 6.125, "hinge_backset": 0.5},
}
THIN = {"door": {"thickness": 0.8, "hinge_backset": 0.2}, "frame": {"rabbet": 1}, "wall": {"thickness": 1.0}}


def varied(**changes):
    """The parameters of an opening by name, for its last hinge open width."""
    given = study(opening(**changes))
    return {one.name: one for one in parameters_of(given, given.candidates[-1])}


def ranges(**changes):
    return {name: (one.low, one.present, one.high) for name, one in varied(**changes).items()}


def test_how_far_each_length_of_the_usual_opening_is_looked_at():
    # 1-1/2 in on either side; stock widths are 4 to 8 in, half an inch more; the frame stands 1/2 proud; the
    # rabbet 1-15/16 less 1/16 and 1-3/4 leaves an inset of 1/8; no backset past the door's own thickness.
    assert ranges() == {
        "hinge open width": (3.5, 4.5, 8.5),
        "wall thickness": (3.375, 4.875, 6.375),
        "frame proud of wall": (-1.0, 0.5, 2.0),
        "inset": (-1.375, 0.125, 1.625),
        "door thickness": (1.125, 1.75, 2.625),
        "hinge backset": (0.0, 0.25, 1.75),
    }


def test_nothing_is_looked_at_that_could_not_be():
    thin = ranges(**THIN, hinge={"width": 1.2})
    assert thin["wall thickness"] == (0.0625, 1.0, 2.5)
    assert thin["inset"] == pytest.approx((-0.8, 0.1375, 1.6375))  # a rabbet of 1/16 at least
    assert thin["door thickness"] == pytest.approx((0.75, 0.8, 1.675))
    assert thin["hinge backset"] == (0.0, 0.2, 0.8)
    assert thin["hinge open width"][0] == 1.0  # not 1.2 - 1/2
    assert ranges(door={"thickness": 5.5, "hinge_backset": 0.25})["door thickness"] == (4.875, 5.5, 6.0)


def test_what_stands_along_the_wall_is_moved_and_made_deeper():
    found = ranges(obstructions=THINGS)
    assert {name: found[name] for name in found if "projection" in name or "start" in name} == {
        "chair rail 1 projection": (0.25, 1.75, 3.5),  # twice what it is
        "chair rail 1 start": (-2.0, 0.5, 6.5),  # to the rabbet face of a 2 in frame; 6 in farther
        "casing projection": (0.0625, 0.6875, 2.1875),  # 1-1/2 in more; no thinner than 1/16
        "casing start": (-2.0, 0.0, 6.0),
        "column start": (-2.0, 10.0, 16.0),
        "chair rail 2 projection": (0.0625, 1.5, 3.0),
        "chair rail 2 start": (-7.0, -7.0, -1.0),
        "return wall start": (0.0, 4.0, 40.0),  # to 4 in past the leaf of a 36 in opening
    }
    rails = varied(obstructions=THINGS)
    assert rails["chair rail 2 start"].holds[0].changes(1.0) == {"obstructions.3.start": 1.0}
    assert rails["chair rail 1 projection"].holds[0].changes(1.0) == {"obstructions.0.projection": 1.0}


def test_a_single_rail_far_from_the_frame_needs_no_number():
    far = ranges(obstructions=[{"kind": "return wall", "start": 40}], frame={"face": 8})
    assert far["return wall start"] == (0.0, 40.0, 41.0)
    low, _, _ = ranges(obstructions=THINGS[:1], frame={"face": 8})["chair rail start"]
    assert low == -6.0


def holds(name, value, **changes):
    return {hold.name: dict(hold.changes(value)) for hold in varied(**changes)[name].holds}


def test_what_stays_while_the_wall_grows():
    assert holds("wall thickness", 5.875) == {
        "the frame; both faces of the wall move": {
            "wall.thickness": 5.875, "frame.jamb_depth": 5.875, "wall.frame_proud": 0.0,
        },
        "the frame; a finish on the pull side moves": {
            "wall.thickness": 5.875, "frame.jamb_depth": 5.875, "wall.frame_proud": -0.5,
        },
        "how the frame is made for its wall": {"wall.thickness": 5.875},
    }  # fmt: skip


def test_of_a_layered_wall_the_core_grows_or_the_finish():
    assert holds("wall thickness", 6.625, **TILED) == {
        "the frame; both faces of the wall move": {
            "wall.layers.1.thickness": 6.125, "wall.thickness": 6.625, "frame.jamb_depth": 6.125,
            "wall.frame_proud": -0.25,
        },
        "the frame; a finish on the pull side moves": {
            "wall.layers.0.thickness": 1.0, "wall.thickness": 6.625, "frame.jamb_depth": 6.125,
            "wall.frame_proud": -0.5,
        },
    }  # fmt: skip
    finish = "the frame; a finish on the pull side moves"
    kept = holds("wall thickness", 5.6875, **TILED)[finish]
    assert kept["wall.layers.0.thickness"] == 0.0625  # the thinnest that is still a layer
    gone = holds("wall thickness", 5.625, **TILED)[finish]
    assert (gone["wall.layers"], gone["wall.thickness"], "wall.layers.0.thickness" in gone) == (
        None,
        5.625,
        False,
    )


def test_what_stays_while_the_door_grows_thicker_or_lies_deeper():
    assert holds("door thickness", 2.25) == {
        "the inset; the rabbet is made for the door": {
            "door.thickness": 2.25, "frame.rabbet": 2.4375, "door.hinge_backset": 0.25,
        },
        "the frame; the inset makes up for it": {
            "door.thickness": 2.25, "frame.rabbet": 1.9375, "door.hinge_backset": 0.25,
        },
    }  # fmt: skip
    assert holds("inset", 0.5) == {"door thickness and gap at the frame stop": {"frame.rabbet": 2.3125}}
    assert holds("frame proud of wall", 0.25) == {"frame and wall": {"wall.frame_proud": 0.25}}


def test_a_frame_leaf_with_a_backset_of_its_own_moves_with_the_door_leaf():
    assert holds("hinge backset", 0.5) == {"door, frame and hinge": {"door.hinge_backset": 0.5}}
    both = {"door": {"hinge_backset": 0.5}, "frame": {"hinge_backset": 0.25}}
    assert holds("hinge backset", 0.75, **both) == {
        "door, frame and hinge": {"door.hinge_backset": 0.75, "frame.hinge_backset": 0.5}
    }
    assert ranges(**both)["hinge backset"] == (0.25, 0.5, 1.75)  # the frame's is nowhere less than nothing


def test_another_width_takes_the_place_of_the_one_it_is_asked_of():
    ways = {"compare": [4, 5, {"hung_on": "offset pivot"}]}
    given = study(opening(**ways))
    parameters = {one.hinge_width: parameters_of(given, one)[0] for one in given.butts}
    changes = parameters[4.0].holds[0].changes(4.25)
    assert changes["compare"][:-1] == (4.25, 5.0)
    assert changes["compare"][-1].hung_on == "offset pivot"
    assert parameters[5.0].holds[0].changes(3.75)["compare"][:-1] == (3.75, 4.0)
    assert all(one.of_hinge for one in parameters.values())
    assert with_changes(given.opening, changes).compare == changes["compare"]
