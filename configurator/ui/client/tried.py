"""A typical door that is tried in front of a client: an opening of its own, in no job until it is kept."""

from collections.abc import Callable

from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from configurator.model import Job, Opening
from configurator.ui.client.controls import fit
from configurator.ui.client.starts import started
from configurator.ui.kit.layout import across, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state import edits
from configurator.ui.state.session import Session

TRYING = "Only tried, not in the job: {}"
ASKED = "Keep this door in the job?"
WAITS = "A door that was tried with a client is not in the job yet."


class TriedDoor:
    """The session of the door on trial, beside the job's; `changed` is told what was done to it.

    It is made once and shows one door after the other: what Qt still holds is never taken from under it.
    """

    def __init__(self, job: Session, changed: Callable[[str], None]) -> None:
        self.job = job
        self.name = ""
        """Which typical door is tried; empty while none is."""
        self._own: Session | None = None
        self._changed = changed

    @property
    def session(self) -> Session | None:
        """The session of the door on trial; None while none is."""
        return self._own if self.name else None

    @property
    def shown(self) -> Session:
        """The session that the client's view works on: the trial's, or the job's."""
        return self.session or self.job

    def begin(self, name: str) -> None:
        """Try a typical door in place of whatever is on show; the job does not change."""
        opening = started(edits.fresh_mark(self.job.job), name)
        job = Job(job=self.job.job.job, order=self.job.job.order, openings=(opening,))
        if self._own is None:
            self._own = Session(job)
            self._own.changed.connect(self._tell)
        else:
            self._own.start_new(job)
        self.name = name
        self.follow()
        self._own.swing(self.job.angle)

    def _tell(self, by: str) -> None:
        if self.name:
            self._changed(by)

    def follow(self) -> None:
        """Show lengths and colours as the job's session does."""
        if self.session is not None:
            self.session.display, self.session.dark = self.job.display, self.job.dark
            self.session.shop, self.session.path = self.job.shop, self.job.path

    def keep(self) -> None:
        """Put the door, as it was changed meanwhile, into the job as one step."""
        opening = self._opening()
        self.end()
        if opening is not None:
            mark = edits.fresh_mark(self.job.job, opening.mark)
            kept = opening if mark == opening.mark else edits.edited(opening, {"mark": mark})
            self.job.take_openings((*self.job.job.openings, kept), f"keep door {mark}", mark)

    def end(self) -> None:
        """Put the door away."""
        self.name = ""

    def _opening(self) -> Opening | None:
        return None if self.session is None else self.session.opening


class TriedBar(QWidget):
    """Says that the door on show is only tried, with a button that keeps it and one that does not."""

    def __init__(self, keep: Callable[[], None], drop: Callable[[], None]) -> None:
        super().__init__()
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.keep, self.drop = QPushButton("Keep in the job"), QPushButton("Do not keep")
        self.keep.setToolTip("Put this door into the job, as it is now")
        self.drop.setToolTip("Put this door away; the job stays as it is")
        self.keep.clicked.connect(keep)
        self.drop.clicked.connect(drop)
        for button in (self.keep, self.drop):
            button.setAccessibleName(button.toolTip())
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        fill(self, across((self.words, 1), self.keep, self.drop, spacing=GRID, margins=margins))
        self.hide()

    def show_tried(self, name: str, asked: bool, dark: bool) -> None:
        """Say which door is tried, or ask whether to keep it; nothing without a name."""
        self.setVisible(bool(name))
        self.words.setText(ASKED if asked else TRYING.format(name.lower()))
        tinted(self.words, "warning" if asked else "note", dark)

    def show_size(self, touch: int) -> None:
        """Make the buttons as large as a finger, so many pixels."""
        for button in (self.keep, self.drop):
            fit(button, touch, (button.text(),))
