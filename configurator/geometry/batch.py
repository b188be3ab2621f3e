"""The answers for many openings at once, equal to one at a time: for schedules and for sampling tolerances.

What is the same in all of them is given once, as for one; what varies is given as columns. Inches and
radians.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.batch_contact import Earliest, barrels_close, earliest_contacts
from configurator.geometry.batch_edges import latch_edges, out_at, out_most
from configurator.geometry.batch_parts import Floats, Part, part, standing_parts, turning_parts
from configurator.geometry.edges import latch_edge_least
from configurator.geometry.pin import Hanging, Pin, locate_pin
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherLeaf, barrel_shapes
from configurator.geometry.solve import Scene, scene
from configurator.geometry.swing import Contact, contacts_bare_and_with_hardware

#: Openings handled together: their columns stay in the processor's cache.
_TOGETHER: Final = 8192

Column = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, eq=False)
class Many:
    """Many openings of one arrangement.

    columns: by the letter of a `Hanging`, one number an opening. thing_columns: by an obstruction's place in
    the list, by its field, likewise. Everything not in a column is as in the single records.
    """

    hanging: Hanging
    leaf: Leaf
    hardware: tuple[Hardware, ...] = ()
    obstructions: tuple[Obstruction, ...] = ()
    other: OtherLeaf | None = None
    columns: Mapping[str, Column] = field(default_factory=dict)
    thing_columns: Mapping[int, Mapping[str, Column]] = field(default_factory=dict)

    @property
    def count(self) -> int:
        """How many openings there are.

        Raises ValueError where columns differ in length or there are none.
        """
        things = [column for table in self.thing_columns.values() for column in table.values()]
        lengths = {len(column) for column in [*self.columns.values(), *things]}
        if len(lengths) != 1:
            raise ValueError(f"Columns must all have one length; they have {sorted(lengths) or 'none'}.")
        return lengths.pop()

    def between(self, first: int, last: int) -> "Many":
        """The openings from first up to but without last."""
        columns = {name: column[first:last] for name, column in self.columns.items()}
        things = {
            place: {name: column[first:last] for name, column in table.items()}
            for place, table in self.thing_columns.items()
        }
        return replace(self, columns=columns, thing_columns=things)

    def records(self, take: Any) -> tuple[Hanging, tuple[Obstruction, ...]]:
        """The hanging and the obstructions with what take makes of each column in its place."""
        hanging = replace(self.hanging, **{name: take(column) for name, column in self.columns.items()})
        things = tuple(
            replace(thing, **{name: take(col) for name, col in self.thing_columns.get(place, {}).items()})
            for place, thing in enumerate(self.obstructions)
        )
        return hanging, things

    def one(self, row: int) -> Scene:
        """One of the openings, as a scene for the single path."""
        hanging, things = self.records(lambda column: float(column[row]))
        return scene(hanging, self.leaf, self.hardware, things, self.other)


@dataclass(frozen=True, eq=False)
class ManySolution:
    """Answers for many openings, one number an opening; lengths in inches, angles in radians.

    greatest_angle_bare and greatest_angle are exactly math.pi where nothing stops the leaf. clear_width_at_90
    is nan where 90 degrees is not reached with the hardware. looked_at is how many openings were so near a
    graze that the single path settled them.
    """

    o: Floats
    y_p: Floats
    clear_past_frame_at_180: Floats
    barrel_freedom: Floats
    greatest_angle_bare: Floats
    greatest_angle: Floats
    clear_width_at_90: Floats
    looked_at: int


def solve_many(many: Many) -> ManySolution:
    """Solve many openings at once; each answer is the one `solve` gives, to 1e-12.

    Inches and radians. Raises ValueError for columns of different lengths and as `locate_pin` does.
    """
    count = many.count
    starts = range(0, count, _TOGETHER)
    tables = [_solve_together(many.between(first, min(first + _TOGETHER, count))) for first in starts]
    names = [name for name in tables[0] if name != "looked_at"] if tables else []
    joined = {name: np.concatenate([table[name] for table in tables]) for name in names}
    return ManySolution(**joined, looked_at=sum(table["looked_at"] for table in tables))


def _solve_together(many: Many) -> dict[str, Any]:
    """Solve as many openings as are handled together."""
    count = many.count
    h, things = many.records(lambda column: column)
    pin = locate_pin(h)
    leaf, fitted = turning_parts(h, pin, many.leaf, many.hardware, count)
    standing = standing_parts(h, pin, many.leaf, things, many.other, count)
    bare = earliest_contacts([leaf], standing, count, math.pi)
    with_hardware = earliest_contacts(fitted, standing, count, math.pi)
    for shape in barrel_shapes(h, pin, many.leaf):
        bare.doubtful |= barrels_close(part(shape, pin, count), standing, count)
    angles = _angles(many, bare, with_hardware)
    freedom = np.minimum(pin.o, pin.y_p) - h.d_b / 2
    lengths: dict[str, Any] = {"o": pin.o, "y_p": pin.y_p, "clear_past_frame_at_180": 2 * pin.o - h.i}
    lengths |= {"barrel_freedom": freedom, "clear_width_at_90": _clear_at_90(h, pin, leaf, many, angles[1])}
    filled = {name: np.broadcast_to(value, (count,)) for name, value in lengths.items()}
    return filled | dict(zip(("greatest_angle_bare", "greatest_angle", "looked_at"), angles, strict=True))


def _angles(many: Many, bare: Earliest, hardware: Earliest) -> tuple[Floats, Floats, int]:
    """The greatest angles, bare and with hardware, the doubtful ones worked out singly."""
    alone = np.minimum(bare.angle, math.pi)
    both = np.minimum(hardware.angle, alone)
    apart = np.abs(np.where(np.isfinite(hardware.angle), hardware.angle, -1.0) - alone)
    rows = np.flatnonzero(bare.doubtful | hardware.doubtful | ((apart > 1e-12) & (apart < 1e-8)))
    for row in rows:
        alone[row], both[row] = _single_angles(many.one(int(row)))
    return alone, both, len(rows)


def _single_angles(plan: Scene) -> tuple[float, float]:
    """The greatest angles of one opening."""

    def angle(contact: Contact | None) -> float:
        return math.pi if contact is None else contact.angle

    alone, both = contacts_bare_and_with_hardware(plan.bare, plan.hardware, plan.standing, plan.pin.at)
    return angle(alone), angle(both)


def _clear_at_90(h: Hanging, pin: Pin, leaf: Part, many: Many, greatest: Floats) -> Floats:
    """Clear width with the leaf at 90 degrees, nan where it does not come so far."""
    across = pin.x_p + np.max([-y for _, y in leaf.corners], axis=0)
    limit: Any = h.O - h.s
    if many.other is not None:
        stands = np.maximum(h.s, pin.x_p + pin.o + h.T)
        limit = h.O if many.other.closed else many.other.opening - stands
    clear = np.maximum(limit - np.maximum(h.s, across), 0.0)
    return np.where(greatest >= math.pi / 2, clear, np.nan)


def latch_edges_of(many: Many) -> Floats:
    """The least distance at each leaf's latch edge over a whole swing, in; 0 where it binds.

    As `edges.latch_edge_least`, to 1e-12. Raises ValueError as `solve_many` does.
    """
    h, _ = many.records(lambda column: column)
    least, doubtful = latch_edges(h, locate_pin(h), many.other, many.count)
    for row in np.flatnonzero(doubtful):
        plan = many.one(int(row))
        least[row] = latch_edge_least(plan.hanging, plan.pin, plan.other)
    return least


@dataclass(frozen=True, eq=False)
class ManyEncroachments:
    """How far many leaves stand out from the wall face, in: greatest and at rest, bare and with hardware."""

    greatest: Floats
    at_rest: Floats
    with_hardware_greatest: Floats
    with_hardware_at_rest: Floats


def encroachments_of(many: Many, solved: ManySolution, stop_angle: float | None = None) -> ManyEncroachments:
    """The encroachments of many openings already solved.

    Inches; stop_angle, radians, is where a stop holds the doors. As in `solve.Solution`, to 1e-12.
    """
    h, _ = many.records(lambda column: column)
    pin = locate_pin(h)
    leaf, fitted = turning_parts(h, pin, many.leaf, many.hardware, many.count)
    stop = math.pi if stop_angle is None else stop_angle
    bare, both = np.minimum(solved.greatest_angle_bare, stop), np.minimum(solved.greatest_angle, stop)
    everything = [leaf, *fitted]
    return ManyEncroachments(
        out_most([leaf], h, pin, bare),
        out_at([leaf], h, pin, bare),
        out_most(everything, h, pin, both),
        out_at(everything, h, pin, both),
    )
