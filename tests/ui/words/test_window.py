"""Words from any label: by F1, by a click, by searching; and back to the field."""

import pytest
from PySide6.QtCore import Qt

from configurator.project_file import load
from configurator.ui.form.form import SECTIONS
from configurator.ui.kit.sections import NameLabel
from configurator.ui.state.session import Session
from configurator.ui.words.here import here
from configurator.ui.words.window import WordsWindow
from configurator.wording.glossary import glossary
from tests.ui.conftest import DEMO


@pytest.fixture
def window(fresh_window):
    return fresh_window


@pytest.fixture
def words(qtbot, session):
    found = WordsWindow(session)
    qtbot.addWidget(found)
    found.show()
    return found


def _word(term):
    return next(word for word in glossary() if word.term == term)


def test_all_words_are_listed_and_the_first_is_shown(words):
    assert words.list.count() == len(glossary())
    assert words.word is glossary()[0]
    assert words.term.text() == "Opening"
    assert words.picture.accessibleName() == "opening, marked in a drawing"


def test_a_place_opens_its_word_among_all(words):
    words.ask("obstructions.0.projection")
    assert words.word.term == "projection"
    assert words.list.count() == len(glossary())


def test_a_sentence_opens_the_words_in_it(words):
    words.ask("The lever meets the wall; the frame stop does not count.")
    assert [words.list.item(n).text() for n in range(words.list.count())] == ["frame stop", "lever"]


def test_what_is_known_nowhere_opens_all(words):
    words.ask("zebra")
    assert words.list.count() == len(glossary())


def test_searching_narrows_and_says_so_when_nothing_is_found(qtbot, words):
    qtbot.keyClicks(words.search_line, "tightest gap")
    assert {words.list.item(n).text() for n in range(words.list.count())} == {
        "latch edge least",
        "hinge edge least",
    }
    words.search_line.clear()
    qtbot.keyClicks(words.search_line, "zebra")
    assert words.word is None
    assert words.plain.text().startswith("No word here")
    assert not words.picture.isVisible()
    assert not words.to_field.isVisible()


def test_arrows_go_through_the_list(qtbot, words):
    words.list.setFocus()
    qtbot.keyClick(words.list, Qt.Key.Key_Down)
    assert words.word is glossary()[1]
    assert words.term.text() == "Opening width"


@pytest.mark.parametrize("dark", [False, True])
def test_every_word_is_painted_in_light_and_dark(words, session, dark):
    session.use_dark(dark)
    grounds = set()
    for place in range(words.list.count()):
        words.list.setCurrentRow(place)
        image = words.picture.grab().toImage()
        grounds.add(image.pixelColor(image.width() - 2, 2).lightness() > 127)
    assert False in grounds if dark else True in grounds


def test_what_holds_here_is_said_with_its_reason(session):
    given = here(session, _word("door thickness"))
    assert given == ("Door thickness: 1-3/4 in, given.",)
    session.edit("door.thickness", None)
    first, why = here(session, _word("door thickness"))
    assert first.endswith("assumed.")
    assert why.startswith("Assumed.")


def test_what_is_worked_out_is_said_for_each_width(session):
    (line,) = here(session, _word("pin axis off door face"))
    assert line == "Pin axis off door face: 1/2 in on the 4 in hinge; 3/4 in on the 4-1/2 in hinge."


def test_nothing_holds_in_a_job_without_openings(qapp):
    session = Session(load(DEMO))
    session.take_openings((), "remove all", "")
    assert here(session, _word("door thickness")) == ()


def test_f1_in_a_field_shows_its_word_and_why_it_is_assumed(qtbot, window, session):
    field = window.work.form.field("door.head_gap")
    session.edit("door.head_gap", None)
    field.editor.setFocus()
    qtbot.keyClick(field.editor, Qt.Key.Key_F1)
    assert window.beside.words.isVisible()
    assert not window.beside.words.isModal()
    assert window.beside.words.word.term == "head gap"
    assert field.explained


def test_a_click_on_a_label_shows_its_word(qtbot, window):
    field = window.work.form.field("frame.rabbet")
    label = next(one for one in window.work.form.findChildren(NameLabel) if one.buddy() is field.editor)
    qtbot.mouseClick(label, Qt.MouseButton.LeftButton)
    assert window.beside.words.word.term == "rabbet"


def test_every_field_of_the_form_opens_a_word(window, session):
    for path in (path for own in SECTIONS.values() for path in own):
        session.asked.emit(path)
        word = window.beside.words.word
        assert path in word.where or (path, word.term) == ("size", "opening")


def test_f1_on_a_row_of_the_comparison_shows_its_word(qtbot, window):
    table = window.work.comparison
    table.setFocus()
    row = next(n for n in range(table.rowCount()) if table.text(n, 0) == "Pin axis off frame face")
    table.setCurrentCell(row, 1)
    window.beside.ask_word()
    assert window.beside.words.word.term == "pin axis off frame face"


def test_a_finding_shows_the_words_in_it(qtbot, window):
    row = window.work.findings.rows[0]
    window.session.asked.emit(row.asked_about())
    terms = {window.beside.words.list.item(n).text() for n in range(window.beside.words.list.count())}
    assert "chair rail" in terms
    assert len(terms) < len(glossary())


def test_f1_on_nothing_known_shows_the_help(window):
    window.work.picture.canvas.setFocus()
    window.beside.ask_word()
    assert window.beside.help.isVisible()
    window.beside.help.close()


def test_a_word_leads_to_its_field(qtbot, window):
    window.beside.show_word("use.wanted_angle")
    qtbot.mouseClick(window.beside.words.to_field, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.work.form.sections["Use"].is_open)
    window.activateWindow()
    qtbot.waitUntil(window.work.form.field("use.wanted_angle").editor.hasFocus)


def test_a_note_that_is_a_sentence_ends_once(session):
    session.edit("notes", "The rail stays.")
    said = here(session, _word("opening"))
    assert any(line.endswith("The rail stays, given.") for line in said)
