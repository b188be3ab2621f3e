from pathlib import Path

import pytest
from PySide6.QtCore import QByteArray, QSettings

from configurator.ui.state.preferences import MOST_RECENT, Preferences
from configurator.units import Display


@pytest.fixture
def file(tmp_path) -> str:
    return str(tmp_path / "preferences.ini")


def preferences(file: str) -> Preferences:
    return Preferences(QSettings(file, QSettings.Format.IniFormat))


def test_nothing_kept_is_the_usual_way_of_showing(file):
    fresh = preferences(file)
    assert fresh.display == Display()
    assert not fresh.dark
    assert not fresh.plain_words
    assert fresh.recent == []
    assert fresh.layout("window").isEmpty()


def test_what_was_chosen_is_there_at_the_next_start(file):
    first = preferences(file)
    first.display, first.dark, first.plain_words = Display(64, metric=True), True, True
    first.keep_layout("window", QByteArray(b"\x00\x01"))
    del first
    again = preferences(file)
    assert again.display == Display(64, metric=True)
    assert again.dark
    assert again.plain_words
    assert again.layout("window") == QByteArray(b"\x00\x01")


@pytest.mark.parametrize("kept", ["twelve", "17", ""])
def test_a_precision_that_cannot_be_counts_as_never_set(file, kept):
    settings = QSettings(file, QSettings.Format.IniFormat)
    settings.setValue("precision", kept)
    assert Preferences(settings).display.precision == Display().precision


def test_the_latest_file_heads_the_recent_ones_and_stands_once(file, tmp_path):
    known = preferences(file)
    names = [tmp_path / f"{number}.json" for number in range(MOST_RECENT + 1)]
    for name in [*names, names[0]]:
        known.note_recent(name)
    assert known.recent[:2] == [names[0], names[-1]]
    assert len(known.recent) == MOST_RECENT


def test_one_recent_file_alone_is_read_back(file, tmp_path):
    preferences(file).note_recent(tmp_path / "one.json")
    assert preferences(file).recent == [Path(tmp_path / "one.json")]
