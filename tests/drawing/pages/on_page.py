"""What stands on a page, in points of the paper: for the tests of the sheets."""

import math
from itertools import combinations, pairwise
from pathlib import Path

import pytest

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.dimension_strokes import strokes_of
from configurator.drawing.base.lettering import ASCENT, DESCENT, text_width
from configurator.drawing.base.primitives import Dimension, Polyline, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.frame import border_box
from configurator.drawing.pages.page import Detail, Page
from configurator.project_file import load

DEMOS = Path(__file__).parents[3] / "demo_openings"


def dimensions(page: Page) -> list[tuple[Detail, Dimension]]:
    """Return every dimension with the detail it stands in."""
    return [
        (detail, one) for detail in page.details for one in detail.primitives if isinstance(one, Dimension)
    ]


def named(page: Page, name: str) -> list[float]:
    """Return the values of the dimensions with a name."""
    return [one.value for _, one in dimensions(page) if one.name == name]


def texts(page: Page) -> list[tuple[str, Box]]:
    """Return every text with what it covers; of an upright one too."""
    found = []
    for group in page.groups:
        for one in group.primitives:
            if isinstance(one, Dimension):
                at, share, bold, angle = one.text_at, 0.5, False, one.text_angle
            elif isinstance(one, Text):
                share = {"start": 0.0, "middle": 0.5, "end": 1.0}[one.anchor]
                at, bold, angle = one.at, one.bold, one.angle
            else:
                continue
            found.append(
                (one.text, _covered(group.view.to_sheet(at), one.text, one.size, share, bold, angle))
            )
    return found


def _covered(at, text, size, share, bold, angle) -> Box:
    wide = text_width(text, size, bold)
    c, s = round(math.cos(angle)), round(math.sin(angle))
    corners = [
        (at[0] + c * x - s * y, at[1] + s * x + c * y)
        for x in (-share * wide, (1 - share) * wide)
        for y in (-DESCENT * size, ASCENT * size)
    ]
    xs, ys = zip(*corners, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def overlapping(page: Page) -> list[tuple[str, str]]:
    """Return the pairs of texts that lie over one another."""
    return [
        (a, b) for (a, one), (b, other) in combinations(texts(page), 2) if one.shrunk(0.05).overlaps(other)
    ]


def struck_through(page: Page) -> list[tuple[str, str]]:
    """Return texts of the details that a line of a dimension, a leader or an outline runs through."""
    found = []
    for detail in page.details:
        alone = Page(page.title, page.paper, (detail,), ())
        for text, box in texts(alone):
            inner = box.shrunk(0.6)
            found += [(text, name) for a, b, name in _strokes(detail) if clip_segment(a, b, inner)]
    return found


def _strokes(detail: Detail) -> list:
    found = []
    for one in detail.primitives:
        if isinstance(one, Dimension):
            found += [
                (*ends, one.name) for line in strokes_of(one, detail.view).lines for ends in pairwise(line)
            ]
        elif isinstance(one, Polyline):
            points = [detail.view.to_sheet(point) for point in one.points]
            points += points[:1] if one.closed else []
            found += [(*ends, one.layer) for ends in pairwise(points)]
    return found


def outside(page: Page) -> list[str]:
    """Return the texts that leave the border."""
    border = border_box(page.paper)
    return [text for text, box in texts(page) if not border.holds(box)]


def assert_true_to_scale(page: Page) -> None:
    """Check every dimension: what lies between its ends on the paper, over the scale, is its value."""
    for detail, one in dimensions(page):
        a, b = detail.view.to_sheet(one.line_a), detail.view.to_sheet(one.line_b)
        assert math.dist(a, b) / detail.scale.points == pytest.approx(one.value, abs=1e-6)
        level = math.isclose(one.line_a[1], one.line_b[1], abs_tol=1e-9)
        axis = 0 if level else 1
        assert abs(one.a[axis] - one.b[axis]) == pytest.approx(one.value, abs=1e-6)


def demo_openings() -> list:
    """Return every demo opening with its job's facts, as parameters of a test."""
    found = []
    for name in ("kestrel_point.json", "pairs_and_dutch.json"):
        job = load(DEMOS / name)
        found += [pytest.param(one, job.job, id=one.mark) for one in job.openings]
    return found
