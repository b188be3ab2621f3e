"""What reaches over the other leaf, and which of the two then opens first: every case worked by hand."""

import pytest

from configurator.rules.checks.lapping import laps_of, opens_second, reaches_over
from configurator.rules.filling.usual import fill
from configurator.study import study
from tests.openings import plain_opening

# A Dutch door divided at 42 with a gap of 1/8: the lower leaf ends at 41-15/16, the upper begins at 42-1/16.
STRIP = {
    "kind": "astragal",
    "projection": 0.1875,
    "from_latch_edge": 18,
    "width": 33,
    "height": 42,
    "vertical": 2,
}
# On a pair: centred on the gap of 1/8 between the leaves, 2 wide.
EDGE = {
    "kind": "astragal",
    "projection": 0.1875,
    "from_latch_edge": -0.0625,
    "width": 2,
    "height": 42,
    "vertical": 80,
}


def dutch(*hardware):
    return plain_opening(leaves="dutch", compare=[4], hardware=list(hardware))


def pair(*hardware):
    return plain_opening(
        leaves="pair", size={"width": 72, "height": 84}, compare=[4], hardware=list(hardware)
    )


def messages(opening, code):
    return [one.message for one in study(opening).all_findings() if one.code == code]


@pytest.mark.parametrize(
    ("leaf", "face", "second"),
    [
        ("upper", "pull", "lower"),
        ("upper", "push", "upper"),
        ("lower", "pull", "upper"),
        ("lower", "push", "lower"),
    ],
)
def test_which_half_of_a_dutch_door_opens_second(leaf, face, second):
    given = dutch({**STRIP, "leaf": leaf, "face": face})
    assert opens_second(fill(given)) == second
    (lap,) = laps_of(fill(given))
    assert lap.by == pytest.approx(1 - 1 / 16)
    (said,) = messages(given, "leaves open in order")
    assert f"the {second} leaf opens only after the" in said
    # Once the other is open it swings as it would without the strip.
    assert [one.greatest_angle_bare for one in study(given).candidates] == [180, 180]
    assert not messages(given, "binds at the lock side")


@pytest.mark.parametrize(
    ("leaf", "face", "second"),
    [
        ("active", "pull", "inactive"),
        ("active", "push", "active"),
        ("inactive", "pull", "active"),
        ("inactive", "push", "inactive"),
    ],
)
def test_which_leaf_of_a_pair_opens_second(leaf, face, second):
    given = pair({**EDGE, "leaf": leaf, "face": face})
    (lap,) = laps_of(fill(given))
    assert (lap.second, lap.by) == (second, pytest.approx(1 - 1 / 16))
    (said,) = [one for one in study(given).all_findings() if one.code == "leaves open in order"]
    assert said.severity == ("warning" if second == "active" else "note")
    active = study(given).candidates[0]
    assert active.greatest_angle == (0.0 if second == "active" else 180.0)
    assert not messages(given, "binds at the lock side")
    assert not messages(given, "hardware meets first")


def test_the_active_leaf_held_shut_is_mended_by_one_click():
    given = pair({**EDGE, "leaf": "active", "face": "push"})
    (said,) = [one for one in study(given).all_findings() if one.code == "leaves open in order"]
    (fix,) = said.fix
    assert (fix.path, fix.value) == ("hardware.0.face", "pull")


@pytest.mark.parametrize(("height", "laps"), [(42.93, True), (42.9375, False), (42.94, False)])
def test_at_the_edge_of_the_other_half(height, laps):
    """2 high about 42-15/16 the strip ends at 41-15/16, where the lower leaf ends."""
    given = dutch({**STRIP, "leaf": "upper", "height": height})
    assert bool(laps_of(fill(given))) == laps
    assert bool(messages(given, "astragal covers nothing")) == (not laps)


@pytest.mark.parametrize(("width", "laps"), [(0.12, False), (0.125, False), (0.13, True)])
def test_at_the_edge_of_the_other_leaf(width, laps):
    """Centred on a gap of 1/8 a strip must be wider than that."""
    given = pair({**EDGE, "leaf": "active", "width": width})
    assert bool(laps_of(fill(given))) == laps
    assert bool(messages(given, "astragal covers nothing")) == (not laps)


def test_two_that_hold_each_other_shut():
    given = dutch({**STRIP, "leaf": "upper"}, {**STRIP, "leaf": "upper", "face": "push"})
    assert opens_second(fill(given)) is None
    assert len(messages(given, "neither leaf opens")) == 1
    assert not messages(given, "leaves open in order")


def test_a_shelf_under_the_split_holds_nothing_shut():
    shelf = {**STRIP, "kind": "shelf", "leaf": "lower", "projection": 8, "height": 41.4375, "vertical": 1}
    assert not laps_of(fill(dutch(shelf)))
    assert laps_of(fill(dutch({**shelf, "height": 41.6})))


def test_hardware_that_names_no_leaf_is_on_the_first():
    (reach,) = reaches_over(fill(dutch({**STRIP})))
    assert (reach.carrier, reach.second) == ("lower", "upper")


def test_a_door_of_one_leaf():
    given = plain_opening(compare=[4], hardware=[STRIP])
    assert reaches_over(fill(given)) == ()
    assert len(messages(given, "astragal covers nothing")) == 1
    assert not messages(plain_opening(compare=[4]), "astragal covers nothing")
