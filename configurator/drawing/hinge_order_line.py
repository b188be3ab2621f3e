"""The order line of an opening's hinges in the words of the trade, and what to heed before sending it."""

from collections.abc import Mapping
from dataclasses import dataclass

from configurator.drawing.hinge_words import screw_words, spelled_value
from configurator.model import Opening
from configurator.order.goods import HANDED
from configurator.order.hinges_of import hand_of_leaf
from configurator.rules.asked import NOTHING_ASKED
from configurator.rules.count import pairs
from configurator.rules.finding import Reason
from configurator.rules.specification import LeafSpecification
from configurator.rules.usual import use_of
from configurator.rules.wording import counted
from configurator.study.records import Study
from configurator.units import Display, format_decimal

INCHES = Display()
"""An order names the goods in inches, whatever the screen shows."""


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One line for one leaf; `can_order` is False where the text says why not."""

    leaf: str
    text: str
    can_order: bool


def order_lines(study: Study) -> tuple[OrderLine, ...]:
    """Return a line for each leaf, or two where one hinge of the set carries wires.

    Quantities are for all openings alike; a size is height x open width, inches.
    """
    leaves = study.specification.leaves
    return tuple(line for leaf in leaves for line in _leaf_lines(leaf, study.opening, len(leaves) > 1))


def order_text(study: Study) -> str:
    """Return the lines that can be ordered, one a row, as they are copied."""
    return "\n".join(line.text for line in order_lines(study) if line.can_order)


def order_cautions(study: Study) -> tuple[str, ...]:
    """Return what to heed before ordering: errors that stand, what a label asks, what is not known."""
    said = []
    errors = sum(one.severity == "error" for one in study.specification.findings)
    if errors:
        stand = "stands" if errors == 1 else "stand"
        said.append(
            f"{counted(errors, 'error', 'errors')} {stand} against this hinge: read the findings first."
        )
    if use_of(study.opening.use, "fire_rated"):
        said.append(
            "Labelled fire door: its listing and the authority having jurisdiction decide, and the program "
            "does not know the listing."
        )
    if len(study.specification.leaves) > 1 and _wired(study.opening) is not None:
        said.append("One hinge carries wires: say with the order on which leaf.")
    return tuple(said)


def _leaf_lines(leaf: LeafSpecification, opening: Opening, named: bool) -> tuple[OrderLine, ...]:
    where = f"{opening.mark}, {leaf.leaf} leaf" if named else opening.mark
    if leaf.parts["width"].value is None:
        text = f"{where}: nothing can be ordered, no hinge width to be had does what this opening asks."
        return (OrderLine(leaf.leaf, text, False),)
    count, wired = leaf.parts["count"].value, _wired(opening)
    split = wired is not None and not named and wired <= count
    words = _words(leaf, opening)
    lines = []
    if plain := count - split:
        lines.append(OrderLine(leaf.leaf, f"{where}: {_line(leaf.parts, opening, plain, words)}", True))
    if split:
        electric = (*words, f"electric: carries wires, hinge {wired} from the top")
        lines.append(OrderLine(leaf.leaf, f"{where}: {_line(leaf.parts, opening, 1, electric)}", True))
    return tuple(lines)


def _wired(opening: Opening) -> int | None:
    return (opening.hinge or NOTHING_ASKED).electric


def _line(parts: Mapping[str, Reason], opening: Opening, count: int, words: tuple[str, ...]) -> str:
    total = count * opening.quantity
    openings = f" for {opening.quantity} openings alike" if opening.quantity > 1 else ""
    share = _share(parts["screws"].value, count, parts["count"].value)
    screws = screw_words(share, parts["height"].value, opening.quantity)
    noun = "hinge" if total == 1 else "hinges"
    return f"{total} each ({pairs(total)}) {noun}{openings}, " + ", ".join((*words, screws))


def _share(screws: Mapping[str, int], count: int, of: int) -> dict[str, int]:
    """Return the screws that go with `count` hinges of a set of `of`; a share that is not whole goes up."""
    return {kind: -(-number * count // of) for kind, number in screws.items()}


def _words(leaf: LeafSpecification, opening: Opening) -> tuple[str, ...]:
    """Return the line's words after the quantity, from the size to what its label asks."""
    parts = leaf.parts

    def said(key: str) -> str:
        return spelled_value(key, parts[key].value, INCHES)

    words = (
        INCHES.size(parts["height"].value, parts["width"].value),
        f"ANSI/BHMA A156.1 {parts['type'].value}" if parts["type"].value else "",
        said("mounting"),
        said("weight"),
        said("bearing"),
        f"leaf {format_decimal(parts['leaf_thickness'].value)} thick",
        said("knuckles"),
        _metal_and_finish(parts),
        said("pin"),
        "security stud" if parts["security_stud"].value else "",
        said("tip"),
        said("corner"),
        _hand(leaf, opening),
        "for a labelled fire door" if use_of(opening.use, "fire_rated") else "",
    )
    return tuple(word for word in words if word)


def _metal_and_finish(parts: Mapping[str, Reason]) -> str:
    metal = spelled_value("base_metal", parts["base_metal"].value, INCHES)
    alloy = f" {parts['alloy'].value}" if parts["alloy"].value else ""
    number, us = parts["finish_bhma"].value, parts["finish_us"].value
    code = f" ({us})" if number and us else us or ""
    return f"{metal}{alloy}, finish {number or ''}{code}" if number or us else f"{metal}{alloy}"


def _hand(leaf: LeafSpecification, opening: Opening) -> str:
    if leaf.parts["mounting"].value not in HANDED:
        return ""
    hand = hand_of_leaf(opening.hand, leaf.leaf)
    return f"hand {hand}" if hand else "hand not known"
