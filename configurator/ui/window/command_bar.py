"""Menus, tool bar, keys and tabs, all made from the one list of commands."""

from collections.abc import Iterator

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QAction, QIcon, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu, QMenuBar, QTabBar, QToolBar

from configurator.ui.kit import look
from configurator.ui.state.session import Session
from configurator.ui.window.commands import DISPLAYS, PARTS, Command, Menus
from configurator.units import Display

RECENT = "open"
"""The command below which the menu has the files opened lately."""


class CommandBar(QToolBar):
    """The actions of all commands by name; as a tool bar it shows those that have an icon."""

    def __init__(self, menus: Menus, owner: QMainWindow) -> None:
        super().__init__("Commands")
        self.every = {command.name: command for command in _all(menus)}
        self.actions_by_name = {name: _action(command, owner) for name, command in self.every.items()}
        self.menus: dict[str, QMenu] = {}
        self.setMovable(False)
        self.setFloatable(False)
        owner.addActions(list(self.actions_by_name.values()))  # so that keys work where no menu is on show
        self._menu_bar = owner.menuBar()
        for title, groups in menus.items():
            self._add_menu(self._menu_bar, title, groups)

    def add_buttons(self) -> None:
        """Put the commands that have an icon on the bar, in groups as in the menus."""
        for action in self._with_icons():
            self.addAction(action)

    def add_below(self, name: str, menu: QMenu) -> None:
        """Put a menu of its own below a command."""
        action = self.actions_by_name[name]
        holder = next(menu for menu in self.menus.values() if action in menu.actions())
        rest = holder.actions()[holder.actions().index(action) + 1]
        holder.insertMenu(rest, menu)

    def open_menus(self) -> None:
        """Put the keyboard on the first menu."""
        self._menu_bar.setFocus()
        self._menu_bar.setActiveAction(self._menu_bar.actions()[0])

    def show_icons(self, ink: str) -> None:
        """Draw the icons in a colour; once the window stands, for Qt takes a while to load what draws."""
        for name, command in self.every.items():
            if command.icon:
                self.actions_by_name[name].setIcon(look.icon(command.icon, ink))

    def give_keys(self) -> None:
        """Give the actions their keys. Not at first: the first shortcut makes every list of keys Qt knows."""
        for name, command in self.every.items():
            action = self.actions_by_name[name]
            action.setShortcut(QKeySequence(command.keys))
            if keys := action.shortcut().toString(QKeySequence.SequenceFormat.NativeText):
                action.setToolTip(f"{command.tip} ({keys})")

    def show_state(self, session: Session) -> None:
        """Say what undo and redo would do, and which commands there are and are on."""
        actions, history = self.actions_by_name, session.history
        for name, what in (("undo", history.undo_name), ("redo", history.redo_name)):
            actions[name].setEnabled(what is not None)
            actions[name].setToolTip(f"{name.capitalize()}: {what}" if what else f"Nothing to {name}")
            actions[name].setText(f"{name.capitalize()} {what or ''}".rstrip())
        save, read_only = actions["save"], session.read_only
        save.setEnabled(not read_only)
        save.setToolTip(f"{read_only}; save it under another name" if read_only else "Save the job (Ctrl+S)")
        for name in ABOUT_AN_OPENING:
            actions[name].setEnabled(session.opening is not None)
        for name, on in (("dark", session.dark), ("plain", session.plain_words), ("sweep", session.swept)):
            actions[name].setChecked(on)
        for kind in PARTS:
            actions[f"parts {kind}"].setChecked(kind in session.parts_shown)
        for place in range(len(DISPLAYS)):
            actions[f"lengths {place + 1}"].setChecked(place == display_place(session.display))

    def _with_icons(self) -> Iterator[QAction]:
        empty = QIcon(look.no_icon())
        for name, command in self.every.items():
            if command.icon:
                action = self.actions_by_name[name]
                action.setIcon(empty)  # it keeps the room: words would stand there until the icons are drawn
                action.setIconVisibleInMenu(False)
                yield action

    def _add_menu(self, bar: QMenuBar, title: str, groups: tuple[tuple[Command, ...], ...]) -> None:
        menu = self.menus[title] = bar.addMenu(f"&{title}")
        menu.setToolTipsVisible(True)
        for group in groups:
            if not menu.isEmpty():
                menu.addSeparator()
            menu.addActions([self.actions_by_name[command.name] for command in group])


ABOUT_AN_OPENING = ("copy", "remove", "up", "down", "next", "before")
"""Commands that need an opening on show."""


def display_place(display: Display) -> int:
    """Return the place among DISPLAYS of a way to show lengths; of millimetres there is one."""
    same = (place for place, (_, one) in enumerate(DISPLAYS) if _key(one) == _key(display))
    return next(same, 0)


def _key(display: Display) -> tuple[bool, int]:
    return display.metric, 0 if display.metric else display.precision


TABS = {
    "": "Work",
    "client": "Client view",
    "schedule": "Schedule",
    "order": "Order",
    "sheets": "Sheets",
    "practice": "Practice",
    "start": "Start",
    "import": "Import",
}
"""Page to what its tab says; the last two are there only while they are on show."""
_WHILE_ON_SHOW = ("start", "import")


class PageTabs(QTabBar):
    """A tab for each page, the one on show in front.

    Signals: wanted(str), a page that was chosen; empty for the work.
    """

    wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("pages")
        self.setDrawBase(False)
        self.setExpanding(False)
        self.setUsesScrollButtons(False)
        for page, words in TABS.items():
            place = self.addTab(words)
            self.setTabVisible(place, page not in _WHILE_ON_SHOW)
        self.currentChanged.connect(lambda place: self.wanted.emit(list(TABS)[place]))

    @property
    def page(self) -> str:
        """Return which page is on show; empty for the work."""
        return list(TABS)[self.currentIndex()]

    def mark(self, page: str) -> None:
        """Show which page is on show."""
        place = list(TABS).index(page)
        self.blockSignals(True)
        self.setTabVisible(place, True)
        self.setCurrentIndex(place)
        for other in _WHILE_ON_SHOW:
            self.setTabVisible(list(TABS).index(other), other == page)
        self.blockSignals(False)
        self.updateGeometry()

    def minimumSizeHint(self) -> QSize:
        """Ask for the room of every tab: the bar would cut them before it gives up room left over."""
        return self.sizeHint()


def _all(menus: Menus) -> Iterator[Command]:
    for groups in menus.values():
        for group in groups:
            yield from group


def _action(command: Command, owner: QMainWindow) -> QAction:
    action = QAction(command.title, owner)
    action.setToolTip(command.tip)
    action.setCheckable(command.toggles)
    action.setMenuRole(QAction.MenuRole.NoRole)
    if command.toggles:
        action.triggered.connect(command.run)
    else:
        action.triggered.connect(lambda _=False: command.run())
    return action
