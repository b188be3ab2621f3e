"""The kinds of sheets there are, each in its own module, imported when it is first asked for."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import Protocol

from configurator.drawing.pages.page import Page, Paper, Scale
from configurator.model import Job, JobFacts, Revision
from configurator.order.revisions import issues_of
from configurator.study import Study
from configurator.units import Display


class MakesPage(Protocol):
    """Lays out one sheet of an opening; a scale of None is fitted, `number` is sheet and sheets."""

    def __call__(
        self,
        study: Study,
        job: JobFacts,
        paper: Paper,
        scale: Scale | None,
        display: Display,
        number: tuple[int, int] = (1, 1),
    ) -> Page:
        """Return the page. Raises ValueError where the scale asked for does not fit the paper."""


def _plan() -> MakesPage:
    from configurator.drawing.pages.plan_page import plan_page

    return plan_page


def _elevation() -> MakesPage:
    from configurator.drawing.pages.elevation_page import elevation_page

    return elevation_page


def _preparation() -> MakesPage:
    from configurator.drawing.preparation.preparation_page import preparation_page

    return preparation_page


def _sections() -> MakesPage:
    from configurator.drawing.sections.sections_page import sections_page

    return sections_page


def _client() -> MakesPage:
    from configurator.drawing.client.client_page import client_page

    return client_page


def _before_after() -> MakesPage:
    from configurator.drawing.client.before_after_page import before_after_page

    return before_after_page


SHEETS: Mapping[str, Callable[[], MakesPage]] = MappingProxyType(
    {
        "plan": _plan,
        "elevation": _elevation,
        "prep": _preparation,
        "sections": _sections,
        "client": _client,
        "before-after": _before_after,
    }
)
"""The word for a kind of sheet, to what imports the function that lays it out."""


FOR_A_CLIENT = frozenset({"client", "before-after"})
"""Sheets that show door and frame for people, not as parts to keep."""


def sheet_maker(kind: str, revisions: Sequence[Revision] = ()) -> MakesPage:
    """Return what lays out sheets of a kind, with a table of the job's revisions where there are some.

    Raises KeyError for a word that is not in `SHEETS`.
    """
    make = SHEETS[kind]()
    if kind in FOR_A_CLIENT:
        return make

    def of_opening(
        study: Study,
        job: JobFacts,
        paper: Paper,
        scale: Scale | None,
        display: Display,
        number: tuple[int, int] = (1, 1),
    ) -> Page:
        issued = replace(study, issues=issues_of(study.opening, revisions)) if revisions else study
        page = make(issued, job, paper, scale, display, number)
        return replace(page, opening=opening_tags(study, display))

    return of_opening


def plans_of_job(
    studies: Iterable[Study], job: Job, paper: Paper, scale: Scale | None, display: Display
) -> Iterator[Page]:
    """Yield plan sheets with several openings where they fit. Raises ValueError as `sheet_maker`'s do."""
    from configurator.drawing.pages.job_pages import plans_together

    make = sheet_maker("plan", job.revisions)

    def alone(study: Study, number: int) -> Page:
        return make(study, job.job, paper, scale, display, (number, 0))

    return plans_together(studies, job.job, paper, scale, display, alone, opening_tags, job.revisions)


def opening_tags(study: Study, display: Display) -> tuple[tuple[str, str], ...]:
    """Return what door, frame and hinge of a drawing carry: mark, hand, opening size and hinge."""
    parts = [leaf.parts for leaf in study.specification.leaves if "width" in leaf.parts]
    hinges = [f"{display.size(one['height'].value, one['width'].value)} hinge" for one in parts]
    return (
        ("MARK", study.opening.mark),
        ("HAND", study.opening.hand or "not given"),
        ("SIZE", display.opening(study.filled.opening_width, study.filled.opening_height)),
        ("HINGE", ", ".join(dict.fromkeys(hinges))),
    )
