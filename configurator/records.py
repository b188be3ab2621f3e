"""Frozen records: the standard library's dataclass, made in a tenth of its time.

A standard frozen dataclass compiles six functions when it is declared, and two hundred are declared before
the first picture. Here `__init__` is compiled when the first record of its kind is made, and all kinds share
the rest. Fields, `replace`, `asdict`, equality, hash, copies, and what is refused are those of the standard
one, and a type checker sees that one. What may change is left to it.
"""

import dataclasses
from collections.abc import Callable
from operator import attrgetter
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:

    def dataclass(
        *, frozen: bool = False, slots: bool = False, eq: bool = True, kw_only: bool = False
    ) -> Any:
        """Make a class a record; the options are those of the standard one, all of them by name."""
        if not frozen:
            return dataclasses.dataclass(slots=slots, eq=eq, kw_only=kw_only)
        return lambda cls: _record(cls, slots, eq, kw_only)


def _record(cls: type, slots: bool, eq: bool, kw_only: bool) -> Any:
    made: Any = dataclasses.dataclass(init=False, repr=False, eq=False, slots=slots, kw_only=kw_only)(cls)
    made.__init__ = _first_init(made)
    made.__repr__ = _repr
    made.__setattr__, made.__delattr__ = _refuse_setting, _refuse_deleting
    if slots:
        made.__getstate__, made.__setstate__ = _state, _set_state
    if eq:
        values = _values_of([one.name for one in dataclasses.fields(made) if one.compare])
        made.__eq__ = lambda self, other: (
            values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented
        )
        made.__hash__ = lambda self: hash(values(self))
    return made


def _values_of(names: list[str]) -> Callable[[Any], tuple[Any, ...]]:
    read: Any = attrgetter(*names) if names else None
    return read if len(names) > 1 else (lambda record: (read(record),) if names else ())


def _first_init(made: Any) -> Any:
    """Return what compiles `__init__` when it is first called, and does the same from then on."""

    def first(self: Any, *given: Any, **named: Any) -> None:
        made.__init__ = _compiled_init(made)
        made.__init__(self, *given, **named)

    return first


def _compiled_init(made: Any) -> Any:
    names: dict[str, Any] = {"_set": object.__setattr__, "_missing": dataclasses.MISSING}
    plain: list[str] = []
    by_name: list[str] = []
    body = []
    for one in dataclasses.fields(made):
        value, default = one.name, ""
        if one.default_factory is not dataclasses.MISSING:
            names[f"_make_{one.name}"] = one.default_factory
            value, default = f"_make_{one.name}() if {one.name} is _missing else {one.name}", "=_missing"
        elif one.default is not dataclasses.MISSING:
            names[f"_usual_{one.name}"], default = one.default, f"=_usual_{one.name}"
        (by_name if one.kw_only else plain).append(one.name + default)
        body.append(f" _set(self, {one.name!r}, {value})")
    if hasattr(made, "__post_init__"):
        body.append(" self.__post_init__()")
    heading = ", ".join(("self", *plain, *(("*", *by_name) if by_name else ())))
    exec("\n".join((f"def __init__({heading}):", *body)), names)
    return names["__init__"]


def _repr(self: Any) -> str:
    fields = [one.name for one in dataclasses.fields(self) if one.repr]
    shown = ", ".join(f"{name}={getattr(self, name)!r}" for name in fields)
    return f"{type(self).__qualname__}({shown})"


def _refuse_setting(_: Any, name: str, __: Any) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_deleting(_: Any, name: str) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")


def _state(self: Any) -> list[Any]:
    return [getattr(self, one.name) for one in dataclasses.fields(self)]


def _set_state(self: Any, state: list[Any]) -> None:
    for one, value in zip(dataclasses.fields(self), state, strict=True):
        object.__setattr__(self, one.name, value)
