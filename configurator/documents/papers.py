"""Every paper that goes out of a counted order, by its kind: one list for the window and the command line."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal

from configurator.documents.document import Document
from configurator.documents.hardware_schedule import schedule_document
from configurator.documents.order import order_document
from configurator.documents.packing import Label, floor_labels, opening_labels
from configurator.documents.quote import quote_document, receiving_document
from configurator.documents.schedule import schedule_table
from configurator.documents.submittal import submittal_document
from configurator.model import Job
from configurator.order.prices import Priced
from configurator.order.revisions import standing
from configurator.order.take_off import TakeOff
from configurator.order.tally import Tally

QUOTES = ("quote", "cost")
LABELS = ("labels", "floor labels")
"""Kinds that are sheets of labels: these are PDF only."""


@dataclass(frozen=True, slots=True)
class Counted:
    """A job counted: its tallies, the order made of them, and what it costs where there are prices."""

    job: Job
    tallies: tuple[Tally, ...]
    order: TakeOff
    priced: Priced | None = None


class NoPaperError(ValueError):
    """A paper that cannot be made yet; the sentence says what it wants."""


def paper_of(kind: str, counted: Counted) -> Document:
    """Return the paper of a kind. Raises NoPaperError where prices or a margin are missing."""
    make = _PAPERS.get(kind)
    if make is None:
        raise NoPaperError(f"there is no paper {kind!r}")
    if missing := missing_for(kind, counted):
        raise NoPaperError(missing)
    return make(counted)


def missing_for(kind: str, counted: Counted) -> str:
    """Say what a paper still wants; empty where it can be made."""
    if kind not in QUOTES:
        return ""
    if counted.priced is None:
        return "a quote wants a price list, for what the hinges cost"
    if counted.job.order.margin is None:
        return "a quote wants a margin: the per cent of the price that is not cost"
    return ""


def labels_of(kind: str, counted: Counted) -> tuple[Label, ...]:
    """Return the labels of a kind: by opening, or by floor."""
    make = floor_labels if kind == "floor labels" else opening_labels
    return make(counted.tallies, counted.order, counted.priced)


def _order(counted: Counted) -> Document:
    revision = standing(counted.job, counted.order)
    return order_document(counted.order, counted.priced, revision, counted.job.order)


def _cost(counted: Counted) -> Document:
    margin = counted.job.order.margin
    assert counted.priced is not None, "looked after by `missing_for`"
    assert margin is not None, "looked after by `missing_for`"
    return quote_document(counted.order, counted.priced, Decimal(f"{margin:g}"), counted.job.order)


def _doors(counted: Counted) -> Document:
    heading = schedule_document(counted.tallies, counted.job.job).heading
    data, sheet = schedule_table(counted.tallies), schedule_table(counted.tallies, on_paper=True)
    return Document("Door schedule", heading, (data,), (sheet,), ())


def _hardware(counted: Counted) -> Document:
    whole = schedule_document(counted.tallies, counted.job.job)
    return Document("Hardware schedule", whole.heading, whole.data[1:], whole.sheets[1:], whole.notes)


_PAPERS: Mapping[str, Callable[[Counted], Document]] = {
    "order": _order,
    "supplier": lambda counted: _order(counted).going_out,
    "quote": lambda counted: _cost(counted).going_out,
    "cost": _cost,
    "receiving": lambda counted: receiving_document(counted.order, counted.priced, counted.job.order),
    "submittal": lambda counted: submittal_document(counted.tallies, counted.order),
    "doors": _doors,
    "hardware": _hardware,
}
