"""What stands in windows of its own beside the work: help, words, what is found, and the versions."""

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QApplication, QMessageBox, QWidget

from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session
from configurator.ui.window.environment import versions

if TYPE_CHECKING:  # each is loaded when it is first asked for
    from configurator.ui.files.trace_dialog import TraceDialog
    from configurator.ui.window.failure import FailureDialog
    from configurator.ui.window.help import HelpWindow
    from configurator.ui.window.palette import Palette, Place
    from configurator.ui.window.preferences_dialog import PreferencesDialog
    from configurator.ui.words.window import WordsWindow


class Beside:
    """The windows beside the main one, each made on first use and then kept."""

    def __init__(
        self,
        owner: QWidget,
        session: Session,
        go_to_field: Callable[[str], None],
        places: Callable[[], "Iterable[Place]"],
        where: Callable[[], str],
    ) -> None:
        """`places` returns what can be found and gone to, `where` the page on show, empty for the work."""
        self._owner, self._session = owner, session
        self._go_to_field, self._places, self._where = go_to_field, places, where
        self.help: HelpWindow | None = None
        self.words: WordsWindow | None = None
        self.palette: Palette | None = None
        self.failure: FailureDialog | None = None
        self.preferences: PreferencesDialog | None = None
        self.trace: TraceDialog | None = None

    def show_help(self) -> None:
        """Show the help about where the user is."""
        from configurator.ui.window.help import HelpWindow

        if self.help is None:
            keys = (
                (place.where.partition(":")[0], place.title, place.keys)
                for place in self._places()
                if place.keys
            )
            self.help = HelpWindow(self._owner, keys)
            self.help.words.clicked.connect(lambda _=False: self.show_word(""))
        self.help.ask(self._place_asked())

    def _place_asked(self) -> str:
        """Return the place of the program that has the keyboard, as the help names it."""
        if where := self._where():
            return where
        widget: QWidget | None = self._owner.focusWidget()
        while widget is not None:
            if isinstance(place := getattr(widget, "help_place", None), str):
                return place
            widget = widget.parentWidget()
        return "work"

    def ask_word(self) -> None:
        """Show the word of what has the keyboard; the help where nothing is known of it."""
        from configurator.ui.words.here import asked_about

        about = asked_about(QApplication.focusWidget())
        if about:
            self.show_word(about)
        else:
            self.show_help()

    def show_word(self, about: str) -> None:
        """Show the word of a field's path or a row's key, or those of a sentence; all for an empty one."""
        from configurator.ui.words.window import WordsWindow

        if self.words is None:
            self.words = WordsWindow(self._session, self._owner)
            self.words.field_wanted.connect(self._go_to_field)
        self.words.ask(about)
        self.words.show()
        self.words.raise_()
        self.words.activateWindow()

    def find_anything(self) -> None:
        """Find a command, an opening or a field by its words."""
        from configurator.ui.window.palette import Palette

        if self.palette is None:
            self.palette = Palette(self._owner, self._places)
        self.palette.ask()

    def show_preferences(self, preferences: Preferences) -> None:
        """Show how the user likes the program."""
        from configurator.ui.window.preferences_dialog import PreferencesDialog

        if self.preferences is None:
            self.preferences = PreferencesDialog(self._owner, self._session, preferences)
        self.preferences.show_state()
        self.preferences.show()
        self.preferences.raise_()

    def trace_drawing(self) -> None:
        """Ask for a drawing whose lines lie under the plan on show, or are its frame."""
        from configurator.ui.files.trace_dialog import TraceDialog

        if self.trace is None:
            self.trace = TraceDialog(self._owner, self._session)
        self.trace.ask()

    def show_about(self) -> None:
        """Show the versions, with a button that copies them."""
        box = QMessageBox(self._owner)
        box.setWindowTitle("About")
        box.setText("Opening Configurator")
        box.setInformativeText(versions())
        copy = box.addButton("Copy", QMessageBox.ButtonRole.ActionRole)
        copy.clicked.connect(lambda: QApplication.clipboard().setText(versions()))
        box.addButton(QMessageBox.StandardButton.Close)
        box.exec()
        box.deleteLater()
