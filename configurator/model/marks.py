"""Marks as people number them: which comes next after one, and how they are put in order."""

import re
from collections.abc import Container

LONGEST_MARK = 100
_KEPT = 90
"""Of a mark that has no room left for its next number, so many characters are kept before a shorter one."""
_NUMBER = re.compile(r"([0-9]+)$")
_LETTER = re.compile(r"(?<![^\W\d_])([A-Za-z])$")
"""One letter at the end that is not the end of a word: the A of 112A, not the y of Lobby."""

MarkOrder = tuple[tuple[int, int, str], ...]


def next_mark(mark: str, taken: Container[str]) -> str:
    """Return the mark that comes next and is not taken: 112B after 112A, 102 after 101, Lobby 2 after Lobby.

    After 112Z letters are used up, and a number is counted on behind it.
    """
    following = mark
    while following in taken:
        following = _following(following)
    return following


def mark_order(mark: str) -> MarkOrder:
    """Return what marks are sorted by: 2A comes before 10A, and capitals do not matter."""
    parts = re.findall(r"[0-9]+|[^0-9]+", mark.casefold())
    return tuple((0, int(part), "") if part.isdecimal() else (1, 0, part) for part in parts)


def _following(mark: str) -> str:
    number = _NUMBER.search(mark)
    if number and len(number[1]) <= 18:
        counted = mark[: number.start()] + str(int(number[1]) + 1).zfill(len(number[1]))
        return counted if len(counted) <= LONGEST_MARK else f"{mark[:_KEPT]} 2"
    letter = _LETTER.search(mark)
    if letter and letter[1] not in "Zz":
        return mark[:-1] + chr(ord(mark[-1]) + 1)
    return f"{mark[:_KEPT]} 2"
