"""One way of hanging a door, as it was asked for: what it hangs on, and where it turns."""

from typing import Annotated, Any, Final, Self

from pydantic import Discriminator, Tag, model_validator
from pydantic_core import PydanticCustomError

from configurator.model.fields import ENTRY_A_WAY, ENTRY_A_WIDTH, Length, Record, field
from configurator.model.words import Acting, WayKind
from configurator.units import format_size

CENTRE_HUNG: Final[WayKind] = "centre-hung pivot"
NARROWEST, WIDEST = 1, 24
"""Open widths of a butt, inches."""


class Way(Record):
    """What a leaf hangs on and the axis it turns about, inches; what is left out has its usual place."""

    hung_on: WayKind = field("hung on", default=..., help="what the door hangs on in this comparison")
    axis_off_face: Length | None = field(
        "axis off the door's face",
        ge=-12,
        le=24,
        help="from the closed door's pull face: positive out of the door, negative inside it",
        left_out="usual place",
    )
    axis_from_heel: Length | None = field(
        "axis from the heel edge",
        ge=-24,
        le=120,
        help="from the door's hinge edge toward the latch: negative beyond the edge",
        left_out="usual place",
    )
    heel_radius: Length | None = field(
        "heel radius",
        gt=0,
        le=120,
        help="what the door's heel edge is rounded to, about the axis",
        left_out="square",
    )
    acting: Acting | None = field(
        "acting",
        "which ways it swings",
        help="of a centre-hung pivot: single swings to the pull side only",
        left_out="as is usual of its kind",
    )

    @property
    def words(self) -> str:
        """What it is called, with what was given of it: `offset pivot (3/4 off, 3/4 in)`."""
        parts = (
            (self.axis_off_face, "off"),
            (self.axis_from_heel, "in"),
            (self.heel_radius, "heel radius"),
        )
        told = ", ".join(f"{format_size(value)} {word}" for value, word in parts if value is not None)
        kind = f"single-acting {self.hung_on}" if self.acting == "single" else self.hung_on
        return f"{kind} ({told})" if told else kind

    @model_validator(mode="after")
    def _goes_together(self) -> Self:
        if self.acting is not None and self.hung_on != CENTRE_HUNG:
            raise PydanticCustomError(
                "needs",
                "only a centre-hung pivot is single or double acting by choice; a {kind} is so by its kind",
                {"field": "acting", "kind": self.hung_on},
            )
        if self.heel_radius is not None and (self.axis_from_heel or 1.0) <= 0.0:
            raise PydanticCustomError(
                "needs",
                "a heel is rounded about an axis that stands in from the heel edge",
                {"field": "heel_radius"},
            )
        return self


def _entry(value: Any) -> str:
    return ENTRY_A_WAY if isinstance(value, dict | Way) else ENTRY_A_WIDTH


Compared = Annotated[
    Annotated[Length, Tag(ENTRY_A_WIDTH)] | Annotated[Way, Tag(ENTRY_A_WAY)], Discriminator(_entry)
]
"""An entry of `compare`: a butt's open width, inches, or a way of hanging by its keys."""


def refuse_compared(entries: tuple[float | Way, ...]) -> None:
    """Raise a fault where an entry stands twice or is no width that a butt has."""
    if len(set(entries)) != len(entries):
        raise PydanticCustomError("compare", "the same hinge open width or way of hanging stands twice")
    for width in entries:
        if not isinstance(width, Way) and not NARROWEST <= width <= WIDEST:
            raise PydanticCustomError(
                "compare",
                "a hinge open width is from 1 to 24 in; {width} was given",
                {"width": format_size(width)},
            )
