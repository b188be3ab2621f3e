"""What is said on an SVG's sheets against what is measured on them, on openings at random."""

from functools import cache

import pytest

from configurator.drawing.base.primitives import Dimension
from configurator.drawing.pages.page import Page
from configurator.export.pages import pages_as_bytes
from tests.export.measuring import (
    MM_PER_POINT,
    Measured,
    Sheet,
    read_svg,
    says_its_length,
    scale_bar,
)
from tests.export.random_sheets import KINDS, display_of, page_of, scales_of, seeds_of

READ = 2e-4
"""How closely a place is written in the file, inches of the real thing."""

pytestmark = pytest.mark.parametrize("kind", KINDS)


@cache
def sheets(kind: str) -> list[tuple[int, Page, Sheet, list[list[Measured]]]]:
    """Return each opening's page, what was read of its SVG, and the dimensions of each of its details."""
    return [
        (seed, page, *read_svg(pages_as_bytes([page], ".svg"), len(page.details)))
        for seed, page in ((seed, page_of(kind, seed)) for seed in seeds_of(kind))
    ]


def test_sheets_are_as_large_as_their_paper(kind):
    for _, page, sheet, _ in sheets(kind):
        assert (sheet.width, sheet.height) == pytest.approx((page.paper.width, page.paper.height), abs=0.1)


def test_every_dimension_is_as_long_as_it_says(kind):
    for seed, page, _, details in sheets(kind):
        drawn = [
            [item.text for item in detail.primitives if isinstance(item, Dimension)]
            for detail in page.details
        ]
        assert [[one.lettered.text for one in measured] for measured in details] == drawn, seed
        for detail, measured in zip(page.details, details, strict=True):
            for one in measured:
                real = one.length / 72 / detail.scale.ratio
                assert says_its_length(one.lettered.text, real, display_of(seed), READ), (seed, one)


def test_every_scale_bar_is_as_long_as_it_says(kind):
    for seed, page, sheet, _ in sheets(kind):
        for scale in scales_of(page):
            long, said = scale_bar(sheet, scale.name)
            assert long * MM_PER_POINT == pytest.approx(said * scale.ratio * 25.4, abs=0.1), seed


def test_an_svg_says_what_the_page_says(kind):
    for seed, page, sheet, _ in sheets(kind):
        said = {one.text for one in sheet.texts}
        assert {item.text for item in page.furniture if getattr(item, "text", "").strip()} <= said, seed
