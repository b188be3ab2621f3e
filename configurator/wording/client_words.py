"""What the client's page says, without the trade's terms: three sentences, a table, the recommendation."""

from collections.abc import Mapping
from types import MappingProxyType

from configurator.model import Opening
from configurator.records import dataclass
from configurator.rules.checks.mends import WHAT_WOULD
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.hinge.answers import Stopped
from configurator.rules.hinge.finish import finishes
from configurator.rules.specification import LeafSpecification
from configurator.rules.wording import counted, hardware, obstruction, the_leaf
from configurator.sentences import capitalized
from configurator.study import Candidate, Study
from configurator.study.events import gap_on_the_way
from configurator.study.hang import on_words
from configurator.study.widths.width_pair import WidthPair, other_leaves
from configurator.units import TOLERANCE, Display, format_size
from configurator.wording.comparison import Comparison, comparisons
from configurator.wording.hinge_words import spelled_value

FLAT, _NEARLY_FLAT = 180.0, 170.0
"""Degrees: open flat, and what a client would still call so when a lever meets the wall."""
_ROWS: Mapping[str, str] = MappingProxyType(
    {
        "greatest_angle": "the door opens to",
        "rests_at": "the door comes to rest at",
        "clear_width_at_90": "way through, door square open",
        "barrel_past_frame": "the hinge stands out from the frame by",
        "clear_past_frame_at_180": "room behind the door when it lies open flat",
        "encroachment_greatest": "the door stands out into the room, at most",
        "leaf_out_at_rest": "the door stands out into the room, left open",
    }
)
"""The facts a client is shown, in their order, and what they are called."""
_NOTHING_TO_SPARE = 1 / 32
"""Inches under which nobody builds: a door that passes by less is said to have nothing to spare."""
_LITTLE = 10.0
"""Degrees short of what was asked that hardware may end a swing without a word beside the recommendation."""
NOTHING_RECOMMENDED = "No hinge is recommended as things are: read what is said under 'Please note'."
NOT_CHOSEN = "The hinges of this opening are not chosen here."


@dataclass(frozen=True, slots=True)
class ClientTable:
    """Headings, the first one empty, and rows that begin with what was measured."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def door_named(opening: Opening) -> str:
    """Return what a client calls a door: by its mark, and where it leads."""
    return f"Door {opening.mark}" + (f", {opening.location}" if opening.location else "")


def client_sayings(study: Study, two: WidthPair, display: Display) -> tuple[str, ...]:
    """Return all that is said under a client's picture: the three sentences, and of another leaf its own."""
    return (*three_sentences(study, two, display), *others_said(study, two, display))


def three_sentences(study: Study, two: WidthPair, display: Display) -> tuple[str, str, str]:
    """Return what the one width does, what the other one does, and what the difference costs.

    With a single width: what it does, how wide the way through is, how far the door stands into the room.
    """
    if two.wider is None:
        only = two.narrower
        return _opens(only, two, display), _way_through(only, display), _into_room(only, display)
    last = _cost(two.narrower, two.wider, display)
    first = _opens(two.narrower, two, display)
    if _alike(two.narrower, two.wider):
        return (
            first.replace(_on(two.narrower), "Hung either way" if two.other_way else "On either hinge"),
            _left_open(two, display),
            last,
        )
    second = f"{_opens(two.wider, two, display)} {_against_wish(study.filled, two, display)}"
    return first, second.strip(), last


def client_table(study: Study, two: WidthPair, display: Display) -> ClientTable:
    """Return the facts that matter to a client, each width in a column, and the difference in words."""
    (found,) = comparisons(two.of(study), display)
    flat = any(_lies_flat(one) for one in two.both)
    keys = [key for key in _ROWS if _has(found, key) and (flat or key != "clear_past_frame_at_180")]
    rows = [_row(found, key, _ROWS[key]) for key in keys]
    headings = [one.hinge_words for one in two.both]
    last = ("difference",) if two.wider is not None else ()
    return ClientTable(("", *headings, *last), tuple(rows))


def recommendation(study: Study, two: WidthPair, display: Display) -> tuple[str, ...]:
    """Return what is recommended for each leaf and why, one paragraph each."""
    leaves = study.specification.leaves
    if not leaves:
        return (NOT_CHOSEN,)
    if study.errors:
        return (NOTHING_RECOMMENDED, *_what_would(study, display))
    return tuple(
        _recommended(leaf, study, display, len(leaves) > 1, two.leaf == leaf.leaf) for leaf in leaves
    )


def _what_would(study: Study, display: Display) -> tuple[str, ...]:
    """Return what the rules found to mend it, as they say it; nothing where no width is at fault."""
    stuck = (one for one in study.findings if one.code == "no width does everything")
    return tuple(WHAT_WOULD + found[1] for one in stuck if (found := one.said(display).split(WHAT_WOULD))[1:])


def others_said(study: Study, two: WidthPair, display: Display) -> tuple[str, ...]:
    """Return what the leaf that is not pictured does on each width; none where there is one leaf."""
    return tuple(
        f"The {leaf} leaf is not pictured: it opens to {_angles_of(study, leaf, display)}."
        for leaf in other_leaves(study, two.leaf)
    )


