"""Turns a refused record into one plain sentence a fault, naming the field and what is allowed."""

import re
import types
from dataclasses import dataclass
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from configurator.model.fields import ENTRY_A_WAY, ENTRY_A_WIDTH, bounds_of, unit_of
from configurator.sentences import written
from configurator.units import Display, format_decimal

_LONGEST_SHOWN = 60
_LARGEST_IN_FULL = 1e9
"""A larger number is told as its power of ten; so are infinity and what is no number."""
_LOOK = "check its spelling and where it stands"
_ALIKE = 0.75
"""How much of two keys must be alike, of 1, for one to be taken for the other mistyped."""
_BOUNDS = re.compile(r"(.* must be )(.*) in; (.*) was given")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@dataclass(frozen=True, slots=True)
class Fault:
    """One refused field: its dotted path (`openings[0].door.thickness`) and a sentence."""

    field: str
    message: str

    def __str__(self) -> str:
        """Return the one line a person reads."""
        return f"{self.field}: {self.message}" if self.field else self.message


def faults_of(error: ValidationError, record: type[BaseModel]) -> tuple[Fault, ...]:
    """Return a fault for every refusal in `error`, raised while validating `record`."""
    return tuple(_fault(details, record) for details in error.errors(include_url=False))


def in_units(message: str, display: Display) -> str:
    """Return the message of a fault with its lengths in millimetres, where these are shown."""
    if not display.metric:
        return message
    of_bounds = _BOUNDS.fullmatch(message)
    if of_bounds is None:
        return written(message, display)
    about, bounds, given = of_bounds.groups()
    shown = _NUMBER.sub(lambda number: display.exact(float(number[0])), bounds)
    return f"{about}{shown}; {_NUMBER.sub(lambda number: display.exact(float(number[0])), given)} was given"


def _fault(details: ErrorDetails, record: type[BaseModel]) -> Fault:
    info = _field_at(record, details["loc"])
    path = path_text(_own_steps(record, details["loc"]))
    if details["type"] == "extra_forbidden":
        return Fault(path, f"there is no such key; {_meant(record, details['loc'])}")
    # A rule about several fields together names the one to change.
    below = details.get("ctx", {}).get("field")
    return Fault(".".join(filter(None, (path, below))), _sentence(details, info))


def path_text(steps: tuple[int | str, ...]) -> str:
    """Write a path of keys and places in lists as `openings[0].door.thickness`."""
    text = ""
    for step in steps:
        if isinstance(step, int):
            text += f"[{step}]"
        else:
            text += f".{_shown(step)}" if text else _shown(step)
    return text


def _shown(value: object) -> str:
    """Return `value` on one printable line, cut where it is long."""
    if isinstance(value, float) and abs(value) < _LARGEST_IN_FULL:
        return format_decimal(value, 4)
    text = value if isinstance(value, str) else repr(value)
    line = "".join(c if c.isprintable() else "?" for c in text)
    return line if len(line) <= _LONGEST_SHOWN else line[: _LONGEST_SHOWN - 3] + "..."


def _own_steps(record: type[BaseModel], steps: tuple[int | str, ...]) -> tuple[int | str, ...]:
    """Leave out the steps that pydantic adds for a union's branch: they are no keys of the file."""
    kept: list[int | str] = []
    current: type[BaseModel] | None = record
    info: FieldInfo | None = None
    for position, step in enumerate(steps):
        if step in (ENTRY_A_WIDTH, ENTRY_A_WAY):
            continue
        if isinstance(step, int):
            kept.append(step)
            current = _record_in(info.annotation) if info is not None else None
        elif current is not None and step in current.model_fields:
            kept.append(step)
            info = current.model_fields[step]
            current = _record_in(info.annotation)
        elif position == len(steps) - 1 and (current is not None or info is None):
            kept.append(step)  # an unknown key is named as it was typed
    return tuple(kept)


def _field_at(record: type[BaseModel], steps: tuple[int | str, ...]) -> FieldInfo | None:
    current: type[BaseModel] | None = record
    info: FieldInfo | None = None
    for step in steps:
        if isinstance(step, str) and current is not None and step in current.model_fields:
            info = current.model_fields[step]
            current = _record_in(info.annotation)
    return info


def _record_in(annotation: Any) -> type[BaseModel] | None:
    """Return the record that a field's annotation holds, through unions and tuples."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    if get_origin(annotation) in (Union, types.UnionType, tuple, Annotated):
        for part in get_args(annotation):
            if (found := _record_in(part)) is not None:
                return found
    return None


def _meant(record: type[BaseModel], steps: tuple[int | str, ...]) -> str:
    """Name the keys of its record that an unknown key is most like."""
    from difflib import get_close_matches  # only where something is wrong

    *before, key = steps
    holder = _record_in(info.annotation) if (info := _field_at(record, tuple(before))) else record
    if holder is None or not 0 < len(str(key)) <= _LONGEST_SHOWN:
        return _LOOK
    known = list(holder.model_fields)
    longer = [one for one in known if one.startswith(f"{key}_") or one.endswith(f"_{key}")]
    like = longer or get_close_matches(str(key), known, n=3, cutoff=_ALIKE)
    return f"is {' or '.join(like)} meant?" if like else _LOOK


def _sentence(details: ErrorDetails, info: FieldInfo | None) -> str:
    title = (info.title if info is not None else None) or "this"
    context = details.get("ctx", {})
    given = _shown(details.get("input"))
    match details["type"]:
        case "missing":
            return "this key is missing and must be given"
        case "greater_than" | "greater_than_equal" | "less_than" | "less_than_equal":
            return f"{title} must be {_allowed(info, context)}; {given} was given"
        case "finite_number":
            return f"{title} must be a finite number; {given} was given"
        case "literal_error":
            return f"{title} is one of {context.get('expected', '')}; {given} was given"
        case "bool_type":
            return f"{title} is true or false; {given} was given"
        case "int_type" | "int_from_float" | "int_parsing":
            return f"{title} is a whole number; {given} was given"
        case "model_type" | "model_attributes_type" | "dict_type":
            return f"{title} is a group of keys in braces; {given} was given"
        case "tuple_type" | "list_type":
            return f"{title} is a list in brackets; {given} was given"
        case "length" | "angle" | "text" | "layers" | "heights" | "needs" | "mark" | "many" | "compare":
            return _one_line(details["msg"])
    return f"{title}: {_one_line(details['msg'])}; {given} was given"


def _one_line(text: str) -> str:
    return " ".join(text.split())


def _allowed(info: FieldInfo | None, context: dict[str, Any]) -> str:
    bounds = (bounds_of(info) if info is not None else {}) or context
    unit = unit_of(info) if info is not None else ""
    words = {"gt": "more than", "ge": "at least", "lt": "less than", "le": "at most"}
    return (
        " and ".join(
            f"{words[name]} {format_decimal(value)}" for name, value in bounds.items() if name in words
        )
        + unit
    )
