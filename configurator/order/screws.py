"""Screws of a whole order: how many of each kind and size, and how many packs."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil
from typing import Any

from configurator.order.lines import OrderLine
from configurator.rules.fastening import screw_row


@dataclass(frozen=True, slots=True)
class ScrewTotal:
    """Screws of one kind, size and metal; `packs` is None where no pack size is known."""

    kind: str
    size: str
    metal: str
    count: int
    packs: int | None

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written."""
        return {
            "kind": self.kind,
            "size": self.size,
            "metal": self.metal,
            "count": self.count,
            "packs": self.packs,
        }


def screw_totals(lines: Iterable[OrderLine], pack: int | None = None) -> tuple[ScrewTotal, ...]:
    """Return the screws of all lines by kind, usual size and metal; `pack` is how many come in one pack.

    Raises ValueError for a pack of less than one screw.
    """
    if pack is not None and pack < 1:
        raise ValueError(f"a pack holds at least 1 screw; {pack} was given")
    found: dict[tuple[str, str, str], int] = {}
    for line in lines:
        for kind, count in line.screws.items():
            if count:
                key = (kind, _size(kind, line.hinge.height), line.hinge.base_metal)
                found[key] = found.get(key, 0) + count
    return tuple(
        ScrewTotal(*key, count, None if pack is None else ceil(count / pack))
        for key, count in sorted(found.items())
    )


def _size(kind: str, height: float) -> str:
    row = screw_row(height)
    return row.machine if kind == "machine" else row.wood
