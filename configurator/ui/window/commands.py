"""Every command of the window, as data: one list feeds the menus, the tool bar, the keys and the palette."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from configurator.ui.files.files import Files
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session
from configurator.ui.window.openings import OpeningsList
from configurator.units import Display

if TYPE_CHECKING:  # the picture is loaded once the window was painted
    from configurator.ui.picture.picture import Picture

DISPLAYS = (
    ("inches to 1/16", Display(16)),
    ("inches to 1/32", Display(32)),
    ("inches to 1/64", Display(64)),
    ("millimetres", Display(metric=True)),
)


@dataclass(frozen=True, slots=True)
class Command:
    """One command; `toggles` is for one that stays on until it is chosen again.

    `icon` names the picture with which it stands in the tool bar; without one it is in the menus only.
    """

    name: str
    title: str
    tip: str
    keys: str
    run: Callable[..., object]
    toggles: bool = False
    icon: str = ""


Menus = Mapping[str, tuple[tuple[Command, ...], ...]]
"""Title of a menu to its commands, in groups with a line between."""


class Asked(Protocol):
    """The windows beside the main one, as far as commands show them."""

    def show_help(self) -> None:
        """Show the help."""

    def ask_word(self) -> None:
        """Show the word of what has the keyboard."""

    def show_word(self, about: str) -> None:
        """Show a word, or all of them."""

    def find_anything(self) -> None:
        """Find a command, an opening or a field."""

    def show_preferences(self, preferences: Preferences) -> None:
        """Show how the user likes the program."""

    def trace_drawing(self) -> None:
        """Ask for a drawing whose lines are taken."""

    def show_about(self) -> None:
        """Show the versions."""


class Commanded(Protocol):
    """What the commands act on: the window, as far as they need it."""

    session: Session
    files: Files
    preferences: Preferences
    openings: OpeningsList

    @property
    def beside(self) -> Asked:
        """The windows beside it."""

    def turner(self, name: str) -> Callable[[bool], None]:
        """Return what shows a page, or the work again."""

    def turn_to(self, page: str) -> None:
        """Show a page, or the work for an empty name."""

    def go_back(self) -> None:
        """Show what was on show before."""

    def close(self) -> bool:
        """Close the window."""

    def find_opening(self) -> None:
        """Find an opening in the list."""

    def with_picture(self, act: Callable[["Picture"], object]) -> None:
        """Do something with the picture, if there is one."""

    def swing_on(self, forward: bool) -> None:
        """Turn the door to the next thing that happens, or the one before."""

    def use_plain_words(self, plain: bool) -> None:
        """Put the client's words first, or the trade's."""

    def import_model(self) -> None:
        """Ask for a building model and show its doors before they are taken."""

    def use_dark(self, dark: bool) -> None:
        """Show light ink on a dark sheet, or dark ink on paper."""

    def show_in(self, display: Display) -> None:
        """Show lengths so."""


def command_menus(window: Commanded) -> Menus:
    """Return every command of the window by its menu."""
    return {
        "File": (_jobs(window), _saving(window.files), (_preferences(window), _quit(window))),
        "Edit": (_changes(window.session), _finding(window), _openings(window)),
        "View": (_shown(window), _lengths(window)),
        "Picture": (_framed(window), _swing(window), _parts(window), _written(window)),
        "Go": (_pages(window), _back(window)),
        "Help": (_help(window.beside),),
    }


def _page(window: Commanded, name: str, title: str, tip: str, keys: str) -> Command:
    """Return the command that shows a page, or the work again."""
    return Command(name, title, tip, keys, window.turner(name), toggles=True)


def _jobs(window: Commanded) -> tuple[Command, ...]:
    files = window.files
    start = "Jobs worked on lately, and a new one by three questions"
    schedule = "Take an architect's door schedule into the job"
    lines = "Lay lines of a drawing (DXF) under the plan on show, or take them as its frame"
    model = "Take the doors of an architect's building model (IFC) into the job"
    return (
        _page(window, "start", "Start page", start, "Alt+Home"),
        Command("new", "New job", "Begin a new job", "Ctrl+N", files.new, icon="new"),
        Command("open", "Open…", "Open a project file", "Ctrl+O", files.open, icon="open"),
        Command("demo", "Demo job", "Open the job of the program", "Ctrl+Shift+D", files.open_demo),
        _page(window, "import", "Import a schedule…", schedule, "Ctrl+I"),
        Command("trace", "Lines of a drawing…", lines, "Ctrl+Shift+U", window.beside.trace_drawing),
        Command("model", "From a building model…", model, "Ctrl+Shift+I", window.import_model),
    )


def _saving(files: Files) -> tuple[Command, ...]:
    back = lambda: files.questions.offer_discarded()  # noqa: E731  # loaded on use
    aside = "Unsaved work that was discarded in the last 30 days"
    return (
        Command("save", "Save", "Save the job", "Ctrl+S", files.save, icon="save"),
        Command("save_as", "Save as…", "Save under another name", "Ctrl+Shift+S", files.save_as),
        Command("discarded", "Bring back discarded work", aside, "Ctrl+Alt+Z", back),
    )


def _preferences(window: Commanded) -> Command:
    tip = "Lengths, appearance, words and hinge policy, each with where it is kept"
    show = lambda: window.beside.show_preferences(window.preferences)  # noqa: E731
    return Command("preferences", "Preferences…", tip, "Ctrl+,", show)


def _quit(window: Commanded) -> Command:
    return Command("quit", "Quit", "Close the window", "Ctrl+Q", window.close)


def _changes(session: Session) -> tuple[Command, ...]:
    return (
        Command("undo", "Undo", "Take back the last change", "Ctrl+Z", session.undo, icon="undo"),
        Command("redo", "Redo", "Do it again", "Ctrl+Shift+Z", session.redo, icon="redo"),
    )


def _finding(window: Commanded) -> tuple[Command, ...]:
    listed = "Type into the list of openings"
    words = "Find a command, an opening or a field by its words"
    return (
        Command("find", "Find anything…", words, "Ctrl+K", window.beside.find_anything, icon="find"),
        Command("find_opening", "Find an opening", listed, "Ctrl+Shift+F", window.find_opening),
    )


def _openings(window: Commanded) -> tuple[Command, ...]:
    session, listed = window.session, window.openings
    like, gone = "Add an opening like the one on show", "Remove the opening on show"
    up, down = "Earlier in the job, as dragging its row does", "Later in the job, as dragging its row does"
    return (
        Command("add", "Add an opening", "Add a typical opening", "Ctrl+Shift+N", session.add_opening),
        Command("copy", "Copy the opening", like, "Ctrl+Shift+K", session.copy_opening),
        Command("remove", "Remove the opening", gone, "Ctrl+Shift+Del", session.remove_opening),
        Command("up", "Move the opening up", up, "Ctrl+Shift+PgUp", lambda: listed.shift(-1)),
        Command("down", "Move the opening down", down, "Ctrl+Shift+PgDown", lambda: listed.shift(1)),
        Command("next", "Next opening", "Show the next opening", "Ctrl+PgDown", lambda: listed.step(1)),
        Command("before", "Opening before", "Show the one before", "Ctrl+PgUp", lambda: listed.step(-1)),
    )


def _shown(window: Commanded) -> tuple[Command, ...]:
    listed, plain = "Show or fold away the openings", "The client's words first"
    fold = lambda shown: window.openings.setVisible(shown)  # noqa: E731
    return (
        Command("list", "List of openings", listed, "F9", fold, toggles=True, icon="list"),
        Command("plain", "Plain words", plain, "Ctrl+L", window.use_plain_words, toggles=True),
        Command("dark", "Dark", "Light ink on slate", "Ctrl+D", window.use_dark, toggles=True),
    )


def _lengths(window: Commanded) -> tuple[Command, ...]:
    def shower(display: Display) -> Callable[[bool], None]:
        return lambda _: window.show_in(display)

    tip = "How lengths are shown; inside they are exact"
    return tuple(
        Command(f"lengths {n}", f"Lengths in {words}", tip, f"Ctrl+Alt+{n}", shower(display), toggles=True)
        for n, (words, display) in enumerate(DISPLAYS, 1)
    )


def _swing(window: Commanded) -> tuple[Command, ...]:
    following = "Turn the door to the next thing that happens"
    before = "Turn the door to what happened before"
    sweep = "Show what the leaf and its hardware sweep"
    return (
        Command("moment", "Next moment of the swing", following, "F8", lambda: window.swing_on(True)),
        Command("moment before", "Moment before", before, "Shift+F8", lambda: window.swing_on(False)),
        Command("sweep", "Sweep", sweep, "F7", window.session.show_swept, toggles=True),
    )


PARTS = {
    "frame": ("Dimensions of the frame", "Face, rabbet, stop, throat and depth"),
    "wall": ("Dimensions of the wall", "Its thickness and its layers"),
    "things": ("Dimensions along the wall", "How far things are from the frame, and how far they stand out"),
}
"""Kind of part to the command that shows its dimensions, and what these are."""


def _parts(window: Commanded) -> tuple[Command, ...]:
    def shower(kind: str) -> Callable[[bool], None]:
        def show(shown: bool) -> None:
            session = window.session
            session.parts_shown = session.parts_shown | {kind} if shown else session.parts_shown - {kind}
            window.preferences.shown_parts = session.parts_shown
            session.changed.emit("display")

        return show

    return tuple(
        Command(f"parts {kind}", title, tip, f"Ctrl+Alt+Shift+{n}", shower(kind), toggles=True)
        for n, (kind, (title, tip)) in enumerate(PARTS.items(), 1)
    )


def _framed(window: Commanded) -> tuple[Command, ...]:
    def larger(way: int) -> Callable[[], None]:
        return lambda: window.with_picture(lambda picture: picture.canvas.step(way))

    fit, true = "Show the whole argument again", "An inch of the plan as an inch of the screen"
    measure = "Click two places: corners, centres and edges hold. Esc ends it"
    return (
        Command("zoom_in", "Larger", "Show it larger", "Ctrl++", larger(1), icon="zoom_in"),
        Command("zoom_out", "Smaller", "Show it smaller", "Ctrl+-", larger(-1), icon="zoom_out"),
        Command("fit", "Fit", fit, "Ctrl+0", lambda: window.with_picture(_fit), icon="fit"),
        Command("true", "True size", true, "Ctrl+1", lambda: window.with_picture(_show_true_size)),
        Command("measure", "Measure", measure, "Ctrl+M", _measure(window), toggles=True, icon="measure"),
    )


def _measure(window: Commanded) -> Callable[[bool], None]:
    def measure(wanted: bool) -> None:
        window.turn_to("")
        window.with_picture(lambda picture: picture.canvas.measure(wanted))

    return measure


def _fit(picture: "Picture") -> None:
    picture.canvas.fit()


def _show_true_size(picture: "Picture") -> None:
    picture.canvas.show_true_size()


def _written(window: Commanded) -> tuple[Command, ...]:
    def copier(ending: str) -> Callable[[], None]:
        return lambda: window.with_picture(lambda picture: picture.copy(ending))

    image, drawing, written = "Copy it as an image", "Copy it as a drawing", "Write the picture to a file"
    export = lambda: window.with_picture(lambda picture: window.files.export(picture.save))  # noqa: E731
    return (
        Command("copy_png", "Copy picture", image, "Ctrl+Shift+C", copier(".png"), icon="copy"),
        Command("copy_svg", "Copy picture as SVG", drawing, "Ctrl+Shift+V", copier(".svg")),
        Command("export", "Export picture…", written, "Ctrl+Shift+E", export),
    )


def _pages(window: Commanded) -> tuple[Command, ...]:
    client = "Three questions, a large picture and plain sentences, all else put away"
    sheets = "Plan, elevation and details to scale: to see, to write to a file, to print"
    practice = "Problems to solve, from easy to hard, with worked solutions"
    work = "One opening: what is said of it, its picture, and its widths compared"
    return (
        Command("work", "Work", work, "F3", lambda _: window.turn_to(""), toggles=True),
        _page(window, "client", "Client view", client, "F5"),
        _page(window, "schedule", "Schedule", "All openings of the job as a table", "F6"),
        _page(window, "order", "Order", "The hinges of the whole job as order lines", "Ctrl+Shift+O"),
        _page(window, "sheets", "Sheets", sheets, "Ctrl+P"),
        _page(window, "practice", "Practice", practice, "F4"),
    )


def _back(window: Commanded) -> tuple[Command, ...]:
    return (Command("back", "Back", "Back to what was on show before", "Alt+Left", window.go_back),)


def _help(beside: Asked) -> tuple[Command, ...]:
    words = "Every word of the trade, with a drawing"
    what = "What the field with the keyboard means"
    pages = "Pages about all there is, opened where you are"
    return (
        Command("help", "Help", pages, "Shift+F1", beside.show_help),
        Command("what", "What is this?", what, "F1", beside.ask_word),
        Command("words", "Words", words, "Ctrl+F1", lambda: beside.show_word("")),
        Command("about", "About", "Versions, to be copied", "Ctrl+Shift+F1", beside.show_about),
    )
