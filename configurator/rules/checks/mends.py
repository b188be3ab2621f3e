"""What lets a door do all it must where no stock width of its hinge does; each is tried before it is said."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from configurator.model import Hinge, Obstruction, Opening
from configurator.model.paths import replaced
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, finding
from configurator.rules.hinge.answers import (
    FULL_MORTISE,
    Answers,
    Must,
    WidthAnswer,
    WidthChoice,
    barrel_clear,
    binds,
    held_shut,
    keeps_clear_width,
    reaches,
    refused,
    tried,
)
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED
from configurator.rules.hinge.stock import next_narrower
from configurator.rules.hinge.width import (
    choose_width,
    does,
    does_all,
    does_the_rest,
    hardware_before_square,
)
from configurator.rules.wording import (
    cut_back,
    degrees,
    exactly,
    hardware,
    inches,
    leaf_named,
    obstruction,
    plain,
    size,
)
from configurator.sentences import capitalized
from configurator.tables import ObstructionKindRow, limit, practice, row_of
from configurator.units import TOLERANCE

STEP = 0.125
"""Inches: in such steps a cut, a gap or a place is looked for and told."""
FARTHEST, MOST_MOVED, MOST_PROUD = 60.0, 12.0, 2.0
"""Inches: no farther off is a thing cut back, no farther along or out of its wall is a frame moved."""
MOST_TOLD = 3
WHAT_WOULD = "What would do it: "
SWING_CLEAR = "swing clear"
_BEVEL, _GAP = 0.0625, 0.1875
Fixes = tuple[Fix, ...]


@dataclass(frozen=True, slots=True)
class Mend:
    """A change that lets a leaf do all it must: what to do in words, and as one click where it can be."""

    words: str
    fix: Fixes


@dataclass(frozen=True, slots=True)
class Stuck:
    """A leaf on which no stock width does everything: what it must, its least bad width, and all answers."""

    filled: FilledOpening
    must: Must
    least_bad: WidthAnswer
    answers: Answers

    @property
    def opening(self) -> Opening:
        """The opening's record."""
        return self.filled.opening

    def choice(self, fixes: Fixes) -> WidthChoice | None:
        """Return what would be chosen with some values changed; None where it cannot be so or fails yet."""
        try:
            other = self.answers.otherwise(_changed(self.opening, fixes))
            choice = choose_width(_eased(other.must(self.must.leaf), self.must), other)
            return choice if choice.complete and _sound(self.must.leaf, choice, other) else None
        except ValueError:
            return None

    def least(self, values: Iterator[float], fixes: Callable[[float], Fixes]) -> tuple[float, Fixes] | None:
        """Return the first of the values, which go up, that mends it, taken to go on mending from there."""
        rising = list(values)
        if not rising or self.choice(fixes(rising[-1])) is None:
            return None
        low, high = -1, len(rising) - 1
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (low, middle) if self.choice(fixes(rising[middle])) else (middle, high)
        return rising[high], fixes(rising[high])


def _eased(other: Must, must: Must) -> Must:
    return replace(other, wanted=must.wanted, asked=must.asked)


def _sound(leaf: str, choice: WidthChoice, answers: Answers) -> bool:
    """Return whether nothing on the plan stands against what would be chosen."""
    return not any(one.severity == "error" for one in answers(leaf, choice.reason.value).findings)


def _changed(opening: Opening, fixes: Fixes) -> Opening:
    for fix in fixes:
        if fix.path.startswith("hinge.") and opening.hinge is None:
            opening = opening.model_copy(update={"hinge": Hinge()})
        opening = replaced(opening, fix.path, fix.value)
    return opening


def no_width_findings(
    filled: FilledOpening, must: Must, least_bad: WidthAnswer, answers: Answers
) -> Iterator[Finding]:
    """Yield that no stock width does everything, what the least bad does, and what would mend it."""
    stuck = Stuck(filled, must, least_bad, answers)
    mends = tuple(mends_of(stuck))
    name = f"{size(must.height, least_bad.hinge_width)}{leaf_named(must.leaf, ' ({})')}"
    said = f"No stock width does everything. {name} {does(least_bad, must)}. "
    found = finding(
        "no width does everything",
        "warning",
        f"{said}{_what_would(stuck, mends)}",
        practice("width_geometry"),
        angle=least_bad.greatest_angle_bare,
        wanted=must.wanted,
        width=least_bad.hinge_width,
    )
    ways = tuple(mend.fix for mend in mends if mend.fix)
    yield replace(found, fix=ways[0], other_fixes=ways[1:]) if ways else found


