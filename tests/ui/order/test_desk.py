"""The order as it is worked on, without a window."""

import pytest

from configurator.long_work import Cancelled, unwatched
from configurator.order.lines import NO_SPARE
from configurator.ui.order.desk import Desk, changes_of, frozen
from tests.order.cases import data, job_of, stop_at

NARROW, WIDE = data("1", quantity=4), data("2", hinge={"width": 4.5})


def prices(tmp_path, text):
    path = tmp_path / "prices.csv"
    path.write_text(text)
    return path


def test_the_proof_stands_in_one_line():
    counted = Desk().count(job_of(data("1", quantity=40)))
    assert counted.sums() == "Lines 120 = openings 120. 120 hinges = 60 pair."


def test_spare_hinges_are_counted_apart_from_the_proof():
    desk = Desk()
    desk.set_spare("10%")
    assert desk.count(job_of(NARROW)).sums() == "Lines 12 = openings 12. 14 hinges = 7 pair, 2 of them spare."
    desk.set_spare("  ")
    assert desk.spare is NO_SPARE


def test_an_allowance_that_cannot_be_leaves_the_one_before():
    desk = Desk()
    desk.set_spare("2")
    with pytest.raises(ValueError, match="written as 5% or as 2"):
        desk.set_spare("two")
    assert desk.spare.each == 2


def test_what_is_not_worked_out_is_known_by_its_openings():
    desk, job = Desk(), job_of(data("1"), data("2"), data("3"))
    assert [one.mark for one in desk.unknown(job)] == ["1", "2", "3"]
    steps = desk.book.work_out(desk.unknown(job))
    next(steps)
    assert [one.mark for one in desk.unknown(job)] == ["2", "3"]
    list(steps)
    assert desk.unknown(job) == []


def test_prices_are_added_and_missing_ones_named(tmp_path):
    desk, job = Desk(), job_of(NARROW, WIDE)
    assert desk.count(job).cost() == ""
    desk.take_prices(prices(tmp_path, "width,price,currency\n4,2.50,units\n"))
    assert desk.count(job).cost() == "Total units 30.00 without 1 line that has no price: 2."
    desk.drop_prices()
    assert desk.count(job).cost() == ""
    desk.take_prices(prices(tmp_path, "colour,price\nred,1\n"))
    assert desk.count(job).cost().endswith("every line priced. Passed over in the price list: colour.")


def test_a_list_that_does_not_fit_the_order_says_which_rows(tmp_path):
    desk = Desk()
    desk.take_prices(prices(tmp_path, "width,height,price\n4,,2\n,4.5,3\n"))
    counted = desk.count(job_of(NARROW))
    assert counted.priced is None
    assert counted.cost().startswith("prices.csv does not fit this order: lines 2 and 3")


def test_the_offer_says_what_it_costs_with_the_users_own_prices(tmp_path):
    desk, job = Desk(), job_of(NARROW, WIDE)
    (offer,) = desk.offers(desk.count(job), unwatched)
    assert offer.cost == ""
    assert [one.hinge.width for one in offer.openings] == [4.5, 4.5]
    desk.take_prices(prices(tmp_path, "width,price\n4,2\n4.5,3\n"))
    (offer,) = desk.offers(desk.count(job), unwatched)
    assert offer.cost == "Now: Total 33.00, every line priced. Then: Total 45.00, every line priced."


def test_where_no_one_width_does_there_is_nothing_to_take(tmp_path):
    tight = data("1", size={"width": 35, "height": 84}, use={"accessible": True, "wanted_angle": 90})
    rail = {"kind": "chair rail", "projection": 2.5, "start": 0.5, "bottom": 32, "top": 36}
    deep = data("2", obstructions=[rail], use={"wanted_angle": 180})
    desk = Desk()
    desk.take_prices(prices(tmp_path, "price\n2\n"))
    (offer,) = desk.offers(desk.count(job_of(tight, deep)), unwatched)
    assert offer.openings == ()
    assert offer.cost == ""


def test_asking_can_be_stopped():
    desk = Desk()
    counted = desk.count(job_of(NARROW, WIDE))
    with pytest.raises(Cancelled):
        desk.offers(counted, stop_at(0))


def test_a_frozen_order_shows_what_changed_with_its_own_allowance():
    desk = Desk()
    desk.set_spare("1")
    job, number = frozen(desk.count(job_of(NARROW, WIDE)), "2026-11-25", "  ", mark_them=True)
    assert number == 1
    assert (job.revisions[0].note, job.revisions[0].spare) == (None, "1")
    assert {(one.status, one.order_state) for one in job.openings} == {("assumed", "ordered")}
    desk.set_spare("")
    counted = desk.count(job)
    assert changes_of(job.revisions[0], counted).words() == "Nothing has changed since revision 1."
    again, number = frozen(counted, "2026-11-26", "second", mark_them=False)
    assert (number, again.revisions[1].note) == (2, "second")
