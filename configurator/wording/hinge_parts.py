"""The hinge of an opening, part by part: the value in words, why, from where, and who asked for it."""

from collections.abc import Mapping
from dataclasses import dataclass

from configurator.model import Hinge, Opening
from configurator.rules.finding import Reason, reason
from configurator.rules.hinge.electric import beside_the_hinges, wires_asked
from configurator.rules.hinge.finish import finishes
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED
from configurator.rules.specification import LeafSpecification
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.tables import Mark, practice, words_of
from configurator.units import Display
from configurator.wording.hinge_words import part_words, spelled_value

BY_HAND = "by hand"
JOB_STANDARD = "the job's standard"
MARK_WORDS: Mapping[Mark, str] = {
    "read": "read in the source",
    "common practice": "common practice",
    "from memory": "from memory",
    "derived": "derived here",
}
CODES_SAY = "The US code says only what it looks like, the BHMA number also what it is made of."
BOTH_LEAVES = "What is given by hand holds for both leaves."
COUNT_OF_BOTH = "A number given by hand is for the whole opening; of two leaves it says nothing about either."
SCREWS_OF_BOTH = "A number given by hand is for the whole opening; the hinges of both leaves share it alike."
ELECTRIC_OF_BOTH = "Of both leaves together one hinge carries wires."
_NO_WIRES = "asked for only where the door's hardware needs wires"
NEVER_MATCHES = "Oxidised: it does not match from one item, maker or metal to the next."


@dataclass(frozen=True, slots=True)
class Part:
    """What one row of the panel is about: its keys in the results, the plain words and the trade's."""

    keys: tuple[str, ...]
    plain: str
    trade: str


PARTS = (
    Part(("height", "width"), "hinge size, height x width opened flat", "hinge size, height x open width"),
    Part(("count",), "how many hinges", "number of hinges"),
    Part(("mounting",), "how the two leaves are fixed", "hinge mounting"),
    Part(("weight",), "how heavy a grade (not pounds)", "hinge weight grade"),
    Part(("bearing",), "what the knuckles turn on", "hinge bearing"),
    Part(("leaf_thickness",), "how thick the hinge's leaves are", "hinge leaf thickness"),
    Part(("type",), "standard type number", "ANSI/BHMA A156.1 type"),
    Part(("knuckles",), "how many knuckles the barrel has", "knuckles"),
    Part(("base_metal",), "what the hinge is made of", "base metal"),
    Part(("alloy",), "which stainless steel", "stainless alloy"),
    Part(("finish_bhma", "finish_us"), "colour and surface", "finish"),
    Part(("pin",), "whether the pin can be taken out", "hinge pin"),
    Part(("security_stud",), "stud that holds the door with its pin out", "security stud"),
    Part(("tip",), "how the ends of the pin look", "hinge tip"),
    Part(("corner",), "how the corners of the leaves are cut", "hinge corner"),
    Part(("screws",), "what it is screwed on with", "screws, one opening"),
    Part(("electric", "transfer", "wires"), "what carries wires to the door", "electric transfer"),
)
"""Every row, in the order of the results; that of the wires is asked for and never chosen."""


@dataclass(frozen=True, slots=True)
class Other:
    """Another value for a part, in words, and what it would cost or break."""

    value: str
    effect: str


@dataclass(frozen=True, slots=True)
class Because:
    """Why one key has its value: a sentence, its source with the mark in words, and what else could be."""

    key: str
    trade: str
    words: str
    source: str
    others: tuple[Other, ...]


@dataclass(frozen=True, slots=True)
class PartRow:
    """One row: the value in words, a remark or "", who asked for it ("" for nobody), and its reasons."""

    part: Part
    value: str
    remark: str
    asked_by: str
    reasons: tuple[Because, ...]


@dataclass(frozen=True, slots=True)
class LeafParts:
    """The rows of one leaf's hinges."""

    leaf: str
    rows: tuple[PartRow, ...]


def hinge_parts(study: Study, display: Display) -> tuple[LeafParts, ...]:
    """Return the rows for each leaf; none where no hinge is chosen for the opening."""
    return tuple(
        _leaf(leaf, study, display, study.standard or NOTHING_ASKED) for leaf in study.specification.leaves
    )


