import pytest

from configurator.documents.schedule import schedule_row
from configurator.model import Opening
from configurator.order.studied import study_or_fault
from configurator.order.tally import like_key, study_key, tally


def opening(mark="101", **more):
    return Opening.model_validate({"mark": mark, "size": "3070", "hand": "RH", **more})


@pytest.mark.parametrize(
    "more", [{"location": "Galley"}, {"quantity": 3}, {"notes": "seen"}, {"questions": "which lock?"}]
)
def test_what_is_only_said_keeps_openings_alike(more):
    assert like_key(opening("102", **more)) == like_key(opening())


@pytest.mark.parametrize(
    "more",
    [
        {"hand": "LH"},
        {"status": "approved"},
        {"size": "3068"},
        {"door": {"undercut": 0.5}},
        {"use": {"closer": False}},
        {"obstructions": [{"kind": "base", "projection": 0.5}]},
    ],
)
def test_anything_else_tells_them_apart(more):
    assert like_key(opening(**more)) != like_key(opening())


def test_a_value_that_always_holds_may_be_given_or_left_out():
    assert like_key(opening(leaves="single", quantity=1)) == like_key(opening())


def test_the_same_study_key_means_the_same_answers():
    """What the key leaves out must not come into any answer: else one would be shown for another."""
    rail = {
        "obstructions": [{"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}]
    }
    use = {"use": {"wanted_angle": 180, "closer": True, "locked": True, "fire_rated": True}}
    one = opening("1", **rail, **use)
    other = opening("2", location="Galley", notes="n", questions="q", **rail, **use)
    assert study_key(one) == study_key(other)
    rows = [schedule_row(tally(study_or_fault(each))) for each in (one, other)]
    for name in ("hinge", "angle", "angles", "findings", "errors", "warnings", "notes_of_program"):
        assert getattr(rows[0], name) == getattr(rows[1], name)


def test_the_quantity_counts_in_answers_and_so_in_the_study_key():
    assert study_key(opening(quantity=2)) != study_key(opening())


def test_the_status_counts_only_where_a_width_was_ordered_by_hand():
    by_hand = {"hinge": {"width": 4}}
    assert study_key(opening(order_state="ordered")) == study_key(opening())
    assert study_key(opening(order_state="ordered", **by_hand)) != study_key(opening(**by_hand))
    assert study_key(opening(status="field verified", **by_hand)) == study_key(opening(**by_hand))
