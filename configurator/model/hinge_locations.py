"""Where along the door's height the hinges sit: by which rule, or at typed places; inches."""

from typing import Self

from pydantic import model_validator
from pydantic_core import PydanticCustomError

from configurator.model.fields import Length, Record, field
from configurator.model.words import LocationRule

MOST_TYPED = 24
_FIELD = {"field": "tops"}


class HingeLocations(Record):
    """A rule for all hinges, or the top of every hinge below the head rabbet, from the top one down."""

    rule: LocationRule | None = field("hinge location rule", "how far from top and floor hinges sit")
    tops: tuple[Length, ...] | None = field(
        "tops of hinges below head rabbet", "from the frame's head down to the top of each hinge"
    )

    @model_validator(mode="after")
    def _go_down(self) -> Self:
        tops = self.tops or ()
        if len(tops) > MOST_TYPED:
            raise PydanticCustomError("many", "the places of up to 24 hinges can be typed", _FIELD)
        if any(top < 0 or top > 300 for top in tops):
            raise PydanticCustomError(
                "needs", "tops of hinges are from 0 to 300 in below the head rabbet", _FIELD
            )
        if list(tops) != sorted(set(tops)):
            raise PydanticCustomError(
                "needs",
                "tops of hinges are given from the top hinge down, each farther below than the last",
                _FIELD,
            )
        return self
