"""The one row of commands, as data: what each is called, its keys, and what it does."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QToolBar, QWidget

from configurator.ui.files.files import Files
from configurator.ui.state.session import Session


@dataclass(frozen=True, slots=True)
class Command:
    """One command; `toggles` is for one that stays on until it is chosen again."""

    name: str
    title: str
    tip: str
    keys: str
    run: Callable[..., object]
    toggles: bool = False


class CommandBar(QToolBar):
    """The commands as buttons with words, in groups; each action is in `actions_by_name`."""

    def __init__(self, groups: list[list[Command]], owner: QWidget) -> None:
        super().__init__("Commands")
        self.actions_by_name: dict[str, QAction] = {}
        self._keys: dict[str, Command] = {}
        self.setMovable(False)
        self.setFloatable(False)
        for group in groups:
            if self.actions_by_name:
                self.addSeparator()
            for command in group:
                self._add(command, owner)

    def _add(self, command: Command, owner: QWidget) -> None:
        action = QAction(command.title, owner)
        action.setToolTip(command.tip)
        action.setCheckable(command.toggles)
        if command.toggles:
            action.triggered.connect(command.run)
        else:
            action.triggered.connect(lambda _=False: command.run())
        self.addAction(action)
        self.actions_by_name[command.name] = action
        self._keys[command.name] = command

    def give_keys(self) -> None:
        """Give the actions their keys. Not at first: the first shortcut makes every list of keys Qt knows."""
        for name, command in self._keys.items():
            action = self.actions_by_name[name]
            action.setShortcut(QKeySequence(command.keys))
            if keys := action.shortcut().toString(QKeySequence.SequenceFormat.NativeText):
                action.setToolTip(f"{command.tip} ({keys})")


class Commanded(Protocol):
    """What the commands act on: the window, as far as they need it."""

    session: Session
    files: Files

    def turner(self, name: str) -> Callable[[bool], None]:
        """Return what shows a page, or the work again."""

    def fold(self, shown: bool) -> None:
        """Show or fold away the openings."""

    def export(self) -> None:
        """Write the picture to a file."""

    def use_plain_words(self, plain: bool) -> None:
        """Put the client's words first, or the trade's."""

    def use_dark(self, dark: bool) -> None:
        """Show light ink on a dark sheet, or dark ink on paper."""

    def show_help(self) -> None:
        """Show the window of help."""


def command_groups(window: Commanded) -> list[list[Command]]:
    """Return every command of the window, in the order of the row."""
    return [_views(window), _files(window), _changes(window), _pictures(window), _rest(window)]


def _page(window: Commanded, name: str, title: str, tip: str, keys: str) -> Command:
    """Return the command that shows a page, or the work again."""
    return Command(name, title, tip, keys, window.turner(name), toggles=True)


def _views(window: Commanded) -> list[Command]:
    client = "Three questions, a large picture and plain sentences, all else put away"
    schedule = "All openings of the job as a table, or the work on one of them"
    order = "The hinges of the whole job as order lines, or the work on one opening"
    return [
        Command("list", "Openings", "Show or fold away the openings", "F9", window.fold, toggles=True),
        _page(window, "client", "Client view", client, "F5"),
        _page(window, "schedule", "Schedule", schedule, "F6"),
        _page(window, "order", "Order", order, "Ctrl+Shift+O"),
    ]


def _files(window: Commanded) -> list[Command]:
    files = window.files
    return [
        Command("new", "New", "Begin a new job", "Ctrl+N", files.new),
        Command("open", "Open…", "Open a project file", "Ctrl+O", files.open),
        Command("save", "Save", "Save the job", "Ctrl+S", files.save),
        Command("save_as", "Save as…", "Save under another name", "Ctrl+Shift+S", files.save_as),
        _page(window, "import", "Import…", "Take a door schedule into the job", "Ctrl+I"),
    ]


def _changes(window: Commanded) -> list[Command]:
    session = window.session
    return [
        Command("undo", "Undo", "Take back the last change", "Ctrl+Z", session.undo),
        Command("redo", "Redo", "Do it again", "Ctrl+Shift+Z", session.redo),
    ]


def _pictures(window: Commanded) -> list[Command]:
    sheets = "Plan, elevation and details to scale: to see, to write to a file, to print"
    written = "Write the picture to a file"
    return [
        _page(window, "sheets", "Sheets", sheets, "Ctrl+P"),
        Command("export", "Export picture…", written, "Ctrl+Shift+E", window.export),
    ]


def _rest(window: Commanded) -> list[Command]:
    plain, practice = (
        "The client's words first",
        "Problems to solve, from easy to hard, with worked solutions",
    )
    keys = "Keys, and how lengths are typed"
    return [
        Command("plain", "Plain words", plain, "Ctrl+L", window.use_plain_words, toggles=True),
        Command("dark", "Dark", "Light ink on slate", "Ctrl+D", window.use_dark, toggles=True),
        _page(window, "practice", "Practice", practice, "F4"),
        Command("help", "Help", keys, "Shift+F1", window.show_help),
    ]
