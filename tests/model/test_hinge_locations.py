import pytest
from pydantic import ValidationError

from configurator.model import HingeLocations, Opening
from configurator.model.faults import faults_of

SIZE = {"mark": "1", "size": {"width": 36, "height": 84}}


@pytest.mark.parametrize("tops", [[5], [0, 37, 300], ["5", "3'-1\"", "69 1/2"], []])
def test_tops_go_down_from_the_top_one(tops):
    assert HingeLocations(tops=tops).tops is not None


@pytest.mark.parametrize(
    ("tops", "words"),
    [
        ([5, 5], "each farther below"),
        ([37, 5], "each farther below"),
        ([-0.25, 5], "from 0 to 300"),
        ([5, 300.25], "from 0 to 300"),
        (list(range(25)), "up to 24"),
    ],
)
def test_others_are_refused_by_name(tops, words):
    with pytest.raises(ValidationError) as refused:
        Opening.model_validate({**SIZE, "hinge_locations": {"tops": tops}})
    (fault,) = faults_of(refused.value, Opening)
    assert fault.field == "hinge_locations.tops"
    assert words in fault.message


def test_a_rule_is_one_of_two():
    assert HingeLocations(rule="7 and 11").rule == "7 and 11"
    with pytest.raises(ValidationError):
        HingeLocations(rule="6 and 10")
