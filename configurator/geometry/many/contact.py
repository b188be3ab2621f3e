"""First contacts of many openings at once, and which of them want a closer look.

The same closed forms as `polar.crossings`, a whole column of openings at a time. Where the earliest crossing
is plainly a contact it is the answer; where it could be a graze, the single path is asked of the two parts.
Where two come together, where something already touches at rest or where the limit is near, the opening is
marked doubtful and belongs to the single path.
"""

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.many.parts import Floats, Line, Part
from configurator.geometry.many.passages import barrel_distances
from configurator.geometry.pin import TOLERANCE
from configurator.geometry.polar import TAU
from configurator.geometry.shapes import may_meet
from configurator.geometry.swing import meeting_angle

#: Parts nearer than this at rest are looked at singly, in.
_CLOSE: Final = 1e-6
#: A corner entering this fast (in per radian) and this far from the edge's ends (in) is plainly a contact.
_PLAIN_SPEED: Final = 1e-2
_PLAIN_MARGIN: Final = 1e-3
#: Two crossings between these are neither one nor plainly two, radians.
_ONE: Final = 1e-12
_TWO: Final = 1e-8
#: As near as this to the limit is looked at singly, radians.
_NEAR_LIMIT: Final = 1e-7
#: A barrel's overlap is known to this, in.
_ROUNDING: Final = 1e-12


#: The place of what stands and of what turns, each in its list.
Pair = tuple[int, int]


class Earliest:
    """The earliest crossing so far in each of many openings, whether it is plain, and what met.

    met is the place of what stands in its list, turned that of what turns; -1 for none.
    """

    def __init__(self, count: int, limit: float) -> None:
        self.limit = limit
        self.angle: Floats = np.full(count, np.inf)
        self.second: Floats = np.full(count, np.inf)
        self.plain: NDArray[np.bool_] = np.ones(count, dtype=np.bool_)
        self.met: NDArray[np.int64] = np.full(count, -1)
        self.turned: NDArray[np.int64] = np.full(count, -1)
        self.doubtful: NDArray[np.bool_] = np.zeros(count, dtype=np.bool_)

    def offer(self, rows: NDArray[np.int64], angle: Floats, plain: NDArray[np.bool_], pair: Pair) -> None:
        """Take in one crossing in each of some openings."""
        kept = angle < self.limit + _NEAR_LIMIT
        rows, angle, plain = rows[kept], angle[kept], plain[kept]
        before = self.angle[rows]
        sooner = angle < before
        self.second[rows] = np.minimum(self.second[rows], np.where(sooner, before, angle))
        rows, angle = rows[sooner], angle[sooner]
        named = angle < before[sooner] - _ONE
        self.plain[rows[named]] = plain[sooner][named]
        self.met[rows[named]], self.turned[rows[named]] = pair
        self.angle[rows] = angle

    def settle(self) -> None:
        """Mark what is left in doubt, but for meetings that are not plain."""
        between = self.second - np.where(np.isfinite(self.angle), self.angle, 0.0)
        self.doubtful |= (between > _ONE) & (between < _TWO)
        self.doubtful |= np.abs(self.angle - self.limit) < _NEAR_LIMIT

    def look_closer(self, turning: Sequence[Part], standing: Sequence[Part]) -> None:
        """Ask the single path of each meeting that is not plain, about the two parts alone.

        A corner that comes just to a corner is one. Where it is a graze, the opening is in doubt.
        """
        for row in np.flatnonzero(np.isfinite(self.angle) & ~self.plain & ~self.doubtful).tolist():
            part, still = turning[self.turned[row]], standing[self.met[row]]
            angle = meeting_angle(part.one(row), still.one(row), self.limit)
            self.doubtful[row] = angle is None or abs(angle - self.angle[row]) > _ONE


def earliest_contacts(
    turning: Sequence[Part], standing: Sequence[Part], count: int, limit: float
) -> Earliest:
    """The first contact in each opening."""
    found = Earliest(count, limit)
    for place, still in enumerate(standing):
        for turn, part in enumerate(turning):
            if may_meet(part.shape, still.shape):
                _offer_pair(found, part, still, (place, turn))
    found.settle()
    found.look_closer(turning, standing)
    return found


def _offer_pair(found: Earliest, part: Part, still: Part, pair: Pair) -> None:
    """Offer every crossing of one part into another, in the openings where they come near each other."""
    reach = still.there & (part.far > still.near + TOLERANCE) & (still.far > part.near + TOLERANCE)
    if not reach.any():
        return
    found.doubtful |= reach & _boxes_close(part, still)
    r = part.radius + still.radius
    most = float(r.max())
    for owner, lines, turn in ((part, still.lines, 1.0), (still, part.lines, -1.0)):
        for line in lines:
            _offer_corners(found, owner, line, r, reach, pair, turn=turn)
    if most > 0.0:
        _offer_rounds(found, part, still, r, reach, pair)


