"""What is said on an SVG's sheets against what is measured on them, on fifty openings at random."""

import pytest

from configurator.export.pages import pages_as_bytes
from tests.export.measuring import MM_PER_POINT, half_of_printed, length_said, read_svg, scale_bar
from tests.export.random_sheets import KINDS, SEEDS, display_of, pages_of

READ = 2e-4
"""How closely a place is written in the file, inches of the real thing."""

pytestmark = pytest.mark.parametrize("kind", KINDS)


def test_sheets_are_as_large_as_their_paper_and_dimensions_as_long_as_they_say(kind):
    for seed, page in zip(SEEDS, pages_of(kind), strict=True):
        sheet, details = read_svg(pages_as_bytes([page], ".svg"), len(page.details))
        assert (sheet.width, sheet.height) == pytest.approx((page.paper.width, page.paper.height), abs=0.1)
        for detail, measured in zip(page.details, details, strict=True):
            for one in measured:
                real = one.length / 72 / detail.scale.ratio
                near = half_of_printed(display_of(seed)) + READ
                assert length_said(one.lettered.text) == pytest.approx(real, abs=near), (seed, one)


def test_every_scale_bar_is_as_long_as_it_says(kind):
    for seed, page in zip(SEEDS, pages_of(kind), strict=True):
        sheet, _ = read_svg(pages_as_bytes([page], ".svg"), 0)
        for scale in dict.fromkeys(detail.scale for detail in page.details):
            long, said = scale_bar(sheet, scale.name)
            assert long * MM_PER_POINT == pytest.approx(said * scale.ratio * 25.4, abs=0.1), seed


def test_an_svg_says_what_the_page_says(kind):
    for page in pages_of(kind)[:10]:
        sheet, _ = read_svg(pages_as_bytes([page], ".svg"), 0)
        said = {one.text for one in sheet.texts}
        assert {item.text for item in page.furniture if getattr(item, "text", "").strip()} <= said
