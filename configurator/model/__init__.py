"""Frozen records of what the user said: a job, its openings, and everything about them."""

from configurator.model.door_stop import DoorStop
from configurator.model.hinge import ExistingHinge, Hinge
from configurator.model.hinge_locations import HingeLocations
from configurator.model.job import FORMAT, VERSION, Job, JobFacts
from configurator.model.opening import (
    Door,
    Frame,
    Hardware,
    Obstruction,
    Opening,
    Size,
    Use,
    Wall,
    WallLayer,
)
from configurator.model.revision import OrderedLine, Revision
from configurator.model.tolerances import Tolerances

__all__ = [
    "FORMAT",
    "VERSION",
    "Door",
    "DoorStop",
    "ExistingHinge",
    "Frame",
    "Hardware",
    "Hinge",
    "HingeLocations",
    "Job",
    "JobFacts",
    "Obstruction",
    "Opening",
    "OrderedLine",
    "Revision",
    "Size",
    "Tolerances",
    "Use",
    "Wall",
    "WallLayer",
]
