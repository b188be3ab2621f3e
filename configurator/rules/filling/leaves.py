"""The leaves of an opening: what each is called, how wide and how high it is."""

from dataclasses import dataclass

from configurator.rules.filling.usual import FilledOpening


@dataclass(frozen=True, slots=True)
class LeafSize:
    """One leaf: net width, and its bottom and top above the finished floor; inches."""

    name: str
    width: float
    bottom: float
    top: float

    @property
    def height(self) -> float:
        """Net height, inches."""
        return self.top - self.bottom


def leaves_of(filled: FilledOpening) -> tuple[LeafSize, ...]:
    """Return the leaves: single; active and inactive; or upper and lower of a Dutch door."""
    match filled.opening.leaves:
        case "pair":
            return _pair(filled)
        case "dutch":
            return _dutch(filled)
    width = filled.opening_width - filled.hinge_gap - filled.latch_gap
    return (LeafSize("single", width, filled.leaf_bottom, filled.leaf_top),)


def _pair(filled: FilledOpening) -> tuple[LeafSize, ...]:
    both = filled.opening_width - 2 * filled.hinge_gap - filled.meeting_gap
    active = both / 2 if filled.opening.active_width is None else filled.opening.active_width
    bottom, top = filled.leaf_bottom, filled.leaf_top
    return LeafSize("active", active, bottom, top), LeafSize("inactive", both - active, bottom, top)


def _dutch(filled: FilledOpening) -> tuple[LeafSize, ...]:
    width = filled.opening_width - filled.hinge_gap - filled.latch_gap
    given = filled.opening.split_height
    split = filled.opening_height / 2 if given is None else given
    half = filled.split_gap / 2
    return (
        LeafSize("upper", width, split + half, filled.leaf_top),
        LeafSize("lower", width, filled.leaf_bottom, split - half),
    )
