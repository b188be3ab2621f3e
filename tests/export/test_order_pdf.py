"""The pages of a long table: the header tops each, no line is parted from its marks, nothing is lost."""

import pypdfium2
from hypothesis import given
from hypothesis import strategies as st

from configurator.documents.document import FOR_THE_OFFICE, Column, Document, Table
from configurator.documents.order import order_document
from configurator.export.table_pdf import pdf_bytes
from tests.order.cases import data, ordered
from tests.sweeps import examples

COLUMNS = (
    Column("line", "Line", "count", 4),
    Column("hinge", "Hinge", "text", 20),
    Column("marks", "Marks", "text", 40, under=True),
)


def texts(document):
    """The text of every page, as a reader of the file finds it, words in one row."""
    pages = pypdfium2.PdfDocument(pdf_bytes(document))
    return [" ".join(page.get_textpage().get_text_range().split()) for page in pages]


def order(marks, title="Order"):
    """A table with a line for each number of marks, every one of them named for its line."""
    rows = tuple(
        (line, "full mortise, heavy, " * (1 + line % 4), ", ".join(f"L{line}M{n}" for n in range(count)))
        for line, count in enumerate(marks, 1)
    )
    table = Table(title, COLUMNS, rows, ((None, "in all", None),))
    return Document("Hinge order", (("Job", "Terminal"),), (table,), (table,), ())


@examples(50)
@given(st.lists(st.integers(1, 250), min_size=1, max_size=60))
def test_every_line_stands_on_one_page_with_all_its_marks(counts):
    pages = texts(order(counts))
    for line, count in enumerate(counts, 1):
        first = [page for page in pages if f"L{line}M0" in page]
        assert len(first) == 1
        assert all(f"L{line}M{n}" in first[0] for n in range(count))
    assert "in all" in pages[-1]


def test_the_header_stands_once_on_top_of_every_page():
    pages = texts(order([40] * 26))
    assert len(pages) > 1
    for page in pages:
        assert page.count("Line Hinge") == 1
    assert all(page.startswith("Line Hinge") for page in pages[1:])


def test_a_line_that_no_page_holds_goes_on_under_the_header():
    pages = texts(order([3, 3000, 3]))
    named = [f"L2M{n}" for n in range(3000)]
    assert all(any(name in page for page in pages) for name in named)
    assert all("Line Hinge" in page for page in pages)


def test_what_is_for_the_office_begins_a_page_of_its_own():
    document = order_document(ordered(data("1"), data("2", hinge={"count": 2})))
    first, office = texts(document)
    assert "Not ordered" not in first
    assert office.startswith(FOR_THE_OFFICE)
    assert "Mend this, or say: order it all the same." in office
    assert len(texts(document.going_out)) == 1


def test_a_cover_has_the_facts_and_an_index_with_the_page_of_each_part():
    tables = tuple(order([30] * count, title).sheets[0] for title, count in (("Lines", 40), ("Marks", 2)))
    cover, *rest = texts(
        Document("Submittal", (("Job", "Terminal"), ("Client", "District")), tables, tables, (), cover=True)
    )
    starts = {
        title: next(n for n, page in enumerate(rest, 2) if page.startswith(title))
        for title in ("Lines", "Marks")
    }
    assert "Terminal" in cover
    assert "Client District" in cover
    assert f"Contents Lines {starts['Lines']} Marks {starts['Marks']}" in cover
    assert starts["Marks"] == 2 + len(rest) - 1
