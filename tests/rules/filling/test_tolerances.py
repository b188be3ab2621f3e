import pytest

from configurator.model.use import Tolerances
from configurator.rules.filling.tolerances import TOLERANCE_KEYS, fill_tolerances
from configurator.tables import ToleranceRow, table
from tests.openings import plain_opening

WOOD = {"construction": "wood, solid core"}


def test_the_table_has_a_row_for_any_material_last_for_every_key():
    assert tuple(dict.fromkeys(row.key for row in table(ToleranceRow))) == TOLERANCE_KEYS
    for key in TOLERANCE_KEYS:
        assert [row for row in table(ToleranceRow) if row.key == key][-1].made_of is None
    assert tuple(Tolerances.model_fields) == TOLERANCE_KEYS


def test_nothing_given_is_all_assumed_with_its_source():
    filled = fill_tolerances(plain_opening())
    assert dict(filled.values) == {
        "frame_setting": 1 / 16,
        "wall_thickness": 1 / 8,
        "gaps": 3 / 64,
        "door_thickness": 1 / 16,
        "hinge_backset": 1 / 32,
        "hinge_width": 1 / 64,
    }
    assert set(filled.assumed) == {f"tolerances.{key}" for key in TOLERANCE_KEYS}
    setting = filled.assumed["tolerances.frame_setting"]
    assert setting.value == 1 / 16
    assert setting.mark_of_source == "read"
    assert "3.02.B" in setting.source


def test_a_wood_door_has_its_own_and_the_frame_still_counts_as_steel():
    filled = fill_tolerances(plain_opening(door=WOOD))
    assert filled["gaps"] == 1 / 32
    assert filled.assumed["tolerances.hinge_backset"].mark_of_source == "read"
    assert filled.assumed["tolerances.frame_setting"].mark_of_source == "read"


def test_a_wood_frame_has_no_source_for_its_setting():
    wood = plain_opening(frame={"kind": "wood with casing"})
    filled = fill_tolerances(wood)
    assert filled.assumed["tolerances.frame_setting"].mark_of_source == "common practice"
    assert filled["gaps"] == 1 / 32, "a door in a wood frame is taken for a wood door"


@pytest.mark.parametrize("given", [0, 0.25])
def test_what_is_given_counts_and_is_not_assumed(given):
    filled = fill_tolerances(plain_opening(tolerances={"gaps": given}))
    assert filled["gaps"] == given
    assert "tolerances.gaps" not in filled.assumed
    assert len(filled.assumed) == len(TOLERANCE_KEYS) - 1
