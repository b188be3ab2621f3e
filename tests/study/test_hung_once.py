"""A study keeps what it hung: all that is shown of it is shown of the very same leaves, hung once."""

from collections import Counter

import pytest

from configurator.drawing.plan.drawn_leaf import drawn_leaves
from configurator.drawing.plan.sheet import plan_sheet
from configurator.drawing.preparation.preparation_facts import preparations
from configurator.model import Hinge, JobFacts
from configurator.order.tally import tally
from configurator.study import run, study
from configurator.study.derivation.case import Case
from configurator.study.derivation.derive import KEYS
from configurator.study.events import moments
from configurator.study.over_the_swing import over_the_swing
from configurator.study.tolerance.analysis import tolerance_result, varied_of
from configurator.study.what_if.curve import _hung_at, what_if
from configurator.study.what_if.parameters import parameters_of
from configurator.study.widths.leaf_widths import widths_of
from configurator.units import Display
from configurator.wording.comparison import comparisons
from configurator.wording.derivation_words import Asked, shown_derivation
from tests.openings import LEVER, RAIL, plain_opening

STANDARD = Hinge(
    height=5, weight="heavy", leaf_thickness=0.19, barrel=0.75, leaf_gap=0.25, mounting="half mortise"
)
OPENINGS = {
    "single": {"obstructions": [RAIL], "hardware": [LEVER]},
    "pair": {"leaves": "pair", "size": {"width": 72, "height": 84}, "hardware": [LEVER]},
    "dutch": {"leaves": "dutch", "split_height": 42},
}


@pytest.fixture(params=OPENINGS)
def opening(request):
    return plain_opening(**OPENINGS[request.param], compare=[3.5, 4])


@pytest.fixture
def studied(opening):
    return study(opening, JobFacts(standard_hinge=STANDARD))


def test_the_jobs_standard_is_in_every_leaf_that_was_studied(studied):
    for leaf in studied.leaves:
        assert (leaf.mounting, leaf.leaf_gap) == ("half mortise", 0.25)
        assert (leaf.hinge.height.value, leaf.hinge.barrel.value) == (5, 0.75)
        for low, high in leaf.leaf.barrels:
            assert high - low == 5


def test_picture_and_derivation_have_the_very_leaves_of_the_study(studied):
    for drawn, one in zip(drawn_leaves(studied, Display()), studied.candidates, strict=True):
        hung = studied.hanger.leaf(one.leaf)
        assert drawn.candidate is one
        assert one.hung is Case(one).leaf is hung
        assert drawn.h is one.solution.hanging
        assert one.h == hung.hanging(one.hinge_width)
    for prep in preparations(studied):
        assert prep.hung.candidate is studied.hanger(prep.leaf, prep.parts["width"])
    for leaf in widths_of(studied):
        assert leaf.hung is studied.hanger.leaf(leaf.leaf)


def test_how_sure_it_is_and_what_if_are_asked_of_the_same_leaves(studied):
    for one in studied.candidates:
        varied = varied_of(studied, one.leaf, one.hinge_width)
        assert (varied.hanging, varied.leaf) == (one.h, one.hung.leaf)
        assert (varied.obstructions, varied.other) == (one.hung.obstructions, one.hung.other)
        width, *others = parameters_of(studied, one)
        hung, at = _hung_at(studied, one, width, width.holds[0])(one.hinge_width)
        assert hung is one.hung
        assert at == one.hinge_width
        for parameter in others:
            hung, at = _hung_at(studied, one, parameter, parameter.holds[0])(parameter.present)
            assert hung.hanging(at) == one.h, parameter.name
            assert hung.leaf == one.hung.leaf, parameter.name


def test_where_a_leaf_rests_is_among_the_moments_of_its_swing(studied):
    for place, one in enumerate(studied.candidates):
        angles = [moment.angle for moment in moments(studied) for event in moment.events if place in event.of]
        assert min(abs(angle - one.rests_at) for angle in angles) < 1e-9


def everything_shown(one):
    """Ask for all that the window shows of an opening, and what a job's order takes of it."""
    display = Display()
    comparisons(one, display)
    plan_sheet(one, display, 900, 600)
    moments(one)
    over_the_swing(one, 1 / 16)
    preparations(one)
    widths_of(one)
    tally(one)
    one.as_data()
    for candidate in one.candidates:
        tolerance_result(one, candidate.leaf, candidate.hinge_width, draws=100, fineness=0.1)
        for key in KEYS:
            shown_derivation(one, display, Asked(candidate.leaf, key, 0))
        for parameter in parameters_of(one, candidate):
            what_if(one, candidate, parameter, parameter.holds[0])


def test_a_leaf_is_hung_once_on_a_width_however_much_is_shown(opening, monkeypatch):
    hung = Counter()
    hang, hang_leaves, made = run.hang, run.hang_leaves, []

    def counting(leaf, width, others):
        hung[id(leaf), leaf.name, width] += 1
        return hang(leaf, width, others)

    def counting_leaves(filled, standard=None):
        made.append(filled)
        return hang_leaves(filled, standard)

    monkeypatch.setattr(run, "hang", counting)
    monkeypatch.setattr(run, "hang_leaves", counting_leaves)
    one = study(opening, JobFacts(standard_hinge=STANDARD))
    everything_shown(one)
    assert len(made) == 1
    assert {leaf for leaf, _, _ in hung} == {id(leaf) for leaf in one.leaves}
    assert set(hung.values()) == {1}
    before = dict(hung)
    everything_shown(one)
    assert hung == before
