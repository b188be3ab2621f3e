"""A recommended width that is not among those compared is said to be missing, and added by one click."""

import pytest

from configurator.study.run import study
from tests.rules.hung import opening

RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
FLUSH = {"obstructions": [RAIL], "wall": {"thickness": 4.875, "frame_proud": 0}}


def missing(given):
    return [one for one in study(given).findings if one.code == "width not compared"]


def test_a_recommended_width_that_is_not_shown():
    """Flush frame, 1-3/4 rail: 5 is what clears the rail, and 4 and 4-1/2 were asked to be compared."""
    given = opening(**FLUSH, compare=(4, 4.5))
    assert study(given).recommended["width"] == 5
    (said,) = missing(given)
    assert said.message == (
        "5 is not among the widths compared (4, 4-1/2), but taken for this opening: add it to compare."
    )
    assert [(one.path, one.value) for one in said.fix] == [("compare", (4, 4.5, 5))]
    mended = opening(**FLUSH, **{one.path: one.value for one in said.fix})
    assert missing(mended) == []
    assert 5 in {one.hinge_width for one in study(mended).candidates}


@pytest.mark.parametrize(
    ("changes", "widths"),
    [
        ({}, (4, 4.5)),  # nothing narrower in stock: the next wider
        ({"wall": FLUSH["wall"], "obstructions": [RAIL | {"projection": 1.25}]}, (4, 4.5)),
        (FLUSH, (4.5, 5)),
        ({"hinge": {"width": 8}, "size": {"width": 40, "height": 84}}, (7, 8)),
        ({"hinge": {"width": 8}}, (8,)),  # 7 leaves no clear width either: an error shows nothing
    ],
)
def test_the_width_taken_is_compared_and_one_beside_it(changes, widths):
    assert tuple(one.hinge_width for one in study(opening(**changes)).candidates) == widths


def test_nothing_is_said_where_it_is_shown_or_nothing_is_recommended():
    assert missing(opening()) == []
    assert missing(opening(hung_on="pivots")) == []
    assert missing(opening(hinge={"height": 5.5})) == []


def test_what_both_leaves_of_a_pair_take_is_said_once():
    (said,) = missing(opening(leaves="pair", size={"width": 72, "height": 84}, compare=(8,)))
    assert said.message.startswith("4 is not among")


@pytest.mark.parametrize(("compared", "fixes"), [(11, 1), (12, 0)])
def test_no_more_than_twelve_can_be_compared(compared, fixes):
    (said,) = missing(opening(compare=tuple(6.0 + place / 4 for place in range(compared))))
    assert len(said.fix) == fixes
