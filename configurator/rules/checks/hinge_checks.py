"""The chosen hinge checked again, part by part, whoever chose each part."""

from collections.abc import Iterator, Mapping, Sequence

from configurator.model import Hinge
from configurator.rules.checks.egress import (
    ClearWidthAsked,
    Corridor,
    Projecting,
    clear_width_asked,
    clear_width_findings,
    corridor_findings,
    depth_findings,
    projection_findings,
)
from configurator.rules.checks.hinge_fit import fit_findings
from configurator.rules.checks.opening_findings import question_findings
from configurator.rules.checks.overrides import asked_part_findings, height_findings
from configurator.rules.checks.slips import (
    one_leaf_or_two,
    pairs_for_hinges,
    reference_face,
    swapped_door,
    too_few_hinges,
    two_leaf_count,
)
from configurator.rules.filling.door_weight import made_of, sheet_weight
from configurator.rules.filling.leaves import leaves_of
from configurator.rules.filling.materials import Fastening, fastening_of, place_of
from configurator.rules.filling.places import places_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, Reason, Source, finding
from configurator.rules.hinge.answers import Answer, by_template, stopped_at
from configurator.rules.hinge.electric import electric_findings
from configurator.rules.hinge.fastening import fastening_findings, made_to_template
from configurator.rules.hinge.finish import lock_finish_findings, metal_findings
from configurator.rules.hinge.fire import FireHinge, fire_findings
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED, WOULD_TAKE, LeafHinge, old_hinge
from configurator.rules.hinge.pin import (
    hand_of_hinge_findings,
    lock_findings,
    lock_of,
    lock_unknown,
    pin_findings,
)
from configurator.rules.hinge.replacement import Cut, existing_findings
from configurator.rules.hinge.sizes import height_row
from configurator.rules.hinge.weight import (
    REACTIONS_SOURCE,
    given_weight_findings,
    lite_findings,
    reactions,
    unknown_weight_findings,
)
from configurator.rules.wording import exactly, plain, the_leaf
from configurator.sentences import capitalized
from configurator.tables import HardwareKindRow, ObstructionKindRow, limit, practice, row_of, words_of
from configurator.units import TOLERANCE, format_decimal

Parts = Mapping[str, Reason]
NEARLY_FLAT = 175.0
"""Degrees from which an open door counts as flat against the wall: a lever or a bumper holds it so."""


def leaf_checks(
    filled: FilledOpening, hinge: LeafHinge, parts: Parts, standard: Hinge, answer: Answer
) -> Iterator[Finding]:
    """Yield the findings about one leaf's hinges."""
    yield from _outside_tables(filled, hinge)
    yield from _beside_the_rows(filled, hinge)
    yield from height_findings(filled, hinge, standard)
    yield from fit_findings(filled, hinge)
    yield from _count(filled, hinge)
    yield from _duty(filled, hinge, parts)
    yield from _type(parts)
    yield from _fire(filled, hinge, parts)
    yield from _weight(filled, hinge)
    door, leaf = filled.opening.door, hinge.leaf
    yield from unknown_weight_findings(leaf.name, hinge.door_weight, leaf.width, leaf.height)
    made = made_of(filled.opening, filled.thickness, leaf.name)
    yield from given_weight_findings(door.weight, sheet_weight(made, leaf.width, leaf.height))
    yield from lite_findings(door, leaf)
    if parts["width"].value is not None:
        yield from _passage(filled, hinge, parts, answer)
        yield from _existing(filled, parts)


