"""Every number of the comparison, worked from its formula alone, against the geometry's own answers."""

import math
import os
import random
import re
from functools import cache
from pathlib import Path
from types import SimpleNamespace

import pytest

from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.solve import solve
from configurator.model.door import AngleStop
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import study
from configurator.study.candidate import Candidate
from configurator.study.derivation.case import Case
from configurator.study.derivation.derive import KEYS, derive, derive_case, derive_difference
from configurator.study.derivation.places import LAID_OUT
from configurator.study.derivation.terms import Symbol
from configurator.units import Display
from configurator.wording.comparison import FACTS, comparisons
from tests.drawing.cases import demo, random_study
from tests.export.random_sheets import random_study as random_sheet
from tests.geometry.random_openings import random_problem
from tests.openings import RAIL, plain_opening

EVERY_FORMULA = Path(__file__).with_name("every_formula.txt")
NUMBERS = r"\d+\.\d+|\d+(?:-\d+)?/\d+|\d{2,}"
SAME = 1e-9
SAME_DEGREES = 1e-8


def case_a(**changes):
    return study(plain_opening(**changes))


def formula(work, name):
    """What a letter is said to come to, in letters."""
    step = next(one for one in work.steps if isinstance(one.left, Symbol) and one.left.name == name)
    return "".join(piece.text for piece in step.right.pieces(None))


def of(one, width, key):
    candidate = next(c for c in one.candidates if c.hinge_width == width)
    return derive(candidate, key)


# --- Worked by hand ---


@pytest.mark.parametrize(
    ("key", "name", "written", "value"),
    [
        ("pin_off_door_face", "o", "W/2 − (T − b)", 0.75),
        ("pin_off_frame_face", "y_p", "W/2 − (R − b_f)", 0.625),
        ("barrel_past_frame", "B", "y_p + d_b/2", 0.915),
        ("barrel_past_wall", "B", "y_p + d_b/2 + p", 1.415),
        ("clear_past_frame_at_180", "S", "2 o − i", 1.375),
        ("clear_width_at_90", "C", "O − s − max(s, x_p + o + T)", 32.8125),
        ("latch_edge_least", "G", "ρ_s − ρ_c", 0.043280),
    ],
)
def test_the_plain_case_by_hand(key, name, written, value):
    work = of(case_a(), 4.5, key)
    assert formula(work, name) == written
    assert work.value == pytest.approx(value, abs=5e-7)


def test_the_rail_is_met_by_the_closed_form_that_decides():
    """The rail's corner stands 2-1/2 before the opening and 1-1/4 out; the leaf's face comes to it."""
    work = of(case_a(obstructions=[RAIL]), 4, "greatest_angle_bare")
    rho, turn = math.hypot(2.5625, 0.875), math.atan2(0.875, -2.5625)
    by_hand = math.degrees(turn - math.pi / 2 + math.acos(-0.5 / rho))
    assert work.value == pytest.approx(by_hand, abs=SAME_DEGREES) == pytest.approx(171.788, abs=5e-4)
    assert formula(work, "x_s") == "−F − l"
    assert formula(work, "y_s") == "c − p"
    assert formula(work, "theta") == "φ_s − α + arccos((q − n·pin)/ρ_s)"
    assert work.remark == "The leaf meets the chair rail."
    assert work.angle == pytest.approx(171.788, abs=5e-4)


def test_a_binding_edge_is_worked_as_the_contact_that_it_is():
    work = of(case_a(compare=[7]), 7, "latch_edge_least")
    assert work.value == 0.0
    assert "binds" in work.remark
    (stated,) = (step for step in work.steps if not isinstance(step.left, Symbol))
    assert stated.left.value == pytest.approx(stated.right.value, abs=SAME)
    assert work.angle == pytest.approx(2.3842, abs=5e-5)


