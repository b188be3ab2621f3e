import pytest

from configurator.study.events import moments
from configurator.units import Display
from configurator.wording.swing_words import moment_words
from tests.drawing.cases import case_a

RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}


@pytest.mark.parametrize(
    ("plain", "said"),
    [
        (
            False,
            [
                "0°: closed",
                "90°: square open, where the clear width counts",
                "171.7°: first contact: leaf on the chair rail (4 in hinge)",
            ],
        ),
        (True, ["90°: square open", "171.7°: leaf meets the chair rail (4 in hinge)"]),
    ],
)
def test_moments_in_words(plain, said):
    study = case_a(obstructions=[RAIL])
    lines = [moment_words(moment, study, Display(), plain) for moment in moments(study)]
    assert set(said) <= set(lines)


def test_how_near_is_told_in_the_units_chosen_and_with_which_hinge():
    study = case_a()
    lines = [moment_words(moment, study, Display(64)) for moment in moments(study)]
    assert "2.9°: latch edge closest, 3/64 in (4 in hinge)" in lines
    metric = [moment_words(moment, study, Display(metric=True)) for moment in moments(study)]
    assert any("latch edge closest, 1.4 mm" in line for line in metric)
    assert lines[-1] == (
        "180°: fully open; wanted angle; least gap to the wall, 1-3/8 in (4 in hinge); "
        "least gap to the wall, 1-7/8 in (4-1/2 in hinge)"
    )


def test_a_pair_s_leaves_are_told_apart():
    study = case_a(
        leaves="pair", size={"width": 72, "height": 84}, obstructions=[RAIL | {"side": "latch"}], compare=[4]
    )
    lines = [moment_words(moment, study, Display()) for moment in moments(study)]
    assert (
        "180°: fully open; wanted angle; least gap to the wall, 1-3/8 in (4 in hinge, active leaf)" in lines
    )
    assert "171.7°: first contact: leaf on the chair rail (4 in hinge, inactive leaf)" in lines
