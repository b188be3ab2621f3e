"""One leaf on one width with plain answers, as the geometry would give them."""

from dataclasses import dataclass, field, replace

from configurator.rules.filling.usual import FilledOpening, fill
from configurator.rules.hinge.answers import Must, StopPlace
from configurator.rules.hinge.leaf_hinge import LeafHinge, leaf_hinges
from configurator.rules.hinge.width import choose_width
from tests.rules.hung import opening

FILLED = fill(opening())
MUST = Must("single", 4.5, 180.0, 32.0)


class Told:
    """Answers as they are told: `by_width` what a width does where it is not the usual, else its refusal.

    `mended` are the answers for any other record of the opening; without them there is no other.
    """

    def __init__(self, must=MUST, by_width=None, mended=None):
        self._must, self._by_width, self._mended = must, by_width or {}, mended

    def __call__(self, leaf, width):
        given = self._by_width.get(width, {})
        if isinstance(given, str):
            raise ValueError(given)
        return Given(leaf=leaf, hinge_width=width, others=self, **given)

    def must(self, leaf):
        return replace(self._must, leaf=leaf)

    def choice(self, leaf):
        return choose_width(self.must(leaf), self)

    def otherwise(self, opening):
        if self._mended is None:
            raise ValueError("nothing else was told")
        return self._mended


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
    way: None = None
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
    others: Told = field(default=Told(), compare=False)
