"""What the program remembers about how its user likes to see things, from one start to the next."""

import json
from pathlib import Path
from typing import Any, cast, get_args

from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtGui import QGuiApplication, QImageReader

from configurator.model import Shop
from configurator.ui.state import edits
from configurator.units import Display, Precision

MOST_RECENT = 8
CHOICES = (
    "precision",
    "metric",
    "appearance",
    "dark",
    "plain_words",
    "keep_after",
    "shop_name",
    "shop_logo",
    "starts",
    "shown_parts",
)
"""The names of what a user chooses, as it is stored."""
KEEP_AFTER = (2, 4, 10, 30, 60)
"""Seconds from an edit until unsaved work is kept, to choose from."""
USUALLY_KEPT_AFTER = 4
LONGEST_NAME = 80
LOGO_ENDINGS = (".png", ".jpg", ".jpeg")
LARGEST_LOGO = 4 * 2**20
"""Bytes; the logo goes into every page that is written."""
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
        keep_after = str(self._settings.value("keep_after", USUALLY_KEPT_AFTER))
        if keep_after not in [str(each) for each in KEEP_AFTER]:
            found.append(f"“{keep_after[:40]}” s is no time to keep work after; {self.keep_after} s holds.")
        if why_not := self._starts()[1]:
            found.append(f"What is stored for new openings is left out: {why_not.rstrip('.')}.")
        if why_not := logo_trouble(self._logo):
            found.append(f"{why_not} Pages go out without a logo.")
        return tuple(found)

    @property
    def keep_after(self) -> int:
        """Seconds from an edit until unsaved work is kept against a crash: one of KEEP_AFTER."""
        stored = self._number("keep_after", USUALLY_KEPT_AFTER)
        return stored if stored in KEEP_AFTER else USUALLY_KEPT_AFTER

    @keep_after.setter
    def keep_after(self, seconds: int) -> None:
        self._settings.setValue("keep_after", seconds)

    @property
    def starts(self) -> dict[str, Any]:
        """What new openings begin with where nothing is said of it, by path; nothing where it cannot be."""
        return self._starts()[0]

    @starts.setter
    def starts(self, starts: dict[str, Any]) -> None:
        self._settings.setValue("starts", json.dumps(starts))

    def _starts(self) -> tuple[dict[str, Any], str]:
        """Return the starts, or none with the reason why those that are stored cannot be."""
        stored = str(self._settings.value("starts", "{}"))
        try:
            starts = {path: value for path, value in json.loads(stored).items() if path in edits.STARTS}
            edits.typical_opening("1", starts)
        except (ValueError, TypeError, AttributeError, edits.RefusedError) as error:
            why = error.about("") if isinstance(error, edits.RefusedError) else "it cannot be read"
            return {}, why
        return starts, ""

    @property
    def shop(self) -> Shop:
        """Who hands pages out; a logo that cannot be read counts as none."""
        name = str(self._settings.value("shop_name", ""))[:LONGEST_NAME]
        return Shop(name, None if logo_trouble(self._logo) else self._logo)

    @shop.setter
    def shop(self, shop: Shop) -> None:
        self._settings.setValue("shop_name", shop.name[:LONGEST_NAME])
        self._settings.setValue("shop_logo", "" if shop.logo is None else str(shop.logo))

    @property
    def _logo(self) -> Path | None:
        stored = str(self._settings.value("shop_logo", ""))
        return Path(stored) if stored else None

    def reset(self) -> None:
        """Forget what was chosen; files opened lately and the places of windows stay."""
        for name in CHOICES:
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

    @property
    def shown_parts(self) -> frozenset[str]:
        """The kinds of parts that have their dimensions in the picture."""
        return frozenset(str(self._settings.value("shown_parts", "")).split())

    @shown_parts.setter
    def shown_parts(self, kinds: frozenset[str]) -> None:
        self._settings.setValue("shown_parts", " ".join(sorted(kinds)))

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


def logo_trouble(logo: Path | None) -> str:
    """Return why a file is no logo, as a sentence; empty where it is one, or where there is none."""
    if logo is None:
        return ""
    if not logo.is_file():
        return f"The logo {logo} is not there."
    if logo.suffix.lower() not in LOGO_ENDINGS or not QImageReader(str(logo)).canRead():
        return f"{logo.name} is no picture that a page can take: a logo is a PNG or JPEG file."
    if logo.stat().st_size > LARGEST_LOGO:
        return f"{logo.name} is larger than {LARGEST_LOGO // 2**20} MB: a logo goes into every page."
    return ""
