"""The whole hinge of an opening: every part with its reason, and what there is to say of it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any

from configurator.model import Hinge, Way
from configurator.rules.checks.door_stop import holds_short_of_square
from configurator.rules.checks.egress import clear_width_asked
from configurator.rules.checks.hinge_checks import leaf_checks, opening_checks
from configurator.rules.checks.mends import no_width_findings, reveal_findings
from configurator.rules.checks.swing_notes import swing_notes
from configurator.rules.filling.leaves import leaves_of
from configurator.rules.filling.materials import fastening_of, place_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import way_hung_on
from configurator.rules.finding import Alternative, Finding, Fix, Reason, by_consequence, finding, reason
from configurator.rules.hinge.angle_not_asked import angle_findings
from configurator.rules.hinge.answers import Answers, Must
from configurator.rules.hinge.electric import electric_leaf, electric_place
from configurator.rules.hinge.fastening import LeafScrews, opening_screws
from configurator.rules.hinge.finish import (
    choose_finish,
    hinge_metal,
    matching,
    metal_of_number,
    stainless_alloy,
)
from configurator.rules.hinge.fire import spring_hinges
from configurator.rules.hinge.leaf_hinge import (
    NOTHING_ASKED,
    LeafHinge,
    old_hinge,
    override,
    reused,
    standard_for,
)
from configurator.rules.hinge.pin import hinge_pin, lock_of
from configurator.rules.hinge.weight import hinge_type
from configurator.rules.hinge.width import WidthAsked, ask_width
from configurator.rules.wording import plain
from configurator.tables import practice, words_of

PARTS = (
    "height",
    "width",
    "count",
    "mounting",
    "weight",
    "bearing",
    "leaf_thickness",
    "type",
    "knuckles",
    "base_metal",
    "alloy",
    "finish_bhma",
    "finish_us",
    "pin",
    "security_stud",
    "tip",
    "corner",
    "screws",
)
"""Every part of a hinge that can be ordered, in the order of the results."""


@dataclass(frozen=True, slots=True)
class LeafSpecification:
    """The hinges of one leaf, part by part.

    `screws_each` are the screws of one hinge by kind; `electric` is which hinge of this leaf carries wires,
    counted from the top, None for none.
    """

    leaf: str
    parts: Mapping[str, Reason]
    complete: bool
    screws_each: Mapping[str, Fraction] = field(default_factory=dict)
    electric: int | None = None

    @property
    def can_be_had(self) -> bool:
        """Whether there is a hinge width to order for this leaf at all."""
        return self.parts["width"].value is not None

    def as_data(self) -> dict[str, Any]:
        """Return the parts and their becauses as the results contract names them."""
        data = {key: part.value for key, part in self.parts.items()}
        return {**data, "because": {key: part.as_data() for key, part in self.parts.items()}}


@dataclass(frozen=True, slots=True)
class Specification:
    """The hinges of an opening; no leaves where the program does not choose hinges for it."""

    leaves: tuple[LeafSpecification, ...]
    findings: tuple[Finding, ...]
    screws: Reason | None = None
    """Those of the whole opening, by kind."""

    @property
    def whole(self) -> Mapping[str, Reason]:
        """The parts for the whole opening: of two leaves the higher hinge's, or the wider; counts added."""
        if not self.leaves:
            return {}
        leading = max(self.leaves, key=_height_then_width)
        if len(self.leaves) == 1 or self.screws is None:
            return leading.parts
        return {**leading.parts, "count": self._count(), "screws": self.screws}

    def as_data(self) -> dict[str, Any]:
        """Return `recommended` as the results contract names it; empty where nothing is chosen here."""
        if not self.leaves:
            return {}
        data = LeafSpecification("", self.whole, True).as_data()
        if len(self.leaves) > 1:
            data["leaves"] = {leaf.leaf: leaf.as_data() for leaf in self.leaves}
        return data

    def _count(self) -> Reason:
        each = [leaf.parts["count"] for leaf in self.leaves]
        because = "; ".join(
            f"{leaf.leaf} leaf {part.value}: {part.because}"
            for leaf, part in zip(self.leaves, each, strict=True)
        )
        return Reason(sum(part.value for part in each), because, each[0].source, each[0].mark)


