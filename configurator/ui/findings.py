"""What the program has to say about an opening, in plain words, with a button that mends it."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from configurator.ui.look import GRID, colour, sized, tinted
from configurator.ui.session import Session

if TYPE_CHECKING:
    from configurator.rules.finding import Finding

SIGNS = {"error": "✖ Error", "warning": "▲ Warning", "note": "● Note"}
"""A severity's sign and word: never its colour alone."""


class FindingRow(QFrame):
    """One finding."""

    def __init__(self, session: Session, finding: "Finding") -> None:
        from configurator.drawing.hinge_parts import cited  # loaded with the first study

        super().__init__()
        self.session = session
        self.finding = finding
        self.setObjectName("finding")
        sign = QLabel(SIGNS[finding.severity])
        sized(sign, 0, bold=True)
        tinted(sign, finding.severity, session.dark)
        message = _words(finding.message)
        source = _words(cited(finding.source, finding.mark_of_source))
        sized(source, -1)
        tinted(source, "quiet", session.dark)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        column.setSpacing(2)
        head = QHBoxLayout()
        head.addWidget(sign, 1)
        head.addWidget(self._words_button())
        column.addLayout(head)
        for label in (message, source):
            column.addWidget(label)
        if finding.fixes:
            column.addLayout(self._fix_lines())
        self._draw_edge()

    def mend(self, way: int = 0) -> None:
        """Make the changes that one way to mend the finding asks for, as one step."""
        self.session.edit_many({fix.path: fix.value for fix in self.finding.fixes[way]})

    def asked_about(self) -> str:
        """Return what F1 here looks for words in."""
        return self.finding.message

    def _words_button(self) -> QToolButton:
        """What the words of the message mean: by mouse, and by Tab for there is nothing else to stop at."""
        button = QToolButton()
        button.setText("Words")
        button.setAutoRaise(True)
        sized(button, -1)
        button.setToolTip("What the words of this finding mean (F1)")
        button.setAccessibleName(f"what the words mean: {self.finding.message}")
        button.clicked.connect(lambda _=False: self.session.asked.emit(self.finding.message))
        return button

    def _fix_lines(self) -> QVBoxLayout:
        """A button for each way; below each other, for they are sentences."""
        lines = QVBoxLayout()
        for way, fix in enumerate(self.finding.fixes):
            button = QPushButton(fix[0].label)
            button.clicked.connect(lambda _=False, way=way: self.mend(way))
            line = QHBoxLayout()
            line.addWidget(button)
            line.addStretch()
            lines.addLayout(line)
        return lines

    def _draw_edge(self) -> None:
        edge = colour(self.finding.severity, self.session.dark)
        self.setStyleSheet(f"#finding {{ border: 0; border-left: 3px solid {edge}; }}")


class FindingsPanel(QScrollArea):
    """All findings of the opening on show, the gravest first."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.rows: list[FindingRow] = []
        self._shown: object = None
        self._quiet = _words("")
        tinted(self._quiet, "quiet", session.dark)
        self._content = QWidget()
        self._column = QVBoxLayout(self._content)
        self._column.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        self._column.setSpacing(2 * GRID)
        self._column.addWidget(self._quiet)
        self._column.addStretch()
        self.setWidget(self._content)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("findings")

    def show_state(self) -> None:
        """Show the findings; the rows are made anew only when they differ."""
        study = self.session.study
        findings = _gravest_first(study.all_findings()) if study is not None else ()
        wanted = (findings, self.session.dark)
        if wanted == self._shown:
            return
        self._shown = wanted
        self._quiet.setText(self._silence() if not findings else "")
        self._quiet.setVisible(not findings)
        self._make_rows(findings)

    def _silence(self) -> str:
        if self.session.opening is None:
            return "Findings stand here once there is an opening."
        return self.session.trouble or "Nothing stands against any of these widths."

    def _make_rows(self, findings: tuple["Finding", ...]) -> None:
        for row in self.rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.rows = [FindingRow(self.session, finding) for finding in findings]
        for place, row in enumerate(self.rows):
            self._column.insertWidget(place, row)


def _gravest_first(findings: tuple["Finding", ...]) -> tuple["Finding", ...]:
    order = list(SIGNS)
    return tuple(sorted(findings, key=lambda finding: order.index(finding.severity)))


def _words(text: str) -> QLabel:
    label = QLabel(text)
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label
