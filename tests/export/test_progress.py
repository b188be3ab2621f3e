"""Long documents: how far they are is told, and stopping one leaves nothing behind."""

import tempfile

import pytest

from configurator.documents.document import Column, Document, Table
from configurator.export.document import write_document
from configurator.export.table_pdf import pdf_bytes
from configurator.export.table_xlsx import xlsx_bytes
from configurator.long_work import Cancelled, Counter, watched
from tests.order.cases import stop_at


def document(rows):
    table = Table(
        "Marks", (Column("mark", "Mark"), Column("hinges", "Hinges", "count")), (("112A", 3),) * rows
    )
    return Document("Order", (), (table,), (table,), ())


def test_steps_go_up_to_their_total_and_no_further():
    told = []
    steps = Counter(3, lambda done, total: told.append((done, total)))
    for rows in (1, 1, 2):
        steps.take(rows)
    assert told == [(1, 3), (2, 3), (3, 3)]


@pytest.mark.parametrize(("make", "each"), [(xlsx_bytes, 1), (pdf_bytes, 2)], ids=["xlsx", "pdf"])
def test_every_row_is_told_of_to_the_last(make, each):
    told = []
    made = make(document(120), lambda done, total: told.append((done, total)))
    assert told == sorted(told)
    assert told[-1] == (120 * each, 120 * each)
    assert len(told) > 2
    assert made == make(document(120))


def test_items_are_told_of_before_the_first_and_after_each():
    told = []
    given = watched("ab", 2, lambda done, total: told.append((done, total)))
    assert next(given) == "a"
    assert told == [(0, 2)]
    assert list(given) == ["b"]
    assert told == [(0, 2), (1, 2), (2, 2)]


@pytest.mark.parametrize("ending", [".xlsx", ".pdf"])
def test_a_stopped_document_leaves_nothing_behind(ending, tmp_path, monkeypatch):
    scratch = tmp_path / "scratch"
    scratch.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(scratch))
    path = tmp_path / f"order{ending}"
    path.write_bytes(b"the order before")
    with pytest.raises(Cancelled):
        write_document(document(100), path, stop_at(50))
    assert path.read_bytes() == b"the order before"
    assert list(scratch.iterdir()) == []
    assert list(tmp_path.glob(".*")) == []


def test_a_pdf_is_stopped_while_its_pages_are_laid_out():
    told = []
    with pytest.raises(Cancelled):
        pdf_bytes(document(200), stop_at(211, told))
    assert told[-1] > 210


def test_a_title_never_stands_alone_at_the_foot_of_a_page(monkeypatch):
    """However many rows the first table has, the second table's title has its header under it."""
    from reportlab.platypus import Paragraph

    drawn = []
    draw = Paragraph.drawOn
    monkeypatch.setattr(
        Paragraph,
        "drawOn",
        lambda self, canvas, x, y, **more: (
            drawn.append((canvas.getPageNumber(), self.style.name, y)),
            draw(self, canvas, x, y, **more),
        ),
    )
    for rows in range(25, 50):
        drawn.clear()
        first, second = document(rows).sheets[0], document(40).sheets[0]
        pdf_bytes(Document("Order", (), (first,), (first, second), ()))
        titles = [(page, y) for page, style, y in drawn if style == "subtitle"]
        heads = [page for page, style, _ in drawn if style == "head"]
        assert titles[-1][0] in heads
        assert [page for page, style, y in drawn if style == "head" and y < titles[-1][1]].count(
            titles[-1][0]
        )
