"""Slips of the hand that are asked about, never mended unasked: sizes typed wrong way round. No Qt."""

import re
from dataclasses import dataclass

from configurator.ui.kit.kinds import NotReadError, exact_length
from configurator.units import Display, LengthError, format_exact, format_length, parse_length

USUAL_HINGE_HEIGHT = 4.5
"""Inches; what a 1-3/4 in door commonly takes, where the program has chosen nothing yet. No source."""


@dataclass(frozen=True, slots=True)
class WidthQuestion:
    """A question about a hinge typed as a size: what it asks, and the two widths that may be meant."""

    sentence: str
    swapped_label: str
    swapped: float
    kept_label: str
    kept: float


def size_question(width: float, height: float, display: Display) -> str:
    """Ask whether an opening wider than high was typed height first; empty where there is nothing to ask."""
    if width <= height:
        return ""
    wide = exact_length(width, display) if display.metric else format_length(width, 64, "feet")
    return f"{wide} wide? Doors are width first. Swap?"


def read_hinge_width(text: str, height: float, display: Display) -> "float | WidthQuestion":
    """Read a hinge open width, alone or as the second number of a hinge size (height x width).

    Inches. `height` is the hinge height this door takes. A size that would make sense the other way round is
    answered by a question. Raises NotReadError.
    """
    parts = re.split(r"\s*[x×]\s*", text.strip().lower())
    try:
        numbers = [parse_length(part, metric=display.metric, negative=False) for part in parts]
    except LengthError as error:
        raise NotReadError(str(error)) from None
    if len(numbers) == 1:
        return numbers[0]
    if len(numbers) > 2:
        raise NotReadError(f"“{text.strip()[:24]}” is not a hinge size. Write height x width, as 4-1/2 x 4.")
    first, second = numbers
    if first != height and second == height:
        return _question(first, second, height)
    return second


def _question(first: float, second: float, height: float) -> WidthQuestion:
    swapped = f"{format_exact(second)} x {format_exact(first)}"
    sentence = (
        f"{format_exact(first)} high? This door takes {format_exact(height)} high. Did you mean {swapped}?"
    )
    kept = f"Keep {format_exact(second)} in wide"
    return WidthQuestion(sentence, f"Swap: {swapped}", first, kept, second)
