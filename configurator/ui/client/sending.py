"""The client's page printed, or written to send: the same picture and words as on the screen."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

from configurator.drawing.pages.page import Page
from configurator.ui.state.session import Session


def page_of(session: Session) -> Page:
    """Return the page of the opening on show. Raises ValueError, in words, where it cannot be drawn."""
    from configurator.drawing.client.client_page import client_page
    from configurator.drawing.pages.page import usual_paper

    if session.study is None:
        raise ValueError(session.trouble or "there is no door to print yet")
    display = session.display
    how = (session.job.job, usual_paper(display), None, display)
    return client_page(session.study, *how, shop=session.shop, also=costs_of(session))


def costs_of(session: Session) -> tuple[str, ...]:
    """Return what the choice costs as a line, where the job has a price list; nothing without one."""
    named = session.job.order.price_list
    if named is None or session.study is None or not session.study.candidates or session.opening is None:
        return ()
    from configurator.order.price_list import PriceListError, load_prices
    from configurator.study.widths.width_pair import width_pair
    from configurator.wording.cost_words import cost_line

    folder = Path.cwd() if session.path is None else session.path.absolute().parent
    try:
        prices = load_prices(folder / named)
    except PriceListError:
        return (f"The price list {Path(named).name} cannot be read: what it costs is not told.",)
    line = cost_line(width_pair(session.study), session.opening, session.job, prices)
    return (line,) if line else ()


def print_page(session: Session, owner: QWidget) -> str:
    """Ask for a printer and print the page; return what to say of it, nothing where the user thought better.

    Raises ValueError as `page_of`.
    """
    from configurator.ui.sheets import printing

    page = page_of(session)
    printer = printing.printer_for(page, _name(session))
    if not printing.ask_printer(printer, 1, owner):
        return ""
    try:
        printing.print_all(printer, [page])
    except OSError as error:
        return f"Nothing was printed: {error}."
    return "Printed."


FILTERS = {
    ".pdf": "PDF page (*.pdf)",
    ".png": "Picture of the page (*.png)",
    ".gif": "Moving picture (*.gif)",
}
"""What can be sent, by the ending of its file."""


def save_page(session: Session, owner: QWidget) -> str:
    """Ask for a file and write the page, or the moving picture, there; return what to say of it.

    Raises ValueError as `page_of`.
    """
    page_of(session)
    folder = session.path.parent if session.path else Path.home()
    start = str(folder / f"{_name(session)}.pdf")
    name, chosen = QFileDialog.getSaveFileName(owner, "Save to send", start, ";;".join(FILTERS.values()))
    if not name:
        return ""
    ending = next((each for each, words in FILTERS.items() if words == chosen), ".pdf")
    path = Path(name)
    return write(session, path if path.suffix.lower() in FILTERS else path.with_name(f"{path.name}{ending}"))


def write(session: Session, path: Path) -> str:
    """Write the page, or for a .gif the moving picture, to a file; return what to say of it.

    Raises ValueError as `page_of`.
    """
    from configurator.export.pages import write_pages
    from configurator.project_file import write_whole

    try:
        if path.suffix.lower() == ".gif":
            write_whole(path, _moving(session))
        else:
            write_pages([page_of(session)], path)
    except OSError as error:
        return f"{path.name} could not be written: {error}."
    return f"Written to {path.name}."


def _moving(session: Session) -> bytes:
    from configurator.export.figure import gif_bytes

    assert session.study is not None
    return gif_bytes(session.study, session.display, costs_of(session))


def _name(session: Session) -> str:
    return "".join(c if c.isalnum() or c in " -_." else "-" for c in f"{session.mark} client")
