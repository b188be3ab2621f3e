"""The one row of commands, as data: what each is called, its keys, and what it does."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QToolBar, QWidget


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
