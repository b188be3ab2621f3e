"""A new hinge on a door and frame that were already cut for another."""

from dataclasses import dataclass

from configurator.model import ExistingHinge
from configurator.rules.filling.materials import Fastening
from configurator.rules.finding import Finding, finding
from configurator.rules.hinge.fastening import made_to_template
from configurator.rules.hinge.sizes import SAME_GAGE
from configurator.rules.wording import exactly, size
from configurator.tables import practice
from configurator.units import TOLERANCE

FITS = "replacement fits"
LISTED = (
    "This door is fire rated: what may be changed on it, and how, is for its listing and the authority "
    "having jurisdiction to say. Stop here and ask them; nothing is advised."
)


@dataclass(frozen=True, slots=True)
class Cut:
    """A hinge as a mortise is cut for it, or as it is ordered; inches, and how its corners are cut."""

    height: float
    width: float
    leaf_thickness: float
    corner: str
    to_template: bool
    mounting: str
    count: int
    """Hinges a leaf."""


ASKED = {
    "height": "height",
    "width": "open width",
    "leaf_thickness": "leaf thickness",
    "corner": "corners",
    "count": "number a leaf",
    "mounting": "mounting",
}
"""What is asked of the hinge that hangs there now, and how that is called."""


def existing_findings(old: ExistingHinge, new: Cut, held: Fastening, fire_rated: bool) -> tuple[Finding, ...]:
    """Return the findings about `new` where `old` hangs now; what was not measured is asked for.

    On a labelled fire door there is no advice but to stop and ask.
    """
    measured = old.model_dump(exclude_none=True)
    missing = [words for key, words in ASKED.items() if key not in measured]
    if fire_rated or not missing:
        return replacement_findings(_as_cut(old, new, held), new, fire_rated)
    message = (
        f"Of the hinge that hangs there now this is not known: {', '.join(missing)}. Only the rest can be "
        "compared. Measure it before ordering."
    )
    asked = finding("measure the old hinge", "note", message, practice("existing"), missing=len(missing))
    said = replacement_findings(_as_cut(old, new, held), new, fire_rated)
    return (asked, *(one for one in said if one.code != FITS))


def _as_cut(old: ExistingHinge, new: Cut, held: Fastening) -> Cut:
    """Return the old hinge; what was not measured is taken to be as the new one has it."""
    height = old.height or new.height
    return Cut(
        height=height,
        width=old.width or new.width,
        leaf_thickness=old.leaf_thickness or new.leaf_thickness,
        corner=old.corner or new.corner,
        to_template=made_to_template(height, held),
        mounting=old.mounting or new.mounting,
        count=old.count or new.count,
    )


def replacement_findings(old: Cut, new: Cut, fire_rated: bool) -> tuple[Finding, ...]:
    """Return what has to be filled, cut or checked where `new` goes where `old` was.

    Derived from the sizes of both. On a labelled fire door there is no advice but to stop and ask.
    """
    if fire_rated:
        return (finding("replacement on a fire door", "error", LISTED, practice("fire_listing")),)
    if old.mounting != new.mounting:
        return (_mounting(old, new),)
    found = [*_height(old, new), *_leaf(old, new), *_corner(old, new), *_count(old, new), *_holes(old, new)]
    return tuple(found) or (_drops_in(old, new),)


def _said(code: str, message: str, **numbers: float) -> Finding:
    return finding(code, "warning", message, practice("existing"), (), **numbers)


def _mounting(old: Cut, new: Cut) -> Finding:
    message = (
        f"The old hinge is {old.mounting} and the new one {new.mounting}: door and frame are cut for another "
        "way of fixing, so nothing of it serves. Order the old mounting, or have both cut anew."
    )
    return _said("mounting differs", message)


def _count(old: Cut, new: Cut) -> list[Finding]:
    if old.count == new.count:
        return []
    more = new.count - old.count
    mend = (
        f"cut {more} more mortise{'s' if more > 1 else ''} in door and frame, the new hinges spaced anew, "
        "and see that there is reinforcement or blocking behind"
        if more > 0
        else f"fill {-more} in door and frame"
    )
    message = f"Each leaf hangs on {old.count} hinges now and takes {new.count}: {mend}."
    return [_said("hinge count differs", message, old=old.count, new=new.count)]


def _height(old: Cut, new: Cut) -> list[Finding]:
    if new.height < old.height - TOLERANCE:
        message = (
            f"The new leaf leaves {exactly(old.height - new.height)} of the old mortise open in door and "
            "frame: fill it, or take a hinge as high as the old one."
        )
        return [_said("mortise left open", message, old=old.height, new=new.height)]
    if new.height > old.height + TOLERANCE:
        message = (
            f"The old mortise is {exactly(new.height - old.height)} too short for the new leaf: cut it "
            "longer in door and frame, and check that the reinforcement or blocking reaches that far."
        )
        return [_said("mortise too short", message, old=old.height, new=new.height)]
    return []


def _leaf(old: Cut, new: Cut) -> list[Finding]:
    deeper = new.leaf_thickness - old.leaf_thickness
    found = []
    if new.width < old.width - TOLERANCE:
        message = (
            f"Each new leaf is {exactly((old.width - new.width) / 2)} narrower than the old mortise, and the "
            "pin moves in by as much: fill the mortise behind the leaf, and try the swing again."
        )
        found.append(_said("leaf narrower", message, old=old.width, new=new.width))
    if abs(deeper) > SAME_GAGE:
        word, mend = ("thinner", "shim it with metal") if deeper < 0 else ("thicker", _deeper(old))
        message = f"The new leaf is {exactly(abs(deeper))} {word} than the old mortise is deep: {mend}."
        found.append(_said("leaf gage differs", message, old=old.leaf_thickness, new=new.leaf_thickness))
    return found


def _deeper(old: Cut) -> str:
    """Return what is done for a thicker leaf; a steel mortise is formed, with its reinforcement behind."""
    if old.to_template:
        thick = exactly(old.leaf_thickness)
        return f"order leaves {thick} thick, for a steel mortise is not cut deeper by choice"
    return "cut the mortise deeper"


def _corner(old: Cut, new: Cut) -> list[Finding]:
    if old.corner == new.corner:
        return []
    mend = "square the mortise's corners" if new.corner == "square" else "fill the mortise's corners"
    message = (
        f"The old mortise has {old.corner} corners and the new leaf {new.corner}: {mend}, or order to match."
    )
    return [_said("corner differs", message)]


def _holes(old: Cut, new: Cut) -> list[Finding]:
    if old.to_template and new.to_template and old.height == new.height:
        return []
    message = (
        "The screw holes cannot be taken to match: hold the new hinge to the old holes. Where they differ, "
        "plug and drill wood, and drill and tap metal clear of the old holes."
    )
    return [_said("check the holes", message)]


def _drops_in(old: Cut, new: Cut) -> Finding:
    message = (
        f"A {size(new.height, new.width)} hinge goes where the {size(old.height, old.width)} was: same "
        "height, corners and template. Check one hinge on site before ordering the rest."
    )
    return finding(FITS, "note", message, practice("existing"))
