"""The window: one row of commands, the openings of the job, and beside them the work on one of them."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QCloseEvent, QKeySequence, QPaintEvent, QShortcut
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QMainWindow,
    QSizePolicy,
    QSplitter,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from configurator.ui.files.files import Files
from configurator.ui.kit import look
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import LOOKED, Session
from configurator.ui.window.commands import CommandBar, command_groups
from configurator.ui.window.openings import OpeningsList
from configurator.units import Display

if TYPE_CHECKING:
    from configurator.model import Job
    from configurator.ui.kit.message_line import Choice, MessageLine
    from configurator.ui.window.help import HelpWindow
    from configurator.ui.window.pages import Pages
    from configurator.ui.window.work import WorkArea
    from configurator.ui.words.window import WordsWindow

PROGRAM = "Opening Configurator"
_UNDO = "Undo takes it back"
FIRST_SIZE = (1280, 800)
DISPLAYS = (
    ("inches to 1/16", Display(16)),
    ("inches to 1/32", Display(32)),
    ("inches to 1/64", Display(64)),
    ("millimetres", Display(metric=True)),
)
TURNS = {"Alt+Left": -1.0, "Alt+Right": 1.0, "Alt+PgUp": 15.0, "Alt+PgDown": -15.0}


class Window(QMainWindow):
    """Every view shows the session's state and nothing else.

    It is first painted with the commands and the openings; then `fill` adds the work area, and `begin` loads
    what is worked out and the picture.

    Signals:
        painted: the window was painted for the first time.
        picture_shown: the first picture stands in it.
    """

    painted = Signal()
    picture_shown = Signal()

    def __init__(self, session: Session, preferences: Preferences) -> None:
        super().__init__()
        self.session = session
        self.preferences = preferences
        self._was_painted = False
        session.display, session.dark = preferences.display, preferences.dark
        session.plain_words = preferences.plain_words
        self.openings = OpeningsList(session)
        self.work: WorkArea | None = None
        self.files = Files(session, preferences, self, self.say, self.ask)
        self.pages: Pages | None = None
        self._work_waits = False
        self._said_of: Job | None = None
        self.help: HelpWindow | None = None
        self.words: WordsWindow | None = None
        self.units = QComboBox()
        self.line: MessageLine | None = None
        self.commands = CommandBar(command_groups(self), self)
        self._put_together()
        session.changed.connect(self.show_state)
        session.refused.connect(self._show_refusal)
        session.missed.connect(self._ask_for)
        session.noted.connect(self._note)
        session.asked.connect(self.show_word)
        self.show_state("open")

    # --- What it shows ---

    def fill(self) -> None:
        """Add the work area: what was said about the opening can now be read and changed."""
        from configurator.ui.window.work import WorkArea

        self.work = WorkArea(self.session)
        self.columns.replaceWidget(1, self.work)
        self._room.deleteLater()
        self._share_room()
        self._restore_layout()
        self.work.show_state("open")
        self._give_keys()

    def begin(self) -> None:
        """Load the study and the picture, and show them."""
        if self.work is None:
            self.fill()
        assert self.work is not None
        self.work.begin()
        self.work.repaint()
        QTimer.singleShot(0, self, self._show_the_rest)

    def _show_the_rest(self) -> None:
        """Show what stands about the picture, once that is on the screen."""
        if self.work is not None:
            self.work.show_rest()
        self.picture_shown.emit()

    def show_state(self, by: str) -> None:
        """Bring every view in line with the session; `by` says what happened, so that a swing stays quick."""
        if by == "theme":
            self._use_theme()
        self._take_back_what_is_over()
        if by not in LOOKED:
            self._show_title()
        if self.pages is not None:
            self.pages.show_state(by)
        if self.pages is not None and self.pages.work_is_folded:
            self._work_waits = True  # what nobody sees need not be drawn; it catches up when it is shown
            return
        if by not in LOOKED:
            self.openings.show_state()
        if self.work is not None:
            self.work.show_state(by)

    def turn_to(self, page: str) -> None:
        """Show a page about the whole job in place of the work on one opening; an empty name ends that."""
        if page or self.pages is not None:
            self._all_pages().turn_to(page)

    def say(self, sentence: str) -> None:
        """Show a sentence in the line under the commands; an empty one takes the line away.

        What can be undone is spoken of only until the job is another one.
        """
        self._said_of = self.session.job if _UNDO in sentence else None
        if sentence or self.line is not None:
            self._message_line().say(sentence)

    def _note(self, sentence: str) -> None:
        """Show what is said of the job as it is now: it goes with the next change."""
        self.say(sentence)
        self._said_of = self.session.job

    def _take_back_what_is_over(self) -> None:
        if self._said_of is not None and self._said_of is not self.session.job:
            self.say("")

    def ask(self, about: str, sentence: str, choices: Sequence["Choice"] = ()) -> None:
        """Show a question there until it is answered; an empty one takes away that about the same."""
        if sentence or self.line is not None:
            self._message_line().ask(about, sentence, choices)

    def _message_line(self) -> "MessageLine":
        from configurator.ui.kit.message_line import MessageLine

        if self.line is None:
            self.line = MessageLine()
            self._column.insertWidget(0, self.line)
        return self.line

    def _all_pages(self) -> "Pages":
        from configurator.ui.window.pages import Pages

        if self.pages is None:
            self.pages = Pages(self.session, self.columns, self.preferences)
            self._column.insertWidget(self._column.indexOf(self.columns), self.pages, 1)
            self.pages.addWidget(self.columns)  # which takes it out of the column
            self.pages.show()
            self.pages.turned.connect(self._show_turned)
            self.pages.said.connect(self.say)
            self.pages.waiting.connect(self._lead_back)
        return self.pages

    def _lead_back(self, page: str, sentence: str) -> None:
        self.ask(
            f"waits on {page}", sentence, (("Show them", lambda: self.turn_to(page)),) if sentence else ()
        )

    def _show_turned(self) -> None:
        """Show which page is on show, and bring the work in line if it has come back."""
        from configurator.ui.window.pages import PAGES

        assert self.pages is not None
        for name in PAGES:
            self.commands.actions_by_name[name].setChecked(name == self.pages.on_show)
        # A page has the openings itself; the list beside the work would only take its room.
        self.openings.setVisible(not self.pages.on_show and self.commands.actions_by_name["list"].isChecked())
        if not self.pages.work_is_folded:
            self._catch_up()

    def _catch_up(self) -> None:
        if self._work_waits:
            self._work_waits = False
            self.openings.show_state()
            if self.work is not None:
                self.work.show_state("open")

    def turner(self, name: str) -> Callable[[bool], None]:
        """Return what shows a page, or the work again."""
        return lambda wanted: self.turn_to(name if wanted else "")

    def _show_refusal(self, path: str) -> None:
        if self.work is not None:
            self.work.form.reveal(path)
            self.work.show_form()

    def _ask_for(self, path: str) -> None:
        if self.work is not None:
            self.work.form.go_to(path)

    def _show_title(self) -> None:
        job = self.session.job.job.name or "New job"
        file = self.session.path.name if self.session.path else "not saved yet"
        read_only = self.session.read_only
        self.setWindowTitle(f"{job} – {file}[*]{' (read-only)' if read_only else ''} – {PROGRAM}")
        save = self.commands.actions_by_name["save"]
        save.setEnabled(not read_only)
        if read_only:
            save.setToolTip(f"{read_only}; save it under another name")
        else:
            save.setToolTip("Save the job (Ctrl+S)")
        history = self.session.history
        self.setWindowModified(history.unsaved)
        for name, what in (("undo", history.undo_name), ("redo", history.redo_name)):
            action = self.commands.actions_by_name[name]
            action.setEnabled(what is not None)
            action.setToolTip(f"{action.text()}: {what}" if what else f"Nothing to {name}")
        self.commands.actions_by_name["dark"].setChecked(self.session.dark)
        self.commands.actions_by_name["plain"].setChecked(self.session.plain_words)
        self.units.setCurrentIndex(
            next((i for i, (_, display) in enumerate(DISPLAYS) if _same(display, self.session.display)), 0)
        )

    # --- How it is put together ---

    def _give_keys(self) -> None:
        """Give commands and swing their keys; once the window stands, for Qt is slow to make the first."""
        self.commands.give_keys()
        QShortcut(QKeySequence("F1"), self).activated.connect(self._ask_word)
        for keys, degrees in TURNS.items():
            shortcut = QShortcut(QKeySequence(keys), self)
            shortcut.activated.connect(
                lambda degrees=degrees: self.session.swing(self.session.angle + degrees)
            )
        self._give_swing_keys()

    def _give_swing_keys(self) -> None:
        assert self.work is not None
        from configurator.ui.picture.swing import BEFORE_KEY, NEXT_KEY, SWEPT_KEY

        swing = self.work.swing
        for keys, act in (
            (NEXT_KEY, lambda: swing.step(forward=True)),
            (BEFORE_KEY, lambda: swing.step(forward=False)),
            (SWEPT_KEY, lambda: self.session.show_swept(not self.session.swept)),
        ):
            QShortcut(QKeySequence(keys), self).activated.connect(act)

    def _put_together(self) -> None:
        self.resize(*FIRST_SIZE)
        self.addToolBar(self.commands)
        self._add_recent()
        self._add_units()
        self.commands.actions_by_name["list"].setChecked(True)
        self.columns = QSplitter()
        self.columns.setChildrenCollapsible(False)
        self._room = QWidget()
        for widget in (self.openings, self._room):
            self.columns.addWidget(widget)
        self._share_room()
        central = QWidget()
        self._column = QVBoxLayout(central)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addWidget(self.columns, 1)
        self.setCentralWidget(central)
        self.restoreGeometry(self.preferences.layout("window"))

    def _share_room(self) -> None:
        self.columns.setStretchFactor(1, 1)
        self.columns.setSizes([look.LIST_WIDTH, FIRST_SIZE[0] - look.LIST_WIDTH - self.columns.handleWidth()])

    def _add_recent(self) -> None:
        button = self.commands.widgetForAction(self.commands.actions_by_name["open"])
        if isinstance(button, QToolButton):
            button.setMenu(self.files.recent_menu())
            button.setPopupMode(QToolButton.ToolButtonPopupMode.MenuButtonPopup)

    def _add_units(self) -> None:
        space = QWidget()
        space.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.commands.addWidget(space)
        self.units.setAccessibleName("units and precision of lengths")
        self.units.setToolTip("How lengths are shown; inside they are exact")
        for text, display in DISPLAYS:
            self.units.addItem(text, display)
        self.units.activated.connect(self._show_in)
        self.commands.addWidget(self.units)

    # --- What its commands do ---

    def fold(self, shown: bool) -> None:
        """Show the openings, or fold them away."""
        self.openings.setVisible(shown)

    def export(self) -> None:
        """Write the picture to a file."""
        self._catch_up()
        if self.work is None or self.work.picture.canvas is None or self.session.study is None:
            self.say("There is no picture to export yet.")
        else:
            self.files.export(self.work.picture.save)

    def use_plain_words(self, plain: bool) -> None:
        """Put the client's words first, or the trade's, and keep that."""
        self.preferences.plain_words = plain
        self.session.use_plain_words(plain)

    def use_dark(self, dark: bool) -> None:
        """Show light ink on a dark sheet, or dark ink on paper, and keep that."""
        self.preferences.dark = dark
        self.session.use_dark(dark)

    def _show_in(self, place: int) -> None:
        display = self.units.itemData(place)
        self.preferences.display = display
        self.session.show_in(display)

    def show_help(self) -> None:
        """Show the help."""
        from configurator.ui.window.help import HelpWindow

        if self.help is None:
            self.help = HelpWindow(self)
            self.help.words.clicked.connect(lambda _=False: self.show_word(""))
        self.help.show()
        self.help.raise_()

    def _ask_word(self) -> None:
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
            self.words = WordsWindow(self.session, self)
            self.words.field_wanted.connect(self._go_to_field)
        self.words.ask(about)
        self.words.show()
        self.words.raise_()
        self.words.activateWindow()

    def _go_to_field(self, path: str) -> None:
        self.turn_to("")
        self.activateWindow()
        self._ask_for(path)

    def _use_theme(self) -> None:
        application = QApplication.instance()
        if isinstance(application, QApplication):
            look.use_theme(application, self.session.dark)

    def _restore_layout(self) -> None:
        for name, splitter in self._splitters():
            splitter.restoreState(self.preferences.layout(name))

    def _splitters(self) -> list[tuple[str, QSplitter]]:
        if self.work is None:
            return []
        inner = [("work", self.work), ("middle", self.work.middle), ("rows", self.work.rows)]
        return [("columns", self.columns), *inner]

    # --- Qt's own ---

    def createPopupMenu(self) -> None:
        """Offer no menu that hides the commands: nothing would bring them back."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Tell once that the window stands on the screen."""
        super().paintEvent(event)
        if not self._was_painted:
            self._was_painted = True
            QTimer.singleShot(0, self.painted.emit)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask about work under way and about unsaved work before the window goes."""
        if not self.files.may_close():
            event.ignore()
            return
        self.files.close()
        if self.isFullScreen():
            self.turn_to("")  # a page gives the whole screen back: the next window begins without
        self.preferences.keep_layout("window", self.saveGeometry())
        for name, splitter in self._splitters():
            self.preferences.keep_layout(name, splitter.saveState())
        event.accept()


def _same(one: Display, other: Display) -> bool:
    return one.metric == other.metric and (one.metric or one.precision == other.precision)
