"""Finish numbers: what a number says of look and metal, and its like on another metal."""

from functools import cache
from random import Random

from configurator.practice.problem import Picture, Problem, Slip, Template
from configurator.practice.written import ChoiceAnswer, CodeAnswer
from configurator.rules.hinge.finish import BRONZE_LOOKS, HINGE_METALS, finishes, metals_of, same_look
from configurator.tables import FinishRow, table

TOPIC = "finishes"
_CONVENTION = "A BHMA number says look and base metal; a US code says the look alone."
_NOT_HINGES = ("cadmium", "zinc")
"""Looks of coatings that hinges are no longer sold in."""


@cache
def _known() -> tuple[FinishRow, ...]:
    """Return the finishes worth knowing: of hinges, alike from maker to maker, and not from memory."""
    return tuple(
        row
        for row in table(FinishRow)
        if row.metal in HINGE_METALS
        and row.us is not None
        and row.mark != "from memory"
        and row.alike
        and row.look not in _NOT_HINGES
    )


def _convention(row: FinishRow) -> str:
    return f"{_CONVENTION} This one: {row.source}."


def _row_line(row: FinishRow) -> str:
    return f"BHMA {row.bhma} is {row.look} on {row.metal}; its US code is {row.us}."


def _chip(*rows: FinishRow) -> Picture:
    """Show the look of finishes, without a number."""
    return Picture("chips", words=tuple(row.look for row in rows))


def _other_metals(row: FinishRow) -> tuple[Slip, ...]:
    """Return the numbers of the same look on other metals as slips."""
    others = {other.bhma: other for other in finishes(us=row.us) if other.bhma != row.bhma}
    return tuple(
        Slip(
            number,
            f"{number} is that look on {' or '.join(metals_of(number))}. The metal is in the number too.",
        )
        for number in others
    )


def _number(random: Random) -> Problem | None:
    row = random.choice(_known())
    if {other.bhma for other in finishes(us=row.us, metal=row.metal)} != {row.bhma}:
        return None
    return Problem(
        question=f"What is the BHMA number of {row.us}, {row.look}, on {row.metal}?",
        answer=CodeAnswer(row.bhma, "BHMA number"),
        hint="On brass and bronze the numbers run from 605 to 626, on steel from 631 to 652 and 600 where "
        "primed, on stainless 629 and 630.",
        slips=_other_metals(row),
        solution=(_row_line(row),),
        convention=_convention(row),
        picture=_chip(row),
    )


def _code(random: Random) -> Problem | None:
    row = random.choice(_known())
    if row.us is None or {other.us for other in finishes(bhma=row.bhma)} != {row.us}:
        return None
    other = row.us.removesuffix("D") if row.us.endswith("D") else f"{row.us}D"
    return Problem(
        question=f"Which US code goes with BHMA {row.bhma}, {row.look}?",
        answer=CodeAnswer(row.us, "US code"),
        hint="A US code tells the look alone: 3 and 4 are brass, 9 and 10 bronze, 14 and 15 nickel, "
        "26 chrome.",
        slips=tuple(
            Slip(code, f"{code} is {found[0].look}. Bright and satin have codes of their own.")
            for code in (
                other,
                f"US{int(row.us[2:].rstrip('DP') or 0) + 1}",
                f"US{int(row.us[2:].rstrip('DP') or 1) - 1}",
            )
            if (found := finishes(us=code))
        ),
        solution=(_row_line(row),),
        convention=_convention(row),
        picture=_chip(row),
    )


def _metal(random: Random) -> Problem | None:
    """Ask for the metal of a number, but of no bronze one: trade lists put those on brass as well."""
    row = random.choice(_known())
    metals = [metal for metal in metals_of(row.bhma) if metal in HINGE_METALS]
    if not metals or row.bhma in BRONZE_LOOKS:
        return None
    right = " or ".join(metals)
    options = [right, *(metal for metal in HINGE_METALS if metal not in metals)]
    random.shuffle(options)
    return Problem(
        question=f"A hinge is ordered in finish {row.bhma}. What is its base metal?",
        answer=ChoiceAnswer(right, tuple(options)),
        hint="The number carries the metal: 605 to 626 brass or bronze, 629 and 630 stainless, 631 to 652 "
        "steel, as is 600, primed.",
        slips=tuple(
            Slip(
                metal,
                f"On {metal} the same look is {like.bhma}."
                if (like := same_look(row, metal))
                else f"{row.look.capitalize()} is no finish of {metal}.",
            )
            for metal in options
            if metal != right
        ),
        solution=(f"BHMA {row.bhma} is {row.look} on {right}.",),
        convention=_convention(row),
        picture=_chip(row),
    )


def _look(random: Random) -> Problem | None:
    row = random.choice(_known())
    if {other.look for other in finishes(bhma=row.bhma)} != {row.look}:
        return None
    looks = sorted({other.look for other in _known()} - {row.look})
    options = [row.look, *random.sample(looks, 3)]
    random.shuffle(options)
    shown = [next(other for other in _known() if other.look == look) for look in options]
    return Problem(
        question=f"What does a hinge in finish {row.bhma} look like?",
        answer=ChoiceAnswer(row.look, tuple(options)),
        hint="Brass, bronze, nickel, chrome follow one another in the numbers, bright before satin.",
        slips=tuple(
            Slip(other.look, f"{other.look.capitalize()} on {other.metal} is {other.bhma}.")
            for other in shown
            if other.look != row.look
        ),
        solution=(_row_line(row),),
        convention=_convention(row),
        picture=_chip(*shown),
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
            f"The lock is {row.bhma}, {row.look} on {row.metal}. The hinges are steel and must look the "
            "same. What number do you order them in?"
        ),
        answer=CodeAnswer(steel.bhma, "BHMA number"),
        hint="Same US code, other metal, other number. Steel begins at 631.",
        slips=(
            Slip(
                row.bhma,
                f"That orders {row.metal} hinges. Steel ones of that look have a number of their own.",
            ),
            *_other_metals(steel),
        ),
        solution=(
            f"{row.bhma} is a number of {row.metal}; the same look on steel is {steel.bhma}.",
            "The number is chosen anew, never converted silently: it changes the metal that is ordered.",
        ),
        convention=_convention(steel),
        picture=_chip(row),
    )


TEMPLATES = (
    Template("look of a number", TOPIC, 1, _look),
    Template("number of a finish", TOPIC, 2, _number),
    Template("US code of a number", TOPIC, 2, _code),
    Template("metal of a number", TOPIC, 2, _metal),
    Template("same look on steel", TOPIC, 3, _on_steel),
)
