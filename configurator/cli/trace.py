"""The command that takes lines of an architect's drawing: a background, or a frame's outline.

What it needs is imported when it runs, so that the other commands start no slower.
"""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.cli.shared import DONE, STANDARD, refused, selected

if TYPE_CHECKING:
    from configurator.export.dxf.reading import ForeignDrawing
    from configurator.export.dxf.tracing import Placing

USES = ("background", "outline")


def add_trace_command(commands: Any) -> None:
    """Add `trace` to the command line's commands."""
    command = commands.add_parser(
        "trace",
        help="take lines of a drawing (DXF): a background under a plan, or a frame's outline",
        epilog="example: opening-configurator trace level-2.dxf --into job.json --mark 112A "
        "--layers A-WALL,A-GLAZ --at 1204.5,388 --turn 90; without --into it lists layers and unit",
    )
    command.add_argument("drawing", type=Path, metavar="DRAWING.dxf")
    command.add_argument("--into", type=Path, metavar="FILE", help="the job; without it nothing is taken")
    command.add_argument("--mark", help="which opening")
    command.add_argument("--as", dest="use", choices=USES, default=USES[0], help="background if left out")
    command.add_argument("--layers", metavar="A,B", help="the layers to take, with commas between")
    command.add_argument("--units", metavar="in|ft|mm|cm|m", help="as the drawing says if left out")
    command.add_argument(
        "--at",
        metavar="X,Y",
        default="0,0",
        help="point of the drawing where frame face and rabbet face of the hinge jamb meet; 0,0 if left out",
    )
    command.add_argument(
        "--turn", type=float, default=0.0, metavar="DEGREES", help="turns it so that the pull side is up"
    )
    command.add_argument("--mirror", action="store_true", help="mirror the drawing left to right")
    command.set_defaults(run=trace_command)


def trace_command(options: argparse.Namespace) -> tuple[str, int]:
    """Say what a drawing holds; with a job and layers, take their lines into one of its openings."""
    from configurator.export.dxf.reading import read_drawing

    if STANDARD in (options.drawing, options.into):
        raise refused("", "a drawing and its job are files; - stands for neither")
    try:
        drawing = read_drawing(options.drawing)
    except OSError as error:
        raise refused("DRAWING.dxf", error.strerror or str(error)) from None
    except ValueError as error:
        raise refused("DRAWING.dxf", str(error)) from None
    told = drawing_words(drawing)
    if options.into is None:
        return told, DONE
    if not options.layers:
        raise refused("--layers", f"must be given; the drawing has {', '.join(drawing.layers)}")
    return told + _taken(options, drawing, _placing(options, drawing)), DONE


def drawing_words(drawing: "ForeignDrawing") -> str:
    """Return what a drawing holds: its unit, its layers, and what of it is no line."""
    from configurator.rules.wording import counted

    unit = f"unit {drawing.units}" if drawing.units else "does not say its unit: give --units"
    lines = [f"{drawing.name}: {unit}"]
    lines += [f"  {name}: {counted(count, 'line', 'lines')}" for name, count in drawing.layers.items()]
    if drawing.not_read:
        counts = ", ".join(f"{count:,} {kind}" for kind, count in drawing.not_read.items())
        lines.append(f"  no lines, so not taken: {counts}")
    return "\n".join(lines) + "\n"


def _placing(options: argparse.Namespace, drawing: "ForeignDrawing") -> "Placing":
    from configurator.export.dxf.reading import INCHES
    from configurator.export.dxf.tracing import Placing

    unit = options.units or drawing.units
    if unit not in INCHES:
        raise refused("--units", f"must be given, the drawing does not say it: one of {', '.join(INCHES)}")
    try:
        x, y = map(float, options.at.split(","))
    except ValueError:
        raise refused("--at", f"is two numbers, as 1204.5,388; {options.at!r} was given") from None
    layers = tuple(name.strip() for name in options.layers.split(",") if name.strip())
    return Placing((x, y), unit, layers, options.turn, options.mirror)


def _taken(options: argparse.Namespace, drawing: "ForeignDrawing", placing: "Placing") -> str:
    from configurator.export.dxf.tracing import traced
    from configurator.project_file.held import open_held, save_held

    if not options.mark:
        raise refused("--mark", "must be given")
    file, job = open_held(options.into)
    try:
        (opening,) = selected(job, options.mark)
        try:
            changed, count = traced(opening, options.use, drawing, placing)
        except ValueError as error:
            raise refused("", str(error)) from None
        openings = tuple(changed if one is opening else one for one in job.openings)
        save_held(job.model_copy(update={"openings": openings}), options.into, file)
    finally:
        file.release()
    return f"{options.into}: {options.use} of {opening.mark}, {count}, unit {placing.unit}\n"
