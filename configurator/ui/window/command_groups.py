"""The window's commands, group by group as they stand in the row."""

from typing import TYPE_CHECKING

from configurator.ui.window.commands import Command

if TYPE_CHECKING:
    from configurator.ui.window.window import Window


def command_groups(window: "Window") -> list[list[Command]]:
    """Return every command of the window, in the order of the row."""
    return [_views(window), _files(window), _changes(window), _pictures(window), _rest(window)]


def _page(window: "Window", name: str, title: str, tip: str, keys: str) -> Command:
    """Return the command that shows a page, or the work again."""
    return Command(name, title, tip, keys, window.turner(name), toggles=True)


def _views(window: "Window") -> list[Command]:
    client = "Three questions, a large picture and plain sentences, all else put away"
    schedule = "All openings of the job as a table, or the work on one of them"
    order = "The hinges of the whole job as order lines, or the work on one opening"
    return [
        Command("list", "Openings", "Show or fold away the openings", "F9", window.fold, toggles=True),
        _page(window, "client", "Client view", client, "F5"),
        _page(window, "schedule", "Schedule", schedule, "F6"),
        _page(window, "order", "Order", order, "Ctrl+Shift+O"),
    ]


def _files(window: "Window") -> list[Command]:
    files = window.files
    return [
        Command("new", "New", "Begin a new job", "Ctrl+N", files.new),
        Command("open", "Open…", "Open a project file", "Ctrl+O", files.open),
        Command("save", "Save", "Save the job", "Ctrl+S", files.save),
        Command("save_as", "Save as…", "Save under another name", "Ctrl+Shift+S", files.save_as),
        _page(window, "import", "Import…", "Take a door schedule into the job", "Ctrl+I"),
    ]


def _changes(window: "Window") -> list[Command]:
    session = window.session
    return [
        Command("undo", "Undo", "Take back the last change", "Ctrl+Z", session.undo),
        Command("redo", "Redo", "Do it again", "Ctrl+Shift+Z", session.redo),
    ]


def _pictures(window: "Window") -> list[Command]:
    sheets = "Plan, elevation and details to scale: to see, to write to a file, to print"
    written = "Write the picture to a file"
    return [
        _page(window, "sheets", "Sheets", sheets, "Ctrl+P"),
        Command("export", "Export picture…", written, "Ctrl+Shift+E", window.export),
    ]


def _rest(window: "Window") -> list[Command]:
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