def _angles_of(study: Study, leaf: str, display: Display) -> str:
    angles = {
        one.hinge_words: display.angle(one.greatest_angle) for one in study.candidates if one.leaf == leaf
    }
    if len(angles) > 1 and len(set(angles.values())) == 1:
        return f"{next(iter(angles.values()))} on {'either' if len(angles) == 2 else 'each'} hinge"
    return ", ".join(f"{angle} on the {hinge}" for hinge, angle in angles.items())


def part_named(name: str) -> str:
    """Return what a client calls a moving part: the leaf is the door itself."""
    return {"leaf": "the door", "barrel": "the hinge"}.get(name, f"the {hardware(name)}")


def thing_named(kind: str) -> str:
    """Return what a client calls what stands in the way."""
    return {"latch jamb": "frame on the lock side", "stop": "rim of the frame"}.get(kind, obstruction(kind))


def _on(one: Candidate) -> str:
    return on_words(one.on)


def _opens(one: Candidate, two: WidthPair, display: Display) -> str:
    door = the_leaf(two.leaf)
    begin = f"{_on(one)} {door}"
    if _rests_before(one):
        return f"{begin} comes to rest at {display.angle(one.rests_at)} against its {_held_by(one)}."
    if one.stopped_by is None:
        return f"{begin} opens all the way, flat to 180°{_to_spare(one)}."
    return f"{begin} opens to {display.angle(one.greatest_angle)}, where {_meeting(one.stopped_by)}."


def end_words(one: Candidate, display: Display) -> tuple[str, ...]:
    """Return what ends a swing, short, to stand over a picture: the fullest wording first."""
    angle = display.angle(one.rests_at)
    if _rests_before(one):
        return f"rests at {angle} against its {_held_by(one)}", f"rests at {angle}"
    if one.stopped_by is None:
        return ("open all the way, 180°", "open 180°")
    return f"stops at {angle}: {_meeting(one.stopped_by)}", f"stops at {angle}"


def _to_spare(one: Candidate) -> str:
    """Say so where a door, as it swings, all but touches what it passes."""
    gap = gap_on_the_way(one.solution, one.solution.rest_angle)
    return ", with nothing to spare" if gap is not None and gap.distance < _NOTHING_TO_SPARE else ""


def _met(one: Candidate) -> tuple[str, int | None, str] | None:
    return None if one.stopped_by is None else one.stopped_by.between


def _meeting(stopped: Stopped) -> str:
    return f"{part_named(stopped.part)} meets the {thing_named(stopped.kind)}"


def _held_by(one: Candidate) -> str:
    """Name what holds a door before it comes to anything: the stop that was drawn, or that at an angle."""
    place = one.door_stop
    if place is None or not place.holds or place.rests_at is None:
        return "door stop"
    return place.kind if place.rests_at <= one.rests_at + TOLERANCE else "door stop"


def _rests_before(one: Candidate) -> bool:
    """Whether a door stop holds the door before it comes to anything else."""
    return one.rests_at < one.greatest_angle - TOLERANCE


def _alike(narrower: Candidate, wider: Candidate) -> bool:
    """Whether the door goes just as far on either hinge, for the same reason, with as much to spare."""
    if abs(narrower.rests_at - wider.rests_at) > TOLERANCE or _to_spare(narrower) != _to_spare(wider):
        return False
    held = _rests_before(narrower), _rests_before(wider)
    return all(held) or (not any(held) and _met(narrower) == _met(wider))


def _lies_flat(one: Candidate) -> bool:
    return one.greatest_angle_bare >= FLAT - TOLERANCE and one.rests_at >= _NEARLY_FLAT


def _left_open(two: WidthPair, display: Display) -> str:
    """Say of a door that goes as far on either hinge how the two differ when it is left open."""
    assert two.wider is not None
    hinge = two.wider.hinge_words
    if _lies_flat(two.narrower) and _lies_flat(two.wider):
        one, other = (display.length(x.clear_past_frame_at_180, "down") for x in (two.narrower, two.wider))
        return f"Lying open flat it leaves {one} between frame and door, on the {hinge} {other}."
    one, other = (display.length(x.leaf_out_at_rest, "up") for x in (two.narrower, two.wider))
    return f"Left open it stands {one} out into the room, on the {hinge} {other}."


def _against_wish(filled: FilledOpening, two: WidthPair, display: Display) -> str:
    """Say what was wished for where one of the widths comes to it and the other does not."""
    assert two.wider is not None
    wish = filled.wanted_angle
    reached = [one.greatest_angle_bare >= wish - TOLERANCE for one in (two.narrower, two.wider)]
    usual = "use.wanted_angle" in filled.assumed  # then nobody has asked for it
    words = f"{display.angle(wish, 'up')} {'is what is usually wished for' if usual else 'was asked for'}"
    if reached[0] == reached[1]:
        return ""
    if two.other_way:
        return (
            f"{words}; only the {two.both[reached.index(True)].hinge_words} lets the door itself go so far."
        )
    return f"{words}; only the {'wider' if reached[1] else 'narrower'} hinge lets the door itself go so far."


