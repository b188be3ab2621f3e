"""What counts as high, average or low traffic: how often a day such doors are opened."""

from configurator.tables import FrequencyRow, table


def traffic_help() -> str:
    """Return the doors that each kind of traffic is known from, a line each, and how sure that is."""
    rows = table(FrequencyRow)
    lines = [f"{row.traffic}: {row.place}, {_a_day(row)} openings a day" for row in rows]
    return "\n".join((*lines, *dict.fromkeys(row.source for row in rows)))


def _a_day(row: FrequencyRow) -> str:
    if row.per_day_low == row.per_day_high:
        return f"{row.per_day_low:,}"
    return f"{row.per_day_low:,} to {row.per_day_high:,}"
