"""What would be, in words: where an answer turns, how much is to spare, what a value on trial does."""

from collections.abc import Sequence

from configurator.drawing.rounding import at_least, at_most, stepped_down, stepped_up, width_from, width_to
from configurator.drawing.width_words import clear_width_name, does_words
from configurator.model import Obstruction
from configurator.rules.wording import hardware, obstruction
from configurator.study import Candidate, Study
from configurator.study.what_if import WhatIf
from configurator.study.what_if_things import Thing
from configurator.study.what_if_turns import (
    BARREL,
    CARRIED_MEETS,
    CLEAR,
    FITTED,
    MEETS,
    MOUNTS,
    OPENS,
    Met,
    Turn,
)
from configurator.units import Display, format_exact

_SAME = 1e-6


def thing_name(thing: Thing, plain: bool) -> str:
    """Return what a thing is called: in the trade's words or in plain ones."""
    return thing.plain if plain else thing.name


def at_value(thing: Thing, value: float, display: Display) -> str:
    """Write a value of the thing; a hinge open width is a name of goods and stays in inches."""
    return f"{format_exact(round(value, 6))} in" if thing.of_hinge else display.length(value)


def from_value(thing: Thing, value: float, display: Display) -> str:
    """Write a value from which something holds, never smaller than it is."""
    return f"{width_from(value)} in" if thing.of_hinge else at_least(value, display)


def to_value(thing: Thing, value: float, display: Display) -> str:
    """Write a value up to which something holds, never larger than it is."""
    return f"{width_to(value)} in" if thing.of_hinge else at_most(value, display)


def turn_words(
    turn: Turn, found: WhatIf, things: Sequence[Obstruction], display: Display, plain: bool = False
) -> tuple[str, str]:
    """Return what turns at a value: in full, and as short as it can be said.

    things are the obstructions of the opening, by whose place what is met is named.
    """
    where = _where(turn, found.thing, display)
    if turn.what in (MEETS, CARRIED_MEETS):
        now, before = _meets(turn.met, things), _meets(turn.met_before, things)
        return f"{where} {now}, up to there {before}", f"{now} {where}"
    angle = display.angle(turn.amount)
    said = {
        OPENS: (f"opens to {angle}", angle),
        FITTED: (f"opens to {angle} with its hardware", f"{angle} with hardware"),
        CLEAR: (f"{display.length(turn.amount)} {clear_width_name(plain)}", display.length(turn.amount)),
        BARREL: ("barrel free", "barrel free"),
        MOUNTS: ("can be mounted so", "can be mounted"),
    }
    long, short = said.get(turn.what, ("can be at all", "can be"))
    return f"{long} {where}", f"{short} {where}"


def _where(turn: Turn, thing: Thing, display: Display) -> str:
    if turn.upward:
        return f"from {from_value(thing, turn.value, display)}"
    return f"up to {to_value(thing, turn.value, display)}"


def _meets(met: Met | None, things: Sequence[Obstruction]) -> str:
    """Say what meets what: `leaf on the chair rail`; of several alike which one, as the form numbers them."""
    if met is None:
        return "nothing"
    kind, place, part = met
    named = obstruction(kind)
    if place is not None and place < len(things) and things[place].kind == kind:
        alike = [one.kind for one in things]
        if alike.count(kind) > 1:
            named = f"{named} {alike[: place + 1].count(kind)}"
    return f"{hardware(part)} on the {named}"


def what_if_headline(found: WhatIf, display: Display, plain: bool = False) -> str:
    """Return the one sentence that answers: how far the present value may go, or must."""
    thing, wanted = found.thing, display.angle(found.must.wanted)
    name = thing_name(thing, plain)
    now = f"{name[:1].upper()}{name[1:]}: {at_value(thing, thing.present, display)} now"
    turns = [one for one in found.turns if one.what == OPENS and abs(one.amount - found.must.wanted) < _SAME]
    if _reached_now(found):
        spare = " and ".join(_spare(found, turns, display))
        return f"{now}. The leaf opens to {wanted}{f' {spare}' if spare else _always(found, display)}."
    needed = " or ".join(_needed(found, turns, display))
    if needed:
        return f"{now}. The leaf would open to {wanted} {needed}."
    low, high = (display.length(end) for end in (thing.low, thing.high))
    return f"{now}. Nothing from {low} to {high} opens the leaf to {wanted}."


