"""The hinge laid flat shows the sizes it is said to have."""

import math

import pytest

from configurator.drawing.base.primitives import Arc, Polygon
from configurator.drawing.pictures.hinge_sample import (
    HingeSample,
    barrel_box,
    sample_extent,
    sample_parts,
    tip_boxes,
)


def test_both_leaves_together_are_the_open_width_and_the_height():
    sample = HingeSample(height=5.0, width=4.0)
    points = [point for side in (-1.0, 1.0) for point in sample.plate(side)]
    assert (min(x for x, _ in points), max(x for x, _ in points)) == (-2.0, 2.0)
    assert (min(y for _, y in points), max(y for _, y in points)) == (0.0, 5.0)


def test_corners_are_rounded_to_their_radius():
    sample = HingeSample(corner=0.25)
    right, top = sample.width / 2, sample.height
    centre = (right - 0.25, top - 0.25)
    rounded = [p for p in sample.plate(1.0) if p[0] > centre[0] - 1e-9 and p[1] > centre[1] - 1e-9]
    assert len(rounded) == 7
    assert all(math.dist(point, centre) == pytest.approx(0.25) for point in rounded)


def test_knuckles_screws_and_tips_are_counted():
    sample = HingeSample(knuckles=5)
    parts = sample_parts(sample)
    named = [part.name for part in parts if isinstance(part, (Polygon, Arc))]
    assert named.count("knuckle") == 5
    assert len(sample.joints) == 4
    assert named.count("screw") == 8
    assert named.count("tip") == len(tip_boxes(sample)) == 2


def test_all_of_it_lies_in_its_picture():
    extent = sample_extent(HingeSample())
    boxes = (barrel_box(HingeSample()), *tip_boxes(HingeSample()), HingeSample().plate(1.0))
    assert all(extent.has(point) for box in boxes for point in box)
