"""Where the corners of the plan stand, as formulas: every corner lies at a sum of lengths that were given."""

from collections.abc import Iterator

from configurator.geometry.pin import TOLERANCE, Point
from configurator.geometry.shapes import Hardware, Obstruction, Shape
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.pin_steps import across, inset, off_frame
from configurator.study.derivation.terms import Negative, Number, Symbol, Term, add, half, less, times

LAID_OUT = "as the plan is laid out"


def place_of(case: Case, shape: Shape, point: Point) -> tuple[Term, Term]:
    """Return formulas for how far across and how far out a corner of a shape stands, the door closed."""
    return (
        _matching(case, shape, point[0], _across(case, shape), "x"),
        _matching(case, shape, point[1], _out(case, shape), "y"),
    )


def corner_letters(case: Case, shape: Shape, point: Point, which: str) -> tuple[Symbol, Symbol]:
    """Work out the two coordinates of a corner; `which` is c for a moving corner, s for a standing one."""
    x, y = place_of(case, shape, point)
    x_name, y_name = f"x_{which}", f"y_{which}"
    return (
        case.work.let(x_name, x, meaning=MEANINGS[x_name]),
        case.work.let(y_name, y, meaning=MEANINGS[y_name]),
    )


def _matching(case: Case, shape: Shape, value: float, ways: Iterator[Term], axis: str) -> Term:
    """Return the first formula that comes to the value; the letters of the others are not kept."""
    for way in ways:
        if abs(way.value - value) <= TOLERANCE:
            return way
    name = f"{axis}_{shape.kind.replace(' ', '_')}"
    direction = "across" if axis == "x" else "out"
    return case.work.given(name, value, meaning=f"{shape.kind}: how far {direction}, {LAID_OUT}")


def _across(case: Case, shape: Shape) -> Iterator[Term]:
    if shape.kind == "barrel":
        yield across(case)
    elif shape.kind == "other leaf":
        yield from _across_other(case, shape)
    elif shape.kind == "leaf":
        yield from _leaf_across(case)
    elif shape.kind == "door stop":
        yield from _stop_across(case)
    elif (item := _hardware(case, shape)) is not None:
        yield from _hardware_across(case, item)
    elif shape.index is not None and shape.index < len(case.leaf.obstructions):
        yield from _thing_across(case, case.leaf.obstructions[shape.index])
    yield from _frame_across(case)


def _out(case: Case, shape: Shape) -> Iterator[Term]:
    if shape.kind == "barrel":
        yield off_frame(case)
    elif shape.kind in ("leaf", "other leaf"):
        yield Negative(inset(case))
        yield add(Negative(inset(case)), Negative(case.letter("T")))
        yield from _other_hardware_out(case, shape)
    elif shape.kind == "door stop":
        yield from _stop_out(case)
    elif (item := _hardware(case, shape)) is not None:
        yield from _hardware_out(case, item)
    elif shape.index is not None and shape.index < len(case.leaf.obstructions):
        yield from _thing_out(case, case.leaf.obstructions[shape.index])
    if shape.kind == "wall":
        yield Negative(case.letter("p"))
    yield from _frame_out(case)


def _hardware(case: Case, shape: Shape) -> Hardware | None:
    """The hardware of this leaf that a moving shape is, None where it is anything else."""
    on_leaf = {id(part.shape) for part in case.scene.hardware}
    if id(shape) not in on_leaf or shape.index is None:
        return None
    return case.leaf.hardware[shape.index]


# --- The leaf and what it carries ---


def _leaf_across(case: Case) -> Iterator[Term]:
    edge = less(case.letter("O"), case.letter("g_l"))
    yield case.letter("g_h")
    yield edge
    yield less(edge, times(case.letter("beta"), case.letter("T")))


def _hardware_across(case: Case, item: Hardware) -> Iterator[Term]:
    given = case.work.given
    e = given("e", item.from_latch_edge, meaning=f"{item.kind}: its middle from the lock edge")
    v = given("v", item.width, meaning=f"{item.kind}: its width")
    middle = less(case.letter("O"), case.letter("g_l"), e)
    yield from (middle, add(middle, half(v)), less(middle, half(v)))


def _hardware_out(case: Case, item: Hardware) -> Iterator[Term]:
    j = case.work.given(
        "j", item.projection, meaning=f"{item.kind}: how far it stands out of the door's face"
    )
    v = case.work.given("v", item.width, meaning=f"{item.kind}: its width")
    face: Term = Negative(inset(case))
    if item.face == "pull":
        yield from (face, add(face, j), less(add(face, j), half(v)))
        return
    face = add(face, Negative(case.letter("T")))
    yield from (face, less(face, j), add(less(face, j), half(v)))


