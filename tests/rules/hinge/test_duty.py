"""Door weight, reactions, weight grade, bearing, type, fire, pin, screws."""

import pytest

from configurator.rules.filling.door_weight import (
    DoorWeight,
    Lite,
    Made,
    door_weight,
    lead_pounds,
    sheet_weight,
)
from configurator.rules.filling.materials import fastening_of
from configurator.rules.filling.usual import fill
from configurator.rules.finding import Source
from configurator.rules.hinge.fastening import fastening_findings, screws
from configurator.rules.hinge.fire import FireHinge, fire_findings, fire_row
from configurator.rules.hinge.pin import Lock, hinge_pin, lock_findings, lock_of, pin_findings
from configurator.rules.hinge.weight import (
    Duty,
    given_weight_findings,
    hinge_bearing,
    hinge_type,
    hinge_weight,
    reactions,
    traffic_help,
)
from tests.rules.hung import opening

STEP = 1 / 64


@pytest.mark.parametrize(
    ("construction", "thickness", "low", "high"),
    [
        # two skins by the Manufacturers' Standard Gauge are the least: 3, 4, 5, 6.25 lb/ft2
        ("hollow metal, 20 gage", 1.75, 60, 100),
        ("hollow metal, 18 gage", 1.75, 80, 120),
        ("hollow metal, 16 gage", 1.75, 100, 140),
        ("hollow metal, 14 gage", 1.75, 125, 170),
        ("wood, solid core", 1.75, 81.6, 93.4),
        ("wood, solid core", 3.5, 163.2, 186.8),
        ("wood, hollow core", 1.375, 30, 40),
        ("wood, composite core", 1.75, 102, 122),  # 35 to 42 lb/ft3, 1-3/4 thick
    ],
)
def test_door_weight_of_twenty_square_feet(construction, thickness, low, high):
    weight = door_weight(Made(construction, thickness), 36, 80)
    assert (weight.low, weight.high) == (pytest.approx(low), pytest.approx(high))


@pytest.mark.parametrize(
    ("construction", "pounds"),
    [
        # two skins by the Manufacturers' Standard Gauge: 3, 4, 5 and 6.25 lb/ft2 on 20 square feet
        ("hollow metal, 20 gage", 60),
        ("hollow metal, 18 gage", 80),
        ("hollow metal, 16 gage", 100),
        ("hollow metal, 14 gage", 125),
        ("aluminum and glass", 65),  # 1/4 in glass at 13 lb/ft2 per inch, derived
    ],
)
def test_sheets_alone_are_the_least_a_door_weighs(construction, pounds):
    assert sheet_weight(Made(construction, 1.75), 36, 80).pounds == pytest.approx(pounds)
    assert door_weight(Made(construction, 1.75), 36, 80).low == pytest.approx(pounds)


@pytest.mark.parametrize("construction", ["wood, solid core", "lead-lined", None])
def test_a_door_without_such_sheets_has_no_such_check(construction):
    assert sheet_weight(Made(construction, 1.75), 36, 80) is None
    assert given_weight_findings(1, None) == ()


def test_of_the_sheets_the_glass_is_cut_out_and_glass_of_unknown_size_leaves_no_check():
    # 20 square feet less 5, two skins at 2 lb a square foot each
    assert sheet_weight(Made("hollow metal, 18 gage", 1.75, lite=Lite(720, None)), 36, 80).pounds == 60
    assert sheet_weight(Made("hollow metal, 18 gage", 1.75, lite=Lite(None, 0.25)), 36, 80) is None


@pytest.mark.parametrize(
    ("lite", "low", "high", "without"),
    [
        # 20 square feet of 20 gage at 3 to 5 lb; glass at 13 lb a square foot and inch
        (None, 60, 100, None),
        (Lite(720, 0.25), 15 * 3 + 5 * 3.25, 15 * 5 + 5 * 3.25, None),
        (Lite(720, None), 15 * 3 + 5 * 3.25, 15 * 5 + 5 * 6.5, None),
        (Lite(None, None), 60, 130, 100),
        (Lite(None, 0.125), 32.5, 100, 100),
        (Lite(None, 1), 60, 260, 100),
        (Lite(9999, 1), 260, 260, None),  # more than the leaf is the leaf
    ],
)
def test_glass_takes_the_place_of_the_door(lite, low, high, without):
    weight = door_weight(Made("hollow metal, 20 gage", 1.75, lite=lite), 36, 80)
    assert (weight.low, weight.high) == (pytest.approx(low), pytest.approx(high))
    assert weight.without_glass == without


def test_what_a_leaf_carries_comes_on_top_but_not_on_a_weight_given():
    made = Made("hollow metal, 20 gage", 1.75, carried=25)
    assert door_weight(made, 36, 80).high == 125
    assert door_weight(made, 36, 80, 110).high == 110


