"""What the elevation sheet says of its hinge locations: the datum, the rule, and what it does not know."""

from collections.abc import Iterator, Sequence

from configurator.drawing.hinge_parts import cited
from configurator.drawing.pages.elevation_facts import LeafShown
from configurator.drawing.pages.notes_column import Note
from configurator.drawing.pages.study_notes import study_notes
from configurator.rules.filling.materials import fastening_of
from configurator.rules.filling.places import USUAL_RULE, row_of_place, rows_of_rule
from configurator.study import Study
from configurator.tables import ToleranceRow, table
from configurator.units import Display

_DATUM = (
    "Heights are counted from the finished floor, the head is the frame's head rabbet. Agree on the datum "
    "before anything is made: where the floor's finish is laid later, heights from the slab differ by it."
)
_MAKERS = (
    "Those who make doors and frames do not all set hinges alike: confirm with both before ordering; what is "
    "already made rules."
)


def elevation_notes(
    study: Study, leaves: Sequence[LeafShown], display: Display, left_out: str
) -> tuple[Note, ...]:
    """Return the notes of an elevation sheet; `left_out` says what had no room on it."""
    said = study_notes(study, display)
    locations = list(_locations(study, leaves, display))
    if left_out:
        locations.append(left_out)
    return (*said[:2], Note("Hinge locations", tuple(locations)), *said[2:])


def _locations(study: Study, leaves: Sequence[LeafShown], display: Display) -> Iterator[str]:
    if not any(shown.hinges for shown in leaves):
        yield "No hinges are chosen here for this opening, so none are located."
        return
    yield _DATUM
    yield _by_what(study, display)
    yield from _how_exact(study, display)
    yield _MAKERS
    if any(shown.hinges and shown.hinges.electric for shown in leaves):
        yield "Electric: that hinge carries wires; its mortises need room for them."
    yield "The dashed lines meet at the edge that is hung. * assumed, not given."


def _how_exact(study: Study, display: Display) -> Iterator[str]:
    """Say how far hinges of a wood door may be off; of steel no figure could be read."""
    if fastening_of(study.opening.door.construction, study.opening.frame.kind).door_family == "wood":
        row = next(row for row in table(ToleranceRow) if row.key == "hinge_backset" and row.made_of == "wood")
        within = display.exact(row.value)
        yield f"On the wood door each within {within} of its place [{cited(row.source, row.mark)}]."


def _by_what(study: Study, display: Display) -> str:
    given = study.opening.hinge_locations
    if given.tops:
        return "Places as typed, measured from the head rabbet down to the top of each hinge."
    rule = given.rule or USUAL_RULE
    top, bottom = rows_of_rule(rule)
    taken = "" if given.rule else " (* usual; none was given)"
    split = ""
    if study.opening.leaves == "dutch":
        beside = row_of_place("above split")
        split = (
            f" Beside a Dutch door's split line {display.exact(beside.distance)} above and below it "
            f"[{cited(beside.source, beside.mark)}]."
        )
    return (
        f"By the {rule} rule{taken}: the top hinge's top {display.exact(top.distance)} below the head "
        f"rabbet, the bottom hinge's bottom {display.exact(bottom.distance)} above the floor, the rest "
        f"equally spaced [{cited(top.source, top.mark)}].{split}"
    )
