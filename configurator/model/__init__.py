"""Frozen records of what the user said: a job, its openings, and everything about them."""

from configurator.model.hinge import ExistingHinge, Hinge
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

__all__ = [
    "FORMAT",
    "VERSION",
    "Door",
    "ExistingHinge",
    "Frame",
    "Hardware",
    "Hinge",
    "Job",
    "JobFacts",
    "Obstruction",
    "Opening",
    "Size",
    "Use",
    "Wall",
    "WallLayer",
]
