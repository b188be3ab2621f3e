"""A hinge's parts in the words of the trade, every code spelled out."""

from collections.abc import Callable, Mapping
from typing import Any

from configurator.model import Hinge
from configurator.rules.finding import Reason
from configurator.rules.hinge.electric import BESIDE_THE_HINGES, wires_words
from configurator.rules.hinge.fastening import screw_row, screws_in_words
from configurator.rules.hinge.finish import finishes, metals_of
from configurator.rules.hinge.sizes import pairs
from configurator.rules.wording import counted
from configurator.sentences import written
from configurator.study.widths.hinge_trials import Trial
from configurator.tables import TypeRow, table
from configurator.units import Display, format_size

Parts = Mapping[str, Reason]

_BEARINGS = {"ball": "antifriction bearing (ball)", "plain": "plain bearing"}
_METALS = {"stainless": "stainless steel"}
NOTHING_AGAINST = "nothing stands against it here"


def part_words(key: str, parts: Parts, display: Display) -> str:
    """Return what a row shows for the part that begins with `key`; lengths of the hinge follow `display`."""
    if key in _WHOLE:
        return _WHOLE[key](parts, display)
    return spelled_value(key, parts[key].value, display)


def spelled_value(key: str, value: Any, display: Display) -> str:
    """Return one value by itself in words, as "antifriction bearing (ball)" for a bearing."""
    if key == "electric":
        return "none carries wires" if value is None else f"hinge {value} from the top carries wires"
    if key == "transfer":
        return "no wires" if value is None else str(value)
    if key == "wires":
        return "none" if value is None else wires_words(value)
    if key == "security_stud":
        return "security stud" if value else "no security stud"
    if value is None:
        return "none known"
    return _spelled(key, value, display)


def _spelled(key: str, value: Any, display: Display) -> str:
    match key:
        case "height" | "width":
            return f"{format_size(value)} in"
        case "count":
            return f"{counted(value, 'hinge', 'hinges')} = {pairs(value)}"
        case "weight":
            return f"{value} weight"
        case "bearing":
            return _BEARINGS[value]
        case "leaf_thickness":
            return display.exact(value)
        case "type":
            return type_words(value, "")
        case "knuckles":
            return f"{value} knuckles"
        case "screws":
            return screws_in_words(value)
    return _plain_word(key, str(value))


def _plain_word(key: str, value: str) -> str:
    match key:
        case "base_metal":
            return _METALS.get(value, value)
        case "pin":
            return f"{value} pin"
        case "tip":
            return f"{value} tips"
        case "corner":
            return "square corners" if value == "square" else f"{value.replace(' ', ' in ')} corners"
    return value


def type_words(number: str, metal: str) -> str:
    """Spell an ANSI/BHMA A156.1 type out; of a number for several metals, as it is on `metal`."""
    rows = [row for row in table(TypeRow) if row.type == number]
    if not rows:
        return f"{number}: no type number known here, check it against ANSI/BHMA A156.1"
    row = next((row for row in rows if row.metal == metal), rows[0])
    bearing = "antifriction" if row.bearing == "ball" else "plain"
    return (
        f"{number}: {_METALS.get(row.metal, row.metal)}, full mortise, {bearing} bearing, "
        f"{row.weight} weight, ANSI/BHMA A156.1 grade {row.grade}"
    )


def finish_words(number: str | None, us: str | None, metal: str) -> str:
    """Spell a finish out: `652 (US26D), satin chrome: satin chromium plated over nickel, on steel`."""
    rows = finishes(bhma=number) if number is not None else ()
    if number is None or not rows:
        asked = " ".join(code for code in (number, us) if code) or "none"
        return f"{asked}: no finish known here by that code"
    row = next((row for row in rows if row.metal == metal), rows[0])
    code = f" ({row.us})" if row.us else ""
    return f"{number}{code}, {row.look}: {row.words}, on {_METALS.get(row.metal, row.metal)}"


def screw_words(counts: Mapping[str, int], height: float) -> str:
    """Write screws with their usual sizes for a hinge of that height, inches."""
    row = screw_row(height)
    sizes = {"machine": row.machine, "wood": row.wood}
    written = [
        f"{count} {kind} screws {sizes.get(kind, '')}".strip() for kind, count in counts.items() if count
    ]
    return " and ".join(written) or "no screws"


def _size(parts: Parts, display: Display) -> str:
    height, width = parts["height"].value, parts["width"].value
    if width is None:
        return f"{format_size(height)} high; no width to be had does what this opening asks"
    return display.size(height, width)


def _type(parts: Parts, _: Display) -> str:
    number = parts["type"].value
    if number is None:
        return "no type number known here: ordered in words"
    return type_words(number, parts["base_metal"].value)


def _finish(parts: Parts, _: Display) -> str:
    return finish_words(parts["finish_bhma"].value, parts["finish_us"].value, parts["base_metal"].value)


def _screws(parts: Parts, _: Display) -> str:
    return screw_words(parts["screws"].value, parts["height"].value)


def _wires(parts: Parts, display: Display) -> str:
    """Return what carries wires, with how many."""
    which, transfer, wires = (parts[key].value for key in ("electric", "transfer", "wires"))
    if transfer in BESIDE_THE_HINGES:
        return f"{transfer} for {wires_words(wires)}"
    words = spelled_value("electric", which, display)
    return words if wires is None or which is None else words.replace("wires", wires_words(wires))


_WHOLE: Mapping[str, Callable[[Parts, Display], str]] = {
    "electric": _wires,
    "height": _size,
    "type": _type,
    "finish_bhma": _finish,
    "screws": _screws,
}
"""Rows whose words come from more than one part."""


# --- What could be taken instead ---


def trial_name(trial: Trial, display: Display) -> str:
    """Write a value so that it is told apart from those of the other parts beside it."""
    key, value = trial.key, trial.value
    match key:
        case "height":
            return f"{spelled_value(key, value, display)} high"
        case "width":
            return f"{spelled_value(key, value, display)} wide"
        case "finish_bhma":
            return f"{value} on {' or '.join(metals_of(value))}"
    return _short(key, value, display)


def trial_effect(trial: Trial, display: Display) -> str:
    """Say what a value would cost or break: the rules' own words, then what its study found, each once."""
    follows = [
        f"{Hinge.model_fields[key].title} becomes {_short(key, value, display)}"
        for key, value in trial.follows
    ]
    against = [f"{one.severity}: {one.said(display)}" for one in trial.against]
    pieces = dict.fromkeys((*written(trial.own, display).split("; "), trial.stock, *follows, *against))
    return "; ".join(piece for piece in pieces if piece) or NOTHING_AGAINST


def _short(key: str, value: Any, display: Display) -> str:
    return str(value) if key == "type" and value else spelled_value(key, value, display)
