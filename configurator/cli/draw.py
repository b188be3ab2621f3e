"""The command that draws: sheets at a true scale, or the picture of the window.

What it needs is imported when it runs, so that the other commands start no slower.
"""

import argparse
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import chain
from pathlib import Path
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError

from configurator.cli.shared import DONE, add_out, load_job, refused, selected, studied
from configurator.model import Job, Opening
from configurator.model.faults import faults_of
from configurator.units import TOLERANCE, Display, LengthError, parse_length

if TYPE_CHECKING:
    from configurator.drawing.pages.page import Page, Paper, Scale
    from configurator.study import Study

USUAL_SHEET = "plan"
MOVING = ".gif"


def add_draw_command(commands: Any) -> None:
    """Add `draw` to the command line's commands."""
    draw = commands.add_parser(
        "draw",
        help="write sheets to scale as PDF, SVG, DXF or PNG, a picture, or a moving one as GIF",
        epilog="example: opening-configurator draw job.json --mark 112A --sheet prep --out prep-112A.pdf",
    )
    draw.add_argument("file", type=Path, metavar="FILE", help="the job; - is standard input")
    which = draw.add_mutually_exclusive_group(required=True)
    which.add_argument("--mark", help="which opening")
    which.add_argument("--all", action="store_true", help="every opening, as one PDF or one DXF")
    add_out(draw, "X.pdf|svg|dxf|png|gif", required=True)
    draw.add_argument("--sheet", help="what it shows: plan (the usual one), elevation, prep, sections, ...")
    draw.add_argument(
        "--together",
        action="store_true",
        help="with --all: several plans on a sheet, with keynotes",
    )
    draw.add_argument("--index", action="store_true", help="with --all: the index of all sheets comes first")
    draw.add_argument("--width", help="a plan of this hinge open width only, as 4-1/2")
    draw.add_argument("--scale", metavar="full|6|3|1-1/2|3/4|1:5", help="fitted if left out")
    draw.add_argument("--paper", help="Letter (A4 in millimetres) if left out; Tabloid, Arch C, A4, A3")
    draw.add_argument("--metric", action="store_true", help="show millimetres")
    draw.add_argument("--angle", type=float, help="a picture with the door so many degrees open")
    draw.add_argument("--swept", action="store_true", help="a picture of what leaf and hardware sweep")
    draw.set_defaults(run=draw_command)


def draw_command(options: argparse.Namespace) -> tuple[str, int]:
    """Write what was asked for; return where it was written, and the exit status.

    A GIF is the client's picture of one opening, moving. A PNG without any of the options of a sheet is the
    picture, and so is everything with an angle or what is swept: those are shown by no sheet.
    """
    job = load_job(options.file)
    openings = selected(job, options.mark)
    if options.out.suffix.lower() == MOVING:
        return _moving(job, openings, options)
    of_sheet = options.all or any((options.sheet, options.scale, options.paper, options.width))
    of_picture = options.swept or options.angle is not None
    if of_sheet and of_picture:
        name = "--swept" if options.swept else "--angle"
        raise refused(name, "is for the picture of one opening, not for a sheet")
    if of_picture or (not of_sheet and options.out.suffix.lower() == ".png"):
        return _picture(job, openings[0], options)
    return _sheets(job, openings, options)


def _moving(job: Job, openings: Sequence[Opening], options: argparse.Namespace) -> tuple[str, int]:
    """Write the swing on both hinges as a client sees it."""
    from configurator.export.figure import gif_bytes
    from configurator.project_file import write_whole

    if options.all or options.sheet not in (None, "client"):
        raise refused("--out", "a moving picture is the client's, of one opening: give its --mark")
    for name in ("width", "scale", "paper", "angle", "swept"):
        if getattr(options, name):
            raise refused(f"--{name}", "is not for a moving picture")
    answer = studied(job, openings[0])
    try:
        write_whole(options.out, gif_bytes(answer, Display(metric=options.metric)))
    except ValueError as error:
        raise refused("--out", f"{error} ({openings[0].mark})") from None
    return f"{options.out}: moving picture of {openings[0].mark}\n", DONE


def _picture(job: Job, opening: Opening, options: argparse.Namespace) -> tuple[str, int]:
    from configurator.export.pages import PLAN_FORMATS

    if options.out.suffix.lower() not in PLAN_FORMATS:
        raise refused("--out", f"must end in {', '.join(PLAN_FORMATS)}; {options.out.name} was given")
    if options.angle is not None and not 0 <= options.angle <= 180:
        raise refused(
            "--angle",
            f"must be at least 0 and at most 180 degrees; {options.angle} was given",
        )
    write_picture(job, opening, options.out, options.angle, options.metric, options.swept)
    return f"{options.out}: plan of {opening.mark}\n", DONE


def write_picture(
    job: Job,
    opening: Opening,
    path: Path,
    angle: float | None,
    metric: bool = False,
    swept: bool = False,
) -> None:
    """Write the picture of one opening, its leaves at an angle in degrees; None is as far as is wanted."""
    from configurator.export.pages import write_plan

    answer = studied(job, opening)
    turn = answer.filled.wanted_angle if angle is None else angle
    write_plan(answer, path, turn, Display(metric=metric), job=job.job, swept=swept)


