"""What the choice between two hinges costs by the user's price list: for one door, and for all like it."""

from decimal import Decimal

from configurator.model import Hinge, Job, Opening
from configurator.order.price_list import PriceList, PriceListError
from configurator.order.prices import price_order
from configurator.order.take_off import take_off
from configurator.order.tally import like_key, tally_of
from configurator.rules.wording import counted
from configurator.study.widths.width_pair import WidthPair


def cost_line(pair: WidthPair, opening: Opening, job: Job, prices: PriceList) -> str:
    """Return what the wider of two hinges costs more or less; empty where there are no two to choose from.

    A width that an error stands against is none. Where there is no price for one of them, that is said.
    """
    if (
        pair.wider is None
        or pair.other_way
        or any(one.severity == "error" for each in pair.both for one in each.findings)
    ):
        return ""
    costs: list[Decimal] = []
    for one in pair.both:
        cost = cost_of(opening, one.hinge_width, job, prices)
        if cost is None:
            return f"There is no price in the list for this door on the {one.hinge_words}."
        costs.append(cost)
    more = costs[1] - costs[0]
    if not more:
        return "Both hinges cost the same."
    money = f"{abs(more)} {prices.currency}".strip()
    said = f"The wider hinge costs {money} {'more' if more > 0 else 'less'} for this door"
    like = _like(opening, job)
    if like <= 1:
        return f"{said}."
    of_all = f"{abs(more) * like} {prices.currency}".strip()
    return f"{said}, {of_all} for all {counted(like, 'door', 'doors')} like it."


def cost_of(opening: Opening, width: float, job: Job, prices: PriceList) -> Decimal | None:
    """Return what the hinges of one such door cost on an open width, inches; None where that is not known."""
    given = opening.hinge or Hinge()
    hinge = {**given.model_dump(exclude_unset=True), "width": width}
    data = {**opening.model_dump(exclude_unset=True), "hinge": hinge, "quantity": 1}
    counted_once = tally_of(Opening.model_validate(data), job.job)
    lines = take_off((counted_once,), job.job).lines
    try:
        priced = price_order(lines, prices)
    except PriceListError:
        return None
    return priced.total if lines and not priced.unpriced else None


def _like(opening: Opening, job: Job) -> int:
    """Return how many doors of the job are like this one, itself among them."""
    key = like_key(opening)
    return sum(one.quantity for one in job.openings if like_key(one) == key) or opening.quantity
