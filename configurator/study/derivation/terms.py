"""Formulas that can be both written and worked out: letters with values, and what is done with them.

Lengths are inches, angles degrees: the cosine and its like take and give degrees.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal, Protocol

from configurator.units import format_decimal

Unit = Literal["length", "angle", "plain"]
Writer = Callable[[float, Unit], str]

MINUS = "\N{MINUS SIGN}"
_SUM, _PRODUCT, _WHOLE = 1, 2, 3


@dataclass(frozen=True, slots=True)
class Piece:
    """A bit of a formula's text; `symbol` is the letter it stands for, empty for signs between letters."""

    text: str
    symbol: str = ""


class Term(Protocol):
    """Anything a formula is made of."""

    @property
    def value(self) -> float:
        """What it comes to."""

    @property
    def rank(self) -> int:
        """How tightly it holds together: sums least."""

    def pieces(self, write: Writer | None) -> Iterator[Piece]:
        """Yield its text, in letters or, with a writer, in numbers."""

    def letters(self) -> Iterator["Symbol"]:
        """Yield every letter in it, in order."""


@dataclass(frozen=True, slots=True)
class Symbol:
    """A letter of the geometry with its value in this opening."""

    name: str
    value: float
    unit: Unit = "length"

    @property
    def rank(self) -> int:
        """A letter needs no brackets."""
        return _WHOLE

    def pieces(self, write: Writer | None) -> Iterator[Piece]:
        """Yield the letter, or its number."""
        yield Piece(spelled(self.name) if write is None else write(self.value, self.unit), self.name)

    def letters(self) -> "Iterator[Symbol]":
        """Yield itself."""
        yield self


@dataclass(frozen=True, slots=True)
class Number:
    """A number that is the same in every opening."""

    value: float
    unit: Unit = "plain"

    @property
    def rank(self) -> int:
        """A number needs no brackets."""
        return _WHOLE

    def pieces(self, write: Writer | None) -> Iterator[Piece]:
        """Yield its figures, the same in both."""
        del write
        yield Piece(format_decimal(self.value, 4).replace("-", MINUS) + ("°" if self.unit == "angle" else ""))

    def letters(self) -> Iterator[Symbol]:
        """Yield nothing: there are none."""
        yield from ()


@dataclass(frozen=True, slots=True)
class Joined:
    """Two terms with a sign between them: + - * or /."""

    sign: Literal["+", "-", "*", "/"]
    left: Term
    right: Term

    @property
    def value(self) -> float:
        """What the two come to."""
        one, other = self.left.value, self.right.value
        match self.sign:
            case "+":
                return one + other
            case "-":
                return one - other
            case "*":
                return one * other
            case "/":
                return one / other

    @property
    def rank(self) -> int:
        """Sums hold less tightly than products."""
        return _SUM if self.sign in "+-" else _PRODUCT

    def pieces(self, write: Writer | None) -> Iterator[Piece]:
        """Yield both sides, in brackets where they would be misread."""
        tight = self.rank == _PRODUCT
        yield from _bracketed(self.left, self.left.rank < self.rank, write, tight, first=True)
        yield Piece(self._between(write))
        closer = self.right.rank < self.rank or (self.sign in "-/" and self.right.rank == self.rank)
        yield from _bracketed(self.right, closer, write, tight)

    def _between(self, write: Writer | None) -> str:
        if self.sign == "*":
            return " " if write is None else " × "
        return {"+": " + ", "-": f" {MINUS} ", "/": "/"}[self.sign]

    def letters(self) -> Iterator[Symbol]:
        """Yield the letters of both sides."""
        yield from self.left.letters()
        yield from self.right.letters()


@dataclass(frozen=True, slots=True)
class Negative:
    """A term below zero."""

    term: Term

    @property
    def value(self) -> float:
        """What it comes to."""
        return -self.term.value

    @property
    def rank(self) -> int:
        """It reads like a sum that starts with a minus."""
        return _SUM

    def pieces(self, write: Writer | None) -> Iterator[Piece]:
        """Yield the minus and the term."""
        yield Piece(MINUS)
        yield from _bracketed(self.term, self.term.rank <= _SUM, write, tight=False)

    def letters(self) -> Iterator[Symbol]:
        """Yield the letters of the term."""
        yield from self.term.letters()


