"""Reads the CSV files of the program's own: every file once, each cell as its row's field is declared."""

import csv
import types
from collections.abc import Mapping
from dataclasses import fields
from functools import cache
from typing import Any, Literal, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from configurator.resource_files import resource_path
from configurator.tables.kinds import KINDS, KindRow, Row


class TableError(ValueError):
    """A file of the program's own is not as it should be; the message names file, line and column."""


R = TypeVar("R")
T = TypeVar("T", bound=Row)


def table(kind: type[T]) -> tuple[T, ...]:
    """Return all rows of a kind under `resources/tables`, in the order of the file.

    Raises TableError when the file is not as it should be, FileNotFoundError when it is missing.
    """
    return cast(tuple[T, ...], _table(kind))  # type: ignore[arg-type]


@cache
def _table(kind: type[Any]) -> tuple[Any, ...]:
    tables: Mapping[str, type[Row]] = KINDS
    if kind not in KINDS.values():
        from configurator.tables.rows import ROWS  # loaded on use: the window's start wants kinds only

        tables = ROWS
    return resource_rows("tables", next(name for name, row in tables.items() if row is kind), kind)


def resource_rows(folder: str, name: str, kind: type[R]) -> tuple[R, ...]:
    """Return all rows of `resources/<folder>/<name>.csv`; each file is read once.

    A row is a frozen dataclass with a field a column: text, a number, yes or no, one of a Literal, or a tuple
    of what stands apart by spaces. An empty cell is None where the field may be, and else refused. Raises as
    `table` does.
    """
    return cast(tuple[R, ...], _rows(folder, name, kind))  # type: ignore[arg-type]


@cache
def _rows(folder: str, name: str, kind: type[Any]) -> tuple[Any, ...]:
    return read_table(resource_path(folder, f"{name}.csv").read_text("utf-8"), name, kind)


def read_table(text: str, name: str, kind: type[R]) -> tuple[R, ...]:
    """Read one table's text; `name` is what a fault calls it. Raises TableError naming line and column.

    Lines that begin with # and a space say what the table is.
    """
    reader = csv.DictReader(line for line in text.splitlines() if not line.startswith("# "))
    wanted = _types_of(kind)  # type: ignore[arg-type]
    if set(reader.fieldnames or ()) != set(wanted):
        raise TableError(f"{name}.csv: the columns must be {', '.join(sorted(wanted))}")
    rows = tuple(_row(cells, f"{name}.csv line {reader.line_num}", kind) for cells in reader)
    if not rows:
        raise TableError(f"{name}.csv: it has no rows")
    return rows


K = TypeVar("K", bound=KindRow)


def row_of(table_of: type[K], kind: str) -> K:
    """Return the row of one kind. Raises KeyError when there is no such kind."""
    return cast(K, _by_kind(table_of)[kind])  # type: ignore[arg-type]


@cache
def _by_kind(table_of: type[KindRow]) -> Mapping[str, KindRow]:
    return {row.kind: row for row in table(table_of)}


@cache
def _types_of(kind: type[Any]) -> Mapping[str, Any]:
    return {
        name: of for name, of in get_type_hints(kind).items() if name in {one.name for one in fields(kind)}
    }


def _row(cells: Mapping[str, str | None], where: str, kind: type[R]) -> R:
    if None in cells or None in cells.values():
        raise TableError(f"{where}: it has too many or too few cells")
    wanted: Mapping[str, Any] = _types_of(kind)  # type: ignore[arg-type]
    values = {name: _cell(cells[name] or "", of, f"{where}, {name}") for name, of in wanted.items()}
    return kind(**values)


def _cell(cell: str, wanted: Any, where: str) -> Any:
    cell = cell.strip()
    options = get_args(wanted) if get_origin(wanted) in (Union, types.UnionType) else (wanted,)
    if not cell and type(None) in options:
        return None
    if get_origin(wanted) is tuple:
        return tuple(_converted(part, get_args(wanted)[0], where) for part in cell.split())
    return _converted(cell, options[0], where)


def _converted(cell: str, wanted: Any, where: str) -> Any:
    if get_origin(wanted) is Literal:
        if cell not in get_args(wanted):
            raise TableError(f"{where}: “{cell}” is none of {', '.join(get_args(wanted))}")
        return cell
    if wanted is bool:
        return _converted(cell, Literal["yes", "no"], where) == "yes"
    try:
        value = wanted(cell)
    except ValueError:
        raise TableError(f"{where}: “{cell}” is not a number") from None
    if value == "":
        raise TableError(f"{where}: the cell is empty")
    return value
