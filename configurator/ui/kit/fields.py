"""One field of the form: its value or what is assumed for it, and in words why a value was refused."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPlainTextEdit, QWidget

from configurator.model import paths
from configurator.sentences import capitalized, written
from configurator.ui.kit.kinds import TEXT, Kind, NotReadError, kind_at
from configurator.ui.kit.layout import BARE, LeadsOn, QuietCombo, add, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.typed_line import ASSUMED, TypedLine
from configurator.ui.state.session import Session
from configurator.units import Display

Assumptions = Mapping[str, Any]
"""Path to what was assumed there (`value`, `because`, `source`, `mark_of_source`)."""


class Note(QLabel):
    """The line under a field: a refusal, or the reason for what is assumed; hidden while there is neither."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWordWrap(True)
        self.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        sized(self, -1)
        self.hide()

    def say(self, sentence: str, colour: str, dark: bool) -> None:
        """Show a sentence, or hide for an empty one."""
        self.setText(("⚠ " if colour == "error" and sentence else "") + sentence)
        tinted(self, colour, dark)
        self.setVisible(bool(sentence))


class Field(LeadsOn, QWidget):
    """A value of the opening on show (or of the job), by its path.

    Subclasses show the value and call `commit` when the user gave another.
    """

    def __init__(self, session: Session, path: str) -> None:
        super().__init__()
        self.session = session
        self.path = path
        self.optional = not paths.field_at(path).is_required()
        self.note = Note(self)
        self.explained = False
        self._because = ""
        self._column = fill(self, down(spacing=2, margins=BARE))
        self.setObjectName(path)

    def hold(self, editor: QWidget) -> None:
        """Put the editing widget above the note, and name it for a screen reader."""
        add(self._column, editor, self.note)
        editor.setAccessibleName(paths.trade_name(self.path))
        editor.setAccessibleDescription(paths.help_of(self.path) or paths.plain_name(self.path))
        self.first_stop = editor

    @property
    def refused(self) -> bool:
        """Whether the field holds a value that was not taken."""
        return self.path in self.session.refusals

    def commit(self, value: Any) -> None:
        """Give the session a new value; a refusal comes back through `show_state`."""
        self.session.edit(self.path, value)

    def show_state(self, assumed: Assumptions) -> None:
        """Show what holds, and what is assumed where nothing was given."""
        raise NotImplementedError

    def begin_anew(self) -> None:
        """Forget what was typed and asked here: the path now leads to another thing of its list."""
        self.explained = False

    def explain(self) -> None:
        """Show or hide the reason for what is assumed."""
        self.explained = not self.explained
        self._show_note()

    def take_reason(self, assumed: Assumptions) -> None:
        """Note why the value on show was assumed, for the tooltip and for `explain`."""
        found = assumed.get(self.path)
        given = self.session.value(self.path) is not None
        self._because = reason_of(found, self.session.display) if found is not None and not given else ""
        name = paths.other_name(self.path, self.session.plain_words)
        lines = [capitalized(name), _help_at(self.path), self._because]
        self.setToolTip("\n".join(line for line in lines if line))
        self._show_note()

    def _show_note(self) -> None:
        if self.refused:
            self.note.say(self.session.refusals[self.path].sentence, "error", self.session.dark)
        else:
            self.note.say(self._because if self.explained else "", "quiet", self.session.dark)


def _help_at(path: str) -> str:
    """Return a field's help; what counts as high traffic stands in a table and not in its description."""
    if path != "use.traffic":
        return paths.help_of(path)
    from configurator.rules.hinge.weight import (
        traffic_help,  # loaded on use: this section is closed at the start
    )

    return traffic_help()


def reason_of(assumed: Any, display: Display) -> str:
    """Say why a value was assumed and where that comes from."""
    from configurator.wording.hinge_parts import cited  # loaded with the first study

    because = written(assumed.because, display)
    because = capitalized(because)
    source = cited(assumed.source, assumed.mark_of_source)
    return f"Assumed. {because}. Source: {source}"


