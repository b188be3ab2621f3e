"""Frozen records: the standard library's dataclass, declared in a tenth of its time and made in a third.

A standard frozen dataclass compiles six functions when it is declared, and two hundred are declared before
the first picture. Here one is compiled, when the first record of its kind is made, and all kinds share the
rest. A standard one also asks leave for each of its fields; of some four hundred records of a study that is a
tenth. Fields, `replace`, `asdict`, equality, hash, copies, and what is refused are those of the standard one,
and a type checker sees that one. What may change is left to it.
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
    made.__new__ = _first_new(made, slots)
    made.__repr__, made.__reduce__ = _repr, _reduce
    made.__setattr__, made.__delattr__ = _refuse_setting, _refuse_deleting
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


def _first_new(made: Any, slots: bool) -> Any:
    """Return what compiles `__new__` when it is first called, and does the same from then on."""

    def first(cls: Any, *given: Any, **named: Any) -> Any:
        made.__new__ = staticmethod(_compiled_new(made, slots))
        return made.__new__(cls, *given, **named)

    return staticmethod(first)


def _compiled_new(made: Any, slots: bool) -> Any:
    """Return the function that makes a record: filled while it is still of an open kind, then closed."""
    names: dict[str, Any] = {"_empty": object.__new__, "_open": _opened(made, slots)}
    plain: list[str] = []
    by_name: list[str] = []
    body = [" self = _empty(_open)"]
    for one in dataclasses.fields(made):
        default, value = _default_of(one, names)
        (by_name if one.kw_only else plain).append(one.name + default)
        body.append(f" self.{one.name} = {value}")
    body.append(" self.__class__ = _cls")
    if hasattr(made, "__post_init__"):
        body.append(" self.__post_init__()")
    heading = ", ".join(("_cls", *plain, *(("*", *by_name) if by_name else ())))
    exec("\n".join((f"def __new__({heading}):", *body, " return self")), names)
    return names["__new__"]


def _default_of(one: dataclasses.Field[Any], names: dict[str, Any]) -> tuple[str, str]:
    """Return how a field's default and its value are written, adding what they go by to the names."""
    if one.default_factory is not dataclasses.MISSING:
        names[f"_make_{one.name}"], names["_missing"] = one.default_factory, dataclasses.MISSING
        return "=_missing", f"_make_{one.name}() if {one.name} is _missing else {one.name}"
    if one.default is not dataclasses.MISSING:
        names[f"_usual_{one.name}"] = one.default
        return f"=_usual_{one.name}", one.name
    return "", one.name


def _opened(made: Any, slots: bool) -> type:
    """Return the same kind, except that it can be set."""
    own = {"__slots__": vars(made)["__slots__"]} if slots else {}
    return type(made.__name__, made.__bases__, {**own, "__setattr__": object.__setattr__})


def _repr(self: Any) -> str:
    fields = [one.name for one in dataclasses.fields(self) if one.repr]
    shown = ", ".join(f"{name}={getattr(self, name)!r}" for name in fields)
    return f"{type(self).__qualname__}({shown})"


def _refuse_setting(_: Any, name: str, __: Any) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_deleting(_: Any, name: str) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")


def _reduce(self: Any) -> Any:
    return _remade, (type(self), {one.name: getattr(self, one.name) for one in dataclasses.fields(self)})


def _remade(made: Any, values: dict[str, Any]) -> Any:
    return made(**values)
