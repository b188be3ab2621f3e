"""Which hinge sizes are made, and how usual it is to find them."""

from functools import cache

from configurator.tables import StockRow, table
from configurator.units import TOLERANCE

ORDER = ("common", "uncommon", "ask first")


@cache
def stock_rows(height: float) -> tuple[StockRow, ...]:
    """Return the stock sizes of that hinge height, inches, narrow to wide; none where none is known."""
    return tuple(sorted((row for row in table(StockRow) if row.height == height), key=lambda row: row.width))


@cache
def stock_widths(height: float) -> tuple[float, ...]:
    """Return every stock width of that hinge height, inches, narrow to wide."""
    return tuple(row.width for row in stock_rows(height))


@cache
def widths_by_stock(height: float) -> tuple[float, ...]:
    """Return the widths in the order they are tried: the common narrow to wide, the uncommon, the rest."""
    rows = sorted(stock_rows(height), key=lambda row: (ORDER.index(row.stock), row.width))
    return tuple(row.width for row in rows)


def stock_of(height: float, width: float) -> StockRow | None:
    """Return the stock row of a size, height first, inches; None where it is in no list."""
    return next((row for row in stock_rows(height) if row.width == width), None)


def next_wider(height: float, width: float) -> float | None:
    """Return the next wider stock width of that height, inches; None past the widest."""
    return next((wider for wider in stock_widths(height) if wider > width), None)


def next_narrower(height: float, width: float) -> float | None:
    """Return the next narrower stock width of that height, inches; None below the narrowest."""
    return next((narrower for narrower in reversed(stock_widths(height)) if narrower < width), None)


def least_stock_width(height: float, at_least: float) -> float | None:
    """Return the least stock width, however usual, not below `at_least`, inches; None where there is none.

    The handbook rule W = 2 (T - b) + C is rounded up this way (The Building Trades Pocketbook, Doors).
    """
    return next((width for width in stock_widths(height) if width >= at_least - TOLERANCE), None)