@pytest.mark.parametrize(("given", "light"), [(None, False), (79, True), (80, False), (81, False)])
def test_a_weight_given_is_checked_against_the_skins(given, light):
    said = given_weight_findings(given, sheet_weight(Made("hollow metal, 18 gage", 1.75), 36, 80))
    assert [one.code for one in said] == (["lighter than its skins"] if light else [])
    assert all("2 sheets of 18 gage steel" in one.message and "80 lb" in one.message for one in said)


def test_a_given_weight_is_taken_and_lead_that_is_not_known_has_none():
    assert door_weight(Made("lead-lined", 1.75), 36, 84) is None
    assert door_weight(Made("lead-lined", 1.75), 36, 84, 250).high == 250
    assert door_weight(Made(None, 1.75), 36, 84, 150).high == 150
    assert not door_weight(Made(None, 1.75), 36, 84, 150).guessed


def test_of_a_door_of_nobody_knows_what_the_heaviest_counts():
    """21 square feet: hollow core at 1.5 lb by 1-3/4 over 1-3/8, to 14 gage at 8.5 lb."""
    weight = door_weight(Made(None, 1.75), 36, 84)
    assert (weight.low, weight.high) == (pytest.approx(21 * 1.5 * 1.75 / 1.375), pytest.approx(178.5))
    assert weight.guessed


@pytest.mark.parametrize(
    ("lead", "low", "high"),
    [
        # 20 square feet of a solid core door, 81.6 to 93.4 lb, and 0.41 lb of lead a cubic inch
        (1 / 32, 118.5, 130.3),
        (1 / 16, 155.4, 167.2),
        (1 / 8, 229.2, 241.0),
    ],
)
def test_lead_adds_to_a_wood_door(lead, low, high):
    weight = door_weight(Made("lead-lined", 1.75, lead), 36, 80)
    assert (weight.low, weight.high) == (pytest.approx(low), pytest.approx(high))


def test_a_square_foot_of_lead_a_sixteenth_thick():
    assert lead_pounds(1 / 16, 12, 12) == pytest.approx(3.69)


@pytest.mark.parametrize(
    ("weight", "width", "distance", "hinges", "pull", "share"),
    [
        # a solved physics textbook problem: 27 kg, 0.91 m wide, hinges 1.50 m apart, g 9.8: 80 N
        (27 * 9.8, 0.91, 1.5, 2, 80.26, 132.3),
        (250, 1.0, 1.5, 2, 83.33, 125),  # problems in print, the answers derived
        (13 * 9.81, 1.30, 1.5, 2, 55.27, 63.77),
        (260, 2.4, 1.6, 2, 195, 130),
        (150, 36, 64.5, 3, 41.86, 50),  # derived
        (250, 48, 76, 4, 78.95, 62.5),
    ],
)
def test_reactions(weight, width, distance, hinges, pull, share):
    found = reactions(weight, width, distance, hinges)
    assert found.pull == pytest.approx(pull, abs=0.01)
    assert found.share == pytest.approx(share, abs=0.01)


def test_reactions_need_hinges_apart():
    with pytest.raises(ValueError, match="must stand apart"):
        reactions(100, 36, 0, 2)


def duty(**changes):
    usual = {
        "width": 36,
        "traffic": "average",
        "closer": False,
        "fire_rated": False,
        "row_weight": None,
        "door_weight": pounds(100),
        "fire_gage": None,
    }
    return Duty(**{**usual, **changes})


def pounds(high):
    return DoorWeight(high - 20, high, Source("given", "derived"))


@pytest.mark.parametrize(
    ("asks", "weight"),
    [
        (duty(), "standard"),
        (duty(row_weight="heavy"), "heavy"),
        (duty(traffic="high"), "heavy"),
        (duty(traffic="low"), "standard"),
        (duty(door_weight=None), "heavy"),
        (duty(door_weight=pounds(199)), "standard"),
        (duty(door_weight=pounds(200)), "heavy"),
        (duty(door_weight=pounds(201)), "heavy"),
        (duty(width=42 - STEP), "standard"),
        (duty(width=42), "standard"),
        (duty(width=42 + STEP), "heavy"),
        (duty(fire_gage=0.134), "standard"),
        (duty(fire_gage=0.180), "heavy"),
    ],
)
def test_weight(asks, weight):
    assert hinge_weight(asks, 4.5).value == weight


@pytest.mark.parametrize(
    ("asks", "weight", "bearing", "mark"),
    [
        (duty(traffic="low"), "standard", "plain", "read"),  # UFC 3-190-02FA, para. 6d
        (duty(traffic="low", closer=True), "standard", "ball", "read"),
        (duty(traffic="high"), "heavy", "ball", "read"),
        (duty(traffic="low"), "heavy", "ball", "common practice"),
        (duty(), "standard", "ball", "common practice"),
        (duty(traffic="low", fire_rated=True), "standard", "ball", "common practice"),
    ],
)
def test_bearing(asks, weight, bearing, mark):
    found = hinge_bearing(asks, weight)
    assert (found.value, found.mark) == (bearing, mark)