def _what_would(stuck: Stuck, mends: tuple[Mend, ...]) -> str:
    """Return in words what would mend it; where only the angle is short, a stop for the door as it is."""
    found, must = stuck.least_bad, stuck.must
    stop = ""
    if does_the_rest(found, must) and found.greatest_angle_bare > TOLERANCE:
        stop = f" Else fit a door stop before {degrees(found.greatest_angle_bare)}."
    if mends:
        return f"{WHAT_WOULD}{'; or '.join(mend.words for mend in mends)}.{stop}"
    return f"{_by_hand(stuck)}{stop}"


def _by_hand(stuck: Stuck) -> str:
    """Return what is to be looked at where nothing that was tried mends it."""
    found, must = stuck.least_bad, stuck.must
    if refused(found):
        return "Take another mounting."
    if held_shut(found):
        return "No hinge changes that: check which leaf is to open first."
    if (part := hardware_before_square(found, must)) is not None:
        return f"Move the {hardware(part)}, or take one that stands out less."
    stopped = found.stopped_by_bare
    if stopped is not None and found.greatest_angle_bare <= TOLERANCE and not binds(found):
        thing = obstruction(stopped.kind)
        return f"It meets the {thing} with the door closed: check where the {thing} stands."
    tried_here = (
        "Nothing tried here mends it: not swing clear hinges, a cut, a gap or another place of the frame."
    )
    if stuck.opening.leaves != "pair" or keeps_clear_width(found, must.clear_width):
        return tried_here
    return f"{tried_here} Make the active leaf or the opening wider."


def mends_of(stuck: Stuck) -> Iterator[Mend]:
    """Yield what would let the leaf do all it must, the classic one first; no more than a few."""
    told = 0
    for way in (_lock_edge, _other_mounting, _cut_back, _reveal, _moved_away, _prouder, _wider):
        mend = way(stuck)
        if mend is not None and told < MOST_TOLD:
            told += 1
            yield mend


def _other_mounting(stuck: Stuck) -> Mend | None:
    """Swing clear hinges: the classic mend where clear width or trim is short, cf. 28 CFR 36.304(b)(9).

    For hinges that were to be swing clear, the usual ones.
    """
    given = stuck.opening.hinge or NOTHING_ASKED
    usual = stuck.least_bad.mounting == FULL_MORTISE
    if usual and given.mounting is not None:
        return None
    mounting = SWING_CLEAR if usual else FULL_MORTISE
    fix: Fixes = (Fix("hinge.mounting", mounting, f"Hang it on {mounting} hinges"),)
    if given.width is not None:
        fix += (Fix("hinge.width", None, ""),)
    choice = stuck.choice(fix)
    if choice is None:
        return None
    found = stuck.answers.otherwise(_changed(stuck.opening, fix))(stuck.must.leaf, choice.reason.value)
    sold = ", sold by height and hand" if usual else f" {size(stuck.must.height, found.hinge_width)}"
    return Mend(f"take {mounting} hinges{sold}: the leaf then {does(found, stuck.must)}", fix)


def _in_the_way(stuck: Stuck) -> tuple[int, ...]:
    """Return the places in the list of what ends the swing, or may stand in the barrel's way."""
    found = stuck.least_bad
    met = found.stopped_by_bare
    if met is not None and met.kind != "other leaf" and met.index is not None:
        return (met.index,)
    if barrel_clear(found) or not found.barrel_in_trim:
        return ()
    return tuple(place for place, thing in enumerate(stuck.opening.obstructions) if thing.side == "hinge")


