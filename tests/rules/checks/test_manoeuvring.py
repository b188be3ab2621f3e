"""Manoeuvring clearance by hand: 2010 ADA Standards, Table 404.2.4.1 and 404.2.4.3, as read."""

import pytest

from configurator.rules.checks.manoeuvring import manoeuvring, manoeuvring_findings
from configurator.rules.filling.usual import fill
from tests.rules.hung import LEVER, opening

STEP = 1 / 64
BARE = {"closer": False, "locked": True}
CLOSES = {"closer": True, "locked": True}
FACE = 2.0
"""The usual frame face: what is free past the lock edge counts from the rabbet."""


def sides(use=CLOSES, **changes):
    pull, push = manoeuvring(fill(opening(use=use, **changes)))
    return {"pull": pull, "push": push}


def floor(side, approach, depth, latch=None, hinge=None):
    beside = {"latch_side": latch, "hinge_side": hinge}
    past = {key: value - FACE for key, value in beside.items() if value is not None}
    return {f"{side}_side": {"approach": approach, "depth": depth} | past}


@pytest.mark.parametrize(
    ("side", "approach", "use", "depth", "latch", "hinge"),
    [
        ("pull", "front", CLOSES, 60, 18, None),
        ("pull", "hinge", CLOSES, 60, 36, None),
        ("pull", "hinge", CLOSES, 54, 42, None),
        ("pull", "latch", BARE, 48, 24, None),
        ("pull", "latch", CLOSES, 54, 24, None),
        ("push", "front", BARE, 48, None, None),
        ("push", "front", CLOSES, 48, 12, None),
        ("push", "hinge", BARE, 42, None, 22),
        ("push", "hinge", CLOSES, 48, None, 22),
        ("push", "latch", BARE, 42, 24, None),
        ("push", "latch", CLOSES, 48, 24, None),
    ],
)
def test_the_table_below_at_and_above_each_of_its_numbers(side, approach, use, depth, latch, hinge):
    asked = {"depth": depth, "latch": latch, "hinge": hinge}
    asked = {key: value for key, value in asked.items() if value is not None}
    for less in asked:
        for step, kept in ((-STEP, False), (0.0, True), (STEP, True)):
            there = floor(side, approach, **asked | {less: asked[less] + step})
            assert sides(use, **there)[side].kept is kept, (less, step)
    for unknown in asked:
        there = floor(side, approach, **{"depth": None} | asked | {unknown: None})
        assert sides(use, **there)[side].kept is None, unknown


def test_a_push_from_the_front_takes_more_only_with_both_closer_and_latch():
    there = floor("push", "front", 48, 2)
    hung = {"hardware": [{**LEVER, "kind": "pull"}]}
    assert sides({"closer": True, "locked": False}, **there, **hung)["push"].kept is True
    assert sides({"closer": True, "locked": False}, **there, hardware=[LEVER])["push"].kept is False
    assert sides({"closer": False, "locked": True}, **there)["push"].kept is True
    assert sides({"closer": None, "locked": None}, **there)["push"].kept is False  # supposed: nobody said


def test_what_is_supposed_is_said_only_where_it_counts():
    unsaid = sides({"closer": None, "locked": None}, pull_side={"approach": "front"})
    assert unsaid["pull"].supposed == ""
    assert unsaid["push"].supposed == "a closer and a latch"
    assert sides({"closer": None, "locked": True})["push"].supposed == "a closer"
    assert sides({"closer": False, "locked": None})["push"].supposed == ""


def test_a_way_nobody_named_is_kept_only_where_every_way_is():
    def kept(depth, latch):
        return sides(**floor("pull", None, depth, latch))["pull"].kept

    assert kept(60, 36) is True  # 60 x 18, 60 x 36 and 54 x 24
    assert kept(60, 36 - STEP) is None  # from the front and from the lock side yet
    assert kept(47, 60) is False  # no way of the three


@pytest.mark.parametrize(("wall", "recessed"), [(9.375, False), (9.375 + STEP, True), (12, True)])
def test_a_wall_that_stands_out_over_8_in_leaves_only_the_front(wall, recessed):
    """A flush frame: the push face lies 1-7/8 behind the pull side's wall face, the frame 3 in back of it."""
    there = floor("push", "latch", 48, 30)
    given = {"wall": {"thickness": wall, "frame_proud": 0.5}, "frame": {"jamb_depth": 5.75}}
    found = sides(**there, **given)["push"]
    assert found.recessed is recessed
    assert found.approach == ("front" if recessed else "latch")
    assert found.kept is (not recessed)  # 2 in of frame face are less than 12 past the lock


def test_a_thing_beside_the_lock_over_8_in_off_the_door_makes_a_recess():
    def side(projection, start=10, **more):
        # The door's face lies 1/8 behind the frame's, which stands 1/2 in out of the wall: 3/8 in less.
        thing = {"kind": "other", "side": "latch", "projection": projection, "start": start, **more}
        return sides(**floor("pull", "latch", 60, 40), obstructions=[thing])["pull"]

    assert side(8.375).kept is True
    assert (side(8.375 + STEP).recessed, side(8.375 + STEP).kept) == (True, False)
    assert (side(20, start=16 - STEP).recessed, side(20, start=16).recessed) == (
        True,
        False,
    )  # 18 past the lock
    assert (side(20, start=22 - STEP).kept, side(20, start=22).kept) == (False, True)  # 24 are asked
    assert side(20, bottom=80).kept is True
    assert side(20, bottom=80 - STEP).kept is False


def test_a_pair_has_its_other_leaf_past_the_lock():
    found = sides(**floor("pull", "front", 60, 2), leaves="pair", size={"width": 72, "height": 84})["pull"]
    assert found.kept is True
    assert found.latch == pytest.approx(2 + (72 - 3 / 8) / 2 + 1 / 8, abs=0.1)


def test_a_corridor_is_the_floor_on_the_pull_side():
    use = CLOSES | {"corridor_width": 60, "required_width": 44}
    assert sides(use, pull_side={"approach": "front", "latch_side": 16})["pull"].kept is True
    assert sides(use | {"corridor_width": 59})["pull"].depth == 59


def test_nothing_is_asked_off_an_accessible_route():
    assert manoeuvring(fill(opening(use={"accessible": False}))) == ()


def test_the_sentence_says_what_is_asked_what_there_is_and_what_is_missing():
    given = floor("pull", "front", 60, 14) | {"push_side": {"approach": "front"}}
    short, unknown = manoeuvring_findings(fill(opening(use=CLOSES, **given)))
    assert (short.code, short.severity) == ("manoeuvring short", "warning")
    assert "60 in deep and 18 in past the lock from the front. Free are 60 in deep and 14 in" in short.message
    assert (unknown.code, unknown.severity) == ("manoeuvring not known", "note")
    assert unknown.message.endswith("Give how deep the floor is and what is free beside the lock.")
    assert short.mark_of_source == "read"