def opening_checks(
    filled: FilledOpening, hinges: Sequence[LeafHinge], parts: Parts, screws: Reason, answer: Answer
) -> Iterator[Finding]:
    """Yield the findings about the opening as a whole.

    `parts` are those of its first leaf's hinges, `screws` those of all its leaves.
    """
    opening, use = filled.opening, filled.opening.use
    fire = filled.use.fire_rated
    size = filled.opening_width, filled.opening_height, opening.leaves
    yield from filter(None, [swapped_door(*size), one_leaf_or_two(*size)])
    stud = bool(parts["security_stud"].value)
    yield from pin_findings(opening.hand, lock_of(filled), parts["pin"].value, stud)
    yield from hand_of_hinge_findings(parts["mounting"].value, opening.hand)
    yield from lock_unknown(filled)
    yield from lock_findings(opening)
    metal, finish = parts["base_metal"].value, parts["finish_bhma"].value
    of_metal = metal_findings(place_of(filled), metal, finish)
    yield from of_metal
    yield from lock_finish_findings(use.lock_finish_bhma, metal, finish, not of_metal)
    held = fastening_of(opening.door.construction, opening.frame.kind)
    by_hand = opening.hinge or NOTHING_ASKED
    yield from asked_part_findings({**parts, "screws": screws}, held, by_hand)
    yield from fastening_findings(parts["height"].value, held, opening.door.construction, fire)
    yield from _hinges_of_all_leaves(filled, hinges)
    yield from electric_findings(hinges, by_hand)
    if parts["width"].value is not None:
        yield from _closer(filled, parts)
        yield from _measured_from(filled, parts)
        yield from _corridor(filled, parts, answer)
    yield from _lead_lined(filled)
    yield from question_findings(filled, parts)


