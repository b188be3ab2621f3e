"""A what-if in words: where an answer changes, how much is to spare, what a value on trial does."""

from collections.abc import Sequence

from configurator.model import Obstruction
from configurator.rules.wording import hardware, obstruction
from configurator.sentences import capitalized
from configurator.study import Candidate, Study
from configurator.study.what_if.curve import WhatIf
from configurator.study.what_if.parameters import Parameter
from configurator.study.what_if.thresholds import (
    BARREL,
    CARRIED_MEETS,
    CLEAR,
    FITTED,
    MEETS,
    MOUNTS,
    OPENS,
    Met,
    Threshold,
)
from configurator.units import CLOSED_IN, Display, format_size
from configurator.wording.width_words import clear_width_name, does_words


def parameter_name(parameter: Parameter, plain: bool) -> str:
    """Return what a parameter is called, in the trade's words or in plain ones."""
    return parameter.plain if plain else parameter.name


def at_value(parameter: Parameter, value: float, display: Display) -> str:
    """Write a value of the parameter; a hinge open width is a name of goods and stays in inches."""
    return f"{format_size(value)} in" if parameter.of_hinge else display.exact(value)


def from_value(parameter: Parameter, value: float, display: Display) -> str:
    """Write a value from which something holds, never smaller than it is."""
    return f"{format_size(value, 3, 'up')} in" if parameter.of_hinge else display.length(value, "up")


def to_value(parameter: Parameter, value: float, display: Display) -> str:
    """Write a value up to which something holds, never larger than it is."""
    return f"{format_size(value, 3, 'down')} in" if parameter.of_hinge else display.length(value, "down")


def threshold_words(
    threshold: Threshold, found: WhatIf, things: Sequence[Obstruction], display: Display, plain: bool = False
) -> tuple[str, str]:
    """Return what turns at a value: in full, and as short as it can be said.

    things are the obstructions of the opening, by whose place what is met is named.
    """
    where = _where(threshold, found.parameter, display)
    if threshold.what in (MEETS, CARRIED_MEETS):
        now, before = _meets(threshold.met, things), _meets(threshold.met_before, things)
        return f"{where} {now}, up to there {before}", f"{now} {where}"
    angle = display.angle(threshold.amount, "up")
    kept = display.exact(threshold.amount, "up")
    said = {
        OPENS: (f"opens to {angle}", angle),
        FITTED: (f"opens to {angle} with its hardware", f"{angle} with hardware"),
        CLEAR: (f"{kept} {clear_width_name(plain)}", kept),
        BARREL: ("barrel free", "barrel free"),
        MOUNTS: ("can be mounted so", "can be mounted"),
    }
    long, short = said.get(threshold.what, ("can be at all", "can be"))
    return f"{long} {where}", f"{short} {where}"


def _where(threshold: Threshold, parameter: Parameter, display: Display) -> str:
    if threshold.upward:
        return f"from {from_value(parameter, threshold.value, display)}"
    return f"up to {to_value(parameter, threshold.value, display)}"


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
    parameter, wanted = found.parameter, display.angle(found.must.wanted, "up")
    name = parameter_name(parameter, plain)
    now = f"{capitalized(name)}: {at_value(parameter, parameter.present, display)} now"
    thresholds = [
        one
        for one in found.thresholds
        if one.what == OPENS and abs(one.amount - found.must.wanted) < CLOSED_IN
    ]
    if _reached_now(found):
        spare = " and ".join(_spare(found, thresholds, display))
        return f"{now}. The leaf opens to {wanted}{f' {spare}' if spare else _always(found, display)}."
    needed = " or ".join(_needed(found, thresholds, display))
    if needed:
        return f"{now}. The leaf would open to {wanted} {needed}."
    low, high = (display.length(end) for end in (parameter.low, parameter.high))
    return f"{now}. Nothing from {low} to {high} opens the leaf to {wanted}."


def _reached_now(found: WhatIf) -> bool:
    place = min(
        range(len(found.curve.values)), key=lambda n: abs(found.curve.values[n] - found.parameter.present)
    )
    bare = found.curve.bare[place]
    return bare is not None and bare >= found.must.wanted - CLOSED_IN


def _spare(found: WhatIf, thresholds: Sequence[Threshold], display: Display) -> list[str]:
    """Return the nearest limits on either side of the present value, and how much there is to spare."""
    parameter = found.parameter
    below = max(
        (t.value for t in thresholds if t.upward and t.value <= parameter.present + CLOSED_IN), default=None
    )
    above = min(
        (t.value for t in thresholds if not t.upward and t.value >= parameter.present - CLOSED_IN),
        default=None,
    )
    said = []
    if below is not None:
        spare = display.length(max(parameter.present - below, 0.0), "down")
        said.append(f"from {from_value(parameter, below, display)} on ({spare} to spare)")
    if above is not None:
        spare = display.length(max(above - parameter.present, 0.0), "down")
        said.append(f"up to {to_value(parameter, above, display)} ({spare} to spare)")
    return said


def _needed(found: WhatIf, thresholds: Sequence[Threshold], display: Display) -> list[str]:
    """Return the nearest values on either side at which the leaf would open as far as it must."""
    parameter = found.parameter
    above = min((t.value for t in thresholds if t.upward and t.value > parameter.present), default=None)
    below = max((t.value for t in thresholds if not t.upward and t.value < parameter.present), default=None)
    said = []
    if above is not None:
        more = display.length(above - parameter.present, "up")
        said.append(f"from {from_value(parameter, above, display)} on ({more} more)")
    if below is not None:
        less = display.length(parameter.present - below, "up")
        said.append(f"up to {to_value(parameter, below, display)} ({less} less)")
    return said


def _always(found: WhatIf, display: Display) -> str:
    low, high = (display.length(end) for end in (found.parameter.low, found.parameter.high))
    return f" whatever it is from {low} to {high}"


def what_if_said(found: WhatIf, things: Sequence[Obstruction], display: Display, plain: bool = False) -> str:
    """Return all that the chart shows as sentences, for who cannot see it."""
    thresholds = "; ".join(threshold_words(one, found, things, display, plain)[0] for one in found.thresholds)
    headline = what_if_headline(found, display, plain)
    return f"{headline} {capitalized(thresholds)}." if thresholds else headline


def trial_words(
    found: WhatIf, value: float, study: Study, candidate: Candidate, display: Display, plain: bool = False
) -> str:
    """Say what a value on trial does, and which hinge the program would take then."""
    name = parameter_name(found.parameter, plain)
    said = f"{capitalized(name)} {at_value(found.parameter, value, display)}: "
    said += does_words(candidate, display, plain)
    met = candidate.stopped_by_bare
    if met is not None:
        said += f"; {_meets((met.kind, met.index, met.part), study.opening.obstructions)}"
    hinges = dict.fromkeys(
        display.size(leaf.parts["height"].value, leaf.parts["width"].value)
        for leaf in study.specification.leaves
        if leaf.parts["width"].value is not None
    )
    return f"{said}; hinge taken then: {' and '.join(hinges)}" if hinges else said


def on_the_good_side(found: WhatIf, threshold: Threshold, display: Display) -> float:
    """Return the value as it is shown where something turns: still on the side on which it holds; inches."""
    value = display.shown(threshold.value, "up" if threshold.upward else "down")
    return min(max(value, found.parameter.low), found.parameter.high)
