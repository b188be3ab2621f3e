"""What is printed on a PDF's sheets against what is measured on them, on fifty openings at random."""

from collections.abc import Iterator
from functools import cache
from itertools import combinations

import pytest
import shapely

from configurator.drawing.base.primitives import Dimension, Polyline, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.frame import border_box
from configurator.drawing.pages.page import Page, Scale
from configurator.export.pages import pages_as_bytes
from tests.export.measuring import (
    MM_PER_POINT,
    Lettered,
    Measured,
    Sheet,
    bookmarks,
    read_pdf,
    says_its_length,
    scale_bar,
)
from tests.export.random_sheets import KINDS, SEEDS, display_of, pages_of, scales_of

READ = 2e-4
"""How closely a place is written in the file, inches of the real thing."""
HAIR = 0.05
"""Points. Letters so near are taken to touch."""

pytestmark = pytest.mark.parametrize("kind", KINDS)


@cache
def written(kind: str) -> bytes:
    return pages_as_bytes(pages_of(kind), ".pdf")


@cache
def sheets(kind: str) -> list[Sheet]:
    return read_pdf(written(kind))


def both(kind: str) -> Iterator[tuple[int, Page, Sheet]]:
    yield from zip(SEEDS, pages_of(kind), sheets(kind), strict=True)


def drawn_dimensions(page: Page) -> list[tuple[Dimension, Scale]]:
    return [
        (item, detail.scale)
        for detail in page.details
        for item in detail.primitives
        if isinstance(item, Dimension)
    ]


def frames(page: Page) -> Iterator[tuple[str, Box]]:
    """Yield each text of a page, in painting order, and what it must stay in."""
    for group, box in [
        *((detail.primitives, detail.view.window) for detail in page.details),
        (page.furniture, border_box(page.paper)),
    ]:
        for item in group:
            if isinstance(item, (Text, Dimension)) and item.text.strip():
                yield item.text.strip(), box


def test_pages_are_as_large_as_their_paper(kind):
    for _, page, sheet in both(kind):
        assert (sheet.width, sheet.height) == pytest.approx((page.paper.width, page.paper.height), abs=0.1)


def test_every_page_has_its_bookmark(kind):
    titles = [(page.title, number) for number, page in enumerate(pages_of(kind))]
    assert bookmarks(written(kind)) == titles


def test_every_dimension_is_as_long_as_it_says(kind):
    for seed, page, sheet in both(kind):
        drawn = drawn_dimensions(page)
        assert [one.lettered.text for one in sheet.measured] == [item.text for item, _ in drawn], seed
        for one, (_, scale) in zip(sheet.measured, drawn, strict=True):
            real = one.length / 72 / scale.ratio
            assert says_its_length(one.lettered.text, real, display_of(seed), READ), (seed, one)


def test_every_text_is_on_the_page(kind):
    for seed, page, sheet in both(kind):
        # What reads a page back takes two blanks, as between a section's mark and its name, for one.
        assert [one.text for one in sheet.texts] == [" ".join(text.split()) for text, _ in frames(page)], seed


def test_every_text_stays_in_its_frame(kind):
    assert {seed: found for seed, page, sheet in both(kind) if (found := left_their_frame(page, sheet))} == {}


def left_their_frame(page: Page, sheet: Sheet) -> list[str]:
    pairs = zip(sheet.texts, frames(page), strict=True)
    return [one.text for one, (_, box) in pairs if not box.holds(one.box.shrunk(HAIR))]


def test_no_two_texts_overlap(kind):
    assert {seed: found for seed, _, sheet in both(kind) if (found := overlapping(sheet))} == {}


def overlapping(sheet: Sheet) -> list[tuple[str, str]]:
    tight = [(one.text, one.box.shrunk(HAIR)) for one in sheet.texts]
    return [(a, b) for (a, box_a), (b, box_b) in combinations(tight, 2) if box_a.overlaps(box_b)]


def test_no_text_lies_on_a_line_of_the_frame(kind):
    assert {seed: found for seed, page, sheet in both(kind) if (found := on_the_frame(page, sheet))} == {}


def on_the_frame(page: Page, sheet: Sheet) -> list[str]:
    lines = [item for item in page.furniture if isinstance(item, Polyline)]
    chains = [shapely.LineString([*one.points, one.points[0]] if one.closed else one.points) for one in lines]
    return crossed(sheet.texts, chains)


def test_no_dimension_text_lies_on_the_lines_of_a_dimension(kind):
    assert {
        seed: found for seed, page, sheet in both(kind) if (found := on_dimension_lines(page, sheet))
    } == {}


def on_dimension_lines(page: Page, sheet: Sheet) -> list[str]:
    numbers = [number for number, detail in enumerate(page.details) for _ in dimensions_of(detail)]
    found: list[str] = []
    for detail in set(numbers):
        mine = [one for one, number in zip(sheet.measured, numbers, strict=True) if number == detail]
        lines = [shapely.LineString(stroke) for one in mine for stroke in one.strokes]
        found += crossed([one.lettered for one in mine], lines)
    return found


def dimensions_of(detail) -> list[Dimension]:
    return [item for item in detail.primitives if isinstance(item, Dimension)]


def crossed(texts: list[Lettered], lines: list[shapely.LineString]) -> list[str]:
    tree = shapely.STRtree(lines)
    return [
        one.text
        for one in texts
        if len(tree.query(shapely.box(*corners(one.box.shrunk(HAIR))), predicate="intersects"))
    ]


def corners(box: Box) -> tuple[float, float, float, float]:
    return box.left, box.bottom, box.right, box.top


def test_every_scale_bar_is_as_long_as_it_says(kind):
    for seed, page, sheet in both(kind):
        for scale in scales_of(page):
            long, said = scale_bar(sheet, scale.name)
            assert long * MM_PER_POINT == pytest.approx(said * scale.ratio * 25.4, abs=0.1), seed


def test_the_same_sheets_are_the_same_bytes(kind):
    assert pages_as_bytes(pages_of(kind)[:2], ".pdf") == pages_as_bytes(pages_of(kind)[:2], ".pdf")


def test_measured_is_not_empty(kind):
    some: list[Measured | Lettered] = [one for sheet in sheets(kind) for one in sheet.measured]
    if kind == "client":  # a picture without dimensions: what it measures is told in words
        some = [one for sheet in sheets(kind) for one in sheet.texts if "to walk through" in one.text]
    assert len(some) >= len(SEEDS)
