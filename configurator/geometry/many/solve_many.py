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

from configurator.geometry.edges import latch_edge_least
from configurator.geometry.many.edges import latch_edges
from configurator.geometry.many.parts import Floats, Part, part, standing_parts, turning_parts
from configurator.geometry.many.reach import Name, Places, Reach, reach_of
from configurator.geometry.pin import (
    TOLERANCE,
    Hanging,
    Pin,
    barrel_past_frame,
    barrel_past_wall,
    clear_past_frame_at_180,
    locate_pin,
)
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherLeaf, barrel_shapes
from configurator.geometry.solve import Scene, scene

#: Openings handled together: their columns stay in the processor's cache.
_TOGETHER: Final = 8192

Column = NDArray[np.float64]
AXIS: Final = ("axis_off_face", "axis_from_heel")
"""The columns of an axis, in its order."""


@dataclass(frozen=True, kw_only=True, eq=False)
class Many:
    """Many openings of one arrangement.

    columns: by the letter of a `Hanging`, one number an opening; `axis_off_face` and `axis_from_heel` are the
    two of its axis, of a leaf whose heel is square. thing_columns: by an obstruction's place in
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

        Raises ValueError where columns differ in length, or there are none or nothing in them.
        """
        things = [column for table in self.thing_columns.values() for column in table.values()]
        lengths = {len(column) for column in [*self.columns.values(), *things]}
        if len(lengths) != 1:
            raise ValueError(f"Columns must all have one length; they have {sorted(lengths) or 'none'}.")
        (count,) = lengths
        if count == 0:
            raise ValueError("Columns have nothing in them.")
        return count

    def between(self, first: int, last: int) -> "Many":
        """The openings from first up to but without last."""
        columns = {name: column[first:last] for name, column in self.columns.items()}
        things = {
            place: {name: column[first:last] for name, column in table.items()}
            for place, table in self.thing_columns.items()
        }
        return replace(self, columns=columns, thing_columns=things)

    def in_turns(self) -> "list[Many]":
        """The openings in their order, as many at a time as are handled together."""
        count = self.count
        if count <= _TOGETHER:
            return [self]
        return [self.between(first, first + _TOGETHER) for first in range(0, count, _TOGETHER)]

    def records(self, take: Any) -> tuple[Hanging, tuple[Obstruction, ...]]:
        """The hanging and the obstructions with what take makes of each column in its place."""
        given = {name: take(column) for name, column in self.columns.items()}
        if self.hanging.axis is not None:
            places = zip(AXIS, self.hanging.axis, strict=True)
            given["axis"] = tuple(given.pop(name, place) for name, place in places)
        hanging = replace(self.hanging, **given)
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

    greatest_angle_bare and greatest_angle are exactly math.pi where nothing stops the leaf. touches_bare and
    touches say what meets there: a place in names, or -1 for nothing. clear_width_at_90 is nan where 90
    degrees is not reached with the hardware. looked_at is how many openings were so near a graze that the
    single path settled them. `answers` has the rest.
    """

    x_p: Floats
    o: Floats
    y_p: Floats
    barrel_past_frame: Floats
    barrel_past_wall: Floats
    clear_past_frame_at_180: Floats
    barrel_freedom: Floats
    greatest_angle_bare: Floats
    greatest_angle: Floats
    touches_bare: Places
    touches: Places
    clear_width_at_90: Floats
    names: tuple[Name, ...]
    looked_at: int

    def between(self, first: int, last: int) -> "ManySolution":
        """The answers of the openings from first up to but without last."""
        columns: dict[str, Any] = {
            name: value[first:last] for name, value in vars(self).items() if isinstance(value, np.ndarray)
        }
        return replace(self, **columns)


def solve_many(many: Many) -> ManySolution:
    """Solve many openings at once; each answer is the one `solve` gives, to 1e-12.

    Inches and radians. Raises ValueError for columns of different lengths and as `locate_pin` does.
    """
    tables = [_solve_together(some) for some in many.in_turns()]
    names = tuple(dict.fromkeys(name for _, reach in tables for name in reach.names))
    columns = [lengths | _columns(reach, names) for lengths, reach in tables]
    joined = {name: np.concatenate([table[name] for table in columns]) for name in columns[0]}
    return ManySolution(**joined, names=names, looked_at=sum(reach.looked_at for _, reach in tables))


def _solve_together(many: Many) -> tuple[dict[str, Floats], Reach]:
    """Solve as many openings as are handled together: lengths by their field, and the angles."""
    count = many.count
    h, things = many.records(lambda column: column)
    pin = locate_pin(h)
    leaf, fitted = turning_parts(h, pin, many.leaf, many.hardware, count)
    barrels = [part(shape, pin, count) for shape in barrel_shapes(h, pin, many.leaf)]
    standing = standing_parts(h, pin, many.leaf, things, many.other, count)
    reach = reach_of(leaf, barrels, fitted, standing, many.one)
    lengths: dict[str, Any] = {"x_p": pin.x_p, "o": pin.o, "y_p": pin.y_p}
    lengths |= {"barrel_past_frame": barrel_past_frame(h, pin), "barrel_past_wall": barrel_past_wall(h, pin)}
    lengths["clear_past_frame_at_180"] = clear_past_frame_at_180(h, pin)
    lengths["barrel_freedom"] = np.minimum(pin.o, pin.y_p) - h.d_b / 2
    lengths["clear_width_at_90"] = _clear_at_90(h, pin, leaf, many, reach.angle)
    return {name: np.broadcast_to(value, (count,)) for name, value in lengths.items()}, reach


def _columns(reach: Reach, names: tuple[Name, ...]) -> dict[str, Any]:
    """The angles by their field, what touches as places in all the names."""
    place = np.array([names.index(name) for name in reach.names] + [-1])
    return {
        "greatest_angle_bare": reach.angle_bare,
        "greatest_angle": reach.angle,
        "touches_bare": place[reach.touches_bare],
        "touches": place[reach.touches],
    }


def _clear_at_90(h: Hanging, pin: Pin, leaf: Part, many: Many, greatest: Floats) -> Floats:
    """Clear width with the leaf at 90 degrees, nan where it does not come so far."""
    across = pin.x_p + np.max([-y for _, y in leaf.corners], axis=0)
    limit = clear_limits(h, pin, many.other)
    clear = np.maximum(limit - np.maximum(h.heel_s, across), 0.0)
    return np.where(greatest >= math.pi / 2, clear, np.nan)


def clear_limits(h: Hanging, pin: Pin, other: OtherLeaf | None) -> Any:
    """Where the clear width of each opening ends across, in; as `clear_width.latch_limit`."""
    if other is None:
        return h.O - h.s
    return h.O if other.closed else other.opening - np.maximum(h.heel_s, pin.x_p + pin.o + h.T)


def latch_edges_of(many: Many) -> Floats:
    """The least distance at each leaf's latch edge over a whole swing, in; 0 where it binds.

    As `edges.latch_edge_least`, to 1e-12. Raises ValueError as `solve_many` does.
    """
    return np.concatenate([_latch_edges_together(some) for some in many.in_turns()])


def _latch_edges_together(many: Many) -> Floats:
    """The latch edges of as many openings as are handled together."""
    h, _ = many.records(lambda column: column)
    least, doubtful = latch_edges(h, locate_pin(h), many.other, many.count)
    for row in np.flatnonzero(doubtful):
        plan = many.one(int(row))
        least[row] = latch_edge_least(plan.hanging, plan.pin, plan.other)
    return least


def mounted(many: Many) -> NDArray[np.bool_]:
    """Whether each hinge can be mounted so: `backset_refusal` says why one cannot."""
    if many.hanging.mounting not in ("half mortise", "half surface"):
        return np.ones(many.count, dtype=np.bool_)
    h, _ = many.records(lambda column: column)
    pin = locate_pin(h)
    backset = pin.b if h.mounting == "half mortise" else pin.b_f
    return np.broadcast_to(np.asarray(backset) >= -TOLERANCE, (many.count,))
