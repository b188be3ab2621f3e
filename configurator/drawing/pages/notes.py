"""The notes beside the details: what the hinge is, findings and cautions, what was assumed.

All of it is set as large as the column allows. What finds no room even at the least size is counted and said
to be missing, the least severe first; it is never dropped in silence. Of the first paragraph without room as
many whole sentences, or items of a list, are set as there is room for.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Primitive, Text
from configurator.drawing.base.view import Box
from configurator.model import Opening
from configurator.model.fields import unit_of
from configurator.model.paths import field_at, trade_name
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding
from configurator.rules.wording import pounds
from configurator.study import Study
from configurator.units import Display
from configurator.wording.hinge_order_line import order_cautions, order_lines
from configurator.wording.hinge_parts import cited
from configurator.wording.swing_words import bevel_words

SIZES = (8.0, 7.5, 7.0, 6.5, 6.0, 5.5)
"""Type sizes tried, points; the last is the least that is read without a glass."""
_LEADING = 1.36
_BEFORE_HEADING, _AFTER_PARAGRAPH = 0.7, 0.32
"""Air before a heading and after a paragraph, of the type size."""
_ASCENT = 0.95
_SENTENCE, _ITEM = re.compile(r"[.](?= )"), re.compile(r";(?= )")
"""Where a paragraph may be broken off, and where a list."""
DEFER = (
    "This sheet is no approval: codes, the listing of a labelled door and the judgment of a licensed "
    "professional go before it. Check every dimension in the field."
)
_SLOPES = frozenset({"door.latch_bevel"})


ASSUMED = " *"
"""What follows a number that nobody gave."""


@dataclass(frozen=True, slots=True)
class Marks:
    """Which numbers were assumed."""

    filled: FilledOpening

    def of(self, *paths: str) -> str:
        """Return the mark of a number that rests on any of these fields where one was not given."""
        return ASSUMED if any(path in self.filled.assumed for path in paths) else ""

    @property
    def by_rule(self) -> str:
        """The mark of a hinge's place where neither a rule nor places were given."""
        given = self.filled.opening.hinge_locations
        return "" if given.tops or given.rule else ASSUMED


@dataclass(frozen=True, slots=True)
class Note:
    """A heading and its paragraphs.

    `warns` letters it in the warning ink, `lists` says they are lists; what `stays` is never left out.
    """

    heading: str
    paragraphs: tuple[str, ...]
    warns: bool = False
    lists: bool = False
    stays: bool = False


@dataclass(frozen=True, slots=True)
class _Line:
    text: str
    air: float
    """Air over it, of the type size."""
    bold: bool = False
    layer: str = "A-ANNO-TEXT"
    paragraph: int = 0


def notes_column(notes: Sequence[Note], box: Box) -> tuple[Primitive, ...]:
    """Return the notes set in a rectangle of the page, from its top down."""
    for size in SIZES:
        lines = list(_lines(notes, size, box.width))
        if _height(lines, size) <= box.height:
            return _set(lines, size, box)
    return _set(_as_many_as_fit(notes, box), SIZES[-1], box)


def least_height(notes: Sequence[Note], width: float) -> float:
    """Return how high the notes stand at the least size they are set at, in a width; points."""
    return _height(list(_lines(notes, SIZES[-1], width)), SIZES[-1])


def _lines(notes: Sequence[Note], size: float, width: float) -> Iterator[_Line]:
    paragraph_number = 0
    for number, note in enumerate(note for note in notes if note.paragraphs):
        layer = "A-ANNO-REDL" if note.warns else "A-ANNO-TEXT"
        before = _BEFORE_HEADING if number else 0.0
        for line in broken(note.heading, size, width, bold=True):
            yield _Line(line, before, True, layer)
            before = 0.0
        for paragraph in note.paragraphs:
            air = 0.0 if paragraph is note.paragraphs[0] else _AFTER_PARAGRAPH
            paragraph_number += 1
            for line in broken(paragraph, size, width):
                yield _Line(line, air, paragraph=paragraph_number)
                air = 0.0


def _height(lines: Sequence[_Line], size: float) -> float:
    return size * sum(_LEADING + line.air for line in lines)


def _as_many_as_fit(notes: Sequence[Note], box: Box) -> list[_Line]:
    """Leave out paragraphs from the end, say how many, and set as much of the first of them as has room."""
    kept, missing, left_out = list(notes), list(notes), 0
    while not _has_room(_with_rest(kept, left_out, box), box):
        index = next(
            (n for n in reversed(range(len(kept))) if kept[n].paragraphs and not kept[n].stays), None
        )
        if index is None:
            break
        last, left_out = kept[index], left_out + 1
        kept[index] = replace(last, paragraphs=last.paragraphs[:-1])
        missing = [*kept[:index], last, *kept[index + 1 :]]
    for begun in _beginnings(kept, missing):
        lines = _with_rest(begun, left_out, box)
        if _has_room(lines, box):
            return lines
    return _with_rest(kept, left_out, box)


def _has_room(lines: Sequence[_Line], box: Box) -> bool:
    return _height(lines, SIZES[-1]) <= box.height


def _with_rest(kept: Sequence[Note], left_out: int, box: Box) -> list[_Line]:
    said = Note("Not shown here", (_left_out(left_out),), warns=True)
    return list(_lines([*kept, said] if left_out else kept, SIZES[-1], box.width))


