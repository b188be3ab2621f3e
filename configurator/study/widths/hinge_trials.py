"""What another value for one part of the hinge would cost or break, by studying the opening with it."""

from dataclasses import dataclass
from typing import Any

from configurator.model import Hinge, Opening
from configurator.model.paths import words_of
from configurator.rules.finding import Finding, Reason
from configurator.rules.hinge.finish import HINGE_METALS, finishes, same_look
from configurator.rules.hinge.stock import stock_of, stock_rows
from configurator.rules.specification import LeafSpecification
from configurator.study.run import Study, study_as
from configurator.tables import StockRow, table

FOLLOWS = (
    "width", "count", "weight", "bearing", "leaf_thickness", "type", "base_metal", "alloy", "finish_bhma",
    "screws",
)  # fmt: skip
"""Parts that may change along with another, and are said when they do."""


@dataclass(frozen=True, slots=True)
class Trial:
    """A value that could be taken for `key`, and what it would cost or break.

    `own` are the rules' own words for it, `stock` says how usual the size would be where that is worth
    saying. `follows` are the parts that change along with it, each with its new value; `against` is what
    would newly be said against the hinge.
    """

    key: str
    value: Any
    own: str
    stock: str
    follows: tuple[tuple[str, Any], ...]
    against: tuple[Finding, ...]


def trials(study: Study, key: str) -> tuple[Trial, ...]:
    """Return what could be chosen instead for one part, each tried on the whole opening.

    Tried are the rules' own alternatives, the accepted words, stock sizes, the same look on other metals, and
    one hinge more or fewer; what is accepted but far off can be typed.
    """
    leaves = study.specification.leaves
    if not leaves or key not in leaves[0].parts:
        return ()
    now = leaves[0].parts[key]
    values = _values_to_try(now, _values(leaves[0], key))
    if key in ("height", "width"):
        values.sort()
    return tuple(_trial(study, key, value, _own_effect(now, value)) for value in values)


def _trial(study: Study, key: str, value: Any, own: str) -> Trial:
    other = study_as(study, _with(study.opening, key, value))
    return Trial(key, value, own, _stock(other, key), _followed(study, other, key), _broken(study, other))


def _values_to_try(now: Reason, accepted: tuple[Any, ...]) -> list[Any]:
    """Return the rules' own alternatives and the accepted values, each once; screws cannot be hashed."""
    values: list[Any] = []
    for value in (*(other.value for other in now.alternatives), *accepted):
        if value is not None and value != now.value and value not in values:
            values.append(value)
    return values


def _own_effect(now: Reason, value: Any) -> str:
    return next((other.effect for other in now.alternatives if other.value == value), "")


def _values(leaf: LeafSpecification, key: str) -> tuple[Any, ...]:
    words = words_of(f"hinge.{key}")
    if key == "alloy" and leaf.parts["base_metal"].value != "stainless":
        return ()
    if words and key != "screws":  # those are kinds to be counted, not values
        return words
    match key:
        case "height":
            return _next_heights(leaf.parts["height"].value)
        case "width":
            return tuple(row.width for row in stock_rows(leaf.parts["height"].value))
        case "count":
            count = leaf.parts["count"].value
            return (count - 1, count + 1) if leaf.leaf == "single" and count > 1 else ()
        case "security_stud":
            return (True, False)
        case "finish_bhma":
            return _same_look(leaf.parts["finish_bhma"].value)
    return ()


def _next_heights(height: float) -> tuple[float, ...]:
    """Return the next lower and the next higher stock height, inches: others are no choice for a door."""
    made = sorted({row.height for row in table(StockRow)})
    lower, higher = [h for h in made if h < height], [h for h in made if h > height]
    return (*lower[-1:], *higher[:1])


def _same_look(number: str | None) -> tuple[str, ...]:
    rows = () if number is None else finishes(bhma=number)
    alike = [same_look(rows[0], metal) for metal in HINGE_METALS] if rows else []
    return tuple(row.bhma for row in alike if row is not None)


def _with(opening: Opening, key: str, value: Any) -> Opening:
    given = {} if opening.hinge is None else opening.hinge.model_dump(exclude_unset=True)
    return opening.model_copy(update={"hinge": Hinge.model_validate({**given, key: value})})


def _stock(other: Study, key: str) -> str:
    """Say how usual the size would be, where the size is what changes."""
    if key not in ("height", "width"):
        return ""
    parts = other.specification.leaves[0].parts
    row = stock_of(parts["height"].value, parts["width"].value)
    if row is None:
        return "in no stock list here"
    return f"{row.stock} in stock" if row.stock != "common" else ""


def _followed(before: Study, after: Study, key: str) -> tuple[tuple[str, Any], ...]:
    old, new = before.specification.whole, after.specification.whole
    return tuple(
        (other, new[other].value)
        for other in FOLLOWS
        if other != key and old[other].value != new[other].value
    )


def _broken(before: Study, after: Study) -> tuple[Finding, ...]:
    """Return what would newly be said against the hinge, errors first."""
    known = {(one.code, one.severity) for one in before.specification.findings}
    new = [one for one in after.specification.findings if (one.code, one.severity) not in known]
    return tuple(one for one in new if one.severity != "note")