class LineField(Field):
    """A value that is typed: a length, an angle, a count, pounds or text."""

    def __init__(self, session: Session, path: str, kind: Kind | None = None) -> None:
        super().__init__(session, path)
        self.kind = kind or kind_at(path)
        self.editor = TypedLine()
        self.editor.editingFinished.connect(self._finish)
        self.editor.given_up.connect(self._give_up)
        self.editor.asked_why.connect(self.explain)
        self.editor.asked_why.connect(lambda: self.session.asked.emit(self.path))
        self.editor.tag.clicked.connect(self._tag_clicked)
        self.hold(self.editor)

    def show_state(self, assumed: Assumptions) -> None:
        """Show what holds; a value being typed, or one that was refused, stays as it was typed."""
        self.take_reason(assumed)
        value = self.session.value(self.path)
        if not self.editor.being_typed:
            refusal = self.session.refusals.get(self.path)
            if refusal is None:
                self._show_text("" if value is None else self.write(value))
            elif refusal.typed:
                self._show_text(refusal.typed)
        self._show_placeholder(None if value is not None else assumed.get(self.path))

    def begin_anew(self) -> None:
        """Forget what was typed."""
        super().begin_anew()
        self.editor.being_typed = False
        self.editor.clear()

    def write(self, value: Any) -> str:
        """Write a value as the line shows it."""
        return self.kind.write(value, self.session.display)

    def read(self, text: str) -> Any:
        """Read what was typed. Raises NotReadError."""
        return self.kind.read(text, self.session.display)

    def _show_text(self, text: str) -> None:
        if text != self.editor.text():
            self.editor.setText(text)
            self.editor.setCursorPosition(0)

    def _show_placeholder(self, assumed: Any) -> None:
        known = assumed is not None and assumed.value is not None
        self.editor.setPlaceholderText(self.write(assumed.value) if known else self._when_left_out())
        font = self.editor.font()
        if font.italic() != (not self.editor.text()):
            font.setItalic(not self.editor.text())
            self.editor.setFont(font)
        if assumed is not None and not self.editor.text():
            self.editor.show_tag(ASSUMED, f"{self._because}\nClick, or press F1 in the field, to read why.")
        elif self._can_go_back():
            self.editor.show_tag("↺", "Given. Click, or empty the field, to go back to the usual value.")
        else:
            self.editor.show_tag("", "")

    def _when_left_out(self) -> str:
        """Say what an empty field means, where its help says so."""
        return paths.when_left_out(self.path)

    def _can_go_back(self) -> bool:
        if self.kind is TEXT or not self.optional or self.refused:
            return False
        usual = paths.field_at(self.path).default
        return bool(self.editor.text()) and self.session.value(self.path) != usual

    def _finish(self) -> None:
        if not self.editor.being_typed:
            return
        self.editor.being_typed = False
        text = self.editor.text()
        if not text.strip():
            self._finish_empty()
            return
        value = self.session.value(self.path)
        if value is not None and text.strip() == self.write(value):
            self.session.withdraw(self.path)  # what is shown may be rounded: the value stays as it is
            return
        try:
            value = self.read(text)
        except NotReadError as error:
            self.session.refuse(self.path, text, str(error))
        else:
            self.commit(value)
        self._note_typed(text)

    def _note_typed(self, text: str) -> None:
        """Keep what was typed with its refusal, to be shown again when this opening is."""
        if refusal := self.session.refusals.get(self.path):
            self.session.refusals[self.path] = replace(refusal, typed=text)

    def _finish_empty(self) -> None:
        if self.optional:
            self.commit(None)
        else:
            title = paths.trade_name(self.path)
            self.session.refuse(self.path, "", f"{capitalized(title)} must be given.")

    def _give_up(self) -> None:
        self.editor.being_typed = False
        self.editor.clear()
        self.session.withdraw(self.path)
        self._show_text("" if (value := self.session.value(self.path)) is None else self.write(value))

    def _tag_clicked(self) -> None:
        if self.editor.text():
            self.commit(None)
        else:
            self.explain()


class ChoiceField(Field):
    """One word of those a project file accepts, or yes and no; its first line leaves it to the program."""

    def __init__(self, session: Session, path: str) -> None:
        super().__init__(session, path)
        self.editor = QuietCombo()
        self._leaves_open = paths.field_at(path).default is None and self.optional
        if self._leaves_open:
            self.editor.addItem("not given", None)
        for word in paths.words_of(path):
            self.editor.addItem(word, word)
        if not paths.words_of(path):
            self.editor.addItem("yes", True)
            self.editor.addItem("no", False)
        self.editor.activated.connect(self._choose)
        self.hold(self.editor)

    def show_state(self, assumed: Assumptions) -> None:
        """Show the word that holds, or the one that was chosen and is waiting to be possible."""
        self.take_reason(assumed)
        if self._leaves_open:
            self.editor.setItemText(0, _assumed_choice(assumed.get(self.path)))
        refusal = self.session.refusals.get(self.path)
        value = refusal.value if refusal else self.session.value(self.path)
        self.editor.setCurrentIndex(max(self.editor.findData(value), 0))
        font = self.editor.font()
        font.setItalic(self._leaves_open and self.editor.currentIndex() == 0)
        self.editor.setFont(font)

    def _choose(self, place: int) -> None:
        value = self.editor.itemData(place)
        if self.refused and value == self.session.value(self.path):
            self.session.withdraw(self.path)
        else:
            self.commit(value)


def _assumed_choice(assumed: Any) -> str:
    if assumed is None or assumed.value is None:
        return "not given"
    value = assumed.value
    return f"{'yes' if value is True else 'no' if value is False else value} (assumed)"


class NotesField(Field):
    """A few lines of free text."""

    def __init__(self, session: Session, path: str) -> None:
        super().__init__(session, path)
        self.kind = kind_at(path)
        self.editor = _NotesEdit(self._finish)
        self.hold(self.editor)

    def show_state(self, assumed: Assumptions) -> None:
        """Show the text that holds."""
        self.take_reason(assumed)
        text = self._written()
        if not self.editor.hasFocus() and not self.refused and text != self.editor.toPlainText():
            self.editor.setPlainText(text)

    def _finish(self) -> None:
        text = self.editor.toPlainText()
        if text == self._written():
            return
        try:
            self.commit(self.kind.read(text, self.session.display) if text else None)
        except NotReadError as error:
            self.session.refuse(self.path, text, str(error))

    def _written(self) -> str:
        value = self.session.value(self.path)
        return self.kind.write(value, self.session.display) if value else ""


class _NotesEdit(QPlainTextEdit):
    def __init__(self, finish: Callable[[], None]) -> None:
        super().__init__()
        self._finish = finish
        self.setTabChangesFocus(True)
        self.setFixedHeight(16 * GRID)

    def focusOutEvent(self, event: Any) -> None:
        super().focusOutEvent(event)
        self._finish()


def field_for(session: Session, path: str) -> "LineField | ChoiceField | NotesField":
    """Return the field that suits the value at a path."""
    if path.endswith("notes") or path in ("questions", "remarks", "other_columns"):
        return NotesField(session, path)
    if paths.words_of(path) or paths.holds(path, bool):
        return ChoiceField(session, path)
    return LineField(session, path)
