"""Openings of any kind drawn at random, and what must hold of the advice that any of them is given."""

import random
import re
from collections.abc import Iterator
from itertools import combinations

from configurator.model import JobFacts, Opening
from configurator.model.paths import value_at, words_of
from configurator.rules.finding import Finding
from configurator.study import Study
from configurator.units import parse_length

CONSTRUCTIONS = (None, *words_of("door.construction"))
CLOSER = {
    "kind": "closer",
    "projection": 2.5,
    "from_latch_edge": 28,
    "width": 10,
    "height": 81,
    "vertical": 3,
}
LEVER = {"kind": "lever", "projection": 2.5, "from_latch_edge": 2.75, "width": 5, "height": 38, "vertical": 2}
PANIC = {"kind": "panic device", "face": "push", "projection": 3.5, "from_latch_edge": 16, "width": 30}
HARDWARE = (LEVER, PANIC | {"height": 40, "vertical": 4}, CLOSER | {"vertical": 3})
STANDARDS = (None, None, None, {"width": 4.5}, {"height": 5, "width": 5}, {"mounting": "half surface"})
FLAGS = ("coastal", "humid", "locked", "closer", "fire_rated", "accessible", "lock_both_sides", "alteration")


def opening_at_random(seed: int) -> tuple[Opening, JobFacts]:
    """Return an opening of any kind and the facts of its job; much of it is left out, as people do."""
    dice = random.Random(seed)
    leaves = dice.choice(["single"] * 4 + ["pair", "dutch"])
    height = dice.choice([58, 80, 84, 96, 122])
    width = dice.choice([18, 24, 30, 32, 33, 34, 34.5, 36, 36, 38, 40, 42, 44, 48, 50])
    data = {
        "mark": "1",
        "hand": dice.choice([None, "LH", "RH", "LHR", "RHR"]),
        "leaves": leaves,
        "size": {"width": width * (2 if leaves == "pair" else 1), "height": height},
        "door": _door(dice),
        "frame": {"kind": dice.choice(words_of("frame.kind")), "rabbet": dice.choice([None] * 5 + [2.5])},
        "wall": {"frame_proud": dice.choice([0, 0.25, 0.5, 1, -1, -2])},
        "use": _use(dice),
        "obstructions": [_thing(dice) for _ in range(dice.choice([0, 0, 1, 1, 2]))],
        "hardware": [one for one in HARDWARE if dice.random() < 0.25],
        "hinge": _hinge(dice),
        "existing_hinge": _old_hinge(dice) if dice.random() < 0.15 else None,
        "prepared_height": dice.choice([None] * 6 + [4.5, 4, 5]),
        "compare": dice.choice([(), (), (4,), (4, 4.5, 5, 6), (4.5, 7)]),
    }
    policy, standard = dice.choice([None, None, "square hinges"]), dice.choice(STANDARDS)
    facts = {"width_policy": policy, "standard_hinge": standard}
    return Opening.model_validate(data), JobFacts.model_validate(facts)


def _door(dice: random.Random) -> dict[str, object]:
    return {
        "construction": dice.choice(CONSTRUCTIONS),
        "thickness": dice.choice([None, None, 1.375, 1.75, 1.75, 2.25]),
        "latch_bevel": dice.choice([None, None, 0, 0.0625]),
        "lead_thickness": dice.choice([None] * 5 + [0.0625]),
        "weight": dice.choice([None] * 5 + [90, 230]),
    }


def _use(dice: random.Random) -> dict[str, object]:
    use = {flag: dice.choice([None, True, False]) for flag in FLAGS}
    return use | {
        "exposure": dice.choice([None, "interior", "exterior"]),
        "traffic": dice.choice([None, "high", "average", "low"]),
        "wanted_angle": dice.choice([None, None, 90, 110, 180]),
        "stop_angle": dice.choice([None] * 5 + [85, 105]),
        "clear_width_margin": dice.choice([None, None, 0.5]),
        "corridor_width": dice.choice([None, None, 60]),
        "required_width": dice.choice([None, 44]),
        "lock_finish_bhma": dice.choice([None, None, "626", "613"]),
    }


def _thing(dice: random.Random) -> dict[str, object]:
    kind = dice.choice(words_of("obstructions.kind"))
    start = {"casing": dice.choice([-0.5, -0.375, 0]), "return wall": dice.choice([1, 3, 8])}
    thing = {"kind": kind, "side": dice.choice(["hinge", "hinge", "latch"])}
    thing["start"] = start.get(kind, dice.choice([0, 0.5, 6]))
    if kind == "column":
        return thing | {"diameter": dice.choice([6, 12])}
    if kind != "return wall":
        thing["projection"] = dice.choice([0.5, 0.6875, 1.25, 1.75, 2.5, 6])
        thing["length"] = dice.choice([None, 6])
    return thing


