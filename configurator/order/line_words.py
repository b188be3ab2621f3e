"""An order line in words for people: short enough for a column, complete enough to order from."""

from collections.abc import Mapping

from configurator.order.document import listed
from configurator.order.goods import Goods
from configurator.order.lines import OrderLine
from configurator.units import format_decimal

BEARINGS = {"ball": "antifriction bearing", "plain": "plain bearing"}


def hinge_words(goods: Goods) -> str:
    """Return what kind of hinge it is."""
    said = (
        "electric: carries wires" if goods.electric else "",
        goods.mounting,
        f"{goods.weight} weight",
        BEARINGS.get(goods.bearing, goods.bearing),
        f"leaf {format_decimal(goods.leaf_thickness)}",
        f"{goods.knuckles} knuckles",
        f"hand {goods.hand}" if goods.hand else "",
        "for a labelled fire door" if goods.fire else "",
    )
    return ", ".join(word for word in said if word)


def metal_words(goods: Goods) -> str:
    """Return metal and finish, as `steel, 652 (US26D)`."""
    metal = f"{goods.base_metal} {goods.alloy}" if goods.alloy else goods.base_metal
    us = f" ({goods.finish_us})" if goods.finish_us and goods.finish_bhma else goods.finish_us or ""
    return f"{metal}, {goods.finish_bhma or ''}{us}" if goods.finish_bhma or us else metal


def detail_words(goods: Goods) -> str:
    """Return pin, tip and corner."""
    stud = ", security stud" if goods.security_stud else ""
    return f"{goods.pin} pin{stud}, {goods.tip} tip, {goods.corner} corner"


def screws_each_words(goods: Goods) -> str:
    """Return the screws with one hinge, as `4 machine, 4 wood`: hinges can differ in these alone."""
    return ", ".join(f"{number} {kind}" for kind, number in goods.screws if number) or "none"


def screw_words(screws: Mapping[str, int]) -> str:
    """Return screws by kind, as `24 machine, 12 wood`."""
    return ", ".join(f"{count} {kind}" for kind, count in screws.items() if count) or "none"


def marks_words(line: OrderLine, most: int) -> str:
    """Return the marks a line serves with how many each takes, as `112A x 3, 205A x 6`; `most` are named."""
    return listed([f"{mark} x {count}" for mark, count in line.by_mark.items()], most)