def _cut_back(stuck: Stuck) -> Mend | None:
    """End what the door meets farther from the frame, if its kind can be cut back."""
    things = stuck.opening.obstructions
    tries = (_cut(stuck, place) for place in _in_the_way(stuck) if cut_back(things[place].kind))
    return next(filter(None, tries), None)


def _cut(stuck: Stuck, place: int) -> Mend | None:
    thing = stuck.opening.obstructions[place]
    now = thing.start or 0.0
    path = f"obstructions.{place}"

    def fixes(start: float) -> Fixes:
        label = f"Cut it back to {exactly(start)} from the frame"
        ended = (Fix(f"{path}.start", start, label),)
        if thing.length is None:
            return ended
        return (*ended, Fix(f"{path}.length", max(thing.length - (start - now), STEP), ""))

    last = FARTHEST if thing.length is None else min(FARTHEST, now + thing.length - STEP)
    found = stuck.least(_steps(now, last), fixes)
    name, sure = obstruction(thing.kind), row_of(ObstructionKindRow, thing.kind).cut_back == "yes"
    if found is None:
        rest = (*stuck.opening.obstructions[:place], *stuck.opening.obstructions[place + 1 :])
        gone = stuck.choice((Fix("obstructions", rest, ""),)) is not None
        away = f"take the {name} away" if sure else f"ask whether the {name} can be taken away"
        return Mend(away, ()) if gone else None
    place_words = f"to begin {exactly(found[0])} from the frame"
    return Mend(f"{cut_back(thing.kind)} {place_words}", found[1])


