"""Sentences that stay plain at their ends: no negative lengths, no nameless things, no empty halves."""

import pytest

from configurator.rules.checks.egress import Corridor, Projecting, corridor_findings, projection_findings
from configurator.rules.checks.opening_findings import opening_findings
from configurator.rules.checks.slips import reference_face
from configurator.rules.filling.usual import fill
from configurator.rules.hinge.answers import Must
from configurator.rules.wording import hardware, leaf_named, obstruction, remaining, the_leaf
from configurator.sentences import written
from configurator.study.run import study
from configurator.units import Display
from tests.rules.given import Met
from tests.rules.hinge.test_width import OVERLAP, RAIL, all_widths, answers, not_done
from tests.rules.hung import LEVER, found, opening, specified

STEP = 1 / 64
OTHER = {"kind": "other", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}


@pytest.mark.parametrize(
    ("left", "words"),
    [(STEP, "1/64 in"), (0, "0 in"), (-STEP, "nothing: it is 1/64 in more than there is")],
)
def test_what_is_left_is_never_less_than_nothing(left, words):
    assert written(remaining(left), Display(64)) == words


def test_a_corridor_narrower_than_the_door_swings():
    """0 wide: the door takes 34-11/16 in more than there is."""
    said = corridor_findings(Corridor(2.0, 44.0, 36.6875, 36.6875, 3.625))
    assert (
        "the door leaves nothing: it is 34-11/16 in more than there is while it swings and" in said[0].message
    )
    assert "that leaves nothing: it is 1-5/8 in more than there is." in said[1].message


def test_a_jamb_shallower_than_its_returns():
    given = opening(frame={"jamb_depth": 1, "return_depth": 2.5}, wall={"thickness": 4.875})
    (said,) = [one for one in opening_findings(fill(given)) if one.code == "wall thicker than throat"]
    assert "the frame's throat nothing: it is 4 in more than there is" in said.message


def test_a_thing_of_no_kind_is_named_all_the_same():
    assert (obstruction("other"), obstruction("base")) == ("obstruction", "base")
    assert (hardware("other"), hardware("lever")) == ("other hardware", "lever")
    slip = reference_face("obstructions.0.projection", "other", 1.75, 0.5, (4.5, 4), 4.5)
    assert slip is not None
    assert slip.message.startswith("The obstruction stands off")
    (box,) = projection_findings(Projecting("other", 5, 30, 33), 33, 32)
    assert box.message.startswith("The other hardware stands")
    said = study(opening(obstructions=[OTHER], hinge={"width": 4}, hardware=[{**LEVER, "kind": "other"}]))
    messages = " ".join(one.message for one in said.all_findings())
    assert "meets the obstruction" in messages
    assert "the other hardware meets the wall" in messages
    assert "the other at" not in messages


def test_what_overlaps_closed_is_not_mended_by_a_door_stop():
    closed = {**RAIL, "greatest_angle_bare": 0.0, "stopped_by_bare": Met("other")}
    said = not_done(Must("single", 4.5, 180.0, None), answers(**all_widths(**closed)))
    assert said.message.endswith(
        "It meets the obstruction with the door closed: check where the obstruction stands."
    )


def test_a_frame_stop_is_not_cut_back():
    stop = {**RAIL, "stopped_by_bare": Met("stop")}
    said = not_done(Must("single", 4.5, 180.0, None), answers(**all_widths(**stop)))
    assert "back" not in said.message
    assert said.message.endswith("Else fit a door stop before 171.7°.")


def test_a_height_that_comes_in_one_width_has_no_others_to_name():
    """A 3 in hinge is known in one width only."""
    said = not_done(Must("single", 3.0, 180.0, None), answers(w3=OVERLAP))
    assert ". ." not in said.message


def test_a_weight_that_was_given_is_not_asked_for():
    assert "Give the weight" in found(specified(opening()), "door weight").message
    message = found(specified(opening(door={"weight": 120})), "door weight").message
    assert message.endswith("The weight is as given: check it is one leaf's.")


@pytest.mark.parametrize(
    ("leaf", "named", "the"), [("single", "", "the door"), ("active", " (active leaf)", "the active leaf")]
)
def test_which_leaf_is_said_only_where_there_are_two(leaf, named, the):
    assert (leaf_named(leaf, " ({})"), the_leaf(leaf)) == (named, the)
