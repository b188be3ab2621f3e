"""Pages and plans as a file: PDF, SVG, DXF or PNG by its ending, put there whole or not at all.

A format is one module here; each brings a library of its own and is imported when first used.
"""

from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from types import MappingProxyType

from configurator.drawing.base.style import inks
from configurator.drawing.pages.page import Page
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups, plan_sheet
from configurator.export.painting import Picture
from configurator.model import JobFacts
from configurator.project_file import write_whole
from configurator.study import Study
from configurator.units import Display

OF_MANY_PAGES = (".pdf", ".dxf")
"""The formats that hold more than one page; the others are given just one."""
PAGE_DPI = 200.0
PLAN_SIZE = (864.0, 540.0)
"""Points: 12 by 7-1/2 in."""
PLAN_DPI = 144.0
_NO_FACTS = JobFacts()


def pages_as_bytes(pages: Iterable[Page], ending: str) -> bytes:
    """Return pages in the format of an ending such as `.pdf`; always the same bytes for the same pages.

    Pages are taken one at a time, so that whoever makes them may tell how far it is, or stop by raising.
    Raises ValueError for any other ending, and for several pages in a format of one.
    """
    write = _OF_PAGES.get(ending.lower())
    if write is None:
        raise ValueError(f"a sheet ends in {', '.join(PAGE_FORMATS)}; {ending or 'nothing'} was given")
    return write(pages)


def write_pages(pages: Iterable[Page], path: Path) -> None:
    """Write pages to a file in the format of its ending.

    Raises ValueError as `pages_as_bytes`, OSError when the file cannot be written.
    """
    write_whole(path, pages_as_bytes(pages, path.suffix))


def write_plan(
    study: Study,
    path: Path,
    angle: float,
    display: Display,
    dark: bool = False,
    job: JobFacts = _NO_FACTS,
    plain: bool = False,
    swept: bool = False,
) -> None:
    """Write every candidate's plan side by side with the leaves at `angle` degrees, on a sheet of one size.

    The format goes by the ending: .png, .svg or .pdf. The foot names the opening and what is known of the
    job; `plain` letters it in plain words, `swept` shows what leaf and hardware sweep. Raises
    ValueError for any other ending, OSError when the file cannot be written.
    """
    write = _OF_PLANS.get(path.suffix.lower())
    if write is None:
        raise ValueError(f"a picture ends in {', '.join(PLAN_FORMATS)}; {path.name} was given")
    sheet = plan_sheet(study, display, *PLAN_SIZE, job, plain, swept)
    groups = (*sheet.still, *moving_groups(sheet, angle), *sheet.notes, *moving_note_groups(sheet, angle))
    write_whole(path, write(Picture(study.opening.mark, *PLAN_SIZE, groups, inks()["paper"], dark)))


def picture_of(page: Page) -> Picture:
    """Return a page as it is printed: on white."""
    return Picture(page.title, *page.paper.points, page.groups, logo=page.logo)


def _only_picture(pages: Iterable[Page]) -> Picture:
    """Return the one page a format of one page is given. Raises ValueError for none or several."""
    given = list(pages)
    if len(given) != 1:
        raise ValueError(f"this format holds one sheet, not {len(given)}: a PDF or a DXF holds several")
    return picture_of(given[0])


def _pdf(pictures: Iterable[Picture]) -> bytes:
    from configurator.export.pdf import pdf_bytes

    return pdf_bytes(pictures)


def _svg(picture: Picture) -> bytes:
    from configurator.export.svg import svg_text

    return svg_text(picture).encode("utf-8")


def _png(picture: Picture, dpi: float) -> bytes:
    from configurator.export.figure import png_bytes

    return png_bytes(picture, dpi)


def _dxf(pages: Iterable[Page]) -> bytes:
    from configurator.export.dxf.layouts import dxf_bytes

    return dxf_bytes(pages)


_OF_PAGES: Mapping[str, Callable[[Iterable[Page]], bytes]] = MappingProxyType(
    {
        ".pdf": lambda pages: _pdf(map(picture_of, pages)),
        ".svg": lambda pages: _svg(_only_picture(pages)),
        ".dxf": _dxf,
        ".png": lambda pages: _png(_only_picture(pages), PAGE_DPI),
    }
)
_OF_PLANS: Mapping[str, Callable[[Picture], bytes]] = MappingProxyType(
    {".png": lambda plan: _png(plan, PLAN_DPI), ".svg": _svg, ".pdf": lambda plan: _pdf([plan])}
)
PAGE_FORMATS = tuple(_OF_PAGES)
PLAN_FORMATS = tuple(_OF_PLANS)
