"""A page as PNG, 200 pixels an inch, which the file says of itself so that it prints at its own size."""

from collections.abc import Iterable
from io import BytesIO

from configurator.drawing.pages.page import Page
from configurator.export.figure import page_figure
from configurator.export.pages import only_page

DPI = 200.0


def png_bytes(pages: Iterable[Page]) -> bytes:
    """Return the one page as a PNG. Raises ValueError where there is not exactly one."""
    figure = page_figure(only_page(pages), DPI)
    written = BytesIO()
    figure.savefig(written, format="png", dpi=DPI, facecolor="white", metadata={"Software": None})
    return written.getvalue()
