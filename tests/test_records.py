"""A record is the standard library's frozen dataclass in all that is done with one."""

import copy
import dataclasses
import pickle
from collections.abc import Mapping
from dataclasses import field, replace
from typing import Any

import pytest

from configurator import records


@records.dataclass(frozen=True, slots=True)
class Size:
    """With a usual value, and a part that neither equality nor text knows."""

    width: float
    height: float = 84.0
    note: Mapping[str, str] = field(default_factory=dict, compare=False, repr=False)


@records.dataclass(frozen=True, slots=True, kw_only=True)
class Named(Size):
    """Another one that adds to it, by name only."""

    name: str


@records.dataclass(frozen=True)
class Angle:
    """With a check, and room for what is remembered beside its field."""

    degrees: float

    def __post_init__(self) -> None:
        if self.degrees < 0:
            raise ValueError("below nothing")


@records.dataclass(frozen=True, eq=False)
class Thing:
    """Equal to nothing but itself."""

    width: float


@dataclasses.dataclass(frozen=True, slots=True)
class StandardSize:
    """The standard library's own."""

    width: float
    height: float = 84.0
    note: Mapping[str, str] = field(default_factory=dict, compare=False, repr=False)


def test_fields_and_usual_values_are_taken_as_the_standard_ones_are():
    for kind in (Size, StandardSize):
        made: Any = kind(36)
        assert (made.width, made.height, made.note) == (36, 84.0, {})
        assert kind(36, 80, {"a": "b"}).note == {"a": "b"}
        assert kind(36).note is not made.note
        assert repr(made).endswith("Size(width=36, height=84.0)")
        assert dataclasses.asdict(replace(made, height=80)) == {"width": 36, "height": 80, "note": {}}
        assert kind.__match_args__ == ("width", "height", "note")
        with pytest.raises(TypeError):
            kind()


def test_equality_and_hash_go_by_kind_and_by_what_is_compared():
    assert Size(36) == Size(36, note={"a": "b"})
    assert hash(Size(36)) == hash(Size(36, note={"a": "b"}))
    assert Size(36) != Size(36, 80)
    assert Size(36) != Named(36, name="a")
    assert Angle(1) == Angle(1)
    not_a_number = float("nan")
    assert Angle(not_a_number) == Angle(not_a_number)  # the same value, as in a tuple
    assert Angle(1) != Angle(2)
    assert {Angle(1): "one"}[Angle(1)] == "one"
    assert Thing(1) != Thing(1)


def test_what_comes_from_another_has_its_fields_first():
    made = Named(36, name="door")
    assert repr(made) == "Named(width=36, height=84.0, name='door')"
    assert replace(made, width=40).name == "door"
    with pytest.raises(TypeError):
        Named(36, 84.0, {}, "door")


@pytest.mark.parametrize("made", [Size(36), Named(36, name="door"), Angle(1), Thing(1)])
def test_nothing_of_it_is_set_or_deleted(made):
    for change in (lambda: setattr(made, "width", 1), lambda: delattr(made, "width")):
        with pytest.raises(dataclasses.FrozenInstanceError):
            change()


@pytest.mark.parametrize("made", [Size(36, note={"a": "b"}), Named(36, name="door"), Angle(1)])
def test_copies_are_equal(made):
    for other in (copy.copy(made), copy.deepcopy(made), pickle.loads(pickle.dumps(made))):
        assert other == made
        assert dataclasses.asdict(other) == dataclasses.asdict(made)


def test_what_is_checked_when_it_is_made_is_checked():
    with pytest.raises(ValueError, match="below nothing"):
        Angle(-1)
    with pytest.raises(ValueError, match="below nothing"):
        replace(Angle(1), degrees=-1)


def test_what_may_change_is_left_to_the_standard_library():
    @records.dataclass(slots=True)
    class Tally:
        count: int = 0

    tally = Tally()
    tally.count = 2
    assert tally == Tally(2)
