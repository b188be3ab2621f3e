"""The user's own price list, CSV or XLSX: columns that tell products apart, and a price for each row."""

import csv
import io
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any, Literal, get_args

from configurator.cells import unshield
from configurator.long_work import run
from configurator.model import Job
from configurator.model.faults import Fault
from configurator.model.words import Alloy, BaseMetal, Bearing, Corner, Hand, Mounting, Pin, Tip, Weight
from configurator.order.other_ways import ITEMS
from configurator.rules.hinge_items import ELECTRIC_HINGE, HINGE, HingeItem
from configurator.units import TOLERANCE, LengthError, parse_length

PriceUnit = Literal["each", "pair", "set", "foot"]
_OF_NO_BUTT = ("set", "foot")
Rows = Sequence[tuple[int, Sequence[str]]]
"""Rows that are not blank, each with its line in the file."""
LARGEST_FILE = 8 * 1024 * 1024
LARGEST_PRICE = Decimal(1_000_000)
MOST_PLACES = 4
MOST_FAULTS = 50
LARGEST_PACK = 10_000
LONGEST_DESCRIPTION = 300
NOT_OF_A_PRODUCT = {"fire": "a label", "screws": "other screws"}
"""Columns that tell no product apart, and what they speak of."""
ALSO_CALLED: Mapping[str, str] = {
    "part": "part_number",
    "part_no": "part_number",
    "part_no.": "part_number",
    "part_#": "part_number",
    "item_number": "part_number",
    "item_no": "part_number",
    "sku": "part_number",
    "desc": "description",
    "pack_size": "pack",
    "per_pack": "pack",
    "per_box": "pack",
    "price_source": "source",
    "source_of_price": "source",
    "unit_price": "price",
    "cost": "price",
    "price_unit": "unit",
}
"""What lists call a column otherwise."""


class PriceListError(Exception):
    """A price list that cannot be used; `faults` has a sentence for each reason, with its line and column."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = tuple(faults)


@dataclass(frozen=True, slots=True)
class PriceRow:
    """One row: its line in the file, what it asks of a product (nothing for a blank cell), and the price.

    `pack` is how many hinges come in one box, None where the list does not say.
    """

    line: int
    asks: Mapping[str, Any]
    price: Decimal
    unit: PriceUnit
    part_number: str = ""
    description: str = ""
    pack: int | None = None
    source: str = ""

    def fits(self, hinge: HingeItem) -> bool:
        """Say whether a hinge is all that the row asks; upper and lower case are the same."""
        return all(_same(value, _of(hinge, column)) for column, value in self.asks.items())


@dataclass(frozen=True, slots=True)
class PriceList:
    """All rows of a list, and the currency they are in ("" where it does not say).

    `passed_over` are the columns that were not read.
    """

    rows: tuple[PriceRow, ...]
    currency: str
    passed_over: tuple[str, ...] = ()

    def words(self) -> str:
        """Say which columns were passed over; empty for none."""
        if not self.passed_over:
            return ""
        names = ", ".join(name + _why_passed_over(name) for name in self.passed_over)
        return f"Passed over in the price list: {names}."


def _why_passed_over(name: str) -> str:
    of = NOT_OF_A_PRODUCT.get(name)
    return f" ({of}: the same product)" if of else ""


def load_prices(path: Path) -> PriceList:
    """Read a price list. Raises PriceListError with a sentence for every fault."""
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise _refusal("", f"{path.name} is larger than {LARGEST_FILE // 2**20} MB; no price list is")
        data = path.read_bytes()
    except OSError as error:
        raise _refusal(
            "", f"{path.name} could not be read: {(error.strerror or str(error)).lower()}"
        ) from None
    return _read(_workbook_rows(path)) if path.suffix.lower() == ".xlsx" else parse_prices(data)


def _workbook_rows(path: Path) -> Rows:
    from configurator.intake.sheet import IntakeError, sheet_steps

    try:
        return [(row.line, row.cells) for row in run(sheet_steps(path)).rows]
    except IntakeError as error:
        raise _refusal("", str(error)) from None


def named_from(prices: Path, job_file: Path | None) -> str:
    """Return how a job remembers its price list: from the folder of its file where the list stands there."""
    whole = prices.absolute()
    if job_file is None:
        return str(whole)
    folder = job_file.absolute().parent
    return whole.relative_to(folder).as_posix() if whole.is_relative_to(folder) else str(whole)


def with_prices_from(job: Job, before: Path | None, after: Path) -> Job:
    """Return a job that finds its price list from another place of its file; `before` is the one it had.

    What is not there from the old place is left as it is.
    """
    named = job.order.price_list
    if named is None or before is None or not (prices := before.absolute().parent / named).is_file():
        return job
    again = named_from(prices, after)
    return (
        job
        if again == named
        else job.model_copy(update={"order": job.order.model_copy(update={"price_list": again})})
    )


def parse_prices(data: bytes) -> PriceList:
    """Read a price list from the bytes of its file. Raises PriceListError."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise _refusal("", "this is not a price list: it is not text (UTF-8)") from None
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=_delimiter(text), strict=True)
    try:
        table: Rows = [(reader.line_num, row) for row in reader if any(cell.strip() for cell in row)]
    except csv.Error as error:
        raise _refusal(f"line {reader.line_num}", f"this is not a CSV file: {error}") from None
    return _read(table)


