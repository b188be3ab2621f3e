"""All templates, and the order a short course takes them in: from easy to hard, topic by topic."""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from configurator.practice.problem import Posed, Template, pose
from configurator.practice.topics import (
    angles,
    clearances,
    corridors,
    finishes,
    hands,
    hinges,
    least_width,
    orders,
    passing,
    pins,
    sizes,
    stops,
)

_MODULES = (
    sizes, hands, hinges, finishes, pins, clearances, least_width, passing, corridors, stops, angles, orders,
)  # fmt: skip
TEMPLATES: tuple[Template, ...] = tuple(template for module in _MODULES for template in module.TEMPLATES)
TOPICS: tuple[str, ...] = tuple(dict.fromkeys(template.topic for template in TEMPLATES))
LEVELS = (1, 2, 3, 4, 5)
BY_KEY: Mapping[str, Template] = MappingProxyType({template.key: template for template in TEMPLATES})


@cache
def course() -> tuple[Template, ...]:
    """Return every template from easy to hard, those of a level in the order of their topics."""
    return tuple(sorted(TEMPLATES, key=lambda template: template.level))


def of_topic(topic: str) -> tuple[Template, ...]:
    """Return the templates of a topic from easy to hard; those of the whole course for an empty name."""
    return tuple(template for template in course() if topic in ("", template.topic))


def of_level(level: int) -> tuple[Template, ...]:
    """Return the templates of a level, in the order of their topics."""
    return tuple(template for template in course() if template.level == level)


def problem_of(number: int) -> Posed:
    """Return the problem called by a number, which picks both its template and what is drawn for it."""
    return pose(TEMPLATES[number % len(TEMPLATES)], number)


def number_of(template: Template, draw: int) -> int:
    """Return the number that a problem of a template is called by; `draw` is what its numbers come from."""
    return draw * len(TEMPLATES) + TEMPLATES.index(template)