def _hinge(dice: random.Random) -> dict[str, object] | None:
    if dice.random() < 0.5:
        return None
    parts = {
        "height": [4, 4.5, 5],
        "width": [4, 4.5, 5, 6, 7],
        "count": [2, 3, 4],
        "mounting": ["swing clear", "half surface", "full surface", "half mortise"],
        "weight": ["standard", "heavy"],
        "bearing": ["plain", "ball"],
        "base_metal": ["steel", "stainless", "brass"],
        "finish_us": ["US26D", "US10B", "US32D"],
        "barrel": [0.5, 0.69],
        "pin": ["removable"],
    }
    return {part: dice.choice(values) if dice.random() < 0.2 else None for part, values in parts.items()}


def _old_hinge(dice: random.Random) -> dict[str, object]:
    return {
        "height": dice.choice([None, 4, 4.5, 5]),
        "width": dice.choice([None, 4, 4.5, 5]),
        "leaf_thickness": dice.choice([None, 0.13, 0.134, 0.18]),
        "corner": dice.choice([None, "square", "1/4 radius"]),
        "count": dice.choice([None, 2, 3]),
        "mounting": dice.choice([None, "full mortise", "half surface"]),
    }


# --- Advice: what a sentence tells to do ---

ADVICE = {
    "wider hinge": r"[Tt]ake a wider hinge\b",
    "narrower hinge": r"(?:[Tt]ake|[Tt]ry) a narrower hinge\b",
    "no wider hinge": r"a wider hinge is not the answer",
    "no width does": r"No (?:stock )?(?:width|hinge) does (?:everything|it)",
    "deeper jamb": r"[Tt]ake a deeper jamb|Make the jamb deeper",
    "shallower jamb": r"[Tt]ake a shallower jamb",
    "deeper mortise": r"cut the mortise deeper|[Cc]ut the mortises deeper",
    "shim": r"shim (?:it|the leaf)",
    "fill the mortise": r"fill it\b",
    "fill behind the leaf": r"fill the mortise behind",
    "cut the mortise longer": r"cut it longer",
    "heavy weight": r"[Tt]ake heavy weight",
    "standard weight": r"[Tt]ake standard weight",
    "ball bearings": r"[Tt]ake bearing hinges",
    "plain bearings": r"[Tt]ake plain bearing",
    "bevel": r"[Bb]evel the lock edge",
    "square the edge": r"[Ss]quare the lock edge",
    "template": r"Ask for the template",
    "wider opening": r"[Mm]ake the opening \S+ in wide|[Tt]ake a wider (?:opening|active leaf)",
    "narrower opening": r"narrower opening",
    "add a stop": r"[Ff]it a door stop",
}
"""What a sentence advises, by the words that advise it."""
NAMED_SIZE = re.compile(r"[Tt]ake (\d+(?:-\d+/\d+)? x \d+(?:-\d+/\d+)?)(?=[.,:;]| |$)")
OPPOSED = (
    ("wider hinge", "narrower hinge"),
    ("wider hinge", "no wider hinge"),
    ("wider hinge", "no width does"),
    ("narrower hinge", "no width does"),
    ("deeper jamb", "shallower jamb"),
    ("deeper mortise", "shim"),
    ("fill the mortise", "cut the mortise longer"),
    ("heavy weight", "standard weight"),
    ("ball bearings", "plain bearings"),
    ("bevel", "square the edge"),
    ("bevel", "template"),
    ("wider opening", "narrower opening"),
    ("wider opening", "template"),
)
"""Advice that no opening may be given together."""
GIVES: dict[str, frozenset[str]] = {
    code: frozenset(advice)
    for code, advice in {
        "barrel close": ["no width does"],
        "barrel overlaps": ["no width does"],
        "binds at the lock side": ["no width does"],
        "changed since the order": ["no width does"],
        "hardware meets first": ["no wider hinge"],
        "jamb deeper than wall": ["shallower jamb"],
        "leaf below flush": ["shim"],
        "leaf gage differs": ["deeper mortise", "shim"],
        "leaves clash": ["deeper mortise"],
        "margin not kept": ["no width does", "wider opening"],
        "mortise left open": ["fill the mortise"],
        "mortise too short": ["cut the mortise longer"],
        "leaf narrower": ["fill behind the leaf"],
        "no width does everything": ["no width does", "wider opening", "bevel", "add a stop"],
        "plain bearing with closer": ["ball bearings"],
        "closer degree": ["add a stop"],
        "closer as a stop": ["add a stop"],
        "arm past the opening": ["add a stop"],
        "stops short": ["no width does", "add a stop"],
        "template decides": ["template"],
        "throat wider than wall": ["shallower jamb"],
        "tight at the lock side": ["bevel"],
        "too narrow to pass": ["no width does", "wider opening"],
        "wall thicker than jamb": ["deeper jamb"],
        "weight too light": ["heavy weight"],
        "wider gains nothing": ["no wider hinge", "add a stop"],
        "old width fails": ["no width does"],
        "width by hand": ["no width does"],
    }.items()
}
"""Which advice each code may give; of a code that is not here, none of these."""


