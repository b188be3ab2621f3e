"""How far a door must open where nobody said: 180 degrees as long as a usual hinge width does it."""

from dataclasses import replace

from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, finding
from configurator.rules.hinge.answers import Answer, Must, by_template, reaches, tried
from configurator.rules.hinge.stock import stock_of, widths_by_stock
from configurator.rules.hinge.width import choose_width, does, does_all
from configurator.rules.wording import degrees, leaf_named, size
from configurator.tables import limit
from configurator.units import TOLERANCE

FLAT = 180.0


def settled(filled: FilledOpening, must: Must, answer: Answer) -> Must:
    """Return what a leaf has to do; an angle that nobody asked for costs no unusual width and no clear width.

    Then it is the greatest of a few usual angles that a common width reaches with all else kept.
    """
    if "use.wanted_angle" not in filled.assumed:
        return must
    must = replace(must, asked=False)
    held = filled.opening.stop_angle(must.leaf) or FLAT
    least = limit("usual_angle_least").value
    angles = [angle for angle in (FLAT, limit("usual_angle_most").value, least) if angle < held]
    for angle in (held, *angles):
        if _common_does(eased := replace(must, wanted=angle), answer):
            return eased
    return replace(must, wanted=min(least, held))


def _common_does(must: Must, answer: Answer) -> bool:
    """Return whether any common width does all that it must."""
    for width in widths_by_stock(must.height):
        row = stock_of(must.height, width)
        if row is None or row.stock != "common":
            continue
        found = tried(answer, must.leaf, width)
        if not isinstance(found, str) and does_all(found, must):
            return True
    return False


def angle_findings(filled: FilledOpening, must: Must, width: float, answer: Answer) -> tuple[Finding, ...]:
    """Return what 180 degrees would take where nobody asked how far the door opens and this width is short.

    `must` is what the leaf would have to do at that angle.
    """
    found, held = answer(must.leaf, width), filled.opening.stop_angle(must.leaf)
    asked = "use.wanted_angle" not in filled.assumed
    if by_template(found.mounting):
        return ()
    if asked or reaches(found, FLAT) or (held is not None and held < FLAT - TOLERANCE):
        return ()
    usual, least = limit("usual_angle_most"), limit("usual_angle_least")
    leaf = leaf_named(must.leaf, " ({})")
    opens = found.greatest_angle_bare
    message = (
        f"How far the door must open was not said. {size(must.height, width)}{leaf} "
        f"{does(found, replace(must, wanted=0.0))}; with a closer {degrees(least.value)} to "
        f"{degrees(usual.value)} is usual. {_what_flat_takes(must, width, answer)} Say how far it must open."
    )
    fix = (Fix("use.wanted_angle", FLAT, f"It must open to {degrees(FLAT)}"),)
    enough = tuple(
        (Fix("use.wanted_angle", row.value, f"{degrees(row.value)} is enough"),)
        for row in (usual, least)
        if row.value <= opens
    )
    said = finding("angle not asked for", "note", message, usual.cited, fix, angle=opens, wanted=FLAT)
    return (replace(said, other_fixes=enough[:1]),)


def _what_flat_takes(must: Must, width: float, answer: Answer) -> str:
    """Return in words which width would open flat, how usual it is and what it does; or that none does."""
    flat = replace(must, wanted=FLAT)
    choice = choose_width(flat, answer)
    other = choice.reason.value
    if not choice.complete or other is None or other == width:
        return f"No stock width opens it to {degrees(FLAT)} with all else kept."
    row = stock_of(must.height, other)
    stock = f", {row.stock} in stock" if row is not None and row.stock != "common" else ""
    return (
        f"To open to {degrees(FLAT)} it would take {size(must.height, other)}{stock}: "
        f"{does(answer(must.leaf, other), flat)}."
    )
