"""Looks after the file while the window is open: keeps unsaved work against a crash, and notices others."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer

from configurator.project_file.held import News
from configurator.project_file.recovery import RecoveryFile
from configurator.ui.kit.runner import Beside
from configurator.ui.state.preferences import USUALLY_KEPT_AFTER
from configurator.ui.state.session import Session

KEPT_AFTER = float(USUALLY_KEPT_AFTER)
"""Seconds from an edit until it is kept, where nobody chose; writing takes its time besides."""
LOOKED_AFTER = 3.0
"""Seconds between two looks at the file on disk."""
NOT_KEPT = "Unsaved work is not kept against a crash just now"
NO_EDITS = ("swing", "trial", "display", "theme", "select")


class Keeping(QObject):
    """Keeps unsaved work a few seconds after each edit, and looks at the file on disk now and then.

    It writes beside the window: a job never changes, so the window can go on with the next one. What could
    not be kept is tried again until it is, and what stands in the way is told once.
    """

    def __init__(
        self,
        session: Session,
        tell_news: Callable[[News], None],
        tell_trouble: Callable[[str], None],
        kept_after: Callable[[], float] = lambda: KEPT_AFTER,
    ) -> None:
        """`kept_after` returns the seconds from an edit until it is kept."""
        super().__init__()
        self.session = session
        self.recovery = RecoveryFile()
        self._tell_news = tell_news
        self._tell_trouble = tell_trouble
        self._kept_after = kept_after
        self._told = ""
        self._trouble = ""
        self._writing = Beside(self)
        self._writing.failed.connect(self._note_trouble)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self._keep)
        self._looking = QTimer(self)
        self._looking.setInterval(round(LOOKED_AFTER * 1000))
        self._looking.timeout.connect(self.look)
        self._looking.start()
        session.changed.connect(self._note_change)
        self._note_change("open")

    def look(self) -> None:
        """Look at the file on disk, and tell what is new about it."""
        news = self.session.file.news() if self.session.file else ""
        if news != self._told:
            self._tell_news(news)
            self._told = news

    def keep_now(self) -> bool:
        """Keep the work as it stands and wait until it is on the disk; say whether it is."""
        self._writing.wait()
        self._keep()
        self._writing.wait()
        return not self._trouble

    def leave(self) -> None:
        """Stop, and leave what is not saved where the next start finds it."""
        self._looking.stop()
        self.session.changed.disconnect(self._note_change)
        if self.session.history.unsaved:
            self.keep_now()
            self._soon.stop()
        else:
            self._forget()

    def close(self) -> None:
        """The work is saved or given up: forget what was kept, and let the file go."""
        self._looking.stop()
        self.session.changed.disconnect(self._note_change)
        self._forget()
        self.session.let_go()

    def _note_change(self, by: str) -> None:
        if by in ("open", "save", "file"):
            self._told = ""
        if by in NO_EDITS:
            return
        if not self.session.history.unsaved:
            self._forget()
        elif not self._soon.isActive():
            self._start_waiting()

    def _start_waiting(self) -> None:
        self._soon.start(round(self._kept_after() * 1000))

    def _keep(self) -> None:
        if self._writing.running:
            self._start_waiting()
            return
        file = self.session.file
        digest = file.digest if file else ""
        recovery, job, path = self.recovery, self.session.job, self.session.path
        self._writing.start(
            "Keeping unsaved work",
            NOT_KEPT,
            lambda _: recovery.write(job, path, digest),
            lambda _: self._note_trouble(""),
        )

    def _note_trouble(self, trouble: str) -> None:
        if trouble and trouble != self._trouble:
            self._tell_trouble(trouble)
        self._trouble = trouble
        if trouble:
            self._start_waiting()

    def _forget(self) -> None:
        self._writing.give_up()
        self._soon.stop()
        self._trouble = ""
        self.recovery.remove()
