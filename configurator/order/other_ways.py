"""What is ordered besides butts, on lines of its own: what a door hangs on, a loop that carries its wires."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from configurator.model import Hinge, Opening
from configurator.order.tally import Tally
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.usual import FilledOpening, fill
from configurator.rules.filling.ways import FilledWay, fill_way, way_hung_on
from configurator.rules.hinge.electric import (
    BESIDE_THE_HINGES,
    beside_the_hinges,
    wires_asked,
    wires_words,
)
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED
from configurator.rules.hinge.sizes import barrel_diameter, height_row, hinge_count
from configurator.rules.hinge_items import hand_of_leaf
from configurator.rules.wording import counted, plain
from configurator.tables import WayRow, limit, table

ITEMS = (
    *(row.kind for row in table(WayRow) if row.kind != "butt hinge"),
    *("intermediate offset pivot", *BESIDE_THE_HINGES),
)
"""What a line may be of; of pivots its item says more behind that."""
_UNITS = {"each": "each", "length": "each", "set": "set"}


@dataclass(frozen=True, slots=True)
class WayItem:
    """One thing to order that is no butt; inches.

    `length` is that of a continuous hinge, cut to the door. `hand` is None where left and right do not
    differ, or where nobody gave it. `axis_assumed`: nobody typed where it turns, so its drawing is wanted;
    a loop or a transfer, on which nothing turns, has no axis. `wired` says which wires it carries.
    """

    item: str
    unit: str
    length: float | None
    hand: str | None
    axis_off_face: float | None
    axis_from_heel: float | None
    axis_assumed: bool
    let_in: str
    finish_bhma: str | None
    wired: str = ""

    @property
    def words(self) -> str:
        """The thing in trade words, with what is still to be asked."""
        parts = (
            self.item,
            f"{plain(self.length)} in long, cut to the door" if self.length else "",
            f"hand {self.hand}" if self.hand else "",
            self._axis,
            self.wired,
            f"finish {self.finish_bhma}" if self.finish_bhma else "finish to be given",
        )
        return ", ".join(filter(None, parts))

    @property
    def _axis(self) -> str:
        if self.axis_off_face is None or self.axis_from_heel is None:
            return ""
        ask = " (usual: ask for the drawing first)" if self.axis_assumed else ""
        return f"axis {_axis_words(self.axis_off_face, self.axis_from_heel)}{ask}"


@dataclass(frozen=True, slots=True)
class WayLine:
    """One line: the thing, how many of it each mark takes."""

    what: WayItem
    by_mark: dict[str, int]

    @property
    def quantity(self) -> int:
        """How many to order."""
        return sum(self.by_mark.values())

    @property
    def quantity_words(self) -> str:
        """The quantity as it is counted: `2 sets`."""
        return counted(self.quantity, "set", "sets") if self.what.unit == "set" else f"{self.quantity} each"

    def as_data(self) -> dict[str, Any]:
        """Return the line by the names of the results."""
        return {
            "quantity": self.quantity,
            "unit": self.what.unit,
            "item": self.what.item,
            "length": self.what.length,
            "hand": self.what.hand,
            "axis_off_face": self.what.axis_off_face,
            "axis_from_heel": self.what.axis_from_heel,
            "axis_assumed": self.what.axis_assumed,
            "let_in": self.what.let_in,
            "wired": self.what.wired or None,
            "finish_bhma": self.what.finish_bhma,
            "description": self.what.words,
            "marks": list(self.by_mark),
            "by_mark": self.by_mark,
        }


def _axis_words(off_face: float, from_heel: float) -> str:
    off = f"{plain(abs(off_face))} in {'off' if off_face >= 0 else 'inside'} the pull face"
    return f"{off}, {plain(abs(from_heel))} in {'from' if from_heel >= 0 else 'beyond'} the heel edge"


def way_lines(tallies: Iterable[Tally]) -> tuple[WayLine, ...]:
    """Return the lines of what is no butt, in the order of the job; nothing of what an error holds."""
    lines: dict[WayItem, dict[str, int]] = {}
    for one in tallies:
        if one.fault is None and not one.holding:
            for item, count in way_items(one.opening):
                marks = lines.setdefault(item, {})
                marks[one.mark] = marks.get(one.mark, 0) + count * one.opening.quantity
    return tuple(WayLine(item, marks) for item, marks in lines.items())


def way_items(opening: Opening) -> Iterator[tuple[WayItem, int]]:
    """Yield what one opening hangs on, leaf by leaf, and what carries its wires, with how many of each.

    Nothing of butts, and of the wires only what no hinge carries.
    """
    yield from _wires(opening)
    if (given := way_hung_on(opening)) is None:
        return
    filled = fill(opening)
    for leaf in leaves_of(filled):
        row = height_row(filled.thickness, leaf.width)
        barrel = barrel_diameter(row.height, row.weight or "standard").value
        yield from _of_leaf(fill_way(given, filled, barrel)[0], filled, leaf)


_LET_IN = {"door loop": "nothing: on the faces of door and frame", "concealed transfer": "edges of both"}


def _wires(opening: Opening) -> Iterator[tuple[WayItem, int]]:
    """Yield the loop or the transfer that carries the wires of a door; one, on the leaf of its hardware."""
    asked = opening.hinge or NOTHING_ASKED
    if (beside := beside_the_hinges(asked)) is not None:
        yield (
            WayItem(
                item=beside,
                unit="each",
                length=None,
                hand=None,
                axis_off_face=None,
                axis_from_heel=None,
                axis_assumed=False,
                let_in=_LET_IN[beside],
                finish_bhma=asked.finish_bhma,
                wired=f"for {wires_words(asked.wires)}",
            ),
            1,
        )


def _of_leaf(way: FilledWay, filled: FilledOpening, leaf: LeafSize) -> Iterator[tuple[WayItem, int]]:
    opening, row = filled.opening, way.row
    item = WayItem(
        item=_named(way),
        unit=_UNITS[row.sold_by],
        length=leaf.height if row.sold_by == "length" else None,
        hand=hand_of_leaf(opening.hand, leaf.name) if row.handed else None,
        axis_off_face=way.off_face,
        axis_from_heel=way.from_heel,
        axis_assumed=bool(way.assumed),
        let_in=row.let_in,
        finish_bhma=opening.hinge.finish_bhma if opening.hinge else None,
        wired=_wired(way, opening.hinge or NOTHING_ASKED),
    )
    yield item, hinge_count(leaf.height).value if row.sold_by == "each" else 1
    if way.kind == "offset pivot" and filled.use.fire_rated and leaf.height > limit("fire_pivot_over").value:
        yield replace(item, item="intermediate offset pivot", unit="each"), 1


def _wired(way: FilledWay, asked: Hinge) -> str:
    """Return what a hinge that is no butt is prepared for; a pivot carries no wires."""
    if way.row.turns_on == "pivots" or not wires_asked(asked) or beside_the_hinges(asked):
        return ""
    return (
        f"one of them for {wires_words(asked.wires)}"
        if way.row.sold_by == "each"
        else f"for {wires_words(asked.wires)}"
    )


def _named(way: FilledWay) -> str:
    """Return what it is ordered by: a set of pivots is a top and a bottom one."""
    acting = f", {'double' if way.double_acting else 'single'} acting"
    if way.row.turns_on == "pivots":
        return f"{way.kind}, top and bottom" + (acting if way.kind == "centre-hung pivot" else "")
    return way.kind
