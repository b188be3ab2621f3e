"""Labels: ten to a sheet, each inside its own, and nothing of one lost."""

import pypdfium2

from configurator.documents.packing import Label
from configurator.export.table_pdf import (
    AIR,
    LABEL_HEIGHT,
    LABEL_WIDTH,
    LABELS_LEFT,
    LABELS_TOP,
    PITCH,
    labels_bytes,
)

LINES = ("3 x 4-1/2 x 4, KP-4, line 1", "A8112, steel, 652 (US26D)", "screws: 24 machine")
PAGE = 11 * 72


def label(number, lines=LINES):
    return Label(f"M{number}", "Level 2, Ticket hall", lines, "Terminal")


def page_of(labels, number=0):
    return pypdfium2.PdfDocument(labels_bytes(labels))[number].get_textpage()


def test_ten_stand_on_a_sheet_and_the_next_begins_another():
    book = pypdfium2.PdfDocument(labels_bytes([label(n) for n in range(11)]))
    first, second = (page.get_textpage().get_text_range() for page in book)
    assert [f"M{n}" in first for n in range(11)] == [True] * 10 + [False]
    assert "M10" in second
    assert all(line in second for line in LINES)


def test_each_stands_in_its_own_place():
    page = page_of([label(n, ("word " * 40,) * 12) for n in range(10)])
    for number in range(10):
        left, top = LABELS_LEFT + number % 2 * PITCH, PAGE - LABELS_TOP - number // 2 * LABEL_HEIGHT
        inside = page.get_text_bounded(
            left=left, bottom=top - LABEL_HEIGHT, right=left + LABEL_WIDTH, top=top
        )
        assert inside.count("M") == 1
        assert f"M{number}" in inside
        assert "and more: see the order" in inside
        strip = page.get_text_bounded(
            left=left + LABEL_WIDTH - AIR / 2, bottom=top - LABEL_HEIGHT, right=left + PITCH, top=top
        )
        assert strip.strip() == ""


def test_long_lines_are_lettered_smaller_before_any_is_left_out():
    text = page_of([label(1, ("one two three four five six " * 10,) * 3)]).get_text_range()
    assert "and more" not in text
    assert text.split().count("three") == 30


def test_the_same_labels_are_the_same_bytes_and_no_labels_are_an_empty_sheet():
    assert labels_bytes([label(1)]) == labels_bytes([label(1)])
    assert len(pypdfium2.PdfDocument(labels_bytes([]))) == 1


def test_every_label_is_told_of():
    told = []
    labels_bytes([label(n) for n in range(3)], lambda done, _: told.append(done))
    assert told == [0, 1, 2, 3]