def _across_other(case: Case, shape: Shape) -> Iterator[Term]:
    """The other leaf of a pair, or the other half of a Dutch door, and what it carries."""
    other = case.scene.other
    if other is None:
        yield from _leaf_across(case)
        if (half_of := case.leaf.leaf.half) is not None and shape.index is not None:
            yield from _hardware_across(case, half_of.hardware[shape.index])
        return
    opening = case.letter("O")
    w = case.work.given("w_2", other.w, meaning=MEANINGS["w_2"])
    yield opening
    yield add(opening, w)
    yield add(opening, times(case.letter("beta"), case.letter("T")))
    if shape.index is not None:
        item = other.hardware[shape.index]
        e = case.work.given("e", item.from_latch_edge, meaning=f"{item.kind}: its middle from its lock edge")
        v = case.work.given("v", item.width, meaning=f"{item.kind}: its width")
        middle = add(opening, e)
        yield from (middle, add(middle, half(v)), less(middle, half(v)))


def _other_hardware_out(case: Case, shape: Shape) -> Iterator[Term]:
    if shape.kind != "other leaf" or shape.index is None:
        return
    other, half_of = case.scene.other, case.leaf.leaf.half
    carried = other.hardware if other is not None else half_of.hardware if half_of is not None else ()
    yield from _hardware_out(case, carried[shape.index])


# --- Frame and wall ---


def _whole_opening(case: Case) -> Symbol:
    if case.scene.other is None:
        return case.letter("O")
    return case.work.given("O_2", case.opening, meaning=MEANINGS["O_2"])


def _frame_across(case: Case) -> Iterator[Term]:
    yield Number(0)
    yield Negative(case.letter("F"))
    yield case.letter("s")
    whole = _whole_opening(case)
    yield whole
    yield less(whole, case.letter("s"))
    yield add(whole, case.letter("F"))


def _frame_out(case: Case) -> Iterator[Term]:
    yield Number(0)
    yield Negative(case.letter("p"))
    yield Negative(case.letter("R"))
    yield Negative(case.letter("D"))


# --- What stands about the door ---


def _stop_across(case: Case) -> Iterator[Term]:
    if (stop := case.candidate.door_stop) is not None:
        meaning = f"{stop.kind}: how far along the wall from the frame its tip is"
        yield less(Negative(case.letter("F")), case.work.given("l", stop.from_frame, meaning=meaning))


def _stop_out(case: Case) -> Iterator[Term]:
    if (stop := case.candidate.door_stop) is not None:
        meaning = f"{stop.kind}: how far its tip stands off the wall face"
        yield less(case.work.given("c", stop.projection, meaning=meaning), case.letter("p"))


def _thing_across(case: Case, thing: Obstruction) -> Iterator[Term]:
    """Along the wall from the frame's outer edge, or in front of it."""
    sides = (thing.start, thing.length or 0.0, (thing.diameter or 0.0) / 2)
    start, length, radius = _named(case, thing, ("l", "m", "r_2"), sides)
    F = case.letter("F")
    reaches: list[tuple[Term, ...]] = [(F,), (F, start), (F, start, length), (F, start, radius)]
    for reach in reaches:
        yield less(Negative(reach[0]), *reach[1:])
    whole = _whole_opening(case)
    for reach in reaches:
        yield add(whole, *reach)


def _thing_out(case: Case, thing: Obstruction) -> Iterator[Term]:
    """Off the wall face; a casing off the frame face."""
    out = (thing.projection or thing.diameter or 0.0, thing.offset, (thing.diameter or 0.0) / 2)
    c, off, radius = _named(case, thing, ("c", "f", "r_2"), out)
    from_wall = (c, Negative(case.letter("p")))
    if thing.from_frame:
        yield from (c, add(off, c), off)
        return
    yield add(*from_wall)
    yield less(add(*from_wall), radius)
    yield add(off, *from_wall)
    yield less(add(off, *from_wall), radius)
    yield add(off, Negative(case.letter("p")))


def _named(
    case: Case, thing: Obstruction, names: tuple[str, ...], values: tuple[float, ...]
) -> tuple[Symbol, ...]:
    said = {
        "l": f"{thing.kind}: where it starts, along the wall from the frame's outer edge",
        "m": f"{thing.kind}: its length along the wall",
        "r_2": f"{thing.kind}: its radius",
        "c": f"{thing.kind}: how far it stands out from the {_from(thing)}",
        "f": f"{thing.kind}: how far off the {_from(thing)} it begins",
    }
    pairs = zip(names, values, strict=True)
    return tuple(case.work.given(name, value, meaning=said[name]) for name, value in pairs)


def _from(thing: Obstruction) -> str:
    return "frame face" if thing.from_frame else "wall face"
