"""An order line in words for people: short enough for a column, complete enough to order from."""

from collections.abc import Mapping

from configurator.documents.document import listed
from configurator.order.lines import OrderLine
from configurator.rules.hinge.electric import carries
from configurator.rules.hinge.pin import HANDED
from configurator.rules.hinge_items import HingeItem, sold_words
from configurator.rules.wording import counted
from configurator.units import format_decimal

BEARINGS = {"ball": "antifriction bearing", "plain": "plain bearing"}


def hinge_words(hinge: HingeItem) -> str:
    """Return what kind of hinge it is."""
    facts = (
        f"electric: carries {carries(hinge.wires)}" if hinge.electric else "",
        hinge.mounting,
        f"{hinge.weight} weight",
        BEARINGS.get(hinge.bearing, hinge.bearing),
        f"leaf {format_decimal(hinge.leaf_thickness)}",
        f"{hinge.knuckles} knuckles",
        f"hand {hinge.hand}" if hinge.hand else "hand not known" if hinge.mounting in HANDED else "",
        *sold_words(hinge),
        "for a labelled fire door" if hinge.fire else "",
    )
    return ", ".join(word for word in facts if word)


def labelled_words(line: OrderLine, most: int) -> str:
    """Return which marks of a line have labelled fire doors, as `6 hinges: 205A x 6`; empty for none."""
    found = line.fire_marks
    if not found:
        return ""
    return f"{counted(sum(found.values()), 'hinge', 'hinges')}: {_listed_counts(found, most)}"


def screw_kind_words(line: OrderLine) -> str:
    """Return with which screws its hinges come where not all have the same, as `12 with machine`."""
    kinds = line.screw_kinds
    return "" if len(kinds) < 2 else ", ".join(f"{count} with {kind}" for kind, count in kinds.items())


def despite_words(line: OrderLine) -> str:
    """Return which marks are ordered in spite of an error, and of which; empty for none."""
    each = (
        f"{mark}, ordered all the same: {' '.join(one.message for one in found)}"
        for mark, found in line.despite.items()
    )
    return " ".join(each)


def metal_words(hinge: HingeItem) -> str:
    """Return metal and finish, as `steel, 652 (US26D)`."""
    metal = f"{hinge.base_metal} {hinge.alloy}" if hinge.alloy else hinge.base_metal
    us = f" ({hinge.finish_us})" if hinge.finish_us and hinge.finish_bhma else hinge.finish_us or ""
    return f"{metal}, {hinge.finish_bhma or ''}{us}" if hinge.finish_bhma or us else metal


def detail_words(hinge: HingeItem) -> str:
    """Return pin, tip and corner."""
    stud = ", security stud" if hinge.security_stud else ""
    return f"{hinge.pin} pin{stud}, {hinge.tip} tip, {hinge.corner} corner"


def screws_each_words(hinge: HingeItem) -> str:
    """Return the screws with one hinge, as `4 machine, 4 wood`: hinges can differ in these alone."""
    return ", ".join(f"{number} {kind}" for kind, number in hinge.screws if number) or "none"


def screw_words(screws: Mapping[str, int]) -> str:
    """Return screws by kind, as `24 machine, 12 wood`."""
    return ", ".join(f"{count} {kind}" for kind, count in screws.items() if count) or "none"


def marks_words(line: OrderLine, most: int) -> str:
    """Return the marks a line serves with how many each takes, as `112A x 3, 205A x 6`; `most` are named."""
    return _listed_counts(line.by_mark, most)


def _listed_counts(by_mark: Mapping[str, int], most: int) -> str:
    return listed([f"{mark} x {count}" for mark, count in by_mark.items()], most)
