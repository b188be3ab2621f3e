"""Things easily typed wrong, each caught with its numbers and, where there is one, a one-click mend."""

from configurator.rules.finding import Finding, Fix, finding
from configurator.rules.hinge.sizes import pairs
from configurator.rules.hinge.stock import least_stock_width
from configurator.rules.wording import counted, exactly, feet, obstruction, plain, size, the_leaf
from configurator.sentences import capitalized
from configurator.tables import limit, practice
from configurator.units import TOLERANCE


def swapped_hinge(needed: float, height: float, width: float) -> Finding | None:
    """Return an error for a hinge typed width first: its width is the height that is needed. Inches."""
    if height == needed or width != needed:
        return None
    message = (
        f"{plain(height)} high? This door takes {plain(needed)} high. Did you mean {size(width, height)}? "
        "The first figure of a hinge size is its height. Swap the two, or confirm."
    )
    fix = (Fix("hinge.height", width, f"Swap to {size(width, height)}"), Fix("hinge.width", height, ""))
    source = practice("hinge_size_order")
    return finding("hinge size swapped", "warning", message, source, fix, needed=needed, height=height)


def swapped_door(width: float, height: float, leaves: str) -> Finding | None:
    """Return a warning for an opening typed height first: wider than high. Inches. A pair may well be so."""
    wide = limit("widest_leaf").value
    # Where either way round is wider than a leaf gets, the question is whether it is a pair.
    if width <= height or leaves == "pair" or height > wide + TOLERANCE:
        return None
    message = (
        f"{feet(width)} wide and {feet(height)} high? Doors are given width first. "
        f"Swap to {feet(height)} x {feet(width)}, or confirm."
    )
    fix = (Fix("size.width", height, "Swap width and height"), Fix("size.height", width, ""))
    source = practice("door_size_order")
    return finding("door size swapped", "warning", message, source, fix, width=width, height=height)


def one_leaf_or_two(width: float, height: float, leaves: str) -> Finding | None:
    """Ask whether a single leaf so wide is a pair; inches. Typed height first, it is another slip."""
    wide = limit("widest_leaf")
    if leaves != "single" or width <= wide.value + TOLERANCE or swapped_door(width, height, leaves):
        return None
    message = (
        f"One leaf {feet(width)} wide? Leaves are seldom wider than {feet(wide.value)}. Say that it is a "
        "pair, or confirm."
    )
    fix = (Fix("leaves", "pair", "It is a pair"),)
    return finding("one leaf or two", "warning", message, wide.cited, fix, width=width)


def reference_face(
    path: str, kind: str, projection: float, proud: float, hinge: tuple[float, float], least: float
) -> Finding | None:
    """Ask whether a projection was measured from the frame, where the answer changes the hinge; inches.

    `least` is the width W = 2 (T - b) + C that the same projection from the frame face needs, `hinge` the
    chosen height and width. Asked only where the frame stands proud and the chosen width would not do.
    """
    height, width = hinge
    needed = least_stock_width(height, least)
    if proud <= TOLERANCE or least <= width + TOLERANCE:
        return None
    off = projection + proud
    takes = (
        f"a hinge {exactly(least, 'up')} wide, wider than any in stock"
        if needed is None
        else size(height, needed)
    )
    message = (
        f"The {obstruction(kind)} stands off {exactly(projection)}: from the wall or from the frame face? "
        f"The frame is {exactly(proud)} proud; from the frame it is {exactly(off)} off the wall, and {takes} "
        "is needed. It is taken from the wall; measure again or confirm."
    )
    fix = (Fix(path, off, f"It was from the frame: {exactly(off)} off the wall"),)
    source = practice("reference_face")
    return finding("measured from where", "note", message, source, fix, projection=projection, off_wall=off)


def too_few_hinges(leaf: str, needed: int, count: int, quantity: int, height: float) -> Finding | None:
    """Return a warning for a leaf with fewer hinges than its height, inches, takes."""
    if count >= needed:
        return None
    name = capitalized(the_leaf(leaf, "this door"))
    more = f": {needed * quantity} for {quantity}, not {count * quantity}" if quantity > 1 else ""
    message = (
        f"{name} is {exactly(height, 'up')} high and takes {needed} hinges, not {count}{more}. "
        f"Take {needed} ({pairs(needed)})."
    )
    fix = (Fix("hinge.count", needed, f"Take {needed} hinges"),) if leaf == "single" else ()
    source = practice("count_rule")
    return finding("too few hinges", "error", message, source, fix, needed=needed, count=count)


def two_leaf_count(leaves: str, needed: int, count: int, quantity: int) -> Finding | None:
    """Return a warning where both leaves, each counted by itself, take another number of hinges."""
    if count == needed:
        return None
    name = "A Dutch door" if leaves == "dutch" else "A pair"
    more = f" ({needed * quantity} for {quantity}, not {count * quantity})" if quantity > 1 else ""
    message = (
        f"{name} takes {needed} hinges{more}, each leaf by itself; {count} was given. "
        f"{needed} is taken; leave the number out or set it so."
    )
    fix = (Fix("hinge.count", needed, f"Take {needed} hinges"),)
    return finding("hinges by leaf", "error", message, practice("dutch"), fix, needed=needed, count=count)


def pairs_for_hinges(doors: int, needed: int, count: int) -> Finding | None:
    """Return an error where the number typed is in pairs, or is that of all doors together."""
    if count <= needed or count not in (2 * needed, doors * needed):
        return None
    total = doors * needed
    said = f"{counted(doors, 'door', 'doors')} x {needed} hinges = {total} hinges = {pairs(total)}"
    message = (
        f"{said}; {count} on each would be {count * doors} hinges = {pairs(count * doors)}. The number is of "
        f"hinges on one door: take {needed}, or confirm {count}."
    )
    fix = (Fix("hinge.count", needed, f"Take {needed} hinges"),)
    source = practice("hinge_pairs")
    return finding("pairs for hinges", "warning", message, source, fix, needed=needed, count=count)