def _read(table: Rows) -> PriceList:
    """Return the list of a table's rows, the first of them the names of its columns."""
    if not table:
        raise _refusal("", "the price list is empty; its first line names the columns")
    names = _columns(table[0][1])
    passed_over = tuple(dict.fromkeys(name for name in names if name and name not in _COLUMNS))
    return _list(names, table[1:], passed_over)


def _delimiter(text: str) -> str:
    """Return what stands between the names of the columns; in many countries it is a semicolon."""
    first = text.strip("\r\n").partition("\n")[0]
    return max(",;\t", key=first.count)


def _columns(cells: Sequence[str]) -> list[str]:
    given = [unshield(cell).strip().lower().replace(" ", "_")[:40] for cell in cells]
    names = [ALSO_CALLED.get(name, name) if ALSO_CALLED.get(name) not in given else name for name in given]
    twice = [name for name in names if name in _COLUMNS and names.count(name) > 1]
    faults = [Fault("line 1", f"the column {name!r} stands twice") for name in twice]
    if "price" not in names:
        faults.append(Fault("line 1", "there is no column named price"))
    if faults:
        raise PriceListError(list(dict.fromkeys(faults)))
    return names


def _list(
    columns: Sequence[str], table: Sequence[tuple[int, Sequence[str]]], passed_over: tuple[str, ...]
) -> PriceList:
    faults: list[Fault] = []
    rows: list[PriceRow] = []
    currencies: dict[str, int] = {}
    for line, cells in table:
        try:
            values = _values(columns, line, cells)
        except PriceListError as error:
            faults += error.faults
            continue
        currencies.setdefault(values.pop("currency", ""), line)
        price, unit = values.pop("price"), values.pop("unit", "each")
        named = {key: values.pop(key) for key in _NAMED if key in values}
        rows.append(PriceRow(line, values, price, unit, **named))
    faults += [*_asked_twice(rows), *_mixed(currencies)]
    if faults:
        more = (
            [Fault("", f"and {len(faults) - MOST_FAULTS} more faults")] if len(faults) > MOST_FAULTS else []
        )
        raise PriceListError([*faults[:MOST_FAULTS], *more])
    return PriceList(tuple(rows), next(iter(currencies), ""), passed_over)


def _values(columns: Sequence[str], line: int, cells: Sequence[str]) -> dict[str, Any]:
    """Return what one row gives, blank cells left out; a size is a height and a width."""
    if len(cells) > len(columns):
        raise _refusal(f"line {line}", f"it has {len(cells)} cells and the first line has {len(columns)}")
    faults: list[Fault] = []
    found: dict[str, Any] = {}
    given = dict(zip(columns, (unshield(cell).strip() for cell in cells), strict=False))
    for column, cell in given.items():
        if cell and column in _COLUMNS:
            try:
                found[column] = _COLUMNS[column](cell)
            except ValueError as error:
                faults.append(Fault(f"line {line}, {column.replace('_', ' ')}", str(error)))
    if not given.get("price"):
        faults.append(Fault(f"line {line}, price", "the price is missing"))
    if found.get("unit") in _OF_NO_BUTT and found.get("item") not in ITEMS:
        words = f"by the {found['unit']} is sold what is no butt: name it in the column item"
        faults.append(Fault(f"line {line}, unit", words))
    faults += _split_size(found, line)
    if faults:
        raise PriceListError(faults)
    return found


def _split_size(found: dict[str, Any], line: int) -> Iterator[Fault]:
    height, width = found.pop("size", (None, None))
    for column, value in (("height", height), ("width", width)):
        if value is not None and not _same(found.setdefault(column, value), value):
            yield Fault(
                f"line {line}, size", f"it and the column {column.replace('_', ' ')} do not say the same"
            )


def _asked_twice(rows: Sequence[PriceRow]) -> Iterator[Fault]:
    seen: dict[Any, int] = {}
    for row in rows:
        key = frozenset((column, _folded(value)) for column, value in row.asks.items())
        if (first := seen.setdefault(key, row.line)) != row.line:
            yield Fault(f"line {row.line}", f"it asks for the same hinges as line {first}; keep one of them")


