"""One hinge width over a whole job: fewer mistakes, and what it costs."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from configurator.rules.finding import Finding, finding
from configurator.rules.hinge.stock import stock_of, stock_widths
from configurator.rules.wording import plain, size
from configurator.tables import practice

MOST_NAMED = 6


@dataclass(frozen=True, slots=True)
class Chosen:
    """What an opening takes: hinge height and width in inches, hinges in all, and what other widths do.

    `does_all` says whether a width does all that this opening needs. `complete` is False where no width does:
    such an opening keeps its own until it is mended.
    """

    mark: str
    height: float
    width: float
    hinges: int
    does_all: Callable[[float], bool]
    complete: bool = True


def uniform_findings(chosen: Sequence[Chosen]) -> tuple[Finding, ...]:
    """Return, for each hinge height that comes in several widths, whether one width would do and its cost."""
    heights = sorted({one.height for one in chosen})
    groups = ([one for one in chosen if one.height == height] for height in heights)
    return tuple(_of_height(group) for group in groups if len({one.width for one in group}) > 1)


def _of_height(group: list[Chosen]) -> Finding:
    height, free = group[0].height, [one for one in group if one.complete]
    widths = ", ".join(plain(width) for width in sorted({one.width for one in group}))
    start = f"Hinges {plain(height)} high come in widths {widths} in this job."
    if len({one.width for one in free}) > 1:
        return _of_free(start, group, free)
    message = f"{start} {_kept(group)}Keep them apart, or mend it first."
    return finding("widths differ", "note", message, practice("uniform"), height=height)


def _of_free(start: str, group: list[Chosen], free: list[Chosen]) -> Finding:
    height, widest = group[0].height, max(one.width for one in free)
    for width in stock_widths(height):
        if width >= widest and all(one.does_all(width) for one in free):
            return _offer(start, group, free, width)
    against = [one.mark for one in free if not one.does_all(widest)]
    message = (
        f"{start} No one width does for all: {plain(widest)} does not for {_named(against)}. "
        f"{_kept(group)}Keep them apart."
    )
    return finding("widths differ", "note", message, practice("uniform"), height=height, widest=widest)


def _offer(start: str, group: list[Chosen], free: list[Chosen], width: float) -> Finding:
    wider = [one for one in free if one.width < width]
    hinges = sum(one.hinges for one in wider)
    total = sum(one.hinges for one in group)
    marks = _named([one.mark for one in wider])
    row = stock_of(group[0].height, width)
    stock = f" ({row.stock} in stock)" if row is not None and row.stock != "common" else ""
    all_of = "all" if len(free) == len(group) else "all the others"
    message = (
        f"{start} {_kept(group)}One width, {size(group[0].height, width)}{stock}, would do for {all_of} and "
        f"means fewer mistakes; it costs {hinges} of {total} hinges that are wider than they need be, at "
        f"{marks}. Make it the job's standard hinge, or keep them apart."
    )
    height = group[0].height
    source = practice("uniform")
    return finding("one width would do", "note", message, source, height=height, width=width, wider=hinges)


def _kept(group: list[Chosen]) -> str:
    """Say where no width does everything, so that nobody counts these among those that one width serves."""
    kept = [one for one in group if not one.complete]
    if not kept:
        return ""
    widths = " and ".join(plain(width) for width in sorted({one.width for one in kept}))
    return f"No width does everything for {_named([one.mark for one in kept])}, taken at {widths}. "


def _named(marks: list[str]) -> str:
    once = list(dict.fromkeys(marks))  # two leaves of one opening have one mark
    more = len(once) - MOST_NAMED
    return ", ".join(once[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
