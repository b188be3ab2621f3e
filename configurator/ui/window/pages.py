"""Pages about the whole job that stand in place of the work on one opening; each made when first shown."""

from collections.abc import Mapping
from importlib import import_module
from types import MappingProxyType
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QSplitter, QWidget

from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session

PAGES: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "start": ("configurator.ui.window.start", "StartPage"),
        "schedule": ("configurator.ui.schedule.page", "SchedulePage"),
        "order": ("configurator.ui.order.page", "OrderPage"),
        "sheets": ("configurator.ui.sheets.page", "SheetsPage"),
        "import": ("configurator.ui.intake.page", "ImportPage"),
        "client": ("configurator.ui.client.page", "ClientPage"),
        "practice": ("configurator.ui.practice.page", "PracticePage"),
    }
)
"""Name of a page, which is that of its command too, to the module and class that make it.

A page is a widget made with the session; it has `show_state(by)`, and may have these signals: `left` (back to
the work), `said` (a sentence for the window's line), `waiting` (what the window is to lead back to),
`work_wanted` (whether the work is to stand under it), and those by which the start page asks for a command, a
file, or a new job that begins with an opening.
"""
PASSED_ON = ("said", "command_wanted", "file_wanted", "job_wanted", "word_wanted")


class Pages(QSplitter):
    """One page at a time over the work, which is folded away unless the page wants it there too.

    Signals:
        turned: another page is on show, or none, or the work has come back under it.
        said: a page has a sentence for the window's line.
        waiting: something waits on the page of that name, as the sentence says; empty once nothing does.
        command_wanted: a page asks for the command of that name.
        file_wanted: a page asks for a project file to be opened.
        job_wanted: a page asks for a new job that begins with that opening.
        word_wanted: a page asks what a word means.
    """

    turned = Signal()
    said = Signal(str)
    waiting = Signal(str, str)
    command_wanted = Signal(str)
    file_wanted = Signal(object)
    job_wanted = Signal(object)
    word_wanted = Signal(str)

    def __init__(self, session: Session, work: QWidget, preferences: Preferences) -> None:
        super().__init__(Qt.Orientation.Vertical)
        self.session = session
        self.work = work
        self.preferences = preferences
        self.made: dict[str, Any] = {}
        self.on_show = ""
        self._before: list[str] = []
        self._with_work: set[str] = set()
        self.setChildrenCollapsible(False)

    @property
    def work_is_folded(self) -> bool:
        """Whether the work is out of sight, so that nothing in it needs to be drawn."""
        return bool(self.on_show) and self.on_show not in self._with_work

    def turn_to(self, name: str) -> None:
        """Show a page, or the work alone for an empty name."""
        if name != self.on_show:
            self._before = [*(one for one in self._before if one != self.on_show), self.on_show]
        self.on_show = name
        if name and name not in self.made:
            self._make(name)
        for each, page in self.made.items():
            page.setVisible(each == name)
        self._place_work()
        if name:
            self.made[name].show_state("open")
            self.made[name].setFocus()

    def go_back(self) -> None:
        """Show what was on show before this page."""
        before = self._before.pop() if self._before else ""
        self.turn_to(before)
        self._before.pop()

    def show_state(self, by: str) -> None:
        """Bring the page on show in line with the session."""
        if self.on_show:
            self.made[self.on_show].show_state(by)

    def _make(self, name: str) -> None:
        module, kind = PAGES[name]
        page = self.made[name] = getattr(import_module(module), kind)(self.session)
        if hasattr(page, "remember_in"):
            page.remember_in(self.preferences)
        if hasattr(page, "left"):
            page.left.connect(lambda: self.turn_to(""))
        for signal in PASSED_ON:
            if hasattr(page, signal):
                getattr(page, signal).connect(getattr(self, signal))
        if hasattr(page, "waiting"):
            page.waiting.connect(lambda sentence: self.waiting.emit(name, sentence))
        if hasattr(page, "work_wanted"):
            page.work_wanted.connect(lambda wanted: self._want_work(name, wanted))
        self.insertWidget(0, page)

    def _want_work(self, name: str, wanted: bool) -> None:
        (self._with_work.add if wanted else self._with_work.discard)(name)
        self._place_work()

    def _place_work(self) -> None:
        self.work.setVisible(not self.work_is_folded)
        self.turned.emit()
