"""The trade's words as they are used here: what each means, where it stands, and what pictures it.

Read from resources/words. A word has its places: fields of an opening by path, without places in lists, and
rows of the comparison by key.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

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


def words_in(sentence: str) -> tuple[Word, ...]:
    """Return the words whose term stands in a sentence, a longer one instead of a shorter within it."""
    left, found = sentence.lower(), []
    for word in sorted(glossary(), key=lambda word: -len(word.term)):
        pattern = rf"\b{re.escape(word.term.lower())}(s|es)?\b"
        if re.search(pattern, left):
            found.append(word)
            left = re.sub(pattern, " ", left)
    return tuple(sorted(found, key=glossary().index))