def _beginnings(kept: Sequence[Note], missing: Sequence[Note]) -> Iterator[list[Note]]:
    """Yield the notes with less and less of the paragraph that one of `missing` has more.

    It is broken off only where a sentence or an item ends.
    """
    for index, (note, whole) in enumerate(zip(kept, missing, strict=True)):
        for paragraph in whole.paragraphs[len(note.paragraphs) :]:
            ends = (_ITEM if note.lists else _SENTENCE).finditer(paragraph)
            for end in reversed([found.end() for found in ends]):
                begun = replace(note, paragraphs=(*note.paragraphs, f"{paragraph[:end]} …"))
                yield [*kept[:index], begun, *kept[index + 1 :]]


def _left_out(count: int) -> str:
    more = "1 more note has" if count == 1 else f"{count} more notes have"
    return f"{more} no room, or not in full, on this paper; a larger paper or the comparison shows all."


def _set(lines: Sequence[_Line], size: float, box: Box) -> tuple[Primitive, ...]:
    base = box.top - _ASCENT * size
    found: list[Primitive] = []
    for line in lines:
        base -= line.air * size
        at = (box.left, base)
        found.append(Text(line.layer, at, line.text, size, bold=line.bold, paragraph=line.paragraph))
        base -= _LEADING * size
    return tuple(found)


def study_notes(study: Study, display: Display) -> tuple[Note, ...]:
    """Return the notes that every sheet of an opening carries, the most severe first."""
    found = study.all_findings()
    first = tuple({one.code: one for one in reversed(found)}.values())
    again = tuple(one for one in found if one not in first)
    return (
        Note("Errors", _sayings(found, "error", display), warns=True),
        Note(
            "Cautions", _sayings(tuple(one for one in found if one in first), "warning", display), warns=True
        ),
        Note("Hinges", (*(line.text for line in order_lines(study)), *order_cautions(study))),
        assumed_note(study, display),
        Note("Before use", (DEFER,), stays=True),
        Note("Notes", _sayings(found, "note", display)),
        # A caution said again, of another width or leaf, may take no room from what is said once.
        Note("Cautions of the same kind", _sayings(again, "warning", display), warns=True),
    )


def assumed_note(study: Study, display: Display) -> Note:
    """Return what nobody gave and was taken as usual, each with its value and how well it is known."""
    assumed = study.filled.assumed
    named = {path: _named(path, study.opening) for path in assumed}
    not_so = [named[path] for path, one in assumed.items() if one.value is False]
    told = [
        f"{named[path]} {value_words(path, one.value, display)} ({one.mark_of_source})"
        for path, one in assumed.items()
        if one.value is not False
    ]
    told += [f"nothing was said of, so taken as no: {', '.join(not_so)}"] if not_so else []
    return Note("Assumed, not given", ("; ".join(told) + ".",) if told else (), lists=True)


def _named(path: str, opening: Opening) -> str:
    """Return what the trade calls the field at a path; of a thing in a list, whose it is."""
    listed, _, rest = path.partition(".")
    if listed not in ("obstructions", "hardware") or not rest:
        return trade_name(path)
    kinds: list[str] = [one.kind for one in getattr(opening, listed)]
    return f"{kinds[int(rest.partition('.')[0])]}, {trade_name(path)}"


def value_words(path: str, value: float | str | bool | None, display: Display) -> str:
    """Return a value that was taken at a path, as a list of what was assumed tells it."""
    if isinstance(value, bool) or value is None:
        return "yes" if value else "not said"
    if isinstance(value, str):
        return value
    if path in _SLOPES:
        return bevel_words(value, display)
    match unit_of(field_at(path)):
        case " degrees":
            return display.angle(value, "up")
        case " lb":
            return pounds(value)
        case " in":
            return display.exact(value)
    return f"{value:g}"


def _sayings(found: tuple[Finding, ...], severity: str, display: Display) -> tuple[str, ...]:
    """Return the sentences of a severity; an error or a caution says where it comes from."""
    said = [(one.said(display), one) for one in found if one.severity == severity]
    if severity == "note":
        return tuple(message for message, _ in said)
    return tuple(f"{message} [{cited(one.source, one.mark_of_source)}]" for message, one in said)


def broken(text: str, size: float, width: float, bold: bool = False) -> tuple[str, ...]:
    """Return the text in lines no wider than `width` points; a word wider than that is broken itself."""
    lines: list[list[str]] = []
    space, used = text_width(" ", size, bold), width
    for word in _words(text, size, width, bold):
        wide = text_width(word, size, bold)
        if used + space + wide <= width:
            lines[-1].append(word)
            used += space + wide
        else:
            lines.append([word])
            used = wide
    return tuple(" ".join(words) for words in lines)


def cut_to(text: str, size: float, width: float, bold: bool = False) -> str:
    """Return the text if it is no wider than `width` points, else its beginning with an ellipsis."""
    if text_width(text, size, bold) <= width:
        return text
    kept = text
    while kept and text_width(kept.rstrip() + "…", size, bold) > width:
        kept = kept[:-1]
    return kept.rstrip() + "…"


def _words(text: str, size: float, width: float, bold: bool) -> Iterator[str]:
    for word in text.split():
        if text_width(word, size, bold) <= width:
            yield word
            continue
        piece = ""
        for letter in word:
            if piece and text_width(piece + letter, size, bold) > width:
                yield piece
                piece = ""
            piece += letter
        yield piece