def _sheets(job: Job, openings: Sequence[Opening], options: argparse.Namespace) -> tuple[str, int]:
    from configurator.export.pages import OF_MANY_PAGES, PAGE_FORMATS, write_pages
    from configurator.rules.wording import counted

    ending = options.out.suffix.lower()
    if ending not in PAGE_FORMATS:
        raise refused("--out", f"must end in {', '.join(PAGE_FORMATS)}; {options.out.name} was given")
    if options.all and ending not in OF_MANY_PAGES:
        raise refused("--out", f"must end in {', '.join(OF_MANY_PAGES)} for all openings")
    if not openings:
        raise refused("openings", "there is no opening to draw")
    kind, left_out = options.sheet or USUAL_SHEET, list[str]()
    _refuse_of_all(options, kind)
    pages = _pages(job, openings, kind, options, left_out)
    if options.together:
        pages = _together(job, openings, options)
    if not options.all:
        write_pages(pages, options.out)
        return f"{options.out}: {kind} of {openings[0].mark}\n", DONE
    first = next(pages, None)
    if first is None:
        raise refused("--sheet", f"no opening has such a sheet; {left_out[0]}")
    sheets: Iterable[Page] = chain((first,), pages)
    if options.index:
        sheets = _with_index(job, list(sheets), kind, options)
    done = list[int]()
    write_pages(_numbered(sheets, done), options.out)
    count = counted(len(done), "sheet", "sheets")
    missing = "".join(f"not drawn: {why}\n" for why in left_out)
    return f"{options.out}: {count} ({kind})\n{missing}", DONE


def _numbered(pages: "Iterable[Page]", done: list[int]) -> "Iterator[Page]":
    for number, page in enumerate(pages, 1):
        done.append(number)
        yield page


def _refuse_of_all(options: argparse.Namespace, kind: str) -> None:
    """Refuse what is for all openings of a job only, and for sheets that cannot have it."""
    from configurator.drawing.sheets import FOR_A_CLIENT

    for name in ("together", "index"):
        if getattr(options, name) and not options.all:
            raise refused(f"--{name}", "is for --all openings")
    if options.together and (kind != USUAL_SHEET or options.width):
        raise refused("--together", f"is for the {USUAL_SHEET} of the recommended hinge only")
    if options.index and kind in FOR_A_CLIENT:
        raise refused("--index", "is for the sheets of the shop, not for a client's")


def _together(job: Job, openings: Sequence[Opening], options: argparse.Namespace) -> "Iterator[Page]":
    from configurator.drawing.sheets import plans_of_job

    display = Display(metric=options.metric)
    studies = (studied(job, opening) for opening in openings)
    try:
        yield from plans_of_job(studies, job, _paper(options, display), _scale(options), display)
    except ValueError as error:
        raise refused("--scale", str(error)) from None


def _with_index(job: Job, pages: "list[Page]", kind: str, options: argparse.Namespace) -> "list[Page]":
    from configurator.drawing.pages.job_pages import with_index

    display = Display(metric=options.metric)
    return with_index(pages, job, _paper(options, display), display, kind)


def _pages(
    job: Job, openings: Sequence[Opening], kind: str, options: argparse.Namespace, left_out: list[str]
) -> "Iterator[Page]":
    """Return the sheets, each laid out when it is written; what holds for all of them is refused at once.

    Of all openings, one that such a sheet cannot show is put into `left_out` with the reason.
    """
    from configurator.drawing.sheets import SHEETS, sheet_maker

    if kind not in SHEETS:
        raise refused("--sheet", f"is one of {', '.join(SHEETS)}; {kind!r} was given")
    if options.width is not None and kind != USUAL_SHEET:
        raise refused("--width", f"is for the {USUAL_SHEET} only")
    display = Display(metric=options.metric)
    paper, scale, make = _paper(options, display), _scale(options), sheet_maker(kind, job.revisions)

    def pages() -> "Iterator[Page]":
        for number, opening in enumerate(openings, 1):
            answer = _of_width(studied(job, opening), options.width)
            try:
                page = make(answer, job.job, paper, scale, display, (number, len(openings)))
            except ValueError as error:
                if scale is not None or not options.all:
                    raise refused("--scale" if scale else "--sheet", f"{error} ({opening.mark})") from None
                left_out.append(f"{opening.mark}, {error}")
                continue
            yield page

    return pages()


def _of_width(answer: "Study", width: str | None) -> "Study":
    """Return the study on one hinge open width, of each leaf, compared or not; as it is for None."""
    if width is None:
        return answer
    try:
        inches = parse_length(width, negative=False)
    except LengthError as error:
        raise refused("--width", str(error)) from None
    found = tuple(one for one in answer.butts if abs(one.hinge_width - inches) <= TOLERANCE)
    if found:
        return replace(answer, candidates=found)
    try:
        Opening.model_validate({**dict(answer.opening), "compare": (inches,)})
        found = tuple(answer.hanger(leaf.name, inches) for leaf in answer.leaves)
    except ValidationError as error:
        raise refused("--width", faults_of(error, Opening)[0].message) from None
    except ValueError as error:
        raise refused("--width", f"{error} ({answer.opening.mark})") from None
    return replace(answer, candidates=found)


def _paper(options: argparse.Namespace, display: Display) -> "Paper":
    from configurator.drawing.pages.page import paper_named, usual_paper

    try:
        return paper_named(options.paper) if options.paper else usual_paper(display)
    except ValueError as error:
        raise refused("--paper", str(error)) from None


def _scale(options: argparse.Namespace) -> "Scale | None":
    from configurator.drawing.pages.page import scale_named

    try:
        return scale_named(options.scale) if options.scale else None
    except ValueError as error:
        raise refused("--scale", str(error)) from None
