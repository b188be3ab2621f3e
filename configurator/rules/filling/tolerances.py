"""How far what is built may be off what is drawn: what was given, and the usual where nothing was."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from configurator.model import Opening
from configurator.model.use import Tolerances
from configurator.rules.filling.materials import fastening_of
from configurator.rules.filling.usual import Assumed
from configurator.tables import ToleranceRow, table

TOLERANCE_KEYS = tuple(Tolerances.model_fields)
"""The keys of a project file's tolerances, in their order."""
_BECAUSE = "usual tolerance, plus or minus"


@dataclass(frozen=True, slots=True)
class FilledTolerances:
    """Every tolerance of an opening, plus or minus, inches; `assumed` by its path in the opening."""

    values: Mapping[str, float]
    assumed: Mapping[str, Assumed]

    def __getitem__(self, key: str) -> float:
        """Return one tolerance by its key. Raises KeyError when there is none."""
        return self.values[key]


def fill_tolerances(opening: Opening) -> FilledTolerances:
    """Return the tolerances of an opening with the usual one wherever none was given; inches.

    The usual ones go by what door and frame are made of; each has its source in the table.
    """
    values: dict[str, float] = {}
    assumed: dict[str, Assumed] = {}
    for key, given in opening.tolerances:
        row = _usual(key, _made_of(opening, key))
        values[key] = row.value if given is None else given
        if given is None:
            assumed[f"tolerances.{key}"] = Assumed(row.value, _BECAUSE, row.source, row.mark)
    return FilledTolerances(MappingProxyType(values), MappingProxyType(assumed))


def _made_of(opening: Opening, key: str) -> str:
    """Return what the thing that a tolerance is about is made of: the frame for its setting or the door."""
    held = fastening_of(opening.door.construction, opening.frame.kind)
    if key == "frame_setting":
        return "metal" if held.frame_material == "steel" else held.frame_material
    return held.door_family


def _usual(key: str, made_of: str) -> ToleranceRow:
    """Return the row for that material, else the row for any."""
    rows = [row for row in table(ToleranceRow) if row.key == key]
    return next((row for row in rows if row.made_of == made_of), rows[-1])
