"""Help beside the work: pages with an index, pictures and search, opened where the user is."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QImage, QTextDocument
from PySide6.QtWidgets import QDialog, QLineEdit, QListWidget, QPushButton, QTextBrowser, QWidget

from configurator.resource_files import resource_path
from configurator.ui.kit.layout import across, down, fill
from configurator.ui.kit.look import GRID

WIDTH, HEIGHT = 200 * GRID, 150 * GRID
_INDEX = 50 * GRID
_BESIDE_PICTURE = 14 * GRID
"""Pixels of the page's width that a picture leaves free: margins and the scroll bar."""
KEYS = "Keys"


@dataclass(frozen=True, slots=True)
class HelpPage:
    """One page, in Markdown; `places` names where in the program it is opened first."""

    title: str
    places: tuple[str, ...]
    text: str

    def has(self, words: Iterable[str]) -> bool:
        """Whether all words stand in it, whatever their case."""
        whole = f"{self.title} {self.text}".lower()
        return all(word.lower() in whole for word in words)


@cache
def help_pages() -> tuple[HelpPage, ...]:
    """Return the pages in the order of the index, but for the one of keys, which the commands tell."""
    source = resource_path("help", "help.md").read_text(encoding="utf-8")
    return tuple(_page(part) for part in source.removeprefix("# ").split("\n# "))


def _page(part: str) -> HelpPage:
    title, places, text = part.split("\n", 2)
    return HelpPage(title, tuple(places.removeprefix("at: ").split(", ")), text.strip())


class _Pages(QTextBrowser):
    """Shows a page, its pictures as wide as there is room."""

    def loadResource(self, kind: int, name: QUrl | str) -> object:
        """Return one of the help's own pictures."""
        if kind != QTextDocument.ResourceType.ImageResource.value:
            return super().loadResource(kind, name)
        picture = QImage(str(resource_path("help", QUrl(name).path())))
        ratio, room = self.devicePixelRatioF(), max(self.width() - _BESIDE_PICTURE, 1)
        if picture.width() > room * ratio:
            picture = picture.scaledToWidth(round(room * ratio), Qt.TransformationMode.SmoothTransformation)
        picture.setDevicePixelRatio(ratio)
        return picture


class HelpWindow(QDialog):
    """Not modal: the work goes on behind it."""

    def __init__(self, parent: QWidget, keys: Iterable[tuple[str, str, str]]) -> None:
        """`keys` are menu, command and key of every command."""
        super().__init__(parent)
        self.setWindowTitle("Help")
        self.setModal(False)
        self.pages = (*help_pages(), HelpPage(KEYS, ("keys",), _table_of(keys)))
        self.search_line, self.index, self.page = QLineEdit(), QListWidget(), _Pages()
        self.words = QPushButton("All words…")
        self.words.setAutoDefault(False)
        self.search_line.setPlaceholderText("Find in help")
        self.search_line.setClearButtonEnabled(True)
        self.search_line.setAccessibleName("find in help")
        self.search_line.textChanged.connect(self._search)
        self.index.setAccessibleName("pages of help")
        self.index.setFixedWidth(_INDEX)
        self.index.currentRowChanged.connect(lambda _: self._show_page())
        self.page.setAccessibleName("page of help")
        self.page.setOpenLinks(False)
        left = down(self.search_line, (self.index, 1), (self.words, 0, Qt.AlignmentFlag.AlignLeft))
        fill(self, across(left, (self.page, 1), spacing=2 * GRID, margins=(4 * GRID,) * 4))
        self.resize(WIDTH, HEIGHT)
        self._search("")

    def ask(self, place: str = "") -> None:
        """Open the page about a place of the program; the one on show stays where there is none."""
        self.search_line.clear()
        found = (n for n, page in enumerate(self.pages) if place in page.places)
        self.index.setCurrentRow(next(found, max(self.index.currentRow(), 0)))
        self.show()
        self.raise_()
        self.activateWindow()
        self.index.setFocus()

    def _search(self, typed: str) -> None:
        """List the pages that have all words typed, and show the first with the first word marked."""
        for row, page in enumerate(self.pages):
            if self.index.count() <= row:
                self.index.addItem(page.title)
            self.index.item(row).setHidden(not page.has(typed.split()))
        shown = [row for row in range(len(self.pages)) if not self.index.item(row).isHidden()]
        if shown and self.index.currentRow() not in shown:
            self.index.setCurrentRow(shown[0])
        self._show_page(bool(shown))

    def _show_page(self, found: bool = True) -> None:
        page = self.pages[max(self.index.currentRow(), 0)]
        if not found:
            self.page.setMarkdown("No page has these words. Try fewer letters.")
            return
        self.page.setMarkdown(f"## {page.title}\n\n{page.text}")
        if words := self.search_line.text().split():
            self.page.find(words[0])


def _table_of(keys: Iterable[tuple[str, str, str]]) -> str:
    """Return every command with its key as a table, and where they are found."""
    rows = "\n".join(f"| {menu} | {command} | {key} |" for menu, command, key in keys)
    above = "F10 or Alt opens the menus. Ctrl+K finds any command, opening or field by its words."
    return f"{above}\n\n| Menu | Command | Key |\n|---|---|---|\n{rows}"
