"""Lines that are nearly alike: a slip in one opening often makes a line that differs in one thing only."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields
from typing import Any

from configurator.order.lines import OrderLine
from configurator.order.saying import Said, named
from configurator.rules.finding import finding
from configurator.rules.hinge_items import HingeItem
from configurator.tables import practice

DIFFERENCES: Mapping[str, tuple[str, ...]] = {
    "mounting": ("mounting",),
    "weight": ("weight", "leaf_thickness", "type"),
    "bearing": ("bearing", "type"),
    "leaf thickness": ("leaf_thickness",),
    "type": ("type",),
    "knuckles": ("knuckles",),
    "alloy": ("alloy",),
    "finish": ("finish_bhma", "finish_us"),
    "pin": ("pin",),
    "security stud": ("security_stud",),
    "tip": ("tip",),
    "corner": ("corner",),
    "screws": ("screws",),
}
"""What a slip may be in, and the fields that follow from it; widths are for the uniform findings."""
_ALL = tuple(each.name for each in fields(HingeItem))


def near_alike(lines: Sequence[OrderLine]) -> tuple[Said, ...]:
    """Return a note for every group of lines that differ in one thing only, naming what each has."""
    return tuple(said for name, keys in DIFFERENCES.items() for said in _differing_in(name, keys, lines))


def _differing_in(name: str, keys: tuple[str, ...], lines: Sequence[OrderLine]) -> Iterator[Said]:
    others = tuple(key for key in _ALL if key not in keys)
    groups: dict[tuple[Any, ...], list[OrderLine]] = {}
    for line in lines:
        groups.setdefault(tuple(getattr(line.hinge, key) for key in others), []).append(line)
    for group in groups.values():
        if len({getattr(line.hinge, keys[0]) for line in group}) == len(group) > 1:
            yield _note(name, keys[0], group)


def _note(name: str, key: str, group: Sequence[OrderLine]) -> Said:
    numbers = " and ".join(str(line.number) for line in group)
    each = "; ".join(f"{_value(line, key)} for {named(list(line.by_mark))}" for line in group)
    verb = "differ only in" if len(group) == 2 else "differ among them only in"
    message = f"Lines {numbers} {verb} {name}: {each}. Check that this is wanted, or make them one line."
    marks = tuple(mark for line in group for mark in line.by_mark)
    return Said(
        finding("lines nearly alike", "note", message, practice("lines_alike"), lines=len(group)), marks
    )


def _value(line: OrderLine, key: str) -> str:
    if key == "screws":
        return line.hinge.screw_kinds
    value = getattr(line.hinge, key)
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "none known" if value is None else f"{value:g}" if isinstance(value, float) else str(value)
