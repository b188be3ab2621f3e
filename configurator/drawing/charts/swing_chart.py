"""The chart of a swing: the door's angle across, how far it stands out from the wall up."""

from collections.abc import Sequence

from configurator.drawing.charts.chart import Axis, Chart, Curve, Mark, Rule, ticks_between
from configurator.drawing.charts.width_chart import length_axis
from configurator.model import Use
from configurator.study.hang import hinge_words
from configurator.study.over_the_swing import OverTheSwing, Standing
from configurator.tables import limit
from configurator.units import TOLERANCE, Display, format_decimal
from configurator.wording.swing_words import edges_said

_EVERY = 30.0


def swing_chart(swings: Sequence[OverTheSwing], chosen: int, use: Use, display: Display) -> Chart:
    """Return the chart of one leaf; the chosen width's curves are named, the others thin beside them."""
    one = swings[chosen]
    rules = corridor_rules(use, display)
    outs = [out for each in swings for s in (each.bare, each.with_hardware) for _, out in s.curve]
    ticks = tuple((at, format_decimal(at)) for at in ticks_between(0.0, 180.0, _EVERY))
    most = max([*outs, *(rule.at for rule in rules)])
    return Chart(
        across=Axis("door open, degrees", 0.0, 180.0, ticks),
        left=length_axis("stands out from the wall", min(0.0, *outs), most, display),
        curves=(*_beside(swings, chosen), *_chosen(one)),
        rules=rules,
        marks=_marks(one, display),
        said=edges_said(swings, display),
    )


def _beside(swings: Sequence[OverTheSwing], chosen: int) -> tuple[Curve, ...]:
    return tuple(
        Curve("A-CHRT-OTHR", each.bare.curve) for index, each in enumerate(swings) if index != chosen
    )


def _chosen(one: OverTheSwing) -> tuple[Curve, ...]:
    name = hinge_words(one.on)
    if not _apart(one.bare, one.with_hardware):
        return (Curve("A-CHRT-BARE", one.bare.curve, name),)
    return (
        Curve("A-CHRT-BARE", one.bare.curve, f"{name}, leaf alone", above=False),
        Curve("A-CHRT-HDWR", one.with_hardware.curve, "with its hardware"),
    )


def _apart(bare: Standing, fitted: Standing) -> bool:
    return fitted.rest != bare.rest or any(
        abs(a - b) > TOLERANCE for (_, a), (_, b) in zip(bare.curve, fitted.curve, strict=False)
    )


def _marks(one: OverTheSwing, display: Display) -> tuple[Mark, ...]:
    """Name the greatest and the rest of what ends the swing: the leaf with its hardware, if it has any."""
    standing = one.with_hardware
    most, rest = (standing.greatest_at, standing.greatest), (standing.rest, standing.at_rest)
    if most == rest:
        return (_mark(most, "greatest, and at rest,", display),)
    return _mark(most, "greatest", display), _mark(rest, "at rest", display)


def _mark(at: tuple[float, float], name: str, display: Display) -> Mark:
    angle, out = at
    said = f"{display.length(out, 'up')} at {display.angle(angle)}"
    return Mark(at, (f"{name} {said}", said))


def corridor_rules(use: Use, display: Display) -> tuple[Rule, ...]:
    """Return how far the door may stand out in the corridor that was given, in swing and at rest, inches.

    The limits are those the findings hold the door to: half of the required width left in any position, all
    of it but 7 in at rest. None where no corridor was given.
    """
    if use.corridor_width is None:
        return ()
    rules = [Rule("A-CHRT-WANT", use.corridor_width, f"corridor {display.exact(use.corridor_width)} wide")]
    if use.required_width is None:
        return tuple(rules)
    share, at_rest = limit("encroachment_share").value, limit("encroachment_at_rest").value
    swinging = use.corridor_width - use.required_width * share
    resting = use.corridor_width - (use.required_width - at_rest)
    if swinging > 0:
        rules.append(
            Rule("A-CHRT-WANT", swinging, f"may stand out {display.length(swinging, 'down')} while it swings")
        )
    if resting > 0:
        rules.append(Rule("A-CHRT-WANT", resting, f"may stand out {display.length(resting, 'down')} at rest"))
    return tuple(rules)
