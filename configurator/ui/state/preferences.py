"""What the program remembers about how its user likes to see things, from one start to the next."""

import json
from pathlib import Path
from typing import cast, get_args

from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtGui import QGuiApplication

from configurator.units import Display, Precision

MOST_RECENT = 8
APPEARANCES = {"light": "light", "dark": "dark", "system": "as the system"}
"""How the window may look, to what a list says of it."""


class Preferences:
    """The user's settings; anything unreadable in them counts as never set."""

    def __init__(self, settings: QSettings) -> None:
        self._settings = settings

    @property
    def display(self) -> Display:
        """How lengths are shown."""
        precision = self._number("precision", Display().precision)
        known = precision if precision in get_args(Precision) else Display().precision
        return Display(cast(Precision, known), self._flag("metric"))

    @display.setter
    def display(self, display: Display) -> None:
        self._settings.setValue("precision", display.precision)
        self._settings.setValue("metric", display.metric)

    @property
    def appearance(self) -> str:
        """Whether the window is light, dark, or as the system is: one of APPEARANCES."""
        stored = str(self._settings.value("appearance", ""))
        usual = "dark" if self._flag("dark") else "light"  # what programs before this one kept
        return stored if stored in APPEARANCES else usual

    @appearance.setter
    def appearance(self, appearance: str) -> None:
        self._settings.setValue("appearance", appearance)

    @property
    def dark(self) -> bool:
        """Whether the window is dark, chosen so or because the system is."""
        if self.appearance != "system":
            return self.appearance == "dark"
        return QGuiApplication.styleHints().colorScheme().name == "Dark"

    @dark.setter
    def dark(self, dark: bool) -> None:
        self.appearance = "dark" if dark else "light"

    def problems(self) -> tuple[str, ...]:
        """Return a sentence for each stored value that is none, and what holds instead."""
        found = []
        precision = self._settings.value("precision", Display().precision)
        if str(precision) not in [str(each) for each in get_args(Precision)]:
            found.append(
                f"The stored precision “{str(precision)[:40]}” is none; 1/{self.display.precision} holds."
            )
        appearance = str(self._settings.value("appearance", "light"))
        if appearance not in APPEARANCES:
            found.append(f"The stored appearance “{appearance[:40]}” is none; {self.appearance} holds.")
        return tuple(found)

    def reset(self) -> None:
        """Forget what was chosen; files opened lately and the places of windows stay."""
        for name in ("precision", "metric", "appearance", "dark", "plain_words"):
            self._settings.remove(name)

    @property
    def plain_words(self) -> bool:
        """Whether the client's words come first."""
        return self._flag("plain_words")

    @plain_words.setter
    def plain_words(self, plain: bool) -> None:
        self._settings.setValue("plain_words", plain)

    @property
    def recent(self) -> list[Path]:
        """Project files opened or saved lately, the latest first."""
        stored = self._settings.value("recent", [])
        names = [stored] if isinstance(stored, str) else stored if isinstance(stored, list) else []
        return [Path(name) for name in names if isinstance(name, str)]

    def note_recent(self, path: Path) -> None:
        """Put a file at the head of the recent ones."""
        path = path.resolve()
        paths = [path, *(other for other in self.recent if other != path)]
        self._settings.setValue("recent", [str(each) for each in paths[:MOST_RECENT]])

    def place(self, path: Path) -> tuple[str, str]:
        """Return the page and the mark of the opening that a file was left on; empty where not known."""
        page, mark = self._places().get(str(path.resolve()), ("", ""))
        return page, mark

    def keep_place(self, path: Path, page: str, mark: str) -> None:
        """Remember what of a file is on show; of files no longer among the recent ones that is forgotten."""
        recent = {str(each) for each in self.recent}
        kept = {name: place for name, place in self._places().items() if name in recent}
        self._settings.setValue("places", json.dumps({**kept, str(path.resolve()): (page, mark)}))

    def _places(self) -> dict[str, tuple[str, str]]:
        try:
            stored = json.loads(str(self._settings.value("places", "{}")))
            return {str(name): (str(page), str(mark)) for name, (page, mark) in stored.items()}
        except (ValueError, TypeError, AttributeError):
            return {}

    def layout(self, name: str) -> QByteArray:
        """Return how a window or splitter stood; empty when it was never kept."""
        stored = self._settings.value(f"layout/{name}")
        return stored if isinstance(stored, QByteArray) else QByteArray()

    def keep_layout(self, name: str, state: QByteArray) -> None:
        """Remember how a window or splitter stands."""
        self._settings.setValue(f"layout/{name}", state)

    def hidden_columns(self, table: str) -> frozenset[str] | None:
        """Return the keys of the columns that a table does not show; None while nothing was chosen."""
        stored = self._settings.value(f"hidden/{table}")
        return frozenset(stored.split()) if isinstance(stored, str) else None

    def hide_columns(self, table: str, keys: frozenset[str]) -> None:
        """Remember which columns a table does not show."""
        self._settings.setValue(f"hidden/{table}", " ".join(sorted(keys)))

    def _flag(self, name: str) -> bool:
        return str(self._settings.value(name, "false")).lower() == "true"

    def _number(self, name: str, usual: int) -> int:
        try:
            return int(str(self._settings.value(name, usual)))
        except ValueError:
            return usual
