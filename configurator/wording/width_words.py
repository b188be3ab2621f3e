"""The widths of a leaf in words: the sentence on top, a line a width, and what each break point is."""

from collections.abc import Iterator
from dataclasses import dataclass

from configurator.rules.hinge.angle_not_asked import FLAT
from configurator.rules.hinge.answers import (
    FULL_MORTISE,
    Must,
    barrel_clear,
    barrel_free,
    barrel_room,
    binds,
    by_template,
    keeps_clear_width,
    reaches,
    refused,
)
from configurator.rules.wording import obstruction
from configurator.study import Candidate
from configurator.study.widths.break_points import BARREL_FREE, BINDS, OPENS, BreakPoint
from configurator.study.widths.leaf_widths import MOST, LeafWidths, WidthTried
from configurator.units import CLOSED_IN, TOLERANCE, Display, format_size
from configurator.wording.comparison import stopped_words

HEADS = ("Open width", "Fits", "Opens to, bare", "With hardware", "Clear at 90")
PLAIN_HEADS = ("Hinge width", "Does it", "Door alone opens to", "With its hardware", "Walk-through width")
WHY = "Why not"


@dataclass(frozen=True, slots=True)
class WidthLine:
    """One width of the table: its cells under the heads, and what else there is to say of it."""

    width: float
    cells: tuple[str, ...]
    tip: str


@dataclass(frozen=True, slots=True)
class WidthTable:
    """The table of one leaf's widths."""

    heads: tuple[str, ...]
    lines: tuple[WidthLine, ...]


def clear_width_name(plain: bool) -> str:
    """Return what the clear width at 90 degrees is called: in the trade's words or in plain ones."""
    return "walk-through width" if plain else "clear width"


def width_table(leaf: LeafWidths, display: Display, plain: bool = False) -> WidthTable:
    """Return the table: a line a width, and a column for each thing whose projection decides.

    `plain` heads it in plain words instead of the trade's.
    """
    deciding = _deciding(leaf)
    heads = (
        *(PLAIN_HEADS if plain else HEADS),
        *(f"{_thing(leaf, place)} may stand out" for place in deciding),
        WHY,
    )
    return WidthTable(heads, tuple(_line(leaf, one, deciding, display) for one in leaf.tried))


def _deciding(leaf: LeafWidths) -> tuple[int, ...]:
    """Return the places of the obstructions that limit some width here."""
    places = range(len(leaf.hung.obstructions))
    mounted = [one for one in leaf.tried if one.candidate is not None]
    return tuple(p for p in places if any(_is_limit(one.projections[p]) for one in mounted))


def _is_limit(most: float | None) -> bool:
    return most is not None and most < MOST


def _thing(leaf: LeafWidths, place: int) -> str:
    kinds = [one.kind for one in leaf.hung.obstructions]
    name = obstruction(kinds[place]).capitalize()
    return name if kinds.count(kinds[place]) == 1 else f"{name} {kinds[: place + 1].count(kinds[place])}"


def _line(leaf: LeafWidths, one: WidthTried, deciding: tuple[int, ...], display: Display) -> WidthLine:
    stock = "not in stock" if one.stock is None else one.stock
    name = format_size(one.width) if one.stock == "common" else f"{format_size(one.width)} ({stock})"
    found = one.candidate
    if found is None:
        cells = (name, "no", "", "", "", *("" for _ in deciding), one.refusal)
        return WidthLine(one.width, cells, one.refusal)
    why = ", ".join(why_not(found, leaf.must, display))
    cells = (
        name,
        "no" if why else "yes",
        display.angle(found.greatest_angle_bare),
        display.angle(found.greatest_angle),
        _clear(found, display),
        *(_projection(one.projections[place], display) for place in deciding),
        why,
    )
    return WidthLine(one.width, cells, _tip(found))


def _clear(found: Candidate, display: Display) -> str:
    clear = found.clear_width_at_90
    return "not reached" if clear is None else display.length(clear, "down")


def _projection(most: float | None, display: Display) -> str:
    if most is None:
        return "stopped elsewhere"
    return "any" if most >= MOST else f"up to {display.length(most, 'down')}"


def _tip(found: Candidate) -> str:
    bare, whole = found.stopped_by_bare, found.stopped_by
    said = "bare: nothing stops it" if bare is None else f"bare: {stopped_words(bare)}"
    return said if whole is None or whole == bare else f"{said}; with hardware: {stopped_words(whole)}"


def why_not(found: Candidate, must: Must, display: Display) -> Iterator[str]:
    """Yield why a width does not do what is asked, nothing where it does."""
    if refused(found):
        yield "too wide to be mounted so"
    if by_template(found.mounting):
        yield "its template decides"
        return
    if binds(found):
        yield f"binds at {display.angle(found.greatest_angle_bare)}"
    elif not reaches(found, must.wanted):
        stopped = found.stopped_by_bare
        where = "" if stopped is None else f", {stopped_words(stopped)}"
        yield f"stops at {display.angle(found.greatest_angle_bare)}{where}"
    if not barrel_free(found):
        yield f"barrel overlaps by {display.length(-found.barrel_free_by, 'up')}"
    elif not barrel_clear(found):
        yield f"barrel free by {display.length(found.barrel_free_by, 'down')} only"
    if not keeps_clear_width(found, must.clear_width) and must.clear_width is not None:
        least = display.exact(must.clear_width, "up")
        short = found.clear_width_at_90 is not None
        yield f"less than {least} clear" if short else "does not come square open"


