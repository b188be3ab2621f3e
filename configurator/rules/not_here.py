"""Openings for which no butt hinge is chosen or ordered here, and why."""

from configurator.rules.finding import Finding, finding
from configurator.rules.usual import FilledOpening
from configurator.rules.wording import exactly
from configurator.tables import limit, practice
from configurator.units import TOLERANCE

_HUNG = {
    "pivots": "hung on pivots",
    "continuous hinge": "hung on a continuous hinge",
    "spring hinges": "hung on spring hinges",
    "by others": "hung by others",
}


def not_here(filled: FilledOpening) -> tuple[Finding, ...]:
    """Return why nothing is chosen or ordered for this opening; empty where butt hinges are chosen."""
    hung_on = filled.opening.hung_on
    if hung_on != "butt hinges":
        message = (
            f"This door is {_HUNG[hung_on]}: only butt hinges are chosen here, so nothing is ordered for it. "
            "Order what it hangs on from whoever supplies that."
        )
        return (finding("not here", "note", message, practice("not_here")),)
    wide = limit("lead_lined")
    # The rule speaks of 3 ft doors, which are the opening's width; the leaf itself is a little less.
    if filled.opening.door.construction == "lead-lined" and filled.opening_width >= wide.value - TOLERANCE:
        message = (
            f"A lead-lined door {exactly(filled.opening_width)} wide hangs on pivots, not on hinges: from "
            f"{exactly(wide.value)} on. Nothing is ordered for it here; ask the door's maker for its pivots."
        )
        return (finding("lead-lined", "error", message, wide.cited, width=filled.opening_width),)
    return ()
