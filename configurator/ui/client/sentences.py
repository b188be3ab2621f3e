"""What is said of a door, as large as it is read; where the screen is small for that, it scrolls."""

from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFileDialog, QFrame, QLabel, QScrollArea, QScroller, QSizePolicy, QWidget

from configurator.drawing.pages.page import Page
from configurator.ui.kit.look import GRID
from configurator.ui.state.session import Session

_LEAST_LINES = 2


class Sentences(QScrollArea):
    """Sentences one under the other. It takes no more room than they need, and gives way to the picture."""

    def __init__(self) -> None:
        super().__init__()
        self.label = QLabel()
        self.label.setWordWrap(True)
        self.label.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.label.setContentsMargins(2 * GRID, 0, 2 * GRID, 2 * GRID)
        self.setWidget(self.label)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName("what this door does")
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        QScroller.grabGesture(self.viewport(), QScroller.ScrollerGestureType.TouchGesture)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Maximum)

    def say(self, words: str) -> None:
        """Show sentences, a line each."""
        self.label.setText(words)
        self.setAccessibleDescription(words)
        self.setVisible(bool(words))
        self.updateGeometry()

    def text(self) -> str:
        """Return what is said."""
        return self.label.text()

    # --- Qt's own names ---

    def sizeHint(self) -> QSize:
        """Ask for the height that the sentences need in the width there is."""
        return QSize(super().sizeHint().width(), self.label.heightForWidth(max(self.width(), 1)))

    def minimumSizeHint(self) -> QSize:
        """Keep two lines of them in sight."""
        return QSize(40 * GRID, _LEAST_LINES * self.label.fontMetrics().height() + 2 * GRID)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Ask anew when the width has changed: lines break elsewhere then."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()


def page_of(session: Session) -> Page:
    """Return the page of the opening on show. Raises ValueError, in words, where it cannot be drawn."""
    from configurator.drawing.client.client_page import client_page
    from configurator.drawing.pages.page import usual_paper

    if session.study is None:
        raise ValueError(session.trouble or "there is no door to print yet")
    display = session.display
    return client_page(session.study, session.job.job, usual_paper(display), None, display)


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


def save_page(session: Session, owner: QWidget) -> str:
    """Ask for a file and write the page there; return what to say of it.

    Raises ValueError as `page_of`.
    """
    page = page_of(session)
    folder = session.path.parent if session.path else Path.home()
    start = str(folder / f"{_name(session)}.pdf")
    name, _ = QFileDialog.getSaveFileName(owner, "Save the page", start, "PDF page (*.pdf)")
    if not name:
        return ""
    return write_page(page, Path(name if name.lower().endswith(".pdf") else f"{name}.pdf"))


def write_page(page: Page, path: Path) -> str:
    """Write the page as a PDF; return what to say of it."""
    from configurator.export.pages import write_pages

    try:
        write_pages([page], path)
    except OSError as error:
        return f"{path.name} could not be written: {error}."
    return f"Written to {path.name}."


def _name(session: Session) -> str:
    return "".join(c if c.isalnum() or c in " -_." else "-" for c in f"{session.mark} client")
