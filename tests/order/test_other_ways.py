"""What hangs on no butts: counted on lines of its own, in trade words."""

import pytest

from configurator.model.paths import vocabulary
from configurator.order.other_ways import way_items
from configurator.order.studied import study_or_fault
from configurator.order.take_off import take_off
from configurator.order.tally import tally
from tests.openings import ON_PIVOTS, plain_opening

BUTTS = {"butt hinge", "swing clear hinge"}
"""Ways that an opening on butt hinges hangs, by its mounting."""
PIVOTS = {**ON_PIVOTS, "hand": "LH"}
CENTRE = {"hung_on": "centre-hung pivot", "axis_off_face": -0.875, "axis_from_heel": 2.75}


def lines(*openings):
    order = take_off([tally(study_or_fault(each)) for each in openings])
    return [
        (line.quantity, line.what.unit, line.what.item, line.what.hand, line.by_mark)
        for line in order.other_ways
    ]


def one(**changes):
    (line,) = take_off([tally(study_or_fault(plain_opening(**changes)))]).other_ways
    return line


def test_pivots_by_the_set_and_by_hand():
    found = lines(
        plain_opening(mark="1", **PIVOTS, quantity=2),
        plain_opening(mark="2", **PIVOTS),
        plain_opening(mark="3", **PIVOTS | {"hand": "RH"}),
    )
    item = "offset pivot, top and bottom"
    assert found == [(3, "set", item, "LH", {"1": 2, "2": 1}), (1, "set", item, "RH", {"3": 1})]


@pytest.mark.parametrize("kind", sorted(set(vocabulary()["compare.hung_on"]) - BUTTS))
def test_every_way_is_ordered_where_an_opening_hangs_on_it(kind):
    hung = (plain_opening(hung_on=word, compare=[{"hung_on": kind}]) for word in vocabulary()["hung_on"])
    items = {item.item for opening in hung for item, _ in way_items(opening)}
    assert any(item.startswith(kind) for item in items), (
        f"a {kind} is ordered for no `hung_on`: give it one in rules/filling/ways.py"
    )


def test_a_pair_takes_a_set_of_either_hand():
    found = lines(plain_opening(**PIVOTS, leaves="pair", size={"width": 72, "height": 84}))
    assert [(line[0], line[3]) for line in found] == [(1, "LH"), (1, "RH")]


@pytest.mark.parametrize(("height", "count"), [(60.875, 0), (60.9, 1), (84, 1)])
def test_a_fire_door_on_pivots_takes_an_intermediate_one_over_60(height, count):
    """Leaf: the opening less 1/8 above and 3/4 below."""
    size = {"width": 36, "height": height}
    found = lines(plain_opening(**PIVOTS, size=size, use={"fire_rated": True}))
    assert [line[2] for line in found].count("intermediate offset pivot") == count


def test_a_continuous_hinge_by_its_length():
    line = one(hung_on="continuous hinge", hand="RH", hinge={"finish_bhma": "628"})
    assert (line.quantity, line.what.length) == (1, 84 - 0.125 - 0.75)
    assert line.what.words.startswith(
        "continuous hinge, 83-1/8 in long, cut to the door, hand RH, axis 3/8 in off"
    )
    assert "ask for the drawing first" in line.what.words
    assert line.what.words.endswith("finish 628")


def test_what_is_compared_of_its_kind_is_what_it_hangs_on():
    line = one(hung_on="pivots", door={"hinge_gap": 0.1875}, compare=[4, CENTRE])
    assert line.what.item == "centre-hung pivot, top and bottom, double acting"
    assert "7/8 in inside the pull face, 2-3/4 in from the heel edge" in line.what.words
    assert "ask for the drawing" not in line.what.words


def test_double_acting_spring_hinges_are_counted_as_hinges_are():
    assert one(hung_on="spring hinges", compare=[{"hung_on": "double-acting spring hinge"}]).quantity == 3


def test_a_door_loop_is_a_line_of_its_own_and_no_hinge_is_electric():
    line = one(hinge={"transfer": "door loop", "wires": 6})
    assert (line.quantity, line.what.item, line.what.words) == (
        1,
        "door loop",
        "door loop, for 6 wires, finish to be given",
    )
    assert line.as_data()["axis_off_face"] is None
    order = take_off([tally(study_or_fault(plain_opening(hinge={"transfer": "door loop"})))])
    assert [each.hinge.electric for each in order.lines] == [False]
    assert "for wires, their number to be given" in order.other_ways[0].what.words


def test_a_hinge_is_ordered_for_the_wires_it_carries():
    """Nobody said which hinge: of three the middle one is usual."""
    study = study_or_fault(plain_opening(hinge={"wires": 8}))
    order = take_off([tally(study)])
    assert [(each.hinge.item, each.hinge.wires, each.quantity) for each in order.lines] == [
        ("butt hinge", None, 2),
        ("electric butt hinge", 8, 1),
    ]
    assert [leaf.electric for leaf in study.specification.leaves] == [2]
    (said,) = [found for found in study.findings if found.code == "electric hinge"]
    assert "carries 8 wires" in said.message
    assert "Nobody said which hinge" in said.message


def test_a_continuous_hinge_is_prepared_for_wires_and_pivots_carry_none():
    assert "for 4 wires" in one(hung_on="continuous hinge", hinge={"wires": 4}).what.words
    assert "wires" not in one(**PIVOTS, hinge={"wires": 4}).what.words
    pivots = study_or_fault(plain_opening(**PIVOTS, hinge={"wires": 4}, compare=[]))
    assert "wires on pivots" in {found.code for found in pivots.all_findings()}


@pytest.mark.parametrize(
    "changes", [{}, {"hung_on": "by others"}, {"hung_on": "spring hinges"}, {"compare": [CENTRE]}]
)
def test_what_is_not_hung_so_has_no_line(changes):
    assert take_off([tally(study_or_fault(plain_opening(**changes)))]).other_ways == ()


# --- What an error holds


def test_a_way_that_binds_is_held_as_a_hinge_is_until_it_is_ordered_all_the_same():
    binds = {**PIVOTS, "frame": {"stop_gap": 0.0625}}
    held = take_off([tally(study_or_fault(plain_opening(**binds)))])
    assert held.other_ways == ()
    assert [(one.why, one.codes) for one in held.not_ordered] == [("held", ("heel binds",))]
    assert [one.finding.code for one in held.findings if one.finding.severity == "error"] == ["heel binds"]
    released = take_off([tally(study_or_fault(plain_opening(**binds, order_despite=["heel binds"])))])
    assert [line.quantity for line in released.other_ways] == [1]
    assert [one.why for one in released.not_ordered] == ["hung otherwise"]


def test_a_loop_waits_with_the_hinges_that_an_error_holds():
    wired = {"transfer": "door loop", "wires": 4, "count": 2}
    held = take_off([tally(study_or_fault(plain_opening(hinge=wired)))])
    assert (held.other_ways, [one.why for one in held.not_ordered]) == ((), ["held"])
    assert one(hinge={"transfer": "door loop", "wires": 4}).what.item == "door loop"