def specify(
    filled: FilledOpening, hinges: Sequence[LeafHinge], answer: Answers, standard: Hinge | None = None
) -> Specification:
    """Return the hinges of an opening with reasons and findings.

    `hinges` are those of each leaf before a width is chosen; `answer` gives the geometry of a leaf on a width
    and is asked only for widths that matter; `standard` is the job's standard hinge, which outranks the rules
    as hinges by hand outrank both.
    """
    if refused := out_of_scope(filled):
        return Specification((), refused)
    given = standard or NOTHING_ASKED
    widths = _widths(filled, hinges, answer, given)
    whole, by_leaf = _screws(filled, hinges, given)
    leaves: list[LeafSpecification] = []
    found: list[Finding] = []
    for (hinge, width), screws in zip(widths, by_leaf, strict=True):
        spec, said = _leaf(filled, hinge, width, given, screws)
        leaves.append(spec)
        found += (*width.findings, *said, *leaf_checks(filled, hinge, spec.parts, given, answer))
        if (value := width.reason.value) is not None:
            must = must_of(filled, hinge)
            found += (*_width_findings(filled, width, answer.must(must.leaf), answer),)
            found += (*swing_notes(filled, must, value, answer), *angle_findings(filled, must, value, answer))
    found += opening_checks(filled, hinges, leaves[0].parts, whole, answer)
    return Specification(_wired(filled, hinges, leaves), by_consequence(found), whole)


def _width_findings(
    filled: FilledOpening, width: WidthAsked, must: Must, answer: Answers
) -> Iterator[Finding]:
    """Yield what would mend a leaf on which no width does all, or would do with a narrower hinge."""
    if width.least_bad is not None:
        yield from no_width_findings(filled, must, width.least_bad, answer)
    elif width.complete:
        yield from reveal_findings(filled, must, width.reason.value, answer)


def _screws(
    filled: FilledOpening, hinges: Sequence[LeafHinge], standard: Hinge
) -> tuple[Reason, tuple[LeafScrews, ...]]:
    opening = filled.opening
    held = fastening_of(opening.door.construction, opening.frame.kind)
    return opening_screws(hinges, held, opening.hinge or NOTHING_ASKED, standard)


def _wired(
    filled: FilledOpening, hinges: Sequence[LeafHinge], leaves: Sequence[LeafSpecification]
) -> tuple[LeafSpecification, ...]:
    """Return the leaves, the hinge that carries wires on the one it is counted on."""
    which = electric_place(filled.opening.hinge or NOTHING_ASKED, hinges)
    name = electric_leaf(hinges, which)
    return tuple(replace(leaf, electric=which) if leaf.leaf == name else leaf for leaf in leaves)


def _height_then_width(leaf: LeafSpecification) -> tuple[float, float]:
    return leaf.parts["height"].value, leaf.parts["width"].value or 0.0


def _widths(
    filled: FilledOpening, hinges: Sequence[LeafHinge], answer: Answers, standard: Hinge
) -> tuple[tuple[LeafHinge, WidthAsked], ...]:
    """Return each leaf's hinges with their width; both leaves of a Dutch door turn on one line, the wider."""
    widths = [ask_width(filled, one, answer, standard) for one in hinges]
    pairs = tuple(zip(hinges, widths, strict=True))
    if filled.opening.leaves != "dutch":
        return pairs
    ruling, wider = max(pairs, key=lambda pair: pair[1].reason.value or 0.0)
    because = f"the {ruling.leaf.name} leaf needs it, and the pins of both leaves must stand in one line"
    ruled = reason(wider.reason.value, because, practice("plan_geometry"), *wider.reason.alternatives)
    return tuple(
        (hinge, width if width.reason.value == ruled.value else replace(width, reason=ruled))
        for hinge, width in pairs
    )


def must_of(filled: FilledOpening, hinge: LeafHinge) -> Must:
    """Return what one leaf's hinge width has to do."""
    asked = clear_width_asked(filled, hinge.leaf.name)
    # A door stop short of square keeps every width from a clear width: no reason to choose between them.
    held = holds_short_of_square(filled.opening.stop_angle(hinge.leaf.name))
    least = None if asked is None or held else asked.least
    square = filled.width_policy == "square hinges"
    return Must(hinge.leaf.name, hinge.height.value, filled.wanted_angle, least, square)


