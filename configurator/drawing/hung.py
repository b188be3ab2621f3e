"""One leaf on one hinge width, with every number its picture is drawn from."""

import math
from dataclasses import dataclass, field

from configurator.geometry.gaps import LeastGap
from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.shapes import Shape

Layers = tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True)
class Standing:
    """One thing along the wall: its pieces in plan, what to call it, whether the leaf meets its heights."""

    shapes: tuple[Shape, ...]
    kind: str
    label: str
    met: bool = True


@dataclass(frozen=True, slots=True)
class StopDrawn:
    """A door stop as it is drawn: what it is, its tip in plan, how far along from the frame; inches.

    `holds` says whether the leaf comes to rest against it, which then ends the swing that is drawn.
    """

    kind: str
    tip: tuple[float, float]
    from_frame: float
    holds: bool


@dataclass(frozen=True, slots=True)
class Hung:
    """A hung leaf as it is drawn. Inches and radians, the axes and letters of the geometry.

    `opening` is the whole opening between rabbet faces (more than h.O for a leaf of a pair).
    """

    h: Hanging
    pin: Pin
    opening: float
    frame_kind: str
    construction: str
    return_depth: float
    stop_width: float
    """How far the frame stop runs through the wall."""
    metal_thickness: float
    """Sheet of a steel frame, wall of an aluminum tube; 0 of wood."""
    layers: Layers
    standing: tuple[Standing, ...] = ()
    hardware: tuple[Shape, ...] = ()
    other_leaf: tuple[Shape, ...] = ()
    reach: float = math.pi
    """Greatest angle with hardware, or where the leaf rests against a door stop drawn before it."""
    stopped_by: str = ""
    """What ends the swing, in words; empty at 180 degrees."""
    contact: tuple[float, float] | None = None
    touching: tuple[Shape, Shape] | None = None
    """What moves (closed) and what stands where they meet; None where nothing does, or a door stop holds."""
    reach_bare: float = math.pi
    contact_bare: tuple[float, float] | None = None
    least: LeastGap | None = None
    """The leaf's nearest passage to what stands along the wall, as far as it goes."""
    latch: LeastGap | None = None
    """The latch edge's nearest passage; None where it binds or closes against nothing."""
    mirrored: bool = field(default=False)
    door_stop: StopDrawn | None = None
    open_other: float | None = None
    """Net width of a pair's other leaf that already stands open when this one swings."""

    @property
    def wall_depth(self) -> float:
        """Thickness of the wall."""
        return math.fsum(thickness for _, thickness in self.layers)

    @property
    def wall_face(self) -> float:
        """Height of the wall's pull face in the axes of the plan."""
        return -self.h.p

    def shown_at(self, angle: float) -> float:
        """Return the angle the leaf is drawn at when so much is asked for: never past what stops it."""
        return min(angle, self.reach)
