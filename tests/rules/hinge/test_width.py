"""The choice of width on plain answers, as the geometry would give them."""

from dataclasses import replace

import pytest

from configurator.rules.checks.egress import ClearWidthAsked, clear_width_findings
from configurator.rules.checks.mends import no_width_findings
from configurator.rules.checks.plan_findings import plan_findings
from configurator.rules.checks.swing_notes import swing_notes
from configurator.rules.filling.usual import fill
from configurator.rules.finding import Finding, Source
from configurator.rules.hinge.answers import Must, tried
from configurator.rules.hinge.width import NO_WIDTH, choose_width
from configurator.rules.wording import cut_back
from configurator.study import study
from configurator.tables import ObstructionKindRow, table
from configurator.units import Display
from tests.rules.given import FILLED, MUST, Met, Told
from tests.rules.hung import found, opening, specified


def answers(**by_width):
    """Return answers; keywords are widths as w4, w45, w5 and so on, the rest does all."""
    widths = {"w4": 4, "w45": 4.5, "w5": 5, "w6": 6, "w7": 7, "w8": 8, "w3": 3}
    return Told(MUST, {widths[key]: given for key, given in by_width.items()})


def not_done(must, told):
    """Return the finding where no stock width does everything."""
    (said,) = no_width_findings(FILLED, must, choose_width(must, told).least_bad, told)
    return said


RAIL = {"greatest_angle_bare": 171.788, "stopped_by_bare": Met("chair rail")}
OVERLAP = {"barrel_free_by": -0.05}
NARROW = {"clear_width_at_90": 31.5}
BINDS = {"greatest_angle_bare": 2.4, "stopped_by_bare": Met("latch jamb"), "clear_width_at_90": None}


@pytest.mark.parametrize(
    ("given", "width"),
    [
        ({}, 4),
        ({"w4": RAIL}, 4.5),
        ({"w4": OVERLAP}, 4.5),
        ({"w4": BINDS}, 4.5),
        ({"w4": NARROW}, 4.5),
        ({"w4": RAIL, "w45": RAIL}, 5),  # no common one does: the least uncommon
        ({"w4": "cannot be mounted"}, 4.5),
        ({"w4": {"greatest_angle_bare": 180 - 1e-6}}, 4.5),
        ({"w4": {"greatest_angle_bare": 180 - 1e-10}}, 4),
        ({"w4": {"clear_width_at_90": 32}}, 4),
        ({"w4": {"clear_width_at_90": 32 - 1 / 64}}, 4.5),
        ({"w4": {"barrel_free_by": 0}}, 4.5),  # free, but by nothing
        ({"w4": {"barrel_free_by": 1 / 32 - 1e-6}}, 4.5),
        ({"w4": {"barrel_free_by": 1 / 32}}, 4),
        ({"w4": {"barrel_free_by": 1 / 32 + 1e-6}}, 4),
        ({"w4": {"barrel_free_by": 0, "mounting": "swing clear"}}, 4),  # it lies on the face
    ],
)
def test_the_first_in_stock_order_that_does_all(given, width):
    choice = choose_width(MUST, answers(**given))
    assert choice.reason.value == width
    assert choice.complete


def test_a_job_that_takes_square_hinges_says_so_and_why_one_is_not():
    square = replace(MUST, square=True)
    taken = choose_width(square, answers()).reason
    assert taken.value == 4.5
    assert taken.because.startswith("square hinges unless something asks otherwise, the job's policy: ")
    other = choose_width(square, answers(w4=RAIL, w45=RAIL)).reason
    assert other.value == 5
    assert "square, as the job's policy has it, does not do here: stops at " in other.because
    no_such_stock = choose_width(replace(square, height=5.25), answers())
    assert no_such_stock.reason.value is None


def all_widths(**changes):
    return {f"w{width}": changes for width in ("4", "45", "5", "6", "7", "8")}


def short(angle):
    return {"greatest_angle_bare": angle, "stopped_by_bare": Met("chair rail")}


@pytest.mark.parametrize(
    ("given", "width"),
    [
        (all_widths(**RAIL), 4),  # none gains anything: the narrowest
        ({**all_widths(**RAIL), "w45": short(174)}, 4),  # gains less than 5 degrees
        ({**all_widths(**short(160)), "w45": short(166)}, 4.5),  # gains more
        ({**all_widths(**short(160)), "w6": short(170)}, 4),  # one longer to get gains some: no reason
        ({**all_widths(**short(60)), "w6": short(95)}, 6),  # the only one that comes square open
        ({**all_widths(**short(60)), "w6": short(70)}, 6),  # none does: the farthest, however usual
        ({**all_widths(**RAIL), "w4": {**RAIL, **OVERLAP}}, 4.5),  # the barrel comes first
        ({**all_widths(**RAIL), "w4": {**RAIL, **NARROW}}, 4.5),  # then the clear width
        ({**all_widths(**RAIL, barrel_free_by=-1)}, 4),  # nothing sound: the narrowest all the same
        ({**all_widths(**{**RAIL, **NARROW})}, 4),
    ],
)
def test_the_least_bad_by_the_stated_order(given, width):
    choice = choose_width(MUST, answers(**given))
    assert choice.reason.value == width
    assert not choice.complete
    said = not_done(MUST, answers(**given))
    assert said.code == "no width does everything"
    assert "4-1/2 " in said.message