def _leaf(
    filled: FilledOpening, hinge: LeafHinge, width: WidthAsked, standard: Hinge, screws: LeafScrews
) -> tuple[LeafSpecification, tuple[Finding, ...]]:
    opening = filled.opening
    by_hand = opening.hinge or NOTHING_ASKED
    standard = standard_for(standard, hinge.needed_height, filled.thickness)

    place = place_of(filled)
    bhma, us = _asked_finish(by_hand, standard)
    metal = override(by_hand.base_metal, standard.base_metal, metal_of_number(bhma, hinge_metal(place)))
    finish = choose_finish(metal.value, us, bhma, matching(opening.use.lock_finish_bhma, metal.value), place)
    parts = {
        "height": hinge.height,
        "width": width.reason,
        "count": hinge.count,
        "mounting": hinge.mounting,
        "weight": hinge.weight,
        "bearing": hinge.bearing,
        "leaf_thickness": hinge.leaf_thickness,
        "type": override(
            by_hand.type,
            standard.type,
            hinge_type(metal.value, hinge.bearing.value, hinge.weight.value, hinge.mounting.value),
        ),
        "knuckles": override(by_hand.knuckles, standard.knuckles, _usual(5, "knuckles")),
        "base_metal": metal,
        "alloy": override(by_hand.alloy, standard.alloy, stainless_alloy(place, metal.value)),
        "finish_bhma": finish.bhma,
        "finish_us": finish.us,
        "pin": override(by_hand.pin, standard.pin, hinge_pin(opening.hand, lock_of(filled))),
        "security_stud": override(by_hand.security_stud, standard.security_stud, _no_stud()),
        "tip": override(by_hand.tip, standard.tip, _usual("flat button", "tip", _HOSPITAL)),
        "corner": reused(
            by_hand.corner,
            standard.corner,
            old_hinge(filled).corner,
            _usual("square", "corner_square", *_ROUNDED),
            "the mortises are cut so",
        ),
        "screws": screws.of_leaf,
    }
    return LeafSpecification(hinge.leaf.name, parts, width.complete, screws.each), finish.findings


def _asked_finish(by_hand: Hinge, standard: Hinge) -> tuple[str | None, str | None]:
    """Return BHMA number and US code asked for; one by hand leaves no room for the standard's other."""
    if by_hand.finish_bhma is not None or by_hand.finish_us is not None:
        return by_hand.finish_bhma, by_hand.finish_us
    return standard.finish_bhma, standard.finish_us


_HOSPITAL = Alternative("hospital", words_of("hospital_tip"))
_ROUNDED = (
    Alternative("1/4 radius", words_of("corner_quarter")),
    Alternative("5/8 radius", words_of("corner_five_eighths")),
)


def _usual(value: Any, key: str, *others: Alternative) -> Reason:
    return reason(value, words_of(key), practice(key), *others)


def _no_stud() -> Reason:
    words = "only where a pin that can be drawn would open a locked door"
    return reason(False, words, practice("pin_outswing"))


_HUNG = {
    "pivots": "hung on pivots",
    "continuous hinge": "hung on a continuous hinge",
    "spring hinges": "hung on spring hinges",
    "by others": "hung by others",
}


def out_of_scope(filled: FilledOpening) -> tuple[Finding, ...]:
    """Return why nothing is chosen or ordered for this opening; empty where butt hinges are chosen."""
    hung_on = filled.opening.hung_on
    if hung_on == "butt hinges":
        return ()
    message = (
        f"This door is {_HUNG[hung_on]}: only butt hinges are chosen here, so nothing is ordered for it. "
        "Order what it hangs on from whoever supplies that."
    )
    if (way := way_hung_on(filled.opening)) is not None:
        message = (
            f"This door is {_HUNG[hung_on]}, so no butts are chosen for it. The order counts its "
            f"{way.hung_on} on a line of its own; ask for the drawing first."
        )
    said = finding("not here", "note", message, practice("not_here"))
    if hung_on == "spring hinges" and filled.use.fire_rated:
        return (*(spring_hinges(filled.thickness, leaf) for leaf in leaves_of(filled)), said)
    return (said,)


MOST_COMPARED = 12


def compared_findings(
    specification: Specification, widths: Sequence[float], entries: Sequence[float | Way]
) -> Iterator[Finding]:
    """Yield which hinge open widths taken for the opening are not among those compared; inches.

    `entries` are those and the other ways of hanging compared, as they were asked for.
    """
    recommended = {leaf.parts["width"].value for leaf in specification.leaves}
    missing = sorted(width for width in recommended if width is not None and width not in widths)
    if not missing:
        return
    named = " and ".join(plain(width) for width in missing)
    whole = (*sorted({*widths, *missing}), *(one for one in entries if isinstance(one, Way)))
    among = "ways compared" if not widths else "widths compared"
    among += f" ({', '.join(plain(width) for width in dict.fromkeys(widths))})" if widths else ""
    is_are, it = ("is", "it") if len(missing) == 1 else ("are", "them")
    message = f"{named} {is_are} not among the {among}, but taken for this opening: add {it} to compare."
    fix = (Fix("compare", whole, f"Compare {named} too"),) if len(whole) <= MOST_COMPARED else ()
    yield finding("width not compared", "note", message, practice("plan_geometry"), fix, width=missing[-1])