@pytest.mark.parametrize(
    ("metal", "bearing", "weight", "number"),
    [
        ("steel", "ball", "heavy", "A8111"),
        ("steel", "ball", "standard", "A8112"),
        ("steel", "plain", "standard", "A8133"),
        ("stainless", "ball", "heavy", "A5111"),
        ("stainless", "ball", "standard", "A5112"),
        ("brass", "plain", "standard", "A2133"),
        ("bronze", "ball", "standard", "A2112"),
        ("steel", "plain", "heavy", None),
    ],
)
def test_type(metal, bearing, weight, number):
    """From memory; the grades are BHMA's: 1 heavy, 2 and 3 standard weight."""
    found = hinge_type(metal, bearing, weight, "full mortise")
    assert found.value == number
    assert f"{weight} weight" in found.because


def test_no_type_is_known_for_other_mountings():
    assert hinge_type("steel", "ball", "heavy", "swing clear").value is None


@pytest.mark.parametrize(
    ("thickness", "width", "height", "gage"),
    [
        (1.375, 36, 84, 0.123),
        (1.375, 36 + STEP, 84, None),
        (1.375 + STEP, 36, 84, 0.134),
        (1.75, 48, 96 - STEP, 0.134),
        (1.75, 48, 96, 0.134),
        (1.75, 48, 96 + STEP, 0.180),
        (1.75, 48, 120, 0.180),
        (1.75, 48, 120 + STEP, None),
        (1.75, 48 + STEP, 84, None),
        (1.75 + STEP, 36, 84, 0.134),
        (2.25, 48, 96, 0.134),
        (3, 48, 120, 0.180),
        (1.75, 36, 60, 0.130),
        (1.75, 36 + STEP, 60, 0.134),
        (1.75, 36, 60 + STEP, 0.134),
        (1.75, 24, 36, 0.092),
        (1.75, 24 + STEP, 36, 0.130),
    ],
)
def test_fire_table(thickness, width, height, gage):
    """An unattributed hardware note on NFPA 80, as quoted in a secondary text; the rest from memory."""
    row = fire_row(thickness, width, height)
    assert (None if row is None else row.leaf_thickness) == gage


def fire(**changes):
    usual = {
        "thickness": 1.75,
        "width": 36,
        "leaf_height": 84,
        "hinge_height": 4.5,
        "leaf_thickness": 0.134,
        "bearing": "ball",
    }
    return [said.code for said in fire_findings(FireHinge(**{**usual, **changes}))]


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"bearing": "plain"}, "fire bearing"),
        ({"hinge_height": 4}, "fire height"),
        ({"leaf_thickness": 0.123}, "fire gage"),
        ({"leaf_height": 130}, "fire size"),
        ({"leaf_height": 60, "hinge_height": 4, "leaf_thickness": 0.13}, "fire row from memory"),
        ({"leaf_height": 60, "leaf_thickness": 0.13}, "fire row from memory"),
    ],
)
def test_fire_findings(changes, code):
    assert fire() == ["fire listing"]
    assert fire(**changes) == [code, "fire listing"]


@pytest.mark.parametrize(
    ("hand", "lock", "pin"),
    [
        ("LH", Lock(True), "removable"),
        ("RH", Lock(True), "removable"),
        ("LHR", Lock(True), "non-removable"),
        ("RHR", Lock(True), "non-removable"),
        ("LHR", Lock(False), "removable"),
        (None, Lock(True), "non-removable"),
        (None, Lock(False), "removable"),
        ("LH", Lock(False, unknown=True), "removable"),
        ("LHR", Lock(True, unknown=True), "non-removable"),
        (None, Lock(True, unknown=True), "non-removable"),
        ("LH", Lock(True, both_sides=True), "non-removable"),
        (None, Lock(True, both_sides=True), "non-removable"),
    ],
)
def test_pin(hand, lock, pin):
    assert hinge_pin(hand, lock).value == pin


@pytest.mark.parametrize(
    ("hand", "lock", "pin", "stud", "expected"),
    [
        ("RHR", Lock(True), "removable", False, ["pin exposed"]),
        ("RHR", Lock(True), "removable", True, []),
        ("RHR", Lock(True), "non-removable", False, []),
        ("RH", Lock(True), "removable", False, []),
        ("RH", Lock(True, both_sides=True), "removable", False, ["pin exposed"]),
        ("RH", Lock(True, both_sides=True), "removable", True, []),
        ("RH", Lock(True, both_sides=True), "non-removable", False, []),
        (None, Lock(True), "removable", False, ["hand unknown", "pin exposed"]),
        (None, Lock(False), "removable", False, ["hand unknown"]),
    ],
)
def test_pin_findings(hand, lock, pin, stud, expected):
    assert [said.code for said in pin_findings(hand, lock, pin, stud)] == expected


