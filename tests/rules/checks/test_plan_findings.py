"""Boundaries of what the plan says of one leaf on one hinge width."""

import re

import pytest

from configurator.rules.checks.plan_findings import plan_findings
from configurator.rules.filling.usual import fill
from configurator.rules.hinge.width import NO_WIDTH
from configurator.units import Display
from tests.rules.given import MUST, Given, Met, Told
from tests.rules.hung import codes, found, opening, specified

STEP = 1 / 64


def said(**changes):
    return [one.code for one in plan_findings(Given(**changes))]


@pytest.mark.parametrize(
    ("clear", "margin", "expected"),
    [
        (32 - STEP, 0, ["too narrow to pass"]),
        (32, 0, []),
        (32 + STEP, 0, []),
        (32 - STEP, 0.5, ["too narrow to pass"]),
        (32, 0.5, ["margin not kept"]),
        (32.5 - STEP, 0.5, ["margin not kept"]),
        (32.5, 0.5, []),
        (32.5 + STEP, 0.5, []),
    ],
)
def test_clear_width_and_the_users_margin(clear, margin, expected):
    """2010 ADA Standards 404.2.3 for the 32 in; the margin is the user's own."""
    asked = fill(opening(use={"clear_width_margin": margin}))
    assert said(filled=asked, clear_width_at_90=clear) == expected
    elsewhere = fill(opening(use={"clear_width_margin": margin, "accessible": False}))
    assert said(filled=elsewhere, clear_width_at_90=clear) == []


def test_a_width_a_hair_short_of_the_margin_does_not_read_as_kept():
    asked = fill(opening(use={"clear_width_margin": 0.5}))
    (one,) = plan_findings(Given(filled=asked, clear_width_at_90=32.4999))
    assert "width is 32-15/32 in" in one.message
    assert "width is 32-31/64 in" in one.said(Display(64))


@pytest.mark.parametrize(
    ("gap", "words"),
    [
        (0.004, "closes against by less than 1/64 in"),
        (1 / 64, "by 1/64 in"),
        (1 / 32 - 1e-6, "by 1/64 in"),
        (1 / 32, None),
        (1 / 32 + STEP, None),
    ],
)
def test_a_lock_edge_that_hardly_passes(gap, words):
    """Half of the usual fitting tolerance of 1/16, derived."""
    found = plan_findings(Given(latch_edge_least=gap))
    assert [one.code for one in found] == ([] if words is None else ["tight at the lock side"])
    assert all(words in one.said(Display(64)) for one in found)


def test_a_lock_edge_that_binds_is_not_also_tight():
    binding = said(latch_edge_least=0.0, greatest_angle_bare=4.0, stopped_by_bare=Met("latch jamb"))
    assert binding == ["binds at the lock side"]


def test_the_margin_decides_the_width_and_is_said_once():
    """4 leaves 33-1/16 and 4-1/2 leaves 32-13/16: a margin of 1 keeps the wide one out."""
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    free = specified(opening(obstructions=[rail]))
    held = specified(opening(obstructions=[rail], use={"clear_width_margin": 1}))
    assert (free.as_data()["width"], held.as_data()["width"]) == (4.5, 4)
    assert "margin not kept" not in codes(free)
    by_hand = specified(opening(use={"clear_width_margin": 1}, hinge={"width": 4.5}))
    assert [one.code for one in by_hand.findings].count("margin not kept") == 1


@pytest.mark.parametrize(
    ("mounting", "free", "codes"),
    [
        ("full mortise", 1 / 32, []),
        ("full mortise", 1 / 32 - STEP, ["barrel close"]),
        ("full mortise", 0.0, ["barrel close"]),
        ("full mortise", -STEP, ["barrel overlaps"]),
        ("half mortise", 0.0, ["template decides"]),
        ("half surface", 0.0, ["template decides"]),
        ("full surface", 0.0, ["template decides"]),
        ("swing clear", 0.0, []),
        ("swing clear", -STEP, ["barrel overlaps"]),
        ("half mortise", -STEP, ["template decides"]),
    ],
)
def test_a_barrel_rests_against_the_face_its_leaf_lies_on(mounting, free, codes):
    assert said(mounting=mounting, barrel_free_by=free) == codes


