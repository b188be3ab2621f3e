"""Everything technical put away while the client's view is on show, and the whole screen if wanted."""

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMainWindow, QToolBar, QWidget


class PutAway:
    """Folds the window's commands away from around a page; their keys go on working through the page."""

    def __init__(self, page: QWidget) -> None:
        self.page = page
        self._bars: list[QToolBar] = []
        self._actions: list[QAction] = []
        self._was_maximized = False

    @property
    def whole_screen(self) -> bool:
        """Whether the page has the whole screen."""
        return self.page.window().isFullScreen()

    def put_away(self) -> None:
        """Fold away the rows of commands."""
        window = self.page.window()
        if self._bars or not isinstance(window, QMainWindow):
            return
        self._bars = [bar for bar in window.findChildren(QToolBar) if not bar.isHidden()]
        self._actions = [one for bar in self._bars for one in bar.actions() if not one.shortcut().isEmpty()]
        for bar in self._bars:
            bar.hide()
        self.page.addActions(self._actions)

    def bring_back(self) -> None:
        """Bring everything back as it was."""
        self.use_whole_screen(False)
        for action in self._actions:
            self.page.removeAction(action)
        for bar in self._bars:
            bar.show()
        self._bars, self._actions = [], []

    def use_whole_screen(self, wanted: bool) -> None:
        """Take the whole screen, or give it back."""
        window = self.page.window()
        if wanted == window.isFullScreen():
            return
        if wanted:
            self._was_maximized = window.isMaximized()
            window.showFullScreen()
        elif self._was_maximized:
            window.showMaximized()
        else:
            window.showNormal()
