"""A job: what one project file holds."""

from dataclasses import dataclass
from pathlib import Path
from typing import Literal, Self

from pydantic import field_validator, model_validator
from pydantic_core import PydanticCustomError

from configurator.model.fields import Number, Record, Text, field
from configurator.model.hinge import Hinge
from configurator.model.opening import Opening
from configurator.model.revision import Revision
from configurator.model.words import WidthPolicy

FORMAT = "opening-project"
VERSION = 1
MOST_OPENINGS = 100_000


@dataclass(frozen=True, slots=True)
class Shop:
    """Who hands pages out, with a picture's file as its logo; kept with the user's preferences, in no job."""

    name: str = ""
    logo: Path | None = None


class JobFacts(Record):
    """Who the job is for, and what its specification asks of every hinge unless noted."""

    name: Text | None = field("job name")
    number: Text | None = field("job number")
    client: Text | None = field("client")
    prepared_by: Text | None = field("prepared by")
    date: Text | None = field("date")
    revision: Text | None = field("revision", "revision of the drawings that go out")
    notes: Text | None = field("job notes")
    standard_hinge: Hinge | None = field("the job's standard hinge")
    width_policy: WidthPolicy | None = field(
        "hinge width policy",
        "which hinge widths are taken",
        help="the narrowest stock width that works, or square hinges unless something asks otherwise",
        left_out="narrowest that works",
    )

    @property
    def asks_of_hinges(self) -> tuple[Hinge | None, WidthPolicy | None]:
        """What of the job's facts counts in every answer."""
        return self.standard_hinge, self.width_policy


class OrderFacts(Record):
    """What stands over an order, all of it the user's own words, and what it is priced from.

    `price_list` is the file of prices, from the folder of the job's file where it stands there. `margin` is
    the part of a quoted price that is not cost, in per cent.
    """

    supplier: Text | None = field("supplier")
    ship_to: Text | None = field("ship to")
    number: Text | None = field("order number")
    date: Text | None = field("order date")
    required: Text | None = field("required date")
    revision: Text | None = field("order revision")
    prepared_by: Text | None = field("prepared by")
    notes: Text | None = field("notes to the supplier")
    internal_notes: Text | None = field("internal notes", help="not on what goes out")
    price_list: Text | None = field("price list")
    margin: Number | None = field("margin", "margin of a quote, per cent", ge=0, lt=100)


class Job(Record):
    """One project file: its facts and its openings, marks unique."""

    format: Literal["opening-project"] = "opening-project"
    version: Literal[1] = 1
    job: JobFacts = field("job", default=JobFacts())
    order: OrderFacts = field("what stands over the order", default=OrderFacts())
    revisions: tuple[Revision, ...] = field("revisions", "orders that were frozen", ())
    openings: tuple[Opening, ...] = field("openings", default=())

    @field_validator("revisions")
    @classmethod
    def _numbers_go_up(cls, value: tuple[Revision, ...]) -> tuple[Revision, ...]:
        numbers = [revision.number for revision in value]
        if numbers != sorted(set(numbers)):
            raise PydanticCustomError("many", "revisions stand in the order of their numbers, each once")
        return value

    @field_validator("openings")
    @classmethod
    def _not_endless(cls, value: tuple[Opening, ...]) -> tuple[Opening, ...]:
        if len(value) > MOST_OPENINGS:
            raise PydanticCustomError("many", "a job may have up to 100,000 openings")
        return value

    @model_validator(mode="after")
    def _marks_are_unique(self) -> Self:
        seen: set[str] = set()
        for opening in self.openings:
            if opening.mark in seen:
                raise PydanticCustomError(
                    "mark", "the mark {mark} stands twice; each opening has its own", {"mark": opening.mark}
                )
            seen.add(opening.mark)
        return self