def advice_of(found: Finding) -> frozenset[str]:
    """Return what a finding advises."""
    return frozenset(advice for advice, words in ADVICE.items() if re.search(words, found.message))


def _of_leaf(found: Finding) -> str:
    """Return which of two leaves a sentence is about; empty where it names none."""
    named = re.search(r"\b(active|inactive|upper|lower) leaf", found.message, re.IGNORECASE)
    return named[1].lower() if named else ""


def contradictions(study: Study) -> Iterator[str]:
    """Yield every pair of findings of an opening that advise opposite things, and advice no code may give."""
    findings = study.all_findings()
    for found in findings:
        if odd := advice_of(found) - GIVES.get(found.code, frozenset()):
            yield f"{found.code} advises {', '.join(sorted(odd))}: {found.message}"
    for one, other in combinations(findings, 2):
        if _of_leaf(one) == _of_leaf(other):
            yield from _between(one, other)


def _between(one: Finding, other: Finding) -> Iterator[str]:
    both = advice_of(one), advice_of(other)
    for this, that in OPPOSED:
        if (this in both[0] and that in both[1]) or (that in both[0] and this in both[1]):
            yield f"{this} and {that}: {one.message} / {other.message}"
    for this, that in ((one, other), (other, one)):
        yield from _no_wider_and_wider(this, that)
    sizes = {size for found in (one, other) for size in NAMED_SIZE.findall(found.message)}
    if len(sizes) > 1 and {one.code, other.code}.isdisjoint(ABOUT_OTHER_THINGS):
        yield f"take {' and '.join(sorted(sizes))}: {one.message} / {other.message}"
    for path, values in _fixes(one, other).items():
        if len(values) > 1 and path not in MAY_BE_EITHER:
            yield f"{path} to {values}: {one.message} / {other.message}"


def _no_wider_and_wider(this: Finding, that: Finding) -> Iterator[str]:
    """Yield where a wider hinge is not the answer to one finding and is taken for the other, on one width."""
    on = re.match(r"With a (\S+ x \S+) hinge", this.message)
    if "no wider hinge" not in advice_of(this) or on is None or not that.message.startswith(on[0]):
        return
    for size in NAMED_SIZE.findall(that.message):
        if parse_length(size.split(" x ")[1]) > parse_length(on[1].split(" x ")[1]):
            yield f"no wider hinge and {size}: {this.message} / {that.message}"


ABOUT_OTHER_THINGS = {
    "angle not asked for",
    "hinge size swapped",
    "no width does everything",
    "reveal does it too",
    "standard outranks",
}
"""Codes that name a size on a condition: an angle, a slip, a mend, a moved casing, a standard not kept."""
MAY_BE_EITHER = {"use.wanted_angle", "door_stop", "compare"}
"""What two findings may each offer a value for: an answer that only the user has."""


def _fixes(one: Finding, other: Finding) -> dict[str, set[str]]:
    values: dict[str, set[str]] = {}
    for found in (one, other):
        if found.code not in ABOUT_OTHER_THINGS:
            for fix in found.fix:
                values.setdefault(fix.path, set()).add(repr(fix.value))
    return values


def errors_recommended(study: Study) -> Iterator[str]:
    """Yield every recommendation that an error stands against, and every error without one withheld."""
    errors = [one for one in study.findings if one.severity == "error"]
    if study.recommended and errors:
        yield f"recommended with {errors[0].message}"
    for leaf in study.specification.leaves if study.recommended else ():
        width = leaf.parts["width"].value
        shown = [one for one in study.candidates if (one.leaf, one.hinge_width) == (leaf.leaf, width)]
        yield from (said.message for one in shown for said in one.findings if said.severity == "error")


DECIDES = (*(f"use.{flag}" for flag in FLAGS), "use.exposure", "use.traffic", "use.wanted_angle")
"""What decides a part of the hinge or its checks, and is assumed where nobody said."""
IDLE = {"use.lock_both_sides", "use.alteration"}
"""What is asked only where another answer makes it matter."""


def unlisted(study: Study) -> Iterator[str]:
    """Yield every unknown that was read as something without being listed as assumed."""
    assumed = study.filled.assumed
    # A closer that is described is known of.
    known = {"use.closer"} if any(one.kind == "closer" for one in study.opening.hardware) else set()
    for path in DECIDES:
        if (
            path not in known
            and value_at(study.opening, path) is None
            and path not in assumed
            and path not in IDLE
        ):
            yield f"{path} is not listed as assumed"
    pounds = [leaf.hinge.door_weight for leaf in study.leaves]
    if any(one is None or one.guessed for one in pounds) and "door.weight" not in assumed:
        yield "door.weight is not listed as assumed"


def faults(study: Study) -> list[str]:
    """Return all that must not be of an opening's advice."""
    return [*contradictions(study), *errors_recommended(study), *unlisted(study)]
