import pytest

from configurator.model import JobFacts, Opening, paths

OPENING = Opening.model_validate(
    {
        "mark": "112A",
        "size": "3070",
        "door": {"thickness": 1.75},
        "obstructions": [{"kind": "chair rail", "projection": 1.75}],
    }
)


def test_names_come_from_the_record():
    assert paths.trade_name("wall.frame_proud") == "frame proud of wall"
    assert paths.plain_name("wall.frame_proud") == "frame stands out from wall by"
    assert paths.trade_name("obstructions.0.projection") == "projection"
    assert paths.trade_name("job.client") == "client"


def test_where_there_are_no_plain_words_the_trades_serve():
    assert paths.plain_name("door.thickness") == "door thickness"


@pytest.mark.parametrize("path", ["door.colour", "doors", "job.colour"])
def test_a_field_that_no_opening_has_is_an_error(path):
    with pytest.raises(KeyError):
        paths.field_at(path)


def test_words_are_those_of_the_record():
    assert paths.words_of("hand") == ("LH", "RH", "LHR", "RHR")
    assert paths.words_of("obstructions.3.side") == ("hinge", "latch")
    assert paths.words_of("door.thickness") == ()


def test_a_value_is_found_by_its_path():
    assert paths.value_at(OPENING, "size.width") == 36
    assert paths.value_at(OPENING, "obstructions.0.projection") == 1.75
    assert paths.value_at(OPENING, "door.latch_bevel") is None
    assert paths.value_at(OPENING, "hinge.width") is None
    assert paths.value_at(OPENING, "obstructions.1.projection") is None
    assert paths.value_at(JobFacts(client="Harbor District"), "job.client") == "Harbor District"


def test_a_value_is_put_by_its_path():
    data = {"obstructions": [{"kind": "base"}]}
    paths.put(data, "door.thickness", 2.0)
    paths.put(data, "obstructions.0.projection", 0.5)
    paths.put(data, "mark", "7")
    assert data == {
        "obstructions": [{"kind": "base", "projection": 0.5}],
        "door": {"thickness": 2.0},
        "mark": "7",
    }


def test_none_takes_the_key_away_and_an_emptied_record_with_it():
    data = {"door": {"thickness": 2.0, "undercut": 0.5}}
    paths.put(data, "door.thickness", None)
    assert data == {"door": {"undercut": 0.5}}
    paths.put(data, "door.undercut", None)
    assert data == {}


def test_a_refusals_place_becomes_a_path_within_its_opening():
    assert paths.from_fault("openings[12].door.thickness") == "door.thickness"
    assert paths.from_fault("obstructions[0].top") == "obstructions.0.top"
    assert paths.from_fault("mark") == "mark"
