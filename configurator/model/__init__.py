"""Frozen records of what the user said: a job, its openings, and everything about them."""

from configurator.model.door import Door, DoorStop, Hardware
from configurator.model.hinge import ExistingHinge, Hinge, HingeLocations
from configurator.model.job import FORMAT, VERSION, Job, JobFacts, OrderFacts, Shop
from configurator.model.opening import Background, Details, Opening, Size
from configurator.model.revision import Issue, OrderedLine, OrderedWay, Revision
from configurator.model.use import Tolerances, Use
from configurator.model.wall import Floor, Frame, Obstruction, Sill, Wall, WallLayer
from configurator.model.way import Way

__all__ = [
    "FORMAT",
    "VERSION",
    "Background",
    "Details",
    "Door",
    "DoorStop",
    "ExistingHinge",
    "Floor",
    "Frame",
    "Hardware",
    "Hinge",
    "HingeLocations",
    "Issue",
    "Job",
    "JobFacts",
    "Obstruction",
    "Opening",
    "OrderFacts",
    "OrderedLine",
    "OrderedWay",
    "Revision",
    "Shop",
    "Sill",
    "Size",
    "Tolerances",
    "Use",
    "Wall",
    "WallLayer",
    "Way",
]
