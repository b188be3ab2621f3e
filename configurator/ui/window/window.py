"""The window: menus, pages as tabs, the openings of the job, and beside them the work on one of them."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QApplication, QSizePolicy, QSplitter, QVBoxLayout, QWidget

from configurator.model import Opening
from configurator.ui.files.files import Files
from configurator.ui.kit import look
from configurator.ui.kit.layout import YieldingCombo
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import LOOKED, Session
from configurator.ui.window.beside import Beside
from configurator.ui.window.command_bar import RECENT, CommandBar, PageTabs, display_place
from configurator.ui.window.commands import DISPLAYS, command_menus
from configurator.ui.window.frame import Frame
from configurator.ui.window.lines import Lines
from configurator.ui.window.openings import OpeningsList
from configurator.units import Display

if TYPE_CHECKING:
    from configurator.ui.kit.message_line import MessageLine
    from configurator.ui.picture.picture import Picture
    from configurator.ui.window.pages import Pages
    from configurator.ui.window.palette import Place
    from configurator.ui.window.work import WorkArea

PROGRAM = "Opening Configurator"
FIRST_SIZE = (1280, 800)
ONLY_NOW = ("start", "import")
"""Pages that are not come back to at the next start."""
TURNS = {"Alt+Left": -1.0, "Alt+Right": 1.0, "Alt+PgUp": 15.0, "Alt+PgDown": -15.0}


class Window(Frame):
    """Every view shows the session's state and nothing else.

    It is first painted with the commands and the openings; then `fill` adds the work area, and `begin` loads
    what is worked out and the picture.

    Signals:
        picture_shown: the first picture stands in it.
    """

    picture_shown = Signal()

    def __init__(self, session: Session, preferences: Preferences) -> None:
        super().__init__()
        self.session = session
        self.preferences = preferences
        session.display, session.dark = preferences.display, preferences.dark
        session.plain_words, session.shop = preferences.plain_words, preferences.shop
        session.starts, session.parts_shown = preferences.starts, preferences.shown_parts
        self.openings = OpeningsList(session)
        self.work: WorkArea | None = None
        self.lines = Lines(session, lambda line: self._column.insertWidget(0, line))
        self.say, self.ask = self.lines.say, self.lines.ask
        self.files = Files(session, preferences, self, self.say, self.ask)
        self.pages: Pages | None = None
        self._work_waits = False
        self.beside = Beside(self, session, self.go_to_field, self._places, lambda: self.tabs.page)
        self.units = YieldingCombo()
        self.commands = CommandBar(command_menus(self), self)
        self.tabs = PageTabs()
        self._turns: list[QShortcut] = []
        self._put_together()
        session.changed.connect(self.show_state)
        session.refused.connect(self._show_refusal)
        session.missed.connect(self._ask_for)
        session.noted.connect(self.lines.note)
        session.asked.connect(self.beside.show_word)
        self._left_at = preferences.place(session.path) if session.path is not None else ("", "")
        session.select(self._left_at[1] or session.mark)
        self.show_state("open")

    # --- What it shows ---

    def fill(self) -> None:
        """Add the work area: what was said about the opening can now be read and changed."""
        from configurator.ui.window.work import WorkArea

        self.work = WorkArea(self.session)
        self.work.picture.measured.connect(self._show_measured)
        self.work.picture.commands = self.commands.actions_by_name
        self.columns.replaceWidget(1, self.work)
        self._room.deleteLater()
        self._share_room()
        self._restore_layout()
        self.work.show_state("open")
        self._give_keys()
        self.commands.show_icons(look.ink())
        self.turn_to("start" if self.is_begun_nowhere else self._left_at[0])

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
        self.openings.begin()
        self.picture_shown.emit()

    def show_state(self, by: str) -> None:
        """Bring every view in line with the session; `by` says what happened, so that a swing stays quick."""
        if by == "theme":
            self._use_theme()
        self.lines.take_back_what_is_over()
        if by not in LOOKED:
            self._show_title()
        if by == "open" and self.work is not None:
            self._turn_as_begun()
        if self.pages is not None:
            self.pages.show_state(by)
        if self.pages is not None and self.pages.work_is_folded:
            self._work_waits = True  # what nobody sees need not be drawn; it catches up when it is shown
            return
        if by not in LOOKED:
            self.openings.show_state()
        if self.work is not None:
            self.work.show_state(by)

    @property
    def is_begun_nowhere(self) -> bool:
        """Whether there is neither a file nor an opening: then the start page has what to do."""
        return self.session.path is None and not self.session.job.openings

    def _turn_as_begun(self) -> None:
        """Show the start page for a job that is begun nowhere yet, and leave it for any other."""
        if self.is_begun_nowhere:
            self.turn_to("start")
        elif self.pages is not None and self.pages.on_show == "start":
            self.turn_to("")

    def turn_to(self, page: str) -> None:
        """Show a page about the whole job in place of the work on one opening; an empty name ends that."""
        if page or self.pages is not None:
            self._all_pages().turn_to(page)
        else:
            self.commands.actions_by_name["work"].setChecked(True)

    def go_back(self) -> None:
        """Show the page that was on show before this one, or the work."""
        if self.pages is not None:
            self.pages.go_back()

    def begin_with(self, opening: Opening) -> None:
        """Begin a new job with an opening, asking first about unsaved work, and show it."""
        if self.files.may_leave():
            self.session.start_new()
            self.session.begin_with(opening)
            self.turn_to("")

    @property
    def line(self) -> "MessageLine | None":
        """The lines above the pages, if anything was said yet."""
        return self.lines.line

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
            self.pages.command_wanted.connect(lambda name: self.commands.actions_by_name[name].trigger())
            self.pages.file_wanted.connect(self.files.open_other)
            self.pages.job_wanted.connect(self.begin_with)
            self.pages.word_wanted.connect(self.beside.show_word)
        return self.pages

    def _lead_back(self, page: str, sentence: str) -> None:
        self.ask(
            f"waits on {page}", sentence, (("Show them", lambda: self.turn_to(page)),) if sentence else ()
        )

    def _show_turned(self) -> None:
        """Show which page is on show, and bring the work in line if it has come back."""
        from configurator.ui.window.pages import PAGES

        assert self.pages is not None
        on_show = self.pages.on_show
        for name in ("work", *PAGES):
            self.commands.actions_by_name[name].setChecked(name == (on_show or "work"))
        self.tabs.mark(on_show)
        self.commands.actions_by_name["back"].setEnabled(bool(on_show))
        for turn in self._turns:
            turn.setEnabled(not on_show)
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

    def _show_measured(self, words: str) -> None:
        self.say(words)
        self.commands.actions_by_name["measure"].setChecked(bool(words))

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
        read_only = " (read-only)" if self.session.read_only else ""
        self.setWindowTitle(f"{job} – {file}[*]{read_only} – {PROGRAM}")
        self.setWindowModified(self.session.history.unsaved)
        self.commands.show_state(self.session)
        self.units.setCurrentIndex(display_place(self.session.display))

    def _places(self) -> "Iterator[Place]":
        """Yield everything that can be found and gone to."""
        from configurator.ui.window.palette import places_of

        return places_of(self.commands, self.session, self.turn_to, self.go_to_field)

    # --- How it is put together ---

    def _give_keys(self) -> None:
        """Give commands and swing their keys; once the window stands, for Qt is slow to make the first."""
        self.commands.give_keys()
        QShortcut(QKeySequence("F10"), self).activated.connect(self.commands.open_menus)
        for keys, degrees in TURNS.items():
            turn = QShortcut(QKeySequence(keys), self)
            turn.activated.connect(lambda degrees=degrees: self.session.swing(self.session.angle + degrees))
            self._turns.append(turn)
        self.commands.actions_by_name["back"].setEnabled(False)

    def swing_on(self, forward: bool) -> None:
        """Turn the door to the next thing that happens in its swing, or to the one before."""
        if self.work is not None:
            self.work.swing.step(forward=forward)

    def _put_together(self) -> None:
        self.resize(*FIRST_SIZE)
        self.commands.addWidget(self.tabs)
        self.commands.addSeparator()
        self.commands.add_buttons()
        self._add_units()
        self.addToolBar(self.commands)
        self.tabs.wanted.connect(self.turn_to)
        self.commands.add_below(RECENT, self.files.recent_menu())
        names = ("add", "copy", "remove", "up", "down")
        self.openings.list.addActions([self.commands.actions_by_name[name] for name in names])
        self.openings.list.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        self.commands.actions_by_name["list"].setChecked(True)
        self.commands.actions_by_name["work"].setChecked(True)
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
        self.dropped.connect(self._take_dropped)
        self.restoreGeometry(self.preferences.layout("window"))

    def _share_room(self) -> None:
        self.columns.setStretchFactor(1, 1)
        self.columns.setSizes([look.LIST_WIDTH, FIRST_SIZE[0] - look.LIST_WIDTH - self.columns.handleWidth()])

    def _add_units(self) -> None:
        space = QWidget()
        space.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.commands.addWidget(space)
        self.units.setAccessibleName("units and precision of lengths")
        self.units.setToolTip("How lengths are shown; inside they are exact")
        self.units.addItems([words for words, _ in DISPLAYS])
        self.units.activated.connect(lambda place: self.show_in(DISPLAYS[place][1]))
        self.commands.addWidget(self.units)

    # --- What its commands do ---

    def with_picture(self, act: Callable[["Picture"], object]) -> None:
        """Do something with the picture; say so where there is none."""
        self._catch_up()
        if self.work is None or self.work.picture.canvas is None or self.session.study is None:
            self.say("There is no picture yet.")
        else:
            act(self.work.picture)

    def use_plain_words(self, plain: bool) -> None:
        """Put the client's words first, or the trade's, and keep that."""
        self.preferences.plain_words = plain
        self.session.use_plain_words(plain)

    def use_dark(self, dark: bool) -> None:
        """Show light ink on a dark sheet, or dark ink on paper, and keep that."""
        self.preferences.dark = dark
        self.session.use_dark(dark)

    def show_in(self, display: Display) -> None:
        """Show lengths in other units or to another fraction, and keep that."""
        self.preferences.display = display
        self.session.show_in(display)

    def find_opening(self) -> None:
        """Show the list of openings and put the keyboard where it is searched."""
        self.turn_to("")
        self.commands.actions_by_name["list"].setChecked(True)
        self.openings.show()
        self.openings.search()

    def go_to_field(self, path: str) -> None:
        """Show the work and put the keyboard into a field of it."""
        self.turn_to("")
        self.activateWindow()
        self._ask_for(path)

    def _use_theme(self) -> None:
        application = QApplication.instance()
        if isinstance(application, QApplication):
            look.use_theme(application, self.session.dark)
            self.commands.show_icons(look.ink())

    def _restore_layout(self) -> None:
        for name, splitter in self._splitters():
            splitter.restoreState(self.preferences.layout(name))

    def _keep_layout(self) -> None:
        page = self.pages.on_show if self.pages is not None else ""
        if self.session.path is not None and page not in ONLY_NOW:
            self.preferences.keep_place(self.session.path, page, self.session.mark)
        if self.isFullScreen():
            self.turn_to("")  # a page gives the whole screen back: the next window begins without
        self.preferences.keep_layout("window", self.saveGeometry())
        for name, splitter in self._splitters():
            self.preferences.keep_layout(name, splitter.saveState())

    def _splitters(self) -> list[tuple[str, QSplitter]]:
        if self.work is None:
            return []
        inner = [("work", self.work), ("middle", self.work.middle), ("rows", self.work.rows)]
        return [("columns", self.columns), *inner]

    def import_model(self) -> None:
        """Ask for a building model and show its doors before they are taken."""
        self.turn_to("import")
        self._all_pages().made["import"].ask_for_model()

    def _take_dropped(self, path: Path) -> None:
        """Open a job that was dropped; take any other file for a schedule to import."""
        if path.suffix.lower() == ".json":
            self.files.open_other(path)
        else:
            self.turn_to("import")
            self._all_pages().made["import"].read(path)

    # --- Qt's own ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Esc that nothing else took for the way back to the work."""
        if event.matches(QKeySequence.StandardKey.Cancel) and self.pages is not None and self.pages.on_show:
            self.turn_to("")
        else:
            super().keyPressEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask about work under way and about unsaved work before the window goes."""
        if not self.files.may_close():
            event.ignore()
            return
        self.files.close()
        self._keep_layout()
        event.accept()