def wanted_words(must: Must, display: Display) -> str:
    """Return what a leaf's wanted angle is called: asked for, or taken where nobody said."""
    angle = display.angle(must.wanted, "up")
    return f"must open to {angle}" if must.asked else f"{angle} taken, not asked for"


def headline(leaf: LeafWidths, display: Display) -> str:
    """Return the sentence that answers: the least width exactly, and the next in stock."""
    said = _headline(leaf, display)
    if leaf.must.asked or leaf.must.wanted == FLAT:
        return said
    return f"How far it must open was not said. {said}"


def _headline(leaf: LeafWidths, display: Display) -> str:
    wanted = display.angle(leaf.must.wanted, "up")
    if not leaf.width_moves_the_pin:
        return (
            f"On a {leaf.hung.mounting} hinge the pin stands where the barrel lies: "
            "a wider hinge opens the door no farther."
        )
    if leaf.least_for_angle is None:
        return f"No hinge open width opens this leaf to {wanted}: {_obstacle(leaf)}."
    if leaf.least is None:
        return f"{_alone(leaf, wanted)}, but {_no_least(leaf, wanted)}."
    said = f"Least hinge open width for {wanted}: {_from(leaf.least)} in exactly"
    if leaf.least > leaf.least_for_angle + CLOSED_IN:
        room = display.exact(barrel_room(FULL_MORTISE))
        said += f", where the barrel is free by {room} ({_from(leaf.least_for_angle)} in for the angle alone)"
    return f"{said}; {_next_in_stock(leaf, display)}."


def _from(width: float) -> str:
    """Write a hinge open width from which something holds, inches: never less than it is."""
    return format_size(width, 3, "up")


def _up_to(width: float) -> str:
    """Write a hinge open width up to which something holds, inches: never more than it is."""
    return format_size(width, 3, "down")


def _obstacle(leaf: LeafWidths) -> str:
    reached = [one.candidate for one in leaf.tried if one.candidate is not None]
    best = max(reached, key=lambda one: one.greatest_angle_bare, default=None)
    if best is None or best.stopped_by_bare is None:
        return "none can be mounted so"
    return f"the {best.stopped_by_bare.part} meets the {obstruction(best.stopped_by_bare.kind)}"


def _alone(leaf: LeafWidths, wanted: str) -> str:
    assert leaf.least_for_angle is not None
    return f"{wanted} needs a hinge open width of {_from(leaf.least_for_angle)} in"


def _no_least(leaf: LeafWidths, wanted: str) -> str:
    binding = next((one for one in leaf.breaks if one.what == BINDS), None)
    if leaf.barrel_free_from is None:
        return "its barrel would not be free, nor that of any wider one"
    free = f"the barrel is free only from {_from(leaf.barrel_free_from)} in"
    if binding is None:
        return f"{free}, and no width from there on opens to {wanted}"
    return f"{free}, and from {_up_to(binding.width)} in on the lock edge binds"


def _next_in_stock(leaf: LeafWidths, display: Display) -> str:
    chosen = leaf.next_in_stock
    if chosen is not None:
        usual = "" if chosen.stock == "common" else f" ({chosen.stock})"
        return f"next in stock {format_size(chosen.width)}{usual}"
    assert leaf.least is not None
    wider = [one for one in leaf.tried if one.stock and one.width >= leaf.least - TOLERANCE]
    if not wider:
        return "none so wide is in stock"
    if wider[0].candidate is None:
        return f"next in stock {format_size(wider[0].width)} cannot be mounted so"
    why = ", ".join(why_not(wider[0].candidate, leaf.must, display))
    return f"next in stock {format_size(wider[0].width)} does not do: {why}"


def break_words(one: BreakPoint, display: Display, plain: bool = False) -> tuple[str, str]:
    """Return what happens at a break point: in full, and as short as it can be said."""
    if one.what == OPENS:
        said = f"{display.angle(one.value, 'up')} from {_from(one.width)}"
        return f"opens to {said} in", said
    if one.what == BINDS:
        return f"lock edge binds from {_up_to(one.width)} in", f"binds from {_up_to(one.width)}"
    if one.what == BARREL_FREE:
        room = display.exact(barrel_room(FULL_MORTISE))
        return f"barrel free by {room} from {_from(one.width)} in", f"barrel free {_from(one.width)}"
    least = display.exact(one.value, "up")
    name = clear_width_name(plain)
    return f"{least} {name} up to {_up_to(one.width)} in", f"{least} up to {_up_to(one.width)}"


def reading(found: Candidate, display: Display, plain: bool = False) -> str:
    """Say what one hinge open width does: what a pointer on the curve tells."""
    return f"{_from(found.hinge_width)} in: {does_words(found, display, plain)}"


def does_words(found: Candidate, display: Display, plain: bool = False) -> str:
    """Say how far a leaf opens, bare and with what it carries, and the clear width at 90 degrees."""
    said = f"opens to {display.angle(found.greatest_angle_bare)} bare"
    if found.greatest_angle < found.greatest_angle_bare:
        said += f", {display.angle(found.greatest_angle)} with hardware"
    if found.clear_width_at_90 is None:
        return said
    return f"{said}; {clear_width_name(plain)} {_clear(found, display)}"
