"""Finishes looked up by look, US code, BHMA number or metal, with what to heed of each."""

from dataclasses import dataclass

from configurator.rules.hinge.finish import HINGE_METALS, bhma_number, metals_of, us_code
from configurator.tables import FinishRow, table
from configurator.wording.hinge_parts import cited

METALS = tuple(dict.fromkeys(row.metal for row in table(FinishRow)))
ONLY_AN_IDEA = "A swatch is only an idea of the colour: choose from a sample."
NOT_ALIKE = "not the same on every metal"


@dataclass(frozen=True, slots=True)
class FinishLine:
    """One finish on one metal, in words; `changes` is what taking it puts into the hinge, by key.

    `why_not` says why no hinge takes it, "" where one may.
    """

    row: FinishRow
    us: str
    match: str
    source: str
    why_not: str
    changes: dict[str, str | None]


def look_up(text: str = "", metal: str | None = None) -> tuple[FinishLine, ...]:
    """Return the finishes that words of a look, a US code or a BHMA number find; all for no text."""
    return tuple(
        _line(row)
        for row in table(FinishRow)
        if (metal is None or row.metal == metal) and _found(row, text.strip())
    )


def same_look_words(row: FinishRow) -> str:
    """Say which number the same look has on each other metal, and that a US code alone does not say it."""
    others = [other for other in table(FinishRow) if other.look == row.look and other.bhma != row.bhma]
    numbers: dict[str, list[str]] = {}
    for other in others:
        numbers.setdefault(other.bhma, []).append(other.metal)
    elsewhere = ", ".join(f"{number} on {' or '.join(metals)}" for number, metals in numbers.items())
    made = f" ({row.words})" if row.words != row.look else ""
    named = f"{row.bhma} is {row.look}{made} on {' or '.join(metals_of(row.bhma))}"
    if not elsewhere:
        return f"{named}; no other metal has a number for this look here."
    code = f" {row.us} is all of them: it says the look, not the metal." if row.us else ""
    if not row.alike:
        return f"{named}; the nearest is {elsewhere}, and none of them matches another by eye.{code}"
    return f"{named}; the same look is {elsewhere}.{code}"


def _found(row: FinishRow, text: str) -> bool:
    if not text:
        return True
    if row.us == us_code(text) or row.bhma == bhma_number(text):
        return True
    words = f"{row.look}, {row.words}, {row.metal}".lower()
    if text.isdecimal():
        return row.bhma.startswith(text)
    return all(word in words for word in text.lower().split())


def _line(row: FinishRow) -> FinishLine:
    why_not = "" if row.metal in HINGE_METALS else f"no hinge is made of {row.metal} here"
    match = "looks the same on every metal; the number changes with it" if row.alike else NOT_ALIKE
    changes = {"finish_bhma": row.bhma, "finish_us": None, "base_metal": row.metal}
    return FinishLine(row, row.us or "none", match, cited(row.source, row.mark), why_not, changes)
