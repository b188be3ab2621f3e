"""The working of one number, step by step, and what it was made from."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import count

from configurator.geometry.pin import Point
from configurator.study.derivation.terms import Symbol, Term, Unit


@dataclass(frozen=True, slots=True)
class Mark:
    """What of the plan a letter stands for, inches: lines to draw over it, and arcs about their centres.

    An arc is centre, radius, start and end, radians, counter-clockwise.
    """

    lines: tuple[tuple[Point, ...], ...] = ()
    arcs: tuple[tuple[Point, float, float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a working: two sides that are equal; `left` is a letter where it is worked out there."""

    left: Term
    right: Term


@dataclass(frozen=True, slots=True)
class Derivation:
    """One number with its working, the last step being the number itself.

    `value` is in inches or degrees; None where the number has no value, and `remark` says why. `meanings`
    says what each letter is, `marks` what of the plan it stands for; `given` are the letters that no step
    works out. `angle`, degrees, is where the leaf stands for it. `beside` are the letters worked out beside
    the answer, which it does not rest on.
    """

    key: str
    value: float | None
    unit: Unit
    steps: tuple[Step, ...]
    given: tuple[Symbol, ...]
    meanings: dict[str, str]
    marks: dict[str, Mark]
    angle: float
    remark: str = ""
    beside: frozenset[str] = frozenset()

    def letters(self) -> tuple[Symbol, ...]:
        """Return every letter once: the given ones, then those worked out, in their order."""
        return (*self.given, *(step.left for step in self.steps if isinstance(step.left, Symbol)))


@dataclass(slots=True)
class Working:
    """The steps so far; a letter is worked out once, however often it is needed.

    `also` are letters whose steps are told though the last one does not rest on them.
    """

    known: dict[str, Symbol] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)
    meanings: dict[str, str] = field(default_factory=dict)
    marks: dict[str, Mark] = field(default_factory=dict)
    remarks: list[str] = field(default_factory=list)
    also: set[str] = field(default_factory=set)
    angle: float = 0.0

    def given(self, name: str, value: float, unit: Unit = "length", meaning: str = "") -> Symbol:
        """Return a letter that was given or assumed; if it is taken by something else, one with a number."""
        free = self._free(name, value, meaning)
        if meaning:
            self.meanings.setdefault(free, meaning)
        return self.known.setdefault(free, Symbol(free, value, unit))

    def _free(self, name: str, value: float, meaning: str) -> str:
        for place in count(1):
            tried = name if place == 1 else f"{name}{place}"
            symbol = self.known.get(tried)
            if symbol is None or (symbol.value == value and self.meanings.get(tried, "") == meaning):
                return tried
        raise AssertionError("unreachable: there is always another number")

    def let(self, name: str, formula: Term, unit: Unit = "length", meaning: str = "") -> Symbol:
        """Work a letter out, as the next step, unless it is known already."""
        if meaning:
            self.meanings.setdefault(name, meaning)
        if name not in self.known:
            self.known[name] = Symbol(name, formula.value, unit)
            self.steps.append(Step(self.known[name], formula))
        return self.known[name]

    def equal(self, left: Term, right: Term) -> None:
        """State that two sides are equal."""
        self.steps.append(Step(left, right))

    def say(self, remark: str) -> None:
        """Add a sentence to what is said of the number."""
        self.remarks.append(remark)

    def needed(self) -> tuple[Step, ...]:
        """Return the steps that the last one rests on, and those that state an equality, in their order."""
        wanted: set[str] = set()
        kept: list[Step] = []
        for step in reversed(self.steps):
            name = step.left.name if isinstance(step.left, Symbol) else ""
            if not kept or not name or name in wanted | self.also:
                kept.append(step)
                wanted.update(one.name for one in (*step.left.letters(), *step.right.letters()))
        return tuple(reversed(kept))

    def used(self) -> tuple[Symbol, ...]:
        """Return the letters that the steps are made from and that none of them works out."""
        steps = self.needed()
        worked_out = {step.left.name for step in steps if isinstance(step.left, Symbol)}
        return tuple(one for one in _in_order(steps) if one.name not in worked_out)


def _in_order(steps: Iterable[Step]) -> tuple[Symbol, ...]:
    found: dict[str, Symbol] = {}
    for step in steps:
        for letter in (*step.left.letters(), *step.right.letters()):
            found.setdefault(letter.name, letter)
    return tuple(found.values())
