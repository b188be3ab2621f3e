"""The words of the trade as they are used here: found by typing, by F1, or by a click on a label."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QLabel,
    QLineEdit,
    QListWidget,
    QPushButton,
    QWidget,
)

from configurator.drawing.pictures.word_pictures import word_picture
from configurator.sentences import capitalized
from configurator.ui.form.form import SECTIONS
from configurator.ui.kit.layout import across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.pictures import WordPicture
from configurator.ui.state.session import Session
from configurator.ui.words.here import here
from configurator.wording.glossary import Word, glossary, search, word_at, words_in
from configurator.wording.hinge_parts import cited

_FIELDS = frozenset(path for paths in SECTIONS.values() for path in paths)


class WordsWindow(QDialog):
    """Not modal: the work goes on beside it.

    Signals:
        field_wanted: the user wants to be at a field; the argument is its path.
    """

    field_wanted = Signal(str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.words: tuple[Word, ...] = ()
        self.setWindowTitle("Words")
        self.setModal(False)
        self.search_line = QLineEdit()
        self.list = QListWidget()
        self.term, self.plain, self.meaning, self.here, self.source = (_text() for _ in range(5))
        self.picture = WordPicture()
        self.to_field = QPushButton()
        self._put_together()
        session.changed.connect(self.show_state)
        self.show_words(glossary())

    def ask(self, about: str) -> None:
        """Show the word of a field's path or a row's key, or those that stand in a sentence; else all."""
        word = word_at(about)
        self.search_line.clear()
        self.show_words(glossary() if word is not None else words_in(about) or glossary(), word)
        self.list.setFocus()

    def show_words(self, words: tuple[Word, ...], chosen: Word | None = None) -> None:
        """List some words and show one of them, the first where none is named."""
        self.words = words
        self.list.blockSignals(True)
        self.list.clear()
        self.list.addItems([word.term for word in words])
        self.list.setCurrentRow(words.index(chosen) if chosen in words else 0)
        self.list.blockSignals(False)
        self._show_word()

    def show_state(self, by: str) -> None:
        """Follow the theme, and what can be gone to."""
        if self.isVisible() and by != "swing":
            self._show_word()

    @property
    def word(self) -> Word | None:
        """The word on show; None where nothing is found."""
        place = self.list.currentRow()
        return self.words[place] if 0 <= place < len(self.words) else None

    def _search(self, text: str) -> None:
        self.show_words(search(text) if text.strip() else glossary())

    def _show_word(self) -> None:
        word, dark = self.word, self.session.dark
        for label in (self.plain, self.source):
            tinted(label, "quiet", dark)
        self.picture.setVisible(word is not None)
        path = self._field()
        self.to_field.setVisible(bool(path))
        if word is None:
            self.term.setText("")
            self.plain.setText("No word here is like that. Try fewer letters.")
            for label in (self.meaning, self.here, self.source):
                label.setText("")
            return
        self.term.setText(capitalized(word.term))
        self.plain.setText(capitalized(word.plain))
        self.meaning.setText(word.meaning)
        self.here.setText("\n".join(here(self.session, word)))
        self.here.setVisible(bool(self.here.text()))
        self.source.setText(cited(word.source, word.mark))
        self.picture.show_picture(partial(word_picture, word), dark, f"{word.term}, marked in a drawing")

    def _field(self) -> str:
        """Return the first place of the word that is a field of the form; none in a job without openings."""
        if self.word is None or self.session.opening is None:
            return ""
        return next((place for place in self.word.where if place in _FIELDS), "")

    def _put_together(self) -> None:
        self.search_line.setPlaceholderText("Find a word")
        self.search_line.setClearButtonEnabled(True)
        self.search_line.setAccessibleName("find a word")
        self.search_line.textEdited.connect(self._search)
        self.list.setAccessibleName("words")
        self.list.setFixedWidth(50 * GRID)
        self.list.currentRowChanged.connect(lambda _: self._show_word())
        self.to_field.setText("Go to its field")
        self.to_field.setAutoDefault(False)
        self.to_field.clicked.connect(lambda: self.field_wanted.emit(self._field()))
        sized(self.term, 1, bold=True)
        sized(self.source, -1)
        above = (self.term, self.plain, (self.picture, 1), self.meaning, self.here, self.source)
        right = down(*above, (self.to_field, 0, Qt.AlignmentFlag.AlignLeft), spacing=2 * GRID)
        both = (down(self.search_line, (self.list, 1)), (right, 1))
        fill(self, across(*both, spacing=4 * GRID, margins=(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)))
        self.resize(190 * GRID, 130 * GRID)


def _text() -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label
