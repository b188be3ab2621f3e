"""What a page is: a paper, details at a true scale, and the furniture about them."""

from dataclasses import dataclass

from configurator.drawing.base.primitives import Primitive
from configurator.drawing.base.view import Group, View, paper

MM_PER_INCH = 25.4
POINTS_PER_INCH = 72.0


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper size as it lies, millimetres."""

    name: str
    width: float
    height: float

    @property
    def points(self) -> tuple[float, float]:
        """Width and height in points."""
        return self.width / MM_PER_INCH * POINTS_PER_INCH, self.height / MM_PER_INCH * POINTS_PER_INCH

    def turned(self) -> "Paper":
        """Return the same paper lying the other way."""
        return Paper(self.name, self.height, self.width)


@dataclass(frozen=True, slots=True)
class Scale:
    """A drawing scale: how it is written, and inches on paper for an inch of the real thing."""

    name: str
    ratio: float

    @property
    def points(self) -> float:
        """Points on paper for an inch of the real thing: a view's scale."""
        return POINTS_PER_INCH * self.ratio


@dataclass(frozen=True, slots=True)
class Detail:
    """One drawing on a page: primitives in inches of the real thing, seen through a view at a true scale."""

    name: str
    scale: Scale
    view: View
    primitives: tuple[Primitive, ...]

    @property
    def group(self) -> Group:
        """The detail as it is painted."""
        return Group(self.view, self.primitives)


@dataclass(frozen=True, slots=True)
class Page:
    """A page to hand on; `furniture` (border, title block, notes, scale bars) is in points of the paper.

    `title` is the page's bookmark, as "112A plan".
    """

    title: str
    paper: Paper
    details: tuple[Detail, ...]
    furniture: tuple[Primitive, ...]

    @property
    def groups(self) -> tuple[Group, ...]:
        """Everything in painting order."""
        whole = paper(*self.paper.points)
        return (*(detail.group for detail in self.details), Group(whole, self.furniture))