def _steps(now: float, last: float) -> Iterator[float]:
    value = (now // STEP + 1) * STEP
    while value <= last + TOLERANCE:
        yield value
        value += STEP


def reveal_fixes(filled: FilledOpening) -> Fixes:
    """Return the change that sets every casing at the hinge side back to the usual reveal; none without."""
    start = limit("casing_reveal").value - filled.frame_face
    return tuple(
        Fix(f"obstructions.{place}.start", start, f"Set the casing {exactly(start + filled.frame_face)} back")
        for place, thing in enumerate(filled.opening.obstructions)
        if thing.kind == "casing" and thing.side == "hinge" and (thing.start or 0.0) < start - TOLERANCE
    )


def _reveal(stuck: Stuck) -> Mend | None:
    fixes = reveal_fixes(stuck.filled)
    choice = stuck.choice(fixes) if fixes else None
    if choice is None:
        return None
    reveal = exactly(limit("casing_reveal").value)
    taken = size(stuck.must.height, choice.reason.value)
    return Mend(f"set the casing {reveal} back from the rabbet face and take {taken}", fixes)


def _lock_edge(stuck: Stuck) -> Mend | None:
    """A beveled edge or a wider gap where the lock edge binds."""
    if not binds(stuck.least_bad) or stuck.opening.leaves == "pair":
        return None
    if stuck.filled.latch_bevel < _BEVEL:
        bevel = (Fix("door.latch_bevel", _BEVEL, "Bevel the lock edge 1/8 in 2"),)
        if stuck.choice(bevel):
            return Mend("bevel the lock edge 1/8 in 2", bevel)
    gap = (Fix("door.latch_gap", _GAP, f"Make the latch gap {exactly(_GAP)}"),)
    if stuck.filled.latch_gap < _GAP and stuck.choice(gap):
        return Mend(f"make the gap at the lock side {exactly(_GAP)}", gap)
    return None


def _moved_away(stuck: Stuck) -> Mend | None:
    """The opening farther from what cannot be cut back, as a return wall or a column."""
    places = [p for p in _in_the_way(stuck) if not cut_back(stuck.opening.obstructions[p].kind)]
    if not places:
        return None
    thing = stuck.opening.obstructions[places[0]]
    name, now = obstruction(thing.kind), thing.start or 0.0
    path, label = f"obstructions.{places[0]}.start", f"Move it away from the {name}"
    found = stuck.least(_steps(now, now + MOST_MOVED), lambda start: (Fix(path, start, label),))
    if found is None:
        return None
    words = f"move the frame {exactly(found[0] - now)} farther from the {name}"
    return Mend(f"{words}, to stand {exactly(found[0])} off it", found[1])


def _prouder(stuck: Stuck) -> Mend | None:
    """The frame farther out of the wall, where what the door meets stands off the wall."""
    things = stuck.opening.obstructions
    if not any(_off_the_wall(things[place]) for place in _in_the_way(stuck)):
        return None
    now = stuck.filled.frame_proud
    found = stuck.least(
        _steps(now, now + MOST_PROUD),
        lambda proud: (Fix("wall.frame_proud", proud, f"Set the frame {exactly(proud)} proud"),),
    )
    if found is None:
        return None
    return Mend(f"set the frame {exactly(found[0])} proud of the wall instead of {exactly(now)}", found[1])


def _off_the_wall(thing: Obstruction) -> bool:
    row = row_of(ObstructionKindRow, thing.kind)
    return thing.side == "hinge" and (row.measured_from, row.outline) == ("wall", "box")


def _wider(stuck: Stuck) -> Mend | None:
    """A wider opening where the clear width is what fails; of a pair its active leaf, said elsewhere."""
    if keeps_clear_width(stuck.least_bad, stuck.must.clear_width) or stuck.opening.leaves == "pair":
        return None
    width = stuck.filled.opening_width
    found = stuck.least(
        (width + 2.0 * step for step in range(1, 7)),
        lambda wide: (Fix("size.width", wide, f"Make the opening {exactly(wide)} wide"),),
    )
    return None if found is None else Mend(f"make the opening {exactly(found[0])} wide", found[1])


def reveal_findings(filled: FilledOpening, must: Must, width: float, answers: Answers) -> Iterator[Finding]:
    """Yield that a casing set back does with a narrower hinge what only the barrel makes a wide one for.

    Said where the barrel's diameter is nobody's but the table's, and the width chosen is a wide throw.
    """
    fixes = reveal_fixes(filled)
    barrel_given = (filled.opening.hinge or NOTHING_ASKED).barrel is not None
    if not fixes or barrel_given or width <= must.height:
        return
    narrower = _only_the_barrel(must, width, answers)
    if narrower is None:
        return
    other = answers.otherwise(_changed(filled.opening, fixes))
    found = tried(other, must.leaf, narrower.hinge_width)
    if isinstance(found, str) or not does_all(found, must):
        return
    taken, reveal = size(must.height, narrower.hinge_width), exactly(limit("casing_reveal").value)
    message = (
        f"Only the barrel asks for a hinge {plain(width)} wide: {exactly(narrower.barrel_diameter)} thick, "
        f"from memory, it is free of the casing by {_free(narrower)} on {taken}. With a {reveal} reveal, the "
        f"casing so far back from the rabbet face, {taken} does it too. Confirm the barrel from the hinge's "
        "drawing, or move the casing."
    )
    numbers = {"barrel": narrower.barrel_diameter, "free": narrower.barrel_free_by, "width": width}
    yield finding(
        "reveal does it too", "note", message, limit("casing_reveal").cited, _to(fixes, taken), **numbers
    )


def _free(answer: WidthAnswer) -> str:
    return "nothing" if answer.barrel_free_by <= TOLERANCE else inches(answer.barrel_free_by, "down")


def _to(fixes: Fixes, taken: str) -> Fixes:
    return (replace(fixes[0], label=f"{capitalized(fixes[0].label)}, for {taken}"), *fixes[1:])


def _only_the_barrel(must: Must, width: float, answers: Answers) -> WidthAnswer | None:
    """Return the narrowest stock width that does all but keep its barrel clear of what stands beside it."""
    found, narrower = None, next_narrower(must.height, width)
    while narrower is not None:
        other = tried(answers, must.leaf, narrower)
        if not isinstance(other, str) and _all_but_the_barrel(other, must):
            found = other
        narrower = next_narrower(must.height, narrower)
    return found


def _all_but_the_barrel(answer: WidthAnswer, must: Must) -> bool:
    return (
        reaches(answer, must.wanted)
        and keeps_clear_width(answer, must.clear_width)
        and not binds(answer)
        and not refused(answer)
        and answer.barrel_in_trim
        and not barrel_clear(answer)
    )