NOTHING_MENDS = (
    "Nothing tried here mends it: not swing clear hinges, a cut, a gap or another place of the frame."
)


@pytest.mark.parametrize(
    ("given", "mend"),
    [
        (RAIL, f"{NOTHING_MENDS} Else fit a door stop before 171.7°."),
        ({**RAIL, **NARROW}, NOTHING_MENDS),
        ({**BINDS, "clear_width_at_90": 33.0}, NOTHING_MENDS),
        (OVERLAP, NOTHING_MENDS),
        ({"refusal": "Too wide.", "mounting": "half mortise"}, "Take another mounting."),
    ],
)
def test_what_to_do_where_nothing_does_all_and_nothing_mends_it(given, mend):
    assert not_done(MUST, answers(**all_widths(**given))).message.endswith(mend)


def test_no_clear_width_is_asked_of_other_doors():
    must = Must("single", 4.5, 180.0, None)
    assert choose_width(must, answers(w4=NARROW)).reason.value == 4


def test_neighbours_are_told_even_where_they_cannot_be_mounted():
    why = choose_width(MUST, answers(w4=RAIL, w5="the leaf would not reach")).reason
    assert [other.said(Display()) for other in why.alternatives] == [
        "stops at 171.7°, where the leaf meets the chair rail, clear width 33 in",
        "the leaf would not reach; uncommon in stock",
    ]


def test_a_mounting_that_no_width_can_take():
    given = dict.fromkeys(all_widths(), "the leaf is too short")
    choice = choose_width(MUST, answers(**given))
    assert choice.reason.value is None
    assert "can be mounted so: the leaf is too short." in choice.findings[0].message


def test_tried_gives_the_sentence():
    assert tried(answers(w4="too short"), "single", 4) == "too short"
    assert tried(answers(), "single", 4).hinge_width == 4


def route(margin=0.0):
    return ClearWidthAsked(32, margin, "an accessible route", Source("2010 ADA Standards 404.2.3", "read"))


@pytest.mark.parametrize(
    ("clear", "margin", "code"),
    [
        (32 - 1 / 64, 0, "too narrow to pass"),
        (32, 0, "clear width kept"),
        (32 + 1 / 64, 0, "clear width kept"),
        (32 - 1 / 64, 0.5, "too narrow to pass"),
        (32, 0.5, "margin not kept"),
        (32.5 - 1 / 64, 0.5, "margin not kept"),
        (32.5 + 1 / 64, 0.5, "clear width kept"),
        (32.5, 0.5, "clear width kept"),
        (None, 0, "no clear width"),
    ],
)
def test_clear_width_is_strict_with_the_users_margin(clear, margin, code):
    """2010 ADA Standards 404.2.3; 104.1.1: tolerances are not meant for design work."""
    answer = answers(w45={"clear_width_at_90": clear})
    (said,) = clear_width_findings("single", 36, 4.5, answer("single", 4.5), route(margin))
    assert said.code == code
    assert "Check local codes; the authority decides." in said.message


def narrow(width, **by_width):
    told = answers(**by_width)
    (said,) = clear_width_findings("single", 36, 4.5, told("single", width), route())
    return said.message


def test_the_width_that_does_all_is_named_and_no_other():
    assert "by 1/2 in: an accessible route asks for it. Take 4-1/2 x 4: it leaves 1 in. Or a wider" in narrow(
        4.5, w45=NARROW
    )
    wider = {**all_widths(**NARROW), "w5": {}}
    assert "Take 4-1/2 x 5: it leaves 1 in. Or a wider opening: 38 in wide" in narrow(4.5, **wider)


def test_a_narrower_hinge_that_cannot_be_mounted_or_stops_short_is_no_way_out():
    for other in ("too short", RAIL):
        message = narrow(4.5, **{**all_widths(**NARROW), "w4": other})
        assert f"{NO_WIDTH} Take a wider opening: 38 in wide" in message


def test_an_opening_is_widened_in_steps_of_two():
    answer = answers(**all_widths(clear_width_at_90=28.5))
    (said,) = clear_width_findings("single", 32, 4.5, answer("single", 4), route())
    assert "Take a wider opening: 36 in wide with this hinge gives 32-1/2 in." in said.message


COLUMN = {"greatest_angle_bare": 150.0, "stopped_by_bare": Met("column")}