def test_a_width_no_such_mounting_takes_is_refused():
    """Half mortise: b = T + d/2 + i - W/2 = 1-3/4 + 0.29 + 1/8 - 4 for the 8 in hinge: 1.835 in out."""
    given = {"hinge": {"height": 5, "width": 8, "mounting": "half mortise"}}
    spec = specified(opening(**given))
    (one,) = [one for one in spec.findings if one.code == "refused"]
    assert one.severity == "error"
    assert "8 in wide is too wide for this half mortise mounting" in one.message
    assert "is too wide to be mounted so. Take 5 x 4" in found(spec, "width by hand").message
    assert "refused" not in codes(specified(opening(hinge={"mounting": "half mortise", "width": 4})))
    assert specified(opening(hinge={"mounting": "half mortise"})).as_data()["width"] == 4


def test_no_width_of_a_height_goes_on_a_thin_door():
    """A thin door leaves no room for half of even the narrowest: all are refused, and that is said."""
    thin = opening(door={"thickness": 1}, hinge={"height": 4.5, "mounting": "half mortise"})
    message = found(specified(thin), "no width does everything").message
    assert "4-1/2 x 4 is too wide to be mounted so" in message
    assert "What would do it: take full mortise hinges 4-1/2 x 4: the leaf then opens to 180°" in message


SHORT = {"greatest_angle_bare": 170.0, "greatest_angle": 170.0, "stopped_by_bare": Met("chair rail")}
OVERLAPS, BINDS = {"barrel_free_by": -0.1}, {"greatest_angle_bare": 2.0, "stopped_by_bare": Met("latch jamb")}


def first_said(done, **changes):
    """Return the gravest sentence of a 4 in hinge; the others do all, or none does."""
    others = (4,) if done else (4, 4.5, 5, 6, 7, 8)
    return plan_findings(Told(MUST, dict.fromkeys(others, changes))("single", 4))[0].message


@pytest.mark.parametrize("changes", [SHORT, OVERLAPS, BINDS, {"clear_width_at_90": 31.0}])
def test_one_width_is_advised_or_none(changes):
    """Never a wider or a narrower one: the one that does all; where none does, the opening has the mends."""
    done, none = first_said(True, **changes), first_said(False, **changes)
    assert "Take 4-1/2 x 4-1/2" in done
    assert NO_WIDTH not in done
    assert NO_WIDTH in none
    assert "Take" not in none
    assert not re.search("wider|narrower|evel|widen", done + none)


def test_of_what_the_barrel_overlaps():
    assert "overlaps what stands beside it by" in first_said(True, **OVERLAPS, barrel_in_trim=True)
    assert "overlaps the door or the frame by 1/8 in. Take 4-1/2 x 4-1/2." in first_said(True, **OVERLAPS)


@pytest.mark.parametrize(("accessible", "severity"), [(True, "warning"), (False, "note")])
@pytest.mark.parametrize("mounting", ["half mortise", "half surface", "full surface"])
def test_a_template_decides_and_nothing_else_is_advised(mounting, accessible, severity):
    """Its pin is where its template has it: an overlap of a sketch is no fault of lock edge or frame."""
    filled = fill(opening(use={"accessible": accessible}))
    given = {"filled": filled, "mounting": mounting}
    (fits,) = plan_findings(Given(**given, **SHORT))
    assert (fits.code, fits.severity) == ("template decides", severity)
    assert "opens to 170°: no more than a guide. Ask for the template" in fits.message
    (over,) = plan_findings(Given(**given, **BINDS, barrel_free_by=-0.125))
    assert over.severity == "warning"
    assert "would stand 1/8 in inside the door or the frame, so no angle and no clear width" in over.message
    assert not re.search("evel|widen|wider|narrower", fits.message + over.message)


@pytest.mark.parametrize(("angle", "severity"), [(0.0, "error"), (0.1, "note"), (179.9, "note")])
def test_hardware_that_is_in_the_way_of_the_closed_door_is_an_error(angle, severity):
    lever = Met("latch jamb", part="lever")
    (one,) = plan_findings(Given(greatest_angle=angle, stopped_by=lever))
    assert (one.code, one.severity) == ("hardware meets first", severity)
    assert ("with the door closed: the door cannot open" in one.message) == (angle == 0.0)
