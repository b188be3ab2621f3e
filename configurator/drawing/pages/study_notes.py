"""What every sheet of an opening says beside its details: the hinge, findings, what was assumed."""

from functools import cache

from pydantic import BaseModel

from configurator.drawing.hinge_order_line import order_cautions, order_lines
from configurator.drawing.hinge_parts import cited
from configurator.drawing.pages.notes_column import Note
from configurator.drawing.swing_words import bevel_words
from configurator.model import Opening
from configurator.rules.filling.usual import Assumed
from configurator.rules.finding import Finding
from configurator.rules.wording import pounds
from configurator.study import Study
from configurator.units import Display

DEFER = (
    "This sheet is no approval: codes, the listing of a labelled door and the judgment of a licensed "
    "professional go before it. Check every dimension in the field."
)
_SLOPES = frozenset({"door.latch_bevel"})
_DEGREES = frozenset({"use.wanted_angle", "use.stop_angle"})


def study_notes(study: Study, display: Display) -> tuple[Note, ...]:
    """Return what is to be said of an opening whatever the sheet shows, the most severe first."""
    found = study.all_findings()
    return (
        Note("Errors", _sayings(found, "error", display), warns=True),
        Note("Cautions", _sayings(found, "warning", display), warns=True),
        Note("Hinges", (*(line.text for line in order_lines(study)), *order_cautions(study))),
        assumed_note(study, display),
        Note("Before use", (DEFER,), stays=True),
        Note("Notes", _sayings(found, "note", display)),
    )


def assumed_note(study: Study, display: Display) -> Note:
    """Return what nobody gave and was taken as usual, each with its value and how well it is known."""
    assumed = study.filled.assumed
    not_so = [_title(path) for path, one in assumed.items() if one.value is False]
    told = [_told(path, one, display) for path, one in assumed.items() if one.value is not False]
    told += [f"nothing was said of, so taken as no: {', '.join(not_so)}"] if not_so else []
    return Note("Assumed, not given", ("; ".join(told) + ".",) if told else (), lists=True)


def _told(path: str, one: Assumed, display: Display) -> str:
    return f"{_title(path)} {_value(path, one.value, display)} ({one.mark_of_source})"


def _value(path: str, value: float | str | bool | None, display: Display) -> str:
    if isinstance(value, bool) or value is None:
        return "yes" if value else "not said"
    if isinstance(value, str):
        return value
    if path in _DEGREES:
        return display.angle(value, "up")
    if path == "door.weight":
        return pounds(value)
    if path in _SLOPES:
        return bevel_words(value, display)
    return display.exact(value)


@cache
def _title(path: str) -> str:
    """Return what the trade calls the field at a path of an opening."""
    record: type[BaseModel] = Opening
    title = path
    for name in path.split("."):
        info = record.model_fields[name]
        title = info.title or name
        if isinstance(info.annotation, type) and issubclass(info.annotation, BaseModel):
            record = info.annotation
    return title


def _sayings(found: tuple[Finding, ...], severity: str, display: Display) -> tuple[str, ...]:
    """Return the sentences of a severity; an error or a caution says where it comes from."""
    said = [(one.said(display), one) for one in found if one.severity == severity]
    if severity == "note":
        return tuple(message for message, _ in said)
    return tuple(f"{message} [{cited(one.source, one.mark_of_source)}]" for message, one in said)
