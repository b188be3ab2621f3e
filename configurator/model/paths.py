"""Places in an opening's record by dotted path, as `door.thickness` or `obstructions.0.projection`."""

import re
import types
import typing
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from configurator.model.fields import Record
from configurator.model.job import JobFacts
from configurator.model.opening import Opening
from configurator.sentences import capitalized

JOB = "job."
"""What a path begins with that lies in the job's facts and not in an opening."""


@cache
def field_at(path: str) -> FieldInfo:
    """Return the description of the field at a path; places in lists are passed over.

    Raises KeyError when no opening has such a field.
    """
    record: type[Record] = JobFacts if path.startswith(JOB) else Opening
    info: FieldInfo | None = None
    for name in _names(path.removeprefix(JOB)):
        info = record.model_fields[name]
        record = _record_in(info.annotation) or record
    if info is None:
        raise KeyError(path)
    return info


def trade_name(path: str) -> str:
    """Return what a detailer calls the field, as "frame proud of wall"."""
    return field_at(path).title or path


def plain_name(path: str) -> str:
    """Return what a client would call it, as "frame stands out from wall by"."""
    return _told(path, "plain") or trade_name(path)


def help_of(path: str) -> str:
    """Return one sentence of help; empty where the name says it all."""
    left_out = when_left_out(path)
    text = "; ".join(filter(None, (_told(path, "help"), left_out and f"left out: {left_out}")))
    return capitalized(text)


def when_left_out(path: str) -> str:
    """Return what an empty field means, in a word or two; empty where that is not said."""
    return _told(path, "left_out")


def _told(path: str, key: str) -> str:
    """Return one of the texts that a field is declared with."""
    extra = field_at(path).json_schema_extra
    return str(extra.get(key, "")) if isinstance(extra, dict) else ""


def other_name(path: str, plain: bool) -> str:
    """Return the trade's name where the client's is on show, or the other way; empty where they match."""
    trade, client = trade_name(path), plain_name(path)
    return "" if trade == client else trade if plain else client


def every_field(record: type[Record] = Opening, before: str = "") -> Iterator[str]:
    """Yield the path of every field of a record and of the records in it, without places in lists."""
    for name, info in record.model_fields.items():
        yield f"{before}{name}"
        inner = _record_in(info.annotation)
        if inner is not None:
            yield from every_field(inner, f"{before}{name}.")


OLDER_WORDS: Mapping[str, tuple[str, ...]] = {"status": ("ordered",)}
"""Words that a file may still hold, and that are read as something else: see the migrations of files."""


@cache
def vocabulary() -> Mapping[str, tuple[str, ...]]:
    """Return every field of an opening or a job that accepts certain words only, with those words.

    Of a mapping they are its keys. A job's standard hinge takes those of a hinge. Words that only older
    files hold come last.
    """
    every = (*every_field(), *(f"{JOB}{name}" for name in JobFacts.model_fields))
    words = {path: words_of(path) or _keys_of(path) for path in every}
    return {path: (*some, *OLDER_WORDS.get(path, ())) for path, some in words.items() if some}


def words_of(path: str) -> tuple[str, ...]:
    """Return the words a field accepts; empty where it is no choice among words."""
    for kind in _kinds(field_at(path).annotation):
        if get_origin(kind) is Literal:
            return get_args(kind)
    return ()


def _keys_of(path: str) -> tuple[str, ...]:
    """Return the keys that a field takes which is a mapping; empty where it is none."""
    mappings = [kind for kind in _kinds(field_at(path).annotation) if get_origin(kind) is dict]
    key = get_args(mappings[0])[0] if mappings else None
    return get_args(key) if get_origin(key) is Literal else ()


def holds(path: str, kind: type) -> bool:
    """Return whether a field takes values of a type; validators' names must not be mistaken for one."""
    return kind in _kinds(field_at(path).annotation)


def value_at(record: Opening | JobFacts, path: str) -> Any:
    """Return what the user gave at a path of an opening or of the job's facts; None where it was left out."""
    value: Any = record
    for part in path.removeprefix(JOB).split("."):
        if value is None:
            return None
        if isinstance(value, tuple):
            value = value[int(part)] if int(part) < len(value) else None
        else:
            value = _said(value, part)
    return value


def _said(record: Record, name: str) -> Any:
    """Return a field's value; None where it only has the usual one of its kind, which nobody said."""
    usual = type(record).model_fields[name].default_factory is not None
    return None if usual and name not in record.model_fields_set else getattr(record, name)


def replaced(opening: Opening, path: str, value: Any) -> Opening:
    """Return the opening with another value at a path, not validated: for a value known to be in range."""
    changed: Opening = _replaced(opening, path.split("."), value)
    return changed


def _replaced(place: Any, way: list[str], value: Any) -> Any:
    if not way:
        return value
    first, rest = way[0], way[1:]
    if isinstance(place, tuple):
        number = int(first)
        return (*place[:number], _replaced(place[number], rest, value), *place[number + 1 :])
    return place.model_copy(update={first: _replaced(getattr(place, first), rest, value)})


def put(data: dict[str, Any], path: str, value: Any) -> None:
    """Set the value at a path in dumped data; None takes the key away, and an emptied record with it."""
    *way, last = path.split(".")
    place: Any = data
    for part in way:
        place = _entered(place, part)
    if isinstance(place, list):
        place[int(last)] = value
    elif value is None:
        place.pop(last, None)
        if not place and len(way) == 1:
            data.pop(way[0])
    else:
        place[last] = value


def from_fault(field: str) -> str:
    """Turn the place a refusal names (`openings[2].door.thickness`) into a path within its opening."""
    dotted = re.sub(r"\[(\d+)\]", r".\1", field)
    return re.sub(r"^openings\.\d+\.", "", dotted)


def _entered(place: Any, part: str) -> Any:
    if isinstance(place, list):
        return place[int(part)]
    found = place.get(part)
    if found is None:
        place[part] = {}
    elif isinstance(found, tuple):
        place[part] = list(found)  # a dumped record holds its lists as tuples
    return place[part]


def _names(path: str) -> list[str]:
    return [part for part in path.split(".") if not part.isdigit()]


def _record_in(annotation: Any) -> type[Record] | None:
    for kind in _kinds(annotation):
        if isinstance(kind, type) and issubclass(kind, Record):
            return kind
    return None


def _kinds(annotation: Any) -> list[Any]:
    """Return the types inside unions, tuples and annotations."""
    if get_origin(annotation) in (typing.Union, types.UnionType, tuple, typing.Annotated):
        return [kind for part in get_args(annotation) for kind in _kinds(part)]
    return [annotation]