def _outside_tables(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    leaf = hinge.leaf
    for key, value, over in (
        ("tallest_leaf", leaf.height, True),
        ("narrowest_leaf", leaf.width, False),
        ("thickest_door", filled.thickness, True),
    ):
        row = limit(key)
        if (value > row.value + TOLERANCE) if over else (value < row.value - TOLERANCE):
            shown, bound = (
                exactly(value, "up" if over else "down"),
                exactly(row.value, "down" if over else "up"),
            )
            message = (
                f"{shown}: {row.words} ({bound}). Check the number; if it is right, ask "
                "the door's and the hinge's makers, as the answer here is only a continuation of the tables."
            )
            yield finding("outside the tables", "error", message, row.cited, value=value, limit=row.value)


def _beside_the_rows(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    """Say that the table of hinge heights ends before a leaf so wide and so thin; it is not carried on."""
    width, row = hinge.leaf.width, height_row(filled.thickness, hinge.leaf.width)
    if row.width_to is None or width <= row.width_to + TOLERANCE:
        return
    message = (
        f"{exactly(width, 'up')} wide: for a door {exactly(filled.thickness)} thick the table of hinge "
        f"heights ends at {exactly(row.width_to)}. Check thickness and width; if they are right, ask the "
        "door's and the hinge's makers."
    )
    yield finding("outside the tables", "error", message, row.cited, value=width, limit=row.width_to)


def _count(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    needed, count = hinge.needed_count.value, hinge.count.value
    quantity = filled.opening.quantity
    few = too_few_hinges(hinge.leaf.name, needed, count, quantity, hinge.leaf.height)
    yield from filter(None, [few, pairs_for_hinges(quantity, needed, count)])


def _existing(filled: FilledOpening, parts: Parts) -> tuple[Finding, ...]:
    opening = filled.opening
    if opening.existing_hinge is None:
        return ()
    held = fastening_of(opening.door.construction, opening.frame.kind)
    return existing_findings(opening.existing_hinge, _cut_for(parts, held), held, filled.use.fire_rated)


def _cut_for(parts: Parts, held: Fastening) -> Cut:
    """Return what a mortise for the chosen hinge is like."""
    return Cut(
        height=parts["height"].value,
        width=parts["width"].value,
        leaf_thickness=parts["leaf_thickness"].value,
        corner=parts["corner"].value,
        to_template=made_to_template(parts["height"].value, held),
        mounting=parts["mounting"].value,
        count=parts["count"].value,
    )


def _hinges_of_all_leaves(filled: FilledOpening, hinges: Sequence[LeafHinge]) -> Iterator[Finding]:
    given = (filled.opening.hinge or NOTHING_ASKED).count
    if given is None or filled.opening.leaves == "single":
        return
    needed = sum(hinge.needed_count.value for hinge in hinges)
    yield from filter(None, [two_leaf_count(filled.opening.leaves, needed, given, filled.opening.quantity)])


def _duty(filled: FilledOpening, hinge: LeafHinge, parts: Parts) -> Iterator[Finding]:
    bearing, weight = parts["bearing"].value, parts["weight"].value
    if bearing == "plain" and filled.use.closer:
        message = f"Plain bearing with a closer: {words_of('bearing_closer')}. Take bearing hinges."
        fix = (Fix("hinge.bearing", "ball", "Take bearing hinges"),)
        yield finding("plain bearing with closer", "error", message, practice("bearing_closer"), fix)
    asks = [other for other in hinge.weight.alternatives if other.value == "heavy"]
    if weight == "standard" and asks:
        yield _too_light(hinge, asks[0].effect.removeprefix(WOULD_TAKE), old_hinge(filled).leaf_thickness)


def _too_light(hinge: LeafHinge, why: str, gage: float | None) -> Finding:
    """Say that standard weight is little; old mortises in steel nobody cuts deeper by choice."""
    source = Source(hinge.needed_weight.source, hinge.needed_weight.mark)
    fix: tuple[Fix, ...] = (Fix("hinge.weight", "heavy", "Take heavy weight"),)
    message = f"Standard weight was asked for where heavy is due: {why}. Take heavy weight."
    if gage is not None:
        fix = ()
        message = (
            f"The mortises are {exactly(gage)} deep, for standard weight, where heavy is due: {why}. Heavier "
            "leaves need deeper mortises, which in steel are not cut by choice: keep the gage, or ask who "
            "made door and frame."
        )
    return finding("weight too light", "warning", message, source, fix)


def _type(parts: Parts) -> Iterator[Finding]:
    """A type asked for that stands for another hinge than the parts beside it."""
    type_ = parts["type"]
    known = [other.value for other in type_.alternatives if other.value is not None]
    if known:
        message = (
            f"Type {type_.value} was asked for; the weight, bearing and metal chosen are {known[0]}. "
            f"Take {known[0]}, or change what does not agree."
        )
        fix = (Fix("hinge.type", known[0], f"Take {known[0]}"),)
        yield finding("type disagrees", "warning", message, practice("type"), fix)


def _fire(filled: FilledOpening, hinge: LeafHinge, parts: Parts) -> tuple[Finding, ...]:
    if not filled.use.fire_rated:
        return ()
    leaf = hinge.leaf
    return fire_findings(
        FireHinge(
            thickness=filled.thickness,
            width=leaf.width,
            leaf_height=leaf.height,
            hinge_height=parts["height"].value,
            leaf_thickness=parts["leaf_thickness"].value,
            bearing=parts["bearing"].value,
            minutes=filled.opening.fire_minutes,
            needed_height=max(hinge.needed_height.value, filled.opening.prepared_height or 0.0),
        )
    )


def _weight(filled: FilledOpening, hinge: LeafHinge) -> Iterator[Finding]:
    pounds, leaf, count = hinge.door_weight, hinge.leaf, hinge.count.value
    places = places_of(filled, leaf, count, hinge.height.value)
    apart = places[-1][0] - places[0][0]
    if pounds is None or pounds.guessed or apart <= TOLERANCE:
        return
    least, most = (reactions(weight, leaf.width, apart, count) for weight in (pounds.low, pounds.high))
    given = filled.opening.door.weight is not None
    ask = (
        "The weight is as given: check it is one leaf's."
        if given
        else "Give the weight if it is known better."
    )
    message = (
        f"{capitalized(the_leaf(leaf.name))} weighs "
        f"{_range(pounds.low, pounds.high)} lb; each of its hinges carries "
        f"{_range(least.share, most.share)} lb and the top one is pulled "
        f"{_range(least.pull, most.pull)} lb toward the lock side. {ask}"
    )
    source = Source(f"weight: {pounds.source.text}; forces: {REACTIONS_SOURCE.text}", pounds.source.mark)
    yield finding("door weight", "note", message, source, weight=pounds.high, pull=most.pull, apart=apart)


def _range(low: float, high: float) -> str:
    """Write pounds from the least to the most, whole; one number where both are that."""
    least, most = format_decimal(low, 0, "down"), format_decimal(high, 0, "up")
    return most if low == high else f"{least} to {most}"


def _passage(filled: FilledOpening, hinge: LeafHinge, parts: Parts, answer: Answer) -> tuple[Finding, ...]:
    name, height = hinge.leaf.name, parts["height"].value
    asked = clear_width_asked(filled, name)
    if asked is None or by_template(parts["mounting"].value):
        return ()
    found = answer(name, parts["width"].value)
    stop = stopped_at(found) or filled.opening.stop_angle(name)
    passage = clear_width_findings(name, filled.opening_width, height, found, asked, stop)
    clear = found.clear_width_at_90
    return (*passage, *depth_findings(filled, clear), *_projections(filled, name, clear, asked))


def _projections(
    filled: FilledOpening, leaf: str, clear: float | None, asked: ClearWidthAsked
) -> Iterator[Finding]:
    """Check the hardware on the push face of a leaf; of two leaves, only the hardware given to this one."""
    for thing in filled.opening.carried_by(leaf):
        if thing.face == "push":
            half = thing.vertical / 2
            box = Projecting(thing.kind, thing.projection, thing.height - half, thing.height + half)
            yield from projection_findings(box, clear, asked.strict)


def _lead_lined(filled: FilledOpening) -> Iterator[Finding]:
    wide, door = limit("lead_lined"), filled.opening.door.construction
    # The rule speaks of 3 ft doors, which are the opening's width; the leaf itself is a little less.
    if door != "lead-lined" or filled.opening_width < wide.value - TOLERANCE:
        return
    message = (
        f"A lead-lined door {exactly(filled.opening_width)} wide: one military rule, since withdrawn, hung "
        f"such doors from {exactly(wide.value)} on pivots. Hinges are chosen by its weight; ask the door's "
        "maker whether it is made for them."
    )
    fix = (Fix("hung_on", "pivots", "Hang it on pivots"),)
    yield finding("lead-lined", "warning", message, wide.cited, fix, width=filled.opening_width)


def _closer(filled: FilledOpening, parts: Parts) -> Iterator[Finding]:
    row, width = limit("closer_template"), parts["width"].value
    described = any(row_of(HardwareKindRow, one.kind).limits != "no" for one in filled.opening.hardware)
    # A closer that is described has its own template, read with every width.
    if filled.use.closer and not described and width > row.value + TOLERANCE:
        message = (
            f"The hinge is {plain(width)} wide, over {plain(row.value)}: {words_of('closer_wide')}. "
            "Check the closer's template for that hinge before ordering."
        )
        yield finding("closer template", "warning", message, row.cited, width=width)


def _measured_from(filled: FilledOpening, parts: Parts) -> Iterator[Finding]:
    """Ask of every rail, base or the like whether it was measured from the frame, where that decides."""
    if filled.wanted_angle < 180 - TOLERANCE or parts["mounting"].value != "full mortise":
        return
    hinge = parts["height"].value, parts["width"].value
    for place, thing in enumerate(filled.opening.obstructions):
        row = row_of(ObstructionKindRow, thing.kind)
        likely = row.measured_from == "wall" and row.outline == "box"
        if thing.side == "hinge" and likely and thing.projection:
            past_door = thing.projection + filled.inset  # what it would stand past the door's face
            least = 2 * (filled.thickness - filled.door_backset) + past_door
            path = f"obstructions.{place}.projection"
            slip = reference_face(path, thing.kind, thing.projection, filled.frame_proud, hinge, least)
            yield from filter(None, [slip])


def _corridor(filled: FilledOpening, parts: Parts, answer: Answer) -> tuple[Finding, ...]:
    use = filled.opening.use
    if use.corridor_width is None or use.required_width is None:
        return ()
    found = answer(leaves_of(filled)[0].name, parts["width"].value)
    reaches_flat = found.greatest_angle_bare >= 180 - TOLERANCE and found.greatest_angle >= NEARLY_FLAT
    flat = found.clear_past_frame_at_180 + filled.frame_proud + filled.thickness if reaches_flat else None
    return corridor_findings(
        Corridor(
            use.corridor_width,
            use.required_width,
            found.encroachment_greatest,
            found.leaf_out_at_rest,
            flat,
        )
    )