def _reached_now(found: WhatIf) -> bool:
    place = min(
        range(len(found.curve.values)), key=lambda n: abs(found.curve.values[n] - found.thing.present)
    )
    bare = found.curve.bare[place]
    return bare is not None and bare >= found.must.wanted - _SAME


def _spare(found: WhatIf, turns: Sequence[Turn], display: Display) -> list[str]:
    """Return the nearest limits on either side of the present value, and how much there is to spare."""
    thing = found.thing
    below = max((t.value for t in turns if t.upward and t.value <= thing.present + _SAME), default=None)
    above = min((t.value for t in turns if not t.upward and t.value >= thing.present - _SAME), default=None)
    said = []
    if below is not None:
        spare = at_most(max(thing.present - below, 0.0), display)
        said.append(f"from {from_value(thing, below, display)} on ({spare} to spare)")
    if above is not None:
        spare = at_most(max(above - thing.present, 0.0), display)
        said.append(f"up to {to_value(thing, above, display)} ({spare} to spare)")
    return said


def _needed(found: WhatIf, turns: Sequence[Turn], display: Display) -> list[str]:
    """Return the nearest values on either side at which the leaf would open as far as it must."""
    thing = found.thing
    above = min((t.value for t in turns if t.upward and t.value > thing.present), default=None)
    below = max((t.value for t in turns if not t.upward and t.value < thing.present), default=None)
    said = []
    if above is not None:
        more = at_least(above - thing.present, display)
        said.append(f"from {from_value(thing, above, display)} on ({more} more)")
    if below is not None:
        less = at_least(thing.present - below, display)
        said.append(f"up to {to_value(thing, below, display)} ({less} less)")
    return said


def _always(found: WhatIf, display: Display) -> str:
    low, high = (display.length(end) for end in (found.thing.low, found.thing.high))
    return f" whatever it is from {low} to {high}"


def what_if_said(found: WhatIf, things: Sequence[Obstruction], display: Display, plain: bool = False) -> str:
    """Return all that the chart shows as sentences, for who cannot see it."""
    turns = "; ".join(turn_words(one, found, things, display, plain)[0] for one in found.turns)
    headline = what_if_headline(found, display, plain)
    return f"{headline} {turns[:1].upper()}{turns[1:]}." if turns else headline


def trial_words(
    found: WhatIf, value: float, study: Study, candidate: Candidate, display: Display, plain: bool = False
) -> str:
    """Say what a value on trial does, and which hinge the program would take then."""
    name = thing_name(found.thing, plain)
    said = f"{name[:1].upper()}{name[1:]} {at_value(found.thing, value, display)}: "
    said += does_words(candidate, found.must, display, plain)
    met = candidate.stopped_by_bare
    if met is not None:
        said += f"; {_meets((met.kind, met.index, met.part), study.opening.obstructions)}"
    hinges = dict.fromkeys(
        display.size(leaf.parts["height"].value, leaf.parts["width"].value)
        for leaf in study.specification.leaves
        if leaf.parts["width"].value is not None
    )
    return f"{said}; hinge taken then: {' and '.join(hinges)}" if hinges else said


def on_the_good_side(found: WhatIf, turn: Turn, display: Display) -> float:
    """Return the value as it is shown where something turns: still on the side on which it holds; inches."""
    value = stepped_up(turn.value, display) if turn.upward else stepped_down(turn.value, display)
    return min(max(value, found.thing.low), found.thing.high)
