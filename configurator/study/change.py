"""What a change of frame or wall did: to the other sizes that follow from it, and to the swing. In words."""

from collections import Counter
from collections.abc import Iterator

from configurator.rules.filling.usual import FilledOpening
from configurator.rules.wording import leaf_named, plain
from configurator.sentences import capitalized
from configurator.study.candidate import Candidate
from configurator.study.run import Study
from configurator.units import TOLERANCE, Display

Layers = tuple[tuple[str, float], ...]
FLAT = 180.0


def what_changed(before: Study, after: Study, display: Display | None = None) -> tuple[str, ...]:
    """Return, as sentences, what differs in frame and wall and what that did to the swing.

    Nothing where frame and wall are as they were.
    """
    was, now = before.filled, after.filled
    same_kind = was.opening.frame.kind == now.opening.frame.kind
    if same_kind and _frame_and_wall(was) == _frame_and_wall(now):
        return ()
    shown = display or Display()
    found = (*_layers(was.layers, now.layers, shown), *_sizes(was, now, shown), *_wall_face(was, now, shown))
    return (*found, *(_swing(before, after, shown) or ("The swing is as it was.",)))


def _frame_and_wall(filled: FilledOpening) -> tuple[object, ...]:
    return (
        filled.frame_face,
        filled.rabbet,
        filled.stop_height,
        filled.stop_gap,
        filled.jamb_depth,
        filled.return_depth,
        filled.stop_width,
        filled.metal_thickness,
        filled.wall_thickness,
        filled.layers,
        filled.frame_proud,
    )


def _layers(old: Layers, new: Layers, display: Display) -> Iterator[str]:
    """Say which layer came, went or changed; of more than one at once, only that the wall is another."""
    if old == new:
        return
    if Counter(old) == Counter(new):
        yield "The wall's layers stand in another order."
    elif (place := _one_more(old, new)) is not None:
        yield f"{_named(new[place], display)} added {_side(place, len(new))}."
    elif (place := _one_more(new, old)) is not None:
        yield f"{_named(old[place], display)} taken away {_side(place, len(old))}."
    elif (place := _one_other(old, new)) is not None:
        was = _named(old[place], display, "")
        yield f"{_named(new[place], display)} {_side(place, len(new))} (was {was})."


def _one_more(few: Layers, many: Layers) -> int | None:
    """Return the place of the one layer that `many` has and `few` has not."""
    if len(many) != len(few) + 1:
        return None
    places = (place for place in range(len(many)) if many[:place] + many[place + 1 :] == few)
    return next(places, None)


def _one_other(old: Layers, new: Layers) -> int | None:
    """Return the place of the one layer that differs between two walls of as many layers."""
    places = [place for place, pair in enumerate(zip(old, new, strict=False)) if pair[0] != pair[1]]
    return places[0] if len(old) == len(new) and len(places) == 1 else None


def _named(layer: tuple[str, float], display: Display, start: str = "capital") -> str:
    name = capitalized(layer[0]) if start else layer[0]
    return f"{name} {display.exact(layer[1])}"


def _side(place: int, count: int) -> str:
    if place == 0:
        return "on the pull side"
    return "on the far side" if place == count - 1 else "inside the wall"


def _sizes(was: FilledOpening, now: FilledOpening, display: Display) -> Iterator[str]:
    """Say the wall and the jamb depth where they differ, and whether the depth followed by itself."""
    if abs(now.wall_thickness - was.wall_thickness) > TOLERANCE:
        follows = ", following the frame" if _follows(now, "wall.thickness") and not _counted(now) else ""
        wall, before = display.exact(now.wall_thickness), display.exact(was.wall_thickness)
        yield f"The wall is {wall} (was {before}){follows}."
    if abs(now.jamb_depth - was.jamb_depth) > TOLERANCE:
        follows = ", following the wall" if _follows(now, "frame.jamb_depth") else ""
        jamb, before = display.exact(now.jamb_depth), display.exact(was.jamb_depth)
        yield f"The jamb is {jamb} deep (was {before}){follows}."


def _follows(now: FilledOpening, path: str) -> bool:
    return path in now.assumed


