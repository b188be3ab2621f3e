"""Pages as a file: PDF, SVG, DXF or PNG by its ending, put there whole or not at all.

A format is one module here with a function from pages to bytes; adding one is one file and one line below.
"""

from collections.abc import Callable, Iterable, Mapping
from importlib import import_module
from pathlib import Path
from types import MappingProxyType
from typing import cast

from configurator.drawing.pages.page import Page
from configurator.project_file import write_whole

MakesBytes = Callable[[Iterable[Page]], bytes]

_WRITERS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        ".pdf": ("pages_pdf", "pdf_bytes"),
        ".svg": ("pages_svg", "svg_bytes"),
        ".dxf": ("pages_dxf", "dxf_bytes"),
        ".png": ("pages_png", "png_bytes"),
    }
)
"""Ending to the module and its function, imported when first used: each brings a library of its own."""
PAGE_FORMATS = tuple(_WRITERS)
OF_MANY_PAGES = (".pdf", ".dxf")
"""The formats that hold more than one page; the others are given just one."""


def pages_as_bytes(pages: Iterable[Page], ending: str) -> bytes:
    """Return pages in the format of an ending such as `.pdf`; always the same bytes for the same pages.

    Pages are taken one at a time, so that whoever makes them may tell how far it is, or stop by raising.
    Raises ValueError for any other ending, and for several pages in a format of one.
    """
    if ending.lower() not in _WRITERS:
        raise ValueError(f"a sheet ends in {', '.join(PAGE_FORMATS)}; {ending or 'nothing'} was given")
    module, function = _WRITERS[ending.lower()]
    make = cast(MakesBytes, getattr(import_module(f"configurator.export.{module}"), function))
    return make(pages)


def write_pages(pages: Iterable[Page], path: Path) -> None:
    """Write pages to a file in the format of its ending.

    Raises ValueError as `pages_as_bytes`, OSError when the file cannot be written.
    """
    write_whole(path, pages_as_bytes(pages, path.suffix))


def only_page(pages: Iterable[Page]) -> Page:
    """Return the one page a format of one page is given. Raises ValueError for none or several."""
    found = list(pages)
    if len(found) != 1:
        raise ValueError(f"this format holds one sheet, not {len(found)}: a PDF or a DXF holds several")
    return found[0]
