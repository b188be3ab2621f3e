"""The demo jobs' sheets on the smallest papers, read back: no text over another, none out of its frame."""

from functools import cache

import pytest

from configurator.drawing.pages.page import Page, paper_named
from configurator.drawing.sheets import SHEETS, sheet_maker
from configurator.export.pages import pages_as_bytes
from configurator.model import Job
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import study
from configurator.units import Display
from tests.export.measuring import read_pdf
from tests.export.test_measured_pdf import left_their_frame, on_the_frame, overlapping

DEMOS = ("kestrel_point.json", "pairs_and_dutch.json")
SMALL = (("Letter", Display()), ("A4", Display(metric=True)))
pytestmark = pytest.mark.parametrize("kind", SHEETS)


@cache
def jobs() -> tuple[Job, ...]:
    return tuple(load(resource_path("demo_openings", name)) for name in DEMOS)


def pages(kind: str) -> list[Page]:
    """Return a sheet of every opening, in inches and millimetres by turns."""
    make = sheet_maker(kind)
    openings = [(job.job, opening) for job in jobs() for opening in job.openings]
    return [
        make(study(opening, facts), facts, paper_named(paper), None, display)
        for number, (facts, opening) in enumerate(openings)
        for paper, display in [SMALL[number % 2]]
    ]


def test_every_text_keeps_to_itself_and_to_its_frame(kind):
    made = pages(kind)
    read = read_pdf(pages_as_bytes(made, ".pdf"))
    wrong = {
        page.title: found
        for page, sheet in zip(made, read, strict=True)
        if (found := [*overlapping(sheet), *left_their_frame(page, sheet), *on_the_frame(page, sheet)])
    }
    assert len(made) > 20
    assert wrong == {}
