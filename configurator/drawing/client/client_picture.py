"""The client's picture: both hinges' rooms, a magnifier in each, the verdicts and the advice, on one sheet.

Screen, full screen, page and moving picture lay out the same; only size and type differ. Nothing is cropped:
type gives way until the rooms have their share.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.primitives import Point
from configurator.drawing.base.view import Box, Group, paper
from configurator.drawing.client.layout import (
    TOUCHES,
    Panel,
    Told,
    leader_line,
    lens_spots,
    planned,
    room_in,
    rooms_of,
)
from configurator.drawing.client.lens import about, lens_in, lens_moving, lens_still
from configurator.drawing.client.marks import leader, lettering, over, way_through
from configurator.drawing.client.room import Room, room_moving, room_still, shown_angle
from configurator.drawing.plan.drawn_leaf import drawn_leaf
from configurator.study import Study
from configurator.study.widths.width_pair import WidthPair, hung_alike, width_pair
from configurator.units import Display
from configurator.wording.verdict import LEAF_NAMES, advice, on_hinge, verdicts


@dataclass(frozen=True, slots=True)
class ClientPicture:
    """A whole picture but for what turns: its size and that of its letters in points; `end` in degrees."""

    width: float
    height: float
    letters: float
    display: Display
    panels: tuple[Panel, ...]
    end: float
    still: tuple[Group, ...]
    notes: tuple[Group, ...]

    @property
    def windows(self) -> tuple[Box, ...]:
        """The boxes of the rooms."""
        return tuple(one.window for one in self.panels)


def picture_end(study: Study) -> float:
    """Return how far that of the pictured doors goes that goes farthest, degrees."""
    return max(each.rests_at for one in width_pair(study).both for each in hung_alike(study, one))


def client_picture(
    study: Study, display: Display, width: float, height: float, letters: float, also: Sequence[str] = (),
    scale: float | None = None,
) -> ClientPicture:  # fmt: skip
    """Lay the picture out on a sheet; width, height and the largest type size in points.

    `also` are further lines under the advice; a `scale`, points an inch, stands for the largest that fits.
    Raises ValueError where there is no width to draw.
    """
    pair = width_pair(study)
    told = _told(study, pair, display, also)
    plan = planned(told, width, height, letters)
    plan = plan if scale is None else replace(plan, scale=min(scale, plan.scale))
    rooms = rooms_of(told, plan)
    circle = about([room.first for room in rooms])
    spots = lens_spots(rooms, plan, [_pill(room, circle, display) for room in rooms], circle)
    panels = tuple(
        Panel(
            room,
            lens_in(spot.box, circle, room.first.mirrored),
            found,
            title,
            window,
            banner,
            at,
            told.advice.taken == n,
            spot,
            leader_line(room, spot.box, circle),
            any(f"{name}:" in found.because for name in LEAF_NAMES.values()),
        )
        for n, (room, spot, found, title, window, banner, at) in enumerate(
            zip(
                rooms, spots, told.verdicts, told.titles, plan.windows, plan.banners, plan.titles, strict=True
            )
        )
    )
    whole = paper(width, height)
    still = [Group(one.room.view, tuple(room_still(one.room))) for one in panels]
    still += [Group(whole, tuple(way_through(one, plan.letters, display))) for one in panels]
    notes: list[Group] = []
    for one in panels:
        notes.append(Group(whole, tuple(leader(one))))
        notes.append(Group(one.lens.view, tuple(lens_still(one.room.first, one.lens))))
    notes.append(Group(whole, tuple(lettering(panels, told, plan))))
    return ClientPicture(
        width, height, plan.letters, display, panels, picture_end(study), tuple(still), tuple(notes)
    )


def turning_groups(picture: ClientPicture, angle: float) -> tuple[Group, ...]:
    """Return what turns with the doors at `angle` degrees, each no farther than where it rests."""
    return tuple(
        Group(one.room.view, tuple(room_moving(one.room, angle, picture.end))) for one in picture.panels
    )


def turning_note_groups(picture: ClientPicture, angle: float) -> tuple[Group, ...]:
    """Return what turns over everything else: in the magnifiers, and the places that light up."""
    groups: list[Group] = []
    whole = paper(picture.width, picture.height)
    for one in picture.panels:
        first, end = one.room.first, picture.end
        turn = shown_angle(first, angle, end)
        groups.append(Group(one.lens.view, tuple(lens_moving(first, one.lens, turn))))
        groups.append(Group(whole, tuple(over(one, angle, picture.letters, picture.end))))
    return tuple(groups)


def _told(study: Study, pair: WidthPair, display: Display, also: Sequence[str]) -> Told:
    leaves = tuple(tuple(drawn_leaf(each, display) for each in hung_alike(study, one)) for one in pair.both)
    said = advice(study, pair, display)
    titles = tuple(on_hinge(one) for one in pair.both)
    return Told(leaves, verdicts(study, pair, display), said, titles, (*said.lines, *also))


def _pill(room: Room, circle: tuple[Point, float], display: Display) -> str:
    """Return what is told at a magnifier: how far the hinge stands out; far from it, that doors touch."""
    first = room.first
    centre, radius = circle
    if (first.pin.x_p - centre[0]) ** 2 + (first.pin.y_p - centre[1]) ** 2 > radius**2:
        return TOUCHES
    out = first.candidate.barrel_past_frame
    if not first.candidate.has_barrel or out < 0.0:
        return ""
    return f"hinge stands out {display.length(out)}"


def tile(study: Study, width: float, height: float) -> tuple[Group, ...]:
    """Return a small room with its doors open, to start from; points."""
    pair = width_pair(study)
    one = pair.both[-1]
    leaves = tuple(drawn_leaf(each, Display()) for each in hung_alike(study, one))
    room = room_in(leaves, Box(0.0, 0.0, width, height))
    end = max(each.rests_at for each in hung_alike(study, one))
    return (Group(room.view, (*room_still(room), *room_moving(room, end, end))),)