@pytest.mark.parametrize(
    ("mounting", "off_frame", "across"),
    [
        ("half mortise", "d_b/2", "g_h − a/2"),
        ("half surface", "o − i", "a/2"),
        ("full surface", "max(d_b/2, d_b/2 − i)", "g_h/2"),
        ("swing clear", "d_b/2", "−(o + T)"),
    ],
)
def test_every_mounting_has_its_own_pin(mounting, off_frame, across):
    one = case_a(hinge={"mounting": mounting}, compare=[4])
    assert formula(of(one, 4, "pin_off_frame_face"), "y_p") == off_frame
    assert formula(of(one, 4, "clear_width_at_90"), "x_p") == across


def test_a_number_that_has_no_value_says_why():
    work = of(case_a(use={"stop_angle": 80}), 4.5, "clear_width_at_90")
    assert work.value is None
    assert not work.steps
    assert "does not come to 90°" in work.remark


def test_a_stop_holds_the_door_before_anything_is_met():
    work = of(case_a(use={"stop_angle": 95}), 4.5, "rests_at")
    assert work.value == 95.0
    assert formula(work, "theta") == "min(θ_stop, θ_most)"


def test_a_difference_is_the_last_answer_less_the_first():
    one = case_a()
    work = derive_difference(one.candidates[0], one.candidates[1], "clear_width_at_90")
    assert work.value == pytest.approx(-0.25)
    assert formula(work, "delta") == "A_2 − A_1"
    held = case_a(use={"stop_angle": 80})
    assert derive_difference(*held.candidates, "clear_width_at_90").value is None


def test_a_number_that_is_not_one_of_them_is_refused():
    one = case_a()
    with pytest.raises(KeyError):
        derive(one.candidates[0], "price")


def test_an_opening_with_nothing_in_the_way_is_worked_by_what_passes_nearest():
    """Opened flat the leaf's face stands 2 y_p + i off the frame face; the rail stands c - p off it."""
    work = of(case_a(obstructions=[RAIL]), 4.5, "greatest_angle_bare")
    assert work.value == 180.0
    assert formula(work, "theta") == "180°"
    assert formula(work, "G") == "2 y_p − y_c − (c − p)"
    gap = next(step for step in work.steps if step.left.name == "G")
    assert gap.right.value == pytest.approx(2 * 0.625 + 0.125 - (1.75 - 0.5))
    assert work.remark.endswith("The leaf passes nearest the chair rail.")


# --- All of them ---


def shown_numbers(one):
    """Every number that the comparison shows: the candidate it is of, its name, what the results say."""
    for table in comparisons(one, Display()):
        for candidate in (c for c in one.candidates if c.leaf == table.leaf):
            for row in table.rows:
                yield candidate, row.key, getattr(candidate, row.key)


def assert_worked(work, wanted):
    if wanted is None:
        assert work.value is None
        assert work.remark
        return
    last = work.steps[-1]
    assert work.value == last.right.value == pytest.approx(wanted, abs=SAME_DEGREES, rel=0)
    if work.unit == "length":
        assert work.value == pytest.approx(wanted, abs=SAME, rel=0)
    for step in work.steps:
        assert step.left.value == pytest.approx(step.right.value, abs=1e-7)
    defined = {step.left.name for step in work.steps if isinstance(step.left, Symbol)}
    used = {letter.name for step in work.steps for letter in step.right.letters()}
    assert used <= defined | {letter.name for letter in work.given}
    for letter in work.letters():
        assert work.meanings[letter.name]
        assert LAID_OUT not in work.meanings[letter.name]


def test_every_row_of_the_comparison_has_its_work():
    unworked = sorted({fact.key for fact in FACTS} - set(KEYS))
    assert unworked == [], "work these out in study/derivation/derive.py"


@pytest.mark.parametrize("file", ["kestrel_point.json", "pairs_and_dutch.json"])
def test_every_number_the_comparison_shows_of_the_demo_jobs_has_its_work(file):
    job = load(resource_path("demo_openings", file))
    walked = set()
    for opening in job.openings:
        one = study(opening, job.job)
        for candidate, key, wanted in shown_numbers(one):
            assert_worked(derive(candidate, key), wanted)
            walked.add(key)
    assert walked <= set(KEYS)
    assert len(walked) >= 12


