"""Screws and template: what holds a hinge to that door and that frame."""

from dataclasses import dataclass

from configurator.rules.finding import Finding, Reason, finding, reason
from configurator.rules.wording import counted, plain
from configurator.tables import ConstructionRow, FrameMaterialRow, ScrewRow, practice, table, words_of

CHECK_TEMPLATE = (3.5, 4.0)
TEMPLATE_TO = 5.0


@dataclass(frozen=True, slots=True)
class Fastening:
    """What a hinge leaf is screwed to on each side: "machine" or "wood" screws, and the materials."""

    door_screws: str
    frame_screws: str
    door_family: str
    frame_material: str


def fastening_of(construction: str | None, frame_kind: str) -> Fastening:
    """Return what holds a hinge to that door and frame; an undescribed door is taken to match its frame."""
    frame = next(row for row in table(FrameMaterialRow) if row.kind == frame_kind)
    door = next((row for row in table(ConstructionRow) if row.construction == construction), None)
    family = {"wood": "wood", "steel": "metal", "aluminum": "aluminum"}[frame.material]
    if door is not None:
        return Fastening(door.screws, frame.screws, door.family, frame.material)
    return Fastening(frame.screws, frame.screws, family, frame.material)


def screws(height: float, count: int, held: Fastening) -> Reason:
    """Return screws of each kind, {"machine": n, "wood": n}, for `count` hinges of that height."""
    row = screw_row(height)
    each = {"machine": 0, "wood": 0}
    for kind in (held.door_screws, held.frame_screws):
        each[kind] += row.per_leaf * count
    because = (
        f"{held.door_screws} screws into the door, {held.frame_screws} screws into the frame: "
        f"{row.per_leaf} a hinge leaf, {counted(count, 'hinge', 'hinges')}; {_pack(row, held)}; "
        f"{words_of('screw_metal')}"
    )
    return reason(each, because, row.cited)


def screw_row(height: float) -> ScrewRow:
    """Return the row of the screw table for a hinge height, else that of the nearest lower height."""
    rows = table(ScrewRow)
    lower = [row for row in rows if row.height <= height]
    return lower[-1] if lower else rows[0]


def _pack(row: ScrewRow, held: Fastening) -> str:
    kinds = dict.fromkeys((held.door_screws, held.frame_screws))
    names = [row.machine if kind == "machine" else row.wood for kind in kinds]
    return "half " + " and half ".join(names) if len(names) > 1 else names[0]


def made_to_template(height: float, held: Fastening) -> bool:
    """Say whether a hinge of that height has the one hole pattern that metal doors and frames are cut to."""
    return held.door_screws == held.frame_screws == "machine" and not _pattern_varies(height)


def _in_metal(held: Fastening) -> bool:
    return held.door_family == "metal" or held.frame_material == "steel"


def _pattern_varies(height: float) -> bool:
    return height in CHECK_TEMPLATE or height > TEMPLATE_TO


def fastening_findings(
    height: float, held: Fastening, construction: str | None, fire: bool
) -> tuple[Finding, ...]:
    """Return cautions: a template to check, a mineral core, a fire rated wood door."""
    found = []
    if _in_metal(held) and _pattern_varies(height):
        message = (
            f"Hole patterns of hinges {plain(height)} high vary: check the template with whoever makes the "
            "door and frame before ordering."
        )
        found.append(finding("template check", "note", message, practice("template_check"), height=height))
    if construction == "wood, mineral core":
        words = "; the listing says which screws" if fire else ""
        message = (
            f"A mineral core holds screws only where its blocking is{words}. Ask the door maker for hinge "
            "blocking and the screws it takes."
        )
        found.append(finding("mineral core", "warning", message, practice("mineral_core")))
    return tuple(found)