def _widths_of_passage(first: Candidate, other: Candidate, display: Display) -> str:
    """Say how wide the way through is where one of the two hangs another way."""
    said = [
        f"{display.length(one.clear_width_at_90, 'down')} on the {one.hinge_words}"
        for one in (first, other)
        if one.clear_width_at_90 is not None
    ]
    return f"The way through, {_square(other)} square open: {' and '.join(said)}." if said else ""


def _cost(narrower: Candidate, wider: Candidate, display: Display) -> str:
    if narrower.way is not None or wider.way is not None:
        return _widths_of_passage(narrower, wider, display)
    out = display.length(wider.barrel_past_frame - narrower.barrel_past_frame)
    words = f"The wider hinge itself stands out {out} farther from the frame"
    one, other = narrower.clear_width_at_90, wider.clear_width_at_90
    if one is None or other is None:
        return f"{words}."
    if abs(one - other) <= TOLERANCE:
        return f"{words}; the way through stays {display.length(one, 'down')} wide."
    change = f"{display.length(abs(other - one))} {'narrower' if other < one else 'wider'}"
    now = display.length(other, "down")
    return f"{words}, and the way through is {change}: {now} with {_square(wider)} square open."


def _square(one: Candidate) -> str:
    """Name what stands square open: an inactive leaf opens behind the active one, which is open already."""
    if one.leaf in ("single", "inactive"):
        return "the door" if one.leaf == "single" else "both leaves"
    return f"the {one.leaf} leaf alone"


def _way_through(one: Candidate, display: Display) -> str:
    if one.clear_width_at_90 is None:
        return "It does not open square, so no width of the way through is given."
    wide = display.length(one.clear_width_at_90, "down")
    return f"With {_square(one)} square open the way through is {wide} wide."


def _into_room(one: Candidate, display: Display) -> str:
    at_rest, most = (display.length(x, "up") for x in (one.leaf_out_at_rest, one.encroachment_greatest))
    return f"Left open it stands {at_rest} out into the room, and {most} at most while it swings."


def _has(table: Comparison, key: str) -> bool:
    row = next((row for row in table.rows if row.key == key), None)
    return row is not None and any(value != "not reached" for value in row.values)


def _row(table: Comparison, key: str, name: str) -> tuple[str, ...]:
    row = next(row for row in table.rows if row.key == key)
    values = tuple(value.partition(",")[0] for value in row.values)  # what ends a swing is in the sentences
    return (name, *values, row.difference) if len(values) > 1 else (name, *values)


def _recommended(
    leaf: LeafSpecification, study: Study, display: Display, several: bool, pictured: bool
) -> str:
    parts = {key: reason.value for key, reason in leaf.parts.items()}
    whose = (
        f"For the {leaf.leaf} leaf" if several else "For each opening" if study.opening.quantity > 1 else ""
    )
    if parts["width"] is None:
        return f"{whose or 'Here'}: no hinge width to be had does all that this opening asks."
    count = counted(parts["count"], "hinge", "hinges")
    size = display.size(parts["height"], parts["width"])
    metal = spelled_value("base_metal", parts["base_metal"], display)
    looks = {row.look for row in finishes(bhma=parts["finish_bhma"])} if parts["finish_bhma"] else set()
    look = f", {looks.pop()}" if len(looks) == 1 else ""
    begin = f"{whose}: {count}" if whose else capitalized(count)
    why = _why(study, leaf, pictured, display)
    return f"{begin}, {size} in (height x width opened flat), {metal}{look}.{why}"


def _why(study: Study, leaf: LeafSpecification, pictured: bool, display: Display) -> str:
    width = leaf.parts["width"].value
    tried = [one for one in study.butts if one.leaf == leaf.leaf and one.hinge_width == width]
    if not tried:
        return " This width is not among those pictured."
    if any(finding.code == "no width does everything" for finding in study.findings):
        return " It is the least bad of those to be had: read what is said under 'Please note'."
    wish = study.filled.wanted_angle - TOLERANCE
    if not pictured or tried[0].greatest_angle_bare < wish:
        return ""
    if tried[0].stopped_by is not None and tried[0].greatest_angle < wish - _LITTLE:
        on_it, angle = tried[0].stopped_by.part, display.angle(tried[0].greatest_angle)
        return f" With it the door alone would open as far as asked; the {on_it} on it ends that at {angle}."
    narrower = [one for one in study.butts if one.leaf == leaf.leaf and one.hinge_width < width]
    if narrower and all(one.greatest_angle_bare < wish for one in narrower):
        return " Of the widths compared it is the narrowest with which the door itself opens as far as asked."
    return " With it the door itself opens as far as asked."


def hinge_title(one: Candidate) -> str:
    """Return what heads the picture of a candidate."""
    return capitalized(one.name) if one.way else f"Hinge {_wide(one.hinge_width)} wide"


def _wide(width: float) -> str:
    """Hinges are sold by the inch, whatever lengths are shown in."""
    return f"{format_size(width)} in"
