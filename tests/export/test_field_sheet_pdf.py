"""The field sheet on paper."""

import io
import re

import pytest
from reportlab.pdfgen.canvas import Canvas

from configurator.export import field_sheet_pdf, pdf
from configurator.export.field_sheet_pdf import field_sheet_bytes, write_field_sheet
from configurator.export.painting import BOLD, FONT
from configurator.export.pdf import QuickCanvas, load_fonts
from configurator.long_work import Cancelled
from tests.order.cases import data, job_of, stop_at


def drawn(monkeypatch, job):
    """The texts of a field sheet, each with where it stands."""
    texts = []
    draw = QuickCanvas.drawString
    monkeypatch.setattr(
        QuickCanvas,
        "drawString",
        lambda self, x, y, text: (
            texts.append((x, y, text, self._fontname, self._fontsize)),
            draw(self, x, y, text),
        ),
    )
    field_sheet_bytes(job)
    return texts


def pages(made):
    return int(re.search(rb"/Count (\d+)", made)[1])


@pytest.mark.parametrize("most", [2, 20_000])
def test_a_quick_canvas_writes_what_the_library_writes(most, monkeypatch):
    monkeypatch.setattr(pdf, "_MOST_TEXTS", most)
    load_fonts()

    def made(kind):
        written = io.BytesIO()
        canvas = kind(written, invariant=1, pageCompression=0)
        for page in range(2):
            for place, text in enumerate(("1-3/4 in", "a (b) \\ c", "Größe 90°", "1-3/4 in", "")):
                canvas.setFont(BOLD if place == 3 else FONT, 7 + page)
                canvas.setLineWidth(0.1 * place)
                canvas.drawString(10.125, 700.3 - 8 * place, text)
                canvas.drawRightString(500, 700.3 - 8 * place, text)
                canvas.drawString(10, 300, text, charSpace=1)
                canvas.line(0, -place, 1e-9, 123456.789)
            canvas.showPage()
        canvas.save()
        return written.getvalue()

    assert made(QuickCanvas) == made(Canvas)


def test_three_plain_openings_go_on_a_page_and_a_fourth_on_the_next():
    jobs = [job_of(*(data(str(n)) for n in range(number))) for number in (0, 1, 3, 4)]
    assert [pages(field_sheet_bytes(job)) for job in jobs] == [1, 1, 1, 2]
    assert pages(field_sheet_bytes(job_of(data("1", quantity=4)))) == 2


def test_usual_values_stand_in_brackets_and_unknown_ones_are_asked(monkeypatch):
    texts = [text for _, _, text, *_ in drawn(monkeypatch, job_of(data("1", hand=None)))]
    assert "36 in" in texts
    assert "(1-15/16 in)" in texts
    assert "?" in texts


def test_no_text_leaves_the_page_or_its_column(monkeypatch):
    long = data("1-" + "M" * 60, location="The very long hall " * 12, quantity=2)
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    texts = drawn(monkeypatch, job_of({**long, "obstructions": [rail] * 9}))
    wide = pdf.width_of
    for x, y, text, font, size in texts:
        assert x + wide(text, font, size) <= field_sheet_pdf.PAGE[0] - field_sheet_pdf.MARGIN + 0.01, text
        assert y > 20


def test_the_same_job_is_the_same_bytes():
    job = job_of(data("1"))
    assert field_sheet_bytes(job) == field_sheet_bytes(job)


def test_progress_is_told_and_a_stopped_sheet_leaves_the_old_one(tmp_path):
    job = job_of(*(data(str(n)) for n in range(20)))
    told = []
    field_sheet_bytes(job, progress=lambda done, total: told.append((done, total)))
    assert told[-1] == (40, 40)
    path = tmp_path / "field.pdf"
    path.write_bytes(b"before")
    with pytest.raises(Cancelled):
        write_field_sheet(job, path, progress=stop_at(30))
    assert path.read_bytes() == b"before"
    assert [one.name for one in tmp_path.iterdir()] == ["field.pdf"]


def test_it_names_no_face_that_it_does_not_embed():
    assert b"Helvetica" not in field_sheet_bytes(job_of(data("1")))
