"""Openings that are alike: the same door in the same frame, whatever their marks and wherever they are."""

from collections.abc import Iterable

from configurator.model import Opening

ONLY_SAID = frozenset({"mark", "location", "notes", "questions"})
"""What is said of an opening that no answer depends on."""
SETTLED = ("approved", "ordered")


def study_key(opening: Opening) -> str:
    """Return what an opening's answers come from: two with the same key have the same answers.

    A value that is given and one that is left out differ, though the usual value may be the same. What a
    width chosen by hand is told depends on whether it was ordered; no other answer asks for the status.
    """
    said = opening.model_dump_json(exclude={*ONLY_SAID, "status"}, exclude_defaults=True)
    by_hand = opening.hinge is not None and opening.hinge.width is not None
    return f"{said} settled" if by_hand and opening.status in SETTLED else said


def like_key(opening: Opening) -> str:
    """Return what openings are grouped by: everything but mark, location, quantity, notes and questions."""
    return opening.model_dump_json(exclude={*ONLY_SAID, "quantity"}, exclude_defaults=True)


def like_openings(openings: Iterable[Opening]) -> tuple[tuple[Opening, ...], ...]:
    """Return openings in groups of like ones; groups and their members stand as they come."""
    groups: dict[str, list[Opening]] = {}
    for opening in openings:
        groups.setdefault(like_key(opening), []).append(opening)
    return tuple(tuple(group) for group in groups.values())
