"""What door and frame are made of, and where the opening stands: what decides metal, finish and screws."""

from dataclasses import dataclass

from configurator.rules.filling.usual import FilledOpening
from configurator.tables import ConstructionRow, FrameKindRow, row_of


@dataclass(frozen=True, slots=True)
class Fastening:
    """What a hinge leaf is screwed to on each side: "machine" or "wood" screws, and the materials."""

    door_screws: str
    frame_screws: str
    door_family: str
    frame_material: str


def fastening_of(construction: str | None, frame_kind: str) -> Fastening:
    """Return what holds a hinge to that door and frame; an undescribed door is taken to match its frame."""
    frame = row_of(FrameKindRow, frame_kind)
    family = {"wood": "wood", "steel": "metal", "aluminum": "aluminum"}[frame.material]
    if construction is not None:
        door = row_of(ConstructionRow, construction)
        return Fastening(door.screws, frame.screws, door.family, frame.material)
    return Fastening(frame.screws, frame.screws, family, frame.material)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a hinge hangs."""

    exterior: bool
    coastal: bool
    humid: bool
    fire_rated: bool


def place_of(filled: FilledOpening) -> Place:
    """Return where the opening's hinges hang."""
    use = filled.use
    return Place(
        exterior=use.exposure == "exterior",
        coastal=use.coastal,
        humid=use.humid,
        fire_rated=use.fire_rated,
    )
