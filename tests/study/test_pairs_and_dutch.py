"""The demo job of pairs, Dutch doors and door stops, with every figure of its notes worked by hand.

On a 4 in hinge the pin stands x_p = 1/16 across, o = 1/2 off the door and y_p = 3/8 off the frame; the frame
is 1/2 proud. A leaf open square takes x_p + o + T = 2-5/16 from the opening.
"""

import math

import pytest

from configurator.project_file import dump, load
from configurator.resource_files import resource_path
from configurator.rules.filling.places import hinge_places
from configurator.study import study

PATH = resource_path("demo_openings", "pairs_and_dutch.json")
JOB = load(PATH)
STUDIES = {one.mark: study(one, JOB.job) for one in JOB.openings}
TAKEN = 1 / 16 + 1 / 2 + 1.75


def on(mark, width=4):
    """The candidates on one width, by leaf."""
    return {one.leaf: one for one in STUDIES[mark].candidates if one.hinge_width == width}


def codes(mark):
    return {one.code for one in STUDIES[mark].all_findings()}


def note(mark):
    return next(one.notes for one in JOB.openings if one.mark == mark)


def test_the_file_comes_back_byte_for_byte():
    assert dump(JOB) == PATH.read_bytes()


@pytest.mark.parametrize("mark", STUDIES)
def test_each_has_its_note_and_no_error(mark):
    assert len(note(mark)) > 80
    assert not [one.message for one in STUDIES[mark].all_findings() if one.severity == "error"]


def test_301a_an_equal_pair():
    leaves = on("301A")
    leaf = (72 - 2 * 0.125 - 0.125) / 2
    assert leaf == 35.8125
    # From the open active leaf to the closed edge of the inactive one; then from leaf to leaf.
    assert leaves["active"].clear_width_at_90 == pytest.approx(0.125 + leaf + 0.125 - TAKEN, abs=1e-9)
    assert leaves["active"].clear_width_at_90 == 33.75
    assert leaves["inactive"].clear_width_at_90 == pytest.approx(72 - 2 * TAKEN, abs=1e-9)
    assert "33-15/16 in" in note("302A")
    assert "33-3/4 in" in note("301A")
    assert "67-3/8 in" in note("301A")
    assert STUDIES["301A"].recommended["count"] == 6


def test_302a_an_unequal_pair():
    leaves = on("302A")
    assert leaves["active"].clear_width_at_90 == pytest.approx(36.25 - TAKEN, abs=1e-9)
    assert leaves["active"].clear_width_at_90 == 33 + 15 / 16
    assert leaves["active"].clear_width_at_90 > on("301A")["active"].clear_width_at_90
    inactive = next(one for one in STUDIES["302A"].specification.leaves if one.leaf == "inactive")
    assert inactive.parts["count"].value == 3
    assert 60 - 2 * 0.125 - 0.125 - 36 == 23.625
    assert leaves["inactive"].clear_width_at_90 == pytest.approx(60 - 2 * TAKEN, abs=1e-9)
    assert "leaves open in order" in codes("302A")
    assert "tight at the lock side" not in codes("302A")


def test_303a_panic_devices_in_the_clear_width():
    leaves = on("303A")
    assert leaves["active"].clear_width_at_90 == 33.75
    assert [one.hardware_in_clear_width for one in leaves.values()] == [3.5, 3.5]
    assert [one.greatest_angle for one in leaves.values()] == [180, 180]


