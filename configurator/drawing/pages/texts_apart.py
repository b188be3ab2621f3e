"""Whether the texts of details keep apart: at a scale asked for that is too small they cannot."""

from collections.abc import Iterator, Sequence
from itertools import combinations

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Dimension, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.page import Detail, Scale

_AIR = 0.25
"""Points that the nominal box of a text may reach into another's: its letters do not fill it."""


def refuse_crowded(details: Sequence[Detail], asked: Scale | None) -> None:
    """Raise ValueError, in words, where a scale asked for leaves texts over one another or cut off."""
    if asked is not None and any(_crowded(detail) for detail in details):
        raise ValueError(
            f"{asked.name} is too small for the dimensions of this sheet; take a larger one, or none"
        )


def _crowded(detail: Detail) -> bool:
    boxes = list(_boxes(detail))
    return not all(detail.view.window.holds(box) for box in boxes) or any(
        a.overlaps(b) for a, b in combinations(boxes, 2)
    )


def _boxes(detail: Detail) -> Iterator[Box]:
    """Yield what each text of a detail covers, points of the paper."""
    for item in detail.primitives:
        if isinstance(item, Text):
            at = detail.view.to_sheet(item.at)
            yield text_box(at, item.text, item.size, item.anchor, item.bold).shrunk(_AIR)
        elif isinstance(item, Dimension):
            yield text_box(detail.view.to_sheet(item.text_at), item.text, item.size, "middle").shrunk(_AIR)