@pytest.mark.parametrize(
    ("use", "lock", "codes"),
    [
        ({}, Lock(False, unknown=True), []),
        ({"locked": False}, Lock(False), []),
        ({"locked": True}, Lock(True), []),
        ({"locked": True, "lock_both_sides": False}, Lock(True), []),
        ({"locked": True, "lock_both_sides": True}, Lock(True, True), ["locked from both sides"]),
        # a key on both sides is a lock, also where nobody said that there is one
        ({"lock_both_sides": True}, Lock(True, True), ["locked from both sides"]),
        (
            {"locked": False, "lock_both_sides": True},
            Lock(True, True),
            ["locked from both sides", "lock contradicted"],
        ),
    ],
)
def test_a_key_on_both_sides(use, lock, codes):
    given = opening(use={"locked": None, **use})
    assert lock_of(fill(given)) == lock
    assert [said.code for said in lock_findings(given)] == codes


def test_a_key_on_both_sides_leaves_egress_to_the_authority():
    (said,) = lock_findings(opening(use={"lock_both_sides": True}))
    assert "local codes decide" in said.message


@pytest.mark.parametrize(
    ("construction", "frame", "height", "count", "machine", "wood"),
    [
        ("hollow metal, 18 gage", "knocked-down drywall", 4.5, 3, 24, 0),
        ("wood, solid core", "welded steel, wrapped", 4.5, 3, 12, 12),
        ("wood, solid core", "wood with casing", 3.5, 3, 0, 18),
        ("aluminum and glass", "aluminum storefront", 4.5, 3, 24, 0),
        (None, "wood with casing", 3.5, 2, 0, 12),
        (None, "knocked-down drywall", 6, 4, 40, 0),
        ("hollow metal, 18 gage", "knocked-down drywall", 2.5, 2, 12, 0),
        ("hollow metal, 18 gage", "knocked-down drywall", 8, 2, 20, 0),
    ],
)
def test_screws(construction, frame, height, count, machine, wood):
    """Screws a leaf: 3 to 3-1/2, 4 to 5, 5 at 6 in high; from memory."""
    found = screws(height, count, fastening_of(construction, frame))
    assert found.value == {"machine": machine, "wood": wood}


def test_a_half_and_half_pack_names_both_screws():
    found = screws(4.5, 3, fastening_of("wood, solid core", "welded steel, wrapped"))
    assert "half #12 x 1-1/4 and half #12-24 x 1/2 flat head" in found.because


@pytest.mark.parametrize(
    ("height", "construction", "frame", "fire_rated", "expected"),
    [
        (3.5, "hollow metal, 18 gage", "knocked-down drywall", False, ["template check"]),
        (4, "hollow metal, 18 gage", "knocked-down drywall", False, ["template check"]),
        (4.5, "hollow metal, 18 gage", "knocked-down drywall", False, []),
        (5, "hollow metal, 18 gage", "knocked-down drywall", False, []),
        (6, "hollow metal, 18 gage", "knocked-down drywall", False, ["template check"]),
        (3.5, "wood, solid core", "wood with casing", False, []),
        (4.5, "wood, mineral core", "knocked-down drywall", True, ["mineral core"]),
        (4.5, "wood, mineral core", "knocked-down drywall", False, ["mineral core"]),
    ],
)
def test_fastening_findings(height, construction, frame, fire_rated, expected):
    held = fastening_of(construction, frame)
    said = fastening_findings(height, held, construction, fire_rated)
    assert [one.code for one in said] == expected
    assert all(("listing" in one.message) == fire_rated for one in said if one.code == "mineral core")


def test_the_help_lists_every_kind_with_its_mark():
    lines = traffic_help().splitlines()
    assert "high: school entrance, 1,250 openings a day" in lines
    assert "average: office corridor, 75 to 80 openings a day" in lines
    assert "low: residential interior, 10 to 25 openings a day" in lines
    assert [line for line in lines if "no source" in line] == lines[-1:]


@pytest.mark.parametrize(
    ("asks", "words"),
    [
        (duty(row_weight="heavy"), "over 1-3/4 in thick"),
        (duty(door_weight=pounds(220)), "may weigh 220 lb"),
        (duty(door_weight=None), "not known"),
        (duty(traffic="high"), "high-frequency"),
        (duty(width=43), "wide"),
    ],
)
def test_heavy_weight_says_what_asks_for_it_and_the_bearing_borrows_nothing(asks, words):
    assert words in hinge_weight(asks, 4.5).because
    assert ("high-frequency" in hinge_bearing(asks, "heavy").because) == (asks.traffic == "high")
