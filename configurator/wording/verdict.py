"""What a client is told of a door at two hinges: how far it opens on each, which one to take, and why.

The one teller of it: screen, full screen, page and moving picture word nothing of their own. Everyday words,
and no degrees that make no difference to a hand: a door within a hand's width of flat opens all the way.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal

from configurator.rules.hinge.answers import holder_of, stopped_at
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED
from configurator.sentences import capitalized
from configurator.study import Candidate, Study
from configurator.study.events import gap_on_the_way, held_by
from configurator.study.widths.width_pair import WidthPair, cut_for, hung_alike
from configurator.tables import ObstructionKindRow, row_of
from configurator.units import TOLERANCE, Display, format_size
from configurator.wording.client_words import (
    NOT_CHOSEN,
    caution_of,
    difference,
    part_named,
    thing_named,
    way_through,
)

HAND = 4.0
"""A hand's width, inches: by less than this at its free edge nobody tells one open door from another."""
_WORTH_SAYING = 1.0
"""Inches: that a door passes a thing by more than this is not said."""
NOTHING_TO_SPARE = 1 / 32
"""Inches under which nobody builds: a door that passes by less is said to have nothing to spare."""
State = Literal["flat", "held", "enough", "short", "unfit"]
LEAF_NAMES: Mapping[str, str] = MappingProxyType(
    {"upper": "Upper half", "lower": "Lower half", "active": "First door", "inactive": "Second door"}
)
"""What a client calls each of two leaves."""
_FREE = "Nothing stands in its way."
_WORST: tuple[State, ...] = ("flat", "held", "enough", "short", "unfit")
"""The states from best to worst."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """How a door does at one hinge: its state, a title to be read across a room, and one sentence why.

    `leaf` is the one of two leaves that it is about: the one that does worst.
    """

    state: State
    title: str
    because: str
    leaf: str

    @property
    def good(self) -> bool:
        """Whether the door does what it is to do."""
        return self.state not in ("short", "unfit")


@dataclass(frozen=True, slots=True)
class Advice:
    """Which hinge to take, in one line, and under it what the choice costs.

    `taken` is the place of the hinge to take among those pictured; None where that is neither.
    """

    headline: str
    lines: tuple[str, ...] = ()
    taken: int | None = None


def client_sayings(study: Study, pair: WidthPair, display: Display) -> tuple[str, ...]:
    """Return all that is said under a client's picture: each hinge's verdict, the advice, what it costs."""
    told = zip(pair.both, verdicts(study, pair, display), strict=True)
    said = advice(study, pair, display)
    return (
        *(f"{on_hinge(one)}: {each.title}. {each.because}" for one, each in told),
        said.headline,
        *said.lines,
    )


def on_hinge(one: Candidate) -> str:
    """Return what heads the picture of a hinge."""
    return capitalized(one.name) if one.way else f"Hinge {format_size(one.hinge_width)} in wide"


# --- The verdict ---


def verdicts(study: Study, pair: WidthPair, display: Display) -> tuple[Verdict, ...]:
    """Return the verdict on each pictured hinge, of all its leaves: that of the leaf which does worst."""
    return tuple(_of_all(study, one, display) for one in pair.both)


def _of_all(study: Study, one: Candidate, display: Display) -> Verdict:
    found = [verdict(study, each, display) for each in hung_alike(study, one)]
    worst = max(found, key=lambda each: _WORST.index(each.state))
    rest = [each for each in found if each is not worst]
    if not rest:
        return worst
    (other,) = rest
    if other.title == worst.title:
        told = [each for each in found if each.because != _FREE] or found
        if len({each.because for each in told}) == 1:
            return told[0]
        return replace(worst, because=" ".join(_by_leaf(each, each.because) for each in told))
    return replace(worst, because=f"{_by_leaf(worst, worst.because)} {_by_leaf(other, f'{other.title}.')}")


def _by_leaf(one: Verdict, said: str) -> str:
    return f"{_leaf(one.leaf)}: {_lower(said)}"


def verdict(study: Study, one: Candidate, display: Display) -> Verdict:
    """Return the verdict on one leaf at one hinge."""
    unfit = _unfit(one, display)
    if unfit is not None:
        return Verdict("unfit", *unfit, one.leaf)
    angle = f"{math.floor(one.rests_at + TOLERANCE)}°"
    if _lies_flat(one):
        return Verdict("flat", "Opens all the way", _on_the_way(one, display), one.leaf)
    if stopped_at(one) is not None:
        return Verdict("held", f"Held open at {angle}", f"Its {_holder(one)} keeps it there.", one.leaf)
    if one.rests_at >= study.hanger.must(one.leaf).wanted - TOLERANCE:
        return Verdict("enough", "Opens far enough", f"Only then {_meeting(one)}.", one.leaf)
    return Verdict("short", f"Stops short: {angle}", f"{capitalized(_meeting(one))}.", one.leaf)


def _lies_flat(one: Candidate) -> bool:
    return math.radians(180.0 - one.rests_at) * one.h.w <= HAND


def _on_the_way(one: Candidate, display: Display) -> str:
    """Say what a door that lies flat passes closely, or what it comes to at the very end."""
    if stopped_at(one) is not None:
        return f"There its {_holder(one)} keeps it."
    gap = gap_on_the_way(one.solution, one.solution.rest_angle)
    if gap is not None and gap.kind != "wall" and TOLERANCE < gap.distance <= _WORTH_SAYING:
        spare = "nothing" if gap.distance < NOTHING_TO_SPARE else display.length(gap.distance, "down")
        return f"It passes the {thing_named(gap.kind)} with {spare} to spare."
    return _FREE if one.stopped_by is None else f"At the very end {_meeting(one)}."


def _meeting(one: Candidate, door: str = "") -> str:
    """Say what meets what; `door` is what the door itself is called where there are two."""
    met = one.stopped_by
    if met is None:
        return "it is stopped"
    part = door if door and met.part == "leaf" else part_named(met.part)
    return f"{part} meets the {thing_named(met.kind)}"


def _holder(one: Candidate) -> str:
    """Name what holds a door before it comes to anything: the stop that was drawn, or that at an angle."""
    if one.door_stop is not None and held_by(one) == "tip":
        return one.door_stop.kind
    return holder_of(one.filled, one.leaf, None)


def _unfit(one: Candidate, display: Display) -> tuple[str, str] | None:
    """Return title and sentence of a door that its hinge cannot be used for; None where it can."""
    found = next((each for each in one.findings if each.severity == "error"), None)
    if found is None:
        return None
    met = one.stopped_by_bare
    thing = thing_named(met.kind) if met is not None else "frame"
    match found.code:
        case "binds at the lock side":
            return "Jams", f"The edge of the door on the lock side catches on the {thing}."
        case "heel binds":
            return "Jams", "The edge of the door on the hinge side catches on the frame."
        case "overlaps closed":
            return "Does not close", f"Even shut, the door is in the way of the {thing}."
        case "barrel overlaps":
            beside = "trim" if one.barrel_in_trim else "door or the frame"
            return "Does not fit", f"There is no room for the hinge: it would cut into the {beside}."
        case "refused":
            return "Does not fit", "A hinge of this width cannot be fitted to this door and frame."
        case "too narrow to pass" if one.clear_width_at_90 is not None:
            left, asked = (
                display.length(one.clear_width_at_90, "down"),
                display.exact(found.numbers["required"]),
            )
            return "Too narrow to walk through", f"{left} is left, and {asked} is asked for."
        case "no clear width":
            return "Does not open square", f"{capitalized(_end(one))}."
        case _:
            return "Not to be used so", caution_of(found) or "A rule stands against it."


def _end(one: Candidate) -> str:
    return f"its {_holder(one)} holds it before" if stopped_at(one) is not None else f"{_meeting(one)} before"


def _leaf(name: str) -> str:
    return LEAF_NAMES.get(name, "The door")


def _lower(sentence: str) -> str:
    return sentence[:1].lower() + sentence[1:]


# --- The advice ---


def advice(study: Study, pair: WidthPair, display: Display) -> Advice:
    """Return which of the pictured hinges to take, and why."""
    found = verdicts(study, pair, display)
    if not study.specification.leaves:
        return Advice(NOT_CHOSEN, tuple(difference(pair, display)))
    if pair.wider is None:
        return _of_one(study, pair, found[0], display)
    lines = tuple(difference(pair, display))
    taken = next((n for n, one in enumerate(pair.both) if one.on == pair.recommended), None)
    names = [one.hinge_words for one in pair.both]
    good = [each.good for each in found]
    if all(good):
        return _of_two_good(study, pair, taken, lines)
    if not any(good):
        mends = _mends(study, pair, display)
        own = taken if taken is not None and found[taken].state == "short" else None
        take = (
            f" As things are we would take the {names[own]}{_why_of_two(pair, own)}."
            if own is not None
            else ""
        )
        return Advice(f"Neither hinge does what is wanted. {mends}{take}", lines, own)
    only = good.index(True)
    if taken == only:
        cut = _or_cut(study, pair, only, display)
        against = _against(pair.both[1 - only], found[1 - only])
        return Advice(f"{against}Choose the {names[only]}{_for_which(study, pair.leaf)}{cut}.", lines, only)
    if taken is not None:
        return Advice(
            f"Only the {names[only]} does what is wanted; for this door the {names[taken]} was chosen.",
            lines,
            taken,
        )
    return Advice(f"Of the two only the {names[only]} does what is wanted. {_held_back(study, pair)}", lines)


def _why_of_two(pair: WidthPair, own: int) -> str:
    """Say what speaks for one of two hinges of which neither does all; empty where nothing simple does."""
    taken, left = pair.both[own], pair.both[1 - own]
    ways = taken.clear_width_at_90, left.clear_width_at_90
    if None not in ways and ways[0] > ways[1] + TOLERANCE:  # type: ignore[operator]
        return ", which leaves more room to walk through"
    if taken.rests_at > left.rests_at + TOLERANCE:
        return ", on which it opens farther"
    return ", which stands out less" if taken.barrel_past_frame < left.barrel_past_frame - TOLERANCE else ""


def _of_one(study: Study, pair: WidthPair, found: Verdict, display: Display) -> Advice:
    lines = tuple(way_through(pair.narrower, display))
    if not found.good:
        return Advice(f"This does not do what is wanted. {_mends(study, pair, display)}".strip(), lines)
    if study.errors:
        return Advice(_held_back(study, pair), lines)
    return Advice(f"The {pair.narrower.hinge_words} does what is wanted of this door.", lines, 0)


def _of_two_good(study: Study, pair: WidthPair, taken: int | None, lines: tuple[str, ...]) -> Advice:
    names = [one.hinge_words for one in pair.both]
    if taken is None:
        return Advice(f"The door opens well on either. {_held_back(study, pair)}", lines)
    if pair.other_way:
        return Advice(f"The door opens well on either. We would take the {names[taken]}.", lines, taken)
    if taken == 0:
        said = f"Either hinge will do: take the {names[0]}. The wider one brings nothing worth paying for."
        return Advice(said, lines, 0)
    return Advice(f"Take the {names[1]}: {_why_wider(study, pair)}.", lines, 1)


def _why_wider(study: Study, pair: WidthPair) -> str:
    """Say why the wider of two hinges is taken on which a door opens equally well to a client."""
    asked = study.opening.hinge or NOTHING_ASKED
    narrower = pair.narrower
    if asked.width is not None:
        return "it was chosen for this door, though the narrower one would do"
    if study.standard is not None and study.standard.width is not None:
        return "this job asks for it everywhere, though the narrower one would do"
    if narrower.greatest_angle_bare < study.hanger.must(narrower.leaf).wanted - TOLERANCE:
        return "on it the door lies quite flat; on the narrower one it stays a little off the wall"
    if narrower.barrel_in_trim:
        return "the narrower one sits too close to the trim"
    return "the narrower one leaves the hinge too little room"


def _for_which(study: Study, leaf: str) -> str:
    """Say which of two leaves take the hinge: both, or the one that it is about; empty for a single leaf."""
    if leaf not in LEAF_NAMES:
        return ""
    widths = {one.parts["width"].value for one in study.specification.leaves}
    both = {"pair": "both doors", "dutch": "both halves"}[study.opening.leaves]
    return f" for {both if len(widths) == 1 else f'the {_lower(LEAF_NAMES[leaf])}'}"


def _against(other: Candidate, found: Verdict) -> str:
    """Say what speaks against the other of two hinges, where that is something the door meets."""
    if found.state != "short" or found.leaf != other.leaf:
        return ""
    door = f"the {_lower(LEAF_NAMES[other.leaf])}" if other.leaf in LEAF_NAMES else ""
    return f"With the {other.hinge_words} {_meeting(other, door)} before it is fully open. "


def _or_cut(study: Study, pair: WidthPair, only: int, display: Display) -> str:
    """Say by how much a thing may be cut to keep the other hinge; empty where none is to be cut."""
    other = pair.both[1 - only]
    cut = cut_for(study, other)
    if cut is None:
        return ""
    place, by = cut
    thing = study.opening.obstructions[place]
    sure = row_of(ObstructionKindRow, thing.kind).cut_back == "yes"
    name, ask = thing_named(thing.kind), "" if sure else "ask whether one can "
    gone = thing.length is not None and by >= thing.length
    how = f"take the {name} away" if gone else f"shorten the {name} by {display.exact(by)}"
    return f", or {ask}{how} and keep the {other.hinge_words}"


def _held_back(study: Study, pair: WidthPair) -> str:
    """Say why none of the pictured hinges is recommended."""
    if study.errors:
        why = next(filter(None, map(caution_of, study.errors)), "Read what is to be noted.")
        return f"None is recommended as things are. {why}"
    other = _not_pictured(study, pair, pair.leaf)
    if other is None:
        return "None of the two is recommended as things are."
    return f"We would take the {format_size(other)} in hinge, not pictured here."


def _not_pictured(study: Study, pair: WidthPair, leaf: str) -> float | None:
    """Return the width chosen for a leaf, inches; None where there is none, or it is pictured."""
    chosen = (one.parts["width"].value for one in study.specification.leaves if one.leaf == leaf)
    width = next(chosen, None)
    return None if width is None or study.errors or any(one.on == width for one in pair.both) else width


def _mends(study: Study, pair: WidthPair, display: Display) -> str:
    """Say what would let the door do all that is wanted, each as a client understands it."""
    last = pair.both[-1]
    worst = _of_all(study, last, display).leaf
    other = _not_pictured(study, pair, worst)
    if other is not None and verdict(study, study.hanger(worst, other), display).good:
        return f"Take the {format_size(other)} in hinge, which is not pictured here."
    stuck = next((one for one in study.findings if one.code == "no width does everything"), None)
    ways = [] if stuck is None else [_mend(study, fix[0].path, fix[0].value, display) for fix in stuck.fixes]
    if ways := list(dict.fromkeys(filter(None, ways))):
        return f"What would do it: {'; or '.join(ways)}."
    if study.errors:
        return _held_back(study, pair)
    return _stop_or_move(next(one for one in hung_alike(study, last) if one.leaf == worst))


def _stop_or_move(one: Candidate) -> str:
    """Say what keeps a door off what it meets where no hinge lets it by."""
    met = one.stopped_by
    if met is None:
        return "No usual hinge changes that."
    part, thing = part_named(met.part), thing_named(met.kind)
    if met.part in ("leaf", "barrel"):
        return f"No usual hinge changes that: fit a door stop, so that the door does not hit the {thing}."
    if one.greatest_angle < 90.0 - TOLERANCE:
        return f"No hinge changes that: move {part}, or take one that stands out less."
    return f"No usual hinge changes that: fit a door stop, so that {part} does not hit the {thing}."


def _mend(study: Study, path: str, value: object, display: Display) -> str:
    """Return a change that mends the opening in a client's words; empty for one that is the workshop's."""
    part, *rest = path.split(".")
    length = display.exact(float(value)) if isinstance(value, int | float) else ""
    if part == "obstructions" and rest[1:] == ["start"]:
        thing = study.opening.obstructions[int(rest[0])]
        name = thing_named(thing.kind)
        if row_of(ObstructionKindRow, thing.kind).cut_back == "no":
            return f"set the door farther from the {name}, {length} off it"
        return f"shorten the {name} to begin {length} from the frame"
    return {
        "hinge.mounting": "take swing clear hinges, which carry the door right out of the opening",
        "door.latch_bevel": "bevel the edge of the door on the lock side",
        "door.latch_gap": "leave a wider gap on the lock side",
        "wall.frame_proud": f"set the frame {length} out of the wall",
        "size.width": f"make the opening {length} wide",
    }.get(path, "")
