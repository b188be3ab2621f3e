"""The order line of an opening's hinges in the words of the trade, and what to heed before sending it."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from configurator.model import Opening
from configurator.rules.finding import Finding, holding
from configurator.rules.hinge.electric import carries
from configurator.rules.hinge.pin import HANDED
from configurator.rules.hinge.sizes import pairs
from configurator.rules.hinge_items import (
    HingeItem,
    LeafItem,
    hinge_items,
    screws_of_items,
    sold_words,
)
from configurator.rules.specification import LeafSpecification
from configurator.rules.wording import counted, leaf_named
from configurator.study import Study
from configurator.units import Display, format_decimal
from configurator.wording.hinge_words import screw_words, spelled_value

INCHES = Display()
"""An order names the hinges in inches, whatever the screen shows."""
HELD = "held by an error, not ordered: "
NOTHING_TO_ORDER = "nothing can be ordered, no hinge width to be had does what this opening asks."


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One line for one leaf; `can_order` is False where the text says why not."""

    leaf: str
    text: str
    can_order: bool


def order_lines(study: Study) -> tuple[OrderLine, ...]:
    """Return a line for each leaf, or two where one hinge of the set carries wires; held ones say so.

    Quantities are for all openings alike; a size is height x open width, inches.
    """
    items = hinge_items(study.specification, study.opening)
    screws = screws_of_items(items, study.opening.quantity)
    held = bool(holding(study.findings, study.opening.order_despite))
    lines: list[OrderLine] = []
    for leaf in study.specification.leaves:
        where = _where(leaf, study)
        if not leaf.can_be_had:
            lines.append(OrderLine(leaf.leaf, f"{where}: {NOTHING_TO_ORDER}", False))
        for item, share in zip(items, screws, strict=True):
            if item.leaf == leaf.leaf:
                text = f"{where}: {HELD if held else ''}{_line(item, share, leaf, study.opening)}"
                lines.append(OrderLine(leaf.leaf, text, not held))
    return tuple(lines)


def verdict(study: Study) -> str:
    """Return in one sentence which hinges are recommended, or that none is; empty where none are chosen."""
    if study.errors:
        stand = counted(len(study.errors), "error stands", "errors stand")
        return f"No hinge is recommended: {stand} against it."
    leaves = ", ".join(map(_taken, study.specification.leaves))
    return f"Recommended: {leaves}." if leaves else ""


def _taken(leaf: LeafSpecification) -> str:
    parts = leaf.parts
    count = counted(parts["count"].value, "hinge", "hinges")
    size = INCHES.size(parts["height"].value, parts["width"].value)
    return f"{count} {size}{leaf_named(leaf.leaf, ' ({})')}"


def order_text(study: Study) -> str:
    """Return the lines that can be ordered, one a row, as they are copied."""
    return "\n".join(line.text for line in order_lines(study) if line.can_order)


def order_cautions(study: Study) -> tuple[str, ...]:
    """Return what to heed before ordering: errors that stand, what a label asks, what is not known."""
    said = []
    findings, despite = study.specification.findings, study.opening.order_despite
    if errors := len(holding(study.findings, despite)):
        holds = "holds" if errors == 1 else "hold"
        said.append(
            f"{counted(errors, 'error', 'errors')} {holds} this order: read the findings, mend what they "
            "name, or say on the order's page: order it all the same."
        )
    said += [f"Ordered all the same: {one.message}" for one in study.findings if _accepted(one, despite)]
    if study.filled.use.fire_rated:
        said.append(
            "Labelled fire door: its listing and the authority having jurisdiction decide, and the program "
            "does not know the listing."
        )
    said += [one.message for one in findings if one.code == "electric hinge leaf"]
    return tuple(said)


def _accepted(one: Finding, despite: Collection[str]) -> bool:
    return one.severity == "error" and one.code in despite


def _where(leaf: LeafSpecification, study: Study) -> str:
    return study.opening.mark + leaf_named(leaf.leaf, ", {}")


def _line(item: LeafItem, screws: Mapping[str, int], leaf: LeafSpecification, opening: Opening) -> str:
    total = item.count * opening.quantity
    openings = f" for {opening.quantity} openings alike" if opening.quantity > 1 else ""
    wired = (
        f"electric: carries {carries(item.hinge.wires)}, hinge {leaf.electric} from the top"
        if item.hinge.electric
        else ""
    )
    words = (*_words(item.hinge), wired, screw_words(screws, item.hinge.height))
    noun = "hinge" if total == 1 else "hinges"
    return f"{total} each ({pairs(total)}) {noun}{openings}, " + ", ".join(word for word in words if word)


def _words(hinge: HingeItem) -> tuple[str, ...]:
    """Return the line's words after the quantity, from the size to what its label asks; some may be ""."""

    def said(key: str, value: str | float) -> str:
        return spelled_value(key, value, INCHES)

    return (
        INCHES.size(hinge.height, hinge.width),
        f"ANSI/BHMA A156.1 {hinge.type}" if hinge.type else "",
        said("mounting", hinge.mounting),
        said("weight", hinge.weight),
        said("bearing", hinge.bearing),
        f"leaf {format_decimal(hinge.leaf_thickness)} thick",
        said("knuckles", hinge.knuckles),
        _metal_and_finish(hinge),
        said("pin", hinge.pin),
        "security stud" if hinge.security_stud else "",
        said("tip", hinge.tip),
        said("corner", hinge.corner),
        _hand(hinge),
        *sold_words(hinge),
        "for a labelled fire door" if hinge.fire else "",
    )


def _metal_and_finish(hinge: HingeItem) -> str:
    metal = spelled_value("base_metal", hinge.base_metal, INCHES)
    alloy = f" {hinge.alloy}" if hinge.alloy else ""
    number, us = hinge.finish_bhma, hinge.finish_us
    code = f" ({us})" if number and us else us or ""
    return f"{metal}{alloy}, finish {number or ''}{code}" if number or us else f"{metal}{alloy}"


def _hand(hinge: HingeItem) -> str:
    if hinge.mounting not in HANDED:
        return ""
    return f"hand {hinge.hand}" if hinge.hand else "hand not known"