def _boxes_close(part: Part, still: Part) -> NDArray[np.bool_]:
    """Whether two closed parts' upright boxes touch or nearly do."""
    left, right, low, high = part.box
    s_left, s_right, s_low, s_high = still.box
    return (
        (left <= s_right + _CLOSE)
        & (s_left <= right + _CLOSE)
        & (low <= s_high + _CLOSE)
        & (s_low <= high + _CLOSE)
    )


def _offer_corners(
    found: Earliest, owner: Part, line: Line, r: Floats, reach: NDArray[np.bool_], pair: Pair, *, turn: float
) -> None:
    """Offer where corners cross one edge's line inward; turn -1 for corners that stand."""
    most = float(r.max()) + TOLERANCE
    least_of_all, most_of_all = line.nearest - most, line.farthest + most
    places = [
        j
        for j, (least, greatest) in enumerate(owner.spans)
        if greatest >= least_of_all and least <= most_of_all
    ]
    if not places:
        return
    out_of_all = line.c + r
    low = np.maximum(line.near - r - TOLERANCE, np.abs(out_of_all))
    high = line.far + r + TOLERANCE
    for j in places:
        rho = owner.rhos[j]
        near = reach & (rho >= low) & (rho <= high)
        rows = np.flatnonzero(near if owner.spans[j][0] > 0.0 else near & (rho > 0.0))
        if rows.size:
            _offer_crossings(found, owner, j, line, out_of_all, rows, pair, turn=turn)


def _offer_crossings(
    found: Earliest,
    owner: Part,
    j: int,
    line: Line,
    out_of_all: Floats,
    rows: NDArray[np.int64],
    pair: Pair,
    *,
    turn: float,
) -> None:
    """Offer where one corner crosses a line, out from its foot, in openings where the line is long enough."""
    rho, out = owner.rhos[j][rows], out_of_all[rows]
    root = np.sqrt(rho * rho - out * out)
    along = turn * root
    margin = np.minimum(along - line.start[rows], line.end[rows] - along)
    inside = margin >= -TOLERANCE
    if not inside.all():
        rows, margin = rows[inside], margin[inside]
        rho, out, root = rho[inside], out[inside], root[inside]
        if not rows.size:
            return
    x, y = owner.corners[j]
    phi = np.arctan2(y[rows], x[rows])
    alpha = line.alpha if isinstance(line.alpha, float) else line.alpha[rows]
    angle = (turn * (alpha - phi) + np.arccos(out / rho)) % TAU
    found.offer(rows, angle, (root > _PLAIN_SPEED) & (margin > _PLAIN_MARGIN), pair)


def _offer_rounds(
    found: Earliest, part: Part, still: Part, r: Floats, reach: NDArray[np.bool_], pair: Pair
) -> None:
    """Offer where corners or centres come within the sum of the radii."""
    for j, (x_m, y_m) in enumerate(part.corners):
        for k, (x_s, y_s) in enumerate(still.corners):
            rho_m, rho_s = part.rhos[j], still.rhos[k]
            near = reach & (rho_m > 0.0) & (rho_s > 0.0) & (np.abs(rho_m - rho_s) <= r)
            rows = np.flatnonzero(near)
            if not rows.size:
                continue
            a, b, d = rho_m[rows], rho_s[rows], r[rows]
            cosine = (a * a + b * b - d * d) / (2 * a * b)
            usable = np.abs(cosine) <= 1.0
            rows, cosine = rows[usable], cosine[usable]
            phi_m, phi_s = np.arctan2(y_m[rows], x_m[rows]), np.arctan2(y_s[rows], x_s[rows])
            speed = (a * b / d)[usable] * np.sqrt(1.0 - cosine * cosine)
            found.offer(rows, (phi_s - phi_m - np.arccos(cosine)) % TAU, speed > _PLAIN_SPEED, pair)


def offer_barrels(found: Earliest, barrels: Sequence[Part], standing: Sequence[Part]) -> None:
    """Hold closed what a barrel keeps so: it turns about itself, so what it overlaps it always has.

    They are met under one name, which comes after the leaf's in the list of what turns.
    """
    for place, still in enumerate(standing):
        for barrel in barrels:
            if may_meet(barrel.shape, still.shape):
                free = barrel_distances(barrel, still)
                found.doubtful |= np.abs(free + TOLERANCE) < _ROUNDING
                first = (free < -TOLERANCE) & (found.angle > 0.0)
                found.angle[first] = 0.0
                found.met[first], found.turned[first] = place, 1
