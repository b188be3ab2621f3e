"""Random jobs: what is ordered of each product is what the openings take, counted another way."""

from collections import Counter
from functools import cache

from hypothesis import given
from hypothesis import strategies as st

from configurator.model import Job, Opening
from configurator.order.lines import Spare
from configurator.order.revisions import changes_since, freeze, with_revision
from configurator.order.studied import study_or_fault
from configurator.order.take_off import take_off
from configurator.order.tally import for_opening, tally
from configurator.study import study
from tests.order.cases import data
from tests.sweeps import examples

SAME_PRODUCT = (
    {},
    {"use": {"wanted_angle": 90, "fire_rated": True}},
    {"hinge": {"screws": {"machine": 12, "wood": 12}}},
    {"hinge": {"screws": {"wood": 25}}},
)
"""An opening in four ways that are one product: a label and the screws make no other."""
KINDS = (
    *SAME_PRODUCT,
    {"hinge": {"width": 5}},
    {"hinge": {"corner": "1/4 radius", "electric": 2}},
    {"leaves": "pair", "size": {"width": 72, "height": 84}},
    {"leaves": "dutch"},
    {"hinge": {"mounting": "swing clear"}},
    {"hinge": {"count": 2}},
    {"hinge": {"count": 2}, "order_despite": ["too few hinges"]},
    {"hinge": {"height": 11}},
    {"hung_on": "pivots"},
    {"size": {"width": 36, "height": 5}, "door": {"undercut": 12}},
)
"""Openings of every sort: plain, of two leaves, held, accepted, not to be had, hung otherwise, refused."""
QUANTITIES = (1, 2, 3, 7, 40)
JOBS = st.lists(st.tuples(st.sampled_from(range(len(KINDS))), st.sampled_from(QUANTITIES)), max_size=12)
SPARES = st.builds(Spare, percent=st.integers(0, 12), each=st.integers(0, 3))


@cache
def known(kind, quantity):
    """The tally of so many openings of a kind, worked out once."""
    return tally(study_or_fault(Opening.model_validate(data("1", **KINDS[kind], quantity=quantity))))


def made(chosen):
    """A job of such openings, and their tallies."""
    named = (known(*each).opening.model_copy(update={"mark": f"M{n}"}) for n, each in enumerate(chosen))
    openings = tuple(named)
    tallies = [for_opening(known(*each), one) for each, one in zip(chosen, openings, strict=True)]
    return Job.model_validate({"openings": openings}), tallies


def by_another_path(job):
    """Hinges by size, metal and ends, from the study of each opening's leaves; nothing of what is held."""
    found: Counter = Counter()
    for opening in job.openings:
        try:
            answer = study(opening)
        except ValueError:
            continue
        errors = {one.code for one in answer.findings if one.severity == "error"}
        if errors - set(opening.order_despite):
            continue
        for leaf in answer.specification.leaves:
            if leaf.can_be_had:
                parts = {key: part.value for key, part in leaf.parts.items()}
                wires = int(leaf.electric is not None)
                key = tuple(parts[one] for one in ("height", "width", "mounting", "corner", "finish_bhma"))
                found[(*key, "butt hinge")] += (parts["count"] - wires) * opening.quantity
                found[(*key, "electric butt hinge")] += wires * opening.quantity
    return +found


@cache
def path_of(kind):
    return by_another_path(Job.model_validate({"openings": [data("1", **KINDS[kind])]}))


@examples(50)
@given(JOBS, SPARES)
def test_every_product_is_ordered_as_often_as_the_openings_take_it(chosen, spare):
    _, tallies = made(chosen)
    order = take_off(tallies, spare=spare)
    found: Counter = Counter()
    for line in order.lines:
        hinge = line.hinge
        key = (hinge.height, hinge.width, hinge.mounting, hinge.corner, hinge.finish_bhma, hinge.item)
        found[key] += line.needed
        assert line.quantity == line.needed + spare.of(line.needed)
        assert sum(line.screw_kinds.values()) == line.needed == sum(line.by_mark.values())
    wanted: Counter = Counter()
    for kind, quantity in chosen:
        for key, count in path_of(kind).items():
            wanted[key] += count * quantity
    assert found == wanted
    assert len({line.hinge for line in order.lines}) == len(order.lines)
    assert order.reconciliation.agrees


@examples(50)
@given(JOBS, SPARES)
def test_no_line_has_an_error_that_nobody_accepted(chosen, spare):
    _, tallies = made(chosen)
    order = take_off(tallies, spare=spare)
    ordered = {mark for line in order.lines for mark in line.by_mark}
    for said in order.findings:
        if said.finding.severity == "error":
            assert ordered.isdisjoint(set(said.marks) - set(said.accepted))
    left = {one.mark for one in order.not_ordered}
    assert {one.mark for one in tallies} == ordered | left


@examples(50)
@given(JOBS, SPARES, st.integers(0, 3), st.integers(0, 3))
def test_what_touches_no_product_changes_nothing_since_the_order(chosen, spare, before, after):
    """The same doors with another label or other screws: nothing is returned, and nothing ordered again."""
    swapped = [(after if kind == before else kind, quantity) for kind, quantity in chosen]
    job, tallies = made(chosen)
    first = take_off(tallies, spare=spare)
    kept = with_revision(job, freeze(job, first))
    now, later = made(swapped)
    changes = changes_since(kept.revisions[-1], now, take_off(later, spare=spare))
    assert (changes.lines, changes.openings) == ((), ())
    assert (changes.order, changes.back) == (0, 0)
