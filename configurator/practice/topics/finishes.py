"""Finish numbers: what a number says of look and metal, and its like on another metal."""

from functools import cache
from random import Random

from configurator.practice.answers import ChoiceAnswer, CodeAnswer
from configurator.practice.problem import Problem, Template
from configurator.rules.hinge.finish import HINGE_METALS, finishes, metals_of, same_look
from configurator.tables import FinishRow, table

TOPIC = "finishes"
_CONVENTION = "A BHMA number says look and base metal; a US code says the look alone."


@cache
def _known() -> tuple[FinishRow, ...]:
    """Return the finishes of hinges that are worth knowing: not those that stand here from memory."""
    return tuple(
        row
        for row in table(FinishRow)
        if row.metal in HINGE_METALS and row.us is not None and row.mark != "from memory"
    )


def _convention(row: FinishRow) -> str:
    return f"{_CONVENTION} This one: {row.source}."


def _row_line(row: FinishRow) -> str:
    return f"BHMA {row.bhma} is {row.look} on {row.metal}; its US code is {row.us}."


def _number(random: Random) -> Problem | None:
    row = random.choice(_known())
    if {other.bhma for other in finishes(us=row.us, metal=row.metal)} != {row.bhma}:
        return None
    return Problem(
        question=f"What is the BHMA number of {row.us}, {row.look}, on {row.metal}?",
        answer=CodeAnswer(row.bhma, "BHMA number"),
        solution=(_row_line(row),),
        convention=_convention(row),
    )


def _code(random: Random) -> Problem | None:
    row = random.choice(_known())
    if row.us is None or {other.us for other in finishes(bhma=row.bhma)} != {row.us}:
        return None
    return Problem(
        question=f"Which US code goes with BHMA {row.bhma}?",
        answer=CodeAnswer(row.us, "US code"),
        solution=(_row_line(row),),
        convention=_convention(row),
    )


def _metal(random: Random) -> Problem | None:
    row = random.choice(_known())
    metals = [metal for metal in metals_of(row.bhma) if metal in HINGE_METALS]
    if not metals:
        return None
    right = " or ".join(metals)
    others = [metal for metal in HINGE_METALS if metal not in metals]
    options = [right, *others]
    random.shuffle(options)
    return Problem(
        question=f"A hinge is ordered in finish {row.bhma}. What is its base metal?",
        answer=ChoiceAnswer(right, tuple(options)),
        solution=(f"BHMA {row.bhma} is {row.look} on {right}.",),
        convention=_convention(row),
    )


def _look(random: Random) -> Problem | None:
    row = random.choice(_known())
    if {other.look for other in finishes(bhma=row.bhma)} != {row.look}:
        return None
    looks = sorted({other.look for other in _known()} - {row.look})
    options = [row.look, *random.sample(looks, 3)]
    random.shuffle(options)
    return Problem(
        question=f"What does a hinge in finish {row.bhma} look like?",
        answer=ChoiceAnswer(row.look, tuple(options)),
        solution=(_row_line(row),),
        convention=_convention(row),
    )


def _on_steel(random: Random) -> Problem | None:
    row = random.choice(_known())
    steel = same_look(row, "steel")
    if row.metal == "steel" or steel is None or not steel.alike or steel not in _known():
        return None
    if len({other.look for other in finishes(bhma=row.bhma)}) != 1:
        return None
    return Problem(
        question=(
            f"The lock is {row.bhma}, {row.look} on {row.metal}. The hinges are steel and are to look the "
            "same. Which BHMA number is theirs?"
        ),
        answer=CodeAnswer(steel.bhma, "BHMA number"),
        solution=(
            f"{row.bhma} is a number of {row.metal}; the same look on steel is {steel.bhma}.",
            "The number is chosen anew, never converted silently: it changes the metal that is ordered.",
        ),
        convention=_convention(steel),
    )


TEMPLATES = (
    Template("look of a number", TOPIC, 1, _look),
    Template("number of a finish", TOPIC, 2, _number),
    Template("US code of a number", TOPIC, 2, _code),
    Template("metal of a number", TOPIC, 2, _metal),
    Template("same look on steel", TOPIC, 3, _on_steel),
)