@pytest.mark.parametrize("seed", range(40))
def test_every_number_of_random_openings_has_its_work(seed):
    one = random_study(seed)
    for candidate, key, wanted in shown_numbers(one):
        assert_worked(derive(candidate, key), wanted)


@pytest.mark.parametrize("seed", range(24))
def test_every_number_of_pairs_dutch_doors_and_door_stops_has_its_work(seed):
    one = random_sheet(seed)
    for candidate, key, wanted in shown_numbers(one):
        assert_worked(derive(candidate, key), wanted)


def of_problem(problem, stop):
    """A leaf of the geometry's own random openings: every mounting, pairs, round things, deep reveals."""
    found = solve(problem.hanging, problem.leaf, problem.hardware, problem.obstructions, problem.other, stop)
    held = None if stop is None else AngleStop(math.degrees(stop))
    opening = SimpleNamespace(
        angle_stop=lambda _: held, stop_angle=lambda _: None if held is None else held.angle
    )
    hung = SimpleNamespace(
        obstructions=problem.obstructions,
        hardware=problem.hardware,
        leaf=problem.leaf,
        name="single",
        filled=SimpleNamespace(opening=opening),
    )
    return Candidate(hung, found, None, others=None)


@cache
def arrangement(seed):
    """What every number of a random arrangement is worked as, with what the geometry says it is."""
    chance = random.Random(seed)
    problem = random_problem(chance)
    stop = chance.choice([None, None, 95.0])
    answers = of_problem(problem, None if stop is None else math.radians(stop))
    latch = problem.other is None or problem.other.closed
    # The comparison leaves it out where there is nothing there to pass.
    keys = [key for key in KEYS if latch or key != "latch_edge_least"]
    return {key: (derive_case(Case(answers), key), getattr(answers, key)) for key in keys}


@pytest.mark.parametrize("start", range(0, 400, 100))
def test_every_number_of_every_arrangement_has_its_work(start):
    for seed in range(start, start + 100):
        for work, wanted in arrangement(seed).values():
            assert_worked(work, wanted)


def in_letters(work):
    """Return the formulas of a working, in letters, and what else is said in it but numbers."""
    steps = []
    for one in work.steps:
        left = one.left.name if isinstance(one.left, Symbol) else "?"
        steps.append(f"{left} = {''.join(piece.text for piece in one.right.pieces(None))}")
    return re.sub(NUMBERS, "#", " | ".join([*steps, work.remark])).strip(" |")


def test_every_formula_that_a_number_is_worked_by():
    """`every_formula.txt` has each once; run `REWRITE=1 pytest -n 0` on this file and read what changes."""
    found = {
        f"{key}: {in_letters(work)}" for seed in range(400) for key, (work, _) in arrangement(seed).items()
    }
    if "REWRITE" in os.environ:
        EVERY_FORMULA.write_text("".join(f"{line}\n" for line in sorted(found)), "utf-8")
    assert sorted(found) == EVERY_FORMULA.read_text("utf-8").splitlines()


def test_what_passes_nearest_is_the_least_gap_of_the_geometry():
    told = 0
    for seed in range(150):
        problem = random_problem(random.Random(seed))
        answers = of_problem(problem, None)
        for key, found in (("greatest_angle_bare", "bare"), ("greatest_angle", "with_hardware")):
            work = derive_case(Case(answers), key)
            gap = getattr(least_gaps(answers.solution), found)
            if "Nothing is met" in work.remark and gap is not None and gap.distance > 0.0:
                (step,) = (one for one in work.steps if one.left.name == "G")
                assert step.right.value == pytest.approx(gap.distance, abs=SAME)
                told += 1
    assert told > 20


def test_what_a_letter_stands_for_lies_in_the_plan():
    one = demo("112A")
    for candidate, key, _ in shown_numbers(one):
        work = derive(candidate, key)
        marked = [work.marks[letter.name] for letter in work.letters() if letter.name in work.marks]
        assert marked
        for mark in marked:
            assert all(math.dist(*line) > 0 or line[0][1] == 0 for line in mark.lines)
            # A wall's face runs on without end, but it begins in the picture.
            assert all(min(math.hypot(*point) for point in line) < 60 for line in mark.lines)