def given_by_hand(opening: Opening) -> tuple[str, ...]:
    """Return the keys of the parts that were given by hand, in the order of the rows."""
    given = (opening.hinge or NOTHING_ASKED).model_dump(exclude_none=True)
    return tuple(key for part in PARTS for key in part.keys if key in given)


def cited(source: str, mark: Mark) -> str:
    """Write a source with its mark in words, once."""
    words = MARK_WORDS[mark]
    said = words in source or source.startswith(words.split()[0])
    return source if said else f"{source} ({words})" if source else words


def _leaf(leaf: LeafSpecification, study: Study, display: Display, standard: Hinge) -> LeafParts:
    parts = {**leaf.parts, **_wires(leaf, study)}
    by_hand = given_by_hand(study.opening)
    one = len(study.specification.leaves) == 1
    rows = tuple(
        PartRow(
            part,
            part_words(part.keys[0], parts, display),
            " ".join(words for words in (_remark(part, parts), "" if one else _of_both(part)) if words),
            _asked_by(part, parts, by_hand, standard),
            tuple(_because(key, parts, display) for key in part.keys),
        )
        for part in PARTS
        if part.keys != ("alloy",) or parts["alloy"].value is not None
    )
    return LeafParts(leaf.leaf, rows)


def _because(key: str, parts: Mapping[str, Reason], display: Display) -> Because:
    found = parts[key]
    others = tuple(
        Other(spelled_value(key, other.value, display), other.said(display)) for other in found.alternatives
    )
    because = found.said(display)
    words = capitalized(because)
    trade = Hinge.model_fields[key].title or key
    own = found.source == practice("override").text
    return Because(key, trade, words, found.source if own else cited(found.source, found.mark), others)


def _asked_by(part: Part, parts: Mapping[str, Reason], by_hand: tuple[str, ...], standard: Hinge) -> str:
    if any(key in by_hand for key in part.keys):
        return BY_HAND
    if "finish_bhma" in part.keys and (standard.finish_bhma or standard.finish_us):
        return JOB_STANDARD
    outranks = practice("job_standard").text
    return JOB_STANDARD if any(parts[key].source == outranks for key in part.keys) else ""


def _remark(part: Part, parts: Mapping[str, Reason]) -> str:
    if "finish_bhma" not in part.keys:
        return ""
    number = parts["finish_bhma"].value
    unstable = number is not None and any(not row.alike for row in finishes(bhma=number))
    return f"{CODES_SAY} {NEVER_MATCHES}" if unstable else CODES_SAY


def _of_both(part: Part) -> str:
    own = {"count": COUNT_OF_BOTH, "screws": SCREWS_OF_BOTH, "electric": ELECTRIC_OF_BOTH}
    return own.get(part.keys[0], BOTH_LEAVES)


def _wires(leaf: LeafSpecification, study: Study) -> Mapping[str, Reason]:
    """Return what carries wires to that leaf, and why none does where it is another leaf's."""
    asked = study.opening.hinge or NOTHING_ASKED
    transfer = asked.transfer or ("electric hinge" if leaf.electric is not None else None)
    kept = "as asked; a loop is seen, a transfer let into the edges is not"
    wires = "of all that is on the door" if asked.wires else _NO_WIRES
    return {
        "electric": _electric(leaf, study, asked),
        "transfer": reason(transfer, kept if transfer else "no wires were asked for", practice("transfer")),
        "wires": reason(asked.wires, wires, practice("transfer")),
    }


def _electric(leaf: LeafSpecification, study: Study, asked: Hinge) -> Reason:
    which, beside = asked.electric, beside_the_hinges(asked)
    other = next((one.leaf for one in study.specification.leaves if one.electric is not None), None)
    if not wires_asked(asked):
        words = _NO_WIRES
    elif beside is not None:
        words = f"the {beside} carries the wires"
    elif leaf.electric is not None:
        chosen = "the usual place" if which is None else "chosen by hand"
        words = f"{chosen}; usual is {words_of('electric')}"
    elif other is not None:
        words = f"{f'hinge {which}' if which else 'a hinge'} of the {other} leaf carries wires"
    else:
        words = f"chosen by hand, but no leaf has a hinge {which}"
    return reason(leaf.electric, words, practice("electric"))
