"""Text in the cells of a spreadsheet file: kept from running as a formula, and read back as it was.

A spreadsheet runs a CSV cell that begins with `=`, `+`, `-` or `@`, or with a tab or line end before one.
Such text is written with an apostrophe in front, and so is text that begins with one itself; reading
takes exactly that apostrophe off again, so every text comes back the same. Numbers are not text and stay.
"""

_STARTS_A_FORMULA = frozenset("=+-@＝＋－＠\t\r\n")
"""The wide forms are run by spreadsheets set up for Chinese, Japanese or Korean."""
_GUARD = "'"


def shield(text: str) -> str:
    """Return the text as it goes into a CSV cell."""
    return _GUARD + text if _needs_guard(text) else text


def unshield(cell: str) -> str:
    """Return the text that was written into a CSV cell; a cell somebody else wrote stays as it is."""
    return cell[1:] if cell[:1] == _GUARD and _needs_guard(cell[1:]) else cell


def _needs_guard(text: str) -> bool:
    first = text[:1]
    return first == _GUARD or first in _STARTS_A_FORMULA or text.lstrip()[:1] in _STARTS_A_FORMULA
