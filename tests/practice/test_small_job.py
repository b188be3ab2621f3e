import pytest

from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from configurator.practice.course import LEVELS
from configurator.practice.small_job import ORDER_HEADS, SIZE, mark_job, small_job
from tests.sweeps import sized

SEEDS = range(sized(2, 60))


@pytest.mark.parametrize("level", LEVELS)
def test_a_small_job_has_its_slips_and_nothing_else_wrong(level):
    for seed in SEEDS:
        one = small_job(level, seed)
        assert len(one.job.openings) == len(one.schedule) == 4
        lines = take_off(tally_job(one.job), one.job.job).lines
        assert len(one.order) == len(lines) >= 3
        outcome = mark_job(one, ())
        assert len(outcome.missed) == one.slips
        assert not outcome.found | outcome.mistaken
        assert set(outcome.why) == outcome.missed
        for row, place in outcome.missed:
            assert one.order[row][place] in outcome.why[row, place]
            assert "should read" in outcome.why[row, place]


def test_the_order_is_the_programs_own_but_for_the_slips():
    one = small_job(1, 3)
    lines = take_off(tally_job(one.job), one.job.job).lines
    wrong = mark_job(one, ()).missed
    for row, line in enumerate(lines):
        written = dict(zip(ORDER_HEADS, one.order[row], strict=True))
        if (row, SIZE) not in wrong:
            assert written["Size"] == line.hinge.size
        else:
            assert written["Size"] == " x ".join(reversed(line.hinge.size.split(" x ")))
        assert written["For"] == ", ".join(line.by_mark)


def test_it_is_passed_when_every_slip_is_found_and_nothing_else_pointed_at():
    one = small_job(2, 5)
    wrong = sorted(mark_job(one, ()).missed)
    assert mark_job(one, wrong).is_passed
    assert mark_job(one, wrong).words == "All 2 slips found, and nothing else pointed at."
    half = mark_job(one, wrong[:1])
    assert not half.is_passed
    assert half.words == "1 of 2 slips found. Look again."
    fine = next((0, place) for place in range(1, 6) if (0, place) not in wrong)
    more = mark_job(one, [*wrong, fine])
    assert more.mistaken == {fine}
    assert more.words == "2 of 2 slips found. 1 cell you pointed at is right. Look again."


def test_a_seed_gives_the_same_job_and_another_seed_another():
    assert small_job(3, 8) == small_job(3, 8)
    assert len({small_job(3, seed).order for seed in range(5)}) > 3


def test_the_slips_of_a_level_are_not_always_the_same():
    places = {place for seed in range(8) for _, place in mark_job(small_job(4, seed), ()).missed}
    assert len(places) >= 3


def test_there_is_no_other_level():
    with pytest.raises(KeyError):
        small_job(6, 1)
