"""Sentences on a page in millimetres: what the rules say in inches has its millimetres beside it."""

import re

from configurator.units import MM_PER_INCH, Display, parse_length

_INCHES = re.compile(r"(?<![\w/.-])(?:\d+-)?\d+(?:/\d+|\.\d+)? in\b")


def in_both(sentence: str, display: Display) -> str:
    """Return a sentence with whole millimetres after each length in inches, where lengths are shown so.

    Whole ones, because a sentence's inches are rounded already: a decimal would say more than is known. A
    length under half an inch keeps one.
    """
    if not display.metric:
        return sentence
    return _INCHES.sub(lambda found: _both(found, sentence), sentence)


def _both(found: re.Match[str], sentence: str) -> str:
    inches = parse_length(found[0])
    shown = f"{inches * MM_PER_INCH:.{0 if inches >= 0.5 else 1}f} mm"
    before = sentence[: found.start()]
    inside = before.count("(") > before.count(")")
    return f"{found[0]} = {shown}" if inside else f"{found[0]} ({shown})"
