"""The trade's words as they are used here: what each means, where it stands, and what pictures it.

Read from resources/words. A word has its places: fields of an opening by path, without places in lists, and
rows of the comparison by key.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from configurator.tables import Mark, resource_rows


@dataclass(frozen=True, slots=True)
class Word:
    """One word: the trade's term, the plain words for it, its meaning, its places and its picture.

    `picture` is a scene and the mark on it, as `front:width`; `mark` is how sure the source is.
    """

    term: str
    plain: str
    meaning: str
    where: tuple[str, ...]
    picture: str
    source: str
    mark: Mark


@cache
def glossary() -> tuple[Word, ...]:
    """Return every word in the order of the file, which goes from the opening to its hinge and its use."""
    return resource_rows("words", "glossary", Word)


@cache
def _by_place() -> Mapping[str, Word]:
    return {place: word for word in glossary() for place in word.where}


def word_at(place: str) -> Word | None:
    """Return the word that a field's path or a row's key stands under; of a part without one, its whole's."""
    names = [name for name in place.split(".") if not name.isdigit()]
    while names:
        if (found := _by_place().get(".".join(names))) is not None:
            return found
        names.pop()
    return None


def search(text: str) -> tuple[Word, ...]:
    """Return the words that everything typed occurs in; those whose term begins with it come first."""
    wanted = text.lower().split()
    found = [word for word in glossary() if all(piece in _all_of(word) for piece in wanted)]
    return tuple(sorted(found, key=lambda word: _rank(word, " ".join(wanted))))


def _all_of(word: Word) -> str:
    return f"{word.term} {word.plain} {word.meaning}".lower()


def _rank(word: Word, wanted: str) -> int:
    term = word.term.lower()
    choices = (term == wanted, term.startswith(wanted), wanted in term, wanted in word.plain.lower())
    return next((place for place, holds in enumerate(choices) if holds), len(choices))


_ALSO: Mapping[str, str] = MappingProxyType(
    {
        "backset": "door hinge backset", "bevel": "latch bevel", "beveled": "latch bevel",
        "proud": "frame proud", "bumper": "door stop", "overhead stop": "door stop", "door face": "inset",
        "double doors": "active leaf", "open width": "hinge open width",
        "laid open flat": "hinge open width", "finish": "finish number", "height hinge": "hinge height",
        "knuckle": "knuckles", "lock edge": "latch edge least", "opening size": "opening",
        "opens flat": "greatest angle", "open flat": "greatest angle",
        "opened flat": "clear past frame at 180", "stands out": "projection", "weight": "hinge weight",
        "screw": "screws", "leaf": "leaf of a door", "leaves": "leaf of a door",
        "frame backset": "frame hinge backset", "square open": "clear width", "antifriction": "bearing",
        "spindle": "lever", "corridor": "encroachment",
    }
)  # fmt: skip
"""What else a word is called in a sentence, and the term it stands under."""


@cache
def _named() -> tuple[re.Pattern[str], Mapping[str, Word]]:
    """Return what finds words in a sentence, the longer first, and the words by what is found."""
    by_term = {word.term.lower(): word for word in glossary()}
    found = {**{name: by_term[term] for name, term in _ALSO.items()}, **by_term}
    names = "|".join(re.escape(name) for name in sorted(found, key=len, reverse=True))
    return re.compile(rf"\b({names})(?:s|es)?\b", re.IGNORECASE), found


def words_marked(sentence: str) -> tuple[tuple[str, Word | None], ...]:
    """Return a sentence in pieces, each with the word that it is; a word is marked where it first stands."""
    pattern, words = _named()
    pieces: list[tuple[str, Word | None]] = []
    seen, at = set[str](), 0
    for match in pattern.finditer(sentence):
        word = words[match[1].lower()]
        if word.term not in seen:
            seen.add(word.term)
            pieces += [(sentence[at : match.start()], None), (match[0], word)]
            at = match.end()
    return (*pieces, (sentence[at:], None))


def words_in(sentence: str) -> tuple[Word, ...]:
    """Return the words that stand in a sentence, a longer one instead of a shorter within it."""
    found = {word.term: word for _, word in words_marked(sentence) if word is not None}
    return tuple(sorted(found.values(), key=glossary().index))