def _cosine(degrees: float) -> float:
    """Exact at the quarter turns, so that lengths there keep their 1/64ths."""
    quarter = degrees / 90.0
    if quarter == round(quarter):
        return (1.0, 0.0, -1.0, 0.0)[round(quarter) % 4]
    return math.cos(math.radians(degrees))


_FUNCTIONS: dict[str, Callable[..., float]] = {
    "cos": _cosine,
    "sin": lambda degrees: _cosine(degrees - 90.0),
    # A corner that just touches may come out a rounding past 1.
    "arccos": lambda share: math.degrees(math.acos(min(1.0, max(-1.0, share)))),
    "arctan": lambda share: math.degrees(math.atan(share)),
    "arctan2": lambda y, x: math.degrees(math.atan2(y, x)),
    "hypot": math.hypot,
    "max": max,
    "min": min,
    "sqrt": lambda square: math.sqrt(max(0.0, square)),
}


@dataclass(frozen=True, slots=True)
class Call:
    """A function of terms, angles in degrees: cos, sin, arccos, arctan, arctan2, hypot, max, min, sqrt."""

    name: str
    terms: tuple[Term, ...]

    @property
    def value(self) -> float:
        """What it comes to."""
        return _FUNCTIONS[self.name](*(term.value for term in self.terms))

    @property
    def rank(self) -> int:
        """It brings its own brackets."""
        return _WHOLE

    def pieces(self, write: Writer | None) -> Iterator[Piece]:
        """Yield the name, and the terms in brackets."""
        yield Piece(f"{self.name}(")
        for place, term in enumerate(self.terms):
            if place:
                yield Piece(", ")
            yield from term.pieces(write)
        yield Piece(")")

    def letters(self) -> Iterator[Symbol]:
        """Yield the letters of the terms."""
        for term in self.terms:
            yield from term.letters()


def add(*terms: Term) -> Term:
    """Return the sum of terms; one below zero is taken away."""
    whole = terms[0]
    for term in terms[1:]:
        whole = Joined("-", whole, term.term) if isinstance(term, Negative) else Joined("+", whole, term)
    return whole


def less(first: Term, *others: Term) -> Term:
    """Return a term with others taken away from it."""
    for term in others:
        if _is_nothing(first):
            first = term.term if isinstance(term, Negative) else Negative(term)
        elif isinstance(term, Negative):
            first = Joined("+", first, term.term)
        elif not _is_nothing(term):
            first = Joined("-", first, term)
    return first


def _is_nothing(term: Term) -> bool:
    return isinstance(term, Number) and term.value == 0.0


def times(one: Term, other: Term) -> Term:
    """Return the product of two terms."""
    return Joined("*", one, other)


def over(one: Term, other: Term) -> Term:
    """Return one term divided by another."""
    return Joined("/", one, other)


def half(term: Term) -> Term:
    """Return half of a term."""
    return over(term, Number(2))


def call(name: str, *terms: Term) -> Term:
    """Return a function of terms."""
    return Call(name, terms)


_GREEK = {"rho": "ρ", "phi": "φ", "theta": "θ", "alpha": "α", "beta": "β", "delta": "Δ"}


def spelled(name: str) -> str:
    """Return how a letter is written: rho_c as ρ_c."""
    if name == "n_pin":
        return "n·pin"
    head, mark, rest = name.partition("_")
    return _GREEK.get(head, head) + mark + rest


def _bracketed(
    term: Term, wanted: bool, write: Writer | None, tight: bool, first: bool = False
) -> Iterator[Piece]:
    """Yield a term, in brackets if wanted or if its number alone would be misread beside a sign."""
    pieces = list(term.pieces(write))
    if write is not None and len(pieces) == 1 and not wanted:
        text = pieces[0].text
        wanted = (tight and any(sign in text for sign in "-/")) or (text.startswith(MINUS) and not first)
    if wanted:
        pieces = [Piece("("), *pieces, Piece(")")]
    yield from pieces
