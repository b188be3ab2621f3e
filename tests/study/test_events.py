import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.edges import latch_edge_shape
from configurator.geometry.meeting_point import nearest_points
from configurator.geometry.polar import seen_from, turned
from configurator.study import study
from configurator.study.events import (
    Event,
    Moment,
    candidate_events,
    gap_on_the_way,
    held_by,
    latch_passage,
    moment_at,
    moment_before,
    moments,
    next_moment,
)
from tests.openings import BOX, RAIL, plain_opening
from tests.sweeps import examples


def events_of(place=0, **changes):
    answer = study(plain_opening(**changes))
    return {event.trade: event for event in candidate_events(answer.candidates[place])}


def test_the_plain_opening_by_hand():
    """Case A with a square edge: the latch edge passes closest where its stop-side corner is level with the
    strike's arris, both seen from the pin: tan = -y_p / (O - x_p) against -(o + T) / (O - g_l - x_p)."""
    found = events_of()
    assert list(found) == [
        "closed",
        "fully open",
        "square open, where the clear width counts",
        "wanted angle",
        "latch edge closest",
        "least gap to the wall",
    ]
    closest = found["latch edge closest"]
    by_hand = math.atan2(0.5 + 1.75, 35.875 - 0.0625) - math.atan2(0.375, 36 - 0.0625)
    assert closest.angle == pytest.approx(math.degrees(by_hand), abs=1e-9)
    assert closest.distance == pytest.approx(0.056345, abs=1e-6)
    wall = found["least gap to the wall"]  # open flat the face stands 7/8 off the frame, 1-3/8 off the wall
    assert (wall.angle, wall.distance) == (180.0, pytest.approx(1.375))


def test_a_rail_stops_one_width_and_is_passed_by_the_other():
    """Case B: 4 in meets the rail at 171.788; 4-1/2 in passes it by 1/8 at 180."""
    narrow, wide = events_of(0, obstructions=[RAIL]), events_of(1, obstructions=[RAIL])
    assert narrow["first contact: leaf on the chair rail"].angle == pytest.approx(171.788, abs=1e-3)
    assert "least gap to the chair rail" not in narrow
    assert "fully open" not in narrow
    assert "wanted angle" not in narrow  # 180 is not reached
    gap = wide["least gap to the chair rail"]
    assert gap.angle == 180.0
    assert gap.distance == pytest.approx(0.125, abs=1e-12)


def test_with_hardware_the_least_gap_is_the_one_that_can_be_reached():
    """The box meets the rail at 175.624 on 4-1/2 in; the leaf alone would have come nearer farther on."""
    answer = study(plain_opening(obstructions=[RAIL], hardware=[BOX]))
    solution = answer.candidates[1].solution
    gap = gap_on_the_way(solution, solution.greatest_angle)
    assert solution.gap.angle == math.pi
    assert math.degrees(gap.angle) == pytest.approx(175.624, abs=1e-3)
    assert gap.distance > solution.gap.distance


def test_what_stands_on_the_latch_side_is_passed_nearest_on_the_way():
    """The stop-side latch corner passes a column in line with the pin, nearer than anywhere else."""
    column = {"kind": "column", "side": "latch", "start": -3, "diameter": 6, "offset": 9}
    found = events_of(obstructions=[column])
    gap = found["least gap to the column"]
    solution = study(plain_opening(obstructions=[column])).candidates[0].solution
    x_p, y_p = solution.pin.at
    centre = (36 + solution.hanging.F - 3 + 3, -0.5 + 9 + 3)
    rho = math.hypot(35.875 - x_p, 0.5 + 1.75)  # the stop-side corner of the latch edge
    away = math.dist(centre, (x_p, y_p))
    assert gap.distance == pytest.approx(away - rho - 3)
    turn = math.atan2(centre[1] - y_p, centre[0] - x_p) + math.atan2(0.5 + 1.75, 35.875 - x_p)
    assert gap.angle == pytest.approx(math.degrees(turn))


def test_what_the_leaf_only_moves_away_from_is_no_event():
    """The wall beside a frame 2 wide is 2-1/8 off the closed leaf, through the frame; 6 in clears 3-3/8."""
    assert not [name for name in events_of(compare=[6]) if name.startswith("least gap")]
    assert events_of(compare=[4.5])["least gap to the wall"].distance == pytest.approx(1.875)


def test_a_door_stop_that_holds_ends_what_happens():
    answer = study(
        plain_opening(door_stop={"kind": "wall bumper", "projection": 4, "from_frame": 28, "height": 38})
    )
    candidate = answer.candidates[0]
    found = candidate_events(candidate)
    (rest,) = [event for event in found if event.trade == "at rest: leaf on the wall bumper"]
    assert rest.angle == candidate.door_stop.rests_at < 180
    assert max(event.angle for event in found) == rest.angle


