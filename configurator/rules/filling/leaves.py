"""The leaves of an opening: what each is called, how wide and how high it is."""

from dataclasses import dataclass

from configurator.model import Opening


@dataclass(frozen=True, slots=True)
class GappedOpening:
    """An opening with the gaps about its leaves; inches."""

    opening: Opening
    hinge_gap: float  # g_h
    latch_gap: float  # g_l
    head_gap: float
    meeting_gap: float
    split_gap: float
    undercut: float

    @property
    def leaf_bottom(self) -> float:
        """Height of the leaf's bottom above the finished floor."""
        return self.undercut

    @property
    def leaf_top(self) -> float:
        """Height of the leaf's top above the finished floor."""
        return self.opening.size.height - self.head_gap


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


def leaves_of(gapped: GappedOpening) -> tuple[LeafSize, ...]:
    """Return the leaves: single; active and inactive; or upper and lower of a Dutch door."""
    match gapped.opening.leaves:
        case "pair":
            return _pair(gapped)
        case "dutch":
            return _dutch(gapped)
    width = gapped.opening.size.width - gapped.hinge_gap - gapped.latch_gap
    return (LeafSize("single", width, gapped.leaf_bottom, gapped.leaf_top),)


def _pair(gapped: GappedOpening) -> tuple[LeafSize, ...]:
    both = gapped.opening.size.width - 2 * gapped.hinge_gap - gapped.meeting_gap
    active = both / 2 if gapped.opening.active_width is None else gapped.opening.active_width
    bottom, top = gapped.leaf_bottom, gapped.leaf_top
    return LeafSize("active", active, bottom, top), LeafSize("inactive", both - active, bottom, top)


def _dutch(gapped: GappedOpening) -> tuple[LeafSize, ...]:
    width = gapped.opening.size.width - gapped.hinge_gap - gapped.latch_gap
    given = gapped.opening.split_height
    split = gapped.opening.size.height / 2 if given is None else given
    half = gapped.split_gap / 2
    return (
        LeafSize("upper", width, split + half, gapped.leaf_top),
        LeafSize("lower", width, gapped.leaf_bottom, split - half),
    )
