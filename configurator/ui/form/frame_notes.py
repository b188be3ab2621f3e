"""Under frame and wall: what does not go together, with its mends, and what the last change did."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QWidget

from configurator.tables import FrameKindRow, row_of
from configurator.ui.analysis.findings import FindingRow
from configurator.ui.kit.fields import Assumptions, Field
from configurator.ui.kit.layout import Pool, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.state.session import Session

if TYPE_CHECKING:  # loaded with the first study
    from configurator.rules.finding import Finding
    from configurator.study import Study


class FrameNotes(QWidget):
    """The findings about frame and wall together, and one quiet line on what changed and its effect."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.fields: dict[str, Field] = {}
        self.line = QLabel()
        self.line.setWordWrap(True)
        self.line.setAccessibleName("what the last change did")
        sized(self.line, -1)
        self._shown: object = None
        self._before: Study | None = None
        self._now = session.study
        self._history = session.history
        self._column = fill(self, down(self.line, spacing=GRID, margins=(0, GRID, 0, 0)))
        self._pool = Pool(self._row)

    def show_state(self, _: Assumptions) -> None:
        """Show what stands against frame and wall as they are, and what the last edit did to the swing."""
        self._take_study()
        self._show_findings()
        sentences = self._sentences()
        self.line.setText(" ".join(sentences))
        tinted(self.line, "quiet", self.session.dark)
        self.line.setVisible(bool(sentences))
        self.setVisible(bool(sentences or self.rows))

    @property
    def rows(self) -> list[FindingRow]:
        """The findings on show, as they stand."""
        return self._pool.on_show

    def _take_study(self) -> None:
        """Keep the study before the last change; another opening begins anew, and so does another job."""
        study, history = self.session.study, self.session.history
        if study is self._now:
            return
        before = self._now if history is self._history else None
        same = before is not None and study is not None and before.opening.mark == study.opening.mark
        self._before, self._now, self._history = (before if same else None), study, history

    def _sentences(self) -> tuple[str, ...]:
        if self._before is None or self._now is None:
            return ()
        from configurator.study.change import what_changed

        return what_changed(self._before, self._now, self.session.display)

    def _show_findings(self) -> None:
        wanted = (_about_frame(self._now), self.session.dark, self.session.display)
        if wanted == self._shown:
            return
        self._shown = wanted
        for row, finding in zip(self._pool.take(len(wanted[0])), wanted[0], strict=True):
            row.show_finding(finding)

    def _row(self, _: int) -> FindingRow:
        row = FindingRow(self.session)
        self._column.addWidget(row)
        return row


def _about_frame(study: "Study | None") -> tuple["Finding", ...]:
    if study is None:
        return ()
    from configurator.rules.checks.frame_fit import CODES

    return tuple(finding for finding in study.findings if finding.code in CODES)


class FramePlace(QWidget):
    """Flush with the wall on one side or the other, or centred in it; a wrapped frame has no such choice."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.fields: dict[str, Field] = {}
        self._grid = QGridLayout(self)  # the three in one row are wider than the form
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(GRID)
        self.near = self._button(
            "Flush, pull side", "The frame face level with the wall face on the pull side"
        )
        self.centre = self._button("Centred", "The frame in the middle of the wall")
        self.far = self._button("Flush, far side", "The frame's far face level with the wall's far face")
        self.near.clicked.connect(lambda: self._put(0.0))
        self.centre.clicked.connect(lambda: self._put(None))
        self.far.clicked.connect(self._put_far)

    def show_state(self, _: Assumptions) -> None:
        """Offer the places that such a frame may have."""
        kind = self.session.value("frame.kind")
        row = None if kind is None else row_of(FrameKindRow, kind)
        self.setVisible(row is not None and not row.wraps and self.session.study is not None)
        self.centre.setVisible(row is None or row.usual_place)

    def _button(self, text: str, help_text: str) -> QPushButton:
        button = QPushButton(text)
        button.setToolTip(help_text)
        self._grid.addWidget(button, *divmod(self._grid.count(), 2))
        return button

    def _put_far(self) -> None:
        study = self.session.study
        if study is not None:
            self._put(study.filled.jamb_depth - study.filled.wall_thickness)

    def _put(self, proud: float | None) -> None:
        self.session.edit("wall.frame_proud", proud)
