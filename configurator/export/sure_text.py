"""How sure every hinge width is, as plain text for a terminal."""

import textwrap
from collections.abc import Sequence

from configurator.export.table_text import WIDTH
from configurator.rules.how_sure import NAMES, HowSure
from configurator.rules.sure_words import sure_sentence, what_to_do
from configurator.rules.wording import inches


def sure_as_text(mark: str, sure: Sequence[HowSure]) -> str:
    """Return a line for each hinge width of an opening, and the tolerances that they rest on."""
    heading = f"{mark}: how sure"
    lines = ["", heading, "=" * len(heading)]
    for one in sure:
        lines += textwrap.wrap(_line(one), WIDTH, subsequent_indent="    ")
    if sure:
        lines += textwrap.wrap(_tolerances(sure[0]), WIDTH, subsequent_indent="    ")
    return "\n".join(lines) + "\n"


def _line(sure: HowSure) -> str:
    leaf = "" if sure.leaf == "single" else f", {sure.leaf} leaf"
    most = f" The {NAMES[sure.matters_most]} matters most." if sure.matters_most else ""
    said = " ".join(filter(None, (sure_sentence(sure), what_to_do(sure))))
    return f"{inches(sure.hinge_width)} hinge{leaf}: {said}{most}"


def _tolerances(sure: HowSure) -> str:
    assumed = sure.tolerances.assumed
    each = [
        f"{key.replace('_', ' ')} {inches(value)}{' (assumed)' if f'tolerances.{key}' in assumed else ''}"
        for key, value in sure.tolerances.values.items()
    ]
    return f"Tolerances, plus or minus: {', '.join(each)}"
