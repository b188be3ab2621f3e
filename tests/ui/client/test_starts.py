import pytest

from configurator.study import study
from configurator.ui.client.starts import STARTS, started


@pytest.mark.parametrize("name", STARTS)
def test_every_start_can_be_studied_and_has_an_answer(name):
    found = study(started("101", name))
    assert found.candidates
    assert all(leaf.parts["width"].value is not None for leaf in found.specification.leaves)


def test_the_chair_rail_shows_why_a_wider_hinge_is_worth_it():
    four, wider = study(started("101", "Chair-rail corridor")).candidates
    assert four.stopped_by.kind == "chair rail"
    assert wider.greatest_angle_bare == 180


@pytest.mark.parametrize("name", STARTS)
def test_nothing_of_a_start_counts_as_measured(name):
    """Whatever stands beside it or is on it has the usual sizes of its kind, said to be assumed."""
    opening = started("101", name)
    assumed = study(opening).filled.assumed
    for listed in ("obstructions", "hardware"):
        for place, thing in enumerate(getattr(opening, listed)):
            given = thing.model_fields_set - {"kind", "bottom", "top", "length"}
            beside_casing = thing.kind == "casing" or any(o.kind == "casing" for o in opening.obstructions)
            assert given <= ({"start"} if beside_casing else set()), (name, thing)
            if thing.kind != "return wall":
                assert f"{listed}.{place}.projection" in assumed
