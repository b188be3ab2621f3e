"""The widths of an opening as plain text for a terminal: the least, then a line a width."""

from collections.abc import Sequence

from configurator.drawing.width_words import WidthTable, break_words, headline, width_table
from configurator.study.inverse import LeafWidths
from configurator.units import Display


def widths_as_text(mark: str, leaves: Sequence[LeafWidths], display: Display | None = None) -> str:
    """Return the widths of each leaf of one opening."""
    shown = display or Display()
    return "\n".join(_leaf_text(mark, leaf, shown) for leaf in leaves) + "\n"


def _leaf_text(mark: str, leaf: LeafWidths, display: Display) -> str:
    named = mark if leaf.leaf == "single" else f"{mark}, {leaf.leaf} leaf"
    heading = f"{named}: widths and angles"
    breaks = "; ".join(break_words(one, display)[0] for one in leaf.breaks)
    lines = ["", heading, "-" * len(heading), headline(leaf, display)]
    lines += [f"{breaks[:1].upper()}{breaks[1:]}."] if breaks else []
    return "\n".join([*lines, *_table(width_table(leaf, display))])


def _table(table: WidthTable) -> list[str]:
    rows = [table.heads, *(line.cells for line in table.lines)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(table.heads))]
    return ["  ".join(cell.ljust(w) for cell, w in zip(row, widths, strict=True)).rstrip() for row in rows]
