"""The work behind a number in words and figures: its lines, what each letter is, and all of it as text."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from configurator.rules.wording import leaf_named
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.study.derivation.derive import derive, derive_difference
from configurator.study.derivation.terms import MINUS, Number, Piece, Symbol, Unit, Writer, spelled
from configurator.study.derivation.working import Derivation, Step
from configurator.study.hang import HangsOn
from configurator.units import MM_PER_INCH, Display, format_decimal, format_size
from configurator.wording.comparison import Comparison, Row, comparisons
from configurator.wording.dimension_words import BOTH, FRAME

PLACES = 4
"""Decimals of what is no whole number of 64ths, and of angles."""
MADE_FROM = "made from"


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the work as pieces of text, each with the letter it stands for, if any."""

    pieces: tuple[Piece, ...]

    @property
    def text(self) -> str:
        """The line as plain text."""
        return "".join(piece.text for piece in self.pieces)


@dataclass(frozen=True, slots=True)
class Letter:
    """A letter of the work: its name in the work, how it is written, its value, and what it is."""

    name: str
    written: str
    value: str
    meaning: str


@dataclass(frozen=True, slots=True)
class ShownDerivation:
    """The work behind one number: its heading, the number as the comparison shows it, lines and letters.

    `answer` is the formula that gives it, with the law that it follows from where there is one; `lines` work
    out what it is made from. `work` is what all was written from, `of` the leaf and the hinge open width,
    inches, in whose picture the letters are.
    """

    heading: str
    shown: str
    remark: str
    answer: tuple[Line, ...]
    lines: tuple[Line, ...]
    letters: tuple[Letter, ...]
    work: Derivation
    of: tuple[str, HangsOn]

    def as_text(self) -> str:
        """Return all of it as plain text, to be pasted anywhere."""
        where = [f"  {one.written} = {one.value}: {one.meaning}" for one in self.letters]
        heads = [f"{self.heading}: {self.shown}", *([self.remark] if self.remark else [])]
        answer = [f"  {line.text}" for line in self.answer]
        lines = [MADE_FROM, *(f"  {line.text}" for line in self.lines)] if self.lines else []
        return "\n".join([*heads, *answer, *lines, *(["where", *where] if where else [])]) + "\n"


@dataclass(frozen=True, slots=True)
class Asked:
    """Which number of the comparison is asked for: its leaf, its row's key, its column; -1 the difference."""

    leaf: str
    key: str
    column: int


def asked_of_dimension(study: Study, leaf: str, on: HangsOn, measures: str) -> Asked | None:
    """Return which number of the comparison a dimension of the picture shows; None for one that is not there.

    `on` is what the leaf of the picture hangs on; `measures` the name of the dimension.
    """
    name = FRAME if measures == BOTH else measures
    table = next((one for one in comparisons(study, Display()) if one.leaf == leaf), None)
    rows = table.rows if table is not None else ()
    key = next((row.key for row in rows if name in (row.trade, row.trade.partition(",")[0])), None)
    hung = [one.on for one in study.candidates if one.leaf == leaf]
    return Asked(leaf, key, hung.index(on)) if key is not None and on in hung else None


def shown_derivation(
    study: Study, display: Display, asked: Asked, plain: bool = False
) -> ShownDerivation | None:
    """Return the work behind a number of the comparison; None where there is no such number.

    `plain` heads it with the client's words instead of the trade's.
    """
    table = next((one for one in comparisons(study, display) if one.leaf == asked.leaf), None)
    row = next((one for one in table.rows if one.key == asked.key), None) if table is not None else None
    if table is None or row is None or not _has_column(row, asked.column):
        return None
    candidates = [one for one in study.candidates if one.leaf == asked.leaf]
    last = candidates[asked.column]
    if asked.column >= 0:
        work, shown = derive(last, asked.key), row.values[asked.column]
        of = last.hinge_words
    else:
        work, shown = derive_difference(candidates[0], last, asked.key), row.difference
        of = f"{table.between}{'' if candidates[0].way or last.way else ' in hinge'}, difference"
    answer, rest = _answer_and_rest(work)
    lines = tuple(_line(step, display) for step in rest)
    letters = tuple(_letter(one, work, display) for one in _letters([*answer, *rest], work))
    heading = _heading(row, of, table, plain)
    return ShownDerivation(
        heading=heading,
        shown=shown,
        remark=work.remark,
        answer=tuple(_line(step, display) for step in answer),
        lines=lines,
        letters=letters,
        work=work,
        of=(last.leaf, last.on),
    )


