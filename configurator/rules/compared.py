"""Whether the width that is taken is among those that are compared."""

from collections.abc import Iterator, Sequence

from configurator.rules.finding import Finding, Fix, finding
from configurator.rules.specification import Specification
from configurator.rules.wording import plain
from configurator.tables import practice

MOST_COMPARED = 12


def compared_findings(specification: Specification, widths: Sequence[float]) -> Iterator[Finding]:
    """Yield which hinge open widths taken for the opening are not among those compared; inches."""
    recommended = {leaf.parts["width"].value for leaf in specification.leaves}
    missing = sorted(width for width in recommended if width is not None and width not in widths)
    if not missing:
        return
    named = " and ".join(plain(width) for width in missing)
    whole = tuple(sorted((*widths, *missing)))
    is_are, it = ("is", "it") if len(missing) == 1 else ("are", "them")
    message = (
        f"{named} {is_are} not among the widths compared ({', '.join(plain(width) for width in widths)}), "
        f"but taken for this opening: add {it} to compare."
    )
    fix = (Fix("compare", whole, f"Compare {named} too"),) if len(whole) <= MOST_COMPARED else ()
    yield finding("width not compared", "note", message, practice("plan_geometry"), fix, width=missing[-1])
