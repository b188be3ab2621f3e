"""How far many leaves go and what meets, bare and with hardware; the single path settles the doubtful ones.

Inches and radians.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.many.contact import Earliest, earliest_contacts, offer_barrels
from configurator.geometry.many.parts import Floats, Part
from configurator.geometry.solve import Scene
from configurator.geometry.swing import Contact, contacts_bare_and_with_hardware

#: What touches: kind and index of what stands and which part of the moving side, as in a `Contact`.
Name = tuple[str, int | None, str]
#: Places in a list of names, -1 for nothing.
Places = NDArray[np.int64]

#: Two meetings between these are neither at once nor plainly one after the other, radians.
_AT_ONCE: Final = 1e-12
_APART: Final = 1e-8


@dataclass(frozen=True, eq=False)
class Reach:
    """The greatest angles and what touches there; how many openings the single path settled."""

    angle_bare: Floats
    angle: Floats
    touches_bare: Places
    touches: Places
    names: tuple[Name, ...]
    looked_at: int


def reach_of(
    leaf: Part,
    barrels: Sequence[Part],
    hardware: Sequence[Part],
    standing: Sequence[Part],
    one: Callable[[int], Scene],
) -> Reach:
    """The greatest angle of each opening; one gives a single opening's scene."""
    count = len(leaf.far)
    bare = earliest_contacts([leaf], standing, count, math.pi)
    fitted = earliest_contacts(hardware, standing, count, math.pi)
    offer_barrels(bare, barrels, standing)
    names: dict[Name, int] = {}
    touches_bare = _named(bare, standing, [leaf, *barrels[:1]], names)
    touches = np.where(_hardware_named(bare, fitted), _named(fitted, standing, hardware, names), touches_bare)
    angle_bare = np.minimum(bare.angle, math.pi)
    angle = np.minimum(fitted.angle, angle_bare)
    rows = np.flatnonzero(bare.doubtful | fitted.doubtful | _neither(fitted.angle, angle_bare))
    for row in rows:
        contacts = _single(one(int(row)))
        (angle_bare[row], touches_bare[row]), (angle[row], touches[row]) = (
            _told(contact, names) for contact in contacts
        )
    return Reach(angle_bare, angle, touches_bare, touches, tuple(names), len(rows))


def _named(
    found: Earliest, standing: Sequence[Part], turning: Sequence[Part], names: dict[Name, int]
) -> Places:
    """The place in names of what met first in each opening; names not yet there are put in."""
    if not turning:
        return np.full(len(found.angle), -1)
    table = np.array([[_place(names, still, part) for part in turning] for still in standing])
    return np.where(found.angle < math.pi, table[found.met, found.turned], -1)


def _place(names: dict[Name, int], still: Part, part: Part) -> int:
    """The place of one pair's name."""
    return names.setdefault((still.shape.kind, still.shape.index, part.shape.kind), len(names))


def _neither(hardware: Floats, bare: Floats) -> NDArray[np.bool_]:
    """Where hardware and bare leaf meet something neither at once nor plainly one after the other."""
    apart = np.abs(np.where(np.isfinite(hardware), hardware, -1.0) - bare)
    return (apart > _AT_ONCE) & (apart < _APART)


def _hardware_named(bare: Earliest, hardware: Earliest) -> NDArray[np.bool_]:
    """Where the hardware's meeting is the one named: earlier, or at once with a thing listed earlier."""
    limit = np.minimum(bare.angle, math.pi)
    with np.errstate(invalid="ignore"):
        at_once = np.abs(hardware.angle - bare.angle) <= _AT_ONCE
    return np.where(at_once, hardware.met < bare.met, hardware.angle < limit)


def _single(plan: Scene) -> tuple[Contact | None, Contact | None]:
    """The first contacts of one opening."""
    return contacts_bare_and_with_hardware(plan.bare, plan.hardware, plan.standing, plan.pin.at)


def _told(contact: Contact | None, names: dict[Name, int]) -> tuple[float, int]:
    """The angle a contact leaves and the place of its name."""
    if contact is None:
        return math.pi, -1
    return contact.angle, names.setdefault((contact.kind, contact.index, contact.part), len(names))