@pytest.mark.parametrize(
    ("given", "codes"),
    [
        ({"w4": COLUMN, "w6": {**COLUMN, "greatest_angle_bare": 155 - 1e-6}}, ["wider gains nothing"]),
        ({"w4": COLUMN, "w6": {**COLUMN, "greatest_angle_bare": 155.0}}, []),
        ({"w4": COLUMN, "w6": "too wide"}, []),
        ({"w4": COLUMN, "w6": {**COLUMN, "clear_width_at_90": None}}, ["wider gains nothing"]),
        ({"w4": {**COLUMN, "greatest_angle_bare": 80.0}}, []),
        ({}, ["open flat"]),
        ({"w4": NARROW}, []),
    ],
)
def test_what_a_wider_hinge_does_not_buy(given, codes):
    must = Must("single", 4.5, 90.0, 32.0)
    said = swing_notes(fill(opening()), must, 4, answers(**given))
    assert [one.code for one in said] == codes


def test_own_findings_of_the_chosen_width_are_said_once():
    note = Finding("hardware meets first", "note", "The lever meets the wall.", "the plan", "derived")
    twice = Finding("stops short", "warning", "It stops short.", "the plan", "derived")
    said = swing_notes(fill(opening()), MUST, 4, answers(w4={"findings": (note, twice)}))
    assert [one.code for one in said] == ["hardware meets first", "open flat"]


@pytest.mark.parametrize(
    ("proud", "mark"), [(0, "common practice"), (0.5, "common practice"), (0.5 + 1 / 64, "derived")]
)
def test_open_flat_is_common_practice_up_to_half_an_inch_proud(proud, mark):
    filled = fill(opening(wall={"frame_proud": proud}))
    (said,) = swing_notes(filled, MUST, 4, answers())
    assert said.mark_of_source == mark
    assert said.numbers["off_wall"] == 0.875 + proud


def test_a_pair_too_narrow_is_mended_by_its_active_leaf():
    """The leaf has to grow, not the opening by as much: a pair shares what is added."""
    given = opening(leaves="pair", use={"accessible": True})
    said = found(specified(given), "too narrow to pass")
    assert "wider active leaf: 18 in more with this hinge gives" in said.message
    clear = said.numbers["clear_width"]
    wider = opening(leaves="pair", size={"width": 72, "height": 84}, use={"accessible": True})
    active = study(wider).candidates[0]
    # Both leaves of the doubled opening are 18 in wider, and so is the way past the active one.
    assert active.clear_width_at_90 == pytest.approx(clear + 18, abs=1e-9)


LEVER_SHUT = {
    "greatest_angle": 0.0,
    "stopped_by": Met("latch jamb", None, "lever"),
    "clear_width_at_90": None,
}


def test_hardware_in_the_way_on_every_width_is_not_the_hinges_fault():
    shut = dict.fromkeys(("w4", "w45", "w5", "w6", "w7", "w8"), LEVER_SHUT)
    said = not_done(MUST, answers(**shut))
    assert "4-1/2 x 4 opens to 180\N{DEGREE SIGN}, but its lever ends the swing at 0" in said.message
    assert said.message.endswith("Move the lever, or take one that stands out less.")


def test_a_leaf_that_the_other_one_holds_shut_is_said_so_and_named():
    held = {**BINDS, "greatest_angle_bare": 0.0, "stopped_by_bare": Met("other leaf", 0)}
    shut = dict.fromkeys(("w4", "w45", "w5", "w6", "w7", "w8"), held)
    said = not_done(Must("active", 4.5, 180.0, 32.0), answers(**shut))
    assert "4-1/2 x 4 (active leaf) is held shut by what the other leaf carries." in said.message
    assert said.message.endswith("check which leaf is to open first.")


@pytest.mark.parametrize("kind", [*(row.kind for row in table(ObstructionKindRow)), "wall", "frame", "stop"])
def test_a_thing_is_cut_back_as_its_kind_can_be_and_only_beside_a_width_that_does_all(kind):
    stopped = {"greatest_angle_bare": 171.788, "greatest_angle": 171.788, "stopped_by_bare": Met(kind)}
    done, none = Told(MUST, {4: stopped}), Told(MUST, dict.fromkeys((4, 4.5, 5, 6, 7, 8), stopped))
    short, stuck = (plan_findings(told("single", 4))[0].message for told in (done, none))
    assert ", short of the 180° wanted. Take 4-1/2 x 4-1/2, " in short
    assert f"Take 4-1/2 x 4-1/2, {cut_back(kind)}".strip() in short
    assert ("back" in short) == bool(cut_back(kind))
    assert f"{NO_WIDTH} Fit a door stop there." in stuck


def test_whether_an_unknown_thing_gives_way_is_asked():
    assert cut_back("other") == "ask whether the obstruction can be cut back"
    assert cut_back("chair rail") == "cut the chair rail back"
    assert cut_back("column") == cut_back("latch jamb") == ""
    with pytest.raises(KeyError):
        cut_back("tent")
