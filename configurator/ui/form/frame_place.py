"""Where a frame that does not wrap the wall stands in it: buttons for the usual places."""

from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

from configurator.tables import FrameKindRow, row_of
from configurator.ui.kit.fields import Assumptions, Field
from configurator.ui.kit.look import GRID
from configurator.ui.state.session import Session


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
