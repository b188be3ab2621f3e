"""A door stop on the wall or the floor, where it stands; inches."""

from configurator.model.fields import Length, Record, field
from configurator.model.words import DoorStopKind


class DoorStop(Record):
    """What holds the open door, and where; the angle that the door then rests at is worked out."""

    kind: DoorStopKind = field("kind of door stop", default=...)
    projection: Length = field("door stop projection", "stands off the wall by", ..., gt=0, le=48)
    from_frame: Length | None = field(
        "door stop from the frame", "middle of the door stop to the frame's outer edge", ge=0, le=300
    )
    height: Length | None = field("door stop above floor", "how high the door stop sits", ge=0, le=300)
