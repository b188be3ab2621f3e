import pytest

from configurator.drawing.pages.page import (
    Paper,
    Scale,
    fitted_or_asked,
    largest_scale,
    paper_named,
    papers,
    scale_named,
    scales,
    usual_paper,
)
from configurator.units import Display


def test_the_papers_are_as_large_as_their_standards_say():
    inches = {"Letter": (11, 8.5), "Tabloid": (17, 11), "Arch C": (24, 18)}
    for name, (wide, high) in inches.items():
        assert papers()[name].points == pytest.approx((72 * wide, 72 * high), abs=1e-9)
    assert (papers()["A4"].width, papers()["A4"].height) == (297, 210)
    assert (papers()["A3"].width, papers()["A3"].height) == (420, 297)


def test_every_paper_lies_and_can_be_turned():
    for paper in papers().values():
        assert paper.width > paper.height
        assert paper.turned().points == paper.points[::-1]


@pytest.mark.parametrize(
    ("words", "points"),
    [
        ("full", 72), ("full size", 72), ("6", 36), ("3", 18), ("3 in", 18), ("3 in = 1'-0\"", 18),
        ("1-1/2", 9), ("3/4", 4.5), ("1:1", 72), ("1:2", 36), ("1:5", 14.4), ("1 : 10", 7.2),
    ],
)  # fmt: skip
def test_a_scale_is_read_as_it_is_written_or_short(words, points):
    assert scale_named(words).points == pytest.approx(points)


@pytest.mark.parametrize("words", ["", "5", "1:3", "half", "0", "-1"])
def test_a_scale_nobody_draws_at_is_refused_with_the_list(words):
    with pytest.raises(ValueError, match="1-1/2"):
        scale_named(words)


def test_a_paper_is_found_in_any_case_and_an_unknown_one_refused():
    assert paper_named("arch c") is papers()["Arch C"]
    assert paper_named("ARCHC") is papers()["Arch C"]
    with pytest.raises(ValueError, match="Tabloid"):
        paper_named("A0")


def test_the_paper_goes_with_the_unit():
    assert usual_paper(Display()).name == "Letter"
    assert usual_paper(Display(metric=True)).name == "A4"


@pytest.mark.parametrize(
    ("fits", "name"),
    [(17.9, "1-1/2 in = 1'-0\""), (18.0, "3 in = 1'-0\""), (35.9, "3 in = 1'-0\""), (500, "full size")],
)
def test_the_largest_scale_that_fits(fits, name):
    assert largest_scale(fits, metric=False).name == name


def test_scales_go_down_and_none_is_small_enough_for_nothing():
    for metric in (False, True):
        ratios = [one.ratio for one in scales(metric)]
        assert ratios == sorted(ratios, reverse=True)
        assert largest_scale(0.01, metric) is None


def test_a_scale_that_was_asked_for_is_taken_or_refused_naming_one_that_fits():
    paper, three = Paper("Letter", 279.4, 215.9), scale_named("3")
    assert fitted_or_asked(20.0, None, paper, metric=False) == three
    assert fitted_or_asked(40.0, three, paper, metric=False) == three
    assert fitted_or_asked(18.0, three, paper, metric=False) == three
    with pytest.raises(ValueError, match="does not fit on Letter paper; 1-1/2 in"):
        fitted_or_asked(17.99, three, paper, metric=False)
    with pytest.raises(ValueError, match="no scale"):
        fitted_or_asked(0.01, Scale("full size", 1.0), paper, metric=False)
