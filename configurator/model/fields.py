"""The kinds of field a record has: what each reads, and the plain name a refusal calls it by."""

import re
from collections.abc import Callable
from typing import Annotated, Any, get_args

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    GetJsonSchemaHandler,
    StrictBool,
    StrictInt,
    model_validator,
)
from pydantic.fields import FieldInfo
from pydantic_core import CoreSchema, PydanticCustomError

from configurator.tables import KindRow, row_of
from configurator.units import LARGEST, LengthError, parse_length

LONGEST_TEXT = 2000
MOST_OF_ANYTHING = 200
"""So many layers, obstructions or pieces of hardware an opening may have."""
# A lone surrogate cannot be written to a file; control characters would break a printed line or a terminal.
_UNPRINTABLE = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff]")
_SCREWS = re.compile(r"[0-9]{1,5}(/[1-9][0-9]{0,3})?")


class Record(BaseModel):
    """A frozen record: unknown keys are refused, nothing changes except through validation."""

    # A record is built when it is first used: read as part of a job most are never used by themselves.
    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)

    @model_validator(mode="before")
    @classmethod
    def _null_is_left_out(cls, data: Any) -> Any:
        """Take null for a key left out, also where the record always holds a value."""
        if not isinstance(data, dict) or None not in data.values():
            return data
        return {key: value for key, value in data.items() if value is not None or _takes_none(cls, key)}


class Thing(Record):
    """A record with sizes usual of its kind: one that nobody gave differs from the same one given."""

    def __eq__(self, other: object) -> bool:
        """Return whether both say the same, and leave the same sizes to their kind."""
        if type(other) is not type(self):
            return NotImplemented
        return super().__eq__(other) and self._sizes_said() == other._sizes_said()

    def __hash__(self) -> int:
        """Return a number that is alike for things that are."""
        return hash((type(self), *self.__dict__.values()))

    def _sizes_said(self) -> set[str]:
        fields = type(self).model_fields
        return {name for name in self.model_fields_set if fields[name].default_factory is not None}


def _read_length(value: Any) -> Any:
    # Nearly every length in a file is such a number, and a large job has a quarter of a million of them.
    if type(value) in (float, int) and -LARGEST <= value <= LARGEST:
        return value
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        raise PydanticCustomError("length", "a length is a number of inches or text such as 4-1/2")
    try:
        return parse_length(value)
    except LengthError as error:
        raise PydanticCustomError("length", "{reason}", {"reason": str(error)}) from None


def _read_angle(value: Any) -> Any:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise PydanticCustomError("angle", "an angle is a number of degrees")
    return value


def _read_number(value: Any) -> Any:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise PydanticCustomError("angle", "a weight is a number of pounds")
    return value


def _read_plain_number(value: Any) -> Any:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise PydanticCustomError("angle", "a number is wanted")
    return value


def _read_text(value: Any) -> Any:
    if not isinstance(value, str):
        raise PydanticCustomError("text", "text is wanted, in quotation marks")
    return value


def _printable(value: str) -> str:
    if len(value) > LONGEST_TEXT:
        raise PydanticCustomError("text", "text may be up to 2,000 characters long")
    if _UNPRINTABLE.search(value):
        raise PydanticCustomError("text", "text may not hold control characters")
    return value


def _share(value: str) -> str:
    # A fraction in text is worked out later: "1e99999" would take minutes and all memory.
    if not _SCREWS.fullmatch(value):
        raise PydanticCustomError("text", "screws of one hinge are a whole number or a fraction, as 25/3")
    return value


def not_endless(value: Any, most: int, sentence: str) -> Any:
    """Return a list as it was given if it is not too long. Raises before a single one of it is read."""
    if isinstance(value, list | tuple | dict) and len(value) > most:
        raise PydanticCustomError("many", "{sentence}", {"sentence": sentence})
    return value


def _takes_none(record: type[BaseModel], key: str) -> bool:
    info = record.model_fields.get(key)
    return info is None or (not info.is_required() and info.default is None)


class _SpelledOut:
    """Tells other tools that a number may also be given as text."""

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {**handler(core), "type": ["number", "string"], "unit": "in"}


Length = Annotated[float, BeforeValidator(_read_length), _SpelledOut()]
"""Inches, given as a number or as the trade writes it."""
Degrees = Annotated[float, BeforeValidator(_read_angle)]
Number = Annotated[float, BeforeValidator(_read_plain_number)]
"""A plain number, as per cent."""
Pounds = Annotated[float, BeforeValidator(_read_number)]
Text = Annotated[str, BeforeValidator(_read_text), AfterValidator(_printable)]
Flag = StrictBool
Whole = StrictInt
ScrewShare = Annotated[Text, AfterValidator(_share)]
"""Screws that come with one hinge; a fraction where those of an opening do not divide evenly."""
Hinges = Annotated[StrictInt, Field(ge=0, le=1_000_000)]
ScrewCount = Annotated[StrictInt, Field(ge=0, le=10_000)]

ENTRY_A_WIDTH, ENTRY_A_WAY = "a width", "a way of hanging"
"""What an entry of a list may be that holds both; faults name the entry, not which of them it was read as."""

_BOUNDS = ("gt", "ge", "lt", "le")


def of_its_kind(rows: type[KindRow], key: str) -> Callable[[dict[str, Any]], Any]:
    """Return the factory of what a thing has where nobody said: the usual of its kind, from a table."""
    return lambda said: getattr(row_of(rows, said["kind"]), key) if "kind" in said else None


def field(
    title: str,
    plain: str = "",
    default: Any = None,
    *,
    help: str = "",
    left_out: str = "",
    usual: Callable[[dict[str, Any]], Any] | None = None,
    **bounds: float,
) -> Any:
    """Describe one field: its trade name, the plain words for it, its help, and the bounds in its own unit.

    `help` is one sentence: what it is measured from, or what it decides; a name that says all needs none.
    `left_out` is what an empty field means, in a word or two. `usual` gives the value of a field left out by
    what was said before it in the record; it does not count as said.
    """
    unknown = set(bounds) - set(_BOUNDS)
    if unknown:
        raise TypeError(f"no such bound: {sorted(unknown)}")
    told = {"plain": plain or title, "help": help, "left_out": left_out}
    if usual is not None:
        return Field(default_factory=usual, title=title, json_schema_extra=told, **bounds)  # type: ignore[call-overload,no-any-return,unused-ignore]
    return Field(default=default, title=title, json_schema_extra=told, **bounds)  # type: ignore[call-overload,no-any-return,unused-ignore]


def bounds_of(info: FieldInfo) -> dict[str, float]:
    """Return the bounds a field was given, by pydantic's names (gt, ge, lt, le)."""
    found: dict[str, float] = {}
    for constraint in info.metadata:
        for name in _BOUNDS:
            if (value := getattr(constraint, name, None)) is not None:
                found[name] = value
    return found


def unit_of(info: FieldInfo) -> str:
    """Return the unit a field's number is in: `in`, `degrees`, `lb`, or nothing."""
    readers = {"_read_length": " in", "_read_angle": " degrees", "_read_number": " lb"}
    for constraint in (*info.metadata, *_inner_metadata(info.annotation)):
        if isinstance(constraint, BeforeValidator):
            return readers.get(getattr(constraint.func, "__name__", ""), "")
    return ""


def _inner_metadata(annotation: Any) -> tuple[Any, ...]:
    """Return what an optional field's own type carries: `Length | None` keeps it one step in."""
    return tuple(mark for part in get_args(annotation) for mark in getattr(part, "__metadata__", ()))
