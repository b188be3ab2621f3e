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
    return client_page(session.study, session.job.job, usual_paper(display), None, display, shop=session.shop)


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
    from configurator.export.moving import gif_bytes

    assert session.study is not None
    return gif_bytes(session.study, session.display)


def _name(session: Session) -> str:
    return "".join(c if c.isalnum() or c in " -_." else "-" for c in f"{session.mark} client")