def _counted(now: FilledOpening) -> bool:
    """Whether the wall's layers were given, so that it is their sum and follows nothing else."""
    return bool(now.opening.wall.layers)


def _wall_face(was: FilledOpening, now: FilledOpening, display: Display) -> Iterator[str]:
    """Say what the wall face on the pull side did, seen from the frame face."""
    nearer = was.frame_proud - now.frame_proud
    if abs(nearer) > TOLERANCE:
        way = "nearer to" if nearer > 0 else "farther from"
        why = ", for the frame stands centred in the wall" if _follows(now, "wall.frame_proud") else ""
        yield f"On the pull side the wall face moves {display.exact(abs(nearer))} {way} the frame face{why}."
    elif abs(now.wall_thickness - was.wall_thickness) > TOLERANCE:
        why = "the frame's place was given"
        if _follows(now, "wall.frame_proud"):
            thicker = now.wall_thickness > was.wall_thickness
            why = f"the jamb is {'deeper' if thicker else 'shallower'} by as much"
        yield f"On the pull side the wall face stays beside the frame where it was: {why}."


def _swing(before: Study, after: Study, display: Display) -> tuple[str, ...]:
    known = {(one.leaf, one.on): one for one in before.candidates}
    found = [
        f"{_hinge_of(one)}: {', '.join(parts)}."
        for one in after.candidates
        if (old := known.get((one.leaf, one.on))) is not None
        if (parts := list(_differences(old, one, _prouds(before, after), display)))
    ]
    return (*found, *_compared(before, after), *_chosen(before, after))


def _compared(before: Study, after: Study) -> Iterator[str]:
    """Say where nobody chose the widths to compare and the program now takes others."""
    was, now = (tuple(dict.fromkeys(one.hinge_width for one in study.butts)) for study in (before, after))
    if was != now:
        yield f"The widths compared are now {_in_a_row(now)} (were {_in_a_row(was)})."


def _in_a_row(widths: tuple[float, ...]) -> str:
    return " and ".join(plain(width) for width in widths) + " in"


def _prouds(before: Study, after: Study) -> tuple[float, float]:
    return before.filled.frame_proud, after.filled.frame_proud


def _hinge_of(one: Candidate) -> str:
    return f"{capitalized(leaf_named(one.leaf, '{}, '))}{one.hinge_words}"


def _differences(
    old: Candidate, new: Candidate, proud: tuple[float, float], display: Display
) -> Iterator[str]:
    """Say the angles, the room behind the open door and the clear width, where they read otherwise now."""
    bare = display.angle(new.greatest_angle_bare), display.angle(old.greatest_angle_bare)
    whole = display.angle(new.greatest_angle), display.angle(old.greatest_angle)
    if bare[0] != bare[1]:
        yield f"opens to {bare[0]} (was {bare[1]})"
    if whole[0] != whole[1] and whole != bare:
        yield f"with its hardware to {whole[0]} (was {whole[1]})"
    rooms = new.clear_past_frame_at_180 + proud[1], old.clear_past_frame_at_180 + proud[0]
    if FLAT in (new.greatest_angle_bare, old.greatest_angle_bare) and min(rooms) >= 0:
        yield from _was(
            "room to the wall at 180° {}", display.length(rooms[0], "down"), display.length(rooms[1], "down")
        )
    clear = new.clear_width_at_90, old.clear_width_at_90
    if clear[0] is not None and clear[1] is not None:
        yield from _was("clear width {}", display.length(clear[0], "down"), display.length(clear[1], "down"))


def _was(words: str, now: str, was: str) -> Iterator[str]:
    if now != was:
        yield f"{words.format(now)} (was {was})"


def _chosen(before: Study, after: Study) -> Iterator[str]:
    """Say where the program now chooses another hinge width."""
    now, was = (_widths(study) for study in (after, before))
    for leaf, width in now.items():
        if leaf in was and was[leaf] != width and width is not None:
            old = "none" if was[leaf] is None else f"{plain(was[leaf])} in"
            yield f"The hinge now chosen is {plain(width)} in wide (was {old})."
            return


def _widths(study: Study) -> dict[str, float]:
    return {leaf.leaf: leaf.parts["width"].value for leaf in study.specification.leaves}
