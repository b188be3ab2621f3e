"""Where a drawing lies on the sheet: scale, place and hand. Sheets: points, y upward; drawings: inches."""

from collections.abc import Iterable
from dataclasses import dataclass

from configurator.drawing.base.primitives import Point, Primitive


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle, in the unit of whoever asks."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From bottom to top."""
        return self.top - self.bottom

    def overlaps(self, other: "Box", air: float = 0.0) -> bool:
        """Whether the two share an area, or come nearer than `air`."""
        return (
            self.left < other.right + air
            and other.left < self.right + air
            and self.bottom < other.top + air
            and other.bottom < self.top + air
        )

    def holds(self, other: "Box") -> bool:
        """Whether the other lies wholly inside."""
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.bottom <= other.bottom
            and other.top <= self.top
        )

    def has(self, point: Point) -> bool:
        """Whether the point lies inside or on the edge."""
        return self.left <= point[0] <= self.right and self.bottom <= point[1] <= self.top

    def shrunk(self, by: float) -> "Box":
        """Return the rectangle with its edges moved inward."""
        return Box(self.left + by, self.bottom + by, self.right - by, self.top - by)


def box_around(points: Iterable[Point]) -> Box:
    """Return the least upright rectangle that holds the points."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


@dataclass(frozen=True, slots=True)
class View:
    """A plan's place on the sheet: points an inch, where the plan's origin lies, and whether it is mirrored.

    The plan is always in the axes of the geometry; a door that turns the other way is mirrored here, left to
    right, and nowhere else. `window` is what of the sheet the view may draw on, in points.
    """

    scale: float
    origin: Point
    mirrored: bool
    window: Box

    @property
    def hand(self) -> float:
        """1 as solved, -1 mirrored."""
        return -1.0 if self.mirrored else 1.0

    def to_sheet(self, point: Point) -> Point:
        """Return the place on the sheet of a point of the plan."""
        return (
            self.origin[0] + self.hand * self.scale * point[0],
            self.origin[1] + self.scale * point[1],
        )

    def to_plan(self, point: Point) -> Point:
        """Return the point of the plan at a place on the sheet."""
        return (
            (point[0] - self.origin[0]) * self.hand / self.scale,
            (point[1] - self.origin[1]) / self.scale,
        )

    def plan_window(self) -> Box:
        """Return what of the plan the window shows, inches."""
        return box_around(
            [
                self.to_plan((self.window.left, self.window.bottom)),
                self.to_plan((self.window.right, self.window.top)),
            ]
        )


@dataclass(frozen=True, slots=True)
class Framing:
    """How much larger a picture is shown than as it is framed of itself, and how far it is moved, points."""

    zoom: float = 1.0
    moved: Point = (0.0, 0.0)

    def of(self, view: View) -> View:
        """Return a view zoomed about the middle of its window, and then moved."""
        window, (x, y) = view.window, view.origin
        across, up = (window.left + window.right) / 2, (window.bottom + window.top) / 2
        origin = (
            across + self.zoom * (x - across) + self.moved[0],
            up + self.zoom * (y - up) + self.moved[1],
        )
        return View(view.scale * self.zoom, origin, view.mirrored, window)

    def about(self, at: Point, middle: Point, grown: float) -> "Framing":
        """Return it so much larger with the place at `at` of a window about `middle` staying where it is."""
        x, y = at[0] - middle[0], at[1] - middle[1]
        moved = (x + grown * (self.moved[0] - x), y + grown * (self.moved[1] - y))
        return Framing(self.zoom * grown, moved)


AS_FRAMED = Framing()


@dataclass(frozen=True, slots=True)
class Group:
    """Primitives to be drawn through one view."""

    view: View
    primitives: tuple[Primitive, ...]


def paper(width: float, height: float) -> View:
    """Return the view in which the plan's axes are the sheet's own points."""
    return View(1.0, (0.0, 0.0), False, Box(0.0, 0.0, width, height))
