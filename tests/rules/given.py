"""One leaf on one width with plain answers, as the geometry would give them."""

from dataclasses import dataclass, field

from configurator.rules.filling.usual import FilledOpening, fill
from configurator.rules.hinge.answers import StopPlace
from configurator.rules.hinge.leaf_hinge import LeafHinge, leaf_hinges
from tests.rules.hung import opening

FILLED = fill(opening())


@dataclass(frozen=True)
class Met:
    kind: str
    index: int | None = None
    part: str = "leaf"
    at_rest: bool = False


@dataclass(frozen=True)
class Given:
    """What one width does; the usual one does all."""

    filled: FilledOpening = FILLED
    hinge: LeafHinge = leaf_hinges(FILLED)[0]
    leaf: str = "single"
    hinge_width: float = 4.0
    mounting: str = "full mortise"
    refusal: str | None = None
    backset_disagreement: float = 0.0
    gap_disagreement: float = 0.0
    barrel_diameter: float = 0.58
    barrel_free_by: float = 0.1
    barrel_in_trim: bool = False
    clear_past_frame_at_180: float = 0.875
    greatest_angle: float = 180.0
    stopped_by: Met | None = None
    greatest_angle_bare: float = 180.0
    stopped_by_bare: Met | None = None
    rests_at: float = 180.0
    door_stop: StopPlace | None = None
    stop_wanted: StopPlace | None = None
    clear_width_at_90: float | None = 33.0
    latch_edge_least: float = 0.0625
    encroachment_greatest: float = 37.0
    leaf_out_at_rest: float = 3.0
    findings: tuple = field(default=())
