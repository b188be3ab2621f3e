"""The bars of a sheet: openings at random of every kind, on every paper, read back from PDF and DXF."""

import io
import random
from collections.abc import Iterator, Sequence

import ezdxf

from configurator.drawing.pages.page import Page, Paper, papers
from configurator.drawing.plan.drawn_leaf import thing_label
from configurator.drawing.sheets import sheet_maker
from configurator.export.dxf.entities import NAMES
from configurator.export.pages import pages_as_bytes
from configurator.model import JobFacts, Opening
from configurator.rules.wording import obstruction
from configurator.study import Study, study
from configurator.units import Display
from tests.drawing.pages.on_page import overlapping, struck_through
from tests.export.measuring import read_pdf
from tests.export.random_sheets import random_opening

MOUNTINGS = ("full mortise", "full mortise", "swing clear", "half mortise", "half surface", "full surface")
KINDS = ("plan", "prep", "sections")
_OUTLINES = ("A-DOOR", "A-DETL", "A-WALL", "A-ANNO-BRDR", "A-ANNO-REDL")
"""What a name may lie over: the parts themselves and their red outlines, not dimensions and leaders."""
PIN = ("pin axis off door face", "pin axis off frame face")


def opening_of(seed: int) -> Opening:
    """Return an opening at random, hung in one of the ways there are."""
    dice = random.Random(seed)
    data = random_opening(dice, seed)
    mounting = dice.choice(MOUNTINGS)
    if mounting != "full mortise":
        data |= {"hinge": {"mounting": mounting}, "compare": [3.5, 4]}
    return Opening.model_validate(data)


def studied(seed: int) -> Study:
    return study(opening_of(seed), JobFacts())


def display_of(seed: int) -> Display:
    return Display(metric=seed % 3 == 2)


def faults(seed: int, on: Sequence[Paper] = ()) -> Iterator[str]:
    """Yield what is wrong on the sheets of one opening, with kind and paper; on every paper for none."""
    answer, display = studied(seed), display_of(seed)
    for kind in KINDS:
        for paper in on or papers().values():
            page = sheet_maker(kind)(answer, JobFacts(), paper, None, display, (1, 1))
            for fault in faults_of(answer, page, kind, display):
                yield f"{seed} {kind} {paper.name}: {fault}"


def faults_of(answer: Study, page: Page, kind: str, display: Display) -> Iterator[str]:
    """Yield what is wrong on one sheet, its PDF and its DXF."""
    (sheet,) = read_pdf(pages_as_bytes([page], ".pdf"))
    said = [one.text for one in sheet.texts]
    drawing = ezdxf.read(io.StringIO(pages_as_bytes([page], ".dxf").decode("utf-8")))
    found = drawing.audit()
    if found.errors or found.fixes:
        yield f"the audit finds {len(found.errors)} errors and {len(found.fixes)} fixes"
    lettered = [one.dxf.text for space in drawing.layouts for one in space.query("TEXT")]
    if kind == "plan":
        yield from _not_named(answer, said, "the PDF", display)
        yield from _not_named(answer, lettered, "the DXF", display)
        yield from _not_measured(page, said)
    elif kind == "prep":
        yield from _pin_not_located(answer, drawing)
    else:
        yield from _not_in_sections(answer, drawing)
    yield from (f"{a!r} lies over {b!r}" for a, b in overlapping(page))
    crossed = ((text, name) for text, name in struck_through(page) if not name.startswith(_OUTLINES))
    yield from (f"{text!r} is crossed by {name}" for text, name in crossed)


def _not_named(answer: Study, said: list[str], where: str, display: Display) -> Iterator[str]:
    """Each thing that stands there is named with how far it is from the frame and how far it stands out."""
    joined = "\n".join(said)
    for thing in answer.opening.obstructions:
        figures = [thing.start or 0.0, *([] if thing.projection is None else [thing.projection])]
        named = obstruction(thing.kind) in joined or thing_label(thing, display) in joined
        if not named or not all(display.exact(figure) in joined for figure in figures):
            yield f"{thing.kind} is not named with its figures in {where}"
    if answer.opening.door_stop is not None and answer.opening.door_stop.kind not in joined:
        yield f"{answer.opening.door_stop.kind} is not named in {where}"


def _not_measured(page: Page, said: list[str]) -> Iterator[str]:
    """The pin is measured off door and frame in every plan, or in the table under them."""
    drawn = {getattr(one, "name", "") for detail in page.details for one in detail.primitives}
    for name in PIN:
        if name not in drawn and name not in said:
            yield f"{name} is nowhere"


def _not_in_sections(answer: Study, drawing: ezdxf.document.Drawing) -> Iterator[str]:
    """Frame, wall, door, gaps and pin are measured in the sections there."""
    filled = answer.filled
    found = {one.get_xdata(NAMES)[0].value for one in drawing.modelspace().query("DIMENSION")}
    depth, wall = "jamb depth", "wall thickness"
    wanted = {
        ("frame face",): filled.frame_face,
        ("rabbet depth",): filled.rabbet,
        ("frame stop height",): filled.stop_height,
        (depth, f"{depth} and {wall}"): filled.jamb_depth,
        (wall, f"throat and {wall}", f"{depth} and {wall}"): filled.wall_thickness,
        ("return",): filled.return_depth,
        ("door thickness",): filled.thickness,
        ("hinge-side gap",): filled.hinge_gap,
        ("head gap",): filled.head_gap,
        ("undercut",): filled.undercut,
    }
    yield from (
        f"{names[0]} is not measured"
        for names, long in wanted.items()
        if long > 1e-3 and not found.intersection(names)
    )


def _pin_not_located(answer: Study, drawing: ezdxf.document.Drawing) -> Iterator[str]:
    chosen = [one for one in answer.specification.leaves if one.parts["width"].value is not None]
    names = {one.get_xdata(NAMES)[0].value for one in drawing.modelspace().query("DIMENSION")}
    for one in chosen:
        pin = answer.hanger(one.leaf, one.parts["width"].value).pin
        wanted = {"frame face to pin": pin.y_p, "door face to pin": pin.o}
        if one.parts["mounting"].value != "full mortise":
            wanted["rabbet face to pin"] = pin.x_p
        yield from (
            f"{name} is not measured" for name, long in wanted.items() if long > 1e-3 and name not in names
        )