def _has_column(row: Row, column: int) -> bool:
    return bool(row.difference) if column < 0 else column < len(row.values)


def _heading(row: Row, of: str, table: Comparison, plain: bool) -> str:
    name = row.plain if plain else row.trade
    return f"{capitalized(name)}, {of}{leaf_named(table.leaf, ', {}')}"


def writer(display: Display) -> Writer:
    """Return what writes a value among others: without its unit, a fraction where it is one."""

    def write(value: float, unit: Unit) -> str:
        if unit == "angle":
            return f"{_decimal(value)}°"
        if unit == "plain":
            return _decimal(value)
        return _millimetres(value) if display.metric else _inches(value)

    return write


def with_unit(value: float, unit: Unit, display: Display) -> str:
    """Write a value by itself, with its unit."""
    mark = {"angle": "", "plain": "", "length": " mm" if display.metric else " in"}[unit]
    return writer(display)(value, unit) + mark


def _inches(value: float) -> str:
    sign = MINUS if value < 0 else ""
    return sign + format_size(abs(value), PLACES)


def _millimetres(value: float) -> str:
    return _decimal(value * MM_PER_INCH)


def _decimal(value: float) -> str:
    return format_decimal(value, PLACES).replace("-", MINUS)


def _line(step: Step, display: Display) -> Line:
    """Letters, the same in numbers, and what they come to; what would only be said again is left out."""
    write = writer(display)
    equals = Piece(" = ")
    left, right = list(step.left.pieces(None)), list(step.right.pieces(None))
    numbers = list(step.right.pieces(write))
    if not isinstance(step.left, Symbol):
        return Line((*left, equals, *right, Piece(":   "), *_both_sides(step, write)))
    result = Piece(with_unit(step.left.value, step.left.unit, display))
    if isinstance(step.right, Number):
        return Line((*left, equals, result))
    if _text(numbers) in (_text(right), write(step.left.value, step.left.unit), f"{MINUS}0"):
        return Line((*left, equals, *right, equals, result))
    return Line((*left, equals, *right, equals, *numbers, equals, result))


def _answer_and_rest(work: Derivation) -> tuple[list[Step], list[Step]]:
    """Return the answer with the law and all else told beside it, and what they were made from."""
    earlier, last = work.steps[:-1], work.steps[-1:]
    told = [not isinstance(step.left, Symbol) or step.left.name in work.beside for step in earlier]
    stated = [step for step, with_it in zip(earlier, told, strict=True) if with_it]
    return [*stated, *last], [step for step, with_it in zip(earlier, told, strict=True) if not with_it]


def _letters(steps: Sequence[Step], work: Derivation) -> tuple[Symbol, ...]:
    """Return every letter in the order of its first place in the lines, then what is only told of."""
    found: dict[str, Symbol] = {}
    for step in steps:
        for letter in (*step.left.letters(), *step.right.letters()):
            found.setdefault(letter.name, letter)
    return tuple({**found, **{one.name: one for one in work.letters()}}.values())


def _both_sides(step: Step, write: Writer) -> Iterable[Piece]:
    yield from step.left.pieces(write)
    yield Piece(" = ")
    yield from step.right.pieces(write)
    yield Piece(f" = {write(step.right.value, 'length')}")


def _text(pieces: Sequence[Piece]) -> str:
    return "".join(piece.text for piece in pieces)


def _letter(letter: Symbol, work: Derivation, display: Display) -> Letter:
    value = with_unit(letter.value, letter.unit, display)
    return Letter(letter.name, spelled(letter.name), value, work.meanings.get(letter.name, ""))