def _mixed(currencies: Mapping[str, int]) -> Iterator[Fault]:
    if len(currencies) > 1:
        (first, _), (other, line), *_ = currencies.items()
        yield Fault(f"line {line}, currency", f"it is {other or 'blank'} here and {first or 'blank'} above")


def _same(wanted: Any, has: Any) -> bool:
    if isinstance(wanted, float) and isinstance(has, float):
        return abs(wanted - has) <= TOLERANCE
    return bool(_folded(wanted) == _folded(has))


def _folded(value: Any) -> Any:
    return value.casefold() if isinstance(value, str) else value


def _of(hinge: HingeItem, column: str) -> Any:
    return getattr(hinge, column)


def _length(cell: str) -> float:
    try:
        length = parse_length(cell)
    except LengthError as error:
        raise ValueError(str(error)) from None
    if length <= 0:
        raise ValueError(f"a length is more than 0; {cell[:40]} was given")
    return length


def read_hinge_size(cell: str) -> tuple[float, float]:
    """Read a hinge size, as `4-1/2 x 4`: height and width, inches. Raises ValueError."""
    parts = cell.lower().split("x")
    if len(parts) != 2:
        raise ValueError(f"a hinge size is height x width, as 4-1/2 x 4; {cell[:40]!r} was given")
    return _length(parts[0]), _length(parts[1])


def _number(cell: str) -> int:
    if not cell.isdecimal() or len(cell) > 4:
        raise ValueError(f"a whole number is wanted; {cell[:40]!r} was given")
    return int(cell)


def _pack(cell: str) -> int:
    number = _number(cell)
    if not 1 <= number <= LARGEST_PACK:
        raise ValueError(f"a pack holds from 1 to {LARGEST_PACK:,} hinges; {cell} was given")
    return number


def _flag(cell: str) -> bool:
    words = {"yes": True, "true": True, "no": False, "false": False}
    if cell.lower() not in words:
        raise ValueError(f"yes or no is wanted; {cell[:40]!r} was given")
    return words[cell.lower()]


def _price(cell: str) -> Decimal:
    try:
        price = Decimal(cell)
    except InvalidOperation:
        price = Decimal("NaN")
    if not price.is_finite() or "e" in cell.lower() or "_" in cell:
        raise ValueError(f"a price is a number such as 4.25; {cell[:40]!r} was given")
    if not 0 <= price <= LARGEST_PRICE:
        raise ValueError(f"a price is from 0 to {LARGEST_PRICE:,}; {cell[:40]} was given")
    if -int(price.as_tuple().exponent) > MOST_PLACES:
        raise ValueError(f"a price has up to {MOST_PLACES} decimals; {cell[:40]} was given")
    return price


def _text(cell: str) -> str:
    if len(cell) > 100:
        raise ValueError("it is longer than 100 characters")
    return cell


def _description(cell: str) -> str:
    if len(cell) > LONGEST_DESCRIPTION:
        raise ValueError(f"it is longer than {LONGEST_DESCRIPTION} characters")
    return cell


def _one_of(*words: str) -> Callable[[str], str]:
    def read(cell: str) -> str:
        if cell.lower() not in words:
            raise ValueError(f"it is one of {', '.join(words)}; {cell[:40]!r} was given")
        return cell.lower()

    return read


def _hand(cell: str) -> str:
    return _one_of(*(hand.lower() for hand in get_args(Hand)))(cell).upper()


_COLUMNS: Mapping[str, Callable[[str], Any]] = {
    "item": _one_of(HINGE, ELECTRIC_HINGE, *ITEMS),
    "size": read_hinge_size,
    "height": _length,
    "width": _length,
    "type": _text,
    "mounting": _one_of(*get_args(Mounting)),
    "weight": _one_of(*get_args(Weight)),
    "bearing": _one_of(*get_args(Bearing)),
    "leaf_thickness": _length,
    "knuckles": _number,
    "base_metal": _one_of(*get_args(BaseMetal)),
    "alloy": _one_of(*get_args(Alloy)),
    "finish_bhma": _text,
    "finish_us": _text,
    "pin": _one_of(*get_args(Pin)),
    "security_stud": _flag,
    "tip": _one_of(*get_args(Tip)),
    "corner": _one_of(*get_args(Corner)),
    "hand": _hand,
    "wires": _number,
    "part_number": _text,
    "description": _description,
    "pack": _pack,
    "source": _text,
    "price": _price,
    "unit": _one_of(*get_args(PriceUnit)),
    "currency": _text,
}


_NAMED = ("part_number", "description", "pack", "source")
"""Columns that ask nothing of a product: what it is called and how it comes."""


def _refusal(field: str, message: str) -> PriceListError:
    return PriceListError([Fault(field, message)])
