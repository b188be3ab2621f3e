"""Which sheet was chosen, and its pages: of one opening or of all of them. No Qt here."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from configurator.drawing.pages.page import Page, Paper, Scale
from configurator.drawing.pages.sheets import sheet_maker
from configurator.model import JobFacts, Opening
from configurator.order.studied import NotStudied, study_or_fault
from configurator.study import Study
from configurator.units import Display, format_exact

KINDS: Mapping[str, str] = MappingProxyType(
    {
        "plan": "Plan at the hinge",
        "elevation": "Elevation, hinge locations",
        "prep": "Preparation for hinges",
        "before-after": "Before and after",
        "client": "Page for the client",
    }
)
"""The kinds of sheets in the order they are offered, and what the window calls them."""
ONE_WIDTH_OF = "plan"
"""The kind that can be drawn of one hinge width alone, which it then draws large."""


def width_words(width: float) -> str:
    """Name a hinge open width: hinges are sold by the inch, whatever lengths are shown in."""
    return f"{format_exact(width)} in hinge"


@dataclass(frozen=True, slots=True)
class SheetChoice:
    """What is to be laid out, and how; a scale of None is fitted, a width of None is every one compared.

    The hinge open width, inches, is asked of a plan only: the other sheets choose theirs.
    """

    kind: str
    paper: Paper
    scale: Scale | None
    display: Display
    width: float | None = None

    def page(self, study: Study, job: JobFacts, number: tuple[int, int] = (1, 1)) -> Page:
        """Return the sheet of one opening. Raises ValueError, in words, where it cannot be drawn so."""
        make = sheet_maker(self.kind)
        return make(self._narrowed(study), job, self.paper, self.scale, self.display, number)

    def _narrowed(self, study: Study) -> Study:
        if self.width is None or self.kind != ONE_WIDTH_OF:
            return study
        found = tuple(one for one in study.candidates if one.hinge_width == self.width)
        if not found:
            raise ValueError(f"{width_words(self.width)} is not among the widths compared")
        return replace(study, candidates=found)


def pages_of(
    openings: Sequence[Opening], job: JobFacts, choice: SheetChoice, not_drawn: list[str]
) -> Iterator[Page]:
    """Yield the sheet of each opening, studied and laid out when it is asked for.

    Of one that cannot be drawn, `not_drawn` is told the mark and why; the others keep their numbers.
    """
    for number, opening in enumerate(openings, 1):
        found = study_or_fault(opening, job)
        if isinstance(found, NotStudied):
            not_drawn.append(f"{opening.mark}: {found.fault}")
            continue
        try:
            page = choice.page(found, job, (number, len(openings)))
        except ValueError as error:
            not_drawn.append(f"{opening.mark}: {error}")
        else:
            yield page
