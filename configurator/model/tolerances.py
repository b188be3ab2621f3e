"""How far what is built may be off what is drawn: plus or minus, each way, inches."""

from configurator.model.fields import Length, Record, field


class Tolerances(Record):
    """One tolerance a key, plus or minus; a key left out has its usual value, 0 says that it is exact."""

    frame_setting: Length | None = field(
        "frame setting tolerance", "the frame may stand off its place by", ge=0, le=2
    )
    wall_thickness: Length | None = field(
        "wall thickness tolerance", "the wall may be thicker or thinner by", ge=0, le=2
    )
    gaps: Length | None = field("door gap tolerance", "the gaps about the door may be off by", ge=0, le=0.5)
    door_thickness: Length | None = field(
        "door thickness tolerance", "the door may be thicker or thinner by", ge=0, le=0.5
    )
    hinge_backset: Length | None = field(
        "hinge backset tolerance", "the hinge may be set off its place by", ge=0, le=0.5
    )
    hinge_width: Length | None = field(
        "hinge width tolerance", "the hinge may be wider or narrower by", ge=0, le=0.5
    )
