"""What to measure on site, opening by opening, each beside the value the program has for it so far."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal, get_args

from configurator.model import Obstruction, Opening
from configurator.model.hinge import ExistingHinge, HingeLocations
from configurator.model.words import Corner, Hand
from configurator.rules.filling.usual import FilledOpening, fill
from configurator.rules.wording import counted, obstruction, plain, size
from configurator.sentences import capitalized
from configurator.units import Display

How = Literal["given", "assumed", "not known"]
NOT_KNOWN = "not known"
MOST_MEASURES = 34
"""Measures in one block: so many go on a page; an opening with more has a second block."""


@dataclass(frozen=True, slots=True)
class Measure:
    """One thing to measure: its name, the value so far in words, and whether somebody gave that value.

    With `ticks` it is a choice to be ticked, not a length.
    """

    name: str
    value: str
    how: How
    ticks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FieldBlock:
    """The blanks of one opening; `which` tells it from others of the same mark, as `2 of 3`."""

    mark: str
    which: str
    words: str
    measures: tuple[Measure, ...]
    continued: bool = False


def field_blocks(openings: Iterable[Opening], display: Display | None = None) -> Iterator[FieldBlock]:
    """Yield a block for every single opening: of a mark with a quantity each one is measured."""
    shown = display or Display()
    for opening in openings:
        words = _words(opening, shown)
        parts = _in_parts(tuple(_measures(opening, shown)))
        for number in range(1, opening.quantity + 1):
            which = f"{number} of {opening.quantity}" if opening.quantity > 1 else ""
            for index, part in enumerate(parts):
                more = index > 0
                yield FieldBlock(opening.mark, which, "continued" if more else words, part, more)


def block_count(openings: Iterable[Opening]) -> int:
    """Return how many openings there are to measure."""
    return sum(opening.quantity for opening in openings)


def _in_parts(measures: tuple[Measure, ...]) -> list[tuple[Measure, ...]]:
    return [measures[start : start + MOST_MEASURES] for start in range(0, len(measures), MOST_MEASURES)]


def _words(opening: Opening, shown: Display) -> str:
    facts = (
        opening.location or "",
        shown.opening(opening.size.width, opening.size.height),
        "" if opening.leaves == "single" else opening.leaves,
        f"{opening.door.construction or 'door not described'} in {opening.frame.kind} frame",
        f"status {opening.status}",
        "" if opening.order_state == "not ordered" else opening.order_state,
    )
    return ", ".join(word for word in facts if word)


def _measures(opening: Opening, shown: Display) -> Iterator[Measure]:
    yield Measure(
        "Hand, seen from the key side", opening.hand or NOT_KNOWN, _how(opening.hand), get_args(Hand)
    )
    yield from _frame_and_wall(opening, shown)
    for one in opening.obstructions:
        yield from _standing(one, shown)
    yield Measure(
        "Anything else it could meet: what, how far off, how high",
        "nothing else said" if opening.obstructions else "nothing said",
        "given" if opening.obstructions else "not known",
    )
    yield from _existing(opening, shown)


def _lengths(filled: FilledOpening) -> Iterator[tuple[str, str, float]]:
    """Yield what each length is called on site, its path where it may be assumed, and the length, inches."""
    yield "Opening width, rabbet to rabbet", "size.width", filled.opening_width
    yield "Opening height, finished floor to head rabbet", "size.height", filled.opening_height
    yield "Wall thickness, all layers", "wall.thickness", filled.wall_thickness
    yield "Jamb depth: frame through the wall", "frame.jamb_depth", filled.jamb_depth
    yield "Frame face width", "frame.face", filled.frame_face
    yield "Frame stands out from wall, pull side", "wall.frame_proud", filled.frame_proud
    yield "Rabbet depth: frame face back to the stop", "frame.rabbet", filled.rabbet
    yield "Frame stop height", "frame.stop_height", filled.stop_height
    yield "Door thickness", "door.thickness", filled.thickness
    yield "Gap under the door, finished floor", "door.undercut", filled.undercut


def _frame_and_wall(opening: Opening, shown: Display) -> Iterator[Measure]:
    filled = fill(opening)
    assumed = set(filled.assumed) - ({"wall.thickness"} if opening.wall.layers else set())
    for name, path, taken in _lengths(filled):
        yield _length(name, taken, "assumed" if path in assumed else "given", shown)


def _standing(one: Obstruction, shown: Display) -> Iterator[Measure]:
    kind = obstruction(one.kind)
    where = f"{capitalized(kind)}, {one.side} side"
    if one.diameter is not None:
        yield _length(f"{where}: diameter", one.diameter, "given", shown)
    if one.projection is not None:
        yield _length(f"{where}: stands off by", one.projection, "given", shown)
    begins: How = "assumed" if one.start is None else "given"
    yield _length(f"{where}: begins this far from the frame", one.start or 0.0, begins, shown)
    if one.offset:
        yield _length(f"{where}: held off the wall by", one.offset, "given", shown)
    name = f"{where}: bottom and top above floor"
    if one.bottom is None and one.top is None:
        yield Measure(name, "full height", "assumed")
    else:
        yield Measure(name, _heights(one, shown), "given")


def _heights(one: Obstruction, shown: Display) -> str:
    low = shown.exact(one.bottom) if one.bottom else "floor"
    return f"{low} to {shown.exact(one.top)}" if one.top is not None else f"{low} up"


def _existing(opening: Opening, shown: Display) -> Iterator[Measure]:
    old = opening.existing_hinge or ExistingHinge()
    thickness = None if old.leaf_thickness is None else shown.exact(old.leaf_thickness)
    yield _text("Existing hinge preparation, height x width", _preparation(opening, old))
    yield _text("Existing hinge leaf thickness", thickness)
    yield _text("Existing hinge corners, radius in inches", old.corner, _CORNERS)
    tops = (opening.hinge_locations or HingeLocations()).tops
    number = f"{counted(old.count, 'hinge', 'hinges')} a leaf" if old.count else None
    below = "Top of each hinge below the head rabbet"
    yield _text(below, ", ".join(map(shown.exact, tops)) if tops else number)


_CORNERS = tuple(corner.removesuffix(" radius") for corner in get_args(Corner))


def _preparation(opening: Opening, old: ExistingHinge) -> str | None:
    """Return the size that door or frame is prepared for, as far as it is known."""
    if old.height and old.width:
        return size(old.height, old.width)
    if old.width:
        return f"{plain(old.width)} wide"
    height = old.height or opening.prepared_height
    return f"{plain(height)} high" if height else None


def _text(name: str, value: str | None, ticks: tuple[str, ...] = ()) -> Measure:
    return Measure(name, value or NOT_KNOWN, _how(value), ticks)


def _length(name: str, value: float, how: How, shown: Display) -> Measure:
    return Measure(name, shown.exact(value), how)


def _how(value: object) -> How:
    return "not known" if value is None else "given"
