"""The rows of the hinge table, by hand: a head at 84, hinges 4-1/2 high, the door from 3/4 to 83-7/8."""

from configurator.drawing.pages.elevation_facts import hinge_table, leaves_shown, unlike
from configurator.model import JobFacts
from configurator.study.run import study
from configurator.units import Display
from tests.rules.hung import opening


def rows(**changes):
    leaves = leaves_shown(study(opening(**changes), JobFacts()))
    return hinge_table(leaves, 84.0, Display()).rows


def test_every_hinge_is_counted_from_four_edges():
    assert rows() == (
        ("1", "5 in", "7-1/4 in", "76-3/4 in", "74-1/2 in", "4-7/8 in", "7-1/8 in", "76 in", "73-3/4 in"),
        ("2", "37-1/4 in", "39-1/2 in", "44-1/2 in", "42-1/4 in", "37-1/8 in", "39-3/8 in", "43-3/4 in",
         "41-1/2 in"),
        ("3", "69-1/2 in", "71-3/4 in", "12-1/4 in", "10 in", "69-3/8 in", "71-5/8 in", "11-1/2 in",
         "9-1/4 in"),
    )  # fmt: skip


def test_leaves_alike_share_rows_and_others_do_not():
    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}}
    assert [row[0] for row in rows(**pair)] == [f"active and inactive {n}" for n in (1, 2, 3)]
    unequal = [row[0] for row in rows(**pair, active_width=50)]
    assert unequal == [f"{leaf} {n}" for leaf in ("active", "inactive") for n in (1, 2, 3)]
    wired = [row[0] for row in rows(**pair, hinge={"electric": 2})]
    assert "active 2, electric" in wired
    assert "inactive 2" in wired


def test_a_dutch_doors_leaves_are_rows_of_their_own():
    assert [row[0] for row in rows(leaves="dutch")] == ["upper 1", "upper 2", "lower 1", "lower 2"]


def test_without_hinges_there_are_no_rows():
    leaves = leaves_shown(study(opening(hung_on="pivots"), JobFacts()))
    assert unlike(leaves) == ()
    assert hinge_table(leaves, 84.0, Display()).rows == ()
