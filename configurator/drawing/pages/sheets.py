"""The kinds of sheets there are, each in its own module, imported when it is first asked for."""

from importlib import import_module
from typing import Protocol, cast

from configurator.drawing.pages.page import Page, Paper, Scale
from configurator.model import JobFacts
from configurator.study.records import Study
from configurator.units import Display

SHEETS = {
    "plan": ("plan_page", "plan_page"),
    "elevation": ("elevation_page", "elevation_page"),
    "prep": ("preparation_page", "preparation_page"),
    "client": ("client_page", "client_page"),
    "before-after": ("before_after_page", "before_after_page"),
}
"""The word for a kind of sheet to its module in this folder and the function that lays it out."""


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


def sheet_maker(kind: str) -> MakesPage:
    """Return what lays out sheets of a kind. Raises KeyError for a word that is not in `SHEETS`."""
    module, function = SHEETS[kind]
    return cast(MakesPage, getattr(import_module(f"configurator.drawing.pages.{module}"), function))