def test_304a_the_shelf_of_the_lower_leaf_comes_to_the_wall():
    leaves = on("304A")
    # The shelf's corner near the hinge: 1-1/8 across and 8 - 1/8 out, so 1-1/16 and 7-1/2 from the pin; the
    # wall lies 1/2 + 3/8 behind the pin.
    rho, phi = math.hypot(1.0625, 7.5), math.atan2(7.5, 1.0625)
    angle = math.degrees(math.pi + math.asin(0.875 / rho) - phi)
    assert leaves["lower"].greatest_angle == pytest.approx(angle, abs=1e-9)
    assert angle == pytest.approx(104.6965, abs=5e-5)
    assert leaves["lower"].stopped_by.between == ("wall", None, "shelf")
    assert (leaves["lower"].greatest_angle_bare, leaves["upper"].greatest_angle) == (180, 180)
    assert "leaves open in order" not in codes("304A")
    # On 4-1/2 the pin stands 1/4 farther out: 7-1/4 from the pin, and the wall 1-1/8 behind it.
    wider = math.pi + math.asin(1.125 / math.hypot(1.0625, 7.25)) - math.atan2(7.25, 1.0625)
    assert math.degrees(wider) - angle == pytest.approx(2.5, abs=0.1)


def test_a_dutch_doors_hinges_two_a_leaf_five_from_the_split():
    spec = STUDIES["304A"].specification
    assert [one.parts["count"].value for one in spec.leaves] == [2, 2]
    assert spec.as_data()["count"] == 4
    places = {one.leaf.name: hinge_places(one.leaf, 2, 4.5, 84) for one in hinges("304A")}
    # The leaves run from 3/4 to 41-15/16 and from 42-1/16 to 83-7/8.
    assert places["lower"] == ((10, 14.5), (41.9375 - 9.5, 41.9375 - 5))
    assert places["upper"] == ((42.0625 + 5, 42.0625 + 9.5), (84 - 9.5, 84 - 5))


def hinges(mark):
    from configurator.rules.hinge.leaf_hinge import leaf_hinges

    return leaf_hinges(STUDIES[mark].filled)


def test_305a_each_half_meets_what_is_at_its_height_and_the_wider_rules_both():
    upper, lower = (on("305A", 4.5)[leaf] for leaf in ("upper", "lower"))
    assert (upper.stopped_by.kind, upper.stopped_by.index) == ("chair rail", 1)
    # The base asks 2 x 1-1/2 + (1-1/2 - 1/2 + 1/8) = 4-1/8, the rail 3 + 1-7/8 = 4-7/8 of hinge.
    assert lower.greatest_angle == 180
    assert on("305A", 5)["upper"].greatest_angle == 180
    wanted = [one.parts["width"].value for one in STUDIES["305A"].specification.leaves]
    assert wanted == [5, 5]


def test_306a_a_bumper_in_line_with_the_spindle():
    one = on("306A")["single"]
    # The spindle is 2-3/4 from the latch edge: 36 - 1/8 - 2-3/4 - 1/16 along, the lever 2 ahead of the pin.
    along = 33.0625
    reach = math.sqrt(along**2 + 2**2 - 0.125**2) - 1 / 16 - 2
    assert math.floor(reach * 16) / 16 == 31
    x = 31 + 2 + 1 / 16
    rests = 180 - math.degrees(math.atan2(0.125, x) + math.asin(2 / math.hypot(x, 0.125)))
    assert one.rests_at == pytest.approx(rests, abs=1e-9)
    assert one.door_stop.meets == "lever"
    assert one.greatest_angle - one.rests_at == pytest.approx(1.5, abs=0.1)
    assert not codes("306A") & {"open flat", "hardware meets first"}


def test_307a_a_floor_stop_under_the_lever():
    one, wider = (on("307A", width)["single"] for width in (4, 4.5))
    x, y = 30 + 2 + 1 / 16, 3 - 0.5 - 0.375
    rests = 180 - math.degrees(math.atan2(y, x) - math.asin(0.5 / math.hypot(x, y)))
    assert one.rests_at == pytest.approx(rests, abs=1e-9)
    assert one.door_stop.meets == "leaf"
    assert one.rests_at < one.greatest_angle
    assert one.rests_at < wider.rests_at < wider.greatest_angle


def test_308a_the_lower_leaf_opens_second():
    (said,) = [one for one in STUDIES["308A"].all_findings() if one.code == "leaves open in order"]
    assert "the lower leaf opens only after the upper leaf" in said.message
    assert said.numbers["reaches_over"] == 15 / 16
    assert [one.greatest_angle_bare for one in on("308A").values()] == [180, 180]
