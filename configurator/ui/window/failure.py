"""The one dialog for a failure nobody foresaw: what happened, what was kept, a report, and the ways on."""

import traceback
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

from PySide6.QtWidgets import QApplication, QDialog, QLabel, QPlainTextEdit, QPushButton, QWidget

from configurator.ui.kit.layout import GROW, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.window.environment import versions

WHAT = "Something went wrong in the program. What you did last may not have been done."
KEPT = "Your work is still here, and was kept just now should the program end."
NOTHING_TO_KEEP = "Your work is still here, and all of it is saved."
NOT_KEPT = "Your work is still here, but it could not be kept should the program end: save a copy now."


class FailureDialog(QDialog):
    """Stands beside the window; another failure while it is open is only added to its report."""

    def __init__(self, owner: QWidget, log: Path, save_copy: Callable[[], object]) -> None:
        super().__init__(owner)
        self.setWindowTitle("Something went wrong")
        self.what, self.kept = QLabel(WHAT), QLabel()
        self.report = QPlainTextEdit()
        self.report.setReadOnly(True)
        self.report.setTabChangesFocus(True)
        self.report.setAccessibleName("report of what went wrong")
        sized(self.report, -1)
        more = QLabel(f"The report has versions and places in the program, no personal data. Log: {log}")
        for label in (self.what, self.kept, more):
            label.setWordWrap(True)
        self.copy, self.save, self.go_on = (
            QPushButton(words) for words in ("Copy report", "Save a copy…", "Go on")
        )
        self.copy.clicked.connect(lambda: QApplication.clipboard().setText(self.report.toPlainText()))
        self.save.clicked.connect(lambda: save_copy())
        self.go_on.clicked.connect(self.accept)
        self.go_on.setDefault(True)
        buttons = across(self.copy, GROW, self.save, self.go_on, spacing=GRID)
        margins = (4 * GRID,) * 4
        fill(self, down(self.what, self.kept, self.report, more, buttons, spacing=2 * GRID, margins=margins))
        self.resize(140 * GRID, 100 * GRID)

    def tell(self, kept: str, report: str) -> None:
        """Tell of a failure and what was kept."""
        before = self.report.toPlainText() if self.isVisible() else versions()
        self.kept.setText(kept)
        self.report.setPlainText(f"{before}\n\n{report}")
        self.show()
        self.raise_()


def report_of(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> str:
    """Return where in the program something went wrong; folders of the user's own are not named."""
    lines = "".join(traceback.format_exception(kind, error, trace)).rstrip()
    package = Path(__file__).resolve().parents[3]
    return lines.replace(str(package), "…").replace(str(Path.home()), "~")
