"""The table under an elevation: every hinge from the top, on the frame and on the door."""

from configurator.drawing.pages.elevation_facts import HingesSet, LeafShown
from configurator.drawing.pages.small_table import SmallTable
from configurator.units import Display

_OVER = (
    ("", 1),
    ("Frame: below the head rabbet", 2),
    ("Frame: above the floor", 2),
    ("Door: below its top", 2),
    ("Door: above its bottom", 2),
)
_HEADINGS = (
    "Hinge",
    "to top",
    "to centre",
    "to centre",
    "to bottom",
    "to top",
    "to centre",
    "to centre",
    "to bottom",
)


def hinge_table(leaves: tuple[LeafShown, ...], head: float, display: Display) -> SmallTable:
    """Return every hinge's place; `head` is the head rabbet above the floor, inches.

    Leaves whose hinges sit alike share their rows.
    """
    rows: list[tuple[str, ...]] = []
    for shown, names in unlike(leaves):
        assert shown.hinges is not None
        label = "" if len(leaves) == 1 else f"{names} "
        rows += _rows(shown, shown.hinges, head, label, display)
    return SmallTable(_OVER, _HEADINGS, tuple(rows))


def unlike(leaves: tuple[LeafShown, ...]) -> tuple[tuple[LeafShown, str], ...]:
    """Return the leaves that differ in height or hinges, each with the names of all that are like it."""
    found: dict[object, tuple[LeafShown, str]] = {}
    for shown in leaves:
        if shown.hinges is None:
            continue
        leaf = shown.leaf
        key = (leaf.bottom, leaf.top, shown.hinges.places, shown.hinges.electric)
        if key in found:
            first, names = found[key]
            found[key] = first, f"{names} and {leaf.name}"
        else:
            found[key] = shown, leaf.name
    return tuple(found.values())


def _rows(
    shown: LeafShown, hinges: HingesSet, head: float, label: str, display: Display
) -> list[tuple[str, ...]]:
    leaf = shown.leaf
    rows = []
    for place, (bottom, top) in reversed(list(enumerate(hinges.places))):
        centre = (bottom + top) / 2
        lengths = (
            head - top, head - centre, centre, bottom,
            leaf.top - top, leaf.top - centre, centre - leaf.bottom, bottom - leaf.bottom,
        )  # fmt: skip
        number = hinges.number(place)
        wired = ", electric" if number == hinges.electric else ""
        rows.append((f"{label}{number}{wired}", *(display.length(one) for one in lengths)))
    return rows