def test_the_leaf_alone_has_its_own_first_contact_farther_on():
    found = events_of(0, obstructions=[{"kind": "return wall", "start": 2}], hardware=[BOX])
    whole = found["first contact: other hardware on the return wall"]
    bare = found["first contact, bare: leaf on the return wall"]
    assert 90 < whole.angle < bare.angle < 120


def test_a_binding_latch_edge_is_a_contact_and_not_a_passage():
    answer = study(plain_opening(compare=[7]))
    (candidate,) = answer.candidates
    assert latch_passage(candidate.solution) is None
    found = {event.trade for event in candidate_events(candidate)}
    assert found == {"closed", "first contact: leaf on the latch jamb"}


def test_the_door_stop_and_the_wanted_angle_count_as_far_as_they_are_reached():
    found = events_of(use={"stop_angle": 100, "wanted_angle": 95})
    assert found["door stop angle"].angle == 100
    assert found["wanted angle"].angle == 95
    short = events_of(obstructions=[RAIL], use={"stop_angle": 171.9})
    assert "door stop angle" not in short


def test_what_happens_to_every_width_alike_is_one_event():
    found = moments(study(plain_opening(obstructions=[RAIL])))
    closed, *rest = found
    assert [(event.trade, event.of) for event in closed.events] == [("closed", (0, 1))]
    assert [moment.angle for moment in found] == sorted({moment.angle for moment in found})
    (end,) = [moment for moment in rest if moment.angle == 180.0]
    assert {event.of for event in end.events} == {(1,)}
    assert len(end.events) == 3


def test_stepping_forward_and_back_and_not_past_the_ends():
    row = (Moment(0.0, ()), Moment(90.0, ()), Moment(180.0, ()))
    assert next_moment(row, 0.0) is row[1]
    assert next_moment(row, 89.9) is row[1]
    assert next_moment(row, 90.0 - 1e-9) is row[2]  # that is 90 already
    assert next_moment(row, 180.0) is None
    assert moment_before(row, 90.0) is row[0]
    assert moment_before(row, 90.1) is row[1]
    assert moment_before(row, 0.0) is None
    assert moment_at(row, 90.0 + 1e-9) is row[1]
    assert moment_at(row, 90.01) is None
    assert next_moment((), 0.0) is None


def test_events_nearer_than_a_millionth_of_a_degree_are_one_moment(monkeypatch):
    made = iter(((Event(0.0, "a", "a"), Event(1.0, "b", "b")), (Event(1.0 + 5e-7, "c", "c"),)))
    monkeypatch.setattr("configurator.study.events.candidate_events", lambda *_: next(made))
    found = moments(study(plain_opening()))
    assert [[event.trade for event in moment.events] for moment in found] == [["a"], ["b", "c"]]


@examples(25)
@given(
    width=st.sampled_from([3.5, 4, 4.5, 5, 6]),
    thickness=st.sampled_from([1.375, 1.75]),
    bevel=st.floats(0, 0.1),
    gap=st.floats(1 / 16, 0.25),
)
def test_nowhere_does_the_latch_edge_come_nearer_than_at_its_event(width, thickness, bevel, gap):
    door = {"thickness": thickness, "latch_bevel": bevel, "latch_gap": gap}
    answer = study(plain_opening(door=door, compare=[width]))
    solution = answer.candidates[0].solution
    passage = latch_passage(solution)
    if passage is None:
        return
    h, pin = solution.hanging, solution.pin
    edge = seen_from(pin.at, latch_edge_shape(h))
    face = ((h.O, 0.0), (h.O, -h.R))

    def apart(angle):
        return math.dist(*nearest_points(turned(pin.at, edge, angle), face))

    distance = passage.distance
    assert apart(passage.angle) == pytest.approx(distance, abs=1e-9)
    assert math.dist(passage.point_moving, passage.point_standing) == pytest.approx(distance, abs=1e-9)
    assert distance == answer.candidates[0].latch_edge_least
    assert all(apart(math.pi * step / 400) >= distance - 1e-9 for step in range(401))


def test_a_stop_at_an_angle_ends_the_swing():
    """Held at 105 a leaf never comes to the column that it would meet farther on."""
    column = {"kind": "column", "start": 20, "diameter": 12, "offset": 6}
    free, held = events_of(obstructions=[column]), events_of(obstructions=[column], use={"stop_angle": 105})
    assert free["first contact: leaf on the column"].angle > 105
    assert held["door stop angle"].angle == 105
    assert max(event.angle for event in held.values()) == 105
    late = events_of(obstructions=[column], use={"stop_angle": 170})
    assert "first contact: leaf on the column" in late
    assert "door stop angle" not in late  # it is never reached


@pytest.mark.parametrize(
    ("stop", "angle", "by"), [(None, None, ""), (None, 105, "angle"), (28, None, "tip"), (28, 105, "angle")]
)
def test_what_holds_a_leaf(stop, angle, by):
    place = None if stop is None else {"kind": "floor stop", "projection": 3, "from_frame": stop}
    answer = study(plain_opening(door_stop=place, use={"stop_angle": angle}))
    assert held_by(answer.candidates[0]) == by
