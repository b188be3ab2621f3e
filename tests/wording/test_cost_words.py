from decimal import Decimal

import pytest

from configurator.model import Job, Opening
from configurator.order.price_list import parse_prices
from configurator.study import study
from configurator.study.widths.width_pair import width_pair
from configurator.wording.cost_words import cost_line, cost_of
from tests.openings import plain_opening

PRICES = b"height,width,price,currency\n4-1/2,4,5.25,USD\n4-1/2,4-1/2,6.75,USD\n"


def line(opening: Opening, job: Job, prices: bytes = PRICES) -> str:
    return cost_line(width_pair(study(opening, job.job)), opening, job, parse_prices(prices))


@pytest.fixture
def door():
    return plain_opening(compare=[4, 4.5], quantity=1)


def test_three_hinges_of_each_width(door):
    """A 7 ft door has three: 3 x 5.25 and 3 x 6.75."""
    job = Job(openings=(door,))
    assert cost_of(door, 4.0, job, parse_prices(PRICES)) == Decimal("15.75")
    assert cost_of(door, 4.5, job, parse_prices(PRICES)) == Decimal("20.25")
    assert line(door, job) == "The wider hinge costs 4.50 USD more for this door."


def test_all_doors_like_it_are_counted(door):
    """Two more like it under another mark, and one that is not."""
    like = plain_opening(mark="102", compare=[4, 4.5], quantity=2)
    other = plain_opening(mark="103", size={"width": 32, "height": 84})
    job = Job(openings=(door, like, other))
    assert line(door, job) == (
        "The wider hinge costs 4.50 USD more for this door, 13.50 USD for all 3 doors like it."
    )


def test_a_wider_hinge_may_cost_less_or_the_same(door):
    job = Job(openings=(door,))
    assert "3.00 USD less" in line(door, job, PRICES.replace(b"6.75", b"4.25"))
    assert line(door, job, PRICES.replace(b"6.75", b"5.25")) == "Both hinges cost the same."


def test_a_price_that_is_not_in_the_list_is_said(door):
    said = line(door, Job(openings=(door,)), b"height,width,price\n4-1/2,4,5.25\n")
    assert said == "There is no price in the list for this door on the 4-1/2 in hinge."


def test_one_hinge_has_nothing_to_be_compared_with():
    door = plain_opening(compare=[4])
    assert line(door, Job(openings=(door,))) == ""
