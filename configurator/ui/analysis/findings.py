"""What the program has to say about an opening, in plain words, with a button that mends it."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QScrollArea, QToolButton, QVBoxLayout, QWidget

from configurator.ui.kit.layout import GROW, Pool, across, down, fill
from configurator.ui.kit.look import GRID, colour, sized, tinted
from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.rules.finding import Finding

SIGNS = {"error": "✖ Error", "warning": "▲ Warning", "note": "● Note"}
"""A severity's sign and word: never its colour alone."""


class FindingRow(QFrame):
    """One finding."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self._finding: Finding | None = None
        self.setObjectName("finding")
        self.sign, self.message, self.source = QLabel(), _words(""), _words("")
        self.to_words, self.to_source = self._words_button(), self._source_button()
        self._fixes, self._mends = QVBoxLayout(), Pool(self._mend_button)
        sized(self.sign, 0, bold=True)
        sized(self.source, -1)
        head = across((self.sign, 1), self.to_source, self.to_words)
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        fill(self, down(head, self.message, self.source, self._fixes, spacing=2, margins=margins))

    def show_finding(self, finding: "Finding") -> None:
        """Show a finding, and a button for each way to mend it."""
        from configurator.wording.hinge_parts import cited  # loaded with the first study

        self._finding = finding
        self._draw_edge()  # before any tint: another style sheet brings the first palette back
        self.sign.setText(SIGNS[finding.severity])
        tinted(self.sign, finding.severity, self.session.dark)
        said = finding.said(self.session.display)
        self.message.setText(said)
        self.source.setText(cited(finding.source, finding.mark_of_source))
        self.to_source.setChecked(False)
        self.to_source.setAccessibleName(f"source of: {said}")
        tinted(self.source, "quiet", self.session.dark)
        self.to_words.setAccessibleName(f"what the words mean: {said}")
        for button, fix in zip(self._mends.take(len(finding.fixes)), finding.fixes, strict=True):
            button.setText(fix[0].said(self.session.display))

    @property
    def finding(self) -> "Finding":
        """The finding on show."""
        assert self._finding is not None
        return self._finding

    def mend(self, way: int = 0) -> None:
        """Make the changes that one way to mend the finding asks for, as one step."""
        self.session.edit_many({fix.path: fix.value for fix in self.finding.fixes[way]})

    def asked_about(self) -> str:
        """Return what F1 here looks for words in."""
        return self.message.text()

    def _words_button(self) -> QToolButton:
        """What the words of the message mean: by mouse, and by Tab for there is nothing else to stop at."""
        button = QToolButton()
        button.setText("Words")
        button.setAutoRaise(True)
        sized(button, -1)
        button.setToolTip("What the words of this finding mean (F1)")
        button.clicked.connect(lambda _=False: self.session.asked.emit(self.message.text()))
        return button

    def _source_button(self) -> QToolButton:
        """Where the finding comes from, folded away until it is asked for."""
        button = QToolButton()
        button.setText("Source")
        button.setCheckable(True)
        button.setAutoRaise(True)
        sized(button, -1)
        button.setToolTip("Which rule or reading this rests on, and how sure that is")
        button.toggled.connect(self.source.setVisible)
        self.source.setVisible(False)
        return button

    def _draw_edge(self) -> None:
        edge = colour(self.finding.severity, self.session.dark)
        style = f"#finding {{ border: 0; border-left: 3px solid {edge}; }}"
        if style != self.styleSheet():  # Qt takes long over each
            self.setStyleSheet(style)

    def _mend_button(self, way: int) -> QPushButton:
        """Return a button for one more way; they stand below each other, for they are sentences."""
        button = QPushButton()
        button.clicked.connect(lambda: self.mend(way))
        self._fixes.addWidget(button, 0, Qt.AlignmentFlag.AlignLeft)
        return button


class FindingsPanel(QScrollArea):
    """All findings of the opening on show, the gravest first."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self._pool = Pool(self._row)
        self._shown: object = None
        self._quiet = _words("")
        tinted(self._quiet, "quiet", session.dark)
        self._content = QWidget()
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        self._column = fill(self._content, down(self._quiet, GROW, spacing=2 * GRID, margins=margins))
        self.setWidget(self._content)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("findings")

    def show_state(self) -> None:
        """Show the findings; the rows are filled anew only when they differ."""
        study = self.session.study
        findings = study.all_findings() if study is not None else ()
        wanted = (findings, self.session.dark, self.session.display)
        if wanted == self._shown:
            return
        self._shown = wanted
        self._quiet.setText(self._silence() if not findings else "")
        self._quiet.setVisible(not findings)
        for shown, finding in zip(self._pool.take(len(findings)), findings, strict=True):
            shown.show_finding(finding)

    @property
    def rows(self) -> list[FindingRow]:
        """The findings on show, as they stand."""
        return self._pool.on_show

    def _silence(self) -> str:
        if self.session.opening is None:
            return "Findings stand here once there is an opening."
        return self.session.trouble or "Nothing stands against any of these widths."

    def _row(self, place: int) -> FindingRow:
        made = FindingRow(self.session)
        self._column.insertWidget(place, made)
        return made


def _words(text: str) -> QLabel:
    label = QLabel(text)
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label
