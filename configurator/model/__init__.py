"""Frozen records of what the user said: a job, its openings, and everything about them."""

from configurator.model.job import FORMAT, VERSION, Job, JobFacts
from configurator.model.opening import (
    Door,
    Frame,
    Hardware,
    Hinge,
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
