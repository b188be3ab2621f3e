"""A building model and a door schedule of one job, mark by mark: where they disagree."""

from collections.abc import Iterator, Sequence

from configurator.intake.comparing import title_of
from configurator.intake.rows import RowRead
from configurator.intake.saying import value_words
from configurator.units import Display

_EACH_ITS_OWN = frozenset(
    {"mark", "global_id", "obstructions", "other_columns", "remarks", "notes", "questions", "wall.layers"}
)
_SAME = 1 / 64
"""Inches that a schedule may round off."""


def disagreements(
    model: Sequence[RowRead], schedule: Sequence[RowRead], name: str, display: Display
) -> Iterator[str]:
    """Yield in a line each thing that a schedule, called `name`, and a model say otherwise."""
    of_model = {row.mark: row for row in model if row.mark and not row.left_out}
    of_schedule = {row.mark: row for row in schedule if row.mark and not row.left_out}
    for mark, row in of_model.items():
        if mark not in of_schedule:
            yield f"{mark}: in the model, not in {name}"
            continue
        for path, value in row.values.items():
            other = of_schedule[mark].values.get(path)
            if path in _EACH_ITS_OWN or other is None or _alike(value, other):
                continue
            said, written = (value_words(path, each, display) for each in (value, other))
            yield f"{mark}: {title_of(path)} {said} in the model, {written} in {name}"
    yield from (f"{mark}: in {name}, not in the model" for mark in of_schedule if mark not in of_model)


def _alike(one: object, two: object) -> bool:
    if isinstance(one, float) and isinstance(two, int | float):
        return abs(one - two) <= _SAME
    if isinstance(one, str) and isinstance(two, str):
        return one.strip().casefold() == two.strip().casefold()
    return one == two
